"""What stands on a set-up card, without a word about how it is written."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.advice.levels import starting_levels
from paddock_tui.advice.session_laps import stint_of, usual_words
from paddock_tui.advice.wet_package import starting_adjusters
from paddock_tui.calc.stint import Stint
from paddock_tui.desk import Desk
from paddock_tui.desk.debrief.lap_timing import forbidden
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.sessions.compared import baseline_of, compared_set_ups
from paddock_tui.facts.core import ABSENT, Facts, NotKnown
from paddock_tui.facts.past import ENDS
from paddock_tui.facts.situation import Situation
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.pictures import Chart, Lanes
from paddock_tui.pages.pictures.laps import laps_chart
from paddock_tui.pages.review import CAUTION_WORDS
from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.pages.session_pictures import pressure_picture
from paddock_tui.pages.setup import setup_sections
from paddock_tui.pages.setup_picture import with_comparisons
from paddock_tui.records.differences import differences
from paddock_tui.records.fields import specs
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.records.verdict_words import CARE_WORD, HOLD_WORD
from paddock_tui.rules import CAUTION, Finding, review
from paddock_tui.rules.personal import personal_matter
from paddock_tui.rules.verdict import verdict_word
from paddock_tui.store.garage import Loaded
from paddock_tui.text import as_read, printable

_OF_THE_OUTING = (
    "kind",
    "surface",
    "tyres",
    "warmers",
    "fuel_in_tank",
    "fuel_added",
    "planned_laps",
    "planned_time",
)
"""What a session adds to its set-up that hands see to before it."""

MOST_FINDINGS = 6
"""How many findings a card has room for; the rest are counted."""

ELECTRONICS = "electronics"
"""The title of the block of aids: it stands on every card, were it to say that there are none."""

_PLAIN = frozenset({"mode", "damping", "preset"})


@attrs.frozen
class CardLine:
    """One value: its label, the value in the bike's own numbers, its range, and what it was on the base.

    `was` is empty where the base has the same. `bar` draws an aid by its direction, least help to most,
    with the marks that the screens have.
    """

    label: str
    value: str
    range: str = ""
    was: str = ""
    aside: str = ""
    bar: Bar | None = None


@attrs.frozen
class Block:
    """Lines under one title, what is not known of them, and what the letters of their bars mean."""

    title: str
    lines: tuple[CardLine, ...]
    unknown: tuple[str, ...] = ()
    legend: str = ""


@attrs.frozen
class Card:
    """A whole card. `verdict` is HOLD or CARE, else empty: a card never says that nothing was found."""

    heading: str
    as_of: str
    verdict: str
    findings: tuple[str, ...]
    base: str
    blocks: tuple[Block, ...]
    laps: Chart | None
    laps_words: str
    pressures: Lanes | None
    caution: str = CAUTION_WORDS


def for_reading(card: Card) -> Card:
    """Return a card whose units are written as they are read; those of its data stay as files keep them."""
    blocks = [
        attrs.evolve(
            block,
            lines=tuple(
                attrs.evolve(one, value=as_read(one.value), was=as_read(one.was), aside=as_read(one.aside))
                for one in block.lines
            ),
        )
        for block in card.blocks
    ]
    return attrs.evolve(card, findings=tuple(map(as_read, card.findings)), blocks=tuple(blocks))


def card_of(desk: Desk, ref: Ref) -> Card | None:
    """Make the card of a session or a profile; None where its record cannot be read."""
    loaded = desk.files.read(ref)
    record = loaded.record if loaded is not None else None
    if loaded is None or not isinstance(record, Session | Profile):
        return None
    situation = desk.assembled(ref).situation
    bike = bike_of(desk.files, ref)
    base, base_setup = _base(desk, ref, record)
    was = _was(base_setup, record.setup)
    sections = _set_up(desk, ref, loaded, record) if bike is not None else ()
    blocks = [
        Block(
            printable(": ".join(filter(None, (one.title, one.note)))),
            tuple(_lines(one.rows, was)),
            _unknown(one.rows),
            _legend(one),
        )
        for one in sections
    ]
    if (
        bike is not None
        and bike.electronics is None
        and not any(one.title == ELECTRONICS for one in sections)
    ):
        blocks.insert(0, Block(ELECTRONICS, (), ("what electronics this bike has",)))
    session = record if isinstance(record, Session) else None
    laps = Stint(())
    pressures = None
    if session is not None:
        blocks.append(Block("pressures, gauge, and sag", tuple(_measured(situation.facts(), situation))))
        blocks.append(Block("for this outing", tuple(_outing(session))))
        laps = Stint(()) if forbidden(desk.files, loaded.data) else stint_of(session)
        pressures = pressure_picture(session, situation.tyres, situation.limits[OFF_TARGET_CAUTION])
    verdict, findings = _judged(situation)
    return Card(
        heading_of(desk, ref),
        _as_of(desk.now()),
        verdict,
        findings,
        base,
        tuple(one for one in blocks if one.lines or one.unknown or one.title.startswith(ELECTRONICS)),
        laps_chart(laps),
        usual_words(laps),
        pressures,
    )


def _set_up(desk: Desk, ref: Ref, loaded: Loaded, record: Session | Profile) -> tuple[Section, ...]:
    """Return the set-up as the screen has it, each scale with the marks that it has there."""
    bike = bike_of(desk.files, ref)
    if bike is None:
        return ()
    found = desk.assembled(ref)
    sections = tuple(setup_sections(loaded, record.setup, bike, desk.units(record.rider)))
    others = tuple(compared_set_ups(desk.files, found.situation))
    about = desk.about(ref, found)
    starts, turned = starting_levels(about), starting_adjusters(about)
    compared = with_comparisons(Page("", sections), bike, record.setup, starts, others, turned)
    bars = {row.path: row.bar for row in compared.rows() if row.bar is not None}
    return tuple(
        attrs.evolve(one, rows=tuple(attrs.evolve(row, bar=bars.get(row.path, row.bar)) for row in one.rows))
        for one in sections
    )


def _legend(section: Section) -> str:
    """Say what the letters on the bars of a section mean; empty where they have none."""
    words = {mark.sign: mark.word for row in section.rows if row.bar for mark in row.bar.marks}
    return ", ".join(f"{sign} {word}" for sign, word in words.items())


def card_as_dict(card: Card) -> dict[str, Any]:
    """Return a card as plain data."""
    return {
        "heading": card.heading,
        "as_of": card.as_of,
        "verdict": card.verdict or None,
        "findings": list(card.findings),
        "base": card.base or None,
        "blocks": [
            {
                "title": block.title,
                "lines": [
                    {
                        "label": line.label,
                        "value": line.value,
                        "range": line.range or None,
                        "was": line.was or None,
                        "aside": line.aside or None,
                        "at": None if line.bar is None else line.bar.at,
                        "marks": {one.word: one.at for one in line.bar.marks} if line.bar else {},
                    }
                    for line in block.lines
                ],
                "not_known": list(block.unknown),
            }
            for block in card.blocks
        ],
        "laps": card.laps_words or None,
        "caution": card.caution,
    }


def _as_of(now: dt.datetime) -> str:
    return f"as of {short_date(now)} {now:%H:%M}, facts change: review before going out"


def _judged(situation: Situation) -> tuple[str, tuple[str, ...]]:
    """Return HOLD or CARE with what it rests on; health and incidents are named by their severity alone.

    A profile is judged by what can be said of a set-up without an outing.
    """
    found = review(situation)
    word = verdict_word([one.severity for one in found.findings if one.about == "danger"], 0)
    if word not in (HOLD_WORD, CARE_WORD):
        return "", ()
    dangers = [one for one in found.findings if one.about == "danger" and one.severity >= CAUTION]
    said = list(dict.fromkeys(_finding(one) for one in dangers))
    if len(said) > MOST_FINDINGS:
        rest = len(said) - MOST_FINDINGS + 1
        said = [*said[: MOST_FINDINGS - 1], f"and {rest} more: see the review"]
    return word, tuple(said)


def _finding(one: Finding) -> str:
    matter = personal_matter(one)
    if matter == "health":
        return f"{one.severity}: rider"
    if matter == "incidents":
        return f"{one.severity}: what happened to the bike, see the review"
    return printable(f"{one.severity}: {one.message}")


def _base(desk: Desk, ref: Ref, record: Session | Profile) -> tuple[str, SetUp | None]:
    """Return what it is compared with: the baseline of this bike and rider, else where it came from."""
    found = baseline_of(desk.files, record, ref)
    if found is not None:
        named, baseline = found
        return printable(f"baseline {baseline.name or named.id}"), baseline.setup
    source = record.copied_from if isinstance(record, Session) else record.taken_from
    before = desk.files.read(Ref("session", source)) if source is not None else None
    if before is not None and isinstance(before.record, Session):
        return f"session {printable(before.ref.id)}", before.record.setup
    return "", None


def _was(base: SetUp | None, setup: SetUp) -> Mapping[Path, str]:
    found = differences(base, setup) if base is not None else ()
    return {one.path: printable(one.words.partition(" -> ")[0]) for one in found if one.known}


def _lines(rows: tuple[Row, ...], was: Mapping[Path, str]) -> Iterator[CardLine]:
    for row in rows:
        if row.known and row.kind == "field":
            aside = "" if row.path[-1] in _PLAIN or row.path[1:2] == ("offsets",) else row.aside
            yield CardLine(row.label, row.value, row.range, was.get(row.path, ""), aside, row.bar)


def _unknown(rows: tuple[Row, ...]) -> tuple[str, ...]:
    return tuple(row.label for row in rows if not row.known and row.kind == "field" and not row.shut)


def _known(facts: Facts, name: str, end: str) -> object:
    found = facts.get(name, end)
    return None if found is ABSENT or isinstance(found, NotKnown) else found


def _measured(facts: Facts, situation: Situation) -> Iterator[CardLine]:
    session = situation.session
    for name in ("cold", "leaving", "hot"):
        reading = session.pressures.get(name) if session is not None else None
        if reading is None:
            continue
        at = f"read {reading.at:%H:%M}" if reading.at is not None else ""
        for end, value, set_to in (
            ("front", reading.front, reading.set_to_front),
            ("rear", reading.rear, reading.set_to_rear),
        ):
            if value is not None:
                said = f", set to {set_to}" if set_to is not None else ""
                yield CardLine(f"{end} {name}", printable(f"{value}{said}"), aside=at)
    for end in ENDS:
        target = _known(facts, "hot_target", end)
        if target is not None:
            yield CardLine(f"{end} hot target", printable(str(target)))
    for end in ENDS:
        sag = _known(facts, "rider_sag", end)
        if sag is not None:
            yield CardLine(f"{end} rider sag", str(sag).removeprefix(f"{end} rider sag "))


def _outing(session: Session) -> Iterator[CardLine]:
    """Return what else is chosen for an outing; what nobody wrote down is left for a hand to write in."""
    for key in _OF_THE_OUTING:
        spec = specs(Session)[key][1]
        value = getattr(session, key)
        if value is not None:
            shown = spec.shape.show(value) if spec.shape is not None else str(value)
            yield CardLine(spec.label, printable(shown))
