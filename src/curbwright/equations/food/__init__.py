"""Food safety: what heat kills, what grows meanwhile. The rules decide; these explain."""

from curbwright.equations.food.growth import (
    cardinal_rate,
    ecoli_lag,
    ecoli_rate,
    growth,
    growth_while_cooling,
    rate_at,
    rate_from_doubling,
    rate_observed,
    salmonella_chicken_rate,
    salmonella_meat_rate,
    tenfold_rate,
)
from curbwright.equations.food.kill import decimal_time, dwell_at, dwell_for_kill, kill, warming_slope
from curbwright.equations.food.steps import step_time, time_after

__all__ = [
    "cardinal_rate",
    "decimal_time",
    "dwell_at",
    "dwell_for_kill",
    "ecoli_lag",
    "ecoli_rate",
    "growth",
    "growth_while_cooling",
    "kill",
    "rate_at",
    "rate_from_doubling",
    "rate_observed",
    "salmonella_chicken_rate",
    "salmonella_meat_rate",
    "step_time",
    "tenfold_rate",
    "time_after",
    "warming_slope",
]
