"""A briefing from what is known: differences for this rider first, then in the order of riding."""

from collections.abc import Iterator

from paddock_tui.advice.about import About
from paddock_tui.advice.briefing.aids import (
    BriefedAid,
    away,
    away_sentence,
    briefed_aids,
    does,
    does_not,
    missing_words,
    traded,
)
from paddock_tui.advice.briefing.came_from import CameFrom, new_here
from paddock_tui.advice.briefing.parts import Briefing, BriefingPart
from paddock_tui.advice.presets import moved_words
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.bike import Bike
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules import Finding, Review
from paddock_tui.rules.personal import personal_matter

_ON = {
    "dry": "in the dry",
    "damp": "in the damp",
    "drying": "on a drying track",
    "wet": "in the wet",
    "standing water": "in standing water",
}
NO_BIKE = "Which bike it is, is not known: nothing can be said of it."


def briefing(about: About, review: Review, came: CameFrom | None) -> Briefing:
    """Explain a set-up to its rider; `came` is what the rider comes from, None where that is not known."""
    bike, setup = about.situation.bike, about.setup
    if bike is None:
        return Briefing((BriefingPart("bike", (NO_BIKE,), 2, 2),))
    name = bike.name or about.id_of("bike") or "this bike"
    aids = briefed_aids(about, setup, bike)
    careful = _careful(about)
    parts = (
        BriefingPart("for you", tuple(_for_you(about, aids, name)), 5, 5),
        BriefingPart("it does", tuple(_does(setup, bike, aids)), 6, 13),
        BriefingPart("does not", tuple(does_not(aids)), 3, 11),
        BriefingPart("traded", tuple(traded(aids, careful)), 2, 10),
        BriefingPart("ignition", tuple(_ignition(aids)), 2, 3),
        BriefingPart("new", new_here(came, setup, bike, name), 3, 6),
        BriefingPart("first laps", tuple(_first_laps(about)), 2, 6),
        BriefingPart("open", tuple(_open(review)), 2, 5),
    )
    return Briefing(tuple(part for part in parts if part.sentences))


def _surface(about: About) -> str | None:
    profile = about.situation.profile
    return about.session.surface or (profile.made_for if profile is not None else None)


def _careful(about: About) -> bool:
    rider, surface = about.situation.rider, _surface(about)
    novice = rider is not None and rider.group == "novice"
    return novice or COLUMN.get(surface or "", "dry") != "dry"


def _for_you(about: About, aids: tuple[BriefedAid, ...], name: str) -> Iterator[str]:
    """Say whom this is for, and how the aids stand against that rider's start."""
    rider, surface = about.situation.rider, _surface(about)
    who = (rider.name if rider is not None else None) or about.id_of("rider") or "rider not known"
    group = rider.group if rider is not None and rider.group is not None else "group not known"
    whom = f"{who}, {group}, {_ON.get(surface or '', 'surface not known,')} on {name}"
    found = away(aids)
    less = [one for one in found if one.function != "engine-braking" and (one.gap or 0) > 0]
    if not any(one.gap is not None for one in aids):
        yield f"{whom}: your start cannot be worked out{missing_words(about)}."
    elif less:
        many = f"{len(less)} aids give" if len(less) > 1 else "1 aid gives"
        yield f"{whom}: {many} less help than a start for you."
    else:
        yield f"{whom}: no aid gives less help than a start for you."
    yield from map(away_sentence, found)


def _does(setup: SetUp, bike: Bike, aids: tuple[BriefedAid, ...]) -> Iterator[str]:
    """Say what the aids do, then what the riding mode fixes and which damping is in use."""
    yield from does(aids)
    mode = bike.modes.get(setup.mode or "")
    if mode is not None:
        fixed = ", ".join(label_of(name) for name in mode.fixes)
        yield f"Riding mode {setup.mode} fixes {fixed or 'nothing'}."
    if setup.damping is not None and bike.damping:
        moved = moved_words(bike, setup)
        yield f"Damping {setup.damping}{f', preset {moved}' if moved else ''}."


def _ignition(aids: tuple[BriefedAid, ...]) -> Iterator[str]:
    resets = [label_of(one.name) for one in aids if one.control.key_off == "resets"]
    unknown = [label_of(one.name) for one in aids if one.control.key_off is None]
    if resets:
        yield f"Read the dash after ignition off; it resets {', '.join(resets)}."
    if unknown:
        yield f"After ignition off it is not known for {', '.join(unknown)}."
    if not resets and not unknown and aids:
        yield "Nothing is noted to reset at ignition off; read the dash all the same."


def _first_laps(about: About) -> Iterator[str]:
    """Say what to watch in the first two laps. Common practice, no source."""
    yield "Cold tyres: two laps upright and wide, no kerbs, no braking into turns."
    surface = _surface(about)
    if COLUMN.get(surface or "", "dry") != "dry":
        yield "Wet: one gentle brake, one firm, both upright; throttle late and soft."
    yield "A lit warning light means that its aid is off: hand up, off the line, come in."
    yield "Fresh bike, fresh tyres, cold day: each alone is one step more help."
    yield "What feels wrong is wrong: come in."


def _open(review: Review) -> Iterator[str]:
    unjudged = len(review.missing_rules())
    lacks = f", {unjudged} checks lack data" if unjudged else ""
    danger = [one for one in review.findings if one.about == "danger"]
    if not danger:
        yield f"No findings{lacks}; that is no promise."
        return
    first, *rest = danger
    more = f" And {len(rest)} more{lacks}." if rest else f"{lacks[1:].capitalize()}." if lacks else ""
    yield f"{_finding(first)}{more}"
    yield from map(_finding, rest)


def _finding(one: Finding) -> str:
    """Say one finding; a briefing is for another rider, so of a person it says how severe and no more."""
    matter = personal_matter(one)
    about = {"health": "the rider before.", "incidents": "what happened to the bike, see the review."}
    return f"{str(one.severity).capitalize()}: {about.get(matter, one.message)}"
