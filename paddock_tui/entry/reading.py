"""One typed line, read whole: every piece, every question, every error; nothing counts unless all is clear."""

import re
from collections.abc import Callable

import attrs

from paddock_tui.entry import checking, heads, rows, special
from paddock_tui.entry.builtin import LEFT_OUT
from paddock_tui.entry.line import LONGEST, Context, Line, Piece, Question, Unread
from paddock_tui.entry.scanning import Token, storable, tokens
from paddock_tui.entry.setting import piece_of
from paddock_tui.entry.state import State
from paddock_tui.entry.values import NotTaken, take
from paddock_tui.entry.vocabulary import Lone, Row, Single, Special, calls_of
from paddock_tui.records.edits import MISSING
from paddock_tui.records.fielding import field_at
from paddock_tui.records.paths import Path, parse
from paddock_tui.records.shapes import Flag
