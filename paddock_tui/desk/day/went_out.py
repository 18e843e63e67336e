"""Going out is stamped, with the verdict and the findings of that moment; nothing is judged by them."""

import datetime as dt
from collections.abc import Iterator, Mapping

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.records.edits import MISSING, Change, Edit, Missing, Step, Value
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules import Review
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

OUT: Path = ("out",)


def going_out(files: GarageFiles, session: Ref, now: dt.time, judged: Review) -> Step:
    """Make the one step that stamps going out and keeps what was known then."""
    stamp = setting_value(files, session, ("went_out",), now)
    edits = [edit for change in stamp.changes if isinstance(change, Change) for edit in change.edits]
    edits += _kept(lookup(files.data(session), OUT), _as_it_is(now, judged))
    return Step(f"went out {now:%H:%M}", (Change(session, tuple(edits)),) if edits else ())


def _as_it_is(now: dt.time, judged: Review) -> dict[str, Value]:
    found: dict[str, dict[str, Value]] = {}
    for one in judged.findings:
        found.setdefault(one.rule, {})[one.subject] = str(one.severity)
    kept: dict[str, Value] = {"at": now, "verdict": judged.verdict}
    return {**kept, "findings": found} if found else kept


def _kept(old: Value | Missing, new: dict[str, Value]) -> list[Edit]:
    """Return the edits from what was kept at an earlier stamp to what is known now."""
    if not isinstance(old, Mapping):
        return [Edit(OUT, MISSING, new)]
    return list(_between(old, new, OUT))


def _between(old: Mapping[str, Value], new: Mapping[str, Value], at: Path) -> Iterator[Edit]:
    """Change one table into another; a table that is gone or new is one edit."""
    for key in dict.fromkeys((*old, *new)):
        before, after = old.get(key, MISSING), new.get(key, MISSING)
        if isinstance(before, Mapping) and isinstance(after, Mapping):
            yield from _between(before, after, (*at, key))
        elif before != after:
            yield Edit((*at, key), before, after)
