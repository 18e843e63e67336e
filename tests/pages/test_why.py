"""Why: what a row is, what may stand there, where it is from, which rules use it."""

from collections.abc import Iterator
from pathlib import Path

from paddock_tui.desk.edits.values import bike_of, field_of
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.why import why_page
from paddock_tui.records.fields_of_record import Field, fields
from paddock_tui.records.paths import Path as Keys
from paddock_tui.records.paths import Ref, parse
from paddock_tui.store.garage import GarageFiles, Loaded
from paddock_tui.text import printable, width
from tests.desk.opened import NEXT
from tests.every import every
from tests.pages.opened import FILES
from tests.small import BIKE, session, write

BADGER = Ref("session", "2026-04-18-2-badger")


def loaded_of(ref: Ref, files: GarageFiles = FILES) -> Loaded:
    found = files.read(ref)
    assert found is not None
    return found


def of(ref: Ref, path: str, files: GarageFiles = FILES) -> Page:
    keys = parse(path)
    assert keys is not None
    field = field_of(files, ref, keys)
    assert field is not None
    return why_page(loaded_of(ref, files), field)


def said(page: Page) -> dict[str, str]:
    """Give the words of the first section by their labels."""
    return {row.label: row.value for row in page.sections[0].rows}


def rules(page: Page) -> list[str]:
    return [row.label for row in page.sections[-1].rows]


def each(ref: Ref) -> Iterator[Field]:
    record = loaded_of(ref).record
    assert record is not None
    yield from fields(ref.kind, record, bike_of(FILES, ref))


def groups() -> dict[str, list[Ref]]:
    """Part the records by kind and bike: within one, fields of the same path are the same field."""
    found: dict[str, list[Ref]] = {}
    for ref in FILES.all():
        bike = getattr(loaded_of(ref).record, "bike", ref.id if ref.kind == "bike" else "")
        found.setdefault(f"{ref.kind} {bike}".strip(), []).append(ref)
    return found


GROUPS = groups()

NARROW = 40
"""What fits here fits wider."""


@every("group", GROUPS)
def test_every_field_of_the_records_of_the_sample_is_explained_within_the_width(group: str) -> None:
    explained: dict[Keys, Page] = {}
    for ref in GROUPS[group]:
        loaded = loaded_of(ref)
        for field in (one for one in each(ref) if one.path not in explained):
            page = explained[field.path] = why_page(loaded, field)
            words = said(page)
            assert words["what it is"] == field.help
            assert words["may be"]
            assert words["stands in"].startswith(f"{loaded.name}, ")
            lines = list(plain_page(page, NARROW))
            assert [line for line in lines if width(line) > NARROW or line != printable(line)] == []
    assert explained


def test_a_value_its_range_where_it_stands_and_its_rules() -> None:
    page = of(NEXT, "setup.controls.traction")

    assert page.heading == "why · set-up · controls · traction control"
    assert said(page) == {
        "value": "3",
        "what it is": "what the rider set it to",
        "may be": "a level from 0 to 10, or off",
        "comes from": "typed, or copied with the set-up of 2026-06-20-2-magpie",
        "stands in": "sessions/2026/2026-06-20-4-magpie.toml, setup.controls.traction",
        "next session": "copied",
    }
    assert "little-traction-help-in-the-wet" in rules(page)
    assert all(row.value and row.aside for row in page.sections[-1].rows)


def test_a_value_that_is_not_known_and_that_no_rule_uses() -> None:
    page = of(Ref("venue", "quernstone"), "corners.99.marker")

    assert said(page)["value"] == "not known"
    assert said(page)["comes from"] == "what was typed"
    assert "next session" not in said(page)
    assert (rules(page), page.sections[-1].note) == ([], "no rule names it")


@every(
    ("ref", "path", "expected"),
    [
        (NEXT, "setup.rear_sprocket", "8 to 100 teeth; anything else is a hold until put right"),
        (
            Ref("bike", "magpie"),
            "start.kilometres",
            "0 to 2000000 km; anything else is a hold until put right",
        ),
        (NEXT, "setup.front_start", "0.7 to 3.5 bar; anything else is a hold until put right"),
    ],
)
def test_a_band_is_written_out_with_its_unit(ref: Ref, path: str, expected: str) -> None:
    assert said(of(ref, path))["can be"] == expected


@every(
    ("ref", "path", "expected"),
    [
        (BADGER, "setup.adjusters.front-rebound-left", "counted on the bike on 2026-04-18"),
        (NEXT, "setup.adjusters.front-rebound", "assumed: carried over, or typed without a count"),
        (NEXT, "surface", "what was typed"),
        (NEXT, "rider", "typed, or copied with the set-up of 2026-06-20-2-magpie"),
    ],
)
def test_where_a_value_comes_from(ref: Ref, path: str, expected: str) -> None:
    assert said(of(ref, path))["comes from"].startswith(expected)


def test_what_is_carried_and_what_is_not_is_said_of_sessions_only() -> None:
    assert said(of(NEXT, "rider"))["next session"] == "copied"
    assert said(of(NEXT, "surface"))["next session"] == "not copied: it is entered again"
    assert "next session" not in said(of(Ref("profile", "magpie-ines-wet"), "setup.mode"))


def test_a_calculation_stands_between_what_it_is_and_the_rules() -> None:
    field = field_of(FILES, NEXT, ("setup", "front_start"))
    assert field is not None

    page = why_page(loaded_of(NEXT), field, ("one line", "another"))

    assert len(page.sections) == 3
    assert "one line" in [row.value for row in page.sections[1].rows]


def test_a_value_that_cannot_be_read_is_not_known_and_a_lost_file_has_no_values(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(air='"much"'), sessions__b="number = = 1\n")
    files = GarageFiles(root)

    assert said(of(Ref("session", "a"), "air", files))["value"] == "not known"
    assert said(of(Ref("session", "b"), "air", files))["value"] == "not known"


def test_what_a_file_carries_to_trick_a_terminal_comes_out_harmless(tmp_path: Path) -> None:
    nasty = '"\\u001B[2J\\u202E"'
    bike = BIKE + f'\n[controls.throttle]\nkind = "choice"\nchoices = [{nasty}, "b"]\n'
    text = (
        session(copied_from='"b"', aim=nasty)
        + f"throttle = {nasty}\n[counted.rebound]\non = 2026-05-16\nby = {nasty}\n"
    )
    bike += '\n[adjusters.rebound]\nunit = "click"\n'
    files = GarageFiles(write(tmp_path, sessions__a=text, bikes__plain=bike))

    for path in ("setup.controls.throttle", "aim", "setup.adjusters.rebound", "copied_from"):
        page = of(Ref("session", "a"), path, files)
        for row in page.rows():
            assert (row.value, row.label, row.aside) == tuple(
                map(printable, (row.value, row.label, row.aside))
            )
        assert page.heading == printable(page.heading)


def test_a_path_with_a_space_is_spelled_as_it_is_typed() -> None:
    keys: Keys = ("controls", "shifter", "effects", "up only", "shifts")
    field = field_of(FILES, Ref("bike", "magpie"), keys)
    assert field is not None

    page = why_page(loaded_of(Ref("bike", "magpie")), field)

    assert said(page)["stands in"] == 'bikes/magpie.toml, controls.shifter.effects."up only".shifts'
