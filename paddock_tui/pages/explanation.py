"""What a setting does, as rows: the explanation in a bike's own numbers and direction."""

from collections.abc import Iterator

from paddock_tui.explanations import Direction, Explanation, of_path
from paddock_tui.facts.situation import Situation
from paddock_tui.pages.level_effects import level_section
from paddock_tui.pages.on_this_bike import OnBike, Start, on_this_bike
from paddock_tui.pages.rows import Row, Section
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Path
from paddock_tui.records.setup import SetUp
from paddock_tui.rules.core import SetValue
from paddock_tui.text import printable

_CAREFUL_SURFACES = ("damp", "drying", "wet", "standing water")


CANNOT = "it cannot"
"""The title of what a setting does not do."""


def careful(group: str | None, surface: str | None) -> bool:
    """Tell whether the cost of less help is said first: for novices and where it is not dry."""
    return group == "novice" or surface in _CAREFUL_SURFACES


def explained(path: Path, situation: Situation, puts: tuple[SetValue, ...] = ()) -> tuple[Section, ...]:
    """Make the sections of what one value of a session or profile does; empty where it is no setting.

    `puts` are what is offered on its row: where to start with it.
    """
    bike, setup = situation.bike, situation.setup or SetUp()
    if bike is None:
        return ()
    group = situation.rider.group if situation.rider is not None else None
    surface = surface_of(situation)
    level = next((one.value for one in puts if one.path == path and isinstance(one.value, int | str)), None)
    whom = ", ".join(word for word in (group, surface) if word)
    start = Start(level, whom) if level is not None else None
    return _explained(path, bike, setup, start, careful(group, surface))


def explained_of_bike(path: Path, bike: Bike) -> tuple[Section, ...]:
    """Make the sections of what a control, an adjuster or an offset of a bike's own record does."""
    if path[:1] in (("controls",), ("adjusters",)) and len(path) > 2:
        return _explained(("setup", *path[:2]), bike, SetUp(), None, False)
    if path[:1] == ("damping",) and path[2:3] == ("offsets",) and len(path) > 4:
        return _explained(("setup", "offsets", path[3]), bike, SetUp(damping=path[1]), None, False)
    return ()


def _explained(
    path: Path, bike: Bike, setup: SetUp, start: Start | None, costs_first: bool
) -> tuple[Section, ...]:
    found = of_path(path, bike, setup.damping)
    if found is None:
        return ()
    here = on_this_bike(path, setup, bike, start) if path[0] == "setup" else OnBike()
    sections = explanation_sections(found, here, costs_first)
    control = bike.controls.get(path[2]) if path[:2] == ("setup", "controls") else None
    levels = level_section(control) if control is not None else None
    return sections if levels is None else (sections[0], levels, *sections[1:])


def surface_of(situation: Situation) -> str | None:
    """Return the surface of a session, or the one that a profile was made for."""
    if situation.session is not None:
        return situation.session.surface
    return situation.profile.made_for if situation.profile is not None else None


def explanation_sections(found: Explanation, here: OnBike, costs_first: bool) -> tuple[Section, ...]:
    """Make the sections of an explanation; `costs_first` puts less, and what it costs, before more."""
    ways = [_way(found.more, here.more, False), _way(found.less, here.less, costs_first)]
    return (
        Section(f"{printable(found.title)}: what it does", tuple(_does(found, here))),
        *(reversed(ways) if costs_first else ways),
        Section(
            "how you notice",
            (_text("too much", _sentence(found.too_much)), _text("too little", _sentence(found.too_little))),
        ),
        Section(
            CANNOT,
            tuple(_text("", _sentence(said), f"cannot {place}") for place, said in enumerate(found.cannot)),
        ),
        Section(
            "beside it",
            (
                _text("works with", _sentence(found.works_with)),
                _text("watch", _sentence(found.watch)),
                _text("source", "; ".join(found.source)),
            ),
        ),
    )


def _does(found: Explanation, here: OnBike) -> Iterator[Row]:
    yield _text("", " ".join(found.does), "does")
    if here.said:
        yield _text("", printable(" ".join(here.said)), "on this bike")


def _way(way: Direction, end: str, cost_first: bool) -> Section:
    rows = [
        _text("gives", str(way.gives), f"{way.name} gives"),
        _text("costs", str(way.costs), f"{way.name} costs"),
    ]
    said = [row for row in (reversed(rows) if cost_first else rows) if row.value]
    return Section(way.name, tuple(said), f"toward {printable(end)} on this bike" if end else "")


def _text(label: str, value: str, key: str = "") -> Row:
    return Row(label, value, kind="text", key=f"explained {key or label}")


def _sentence(phrase: str) -> str:
    return f"{phrase[:1].upper()}{phrase[1:]}."
