"""Whatever bytes stand in the private folder: no error, nothing outside, nothing undone."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.store.half_typed import take
from paddock_tui.store.outcomes import NotSaved, Saved
from tests.attacks.test_signed_history import line
from tests.attacks.trap import naming, trap
from tests.desk.opened import at_desk
from tests.examples import examples
from tests.small import snapshot

WORDS = st.sampled_from(["../../home/victim", "/etc/passwd", "plain", "bike", "", "\0", "\ud800", "-"])
ODD: st.SearchStrategy[object] = st.one_of(
    WORDS, st.integers(), st.none(), st.lists(st.none(), max_size=2), st.just({"changes": [{}]})
)
KEYS = st.sampled_from(["id", "at", "run", "what", "place", "step", "undo", "mark", "texts", "doubtful"])


def odd_line(more: dict[str, object]) -> bytes:
    """Write a line of a journal with some of its values exchanged."""
    return json.dumps(json.loads(line(naming("Plain", "evil"))) | more).encode() + b"\n"


LINES = st.dictionaries(KEYS, ODD, max_size=3).map(odd_line)
BYTES = st.one_of(
    st.binary(max_size=80),
    st.lists(LINES, max_size=3).map(b"".join),
    st.sampled_from([b"[" * 3000, b"9" * 5000]),
)
NAMES = st.sampled_from(
    ["intent", "half-typed", "lock", "id", "journal/2026-06.jsonl", "journal/9999-99.jsonl", "journal/x"]
)


@examples(30)
@given(st.dictionaries(NAMES, BYTES, max_size=4))
def test_any_bytes_do_no_harm(tmp_path_factory: pytest.TempPathFactory, contents: dict[str, bytes]) -> None:
    attack = trap(tmp_path_factory.mktemp("any"))
    for name, data in contents.items():
        (attack.private / name).write_bytes(data)
    before = snapshot(attack.root)
    desk = at_desk(attack.root)

    desk.cut_short()
    desk.mend()
    desk.changed_on(desk.now().date())
    assert desk.undo() is None
    assert desk.redo() is None
    assert take(attack.root) is None
    assert snapshot(attack.root) == before
    desk.do(naming("Plain", "mine"))
    (outcome,) = desk.settled()
    assert isinstance(outcome, Saved), outcome.reason if isinstance(outcome, NotSaved) else outcome
    assert desk.undo() == "name Plain -> mine"
    desk.close()

    assert snapshot(attack.root) == before
    assert attack.unharmed()
