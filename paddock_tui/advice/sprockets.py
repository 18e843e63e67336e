"""Sprockets and chain: pairs in order of their ratio, what each asks of chain and axle."""

import functools
import math
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
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
from paddock_tui.advice.gearing import filled_sprockets
from paddock_tui.calc.chain import centre_mm, chain_size, links_even, links_exact, pitch_diameter_mm
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.sprockets import Fitted, SprocketPair, sprocket_pairs
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Series, Word
from paddock_tui.rules.core import SetValue

METHOD = Method(
    "L = 2 C + (N + n) / 2 + (N - n)^2 / (4 pi^2 C), lengths in pitches, N and n the teeth",
    "a new chain, taut; set the slack afresh at the tightest point after any change",
    "6 to 120 teeth; within 0.005 pitch of the exact geometry",
    "Machinery's Handbook; Shigley, equation 17-34; pitches: ISO 606",
)
_MOST_PAIRS = 60
_CHAIN = ("front", "rear", "links", "chain")
_CHAINS = ("415", "420", "428", "520", "525", "530", "532")

INPUTS = (
    Input("front", "front sprocket", c.TEETH),
    Input("rear", "rear sprocket", c.TEETH),
    Input("links", "number of links", c.LINKS),
    Input("chain", "chain's code", Word(*_CHAINS)),
    Input("fronts", "front sprockets to try", Series(1, 8, "one to eight numbers of teeth", whole=True)),
    Input("rears", "rear sprockets to try", Series(1, 12, "one to twelve numbers of teeth", whole=True)),
    Input("centre", "target centre distance", c.LENGTH, "from the gearbox sprocket to the rear axle"),
    Input(
        "back",
        "axle can go back",
        c.SMALL,
        "without it nothing is said of the room",
        "room for the axle backwards",
    ),
    Input(
        "forward",
        "axle can go forward",
        c.SMALL,
        "without it nothing is said of the room",
        "room for the axle forwards",
    ),
)


def sprockets(about: About) -> Calculator:
    """Return the calculator of sprocket pairs, filled with those fitted and their neighbours."""
    return Calculator("sprockets", "sprockets and chain", INPUTS, _filled(about), _compute)


def _filled(about: About) -> dict[str, FilledInput]:
    found = filled_sprockets(about)
    bike, where = about.situation.bike, f"bike {about.id_of('bike')}"
    links = about.setup.links
    if links is not None:
        found["links"] = FilledInput(links, about.place)
    elif bike is not None and bike.drive.links is not None:
        found["links"] = FilledInput(bike.drive.links, f"as delivered, {where}")
    if bike is not None and bike.drive.chain is not None:
        found["chain"] = FilledInput(bike.drive.chain, where)
    for key, by in (("front", 1), ("rear", 2)):
        if key in found:
            teeth = int(found[key].value)
            near = tuple(range(max(teeth - by, 8), teeth + by + 1))
            found[f"{key}s"] = FilledInput(near, "those fitted and their neighbours")
    return found


def _compute(inputs: Inputs) -> Iterable[Answer]:
    yield _centre(inputs)
    yield _links(inputs)
    needs = (*_CHAIN, "fronts", "rears")
    uses = ("back", "forward")
    if inputs.missing(needs):
        yield told(inputs, "pairs", "pairs by ratio", needs, METHOD, lambda: Answered(""))
        return
    try:
        found = _pairs(inputs)
    except (OutOfRange, Inconsistent) as error:
        refused = error
        yield told(inputs, "pairs", "pairs by ratio", needs, METHOD, lambda: _refuse(refused), uses)
        return
    for pair in found:
        label = f"{pair.front_teeth} / {pair.rear_teeth}"
        yield told(inputs, label, label, needs, METHOD, functools.partial(_told, _fitted(inputs), pair), uses)


def _fitted(inputs: Inputs) -> Fitted:
    return Fitted(
        int(inputs.number("front")),
        int(inputs.number("rear")),
        int(inputs.number("links")),
        chain_size(int(inputs.value("chain"))).pitch_mm,
        inputs.amount("back", "mm") if inputs.known("back") else None,
        inputs.amount("forward", "mm") if inputs.known("forward") else None,
    )


def _pairs(inputs: Inputs) -> tuple[SprocketPair, ...]:
    fronts, rears = (tuple(int(one) for one in inputs.value(key)) for key in ("fronts", "rears"))
    if len(set(fronts)) * len(set(rears)) > _MOST_PAIRS:
        raise Inconsistent("pairs", f"more than {_MOST_PAIRS}: name fewer sprockets")
    return sprocket_pairs(fronts, rears, _fitted(inputs))


def _refuse(error: OutOfRange | Inconsistent) -> Answered:
    raise error


def _centre(inputs: Inputs) -> Answer:
    def make() -> Answered:
        fitted = _fitted(inputs)
        found = centre_mm(fitted.front_teeth, fitted.rear_teeth, fitted.links, fitted.pitch_mm)
        said = f"{figures.figure(found, 0)} mm"
        spare = fitted.links - (fitted.front_teeth + fitted.rear_teeth) / 2.0
        turns = (fitted.rear_teeth - fitted.front_teeth) / math.tau
        step = (
            f"(A + sqrt(A^2 - 8 B^2)) / 4 x pitch, A = {fitted.links} - ({fitted.front_teeth} + "
            f"{fitted.rear_teeth}) / 2 = {spare:g}, B = "
            f"({fitted.rear_teeth} - {fitted.front_teeth}) / (2 pi) "
            f"= {turns:.3f}, pitch {fitted.pitch_mm:g} mm = {said}"
        )
        return Answered(f"{said} from sprocket to axle with {fitted.links} links, taut", steps=(step,))

    return told(inputs, "centre", "centre distance", _CHAIN, METHOD, make)


def _links(inputs: Inputs) -> Answer:
    def make() -> Answered:
        front, rear = int(inputs.number("front")), int(inputs.number("rear"))
        pitch, centre = chain_size(int(inputs.value("chain"))).pitch_mm, inputs.amount("centre", "mm")
        exact, even = links_exact(front, rear, centre, pitch), links_even(front, rear, centre, pitch)
        in_pitches = centre / pitch
        step = (
            f"L = 2 C + (N + n) / 2 + (N - n)^2 / (4 pi^2 C), C = {centre:g} mm / {pitch:g} mm = "
            f"{in_pitches:.3f}: {2 * in_pitches:.3f} + {(front + rear) / 2:g} + "
            f"{(rear - front) ** 2 / (4 * math.pi**2 * in_pitches):.3f} "
            f"= {exact:.2f}, up to even: {even} links"
        )
        size = (
            f"pitch circles {pitch_diameter_mm(front, pitch):.1f} and {pitch_diameter_mm(rear, pitch):.1f} mm"
        )
        return Answered(f"{even} links, {exact:.2f} exactly", more=(size,), steps=(step,))

    needs = ("front", "rear", "chain", "centre")
    return told(inputs, "links", "links for a distance", needs, METHOD, make)


def _told(fitted: Fitted, pair: SprocketPair) -> Answered:
    chain, ratio = pair.chain, figures.figure(pair.ratio, 3)
    step = f"{pair.rear_teeth} / {pair.front_teeth} = {ratio}"
    if abs(pair.change_percent) < 0.005 and chain.links == fitted.links and abs(chain.axle_mm) < 0.005:
        return Answered(f"{ratio}, as fitted", steps=(step,))
    way = "shorter" if pair.change_percent > 0 else "longer"
    lead = f"{ratio}, {abs(pair.change_percent):.1f} % {way}"
    side = "back" if chain.axle_mm > 0 else "forward"
    moved = f"{abs(chain.axle_mm):.1f} mm {side}"
    steps = (step, f"axle, by the centre distances with {fitted.links} and {chain.links} links = {moved}")
    links = "" if chain.links == fitted.links else f" with {chain.links} links"
    if chain.fits is False:
        missing = f"{figures.missing_mm(chain.short_mm)} of room missing to go {side}"
        return Answered(f"{lead}, does not fit: {missing}{links}", steps=steps)
    puts = [
        SetValue(("setup", "front_sprocket"), pair.front_teeth),
        SetValue(("setup", "rear_sprocket"), pair.rear_teeth),
    ]
    if chain.links != fitted.links:
        puts.append(SetValue(("setup", "links"), chain.links))
    more = ("not known whether the axle has the room",) if chain.fits is None else ()
    asks = f", needs the axle {moved}" if chain.fits is None else f", axle {moved}"
    return Answered(f"{lead}{asks}{links}", "", tuple(puts), more, steps)
