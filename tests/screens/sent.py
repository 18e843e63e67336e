"""What an app under test would send to its terminal, drawn there and counted."""

from typing import Any

import pytest
from rich.console import RenderableType
from textual.screen import Screen

from paddock_tui.widgets.sparing import ShownCells, SparingLayout
from tests.screens.rider import Rider
from tests.widgets.terminal import Terminal


class Sent:
    """Hears what an app sends, and draws it on a terminal."""

    def __init__(self, rider: Rider, columns: int, lines: int, monkey: pytest.MonkeyPatch) -> None:
        self.rider, self.sent = rider, b""
        self.size = columns, lines
        self.terminal = Terminal(columns, lines)
        rider.app.shown.cleared()
        monkey.setattr(rider.app, "_display", self._hears)
        rider.app.refresh(layout=True)

    def _hears(self, _: Screen[Any], update: RenderableType | None) -> None:
        if update is not None:
            assert hasattr(update, "render_segments"), update
            sent = update.render_segments(self.rider.app.console).encode()
            self.sent += sent
            self.terminal.feed(sent)

    def anew(self) -> Terminal:
        """Draw the whole screen on another terminal."""
        update = self.rider.app.screen._compositor.render_full_update()
        assert isinstance(update, SparingLayout)
        update.shown = ShownCells()
        whole = Terminal(*self.size)
        whole.feed(update.render_segments(self.rider.app.console).encode())
        return whole
