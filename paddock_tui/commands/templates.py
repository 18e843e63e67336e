"""Templates: every declared field of a kind of record as a commented line, made from the declarations."""

import tomllib
from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Any

from paddock_tui.commands.examples import EXAMPLES
from paddock_tui.records.fields import ANY, Spec, specs
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path, spell
from paddock_tui.store.render import render

_KEYS = {
    "control": "traction",
    "riding mode": "showers",
    "adjuster": "front-rebound",
    "damping mode": "automatic",
    "offset": "under-braking",
    "preset": "calm",
    "level": "1",
    "fastener": "front-axle",
    "service item": "oil",
    "paper": "licence",
    "what is booked": "entry",
    "number": "1",
    "corner number": "1",
    "lap": "2",
    "revs": "8000",
    "reading": "hot",
    "end": "front",
    "checklist item": "lever",
    "item": "lever",
    "job": "fuel",
    "class": "your-class",
    "flag": "red",
    "group and number": "novice.1",
    "rider and bike": "your-id.your-bike",
    "end and load": "front.rider",
    "what and number": "brake-lever-not-firm.1",
    "what and which": "adjusters.front-rebound",
    "rule and subject": "little-traction-help-in-the-wet.traction",
    "rule and limit": "all-aids-near-least.near_least",
}


_CHECKLISTS = (
    FilePath(__file__).parent / "checklists",
    FilePath(__file__).parents[2] / "sample_garage/checklists",
)
"""Where the lists of a new garage come from: the sample's own, which an installed program has beside it."""


def checklists() -> Iterator[tuple[str, str]]:
    """Give name and text of each checklist that a new garage begins with: those of the sample in use."""
    folder = next(one for one in _CHECKLISTS if one.is_dir())
    for file in sorted(folder.glob("*.toml")):
        text = file.read_text(encoding="utf-8")
        if "retired" not in tomllib.loads(text):
            yield file.name, text


def template(kind: str) -> str:
    """Write the template of a kind: valid TOML once the comment marks before its lines are taken away."""
    lines = [
        f"# A {kind}: copy this file to a name of your own ending in .toml; that name is its id.",
        "# Take away the # before what you know, and before the [heading] that it stands under.",
        "# What is left out is not known.",
        *_lines(kind, CLASSES[kind], (), ()),
    ]
    return "\n".join(lines) + "\n"


def _lines(kind: str, record: type, at: Path, declared: Path) -> Iterator[str]:
    """Write the lines of a class: `at` are the keys of the example, `declared` those of the declaration."""
    below: list[tuple[Path, Path, Spec]] = []
    for key, (_, spec) in specs(record).items():
        if spec.nature == "one":
            yield f"#{spell((key,))} = {_example(kind, (*declared, key), spec)}  # {spec.help}"
        else:
            keys = tuple(_KEYS[spec.keyed_by].split(".")) if spec.keyed_by else ()
            below.append(((*at, key, *keys), (*declared, key, *(ANY for _ in keys)), spec))
    for path, pattern, spec in below:
        if spec.shape is not None:
            yield ""
            yield f"#[{spell(path[:-1])}]  # {spec.help}"
            yield f"#{spell(path[-1:])} = {_example(kind, pattern, spec)}"
        elif spec.record is not None:
            yield ""
            yield f"#[{spell(path)}]"
            yield from _lines(kind, spec.record, path, pattern)


def _example(kind: str, pattern: Path, spec: Spec) -> str:
    shape: Any = spec.shape
    text = EXAMPLES.get(kind, {}).get(".".join(pattern))
    value = shape.example() if text is None else shape.read(text)
    return render(shape.dump(value))
