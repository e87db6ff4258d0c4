"""The moisture that wood comes to in air of a temperature and a relative humidity."""

from __future__ import annotations

from jambs.job.models.outside import Air


def equilibrium_moisture(air: Air) -> float:
    """Return the moisture content of wood at rest in air, in percent of its dry weight.

    Wood Handbook (FPL-GTR-190, 2010), equation (4-5), with temperature in Fahrenheit: the same equation that its table
    4-2 was computed from. The factor k2 is 1.09 + 0.0284 T - 0.0000904 T²; a widely copied text has it wrong.
    """
    t, h = air.temperature, air.humidity / 100
    w = 330 + 0.452 * t + 0.00415 * t**2
    k = 0.791 + 0.000463 * t - 0.000000844 * t**2
    k1 = 6.34 + 0.000775 * t - 0.0000935 * t**2
    k2 = 1.09 + 0.0284 * t - 0.0000904 * t**2
    kh = k * h
    layers = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (kh / (1 - kh) + layers)
