"""Geometry, weighing, thrust, warmers, laps, chain and fuel range as the bench and the rows give them."""

from decimal import Decimal

from paddock_tui.advice.about import History
from paddock_tui.advice.beside_records import beside_bike
from paddock_tui.advice.beside_setup import beside_session, beside_setup
from paddock_tui.advice.chain_length import chain_length
from paddock_tui.advice.chain_pull import chain_pull
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.geometry import geometry
from paddock_tui.advice.laps_and_sectors import laps_and_sectors
from paddock_tui.advice.on_warmers import on_warmers
from paddock_tui.advice.sag import sag
from paddock_tui.advice.shift_points import shift_points
from paddock_tui.advice.tread_wear import tread
from paddock_tui.advice.weighing import weighing
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, about, answers, past, sample, session, tyres
from tests.every import every

RIDDEN = sample("session", "2026-05-16-5-magpie")


def amount(number: float | str, unit: str) -> Quantity:
    return Quantity(Decimal(str(number)), unit)


def test_the_centre_of_mass_comes_with_its_error_and_a_better_scale_narrows_it() -> None:
    rough, fine = (answers(weighing(RIDDEN), BAR, scale_error=kg)["height"].text for kg in (1.0, 0.1))

    def either_way(text: str) -> int:
        return int(text.split("give or take ")[1].split()[0])

    assert either_way(rough) > either_way(fine) > 5
    assert answers(weighing(RIDDEN), reading=amount(250, "kg"))["height"].text == (
        "reading with one end raised: it has to be under the 199 kg of both"
    )


def test_a_rider_on_the_bike_raises_the_centre() -> None:
    typed = {"rider_height": amount(950, "mm"), "rider_ahead": amount(600, "mm")}

    alone, both = answers(weighing(RIDDEN), **typed)["height"], answers(weighing(RIDDEN), **typed)["both"]
    assert int(both.text.split(" ahead, ")[1].split()[0]) > int(alone.text.split()[0])


def test_geometry_as_published_comes_back_and_a_change_that_was_made_is_filled_in() -> None:
    found = answers(geometry(RIDDEN))

    assert found["stands"].text.startswith("rake 24.4 deg, trail 101 mm, wheelbase 1441 mm, swingarm ")
    lower = answers(geometry(RIDDEN), fork=5, ride=0)["after"].text
    assert lower.startswith("rake 24.2 deg, trail 100 mm, wheelbase 1439 mm")
    assert found["one_fork"].short == "1 mm: rake -0.04 deg, trail -0.22 mm"


def test_more_teeth_behind_or_fewer_in_front_raise_the_anti_squat() -> None:
    found = answers(chain_pull(RIDDEN))

    base, rear, front = (int(found[key].text.split()[0]) for key in ("squat", "squat_rear", "squat_front"))
    assert base < rear < front
    assert answers(chain_pull(RIDDEN), thrust=2000)["pull"].text.endswith(" N in the upper run")


def test_shift_points_top_speeds_and_a_ratio_for_a_wanted_speed() -> None:
    typed = {"drag": 0.32, "speed": amount(260, "km/h"), "revs": amount(12500, "rpm")}
    found = answers(shift_points(RIDDEN), **typed)

    assert found["shifts"].text.endswith(" rpm, from first up")
    assert found["geared"].text == "282 km/h to 291 km/h at the limiter"
    low, high = (int(one) for one in found["powered"].text.replace(" km/h", "").split(",")[0].split(" to "))
    assert 250 < low < high < 340
    rolled = shift_points(RIDDEN).filled["round"].value.to("m")
    final = 12500 / 60 * rolled / (260 / 3.6) / (1.659 * 1.286)
    assert found["wanted"].text.startswith(f"final {final:.3f}; with 16 in front 45 behind ")


def test_on_warmers_is_less_where_the_track_makes_the_air_hotter_and_back_again() -> None:
    typed = {
        "front_hot": amount("2.40", "bar"),
        "front_gas": amount(75, "C"),
        "warm_at": amount(60, "C"),
        "air_pressure": amount(1013.25, "hPa"),
    }
    there = answers(on_warmers(about(session=session(""))), BAR, **typed)["front_set"]

    # (2.40 + 1.013) x 333.15 / 348.15 - 1.013 = 2.253.
    assert there.text == "2.25 bar on the warmers for 2.40 bar hot (2.16 to 2.35 bar)"
    back = answers(on_warmers(about(session=session(""))), BAR, **typed, front_warm=amount("2.25", "bar"))
    assert back["front_becomes"].text.startswith("2.40 bar hot on the track")


def test_sectors_make_the_ideal_lap_and_clean_laps_the_consistency() -> None:
    found = answers(laps_and_sectors(RIDDEN))

    # 41.05 + 44.62 + 38.1.
    assert found["ideal"].text.startswith("2:03.770, 0.11 s under lap 6 (2:03.880)")
    assert found["consistency"].short == "consistent to 0.65 %"
    assert answers(laps_and_sectors(about(session=session(""))))["ideal"].text == "sectors: no lap has any"


def test_a_chain_is_held_against_its_makers_length_with_the_gauge_against_it() -> None:
    found = answers(chain_length(RIDDEN))

    assert found["grown"].text == "0.44 %, give or take 0.09 %: 1.4 mm over 317.5 mm"
    assert found["limit"].text.startswith("under the maker's limit by 2.3 mm at least")
    over = answers(chain_length(RIDDEN), length=amount(322, "mm"))["limit"]
    assert over.text == "over the maker's limit by up to 0.8 mm: replace it"


def test_the_tank_gives_whole_laps_of_its_dearest_rate_and_the_road_home() -> None:
    found = answers(fuel(RIDDEN), road_rate=amount(6, "l/100km"), home=amount(400, "km"))

    assert found["tank_laps"].text.startswith("21 laps, ")
    assert found["home"].text == "241 km, the reserve kept: not home, 158.3 km short"
    warm = answers(fuel(RIDDEN), filled_at=amount(15, "C"), later_at=amount(40, "C"))["grows"]
    assert warm.text == "up to 0.6 l: leave that room"


def test_a_push_test_tells_the_damping_and_friction_the_gap() -> None:
    typed = {"first": amount(40, "mm"), "last": amount(5, "mm"), "swings": 1.0, "swing_time": 0.6}
    found = answers(sag(RIDDEN, "rear"), **typed)

    # ln 8 = 2.08: 2.08 / sqrt(4 pi^2 + 2.08^2) = 31 %.
    assert found["damping"].text == "31 % of critical; undamped 1.8 Hz by the count"
    assert found["friction"].text == "18 N either way"
    assert found["frequency"].text == "1.8 Hz, undamped"


def test_tread_tells_how_soon_it_may_be_worn_from_four_readings_on() -> None:
    lead = 'parked = 10:00:00\nsurface = "dry"\n'
    depths = (5.0, 4.7, 4.5, 4.2)
    seen = tuple(past(at, f'{lead}rear_tread = "{mm} mm"\n') for at, mm in enumerate(depths, start=1))
    set_ = tyres('[rear]\nworn_at = "3.0 mm"\n')

    three, four = (
        answers(tread(about(History(seen[:count]), session=session(""), tyres=set_), "rear"))["tread"].text
        for count in (3, 4)
    )
    assert three == "0.25 mm a session (last 4.5 mm); how long they last takes 4 readings"
    # The fastest of all pairs is 0.3 mm a session: 1.2 mm are gone in four.
    assert four == "0.26 mm a session: 3 mm may come within 4 sessions (last 4.2 mm)"


@every(
    ("rows", "path", "said"),
    [
        ("setup", "setup.fork_height", "1 mm: rake -0.04 deg, trail -0.22 mm"),
        ("setup", "setup.rear_height", "1 mm: rake -0.04 deg, trail -0.24 mm"),
        ("session", "best_lap", ""),
        ("session", "sectors.6", "ideal 2:03.770"),
        ("session", "chain_length", "grown 0.44 %"),
        ("bike", "chassis.trail", ""),
        ("bike", "chassis.pivot_height", "anti-squat 60 %"),
        ("bike", "weighing.reading", ""),
    ],
)
def test_each_stands_beside_its_row_with_its_working(rows: str, path: str, said: str) -> None:
    found = {"setup": beside_setup, "session": beside_session, "bike": beside_bike}[rows](RIDDEN)

    row = found[tuple(path.split("."))]
    assert said in row.short
    assert any(line.startswith("formula: ") for line in row.working)
