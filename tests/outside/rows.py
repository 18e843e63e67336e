"""One figure from outside the project: where it comes from, how far it is trusted, what computes it here."""

from collections.abc import Callable, Sequence

import attrs
import pytest
from _pytest.mark import ParameterSet


@attrs.frozen
class Row:
    """A published, derived or library figure; `tol` is absolute unless `relative`.

    Where the source prints several figures to different digits, `tol` gives one for each of them.
    """

    id: str
    computed: Callable[[], object]
    expected: object
    tol: float | tuple[float, ...]
    source: str
    status: str
    relative: bool = False

    def check(self) -> None:
        """Assert that what is computed here agrees with the figure within what its source prints."""
        computed, expected = self.computed(), self.expected
        if not isinstance(self.tol, tuple):
            self._near(computed, expected, self.tol)
            return
        assert isinstance(computed, Sequence)
        assert isinstance(expected, Sequence)
        for one, other, tol in zip(computed, expected, self.tol, strict=True):
            self._near(one, other, tol)

    def _near(self, computed: object, expected: object, tol: float) -> None:
        if tol == 0.0:
            assert computed == expected, self.source
        else:
            rel, absolute = (tol, 0.0) if self.relative else (0.0, tol)
            assert computed == pytest.approx(expected, rel=rel, abs=absolute), self.source


def params(rows: Sequence[Row]) -> list[ParameterSet]:
    """The rows for parametrize, each under its own id."""
    return [pytest.param(row, id=row.id) for row in rows]


def accounted(prefix: str, count: int, rows: Sequence[Row], not_used: dict[str, str]) -> bool:
    """Whether every figure of a topic is either checked or says why it is not, and none twice."""
    ids = [row.id for row in rows] + list(not_used)
    return sorted(ids) == [f"{prefix}-{number:02}" for number in range(1, count + 1)]
