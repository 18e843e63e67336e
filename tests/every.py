"""One test over many cases that take the same path: each is run, and what fails is named together.

A case of its own for pytest costs some milliseconds, which hundreds of cases of a registry pay for nothing.
"""

import functools
from collections.abc import Callable, Iterable, Sequence
from typing import Any

import pytest
from _pytest.mark import ParameterSet

_SHOWN = 5


def every(
    names: str | Sequence[str],
    cases: Iterable[object],
    ids: Callable[[Any], str] | Iterable[str] | None = None,
) -> Callable[[Callable[..., None]], Callable[[], None]]:
    """Run a test on every case, as parametrize takes them; fail once, naming each case that failed."""
    many = not isinstance(names, str) or "," in names
    held = tuple(cases)
    called = ids if ids is None or callable(ids) else tuple(ids)

    def wrap(test: Callable[..., None]) -> Callable[[], None]:
        def run() -> None:
            assert held, "there is no case"
            failed: list[str] = []
            last: BaseException | None = None
            for at, case in enumerate(held):
                values: Any = case.values if isinstance(case, ParameterSet) else case if many else (case,)
                name = case.id if isinstance(case, ParameterSet) and case.id else _name(at, values, called)
                try:
                    test(*values)
                except (Exception, pytest.fail.Exception) as error:
                    failed.append(f"{name}: {str(error).partition(chr(10))[0] or type(error).__name__}")
                    last = error
            if failed:
                more = f" and {len(failed) - _SHOWN} more" if len(failed) > _SHOWN else ""
                said = "\n  ".join(failed[:_SHOWN])
                raise AssertionError(f"{len(failed)} of {len(held)} failed{more}:\n  {said}") from last

        # Not functools.wraps: pytest would ask the wrapped test for its parameters.
        functools.update_wrapper(run, test)
        del run.__wrapped__  # type: ignore[attr-defined]
        return run

    return wrap


def _name(at: int, values: Any, ids: Callable[[Any], str] | Sequence[str] | None) -> str:
    if callable(ids):
        return "-".join(map(ids, values))
    if ids is not None:
        return ids[at]
    return f"case {at} {str(values)[:80]}"
