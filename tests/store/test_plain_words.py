"""What the system says of a file, in words of our own: the whole list, and what is not on it."""

import errno
from pathlib import Path

from paddock_tui.store.errors import LeadsOut, in_plain_words
from tests.every import every

WORDS = {
    "no space left on the disk": [errno.ENOSPC],
    "no space left in this account's share of the disk": [errno.EDQUOT],
    "the file is larger than this disk takes": [errno.EFBIG],
    "the disk is read-only": [errno.EROFS],
    "no permission": [errno.EACCES, errno.EPERM],
    "the file or its folder is not there": [errno.ENOENT],
    "a file stands where a folder is needed": [errno.ENOTDIR],
    "this is a folder": [errno.EISDIR],
    "a file of this name is there already": [errno.EEXIST],
    "whoever read it is gone": [errno.EPIPE],
    "the disk reports an error": [errno.EIO],
    "the disk is not there any more": [errno.ENODEV, errno.ENXIO],
    "the network share has lost the file: connect it again": [errno.ESTALE],
    "the network share does not answer": [errno.ETIMEDOUT, errno.EHOSTDOWN],
    "the name is too long": [errno.ENAMETOOLONG],
    "the links lead in a circle": [errno.ELOOP],
    "too many files are open": [errno.EMFILE, errno.ENFILE],
    "this disk takes no locks": [errno.ENOLCK, errno.ENOSYS],
}


@every("words", WORDS)
def test_an_error_of_the_system_has_words_of_our_own(words: str) -> None:
    for number in WORDS[words]:
        assert in_plain_words(OSError(number, "as the system has it")) == words


def test_an_error_without_words_of_our_own_keeps_the_systems() -> None:
    assert in_plain_words(OSError(errno.EBADMSG, "as the system has it")) == "as the system has it"
    assert in_plain_words(OSError("no number at all")) == "no number at all"
    assert in_plain_words(RuntimeError("links")) == "the links lead in a circle"


def test_what_this_program_refuses_itself_says_why() -> None:
    refused = LeadsOut(Path("/elsewhere"))

    assert in_plain_words(refused) == "a link that leads out of the garage, to /elsewhere"
