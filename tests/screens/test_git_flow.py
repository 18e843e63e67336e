"""Git under the open screens: what comes and goes with it is shown and said, and undo stays right."""

from pathlib import Path

from tests.merge.test_git import change, git, laptops, own_git, pytestmark
from tests.screens.rider import riding
from tests.small import snapshot

__all__ = ["laptops", "own_git", "pytestmark"]

TRACTION = ("setup", "controls", "traction")


def of_records(where: Path) -> dict[str, bytes]:
    return {name: text for name, text in snapshot(where).items() if name.endswith(".toml")}


async def test_stash_pull_and_checkout_under_the_open_screens(laptops: tuple[Path, Path]) -> None:
    home, pits = laptops
    change(home, "setup.controls.slide=6", "aim=smooth", "setup.front_start=2.05 bar")
    before = of_records(pits)
    async with riding(pits) as rider:
        await rider.types("p")
        rider.to(*TRACTION)
        await rider.types("6")
        edited = of_records(pits)

        def shown() -> str:
            rider.app.main.follower.poll()
            return next(row.value for row in rider.app.main.board.page.rows() if row.path == TRACTION)

        git(pits, "stash", "-q")
        assert shown().split()[0] == "3"
        assert rider.last.startswith("1 fact from another laptop: r")
        await rider.types("u")
        assert of_records(pits) == before  # what was stashed is not there to be undone, and nothing else is

        git(pits, "stash", "pop", "-q")
        assert shown().split()[0] == "6"
        assert of_records(pits) == edited

        git(pits, "commit", "-qam", "six")
        git(pits, "pull", "-q", "--no-rebase", "--no-edit")
        assert shown().split()[0] == "6"
        assert rider.last.startswith("3 facts from another laptop: r")
        rider.to(*TRACTION)
        await rider.types("4 u")
        assert shown().split()[0] == "6"
        assert git(pits, "status", "--porcelain") == ""

        git(pits, "checkout", "-q", "HEAD~2")
        shown()
        await rider.types("down")
        assert "from another laptop" in rider.last
        await rider.types("r")
        assert rider.app.main.place.room == "review"
