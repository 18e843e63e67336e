"""Sprockets and chain: pairs in order of their ratio, what each asks of chain and axle."""

import functools
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
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Series, Word
from paddock_tui.rules.core import SetValue
from paddock_tui.trade.chain import centre_mm, chain_size
from paddock_tui.trade.errors import Inconsistent, OutOfRange
from paddock_tui.trade.sprockets import Fitted, SprocketPair, sprocket_pairs

METHOD = Method(
    "L = 2 C + (N1 + N2) / 2 + (N2 - N1)^2 / (4 pi^2 C), lengths in pitches",
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
    Input("back", "room for the axle backwards", c.SMALL, "without it nothing is said of the room"),
    Input("forward", "room for the axle forwards", c.SMALL, "without it nothing is said of the room"),
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
        yield told(inputs, label, label, needs, METHOD, functools.partial(_told, pair), uses)


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
        return Answered(
            f"{figures.figure(found, 0)} mm from sprocket to axle with {fitted.links} links, taut"
        )

    return told(inputs, "centre", "centre distance", _CHAIN, METHOD, make)


def _told(pair: SprocketPair) -> Answered:
    ratio = figures.figure(pair.ratio, 3)
    if abs(pair.change_percent) < 0.005 and abs(pair.axle_mm) < 0.005:
        return Answered(f"{ratio}, as fitted")
    way = "shorter" if pair.change_percent > 0 else "longer"
    move = f"axle {abs(pair.axle_mm):.1f} mm {'back' if pair.axle_mm > 0 else 'forward'}"
    room = {True: "", False: ": no room", None: ""}[pair.fits]
    other = ""
    if pair.fits is False:
        to = f"{abs(pair.axle_with_links_mm):.1f} mm {'back' if pair.axle_with_links_mm > 0 else 'forward'}"
        other = f"; {pair.links} links put it {to}"
    puts = (
        SetValue(("setup", "front_sprocket"), pair.front_teeth),
        SetValue(("setup", "rear_sprocket"), pair.rear_teeth),
    )
    text = f"{ratio}, {abs(pair.change_percent):.1f} % {way}, {move}{room}{other}"
    return Answered(text, "", puts, ("not known whether the axle has the room",) if pair.fits is None else ())
