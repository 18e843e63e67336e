"""What an explanation is made of."""

import attrs


@attrs.frozen
class Weighed:
    """What one end brings or takes, on both sides of the scale; an empty side says nothing.

    Each is a phrase: it starts small and ends without a full stop.
    """

    safety: str = ""
    performance: str = ""

    def __str__(self) -> str:
        sides = (("Safety", self.safety), ("Performance", self.performance))
        return " ".join(f"{name}: {said}." for name, said in sides if said)


@attrs.frozen
class Direction:
    """One way in which a setting can go: what that is called, what it gives, what it costs."""

    name: str
    gives: Weighed
    costs: Weighed


@attrs.frozen
class Explanation:
    """What one setting does and what is traded with it.

    `does` is two plain sentences. `more` and `less` are the two ways; of a scale without a better end they
    are its two ends, of a state they are on and off. `too_much` and `too_little` are how it feels, `cannot`
    what it does not do, `works_with` the other settings that it works with or hides, `watch` when to mind it,
    `source` where it is from: "paddock practice, unpublished", or what was published.
    """

    title: str
    does: tuple[str, str]
    more: Direction
    less: Direction
    too_much: str
    too_little: str
    cannot: tuple[str, ...]
    works_with: str
    watch: str
    source: tuple[str, ...]

    def texts(self) -> tuple[str, ...]:
        """List every text of it, as it is shown."""
        sides = (self.more.gives, self.more.costs, self.less.gives, self.less.costs)
        ends = (self.too_much, self.too_little, self.works_with, self.watch)
        return (*self.does, *map(str, sides), *ends, *self.cannot, *self.source)
