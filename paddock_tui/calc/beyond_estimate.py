"""What lies beyond an estimate: not an error, but nothing that the figures assumed can answer."""

import attrs


@attrs.frozen
class Beyond:
    """More is asked than what was assumed gives: what is asked for, how much, and how much was assumed."""

    what: str
    asked: float
    assumed: float

    def sentence(self) -> str:
        """Say it in one line."""
        return f"beyond this estimate: {self.what} {self.asked:.2f}, assumed {self.assumed:.2f}"
