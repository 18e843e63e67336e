"""From the name that somebody types to a new record: its id, and what it starts with."""

import datetime as dt
import re
import unicodedata

from paddock_tui.desk.filing import creating
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.paths import Ref
from paddock_tui.records.trouble import Trouble
from paddock_tui.store.garage import GarageFiles


def id_of(name: str) -> str:
    """Make an id of a name: lower case without accents, everything that is no letter or digit a hyphen."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.casefold()).strip("-")


def naming(files: GarageFiles, kind: str, text: str, today: dt.date) -> tuple[Ref, Step | Trouble]:
    """Make the step that creates a record of a kind from what was typed for its name.

    A day takes a date and a venue, a session a bike; every other kind takes a name, which may hold
    anything that leaves an id. A name with a slash is refused: it looks like a path and is none.
    """
    words = text.split()
    if "/" in text or "\\" in text:
        return _refused(kind, Trouble(f'"{text.strip()}"', "a name without slashes"))
    if kind == "day":
        return _day(files, words, today)
    if kind == "session":
        return _session(files, words, today)
    name = " ".join(words)
    new_id = id_of(name)
    if not new_id:
        return _refused(kind, Trouble(f'"{text}"', "a name with at least one letter or digit"))
    ref = Ref(kind, new_id)
    return ref, creating(files, ref, {"name": name})


ASKED = {
    "day": "date and venue of the day, such as 2026-06-21 {venue}",
    "session": "bike of the session",
    "bike": "name of the new bike",
    "rider": "name of the new rider",
    "venue": "name of the new venue",
    "tyres": "name of the new tyre set",
    "profile": "name of the new profile",
    "checklist": "name of the new checklist",
}
"""What is asked for to make a record of each kind."""


def _day(files: GarageFiles, words: list[str], today: dt.date) -> tuple[Ref, Step | Trouble]:
    date = today
    if words and re.fullmatch(r"\d{4}-\d{2}-\d{2}", words[0]):
        try:
            date = dt.date.fromisoformat(words.pop(0))
        except ValueError:
            return _refused("day", Trouble("there is no such date", "a date, such as 2026-06-21"))
    venues = [ref.id for ref in files.listing("venue")]
    venue = id_of(" ".join(words))
    if venue not in venues:
        known = ", ".join(venues) or "none yet: make one first"
        return _refused("day", Trouble(f'"{" ".join(words)}"', f"a venue of this garage: {known}"))
    ref = Ref("day", f"{date.isoformat()}-{venue}")
    values: dict[str, Value] = {"date": date, "venue": venue}
    return ref, creating(files, ref, values)


def _session(files: GarageFiles, words: list[str], today: dt.date) -> tuple[Ref, Step | Trouble]:
    bikes = [ref.id for ref in files.listing("bike")]
    bike = id_of(" ".join(words))
    if bike not in bikes:
        known = ", ".join(bikes) or "none yet: make one first"
        return _refused("session", Trouble(f'"{" ".join(words)}"', f"a bike of this garage: {known}"))
    ref = Ref("session", f"{today.isoformat()}-1-{bike}")
    values: dict[str, Value] = {"date": today, "number": 1, "bike": bike}
    riders = [one.id for one in files.listing("rider") if "retired" not in files.data(one)]
    if len(riders) == 1:
        values["rider"] = riders[0]
    return ref, creating(files, ref, values)


def _refused(kind: str, trouble: Trouble) -> tuple[Ref, Trouble]:
    return Ref(kind, ""), trouble
