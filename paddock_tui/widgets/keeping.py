"""A screen that keeps keys for later, in order: what rests on a verdict waits, and nothing overtakes it."""

from collections.abc import Callable

from textual import events

from paddock_tui.widgets.base import QuietScreen
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.typed_run import TypedRun

WAITS = "{} waits for the verdict, and so do keys behind it; escape forgets them"


class KeepingScreen(QuietScreen[None]):
    """Does most keys at once; from one that has to wait on, all are kept until `go_on`."""

    def __init__(self) -> None:
        super().__init__()
        self.board = Board()
        self._kept: list[Callable[[], object]] = []

    @property
    def keeps(self) -> bool:
        """Whether anything waits."""
        return bool(self._kept)

    def keep(self, act: Callable[[], object], what: str = "") -> None:
        """Keep something to be done later; `what` it is is said."""
        self._kept.append(act)
        # From here on keys come to the screen itself.
        self.set_focus(None)
        if what:
            self.board.say(WAITS.format(what), stays=True)

    def go_on(self) -> None:
        """Do what was kept, in its order."""
        kept, self._kept = self._kept, []
        self.set_focus(self.board)
        self.board.say("")
        while kept and not self._kept:
            kept.pop(0)()
        self._kept += kept

    def on_key(self, event: events.Key) -> None:
        """Keep a key while others wait; escape forgets all of them."""
        if not self._kept:
            return
        if event.key == "escape":
            event.stop()
            self._kept.clear()
            self.go_on()
            return
        self._keep_event(event, events.Key(event.key, event.character))

    def on_paste(self, event: events.Paste) -> None:
        """Keep pasted text while keys wait."""
        if self._kept:
            self._keep_event(event, events.Paste(event.text))

    def on_typed_run(self, event: TypedRun) -> None:
        """Keep what was typed in one piece while keys wait."""
        if self._kept:
            self._keep_event(event, TypedRun(event.text))

    def _keep_event(self, event: events.Event, fresh: events.Event) -> None:
        event.stop()
        event.prevent_default()
        fresh.time = event.time
        self.keep(lambda: self.board.post_message(fresh))
