#!/usr/bin/env python3
"""The resonance evaluation as a plain NumPy/SciPy script, to time beside the program: loadtxt, welch,
curve_fit of two modes, and a vectorised search over the six shapers without damping. Imports and the start
of Python do not count.

usage: resonance_script.py CAPTURE.csv
"""
import sys
import time

import numpy as np
from scipy.optimize import curve_fit
from scipy.signal import find_peaks, welch

RATE, FROM, TO, ALLOWANCE, LIMIT, DEVIATION = 3200.0, 5.0, 120.0, 0.05, 0.05, 0.1


def impulses():
    """Amplitudes and times in periods, undamped closed forms, V = 5 %."""
    v = 0.05
    x = np.cbrt(v**2 * (np.sqrt(1 - v**2) + 1))
    a2 = (3 * x**2 + 2 * x + 3 * v**2) / (16 * x)
    a3 = (1 + 3 * v + 2 * np.sqrt(2 * (v**2 + v))) / 16
    b3 = (1 - v) / 4
    return {
        "zv": ([0.5, 0.5], [0, 0.5]),
        "zvd": ([0.25, 0.5, 0.25], [0, 0.5, 1]),
        "zvdd": ([0.125, 0.375, 0.375, 0.125], [0, 0.5, 1, 1.5]),
        "ei": ([(1 + v) / 4, (1 - v) / 2, (1 + v) / 4], [0, 0.5, 1]),
        "ei_two_hump": ([a2, 0.5 - a2, 0.5 - a2, a2], [0, 0.5, 1, 1.5]),
        "ei_three_hump": ([a3, b3, 1 - 2 * (a3 + b3), b3, a3], [0, 0.5, 1, 1.5, 2]),
    }


def density(f, scale, floor, c1, f1, z1, c2, f2, z2):
    total = 1 + 0j
    for c, own, z in ((c1, f1, z1), (c2, f2, z2)):
        r = f / own
        total = total + c * r**2 / (1 - r**2 + 2j * z * r)
    return scale * np.abs(total) ** 2 + floor


def residual(amplitudes, times, designs, frequencies, zeta):
    """V for every design frequency (rows) and frequency (columns)."""
    w = 2 * np.pi * frequencies[None, :, None]
    t = np.asarray(times)[None, None, :] / designs[:, None, None]
    a = np.asarray(amplitudes)[None, None, :]
    wd = w * np.sqrt(1 - zeta**2)
    e = a * np.exp(zeta * w * t)
    v = np.hypot((e * np.cos(wd * t)).sum(2), (e * np.sin(wd * t)).sum(2))
    return np.exp(-zeta * w[:, :, 0] * t[:, :, -1]) * v


def main(path):
    start = time.perf_counter()
    data = np.loadtxt(path, delimiter=",", skiprows=1)
    length = int(2 ** round(np.log2(1.28 * RATE)))
    f, psd = welch(data[:, 1], RATE, "hann", length, int(0.75 * length), detrend="constant")
    for column in (2, 3):
        welch(data[:, column], RATE, "hann", length, int(0.75 * length), detrend="constant")
    floor = np.median(psd[f > 1.3 * TO])
    used = (f >= FROM + 1.3) & (f <= TO - 1.3)
    fu = f[used]
    divided = np.maximum(psd[used] - floor, 0) / fu**2
    peaks, found = find_peaks(divided, prominence=0)
    strong = peaks[np.argsort(found["prominences"])[::-1][:2]]
    f1, f2 = fu[strong]
    guess = [np.median(divided) / 2, 0, 1, f1, 0.05, 0.4, f2, 0.05]
    parameters, _ = curve_fit(density, fu, divided, guess, sigma=np.maximum(divided, divided.max() * 1e-6), maxfev=20000)
    modes = [(parameters[3], abs(parameters[4]), abs(parameters[2])), (parameters[6], abs(parameters[7]), abs(parameters[5]))]
    weights = np.array([c / own**2 for own, _, c in modes])
    lowest, highest = min(m[0] for m in modes), max(m[0] for m in modes)
    designs = np.arange(np.ceil(7 * lowest), np.floor(15 * highest) + 1) / 10
    best = None
    for name, (amplitudes, times) in impulses().items():
        worst = [residual(amplitudes, times, designs, own * np.linspace(1 - ALLOWANCE, 1 + ALLOWANCE, 41), z).max(1)
                 for own, z, _ in modes]
        left = np.sqrt(sum((w * v) ** 2 for w, v in zip(weights, worst)) / (weights**2).sum())
        good = np.flatnonzero(left <= LIMIT)
        at = good[-1] if good.size else int(np.argmin(left))
        t = np.asarray(times) / designs[at]
        a = np.asarray(amplitudes)
        limit = 2 * DEVIATION / (a * (t - (a * t).sum()) ** 2).sum()
        if left[at] <= LIMIT and (best is None or limit > best[2]):
            best = (name, designs[at], limit)
    print(f"script: {1000 * (time.perf_counter() - start):.0f} ms, modes {modes[0][0]:.2f} and {modes[1][0]:.2f} Hz, {best}")


if __name__ == "__main__":
    main(sys.argv[1])
