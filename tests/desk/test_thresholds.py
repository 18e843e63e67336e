"""Limits at the keyboard: bare numbers are in the limit's unit, and what does not fit is refused."""

from pathlib import Path

from paddock_tui.desk import clearing, setting
from paddock_tui.desk.edits.keys import stepping
from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.thresholds import declared_words, limit_at, with_unit
from paddock_tui.limits import LIMITS
from paddock_tui.records.edits import MISSING, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import GARAGE, Ref, parse
from paddock_tui.store.garage import GarageFiles
from tests.every import every
from tests.small import write

RESERVE = "limits.fuel-short-at-the-flag.reserve"
HELP = "limits.little-traction-help-in-the-damp.caution_below"


def typed(root: Path, path: str, text: str) -> Step | list[InputError]:
    return setting(GarageFiles(root), GARAGE, [(path, text)])


@every(
    ("path", "text", "kept"),
    [
        (RESERVE, "3", "3 l"),
        (RESERVE, "3 l", "3 l"),
        (RESERVE, "2,5", "2,5 l"),
        (HELP, "0.5", 0.5),
    ],
)
def test_what_fits_is_kept_in_the_limits_own_unit(tmp_path: Path, path: str, text: str, kept: object) -> None:
    step = typed(write(tmp_path), path, text)

    assert isinstance(step, Step)
    (change,) = step.changes
    (edit,) = change.edits  # type: ignore[union-attr]
    wanted = str(kept).replace(",", ".") if isinstance(kept, str) else kept
    assert edit.new == wanted


@every(
    ("path", "value", "says"),
    [
        (RESERVE, "30 l", "0 to 10 l"),
        (RESERVE, "3 bar", "0 to 10 l"),
        (RESERVE, 3, "0 to 10 l"),
        (HELP, 1.5, "0 to 1"),
        (HELP, "0.5 bar", "0 to 1"),
        ("limits.no-such-rule.x", 1, "a threshold of the thresholds page"),
    ],
)
def test_what_does_not_fit_is_refused_with_the_range(
    tmp_path: Path, path: str, value: object, says: str
) -> None:
    files = GarageFiles(write(tmp_path))
    found = refusals(files, GARAGE, [Edit(parse(path) or (), MISSING, value)])  # type: ignore[arg-type]

    assert [one.expected for one in found] == [says]


def test_a_bad_value_typed_is_refused(tmp_path: Path) -> None:
    found = typed(write(tmp_path), RESERVE, "30")

    assert isinstance(found, list)
    assert "0 to 10 l" in found[0].sentence()


def test_backspace_goes_back_to_the_declared_value(tmp_path: Path) -> None:
    text = f'name = "small"\nschema = 1\n\n[{RESERVE.rpartition(".")[0]}]\nreserve = "3 l"\n'
    files = GarageFiles(write(tmp_path, garage=text))
    step = clearing(files, GARAGE, parse(RESERVE) or ())

    assert "3 l -> 2 l" in step.label


def test_a_limit_has_no_steps(tmp_path: Path) -> None:
    said = stepping(GarageFiles(write(tmp_path)), GARAGE, parse(RESERVE) or (), 1, None)

    assert said == "reserve has no steps: enter edits it"


def test_only_the_garage_has_limits() -> None:
    bike = Ref("bike", "plain")
    path = parse(RESERVE) or ()

    assert limit_at(bike, path) is None
    assert declared_words(bike, path) == ""
    assert with_unit(bike, path, "3") == "3"
    assert limit_at(GARAGE, path) is LIMITS["fuel-short-at-the-flag", "reserve"]


def test_only_a_whole_path_of_the_garages_file_leads_to_a_limit() -> None:
    whole = ("limits", "fuel-short-at-the-flag", "reserve")
    assert limit_at(GARAGE, whole) is not None
    for path in ((), whole[:1], whole[:2], (*whole, "more"), ("units", *whole[1:])):
        assert limit_at(GARAGE, path) is None
    assert limit_at(Ref("bike", "plain"), whole) is None
