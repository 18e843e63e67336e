"""Sag, then the spring: what a wrong ride height explains is not answered with damping."""

from typing import Final, Literal

import attrs

from paddock_tui.advice.about import End, MeasuredSag, latest_sag
from paddock_tui.advice.answered import answered
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.evidence import all_travel_used
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.spring_proposal import next_spring
from paddock_tui.advice.next_change.words import Kind, Move, Passed, Proposal, Spoken
from paddock_tui.advice.sag import adjuster_of, sag
from paddock_tui.facts.sag import RiderSag, wanted_sag
from paddock_tui.limits.next_change import KEPT_FREE
from paddock_tui.records.differences import same_value, setting_difference
from paddock_tui.records.session import Session
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.suspension import Adjuster
from paddock_tui.rules.core import SetValue

Way = Literal["much", "little"]

EXPLAINS: Final[dict[str, tuple[End | None, Way]]] = {
    "dives": ("front", "much"),
    "tucks": ("front", "much"),
    "harsh on single bumps": (None, "little"),
    "will not turn": ("rear", "much"),
    "runs wide on power": ("rear", "much"),
    "wallows": ("rear", "much"),
    "parts ground": ("rear", "much"),
    "twitchy": ("rear", "little"),
}
"""At which end too much or too little rider sag explains a symptom; None: at the symptom's own."""


def sag_then_spring(given: Given) -> Spoken:
    """Propose preload for the wanted rider sag, or the next spring; ask for the sag where it is not known."""
    reasons: list[str] = []
    for case, _ in given.felt:
        what = case.symptom.what or ""
        if what not in EXPLAINS:
            continue
        end, way = EXPLAINS[what]
        named = case.symptom.end if end is None else end
        if named not in ("front", "rear") or case.symptom.each_lap == "differs":
            continue
        at: End = "rear" if named == "rear" else "front"
        # What is hard at the end of its travel sits too low, and not too high.
        said = _of_end(case, at, "much" if all_travel_used(case, at) else way)
        if isinstance(said, Proposal):
            helped = given.takes_back(said.move) if said.move is not None else ""
            if not helped:
                return attrs.evolve(said, decides=_preload(case, at))
            said = Passed(f"{said.text}: the other way {helped}")
        reasons.append(said.reason)
    return Passed("; ".join(dict.fromkeys(reasons)) or "nothing was felt that sag explains")


def _preload(case: Case, end: End) -> tuple[tuple[str, str], ...]:
    """Name what the sag of an end decides: more preload for a feel may not stand beside its answer."""
    adjuster = adjuster_of(case.about, end)
    return () if adjuster is None else (("adjusters", adjuster[0]),)


def _of_end(case: Case, end: End, way: Way) -> Spoken:
    adjuster = adjuster_of(case.about, end)
    if adjuster is None:
        return Passed(f"the bike's file has no single preload adjuster at the {end}")
    measured = latest_sag(case.about, end, "rider", case.session.rider)
    found = case.about.situation.facts().get("rider_sag", end)
    if measured is None or not isinstance(found, RiderSag) or not _heights_same(case, measured):
        changed = (
            "" if measured is None else f" since {adjuster[0].replace('-', ' ')}, spring or height changed"
        )
        text = f"Measure rider sag at the {end}: it was not measured with this rider{changed}."
        why = f"{case.felt} may be {'too much' if way == 'much' else 'too little'} sag, and no damping"
        watch = (
            "three lengths, each twice, on the session page; then this page says preload, spring or damping"
        )
        return Proposal(Kind.LOOK, case.named, text, why, watch=watch)
    wanted = wanted_sag(case.bike_end(end), case.session.kind == "road", case.limits)
    if wanted is None:
        return Passed(
            f"there is no target sag at the {end}: enter the technician's figure, or top-out springs 'none'"
        )
    low, high = round(wanted.low_mm, 1), round(wanted.high_mm, 1)
    said = f"{end} rider sag {show_number(round(found.mm, 1))} mm, target {low:g} to {high:g} mm"
    out = found.mm > high if way == "much" else found.mm < low
    if not out:
        wrong = _spring_wrong(case, end, way)
        if wrong:
            return next_spring(case, end, said, wrong)
        return Passed(f"{said}: it does not explain {case.felt}")
    return _set_right(case, end, adjuster, said)


def _spring_wrong(case: Case, end: End, way: Way) -> str:
    """Say that the spring explains the symptom although rider sag is right; empty where it does not."""
    verdict = answered(case.about, sag, end)["verdict"]
    wanted = "rate too soft" if way == "much" else "rate too stiff"
    return verdict.text if verdict.known and verdict.short == wanted else ""


def _heights_same(case: Case, measured: MeasuredSag) -> bool:
    """Return whether fork and rear height are as when the sag was measured, where both are known."""
    holder = _holder(case, measured)
    if holder is None:
        return True
    pairs = (
        (getattr(one.setup, key) for one in (holder, case.session)) for key in ("fork_height", "rear_height")
    )
    return all(None in (old, new) or same_value(old, new) for old, new in pairs)


def _holder(case: Case, measured: MeasuredSag) -> Session | None:
    past = case.about.history.of(measured.where.removeprefix("session "))
    return past.session if past is not None else None


def _set_right(case: Case, end: End, adjuster: tuple[str, Adjuster], said: str) -> Spoken:
    name, record = adjuster
    answer = answered(case.about, sag, end)["preload"]
    held = case.setup.adjusters.get(name)
    if answer.missing:
        text = (
            f"To turn {record_label(name)} for it, enter {', '.join(f'the {one}' for one in answer.missing)}."
        )
        return Proposal(Kind.LOOK, case.named, text, said)
    closed = case.closed_by(name)
    if closed or held is None:
        return Proposal(
            Kind.OWN, case.named, f"{closed or f'{record_label(name)} is not written down'}.", said
        )
    wanted = _wanted(answer.short, answer.puts)
    if wanted is None:
        return next_spring(case, end, said) if not answer.known or not answer.puts else Passed(said)
    new = _kept_inside(record, held, wanted, case.limits[KEPT_FREE])
    if new == held:
        return next_spring(case, end, said)
    reads = str(setting_difference("adjusters", name, held, new, case.bike))
    value = int(new) if new == int(new) else new
    move = Move(reads, (SetValue(("setup", "adjusters", name), value),), (("adjusters", name),))
    short = (
        "" if new == wanted else f"; {show_number(wanted)} would be wanted, the last of its range stays free"
    )
    return Proposal(
        Kind.CHANGE,
        case.named,
        reads,
        f"{said}; by the calculators {answer.text}{short}",
        "it rides where it should, and the symptom is less",
        "measure the sag again before riding; one end at a time",
        move,
    )


def _wanted(short: str, puts: tuple[SetValue, ...]) -> float | None:
    """Return where the bench sets the adjuster: what it offers, else the end that it says leaves too much."""
    if puts and isinstance(puts[0].value, int | float):
        return float(puts[0].value)
    try:
        return float(short.split()[0])
    except (IndexError, ValueError):
        return None


def _kept_inside(record: Adjuster, held: float, wanted: float, free: float) -> float:
    """Return the value wanted, a share of the range left free at each end; never past where it stands."""
    low, high = sorted(record.range) if record.range is not None else (wanted, wanted)
    spare = free * (high - low)
    step = record.step or 1.0
    inside = min(max(wanted, low + spare), high - spare)
    steps = int((inside - held) / step + (1e-9 if inside >= held else -1e-9))
    new = round(held + steps * step, 6)
    return new if (new - held) * (wanted - held) > 0 else held


def record_label(name: str) -> str:
    """Return an adjuster's name as it is shown."""
    return name.replace("-", " ")
