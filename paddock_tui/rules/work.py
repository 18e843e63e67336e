"""Rules about work on the bike: what was undone is tightened and looked at again."""

from paddock_tui.facts.work import Undone
from paddock_tui.records.bike import Bike
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import BRAKES, HOLD, SERIOUS, RaisedFinding, Remedy, Result, ToDo, rule
from paddock_tui.text import printable

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
        message=f"Not torqued and seen by a second person: {wheel_work.words}.",
        quoted=(wheel_work.words,),
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
        message=f"Not looked at again hot: {oil_work.words}.",
        quoted=(oil_work.words,),
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
