"""The words that users read: what must stand in no string of the program, and a caution that is never cut."""

import re
from collections.abc import Iterator
from pathlib import Path

import paddock_tui
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.review import SHORT_CAUTION
from paddock_tui.pages.rows import Page, Row
from paddock_tui.text import width
from tests.every import every
from tests.source import texts_of

PACKAGE = Path(paddock_tui.__file__).parent

MISLEADS = {
    r"\bnets?\b": "an aid that catches a mistake is called an aid",
    r"\bgas\b(?! law)": "petrol to some; the air in a tyre is tyre air",
    r"\bfrees the rear\b": "more or less engine braking",
    r"^fades$": "riders say it of brakes",
    r"\banew\b": "again",
    r"\btill\b": "until",
    r"\bsuch as\b(?=[ {]*[\"0-9{]|$)": "e.g.",
    r"\balike\b": "the same, similar",
    r"\bnot kept\b|\benter keeps\b|\bcould not be kept\b": "saved",
    r"\bin hand\b": "current",
    r"\btake over\b|\bset back\b|\btry it back\b|\bwrite elsewhere\b": "use, restore, re-test, save to",
    r"\bwarning lamp\b(?!$)|\blit lamp\b": "warning light",
    r"\bnot judged\b": "not assessed",
    r"\b[Rr]eckon": "work out, count on",
    r"\b[Mm]end(s|ed|ing)? (it|its|first|by the)\b|\bby the bench\b": "fix, repair, correct; calculators",
    r"\bkey resets\b|\bkey-on\b.*\blast\b|\blast key-on\b": "the ignition: a key is one of the keyboard",
    r"\bfrom memory\b": "a source is named or it is none",
    r"\bwet to dry\b": "which way round it is meant is a guess",
    r"[Nn]othing found is not safe": "reads as if finding nothing were the danger",
    r"\bof the help\b": "percent of most help",
    r"\bfork height\b|(?<!ride )\brear height\b": "fork protrusion, rear ride height",
    r"\b(traction|slide|wheelie) help\b": "such a control is low",
    r"not scrubbed in: ": "a negative answered by no",
    r"\bfreer\b|\bholds it\b": "weaker or stronger",
    r"\bfive moments\b": "the phases of a corner",
    r"\brate at the wheel\b|\brate that would serve\b": "wheel rate, suggested rate",
    r"\blamps? (was |were )?lit\b|\blamps (tried|written)\b|\bsingle lamp\b|\bABS lamp off\b": "a light",
    r"\bmakes dull\b|\bnumber to ring\b": "drowsy, emergency contact",
    r"\b(and|against) the sky\b|\bjoining link\b|\bchain oiled\b": "forecast, clip link, lubed",
    r"\bguaranteed? safe\b|\bis safe to\b": "nothing here is called safe",
    r"\bcommon practice\b|[;,] no source\b": "paddock practice, unpublished",
    r"\bholds (more|less)$": "more or less engine braking",
    r"1\.4826|\bmedian (absolute )?deviation\b": "how far they spread",
    r"\blike (conditions|steps)\b": "similar",
    r"\b(sag|speed|distance) wanted\b|\bwanted (rider )?(sag|speed in top|centre)\b|m, wanted": "target",
    r"\bquicker than a hand\b|\bgrabs in a fright\b|[Rr]ubber that is baked": "plain English",
    r"\bgo on from there\b|\bspent\b|\bfixed run of keys\b|\bwants the key\b|\bmerely\b": "plain English",
    r"\bmoments? of feel\b": "phase of feel",
    r"\bfor a thin tyre\b": "the tyre's width ignored",
    r"\bso much (warmer|colder)\b": "change in air temperature",
    r"\bCLEAR\b": "it reads as leave to go",
    r"\bABS up\b|\bopened two to four\b": "up is less help on a bike that counts down; clicks softer (out)",
    r"\bchain ok\b|\btyres ok: looked\b": "nothing is called ok that nobody compared",
    r"(?<!quick)\bshifter (both|up|off)\b": "a quickshifter: a shifter is the lever",
    r"\bfloats? on the water\b|\bits seat on the rim\b|\btyre works too much\b": "words of the trade",
    r"\bleast of it at least\b|\bout of by-hand\b": "at its lowest setting",
    r"\breturn slip\b|\bdash and key\b|\btake last time\b": "debrief sheet, ignition, use",
    r"\b[Ll]ess wet than\b|\bthe count says only\b": "not fully set for the wet; manual damping",
    r"\bstops me\b|\blifting wheels\b|\bwheels carry at rest\b|\blost at each\b|\bmass, ahead\b": "trade",
    r"\btwo of them are the way\b|\bit is so after\b|\bkeys that are not known\b": "plain English",
    r"\bneeds [0-9]{2,} more clean\b": "what nobody will ride cannot be told",
}
"""What no string of the program says, each with why or what is said instead."""

MAY = {
    # The words that files held once are read for ever.
    ("records/session_parts.py", "fades"),
}

ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+|net")
"""Ids of rules and names of facts, which are kept as files and rules know them."""


def strings() -> Iterator[tuple[str, int, str]]:
    """List every string that is no docstring and no id, each line of help and the lists, with its place."""
    for path in sorted(PACKAGE.rglob("*.py")):
        name = path.relative_to(PACKAGE).as_posix()
        yield from ((name, line, text) for line, text in texts_of(path) if not ID.fullmatch(text))
    for path in sorted(PACKAGE.rglob("*.md")):
        name = path.relative_to(PACKAGE).as_posix()
        yield from (
            (name, at, line) for at, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        )
    lines = (PACKAGE.parent / "README.md").read_text(encoding="utf-8").splitlines()
    yield from (("README.md", at, line) for at, line in enumerate(lines, 1))
    for path in sorted((PACKAGE.parent / "sample_garage" / "checklists").glob("*.toml")):
        lines = path.read_text(encoding="utf-8").splitlines()
        yield from ((path.name, at, line) for at, line in enumerate(lines, 1) if line.startswith("text = "))


def test_no_string_says_what_misleads() -> None:
    any_of_them = re.compile("|".join(MISLEADS))
    found = [
        f"{name}:{line}: {text.strip()[:80]!r}: {why}"
        for name, line, text in strings()
        if any_of_them.search(text)
        for pattern, why in MISLEADS.items()
        if re.search(pattern, text) and (name, text) not in MAY
    ]

    assert found == []


@every(
    "text",
    ["fades", "The nets are thin together.", "front gas when hot", "mend its file first", "levels anew"],
)
def test_what_misleads_is_found(text: str) -> None:
    assert any(re.search(pattern, text) for pattern in MISLEADS)


def test_the_short_caution_is_never_cut() -> None:
    assert 10 < width(SHORT_CAUTION) <= 38


@every("size", [(40, 20), (60, 24), (80, 24), (120, 40)])
def test_each_page_that_judges_says_at_every_size_that_it_is_no_safety_check(size: tuple[int, int]) -> None:
    rows = tuple(
        Row("serious", "Traction control low for a wet track: 3 (range 0-10).", key=f"{n}") for n in range(9)
    )
    for findings in (rows, rows[:1], ()):
        page = Page("p", (), "CARE 9", findings=findings, judged=True, caution=SHORT_CAUTION)
        said = layout(page, View(*size)).text()
        assert "no safety check" in said or SHORT_CAUTION in said
