"""Pictures in exact cells, from rows of data: at 80 and 40 cells, in ASCII, in words and as a table."""

import datetime as dt

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.gearing import GearTrain
from paddock_tui.calc.stint import TimedLap, stint
from paddock_tui.pages.layout import View, layout, text_of
from paddock_tui.pages.layout.pen import Pen
from paddock_tui.pages.layout.picture import drawn
from paddock_tui.pages.pictured import picture_page, picture_row
from paddock_tui.pages.pictures import Chart, ChartLevel, Dot, Lane, Lanes, Mark, Pairs, Picture, Stretch
from paddock_tui.pages.pictures.day import DayLane, DaySpan, day_lanes
from paddock_tui.pages.pictures.effects import ShownEffect, effect_lanes
from paddock_tui.pages.pictures.gears import gears_chart
from paddock_tui.pages.pictures.laps import laps_chart, two_stints
from paddock_tui.pages.pictures.readings import TyreReading, against_target, pressure_lanes
from paddock_tui.pages.pictures.suspension import ComparedAdjusters, suspension_pairs, turned_in
from paddock_tui.pages.pictures.tyre import TreadDepth, tread_lanes
from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.pages.speech import spoken
from paddock_tui.records.bike import Bike
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster
from paddock_tui.text import IN_ASCII, width
from tests.every import every
from tests.examples import examples

TIMES = (141.64, 128.45, 125.93, 124.77, 124.12, 123.88, 124.35, 139.28)
STINT = stint(
    TimedLap(number, seconds, {1: "out", 8: "in"}.get(number, "")) for number, seconds in enumerate(TIMES, 1)
)


def lines(picture: Picture | None, cells: int, plain: bool = False) -> list[str]:
    assert picture is not None
    return [text_of(line).rstrip() for line in drawn(picture, Pen(cells, plain))]


def scale(bar: Bar, cells: int = 80) -> str:
    page = Page("", (Section("", (Row("traction", "3", "of 0-10", bar=bar),)),), judged=False)
    return layout(page, View(cells, 24, None)).text().split("\n")[3].strip()


def test_laps_stand_in_their_order_faster_down_and_those_set_aside_on_top() -> None:
    assert lines(laps_chart(STINT), 80) == [
        "  set aside  o    x                             i",
        "     2:06.0            █",
        "     2:05.5",
        "     2:05.0  ░░░░░░░░░░░░░░░█░░░░░░░░░░░░░░░░░░░░░░░░",
        "     2:04.5  ░░░░░░░░░░░░░░░░░░░░░░░░░░░░░░█░░░░░░░░░",
        "     2:04.0  ░░░░░░░░░░░░░░░░░░░░█░░░░█░░░░░░░░░░░░░░",
        "     2:03.5",
        "             1    2    3    4    5    6    7    8",
    ]
    assert lines(laps_chart(STINT), 40, plain=True)[:3] == [
        "  set aside  o  x                 i",
        "     2:06.0        #",
        "     2:05.5",
    ]


def test_laps_are_said_with_what_was_set_aside_and_why() -> None:
    chart = laps_chart(STINT)

    assert chart is not None
    assert chart.sentence.startswith("8 laps, 5 count: usual 2:04.35 of 5 clean laps")
    assert "set aside: lap 1 out lap, lap 2 3.89 s over the median, lap 8 in lap" in chart.sentence
    assert "fall-off" in chart.sentence
    assert chart.table[1] == ("2", "2:08.450", "3.89 s over the median")
    assert chart.table[2] == ("3", "2:05.930", "yes")


def test_with_fewer_than_three_clean_laps_nothing_is_drawn() -> None:
    two = stint([TimedLap(1, 124.0), TimedLap(2, 125.0)])

    assert laps_chart(two) is None
    assert two_stints(two, STINT) is None


def test_two_sessions_stand_over_each_other() -> None:
    before = stint(TimedLap(number, 126.0 + number / 10) for number in range(1, 4))
    after = stint(TimedLap(number, 125.0 + number / 10) for number in range(1, 4))

    assert lines(two_stints(before, after), 40) == [
        "  2:06.4",
        "  2:06.2       o    o",
        "  2:06.0  o",
        "  2:05.8",
        "  2:05.6",
        "  2:05.4",
        "  2:05.2       █    █",
        "  2:05.0  █",
        "          1    2    3",
    ]


def test_pressures_run_from_cold_to_hot_in_the_band_of_their_target() -> None:
    lanes = pressure_lanes(
        [TyreReading("front", 2.15, 2.42, 2.60, 0.14), TyreReading("rear", None, None, 2.3, 0.14)]
    )

    assert lines(lanes, 80) == [
        "  front  2.15 -> 2.42 ···c─────────────────h··[·················]···· 0.18 under",
        "  rear   not read     ····[·················]························",
        "                      2.1          2.3          2.5          2.7",
    ]
    assert lanes is not None
    assert lanes.sentence.startswith("front: cold 2.15, hot 2.42 bar, target 2.60, 0.18 under")
    assert "rear: cold not read, hot not read" in lanes.sentence


@every(
    ("hot", "words"),
    [(2.44, "in its band"), (2.16, "in its band"), (2.45, "0.15 over"), (2.15, "0.15 under"), (None, "")],
)
def test_the_edges_of_a_band_are_in_it(hot: float | None, words: str) -> None:
    assert against_target(TyreReading("front", None, hot, 2.30, 0.14)) == words


def test_an_effect_stands_with_its_whiskers_beside_no_effect() -> None:
    lanes = effect_lanes(
        [
            ShownEffect("when braking", -0.67, -0.97, -0.37, "helped", True),
            ShownEffect("fork height", 0.1, -0.8, 1.0, "cannot tell yet", False, "going back once"),
        ]
    )

    assert lines(lanes, 72) == [
        "                faster                            slower",
        "  when braking   ├────█─────┤       ┊                    helped",
        "  fork height       ├───────────────┼o─────────────────┤ cannot tell yet",
        "                -1                  0                  +1",
    ]
    assert lanes is not None
    assert "fork height: +0.10 s, -0.80 s to +1.00 s, cannot tell yet; it needs going back once" in (
        lanes.sentence
    )


def test_gears_are_digits_and_the_other_sprockets_dots() -> None:
    now = GearTrain(1.6, (2.5, 2.0, 1.7), 16, 43, 2.0)
    chart = gears_chart(now, attrs.evolve(now, rear_teeth=45), 12000.0, "16/45")

    assert lines(chart, 60) == [
        "  12000                                  ·1      · 2    · 3",
        "                                        ·1     · 2    · 3",
        "  11000                               · 1     ·2    · 3",
        "                                     ·1     · 2   · 3",
        "  10000                             ·1    · 2",
        "                                  · 1",
        "   9000                          ·1",
        "                                ·1",
        "   8000                       ·1",
        "         0           50           100          150",
    ]
    assert [row[0] for row in chart.table] == ["1", "2", "3"]
    assert chart.sentence == "gear 3 at the limiter 197 km/h with 16/43, 188 with 16/45"


def test_a_day_is_a_line_with_ones_own_sessions_now_and_what_is_due() -> None:
    nine, ten = dt.time(9), dt.time(10)
    lanes = day_lanes(
        [
            DayLane("novice", (DaySpan(nine, dt.time(9, 20)), DaySpan(ten, dt.time(10, 20)))),
            DayLane("ines", (DaySpan(nine, None, "1", True), DaySpan(ten, None, "2"))),
            DayLane("due", (DaySpan(dt.time(9, 50), None, what="dash"),), "09:50 dash"),
        ],
        dt.time(9, 30),
    )

    assert lines(lanes, 40) == [
        "  novice  ─── ┊    ───",
        "  ines    █1█ ┊    [2]",
        "  due         ┊   d           09:50 dash",
        "          09       10       11",
    ]
    assert lanes is not None
    assert lanes.sentence == (
        "novice 09:00, 10:00; ines 09:00 session 1, ridden, 10:00 session 2, to come; due 09:50 dash"
    )


def test_what_is_left_of_a_tyre_says_how_far_it_is_to_worn() -> None:
    lanes = tread_lanes([TreadDepth("front left", 3.0, 1.0), TreadDepth("rear left", 1.0, 1.0)])

    assert lanes is not None
    assert [lane.note for lane in lanes.lanes] == ["2.0 mm to worn", "1 mm, worn: 1 mm"]
    assert "█w█" in lines(lanes, 60)[0]


ADJUSTERS = {
    "front-preload": Adjuster("front", "preload", "turn", range=(0, 14), counted_from="open"),
    "rear-preload": Adjuster("rear", "preload", "mm", range=(0, 10), counted_from="open"),
    "front-rebound": Adjuster("front", "rebound", "click", range=(0, 18), counted_from="closed"),
    "rear-rebound": Adjuster("rear", "rebound", "click", range=(0, 18), counted_from="closed"),
}


def pairs(setup: dict[str, float], last: dict[str, float] | None = None) -> Pairs:
    others = [ComparedAdjusters("l", "last", last)] if last is not None else []
    found = suspension_pairs(Bike(adjusters=ADJUSTERS), SetUp(adjusters=setup), others)
    assert found is not None
    return found


def test_front_and_rear_mirror_each_other_closed_outside() -> None:
    same = pairs({"front-preload": 7, "rear-preload": 5, "front-rebound": 0, "rear-rebound": 0})

    assert lines(same, 80) == [
        "  front          closed       open         open       closed rear",
        "  7 turns in     ········█········ preload ········█········ 5 mm",
        "  0 clicks out   █················ rebound ················█ 0 clicks out",
    ]
    assert lines(same, 40, plain=True) == [
        "  front closed             closed rear",
        "  7     ....#... preload ....#... 5 mm",
        "  0     #....... rebound .......# 0",
    ]


def test_an_adjuster_that_is_not_known_has_no_mark_and_one_to_compare_with_its_letter() -> None:
    found = pairs({"front-rebound": 9}, {"front-rebound": 18, "rear-rebound": 18})

    assert lines(found, 80)[2] == "  9 clicks out   ········█·······l rebound l················ not known"
    assert "rear rebound not known" in found.sentence


def test_an_adjuster_counted_from_nobody_knows_where_has_no_place() -> None:
    assert turned_in(attrs.evolve(ADJUSTERS["front-rebound"], counted_from=None), 4.0) is None
    assert turned_in(ADJUSTERS["front-rebound"], 18.0) == 0.0
    assert turned_in(ADJUSTERS["front-rebound"], 19.0) is None


def test_a_scale_tells_four_marks_apart_without_colour() -> None:
    marks = (Mark("s", 0.8), Mark("l", 0.5), Mark("p", 0.8))

    assert scale(Bar(0.3, marks=marks)).endswith("······█···l·····*····")
    assert scale(Bar(None, marks=marks[:1])).endswith("················s····")
    assert scale(Bar(0.8, marks=marks)).endswith("··········l·····█····")


def test_what_a_riding_mode_fixes_is_drawn_as_fixed_and_what_it_closes_is_no_room() -> None:
    assert "·" not in scale(Bar(0.5, fixed=True))
    assert scale(Bar(0.5, fixed=True)).endswith("=")
    assert scale(Bar(1.0, allowed=(0.6, 1.0))).endswith("[········█")


ANY: list[Picture | None] = [
    laps_chart(STINT),
    pressure_lanes([TyreReading("front", 2.15, 2.42, 2.5, 0.14)]),
    effect_lanes([ShownEffect("fork height", 0.1, -0.8, 1.0, "cannot tell yet", False)]),
    pairs({"front-rebound": 9}),
    day_lanes([DayLane("ines", (DaySpan(dt.time(9), None, "1", True),))], dt.time(9, 30)),
    tread_lanes([TreadDepth("front left", 3.0, 1.0)]),
]


@every("picture", ANY)
def test_ascii_is_cell_for_cell_and_readable(picture: Picture) -> None:
    for cells in (40, 80):
        shown, plain = lines(picture, cells), lines(picture, cells, plain=True)

        assert ["".join(IN_ASCII.get(one, one) for one in line) for line in shown] == plain
        assert all(line.isascii() for line in plain)


@every("picture", ANY)
def test_a_picture_has_a_page_of_its_own_with_words_and_figures(picture: Picture) -> None:
    page = picture_page(picture_row("what it is", picture))

    assert [section.title for section in page.sections] == ["in words", "picture", "figures"]
    assert page.sections[0].rows[0].value == picture.sentence
    assert len(page.sections[2].rows) == len(picture.table) > 0
    assert {len(row) for row in picture.table} == {len(picture.heads)}


signs = st.sampled_from("█slpoit*")
places = st.floats(-3, 3, allow_nan=False)


@given(
    st.one_of(
        st.builds(
            lambda marks, label, note, edges: Lanes(
                0.0, 1.0, (Lane(label, tuple(marks), note=note, reach=Stretch(*sorted(edges))),), "said"
            ),
            st.lists(st.builds(Mark, signs, places), max_size=5),
            st.text("abc ", max_size=90),
            st.text("abc ", max_size=90),
            st.tuples(places, places),
        ),
        st.builds(
            lambda dots, high: Chart(
                0.0,
                float(high),
                (ChartLevel(2.0, "2:06.0"), ChartLevel(1.0, "")),
                tuple(dots),
                "said",
                counted=True,
            ),
            st.lists(st.builds(Dot, st.integers(0, 60).map(float), st.none() | places, signs), max_size=30),
            st.integers(0, 60),
        ),
    ),
    st.integers(1, 130),
    st.booleans(),
)
@examples(60)
def test_no_picture_is_wider_than_its_screen(picture: Picture, cells: int, plain: bool) -> None:
    page = Page("", (Section("", (picture_row("it", picture),)),), judged=False)

    assert all(width(text_of(line)) <= cells for line in layout(page, View(cells, 24, 0, plain=plain)).lines)


def test_a_lap_chart_of_twenty_laps_is_less_than_2500_bytes() -> None:
    laps = stint(TimedLap(number, 124.0 + (number * 7 % 11) / 4) for number in range(1, 21))

    assert len("\n".join(lines(laps_chart(laps), 80)).encode()) < 2500


def test_a_picture_that_may_stand_apart_leaves_a_narrow_screen() -> None:
    row = picture_row("front and rear", pairs({"front-rebound": 9}), apart=True)
    page = Page("", (Section("", (row,)),), judged=False)

    assert "a page of its own: w" in layout(page, View(40, 20, None)).text()
    assert "closed" in layout(page, View(60, 20, None)).text()


def test_a_picture_is_spoken_as_its_sentence_and_every_figure_of_its_table() -> None:
    picture = laps_chart(STINT)
    assert picture is not None
    assert picture.table
    said = list(spoken(Page("laps", (Section("", (picture_row("laps", picture),)),))))

    assert picture.sentence.rstrip(".") in " ".join(said)
    for first, *cells in picture.table:
        line = next(one for one in said if one.casefold().startswith(f"{first}: ".casefold()))
        assert all(
            f"{head} {cell}" in line for head, cell in zip(picture.heads[1:], cells, strict=True) if cell
        )


@every("picture", ANY)
def test_under_the_cursor_a_picture_has_its_mark_and_does_not_move(picture: Picture) -> None:
    page = Page("here", (Section("", (picture_row("seen", picture),)),), judged=False)
    off, on = (layout(page, View(80, 24, cursor)).text().splitlines() for cursor in (None, 0))
    [(was, now)] = [(before, after) for before, after in zip(off, on, strict=True) if before != after]

    assert now == f">{was[1:]}"
