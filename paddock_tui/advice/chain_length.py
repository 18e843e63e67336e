"""How far the chain has grown, from a length over links, against the maker's figure."""

from collections.abc import Iterable

from paddock_tui.advice.about import About
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
from paddock_tui.advice.sprockets import sprockets
from paddock_tui.calc.chain import chain_size
from paddock_tui.calc.chain_wear import Elongation, elongation, most_elongation_percent, pin_to_pin_mm
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number, Whole, Word

METHOD = Method(
    "(length - links x pitch) / (links x pitch); from inside and outside of the rollers their mean",
    "chain pulled taut, at its longest place of several; kinks, rust and hooked teeth are not in it",
    "the maker's figure comes first; a chain under it can be finished all the same",
    "chain makers' texts citing ANSI B29.1; 200 / teeth on large sprockets: two makers",
)
INPUTS = (
    Input("chain", "chain's code", Word("415", "420", "428", "520", "525", "530", "532")),
    Input("links", "links measured", Whole(2, 60, unit="links"), "pitches from pin to pin", "links measured"),
    Input(
        "length",
        "length over them",
        Amount("length", "mm", 20, 1200, step=0.1),
        "pin to pin",
        "length over the links",
    ),
    Input("inside", "inside the rollers", c.LENGTH, "instead of pin to pin"),
    Input("outside", "outside the rollers", c.LENGTH, "instead of pin to pin"),
    Input("gauge", "gauge may be off", Number(0, 10, step=0.1, unit="mm"), "either way"),
    Input("rear", "rear sprocket", c.TEETH),
    Input(
        "limit",
        "maker's longest",
        Amount("length", "mm", 20, 1200, step=0.1),
        "over the same links, from the manual",
    ),
    Input("general", "general limit", Number(0.5, 3, step=0.5, unit="%"), "where the maker gives none"),
)


def chain_length(about: About) -> Calculator:
    """Return the calculator of chain wear, filled with this session's reading and the bike's gauge."""
    known, bike = sprockets(about).filled, about.situation.bike
    found = {key: known[key] for key in ("chain", "rear") if key in known}
    found["gauge"] = FilledInput(0.3, "assumed: a slide gauge at its best")
    found["general"] = FilledInput(1.5, "makers' texts, fixed or smooth drives; general 3 %")
    if bike is not None:
        where = f"bike {about.id_of('bike')}"
        found |= filled(
            links=if_known(bike.drive.chain_gauge, where), limit=if_known(bike.drive.chain_longest, where)
        )
    if about.session.chain_length is not None:
        found["length"] = FilledInput(about.session.chain_length, about.place)
    return Calculator("chain-wear", "chain wear", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    by = (
        ("inside", "outside")
        if inputs.known("inside", "outside") and not inputs.known("length")
        else ("length",)
    )
    return (_grown(inputs, by), _limit(inputs, by))


def _length_mm(inputs: Inputs, by: tuple[str, ...]) -> float:
    if by == ("length",):
        return inputs.amount("length", "mm")
    return pin_to_pin_mm(inputs.amount("inside", "mm"), inputs.amount("outside", "mm"))


def _elongation(inputs: Inputs, by: tuple[str, ...]) -> Elongation:
    gauge = inputs.number("gauge") if inputs.known("gauge") else 0.0
    pitch = chain_size(int(inputs.value("chain"))).pitch_mm
    return elongation(_length_mm(inputs, by), int(inputs.number("links")), pitch, gauge)


def _grown(inputs: Inputs, by: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        found, length = _elongation(inputs, by), _length_mm(inputs, by)
        new = length - found.mm
        said = f"{found.percent:.2f} %"
        lead = (
            ()
            if by == ("length",)
            else (
                f"({inputs.amount('inside', 'mm'):g} mm + "
                f"{inputs.amount('outside', 'mm'):g} mm) / 2 = {length:.2f} mm",
            )
        )
        step = f"({length:.2f} mm - {new:.2f} mm) / {new:.2f} mm = {said}"
        text = f"{said}, give or take {found.error_percent:.2f} %: {found.mm:.1f} mm over {new:.1f} mm"
        return Answered(text, f"grown {said}", steps=(*lead, step))

    return told(inputs, "grown", "grown by", ("chain", "links", *by), METHOD, make, ("gauge",))


def _limit(inputs: Inputs, by: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        found, length = _elongation(inputs, by), _length_mm(inputs, by)
        worst = length + found.error_percent * (length - found.mm) / 100.0
        if inputs.known("limit"):
            most, whose = inputs.amount("limit", "mm"), "the maker's"
        else:
            share = most_elongation_percent(int(inputs.number("rear")), inputs.number("general"))
            most, whose = (length - found.mm) * (1.0 + share / 100.0), f"a general {share:.1f} %"
        left = most - worst
        said = f"{abs(left):.1f} mm"
        step = (
            f"{most:.1f} mm - ({length:.1f} mm + gauge {worst - length:.1f} mm) = "
            f"{'-' if left < 0 else ''}{said}"
        )
        if left < 0.0:
            return Answered(
                f"over {whose} limit by up to {said}: replace it", f"chain over by {said}", steps=(step,)
            )
        return Answered(
            f"under {whose} limit by {said} at least; look at rollers and teeth too", steps=(step,)
        )

    own = ("limit",) if inputs.known("limit") else ("rear", "general")
    return told(inputs, "limit", "to its limit", ("chain", "links", *by, *own), METHOD, make, ("gauge",))
