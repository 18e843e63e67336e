"""What others may change in the files of a garage: the folder that they lie in, and how one is changed."""

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path


def _append(text: str) -> Callable[[Path], None]:
    def change(path: Path) -> None:
        path.write_text(f"{path.read_text()}\n{text}\n")

    return change


def _before(text: str) -> Callable[[Path], None]:
    def change(path: Path) -> None:
        path.write_text(f"{text}\n{path.read_text()}")

    return change


def _instead(pattern: str, text: str) -> Callable[[Path], None]:
    def change(path: Path) -> None:
        found, count = re.subn(pattern, text, path.read_text(), flags=re.MULTILINE)
        path.write_text(found if count else f"# nothing of this\n{found}")

    return change


def _gone(path: Path) -> None:
    path.unlink()


def _again(path: Path) -> None:
    path.write_text(path.read_text())


def _renamed(path: Path) -> None:
    path.with_name(f"{path.stem}-new.toml").write_text(f'was = ["{path.stem}"]\n{path.read_text()}')
    path.unlink()


def _copied_a_day_before(path: Path) -> None:
    date = dt.date.fromisoformat(path.stem[:10]) - dt.timedelta(days=1)
    text = re.sub(r"^date = .*$", f"date = {date}", path.read_text(), flags=re.MULTILINE)
    path.with_name(f"{date}{path.stem[10:]}.toml").write_text(text)


def _broken(path: Path) -> None:
    path.write_text(f"{path.read_text()}\nthis is = = no file\n")


EDITS: dict[str, tuple[str, Callable[[Path], None]]] = {
    "a fall": ("sessions", _append('[incidents.7]\nwhat = "fall"\nmoving = true\nat = 10:00:00')),
    "a hit to the head": ("sessions", _append('[incidents.8]\nwhat = "head hit"\nhead_contact = true')),
    "a weave": ("sessions", _append('[symptoms.7]\nwhat = "weaves"\ngrade = 3')),
    "work": ("sessions", _append('[work.7]\nwhat = "caliper"\nat = 08:00:00')),
    "thin pads": ("sessions", _instead(r"^front_pads = .*$", 'front_pads = "0.4 mm"')),
    "other pressure": ("sessions", _instead(r'^front = ".*bar"$', 'front = "1.10 bar"')),
    "another rider": ("sessions", _instead(r'^rider = ".*"$', 'rider = "ines"')),
    "retired": ("sessions", _before("retired = true")),
    "taken out": ("sessions", _gone),
    "one more": ("sessions", _copied_a_day_before),
    "another number": ("sessions", _instead(r"^number = .*$", "number = 9")),
    "written again": ("sessions", _again),
    "a broken session": ("sessions", _broken),
    "a tyre that goes on": ("tyres", _append("[front.answers]\n")),
    "a plugged tyre": ("tyres", _instead(r"^\[front\]$", '[front]\nrepair = "plug"')),
    "a set taken out": ("tyres", _gone),
    "a set renamed": ("tyres", _renamed),
    "another venue": ("days", _instead(r"^venue = .*$", 'venue = "nowhere"')),
    "no timing": ("days", _before('timing = "forbidden"')),
    "a day taken out": ("days", _gone),
    "an inspected bike": ("days", _instead(r"^inspected = .*$", "inspected = false")),
    "a longer lap": ("venues", _instead(r"^length = .*$", 'length = "9.9 km"')),
    "a higher venue": ("venues", _instead(r"^altitude = .*$", 'altitude = "1900 m"')),
    "a bike changed": ("bikes", _instead(r"^most_help = .*$", "most_help = 1")),
    "a rider changed": ("riders", _instead(r"^group = .*$", 'group = "race"')),
    "a list changed": ("checklists", _instead(r"^to_fix = .*$", 'to_fix = "note"')),
    "a limit": (".", _append('[limits.pressure-lost-unanswered]\nsettled = "0.5 bar"')),
}
