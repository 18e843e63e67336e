"""Keys of one's own: every action on another key, in the last line, the help and the palette too."""

import string
from pathlib import Path

import attrs

from paddock_tui.app import PaddockApp
from paddock_tui.pages.actions import ActionContext, actions_page, hints, printed
from paddock_tui.pages.help import room_help
from paddock_tui.screens.own_settings import OwnSettings, settings_said
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.store.key_names import SIGNS, key_name
from paddock_tui.store.settings import Settings, read_settings
from tests.screens.rider import Rider

FREE = [
    *string.ascii_lowercase[::-1],
    *(sign for sign in SIGNS if sign not in '\\"/?'),
    *(f"f{number}" for number in range(1, 13)),
    *(f"ctrl+{letter}" for letter in "gnoprtxy"),
]


def every_key() -> OwnSettings:
    """Give every action a key that no action had, or that another one had."""
    usual = {printed(one) for one in ACTIONS if one.key}
    keys = [key for key in FREE if key not in usual] + [key for key in FREE if key in usual]
    lines = []
    for one in ACTIONS:
        key = next(key for key in keys if key != printed(one))
        keys.remove(key)
        lines.append(f'{one.id} = "{key}"')
    settings, wrong = read_settings("[keys]\n" + "\n".join(lines), ACTIONS)
    assert wrong == []
    return OwnSettings(settings)


def test_every_action_can_have_another_key_and_is_said_with_it() -> None:
    own = every_key()
    usual = {one.id: one.key for one in ACTIONS}

    assert {own.letters[one.key] for one in own.actions} == {one.id for one in ACTIONS}
    assert all(one.key != usual[one.id] for one in own.actions)
    said = {row.key: row.label for row in room_help("setup", own.actions).rows() if row.kind == "text"}
    palette = {row.key: row.label for row in actions_page(own.actions, ActionContext()).rows()}
    for one in own.actions:
        assert said[one.id] == palette[one.id] == printed(one)
    shown = hints(own.actions, ActionContext(session=True))
    assert shown[-1] == f"{own.printed('help')} help"
    of_page = room_help("setup", own.actions).sections[1]
    assert own.printed("remedy") in {row.label for row in of_page.rows}


async def test_the_screen_hears_the_own_keys_and_no_usual_one(garage: Path) -> None:
    own = every_key()
    keys = {one.id: one.key for one in own.actions}
    rider = Rider(garage)
    rider.app = PaddockApp(rider.desk, own=own)
    async with rider.app.run_test(size=(80, 24)) as rider.pilot:
        for room in ("setup", "review", "bench", "ledger", "brief", "limits", "today"):
            await rider.presses(printed(next(one for one in own.actions if one.id == room)))
            assert rider.app.main.place.room == room, keys[room]
        await rider.presses(own.printed("garage"))
        assert rider.app.main.place.room == "garage"
    rider.desk.close()


async def test_a_step_of_ones_own_size_and_what_is_wrong_is_said(garage: Path) -> None:
    settings, wrong = read_settings('[steps]\ntyre_pressure = "0.02 bar"\n[keys]\nundo = "g"', ACTIONS)
    own = OwnSettings(settings, settings_said(wrong))
    rider = Rider(garage)
    rider.app = PaddockApp(rider.desk, own=own)
    async with rider.app.run_test(size=(80, 24)) as rider.pilot:
        await rider.shows("settings, line 4: g is the key of garage already")
        await rider.presses("p")
        rider.to("setup", "front_start")
        before = float(rider.value.split()[0])
        await rider.types("+")

        assert round(float(rider.value.split()[0]) - before, 3) == 0.02
    rider.desk.close()


async def test_copying_is_off_until_switched_on_and_gives_what_is_shown(garage: Path) -> None:
    for copy, said in ((False, "copying is off"), (True, "copied 24 lines")):
        rider = Rider(garage)
        rider.app = PaddockApp(rider.desk, own=OwnSettings(attrs.evolve(Settings(), copy=copy)))
        async with rider.app.run_test(size=(80, 24)) as rider.pilot:
            await rider.chooses("copy_page")
            await rider.shows(said)
            assert bool(rider.app.clipboard) is copy
            assert not copy or "sessions" in rider.app.clipboard
        rider.desk.close()


def test_what_a_key_is_called_is_what_is_typed() -> None:
    assert key_name("/") == "slash"


async def test_a_way_on_the_dash_that_names_letters_is_shown_as_it_is_written(garage: Path) -> None:
    bike = garage / "bikes" / "magpie.toml"
    text = bike.read_text(encoding="utf-8")
    bike.write_text(text.replace('"left rocker up, T, then plus or minus"', '"hold: s, then r"'), "utf-8")
    rider = Rider(garage)
    rider.app = PaddockApp(rider.desk, own=every_key())
    async with rider.app.run_test(size=(100, 40)):
        rider.app.main.act("dash")
        assert "hold: s, then r" in rider.screen
