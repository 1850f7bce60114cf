"""What the build file says of what is sold: a portion, how it is cooked, the steps its food goes through."""

from __future__ import annotations

from typing import Annotated, Literal

from curbwright.build.cold import Food
from curbwright.build.cooking import Area
from curbwright.build.part import Count, Duration, Mass, Part, Reads, Share, Thickness, Volume, asks
from curbwright.units import Measure

Does = Literal[
    "receive", "cold hold", "prep", "cook", "hot hold", "serve", "cool", "reheat", "discard"
]  # fmt: skip
Sort = Literal["poultry", "stuffed", "ground meat", "meat", "fish", "eggs", "plants", "ready to eat"]
FoodTemperature = Annotated[Measure, Reads("temperature", least="-40 °F", most="250 °F")]


class Step(Part):
    """`[menu.NAME.steps.NAME]`: one step on the way of its food, in the order of the file."""

    does: Does = asks("what happens", required=True)
    temperature: FoodTemperature | None = asks(
        "temperature of the food: the warmest of a cold step, the coldest of a hot one"
    )
    time: Duration | None = asks("how long it lasts, at most")
    first: Duration | None = asks("of cooling: time from 135 to 70 °F")
    packaged: bool = asks("of reheating: cooked and packed by a licensed plant, opened here", default=False)

    def _label(self) -> str:
        menu, _, step = self.path.removeprefix("menu.").partition(".steps.")
        return f"{menu.replace('_', ' ')}, {step.replace('_', ' ')}"


class MenuItem(Part):
    """`[menu.NAME]`: something sold."""

    says: str | None = asks("what it is, as on the board")
    portions: Count | None = asks("portions sold on a full day")
    cooked_on: str | None = asks("item it is cooked on, as items.NAME")
    portion_mass: Mass | None = asks("food in a portion before it is cooked")
    food: Food = asks("what that food is most like", default="mixed")
    room: Area | None = asks("plate that a portion needs, with its gap", shown="in2|cm2")
    cook_time: Duration | None = asks("time it lies on the plate or in the pot")
    hands: Duration | None = asks(
        "time somebody's hands are on a portion, cooked and handed on", default="45 s", how="practice",
        note="30 s for one simple item with all prepared, 60 s for a complex one",
    )  # fmt: skip
    cooked_off: Share | None = asks(
        "share of its mass that cooks off as water", default="10 %", how="practice", note="3 to 35 % by food"
    )
    from_temperature: FoodTemperature | None = asks(
        "temperature it is laid on at", default="41 °F", how="practice"
    )
    thickness: Thickness | None = asks("its thickness, to work out when its middle is hot")
    cook_to: FoodTemperature | None = asks("temperature its middle is cooked to, by a probe")
    dwell: Duration | None = asks(
        "time it is kept at that temperature at least", default="0 s", how="convention"
    )
    sort: Sort | None = asks("what it is to the cooking rules")
    water: Volume | None = asks(
        "water that goes into one portion and out over the counter", default="0 fl oz", how="convention",
        shown="fl oz|mL",
    )  # fmt: skip
    drink: bool = asks("that water is drunk, so that some is run to waste to make it", default=False)
    prep_water: Volume | None = asks(
        "water that preparing one portion takes and drains", default="0.1 L", how="practice",
        shown="fl oz|mL", note="0.02 L for what is bought ready, 0.4 L for washed greens and boiled starch",
    )  # fmt: skip
    steps: dict[str, Step] = asks("the steps of its food", default={})

    def _label(self) -> str:
        return self.path.rpartition(".")[2].replace("_", " ")
