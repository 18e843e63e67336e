"""Why a file could not be read or written, in plain words."""

import errno

TYPE_CHECKING = False  # what it stands for in `typing`, which takes longer to load than all of this
if TYPE_CHECKING:
    from pathlib import Path

_REASONS = {
    errno.ENOSPC: "no space left on the disk",
    errno.EDQUOT: "no space left in this account's share of the disk",
    errno.EFBIG: "the file is larger than this disk takes",
    errno.EROFS: "the disk is read-only",
    errno.EACCES: "no permission",
    errno.EPERM: "no permission",
    errno.ENOENT: "the file or its folder is not there",
    errno.ENOTDIR: "a file stands where a folder is needed",
    errno.EISDIR: "this is a folder",
    errno.EEXIST: "a file of this name is there already",
    errno.EPIPE: "whoever read it is gone",
    errno.EIO: "the disk reports an error",
    errno.ENODEV: "the disk is not there any more",
    errno.ENXIO: "the disk is not there any more",
    errno.ESTALE: "the network share has lost the file: connect it again",
    errno.ETIMEDOUT: "the network share does not answer",
    errno.EHOSTDOWN: "the network share does not answer",
    errno.ENAMETOOLONG: "the name is too long",
    errno.ELOOP: "the links lead in a circle",
    errno.EMFILE: "too many files are open",
    errno.ENFILE: "too many files are open",
    errno.ENOLCK: "this disk takes no locks",
    errno.ENOSYS: "this disk takes no locks",
}


class NotWritten(Exception):
    """A file was not written, and what mends that where it is known.

    `replaced` says that the new text stands but may not outlive a power cut.
    """

    def __init__(self, reason: str, *, mend: str = "", replaced: bool = False) -> None:
        super().__init__(reason)
        self.reason = reason
        self.mend = mend
        self.replaced = replaced


class Refused(OSError):
    """This program does not use what is there, though the system would let it; with the sentence for it."""

    def __init__(self, words: str) -> None:
        super().__init__(errno.EPERM, words)


class LeadsOut(Refused):
    """A link leads out of the garage, to a target that nobody allowed."""

    def __init__(self, target: "Path") -> None:
        super().__init__(f"a link that leads out of the garage, to {target}")
        self.target = target


def in_plain_words(error: OSError | RuntimeError) -> str:
    """Return what went wrong; an error without words of our own keeps the system's."""
    if not isinstance(error, OSError):
        return _REASONS[errno.ELOOP]
    if isinstance(error, Refused):
        return str(error.strerror)
    return _REASONS.get(error.errno or 0, error.strerror or str(error))


class Replaced(NotWritten):
    """Another program wrote the file since it was read: nothing was written, and it may be read again."""

    def __init__(self) -> None:
        super().__init__("another program keeps changing the file", mend="try again when it is done")
