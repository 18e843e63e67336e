"""Which outings would settle a change: in their order, only where they are left."""

import math

from paddock_tui.calc.change_effect import FIRST_LEVEL, Judgement
from paddock_tui.calc.outings_to_tell import outings_to_tell
from paddock_tui.calc.session_luck import Luck
from tests.every import every
from tests.later import Later

stats = Later("scipy.stats")

LUCK = Luck(0.3, 15, False, 0.25)


def found(gain_s: float | None, to: int, back: int) -> Judgement:
    return Judgement("cannot tell yet", "", gain_s=gain_s, chance=0.2, luck=LUCK, steps=(to, back))


@every(
    ("gain_s", "steps", "left", "order"),
    [
        (-0.9, (1, 0), 3, ("without it",)),
        (0.9, (1, 0), 3, ("without it",)),
        (-0.9, (0, 1), 3, ("with it",)),
        (-0.9, (1, 0), 2, ()),
        (-0.3, (1, 0), 4, ()),
        (-1.1, (1, 1), 6, ("with it", "without it", "with it", "without it")),
        (-0.9, (1, 1), 3, ()),
        (None, (1, 0), 5, ()),
    ],
)
def test_it_names_the_outings_in_their_order(
    gain_s: float | None, steps: tuple[int, int], left: int, order: tuple[str, ...]
) -> None:
    assert outings_to_tell(found(gain_s, *steps), 6, left, 3) == order


def test_one_way_there_and_back_tells_a_gain_from_its_closed_form_on() -> None:
    sd = math.sqrt(2.0 * (0.3**2 + 0.25**2 / 6))
    least = float(stats.t.isf(FIRST_LEVEL, 15)) * sd

    assert outings_to_tell(found(-least * 1.001, 1, 0), 6, 3, 3) == ("without it",)
    assert outings_to_tell(found(-least * 0.999, 1, 0), 6, 3, 3) == ()
