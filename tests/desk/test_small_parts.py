"""Small parts of the desk to the letter: guards that act and are silent, bounds, what is left as it is."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk.day.after import RodeThere, profile_from, profile_of_day
from paddock_tui.desk.day.afterwards import said_of_times
from paddock_tui.desk.day.before import who_goes
from paddock_tui.desk.day.countdown import Countdown, by_pace
from paddock_tui.desk.debrief.steps import why_not_stamped
from paddock_tui.desk.edits.entry_line import last_pressures
from paddock_tui.desk.edits.tables import adding
from paddock_tui.desk.edits.values import setting
from paddock_tui.desk.emergency import AGREES_FIRST, emergency, put
from paddock_tui.desk.histories import Histories
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.desk.sessions.restore import setting_back, trying_back
from paddock_tui.desk.situations import assemble
from paddock_tui.entry.typed import is_tyre_pressure
from paddock_tui.records.common import Units
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import fields
from paddock_tui.records.paths import Path as RecordPath
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.session import CLOCK_IN_DOUBT, TYPED_AFTERWARDS
from paddock_tui.store.emergency import NotThisFile
from tests.desk.opened import NEXT, at_desk
from tests.small import session, write

A, B = Ref("session", "a"), Ref("session", "b")
NOON = dt.datetime(2026, 5, 16, 12, 0)
RIDDEN = "10:20:00"
DAY = 'date = 2026-05-16\nvenue = "fen"\n'


def step(*edits: tuple[RecordPath, object]) -> Step:
    return Step("typed", (Change(A, tuple(Edit(path, MISSING, new) for path, new in edits)),))  # type: ignore[arg-type]


def times_of(changed: Step) -> list[object]:
    (change,) = changed.changes
    assert isinstance(change, Change)
    return [edit.new for edit in change.edits if edit.path == ("times",)]


def test_only_times_of_an_earlier_day_or_of_a_clock_in_doubt_are_said_to_be_typed(tmp_path: Path) -> None:
    files = at_desk(write(tmp_path, sessions__a=session(1))).files
    late = NOON + dt.timedelta(days=1)
    parked, aim = step((("parked",), dt.time(10, 20))), step((("aim",), "smooth"))

    assert times_of(said_of_times(files, parked, late)) == [TYPED_AFTERWARDS]
    assert times_of(said_of_times(files, aim, late)) == []
    assert times_of(said_of_times(files, parked, NOON)) == []
    assert times_of(said_of_times(files, parked, NOON, in_doubt=True)) == [CLOCK_IN_DOUBT]
    assert times_of(said_of_times(files, aim, NOON, in_doubt=True)) == []


def test_a_flag_is_worked_out_only_where_laps_start_and_pace_are_known() -> None:
    out = Countdown(NOON, (), laps=8, begun=NOON)

    assert by_pace(out, 90.0).flag == NOON + dt.timedelta(minutes=12)
    for clock, pace in (
        (Countdown(NOON, (), laps=8), 90.0),
        (Countdown(NOON, (), begun=NOON), 90.0),
        (out, None),
        (Countdown(NOON, (), laps=8, begun=NOON, flag=NOON), 90.0),
        (Countdown(NOON, (), word="grid", laps=8, begun=NOON), 90.0),
    ):
        assert by_pace(clock, pace) is clock


def test_a_session_without_a_start_is_stamped_at_any_time_of_its_day(tmp_path: Path) -> None:
    files = at_desk(write(tmp_path, sessions__a=session(1).replace("start = 10:00:00", ""))).files

    assert why_not_stamped(files, A, NOON) == ""


def test_every_pressure_of_a_session_before_is_its_bikes_last_one(tmp_path: Path) -> None:
    """Every field of a session that holds the pressure of a tyre, not a change of it, is among them."""
    read = "".join(f'\n[pressures.{when}]\nfront = "2.0 bar"\n' for when in ("cold", "hot"))
    desk = at_desk(write(tmp_path, sessions__a=session(1) + read, sessions__b=session(2)))
    loaded = desk.files.read(A)
    assert loaded is not None
    assert loaded.record is not None
    shown = (one for one in fields("session", loaded.record) if is_tyre_pressure(one.shape))
    wanted = {one.path for one in shown if one.path[0] in ("pressures", "setup")}
    assert len(wanted) >= 10
    made = setting(desk.files, A, [(spell(path), "2.1 bar") for path in wanted])
    assert isinstance(made, Step)
    desk.do(made)

    assert last_pressures(desk.files, B) == dict.fromkeys(wanted, "2.1 bar")
    desk.close()


def test_three_digits_typed_on_a_row_have_their_point_by_the_riders_unit(tmp_path: Path) -> None:
    files = at_desk(write(tmp_path, sessions__a=session(1))).files
    for unit, stored in (("bar", "2.15 bar"), ("psi", "21.5 psi")):
        made = setting(files, A, [("pressures.cold.front", "215")], Units(pressure=unit), of_row=True)
        assert isinstance(made, Step)
        (change,) = made.changes
        assert isinstance(change, Change)
        assert [edit.new for edit in change.edits] == [stored]


def test_what_was_read_further_aside_is_taken_over_and_what_was_read_less_far_is_not(garage: Path) -> None:
    desk = at_desk(garage)
    early = Ref("session", "2026-05-16-3-magpie")
    histories = Histories()
    situations = {ref: assemble(desk.files, ref, NOON).situation for ref in (early, NEXT)}
    histories.of(desk.files, early, situations[early])
    short, aside = histories.aside(), histories.aside()
    far = aside.of(desk.files, NEXT, situations[NEXT])

    histories.take(aside, desk.files)
    assert histories.of(desk.files, NEXT, situations[NEXT]) is far
    histories.take(short, desk.files)
    assert histories.of(desk.files, NEXT, situations[NEXT]) is far


def test_a_situation_is_not_going_out_unless_that_is_said(garage: Path) -> None:
    files = at_desk(garage).files

    assert not assemble(files, NEXT, NOON).situation.going_out
    assert assemble(files, NEXT, NOON, True).situation.going_out


def test_an_emergency_page_holds_nothing_before_and_nothing_after_the_rider_agrees(tmp_path: Path) -> None:
    root = write(tmp_path)
    with pytest.raises(NotThisFile, match=AGREES_FIRST):
        put(root, "ann", "name", "Ann")
    put(root, "ann", "consent", NOON.date())
    put(root, "ann", "name", "Ann")
    found = emergency(root, "ann")
    assert found is not None
    assert (found.known.consent, found.known.name) == (NOON.date(), "Ann")
    put(root, "ann", "name", None)
    found = emergency(root, "ann")
    assert found is not None
    assert found.known.name is None
    put(root, "ann", "consent", None)
    assert emergency(root, "ann") is None


def test_what_is_set_up_alike_is_not_restored(tmp_path: Path) -> None:
    files = at_desk(write(tmp_path, sessions__a=session(1, parked=RIDDEN), sessions__b=session(2))).files

    assert setting_back(files, B, A, NOON) == (B, Step("it stands so already", ()))


def test_a_change_beside_the_set_up_is_tried_back_in_a_session_of_its_own(tmp_path: Path) -> None:
    tyres = {f"tyres__{name}": f'name = "{name}"\n' for name in ("old", "new")}
    first = session(1, parked=RIDDEN, tyres='"old"')
    second = session(2, "11:00:00", parked="11:20:00", tyres='"new"', copied_from='"a"')
    desk = at_desk(write(tmp_path, **tyres, sessions__a=first, sessions__b=second), NOON)
    entry = next(one for one in ledger(desk).entries if one.changes[0].path == ("tyres",))
    ref, made = trying_back(desk.files, entry, NOON)
    assert isinstance(made, Step)
    desk.do(made)

    assert ref not in (A, B)
    assert desk.files.data(ref)["tyres"] == "old"
    desk.close()


@pytest.mark.parametrize(("more", "told"), [("", 1), ('timing = "forbidden"\n', 0)])
def test_a_season_tells_no_laps_of_a_day_that_forbids_timing(tmp_path: Path, more: str, told: int) -> None:
    ridden = session(1, parked=RIDDEN, day='"d"', surface='"dry"') + '\n[laps]\n1 = "1:40.0"\n2 = "1:41.0"\n'
    desk = at_desk(
        write(tmp_path, venues__fen='name = "Fen"\n', days__d=DAY + more, sessions__a=ridden), NOON
    )

    assert len(season(desk, 2026).laps) == told


def test_a_profile_of_the_day_is_called_by_who_where_and_when_and_a_retired_one_is_none(
    tmp_path: Path,
) -> None:
    ridden = session(1, parked=RIDDEN)
    root = write(tmp_path, sessions__a=ridden, profiles__old='taken_from = "a"\nretired = 2026-05-17\n')
    desk = at_desk(root, NOON)
    rode = RodeThere("ann", "plain", (A,))
    _, made = profile_of_day(desk, RidingDay(date=NOON.date(), venue="fen"), rode, "")
    assert isinstance(made, Step)
    assert profile_from(desk.files, rode) is None
    desk.do(made)
    kept = profile_from(desk.files, rode)

    assert kept == Ref("profile", "plain-ann-2026-05-16")
    assert desk.files.data(kept)["name"] == "ann, fen, 2026-05-16"
    desk.close()


def test_the_sets_of_a_bike_are_those_it_was_ridden_on_and_those_of_none(tmp_path: Path) -> None:
    sets = {f"tyres__{name}": f'name = "{name}"\n' for name in ("mine", "theirs", "fresh")}
    coming = 'date = 2026-05-30\n[entries.ann.plain]\ntravel = "van"\n'
    root = write(
        tmp_path,
        **sets,
        tyres__worn='name = "worn"\nretired = 2026-01-01\n',
        bikes__other='name = "Other"\n',
        days__d=coming,
        sessions__a=session(1, parked=RIDDEN, tyres='"mine"'),
        sessions__b=session(2, parked=RIDDEN, tyres='"theirs"', bike='"other"'),
    )
    desk, day = at_desk(root, NOON), Ref("day", "d")
    loaded = desk.files.read(day)
    assert loaded is not None
    assert isinstance(loaded.record, RidingDay)
    (goes,) = who_goes(desk, day, loaded.record)

    assert [one.id for one in goes.sets] == ["fresh", "mine"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("5000 lots", 'write a number and its unit, e.g. "100 N m"'),
        ("5000 9 bar", "e.g. 100 N m"),
    ],
)
def test_a_value_of_a_new_entry_keeps_its_own_words_of_what_to_type(
    tmp_path: Path, text: str, said: str
) -> None:
    found = adding(at_desk(write(tmp_path)).files, Ref("bike", "plain"), ("torque_curve",), text)

    assert isinstance(found, InputError)
    assert said in found.mend
