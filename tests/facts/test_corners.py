"""What was said or felt of a corner last is found as if every earlier session were looked into."""

import datetime as dt
import itertools
from itertools import starmap

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.facts.incidents import with_corner
from paddock_tui.facts.past import History, Lineage, PastSession
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Symptom
from tests.examples import examples

NUMBERS = ("1", "2", "3")
CALLED = st.sampled_from(("1", "3", "Hairpin", "hairpin", "fence", "", None))
FELT = st.lists(st.tuples(st.sampled_from(("weaves", None)), CALLED), max_size=2)
OUTING = st.tuples(
    st.sampled_from(("ines", "other", None)),
    st.sampled_from(("quernstone", "elsewhere", None)),
    st.frozensets(st.sampled_from(NUMBERS), max_size=2),
    FELT,
)
Outing = tuple[str | None, str | None, frozenset[str], list[tuple[str | None, str | None]]]


def _past(place: int, outing: Outing) -> PastSession:
    rider, venue, said, felt = outing
    symptoms = {str(at): Symptom(what=what, corner=called) for at, (what, called) in enumerate(felt)}
    words = dict.fromkeys(said, f"in session {place}")
    date = dt.date(2026, 5, 1) + dt.timedelta(days=place)
    session = Session(date=date, rider=rider, corner_words=words, symptoms=symptoms)
    return PastSession(f"s{place}", session, venue)


def tells(one: PastSession, number: str, name: str) -> bool:
    """Return whether a session says anything of a corner, by its number or by its name, where it has one."""
    felt = [held.corner for held in one.session.symptoms.values() if held.what is not None]
    called = {number, (name or number).casefold()}
    return number in one.session.corner_words or any((one or "").casefold() in called for one in felt)


@examples(120)
@given(st.lists(OUTING, max_size=9), st.lists(OUTING, max_size=9))
def test_the_last_session_that_tells_of_a_corner_is_found(first: list[Outing], then: list[Outing]) -> None:
    past = tuple(starmap(_past, enumerate([*first, *then])))
    line = Lineage()
    for length in (len(first), len(past)):
        history = History(past[:length]).on_line(line)
        for rider in ("ines", "other", None):
            mine = [one for one in history.past if one.venue == "quernstone" and one.rider == rider]
            for number, name in itertools.product(NUMBERS, ("Hairpin", "")):
                last = next((one for one in reversed(mine) if tells(one, number, name)), None)
                found = with_corner(history, "quernstone", rider, number)
                assert next((one for one in found if tells(one, number, name)), None) is last
