"""Each guard of the next change acts and stays silent; no reason is written that no situation is told."""

import ast
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.advice import next_change as package
from tests.advice.next_change.test_situations import answers
from tests.advice.next_change.told import SITUATIONS
from tests.advice.next_change.told.given import Expected
from tests.advice.next_change.told.guards import GUARDS

REASONS = ("Passed", "Refusal", "TravelRead", "cannot")
"""What is made with a reason for not proposing something."""

LEAST = 9
"""So many characters are words of their own, and no ending of another."""


def heard(one: Expected) -> str:
    """Give everything that is said in a situation."""
    return repr(answers()[one.name])


def test_each_guard_acts_in_one_situation_and_not_in_the_other() -> None:
    assert len({one.what for one in GUARDS}) == len(GUARDS) >= 60
    for one in GUARDS:
        acts, silent = heard(one.acts), heard(one.silent)
        assert acts != silent, one.what
        assert one.says in acts, one.what
        assert not one.says or one.says not in silent, one.what
        assert one.frees in silent, one.what
        assert not one.frees or one.frees not in acts, one.what


def reasons(source: str) -> Iterator[str]:
    """List the words of the reasons for which a module does not propose something."""
    for node in ast.walk(ast.parse(source)):
        said: ast.AST | None = None
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in REASONS:
            said = node
        elif isinstance(node, ast.Return | ast.Yield):
            said = node.value if isinstance(node.value, ast.JoinedStr | ast.Constant) else None
        parts = ast.walk(said) if said is not None else iter(())
        words = (one.value for one in parts if isinstance(one, ast.Constant) and isinstance(one.value, str))
        yield from (one.strip() for one in words if len(one.strip(" ;:,")) >= LEAST)


def test_every_reason_for_not_proposing_something_is_heard_in_a_situation() -> None:
    everything = "\n".join(heard(one) for one in SITUATIONS)
    folder = Path(package.__file__).parent
    unheard = {
        f"{file.stem}: {one}"
        for file in folder.glob("*.py")
        # What came of the last step is no reason: it is told in test_properties.py.
        if file.stem != "learnt"
        for one in reasons(file.read_text(encoding="utf-8"))
        if one not in everything and repr(one)[1:-1] not in everything
    }
    assert unheard == set()
