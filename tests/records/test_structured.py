"""What structures quickly gives the same records as what looks for every refusal, and refuses the same."""

import copy
from typing import Any

import pytest

from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.refused import refused, structured_as_written
from paddock_tui.records.structured import UnreadableValue, structured
from tests.sample import FILES, data_of


def test_every_record_of_the_sample_is_the_same_either_way() -> None:
    for ref in FILES:
        cls, data = CLASSES[ref.kind], data_of(ref)

        assert structured(cls, data) == structured_as_written(cls, data), ref
        assert refused(cls, data) == [], ref


def _places(data: dict[str, Any], at: tuple[str, ...] = ()) -> list[tuple[str, ...]]:
    found = []
    for key, value in data.items():
        found.append((*at, key))
        if isinstance(value, dict):
            found += _places(value, (*at, key))
    return found


def test_a_value_that_one_way_refuses_the_other_refuses_with_its_path() -> None:
    """Each value of one session in turn becomes what no field holds: an array of an array."""
    ref = next(one for one in FILES if one.kind == "session")
    cls, data = CLASSES[ref.kind], data_of(ref)
    for path in _places(data):
        spoilt = copy.deepcopy(data)
        here = spoilt
        for key in path[:-1]:
            here = here[key]
        here[path[-1]] = [[1]]

        with pytest.raises(UnreadableValue):
            structured(cls, spoilt)
        assert [one.trouble.path for one in refused(cls, spoilt)] == [path]
