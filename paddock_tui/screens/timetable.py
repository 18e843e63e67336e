"""The day's times on the screen: a group's whole timetable in one line, and a day that runs late."""

from paddock_tui.desk.day.late import delaying, late_minutes
from paddock_tui.desk.day.moving import moved_to, moving
from paddock_tui.desk.day.timetable import EXAMPLE, read_times, timetabling
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.timetable import group_today
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.text import printable


def enter(host: Host, day: Ref) -> None:
    """Ask for a line about a day: the times of a group, or by how much it runs late."""

    def answered(text: str) -> str:
        step = _step(host, day, text)
        if isinstance(step, InputError):
            return printable(step.sentence())
        host.do(step)
        return ""

    def typed(text: str) -> None:
        step = _step(host, day, text) if text.strip() else None
        said = step.sentence() if isinstance(step, InputError) else step.label if step is not None else ""
        host.board.preview(*([printable(said)] if said else [_HOW]))

    host.ask(Question("times", answered, typed, said=(_HOW,)))


_HOW = f"a group's times: {EXAMPLE}, or novice 9:00-9:20 10:00-10:20; late 15 shifts the rest"


def late(host: Host, session: Ref, text: str) -> Step | InputError | None:
    """Make the step of a line about the day of a session: it runs late, or its rider is moved; else None."""
    move = moved_to(text)
    if move is not None:
        return moving(host.desk.files, session, *move, host.desk.now())
    minutes = late_minutes(text)
    if minutes is None:
        return None
    named = host.desk.files.data(session).get("day")
    if not isinstance(named, str):
        return InputError("this session has no day", "a session of a day", "enter it on the session page")
    return delaying(host.desk.files, Ref("day", named), minutes, host.desk.now())


def _step(host: Host, day: Ref, text: str) -> Step | InputError:
    minutes = late_minutes(text)
    files = host.desk.files
    if minutes is not None:
        return delaying(files, day, minutes, host.desk.now())
    loaded = files.read(day)
    if loaded is None or not isinstance(loaded.record, RidingDay):
        return InputError(f"{day.id} cannot be read", "a day that can be read", "correct its file first")
    times = read_times(text, loaded.record, _group(host, loaded.record))
    return times if isinstance(times, InputError) else timetabling(files, day, times)


def _group(host: Host, day: RidingDay) -> str | None:
    data = host.desk.files.data(host.place.subject) if host.place.subject is not None else {}
    rider, bike = (data.get(key) for key in ("rider", "bike"))
    return group_today(
        day, rider if isinstance(rider, str) else None, bike if isinstance(bike, str) else None
    )
