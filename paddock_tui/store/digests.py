"""What tells contents apart: one digest for whatever is noted of files beside them."""

try:
    # As the standard library's own `random` does: `hashlib` loads a library that takes longer than all else
    # that is done with it here.
    from _blake2 import blake2b
except ImportError:
    from hashlib import blake2b


def digest(*parts: bytes, size: int = 32) -> str:
    """Return the digest (BLAKE2b, RFC 7693) of some bytes, one after the other, as hexadecimal digits."""
    found = blake2b(digest_size=size)
    for part in parts:
        found.update(part)
    return found.hexdigest()
