"""The pressure of the air outside of a session: what its records and those of the day say of it."""

from collections.abc import Mapping

import attrs

from paddock_tui.calc.outside_pressure import AirMoves, AirObserved, contradicts, meant_at_altitude_kpa
from paddock_tui.calc.standard_air import pressure_at_altitude_kpa
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Venue
from paddock_tui.records.session import Session


@fact("what is known of the air outside")
def air_observed(
    session: Session,
    records: Mapping[str, Record],
    refs: Mapping[str, Ref],
    history: History,
    limits: Limits,
) -> AirObserved:
    """Return what is known of the pressure outside of this session: what was read earlier that day where
    nothing was read in it that can be.
    """
    venue = records.get("venue")
    ref = refs.get("venue")
    found = observed(session, ref.id if ref else None, venue if isinstance(venue, Venue) else None)
    read, moves = found.reading_kpa, AirMoves.of(limits)
    if read is not None and not contradicts(read, found.altitude_m, moves):
        return found
    near = near_reading(found, history.past, moves)
    return attrs.evolve(found, near_kpa=None if near is None else near[0].to("kPa"))


def observed(session: Session, place: str | None, venue: Venue | None) -> AirObserved:
    """Return what a session and its venue say of the pressure outside."""
    height = venue.altitude if venue is not None else None
    return AirObserved(
        None if session.air_pressure is None else session.air_pressure.to("kPa"),
        None if height is None else height.to("m"),
        place=place,
        day=session.date,
    )


def observed_then(past: PastSession) -> AirObserved:
    """Return what an earlier session says of the pressure outside."""
    read = past.session.air_pressure
    return AirObserved(
        None if read is None else read.to("kPa"), past.altitude_m, place=past.venue, day=past.session.date
    )


def near_reading(
    here: AirObserved, past: tuple[PastSession, ...], moves: AirMoves
) -> tuple[Quantity, str] | None:
    """Return the last reading of a barometer earlier that day at the same place, and its session."""
    for one in reversed(past):
        if here.day is None or one.date != here.day:
            break
        read = one.session.air_pressure if one.venue == here.place else None
        if read is not None and not contradicts(read.to("kPa"), here.altitude_m, moves):
            return read, one.id
    return None


@attrs.frozen
class PressureAtOdds:
    """An air pressure that cannot be of its venue's altitude: what is usual there, what it may have meant."""

    reading: Quantity
    altitude: Quantity
    usual_kpa: float
    meant_kpa: float | None

    def __str__(self) -> str:
        return f"air pressure {self.reading}, altitude {self.altitude}"


@fact("whether air pressure and altitude agree", show=str)
def pressure_at_odds(
    session: Session, records: Mapping[str, Record], air_observed: AirObserved, limits: Limits
) -> PressureAtOdds | Absent:
    """Return an air pressure that contradicts the venue's altitude; absent where both agree or one is not
    known.
    """
    venue = records.get("venue")
    read, metres = session.air_pressure, air_observed.altitude_m
    altitude = venue.altitude if isinstance(venue, Venue) else None
    moves = AirMoves.of(limits)
    if read is None or metres is None or altitude is None or not contradicts(read.to("kPa"), metres, moves):
        return ABSENT
    meant = meant_at_altitude_kpa(read.to("kPa"), metres, moves)
    return PressureAtOdds(read, altitude, pressure_at_altitude_kpa(metres), meant)
