"""The bench made anew out of what still stands is the bench worked out whole, whatever changed."""

import datetime as dt
import functools
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

import attrs
import pytest

from paddock_tui.advice.about import About
from paddock_tui.advice.bench import calculators
from paddock_tui.advice.calculators import FilledInput, Input
from paddock_tui.desk.edits.keys import stepping, toggling
from paddock_tui.desk.histories import Histories
from paddock_tui.desk.situations import assemble
from paddock_tui.pages.bench import bench_page
from paddock_tui.pages.kept_sections import KeptCalculators, KeptSections, alike
from paddock_tui.pages.rows import Page
from paddock_tui.quantities import Quantity
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import GARAGE, Path, Ref
from paddock_tui.records.shapes import Number
from paddock_tui.store.aside import aside
from paddock_tui.store.data import after, leaves
from paddock_tui.store.garage import GarageFiles
from tests.advice.given import BAR, NOON, PSI
from tests.examples import one_in
from tests.sample import FILES, SAMPLE

HAND = Ref("session", "2026-06-20-4-magpie")
Typed = dict[tuple[str, str], Any]


class Bench:
    """A bench that keeps what stands, beside one that works everything out."""

    def __init__(self) -> None:
        self.calculators, self.sections = KeptCalculators(), KeptSections()

    def page(self, about: About, typed: Mapping[tuple[str, str], Any] | None = None) -> Page:
        """Make the page out of what stands, and hold it to one that is worked out whole."""
        given = typed or {}
        every = self.calculators.of(about, calculators)
        found = bench_page(every, given, "", about.units, self.sections)
        whole = bench_page(calculators(fresh(about)), given, "", about.units)
        assert found == whole
        return found


def fresh(about: About) -> About:
    return About(about.situation, about.history, about.units)


@functools.cache
def files() -> GarageFiles:
    return GarageFiles(SAMPLE)


def about_of(ref: Ref = HAND, step: Step | None = None, now: dt.datetime = NOON, units: Any = BAR) -> About:
    """Return what is looked at, as a step would make it."""
    read = aside(files())
    for change in step.changes if step is not None else ():
        assert isinstance(change, Change)
        read.stage(change.ref, edited(read.data(change.ref), change))
    situation = assemble(read, ref, now, histories=_HISTORIES).situation
    return About(situation, situation.history, units)


_HISTORIES = Histories()


def edited(data: Mapping[str, Any], change: Change) -> dict[str, Any]:
    made = dict(data)
    for edit in change.edits:
        made = after(made, edit, lambda _: False)
    return made


def subjects() -> list[Ref]:
    return [ref for ref in FILES if ref.kind in ("session", "profile")]


def steps() -> Iterator[Step]:
    """List a step of every sixth value, of every record around a session, that a key can change."""
    records = [HAND, *(ref for ref in assemble(files(), HAND, NOON).situation.refs.values() if ref != HAND)]
    for ref in dict.fromkeys([*records, GARAGE]):
        for path, _ in list(leaves(files().data(ref)))[:: one_in(12)]:
            step = _step(ref, path)
            if step is not None:
                yield step


def _step(ref: Ref, path: Path) -> Step | None:
    for made in (stepping(files(), ref, path, 1, None), toggling(files(), ref, path, {})):
        if isinstance(made, Step) and made.changes:
            return made
    return None


def test_one_bench_for_every_session_and_profile_after_the_other() -> None:
    bench = Bench()

    for ref in subjects():
        bench.page(about_of(ref))
        bench.page(about_of(ref, units=PSI))


def test_steps_of_values_around_a_session_and_back() -> None:
    bench = Bench()
    before = bench.page(about_of())
    changed = []

    for step in steps():
        if bench.page(about_of(step=step)) != before:
            changed.append(step)

    assert bench.page(about_of()) == before
    assert len({step.changes[0].ref.kind for step in changed}) >= 4
    assert len(changed) > 5


def test_inputs_of_every_calculator_cleared_and_tried() -> None:
    bench, about = Bench(), about_of()

    for one in calculators(fresh(about)):
        for declared in one.inputs[:: max(1, len(one.inputs) // 2)]:
            bench.page(about)
            before = bench.sections.made
            tried: Typed = {(one.id, declared.key): None}
            bench.page(about, tried)
            assert bench.sections.made == before + 1, (one.id, declared.key)
            found = one.filled.get(declared.key)
            value = None if found is None else declared.shape.step(found.value, 1)
            bench.page(about, {(one.id, declared.key): value} if value is not None else {})


def test_of_the_same_records_nothing_is_worked_out_again_on_that_day() -> None:
    bench = Bench()
    bench.page(about_of())
    made = bench.sections.made

    for now in (NOON, NOON + dt.timedelta(seconds=1), NOON + dt.timedelta(hours=5)):
        bench.page(about_of(now=now))

    assert bench.sections.made == made == len(calculators(about_of()))


@pytest.mark.parametrize("ref", [HAND, Ref("profile", "magpie-ines-wet")])
def test_on_other_days_the_bench_is_that_of_those_days(ref: Ref) -> None:
    bench = Bench()

    for days in (-400, -1, 0, 1, 30, 400):
        bench.page(about_of(ref, now=NOON + dt.timedelta(days=days)))


def test_a_step_makes_the_sections_anew_that_rest_on_it_and_no_other() -> None:
    bench = Bench()
    bench.page(about_of())
    made = bench.sections.made

    step = stepping(files(), HAND, ("setup", "rear_sprocket"), 1, None)
    assert isinstance(step, Step), step
    bench.page(about_of(step=step))

    assert 0 < bench.sections.made - made < 20


@attrs.frozen
class _Pair:
    one: object
    other: object = attrs.field(eq=False, default=None)


@attrs.frozen(eq=False)
class _Itself:
    one: int


def _returning(_: Any) -> tuple[()]:
    return ()


ALIKE = [
    (1, 1),
    ("a", "a"),
    (1.5, 1.5),
    (float("nan"), float("nan")),
    (Decimal("36.0"), Decimal("36.0")),
    ((1, "a"), (1, "a")),
    ({"a": [1]}, {"a": [1]}),
    (FilledInput(1, "here"), FilledInput(1, "here")),
    (_Pair(1, 2), _Pair(1, 3)),
    (functools.partial(_returning, 1), functools.partial(_returning, 1)),
    (Input("a", "A", Number(0, 1)), Input("a", "A", Number(0, 1))),
    (Quantity(Decimal(36), "mm"), Quantity(Decimal(36), "mm")),
]
OTHER = [
    (1, 2),
    (1, 1.0),
    (1, True),
    (0.0, -0.0),
    (Decimal("36"), Decimal("36.0")),
    ((1,), [1]),
    ((1,), (1, 2)),
    ({"a": 1, "b": 2}, {"b": 2, "a": 1}),
    (FilledInput(1, "here"), FilledInput(1, "there")),
    (FilledInput(1, "here"), FilledInput(1, "here", earlier=True)),
    (FilledInput(1, "here"), FilledInput(2, "here")),
    (_Pair(1), _Pair(2)),
    (_Itself(1), _Itself(1)),
    (functools.partial(_returning, 1), functools.partial(_returning, 2)),
    (functools.partial(_returning, 1), functools.partial(repr, 1)),
    (lambda: 1, lambda: 1),
    (object(), object()),
    ({1}, {1}),
    (Input("a", "A", Number(0, 1)), Input("a", "A", Number(0, 2))),
    (Quantity(Decimal(36), "mm"), Quantity(Decimal("36.0"), "mm")),
]


@pytest.mark.parametrize(("one", "other"), ALIKE)
def test_what_is_alike(one: object, other: object) -> None:
    assert alike(one, other)


@pytest.mark.parametrize(("one", "other"), OTHER)
def test_what_is_not_alike_or_cannot_be_told(one: object, other: object) -> None:
    assert not alike(one, other)
