"""What theory says of a search.

Koopman, *Search and Screening*, 1946 (random search); Gage, *Randomized search strategies with imperfect sensors*, 1993 (the
exhaustive line and the inverse cube law between the two). ``factor`` is swept area over lawn area.
"""

from __future__ import annotations

from functools import partial

from . import _asked, _tussock
from ._errors import SimulateError

#: Beyond it the series of the Gini coefficient runs out of what a float can hold.
_MOST_VISITS = 300.0


def _law(name: str, argument: str, value: float, high: float = float("inf")) -> float:
    return _tussock.law(name, [_asked.number(SimulateError, argument, value, 0.0, high)])[0]


@_asked.held(SimulateError, cut_width_m=_asked.some, speed_mps=_asked.some, driving_s=_asked.some, lawn_m2=partial(_asked.number, low=1e-6))
def coverage_factor(cut_width_m: float, speed_mps: float, driving_s: float, lawn_m2: float) -> float:
    """Swept area over lawn area: w v t / A."""
    return cut_width_m * speed_mps * driving_s / lawn_m2


def random_search_fraction(factor: float) -> float:
    """1 - exp(-factor).

    >>> round(random_search_fraction(1.0), 6)
    0.632121
    """
    return _law("random_search_fraction", "factor", factor)


def random_search_factor(visited_fraction: float) -> float:
    """The factor at which random search reaches a fraction: -ln(1 - fraction)."""
    return _law("random_search_factor", "visited_fraction", visited_fraction, 1.0)


def exhaustive_fraction(factor: float) -> float:
    """min(1, factor)."""
    return _law("exhaustive_fraction", "factor", factor)


def inverse_cube_fraction(factor: float) -> float:
    """The inverse cube law, between the two."""
    return _law("inverse_cube_fraction", "factor", factor)


def gini_of_poisson(mean_visits: float) -> float:
    """Gini coefficient of a Poisson law: what "random, but fair" shows.

    >>> round(gini_of_poisson(1.0), 6)
    0.523778
    """
    return _law("gini_of_poisson", "mean_visits", mean_visits, _MOST_VISITS)
