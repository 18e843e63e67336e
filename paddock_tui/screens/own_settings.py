"""The settings of whoever runs the screens: actions on keys of their own, sizes of steps, copying."""

from collections.abc import Mapping, Sequence
from functools import cached_property

import attrs

from paddock_tui.pages.actions import printed
from paddock_tui.pages.own_keys import own_keys, said_with
from paddock_tui.records.errors import InputError
from paddock_tui.screens.action import Action
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.store.settings import Settings
from paddock_tui.text import printable


@attrs.frozen(slots=False)
class OwnSettings:
    """The actions with the keys that they have here; `said` is what was wrong with the settings file."""

    settings: Settings = attrs.field(factory=Settings)
    said: str = ""

    @cached_property
    def actions(self) -> tuple[Action, ...]:
        """Every action, on its own key where the settings give it one."""
        keys = self.settings.keys
        return tuple(
            attrs.evolve(one, key=keys[one.id], usual=one.key) if one.id in keys else one for one in ACTIONS
        )

    @cached_property
    def letters(self) -> Mapping[str, str]:
        """The action of each key."""
        return {one.key: one.id for one in self.actions if one.key}

    @cached_property
    def _changed(self) -> Mapping[str, str]:
        return own_keys(self.actions)

    def in_text(self, text: str, quoted: Sequence[str] = ()) -> str:
        """Write a message with the keys that actions have here; what is quoted of records stays."""
        return said_with(text, self._changed, quoted)

    def printed(self, action: str) -> str:
        """Write the key of an action as it is typed."""
        return next(printed(one) for one in self.actions if one.id == action)


def settings_said(wrong: Sequence[InputError]) -> str:
    """Say in the last line what is wrong with the settings file; nothing where all is right."""
    if not wrong:
        return ""
    first = wrong[0]
    more = f", {len(wrong) - 1} more" if len(wrong) > 1 else ""
    return printable(f"settings, line {first.line}: {first.found}{more}: paddock-tui settings")
