"""Undo and redo over many runs, others editing in between: no value that nobody set, none that is lost."""

import shutil
import tempfile
import tomllib
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from paddock_tui.desk import Desk, setting_value
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Clash, NotSaved, Saved
from tests.desk.opened import at_desk
from tests.examples import examples
from tests.small import session, write

ONE = Ref("session", "one")
FACTS: tuple[tuple[str, ...], ...] = (("aim",), ("said",), ("setup", "controls", "traction"))


class Runs(RuleBasedStateMachine):
    """A garage, a desk that is closed and opened again, an editor beside it, and what should stand."""

    def __init__(self) -> None:
        super().__init__()
        self.root = Path(tempfile.mkdtemp())
        write(self.root, sessions__one=session(aim='"0"', said='"0"'))
        self.file = self.root / "sessions" / "one.toml"
        self.desk: Desk = at_desk(self.root)
        self.model: dict[tuple[str, ...], object] = {("aim",): "0", ("said",): "0", FACTS[2]: 5}
        # Each step: the fact, what it was, and what it became.
        self.done: list[tuple[tuple[str, ...], object, object]] = []
        self.undone: list[tuple[tuple[str, ...], object, object]] = []
        self.serial = 0

    def teardown(self) -> None:
        self.desk.close()
        shutil.rmtree(self.root)

    def value(self, path: tuple[str, ...]) -> object:
        self.serial += 1
        return self.serial + 100 if path == FACTS[2] else str(self.serial)

    @rule(path=st.sampled_from(FACTS))
    def edit(self, path: tuple[str, ...]) -> None:
        new = self.value(path)
        self.desk.poll()
        self.desk.do(setting_value(self.desk.files, ONE, path, new))  # type: ignore[arg-type]
        (outcome,) = self.desk.settled()
        assert isinstance(outcome, Saved)
        self.done.append((path, self.model[path], new))
        self.undone.clear()
        self.model[path] = new

    @rule(path=st.sampled_from(FACTS))
    def edit_from_outside(self, path: tuple[str, ...]) -> None:
        old, new = self.model[path], self.value(path)
        text = self.file.read_text()
        before = f'{path[-1]} = "{old}"' if isinstance(old, str) else f"{path[-1]} = {old}"
        after = f'{path[-1]} = "{new}"' if isinstance(new, str) else f"{path[-1]} = {new}"
        assert text.count(before) == 1
        self.file.write_text(text.replace(before, after))
        self.model[path] = new

    @rule()
    def undo(self) -> None:
        self.move(self.done, self.undone, self.desk.undo())

    @rule()
    def redo(self) -> None:
        self.move(self.undone, self.done, self.desk.redo())

    def move(
        self,
        source: list[tuple[tuple[str, ...], object, object]],
        target: list[tuple[tuple[str, ...], object, object]],
        label: str | None,
    ) -> None:
        outcomes = self.desk.settled()
        if not source:
            assert label is None
            assert outcomes == ()
            return
        path, old, new = source.pop()
        if self.model[path] != new:
            assert isinstance(outcomes[0], Clash), outcomes
            assert outcomes[0].found == self.model[path]
            return
        assert isinstance(outcomes[0], Saved), outcomes
        self.model[path] = old
        target.append((path, new, old))

    @rule()
    def run_again(self) -> None:
        self.desk.close()
        self.desk = at_desk(self.root)

    @rule(path=st.sampled_from(FACTS))
    def a_step_that_fails_clears_no_redo(self, path: tuple[str, ...]) -> None:
        self.desk.poll()
        step = setting_value(self.desk.files, ONE, path, self.value(path))  # type: ignore[arg-type]
        self.file.chmod(0o444)
        self.desk.do(step)
        (outcome,) = self.desk.settled()
        assert isinstance(outcome, NotSaved)
        self.file.chmod(0o644)
        assert self.desk.undo() == step.label

    @invariant()
    def what_stands_is_what_was_set(self) -> None:
        data = tomllib.loads(self.file.read_text())
        found: dict[tuple[str, ...], object] = {("aim",): data["aim"], ("said",): data["said"]}
        found[FACTS[2]] = data["setup"]["controls"]["traction"]
        assert found == self.model


TestUndoOverRuns = Runs.TestCase
TestUndoOverRuns.settings = settings(examples(12), stateful_step_count=40)
