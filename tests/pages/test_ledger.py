"""The ledger and a change as pages of rows."""

import datetime as dt
from pathlib import Path

from paddock_tui.advice.ledger import LedgerFilter
from paddock_tui.desk.sessions.ledger import bike_at, ledger
from paddock_tui.limits import Limits
from paddock_tui.pages.ledger import FILTER, LEDGER, entry_of, ledger_page
from paddock_tui.pages.one_change import TRY_BACK, change_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.sample import SAMPLE
from tests.small import session, write

DESK = at_desk(SAMPLE)
FOUND = ledger(DESK)
SECOND = "2026-05-16-2-magpie"
BRAKING = ("setup", "offsets", "front-trim")


def row(page: Page, label: str, key: str = "") -> Row:
    return next(one for one in page.rows() if one.label == label and key in ("", one.key))


def change(name: str = SECOND, path: tuple[str, ...] = BRAKING) -> Page:
    entry = FOUND.at(name, path)
    assert entry is not None
    return change_page(entry, FOUND.histories[entry.bike], dt.datetime(2026, 6, 20, 12, 58), Limits())


def titles(page: Page) -> list[str]:
    return [section.title for section in page.sections]


def test_the_sample_reads_as_its_story_was_meant() -> None:
    page = ledger_page(FOUND, LedgerFilter(bike="magpie"))
    said = {one.path[1]: (one.value, one.aside) for one in page.rows() if one.label == "front trim"}

    assert said == {
        SECOND: ("0 -> +1 (firmer)", "helped, -0.94 s, you: better"),
        "2026-05-16-3-magpie": ("+1 -> 0 (softer)", "made it worse, +0.94 s, you: worse"),
    }


def test_steps_with_many_changes_stand_in_one_row_until_one_thing_is_asked_for() -> None:
    page = ledger_page(FOUND, LedgerFilter(bike="magpie"))
    assert row(page, "18 at once").value == "cannot tell yet"

    only = ledger_page(FOUND, LedgerFilter(bike="magpie", control="traction control"))
    assert {one.label for one in only.rows() if one.path[:1] == (LEDGER,)} == {"traction control"}
    assert "18 at once" not in {one.label for one in only.rows()}


def test_what_is_shown_can_be_chosen_and_rows_can_be_told_apart() -> None:
    page = ledger_page(FOUND, LedgerFilter(bike="magpie"))
    filters = [one for one in page.rows() if one.path[:1] == (FILTER,)]

    assert [one.label for one in filters] == [
        "bike",
        "venue",
        "surface",
        "tyre set",
        "rider",
        "what was changed",
    ]
    assert (filters[0].value, filters[1].value) == ("magpie", "any")
    identities = [one.identity for one in page.rows()]
    assert len(set(identities)) == len(identities)


def test_the_best_session_here_is_named_with_what_differs_since() -> None:
    best = row(ledger_page(FOUND, LedgerFilter(bike="magpie")), SECOND)

    assert best.opens == Ref("session", SECOND)
    assert best.value == "usual 1:43.95"
    assert best.aside == "anvilfen, ines, dry, best of 3; since then front trim +1 -> 0 (softer)"


def test_a_garage_without_changes_says_so(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__one=session()))
    page = ledger_page(ledger(desk), LedgerFilter(bike=bike_at(desk, Ref("session", "one"))))

    assert page.heading == "change log · plain · 0 changes"
    assert row(page, "", "nothing").value == "no session was copied from another yet"
    assert bike_at(desk, None) == ""


def test_a_wish_that_nothing_meets_says_so() -> None:
    page = ledger_page(FOUND, LedgerFilter(bike="magpie", surface="dry", rider="tobin"))

    assert row(page, "", "nothing").value == "no change is like that"


def test_a_session_whose_source_is_gone_is_said_and_opens_nothing(tmp_path: Path) -> None:
    files = {"sessions__two": session(2, copied_from='"gone"')}
    page = ledger_page(ledger(at_desk(write(tmp_path, **files))), LedgerFilter())
    lost = row(page, "change not known")

    assert (lost.kind, lost.aside) == ("text", "copied from gone, which is retired or not here any more")


def test_a_retired_source_leaves_the_change_unknown(tmp_path: Path) -> None:
    files = {
        "sessions__one": session(1, retired="2026-05-17"),
        "sessions__two": session(2, copied_from='"one"'),
    }
    (entry,) = ledger(at_desk(write(tmp_path, **files))).entries

    assert entry.lost == "copied from one, which is retired or not here any more"


def test_a_change_says_what_it_did_why_and_what_the_chances_rest_on() -> None:
    page = change()

    assert page.heading == "change · front trim 0 -> +1 (firmer) · session 2 · 16 May 2026"
    assert row(page, "verdict").value == "helped"
    assert row(page, "felt, by pairs").value.startswith("better in 1, worse in 0, similar in 0; 50 % by luck")
    assert row(page, "by sessions").value == "-0.94 s with it (1 time to it, 1 back)"
    assert "assumed" in row(page, "luck of a session").value
    assert "at most 5%" in row(page, "level").value
    assert row(page, "these two, laps").value.startswith("-1.05 s, ")
    assert (
        "by ranks (counted), 0.12 % by mixing them all 1716 ways" in row(page, "chance of those laps").value
    )
    assert row(page, "why").value == "dives into 6, then wide"
    assert row(page, "your verdict").value == "better"
    assert row(page, "feel braking", "feel braking").value == "2 -> 4, better; 5 is best"
    assert "safety" in page.caution


def _section(page: Page, title: str) -> Section:
    return next(one for one in page.sections if one.title == title)


def test_everything_stands_side_by_side() -> None:
    rows = {one.label: one.value for one in _section(change(), "side by side").rows}

    assert rows["air"] == "12 C -> 14 C"
    assert rows["tyre set"] == "magpie-trackday-1"
    assert rows["outing of the tyre set"] == "1 -> 2"
    assert rows["usual lap"] == "1:44.97 -> 1:43.95"


def test_a_change_can_be_tried_back_and_its_sessions_opened() -> None:
    ways = change().sections[-1].rows

    assert [one.key for one in ways] == [TRY_BACK, "session", "session before"]
    assert ways[0].value == "the next session with front trim +1 -> 0 (softer)"
    assert entry_of(FOUND, ways[0]) == FOUND.at(SECOND, BRAKING)
    assert ways[2].opens == Ref("session", "2026-05-16-1-magpie")


def test_what_cannot_be_gone_back_to_is_not_offered() -> None:
    page = change(NEXT.id, ("setup", "adjusters", "front-rebound"))

    assert TRY_BACK not in {one.key for one in page.rows()}
    assert row(page, "verdict").value == "to come"


def test_both_pages_print_in_forty_cells() -> None:
    for page in (ledger_page(FOUND, LedgerFilter()), change(), change("2026-05-16-5-magpie", ("tyres",))):
        lines = list(plain_page(page, 40))
        assert lines
        assert max(map(len, lines)) <= 40
