"""The example values of the templates stand at declared paths and can be read."""

from paddock_tui.commands.examples import EXAMPLES
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from tests.every import every

CASES = [(kind, path, text) for kind, values in EXAMPLES.items() for path, text in values.items()]


@every(("kind", "path", "text"), CASES)
def test_an_example_stands_at_a_declared_path_and_can_be_read(kind: str, path: str, text: str) -> None:
    shapes = [one.shape for one in declared(CLASSES[kind]) if ".".join(one.path) == path]
    assert len(shapes) == 1
    assert not isinstance(shapes[0].read(text), InputError)
