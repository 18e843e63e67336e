"""Help: topics and words as text files of the package, one source for `?`, `help` and the README.

A topic is `topics/<name>.md`: a first line `# name: what it is about`, then paragraphs, tables of two or more
columns, lists, fenced lines and `## headings`. A last paragraph `Words: a, b` names words of `words.md`.
"""

from paddock_tui.help.reading import Entry, Part, Topic, with_keys
from paddock_tui.help.topics import WORDS, called, find, names, topic, topics, words

__all__ = [
    "WORDS",
    "Entry",
    "Part",
    "Topic",
    "called",
    "find",
    "names",
    "topic",
    "topics",
    "with_keys",
    "words",
]
