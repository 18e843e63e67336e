"""What tells files from any others that they were or will be: only of those that rest."""

import hashlib
import itertools
import time
from array import array
from collections.abc import Iterable

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.listing import RESTS_NS


def seal(files: GarageFiles, ref: Ref) -> str:
    """Return what tells a record's file as it was read; empty where it is not so by now."""
    stamp = files.stamp_as_read(ref) if ref not in files.staged else None
    return str(stamp) if stamp is not None and max(stamp[:2]) + RESTS_NS < time.time_ns() else ""


def seal_of(files: GarageFiles, refs: Iterable[Ref]) -> str:
    """Return what tells these files together, in their order; empty where one of them has no seal."""
    read = [(ref.id, files.stamp_as_read(ref) if ref not in files.staged else None) for ref in refs]
    stamps = [stamp for _, stamp in read if stamp is not None]
    rested = time.time_ns() - RESTS_NS
    if len(stamps) < len(read) or any(
        changed >= rested or status >= rested for changed, status, *_ in stamps
    ):
        return ""
    try:
        figures = array("q", itertools.chain.from_iterable(stamps))
    except OverflowError:
        return ""
    return hashlib.sha256(
        "\n".join([name for name, _ in read]).encode() + b"\n" + figures.tobytes()
    ).hexdigest()
