"""One desk of the sample for all looks: each page is made, and each look laid out, once for all tests."""

from collections.abc import Iterator
from shutil import copytree, ignore_patterns

import pytest

from paddock_tui.desk import Desk
from tests.looks import let_go, sample_desk
from tests.sample import SAMPLE
from tests.small import snapshot


@pytest.fixture(scope="package")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """A desk of a copy of the sample; fails where somebody edited what all others look at."""
    root = copytree(SAMPLE, tmp_path_factory.mktemp("looks") / "garage", ignore=ignore_patterns(".paddock"))
    opened = sample_desk(root)
    yield opened
    assert opened.can_undo() is None
    assert snapshot(root) == snapshot(SAMPLE)
    let_go(opened)
    opened.close()
