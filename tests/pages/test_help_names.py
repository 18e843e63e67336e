"""The help calls a page what the screens call it, and finds it by that and by the name of its file."""

from paddock_tui import help as texts
from paddock_tui.pages.help import found_page, room_help, topics_page
from paddock_tui.screens.registry import ACTIONS
from tests.every import every

CALLED = {"bench": "calculators", "ledger": "change log", "limits": "thresholds", "return": "debrief"}


@every(("name", "called"), CALLED.items())
def test_a_page_has_one_name_on_every_screen_of_the_help(name: str, called: str) -> None:
    labels = [row.label for row in topics_page().rows()]
    assert called in labels
    assert name not in labels
    assert room_help(name, ACTIONS).heading == f"help · {called}"
    for asked in (name, called, called.replace(" ", "-")):
        page = found_page(asked, ACTIONS)
        assert page is not None, asked
        assert page.heading == f"help · {called}: {texts.topic(name).about}"


def test_the_beginning_of_a_name_finds_what_it_may_be() -> None:
    assert [one.name for one in texts.find("calcul") if isinstance(one, texts.Topic)] == ["bench"]
    assert {one.name for one in texts.find("debri") if isinstance(one, texts.Topic)} == {"return", "slip"}
