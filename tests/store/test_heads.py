"""The head of a file: its date, and which tables it has, as reading it whole says."""

import datetime as dt
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.heads import _of_text, days_of, heads
from paddock_tui.store.reading import loads
from tests.sample import SAMPLE
from tests.small import write

_PIECES = (
    "date = 2026-05-01",
    'note = "one # [line]"',
    'note = """',
    "[not a table]",
    '"""',
    "bring = [",
    '"a",',
    "]",
    "[bring]",
    '1 = "stand"',
    "[[list]]",
    "[packing.tyres]",
    '["a.b"]',
    "[ spaced . out ]",
    "# [a remark]",
    "bring.1 = 2",
    "",
)


def test_the_heads_of_the_sample_are_those_of_its_files() -> None:
    for kind in ("day", "bike", "checklist", "rider"):
        files, whole = GarageFiles(SAMPLE), GarageFiles(SAMPLE)
        found = dict(heads(files, kind))

        assert list(found) == list(files.listing(kind)) != []
        for ref, head in found.items():
            data = whole.data(ref)
            assert not files.is_in_memory(ref)
            tables: dict[str, object] = {
                key: {} for key, value in data.items() if isinstance(value, dict | list)
            }
            assert {key: value for key, value in head.items() if value == {}} == tables
            assert head.get("date") == data.get("date")
            assert ("retired" in head) == ("retired" in data)


@given(st.lists(st.sampled_from(_PIECES), max_size=8).map("\n".join))
def test_what_stands_above_the_tables_is_read_as_the_whole_file_has_it(text: str) -> None:
    data, head = loads(text), _of_text(text)

    if isinstance(data, dict) and head is not None:
        above = {key: value for key, value in head.items() if value != {}}
        assert above.items() <= {key: data[key] for key in above if key in data}.items()
        assert head.keys() >= data.keys()


def test_a_day_counts_as_it_stands_now_and_only_where_its_file_can_be_read(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        days__good="date = 2026-05-01\n",
        days__gone="date = 2026-05-02\nretired = 2026-06-01\n",
        days__broken="date = 2026-05-03\n[entries\n",
        days__later="date = 2026-06-03\n",
    )
    files = GarageFiles(root)

    def in_may() -> list[str]:
        return [ref.id for _, ref in days_of(files, lambda date: date.month == 5)]

    assert in_may() == ["good"]
    files.stage(Ref("day", "later"), {"date": dt.date(2026, 5, 4)})
    assert in_may() == ["good", "later"]
    (root / "days" / "good.toml").write_text("date = 2026-07-01\n", encoding="utf-8")
    assert in_may() == ["later"]
