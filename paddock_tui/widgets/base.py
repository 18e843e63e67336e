"""What every screen stands on: no needless repaint, and a repaint where one is needed."""

from typing import Any, Generic

from textual.app import App
from textual.reactive import reactive
from textual.screen import Screen, ScreenResultType
from textual.widget import Widget

from paddock_tui.widgets.sparing import ShownCells, SparingCompositor


class QuietScreen(Screen[ScreenResultType], Generic[ScreenResultType]):
    """A screen that sends what changed alone, and nothing when the focus moves, unlike the stock one."""

    focused = reactive[Widget | None](None, repaint=False)

    def __init__(self, name: str | None = None) -> None:
        super().__init__(name)
        self.share(None)

    def share(self, shown: ShownCells | None) -> None:
        """Send what differs from what the terminal shows, by this screen or by the one before it."""
        self._compositor = SparingCompositor(shown, lambda: not self.is_drawn())

    def is_drawn(self) -> bool:
        """Return whether there is something to send: nothing is, before the first page is laid out."""
        return True

    def wear(self, theme: str) -> None:
        """Show everything in the colours of a theme."""
        self.app.theme = f"paddock-{theme}"


def repaint_on_resume(app: App[Any], shown: ShownCells) -> None:
    """Have everything painted again when the process comes back from being stopped: the terminal is blank."""

    def repaint(_: object) -> None:
        shown.forget()
        app.refresh(layout=True)

    app.app_resume_signal.subscribe(app, repaint)
