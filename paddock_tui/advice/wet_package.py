"""The wet package of a session or a profile, as values to set, or why there is none."""

import attrs

from paddock_tui.advice.about import About
from paddock_tui.facts import ABSENT, NotKnown
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.wet_package import LeftWet, WetPackage, in_the_dry, package_of
from paddock_tui.facts.wet_values import conditions_of
from paddock_tui.records.session import is_ridden
from paddock_tui.records.setup import Profile
from paddock_tui.rules.core import SetValue
from paddock_tui.rules.wet_package import dry_puts, puts_of

NOTHING_OPEN = "nothing of the wet package is open"


@attrs.frozen
class Offered:
    """The values of the package, and what of it no value sets."""

    puts: tuple[SetValue, ...]
    not_set: tuple[str, ...]
    name: str = "wet package"


def wet_package(about: About) -> Offered | str:
    """Return the package for a session on its surface, or for a profile on the one it was made for."""
    if about.situation.session is not None:
        return _of_session(about)
    if about.situation.profile is not None:
        return _of_profile(about, about.situation.profile)
    return "there is no session and no profile here"


def starting_adjusters(about: About) -> dict[str, float]:
    """Return by name where adjusters start for this group and surface: what the wet package sets.

    On a dry track it is where this rider last had them in the dry on this bike: no count is a start by
    itself. Empty where neither is known.
    """
    found = wet_package(about)
    puts = found.puts if isinstance(found, Offered) else ()
    set_to = {
        one.path[2]: float(one.value)
        for one in puts
        if one.path[:2] == ("setup", "adjusters") and isinstance(one.value, int | float)
    }
    return {**_as_last_in_the_dry(about), **set_to}


def _as_last_in_the_dry(about: About) -> dict[str, float]:
    """Return the adjusters of this rider's last dry session on this bike, for another one in the dry."""
    session, profile = about.situation.session, about.situation.profile
    surface = session.surface if session is not None else profile.made_for if profile is not None else None
    if COLUMN.get(surface or "") != "dry" or (session is not None and session.kind == "road"):
        return {}
    rider = session.rider if session is not None else profile.rider if profile is not None else None
    dry = in_the_dry(rider, about.history)
    return dict(dry.setup.adjusters) if dry is not None else {}


def _of_session(about: About) -> Offered | str:
    session = about.session
    if is_ridden(session):
        return "this session was ridden: n makes the next one, then m, wet package"
    if session.kind == "road":
        return "the wet package is for the track, not for the road"
    if COLUMN.get(session.surface or "") == "dry":
        return _back_to_dry(about)
    found = about.situation.facts().get("wet_package")
    if isinstance(found, NotKnown):
        return f"not known: {', '.join(dict.fromkeys(one.label for one in found.missing))}"
    return NOTHING_OPEN if found is ABSENT else _offered(found)


def _back_to_dry(about: About) -> Offered | str:
    """Return what the rider last had in the dry, where something of the wet was left in."""
    setup, bike = about.situation.setup, about.situation.bike
    found = about.situation.facts().get("left_wet")
    if not isinstance(found, LeftWet) or setup is None or bike is None:
        return "the surface is dry, and nothing of the wet was found left in"
    puts = dry_puts(found.dry, setup, bike)
    if not puts:
        return f"{', '.join(found.what)}: no dry session is on record to go back to"
    return Offered(puts, ("dry tyres, and their pressures read cold",), "back to the dry")


def _of_profile(about: About, profile: Profile) -> Offered | str:
    """Take a profile as if it were set on the surface that it was made for, with rain tyres on."""
    made_for, rider, bike = profile.made_for, about.situation.rider, about.situation.bike
    if made_for is None or COLUMN[made_for] == "dry":
        return f"this profile is made for {made_for or 'no surface yet'}: enter damp or wet first"
    missing = [
        words
        for words, there in (
            ("the bike", bike is not None),
            ("the rider's group", rider is not None and rider.group is not None),
        )
        if not there
    ]
    if bike is None or rider is None or rider.group is None:
        return f"not known: {', '.join(missing)}"
    dry = in_the_dry(profile.rider, about.history)
    conditions = conditions_of(rider.group, made_for, None)
    before, limits = dry.setup if dry is not None else None, about.situation.limits
    found = package_of(profile.setup, bike, conditions, before, limits=limits)
    return _offered(found) if found.values else NOTHING_OPEN


def _offered(found: WetPackage) -> Offered:
    return Offered(puts_of(found), found.not_set)
