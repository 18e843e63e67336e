"""What every screen stands on: no paint for a change of focus, one after the process was stopped."""

import pytest
from textual.screen import Screen

from paddock_tui.widgets.base import QuietScreen
from tests.widgets.board_app import Bench, BoardApp


async def test_no_focus_move_repaints_the_screen(monkeypatch: pytest.MonkeyPatch) -> None:
    app = BoardApp()
    async with app.run_test() as pilot:
        await pilot.pause()
        screen, painted = app.bench, []

        def noted(*regions: object, **_: bool) -> Bench:
            painted.append(regions)
            return screen

        monkeypatch.setattr(screen, "refresh", noted)
        screen.set_focus(None)
        screen.set_focus(screen.board)

    assert painted == []


def test_the_stock_screen_still_has_what_is_replaced() -> None:
    assert Screen.focused._repaint
    assert not QuietScreen.focused._repaint


async def test_all_is_painted_again_when_the_process_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    app = BoardApp()
    async with app.run_test() as pilot:
        await pilot.pause()
        asked: list[bool] = []

        def noted(*, repaint: bool = True, layout: bool = False) -> None:
            asked.append(repaint and layout)

        monkeypatch.setattr(app, "refresh", noted)
        app.app_resume_signal.publish(app)
        await pilot.pause()

    assert True in asked
