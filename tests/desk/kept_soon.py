"""What was learnt is kept of few sessions too, and of files that were written a moment ago."""

import pytest

from paddock_tui.desk import bike_past, carried
from paddock_tui.facts import begun
from paddock_tui.store import seals


def keep_soon(
    monkeypatch: pytest.MonkeyPatch, far: tuple[int, int], near: tuple[int, int] = (1, 1), held: int = 2
) -> None:
    """Keep states behind so many sessions, where so many more are worth it; hold so many as files."""
    for where in (bike_past, carried):
        monkeypatch.setattr(where, "FAR", begun.FAR._replace(back=far[0], worth=far[1]))
        monkeypatch.setattr(where, "NEAR", begun.NEAR._replace(back=near[0], worth=near[1]))
    monkeypatch.setattr(bike_past, "HELD", held)
    monkeypatch.setattr(seals, "RESTS_NS", -(10**15))
