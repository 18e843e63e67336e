"""The page before going out: what is still open, in the order of the clock, and the row that stamps it."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.calc.outing_clock import WARMERS_OFF_MIN
from paddock_tui.desk.day.what_now import minutes_before, not_done
from paddock_tui.facts import Situation
from paddock_tui.facts.race import class_entered, tyre_choice_by
from paddock_tui.matters import KINDS
from paddock_tui.pages.review import CAUTION_WORDS, SHORT_CAUTION, finding_row, missing_section
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.rules import HOLD, RULES, Finding, Review
from paddock_tui.text import printable

NOW = "going out now"
"""The key of the row that stamps going out."""


def out_page(situation: Situation, judged: Review, heading: str) -> Page:
    """Make the page; `judged` is the review of going out."""
    session = situation.session
    if session is None or is_ridden(session):
        said = "This session was ridden: n makes the next one." if session else "There is no session here."
        return Page(f"going out · {heading}", (Section("over", (Row("", said, kind="text", key="over"),)),))
    sections = []
    mend = to_mend(judged)
    if mend:
        title = "fix first, or say why" if any(one.to_answer for one in mend) else "fix first"
        sections.append(Section(title, tuple(finding_row(one) for one in mend)))
    do = tuple(_due_row(one, session) for one in not_done(judged))
    if do:
        sections.append(Section("to do, in the order of the clock", do))
    if session.aim is not None:
        sections.append(Section("ride for", (aim_row(session),)))
    missing = missing_section(judged, (one.rule for one in not_done(judged)))
    if missing is not None:
        sections.append(missing)
    if session.kind == "race":
        sections.append(Section("on the grid", tuple(_grid_rows(session, situation.day))))
    sections.append(Section("the last minutes", tuple(_last_minutes(session))))
    sections.append(Section("out", (_now_row(judged, session, situation.now),)))
    return Page(
        f"going out · {heading}",
        tuple(sections),
        caution=CAUTION_WORDS,
        judged=False,
        caution_short=SHORT_CAUTION,
    )


def to_mend(judged: Review) -> list[Finding]:
    """List the holds and the serious findings without an answer that are more than not done yet."""
    found = [
        one
        for one in judged.findings
        if RULES[one.rule].todo is None and (one.severity == HOLD or one.to_answer)
    ]
    # What was written down earlier and never answered is named first of each severity.
    return sorted(found, key=lambda one: (-one.severity, one.rule not in KINDS))


def first_row(page: Page) -> tuple[str, ...]:
    """Return the identity of the first row that is open, else of the one that stamps going out."""
    rows = [row for row in page.rows() if row.kind == "finding" or row.key in (NOW, "over")]
    return rows[0].identity


def holds_of(judged: Review) -> list[Finding]:
    """List the holds that stand."""
    return [one for one in judged.findings if one.severity == HOLD]


def _due_row(finding: Finding, session: Session) -> Row:
    said = f"{_by(finding, session)}: {finding.remedy.text}"
    row = finding_row(finding)
    return attrs.evolve(row, aside=printable(said), range=_by(finding, session), more=row.more)


def _by(finding: Finding, session: Session) -> str:
    if session.start is None or session.date is None:
        return "before going out"
    start = dt.datetime.combine(session.date, session.start)
    return f"by {start - dt.timedelta(minutes=minutes_before(finding)):%H:%M}"


def aim_row(session: Session) -> Row:
    """Say the one aim of an outing, and whose it is."""
    by = f"from {session.aim_by}" if session.aim_by is not None else ""
    return Row("aim", printable(session.aim or ""), aside=printable(by), kind="text", key="aim")


def _grid_rows(session: Session, day: object) -> Iterator[Row]:
    """Say who holds the bike, when the warmers come off, and what the class says of grid and start."""
    grid = session.race.grid or session.start
    if grid is not None:
        yield _said("on the grid", f"by {grid:%H:%M}")
    entered = class_entered(session, day)
    choice = tyre_choice_by(session, entered)
    if choice is not None:
        yield _said("tyre choice", f"until {choice:%H:%M}; declared {session.race.declared or 'not yet'}")
    if session.warmers == "used" and grid is not None and session.date is not None:
        off = dt.datetime.combine(session.date, grid) - dt.timedelta(minutes=WARMERS_OFF_MIN)
        yield _said("warmers off", f"at {off:%H:%M}, or as the class says")
    yield _said("holds the bike", session.race.holds_bike or "nobody named: e, holds TO")
    if entered is None:
        yield _said("the class", "no rules entered: read them, and enter them in the day")
        return
    for label, words in (
        ("may be touched", entered.on_grid),
        ("start", entered.start),
        ("jump", entered.jump),
    ):
        if words is not None:
            yield _said(label, printable(words))


def _last_minutes(session: Session) -> Iterator[Row]:
    """Return the cautions of the last minutes; paddock practice, unpublished."""
    yield _said("fuel", "filled with the engine cool, away from warmers, generator and any flame")
    if session.work:
        yield _said(
            "brakes", "pumped until hard, tried at walking pace; sensors and their wires where they were"
        )
    clear = "off at the last call, and they, " if session.warmers == "used" else ""
    yield _said(
        "warmers" if clear else "clear", f"{clear}cables, stands and tools out of the way before it rolls"
    )
    if session.kind == "road":
        yield _said("to begin", "gently: tyres and brakes are cold, and the road is no track")
    else:
        yield _said("first laps", "two at rising pace: tyres, brakes and head come in together")


def _said(label: str, words: str) -> Row:
    return Row(label, words, kind="text", key=f"last {label}")


def _now_row(judged: Review, session: Session, now: dt.datetime) -> Row:
    stamped = f"went out {session.went_out:%H:%M}; enter stamps it again" if session.went_out else ""
    holds = holds_of(judged)
    stand = f"{len(holds)} holds stand" if len(holds) > 1 else "1 hold stands"
    aside = f"{stand}: enter asks once more" if holds else "u takes it back"
    today = session.date is None or session.date >= now.date()
    stamps = f"enter stamps {now:%H:%M}" if today else "enter asks when: it is not of today"
    return Row(NOW, stamped or stamps, aside=aside, kind="link", key=NOW)
