"""One test over many cases that take the same path: each is run, and what fails is named together.

A case of its own for pytest costs some milliseconds, which hundreds of cases of a registry pay for nothing.
"""

import functools
import inspect
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from _pytest.mark import ParameterSet

from tests.copied import Folder, held, laid_out

_SHOWN = 5


def every(
    names: str | Sequence[str],
    cases: Iterable[object] | Callable[[], Iterable[object]],
    ids: Callable[[Any], str] | Iterable[str] | None = None,
) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Run a test on every case, as parametrize takes them; fail once, naming each case that failed.

    Fixtures are those of the test; folders are each case's own, and what a case patches is put back. Cases
    that take long to make are given as what makes them: every worker collects a test, and one runs it.
    """
    many = not isinstance(names, str) or "," in names
    called = [one.strip() for one in names.split(",")] if isinstance(names, str) else list(names)
    listed = tuple(cases) if isinstance(cases, Iterable) else cases
    told = ids if ids is None or callable(ids) else tuple(ids)

    def wrap(test: Callable[..., None]) -> Callable[..., None]:
        def run(**given: Any) -> None:
            each = listed if isinstance(listed, tuple) else tuple(listed())
            assert each, "there is no case"
            garage = held(given["garage"]) if "garage" in given else ()
            failed: list[str] = []
            last: BaseException | None = None
            for at, case in enumerate(each):
                values: Any = case.values if isinstance(case, ParameterSet) else case if many else (case,)
                name = case.id if isinstance(case, ParameterSet) and case.id else _name(at, values, told)
                try:
                    with _own(given, garage, at) as fixtures:
                        test(**dict(zip(called, values, strict=True)), **fixtures)
                except (Exception, pytest.fail.Exception) as error:
                    failed.append(f"{name}: {str(error).partition(chr(10))[0] or type(error).__name__}")
                    last = error
            if failed:
                more = f" and {len(failed) - _SHOWN} more" if len(failed) > _SHOWN else ""
                said = "\n  ".join(failed[:_SHOWN])
                raise AssertionError(f"{len(failed)} of {len(each)} failed{more}:\n  {said}") from last

        functools.update_wrapper(run, test)
        # Not what functools.wraps says: pytest would ask for the values of a case as for fixtures.
        del run.__wrapped__  # type: ignore[attr-defined]
        asked = [one for name, one in inspect.signature(test).parameters.items() if name not in called]
        run.__signature__ = inspect.Signature(asked)  # type: ignore[attr-defined]
        return run

    return wrap


@contextmanager
def _own(given: Mapping[str, Any], garage: Folder, at: int) -> Iterator[dict[str, Any]]:
    """Give fixtures as one case gets them: folders of its own, and patches that end with it."""
    fixtures = dict(given)
    if "tmp_path" in given:
        fixtures["tmp_path"] = _made(given["tmp_path"], at)
    if garage:
        fixtures["garage"] = laid_out(garage, _made(given["garage"].parent, at) / "garage")
    if "capsys" in given:
        given["capsys"].readouterr()
    if "monkeypatch" not in given:
        yield fixtures
        return
    with given["monkeypatch"].context() as fixtures["monkeypatch"]:
        yield fixtures


def _made(within: Path, at: int) -> Path:
    folder = within / f"case-{at}"
    folder.mkdir(exist_ok=True)
    return folder


def _name(at: int, values: Any, ids: Callable[[Any], str] | Sequence[str] | None) -> str:
    if callable(ids):
        return "-".join(map(ids, values))
    if ids is not None:
        return ids[at]
    return f"case {at} {str(values)[:80]}"
