"""What others read of a person: words planted in health, incidents, acceptances turn up nowhere unasked."""

from pathlib import Path

import pytest

from paddock_tui.commands.show import AS_ON_SCREEN, OWN
from tests.commands.running import FILE, NEXT, Runner
from tests.every import every
from tests.small import snapshot

RIDDEN = "2026-06-20-2-magpie"

PLANTED = """
[incidents.1]
what = "fall"
moving = true
head_contact = true
concussion = true
note = "plantedfall"
cleared_by = "planteddoctor"
mended = "plantedmended"

[incidents.2]
what = "unwell"
note = "plantedill"
signs = ["confused"]

[accepted.some-rule.traction]
reason = "plantedreason"
by = "planteder"
"""

OF_THE_RIDER = {"review", "checks", "out", "return", "next"}
"""Pages that say what stands against riding: asked for by name they say why, without anybody's words."""

TOLD = ("concussion", "head hit", "unwell", "fell", "fall while", "fainted")
"""What no page for others says of a person."""


def plant(garage: Path) -> None:
    file = garage / f"sessions/2026/{RIDDEN}.toml"
    file.write_text(file.read_text(encoding="utf-8") + PLANTED, encoding="utf-8")


@every("form", [("--format", "text"), ("--format", "json"), ("--plain",)])
def test_no_page_says_them_and_those_for_others_not_even_what_it_was(
    run: Runner, garage: Path, form: tuple[str, ...]
) -> None:
    plant(garage)
    for page in (*OWN, *AS_ON_SCREEN):
        other = ("--from", "magpie-ines-dry") if page == "compare" else ()
        said = run("show", garage, page, *other, *form).out.casefold()
        assert "planted" not in said, page
        if page not in OF_THE_RIDER:
            assert [word for word in TOLD if word in said] == [], page
    for asked in ("card/" + RIDDEN, "brief/" + NEXT, "setup/" + NEXT):
        said = run("show", garage, asked).out.casefold()
        assert [word for word in ("planted", *TOLD) if word in said] == [], asked


def test_they_stand_in_their_record_alone_whatever_is_run(
    run: Runner, garage: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Index, journal, export and what is said of each command hold none of it."""
    plant(garage)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    said = [
        run("check", garage),
        run("check", garage, "--all"),
        run("check", garage, "--format", "json"),
        run("set", garage, NEXT, "air=17"),
        run("enter", garage, "t6"),
        run("undo", garage),
        run("export", garage, "--to", tmp_path / "csv"),
        run("export", garage, "--to", tmp_path / "jsonl", "--format", "jsonl"),
        run("show", garage, "season"),
        run("schema"),
        run("doctor", garage),
    ]
    assert not any("planted" in f"{one.out}{one.err}" for one in said)
    held = [
        str(file.relative_to(tmp_path))
        for file in tmp_path.rglob("*")
        if file.is_file() and b"planted" in file.read_bytes()
    ]
    assert held == [str((garage / f"sessions/2026/{RIDDEN}.toml").relative_to(tmp_path))]
    assert any(snapshot(tmp_path / "csv").values())


def test_a_word_typed_of_an_incident_is_in_its_record_and_in_the_journal_of_its_undo(
    run: Runner, garage: Path
) -> None:
    """The journal has to hold what an undo takes back; it is private, and nothing else holds it."""
    assert run("set", garage, NEXT, "incidents.1.what=fall", "incidents.1.note=plantedtyped").status == 0
    held = {name for name, text in snapshot(garage).items() if b"plantedtyped" in text}
    outside = {name for name in held if not name.startswith(".paddock/")}
    assert outside == {FILE}
    for file in (garage / ".paddock").rglob("*"):
        assert file.stat().st_mode & 0o077 == 0, file
