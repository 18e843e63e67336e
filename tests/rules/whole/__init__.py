"""Whole situations by theme."""

from tests.rules.whole import aids, out, paddock, tyres, wet
from tests.rules.whole.situation import Whole

SITUATIONS: list[Whole] = [
    *out.SITUATIONS,
    *aids.SITUATIONS,
    *tyres.SITUATIONS,
    *wet.SITUATIONS,
    *paddock.SITUATIONS,
]
