"""What the tyres are rated for, in kg and km/h, against bike, rider and the speed that was reached."""

from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About, End, tyre_of
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    told,
)
from paddock_tui.advice.forces import AHEAD, BIKE_MASS, RIDER_MASS, WHEELBASE, filled_chassis
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_duty import SpeedDuty, axle_loads, load_duty, speed_duty
from paddock_tui.calc.tyre_ratings import SPEED_SYMBOLS, load_kg
from paddock_tui.calc.tyre_size import UnreadableSize, parse_tyre_size
from paddock_tui.facts.pace import fastest_session
from paddock_tui.records import common as c
from paddock_tui.records.common import Units
from paddock_tui.records.shapes import Whole, Word
from paddock_tui.records.tyres import TyreSet

LOAD = Method(
    "load index in kg - bike and rider on that axle; front = mass x ahead / wheelbase",
    "standing on level ground, full tank; braking or driving can move all of it to one wheel",
    "index 20 to 90, at the maker's pressure for that load: a track pressure may be lower",
    "ISO 4223-1, UN Regulation 75 annex 4; whether it bears a track pressure the vendor says",
)
SPEED = Method(
    "speed symbol in km/h - the speed that was reached",
    "a sound tyre of the right pressure; the symbol says nothing of grip, age or damage",
    "in brackets, or Z: for more than the figure; by how much only the maker says",
    "ISO 4223-1, UN Regulation 75 annex 4",
)
_SYMBOLS = (*sorted(SPEED_SYMBOLS), "(V)", "(W)", "Z")

INPUTS = (
    *(
        one
        for end in ENDS
        for one in (
            Input(f"{end}_index", f"{end} load index", Whole(20, 90), "on the side wall, after the size"),
            Input(f"{end}_symbol", f"{end} speed symbol", Word(*_SYMBOLS), "after the load index"),
        )
    ),
    BIKE_MASS,
    RIDER_MASS,
    WHEELBASE,
    AHEAD,
    Input("speed", "speed", c.SPEED, "the most that was reached", "top speed"),
)


def tyre_ratings(about: About, tyres: TyreSet | None = None, name: str | None = None) -> Calculator:
    """Return the calculator of load and speed, filled from a tyre set (the session's own), bike and rider.

    A set that this bike never had on is not set against its mass and speed.
    """
    ours, called = (about.situation.tyres, about.id_of("tyres")) if tyres is None else (tyres, name)
    found: dict[str, FilledInput] = _asked(about) if _was_on(about, called) else {}
    for end in ENDS:
        found |= _marked(end, tyre_of(ours, end).size, f"tyre set {called}")
    return Calculator("tyre ratings", "load and speed of the tyres", INPUTS, found, _compute)


def _was_on(about: About, name: str | None) -> bool:
    return name == about.id_of("tyres") or any(one.tyres == name for one in about.history.past)


def _asked(about: About) -> dict[str, FilledInput]:
    """Fill what is asked of the tyres: both masses, where they rest, and the speed reached."""
    wanted: tuple[str, ...] = (BIKE_MASS.key, RIDER_MASS.key, WHEELBASE.key, AHEAD.key)
    chassis = filled_chassis(about)
    found = {key: chassis[key] for key in wanted if key in chassis}
    speed = _fastest(about)
    return found if speed is None else found | {"speed": speed}


def _marked(end: End, size: str | None, where: str) -> dict[str, FilledInput]:
    """Read load index and speed symbol out of a marking, as far as they stand there."""
    try:
        marking = parse_tyre_size(size) if size is not None else None
    except (UnreadableSize, OutOfRange):
        return {}
    if marking is None:
        return {}
    symbol = marking.speed_symbol or ("Z" if marking.size_symbol == "Z" else None)
    given = {f"{end}_index": marking.load_index, f"{end}_symbol": symbol}
    return {key: FilledInput(value, where) for key, value in given.items() if value is not None}


def _fastest(about: About) -> FilledInput | None:
    """Return the session's top speed, else the highest of this bike's sessions before."""
    if about.session.top_speed is not None:
        return FilledInput(about.session.top_speed, about.place)
    before = fastest_session(about.history)
    speed = before.session.top_speed if before is not None else None
    if before is None or speed is None:
        return None
    return FilledInput(speed, f"the most before, session {before.id}")


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return [answer for end in ENDS for answer in (_load(inputs, end), _speed(inputs, end))]


def _load(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        index = int(inputs.number(f"{end}_index"))
        rated = _mass(load_kg(index), inputs.units)
        step = f"load index {index} = {rated}"
        if not inputs.known("bike", "rider"):
            return Answered(
                f"rated {rated}; what bike and rider weigh together is not known", rated, steps=(step,)
            )
        both = inputs.amount("bike", "kg") + inputs.amount("rider", "kg")
        whole = _mass(round(both), inputs.units)
        if not inputs.known("wheelbase", "ahead"):
            return Answered(
                f"rated {rated}; the share of {whole} on this axle is not known", rated, steps=(step,)
            )
        axles = axle_loads(both, inputs.amount("wheelbase", "mm"), inputs.amount("ahead", "mm"))
        duty = load_duty(index, axles.front_kg if end == "front" else axles.rear_kg)
        asked, apart = (_mass(round(one), inputs.units) for one in (duty.asked_kg, abs(duty.spare_kg)))
        if duty.spare_kg < 0:
            over = f"{asked} - {rated} = {apart}"
            text = f"rated {rated}, bears {asked} standing: {apart} too much"
            return Answered(text, f"rated {rated}, bears {asked}", steps=(step, over))
        text = f"rated {rated}, bears {asked} of {whole} standing: {apart} spare"
        return Answered(text, rated, steps=(step, f"{rated} - {asked} = {apart}"))

    uses = ("bike", "rider", "wheelbase", "ahead")
    return told(inputs, f"{end}_load", f"{end}, load", (f"{end}_index",), LOAD, make, uses)


def _speed(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        symbol = str(inputs.value(f"{end}_symbol"))
        duty = speed_duty(symbol, inputs.amount_or("speed", "km/h", 0.0))
        rated = f"{'over ' if duty.rating.over else ''}{figures.speed(duty.rating.km_h / 3.6, inputs.units)}"
        if not inputs.known("speed"):
            return Answered(
                f"{symbol}: {rated}; no top speed is known", rated, steps=(f"symbol {symbol} = {rated}",)
            )
        reached = figures.speed(inputs.amount("speed", "m/s"), inputs.units)
        short = rated if duty.enough is not False else f"{rated}, ridden {reached}"
        step = f"symbol {symbol} is {rated}, against {reached} = {_against(duty, reached)}"
        return Answered(f"{symbol}: {rated}; {_against(duty, reached)}", short, steps=(step,))

    return told(inputs, f"{end}_speed", f"{end}, speed", (f"{end}_symbol",), SPEED, make, ("speed",))


def _mass(kg: float, units: Units) -> str:
    return figures.mass(kg, units).replace(".0 ", " ")


def _against(duty: SpeedDuty, reached: str) -> str:
    if duty.enough is None:
        return f"{reached} was reached: whether it is made for that its maker says"
    return f"{reached} was reached" + ("" if duty.enough else ": faster than it is rated for")
