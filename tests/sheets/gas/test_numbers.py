"""The gas sheet against answers worked by hand and against printed tables."""

from __future__ import annotations

import pytest

from curbwright.equations import gas as eq
from tests.sheets.gas.gas_carts import (
    BTU_H,
    CART,
    FOOT,
    HOUR,
    INCH,
    POUND,
    WATER,
    changed,
    figure,
    findings,
    sheet,
    sheets,
)

HEAT = 21548 * 2326.0
BTU = 1055.05585262


# ---- loads


def test_every_burner_on() -> None:
    assert figure("connected_load") == pytest.approx(60_000 * BTU_H)


def test_the_busiest_hour_and_the_day() -> None:
    """Plate: lit 9:30, full fire to 10:00, then half of 40,000. Kettle: lit 9:45, then a quarter."""
    hours = {9: 40_000 / 2 + 20_000 / 4, 10: 25_000, 11: 25_000, 12: 25_000, 13: 25_000}
    for hour, load in hours.items():
        assert figure(f"hours.load_{hour:02}") == pytest.approx(load * BTU_H)
    assert figure("diversified_load") == pytest.approx(25_000 * BTU_H)
    assert figure("energy_per_day") == pytest.approx(5 * 25_000 * BTU)


def test_a_burner_lit_within_the_day() -> None:
    text = changed(("[items.kettle.gas] busy", 'busy = "25 %"\nlit_at = "11:30"\nout_at = "12:00"'))
    assert figure("hours.load_09", text) == pytest.approx(20_000 * BTU_H)
    # A quarter of an hour at full fire, a quarter at a quarter.
    assert figure("hours.load_11", text) == pytest.approx((20_000 + 20_000 / 4 + 5_000 / 4) * BTU_H)
    assert figure("hours.load_12", text) == pytest.approx(20_000 * BTU_H)


def test_serving_past_midnight() -> None:
    text = changed(("[day] opens", 'opens = "22:00"'), ("[day] closes", 'closes = "02:00"'))
    assert figure("serving_time", text) == 4 * HOUR
    assert figure("energy_per_day", text) == pytest.approx(figure("energy_per_day"))
    late = changed(("[items.kettle.gas] busy", 'busy = "25 %"\nlit_at = "01:00"'), text=text)
    assert figure("hours.load_25", late) == pytest.approx((20_000 + 20_000 / 4 + 5_000 * 3 / 4) * BTU_H)


def test_serving_from_midnight_is_lit_the_evening_before() -> None:
    text = changed(("[day] opens", 'opens = "00:10"'), ("[day] closes", 'closes = "04:10"'))
    assert figure("serving_time", text) == 4 * HOUR
    assert figure("energy_per_day", text) == pytest.approx(figure("energy_per_day"))


def test_gas_for_the_day() -> None:
    aboard = 40 * POUND * HEAT
    assert figure("energy_aboard") == pytest.approx(aboard)
    needed = 5 * 25_000 * BTU / 0.8
    assert figure("energy_with_reserve") == pytest.approx(needed)
    assert figure("bottles_needed") == 1
    assert figure("share_left") == pytest.approx(1 - 5 * 25_000 * BTU / aboard)
    twice = changed(("[items.plate] gas_input", 'gas_input = "200,000 BTU/h"'))
    assert figure("bottles_needed", twice) == 2


def test_a_bottle_that_begins_half_full() -> None:
    text = changed(("[items.spare.gas] water_capacity", 'water_capacity = "47.7 lb"\nfilled = "50 %"'))
    assert figure("energy_aboard", text) == pytest.approx(30 * POUND * HEAT)
    assert figure("storage.aboard", text) == pytest.approx(40 * POUND)
    assert figure("starves_after", text) < figure("starves_after")


# ---- what the bottles give


def fahrenheit(degrees: float) -> float:
    return (degrees + 459.67) / 1.8


@pytest.mark.parametrize(("ambient", "one"), [(0, 15), (20, 28), (40, 42), (60, 56), (80, 69)])
def test_full_bottles_for_ever(ambient: float, one: float) -> None:
    """The reference table of a 20 lb bottle at 10 psi, thousand BTU/h; two are open together."""
    text = changed(("[gas] ambient", f'ambient = "{ambient} °F"'))
    assert figure("cold.gives", text) / BTU_H / 1000 == pytest.approx(2 * one, abs=1.5)
    assert figure("vaporisation", text) == figure("cold.gives" if ambient < 90 else "warm.gives", text)


def test_each_of_two_open_bottles_carries_half() -> None:
    """Half of 60,000 each: the reference says 7.5 h at 40 °F, 3.8 h at 20 °F."""
    for ambient, hours in ((40, 7.5), (20, 3.8)):
        text = changed(("[gas] ambient", f'ambient = "{ambient} °F"'))
        assert figure("starves_after", text) / HOUR == pytest.approx(hours, abs=0.06)
        left = 1 - 60_000 * hours * BTU / (40 * POUND * HEAT)
        assert figure("cold.left_connected", text) == pytest.approx(left, abs=0.02)


def test_by_hand_bottles_are_used_one_after_the_other() -> None:
    """One at 60,000 BTU/h and 40 °F holds 2.16 h; two take turns."""
    text = changed(("[gas] ambient", 'ambient = "40 °F"'), ("[gas] changeover", 'changeover = "by hand"'))
    assert figure("starves_after", text) / HOUR == pytest.approx(2 * 2.16, rel=0.01)
    assert figure("vaporisation", text) == pytest.approx(figure("cold.gives_bottle", text))


def test_on_a_change_over_the_first_goes_cold_with_most_of_its_gas() -> None:
    text = changed(("[gas] ambient", 'ambient = "40 °F"'), ("[gas] changeover", 'changeover = "automatic"'))
    red = figure("cold.alone_connected_bottle", text)
    assert red / HOUR == pytest.approx(2.16, rel=0.01)
    left = eq.left_after(contents=20 * POUND, draw=60_000 * BTU_H / HEAT, time=red)
    assert left / (20 * POUND) == pytest.approx(0.70, abs=0.01)
    assert 2 * red < figure("starves_after", text)
    assert any("cold or empty: weigh" in note for note in sheet(text).notes)


def test_a_third_bottle_is_opened_by_hand() -> None:
    third = CART.split("[items.spare]")[1].split("[items.nose]")[0]
    text = CART.replace(
        "[items.nose]", "[items.third]" + third.replace("items.spare", "items.third") + "[items.nose]"
    )
    text = changed(
        ("[gas] bottles", 'bottles = ["bottle", "spare", "third"]'),
        ("[gas] changeover", 'changeover = "automatic"'), text=text,
    )  # fmt: skip
    pair, alone = figure("cold.pair_connected", text), figure("cold.alone_connected_third", text)
    assert figure("starves_after", text) == pytest.approx(pair + alone)


def test_one_bottle_is_open_whatever_is_said() -> None:
    texts = [
        changed(("[gas] bottles", 'bottles = ["bottle"]'), ("[gas] changeover", f'changeover = "{word}"'))
        for word in ("by hand", "automatic", "all open")
    ]
    assert len({figure("starves_after", text) for text in texts}) == 1


def test_bottles_left_out_are_all_aboard_and_spare_ones_are_not_connected() -> None:
    assert figure("energy_aboard", changed(("[gas] bottles", ""))) == figure("energy_aboard")
    one = changed(("[gas] bottles", 'bottles = ["bottle"]'))
    assert figure("energy_aboard", one) == pytest.approx(figure("energy_aboard") / 2)
    assert figure("storage.aboard", one) == figure("storage.aboard")


def test_unlike_bottles_share_by_their_wetted_walls() -> None:
    text = changed(("[items.spare] charge", 'charge = "10 lb"'))
    parts = [figure(f"cold.part_connected_{key}", text) for key in ("bottle", "spare")]
    areas = [figure(f"bottles.area_{key}", text) for key in ("bottle", "spare")]
    assert parts[0] / parts[1] == pytest.approx(areas[0] / areas[1])
    assert sum(parts) == pytest.approx(60_000 * BTU_H / HEAT)


@pytest.mark.parametrize("changeover", ["all open", "automatic", "by hand"])
@pytest.mark.parametrize("burned", ["1 BTU/h", "900,000 BTU/h"])
def test_loads_past_all_sense_come_to_an_end(changeover: str, burned: str) -> None:
    text = changed(
        ("[items.plate] gas_input", f'gas_input = "{burned}"'),
        ("[items.kettle] gas_input", 'gas_input = "0 BTU/h"'),
        ("[gas] changeover", f'changeover = "{changeover}"'),
    )
    held = figure("starves_after", text)
    assert held > 0
    assert figure("cold.left_connected", text) == pytest.approx(
        1 - held * figure("connected_load", text) / (40 * POUND * HEAT), abs=1e-6
    )


@pytest.mark.parametrize("change", [
    ("[items.plate] gas_input", 'gas_input = "0 BTU/h"'), ("[items.bottle] charge", 'charge = "0 lb"'),
    ("[items.bottle] width", 'width = "0 in"'),
    ("[items.bottle.gas] water_capacity", 'water_capacity = "0 lb"'),
    ("[gas.sections.main] length", 'length = "0 ft"'), ("[day] closes", 'closes = "10:00"'),
    ("[gas.regulator] outlet", 'outlet = "0 psi"'), ("[gas] ambient", 'ambient = "-60 °F"'),
    ("[pitch] altitude", 'altitude = "20000 ft"'), ("[gas.sections.plate] carries", 'carries = "0 BTU/h"'),
])  # fmt: skip
def test_numbers_past_all_sense_are_told_and_never_a_traceback(change: tuple[str, str]) -> None:
    text = changed(change)
    if change[1].startswith("gas_input"):
        text = changed(("[items.kettle] gas_input", 'gas_input = "0 BTU/h"'), text=text)
    findings(text)
    assert all(figure == figure for figure in sheets(text).figures.values())


def test_less_and_more_heat_from_the_air_stand_beside() -> None:
    text = changed(("[gas] ambient", 'ambient = "20 °F"'))
    low, usual, high = (figure(f"cold.holds_{word}", text) for word in ("low", "connected", "high"))
    assert low < usual < high


def test_a_cabinet_brings_less_heat_and_a_film_that_is_given_wins() -> None:
    assert figure("bottles.film_usual") == pytest.approx(2.0 * 5.678263341)
    boxed = CART + '\n[gas.cabinet]\nvent_top = "20 in2"\nvent_bottom = "20 in2"\n'
    assert figure("bottles.film_usual", boxed) == pytest.approx(1.5 * 5.678263341)
    given = changed(("[gas] ambient", 'ambient = "60 °F"\nfilm = "3 BTU/(h·ft2·°F)"'))
    assert figure("film", given) == pytest.approx(3 * 5.678263341)
    assert figure("vaporisation", given) == pytest.approx(1.5 * figure("vaporisation"))


def test_cold_air_is_that_of_the_pitch_where_no_other_is_given() -> None:
    """With 70 °F the pitch is warmer than the 60 °F of the gas section."""
    text = changed(("[gas] ambient", ""))
    assert figure("starves_after", text) > figure("starves_after")
    assert sheets(text).figures["pitch.low"] == pytest.approx(fahrenheit(70))
    assert figure("warm.gives", text) == figure("warm.gives")


def test_high_above_the_sea_the_liquid_may_get_colder() -> None:
    """The regulator works on the pressure over that of the air, which is less."""
    high = changed(("[pitch] altitude", 'altitude = "6000 ft"'))
    assert figure("bottles.coldest", high) < figure("bottles.coldest")
    assert figure("bottles.coldest") == pytest.approx(fahrenheit(-21.34), abs=0.02)


def test_a_regulator_that_needs_more_pressure_starves_sooner() -> None:
    keen = changed(("[gas.regulator] inlet_least", 'inlet_least = "20 psi"'))
    assert figure("bottles.coldest", keen) == pytest.approx(fahrenheit(-5.1), abs=0.1)
    assert figure("starves_after", keen) < figure("starves_after")


def test_the_course_by_the_hour() -> None:
    """At 30,000 BTU/h a bottle gives 1.392 lb an hour."""
    text = changed(("[gas] ambient", 'ambient = "40 °F"'))
    hours = [f"cold.hour_{hour}" for hour in range(1, 7)]
    liquids = [figure(f"{hour}.liquid", text) for hour in hours]
    assert liquids == sorted(liquids, reverse=True)
    assert figure("cold.hour_2.left", text) / POUND == pytest.approx(20 - 2 * 30_000 / 21548, abs=1e-3)
    gauge = figure("cold.hour_3.pressure", text)
    assert gauge == pytest.approx(float(eq.saturation_pressure(liquids[2])) - 101325.0, abs=1.0)


def test_the_heat_account_brackets_the_time() -> None:
    """Stored heat alone does for less than the bottle holds; with the air's best help for more."""
    text = changed(("[gas] ambient", 'ambient = "20 °F"'))
    alone, takes, brings = (
        figure(f"cold.{id}", text)
        for id in ("alone_connected_bottle", "account.takes", "account.brings")
    )  # fmt: skip
    stored = figure("cold.account.stored", text)
    assert figure("cold.account.stored_lasts", text) < alone
    assert brings < takes
    assert stored / takes < alone < 1.5 * stored / (takes - brings)


def test_the_published_table_stands_beside_as_an_upper_limit() -> None:
    text = changed(("[gas] ambient", 'ambient = "40 °F"'))
    assert figure("cold.table_draw", text) == pytest.approx(214_000 * BTU_H, rel=0.02)
    assert figure("cold.table", text) > figure("cold.gives", text)


# ---- pipe


def test_a_pipe_at_the_limit_of_the_printed_table() -> None:
    """The table of the code says 122,000 BTU/h for 1/2 in at 50 ft."""
    text = changed(
        ("[items.plate] gas_input", 'gas_input = "102,000 BTU/h"'),
        ("[gas.sections.main] length", 'length = "40 ft"'),
    )
    assert figure("pipe.longest", text) == pytest.approx(50 * FOOT)
    assert figure("pipe.main.load", text) == pytest.approx(122_000 * BTU_H)
    assert figure("pipe.main.spare", text) == pytest.approx(0.004, abs=0.001)


def test_the_longest_run_counts_for_every_section() -> None:
    assert figure("pipe.longest") == pytest.approx(20 * FOOT)
    # The table: 200,000 BTU/h for 1/2 in pipe and 64,000 for 3/8 in copper at 20 ft.
    assert figure("pipe.main.capacity") == pytest.approx(200_000 * BTU_H, rel=0.01)
    assert figure("pipe.kettle.capacity") == pytest.approx(64_000 * BTU_H, rel=0.015)


def test_pressure_is_lost_section_by_section() -> None:
    main, hose, copper = (figure(f"pipe.{key}.drop") for key in ("main", "plate", "kettle"))
    assert hose == pytest.approx(0.5 * WATER * 0.5 ** (0.381 / 0.206))
    assert figure("at.plate.drop") == pytest.approx(main + hose)
    assert figure("at.kettle.drop") == pytest.approx(main + copper)
    assert figure("pressure.kettle") == pytest.approx(11 * WATER - main - copper)
    assert figure("worst_drop") == pytest.approx(main + hose)
    assert figure("at.plate.pressure_spare") == pytest.approx(WATER - main - hose)


def test_a_size_left_out_is_the_smallest_that_is_wide_enough() -> None:
    text = changed(("[gas.sections.kettle] size", ""), ("[gas.sections.main] size", ""))
    sizes = {key: sheets(text).figures[f"gas.pipe.{key}.bore"] for key in ("main", "kettle")}
    assert "3/8 in schedule 40, chosen" in sizes["main"].name
    assert "1/4 in copper, chosen" in sizes["kettle"].name
    assert float(sizes["main"]) == pytest.approx(0.493 * INCH)
    assert figure("pipe.main.needed", text) <= float(sizes["main"])


def test_fittings_count_as_bores_of_pipe() -> None:
    text = changed(("[gas.sections.main] size", 'size = "1/2 in"\nelbows = 3\ntees = 1'))
    assert figure("pipe.main.equivalent", text) == pytest.approx(10 * FOOT + 0.622 * INCH * 150)
    assert figure("pipe.main.drop", text) > figure("pipe.main.drop")


def test_a_section_that_serves_nothing_is_let_be() -> None:
    text = CART + '\n[gas.sections.later]\nafter = "main"\nlength = "40 ft"\nsize = "1/2 in"\n'
    assert "gas.pipe.later.drop" not in sheets(text).figures
    assert figure("pipe.main.load", text) == figure("pipe.main.load")


# ---- appliances, bottles, leaks


def test_orifices_and_altitude() -> None:
    """Two burners of 20,000 BTU/h at 10 in of water; at 5,000 ft a fifth less, or 12 %."""
    bore = figure("at.plate.orifice")
    flow = eq.orifice_flow(bore=bore, pressure=10 * WATER, gravity=1.5, factor=0.9)
    assert eq.capacity_of(flow, 2488 * 37258.94580783128) == pytest.approx(20_000 * BTU_H)
    assert figure("at.plate.drill") <= bore
    high = changed(("[pitch] altitude", 'altitude = "5000 ft"'))
    assert figure("at.plate.derated", high) == pytest.approx(32_000 * BTU_H)
    assert figure("at.plate.derated_above", high) == pytest.approx(35_200 * BTU_H)
    assert figure("at.plate.orifice", high) == pytest.approx(bore * 0.8**0.5)
    assert "gas.at.plate.derated" not in sheets().figures


def test_restraint_by_both_rules() -> None:
    full = 38 * POUND
    assert figure("storage.restraint_needed") == pytest.approx(4 * full)
    assert figure("storage.restraint.vertical_breaking") == pytest.approx(3 * 4 * full)
    assert figure("storage.restraint.horizontal_breaking") == pytest.approx(2 * 4 * full)


def test_how_little_gas_is_too_much() -> None:
    """The room is 116 by 72 by 82 in: 396.3 ft3, 2.15 % of it at 8.66 ft3 a pound."""
    room = 116 * 72 * 82 / 12**3
    assert figure("explosive.mass") / POUND == pytest.approx(room * 0.0215 / 8.66)


def test_leak_tests_have_pressure_time_and_steps() -> None:
    assert figure("leak_test.leak_check_pressure") == pytest.approx(9 * WATER)
    assert figure("leak_test.leak_check_time") == 180
    assert figure("leak_test.pressure_test_pressure") == pytest.approx(3 * 6894.757293168)
    assert figure("leak_test.leak_check_drop") == 0
    section = next(one for one in sheet().sections if one.id == "gas.leak_test")
    assert [note.split(".")[0] for note in section.notes] == [str(n) for n in range(1, 10)]
    volume = sum(
        3.141592653589793 / 4 * (bore * INCH) ** 2 * 10 * FOOT for bore in (0.622, 0.402)
    )  # fmt: skip
    assert figure("leak_test.seen") == pytest.approx(volume * 0.1 * WATER / 101325 / 180)


def test_cautions_are_those_of_what_the_cart_has() -> None:
    notes = " ".join(sheet().notes)
    assert "Smell of gas" in notes
    assert "Hoses go through no wall" in notes
    assert "red flag" not in notes
    assert "cabinet is tight" not in notes
