"""Processes that begin as copies of this one: all is imported, so that starting one takes no time."""

import os
import warnings
from collections.abc import Callable


def forked(work: Callable[[], None]) -> int:
    """Start a process that does this and ends with 0, or 1 where it raises; gives its number."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # idle threads of other tests hold no lock
        pid = os.fork()
    if pid == 0:
        try:
            work()
        except BaseException:
            os._exit(1)
        os._exit(0)
    return pid
