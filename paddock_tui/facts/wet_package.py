"""The wet package: what of a set-up is less wet than it would be, and what of one is left over in the dry.

A value counts as met when it is as wet as the package or wetter. Aids, engine braking, launch and riding
mode are judged by themselves, since where they start in the wet is known; damping and preload only against
what this rider last had in the dry on this bike, since no count by itself is a dry one or a wet one.
"""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.facts.changes import is_damping
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.facts.suggested_levels import new_here, state_of_rear
from paddock_tui.facts.suspension import damping_unused, what_of
from paddock_tui.facts.tyre_targets import hot_target_of
from paddock_tui.facts.wet_aids import wet_aids
from paddock_tui.facts.wet_damping import wet_suspension
from paddock_tui.facts.wet_values import Conditions, WetValue, conditions_of
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import NOT_KNOWN, control_difference
from paddock_tui.records.electronics import function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.tyres import TyreSet

_RAIN_TYRES = ("wet", "intermediate")


@attrs.frozen
class WetPackage:
    """The values that are less wet than the package, and what no value of it can set.

    `untold` names damping that may stand as it did in the dry, for all that is written down.
    """

    values: tuple[WetValue, ...]
    not_set: tuple[str, ...] = ()
    untold: tuple[str, ...] = ()

    def __str__(self) -> str:
        return "; ".join(str(one) for one in self.values)

    @property
    def dry_damping(self) -> tuple[WetValue, ...]:
        """The damping that stands as it did in the dry, or nearly."""
        return tuple(one for one in self.values if one.part == "damping")


@attrs.frozen
class InTheDry:
    """What a rider last had in the dry: the set-up, the session's id, the profile it was taken from."""

    setup: SetUp
    id: str
    profile: str | None = None


@attrs.frozen
class LeftWet:
    """What is left over from the wet on a dry track, and what the rider last had there."""

    what: tuple[str, ...]
    dry: InTheDry | None

    def __str__(self) -> str:
        return "; ".join(self.what)


def package_of(
    setup: SetUp,
    bike: Bike,
    conditions: Conditions,
    dry: SetUp | None = None,
    tyres: TyreSet | None = None,
    *,
    limits: Limits,
) -> WetPackage:
    """Return what of a set-up is not as wet as the package, for these conditions and this dry set-up."""
    aids = wet_aids(setup, bike, conditions)
    suspension = wet_suspension(setup, bike, dry, conditions.damp, limits)
    words = (*_tyres(tyres, conditions), *suspension.words, *aids.words)
    values = (*(_with_way(one, bike) for one in aids.values), *suspension.values)
    return WetPackage(values, words, suspension.untold)


def _with_way(value: WetValue, bike: Bike) -> WetValue:
    """Return a value of an aid as it is written everywhere: with the way it goes, where that is known."""
    if value.path[1] != "controls" or value.old == NOT_KNOWN:
        return value
    moved = control_difference(value.path[2], value.old, value.new, bike).words
    return attrs.evolve(value, moved=moved)


def in_the_dry(
    rider: str | None, history: History, source: Session | None = None, source_id: str | None = None
) -> InTheDry | None:
    """Return what a rider last had in the dry on this bike: the session copied from, else the last ridden."""
    if source is not None and COLUMN.get(source.surface or "") == "dry" and source.rider == rider:
        return InTheDry(source.setup, source_id or "the session before", source.taken_from)
    # Where who rides is not known it may be whoever rode last.
    one = _LAST_DRY.of(history).get((rider, rider is None))
    return None if one is None else InTheDry(one.session.setup, one.id, one.session.taken_from)


_Dry = Mapping[tuple[str | None, bool], PastSession]
"""The last session in the dry by rider, and with no rider named whoever rode."""


def _in_the_dry(one: PastSession) -> bool:
    return one.ridden and COLUMN.get(one.session.surface or "") == "dry"


def _dry_again(so_far: _Dry, one: PastSession) -> _Dry:
    return {**so_far, (one.rider, False): one, (None, True): one} if _in_the_dry(one) else so_far


_LAST_DRY: Along[_Dry] = Along("last-dry", {}, _dry_again)


@fact("the surface", at="session:surface")
def wet_ground(session: Session, surface: str, column: str) -> str | Absent:
    """Return the surface where the wet package is for it; absent in the dry, and on the road."""
    return ABSENT if column == "dry" or session.kind == "road" else surface


_Adjusters = Mapping[str | None, Mapping[str, float]]


def _dry_adjusters(so_far: _Adjusters, one: PastSession) -> _Adjusters:
    if not _in_the_dry(one):
        return so_far
    known = so_far.get(one.rider, {})
    new = one.session.setup.adjusters
    same = all(key in known and known[key] == value for key, value in new.items())
    return so_far if same else {**so_far, one.rider: {**known, **new}}


_DRY_ADJUSTERS: Along[_Adjusters] = Along("dry-adjusters", {}, _dry_adjusters)
"""What each adjuster last stood at in the dry, by rider."""


def _with_adjusters(dry: SetUp, rider: str | None, history: History) -> SetUp:
    """Return a dry set-up; an adjuster that nobody wrote down then stands as it last did in the dry."""
    before = _DRY_ADJUSTERS.of(history).get(rider, {}) if rider is not None else {}
    missing = {key: value for key, value in before.items() if key not in dry.adjusters}
    return attrs.evolve(dry, adjusters={**missing, **dry.adjusters}) if missing else dry


@fact("the wet package", show=str)
def wet_package(
    session: Session,
    setup: SetUp,
    bike: Bike,
    wet_ground: str,
    group: str,
    rear_tyre_kind: str,
    tyres: TyreSet,
    source: Session | None,
    history: History,
    refs: Mapping[str, Ref],
    limits: Limits,
) -> WetPackage | Absent:
    """Return what of the set-up is less wet than the package; absent where nothing of it is open."""
    rear = state_of_rear(session, history, tyres)
    dry = in_the_dry(session.rider, history, _own(session, source), session.copied_from)
    venue = refs["venue"].id if "venue" in refs else None
    first = bool(new_here(session.rider, venue, history))
    conditions = conditions_of(group, wet_ground, rear_tyre_kind, rear, first=first)
    before = _with_adjusters(dry.setup, session.rider, history) if dry is not None else None
    found = package_of(setup, bike, conditions, before, tyres, limits=limits)
    return found if found.values or found.untold else ABSENT


@fact("what is left over from the wet", show=str)
def left_wet(
    session: Session, setup: SetUp, bike: Bike, column: str, source: Session | None, history: History
) -> LeftWet | Absent:
    """Return a riding mode made for wet, or maps and damping as in the wet just before, on a dry track.

    A soft map by itself is anybody's choice in the dry: it counts only where this rider had it in the wet
    session before, and a sharper one when last in the dry. So do damping and preload, and so does a riding
    mode for the wet only where it was not ridden in the dry as well.
    """
    if column != "dry" or session.kind == "road":
        return ABSENT
    own = _own(session, source)
    dry = in_the_dry(session.rider, history, own, session.copied_from)
    mode = bike.modes.get(setup.mode or "")
    by_choice = dry is not None and dry.setup.mode == setup.mode
    if mode is not None and mode.use == "wet" and not by_choice:
        return LeftWet((f"riding mode {setup.mode}",), dry)
    before = own or next((one.session for one in reversed(history.past) if one.rider == session.rider), None)
    if dry is None or before is None or COLUMN.get(before.surface or "", "dry") == "dry":
        return ABSENT
    found = tuple(
        f"{label_of(name)} {now}, in the dry {then}"
        for name in sorted(bike.controls)
        if (now := _map(name, setup, bike)) is not None
        and now == _map(name, before.setup, bike)
        and (then := _map(name, dry.setup, bike)) is not None
        and _softer(name, bike, now, then)
    )
    turned = tuple(_still_turned(setup, before.setup, dry.setup, bike))
    return LeftWet((*found, *turned), dry) if found or turned else ABSENT


def _still_turned(setup: SetUp, wet: SetUp, dry: SetUp, bike: Bike) -> Iterator[str]:
    """Say which damping and preload stands as in the wet, and stood elsewhere in the dry."""
    for name, adjuster in sorted(bike.adjusters.items()):
        now, then = setup.adjusters.get(name), dry.adjusters.get(name)
        if what_of(name, adjuster)[1] == "preload" or is_damping(name, bike):
            here = not damping_unused(name, setup, bike) and now == wet.adjusters.get(name)
            if here and now is not None and then is not None and now != then:
                yield f"{label_of(name)} {show_number(now)}, in the dry {show_number(then)}"


def _own(session: Session, source: Session | None) -> Session | None:
    """Return the session copied from where it was this bike's."""
    return source if source is not None and source.bike == session.bike else None


def _map(name: str, setup: SetUp, bike: Bike) -> Setting | None:
    control = bike.controls[name]
    if function_of(name, control) not in ("throttle", "power"):
        return None
    return value_in_force(name, setup, bike)


def _softer(name: str, bike: Bike, now: Setting, then: Setting) -> bool:
    levels = levels_of(name, bike.controls[name])
    scale = levels.help_if_known() if levels is not None else None
    try:
        return scale is not None and scale.help_of(now) > scale.help_of(then)
    except (Inconsistent, OutOfRange):
        return False


def _tyres(tyres: TyreSet | None, conditions: Conditions) -> tuple[str, ...]:
    """Say what is done about tyres and pressures: never a figure that the tyre maker did not give."""
    both = (tyres.front, tyres.rear) if tyres is not None else ()
    dry = any(one.kind is not None and one.kind not in _RAIN_TYRES for one in both)
    swap = ("wet tyres once there is spray" if conditions.damp else "wet tyres on, if there are any",)
    found = [hot_target_of(one, "damp" if conditions.damp else "wet") for one in both]
    targets = [one for one in found if one is not None]
    figures = sorted({one.figure for one in targets})
    if len(targets) == 2 and len(figures) == 1:
        front, rear = targets
        pressures = f"pressures toward the {figures[0]} target, hot {front} front, {rear} rear"
    else:
        pressures = "pressures to the tyre maker's wet figure, else leave them"
    return (*(swap if dry else ()), pressures)
