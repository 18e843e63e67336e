"""Pages as sentences: each is true where it is heard by itself."""

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.speech import spoken


def test_what_is_missing_is_said_to_be_missing_in_every_sentence() -> None:
    rows = (Row("", "the rider is fit now", kind="text"), Row("", "ABS in front", kind="text"))
    page = Page("x", (Section("missing", rows, "no verdict without these"), Section("others", rows)))

    said = list(spoken(page))

    assert said[2:5] == [
        "Missing, no verdict without these.",
        "Missing: the rider is fit now.",
        "Missing: ABS in front.",
    ]
    assert said[6:] == ["Others.", "The rider is fit now.", "ABS in front."]
