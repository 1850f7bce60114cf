"""The clear day hour by hour: the sun on the panels, the heat in them, what reaches the battery."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.build.solar import Solar
from curbwright.equations import cold
from curbwright.equations import solar as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.solar.array import Array

HOUR = 3600.0


@dataclass(frozen=True)
class Sky:
    """Where and when the panels stand, and how they lie: the arguments of the clear sky."""

    place: dict[str, Figure]
    face: dict[str, Figure]

    @property
    def all(self) -> dict[str, Figure]:
        """Every argument that does not change over the day."""
        return {**self.place, **self.face}


def sky(build: Build, solar: Solar, sheet: Worksheet) -> Sky:
    """Write the place, the date and how the panels lie."""
    place = {
        field: sheet.given(build.pitch[written])
        for field, written in (
            ("latitude", "latitude"), ("longitude", "longitude"), ("altitude", "altitude"), ("day", "date"),
        )
    }  # fmt: skip
    standard = sheet.work(
        "standard", "standard time ahead of universal time", eq.standard_zone, shown="h",
        longitude=place["longitude"],
    )  # fmt: skip
    saving = sheet.choice(
        "saving", "clock ahead of standard time", HOUR * build.pitch.daylight_saving,
        "pitch.daylight_saving", str(build.pitch.daylight_saving).lower(), "s",
    )  # fmt: skip
    zone = sheet.total("zone", "clock ahead of universal time", [standard, saving], shown="h")
    if solar.turbidity is not None:
        turbidity = sheet.given(solar["turbidity"])
    else:
        turbidity = sheet.work(
            "sky_turbidity", "turbidity of the clear sky there then", eq.turbidity_at,
            latitude=place["latitude"], longitude=place["longitude"], day=place["day"],
        )  # fmt: skip
    face = {"tilt": sheet.given(solar["tilt"]), "azimuth": sheet.given(solar["azimuth"])}
    return Sky({**place, "zone": zone, "turbidity": turbidity}, face)


def clear_day(build: Build, solar: Solar, above: Sky, array: Array, sheet: Worksheet) -> Figure:
    """Write every sunny hour of a clear day, and return the energy that reaches the battery."""
    hours = _Hours(build, solar, above, array, sheet)
    rows = {f"{at:02d}:00": {"power": hours.reaches(at), "time": hours.hour} for at in hours.sunny()}
    return sheet.schedule("energy", "energy to the battery on a clear day", eq.energy_of, rows)


class _Hours:
    """The hours of a clear day by the clock, and what stays the same in all of them."""

    def __init__(self, build: Build, solar: Solar, above: Sky, array: Array, sheet: Worksheet) -> None:
        self.solar, self.above, self.array, self.sheet = solar, above, array, sheet
        self.ahead = int(build.pitch.daylight_saving)
        self.hour = sheet.tabled("hour", "an hour", HOUR, "s", source="convention")
        self.high = sheet.given(build.pitch["high"])
        self.range = sheet.work(
            "range", "daily range", cold.daily_range, high=self.high, low=sheet.given(build.pitch["low"])
        )
        library = "photovoltaic-library"
        self.rated = sheet.tabled(
            "rated_cell", "cell temperature of the rating", 298.15, "K", source=library, row="25 °C"
        )
        self.standard = sheet.tabled(
            "rated_sun", "sun of the rating", 1000.0, "W/m**2", source=library, shown="W/m2"
        )
        row = data.table("solar/mounting").row(solar.mounted)
        self.still = sheet.tabled(
            "still", "heat that the panels lose in still air",
            float(units.read(row["still"], "heat_transfer")), "W/m**2/K", source=row["source"],
            row=f"{solar.mounted}, {row['how']}", shown="W/(m2*K)",
        )  # fmt: skip
        self.loss, self.wind = sheet.given(solar["loss_per_degree"]), sheet.given(solar["wind"])

    def sunny(self) -> list[int]:
        """The hours in which the sun reaches the panels at all."""
        alike = {word: float(one) for word, one in self.above.all.items()}
        return [
            at for at in range(24)
            if eq.panel_sun(**alike, begins=at * HOUR, ends=(at + 1) * HOUR) > 0
        ]  # fmt: skip

    def reaches(self, at: int) -> Figure:
        """Write one hour down to what reaches the battery."""
        sheet, key, name = self.sheet, f"{at:02d}", f"{at:02d}:00"
        begins, ends = (
            sheet.tabled(
                f"{id}_{key}", f"hour {name}: {says}", seconds, "s", source="convention", shown="clock"
            )
            for id, says, seconds in (("begins", "from", at * HOUR), ("ends", "until", (at + 1) * HOUR))
        )
        sun = sheet.work(
            f"sun_{key}", f"hour {name}: sun on the panels", eq.panel_sun, shown="W/m2", **self.above.all,
            begins=begins, ends=ends,
        )  # fmt: skip
        cell = sheet.work(
            f"cell_{key}", f"hour {name}: cells", eq.cell_temperature, air=self._air(at), sun=sun,
            still=self.still, wind=self.wind,
        )  # fmt: skip
        warmer = sheet.work(
            f"warmer_{key}", f"hour {name}: cells above their rating", eq.warmer_than_rated, cell=cell,
            rated=self.rated,
        )  # fmt: skip
        power = sheet.work(
            f"power_{key}", f"hour {name}: power of the panels", eq.panel_power, rated=self.array.rated,
            sun=sun, rated_sun=self.standard, loss=self.loss, warmer=warmer,
        )  # fmt: skip
        return sheet.work(
            f"battery_{key}", f"hour {name}: power to the battery", eq.to_battery, power=power,
            sunlit=self._sunlit(key, name, begins), loss=self.array.losses, efficiency=self.array.efficiency,
            most=self.array.most,
        )  # fmt: skip

    def _air(self, at: int) -> Figure:
        """The air in an hour of the clock; the table's hours are standard time and end at their number."""
        row = data.table("cold/design_day").rows[(at - self.ahead) % 24]
        fraction = self.sheet.tabled(
            f"fraction_{at:02d}", f"hour {at:02d}:00: fraction of the daily range", float(row["fraction"]),
            "1", source=row["source"], row=f"hour {row['hour']}, standard time",
        )  # fmt: skip
        return self.sheet.work(
            f"air_{at:02d}", f"hour {at:02d}:00: air", cold.hour_temperature, high=self.high,
            daily_range=self.range, fraction=fraction,
        )  # fmt: skip

    def _sunlit(self, key: str, name: str, begins: Figure) -> Figure:
        """The share of an hour's sun that nothing takes."""
        sheet, shades = self.sheet, []
        for at, (since, until, _) in enumerate(self.solar.shade or ()):
            if since < float(begins) + HOUR and until > float(begins):
                given = {
                    word: sheet.given(self.solar.cell("shade", at, column, f"shade {at + 1} {says}"))
                    for column, (word, says) in enumerate(
                        (("begins", "from"), ("ends", "until"), ("share", "takes"))
                    )
                }
                shades.append(
                    sheet.work(
                        f"shade_{key}_{at + 1}", f"hour {name}: shade {at + 1}", eq.shade_share, shown="%",
                        hour=begins, length=self.hour, **given,
                    )
                )  # fmt: skip
        shade = sheet.total(f"shade_{key}", f"hour {name}: shade", shades, unit="1", shown="%")
        return sheet.work(
            f"sunlit_{key}", f"hour {name}: share of the sun that is left", eq.in_the_sun, shown="%",
            shade=shade,
        )  # fmt: skip
