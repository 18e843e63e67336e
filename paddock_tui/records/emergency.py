"""What a stranger has to know when a rider is down. No kind of record: it stands in no registry.

Its file is the rider's own, and neither merged, searched, renamed, exported nor described with the records.
"""

import datetime as dt
from collections.abc import Mapping
from typing import Any

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import one, specs
from paddock_tui.records.shapes import Shape, Text, Word

LONGEST = 100
"""Characters of a line: two lines of a screen that is read by torchlight."""

YEARLY_DAYS = 365
"""After so many days it is asked whether what stands here still holds."""


class ShortText(Text):
    """A text short enough that all of them stand on one screen."""

    expected = f"a text of at most {LONGEST} characters"

    def read(self, text: str) -> str | InputError:
        if len(text.strip()) > LONGEST:
            return InputError(f"{len(text.strip())} characters", self.expected, "say the most important part")
        return super().read(text)


_LINE = ShortText()


@attrs.frozen
class Emergency:
    """What a stranger reads; each value is in the rider's own words."""

    consent: dt.date | None = one(
        c.DAY, "rider agreed", "since when: whoever uses this laptop can read it", key="consent"
    )
    name: str | None = one(_LINE, "name", "in full, as in the passport")
    born: dt.date | None = one(c.DAY, "born", "date of birth")
    call_first: str | None = one(_LINE, "CALL FIRST", "who, and the number with its country code")
    call_then: str | None = one(_LINE, "then call", "who else, and the number")
    blood_group: str | None = one(
        Word("O-", "O+", "A-", "A+", "B-", "B+", "AB-", "AB+", formerly={"0-": "O-", "0+": "O+"}),
        "blood group",
        "as on the blood card; leave it out if not sure",
    )
    allergies: str | None = one(_LINE, "ALLERGIES", "none, where there are none")
    medicines: str | None = one(_LINE, "MEDICINES", "what is taken, and how much; none, where there are none")
    conditions: str | None = one(
        _LINE, "CONDITIONS", "illness, implant, pregnancy; none, where there are none"
    )
    insurance: str | None = one(_LINE, "insurance", "insurer, number of the policy, number to call")
    as_of: dt.date | None = one(c.DAY, "as of", "when the rider last read all of it and found it right")


@attrs.frozen
class EmergencyRead:
    """What could be read; `written` is what cannot, as it stands in the file, with what is wrong with it."""

    known: Emergency
    written: Mapping[str, tuple[str, InputError]]


def shapes() -> dict[str, tuple[str, str, Shape[Any]]]:
    """Return label, help and shape of each key, in order."""
    return {
        key: (spec.label, spec.help, spec.shape)
        for key, (_, spec) in specs(Emergency).items()
        if spec.shape is not None
    }


def read_emergency(data: Mapping[str, Any]) -> EmergencyRead:
    """Read the data of a file: a value that cannot be read is kept as it stands."""
    known: dict[str, Any] = {}
    written: dict[str, tuple[str, InputError]] = {}
    declared = shapes()
    for key, raw in data.items():
        if key not in declared:
            written[key] = str(raw), InputError("a key that is not known", "one of the page's rows")
            continue
        found = declared[key][2].load(raw)
        if isinstance(found, InputError):
            written[key] = str(raw), found
        else:
            known[key] = found
    return EmergencyRead(Emergency(**known), written)


def is_due(found: Emergency, today: dt.date) -> bool:
    """Return whether it has to be asked again if all of it still holds."""
    return found.as_of is None or not 0 <= (today - found.as_of).days <= YEARLY_DAYS
