"""Which values refer to other records."""

from typing import Final

from paddock_tui.records.paths import ANY, Path

_OF: Final = ("answers", ANY, ANY, "of")

_FIELDS: Final[dict[str, tuple[tuple[Path, str], ...]]] = {
    "bike": ((("costs", ANY, "rider"), "rider"), (_OF, "session")),
    "rider": ((_OF, "session"),),
    "tyres": ((("front", "continues"), "tyres"), (("rear", "continues"), "tyres"), (_OF, "session")),
    "profile": ((("bike",), "bike"), (("rider",), "rider"), (("taken_from",), "session")),
    "day": (
        (("venue",), "venue"),
        (("entries", ANY, ANY, "noise", "elsewhere"), "venue"),
        (("entries", ANY, ANY, "marked", ANY, "tyres"), "tyres"),
    ),
    "session": (
        (("day",), "day"),
        (("bike",), "bike"),
        (("rider",), "rider"),
        (("tyres",), "tyres"),
        (("copied_from",), "session"),
        (("taken_from",), "profile"),
    ),
}
"""Plain data, since files are read before the records' classes are; a test holds it to what these declare."""

KEYED_BY: Final = {"day": ("entries", ("rider", "bike"))}
"""The table of a kind whose keys are ids, with the kind of record that each key in turn names."""


def reference_fields(kind: str) -> tuple[tuple[Path, str], ...]:
    """List the paths of a kind that refer to another record, with the kind they refer to."""
    return _FIELDS.get(kind, ())
