"""The first rows of a start: who rides."""

from collections.abc import Iterator

from paddock_tui.desk.files.names import naming
from paddock_tui.desk.start.about import listed
from paddock_tui.desk.start.ask import Ask, AskResult, asked, numbered, picked, tables
from paddock_tui.desk.start.context import Context
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref

_KEYS = ("pressure", "temperature", "speed", "distance", "mass", "volume")
UNITS = {
    "bar, C, km/h, kg": ("bar", "C", "km/h", "km", "kg", "l"),
    "psi, F, mph, lb": ("psi", "F", "mph", "mi", "lb", "US gal"),
    "psi, C, mph, kg": ("psi", "C", "mph", "mi", "kg", "l"),
}
"""What a rider reads, by what the row calls it."""


def rider_asks(context: Context) -> Iterator[Ask]:
    """Ask who rides, how heavy in kit, in which group, and in which units."""
    files, rider, section = context.files, context.about.rider, "rider"
    yield record_ask(context, "rider", rider, section, "your name")
    if rider is None:
        return
    yield asked(
        files,
        context.units,
        section,
        rider,
        ("weight",),
        how="with leathers, boots, helmet and protectors",
    )
    yield asked(files, context.units, section, rider, ("group",))
    yield _units_ask(context, rider, section)


def record_ask(
    context: Context, kind: str, there: Ref | None, section: str, how: str, label: str = ""
) -> Ask:
    """Ask which record of a kind it is: one that is there by its digit, or the name of a new one."""
    files = context.files
    names = tuple(one.id for one in listed(files, kind))[:9]

    def answer(text: str) -> AskResult | InputError:
        name = picked(text, names)
        if name in names:
            return AskResult(None, Ref(kind, name))
        ref, step = naming(files, kind, text, context.now.date())
        return AskResult(step, ref) if isinstance(step, Step) else step

    said = f"{numbered(names)}; its number and enter, or a new name" if names else how
    called = _called(context, there)
    return Ask(kind, section, label or "name", said, answer, called, names, free=True)


def _called(context: Context, ref: Ref | None) -> str:
    """Return what a record calls itself, as it was typed; its id where it has no name."""
    name = context.files.data(ref).get("name") if ref is not None else None
    return name if isinstance(name, str) and name.strip() else ref.id if ref is not None else ""


def _units_ask(context: Context, rider: Ref, section: str) -> Ask:
    files = context.files
    names = tuple(UNITS)
    held = files.data(rider).get("units")
    value = next((name for name, units in UNITS.items() if held == dict(zip(_KEYS, units, strict=True))), "")

    def answer(text: str) -> AskResult | InputError:
        name = picked(text, names)
        if name not in UNITS:
            return InputError(f'"{text.strip()}"', "a digit", numbered(names))
        units: dict[str, Value] = dict(zip(_KEYS, UNITS[name], strict=True))
        return tables(files, rider, {("units",): units}, f"units {name}")

    said = value or ("your own" if held else "")
    return Ask("units", section, "units", numbered(names), answer, said, names)
