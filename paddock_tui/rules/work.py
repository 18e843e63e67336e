"""Rules about work on the bike: what was undone is tightened, measured and looked at again."""

from paddock_tui.facts.work import MovedPart, Undone
from paddock_tui.records.bike import Bike
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import BRAKES, CAUTION, HOLD, SERIOUS, RaisedFinding, Remedy, Result, ToDo, rule
from paddock_tui.text import clip, printable

_LISTS = "organisers' inspection lists; the torques are the manual's"


@rule(
    "wheel-work-not-checked",
    HOLD,
    source=_LISTS,
    at="session:work",
    when=("to_come",),
    todo=ToDo("torque wheels and brakes, second person looks"),
    rank=BRAKES,
)
def wheel_work_not_checked(wheel_work: Undone, bike: Bike) -> Result:
    """Wheels or brakes were undone, and nobody ticked that a second person saw them tightened."""
    return RaisedFinding(
        message=f"Not torqued and seen by a second person: {clip(wheel_work.words, 35)}.",
        why="A job that was interrupted leaves an axle or a caliper loose; it does not show standing.",
        remedy=Remedy(
            f"Torque axles, pinch bolts and calipers to the manual's figures{_figures(bike)}; a second "
            "person looks, paint marks on. Direction arrow, spacers, wheel-speed sensor and its gap; spin "
            "the wheel. Pump both brakes until hard, try them at walking pace. Then tick torqued under "
            "work done."
        ),
        subject="wheels",
        path=wheel_work.path,
        ref=wheel_work.ref,
    )


@rule(
    "chain-slack-not-measured",
    CAUTION,
    source="sprocket makers' and organisers' lists; the slack is the manual's",
    at="session:chain_slack",
    when=("to_come",),
    todo=ToDo("measure the chain slack at its tight point"),
)
def chain_slack_not_measured(chain_moved: MovedPart, session: Session) -> Result:
    """Sprockets, links or the rear wheel moved, and the slack was not measured since."""
    if session.chain_slack is not None:
        return None
    return RaisedFinding(
        message=f"Chain slack not measured since: {clip(chain_moved.words, 40)}.",
        why="Too tight it binds the shock and eats bearings; too loose it jumps.",
        remedy=Remedy(
            "Measure at the tightest point with axle, pivot and sprocket in line, to the manual's figure."
        ),
        subject="chain",
    )


@rule(
    "oil-work-not-checked-hot",
    SERIOUS,
    source="organisers' inspection lists: drain, filler and filter secured",
    at="session:work",
    when=("to_come",),
    rank=BRAKES,
)
def oil_work_not_checked_hot(oil_work: Undone) -> Result:
    """Oil, filter or plug were touched, and nobody looked again after running hot."""
    return RaisedFinding(
        message=f"Not looked at again hot: {clip(oil_work.words, 48)}.",
        why="An old gasket left on, a loose plug: the oil comes once it is hot, onto the rear tyre.",
        remedy=Remedy(
            "Warm the engine up on the stand, look under it and at plug, filler and filter, wire them where "
            "the organiser asks; then tick checked again hot under work done."
        ),
        subject="oil",
        path=oil_work.path,
        ref=oil_work.ref,
    )


def _figures(bike: Bike) -> str:
    """Quote the torques that the bike's file holds, with where they come from."""
    known = [
        f"{label_of(name)} {one.torque}" + (f" ({one.source})" if one.source else "")
        for name, one in sorted(bike.fasteners.items())
        if one.torque is not None
    ]
    return printable(f" ({'; '.join(known)})") if known else ""
