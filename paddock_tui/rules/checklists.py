"""Rules about checklists: what is to fix, and what nobody has looked at when the rider goes out."""

from paddock_tui.facts.checklists import TO_FIX, Checked, ItemState, ListState
from paddock_tui.rules.core import (
    BRAKES,
    CAUTION,
    EVENT,
    HOLD,
    NOTE,
    RULES,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)
from paddock_tui.text import printable

_SEVERITIES = {"hold": HOLD, "serious": SERIOUS, "caution": CAUTION, "note": NOTE}

_MEANS = {
    "hold": "The list says hold: it is mended before the bike goes out.",
    "serious": "The list says serious: it is mended, or there is a reason why it can wait.",
    "caution": "The list says caution.",
    "note": "The list says note.",
}

_LOOK_AGAIN = Remedy("Mend it, look at it again, and only then answer the item ok.")


@rule(
    "checklist-item-to-fix",
    CAUTION,
    at="day:entries.{subject}.{subject}.checks.{subject}.status",
    rank=BRAKES,
)
def checklist_item_to_fix(checked: Checked) -> Result:
    """An item of a checklist was found to be in need of mending, and nobody has answered it ok since."""
    found: dict[tuple[bool, str], ItemState] = {}
    for item in (*(item for one in checked.lists for item in one.to_fix), *checked.others):
        key = item.in_day, item.id
        if item.status == TO_FIX and (key not in found or _severity(item) > _severity(found[key])):
            found[key] = item
    return [_to_fix(item) for item in found.values()]


def _severity(item: ItemState) -> int:
    return _SEVERITIES.get(item.to_fix or "", CAUTION)


def _to_fix(item: ItemState) -> RaisedFinding:
    text = _plain(item.text)
    where = f"{text}, on none of the lists" if not item.listed else text
    means = _MEANS.get(item.to_fix or "", "No list says how bad that is: at least a caution.")
    marked = _marked(item)
    return RaisedFinding(
        message=f"To fix: {where}.",
        why=f"{means} {marked[:1].upper()}{marked[1:]}.",
        remedy=_LOOK_AGAIN,
        severity=_SEVERITIES.get(item.to_fix or "", CAUTION),
        subject=item.id,
        role="day" if item.in_day else "session",
        path=_path(item),
        # A new mark is a new fact: what was accepted before it does not count for it.
        facts=f"to fix: {text}; {marked}",
    )


def _marked(item: ItemState) -> str:
    words = ["marked"]
    if item.since is not None:
        words.append(f"in session {item.since}")
    if item.check.at is not None:
        words.append(f"at {item.check.at:%H:%M}")
    if item.check.by is not None and item.check.by.strip():
        words.append(f"by {_plain(item.check.by)}")
    return " ".join(words) if len(words) > 1 else "marked, nobody wrote when"


@rule("checklist-items-open", CAUTION, at="session:checks", when=("to_come",), todo=ToDo(""), rank=EVENT)
def checklist_items_open(checked: Checked, stages_due: tuple[str, ...]) -> Result:
    """Items of a list that is due before going out are neither answered nor known from the record."""
    asked = _asked_by_rules()
    found = []
    for one in checked.lists:
        items = [item for item in one.open if item.answered_by not in asked]
        if items and one.stage in stages_due:
            found.append(_still_open(one, items))
    return found


def _still_open(one: ListState, items: list[ItemState]) -> RaisedFinding:
    count = f"{len(items)} item{'' if len(items) == 1 else 's'} open"
    return RaisedFinding(
        message=f"{_capital(_plain(one.name))}: {count}.",
        why="What nobody looked at may be loose, worn, leaking or left behind.",
        remedy=Remedy("Go through the list: each item ok, to fix, or not applicable."),
        subject=one.id,
        role="day" if items[0].in_day else "session",
        path=_path(items[0]),
        facts=f"{_plain(one.name)}: {count}",
    )


def _path(item: ItemState) -> tuple[str, ...]:
    return (*item.path, "status") if item.path else ("entries",)


def _asked_by_rules() -> set[str]:
    """List the values that rules ask for one by one, so that an item answered by one is not asked twice."""
    return {".".join(one.path) for one in RULES.values() if one.todo is not None and one.role == "session"}


def _plain(text: str) -> str:
    return " ".join(printable(text).split()).rstrip(".")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
