"""The session page and the set-up page: facts in the order in which they become known, none out of reach."""

import re
from pathlib import Path

import pytest

from paddock_tui.desk.edits.values import bike_of
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.record import record_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.pages.session import GROWING, ORDER, RACE, session_page, set_up_page, without_laps
from paddock_tui.records.common import Units
from paddock_tui.records.fields import ANY, declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path as Keys
from paddock_tui.records.paths import Ref, parse, spell
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Saved
from paddock_tui.text import printable, width
from tests.desk.opened import NEXT, at_desk, typed
from tests.every import every
from tests.pages.opened import SAMPLE
from tests.small import session, snapshot, write

FILES = GarageFiles(SAMPLE)
A, P = Ref("session", "a"), Ref("profile", "p")
RIDDEN = Ref("session", "2026-05-16-5-magpie")
SESSIONS = [pytest.param(ref, id=ref.id) for ref in FILES.listing("session")]
SUBJECTS = [*SESSIONS, *(pytest.param(ref, id=ref.id) for ref in FILES.listing("profile"))]


def facts(ref: Ref, files: GarageFiles = FILES) -> Page:
    loaded = files.read(ref)
    assert loaded is not None
    return session_page(loaded, "heading", Units())


def set_up(ref: Ref, files: GarageFiles = FILES) -> Page:
    loaded = files.read(ref)
    assert loaded is not None
    return set_up_page(loaded, bike_of(files, ref), "heading", Units())


def by_path(page: Page) -> dict[str, Row]:
    return {spell(row.path): row for row in page.rows() if row.path and row.kind != "add"}


def to_add(page: Page) -> list[Keys]:
    return [row.adds for row in page.rows() if row.kind == "add"]


def begun(page: Page) -> list[Keys]:
    """List the entries that a row begins: with its word, or with what was seen, the rest gets rows."""
    return [row.adds for row in page.rows() if row.path[-1:] in (("what",), ("seen",))]


def small(root: Path, text: str, **files: str) -> GarageFiles:
    return GarageFiles(write(root, sessions__a=text, **files))


# ---- the order -------------------------------------------------------------------------------------------


def test_the_sections_stand_in_the_order_in_which_facts_become_known() -> None:
    titles = [section.title for section in facts(NEXT).sections]
    wanted = ["plan", "conditions", "fuel", "tyre warmers", "pressures cold", "pressures leaving"]
    wanted += ["dash and ignition", "out and back"]
    after = ["pressures hot", "feel", "laps", "inspected", "incidents", "work done", "notes", "sag"]

    assert [title for title in titles if title in (*wanted, *after)] == [*wanted, *after]
    assert titles[: len(ORDER) - 1] == [title for title, _ in ORDER if title != RACE]
    race = Ref("session", "2025-06-14-2-shrew")
    assert [section.title for section in facts(race).sections][:3] == ["outing", "plan", RACE]


def test_hot_pressures_come_first_after_the_ride_then_feel_then_laps() -> None:
    paths = list(by_path(facts(RIDDEN)))
    wanted = ["start", "surface", "pressures.cold.front", "dash.read", "parked", "pressures.hot.front"]
    wanted += ["feel.braking", "laps.1", "front_travel_used", "lever"]

    assert [path for path in paths if path in wanted] == wanted


@every("ref", SESSIONS)
def test_every_value_of_a_sample_session_stands_on_its_page_or_on_its_set_up_page(ref: Ref) -> None:
    rows = by_path(facts(ref)) | by_path(set_up(ref))

    loaded = FILES.read(ref)
    assert loaded is not None
    held = {spell(row.path) for row in record_page(loaded).rows() if row.known and row.kind == "field"}
    assert {path for path in held if not (path in rows and rows[path].known)} == set()


@every("ref", SUBJECTS)
def test_no_row_stands_twice_and_all_fit(ref: Ref) -> None:
    pages = [set_up(ref), *([facts(ref)] if ref.kind == "session" else [])]
    for page in pages:
        identities = [row.identity for row in page.rows()]
        assert len(set(identities)) == len(identities)
        for columns in (40, 80):
            lines = list(plain_page(page, columns))
            assert [line for line in lines if width(line) > columns or line != printable(line)] == []


# ---- everything can be reached ---------------------------------------------------------------------------

ELSEWHERE = {
    "checks": "the checklist page answers them",
    "accepted": "the review page accepts, with the facts of the finding",
    "retired": "the garage page retires",
    "out": "the stamp of going out writes it",
    "times": "typing times on a later day says so",
}
"""What an empty session offers no row for, and where it is done instead."""


def reachable(kind: str, pages: list[Page]) -> list[str]:
    """List the declared values for which no page has a row to fill in, nor a row to add their entry by."""
    rows = [row.path for page in pages for row in page.rows() if row.kind == "field"]
    tables = [table for page in pages for table in (*to_add(page), *begun(page))]
    return [
        spell(one.path)
        for one in declared(CLASSES[kind])
        if not any(fits(one.path, path) for path in rows)
        and not any(one.path[: len(table)] == table for table in tables)
    ]


def fits(pattern: Keys, path: Keys) -> bool:
    return len(pattern) == len(path) and all(
        wanted in (ANY, key) for wanted, key in zip(pattern, path, strict=True)
    )


BIKE = """name = "Plain"
electronics = "listed"

[controls.traction]
kind = "level"
levels = [0, 10]

[modes.wet]
use = "wet"

[adjusters.rebound]
unit = "click"

[damping.live]
presets = ["calm"]

[damping.live.offsets.braking]
range = [-3, 3]
"""


def test_every_declared_value_of_a_session_can_be_filled_in_from_an_empty_one(tmp_path: Path) -> None:
    text = 'bike = "plain"\nkind = "race"\n[setup]\ndamping = "live"\n'
    files = small(tmp_path, text, bikes__plain=BIKE)

    missing = reachable("session", [facts(A, files), set_up(A, files)])

    assert {path.split(".")[0] for path in missing} == set(ELSEWHERE)


def test_every_declared_value_of_a_profile_can_be_filled_in_from_one_with_a_bike(tmp_path: Path) -> None:
    files = GarageFiles(
        write(tmp_path, bikes__plain=BIKE, profiles__p='bike = "plain"\n[setup]\ndamping = "live"\n')
    )

    assert reachable("profile", [set_up(P, files)]) == []


def test_a_new_profile_without_a_bike_can_be_given_one(tmp_path: Path) -> None:
    root = write(tmp_path, profiles__p='name = "P"\n')
    desk = at_desk(root)
    page = set_up(P, desk.files)
    assert {"name", "bike", "rider", "taken_from", "retired"} < set(by_path(page))
    assert "the bike is not known: enter it below" in [row.value for row in page.rows()]

    desk.do(typed(desk, P, ("bike", "plain")))

    assert "setup.controls.traction" in by_path(set_up(P, desk.files))
    desk.close()


def test_a_session_without_a_bike_is_given_one_on_its_own_page(tmp_path: Path) -> None:
    files = small(tmp_path, "number = 1\n")

    assert [row.value for row in set_up(A, files).rows()] == [
        "the bike is not known: enter it on the session page"
    ]
    assert "bike" in by_path(facts(A, files))


def test_the_tables_that_grow_can_be_added_to(tmp_path: Path) -> None:
    page = facts(A, small(tmp_path, session()))

    assert to_add(page) == [("dash", "values"), ("pressures",), *GROWING]
    assert to_add(set_up(NEXT)) == []
    assert to_add(set_up(Ref("profile", "magpie-ines-wet"))) == [("counted",)]


def test_a_row_of_an_entry_can_be_dropped_whole() -> None:
    rows = by_path(facts(RIDDEN))

    assert rows["pressures.hot.front"].drops == ("pressures", "hot")
    assert rows["laps.2"].drops == ("laps", "2")
    assert rows["feel.braking"].drops == ()
    assert rows["surface"].drops == ()


# ---- numbered tables -------------------------------------------------------------------------------------

NEXT_ROWS = [
    ("events.1.what", "stall", "[events.1]\nwhat = "),
    ("symptoms.1.what", "vague", "[symptoms.1]\nwhat = "),
    ("laps.1", "1:44.310 out", "[laps]\n1 = "),
    ("incidents.1.what", "fall", "[incidents.1]\nwhat = "),
    ("work.1.what", "chain", "[work.1]\nwhat = "),
    ("notes.1.text", "cold", "[notes.1]\ntext = "),
]


@every(("path", "text", "written"), NEXT_ROWS)
def test_the_blank_next_row_of_a_numbered_table_makes_the_table_and_one_undo_takes_it_back(
    tmp_path: Path, path: str, text: str, written: str
) -> None:
    root = write(tmp_path, sessions__a=session() + "# the end\n")
    before = snapshot(root)
    desk = at_desk(root)
    row = by_path(facts(A, desk.files))[path]
    assert not row.known

    desk.do(typed(desk, A, (path, text)))

    assert [type(outcome) for outcome in desk.settled()] == [Saved]
    assert f'\n{written}"{text}"\n' in (root / "sessions" / "a.toml").read_text()
    rows = by_path(facts(A, desk.files))
    assert rows[path].known
    second = path.replace(".1", ".2", 1)
    assert not rows[second].known
    assert path.replace(".1", ".3", 1) not in rows
    desk.undo()
    desk.close()
    assert snapshot(root) == before


@every("ref", SESSIONS)
def test_every_numbered_table_of_the_sample_ends_with_one_blank_row(ref: Ref) -> None:
    loaded = FILES.read(ref)
    assert loaded is not None
    rows = by_path(facts(ref))
    for table in ("events", "symptoms", "laps", "incidents", "work", "notes"):
        numbers = sorted({int(path.split(".")[1]) for path in rows if path.startswith(f"{table}.")})
        held = len(loaded.data.get(table, {}))
        assert numbers == list(range(1, held + 2))


def test_numbers_with_gaps_are_followed_by_the_highest_and_full_tables_by_none(tmp_path: Path) -> None:
    laps = '\n[laps]\n12 = "1:50"\n3 = "1:51"\n[notes.9999]\ntext = "last"\n'
    rows = by_path(facts(A, small(tmp_path, session() + laps)))

    assert [path for path in rows if path.startswith("laps")] == ["laps.3", "laps.12", "laps.13"]
    assert [path for path in rows if path.startswith("notes")] == ["notes.9999.text", "notes.9999.at"]


def test_labels_say_which_reading_lap_or_number_a_value_belongs_to() -> None:
    rows = by_path(facts(RIDDEN))

    assert rows["pressures.hot.front"].label == "hot front"
    assert rows["laps.2"].label == "lap 2"
    assert rows["incidents.1.what"].label == "1 what"
    assert rows["notes.1.text"].label == "note 1 note"
    assert rows["sag.front.alone.pushed"].label.startswith("front alone, ")
    assert rows["surface"].label == "surface"


# ---- what does not fit -----------------------------------------------------------------------------------


def test_what_the_order_does_not_name_follows_under_headings_of_its_own() -> None:
    page = facts(NEXT)
    titles = [section.title for section in page.sections[len(ORDER) - 1 :]]

    assert "changes · controls · traction control" in titles
    assert any(title.startswith("checks of the session · ") for title in titles)


def test_a_reading_of_another_name_is_shown_too(tmp_path: Path) -> None:
    text = session() + '\n[pressures.after]\nfront = "2.2 bar"\n\n[dash.values]\ntraction = 4\n'

    rows = by_path(facts(A, small(tmp_path, text)))

    assert rows["pressures.after.front"].value == "2.2 bar"
    assert rows["dash.values.traction"].value == "4"


@every(
    "text",
    [
        "laps = 3\n",
        "pressures = 3\n",
        "[pressures]\nhot = 3\n",
        "dash = 3\n",
        "[incidents]\n1 = 3\n",
        'counted = "x"\n',
        "[because]\nx = 1\n",
        "[sag]\nfront = 4\n",
        'surface = "icy"\n',
        "[accepted.x]\ny = 3\n",
    ],
)
def test_what_cannot_be_read_is_on_the_page_of_facts(tmp_path: Path, text: str) -> None:
    page = facts(A, small(tmp_path, f'bike = "plain"\n{text}'))

    assert any(row.trouble or row.severity == "trouble" for row in page.rows())


@every("text", ["setup = 3\n", "[setup]\ncontrols = 3\n", "[setup.controls]\ntraction = 2.5\n"])
def test_what_cannot_be_read_of_a_set_up_is_on_its_page(tmp_path: Path, text: str) -> None:
    page = set_up(A, small(tmp_path, f'bike = "plain"\n{text}'))

    assert any(row.trouble or row.severity == "trouble" for row in page.rows())


def test_what_the_bike_does_not_use_can_be_seen_and_cleared(tmp_path: Path) -> None:
    text = session() + 'launch = "armed"\n\n[setup.offsets]\nbraking = 1\n'
    files = small(tmp_path, text)

    last = set_up(A, files).sections[-1]

    assert last.title == "written down, not in use on this bike"
    assert [spell(row.path) for row in last.rows] == ["setup.controls.launch", "setup.offsets.braking"]
    assert not any("not in use" in section.title for section in set_up(NEXT).sections)


def test_by_hand_is_shown_on_a_bike_without_other_damping(tmp_path: Path) -> None:
    page = set_up(A, small(tmp_path, 'bike = "plain"\n[setup]\ndamping = "by-hand"\n'))

    assert by_path(page)["setup.damping"].choices == ("by-hand",)
    assert not any("not in use" in section.title for section in page.sections)
    assert "setup.damping" not in by_path(set_up(A, small(tmp_path / "2", 'bike = "plain"\n')))


def test_the_set_up_page_of_a_session_begins_with_its_conditions_that_of_a_profile_with_its_name() -> None:
    ours, saved = set_up(NEXT), set_up(Ref("profile", "magpie-ines-wet"))

    assert [spell(row.path) for row in ours.sections[0].rows] == ["surface", "air", "track"]
    assert [spell(row.path) for row in saved.sections[0].rows] == ["name", "made_for", "baseline", "note"]
    assert "belongs to" in [section.title for section in saved.sections]


def test_a_lost_record_has_no_set_up(tmp_path: Path) -> None:
    files = small(tmp_path, "number = = 1\n")

    assert [row.value for row in set_up(A, files).rows()] == ["it cannot be read"]


def test_the_order_names_only_what_is_declared() -> None:
    known = {one.path[0] for one in declared(CLASSES["session"])}

    for _, places in ORDER:
        for place in places:
            keys = parse(place)
            assert keys is not None
            assert keys[0] in known
            assert re.fullmatch(r"[a-z_.]+[#+]?", place)


def test_where_no_lap_may_be_timed_the_rows_of_laps_say_so_and_no_others() -> None:
    shut = [row.path for row in without_laps(facts(RIDDEN), "forbidden").rows() if row.shut == "forbidden"]

    assert ("best_lap",) in shut
    assert {path[0] for path in shut} == {"best_lap", "laps"}
    assert without_laps(facts(RIDDEN), "") == facts(RIDDEN)
