"""One key for a user and one id for a garage, whoever asks first and however many ask at once."""

import hmac
import sys
import threading
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import TypeVar
from unittest.mock import Mock

import pytest

from paddock_tui.on_demand import Later
from paddock_tui.store import signing
from paddock_tui.store.private import private

T = TypeVar("T")
ASK = 8
ROUNDS = 20


@pytest.fixture(autouse=True)
def turns_change_often() -> Iterator[None]:
    usual = sys.getswitchinterval()
    sys.setswitchinterval(1e-5)
    yield
    sys.setswitchinterval(usual)


def at_once(ask: Callable[[], T]) -> list[T]:
    """Return what each of several threads is told that ask at the same moment."""
    told: list[T] = []
    together = threading.Barrier(ASK)

    def one() -> None:
        together.wait()
        told.append(ask())

    threads = [threading.Thread(target=one) for _ in range(ASK)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return told


def test_threads_that_ask_first_at_once_get_one_key_which_is_saved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(ROUNDS):
        monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / str(number)))
        keys = at_once(signing.user_key)
        folder = signing.user_folder()
        assert [one.lost for one in keys] == [""] * ASK
        assert {one.secret for one in keys} == {(folder / "key").read_bytes()}
        assert [one.name for one in folder.iterdir()] == ["key"]


def test_threads_that_ask_first_at_once_get_one_id_of_a_garage(tmp_path: Path) -> None:
    for number in range(ROUNDS):
        root = tmp_path / str(number)
        root.mkdir()
        with private(root, make=True) as folder:
            ids = at_once(partial(signing.garage_id, folder, make=True))
            assert set(ids) == {signing.garage_id(folder)} != {b""}


def test_without_a_home_a_run_has_one_key_all_along(monkeypatch: pytest.MonkeyPatch) -> None:
    def nowhere() -> Path:
        raise RuntimeError

    monkeypatch.setattr(signing, "user_folder", nowhere)
    assert signing.user_key() == signing.user_key()
    assert signing.user_key().lost == "there is no home folder"


@pytest.fixture
def in_the_way(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A file where the folder of the key should be."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    (tmp_path / "state").write_text("in the way")
    return tmp_path / "state"


def test_a_key_that_could_not_be_saved_is_saved_as_soon_as_it_can(in_the_way: Path) -> None:
    first = signing.user_key()
    assert first.lost.startswith("no key can be saved")
    assert signing.user_key() == first
    in_the_way.unlink()
    assert signing.user_key() == signing.Key(first.secret)
    assert (signing.user_folder() / "key").read_bytes() == first.secret


def test_a_key_of_another_run_that_was_saved_meanwhile_is_not_changed(in_the_way: Path) -> None:
    first = signing.user_key()
    in_the_way.unlink()
    saved = signing.user_folder() / "key"
    saved.parent.mkdir(parents=True)
    saved.write_bytes(bytes(range(32)))
    saved.chmod(0o600)
    assert signing.user_key() == first
    assert saved.read_bytes() == bytes(range(32))


def test_a_mark_is_what_the_standard_says_and_the_algorithm_is_looked_up_once_for_a_key(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    signing._begun.cache_clear()
    begun = Mock(wraps=hmac.new)
    monkeypatch.setattr(hmac, "new", begun)
    key, other = signing.Key(b"k" * 32), signing.Key(b"o" * 32)

    for line in (b"{}", b'{"a": 1}'):
        parts = b"2:id1:b%d:%s" % (len(line), line)
        assert signing.mark(key, b"id", b"b", line) == hmac.digest(key.secret, parts, "sha256").hex().encode()
        assert signing.mark(other, b"id", b"b", line) != signing.mark(key, b"id", b"b", line)
    assert begun.call_count == 2


def test_what_makes_a_mark_is_loaded_before_the_first_key_that_keeps_something() -> None:
    assert "hmac" in Later.declared
