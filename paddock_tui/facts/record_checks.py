"""What stands in the records as such: figures that cannot be, and names that the bike does not have."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.facts.core import fact
from paddock_tui.facts.essentials.paths import rests_on
from paddock_tui.facts.situation import Dangling, Disputed, Impossible
from paddock_tui.records.bike import Bike
from paddock_tui.records.contradictions import Contradiction, contradictions
from paddock_tui.records.disputes import Dispute
from paddock_tui.records.edits import MISSING
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import field_at, label_in
from paddock_tui.records.impossible import likely_slip
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.presets_in_use import presets_offered
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import BY_HAND


@attrs.frozen
class Figure:
    """A figure outside what can be: where it stands, as written, the band, and the slip it most likely is.

    `essential` says that the verdict rests on it.
    """

    role: str
    path: Path
    label: str
    written: str
    band: str
    slip: str = ""
    essential: bool = False


@attrs.frozen
class NotOnBike:
    """A name in the set-up that the bike does not have."""

    path: Path
    what: str
    name: str
    offered: tuple[str, ...]


@fact("figures outside what can be")
def impossible_figures(impossible: tuple[Impossible, ...], refs: Mapping[str, Ref]) -> tuple[Figure, ...]:
    """Return every figure in the records of the situation that lies outside the band of its field."""
    return tuple(_figures(impossible, refs))


def _figures(impossible: tuple[Impossible, ...], refs: Mapping[str, Ref]) -> Iterator[Figure]:
    for one in impossible:
        field = field_at(refs[one.role].kind if one.role in refs else one.role, one.path)
        band = field.shape.band() if field is not None else None
        if field is None or band is None:
            continue
        heading = ", ".join(part for part in field.section[-2:] if part != "set-up")
        label = f"{field.label} ({heading})" if heading else field.label
        low, high, unit = band
        value = value_at(one.record, one.path)
        yield Figure(
            one.role,
            one.path,
            label,
            field.shape.show(value),
            f"{low:g} to {high:g} {unit}".strip(),
            likely_slip(value, field.shape),
            rests_on(one.role, one.path),
        )


@fact("names that the bike does not have")
def not_on_bike(setup: SetUp, bike: Bike, electronics: str, suspension: str) -> tuple[NotOnBike, ...]:
    """Return every riding mode, control, adjuster, damping mode, preset or offset that only the set-up
    knows.
    """
    damping = bike.damping.get(setup.damping or "")
    named: tuple[tuple[str, str | None, tuple[str, ...]], ...] = (
        ("mode", setup.mode, tuple(bike.modes)),
        ("damping", setup.damping, (BY_HAND, *bike.damping)),
        ("preset", setup.preset, presets_offered(bike, setup.damping) if damping else (setup.preset or "",)),
    )
    words = {"mode": "riding mode", "damping": "damping mode", "preset": "preset"}
    found = [
        NotOnBike(("setup", key), words[key], name, tuple(sorted(offered)))
        for key, name, offered in named
        if name is not None and name not in offered
    ]
    tables: tuple[tuple[str, str, Mapping[str, object], Mapping[str, object]], ...] = (
        ("controls", "control", setup.controls, bike.controls),
        ("adjusters", "adjuster", setup.adjusters, bike.adjusters),
        ("offsets", "offset", setup.offsets if damping else {}, damping.offsets if damping else {}),
    )
    for key, what, held, offered_here in tables:
        found += [
            NotOnBike(("setup", key, name), what, label_of(name), tuple(sorted(offered_here)))
            for name in held
            if name not in offered_here
        ]
    return tuple(found)


@attrs.frozen
class AtOdds:
    """A contradiction inside one record of the situation."""

    role: str
    found: Contradiction


@fact("records at odds with themselves")
def records_at_odds(records: Mapping[str, Record]) -> tuple[AtOdds, ...]:
    """Return every contradiction inside a record of the situation, by role."""
    return tuple(AtOdds(role, found) for role in sorted(records) for found in contradictions(records[role]))


@attrs.frozen
class DisputedFact:
    """A fact that two laptops changed differently: what it is called, and what both say."""

    role: str
    ref: Ref
    dispute: Dispute
    label: str
    values: str


@fact("facts that two laptops disagree on")
def facts_in_dispute(disputed: tuple[Disputed, ...]) -> tuple[DisputedFact, ...]:
    """Return every fact of the session, or of what it refers to, that is disputed."""
    return tuple(
        DisputedFact(
            one.role, one.ref, one.dispute, label_in(one.ref.kind, one.dispute.path), _both(one.dispute)
        )
        for one in disputed
    )


def _both(dispute: Dispute) -> str:
    return f"{_short(dispute.ours, dispute.theirs)} or {_short(dispute.theirs, dispute.ours)}"


def _short(value: object, beside: object) -> str:
    """Write what a side says; of a table what the other does not say too."""
    if value is MISSING:
        return "not there"
    if not isinstance(value, Mapping):
        return str(value)
    other = beside if isinstance(beside, Mapping) else {}
    own = [one for key, one in value.items() if key not in other or other[key] != one]
    return ", ".join("more" if isinstance(one, Mapping) else str(one) for one in own) or "less of it"


@fact("references that find no record")
def lost_references(dangling: tuple[Dangling, ...]) -> tuple[Dangling, ...]:
    """Return every reference of the session, or of what it refers to, that finds nothing in the garage."""
    return dangling
