"""How the walk remembers: each outing's traces on its bike and on its tyres, whoever rides."""

from collections.abc import Iterable, Mapping

import attrs

from paddock_tui.matters.air import after_readings
from paddock_tui.matters.core import Opened, Outing
from paddock_tui.matters.seen import AirInTyre, BikeSeen, From, Seen, with_more

_WHEELS = ("wheel out", "caliper", "brake", "axle", "pads", "yokes")

TRACK = ("track day", "practice", "qualifying", "race", "start practice")


def was_on_track(outing: Outing) -> bool:
    """Return whether an outing was ridden on a track; one of which nobody said which kind may have been."""
    return outing.ridden and outing.session.kind in (*TRACK, None)


def remembered(seen: Seen, together: tuple[Outing, ...], still: Iterable[Opened]) -> Seen:
    """Return what is remembered after some outings of one place; `still` is what is open after them."""
    bikes, tyres = dict(seen.bikes), dict[tuple[str, str], AirInTyre]()
    never = {(one.whom, one.subject) for one in still if one.kind == "height-never-ridden"}
    for outing in together:
        bikes[outing.bike] = _bike(seen.bike(outing.bike), outing, never)
        for end, name in outing.tyres.items():
            tyres[name, end] = after_readings(seen.tyre(name, end), outing, end)
    return Seen(bikes, with_more(seen.tyres, tyres))


def _bike(before: BikeSeen, outing: Outing, never: set[tuple[str, str]]) -> BikeSeen:
    session = outing.session
    lever = session.lever or before.lever
    worked = before.worked or any(one.what in _WHEELS for one in session.work.values())
    if session.lever == "firm":
        worked = False
    if not outing.ridden:
        return attrs.evolve(before, lever=lever, worked=worked)
    return BikeSeen(
        of=outing.id,
        date=session.date or before.date,
        rider=session.rider or "",
        tyres={**before.tyres, **outing.tyres},
        setup=session.setup,
        values={**before.values, **chain_values(outing)},
        felt=frozenset(one.what for one in session.symptoms.values() if one.what is not None),
        lever=lever,
        worked=worked,
        heights=_heights(before, outing, never),
        helps={**before.helps, outing.column: _helps(before, outing)},
        ridden=before.ridden | {(outing.column, key, one.help) for key, one in outing.helps.items()},
        outings=before.outings + was_on_track(outing),
    )


def _helps(before: BikeSeen, outing: Outing) -> Mapping[str, From]:
    """Return the help of each aid as last ridden in such conditions; one not written down is as before."""
    date = outing.session.date
    now = {key: From(one.help, outing.id, date) for key, one in outing.helps.items()}
    return {**before.helps.get(outing.column, {}), **now}


def chain_values(outing: Outing) -> Mapping[str, object]:
    """Return what of a set-up moves the chain, where it is known."""
    setup = outing.session.setup
    height = setup.rear_height
    now = {
        "front_sprocket": setup.front_sprocket,
        "rear_sprocket": setup.rear_sprocket,
        "links": setup.links,
        "rear_height": height.to("mm") if height is not None else None,
    }
    return {key: value for key, value in now.items() if value is not None}


def heights_of(outing: Outing) -> dict[str, float]:
    """Return how near each end comes to its stop, in mm, more being nearer; what is not known is left out.

    The fork's tubes through the yoke bring the wheel nearer, and a rear set lower; so does a taller tyre.
    """
    found: dict[str, float] = {}
    setup = outing.session.setup
    if setup.fork_height is not None:
        found["front"] = setup.fork_height.to("mm")
    if setup.rear_height is not None:
        found["rear"] = -setup.rear_height.to("mm")
    for end, tyre in outing.fitted.items():
        if tyre.circumference is not None:
            found[f"{end}-tyre"] = tyre.circumference.to("mm") / (2 * 3.141592653589793)
    return found


def _heights(before: BikeSeen, outing: Outing, never: set[tuple[str, str]]) -> dict[str, From]:
    """Return the nearest that each end was ridden; one ridden while its matter was open is no baseline."""
    found = dict(before.heights)
    for key, value in heights_of(outing).items():
        old = found.get(key)
        if (outing.bike, key) not in never and (old is None or value > old.value):
            found[key] = From(value, outing.id, outing.session.date)
    return found
