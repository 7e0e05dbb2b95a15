"""What theory says of a search.

Koopman, *Search and Screening*, 1946 (random search); Gage, *Randomized search strategies with imperfect sensors*, 1993 (the
exhaustive line and the inverse cube law between the two). ``factor`` is swept area over lawn area.
"""

from __future__ import annotations

from . import _tussock


def coverage_factor(cut_width_m: float, speed_mps: float, driving_s: float, lawn_m2: float) -> float:
    """Swept area over lawn area: w v t / A."""
    return cut_width_m * speed_mps * driving_s / lawn_m2


def random_search_fraction(factor: float) -> float:
    """1 - exp(-factor).

    >>> round(random_search_fraction(1.0), 6)
    0.632121
    """
    return _tussock.law("random_search_fraction", [factor])[0]


def random_search_factor(visited_fraction: float) -> float:
    """The factor at which random search reaches a fraction: -ln(1 - fraction)."""
    return _tussock.law("random_search_factor", [visited_fraction])[0]


def exhaustive_fraction(factor: float) -> float:
    """min(1, factor)."""
    return _tussock.law("exhaustive_fraction", [factor])[0]


def inverse_cube_fraction(factor: float) -> float:
    """The inverse cube law, between the two."""
    return _tussock.law("inverse_cube_fraction", [factor])[0]


def gini_of_poisson(mean_visits: float) -> float:
    """Gini coefficient of a Poisson law: what "random, but fair" shows.

    >>> round(gini_of_poisson(1.0), 6)
    0.523778
    """
    return _tussock.law("gini_of_poisson", [mean_visits])[0]
