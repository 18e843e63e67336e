"""What a record's page answers: of one that was not judged nothing found means nothing, and that is said."""

import datetime as dt
import shutil
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.records.paths import Ref
from paddock_tui.screens.judged_page import context_of, judged_page
from paddock_tui.screens.place import Place
from tests.screens.rider import BEFORE


def answers(garage: Path, *refs: str, now: dt.datetime = BEFORE) -> list[str]:
    desk = Desk(garage, lambda: now)
    found = []
    for kind, _, name in (ref.partition("/") for ref in refs):
        place = Place(room="record", record=Ref(kind, name))
        found.append(judged_page(desk, place, context_of(desk, place, None, None)).page.answer)
    desk.close()
    return found


def test_only_what_is_judged_says_that_nothing_was_found(garage: Path) -> None:
    here, other, rider = answers(garage, "venue/anvilfen", "venue/quernstone", "rider/tobin")

    assert here.startswith("Nothing found about it")
    assert other == rider == "Not assessed: it is no part of what is judged now."


def test_where_no_session_is_planned_nothing_is(garage: Path) -> None:
    shutil.rmtree(garage / "sessions")
    said = answers(garage, "venue/anvilfen", "rider/ines", "checklist/bike-morning")

    assert set(said) == {"Not assessed: no session is planned."}
