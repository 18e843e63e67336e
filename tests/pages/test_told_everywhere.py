"""What a record can say of dangers, in every place: page, template, sample, entry line, return or list."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.commands.templates import template
from paddock_tui.entry import read_line
from paddock_tui.facts.essentials.core import ESSENTIALS
from paddock_tui.pages.debrief import return_page
from paddock_tui.pages.record import record_page
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.desk.opened import NEXT, at_desk
from tests.entry.contexts import context
from tests.every import every
from tests.sample import FILES, SAMPLE, data_of

BIKE, TYRES = Ref("bike", "magpie"), Ref("tyres", "magpie-trackday-2")
DAY = Ref("day", "2026-06-20-anvilfen")


@attrs.frozen
class Fact:
    """Where it is written (`#` is any key), a line that enters it, and what asks for it.

    `asked` is a path on the return's page, or the name of an item of a list after "list:", or an essential.
    """

    kind: str
    path: str
    line: str
    asked: str
    ref: Ref = NEXT

    def matches(self, path: tuple[str, ...], pattern: str = "") -> bool:
        """Return whether a path is this one."""
        wanted = (pattern or self.path).split(".")
        return len(path) == len(wanted) and all(
            one in ("#", key) for one, key in zip(wanted, path, strict=True)
        )


def of_tyre(key: str, line: str) -> Fact:
    return Fact("tyres", f"front.{key}", f"front.{key} {line}", f"front.{key}", TYRES)


def happened(key: str, line: str) -> Fact:
    return Fact("session", f"incidents.#.{key}", f"incident {line}", "happened")


TOLD: dict[str, Fact] = {
    "litres in the tank": Fact("session", "fuel_in_tank", "tank 6.5", "fuel_in_tank"),
    "repair in a tyre": of_tyre("repair", "inside"),
    "book slack, least": Fact("bike", "drive.slack_least", "slack least 30", "drive.slack_least", BIKE),
    "book slack, most": Fact("bike", "drive.slack_most", "slack most 40", "drive.slack_most", BIKE),
    "how the bike stands for it": Fact(
        "bike", "drive.slack_stance", "slack stance rear stand", "drive.slack_stance", BIKE
    ),
    "how the bike stood": Fact("session", "chain_slack_stance", "stood rear stand", "chain_slack_stance"),
    "from where an adjuster is counted": Fact(
        "bike",
        "adjusters.#.counted_from",
        "adjusters.front-rebound.counted_from open",
        "adjusters.#.counted_from",
        BIKE,
    ),
    "which way a count was counted": Fact(
        "session",
        "counted.#.counted_from",
        "counted.front-rebound.counted_from open",
        "list:final-clicks",
    ),
    "brake pumped": Fact("session", "work.#.pumped", "work axle front torqued pumped", "list:brakes-pumped"),
    "checked by": Fact(
        "session",
        "work.#.checked_by",
        "work axle front torqued pumped by IS checked by TM",
        "list:wheels-torqued",
    ),
    "pressure window": of_tyre("hot_dry_to", "2.4 bar"),
    "warmers target": of_tyre("on_warmers", "2.3 bar"),
    "window on warmers": of_tyre("on_warmers_to", "2.4 bar"),
    "sport-touring tyres": of_tyre("kind", "sport-touring"),
    "resets to": Fact(
        "bike",
        "controls.#.value_after_key_off",
        "controls.traction.value_after_key_off 3",
        "controls.#.value_after_key_off",
        BIKE,
    ),
    "ice on the track": Fact("session", "ice", "ice yes", "ice"),
    "coolant": Fact("bike", "drive.coolant", "coolant plain water", "drive.coolant", BIKE),
    "visor": Fact("session", "visor", "visor dark", "visor"),
    "shift pattern": Fact(
        "bike", "drive.shift_pattern", "shift pattern reversed", "drive.shift_pattern", BIKE
    ),
    "work on the shift pattern": Fact("session", "work.#.what", "work shift pattern", "wheels-secured"),
    "hours slept": Fact("session", "slept", "slept 6", "slept"),
    "airbag fired": happened("what", "airbag fired"),
    "airbag re-armed": happened("rearmed", "airbag fired re-armed"),
    "helmet dropped": happened("what", "helmet dropped"),
    "noise measured elsewhere": Fact(
        "day", "entries.#.#.noise.elsewhere", "entries.ines.magpie.noise.elsewhere quernstone", "noise", DAY
    ),
    "distance home": Fact("day", "distance_home", "distance home 64 km", "distance_home", DAY),
    "a planned pressure change": Fact(
        "session", "front_pressure_change", "pf 0.05 bar", "front_pressure_change"
    ),
    "a wheel set": Fact("tyres", "wheels", "wheels black", "wheels", TYRES),
    "its own circumference": of_tyre("circumference", "1880 mm"),
    "black flag for the bike": happened("what", "black flag"),
    "refused by inspection": happened("what", "refused by inspection"),
    "mend by": happened("due", "mend by 2026-07-01"),
}

EVERY = every("told", TOLD.values(), ids=list(TOLD))


def in_the_sample(told: Fact) -> list[tuple[Ref, tuple[str, ...]]]:
    """List where the sample holds it."""
    return [
        (ref, path)
        for ref in FILES
        if ref.kind == told.kind
        for path, _ in leaves(data_of(ref))
        if told.matches(path)
    ]


def leaves(data: dict[str, Any], at: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    for key, value in data.items():
        if isinstance(value, dict):
            yield from leaves(value, (*at, key))
        else:
            yield (*at, key), value


@EVERY
def test_the_sample_holds_it_and_its_page_has_a_row_for_it(told: Fact) -> None:
    found = in_the_sample(told)
    assert found, "not in the sample"
    for ref, path in found[:1]:
        loaded = GarageFiles(SAMPLE).read(ref)
        assert loaded is not None
        assert path in {row.path for row in record_page(loaded).rows()}


@EVERY
def test_the_template_has_a_line_for_it_and_the_entry_line_takes_it(told: Fact) -> None:
    key = told.path.rpartition(".")[2]
    assert re.search(rf"^#{key} = ", template(told.kind), flags=re.M)
    found = read_line(told.line, context(told.ref))
    assert (found.errors, found.questions) == ((), ())
    assert any(told.matches(path) for path in found.edits), found.edits


def test_it_is_asked_for_on_return_or_by_a_list(garage: Path) -> None:
    own = (told for told in TOLD.values() if told.kind != "session")
    # Whoever goes home by van is not asked how far it is.
    unknown = {"travel", *(told.path.rpartition(".")[2] for told in own)}
    for file in [*garage.glob("tyres/*"), *garage.glob("bikes/*"), *garage.glob("days/*")]:
        text = file.read_text(encoding="utf-8")
        file.write_text(re.sub(rf"^({'|'.join(unknown)}) = .*\n", "", text, flags=re.M), encoding="utf-8")
    desk = at_desk(garage)
    loaded = desk.files.read(NEXT)
    assert loaded is not None
    rows = return_page(desk.files, loaded, (), "", Units(), desk.now(), "").rows()
    paths = {row.path for row in rows}
    items = {name for ref in FILES if ref.kind == "checklist" for name in data_of(ref).get("items", {})}
    for name, told in TOLD.items():
        by_return = any(told.matches(path, told.asked) for path in paths)
        assert by_return or told.asked in ESSENTIALS or told.asked.removeprefix("list:") in items, name
