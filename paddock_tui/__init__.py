"""Set up a sport motorcycle for each track session, check it, record it and learn from it."""

__version__ = "0.1.0"
