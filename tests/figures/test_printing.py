import re

import pytest
from numpy import pi  # noqa: I001

from curbwright.equations import balance, gas
from curbwright.figures import Worksheet, card_of, equation
from curbwright.figures.printing import line, shown, words, working
from curbwright.quantities import Metres, Number, Seconds
from tests.figures.sample import entry, lever, sheet


@equation("test:shapes", uncited=True)
def shapes(width: Metres, depth: Metres, share: Number) -> Metres:
    """A form with everything that could print wrongly.

    >>> shapes(width=1.0, depth=1.0, share=1.0)
    -1.0
    """
    return -width / (depth * share) - (width - (depth - width)) * (1 - share) ** 2


@equation("test:pendulum", uncited=True)
def swing(length: Metres, ratio: Number) -> Seconds:
    """A form with pi and powers.

    >>> round(swing(length=1.0, ratio=1.0), 3)
    6.283
    """
    return 2 * pi * (length + length) ** 0.5 / (length + length) ** 0.5 * ratio**1.85


def test_words_keep_the_order_of_working():
    assert words(card_of(shapes)) == "−width / (depth × share) − (width − (depth − width)) × (1 − share)²"


def test_words_name_pi_and_roots():
    assert words(card_of(swing)) == "2 × π × √(length + length) / √(length + length) × ratio^(1.85)"


def test_words_of_the_trade():
    assert words(card_of(balance.axle_load)) == "gross × centre / axle"
    assert words(card_of(balance.right_wheels)) == "axle load / 2 + gross × across / track"
    assert words(card_of(balance.stability_factor)) == "track / (2 × height)"


def test_every_kind_of_line_ends_in_its_result():
    on, made = sheet()
    for figure in on.lines:
        text = "\n".join(line(figure))
        assert figure.name in text
        assert shown(figure) in text
    assert "sample.arm" in working(made["arm"])
    assert working(made["arm"]).index("sample.moment") < working(made["arm"]).index("sample.arm")


def test_a_worked_line_prints_words_then_numbers_then_the_result():
    _, made = sheet()
    first, numbers, result = line(made["moment"], "si")
    assert first == "moment of the stove = load × arm"
    assert re.fullmatch(r"  = \(30 kg\) × \(1\.5 m\)", numbers)
    assert result == "  = 45 kg*m   [test:lever]".replace("kg*m", result.split()[2])


def test_a_solved_line_puts_the_value_back():
    _, made = sheet()
    text = "\n".join(line(made["arm"], "si"))
    assert "for which load × arm − moment = 0" in text
    assert "put back: 0 ≈" in text


def test_a_governing_line_names_the_case():
    _, made = sheet()
    assert line(made["heavier"])[-1].endswith("(stove)")


def test_an_assumed_value_says_so_and_where_to_set_it():
    from curbwright.figures import Entry

    on = Worksheet("one", "One")
    figure = on.given(
        Entry(
            0.33,
            "axle height",
            "m",
            "trailer.axle.centre_height",
            "13 in",
            "practice",
            True,
            "trade-practice",
        )
    )
    assert "assumed" in line(figure)[0]
    assert "set trailer.axle.centre_height" in line(figure)[0]


def test_a_negative_input_stands_in_brackets():
    on = Worksheet("one", "One")
    load, arm = on.given(entry("a.load", 10.0)), on.given(entry("a.arm", -2.0, "m"))
    numbers = line(on.work("m", "moment", lever, load=load, arm=arm), "si")[1]
    assert re.search(r"\([-−]2 m\)", numbers)


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_schedule_prints_a_row_for_each_label(system):
    _, made = sheet()
    text = "\n".join(line(made["moments"], system))
    assert "stove" in text
    assert "sink" in text


@pytest.mark.parametrize("system", ["us", "si"])
def test_times_of_day_print_as_such_in_a_schedule(system):
    on, rows = Worksheet("one", "One"), {}
    for hour in (9, 10):
        start, end = (
            on.tabled(f"{word}_{hour}", word, at * 3600.0, "s", source="convention", shown="clock")
            for word, at in (("start", hour), ("end", hour + 0.5))
        )
        load = on.given(entry(f"a.load_{hour}", 100.0, "W"))
        rows[f"hour {hour}"] = {"load": load, "start": start, "end": end}
    text = "\n".join(line(on.schedule("energy", "energy", gas.energy_over, rows), system))
    assert "09:00" in text
    assert "10:30" in text
    assert "540" not in text
