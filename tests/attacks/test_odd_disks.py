"""Each odd disk says its own sentence, names nobody who is gone, and loses nothing."""

import errno
import os
import warnings
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest

from paddock_tui.store import system_calls
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.outcomes import NotSaved, Saved
from paddock_tui.store.saving import save
from tests.attacks.trap import Trap, naming, trap
from tests.desk.opened import at_desk
from tests.small import snapshot

DISKS = {
    "no flock": ("lock", errno.ENOSYS, "the garage cannot be locked: this disk takes no locks"),
    "no flock on a share": ("lock", errno.ENOLCK, "the garage cannot be locked: this disk takes no locks"),
    "no flock at all": ("lock", errno.EOPNOTSUPP, "the garage cannot be locked: this disk takes no locks"),
    "read-only": ("open_to_write", errno.EROFS, "the garage cannot be locked: the disk is read-only"),
    "full": ("sync", errno.ENOSPC, "no space left on the disk"),
    "over quota": ("write", errno.EDQUOT, "no space left in this account's share of the disk"),
    "a share that lost the file": ("replace", errno.ESTALE, "the network share has lost the file"),
    "a share that is silent": ("sync", errno.ETIMEDOUT, "the network share does not answer"),
    "a disk that fails": ("sync", errno.EIO, "the disk reports an error"),
    "a disk that was taken out": ("create", errno.ENODEV, "the disk is not there any more"),
}


@pytest.fixture
def attack(tmp_path: Path) -> Trap:
    return trap(tmp_path)


def failing(code: int) -> Callable[..., NoReturn]:
    def fail(*_: object) -> NoReturn:
        raise OSError(code, os.strerror(code))

    return fail


@pytest.mark.parametrize("name", DISKS)
def test_it_says_its_own_sentence_and_what_was_entered_can_be_tried_again(
    attack: Trap, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    call, code, words = DISKS[name]
    desk = at_desk(attack.root)
    before = snapshot(attack.root)
    with monkeypatch.context() as patch, warnings.catch_warnings():
        warnings.simplefilter("error")
        patch.setattr(system_calls, call, failing(code))
        desk.do(naming("Plain", "x"))
        (outcome,) = desk.settled()

    assert isinstance(outcome, NotSaved)
    assert words in outcome.reason
    assert outcome.again
    assert snapshot(attack.root) == before
    assert len(desk.unkept()) == 1
    desk.try_again()
    assert [type(one) for one in desk.settled()] == [Saved]
    desk.close()


def test_every_odd_disk_has_a_sentence_of_its_own() -> None:
    sentences = {code: in_plain_words(OSError(code, os.strerror(code))) for _, code, _ in DISKS.values()}
    del sentences[errno.EOPNOTSUPP]  # said of a lock alone

    assert all(os.strerror(code) != words for code, words in sentences.items())
    assert len(set(sentences.values())) == 8


def test_a_rename_of_letters_alone_works_where_the_disk_is_blind_to_case(attack: Trap) -> None:
    """Ids are lower case, so that two records can never differ in their case alone."""
    (attack.root / "bikes" / "PLAIN.toml").write_text('name = "x"\n')

    files = attack.files()

    assert [one.found for one in files.strays()] == ["a file whose name is no id, so that it is not read"]
    assert isinstance(save(files, naming("Plain", "y")), Saved)


def test_a_lock_that_is_held_by_nobody_who_can_be_named_says_another_program(attack: Trap) -> None:
    (attack.private / "lock").write_text(
        f"pid = 999999999\nhost = '{os.uname().nodename}'\nsince = 2026-05-16T10:00:00\n"
    )
    file = os.open(attack.private / "lock", os.O_RDWR)
    system_calls.lock(file)
    try:
        outcome = attack.save("Plain", "x")
    finally:
        os.close(file)

    assert isinstance(outcome, NotSaved)
    assert outcome.reason == "the garage is in use by another program"
