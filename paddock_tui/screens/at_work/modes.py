"""Riding modes at a glance: left and right look at another one, enter takes it as one previewed step."""

import attrs

from paddock_tui.advice.riding_modes import mode_values
from paddock_tui.desk import Desk
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.facts import Situation
from paddock_tui.pages.explanation import surface_of
from paddock_tui.pages.modes import (
    MODES,
    mode_at,
    modes_page,
    moves,
    preset_at,
    taking_lines,
    taking_section,
)
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.records.setup import SetUp
from paddock_tui.rules import Review
from paddock_tui.rules.core import SetValue
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext
from paddock_tui.text import printable
from paddock_tui.widgets import messages


def make_page(asked: PageContext) -> Page | None:
    """Make the page of the bike that is looked at, with the set-up that is looked at where it is of it."""
    situation = asked.assembled.situation if asked.assembled is not None else None
    found = _bike(asked.desk, asked.place.record, asked.subject, situation)
    if found is None:
        return None
    name, bike, setup, surface = found
    taking = None
    mode = mode_at(bike, _across(asked.place.across, bike, setup))
    if setup is not None and asked.subject is not None and mode is not None and mode != setup.mode:
        step = _taking(asked.desk, asked.subject, mode_values(mode, setup, bike))
        goes, comes = _findings(asked.desk, step, asked.subject, asked.review)
        taking = taking_section(mode, setup, bike, goes, comes)
    return modes_page(name, setup, bike, surface, asked.place.across, taking)


def _bike(
    desk: Desk, record: Ref | None, subject: Ref | None, situation: Situation | None
) -> tuple[str, Bike, SetUp | None, str | None] | None:
    of = situation.refs.get("bike") if situation is not None else None
    if record is not None and record.kind == "bike" and record != of:
        loaded = desk.files.read(record)
        bike = loaded.record if loaded is not None else None
        return (bike.name or record.id, bike, None, None) if isinstance(bike, Bike) else None
    if situation is None or situation.bike is None or of is None or subject is None:
        return None
    return situation.bike.name or of.id, situation.bike, situation.setup, surface_of(situation)


def _across(across: int | None, bike: Bike, setup: SetUp | None) -> int:
    names = tuple(bike.modes)
    if across is not None:
        return across
    return names.index(setup.mode) if setup is not None and setup.mode in names else 0


def _taking(desk: Desk, subject: Ref, values: tuple[SetValue, ...]) -> Step | str:
    return offering(desk.files, subject, values)


def _findings(
    desk: Desk, step: Step | str, subject: Ref, before: Review | None = None
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """List the findings that a step would make go, and come."""
    if isinstance(step, str):
        return (), ()
    found = desk.previewed(step, subject, before)
    goes, comes = (
        tuple(f"{one.severity}, {one.message}" for one in each) for each in (found.goes, found.comes)
    )
    return goes, comes


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Move sideways, or take the mode or the preset that is looked at; whether the row is of a table."""
    if message.row.kind != "cells":
        return False
    if isinstance(message, messages.Stepped):
        _move(host, message.row, message.by)
    elif isinstance(message, messages.Chosen):
        _take(host, message.row)
    else:
        host.board.say("left and right look at another one, enter takes it")
    return True


def _move(host: Host, row: Row, by: int) -> None:
    section = next(one for one in host.board.page.sections if row in one.rows)
    last = len(section.columns) - section.last_stands - 1
    across = min(max(section.chosen + by, 0), last)
    host.place = attrs.evolve(host.place, across=across)
    host.draw()


def _take(host: Host, row: Row) -> None:
    """Show what taking the mode or preset looked at would change; enter takes it, escape leaves it."""
    desk, subject = host.desk, host.place.subject
    situation = desk.assembled(subject).situation if subject is not None else None
    found = _bike(desk, host.place.record, subject, situation)
    _, bike, setup, _ = found or ("", None, None, None)
    if bike is None or setup is None or subject is None:
        host.board.say("no set-up of this bike is shown: g, then enter on a session")
        return
    said: tuple[str, ...] = ()
    values: tuple[SetValue, ...]
    if row.path:
        preset = preset_at(bike, row.path[-1], setup, host.place.across)
        values = (SetValue(("setup", "damping"), row.path[-1]), SetValue(("setup", "preset"), preset))
    else:
        mode = mode_at(bike, _across(host.place.across, bike, setup)) or ""
        values, said = mode_values(mode, setup, bike), moves(mode, setup, bike)
    step = _taking(desk, subject, values)
    if isinstance(step, str):
        host.board.say(step)
        return
    taken = step
    goes, comes = _findings(desk, step, subject)
    lines = taking_lines(said, goes, comes, step.label)

    def answered(_: str) -> str:
        host.place = attrs.evolve(host.place, across=None)
        host.attempt(taken)
        return ""

    host.ask(
        Question(
            "enter takes it, escape leaves it",
            answered,
            declined="nothing was changed",
            said=tuple(printable(line) for line in lines),
            confirms=True,
        )
    )


def hinted(row: Row) -> str:
    return "left right look  enter takes it" if row.kind == "cells" else ""


def show_modes(host: Host) -> None:
    """Go to the modes of the bike whose record is shown, else of the one that is looked at."""
    place = host.place
    of_bike = place.room == "record" and place.record is not None and place.record.kind == "bike"
    record = place.record if of_bike else None
    host.go(attrs.evolve(place, room=MODES, record=record, across=None))
