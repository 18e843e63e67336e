"""What of an entry in a growing table stands on the page: what its word asks for, and what is known."""

from collections.abc import Mapping

from paddock_tui.records.paths import Path
from paddock_tui.records.race import STOPS

_ANSWER = ("found", "done", "test", "by", "on", "done_at")
_CLEARED = ("cleared_by", "cleared_at", "cleared_on")
_HEAD = ("moving", "head_contact", "concussion", *_CLEARED, "helmet_replaced")
_OFF = ("where", *_HEAD, "at_fault", "inspected_again", "mended", *_ANSWER)
_LEAK = ("mended", *_ANSWER)
_OFFICIAL = (*_ANSWER, "mended", "shown_to")

_INCIDENTS: Mapping[str, tuple[str, ...]] = {
    "fall": (*_HEAD, "at_fault", "inspected_again", "mended"),
    "unwell": ("signs", *_CLEARED),
    "false neutral": ("count",),
    "practice starts": ("count",),
    "missed markers": ("count",),
    "warning lamp": ("lamp", "lit", "off_after_key", *_LEAK),
    "leak": ("fluid", "on_tyre", *_LEAK),
    "off the track": _OFF,
    "contact": _OFF,
    "black flag": ("at_fault", *_OFFICIAL),
    "refused by inspection": _OFFICIAL,
    "mend by": ("due", *_OFFICIAL),
    "airbag fired": ("rearmed", *_ANSWER),
    "helmet dropped": ("helmet_replaced", *_ANSWER),
}

_GRADED = ("bars wobble", "weaves", "tucks", "front locks", "rear locks")
_PARTS = ("brakes fade", "throttle sticks", "engine cuts out", "clutch slips", "jumps out of gear")
_FELT = ("corner", "end", "each_lap", "answer")
_SYMPTOMS: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(_GRADED, (*_FELT, "grade", "cause", *_ANSWER, "at")),
    **dict.fromkeys(_PARTS, (*_FELT, "cause", *_ANSWER, "at")),
}

_CHECKED = tuple(key for key in _ANSWER if key != "by")
_WHEEL = ("end", "torqued", "pumped", "rechecked_hot", "checked_by", "second_look", *_CHECKED)
_WORK: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(("wheel out", "caliper", "brake", "axle", "pads"), _WHEEL),
    "yokes": (*_WHEEL, "steering_free"),
    **dict.fromkeys(("oil", "filter", "plug"), ("torqued", "rechecked_hot", "checked_by", *_CHECKED)),
    "workshop": _CHECKED,
}

_STOPPED = ("laps_ridden", "restart", "laps_left")
_EVENTS: Mapping[str, tuple[str, ...]] = dict.fromkeys(STOPS, _STOPPED)

_ALWAYS = {
    "events": ("what", "at"),
    "incidents": ("what", "at", "note"),
    "symptoms": ("what",),
    "work": ("what", "at", "by"),
}
_ASKED = {"events": _EVENTS, "incidents": _INCIDENTS, "symptoms": _SYMPTOMS, "work": _WORK}
_OTHERWISE = {"events": (), "incidents": (), "symptoms": _FELT, "work": ("torqued", "checked_by", *_CHECKED)}
"""What any other word of the table asks for."""


def stands(path: Path, entry: Mapping[str, object]) -> bool:
    """Return whether a value of an entry has a row: it is known, or the entry's word asks for it.

    An entry that is not begun has the row of its word alone, or of what was seen of a tyre.
    """
    table, key = path[0], path[-1]
    if key in entry:
        return True
    if table == "look":
        return key in ("seen", "at", "answer") or (key in _ANSWER and "cut" in _words(entry.get("seen")))
    if table not in _ASKED:
        return True
    what = entry.get("what")
    if what is None:
        return key == "what" or bool(entry)
    return key in _ALWAYS[table] or key in _ASKED[table].get(str(what), _OTHERWISE[table])


def _words(seen: object) -> tuple[object, ...]:
    return tuple(seen) if isinstance(seen, list | tuple) else ()
