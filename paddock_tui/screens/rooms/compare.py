"""Two set-ups compared: what differs from a profile, a session or a riding mode."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.pages.compare import Side, compare_page
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.screens.action import Action, needs_subject
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.screens.subject import gone
from paddock_tui.text import printable

_NEWEST = 3
"""So many sessions are named beside the profiles: three lines hold no more."""


def _ask(host: Host) -> None:
    """Ask for a profile, a session or a riding mode, and show what differs from what is looked at."""
    subject = host.place.subject
    if subject is None:
        return

    def answered(text: str) -> str:
        found = _sides(host.desk, subject, text.strip())
        if isinstance(found, str):
            return found
        host.go(attrs.evolve(host.place, room=ROOM.id, other=text.strip()))
        return ""

    said = (_some(_known(host.desk, subject), _modes(host.desk, subject)),)
    host.ask(Question("compare with which profile, session or riding mode", answered, said=said))


def _page(asked: PageContext) -> Page | None:
    """Return the page of what differs; what is gone where one of the two cannot be read any more."""
    desk, subject = asked.desk, asked.subject
    if subject is None:
        return None
    found = _sides(desk, subject, asked.place.other)
    if not isinstance(found, str):
        return compare_page(*found, bike_of(desk.files, subject))
    if not desk.files.data(subject):
        return gone(subject)
    said = f"{asked.place.other}: no other side of this bike; {found}"
    return Page(str(subject), (Section("compare", (Row("", printable(said), kind="text", key="none"),)),))


def _sides(desk: Desk, subject: Ref, other: str) -> tuple[Side, Side] | str:
    """Return the two sides, or say what is wrong: a profile, a session or a riding mode of the same bike."""
    setup, modes = _setup(desk, subject), _modes(desk, subject)
    if setup is None:
        return f"{subject.id} cannot be read"
    left = Side(f"{subject.id}{f', mode {setup.mode}' if setup.mode else ''}", setup)
    if other in modes:
        return left, Side(f"the same, mode {other}", attrs.evolve(setup, mode=other))
    exact = _called(desk, subject, other)
    known = exact or _known(desk, subject)
    found = exact or [ref for ref in known if len(other) >= 3 and ref.id.startswith(other)]
    if len(found) != 1:
        return _some(found or known, modes)
    theirs = _setup(desk, found[0])
    if theirs is None:
        return f"{found[0].id} cannot be read"
    return left, Side(f"{found[0].id}{f', mode {theirs.mode}' if theirs.mode else ''}", theirs)


def _called(desk: Desk, subject: Ref, name: str) -> list[Ref]:
    """List the other set-ups of this bike that have a whole id: all others need not be gone through."""
    bike, there = desk.files.data(subject).get("bike"), (Ref("profile", name), Ref("session", name))
    return [
        ref
        for ref in there
        if ref != subject and desk.files.path_of(ref) is not None and _bike(desk, ref) == bike
    ]


def _known(desk: Desk, subject: Ref) -> list[Ref]:
    """List what a set-up of this bike may be compared with: profiles, then sessions, the newest first."""
    bike = desk.files.data(subject).get("bike")
    others = (*desk.files.listing("profile"), *reversed(desk.files.listing("session")))
    return [ref for ref in others if ref != subject and _bike(desk, ref) == bike]


def _bike(desk: Desk, ref: Ref) -> object:
    """Return the bike that a set-up is of: a session's by its row, where it has one, as there are many."""
    row = desk.files.rows.of(ref) if ref.kind == "session" else None
    return desk.files.data(ref).get("bike") if row is None else row.bike or None


def _modes(desk: Desk, subject: Ref) -> tuple[str, ...]:
    bike = bike_of(desk.files, subject)
    return tuple(bike.modes) if bike is not None else ()


def _some(refs: list[Ref], modes: tuple[str, ...]) -> str:
    """Name what there is to choose from: every profile and riding mode, of the sessions the newest."""
    profiles = [ref.id for ref in refs if ref.kind == "profile"]
    sessions = [ref.id for ref in refs if ref.kind == "session"]
    names = (*profiles, *modes, *sessions[:_NEWEST])
    more = " ..." if len(sessions) > _NEWEST else ""
    return (
        printable(f"one of: {', '.join(names)}{more}")
        if names
        else "there is nothing to compare with: m, save profile makes something"
    )


def _setup(desk: Desk, ref: Ref) -> SetUp | None:
    loaded = desk.files.read(ref)
    record = loaded.record if loaded is not None else None
    return record.setup if isinstance(record, Session | Profile) else None


ROOM = Room(
    id="compare",
    page=_page,
    about="whatever",
    action=Action(
        "compare",
        "",
        "compare",
        "what differs from a profile, session or mode",
        needs_subject,
        do=_ask,
    ),
    stands_alone=True,
)
