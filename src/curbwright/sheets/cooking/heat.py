"""The heat of each appliance: heating up, standing hot, water and oil."""

from __future__ import annotations

from curbwright.equations import cooking as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cooking.things import ENERGY, HEAT, Appliance, Constants, input_of, usual


def plate(one: Appliance, constants: Constants, sheet: Worksheet) -> None:
    """Write a plate's heating up, what its top loses, its idling."""
    part = one.cooking
    area = plate_area(one, sheet)
    thickness = sheet.given(part["plate_thickness"])
    steel = sheet.work(
        "steel", "steel of the plate", eq.plate_mass, area=area, thickness=thickness,
        density=constants["steel_density"],
    )  # fmt: skip
    mass = sheet.work(
        "heated", "steel that heats up", eq.heated_mass, plate=steel, sides=sheet.given(part["sides"])
    )
    capacity = sheet.work(
        "capacity", "heat it takes per degree", eq.heat_capacity, mass=mass,
        specific_heat=constants["steel_heat"],
    )  # fmt: skip
    input = input_of(one, sheet)
    heat = sheet.work(
        "heat", "heat that reaches the steel", eq.heat_to_plate, shown=HEAT, input=input,
        share=sheet.given(part["to_plate"]),
    )  # fmt: skip
    hot, start = (
        usual(one, "set_temperature", "set", "temperature", sheet),
        sheet.given(part["start_temperature"]),
    )
    film, emissivity = sheet.given(part["film"]), sheet.given(part["emissivity"])
    loss = sheet.work(
        "loss", "heat its top loses, hot and bare", eq.plate_loss, shown=HEAT, area=area, film=film,
        emissivity=emissivity, plate=hot, air=start,
    )  # fmt: skip
    spare = sheet.work(
        "heat_spare", f"{one.name}: heat left over when hot", eq.plate_heat, shown=HEAT, heat=heat, loss=loss
    )
    sheet.work(
        "through", "how much hotter its underside is while it heats up", eq.through_difference, heat=heat,
        area=area, thickness=thickness, conductivity=constants["steel_conduction"],
    )  # fmt: skip
    sheet.work(
        "soaking", "time in which heat gets through it", eq.soaking_time, thickness=thickness,
        conductivity=constants["steel_conduction"], density=constants["steel_density"],
        specific_heat=constants["steel_heat"],
    )  # fmt: skip
    sheet.work(
        "idle", f"{one.name}: burned hot and empty", eq.idle_input, shown=HEAT, area=area,
        rate=sheet.given(part["idle_rate"]),
    )  # fmt: skip
    if float(spare) <= 0:
        sheet.note("With every burner on it never gets that hot.")
        return
    time = sheet.work(
        "heat_up", f"{one.name}: time to heat up", eq.heat_up_time, capacity=capacity, heat=heat, area=area,
        film=film, emissivity=emissivity, air=start, start=start, end=hot,
    )  # fmt: skip
    sheet.work("heat_up_fuel", "burned to heat it up", eq.fuel_burned, shown=ENERGY, input=input, time=time)


def plate_area(one: Appliance, sheet: Worksheet) -> Figure:
    """Write the area of a plate; raises MissingInput for a size not given."""
    found = sheet.figures().get(f"{sheet.id}.area")
    if found is not None:
        return found
    return sheet.work(
        "area", "area of the plate", eq.area, width=sheet.given(one.cooking["plate_width"]),
        depth=sheet.given(one.cooking["plate_depth"]), shown="ft2|m2",
    )  # fmt: skip


def pot(one: Appliance, constants: Constants, sheet: Worksheet) -> None:
    """Write the heating up of a pot, a bath or a fryer, and the water it loses."""
    part, oil = one.cooking, one.method == "fryer"
    word = "oil" if oil else "water"
    input = input_of(one, sheet)
    mass = sheet.work(
        "liquid_mass", f"{word} in it", eq.water_mass, volume=sheet.given(part["liquid"]),
        density=constants[f"{word}_density"],
    )  # fmt: skip
    capacity = sheet.work(
        "capacity", "heat it takes per degree", eq.heat_capacity, mass=mass,
        specific_heat=constants[f"{word}_heat"],
    )  # fmt: skip
    efficiency = usual(one, "efficiency", "efficiency", "share", sheet)
    hot = usual(one, "set_temperature", "set", "temperature", sheet)
    time = sheet.work(
        "heat_up", f"{one.name}: time to heat up", eq.heating_time, capacity=capacity,
        start=sheet.given(part["start_temperature"]), end=hot, input=input, efficiency=efficiency,
    )  # fmt: skip
    sheet.work("heat_up_fuel", "burned to heat it up", eq.fuel_burned, shown=ENERGY, input=input, time=time)
    if one.method == "pot":
        sheet.work(
            "boiled_away", "water boiled away with the burner full on", eq.boiled_away, input=input,
            efficiency=efficiency, latent=constants["latent"],
        )  # fmt: skip
    if one.method == "bath" and part.open_area is not None:
        _open_water(one, hot, sheet)


def _open_water(one: Appliance, hot: Figure, sheet: Worksheet) -> None:
    """Write the water a bath loses to the air, which has to be carried."""
    part = one.cooking
    open_ = sheet.work(
        "vapour", "heat its open water loses as vapour", eq.latent_heat, shown=HEAT,
        area=sheet.given(part["open_area"]), flux=sheet.given(part["latent_flux"]),
    )  # fmt: skip
    heat = sheet.work(
        "vapour_lidded", "of that, past pans and lids", eq.under_lid, shown=HEAT, heat=open_,
        lidded=sheet.given(part["lidded"]),
    )  # fmt: skip
    latent = sheet.work(
        "vapour_heat", "heat of evaporation", eq.vapour_heat, temperature=hot, shown="BTU/lb|kJ/kg"
    )
    sheet.work(
        "water_lost", f"{one.name}: water that evaporates", eq.open_water_loss, heat=heat, latent=latent
    )
