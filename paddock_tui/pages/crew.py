"""The crew's page: jobs before the next start, the aim, the class as entered, and who was moved."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.desk.day.countdown import Countdown
from paddock_tui.desk.day.jobs import JobState, jobs_of
from paddock_tui.desk.day.moments import minutes_to
from paddock_tui.facts.race import class_entered
from paddock_tui.facts.situation import Situation
from paddock_tui.pages.going_out import aim_row
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.day import RidingDay
from paddock_tui.records.fields import specs
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.race import RaceClass
from paddock_tui.records.session import Session
from paddock_tui.text import printable

JOB = "crew job "
"""Begins the key of a job's row."""

_HOW = "enter: did it, then looked; e, job fuel TO"


def crew_page(situation: Situation, clock: Countdown | None, heading: str) -> Page:
    """Make the page of a session."""
    session, ref = situation.session, situation.refs.get("session")
    if session is None or ref is None:
        return Page(heading, (Section("crew", (Row("", "There is no session here.", kind="text"),)),))
    now = situation.now
    rows = tuple(_job(one, ref, now) for one in jobs_of(session, clock))
    sections = [Section(_before(clock, now), rows, _HOW if rows else "e, job fuel TO makes one")]
    if session.aim is not None:
        sections.append(Section("ride for", (aim_row(session),)))
    sections += _class(session, situation)
    if situation.day is not None:
        moves = tuple(_moves(situation.day, situation.refs.get("day")))
        if moves:
            sections.append(Section("moved to another group", moves, "e, moved novice JM"))
    return Page(
        f"crew · {heading}",
        tuple(sections),
        judged=False,
        answer=_first_job(rows),
        answer_short=_first_job(rows, short=True),
    )


def _first_job(rows: tuple[Row, ...], short: bool = False) -> str:
    """Say the first job that is not done, whose it is and when it is due."""
    if not rows:
        return "No job is given out yet."
    left = [row for row in rows if not row.aside.startswith("done")]
    if not left:
        return f"All {len(rows)} jobs are done."
    first = left[0]
    whose = "" if short else first.value
    return f"First: {', '.join(filter(None, (first.label, whose, first.aside)))}"


def _before(clock: Countdown | None, now: dt.datetime) -> str:
    if clock is None or clock.out < now:
        return "jobs"
    return f"before {clock.out:%H:%M}, in {minutes_to(clock.out, now)} min"


def _job(one: JobState, session: Ref, now: dt.datetime) -> Row:
    job = one.job
    words = [f"done by {job.done_by}" if job.done_by else "done" if one.done else ""]
    words += [f"checked by {job.checked_by}" if job.checked_by else ""]
    if not one.done and one.due is not None:
        left = minutes_to(one.due, now)
        words.append(f"due {one.due:%H:%M}, {'now' if left <= 0 else f'in {left} min'}")
    at = f" {job.at:%H:%M}" if job.at is not None and job.done_by else ""
    said = " · ".join(filter(None, words))
    return Row(
        printable(one.name.replace("-", " ")),
        printable(job.who or "nobody named"),
        aside=printable(f"{said}{at}"),
        kind="link",
        ref=session,
        path=("jobs", one.name, "who"),
        key=f"{JOB}{one.name}",
    )


def _class(session: Session, situation: Situation) -> Iterator[Section]:
    """Show the rules of the class as they were entered; nothing of a class is known otherwise."""
    entered = class_entered(session, situation.day)
    if entered is None:
        return
    rows = []
    for key, (name, spec) in specs(RaceClass).items():
        value = getattr(entered, name)
        if value is not None and spec.shape is not None:
            path: Path = ("classes", key)
            shown = printable(spec.shape.show(value))
            rows.append(Row(spec.label, shown, kind="text", key=f"class {'.'.join(path)}"))
    yield Section("the class, as entered", tuple(rows), "its own rules come first")


def _moves(day: RidingDay, ref: Ref | None) -> Iterator[Row]:
    for rider, bikes in day.entries.items():
        for bike, entry in bikes.items():
            for number, move in entry.moves.items():
                at = f"{move.at:%H:%M} " if move.at is not None else ""
                way = f"{move.from_ or 'not known'} -> {move.to or 'not known'}"
                yield Row(
                    printable(f"{at}{rider}"),
                    printable(way),
                    aside=printable(f"by {move.by or 'nobody named'}"),
                    kind="link",
                    ref=ref,
                    opens=ref,
                    key=f"move {rider} {bike} {number}",
                )
