"""The bench as a program that leaves when its link goes, as the tool does; run at the end of a wire.

Arguments: a file that the save callback adds a line to, and "stuck" for a loop that stops answering.
"""

import sys
import time
from pathlib import Path
from typing import NoReturn

from paddock_tui.widgets.driver import driver_class
from paddock_tui.widgets.signals import Leaver, block
from tests.widgets.board_app import BoardApp


class LinkApp(BoardApp):
    """The bench, with the driver of our own, and what a wire test may ask of it."""

    def __init__(self) -> None:
        super().__init__(driver_class=driver_class())

    def key_s(self) -> None:
        """Stop answering for ever, as a loop behind a frozen link does."""
        while True:
            time.sleep(1)


def main(saves: str) -> NoReturn:
    """Run the app until it is asked to leave; exit as the process should."""

    def save() -> None:
        with Path(saves).open("a", encoding="utf-8") as file:
            file.write(f"saved {app.bench.board.half_typed and app.bench.board.half_typed[1]}\n")

    def ask(number: int) -> None:
        loop = app._loop
        assert loop is not None
        loop.call_soon_threadsafe(leave, number)

    def leave(number: int) -> None:
        leaver.answered()
        app.exit(return_code=128 + number)

    held = block()
    app = LinkApp()
    leaver = Leaver(ask, save)
    leaver.start(held)
    app.run(mouse=False)
    save()
    leaver.finished()
    sys.exit(app.return_code or leaver.exit_code)
