"""Weather files: two typical years that come with the library, one as EPW, and files that are no good."""

from __future__ import annotations

import csv
import shutil
from pathlib import Path

import pvlib
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from curbwright.build.file import load_text, read
from curbwright.errors import MissingInput
from curbwright.sheets.solar.weather import FIELD, Season, season
from tests.figures.rework import rework
from tests.sheets.battery.bank_cart import CART, figure, findings, verdict, worked
from tests.sheets.solar.test_solar import SUN

GREENSBORO = Path(pvlib.__file__).parent / "data" / "723170TYA.CSV"
SAND_POINT = Path(pvlib.__file__).parent / "data" / "703165TY.csv"
MID_JULY, MID_JANUARY = 197.0, 16.0
SOLAR = "\n[solar]\nweather_file = "


def cart(folder: Path, name: str) -> Path:
    path = folder / "cart.toml"
    path.write_text(f"{CART}{SOLAR}{name!r}\n", encoding="utf-8")
    return path


def found(folder: Path, name: str, day: float, tilt: float = 0.0) -> Season:
    return season(read(cart(folder, name)), day, tilt, 3.141593)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("carts")
    shutil.copy(GREENSBORO, made / "town.csv")
    shutil.copy(SAND_POINT, made / "coast.csv")
    return made


@pytest.mark.parametrize(
    ("name", "day", "kilowatt_hours"),
    [("town.csv", MID_JULY, 6.08), ("town.csv", MID_JANUARY, 2.41), ("coast.csv", MID_JULY, 5.00),
     ("coast.csv", MID_JANUARY, 0.58)],
)  # fmt: skip
def test_the_months_mean_of_level_ground(folder: Path, name: str, day: float, kilowatt_hours: float) -> None:
    """Monthly means of the same files, worked elsewhere: fifteen days either side of the 16th.

    Beam and sky on level panels add up to the level sun to within half a percent.
    """
    mean = found(folder, name, day).mean * 24 / 1000
    assert mean == pytest.approx(kilowatt_hours, rel=0.005, abs=0.006)


def test_a_dull_day_is_duller_than_the_mean_and_a_bright_one_brighter(folder: Path) -> None:
    one = found(folder, "town.csv", MID_JULY)
    assert one.hours == 8760
    assert 0 < one.dull < one.mean < one.bright
    assert "TMY3" in one.says
    assert "36.1° N" in one.says


def test_a_window_over_new_year_takes_days_of_both_ends(folder: Path) -> None:
    over, inside = found(folder, "town.csv", 1.0), found(folder, "town.csv", MID_JANUARY)
    assert over.mean == pytest.approx(inside.mean, rel=0.3)


def test_a_tilt_to_the_south_gains_in_january(folder: Path) -> None:
    assert (
        found(folder, "town.csv", MID_JANUARY, 0.7).mean > 1.3 * found(folder, "town.csv", MID_JANUARY).mean
    )


def as_epw(table: Path, place: Path) -> None:
    """Write a TMY3 file as EPW, hour ending like the other, field by field of the format's own list."""
    with table.open(encoding="utf-8", newline="") as lines:
        site = lines.readline().strip().split(",")
        rows = list(csv.DictReader(lines))
    _, name, state, zone, latitude, longitude, height = site
    written = [
        f"LOCATION,{name.strip(chr(34))},{state},USA,TMY3,723170,{latitude},{longitude},{zone},{height}",
        "DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0", "GROUND TEMPERATURES,0",
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0", "COMMENTS 1,made for a test", "COMMENTS 2,",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
    ]  # fmt: skip
    for row in rows:
        month, day, year = row["Date (MM/DD/YYYY)"].split("/")
        hour = int(row["Time (HH:MM)"].split(":")[0])
        fields = ["0"] * 35
        fields[:6] = [year, str(int(month)), str(int(day)), str(hour), "60", "?"]
        fields[6], fields[9] = row["Dry-bulb (C)"], "101325"
        fields[13:16] = row["GHI (W/m^2)"], row["DNI (W/m^2)"], row["DHI (W/m^2)"]
        written.append(",".join(fields))
    place.write_text("\n".join(written) + "\n", encoding="utf-8")


def test_the_same_year_as_epw_is_the_same_year(folder: Path) -> None:
    """Their hours end at the same moment, though the reader stamps one at its end, one at its beginning."""
    as_epw(GREENSBORO, folder / "town.epw")
    for day in (MID_JULY, MID_JANUARY):
        one, other = found(folder, "town.epw", day, 0.6), found(folder, "town.csv", day, 0.6)
        assert (one.mean, one.dull, one.bright) == pytest.approx(
            (other.mean, other.dull, other.bright), rel=1e-6
        )


def test_the_sheet_takes_the_season_in_proportion(folder: Path) -> None:
    path = folder / "whole.toml"
    text = SUN.replace("[solar]\n", '[solar]\nweather_file = "town.csv"\n')
    path.write_text(CART + text, encoding="utf-8")
    sheets = worked(path)
    clear, mean = (float(sheets.figures[f"solar.weather.{id}"]) for id in ("clear", "sun_mean"))
    share = float(sheets.figures["solar.energy_per_day"]) / float(sheets.figures["solar.clear.energy"])
    assert share == pytest.approx(mean / clear)
    assert verdict(path, "solar.weather_hours") == "pass"
    for system in ("us", "si"):
        assert [rework(sheet, system=system).faults for sheet in sheets.sheets] == [[], [], []]


# ---- files that are no good


def refused(folder: Path, name: str) -> str:
    with pytest.raises(MissingInput) as caught:
        found(folder, name, MID_JULY)
    assert caught.value.path == FIELD
    return caught.value.says


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("nothing.epw", "no file nothing.epw beside the build file"), ("", "must be named from the folder"),
        ("/etc/hosts", "must be named from the folder"),
        ("C:\\weather\\town.epw", "must be named from the folder"),
        ("../town.epw", "in the folder of the build file or below it"), ("below/../../x", "or below it"),
        (".", "must be named from the folder"),
    ],
)  # fmt: skip
def test_a_file_is_looked_for_beside_the_build_file_alone(folder: Path, name: str, says: str) -> None:
    assert says in refused(folder, name)


def test_a_file_below_the_folder_is_found(folder: Path) -> None:
    (folder / "weather").mkdir(exist_ok=True)
    shutil.copy(GREENSBORO, folder / "weather" / "town.csv")
    assert found(folder, "weather/town.csv", MID_JULY).hours == 8760
    assert found(folder, "weather\\town.csv", MID_JULY).hours == 8760


def test_a_build_read_from_text_has_no_folder() -> None:
    with pytest.raises(MissingInput, match="read from text alone"):
        season(load_text(f"{CART}{SOLAR}'town.epw'\n"), MID_JULY, 0.0, 0.0)


LINES = GREENSBORO.read_text(encoding="utf-8").splitlines()
HEAD = LINES[1].split(",")


def altered(column: str, value: str, rows: int = 24) -> str:
    at = HEAD.index(column)
    lines = [line.split(",") for line in LINES]
    for line in lines[4000 : 4000 + rows]:
        line[at] = value
    return "\n".join(",".join(line) for line in lines)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "cannot be read"), ("LOCATION,x", "cannot be read"), ("hello\nworld\n", "cannot be read"),
        ("\x00\x01\x02" * 500, "cannot be read"), ("\n".join(LINES[:1]), "cannot be read"),
        ("\n".join(LINES[1:]), "cannot be read"), (altered("GHI (W/m^2)", "9999"), "has a ghi"),
        (altered("GHI (W/m^2)", "-9900"), "has a ghi"), (altered("DNI (W/m^2)", ""), "has a dni"),
        (altered("DHI (W/m^2)", "sunny"), "cannot be read"),
        (altered("Time (HH:MM)", "noon"), "cannot be read"),
        ("\n".join(["1,x,y,-5.0,999,-79.9,270", *LINES[1:]]), "has a latitude"),
        ("\n".join(LINES[:200]), "too few days"),
    ],
    ids=range(13),
)  # fmt: skip
def test_what_is_no_typical_year_is_told_and_not_thrown(tmp_path: Path, text: str, says: str) -> None:
    (tmp_path / "bad.csv").write_text(text, encoding="utf-8")
    assert says in refused(tmp_path, "bad.csv")


def test_a_bad_file_leaves_the_panels_untold_and_names_the_field(tmp_path: Path) -> None:
    path = tmp_path / "cart.toml"
    (tmp_path / "bad.csv").write_text("nothing of the kind", encoding="utf-8")
    path.write_text(CART + SUN.replace("[solar]\n", '[solar]\nweather_file = "bad.csv"\n'), encoding="utf-8")
    untold = findings(path)["solar.weather_hours"]
    assert (untold.verdict, untold.missing) == ("cannot tell", (FIELD,))
    assert "cannot be read as a typical year" in untold.reason
    assert "solar.energy_per_day" not in worked(path).figures
    assert "solar.clear.energy" in worked(path).figures


def test_a_year_cut_short_is_told(tmp_path: Path) -> None:
    (tmp_path / "short.csv").write_text("\n".join(LINES[:6000]), encoding="utf-8")
    path = tmp_path / "cart.toml"
    path.write_text(
        CART + SUN.replace("[solar]\n", '[solar]\nweather_file = "short.csv"\n'), encoding="utf-8"
    )
    assert verdict(path, "solar.weather_hours") == "fail"


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    junk=st.binary(max_size=400), at=st.integers(0, 3000),
    head=st.sampled_from([b"", b"LOCATION,", LINES[0].encode() + b"\n", "\n".join(LINES[:30]).encode()]),
)  # fmt: skip
def test_no_file_brings_it_down(tmp_path: Path, junk: bytes, at: int, head: bytes) -> None:
    text = head + junk
    (tmp_path / "junk.csv").write_bytes(text[:at] + junk + text[at:])
    assert "the weather file" in refused(tmp_path, "junk.csv")


def test_without_a_file_nothing_is_asked_of_one() -> None:
    assert verdict(SUN, "solar.weather_hours") == "not applicable"
    assert figure(SUN, "solar.energy_per_day") > 0
