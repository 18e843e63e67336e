"""The ledger: what was changed, what it did, what else differed, and what is not known of it."""

from typing import Any

import attrs

from paddock_tui.advice.ledger import (
    LedgerEntry,
    LedgerFilter,
    bests,
    choices,
    chosen,
    entries_of,
    side_by_side,
    stepped,
)
from paddock_tui.advice.ledger.conditions import tyre_age
from paddock_tui.facts.changes import Changes
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from tests.advice.given import about, bike, past

BIKE_TEXT = """electronics = "listed"
suspension = "listed"
[controls.traction]
kind = "level"
levels = [0, 10]
most_help = 10
[adjusters.rebound-left]
end = "front"
what = "rebound"
leg = "left"
unit = "click"
[adjusters.rebound-right]
end = "front"
what = "rebound"
leg = "right"
unit = "click"
"""
BIKE = bike(BIKE_TEXT)
OFF = (0.0, 0.1, 0.2, -0.1, -0.2, 0.05)


def _with_modes() -> Bike:
    """Give the bike with a riding mode that fixes traction, and a damping mode that closes rebound."""
    text = (
        BIKE_TEXT
        + """
[modes.free]
use = "any"
[modes.rain]
use = "wet"
[modes.rain.fixes]
traction = 8
[damping.live]
kind = "semi-active"
[damping.live.closes]
rebound-left = true
"""
    )
    return bike(text)


MODES = _with_modes()


def laps(usual_s: float, count: int = 6, mark: str = "") -> str:
    lines = [f'{number} = "{usual_s + off:.3f} {mark}"' for number, off in enumerate(OFF[:count], 1)]
    return "[laps]\n" + "\n".join(lines).replace(' "\n', '"\n') + "\n"


def ridden(
    number: int,
    traction: int | None,
    usual_s: float | None = 60.0,
    more: str = "",
    rest: str = "",
    copied: str | None = None,
    day: str = "2026-05-16",
    count: int = 6,
    mark: str = "",
) -> PastSession:
    lead = f'surface = "dry"\nparked = 1{number}:00:00\n{more}'
    source = copied or (f"{day}-{number - 1}" if number > 1 else "")
    lead += f'copied_from = "{source}"\n' if source else ""
    setup = f"[setup.controls]\ntraction = {traction}\n" if traction is not None else ""
    timed = laps(usual_s, count, mark) if usual_s is not None else ""
    return past(number, lead + setup + rest + timed, BIKE, day)


def of(*sessions: PastSession, on: Bike | None = BIKE) -> tuple[LedgerEntry, ...]:
    return entries_of(History(sessions), "plain", on, Limits())


def test_a_change_is_the_difference_to_the_session_it_was_copied_from() -> None:
    (entry,) = of(ridden(1, 5), ridden(2, 6, 59.0))

    assert (entry.label, entry.changes[0].words, entry.path) == (
        "traction control",
        "5 -> 6 (more help)",
        ("setup", "controls", "traction"),
    )
    assert entry.verdict == "faster, cause not known"
    assert entry.judgement is not None
    assert entry.judgement.needs == "going back once"
    assert entry.laps is not None
    assert entry.laps.shift_s < -0.8


def test_going_back_tells_and_both_ways_agree() -> None:
    back, there = of(ridden(1, 5, 60.0), ridden(2, 6, 58.8), ridden(3, 5, 60.0))

    assert (there.verdict, back.verdict) == ("helped", "made it worse")
    assert (there.changes[0].words, back.changes[0].words) == (
        "5 -> 6 (more help)",
        "6 -> 5 (less help)",
    )


def test_going_back_counts_when_the_session_was_copied_from_the_first_one() -> None:
    third = ridden(3, 5, 60.0, copied="2026-05-16-1")
    (there,) = of(ridden(1, 5, 60.0), ridden(2, 6, 58.8), third)

    assert there.verdict == "helped"


def test_laps_that_only_got_faster_are_no_help() -> None:
    for entry in of(ridden(1, 5, 63.0), ridden(2, 6, 60.0), ridden(3, 5, 59.9)):
        assert entry.verdict == "cannot tell yet"


def test_two_things_at_once_cannot_be_told_apart() -> None:
    both = "[setup.adjusters]\nrebound-left = 8\n"
    entries = of(ridden(1, 5, rest="[setup.adjusters]\nrebound-left = 10\n"), ridden(2, 6, 58.0, rest=both))

    assert [one.label for one in entries] == ["traction control", "rebound left"]
    for entry in entries:
        assert entry.verdict == "cannot tell yet"
        assert entry.judgement is not None
        assert entry.judgement.why == "changed together with 1 other thing"
        assert len(entry.others) == 1


def test_both_legs_moved_alike_are_one_change() -> None:
    def legs(left: int, right: int) -> str:
        return f"[setup.adjusters]\nrebound-left = {left}\nrebound-right = {right}\n"

    (alike,) = of(ridden(1, 5, rest=legs(10, 10)), ridden(2, 5, 58.0, rest=legs(8, 8)))
    assert (alike.label, len(alike.changes)) == ("rebound left and the other leg", 2)
    assert alike.verdict == "faster, cause not known"

    apart = of(ridden(1, 5, rest=legs(10, 10)), ridden(2, 5, 58.0, rest=legs(8, 9)))
    assert len(apart) == 2


def test_another_surface_rider_tyre_set_or_a_hotter_track_is_said_and_tells_nothing() -> None:
    first = ridden(1, 5, 60.0, 'track = "20 C"\n')
    hotter = ridden(2, 6, 58.0, 'track = "29 C"\n')
    (entry,) = of(first, hotter)
    assert entry.verdict == "cannot tell yet"
    assert "track 20 C, then 29 C: more than 8 C apart" in entry.differed

    for old, new, said in (
        ('surface = "dry"', 'surface = "wet"', "surface dry, then wet"),
        ('rider = "ann"', 'rider = "bob"', "rider ann, then bob"),
        ('tyres = "set"', 'tyres = "new"', "tyre set set, then new"),
    ):
        found = of(first, _with(ridden(2, 6, 58.0), old, new))
        entry = next(one for one in found if one.label == "traction control")
        assert said in entry.differed
        assert entry.verdict == "cannot tell yet"


def _with(one: PastSession, old: str, new: str) -> PastSession:
    key, value = new.split(" = ")
    assert getattr(one.session, key) == old.split(" = ")[1].strip('"')
    changed: dict[str, Any] = {key: value.strip('"')}
    return attrs.evolve(one, session=attrs.evolve(one.session, **changed))


def test_the_same_tyre_set_a_session_older_is_said_and_still_compared() -> None:
    first, second = ridden(1, 5), ridden(2, 6, 59.0)
    (entry,) = of(first, second)

    assert entry.differed == ("the tyre set was in outing 1, then 2",)
    assert tyre_age(History((first, second)), second) == 2


def test_a_source_that_is_gone_or_retired_leaves_the_change_unknown() -> None:
    (entry,) = of(ridden(2, 6, copied="2026-05-01-9"))

    assert entry.lost == "copied from 2026-05-01-9, which is retired or not here any more"
    assert (entry.label, entry.path, entry.verdict, entry.judgement) == ("change not known", (), "", None)


def test_a_session_to_come_has_no_verdict() -> None:
    coming = past(2, 'copied_from = "2026-05-16-1"\n[setup.controls]\ntraction = 6\n', BIKE)
    (entry,) = of(ridden(1, 5), coming)

    assert (entry.verdict, entry.judgement, entry.laps) == ("to come", None, None)


def test_without_laps_with_one_or_with_traffic_only_the_feel_is_left() -> None:
    worse = "[feel]\nbraking = 2\nstraight = 4\n"
    better = "[feel]\nbraking = 4\nstraight = 4\n"
    for count, mark, usual in ((6, "", None), (1, "", 59.0), (6, "traffic", 59.0)):
        second = ridden(2, 6, usual, rest=better, count=count, mark=mark)
        (entry,) = of(ridden(1, 5, rest=worse), second)
        assert entry.verdict == "cannot tell yet"
        assert entry.judgement is not None
        assert entry.judgement.why == "there are too few clean laps"
        assert (entry.laps, entry.feel) == (None, (("braking", 2, 4),))


def test_laps_of_a_day_without_timing_are_not_compared() -> None:
    second = attrs.evolve(ridden(2, 6, 58.0), may_time=False)
    (entry,) = of(ridden(1, 5), second)

    assert entry.laps is None
    assert entry.verdict == "cannot tell yet"


def test_a_value_for_what_the_bike_no_longer_has_is_shown_by_its_name() -> None:
    first = ridden(1, 5, rest="gone = 1\n")
    second = ridden(2, 5, 59.0, rest="gone = 2\n")
    (entry,) = of(first, second)

    assert (entry.label, entry.changes[0].listed) == ("gone", False)
    (without,) = of(first, second, on=None)
    assert without.changes[0].listed


def test_what_was_not_known_before_is_listed_and_not_judged() -> None:
    (entry,) = of(ridden(1, None), ridden(2, 6, 58.0))

    assert entry.changes[0].words == "not known -> 6"
    assert entry.judgement is not None
    assert entry.judgement.why == "what it was before is not known"


def test_a_pressure_in_another_unit_is_no_change() -> None:
    first = ridden(1, 5, rest='[setup]\nfront_start = "2.00 bar"\n')
    second = ridden(2, 5, rest='[setup]\nfront_start = "200 kPa"\n')

    assert of(first, second) == ()


def test_why_expectation_and_verdict_stand_with_the_change() -> None:
    reason = '[because.controls.traction]\nwhy = "cut in"\nexpect = "drives out"\nverdict = "better"\n'
    (entry,) = of(ridden(1, 5), ridden(2, 6, rest=reason))

    assert entry.because is not None
    assert (entry.because.why, entry.because.verdict) == ("cut in", "better")


def test_the_same_history_gives_the_same_list_at_once() -> None:
    history = History((ridden(1, 5), ridden(2, 6)))

    assert entries_of(history, "plain", BIKE, Limits()) is entries_of(history, "plain", BIKE, Limits())


def test_both_sessions_stand_side_by_side() -> None:
    first, second = ridden(1, 5, 60.0, 'air = "15 C"\n'), ridden(2, 6, 59.0)
    found = {one.label: one for one in side_by_side(History((first, second)), first, second)}

    assert (found["air"].before, found["air"].after, found["air"].differs) == ("15 C", "", False)
    assert (found["usual lap"].before, found["usual lap"].after) == ("1:00.03", "59.03")
    assert found["outing of the tyre set"].differs
    assert "spread" in found


def test_the_best_session_of_a_place_says_what_differs_now() -> None:
    sessions = (ridden(1, 5, 60.0), ridden(2, 6, 59.0), ridden(3, 5, 61.0))
    (best,) = bests(sessions, "plain", BIKE)

    assert (best.best.id, best.last.id, best.of) == ("2026-05-16-2", "2026-05-16-3", 3)
    assert [one.words for one in best.differs] == ["6 -> 5 (less help)"]
    assert list(bests(sessions[:1], "plain", BIKE)) == []
    assert list(bests((ridden(1, 5, None), ridden(2, 5, 60.0, count=2)), "plain", BIKE)) == []


def test_choosing_steps_round_and_takes_the_start_of_a_word() -> None:
    entries = of(ridden(1, 5), ridden(2, 6))
    among = choices(entries, "control")
    assert among == ("traction control",)

    wanted = stepped(LedgerFilter(), "control", 1, among)
    assert wanted.control == "traction control"
    assert stepped(wanted, "control", 1, among) == LedgerFilter()
    assert stepped(LedgerFilter(control="gone"), "control", -1, among).control == "traction control"
    assert chosen(LedgerFilter(), "control", "TRA", among) == wanted
    assert chosen(wanted, "control", "any", among) == LedgerFilter()
    assert chosen(wanted, "control", "abs", among) == "one of: any, traction control"
    assert wanted.takes(entries[0])
    assert not LedgerFilter(rider="bob").takes(entries[0])


def test_the_same_pair_is_written_alike_by_ledger_review_and_preview_of_the_way_back() -> None:
    ridden = "parked = 10:00:00\n[setup.adjusters]\nrebound-left = {}\nrebound-right = 9\n"
    before = past(1, ridden.format(9), BIKE, day="2026-05-15")
    after = past(2, 'copied_from = "2026-05-15-1"\n' + ridden.format(11), BIKE)
    (entry,) = entries_of(History((before, after)), "plain", BIKE, Limits())

    here = about(session=after.session, bike=BIKE, source=before.session).situation
    reviewed = attrs.evolve(here, history=History((before,))).facts().get("changes")

    assert entry.changes[0].words == "9 -> 11 clicks"
    assert entry.changes[0].back == "11 -> 9 clicks"
    assert isinstance(reviewed, Changes)
    assert [str(one) for one in reviewed.every] == [str(one) for one in entry.changes]
    assert reviewed.units == ("rebound left 9 -> 11 clicks",)


def test_a_trial_that_a_mode_undid_is_none_and_the_mode_that_frees_it_is_named() -> None:
    shut = "[setup]\nmode = 'rain'\ndamping = 'live'\n[setup.controls]\ntraction = {}\n"
    turned = "[setup]\ndamping = 'live'\n[setup.adjusters]\nrebound-left = {}\n"

    def judged(text: str, old: int, new: int) -> tuple[str, str, str]:
        (entry,) = of(
            ridden(1, None, rest=text.format(old)),
            ridden(2, None, 58.0, rest=text.format(new)),
            on=MODES,
        )
        assert entry.judgement is not None
        return entry.verdict, entry.judgement.why, entry.judgement.needs

    assert judged(shut, 5, 6) == (
        "cannot tell yet",
        "no trial: riding mode rain fixes traction control at 8",
        "riding mode free frees it",
    )
    assert judged(turned, 8, 9) == (
        "cannot tell yet",
        "no trial: rebound left does nothing in damping mode live",
        "damping mode by-hand frees it",
    )
    assert judged(shut.replace("rain", "free"), 5, 6)[0] == "faster, cause not known"


def test_feel_tells_from_five_pairs_on_where_laps_do_not() -> None:
    def felt(days: int) -> LedgerEntry:
        sessions = []
        for day in range(1, days + 1):
            when = f"2026-05-{day:02}"
            sessions.append(ridden(1, 5, None, rest="[feel]\nbraking = 3\n", day=when))
            sessions.append(ridden(2, 6, None, rest="[feel]\nbraking = 4\n", day=when))
        return of(*sessions)[0]

    four, five = felt(4), felt(5)
    assert four.felt is not None
    assert (four.verdict, four.felt.better, four.felt.pairs) == ("cannot tell yet", 4, 4)
    assert five.verdict == "helped"
    assert five.judgement is not None
    assert five.judgement.why == "felt better in 5 of 5 pairs; the laps do not tell"


def test_a_session_is_in_one_pair_alone_and_going_back_counts_the_other_way() -> None:
    scores = (3, 4, 3)
    *_, there = of(
        *(
            ridden(at + 1, 5 + at % 2, None, rest=f"[feel]\nbraking = {one}\n")
            for at, one in enumerate(scores)
        )
    )
    assert there.felt is not None
    assert (there.felt.better, there.felt.pairs) == (1, 1)
