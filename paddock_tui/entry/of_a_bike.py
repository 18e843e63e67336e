"""What a bike has, each thing in one line as its manual says it: a control, a riding mode, an adjuster.

`0-10 up off keeps`, short `0-10uok`: levels 0 to 10, the higher number helps most, it can be off, and it
keeps its value when the ignition goes off; `n` says that it cannot be off. Words in the bike's order stand
for a choice. Nothing is assumed: what is not typed is left out, and so not known.
"""

import re
from collections.abc import Mapping, Sequence

from paddock_tui.records.edits import Value
from paddock_tui.records.electronics import HELP_FUNCTIONS, STATE_FUNCTIONS
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of

_IGNITION = "keeps or resets with the ignition off"
CONTROL_HOW = (
    "e.g. 0-10 up off keeps: lowest-highest or its words, up or down helps most, off or always, "
    f"{_IGNITION}; short: 0-10uok"
)
_HOW_OF: Mapping[str, str] = {
    **dict.fromkeys(
        ("throttle", "power"),
        "e.g. sharp even soft up keeps: its words in the bike's order or lowest-highest, up or down helps "
        f"most, {_IGNITION}",
    ),
    "engine-braking": "e.g. 1-3 up always keeps: lowest-highest or its words, up or down brakes least, off "
    f"or always, {_IGNITION}",
    **dict.fromkeys(
        ("launch", "shifter"),
        f"e.g. on keeps: a switch; both up off: its words; 1-3: lowest-highest; {_IGNITION}",
    ),
    "pit-limiter": f"e.g. 40 60 80 off: its speeds, off if it can be; {_IGNITION}",
}
ADJUSTER_HOW = "e.g. 18c: 18 clicks, counted from closed; 15to: 15 turns from open"
SPLIT_HOW = f"{ADJUSTER_HOW}; 18c fast 4to where slow and fast are two; left or right: one leg"
DAMPING_HOW = "electronic damping only: its name, then its presets: live calm, keen, rough road"
MODE_HOW = "e.g. rain wet t=6: its name, then dry, damp, wet, road or any; t=6 fixes, t=5-10 bounds traction"


def control_how(function: str) -> str:
    """Say how a control of a function is typed in one line."""
    return _HOW_OF.get(function, CONTROL_HOW)


_RANGE = re.compile(r"(\d{1,3})\s*(?:-|–|\.\.|to)\s*(\d{1,3})\s*(.*)", re.DOTALL)
_FLAGS = re.compile(r"(?:[udnkr]|o\d*)+")
_FLAG = re.compile(r"[udnkr]|o\d*")
_WORDS = {"off": "o", "always": "n", "keeps": "k", "resets": "r"}
_ENDS = {"up": "u", "down": "d"}
"""Which end helps most: of a quickshifter and the like, of which neither does, they are words of its own."""
_USES = ("dry", "damp", "wet", "road", "any")
_ADJUSTER = re.compile(
    r"(?:(\d+(?:[.,]\d+)?)\s*(?:-|–|to)\s*)?(\d+(?:[.,]\d+)?)\s*(clicks?|turns?|t|mm)?\s*"
    r"(?:(?:from\s+)?(closed|open|c|o))?"
)

_LEG = re.compile(r"(?<=[\s\w])\s+(left|right|both|l|r|b)(?:\s+leg)?$")
_LEGS = {"l": "left", "r": "right", "b": "both"}
SPLITS = ("compression", "rebound")
"""What may have a slow and a fast adjuster of its own."""

Table = dict[str, Value]


def control_of(function: str, text: str, speed: str = "km/h") -> Table | InputError:
    """Read a control of a function: its levels, words or speeds, and what its manual says of them."""
    typed = text.casefold().replace(",", " ").strip()
    found = _RANGE.fullmatch(typed)
    words = (found[3] if found is not None else typed).split()
    state = function in STATE_FUNCTIONS
    marks, names = _parted(words, state or found is None, {} if state else _ENDS)
    if isinstance(marks, InputError):
        return marks
    made = _levels(found, names) if found is not None else _named(function, names, speed)
    if isinstance(made, InputError):
        return made
    ends = _ends(made)
    wrong = _marked(made, marks, function, ends)
    return wrong if wrong is not None else made


def _parted(
    words: Sequence[str], has_names: bool, ends: Mapping[str, str]
) -> tuple[list[str] | InputError, list[str]]:
    """Part the words of a choice from the marks behind them: u, d, o, n, k, r, fused or written out."""
    marks: list[str] = []
    names: list[str] = []
    for word in words:
        spelled = {**_WORDS, **ends}.get(word, word) if not has_names or names else word
        if _FLAGS.fullmatch(spelled) and not (has_names and len(spelled) > 1 and not names):
            marks += _FLAG.findall(spelled)
        elif has_names:
            names.append(word)
        else:
            return InputError(f'"{word}"', "up, down, off, keeps or resets", CONTROL_HOW), []
    return marks, names


def _levels(found: "re.Match[str]", names: Sequence[str]) -> Table | InputError:
    low, high = int(found[1]), int(found[2])
    if names or low >= high:
        return InputError(f'"{found[0]}"', "the lowest number, then the highest", CONTROL_HOW)
    return {"kind": "level", "levels": [low, high]}


def _named(function: str, names: Sequence[str], speed: str) -> Table | InputError:
    if names == ["on"]:
        return {"kind": "switch"}
    if names and all(name.isdecimal() for name in names):
        if function == "pit-limiter":
            return {"kind": "speed", "speeds": [f"{name} {speed}" for name in names]}
        return InputError(f'"{" ".join(names)}"', "lowest and highest, as 0-10", CONTROL_HOW)
    if len(names) < 2 or len(set(names)) < len(names):
        return InputError(f'"{" ".join(names)}"', "two words or more, or lowest-highest", CONTROL_HOW)
    return {"kind": "state" if function in STATE_FUNCTIONS else "choice", "choices": list(names)}


def _ends(made: Table) -> Sequence[Value]:
    held = made.get("levels", made.get("choices", ()))
    assert isinstance(held, Sequence)
    return list(held)


def _marked(made: Table, marks: Sequence[str], function: str, ends: Sequence[Value]) -> InputError | None:
    """Put into a control what its marks say; an error where two of them exclude each other."""
    kinds = ["ud" if mark in "ud" else "kr" if mark in "kr" else "on" for mark in marks]
    if len(set(kinds)) < len(kinds):
        return InputError(
            " ".join(marks), "each said once: up or down, off or not, keeps or resets", CONTROL_HOW
        )
    for mark in marks:
        if mark in "ud":
            key = "frees_most" if function == "engine-braking" else "most_help"
            if not ends or (function not in HELP_FUNCTIONS and key == "most_help"):
                return InputError(f'"{mark}"', "up or down only where more or less can help", "leave it out")
            made[key] = ends[-1] if mark == "u" else ends[0]
        elif mark in "kr":
            made["key_off"] = "keeps" if mark == "k" else "resets"
        else:
            made["off"] = int(mark[1:]) if len(mark) > 1 else mark == "o"
    return None


def adjusters_of(end: str, what: str, text: str) -> dict[str, Table] | InputError:
    """Read what turns at one place, by name: one adjuster, or the slow one and behind `fast` the fast one."""
    parts = re.split(r"\bfast\b", text.casefold().removeprefix("slow "), maxsplit=1)
    if len(parts) == 1 or what not in SPLITS:
        made = adjuster_of(end, what, text)
        return made if isinstance(made, InputError) else {_name_of(end, what): made}
    found: dict[str, Table] = {}
    for part, speed in zip(parts, ("slow", "fast"), strict=True):
        made = adjuster_of(end, f"{what} {speed}", part.strip(" ,;"))
        if isinstance(made, InputError):
            return made
        found[_name_of(end, f"{what} {speed}")] = made
    return found


def names_at(end: str, what: str) -> tuple[str, ...]:
    """Return the names that an adjuster of one place may have: whole, slow and fast."""
    speeds = (f"{what} slow", f"{what} fast") if what in SPLITS else ()
    return tuple(_name_of(end, one) for one in (what, *speeds))


def _name_of(end: str, what: str) -> str:
    return f"{end}-{what.replace(' ', '-')}"


def adjuster_of(end: str, what: str, text: str) -> Table | InputError:
    """Read an adjuster: how many clicks, turns or mm, which end they are counted from, which leg it is in."""
    typed, leg = text.casefold().strip(), ""
    if end == "front" and (named := _LEG.search(typed)) is not None:
        typed, leg = typed[: named.start()].strip(), _LEGS[named[1][0]]
    found = _ADJUSTER.fullmatch(typed)
    if found is None:
        return InputError(f'"{text.strip()}"', ADJUSTER_HOW, "count as the manual counts")
    low, high = (float((number or "0").replace(",", ".")) for number in (found[1], found[2]))
    if low >= high:
        return InputError(f"{low:g} to {high:g}", "the lowest number, then the highest", ADJUSTER_HOW)
    unit = {"t": "turn", "m": "mm", "c": "click"}.get((found[3] or "")[:1])
    made: Table = {
        "end": end,
        "what": what,
        "unit": unit or ("turn" if what == "preload" else "click"),
        "range": [_plain(low), _plain(high)],
    }
    if found[4]:
        made["counted_from"] = "closed" if found[4][0] == "c" else "open"
    if leg:
        made["leg"] = leg
    return made


def damping_of(text: str) -> tuple[str, Table] | InputError:
    """Read a way of damping other than by hand: its name, and the presets that it offers."""
    first, _, rest = text.strip().partition(" ")
    presets = [word.strip() for word in rest.split(",")] if "," in rest else rest.split()
    name = id_of(first)
    if not name or "" in presets or len(set(presets)) < len(presets):
        return InputError(f'"{text.strip()}"', "the name of the damping mode, then each preset", DAMPING_HOW)
    return name, {"presets": list(presets)}


def _plain(number: float) -> int | float:
    return int(number) if number.is_integer() else number


def mode_of(text: str, calls: Mapping[str, str]) -> tuple[str, Table] | InputError:
    """Read a riding mode: its name, what it is made for, and what it fixes or bounds.

    `calls` gives the control of each short name and each name.
    """
    made: Table = {}
    fixes: Table = {}
    limits: Table = {}
    names: list[str] = []
    for word in text.split():
        call, equals, value = word.partition("=")
        if equals and call.casefold() not in calls:
            return InputError(f'"{call}"', f"a control of this bike: {', '.join(calls)}", MODE_HOW)
        if equals:
            control = calls[call.casefold()]
            span = re.fullmatch(r"(\d+)-(\d+)", value)
            if span is not None:
                limits[control] = [int(span[1]), int(span[2])]
            elif value:
                fixes[control] = int(value) if value.isdecimal() else value
        elif word.casefold() in _USES and names:
            made["use"] = word.casefold()
        else:
            names.append(word)
    name = id_of(" ".join(names))
    if not name:
        return InputError(f'"{text.strip()}"', "the name of the mode first", MODE_HOW)
    made |= {key: table for key, table in (("fixes", fixes), ("limits", limits)) if table}
    return name, made
