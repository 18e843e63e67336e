"""The whole text that a novice is given for the sample's full bike in the wet."""

import os
from pathlib import Path

import attrs

from paddock_tui.advice.briefing import briefing
from paddock_tui.desk.sessions.came_from import came_from
from paddock_tui.pages.briefing import briefing_lines
from paddock_tui.rules import Review
from tests.desk.opened import NEXT, at_desk

TEXT = Path(__file__).parent / "briefing-novice-wet.txt"
"""What the novice reads. Written anew with BRIEFING=1 set."""

OPEN = ("little-slide-help-in-the-wet", "little-traction-help-in-the-wet")
"""The findings that stand in the text: those about the set-up that it explains."""


def test_a_novice_in_the_wet_reads_these_sentences(garage: Path) -> None:
    file = garage / f"sessions/2026/{NEXT.id}.toml"
    file.write_text(file.read_text().replace('rider = "ines"', 'rider = "wim"'))
    desk = at_desk(garage)
    whole = desk.review(NEXT)
    about_it: Review = attrs.evolve(
        whole, findings=tuple(one for one in whole.findings if one.rule in OPEN), not_judged=()
    )
    came = came_from(desk.files, NEXT)
    text = "".join(f"{line}\n" for line in briefing_lines(briefing(desk.about(NEXT), about_it, came)))
    if os.environ.get("BRIEFING"):
        TEXT.write_text(text)

    assert [str(one.severity) for one in about_it.findings] == ["serious", "serious"]
    assert text == TEXT.read_text()
