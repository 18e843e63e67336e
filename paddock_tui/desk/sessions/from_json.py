"""A set-up taken back from JSON, as `show --format json` prints it, or as somebody sent it."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import SET_UP
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.reading import read_record
from paddock_tui.store.data import edits_toward
from paddock_tui.store.garage import GarageFiles

EXPECTED = "JSON with a set-up, as `show REF --format json` prints it"


def set_up_from_json(files: GarageFiles, ref: Ref, text: str) -> Step | Sequence[InputError]:
    """Make the step that gives a session or a profile the set-up of a JSON text, whole.

    What the text does not hold is cleared. What cannot be read, or is no value of a set-up, refuses all.
    """
    if ref.kind not in ("session", "profile"):
        return [InputError(str(ref), "a session or a profile", "only those have a set-up")]
    wanted = _set_up(text)
    if isinstance(wanted, InputError):
        return [wanted]
    read = read_record(ref.kind, {SET_UP: wanted}, bike_of(files, ref))
    unknown = [InputError(f'"{spell(one)}"', "a value of a set-up", "leave it out") for one in read.unknown]
    if read.troubles or unknown:
        return [*read.troubles, *unknown]
    held = files.data(ref).get(SET_UP, {})
    if not isinstance(held, Mapping):
        return [InputError(f"{ref.id} has no set-up that can be read", "a table", "correct its file first")]
    edits = tuple(edits_toward(held, wanted, (SET_UP,)))
    against = refusals(files, ref, edits)
    if against:
        return against
    count = f"{len(edits)} value{'' if len(edits) == 1 else 's'}"
    return Step(f"took a set-up from JSON: {count}", (Change(ref, edits),) if edits else ())


def _set_up(text: str) -> Mapping[str, Any] | InputError:
    """Find the set-up in a JSON text: of a whole record, of its data, or by itself."""
    try:
        found = json.loads(text, parse_constant=_no_number)
    except RecursionError:
        return InputError("JSON nested too deeply", EXPECTED)
    except json.JSONDecodeError as error:
        return InputError(f"no JSON: {error.msg}", EXPECTED, line=error.lineno)
    except ValueError as error:
        return InputError(str(error), EXPECTED)
    for key in ("data", SET_UP):
        if isinstance(found, Mapping) and isinstance(found.get(key), Mapping):
            found = found[key]
    return found if isinstance(found, Mapping) and found else InputError("no set-up in it", EXPECTED)


def _no_number(word: str) -> float:
    raise ValueError(f"{word}, which is no number")
