"""Rules about what is not known or not done yet: to-dos until they are due, then what their row says."""

from collections.abc import Mapping

from paddock_tui.records.bike import Bike
from paddock_tui.records.day import DayEntry
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.rules.core import (
    CAUTION,
    EVENT,
    HOLD,
    PRESSURES,
    RECORDS,
    TYRES,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    ToDo,
    rule,
)

_TYRES_DIFFER = (
    'Slick, treaded and wet tyres need other surfaces, warmth and pressures: "no findings" would be a guess.'
)


@rule("surface-not-known", CAUTION, when=("to_come",), at="session:surface", rank=RECORDS)
def surface_not_known(session: Session) -> Result:
    """Nobody has said what the track is like: most of what matters is not judged."""
    if session.surface is not None:
        return None
    return RaisedFinding(
        message="The surface is not known: most of the set-up cannot be assessed.",
        why='Dry, damp and wet ask for different aids, tyres, pressures: "no findings" would be a guess.',
        remedy=Remedy("Look at the track, and enter dry, damp, drying, wet or standing water."),
    )


@rule("tyre-kind-not-known", CAUTION, when=("to_come",), at="tyres:rear.kind", rank=TYRES)
def tyre_kind_not_known(records: Mapping[str, Record]) -> Result:
    """Nobody has said which tyres are on the bike, or what kind they are."""
    tyres = records.get("tyres")
    if not isinstance(tyres, TyreSet):
        return RaisedFinding(
            message="Which tyres are on the bike is not known.",
            why=_TYRES_DIFFER,
            remedy=Remedy("Choose the tyre set of this session, or make one first."),
            subject="tyres",
            role="session",
            path=("tyres",),
            facts="tyre set not known",
        )
    lost = [end for end, tyre in (("front", tyres.front), ("rear", tyres.rear)) if tyre.kind is None]
    if not lost:
        return None
    return RaisedFinding(
        message=f"The kind of the {' and '.join(lost)} {'tyre' if len(lost) == 1 else 'tyres'} is not known.",
        why=_TYRES_DIFFER,
        remedy=Remedy(
            "Enter its kind in the tyre set: road, track-day, race-treaded, slick, intermediate, wet."
        ),
        path=(lost[0], "kind"),
        facts=f"{' and '.join(lost)} tyre kind not known",
    )


@rule("too-little-known", CAUTION, when=("to_come",), at="session:bike", rank=RECORDS)
def too_little_known(session: Session, records: Mapping[str, Record]) -> Result:
    """Bike, rider or group are not known: most of what is dangerous for one and fine for another."""
    bike, rider = records.get("bike"), records.get("rider")
    lost: list[tuple[str, str, tuple[str, ...]]] = []
    if not isinstance(bike, Bike):
        lost.append(("the bike", "session", ("bike",)))
    elif bike.electronics is None:
        lost.append(("the bike's electronics, listed or none", "bike", ("electronics",)))
    if not isinstance(rider, Rider):
        lost.append(("the rider", "session", ("rider",)))
    elif rider.group is None:
        lost.append(("the rider's group", "rider", ("group",)))
    if session.kind is None:
        lost.append(("the kind of session", "session", ("kind",)))
    return [
        RaisedFinding(
            message=f"Not known: {label}; much cannot be assessed.",
            why='What suits one bike or rider is dangerous for another: "no findings" would be a guess.',
            remedy=Remedy(f"Enter {label}."),
            subject=".".join(path),
            role=role,
            path=path,
            facts=f"{label} not known",
        )
        for label, role, path in lost
    ]


@rule(
    "cold-pressures-not-read",
    CAUTION,
    when=("to_come",),
    at="session:pressures.cold.front",
    todo=ToDo("read the cold pressures"),
    rank=PRESSURES,
)
def cold_pressures_not_read(session: Session) -> Result:
    """The pressures that the tyres start at were not read for this session."""
    for name in ("cold", "warmers", "leaving"):
        reading = session.pressures.get(name)
        if reading is not None and reading.front is not None and reading.rear is not None:
            return None
    cold = session.pressures.get("cold")
    half = cold is not None and cold.front is not None
    return RaisedFinding(
        path=("pressures", "cold", "rear") if half else None,
        message="The starting pressures were not read for this session.",
        why="A tyre that lost air overnight looks like any other; the gauge is the only one that knows.",
        remedy=Remedy("Read both tyres cold, in the shade, with the same gauge as always, and enter them."),
    )


_HERE = ("organised", "to_come")

_PAPER = "the organisers' own terms: no briefing, no sign-on or no inspection means no track"


@rule("not-signed-on", HOLD, source=_PAPER, at="day:entries", when=_HERE, rank=EVENT, todo=ToDo("sign on"))
def not_signed_on(entry: DayEntry, session: Session) -> Result:
    """Signing on is not ticked."""
    if entry.signed_on:
        return None
    return _paper("You are not signed on.", "Sign on: licence, waiver, wristband.", session, "signed_on")


@rule(
    "briefing-not-attended",
    HOLD,
    source=_PAPER,
    at="day:entries",
    when=_HERE,
    rank=EVENT,
    todo=ToDo("attend the riders' briefing"),
)
def briefing_not_attended(entry: DayEntry, session: Session) -> Result:
    """The briefing is not ticked: flags and passing rules differ from day to day."""
    if entry.briefing:
        return None
    remedy = "Attend the briefing, or ask for a late one."
    return _paper("The riders' briefing was not attended.", remedy, session, "briefing")


@rule(
    "inspection-not-passed",
    HOLD,
    source=_PAPER,
    at="day:entries",
    when=_HERE,
    rank=EVENT,
    todo=ToDo("pass the inspection"),
)
def inspection_not_passed(entry: DayEntry, session: Session) -> Result:
    """The technical inspection is not ticked."""
    if entry.inspected:
        return None
    remedy = "Take bike and kit to inspection."
    return _paper("The bike has not passed inspection yet.", remedy, session, "inspected")


def _paper(message: str, remedy: str, session: Session, key: str) -> RaisedFinding:
    """Say what is not ticked; once it is done, the remedy's value ticks it for this rider and bike."""
    path: Path = ("entries",)
    puts: tuple[SetValue, ...] = ()
    if session.rider is not None and session.bike is not None:
        path = ("entries", session.rider, session.bike, key)
        puts = (SetValue(path, True, "day"),)
    why = "No organiser lets a rider out without it."
    return RaisedFinding(message, why, Remedy(f"{remedy} Tick it once that is done.", puts), path=path)
