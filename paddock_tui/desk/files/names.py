"""From the name that somebody types to a new record: its id, and what it starts with."""

import datetime as dt
import re

from paddock_tui.desk.files.records import creating
from paddock_tui.desk.sessions.numbers import free_session, next_number
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of, is_id
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles


def naming(files: GarageFiles, kind: str, text: str, today: dt.date) -> tuple[Ref, Step | InputError]:
    """Make the step that creates a record of a kind from what was typed for its name.

    A day takes a date and a venue, a session a bike; every other kind takes a name, which may hold
    anything that leaves an id. A name with a slash is refused: it looks like a path and is none.
    """
    words = text.split()
    if "/" in text or "\\" in text:
        return _refused(kind, InputError(f'"{text.strip()}"', "a name without slashes", "leave it out"))
    if kind == "day":
        return _day(files, words, today)
    if kind == "session":
        return _session(files, words, today)
    name = " ".join(words)
    new_id = id_of(name)
    if not new_id:
        return _refused(
            kind,
            InputError(f'"{name}"', "a name with at least one letter or digit", "add one, a to z or 0 to 9"),
        )
    if not is_id(new_id):
        return _refused(
            kind, InputError("a name that is too long", "a short name", "at most 80 letters and digits")
        )
    ref = Ref(kind, new_id)
    return ref, creating(files, ref, {"name": name})


ASKED = {
    "day": "date and venue of the day, e.g. 2026-06-21 {venue}",
    "session": "bike of the session",
    "bike": "name of the new bike",
    "rider": "name of the new rider",
    "venue": "name of the new venue",
    "tyres": "name of the new tyre set",
    "profile": "name of the new profile",
    "checklist": "name of the new checklist",
}
"""What is asked for to make a record of each kind."""


def _day(files: GarageFiles, words: list[str], today: dt.date) -> tuple[Ref, Step | InputError]:
    date = today
    if words and re.fullmatch(r"\d{4}-\d{2}-\d{2}", words[0]):
        try:
            date = dt.date.fromisoformat(words.pop(0))
        except ValueError:
            return _refused(
                "day", InputError("there is no such date", "a date, e.g. 2026-06-21", "type it again")
            )
    venue = id_of(" ".join(words))
    if files.path_of(Ref("venue", venue)) is None:
        return _refused("day", _no_such(files, "venue", " ".join(words)))
    ref = Ref("day", f"{date.isoformat()}-{venue}")
    values: dict[str, Value] = {"date": date, "venue": venue}
    return ref, creating(files, ref, values)


def _session(files: GarageFiles, words: list[str], today: dt.date) -> tuple[Ref, Step | InputError]:
    bike = id_of(" ".join(words))
    if files.path_of(Ref("bike", bike)) is None:
        return _refused("session", _no_such(files, "bike", " ".join(words)))
    number = next_number(files, today, bike)
    ref = free_session(files, today, number, bike)
    values: dict[str, Value] = {"date": today, "number": number, "bike": bike}
    riders = [one.id for one in files.listing("rider") if "retired" not in files.data(one)]
    if len(riders) == 1:
        values["rider"] = riders[0]
    return ref, creating(files, ref, values)


def _no_such(files: GarageFiles, kind: str, typed: str) -> InputError:
    there = [ref.id for ref in files.listing(kind)]
    mend = f"type its name, e.g. {there[0]}" if there else f"make the {kind} first: g, then n on its list"
    return InputError(f'"{typed}"', f"a {kind} of this garage: {', '.join(there) or 'none yet'}", mend)


def _refused(kind: str, trouble: InputError) -> tuple[Ref, InputError]:
    return Ref(kind, ""), trouble
