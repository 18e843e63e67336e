"""Pictures as rows of data: what is shown and said, without a word about cells, colours or files."""

from paddock_tui.pages.pictures.data import (
    Chart,
    ChartLevel,
    Dot,
    Lane,
    Lanes,
    Mark,
    Pair,
    Pairs,
    Picture,
    Stretch,
)

__all__ = ["Chart", "ChartLevel", "Dot", "Lane", "Lanes", "Mark", "Pair", "Pairs", "Picture", "Stretch"]
