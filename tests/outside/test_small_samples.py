"""Published figures of small samples: which methods of them this program uses."""

from tests.outside.rows import Row

ROWS: list[Row] = []

_PAIRED = "paired samples judged by signs or signed ranks: changes are judged by whole sessions instead"
_EFFECTS = "spread between groups by random effects: luck between sessions is bounded in another way"
NOT_USED = {
    **{f"SMP-{number:02}": _PAIRED for number in (1, 2, 3, 4, 5, 6, 7, 10)},
    **{f"SMP-{number:02}": _EFFECTS for number in (11, 12, 13, 15, 16)},
    "SMP-19": "equivalence within a margin: nothing here claims that two things are equal",
}
