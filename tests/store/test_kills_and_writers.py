"""What was kept outlives a kill at any moment, and two processes on one file: a short run of each."""

import os
from pathlib import Path

import pytest

from tests.bench import kills, writers

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs processes that fork")


def test_what_was_kept_outlives_a_kill_and_every_file_is_whole(tmp_path: Path) -> None:
    tally, wrong = kills.run(8, tmp_path)

    assert wrong == []
    assert tally.kills == 8
    assert tally.kept >= 8


def test_two_processes_that_edit_one_file_lose_nothing(tmp_path: Path) -> None:
    assert writers.run(25, tmp_path) == 0
