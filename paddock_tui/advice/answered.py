"""The answers of a calculator by their keys, worked out once for what is looked at."""

from collections.abc import Callable, Mapping

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Answer, Calculator


def answered(about: About, make: Callable[..., Calculator], *of: object) -> Mapping[str, Answer]:
    """Return the answers of the calculator that `make` makes of these, as filled from what is known."""
    place = (make, *of)
    found: Mapping[str, Answer] | None = about.worked_out.get(place)
    if found is None:
        found = about.worked_out[place] = by_key(make(about, *of), about)
    return found


def by_key(calculator: Calculator, about: About) -> Mapping[str, Answer]:
    """Return the answers of a calculator by key."""
    return {one.key: one for one in calculator.answers(about.units)}
