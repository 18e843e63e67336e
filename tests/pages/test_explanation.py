"""What a setting does, on a page: at two widths, in the bike's own numbers, whose cost comes first."""

from paddock_tui.explanations import OF_FUNCTIONS, Explanation
from paddock_tui.pages.explanation import careful, explained_of_bike, explanation_sections
from paddock_tui.pages.level_effects import level_section
from paddock_tui.pages.on_this_bike import OnBike, Start, of_adjuster, of_control, of_offset, on_this_bike
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.electronics import Control
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.suspension import Adjuster, Offset
from paddock_tui.text import width
from tests.every import every
from tests.explanations.test_registry import EVERY
from tests.sample import bike, read

LONG_BIKE = OnBike(
    "10", "0", ("On this bike 10 helps most and 0 least.", "3 stands 30 % of the way to most help.")
)


@every("columns", [78, 38])
@every("found", EVERY)
def test_every_explanation_fits_and_loses_no_word(found: Explanation, columns: int) -> None:
    page = Page("", explanation_sections(found, LONG_BIKE, costs_first=False))
    lines = list(plain_page(page, columns))
    assert max(width(line) for line in lines) <= columns
    printed = " ".join(" ".join(lines).split())
    for text in found.texts():
        for word in text.rstrip(".").lower().split():
            assert word.strip(".") in printed.lower()


def test_the_cost_of_less_help_comes_first_for_a_novice_and_where_it_is_wet() -> None:
    assert careful("novice", "dry")
    assert careful("race", "wet")
    assert not careful("race", "dry")
    assert not careful(None, None)

    first, second, *_ = explanation_sections(OF_FUNCTIONS["traction"], OnBike(), costs_first=True)[1:]
    assert first.title == "less help"
    assert [row.label for row in first.rows] == ["costs", "gives"]
    assert second.title == "more help"


def said(control: Control, value: int | str | None = None, start: Start | None = None) -> str:
    return " ".join(of_control("traction", control, value, start).said)


def test_levels_that_count_up() -> None:
    up = Control(levels=(0, 10), most_help=10, off=True)
    assert said(up, 3, Start(8, "intermediate, wet")) == (
        "On this bike 10 helps most and 0 least. 3 stands 30 % of the way to most help. "
        "A start for you here (intermediate, wet) is 8."
    )
    assert said(up, "off").endswith("It is off, below 0.")
    assert said(up, 11).endswith("It is set to 11, which this bike does not have.")
    assert said(up).endswith("What it is set to is not known.")
    assert (of_control("traction", up, 3).more, of_control("traction", up, 3).less) == ("10", "0")


def test_levels_that_count_down() -> None:
    down = Control(levels=(1, 8), most_help=1, off=True)
    assert said(down, 8) == "On this bike 1 helps most and 8 least. It is set to 8, the least that is on."
    assert said(down, 1).endswith("It is set to 1, the most.")
    assert of_control("traction", down, 8).more == "1"


def test_words_and_a_level_that_means_off() -> None:
    words = Control(choices=("crisp", "even", "gentle"), most_help="gentle")
    assert said(words, "even") == (
        'On this bike "gentle" helps most and "crisp" least. "even" stands 50 % of the way to most help.'
    )
    assert said(Control(levels=(0, 3), most_help=3, off=0), 0) == (
        "On this bike 3 helps most and 1 least. It is off, below 1."
    )
    assert said(Control(kind="switch"), "on") == 'On this bike "on" is the only level that is on.'


def test_an_end_that_nobody_knows_is_no_guess() -> None:
    found = of_control("traction", Control(levels=(1, 7)), 7)
    assert found.said == (
        "Which end of 1 to 7 helps most on this bike is not known: its file can say it.",
        "It is set to 7.",
    )
    assert (found.more, found.less) == ("", "")
    engine = of_control("engine-braking", Control(levels=(1, 4)), 2)
    assert (
        engine.said[0] == "Which end of 1 to 4 brakes least on this bike is not known: its file can say it."
    )


def test_engine_braking_has_two_ends_and_no_help() -> None:
    found = of_control("engine-braking", Control(levels=(1, 6), frees_most=1), 3)
    assert " ".join(found.said) == (
        "On this bike 1 brakes least with the engine, 6 most. "
        "3 stands 60 % of the way to the least engine braking."
    )


def test_states_and_speeds_are_listed() -> None:
    launch = Control(kind="state", choices=("off", "armed", "armed 2"), gentlest="armed")
    assert of_control("launch", launch, "off").said == (
        "On this bike: off, armed, armed 2.",
        "It is set to off.",
        '"armed" is the gentlest.',
    )


def test_clicks_out_and_turns_in() -> None:
    out = Adjuster("front", "rebound", "click", range=(0, 18), counted_from="closed")
    assert " ".join(of_adjuster(out, 9).said) == (
        "Counted out from closed: fewer is firmer. 0 clicks is the firmest, 18 the other end. "
        "9 stands 50 % of the way to the firmest."
    )
    turns = Adjuster("front", "preload", "turn", range=(0, 14), counted_from="open")
    assert of_adjuster(turns, 3.5).said[1:] == (
        "14 turns is the most preload, 0 the other end.",
        "3.5 stands 25 % of the way to the most preload.",
    )
    assert "not known" in of_adjuster(Adjuster("front", "rebound"), 9).said[0]


def test_an_offset_says_which_way_is_firmer_only_where_that_is_written() -> None:
    assert of_offset(Offset((-3, 3), firmest=3), 1).said == (
        "+3 is the firmest, -3 the softest; 0 is the preset as built.",
        "It is set to +1.",
    )
    assert "not known" in of_offset(Offset((-3, 3)), 1).said[0]


def test_fields_are_said_from_the_bike_and_the_set_up() -> None:
    session = read(Ref("session", "2026-06-20-4-magpie")).record
    assert isinstance(session, Session)

    def words(key: str) -> str:
        return " ".join(on_this_bike(("setup", key), session.setup, bike("magpie")).said)

    assert words("mode") == (
        "On this bike: homing (road), soaring (dry), wading (wet), wild (any surface). wild fixes nothing."
    )
    assert words("preset") == (
        "keen is made for any surface; sets front firm, rear firm, damper firm, front trim +1, "
        "mid corner +1, "
        "kerbs 0."
    )
    assert words("rear_sprocket") == (
        "Fitted: 16/43. One tooth at the front is worth 2.7 at the rear. "
        "One tooth more at the rear is 2.3 % more pull in every gear."
    )


def test_what_single_levels_leave_out_stands_with_what_is_lost_without_it() -> None:
    section = level_section(bike("otter").controls["abs"])
    assert section is not None
    said = [row.value for row in section.rows]
    assert said[0] == "A level that takes lean into account: on at 1, 2; off at 3."
    assert said[1].endswith("Without it: the front can go in a bend before ABS acts at all.")
    assert "A level that holds the rear wheel down: on at 1; off at 2, 3." in said
    assert "ABS at the rear: on at 1, 2; off at 3." in said
    assert level_section(bike("magpie").controls["traction"]) is None


def test_a_row_of_the_bikes_own_record_is_explained_too() -> None:
    of = bike("magpie")
    first, *_ = explained_of_bike(("controls", "traction", "levels"), of)
    assert first.title == "traction control: what it does"
    assert "10 helps most" in first.rows[1].value
    offset, *_ = explained_of_bike(("damping", "live", "offsets", "kerbs", "range"), of)
    assert offset.title == "offset over bumps: what it does"
    assert explained_of_bike(("wet_mass",), of) == ()
