"""Rules about a race meeting and about what stops an outing; of a class only what was entered is judged."""

import datetime as dt

from paddock_tui.facts.race import CountedTyres, Stop, Weight
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import DayEntry
from paddock_tui.records.electronics import function_of
from paddock_tui.records.race import RaceClass
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import is_off
from paddock_tui.rules.core import (
    CAUTION,
    EVENT,
    HOLD,
    NOTE,
    SERIOUS,
    TYRES,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)

_CLASS = "the rules of the class, as entered"


@rule("goes-on-after-a-stop", CAUTION, at="session:events", when=("to_come",), rank=TYRES)
def goes_on_after_a_stop(stopped: Stop) -> Result:
    """A red flag, a wait in the lane or a stall: what follows is a start on cold tyres, with less fuel."""
    warm = "warmers back on while it waits, " if stopped.what == "red flag" else ""
    return RaisedFinding(
        message=f"{str(stopped).capitalize()}: start again as from cold.",
        why="Tyres and brakes cool in minutes, the dash may have gone back, and the fuel ridden is gone.",
        remedy=Remedy(
            f"{warm.capitalize()}{'read' if warm else 'Read'} the dash again, count the fuel for what is "
            "left, two laps at rising pace."
        ),
        subject="stop",
    )


@rule(
    "more-tyres-than-the-class-counts",
    HOLD,
    source=_CLASS,
    at="day:entries",
    when=("organised", "to_come"),
    rank=EVENT,
)
def more_tyres_than_the_class_counts(tyre_count: CountedTyres) -> Result:
    """More tyres are marked than the class lets be used."""
    if tyre_count.used <= tyre_count.most:
        return None
    return RaisedFinding(
        message=f"{tyre_count.used} tyres are marked, the class counts {tyre_count.most}.",
        why="A tyre over the count costs the result, or the start.",
        remedy=Remedy("Fit one that counts already, and ask race control before it is fitted."),
        subject="tyres",
    )


@rule(
    "tyres-not-marked",
    SERIOUS,
    source=_CLASS,
    at="day:entries",
    when=("organised", "to_come"),
    rank=EVENT,
    todo=ToDo("have the tyres marked"),
)
def tyres_not_marked(session: Session, entry: DayEntry, entered_class: RaceClass) -> Result:
    """The class wants marked tyres, and those of this session are not."""
    if not entered_class.tyres_marked or session.tyres is None:
        return None
    marked = {one.end for one in entry.marked.values() if one.tyres == session.tyres}
    ends = [end for end in ("front", "rear") if end not in marked]
    if not ends:
        return None
    return RaisedFinding(
        message=f"Not marked, and the class wants it: {' and '.join(ends)} tyre.",
        why="Tyres without the officials' mark are not let onto the grid.",
        remedy=Remedy("Have them marked, and enter the mark in the day's entry."),
        subject="tyres",
        path=("entries", session.rider or "", session.bike or "", "marked"),
    )


@rule(
    "wheel-out-after-the-tyre-choice",
    SERIOUS,
    source=_CLASS,
    at="session:work",
    when=("to_come",),
    rank=EVENT,
)
def wheel_out_after_the_tyre_choice(
    wheels_out: tuple[tuple[str, dt.datetime], ...], tyre_choice_ends: dt.datetime
) -> Result:
    """A wheel was out after the time until which tyres may be changed."""
    late = [one for one in wheels_out if one[1] > tyre_choice_ends]
    if not late:
        return None
    number, at = late[-1]
    return RaisedFinding(
        message=f"A wheel was out at {at:%H:%M}; the tyre choice closed at {tyre_choice_ends:%H:%M}.",
        why="A tyre changed after the choice may cost the start or the result.",
        remedy=Remedy("Ask race control before the grid; say there what was changed and why."),
        subject="tyres",
        path=("work", number, "at"),
    )


@rule("under-the-least-weight", CAUTION, source=_CLASS, about="method", at="session:race.weighed", rank=EVENT)
def under_the_least_weight(weight_after: Weight) -> Result:
    """The scale after the race showed less than the class asks for."""
    if weight_after.under_kg <= 1e-9:
        return None
    return RaisedFinding(
        message=f"Weighed {weight_after.weighed}, the class asks for {weight_after.least}.",
        why="Under the least weight costs the result; the scale of the officials is the one that counts.",
        remedy=Remedy("Next time start with more fuel, or with ballast that is bolted on as the rules say."),
        subject="weight",
    )


@rule(
    "nobody-holds-the-bike",
    NOTE,
    at="session:race.holds_bike",
    when=("from_a_grid", "to_come"),
    rank=EVENT,
    todo=ToDo("say who holds the bike on the grid"),
)
def nobody_holds_the_bike(session: Session) -> Result:
    """Who holds the bike on the grid is not said."""
    if session.race.holds_bike is not None:
        return None
    return RaisedFinding(
        message="Nobody is named to hold the bike on the grid.",
        why="Stand, warmers and umbrella take hands, and all have to be off the grid in time.",
        remedy=Remedy("Name one, and go through with them what the class lets be touched there."),
        subject="grid",
    )


@rule(
    "launch-to-arm",
    NOTE,
    at="session:race.launch_armed",
    when=("from_a_grid", "to_come"),
    rank=EVENT,
    todo=ToDo("arm launch control on the grid", 1),
)
def launch_to_arm(session: Session, bike: Bike) -> Result:
    """Launch control is planned, and nobody said that it was armed."""
    planned = [
        name
        for name, control in bike.controls.items()
        if function_of(name, control) == "launch"
        and (value := session.setup.controls.get(name)) is not None
        and not is_off(control, value)
    ]
    if not planned or session.race.launch_armed:
        return None
    return RaisedFinding(
        message="Launch control is planned and not armed yet.",
        why="Most bikes arm it at a standstill only, and drop it when the engine was off.",
        remedy=Remedy("Arm it on the grid, see it on the dash, and enter that it is."),
        subject="launch",
    )
