"""Digests are those of the published standard, wherever they are worked out."""

import hashlib

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.store.digests import digest

# RFC 7693, appendix A: BLAKE2b-512 of "abc".
PUBLISHED = (
    "ba80a53f981c4d0d6a2797b69f12f6e94c212f14685ac4b74b12bb6fdbffa2d1"
    "7d87c5392aab792dc252d5de4533cc9518d38aa8dbf1925ab92386edd4009923"
)


def test_the_digest_is_the_published_one() -> None:
    assert digest(b"abc", size=64) == digest(b"a", b"", b"bc", size=64) == PUBLISHED


@given(st.lists(st.binary(max_size=300), max_size=4), st.integers(1, 64))
def test_it_is_what_the_standard_library_works_out(parts: list[bytes], size: int) -> None:
    assert digest(*parts, size=size) == hashlib.blake2b(b"".join(parts), digest_size=size).hexdigest()
