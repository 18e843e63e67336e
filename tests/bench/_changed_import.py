"""A pytest plugin that imports one module with a mutant in it, told by PADDOCK_CHANGED: path and number."""

import importlib.abc
import importlib.machinery
import importlib.util
import json
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from types import CodeType, ModuleType

import pytest
from hypothesis import Phase, settings

from tests.bench._mutators import mutated


def module_name(path: str) -> str:
    """Give the dotted name of a module by its path."""
    return path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def quick_to_fail() -> None:
    """Have what a property finds not made smaller: that it fails is enough."""
    phases = (Phase.explicit, Phase.generate)
    settings.register_profile("mutants", settings.get_profile("ci"), phases=phases)
    settings.load_profile("mutants")


class _Changed(importlib.machinery.SourceFileLoader):
    number = 0

    def get_code(self, fullname: str) -> CodeType:  # noqa: ARG002 - as import has it
        """Compile the file with the mutant in it."""
        return mutated(self.path, Path(self.path).read_text(encoding="utf-8"), self.number)


class _Finder(importlib.abc.MetaPathFinder):
    def __init__(self, path: str, number: int) -> None:
        self.path, self.number = path, number

    def find_spec(
        self,
        fullname: str,
        path: Sequence[str] | None,  # noqa: ARG002 - as import has it
        target: ModuleType | None = None,  # noqa: ARG002 - as import has it
    ) -> importlib.machinery.ModuleSpec | None:
        """Find the one module that is changed."""
        if fullname != module_name(self.path):
            return None
        loader = _Changed(fullname, self.path)
        loader.number = self.number
        return importlib.util.spec_from_file_location(fullname, self.path, loader=loader)


def pytest_configure(config: pytest.Config) -> None:  # noqa: ARG001 - as pytest has it
    """Do as the run did that chose the tests."""
    quick_to_fail()


if "PADDOCK_CHANGED" in os.environ:
    sys.meta_path.insert(0, _Finder(*json.loads(os.environ["PADDOCK_CHANGED"])))
