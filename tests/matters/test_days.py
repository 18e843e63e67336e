"""The course of outings that come and go: the same as told at once, and made anew from what changed on."""

import datetime as dt
from typing import Any

import hypothesis.strategies as st
from hypothesis import given

from paddock_tui.matters.core import Outing
from paddock_tui.matters.days import Course, Days, Together
from paddock_tui.records.session import Session
from tests.examples import examples

outings: Any = st.builds(
    lambda name, day, number, start: Outing(
        str(name),
        Session(date=dt.date(2026, 5, day), number=number, start=None if start is None else dt.time(start)),
    ),
    st.integers(0, 5),
    st.integers(1, 5),
    st.sampled_from((1, 2, None)),
    st.sampled_from((9, 10, None)),
)


def groups(course: Course | None) -> list[Together]:
    return [one.group for one in course.after(0)] if course is not None else []


def alone(held: list[Outing], more: list[Outing], last: str) -> list[Together]:
    days = Days()
    for one in held:
        days.add(one)
    return groups(days.with_more(more, last))


steps = st.lists(
    st.tuples(
        st.sampled_from(("add", "add", "remove", "copy", "tell")),
        st.integers(0, 9),
        st.lists(st.integers(0, 9), max_size=3),
        st.integers(0, 5),
    ),
    max_size=20,
)


@given(st.lists(outings, min_size=10, max_size=10), steps)
@examples(100)
def test_it_is_as_told_at_once_whatever_came_and_went_before(there: list[Outing], taken: Any) -> None:
    days, held, courses = Days(), list[Outing](), list[tuple[Course, list[Together]]]()
    for what, which, beside, last in taken:
        if what == "add" and not any(one is there[which] for one in held):
            days.add(there[which])
            held.append(there[which])
        elif what == "remove" and held:
            days.remove(held.pop(which % len(held)))
        elif what == "copy":
            days = days.copy()
        more = [there[one] for one in dict.fromkeys(beside) if not any(there[one] is its for its in held)]
        course = days.with_more(more, str(last))
        assert groups(course) == alone(held, more, str(last))
        if course is not None:
            assert course.count == len(groups(course))
            courses.append((course, groups(course)))
    # What was told stays as it was told.
    assert all(groups(course) == told for course, told in courses)


def season(count: int) -> list[Outing]:
    first = dt.date(2020, 1, 1)
    return [
        Outing(f"{one}", Session(date=first + dt.timedelta(one // 6), number=one % 6)) for one in range(count)
    ]


def made_anew(count: int) -> int:
    """Count the steps of the course that are others once one more outing came after so many."""
    days, (*before, one, last) = Days(), season(count)
    for each in before:
        days.add(each)
    course = days.with_more([one], one.id)
    days.add(one)
    after = days.with_more([last], last.id)
    assert course is not None
    assert after is not None
    known = {id(each) for each in course.after(0)}
    return sum(id(each) not in known for each in after.after(0))


def test_one_more_outing_leaves_the_way_up_to_its_day() -> None:
    assert made_anew(60) == made_anew(6000) <= 6
