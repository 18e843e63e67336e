"""What stands in the private folder of a garage of a stranger leads nowhere, and is written nowhere else."""

import os
import stat
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.store.half_typed import HalfTyped, save, take
from paddock_tui.store.journal import entries
from paddock_tui.store.lock import holder
from paddock_tui.store.outcomes import NotSaved, Saved
from paddock_tui.store.saving import repair
from tests.attacks.trap import ONE, Trap, naming, trap
from tests.desk.opened import BEFORE, at_desk

NAMES = ["journal", "intent", "half-typed", "id", "lock", ".gitignore"]


@pytest.fixture
def attack(tmp_path: Path) -> Trap:
    return trap(tmp_path)


def of_month(attack: Trap) -> Path:
    return attack.private / "journal" / f"{BEFORE:%Y-%m}.jsonl"


def test_a_month_of_the_journal_that_links_to_a_start_file_gets_no_line(attack: Trap) -> None:
    of_month(attack).symlink_to(attack.victim)
    desk = at_desk(attack.root)

    desk.do(naming("Plain", "$(touch /tmp/owned)"))
    (saved,) = desk.settled()
    desk.close()

    assert isinstance(saved, Saved)
    assert "is a link: remove it" in saved.unnoted
    assert attack.unharmed()


def test_a_month_with_a_second_name_elsewhere_gets_no_line(attack: Trap) -> None:
    of_month(attack).hardlink_to(attack.victim)
    desk = at_desk(attack.root)

    desk.do(naming("Plain", "x"))
    (saved,) = desk.settled()
    desk.close()

    assert isinstance(saved, Saved)
    assert "has a second name elsewhere" in saved.unnoted
    assert attack.unharmed()


@pytest.mark.parametrize("name", NAMES)
def test_a_link_of_any_name_is_not_written_through(attack: Trap, name: str) -> None:
    if name == "journal":
        (attack.private / name).rmdir()
    (attack.private / name).symlink_to(attack.victim.parent if name == "journal" else attack.victim)

    outcome = attack.save("Plain", "x")
    save(attack.root, HalfTyped(ONE, ("aim",), "evil"))
    taken = take(attack.root)
    repair(attack.files(), BEFORE)

    assert attack.unharmed()
    assert isinstance(outcome, NotSaved if name == "lock" else Saved)
    assert taken is None or name not in ("half-typed", "id")


def test_a_private_folder_that_is_a_link_is_not_used_and_that_is_said(attack: Trap) -> None:
    (attack.private / "journal").rmdir()
    attack.private.rmdir()
    attack.private.symlink_to(attack.victim.parent)

    outcome = attack.save("Plain", "x")
    save(attack.root, HalfTyped(ONE, ("aim",), "evil"))

    assert attack.unharmed()
    assert isinstance(outcome, NotSaved)
    assert outcome.reason == (
        "the garage cannot be locked: .paddock is a link: remove it, the records do not need it"
    )


@pytest.mark.skipif(os.geteuid() != 0, reason="only root can give files away")
@pytest.mark.parametrize("name", ["", "lock", "journal"])
def test_what_belongs_to_somebody_else_is_not_used(attack: Trap, name: str) -> None:
    (attack.private / "lock").touch()
    os.chown(attack.private / name, 12345, 23456)

    outcome = attack.save("Plain", "x")

    said = outcome.unnoted if isinstance(outcome, Saved) else outcome.reason  # type: ignore[union-attr]
    assert "belongs to somebody else" in said


def test_folder_and_files_are_for_this_user_alone_and_wide_ones_are_narrowed(attack: Trap) -> None:
    attack.private.chmod(0o777)
    (attack.private / "lock").touch(0o666)
    attack.root.chmod(0o755)

    assert isinstance(attack.save("Plain", "x"), Saved)

    assert stat.S_IMODE(attack.private.stat().st_mode) == 0o700
    modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in attack.private.rglob("*")}
    assert modes.pop("journal") == 0o700
    assert set(modes.values()) == {0o600}


def test_a_garage_that_its_group_may_write_is_shared_with_the_group(attack: Trap) -> None:
    attack.root.chmod(0o775)
    old = os.umask(0o022)
    try:
        assert isinstance(attack.save("Plain", "x"), Saved)
    finally:
        os.umask(old)

    assert stat.S_IMODE(attack.private.stat().st_mode) == 0o770
    modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in attack.private.rglob("*")}
    assert modes.pop("journal") == 0o770
    assert set(modes.values()) == {0o660}


def test_what_only_the_user_may_read_is_not_in_a_journal_that_the_group_may_read(attack: Trap) -> None:
    attack.root.chmod(0o775)
    (attack.root / "bikes" / "plain.toml").chmod(0o600)

    saved = attack.save("Plain", "secret")

    assert isinstance(saved, Saved)
    assert "readable for you alone" in saved.unnoted
    assert entries(attack.root) == []
    assert stat.S_IMODE((attack.root / "bikes" / "plain.toml").stat().st_mode) == 0o600


def test_a_holder_that_is_gone_or_no_holder_is_never_named(attack: Trap) -> None:
    note = attack.private / "lock"
    for text in (
        f"pid = 999999999\nhost = '{os.uname().nodename}'\nsince = 2026-05-16T10:00:00\n",
        "pid = -1\nhost = 'x'\nsince = 'y'\n",
        "[" * 5000,
        "pid = 0\nhost = 'x'",
    ):
        note.write_text(text)
        assert holder(attack.root) is None


def test_what_was_half_typed_is_offered_only_where_this_user_typed_it(attack: Trap) -> None:
    half = HalfTyped(Ref("bike", "plain"), ("name",), "mine")
    save(attack.root, half)
    written = (attack.private / "half-typed").read_bytes()
    assert take(attack.root) == half

    (attack.private / "half-typed").write_bytes(written.replace(b"mine", b"evil"))

    assert take(attack.root) is None
    assert not (attack.private / "half-typed").exists()
