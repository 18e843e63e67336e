"""Which other set-ups the one looked at is compared with: the last ridden session's, and the profile's."""

from collections.abc import Iterator

import attrs

from paddock_tui.facts.situation import Situation
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.store.garage import GarageFiles


@attrs.frozen
class ComparedSetUp:
    """A set-up to compare with, and what it is in one word."""

    word: str
    setup: SetUp

    @property
    def sign(self) -> str:
        """The letter of its mark."""
        return self.word[0]


def compared_set_ups(files: GarageFiles, situation: Situation) -> Iterator[ComparedSetUp]:
    """Return the set-up of the last session that this rider rode this bike in, and that of the profile."""
    record = situation.session or situation.profile
    if record is None:
        return
    ridden = reversed(situation.history.ridden)
    last = next((one for one in ridden if one.rider == record.rider), None)
    if last is not None:
        yield ComparedSetUp("last", last.session.setup)
    taken = situation.session.taken_from if situation.session is not None else None
    loaded = files.read(Ref("profile", taken)) if taken is not None else None
    profile = loaded.record if loaded is not None else None
    if not isinstance(profile, Profile):
        found = baseline_of(files, record, situation.refs.get("profile"))
        profile = found[1] if found is not None else None
    if profile is not None:
        yield ComparedSetUp("profile", profile.setup)


def baseline_of(
    files: GarageFiles, record: Session | Profile, but: Ref | None = None
) -> tuple[Ref, Profile] | None:
    """Return the baseline of a record's bike and rider, `but` one profile; None where there is none."""
    for ref in files.listing("profile"):
        loaded = files.read(ref) if ref != but else None
        profile = loaded.record if loaded is not None else None
        if not isinstance(profile, Profile) or not profile.baseline or profile.retired is not None:
            continue
        if (profile.bike, profile.rider) == (record.bike, record.rider):
            return ref, profile
    return None
