"""One thing that the guided start asks, and the helpers by which its answers become steps."""

from collections.abc import Callable, Mapping, Sequence

import attrs

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.values import field_of, setting, shown
from paddock_tui.entry.row_typing import TypingKind
from paddock_tui.entry.typing_kinds import typing_kind
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Edit, Missing, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref, spell
from paddock_tui.records.shapes import Flag, Word
from paddock_tui.store.data import edits_toward, lookup
from paddock_tui.store.garage import GarageFiles


@attrs.frozen
class AskResult:
    """What an answer does: a step, and the record that the start goes on with where it is a new one."""

    step: Step | None = None
    about: Ref | None = None


_OR_TYPED = "; its number and enter, or type another"

Answering = Callable[[str], AskResult | InputError]


@attrs.frozen
class Ask:
    """One row of the start.

    `value` is what stands there already, `how` what can be typed. A digit picks one of `choices`. `offered`
    is what enter takes where nothing was typed. `free`: something else than the choices can be typed, so that
    a digit alone takes none. `typing` is how a digit begins, as on any such row.
    """

    key: str
    section: str
    label: str
    how: str
    answer: Answering
    value: str = ""
    choices: tuple[str, ...] = ()
    offered: str = ""
    typing: TypingKind = "words"
    ref: Ref | None = None
    path: Path = ()
    free: bool = False

    @property
    def is_open(self) -> bool:
        """Whether nothing stands there."""
        return not self.value


def picked(text: str, choices: Sequence[str]) -> str:
    """Return the choice that a digit stands for, or the only one that begins as typed; else the text."""
    typed = text.strip()
    if typed.isdecimal() and 0 < int(typed) <= len(choices):
        return choices[int(typed) - 1]
    begun = [one for one in choices if typed and one.casefold().startswith(typed.casefold())]
    same = [one for one in begun if one.casefold() == typed.casefold()]
    return same[0] if same else begun[0] if len(begun) == 1 else typed


def numbered(choices: Sequence[str]) -> str:
    """Say the choices with the digit that picks each."""
    return "  ".join(f"{place} {one}" for place, one in enumerate(choices, 1))


def texts(
    files: GarageFiles,
    ref: Ref,
    pairs: Sequence[tuple[Path, str]],
    units: Units | None = None,
    label: str = "",
) -> AskResult | InputError:
    """Make the step that sets values from texts, all or none; `label` names it where one line answers two."""
    step = setting(files, ref, [(spell(path), text) for path, text in pairs], units)
    if not isinstance(step, Step):
        return step[0]
    return AskResult(attrs.evolve(step, label=label) if label and step.changes else step)


def tables(
    files: GarageFiles, ref: Ref, puts: Mapping[Path, Value | Missing], label: str
) -> AskResult | InputError:
    """Make the step that puts plain values or whole tables, over what stands there; MISSING drops it.

    A table that is answered anew is changed value by value: as a whole it could only be dropped or added.
    """
    data = files.data(ref)
    edits: list[Edit] = []
    for path, value in puts.items():
        old = lookup(data, path)
        if isinstance(old, Mapping) and isinstance(value, Mapping):
            edits += edits_toward(old, value, path)
        elif old != value:
            edits.append(Edit(path, old, value))
    against = refusals(files, ref, edits)
    if against:
        return against[0]
    return AskResult(Step(label, (Change(ref, tuple(edits)),) if edits else ()))


def held(files: GarageFiles, ref: Ref | None, path: Path) -> str:
    """Write what stands at a path; empty where nothing does."""
    value = lookup(files.data(ref), path) if ref is not None else MISSING
    return "" if value is MISSING or ref is None else shown(value, field_of(files, ref, path))


def asked(
    files: GarageFiles,
    units: Units,
    section: str,
    ref: Ref,
    path: Path,
    *,
    label: str = "",
    how: str = "",
    offered: str = "",
    choices: tuple[str, ...] = (),
    free: bool = False,
) -> Ask:
    """Make the row of one value of a record, typed as on its own page; words of a choice by a digit.

    `free`: the choices are the usual ones, and something else can be typed.
    """
    field = field_of(files, ref, path)
    if field is None:
        raise KeyError(spell(path))
    words = field.shape.choices if isinstance(field.shape, Word) else choices
    if isinstance(field.shape, Flag):
        words = ("yes", "no")
    kind, value = typing_kind(field.shape), lookup(files.data(ref), path)

    def answer(text: str) -> AskResult | InputError:
        return texts(files, ref, [(path, picked(text, words) if words else text)], units)

    return Ask(
        f"{ref} {spell(path)}",
        section,
        label or field.label,
        f"{numbered(words)}{_OR_TYPED if free else ''}" if words else how or field.help,
        answer,
        "" if value is MISSING else shown(value, field),
        tuple(words),
        offered,
        "words" if words else kind,
        ref,
        path,
        free,
    )
