"""From a name that is typed to a new record: its id, what it starts with, and the names that are refused."""

import datetime as dt
import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.desk.files.names import ASKED, naming
from paddock_tui.records.edits import Create, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of, is_id
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Saved
from tests.desk.opened import at_desk
from tests.every import every
from tests.examples import examples
from tests.small import session, snapshot, write

TODAY = dt.date(2026, 5, 16)
NAMED = ("bike", "rider", "venue", "tyres", "profile", "checklist")


def made(root: Path, kind: str, text: str) -> tuple[Ref, str]:
    """Give the reference and the text of the file for what was typed; it must be taken."""
    ref, step = naming(GarageFiles(root), kind, text, TODAY)
    assert isinstance(step, Step), step
    (create,) = step.changes
    assert isinstance(create, Create)
    assert create.ref == ref
    return ref, create.text


def refused(root: Path, kind: str, text: str) -> InputError:
    before = snapshot(root)
    _, step = naming(GarageFiles(root), kind, text, TODAY)
    assert isinstance(step, InputError), step
    assert snapshot(root) == before
    return step


@every(
    ("name", "expected"),
    [
        ("Magpie", "magpie"),
        ("  The old   one ", "the-old-one"),
        ("Frère Été", "frere-ete"),
        ("Straße", "strasse"),
        ("ℋ", "h"),
        ("Mg/Otter", "mg-otter"),
        ("..", ""),
        ("../../etc", "etc"),
        ("   ", ""),
        ("日本", ""),
        ("No. 7!", "no-7"),
        ("ﬁrst ②", "first-2"),
        ("-x-", "x"),
    ],
)
def test_an_id_is_made_of_the_letters_and_digits_of_a_name(name: str, expected: str) -> None:
    assert id_of(name) == expected


@examples(25)
@given(st.text(max_size=60))
def test_an_id_can_always_be_one_and_stays_as_it_is(name: str) -> None:
    found = id_of(name)

    assert found == "" or is_id(found) or len(found) > 80
    assert id_of(found) == found
    assert id_of(unicodedata.normalize("NFC", name)) == id_of(unicodedata.normalize("NFD", name))


@every("kind", NAMED)
def test_a_record_starts_with_its_name_as_typed(tmp_path: Path, kind: str) -> None:
    ref, text = made(write(tmp_path), kind, '  Tobin\'s   "big" Twin ')

    assert ref == Ref(kind, "tobin-s-big-twin")
    assert text == 'name = "Tobin\'s \\"big\\" Twin"\n'


def test_what_is_made_is_there_after_it_is_kept_and_gone_after_undo(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    desk = at_desk(root)
    ref, step = naming(desk.files, "venue", "Alder Fen", TODAY)
    assert isinstance(step, Step)

    desk.do(step)

    assert [type(outcome) for outcome in desk.settled()] == [Saved]
    assert snapshot(root) == before | {"venues/alder-fen.toml": b'name = "Alder Fen"\n'}
    assert desk.files.path_of(ref) is not None
    desk.undo()
    desk.close()
    assert snapshot(root) == before


@every("kind", FOLDERS)
@every("text", ["a/b", "/", "..\\b", "../../rider"])
def test_a_name_with_a_slash_is_refused_in_every_kind(tmp_path: Path, kind: str, text: str) -> None:
    found = refused(write(tmp_path), kind, text)

    assert found.expected == "a name without slashes"
    assert found.mend


@every("kind", FOLDERS)
@every("text", ["", "   ", "..", "...", "\t", "!?", "日本", "\x1b"])
def test_a_name_that_leaves_nothing_is_refused_in_every_kind(tmp_path: Path, kind: str, text: str) -> None:
    found = refused(write(tmp_path), kind, text)

    assert found.expected
    assert found.mend


def test_a_name_that_is_taken_is_refused_however_it_is_written(tmp_path: Path) -> None:
    root = write(tmp_path)

    for text in ("plain", "Plain", " PLAIN ", "Plaîn"):
        assert refused(root, "bike", text).sentence() == (
            "there is a bike plain already: expected a name that is free; choose another name"
        )


def test_a_name_that_is_too_long_for_a_file_is_refused(tmp_path: Path) -> None:
    found = refused(write(tmp_path), "bike", "x" * 81)

    assert found.mend == "at most 80 letters and digits"


def test_every_kind_of_record_asks_in_words_of_its_own() -> None:
    assert set(ASKED) == set(FOLDERS)
    assert len(set(ASKED.values())) == len(ASKED)


# ---- days ------------------------------------------------------------------------------------------------


@pytest.fixture
def with_venue(tmp_path: Path) -> Path:
    return write(tmp_path, **{"venues__alder-fen": 'name = "Alder Fen"\n'})


@pytest.mark.parametrize(
    ("text", "name", "date"),
    [
        ("2026-06-21 alder-fen", "2026-06-21-alder-fen", "2026-06-21"),
        ("2026-06-21  Alder Fen", "2026-06-21-alder-fen", "2026-06-21"),
        ("alder fen", "2026-05-16-alder-fen", "2026-05-16"),
    ],
)
def test_a_day_takes_a_date_and_a_venue(with_venue: Path, text: str, name: str, date: str) -> None:
    ref, written = made(with_venue, "day", text)

    assert ref == Ref("day", name)
    assert written == f'date = {date}\nvenue = "alder-fen"\n'


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2026-06-31 alder-fen", "a date, e.g. 2026-06-21"),
        ("２０２６-０６-２１ alder-fen", "a date, e.g. 2026-06-21"),
        ("2026-06-21", "a venue of this garage: alder-fen"),
        ("2026-06-21 quern", "a venue of this garage: alder-fen"),
        ("21.6.2026 alder-fen", "a venue of this garage: alder-fen"),
    ],
)
def test_a_day_without_a_date_or_a_venue_that_is_there_is_refused(
    with_venue: Path, text: str, expected: str
) -> None:
    found = refused(with_venue, "day", text)

    assert found.expected == expected
    assert found.mend


def test_without_a_venue_there_can_be_no_day(tmp_path: Path) -> None:
    assert "make the venue first" in refused(write(tmp_path), "day", "2026-06-21 fen").sentence()


def test_a_day_that_is_there_is_refused(with_venue: Path) -> None:
    (with_venue / "days").mkdir()
    (with_venue / "days" / "2026-06-21-alder-fen.toml").write_text("date = 2026-06-21\n")

    assert refused(with_venue, "day", "2026-06-21 alder-fen").mend == "choose another name"


# ---- sessions --------------------------------------------------------------------------------------------


def test_a_session_is_the_first_of_today_on_that_bike_with_the_only_rider(tmp_path: Path) -> None:
    ref, text = made(write(tmp_path), "session", "Plain")

    assert ref == Ref("session", "2026-05-16-1-plain")
    assert text == 'date = 2026-05-16\nnumber = 1\nbike = "plain"\nrider = "ann"\n'


def test_of_several_riders_none_is_taken_and_a_retired_one_does_not_count(tmp_path: Path) -> None:
    root = write(tmp_path, riders__bo="retired = 2025-01-01\n")
    assert 'rider = "ann"' in made(root, "session", "plain")[1]

    (root / "riders" / "cy.toml").write_text('name = "Cy"\n')
    assert "rider" not in made(root, "session", "plain")[1]


def test_a_session_of_a_day_with_sessions_gets_the_next_number(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(1), sessions__b=session(3), sessions__c=session(7, bike='"x"'))

    ref, text = made(root, "session", "plain")

    assert ref == Ref("session", "2026-05-16-4-plain")
    assert "number = 4\n" in text


def test_a_session_needs_a_bike_that_is_there(tmp_path: Path) -> None:
    found = refused(write(tmp_path), "session", "badger")

    assert found.expected == "a bike of this garage: plain"
    assert found.mend


def test_a_name_without_a_letter_is_refused_in_full(tmp_path: Path) -> None:
    ref, refusal = naming(GarageFiles(write(tmp_path)), "bike", "!!!", TODAY)

    assert ref == Ref("bike", "")
    assert refusal == InputError(
        '"!!!"', "a name with at least one letter or digit", "add one, a to z or 0 to 9"
    )
