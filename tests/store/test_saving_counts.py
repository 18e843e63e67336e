"""What keeping an edit takes, counted: parses, syncs, and texts given to tomlkit."""

from collections import Counter
from collections.abc import Callable
from pathlib import Path, PurePath
from typing import Any
from unittest.mock import Mock

import pytest
import tomlkit

from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import data, system_calls, writing
from paddock_tui.store import patch as patching
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.reading import loads
from paddock_tui.store.saving import Saved, save
from tests.small import write
from tests.store.test_failing_calls import Faults, failing

SYNCS = 2
"""Of a kept value: the file before it takes its place, and the names of its folder."""


def change(edit: Edit) -> Step:
    return Step("a change", (Change(Ref("bike", "plain"), (edit,)),))


def test_a_value_that_gives_way_to_another_is_parsed_before_and_after_and_every_write_is_synced(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    files = GarageFiles(write(tmp_path))
    save(files, change(Edit(("name",), "Plain", "First")))  # makes the folder of the journal
    parsed, synced = Mock(wraps=loads), Mock(wraps=system_calls.sync)
    structured = Mock(wraps=tomlkit.parse)
    monkeypatch.setattr(writing, "loads", parsed)
    monkeypatch.setattr(patching, "loads", parsed)
    monkeypatch.setattr(system_calls, "sync", synced)
    monkeypatch.setattr(tomlkit, "parse", structured)

    assert isinstance(save(files, change(Edit(("name",), "First", "Second"))), Saved)

    texts = [one.args[0] for one in parsed.call_args_list]
    assert ['name = "First"' in text for text in texts] == [True, False]
    assert ['name = "Second"' in text for text in texts] == [False, True]
    assert synced.call_count == SYNCS
    assert structured.call_count == 0


CALLS = 70
"""System calls of a kept value with its journal line; they were 91, of which nobody needed the others."""


def test_a_kept_value_asks_the_system_no_more_than_it_needs(tmp_path: Path) -> None:
    files = GarageFiles(write(tmp_path))
    save(files, change(Edit(("name",), "Plain", "First")))
    faults = Faults()

    with failing(faults):
        assert isinstance(save(files, change(Edit(("name",), "First", "Second"))), Saved)

    assert len(faults.seen) <= CALLS, sorted(Counter(faults.seen).items())
    assert "truncate" not in faults.seen
    assert faults.seen.count("create") == 1  # the file that takes the place of the old one


def test_what_stands_under_other_headings_is_not_compared_value_by_value(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    more = "".join(
        f"\n[notes.n{number}]\n" + "".join(f'k{k} = "{k}"\n' for k in range(20)) for number in range(30)
    )
    root = write(tmp_path)
    with (root / "bikes" / "plain.toml").open("a") as file:
        file.write(more)
    files = GarageFiles(root)
    compared = Mock(wraps=data.same)
    monkeypatch.setattr(data, "same", compared)

    assert isinstance(save(files, change(Edit(("name",), "Plain", "First"))), Saved)

    assert compared.call_count < 100  # of more than six hundred values


def test_no_path_is_put_together_or_taken_apart_for_a_save(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    files = GarageFiles(write(tmp_path))
    save(files, change(Edit(("name",), "Plain", "First")))
    made: list[str] = []

    def noting(name: str) -> Callable[..., Any]:
        call = getattr(PurePath, name)

        def noted(*given: Any) -> Any:
            made.append(name)
            return call(*given)

        return noted

    for name in ("relative_to", "__truediv__", "joinpath", "with_name"):
        monkeypatch.setattr(PurePath, name, noting(name))

    assert isinstance(save(files, change(Edit(("name",), "First", "Second"))), Saved)

    assert made == []
