"""The page behind `why`: what a row is, what may stand there, where it stands, which rules use it."""

from paddock_tui.pages.advised import working_section
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import spell
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Counted
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.rules.rules_of_value import rules_using
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable


def why_page(
    loaded: Loaded, field: Field, working: tuple[str, ...] = (), explained: tuple[Section, ...] = ()
) -> Page:
    """Explain one value of one record: what it does (`explained`) first, then where it stands and comes from.

    `working` is the calculation that stands beside its row.
    """
    value = value_at(loaded.record, field.path) if loaded.record is not None else None
    said = "not known" if value is None else field.shape.show(value)
    rows = [
        _said("value", said),
        _said("what it is", field.help),
        _said("may be", field.shape.expected),
    ]
    band = field.shape.band()
    if band is not None:
        low, high, unit = band
        figures = f"{show_number(low)} to {show_number(high)} {unit}".strip()
        rows.append(_said("can be", f"{figures}; anything else is a hold until put right"))
    rows.append(_said("comes from", _origin(loaded, field)))
    rows.append(_said("stands in", f"{loaded.name}, {spell(field.path)}"))
    if isinstance(loaded.record, Session):
        rows.append(_said("next session", "copied" if field.carry else "not copied: it is entered again"))
    used = rules_using(loaded.ref.kind, field.path)
    rules = tuple(
        Row(one.id, one.source, kind="text", aside=f"{one.severity}, about {one.about}", key=one.id)
        for one in used
    )
    sections = (
        *explained,
        Section(printable(field.label), tuple(rows)),
        *((working_section(working),) if working else ()),
        Section("rules that use it", rules, "" if rules else "no rule names it"),
    )
    return Page(f"why · {printable(' · '.join((*field.section, field.label)))}", sections)


def _origin(loaded: Loaded, field: Field) -> str:
    """Say where a value comes from, as far as the record tells."""
    if field.path[:2] == ("setup", "adjusters"):
        counted = getattr(loaded.record, "counted", {}).get(field.path[-1])
        if isinstance(counted, Counted) and counted.on is not None:
            by = f" by {counted.by}" if counted.by else ""
            return f"counted on the bike on {counted.on.isoformat()}{by}"
        return "assumed: carried over, or typed without a count on the bike"
    source = getattr(loaded.record, "copied_from", None)
    if field.carry and source:
        return f"typed, or copied with the set-up of {source}"
    return "what was typed"


def _said(label: str, text: str) -> Row:
    return Row(label, printable(text), kind="text", key=label)
