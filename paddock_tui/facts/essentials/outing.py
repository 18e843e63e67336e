"""Essentials of the outing: who rides what, the surface, the rider, what happened last, tyres, fuel."""

from paddock_tui.facts.checklists import RACING
from paddock_tui.facts.core import ABSENT
from paddock_tui.facts.essentials.core import (
    ALL,
    KNOWN,
    TRACK,
    TREAD,
    WALKED_ROUND,
    Around,
    EssentialAnswer,
    Open,
    essential,
    to_tick,
)
from paddock_tui.facts.fuel import in_tank, rate_of
from paddock_tui.facts.past import ENDS, Along, PastSession
from paddock_tui.facts.tyre_air import fell_unexplained
from paddock_tui.limits.pressures import LEAK
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading, TyreLook

STARTING = ("cold", "warmers", "leaving")
"""The readings that pressures are known by before going out."""


@essential("who-and-what", ALL)
def who_and_what(around: Around) -> EssentialAnswer:
    """Kind of outing, date, bike, rider and group: which others are asked, and how it is judged."""
    session, rider = around.session, around.rider
    if session.kind is None:
        return Open("the kind of session", "session", ("kind",))
    if session.date is None:
        # Without it nobody knows what was before, and what may still be open.
        return Open("the date of the session", "session", ("date",))
    if around.bike is None:
        return Open("the bike", "session", ("bike",))
    if rider is None:
        return Open("the rider", "session", ("rider",))
    if rider.group is None and session.kind != "road":
        return Open("the rider's group", "rider", ("group",))
    return KNOWN


@essential("surface", ALL, rules=("surface-not-known",))
def surface(around: Around) -> EssentialAnswer:
    """What the track is like now."""
    return KNOWN if around.session.surface is not None else Open("the surface", "session", ("surface",))


@essential("declared", ("race",))
def declared(around: Around) -> EssentialAnswer:
    """Whether the race is declared wet or dry."""
    if around.session.kind != "race":
        return ABSENT
    if around.session.race.declared is not None or around.ticked("declared"):
        return KNOWN
    return Open("race declared wet or dry", "session", ("race", "declared"))


@essential("last-outing", ALL)
def last_outing(around: Around) -> EssentialAnswer:
    """Whether anything happened in the last outing of the bike and of the rider; nothing open before any."""
    if around.ticked("last-outing"):
        return KNOWN
    of_bike = _LAST_RIDDEN.of(around.history)
    before = [one for one in around.rider_today if one.ridden]
    if of_bike is not None:
        before = [of_bike, *before]
    if not before:
        said = around.ticked_ever("nothing-known-open")
        return (
            KNOWN if said else to_tick(around, "nothing-known-open", "word that nothing is open on this bike")
        )
    last = max(before, key=_when)
    unsaid = _UNSAID.of(around.history)
    for one in (*([unsaid] if unsaid is not None else []), *before):
        # That something happened is written down, and not what: it may have been a fall.
        path = _not_said(one.session, is_last=one is last)
        if path:
            return Open(f"{_ASKED[path[0]]} in {one.id}", "session", path, Ref("session", one.id))
    ref = Ref("session", last.id)
    if last.session.happened is not None or last.session.incidents:
        return KNOWN
    return Open(f"what happened in {last.id}", "session", ("happened",), ref, says="nothing")


_ASKED = {
    "incidents": "what happened",
    "symptoms": "what the bike did",
    "look": "what was seen on the tyre",
}


def _first_unsaid(reached: PastSession | None, one: PastSession) -> PastSession | None:
    return one if reached is None and _not_said(one.session, is_last=False) else reached


_UNSAID = Along[PastSession | None]("unsaid", None, _first_unsaid)
"""The first session of a history in which something was noted that no word names."""


def _not_said(session: Session, *, is_last: bool) -> Path:
    """Return where the word is missing for what was noted: what happened, what the bike did, what was seen.

    Of the last outing it is missing too where nothing but "noted" is written.
    """
    for table in ("incidents", "symptoms"):
        unnamed = (number for number, one in getattr(session, table).items() if one.what is None)
        for number in unnamed:
            return table, number, "what"
    for end, look in session.look.items():
        if look.seen is None and look.answer is None and look != TyreLook():
            return "look", end, "seen"
    if is_last and session.happened == "noted" and not session.incidents:
        return "incidents", "1", "what"
    if is_last and session.did == "noted" and not session.symptoms and not _in_own_words(session):
        return "symptoms", "1", "what"
    return ()


def _in_own_words(session: Session) -> bool:
    """Return whether the rider said in their own words what no fixed word says."""
    return session.said is not None or bool(session.notes)


def _when(one: PastSession) -> tuple[str, int, str]:
    session = one.session
    return str(session.date or ""), session.number or 0, str(session.start or "")


def _ridden_later(last: PastSession | None, one: PastSession) -> PastSession | None:
    later = one.ridden and (last is None or _when(one) > _when(last))
    return one if later else last


_LAST_RIDDEN: Along[PastSession | None] = Along("last-ridden", None, _ridden_later)


@essential("rider-fit", ALL)
def rider_fit(around: Around) -> EssentialAnswer:
    """Whether the rider is fit now; in the morning the list of the rider says so for the first outing."""
    if around.session.fatigue is not None or around.ticked("rider-fit", "fit-to-ride"):
        return KNOWN
    if around.first_of_the_day and around.ticked_today("rider-fit", "fit-to-ride"):
        return KNOWN
    return to_tick(around, "rider-fit", "the rider is fit now")


@essential("tyre-kinds", ALL, rules=("tyre-kind-not-known",))
def tyre_kinds(around: Around) -> EssentialAnswer:
    """What both tyres are made for."""
    tyres = around.tyres
    if tyres is None:
        return Open("the tyre set", "session", ("tyres",))
    for end, tyre in (("front", tyres.front), ("rear", tyres.rear)):
        if tyre.kind is None:
            return Open(f"the kind of the {end} tyre", "tyres", (end, "kind"))
    return KNOWN


@essential("tyres-seen", ALL)
def tyres_seen(around: Around) -> EssentialAnswer:
    """Both tyres looked at: cuts, nails, cord."""
    look = around.session.look
    if all(end in look and look[end].seen is not None for end in ("front", "rear")):
        return KNOWN
    names = ("tyres-seen", "tyre-glance", WALKED_ROUND)
    once = around.session.kind == "road" or around.first_of_the_day
    seen = around.ticked_today(*names, "tyres", "road-tyres") if once else around.ticked(*names)
    return KNOWN if seen else to_tick(around, WALKED_ROUND, "tyres looked at: cuts, nails")


@essential("tread", ALL)
def tread(around: Around) -> EssentialAnswer:
    """Tread figures, or over the marks: always on the road, in the wet on a track."""
    if around.session.kind != "road" and around.surface != "wet":
        return ABSENT
    if around.ticked_within(2, "tread-over-marks", "tyres", "road-tyres") or _tread_measured(around):
        return KNOWN
    return to_tick(around, "tread-over-marks", "both tyres over their wear marks", in_day=True)


def _tread_measured(around: Around) -> bool:
    if around.measured_within(2, TREAD):
        return True
    tyres, dates = around.tyres, {one.date for one in around.within(2)} | {around.session.date}
    if tyres is None:
        return False
    ends = (tyres.front, tyres.rear)
    return all(one.tread_middle is not None and one.tread_measured in dates - {None} for one in ends)


@essential("pressures", ALL, rules=("cold-pressures-not-read",))
def pressures(around: Around) -> EssentialAnswer:
    """Both pressures read cold or on warmers, or set to something since; on the road once a day."""
    sessions = [around.session]
    if around.session.kind == "road":
        sessions += [one.session for one in around.of_today()]
    for session in sessions:
        found = [session.pressures[name] for name in STARTING if name in session.pressures]
        if all(any(_pressure(one, end) for one in found) for end in ("front", "rear")):
            return KNOWN
    own = around.session.pressures.get("cold")
    end = "rear" if own is not None and _pressure(own, "front") else "front"
    return Open(f"the {end} cold pressure", "session", ("pressures", "cold", end))


def _pressure(reading: PressureReading, end: str) -> bool:
    if end == "front":
        return reading.front is not None or reading.set_to_front is not None
    return reading.rear is not None or reading.set_to_rear is not None


@essential("air-kept", ALL, rules=("pressure-lost",))
def air_kept(around: Around) -> EssentialAnswer:
    """Where a tyre reads less cold than it was left with, and no temperature tells why: what was seen."""
    for end in ENDS:
        fell = fell_unexplained(end, around.session, around.history)
        if fell is not None and fell.bar > around.limits[LEAK]:
            if around.ticked(AIR_LOOKED_FOR):
                return KNOWN
            label = f"{end} {fell.bar:.2f} bar less than in {fell.since}: valve and tread looked at"
            return to_tick(around, AIR_LOOKED_FOR, label)
    return ABSENT


AIR_LOOKED_FOR = "valve-and-tread"
"""The tick of who looked where the air went, where no temperature tells that it is all there."""


@essential("warmers", TRACK)
def warmers(around: Around) -> EssentialAnswer:
    """Warmers used or none, on slicks and race-treaded tyres."""
    tyres = around.tyres
    kinds = (tyres.front.kind, tyres.rear.kind) if tyres is not None else ()
    if not any(kind in ("slick", "race-treaded") for kind in kinds):
        return ABSENT
    return KNOWN if around.session.warmers is not None else Open("tyre warmers", "session", ("warmers",))


@essential("fuel", ALL)
def fuel(around: Around) -> EssentialAnswer:
    """Litres in the tank, or looked at: enough for the planned time; litres for whoever races."""
    session, bike = around.session, around.bike
    rate = rate_of(session, session.setup.mode, bike, around.history)
    known = in_tank(session, bike, around.history, rate.l_per_100km) is not None
    if known and (session.kind == "road" or _how_far(around)):
        return KNOWN
    if around.asked_as == "race" and not known:
        return Open("the litres in the tank", "session", ("fuel_in_tank",))
    if around.ticked("fuel-enough", "fuel-for-session"):
        return KNOWN
    return to_tick(around, "fuel-enough", "fuel looked at: enough for the planned time")


def _how_far(around: Around) -> bool:
    """Return whether it is known how far the fuel has to last: litres alone are not enough or too few."""
    session, venue = around.session, around.venue
    if session.planned_laps is None and session.planned_time is None:
        return False
    return venue is not None and venue.length is not None


@essential("race-paper", ("race",))
def race_paper(around: Around) -> EssentialAnswer:
    """Licence and transponder or number, where the class asks for them."""
    if around.session.kind not in RACING:
        return ABSENT
    if around.ticked_today("race-paper"):
        return KNOWN
    if around.ticked_today("licence") and around.ticked_today("race-number"):
        return KNOWN
    return to_tick(around, "race-paper", "licence, number, transponder and kit of the class", in_day=True)
