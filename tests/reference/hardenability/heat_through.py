"""Minutes until the middle of a round or a plate is within 10 K of a furnace at 850 C.

EN 1993-1-2 properties of carbon steel, emissivity 0.7, 10 W/m2K, 7850 kg/m3, from 20 C; the method of
lines over 40 shells with SciPy's stiff integrator. Prints what crates/steel/tests/furnace.rs compares with.
"""

import numpy as np
from scipy.integrate import solve_ivp

FURNACE, EMISSIVITY, SHELLS = 850.0, 0.7, 40


def specific_heat(t):
    peak = np.where(
        t < 735,
        666 + 13002 / (738 - np.minimum(t, 735)),
        545 + 17820 / (np.maximum(t, 735) - 731),
    )
    cold = 425 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    return np.where(t < 600, cold, np.where(t < 900, peak, 650))


def conductivity(t):
    return np.where(t < 800, 54 - 0.0333 * t, 27.3)


def flux(skin):
    radiation = (FURNACE + 273.15) ** 4 - (skin + 273.15) ** 4
    return 10 * (FURNACE - skin) + EMISSIVITY * 5.670374e-8 * radiation


def minutes(size_mm, growth):
    half = size_mm / 2000
    faces = np.linspace(0, half, SHELLS + 1)
    areas = faces**growth
    volumes = np.diff(faces ** (growth + 1)) / (growth + 1)
    dx = half / SHELLS

    def rate(_, t):
        inner = conductivity((t[1:] + t[:-1]) / 2) * np.diff(t) / dx
        skin = t[-1]
        for _ in range(4):
            skin = t[-1] + flux(skin) * dx / 2 / conductivity(skin)
        flow = np.concatenate([[0], areas[1:-1] * inner, [areas[-1] * flux(skin)]])
        return np.diff(flow) / volumes / 7850 / specific_heat(t)

    def hot(_, t):
        return t[0] - (FURNACE - 10)

    hot.terminal = True
    made = solve_ivp(
        rate, [0, 1e5], np.full(SHELLS, 20.0), method="BDF", events=hot,
        rtol=1e-6, atol=1e-4, max_step=size_mm / 5,
    )
    return made.t[-1] / 60


for size in (6, 12, 25, 50, 75):
    print("round", size, round(minutes(size, 1), 2))
print("plate", 25, round(minutes(25, 0), 2))
