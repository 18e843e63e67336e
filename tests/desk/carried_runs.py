"""Runs of the program over a career, each leaving what it learnt for the next."""

from pathlib import Path

from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike
from paddock_tui.facts.unread_past import UnreadSession
from paddock_tui.rules import Review
from paddock_tui.store.cached import cache_folder
from paddock_tui.store.garage import GarageFiles
from tests.bench._career import Career

BIKES = ("badger", "magpie")


class Run:
    """One run of the program over a garage."""

    def __init__(self, career: Career) -> None:
        self.looks = LooksAt(GarageFiles(career.root), lambda: career.at)
        self.unread: dict[str, int] = {}

    def judged(self) -> dict[str, Review]:
        """Judge the last session of each bike."""
        found = {}
        for bike in BIKES:
            last = of_bike(self.looks.files, bike)[-1][1]
            assembled = self.looks.assembled(last)
            found[bike] = self.looks.judged(assembled.situation)
            past = assembled.situation.history.past
            self.unread[bike] = sum(isinstance(one, UnreadSession) for one in past)
        return found

    def reviews(self) -> dict[str, Review]:
        """Judge the last session of each bike, and have a later run go on from what was learnt."""
        found = self.judged()
        for keep in self.looks.histories.to_keep(self.looks.files):
            keep()
        return found


def carried() -> list[Path]:
    return sorted(cache_folder().rglob("*before-*.json"))
