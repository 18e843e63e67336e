"""Rider sag as it stands: measured with this rider, at the preload and on the spring in use."""

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.sag import sag_of_lengths
from paddock_tui.calc.spring_choice import PreloadAt
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import Along, End, History, PastSession
from paddock_tui.facts.sags_taken import is_whole, last_sag, sag_of_rider, sags_of_rider
from paddock_tui.facts.suspension import what_of
from paddock_tui.limits import Limits
from paddock_tui.limits.sag import AGREES, LONG_TRAVEL, ROAD, ROAD_LONG, TRACK, TRACK_LONG
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import SagReading
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number


@attrs.frozen
class RiderSag:
    """Rider sag of one end in mm, and the wheel travel in mm where it is known."""

    end: End
    mm: float
    travel_mm: float | None

    def __str__(self) -> str:
        return f"{self.end} rider sag {show_number(round(self.mm, 1))} mm"


@attrs.frozen
class PreloadEnd:
    """A preload adjuster at an end of its range."""

    name: str
    at: PreloadAt

    def __str__(self) -> str:
        return f"{self.name.replace('-', ' ')} at its {self.at.value}"


@fact("rider sag", per="end", show=str)
def rider_sag(end: End, session: Session, setup: SetUp, history: History, bike: Bike) -> RiderSag | Absent:
    """Return the last sag of this rider at this end; absent where it was not measured, or not as it stands
    now.
    """
    reading, holder = _last(session, history, end)
    if holder is None or not is_whole(reading) or not _stands(reading, holder, setup, bike, end):
        return ABSENT
    mm, travel = sag_of_reading_mm(reading), end_of(bike, end).travel
    return ABSENT if mm is None else RiderSag(end, mm, travel.to("mm") if travel is not None else None)


@fact("the technician's rider sag, {subject}", at="bike:{subject}.technician_rider_sag", per="end")
def sag_figure(end: End, rider_sag: RiderSag, bike: Bike) -> Quantity | Unknown | None:
    """Return the technician's rider sag, None where there is none and tables serve.

    Where top-out springs are fitted, or nobody knows, no table serves.
    """
    held = end_of(bike, end)
    if held.technician_rider_sag is not None:
        return held.technician_rider_sag
    return None if held.top_out_springs == "none" else UNKNOWN


@attrs.frozen
class RiderWindow:
    """The window of rider sag in mm from low to high, and what it is in words."""

    low_mm: float
    high_mm: float
    said: str

    @property
    def aim_mm(self) -> float:
        """What is set where sag is outside: the middle, so that an error of the tape leaves it inside.

        About a technician's figure that is the figure; of the window on a track it lies within all published
        ones (25 to 35 mm).
        """
        return round((self.low_mm + self.high_mm) / 2.0, 1)

    @property
    def aim(self) -> str:
        """The aim in words."""
        return f"{show_number(self.aim_mm)} mm"


def wanted_sag(own: BikeEnd, road: bool, limits: Limits) -> RiderWindow | None:
    """Return the window of rider sag that is wanted at an end of a bike; None where nobody can tell.

    The technician's figure goes before tables, and no table serves where top-out springs are fitted or not
    known of.
    """
    figure = own.technician_rider_sag
    if figure is None and own.top_out_springs != "none":
        return None
    return window_of(figure, own.travel.to("mm") if own.travel is not None else None, road, limits)


def window_of(figure: Quantity | None, travel_mm: float | None, road: bool, limits: Limits) -> RiderWindow:
    """Return the window about a technician's figure; where there is none that in common use."""
    if figure is None:
        return rider_window(travel_mm, road, limits)
    near, mm = limits[AGREES], figure.to("mm")
    return RiderWindow(mm - near, mm + near, f"the technician's {figure}")


def rider_window(travel_mm: float | None, road: bool, limits: Limits) -> RiderWindow:
    """Return the window in common use, on a track or the road; of long travel it is a share."""
    where = "the road" if road else "a track"
    if travel_mm is not None and is_long(travel_mm, limits):
        low, high = sorted(limits[one] for one in (ROAD_LONG if road else TRACK_LONG))
        said = f"{where} ({show_number(low)}-{show_number(high)} % of travel)"
        return RiderWindow(low * travel_mm / 100.0, high * travel_mm / 100.0, said)
    low, high = sorted(limits[one] for one in (ROAD if road else TRACK))
    return RiderWindow(low, high, f"{where} ({show_number(low)}-{show_number(high)} mm)")


def is_long(travel_mm: float | None, limits: Limits) -> bool:
    """Return whether wheel travel is known to be so long that sag is judged as a share of it."""
    return travel_mm is not None and travel_mm > limits[LONG_TRAVEL]


@fact("free sag", at="session:sag.rear.alone.extended", per="end", show=lambda mm: f"free sag {mm:g} mm")
def free_sag(end: End, session: Session, setup: SetUp, history: History, bike: Bike) -> float | Absent:
    """Return the last free sag of the rear in mm, as the bike stands now; absent where none tells.

    At the front top-out springs and stiction say more in it than the spring does.
    """
    if end == "front":
        return ABSENT
    reading, holder = session.sag.get("rear", {}).get("alone"), session
    if reading is None or not is_whole(reading):
        found = last_sag(history, "rear", "alone")
        if found is None:
            return ABSENT
        reading, holder = found.reading, found.past.session
    mm = sag_of_reading_mm(reading) if _stands(reading, holder, setup, bike, "rear") else None
    return ABSENT if mm is None else mm


@attrs.frozen
class SagBefore:
    """The rider's own sag as measured the time before, in mm, and the session in which."""

    mm: float
    of: str
    theirs: bool

    def __str__(self) -> str:
        return f"{show_number(round(self.mm, 1))} mm in session {self.of}"


@fact("rider sag as measured the time before", per="end", show=str)
def sag_before(
    end: End, session: Session, history: History, source: Session | None, rider_sag: RiderSag
) -> SagBefore | Absent:
    """Return this rider's last sag but the one that counts now; absent where there was none."""
    before = sags_of_rider(history, end, "rider", session.rider)
    if _own(session, end) is None:
        next(before, None)
    found = next(before, None)
    if found is None:
        return ABSENT
    mm = sag_of_reading_mm(found.reading)
    theirs = source is not None and source.rider is not None and source.rider != session.rider
    return ABSENT if mm is None else SagBefore(mm, found.past.id, theirs)


def _own(session: Session, end: str) -> SagReading | None:
    reading = session.sag.get(end, {}).get("rider")
    return reading if reading is not None and is_whole(reading) else None


def sag_of_reading_mm(reading: SagReading) -> float | None:
    """Return the sag of three lengths in mm; None where they cannot be together."""
    lengths = (reading.extended, reading.pushed, reading.lifted)
    try:
        return sag_of_lengths(*(one.to("mm") for one in lengths if one is not None)).sag_mm
    except (Inconsistent, OutOfRange):
        return None


@attrs.frozen
class TravelUsed:
    """Wheel travel left in mm after an outing before which the marker was set, and what was felt in it."""

    left_mm: float
    felt: str
    of: str

    def __str__(self) -> str:
        return f"{show_number(round(self.left_mm, 1))} mm left in session {self.of}; {self.felt}"


_USED_UP = ("dives", "harsh on single bumps", "harsh on a series")


@fact("the wheel travel, {subject}", at="bike:{subject}.travel", per="end", show=str)
def travel_left(end: End, history: History, bike: Bike) -> TravelUsed | Absent | Unknown:
    """Return what travel the last ride left, where its marker was set before it and it dived or was harsh.

    Tie-downs and stands push the marker too: it counts as set where it was read, or pushed back, after an
    outing of the same day before.
    """
    travel = end_of(bike, end).travel
    last = history.ridden[-1] if history.ridden else None
    if last is None:
        return ABSENT
    used = _used(last.session, end)
    before = [one.session for one in history.ridden[-2:-1] if one.date == last.date]
    if used is None or not any(_marker_set(one, end) for one in before):
        return ABSENT
    symptoms = last.session.symptoms.values()
    felt = [one.what for one in symptoms if one.what in _USED_UP and one.end in (end, None)]
    if not felt:
        return ABSENT
    if travel is None:
        return UNKNOWN
    return TravelUsed(travel.to("mm") - used.to("mm"), felt[0] or "", last.id)


def _used(session: Session, end: str) -> Quantity | None:
    return session.front_travel_used if end == "front" else session.rear_travel_used


def _marker_set(session: Session, end: str) -> bool:
    ticked = session.checks.get("travel-marks")
    return _used(session, end) is not None or (ticked is not None and ticked.status == "ok")


@fact("whether preload of the {subject} is at its end", per="end")
def preload_end(end: End, setup: SetUp, bike: Bike) -> PreloadEnd | None:
    """Return the preload adjuster of an end where it stands at its least or most; None elsewhere."""
    for name, adjuster in bike.adjusters.items():
        value = setup.adjusters.get(name)
        if what_of(name, adjuster) != (end, "preload") or value is None or adjuster.range is None:
            continue
        low, high = sorted(adjuster.range)
        if adjuster.counted_from is None or low < value < high:
            continue
        more = (value >= high) == (adjuster.counted_from == "open")
        return PreloadEnd(name, PreloadAt.MOST if more else PreloadAt.LEAST)
    return None


@fact("whether rider sag was ever measured")
def sag_on_record(session: Session, history: History, bike: Bike) -> bool:
    """Return whether rider sag of both ends was measured with this rider, or a technician set it."""
    return all(
        end_of(bike, end).technician_rider_sag is not None or _last(session, history, end)[1] is not None
        for end in ("front", "rear")
    )


@fact("whether hot pressures are on record")
def hot_on_record(session: Session, history: History) -> bool:
    """Return whether hot pressures of the tyres in use were ever read on this bike."""
    return session.tyres in _READ_HOT.of(history)


def _read_hot(so_far: frozenset[str | None], one: PastSession) -> frozenset[str | None]:
    hot = one.session.pressures.get("hot")
    both = hot is not None and None not in (hot.front, hot.rear)
    return so_far | {one.tyres} if both and one.tyres not in so_far else so_far


_READ_HOT: Along[frozenset[str | None]] = Along("read-hot", frozenset(), _read_hot)
"""The tyre sets on which both hot pressures were read."""


def end_of(bike: Bike, end: str) -> BikeEnd:
    """Return one end of a bike."""
    return bike.front if end == "front" else bike.rear


def _last(session: Session, history: History, end: str) -> tuple[SagReading, Session | None]:
    """Return the last reading of this rider at one end, and the session that it stands in."""
    own = _own(session, end)
    if own is not None:
        return own, session
    found = sag_of_rider(history, end, "rider", session.rider)
    return (found.reading, found.past.session) if found is not None else (SagReading(), None)


def _stands(reading: SagReading, holder: Session, setup: SetUp, bike: Bike, end: str) -> bool:
    """Return whether a reading was taken at the preload and on the spring that are in use."""
    before, now = (getattr(one, f"{end}_spring") for one in (holder.setup, setup))
    if before is not None and now is not None and not before.same(now):
        return False
    if reading.preload is None:
        return True
    values = [
        value
        for name, adjuster in bike.adjusters.items()
        if what_of(name, adjuster) == (end, "preload") and (value := setup.adjusters.get(name)) is not None
    ]
    return all(abs(value - reading.preload) < 1e-9 for value in values)
