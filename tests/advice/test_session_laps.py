"""The laps of a session in words, beside their rows."""

from paddock_tui.advice.beside_setup import beside_session
from paddock_tui.advice.session_laps import (
    fall_words,
    lap_words,
    more_laps,
    needs_words,
    shift_words,
    stint_of,
    usual_words,
    working,
)
from tests.advice.given import about, sample, session
from tests.every import every

THIRD = sample("session", "2026-05-16-3-magpie")


def of(text: str) -> str:
    found = stint_of(session(f"[laps]\n{text}"))
    return f"{usual_words(found)}; {needs_words(found)}"


@every(
    ("seconds", "words"), [(104.31, "1:44.31"), (59.996, "1:00.00"), (58.9, "58.90"), (119.999, "2:00.00")]
)
def test_lap_times_are_written_as_they_are_read(seconds: float, words: str) -> None:
    assert lap_words(seconds) == words


def test_whole_seconds_are_written_with_two_figures() -> None:
    assert [lap_words(seconds, 0) for seconds in (50.0, 60.0, 110.0)] == ["50", "1:00", "1:50"]


def test_differences_have_their_sign() -> None:
    assert [shift_words(one) for one in (-0.304, 0.3, 0.001, -0.001)] == [
        "-0.30 s",
        "+0.30 s",
        "0.00 s",
        "0.00 s",
    ]


def test_usual_spread_and_how_many_more_laps_it_takes() -> None:
    laps = "\n".join(f'{number} = "1:4{second}.000"' for number, second in enumerate((4, 5, 4, 5), 1))

    assert of(laps) == "usual 1:44.50 of 4 clean laps, spread 0.74 s; needs 57 more clean laps to see 0.3 s"


def test_few_laps_say_what_they_lack() -> None:
    assert of('1 = "1:44.000"') == "usual 1:44.00 of 1 clean lap; "
    assert (
        of('1 = "1:44.000 traffic"\n2 = "1:59.0 out"')
        == "no clean lap; needs 3 more clean laps to be compared"
    )
    assert of("") == "; "


def test_a_steady_rider_has_laps_enough() -> None:
    found = stint_of(session('[laps]\n1 = "1:44.0"\n2 = "1:44.01"\n3 = "1:44.02"\n4 = "1:44.0"\n'))

    assert more_laps(found) == 0
    assert needs_words(found) == "laps enough to see 0.3 s"


def test_a_slope_whose_interval_holds_zero_is_called_none() -> None:
    level = stint_of(session("[laps]\n" + "\n".join(f'{n} = "1:44.{n % 2}"' for n in range(1, 9))))
    falling = stint_of(session("[laps]\n" + "\n".join(f'{n} = "1:44.{n}"' for n in range(1, 9))))

    assert "so none that can be told" in fall_words(level)
    assert fall_words(falling) == "+0.10 s a lap (+0.10 s to +0.10 s)"


def test_the_session_page_says_usual_lap_left_out_laps_and_how_many_it_takes() -> None:
    found = beside_session(sample("session", "2026-05-16-1-magpie"))

    assert found["best_lap",].short == "best 1:44.76, usual 1:44.97 of 6 clean laps, spread 0.18 s"
    assert found["laps", "2"].short == "left out: 1.90 s over the median"
    assert ("laps", "1") not in found
    assert found["laps", "11"].short.startswith(("needs ", "laps enough"))
    assert "left out: lap 6, traffic" in found["best_lap",].working


def test_the_working_says_the_rule_and_what_is_assumed() -> None:
    lines = list(working(stint_of(THIRD.session)))

    assert lines[0].startswith("usual 1:44.")
    assert any(line.startswith("fall-off: ") for line in lines)
    assert any("no number of laps averages it out" in line for line in lines)
    assert any("paddock practice, unpublished" in line for line in lines)


def test_a_session_without_laps_says_nothing_of_them() -> None:
    found = beside_session(about(session=session('surface = "dry"\n')))

    assert not [path for path in found if path[0] in ("laps", "best_lap")]
