"""The wet package of sessions and profiles of the sample garage: its values, and why there is none."""

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.wet_package import NOTHING_OPEN, Offered, wet_package
from paddock_tui.records.setup import Profile
from tests.advice.given import sample
from tests.every import every

HAND = "2026-06-20-4-magpie"


def on(surface: str | None, name: str = HAND) -> About:
    """The session with another surface."""
    about = sample("session", name)
    session = attrs.evolve(about.session, surface=surface)
    return attrs.evolve(about, situation=attrs.evolve(about.situation, session=session))


def made_for(surface: str | None) -> About:
    """The profile for the wet as if it were made for another surface."""
    about = sample("profile", "magpie-ines-wet")
    profile = about.situation.profile
    assert isinstance(profile, Profile)
    changed = attrs.evolve(profile, made_for=surface)
    return attrs.evolve(about, situation=attrs.evolve(about.situation, profile=changed))


def test_a_session_gets_values_and_words() -> None:
    found = wet_package(sample("session", HAND))

    assert isinstance(found, Offered)
    values = {put.path[-1]: put.value for put in found.puts}
    assert values == {
        "mode": "wading",
        "traction": 8,
        "slide": 6,
        "engine-braking": 2,
        "throttle": "gentle",
        "front-preload": 4,
        "rear-preload": 1,
    }
    assert any("automatic damping" in one for one in found.not_set)


@every(
    ("about", "says"),
    [
        (on("dry"), "the surface is dry"),
        (on(None), "not known: the surface"),
        (on("wet", "2026-05-16-5-magpie"), "was ridden"),
        (made_for("dry"), "made for dry"),
        (made_for(None), "made for no surface yet"),
        (made_for("wet"), NOTHING_OPEN),
        (About(attrs.evolve(sample("session", HAND).situation, session=None)), "no session and no profile"),
    ],
)
def test_where_there_is_none_it_says_why(about: About, says: str) -> None:
    found = wet_package(about)

    assert isinstance(found, str)
    assert says in found


def test_on_a_dry_track_it_is_the_way_back_to_the_last_dry_session() -> None:
    """The wet set-up of May on a track that is dry again: what was ridden in the dry before comes back."""
    wet = sample("profile", "magpie-ines-wet").situation.profile
    assert isinstance(wet, Profile)
    about = on("dry")
    session = attrs.evolve(about.session, setup=wet.setup)
    found = wet_package(attrs.evolve(about, situation=attrs.evolve(about.situation, session=session)))

    assert isinstance(found, Offered)
    assert found.name == "back to the dry"
    values = {put.path[-1]: put.value for put in found.puts}
    assert values["mode"] != "wading"
    assert values["front-preload"] == 6.5
    assert "pit-limiter" not in values
    assert "rear_sprocket" not in values


def test_a_profile_that_is_drier_than_it_is_made_for_gets_values() -> None:
    about = made_for("standing water")
    profile = about.situation.profile
    assert isinstance(profile, Profile)
    drier = attrs.evolve(profile.setup, controls={**profile.setup.controls, "traction": 6})
    changed = attrs.evolve(about.situation, profile=attrs.evolve(profile, setup=drier))
    found = wet_package(attrs.evolve(about, situation=changed))

    assert isinstance(found, Offered)
    assert {put.path[-1] for put in found.puts} >= {"traction"}


def test_a_profile_without_its_rider_says_what_is_not_known() -> None:
    about = made_for("wet")
    lone = attrs.evolve(about, situation=attrs.evolve(about.situation, rider=None))

    assert wet_package(lone) == "not known: the rider's group"
