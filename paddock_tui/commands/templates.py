"""Templates: every declared field of a kind of record as a commented line, made from the declarations."""

from collections.abc import Iterator
from typing import Any

from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import spell
from paddock_tui.store.render import render

_KEYS = {
    "control": "traction",
    "riding mode": "showers",
    "adjuster": "front-rebound",
    "damping mode": "automatic",
    "offset": "under-braking",
    "level": "1",
    "fastener": "front-axle",
    "service item": "oil",
    "number": "1",
    "corner number": "1",
    "revs": "8000",
    "reading": "hot",
    "end": "front",
    "checklist item": "lever",
    "item": "lever",
    "flag": "red",
    "group and number": "novice.1",
    "rider and bike": "your-id.your-bike",
    "end and load": "front.rider",
    "what and which": "adjusters.front-rebound",
    "rule and subject": "little-traction-help-in-the-wet.traction",
    "rule and limit": "all-aids-near-least.near_least",
}


def template(kind: str) -> str:
    """Write the template of a kind: valid TOML once the comment marks before its lines are taken away."""
    lines = [
        f"# A {kind}: copy this file to a name of your own ending in .toml; that name is its id.",
        "# Take away the mark before what you know. What is left out is not known.",
        *_lines(CLASSES[kind], ()),
    ]
    return "\n".join(lines) + "\n"


def _lines(record: type, at: tuple[str, ...]) -> Iterator[str]:
    below: list[tuple[tuple[str, ...], Spec]] = []
    for key, (_, spec) in specs(record).items():
        if spec.nature == "one":
            yield f"#{spell((key,))} = {_example(spec)}  # {spec.help}"
        else:
            keys = tuple(_KEYS[spec.keyed_by].split(".")) if spec.keyed_by else ()
            below.append(((*at, key, *keys), spec))
    for path, spec in below:
        if spec.shape is not None:
            yield ""
            yield f"#[{spell(path[:-1])}]  # {spec.help}"
            yield f"#{spell(path[-1:])} = {_example(spec)}"
        elif spec.record is not None:
            yield ""
            yield f"#[{spell(path)}]"
            yield from _lines(spec.record, path)


def _example(spec: Spec) -> str:
    return render(_value(spec.shape))


def _value(shape: Any) -> Any:
    return shape.dump(shape.example())
