#!/usr/bin/env python3
"""Makes the files beside it: what a bench brings, in the forms that loggers write, by formulas whose numbers the
tests expect. All of it is invented; noise comes from seeded generators, so the files come out the same again.

usage: make_data.py      overwrites the files in its folder
"""
import math
import os
import random

FOLDER = os.path.dirname(os.path.abspath(__file__))

# The heater: at rest at START, then DUTY from STEP_AT on. Gain, time constant and dead time of a first-order model:
# T = START + GAIN * DUTY * (1 - exp(-(t - STEP_AT - THETA) / TAU)).
START, GAIN, TAU, THETA, DUTY, STEP_AT = 24.0, 480.0, 120.0, 8.0, 0.4, 30.0
HEATER_ROWS, HEATER_INTERVAL = 700, 1.0
TARGET, OVERSHOOT = 210.0, 1.2

# The bed, mm: z = 0.0006 x - 0.0004 y + 2e-6 (x - 120)^2 on a net of 5 x 5 lines from 20 to 220.
BED_LINES = [20.0, 70.0, 120.0, 170.0, 220.0]

# The axis: a sensor on a structure of two modes (own frequency Hz, damping ratio, share of the motion) under a sweep
# from 5 to 75 Hz of 16 s, whose acceleration is 60 mm/s2 per Hz; white noise of 40 mm/s2.
MODES = [(31.0, 0.06, 1.0), (58.0, 0.05, 0.35)]
SWEEP_FROM, SWEEP_TO, SWEEP_SECONDS, PER_HERTZ, NOISE = 5.0, 75.0, 16.0, 60.0, 40.0
RATE, FINER = 320, 16
GRAVITY = 9806.65
GAP_FROM, GAP_TO = 4600, 4680  # rows that are missing: 0.25 s


def write(name, lines, mark=""):
    with open(os.path.join(FOLDER, name), "w", encoding="utf-8", newline="\n") as file:
        file.write(mark + "\n".join(lines) + "\n")


def heater_step():
    lines = ["clock,temperature (C),output (%)"]
    for i in range(HEATER_ROWS):
        time = i * HEATER_INTERVAL
        since = time - STEP_AT - THETA
        temperature = START + (GAIN * DUTY * (1 - math.exp(-since / TAU)) if since > 0 else 0)
        clock = 9 * 3600 + 30 * 60 + time
        lines.append(f"{int(clock // 3600):02d}:{int(clock % 3600 // 60):02d}:{clock % 60:04.1f},"
                     f"{temperature:.2f},{100 * DUTY if time >= STEP_AT else 0:g}")
    write("hot-end-step.csv", lines)


def heater_hold():
    """From 30 to TARGET: passes it by OVERSHOOT at 60 s and comes back; T - TARGET = OVERSHOOT (s/60) exp(1 - s/60)
    with s = t - 60 from 60 s on, a straight rise before."""
    lines = ["seconds,temp,target"]
    for i in range(600):
        time = i * 0.5
        since = time - 60
        temperature = (30 + (TARGET - 30) * time / 60 if since < 0
                       else TARGET + OVERSHOOT * since / 60 * math.exp(1 - since / 60))
        lines.append(f"{time:.1f},{temperature:.2f},{TARGET:g}")
    write("hot-end-hold.csv", lines)


def height(x, y):
    return 0.0006 * x - 0.0004 * y + 2e-6 * (x - 120) ** 2


def bed():
    first, last = BED_LINES[0], BED_LINES[-1]
    grid = [f"# x {first:g}..{last:g}, y {last:g}..{first:g} (back row first)"]
    for y in reversed(BED_LINES):
        grid.append("  ".join(f"{height(x, y):+.3f}" for x in BED_LINES))
    write("bed-grid.txt", grid)
    points = ["x mm;y mm;height mm"]
    for y in BED_LINES:
        points += [f"{x:.2f};{y:.2f};{height(x, y):.3f}".replace(".", ",") for x in BED_LINES]
    write("bed-points.csv", points)


def melt_rate():
    """0.98 of what is asked for up to 9 mm3/s, then 0.03 less per mm3/s; 600 mm3 of 1.24 mg/mm3 each."""
    lines = ["flow mm3/s,mass g,commanded volume mm3"]
    for flow in range(3, 16):
        delivered = 0.98 - 0.03 * max(0, flow - 9)
        lines += [f"{flow:.1f},{delivered * 600 * 1.24e-3 + nudge:.3f},600" for nudge in (-0.001, 0, 0.001)]
    write("melt-rate.csv", lines)


def swept():
    """The acceleration of the sensor: u - sum of share q'' with q'' + 2 zeta w q' + w^2 q = u, each mode stepped
    exactly for an input constant from step to step, FINER steps a sample."""
    step = 1 / (RATE * FINER)
    modes = []
    for frequency, damping, share in MODES:
        omega, root = 2 * math.pi * frequency, math.sqrt(1 - damping ** 2)
        decay, angle = math.exp(-damping * omega * step), omega * root * step
        modes.append({
            "omega": omega, "damping": damping, "share": share, "place": 0.0, "velocity": 0.0,
            "c": decay * (math.cos(angle) + damping / root * math.sin(angle)),
            "s": decay * math.sin(angle) / (omega * root),
            "d": decay * (math.cos(angle) - damping / root * math.sin(angle))})
    samples = []
    for i in range(int(RATE * SWEEP_SECONDS) * FINER):
        time = i * step
        frequency = SWEEP_FROM + (SWEEP_TO - SWEEP_FROM) * time / SWEEP_SECONDS
        phase = 2 * math.pi * (SWEEP_FROM + 0.5 * (SWEEP_TO - SWEEP_FROM) * time / SWEEP_SECONDS) * time
        given = PER_HERTZ * frequency * math.sin(phase)
        output = given
        for m in modes:
            omega = m["omega"]
            output -= m["share"] * (given - 2 * m["damping"] * omega * m["velocity"] - omega ** 2 * m["place"])
            place = m["place"] - given / omega ** 2
            m["place"] = m["c"] * place + m["s"] * m["velocity"] + given / omega ** 2
            m["velocity"] = m["d"] * m["velocity"] - omega ** 2 * m["s"] * place
        if i % FINER == 0:
            samples.append(output)
    return samples


def noisy(signal, seed):
    """Rows of three axes, mm/s2: the signal in the first, gravity in the third."""
    noise = random.Random(seed)
    return [[value + noise.gauss(0, NOISE), noise.gauss(0, NOISE), GRAVITY + noise.gauss(0, NOISE)]
            for value in signal]


def sweeps():
    signal = swept()
    rows = noisy(signal, 1)
    write("sweep-x.csv", ["time_s,ax_mm_s2,ay_mm_s2,az_mm_s2"] + [
        f"{i / RATE:.6f},{x:.0f},{y:.0f},{z:.0f}" for i, (x, y, z) in enumerate(rows)])
    rows = noisy(signal, 2)  # the other axis, in g and ms with decimal commas, as a spreadsheet of this place writes
    write("sweep-y-decimal-comma.csv", ["Zeit;ax;ay;az", "[ms];[g];[g];[g]"] + [
        f"{5000 + 1000 * i / RATE:.3f};{y / GRAVITY:.4f};{x / GRAVITY:.4f};{z / GRAVITY:.4f}".replace(".", ",")
        for i, (x, y, z) in enumerate(rows)], mark="\ufeff")
    rows = noisy(signal, 3)
    write("sweep-x-gap.txt", ["# captured at the front left", "# t[us]\tx[mg]\ty[mg]\tz[mg]"] + [
        "\t".join([str(71000000 + i * 1000000 // RATE)] + [f"{1000 * v / GRAVITY:.0f}" for v in row])
        for i, row in enumerate(rows) if not GAP_FROM <= i < GAP_TO])


def faulty():
    head = "time_s,ax,ay,az"
    write("faulty-backwards.csv", [head] + [f"{(i if i < 20 else i - 10) / 1000:.3f},{i},0,9806" for i in range(40)])
    write("faulty-not-a-number.csv", [head] + [f"{i / 1000:.3f},{'nan' if i == 12 else i},0,9806" for i in range(30)])
    write("faulty-ragged.csv", [head, "0,1,2,3", "0.001,1,2", "0.002,1,2,3,4"])
    write("faulty-words.csv", [head, "0.0,1,2,3", "0.1,one,2,3"])
    with open(os.path.join(FOLDER, "faulty-empty.csv"), "wb"):
        pass
    with open(os.path.join(FOLDER, "faulty-binary.csv"), "wb") as file:
        file.write(random.Random(4).randbytes(600))


if __name__ == "__main__":
    for make in (heater_step, heater_hold, bed, melt_rate, sweeps, faulty):
        make()
