"""A season of forty days: what was ridden and spent is what a sum over whole cents says, to the cent."""

import csv
import datetime as dt
import random
import statistics
from decimal import Decimal
from pathlib import Path

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.__main__ import main
from paddock_tui.desk import Desk
from paddock_tui.desk.season import Season, part_of, season, sum_of
from paddock_tui.pages.season import season_page
from paddock_tui.records.costs import KINDS
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Currency, Money, MoneyAmount, TwoCurrencies, total
from tests.every import every
from tests.small import BIKE, GARAGE, write

DAYS = 40
LAP_KM = "4.25"


@attrs.define
class WrittenTotals:
    """What the generator wrote, counted while it was written, money in whole cents."""

    cents: dict[tuple[str, str, str], int] = attrs.field(factory=dict)
    laps_ms: dict[tuple[str, str], list[int]] = attrs.field(factory=dict)
    sessions: int = 0

    def spent(self, *wanted: str) -> Decimal:
        return sum(
            (Decimal(cents).scaleb(-2) for key, cents in self.cents.items() if set(wanted) <= set(key)),
            Decimal("0.00"),
        )


def forty_days(root: Path, seed: int = 4) -> WrittenTotals:
    """Write a season: two riders with a bike each, two outings a day, costs typed with comma or point."""
    draw, told, files = random.Random(seed), WrittenTotals(), {}
    for place in range(DAYS):
        date = dt.date(2026, 3, 1) + dt.timedelta(days=5 * place)
        day = [f"date = {date}", 'venue = "ring"', 'kind = "track day"']
        for rider, bike in (("ann", "plain"), ("bob", "other")):
            day.append(f"[entries.{rider}.{bike}.costs]")
            for kind in KINDS[: draw.randrange(len(KINDS) + 1)]:
                cents = draw.randrange(1, 40_000)
                told.cents[rider, bike, f"{kind} {place}"] = cents
                day.append(f'{kind} = "{cents // 100}{draw.choice(",.")}{cents % 100:02}"')
            for number in (1, 2):
                surface = draw.choice(("dry", "wet"))
                laps = [draw.randrange(100_000, 101_000) for _ in range(3)]
                told.laps_ms.setdefault((surface, bike), []).extend(laps)
                told.sessions += 1
                lines = [
                    f"date = {date}",
                    f"number = {number}",
                    'kind = "track day"',
                    f'day = "{date}-ring"',
                    f'bike = "{bike}"',
                    f'rider = "{rider}"',
                    f'surface = "{surface}"',
                    'ridden_time = "15 min"',
                    "[laps]",
                    *(f'{at} = "1:{ms / 1000 - 60:06.3f}"' for at, ms in enumerate(laps, 1)),
                ]
                files[f"sessions__2026__{date}-{number}-{bike}"] = "\n".join(lines) + "\n"
        files[f"days__{date}-ring"] = "\n".join(day) + "\n"
    bought = '\n[costs.1]\non = 2026-01-20\nwhat = "parts"\namount = "0.10"\n'
    before = '[costs.2]\non = 2025-12-31\nwhat = "parts"\namount = "99.99"\n'
    told.cents["", "plain", "parts bought"] = 10
    write(
        root,
        garage=GARAGE + 'currency = "EUR"\n',
        bikes__plain=BIKE + bought + before,
        bikes__other=BIKE,
        riders__bob='name = "Bob"\n',
        venues__ring=f'name = "Ring"\nlength = "{LAP_KM} km"\n',
        **files,
    )
    return told


def test_a_season_of_forty_days_is_exact(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = forty_days(tmp_path / "garage")
    found = season(Desk(tmp_path / "garage"), 2026)

    whole = found.whole
    assert (whole.days, whole.sessions, whole.laps) == (DAYS, told.sessions, 3 * told.sessions)
    assert whole.hours == pytest.approx(told.sessions / 4)
    assert whole.km == pytest.approx(float(LAP_KM) * 3 * told.sessions)
    assert sum_of(whole.spent, "EUR") == Money(told.spent(), "EUR")
    assert {name: sum_of(one.spent, "EUR") for name, one in found.by_bike} == {
        name: Money(told.spent(name), "EUR") for name in ("plain", "other")
    }
    by_rider = {name: sum_of(one.spent, "EUR") for name, one in found.by_rider}
    assert by_rider == {"": Money(Decimal("0.10"), "EUR")} | {
        name: Money(told.spent(name), "EUR") for name in ("ann", "bob")
    }
    # Venue, conditions, bike and rider part the laps; three laps in a session leave none aside.
    keys = [(one.column, one.bike) for one in found.laps]
    assert sorted(keys) == sorted(told.laps_ms)
    best_ms = [1000 * one.best_s for one in found.laps]
    assert best_ms == pytest.approx([min(told.laps_ms[key]) for key in keys])
    median_ms = [1000 * one.median_s for one in found.laps]
    assert median_ms == pytest.approx([statistics.median(told.laps_ms[key]) for key in keys])
    assert found.years == (2025, 2026)
    assert season(Desk(tmp_path / "garage"), 2025).whole.sessions == 0

    values = words_of(found)
    assert values["all of it"] == f"{told.spent():f} EUR"
    shared = (told.spent() / DAYS).quantize(Decimal("0.01"))
    assert values["a day"] == f"{shared:f} EUR"

    assert (
        main(["export", str(tmp_path / "garage"), "--to", str(tmp_path / "out"), "--with", "incidents"]) == 0
    )
    with (tmp_path / "out" / "costs.csv").open(newline="") as file:
        rows = [one for one in csv.DictReader(file) if one["date"] >= "2026"]
    assert sum(Decimal(one["amount"]) for one in rows) == told.spent()
    assert {one["currency"] for one in rows} == {"EUR"}
    with (tmp_path / "out" / "columns.csv").open(newline="") as file:
        assert {one["column"] for one in csv.DictReader(file) if one["table"] == "costs"} == set(rows[0])
    capsys.readouterr()
    assert main(["show", str(tmp_path / "garage"), "season/2026"]) == 0
    printed = capsys.readouterr().out
    assert f"{told.spent():f} EUR" in printed
    assert "falls" not in printed
    assert main(["show", str(tmp_path / "garage"), "season/2026", "--with", "incidents"]) == 0
    assert "falls" in capsys.readouterr().out
    assert main(["show", str(tmp_path / "garage"), "season/last"]) == 64


def words_of(found: Season) -> dict[str, str]:
    return {row.label: row.value for row in season_page(found).rows()}


def test_two_currencies_are_no_sum_and_that_is_said(tmp_path: Path) -> None:
    costs = '[costs.1]\non = 2026-01-20\nwhat = "parts"\namount = "5"\n[costs.2]\non = 2026-02-20\n'
    write(tmp_path, bikes__plain=f'{BIKE}\n{costs}what = "fuel"\namount = "7.20 CHF"\n')
    words = words_of(season(Desk(tmp_path), 2026))

    assert words["parts"] == "5.00"
    assert words["fuel"] == "7.20 CHF"
    assert words["all of it"] == "no sum: CHF and the garage's own are not changed into each other"
    assert "a day" not in words


@given(st.lists(st.integers(0, 10**11 - 1)), st.sampled_from([",", "."]))
def test_what_is_typed_is_added_to_the_cent(cents: list[int], point: str) -> None:
    shape = MoneyAmount()
    read = [shape.read(f"{one // 100}{point}{one % 100:02} eur") for one in cents]
    amounts = [one for one in read if isinstance(one, Money)]

    assert len(amounts) == len(cents)
    assert [shape.load(shape.dump(one)) for one in amounts] == amounts
    found = total(amounts)
    assert (found.amount if found else 0) == Decimal(sum(cents)).scaleb(-2)


@every("text", ["", "-5", "1e3", "1,234", "1.2.3", "5 euros", "٥", "nan", "5 €", "1 000"])
def test_what_may_be_meant_otherwise_is_no_amount(text: str) -> None:
    assert isinstance(MoneyAmount().read(text), InputError)


def test_a_number_without_quotes_a_share_of_nothing_and_a_word_are_refused() -> None:
    assert 'write it as text: "85.5"' in str(MoneyAmount().load(85.5))
    assert Currency().read("chf") == "CHF"
    assert isinstance(Currency().read("euro"), InputError)
    with pytest.raises(ValueError, match="nothing to share"):
        part_of(Money(Decimal(1)), 0)
    with pytest.raises(TwoCurrencies):
        total([Money(Decimal(1), "EUR"), Money(Decimal(1))], "CHF")
