"""What stands beside a record's rows is about the session looked at; of another bike, about it alone."""

from paddock_tui.desk import Desk
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.beside import beside_record
from tests.advice.given import NOON
from tests.sample import SAMPLE

SUBJECT = Ref("session", "2026-06-20-4-magpie")


def short(ref: Ref, path: Path, subject: Ref | None = SUBJECT) -> str:
    desk = Desk(SAMPLE, lambda: NOON)
    try:
        return beside_record(desk, ref, subject, None)[path].short
    finally:
        desk.close()


def test_the_bike_of_the_session_is_counted_up_to_it() -> None:
    early = Ref("session", "2026-05-16-1-magpie")

    assert short(Ref("bike", "magpie"), ("start", "hours")) == "62.8 h by now"
    assert short(Ref("bike", "magpie"), ("start", "hours"), early) == "61.3 h by now"


def test_another_bike_is_counted_over_all_of_its_own_sessions() -> None:
    alone = short(Ref("bike", "otter"), ("start", "hours"))

    assert alone.endswith(" h by now")
    assert alone == short(Ref("bike", "otter"), ("start", "hours"), None)


def test_a_tyre_of_another_bike_takes_the_start_of_the_set_it_goes_on_from() -> None:
    assert short(Ref("tyres", "badger-road"), ("rear", "cycles_before")) == "none counted on this bike"


def test_records_without_answers_and_records_that_are_gone_have_none() -> None:
    desk = Desk(SAMPLE, lambda: NOON)
    try:
        for ref in (Ref("rider", "ines"), Ref("tyres", "nowhere"), Ref("venue", "anvilfen")):
            assert beside_record(desk, ref, SUBJECT, None) == {}
    finally:
        desk.close()
