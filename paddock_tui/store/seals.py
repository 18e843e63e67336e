"""What tells files from any others that they were or will be: only of those that rest."""

import itertools
import operator
import time
from array import array
from collections.abc import Iterable, Sequence

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.listing import RESTS_NS, Stamp


def seal(files: GarageFiles, ref: Ref) -> str:
    """Return what tells a record's file as it was read; empty where it is not so by now."""
    stamp = files.stamp_as_read(ref) if ref not in files.staged else None
    return str(stamp) if stamp is not None and max(stamp[:2]) + RESTS_NS < time.time_ns() else ""


def seal_of(files: GarageFiles, refs: Iterable[Ref]) -> str:
    """Return what tells these files together, in their order; empty where one of them has no seal."""
    refs = list(refs)
    stamps = [stamp for stamp in map(files.stamp_as_read, refs) if stamp is not None]
    if len(stamps) < len(refs) or not files.staged.keys().isdisjoint(refs):
        return ""
    rested = time.time_ns() - RESTS_NS
    if any(max(map(operator.itemgetter(at), stamps), default=0) >= rested for at in (0, 1)):
        return ""
    return sealed(refs, stamps)


def sealed(refs: Sequence[Ref], stamps: Sequence[Stamp]) -> str:
    """Return what only these very files have, in this order, with these stamps."""
    # The seal of one file alone, as most ask, needs none.
    from paddock_tui.store.digests import digest

    try:
        # As plain numbers: words for so many take long.
        told = array("q", itertools.chain.from_iterable(stamps)).tobytes()
    except OverflowError:
        told = repr(tuple(stamps)).encode()
    names = "\n".join([ref.id for ref in refs])
    return digest(b"%d\n" % len(refs), names.encode(), b"\n", told)
