"""The page of a season: a year's riding, tyres, laps and cost, by bike and by rider."""

from collections.abc import Iterator

from paddock_tui.advice.ridden_so_far import count_words
from paddock_tui.advice.session_laps import lap_words
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.season import Season, Spent, Summed, part_of, sum_of
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.costs import KINDS
from paddock_tui.records.shapes import Money
from paddock_tui.text import printable

SEASON = "season"
YEAR = (SEASON, "year")


def season_page(found: Season, *, falls: bool = True) -> Page:
    """Make the page of a year; `falls` only where they were asked for, or stand on the rider's own screen."""
    others = [str(one) for one in found.years if one != found.year]
    year = Row(
        "year",
        str(found.year),
        range=f"also {', '.join(others[-6:])}" if others else "",
        path=YEAR,
        edit=str(found.year),
    )
    sections = [
        Section("the year", (year, *_figures(found.whole, falls))),
        _table("by bike", found.by_bike, found.currency),
        _table("by rider", found.by_rider, found.currency),
        Section(
            "clean laps",
            tuple(_laps(found)),
            "" if found.laps else "none",
            ("conditions", "best", "median", "laps", "bike", "rider"),
        ),
        Section("cost", tuple(_cost(found)), "" if found.whole.spent else "nothing entered"),
        _shared("cost by bike", found.by_bike, found.currency),
        _shared("cost by rider", found.by_rider, found.currency),
        _by_day(found),
    ]
    sections = [one for one in sections if one.rows or one.note]
    answers = answer_of(found)
    return Page(
        f"{SEASON} · {found.year}", tuple(sections), judged=False, answer=answers[0], answer_short=answers[1]
    )


def season_awaited(year: int, read: Reading) -> Page:
    """Make the page of a year whose sessions are still read: nothing is summed before."""
    row = Row("year", str(year), path=YEAR, edit=str(year))
    return Page(
        f"{SEASON} · {year} · {read.words()}",
        (Section("the year", (row,), "its sessions are read"),),
        judged=False,
        answer="Nothing is summed yet.",
    )


def answer_of(found: Season) -> tuple[str, str]:
    """Say what a year was, whole and in few words."""
    whole = found.whole
    days = f"{count_words(whole.days, 'day')}, {count_words(whole.sessions)}"
    cost = _short(whole.spent, found.currency)
    spent = f"; cost {cost}" if whole.spent else "; no cost entered"
    return f"{days}, {whole.laps} laps, {whole.hours:.1f} h, {whole.km:.0f} km{spent}", f"{days}{spent}"


def _figures(found: Summed, falls: bool) -> Iterator[Row]:
    missing = f"without {count_words(found.km_missing)} of no known distance" if found.km_missing else ""
    yield _said("days", str(found.days))
    yield _said("sessions", str(found.sessions))
    yield _said("laps", str(found.laps))
    yield _said("hours", f"{found.hours:.1f}")
    yield _said("km", f"{found.km:.0f}", missing)
    yield _said("tyre sets", str(found.tyres))
    if falls:
        yield _said("falls", str(found.falls))


def _said(label: str, value: str, aside: str = "") -> Row:
    return Row(label, value, aside=aside, kind="text", key=f"{SEASON} {label}")


def _table(title: str, parts: tuple[tuple[str, Summed], ...], currency: str) -> Section:
    rows = tuple(
        Row(
            printable(name) or "not said",
            kind="cells",
            cells=(
                str(one.days),
                str(one.sessions),
                str(one.laps),
                f"{one.hours:.1f}",
                f"{one.km:.0f}",
                _short(one.spent, currency),
            ),
            key=f"{title} {name}",
        )
        for name, one in parts
    )
    return Section(title, rows, "" if rows else "none", ("days", "sessions", "laps", "hours", "km", "cost"))


def _shared(title: str, parts: tuple[tuple[str, Summed], ...], currency: str) -> Section:
    """Say what each part of a year cost in all, by its days and by its kilometres; `-` where not known."""
    rows = tuple(
        Row(
            printable(name) or "not said",
            kind="cells",
            cells=(
                _short(one.spent, currency),
                _part(one.spent, currency, one.days),
                _part(one.spent, currency, 0.0 if one.km_missing else one.km),
            ),
            key=f"{title} {name}",
        )
        for name, one in parts
        if one.spent
    )
    return Section(title, rows, "", ("in all", "a day", "a km"))


def _part(spent: tuple[Spent, ...], currency: str, count: float) -> str:
    found = sum_of(spent, currency)
    return str(part_of(found, round(count, 3))) if isinstance(found, Money) and count > 0 else "-"


def _by_day(found: Season) -> Section:
    """Say what each day cost, by the date that the season counts it by."""
    dates = sorted({one.on for one in found.whole.spent})
    rows = tuple(
        Row(
            f"{date}",
            kind="cells",
            cells=(
                _short(of_day, found.currency),
                printable(", ".join(dict.fromkeys(one.bike for one in of_day if one.bike))),
            ),
            key=f"cost of {date}",
        )
        for date in dates
        if (of_day := tuple(one for one in found.whole.spent if one.on == date))
    )
    return Section("cost by day", rows, "", ("cost", "bike"))


def _short(spent: tuple[Spent, ...], currency: str) -> str:
    found = sum_of(spent, currency)
    return "two currencies" if isinstance(found, str) else str(found) if found is not None else "-"


def _laps(found: Season) -> Iterator[Row]:
    for one in found.laps:
        cells = (
            one.column or "not known",
            lap_words(one.best_s),
            lap_words(one.median_s),
            str(one.laps),
            printable(one.bike),
            printable(one.rider),
        )
        key = f"laps {one.venue} {one.column} {one.bike} {one.rider}"
        yield Row(printable(one.venue), kind="cells", cells=cells, key=key)


def _cost(found: Season) -> Iterator[Row]:
    spent = found.whole.spent
    for kind in (*KINDS, ""):
        of_kind = [one for one in spent if one.what == kind]
        if of_kind:
            yield _said(kind or "not said", _words(sum_of(of_kind, found.currency)))
    whole = sum_of(spent, found.currency)
    if whole is None:
        return
    yield _said("all of it", _words(whole))
    if isinstance(whole, Money):
        yield from _shares(whole, found.whole)
    if isinstance(whole, Money) and not whole.currency:
        yield _said("currency", "not said: garage.toml, currency")


def _shares(whole: Money, ridden: Summed) -> Iterator[Row]:
    """Say what a day and a kilometre cost; a kilometre only where all distances are known."""
    if ridden.days:
        yield _said("a day", str(part_of(whole, ridden.days)), "days that were ridden")
    if ridden.km and not ridden.km_missing:
        yield _said("a kilometre", str(part_of(whole, round(ridden.km, 3))))
    elif ridden.km:
        yield _said("a kilometre", f"not known: no distance of {count_words(ridden.km_missing)}")


def _words(found: Money | str | None) -> str:
    return "" if found is None else str(found)
