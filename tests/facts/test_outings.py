"""An earlier session is made an outing of once, and anew as soon as anything changes that it rests on."""

from typing import Any

import attrs

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.facts.outings import Outings
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist, ChecklistItem
from paddock_tui.records.electronics import Control
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import Tyre, TyreSet
from tests.every import every

CONTROL = Control(levels=(0, 10), most_help=10)
BIKE = Bike(controls={"traction": CONTROL})
BEFORE = PastSession("one", Session(rider="ann", surface="wet", tyres="new", copied_from="nought"))
FIRST = PastSession("nought", Session(rider="bob", surface="dry", setup=SetUp(controls={"traction": 3})))
SETS, RIDERS = {"new": TyreSet(rear=Tyre(kind="track-day"))}, {"bob": Rider(group="novice")}
RECORDS: dict[str, Any] = {
    "bike": BIKE,
    "rider": Rider(group="advanced"),
    "session": Session(rider="ann"),
    "tyres": SETS["new"],
}
FALL = {"fall": Checklist(stage="after a fall", items={"bars": ChecklistItem(to_fix="hold")})}


def outings(**more: Any) -> Outings:
    given = {
        "history": History((FIRST, BEFORE), SETS, RIDERS),
        "records": RECORDS,
        "checklists": {},
        "source": None,
        "air": AirObserved(),
        "limits": Limits(),
    }
    return Outings(**{**given, **more})


def test_the_same_is_given_again_while_nothing_changed() -> None:
    assert outings().outing(BEFORE) is outings().outing(BEFORE)


@every(
    "more",
    [
        {"records": RECORDS | {"bike": Bike()}},
        {"records": RECORDS | {"rider": Rider(group="novice")}},
        {"records": RECORDS | {"session": Session(rider="bob")}},
        {"checklists": FALL},
        {"limits": Limits({"other-riders-set-up": {"weight": 1}})},
        {"history": History((FIRST, BEFORE), {"new": TyreSet()}, RIDERS)},
        {"history": History((FIRST, BEFORE), SETS, {})},
        {"history": History((attrs.evolve(FIRST, session=Session(rider="cy")), BEFORE), SETS, RIDERS)},
    ],
    ids=["bike", "rider", "who rides", "lists", "limits", "tyre sets", "riders", "copied from"],
)
def test_what_it_rests_on_makes_it_anew_as_if_it_had_never_been_made(more: dict[str, Any]) -> None:
    before = outings().outing(BEFORE)
    again = outings(**more)
    found = again.outing(BEFORE)

    assert found is not before
    assert found == again._made(BEFORE, found.outside, _source(again), None)


def test_the_tyre_set_looked_at_counts_for_an_outing_whose_own_is_not_known() -> None:
    without = History((FIRST, BEFORE), {}, RIDERS)
    other = RECORDS | {"tyres": TyreSet()}
    before, found = (outings(history=without, records=records).outing(BEFORE) for records in (RECORDS, other))

    assert found is not before
    assert found == outings(history=without, records=other)._made(BEFORE, found.outside, FIRST.session, None)
    assert outings().outing(BEFORE) is outings(records=other).outing(BEFORE)


def _source(made: Outings) -> Session | None:
    return next((one.session for one in made.history.past if one.id == "nought"), None)
