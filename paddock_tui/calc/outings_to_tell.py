"""Which outings would settle what a change did, so far as can be said beforehand."""

import math

from paddock_tui.calc.chances import above_student
from paddock_tui.calc.change_effect import Judgement, level_of

WITH, WITHOUT = "with it", "without it"


def outings_to_tell(found: Judgement, laps: int, left: int, fewest_left: float) -> tuple[str, ...]:
    """Return the outings to ride, in their order, after which a gain as large as so far would be told.

    `laps` are the clean laps of an outing, `left` the outings that are left; with fewer of them than
    `fewest_left` none is spent on settling. Empty then, where it takes more, or where nothing was counted
    yet. It rests on the gain so far, which luck has part in: even odds at best.
    """
    if left < fewest_left or found.gain_s is None or found.luck is None or laps < 1:
        return ()
    to, back = found.steps
    has_it = to > back
    order: list[str] = []
    for _ in range(left):
        has_it = not has_it
        to, back = (to + 1, back) if has_it else (to, back + 1)
        order.append(WITH if has_it else WITHOUT)
        times = min(to, back)
        if times <= min(found.steps):
            # So often it was judged already.
            continue
        each = 2.0 * found.luck.variance(laps) / times
        chance = above_student(abs(found.gain_s) / math.sqrt(each), found.luck.freedom)
        if chance <= level_of(times):
            return tuple(order)
    return ()
