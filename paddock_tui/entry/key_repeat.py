"""A key that is held down: the same digit again, faster than a hand presses it twice."""

import attrs

HAND_S = 0.09
"""Seconds between two presses of one key by a quick hand are more than this; keys repeat every 0.03 to
0.09 s. Common practice, no source."""

AT_ONCE_S = 0.005
"""Keys nearer than this came in one piece over a slow link: how they were pressed cannot be told."""

MOST_AT_ONCE = 5
"""So many of the same digit may come in one piece: five phases of feel may all be fine."""


@attrs.define
class Held:
    """Remembers the last digit, when it came, and how often it came in a row without a pause."""

    digit: str = ""
    at: float = float("-inf")
    run: int = 0

    def again(self, digit: str, at: float, most_at_once: int = MOST_AT_ONCE) -> bool:
        """Note a digit that came at a time in s; tells whether it comes from a key that is held down.

        `most_at_once`: so many of the same digit may come in one piece.
        """
        gap = at - self.at
        same = digit == self.digit and gap < HAND_S
        self.digit, self.at, self.run = digit, at, self.run + 1 if same else 1
        return same and (gap >= AT_ONCE_S or self.run > most_at_once)
