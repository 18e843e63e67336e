"""The runner of commands."""

import pytest

from tests.commands.running import Runner


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)
