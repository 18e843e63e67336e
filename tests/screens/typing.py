"""Typing keys into an app under test, many at once, without waiting between them."""

import asyncio
from collections.abc import Awaitable, Callable, Iterator
from typing import Any

from textual import events
from textual.app import App
from textual.keys import _character_to_key
from textual.message_pump import MessagePump
from textual.pilot import Pilot

_CHARACTERS = {"space": " ", "enter": "\r", "tab": "\t", "escape": "\x1b", "backspace": "\x7f"}


async def type_keys(
    app: App[Any], pilot: Pilot[Any], keys: str, settled: Callable[[], Awaitable[object]] | None = None
) -> None:
    """Type keys, then wait once: for `settled`, and until the app is idle.

    All come in one piece, at one time by the clock that keys carry, however busy the machine is.

    `keys` are parted by spaces: a character ("5", "u"), a key's name ("down", "ctrl+u"), or
    "text:" and characters typed one by one, in which "_" is a space ("text:hot_2.3").
    """
    driver = app._driver
    assert driver is not None
    at = None
    for key in spelled(keys):
        event = events.Key(*key)
        event.time = at = event.time if at is None else at
        event.set_sender(app)
        driver.send_message(event)
    await until_idle(app, pilot)
    if settled:
        await settled()
        await until_idle(app, pilot)


async def until_idle(app: App[Any], pilot: Pilot[Any]) -> None:
    """Wait until no message waits for the app, its screen or a widget, and draw what is to be drawn.

    The framework's own pause sleeps 20 ms and more, and takes a process that gets no processor for an
    idle one.
    """
    for _ in range(6):
        # What other threads handed over, and keys, are messages then, and the app hears of them before
        # anything that waits for the board stands in their way there.
        await asyncio.sleep(0)
    while app.is_running:
        if not await pilot._wait_for_screen():
            return
        await asyncio.sleep(0)
        if not any(is_busy(node) for node in (app, *app.screen.walk_children(with_self=True))):
            break
    app.screen._on_timer_update()


def is_busy(node: MessagePump) -> bool:
    """Return whether a message or a callback waits for a node."""
    return bool(node.message_queue_size or node._next_callbacks or getattr(node, "_callbacks", None))


def spelled(keys: str) -> Iterator[tuple[str, str | None]]:
    """Give the name and the character (None where it has none) of each key."""
    for word in keys.split():
        if word.startswith("text:"):
            yield from (_character(" " if char == "_" else char) for char in word.removeprefix("text:"))
        elif len(word) == 1:
            yield _character(word)
        else:
            yield word, _CHARACTERS.get(word)


def _character(char: str) -> tuple[str, str]:
    return char if char.isalnum() else _character_to_key(char), char


HAND_S = 0.2
"""Seconds between two keys of an unhurried hand."""


async def type_by_hand(
    app: App[Any],
    pilot: Pilot[Any],
    keys: str,
    settled: Callable[[], Awaitable[object]],
    gap_s: float = HAND_S,
    after_s: float = 0.0,
) -> None:
    """Type keys as `type_keys` does, each so long after the one before it by the clock that events carry.

    The first is typed `after_s` from now, by that clock.
    """
    driver = app._driver
    assert driver is not None
    at = None
    for place, key in enumerate(spelled(keys)):
        event = events.Key(*key)
        at = event.time + after_s if at is None else at
        event.time = at + place * gap_s
        event.set_sender(app)
        driver.send_message(event)
    await until_idle(app, pilot)
    await settled()
    await until_idle(app, pilot)
