"""What can be an id, asked of one name and of thousands at once."""

from hypothesis import example, given
from hypothesis import strategies as st

from paddock_tui.records.ids import LONGEST, are_ids, is_id

_NAMES = st.one_of(
    st.text("az09._-/A é\n\0", max_size=6), st.from_regex(r"[a-z0-9]+([._-][a-z0-9]+){0,3}", fullmatch=True)
)


@given(st.lists(_NAMES, max_size=5))
@example([])
@example([""])
@example(["a/b"])
@example(["a", ""])
@example(["", "a"])
@example(["a", "", "b"])
@example(["a" * LONGEST, "a" * (LONGEST + 1)])
@example(["2026-05-16-1-magpie", "front_slick.2"])
def test_many_are_ids_where_each_of_them_is(texts: list[str]) -> None:
    assert are_ids(texts) == all(map(is_id, texts))
