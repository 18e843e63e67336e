"""The set-up card: everything that is set, what differs from the base, never a word that says yes."""

import html
import re
from html.parser import HTMLParser
from pathlib import Path

from paddock_tui.advice.session_laps import stint_of
from paddock_tui.desk import Desk
from paddock_tui.pages.card import card_html, card_lines, card_of
from paddock_tui.pages.card.content import Card
from paddock_tui.pages.pictures.laps import laps_chart
from paddock_tui.records.paths import Ref
from paddock_tui.screens.printed import printed_page
from paddock_tui.text import as_read, width
from tests.commands.running import FILE, NEXT
from tests.every import every
from tests.looks import NOON
from tests.sample import SAMPLE

HERE = Ref("session", NEXT)
RIDDEN = Ref("session", "2026-06-20-2-magpie")
LAPS = Ref("session", "2026-05-16-3-magpie")
PROFILE = next(ref for ref in Desk(SAMPLE).files.listing("profile"))


def card(root: Path, ref: Ref = HERE) -> Card:
    made = card_of(Desk(root, lambda: NOON), ref)
    assert made is not None
    return made


class Words(HTMLParser):
    """The words of a page, its tags in order, and every address it names."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.words = ""
        self.addresses: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.addresses += [value or "" for name, value in attrs if name in ("href", "src", "xlink:href")]

    def handle_data(self, data: str) -> None:
        self.words += data


def parsed(text: str) -> Words:
    found = Words()
    found.feed(text)
    return found


@every("columns", [38, 78])
@every("ref", [HERE, LAPS, PROFILE])
def test_the_text_fits_and_holds_every_value_set(columns: int, ref: Ref) -> None:
    made = card(SAMPLE, ref)
    lines = list(card_lines(made, columns))
    assert max(map(width, lines)) <= columns
    text = " ".join(" ".join(lines).split())
    for block in made.blocks:
        for line in block.lines:
            assert line.label in text
            assert as_read(" ".join(line.value.split())) in text


def test_what_differs_from_the_baseline_is_marked_with_what_it_was() -> None:
    made = card(SAMPLE)
    assert made.base == "baseline Ines, dry, Anvilfen"
    changed = {line.label: line.was for block in made.blocks for line in block.lines if line.was}
    assert changed["traction control"] == "5"
    assert any(line.startswith("* traction ") and "was 5" in line for line in card_lines(made))


def test_a_hold_or_a_care_stands_with_its_findings_and_nothing_found_stands_nowhere() -> None:
    serious = card(SAMPLE)
    assert serious.verdict == "CARE"
    assert "serious: Traction control low for a wet track: 3 (range 0-10)." in serious.findings
    for ref in (HERE, RIDDEN, PROFILE):
        made = card(SAMPLE, ref)
        for text in ("\n".join(card_lines(made)), card_html(made)):
            assert not re.search("CLEAR|NO FINDINGS|NOT YET", text)
            assert "facts change" in text


def test_health_and_incidents_are_named_by_their_severity_alone(garage: Path) -> None:
    file = garage / FILE
    incident = '\n[incidents.1]\nwhat = "fall"\nmoving = true\nhead_contact = true\nconcussion = true\n'
    file.write_text(file.read_text(encoding="utf-8") + incident, encoding="utf-8")
    made = card(garage)
    assert made.verdict == "HOLD"
    assert "hold: rider" in made.findings
    assert not re.search("head|concussion|fall|fell", " ".join(made.findings), re.IGNORECASE)


def test_the_page_has_no_script_and_nothing_from_elsewhere() -> None:
    found = parsed(card_html(card(SAMPLE, LAPS)))
    assert not {"script", "link", "img", "iframe", "object"} & set(found.tags)
    assert found.addresses == []
    assert found.tags.count("svg") >= 3


def test_text_that_holds_markup_stays_text(garage: Path) -> None:
    file = garage / "profiles" / f"{PROFILE.id}.toml"
    text = file.read_text(encoding="utf-8")
    name = "<script>alert(1)</script><b>&amp;"
    file.write_text(re.sub(r'^name = ".*"', f'name = "{name}"', text, flags=re.MULTILINE), encoding="utf-8")
    found = parsed(card_html(card(garage, PROFILE)))
    assert name in found.words
    assert not {"script", "b"} & set(found.tags)


def test_a_record_without_a_set_up_and_one_that_is_gone() -> None:
    desk = Desk(SAMPLE, lambda: NOON)
    assert card_of(desk, Ref("bike", "magpie")) is None
    assert card_of(desk, Ref("session", "no-such")) is None


def test_the_pictures_are_drawn_from_the_data_of_the_screens() -> None:
    made = card(SAMPLE, LAPS)
    room = Desk(SAMPLE, lambda: NOON)
    situation = room.assembled(LAPS).situation
    assert situation.session is not None
    chart = laps_chart(stint_of(situation.session))
    assert chart is not None
    assert made.laps == chart
    drawn = re.findall(r"<svg.*?</svg>", card_html(made), re.DOTALL)
    laps = next(one for one in drawn if "polyline" in one)
    assert laps.count("<circle") == sum(dot.at is not None for dot in chart.dots)
    assert html.escape(chart.sentence) in laps
    assert made.pressures is not None
    assert any(html.escape(made.pressures.sentence) in one for one in drawn)
    bars = {row.path: row.bar for row in printed_page(room, "setup", LAPS).rows() if row.bar is not None}
    lines = {line.label: line.bar for block in made.blocks for line in block.lines if line.bar is not None}
    for row in printed_page(room, "setup", LAPS).rows():
        if row.bar is not None and row.known:
            assert lines[row.label] == bars[row.path]
    assert any(bar.marks for bar in bars.values())


def test_a_day_that_forbids_timing_puts_no_laps_on_a_card(garage: Path) -> None:
    day = garage / "days/2026-05-16-anvilfen.toml"
    text = day.read_text(encoding="utf-8")
    day.write_text(re.sub(r'^timing = ".*"', 'timing = "forbidden"', text, flags=re.MULTILINE), "utf-8")
    assert 'timing = "forbidden"' in day.read_text(encoding="utf-8")
    made = card(garage, LAPS)
    assert (made.laps, made.laps_words) == (None, "")
    assert "clean laps" not in card_html(made)


def test_every_colour_is_black_on_white_or_a_light_ground() -> None:
    """Contrast by the formula of WCAG 2.2, 1.4.3: all words are black, on grounds no darker than #ddd."""
    for ref in (HERE, RIDDEN, PROFILE):
        text = card_html(card(SAMPLE, ref))
        assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", text)) <= {"#000", "#fff", "#ddd"}
        assert set(re.findall(r"(?<![-\w])color: ([^;}]+)", text)) <= {"#000", "#fff"}
    ground = ((0xDD / 255 + 0.055) / 1.055) ** 2.4
    assert (ground + 0.05) / 0.05 > 7


def test_a_profile_that_the_bike_cannot_take_says_so(garage: Path) -> None:
    ref = Ref("profile", "magpie-ines-dry")
    file = garage / "profiles/magpie-ines-dry.toml"
    text = file.read_text(encoding="utf-8")
    file.write_text(re.sub(r"^traction = .*", "traction = 40", text, flags=re.MULTILINE), encoding="utf-8")
    made = card(garage, ref)
    assert made.verdict == "HOLD"
    assert any("40" in one for one in made.findings)


def test_no_electronics_and_electronics_that_nobody_wrote_down_are_two_things() -> None:
    none = "\n".join(card_lines(card(SAMPLE, Ref("session", "2026-04-18-3-badger"))))
    unknown = "\n".join(card_lines(card(SAMPLE, Ref("session", "2025-06-14-2-shrew"))))
    assert "-- electronics: none on this bike --" in none
    assert "not known: what electronics this bike has" in unknown


def test_what_else_is_chosen_for_an_outing_stands_on_its_card() -> None:
    text = " ".join("\n".join(card_lines(card(SAMPLE))).split())
    for said in ("tyres magpie-trackday-2", "tyre warmers none", "fuel added 4.5 L", "surface wet"):
        assert said in text or said.replace(" L", " l") in text
