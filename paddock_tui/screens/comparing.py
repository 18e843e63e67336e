"""Starting levels, a profile for somebody else, and two set-ups compared: acts of the palette."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.advice.starting_point import starting_point
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.desk.sessions.profile_for_another import profile_for
from paddock_tui.pages.compare import Side, compare_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.screens.question import Question
from paddock_tui.text import printable

if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.screens.main import MainScreen


_NEWEST = 3
"""So many sessions are named beside the profiles: three lines hold no more."""


def start(screen: "MainScreen") -> None:
    """Offer the starting level of every aid as one step, with what it would change."""
    subject = screen.place.subject
    if subject is None:
        return
    found = starting_point(screen.desk.about(subject))
    if not found.puts:
        screen.board.say(found.left[0] if found.left else "this bike has no aids to start with")
        return
    step = offering(screen.desk.files, subject, found.puts)
    if isinstance(step, str):
        screen.board.say(step)
        return
    previewed(screen, step, subject, found.left)


def previewed(screen: "MainScreen", step: Step, subject: Ref, left: tuple[str, ...] = ()) -> None:
    """Show what a step would do to values and findings; enter does it, escape leaves it."""
    words = screen.desk.previewed(step, subject).words()
    said = (printable(words), *(printable(one) for one in left))

    def answered(_: str) -> str:
        screen.attempt(step)
        return ""

    words = "enter sets them, escape leaves it"
    screen.ask(Question(words, answered, declined="nothing was changed", said=said, confirms=True))


def profile(screen: "MainScreen") -> None:
    """Make a profile for another rider or another bike, to start from."""
    subject = screen.place.subject
    if subject is None:
        return
    files = screen.desk.files
    known = [
        ref for kind in ("rider", "bike") for ref in files.listing(kind) if "retired" not in files.data(ref)
    ]
    data = files.data(subject)
    others = [ref for ref in known if data.get(ref.kind) != ref.id]
    if not others:
        screen.board.say("there is no other rider and no other bike: g, then n")
        return
    names = ", ".join(ref.id for ref in others)

    def answered(text: str) -> str:
        found = [ref for ref in others if text.strip() and ref.id.startswith(text.strip().casefold())]
        if len(found) != 1:
            return f"one of: {names}"
        ref, step = profile_for(screen.desk.files, screen.desk.about(subject), found[0])
        if isinstance(step, InputError):
            return step.sentence()
        screen.do(step)
        screen.open(ref)
        return ""

    screen.ask(Question(f"for which rider or bike ({names})", answered))


def compare(screen: "MainScreen") -> None:
    """Ask for a profile, a session or a riding mode, and show what differs from what is looked at."""
    subject = screen.place.subject
    if subject is None:
        return

    def answered(text: str) -> str:
        found = sides(screen.desk, subject, text.strip())
        if isinstance(found, str):
            return found
        screen.go(attrs.evolve(screen.place, room="compare", other=text.strip()))
        return ""

    said = (_some(_known(screen.desk, subject), _modes(screen.desk, subject)),)
    screen.ask(Question("compare with which profile, session or riding mode", answered, said=said))


def page(desk: "Desk", subject: Ref, other: str) -> Page | None:
    """Return the page of what differs; None where one of the two cannot be read any more."""
    found = sides(desk, subject, other)
    return None if isinstance(found, str) else compare_page(*found, bike_of(desk.files, subject))


def sides(desk: "Desk", subject: Ref, other: str) -> tuple[Side, Side] | str:
    """Return the two sides, or say what is wrong: a profile, a session or a riding mode of the same bike."""
    setup, modes = _setup(desk, subject), _modes(desk, subject)
    if setup is None:
        return f"{subject.id} cannot be read"
    left = Side(f"{subject.id}{f', mode {setup.mode}' if setup.mode else ''}", setup)
    if other in modes:
        return left, Side(f"the same, mode {other}", attrs.evolve(setup, mode=other))
    known = _known(desk, subject)
    exact = [ref for ref in known if ref.id == other]
    found = exact or [ref for ref in known if len(other) >= 3 and ref.id.startswith(other)]
    if len(found) != 1:
        return _some(found or known, modes)
    theirs = _setup(desk, found[0])
    if theirs is None:
        return f"{found[0].id} cannot be read"
    return left, Side(f"{found[0].id}{f', mode {theirs.mode}' if theirs.mode else ''}", theirs)


def _known(desk: "Desk", subject: Ref) -> list[Ref]:
    """List what a set-up of this bike may be compared with: profiles, then sessions, the newest first."""
    bike = desk.files.data(subject).get("bike")
    others = (*desk.files.listing("profile"), *reversed(desk.files.listing("session")))
    return [ref for ref in others if ref != subject and desk.files.data(ref).get("bike") == bike]


def _modes(desk: "Desk", subject: Ref) -> tuple[str, ...]:
    bike = bike_of(desk.files, subject)
    return tuple(bike.modes) if bike is not None else ()


def _some(refs: list[Ref], modes: tuple[str, ...]) -> str:
    """Name what there is to choose from: every profile and riding mode, of the sessions the newest."""
    profiles = [ref.id for ref in refs if ref.kind == "profile"]
    sessions = [ref.id for ref in refs if ref.kind == "session"]
    names = (*profiles, *modes, *sessions[:_NEWEST])
    more = " ..." if len(sessions) > _NEWEST else ""
    return printable(f"one of: {', '.join(names)}{more}") if names else "there is nothing to compare with"


def _setup(desk: "Desk", ref: Ref) -> SetUp | None:
    loaded = desk.files.read(ref)
    record = loaded.record if loaded is not None else None
    return record.setup if isinstance(record, Session | Profile) else None
