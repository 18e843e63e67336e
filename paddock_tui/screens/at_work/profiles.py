"""Profiles: taken into a session, saved from one, and made for another rider or another bike."""

from paddock_tui.desk.sessions.profile_for_another import profile_for
from paddock_tui.desk.sessions.profiles import profiles_for, saving_as, taking
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.new_record import made
from paddock_tui.screens.question import Question


def take_it(host: Host) -> None:
    """Take a profile's set-up over into the session."""
    session = host.place.subject
    if session is None or session.kind != "session":
        return
    known = profiles_for(host.desk.files, session)
    if not known:
        host.board.say("there is no profile for this bike: m, save profile makes one")
        return
    names = [ref.id for ref in known]

    def answered(text: str) -> str:
        found = [ref for ref in known if ref.id == text.strip()] or [
            ref for ref in known if text.strip() and ref.id.startswith(text.strip())
        ]
        if len(found) != 1:
            return f"one of: {', '.join(names)}"
        step = taking(host.desk.files, session, found[0])
        if isinstance(step, InputError):
            return step.sentence()
        host.attempt(step)
        return ""

    host.ask(Question(f"profile ({', '.join(names)})", answered))


def save_it(host: Host) -> None:
    """Save the session's set-up as a profile."""
    session = host.place.subject
    if session is None or session.kind != "session":
        return

    def answered(text: str) -> str:
        new_id = id_of(text)
        return made(host, Ref("profile", new_id), saving_as(host.desk.files, session, new_id, text.strip()))

    host.ask(Question("name of the new profile", answered))


def make_for_another(host: Host) -> None:
    """Make a profile for another rider or another bike, to start from."""
    subject = host.place.subject
    if subject is None:
        return
    files = host.desk.files
    known = [
        ref for kind in ("rider", "bike") for ref in files.listing(kind) if "retired" not in files.data(ref)
    ]
    data = files.data(subject)
    others = [ref for ref in known if data.get(ref.kind) != ref.id]
    if not others:
        host.board.say("there is no other rider and no other bike: g, then n")
        return
    names = ", ".join(ref.id for ref in others)

    def answered(text: str) -> str:
        found = [ref for ref in others if text.strip() and ref.id.startswith(text.strip().casefold())]
        if len(found) != 1:
            return f"one of: {names}"
        ref, step = profile_for(host.desk.files, host.desk.about(subject), found[0])
        if isinstance(step, InputError):
            return step.sentence()
        host.do(step)
        host.open(ref)
        return ""

    host.ask(Question(f"for which rider or bike ({names})", answered))
