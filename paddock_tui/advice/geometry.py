"""Steering geometry: rake, trail, wheelbase and swingarm as they stand, after a change, by the mm."""

from collections.abc import Iterable
from decimal import Decimal

from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.advice.forces import WHEELBASE
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.steering import (
    GeometryChange,
    Steering,
    SteeringGeometry,
    Swingarm,
    after,
    offset_of_trail_mm,
)
from paddock_tui.calc.tyre_size import UnreadableSize, parse_tyre_size
from paddock_tui.quantities import Quantity, rounded
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number

METHOD = Method(
    "trail = (R sin(e) - d) / cos(e), flop = trail sin(e) cos(e); a change turns the bike as one "
    "rigid body until "
    "both wheels stand on the ground again",
    "tyres not pressed in, no sag: the figures are off by some mm, what a step does hardly",
    "changes up to 100 mm; no calculation proves a clearance: press the bike down fully, turn lock to lock",
    "Meijaard and others 2007, Proc. R. Soc. A 463 (trail); plane geometry",
)
_STEP = Number(-60, 60, step=1, unit="mm")
INPUTS = (
    WHEELBASE,
    Input("rake", "rake", Amount("angle", "deg", 15, 40, step=0.1), "steering axis from the vertical"),
    Input("trail", "trail", c.LENGTH, "on the ground, as published"),
    Input("front_radius", "front wheel's radius", c.LENGTH, "half of the tyre's diameter"),
    Input("rear_radius", "rear wheel's radius", c.LENGTH, "half of the tyre's diameter"),
    Input("swingarm", "swingarm, length", c.LENGTH, "pivot to rear axle"),
    Input("pivot_height", "swingarm pivot, height", c.LENGTH, "above the ground"),
    Input("fork", "fork further through", _STEP, "above 0 lowers the front"),
    Input("ride", "rear ride height", _STEP, "above 0 raises the rear"),
    Input("axle", "axle back", _STEP, "by other sprockets or links"),
    Input("front_tyre", "front tyre's radius", _STEP, "more than now"),
    Input("rear_tyre", "rear tyre's radius", _STEP, "more than now"),
)
_NEEDS = ("wheelbase", "rake", "trail", "front_radius", "rear_radius")
_ARM = ("swingarm", "pivot_height")
_CHANGES = ("fork", "ride", "axle", "front_tyre", "rear_tyre")


def geometry(about: About) -> Calculator:
    """Return the calculator of geometry, filled from the bike, its tyres, and what was changed."""
    bike = about.situation.bike
    found: dict[str, FilledInput] = {}
    if bike is not None:
        where, chassis = f"bike {about.id_of('bike')}", bike.chassis
        found |= filled(
            wheelbase=if_known(chassis.wheelbase, where),
            rake=if_known(chassis.rake, where),
            trail=if_known(chassis.trail, where),
            swingarm=if_known(chassis.swingarm, where),
            pivot_height=if_known(chassis.pivot_height, where),
        )
    for end in ENDS:
        radius = _radius(about, end)
        if radius is not None:
            found[f"{end}_radius"] = radius
    return Calculator("geometry", "steering geometry", INPUTS, found | _changed(about), _compute)


def _radius(about: About, end: str) -> FilledInput | None:
    """Return half of the diameter that the tyre's marking stands for."""
    bike = about.situation.bike
    own = about.tyre("front" if end == "front" else "rear").size
    marking = own or (getattr(bike, end).tyre_size if bike is not None else None)
    try:
        size = parse_tyre_size(marking) if marking is not None else None
    except (UnreadableSize, OutOfRange):
        return None
    if size is None:
        return None
    return FilledInput(Quantity(Decimal(size.diameter_mm) / 2, "mm"), f"half of what {marking} stands for")


def _changed(about: About) -> dict[str, FilledInput]:
    """Return what fork, ride height and axle moved by since the session that this one was copied from."""
    before, now = about.situation.source, about.setup
    if before is None:
        return {}
    found = {}
    for key, name in (("fork", "fork_height"), ("ride", "rear_height")):
        old, new = getattr(before.setup, name), getattr(now, name)
        if old is not None and new is not None and old.to("mm") != new.to("mm"):
            found[key] = FilledInput(round(new.to("mm") - old.to("mm"), 3), "against the session copied from")
    return found


def _compute(inputs: Inputs) -> Iterable[Answer]:
    yield _stands(inputs)
    yield _after(inputs)
    yield _one(inputs, "fork", "each mm fork lower", GeometryChange(fork_through_mm=1.0))
    yield _one(inputs, "ride", "each mm ride height", GeometryChange(rear_up_mm=1.0))
    yield _one(inputs, "axle", "each mm axle back", GeometryChange(axle_back_mm=1.0))
    yield _one(inputs, "front_tyre", "each mm front radius", GeometryChange(front_radius_mm=1.0))
    yield _one(inputs, "rear_tyre", "each mm rear radius", GeometryChange(rear_radius_mm=1.0))


def _chassis(inputs: Inputs) -> SteeringGeometry:
    rake, radius = inputs.amount("rake", "deg"), inputs.amount("front_radius", "mm")
    offset = offset_of_trail_mm(rake, inputs.amount("trail", "mm"), radius)
    arm = None
    if inputs.known(*_ARM):
        arm = Swingarm(inputs.amount("swingarm", "mm"), inputs.amount("pivot_height", "mm"))
    base, rear = inputs.amount("wheelbase", "mm"), inputs.amount("rear_radius", "mm")
    return SteeringGeometry(base, rear, Steering(rake, offset, radius), arm)


def _words(found: SteeringGeometry) -> str:
    steering, arm = found.steering, found.swingarm_deg
    rises = "" if arm is None else f", swingarm {arm:.1f} deg up"
    return (
        f"rake {steering.rake_deg:.1f} deg, trail {steering.trail_mm:.0f} mm, "
        f"wheelbase {found.wheelbase_mm:.0f} mm{rises}"
    )


def _stands(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = _chassis(inputs)
        one = found.steering
        said = _words(found)
        steps = (
            f"d = R sin(e) - trail cos(e) = {one.radius_mm:g} mm x sin({one.rake_deg:g} deg) - "
            f"{one.trail_mm:.0f} mm "
            f"x cos({one.rake_deg:g} deg) = {one.offset_mm:.1f} mm",
            f"normal trail = R sin(e) - d = {one.normal_trail_mm:.1f} mm, flop = trail sin(e) cos(e) = "
            f"{one.flop_mm:.1f} mm",
            f"as entered: {said}",
        )
        return Answered(said, steps=steps)

    return told(inputs, "stands", "as it stands", _NEEDS, METHOD, make, _ARM)


def _after(inputs: Inputs) -> Answer:
    def make() -> Answered:
        move = GeometryChange(*(inputs.amount_or(key, "mm", 0.0) for key in _CHANGES))
        chassis = _chassis(inputs)
        said = _words(after(chassis, move))
        named = ", ".join(
            f"{key.replace('_', ' ')} {inputs.number(key):+g} mm" for key in _CHANGES if inputs.known(key)
        )
        return Answered(
            said, steps=(f"from {_words(chassis)}", f"with {named or 'nothing changed'} = {said}")
        )

    return told(inputs, "after", "after that change", _NEEDS, METHOD, make, (*_ARM, *_CHANGES))


def _one(inputs: Inputs, key: str, label: str, move: GeometryChange) -> Answer:
    def make() -> Answered:
        chassis = _chassis(inputs)
        found = after(chassis, move)
        rake = found.steering.rake_deg - chassis.steering.rake_deg
        trail = found.steering.trail_mm - chassis.steering.trail_mm
        base = found.wheelbase_mm - chassis.wheelbase_mm
        said = f"rake {_signed(rake)} deg, trail {_signed(trail)} mm, wheelbase {_signed(base)} mm"
        arm = chassis.swingarm_deg, found.swingarm_deg
        more = (
            f", swingarm {_signed(arm[1] - arm[0])} deg" if arm[0] is not None and arm[1] is not None else ""
        )
        steps = (
            f"trail {found.steering.trail_mm:.2f} mm - {chassis.steering.trail_mm:.2f} mm",
            f"= {said}{more}",
        )
        return Answered(
            f"{said}{more}", f"1 mm: rake {_signed(rake)} deg, trail {_signed(trail)} mm", steps=steps
        )

    return told(inputs, f"one_{key}", label, _NEEDS, METHOD, make, _ARM)


def _signed(change: float) -> str:
    """Write a change with its sign, to a hundredth; nothing changed has none."""
    text = rounded(change, 2)
    return text if float(text) <= 0.0 else f"+{text}"
