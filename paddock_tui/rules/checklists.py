"""Rules about checklists: what is to fix, and what nobody has looked at when the rider goes out."""

from paddock_tui.facts.checklists import Checked, ItemState, ListState
from paddock_tui.rules.core import (
    CAUTION,
    EVENT,
    RULES,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)
from paddock_tui.text import printable


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
    items = sorted(items, key=lambda item: _WORST.index(item.to_fix or "caution"))
    count = f"{len(items)} item{'' if len(items) == 1 else 's'} open"
    first, more = _plain(items[0].text), f", and {len(items) - 1} more" * (len(items) > 1)
    name = _capital(_plain(one.name))
    listed = "; ".join(_plain(item.text) for item in items[:6])
    left = f"; {len(items) - 6} more" * (len(items) > 6)
    return RaisedFinding(
        message=f"{name} open: {first}{more}.",
        quoted=(name, first),
        why="What nobody looked at may be loose, worn, leaking or left behind.",
        remedy=Remedy(f"Worst first, each ok, to fix, or not applicable: {listed}{left}."),
        subject=one.id,
        role="day" if items[0].in_day else "session",
        path=_path(items[0]),
        facts=f"{_plain(one.name)}: {count}",
    )


_WORST = ("hold", "serious", "caution", "note")


def _path(item: ItemState) -> tuple[str, ...]:
    return (*item.path, "status") if item.path else ("entries",)


def _asked_by_rules() -> set[str]:
    """List the values that rules ask for one by one, so that an item answered by one is not asked twice."""
    return {".".join(one.path) for one in RULES.values() if one.todo is not None and one.role == "session"}


def _plain(text: str) -> str:
    return " ".join(printable(text).split()).rstrip(".")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
