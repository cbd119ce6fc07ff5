# SPDX-License-Identifier: GPL-3.0-or-later
# Computes the columns of iso105-a05-examples.csv after the two colours, and those of iso105-a04-examples.csv after the
# two differences, and writes both files again: python3 iso105-examples.py
# Ran with Python 3.11.2 on files made by another implementation: it changed nothing but GSc_unclipped below 1, which
# had held the clipped value.
from math import atan2, degrees, exp, hypot, log, log2, radians, sin, sqrt

GRADES = ["5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1"]
A05_LIMITS = [0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60]
A04_LIMITS = [475, 425, 375, 325, 275, 225, 175, 125]


def to_lch(lab):
    lightness, a, b = lab
    return lightness, hypot(a, b), degrees(atan2(b, a)) % 360 if a or b else 0.0


def hue_between(h1, h2):
    if abs(h2 - h1) <= 180:
        return (h1 + h2) / 2
    return (h1 + h2) / 2 + (180 if h1 + h2 < 360 else -180)


def a05(original, tested):
    """ISO 105-A05: the difference ΔE_F from the original to the tested colour, all steps on the way, and the grade."""
    l1, c1, h1 = to_lch(original)
    l2, c2, h2 = to_lch(tested)
    dl, dc = l2 - l1, c2 - c1
    turn = (h2 - h1 + 180) % 360 - 180
    dh = 2 * sqrt(c1 * c2) * sin(radians(turn) / 2)
    c_mean, h_mean = (c1 + c2) / 2, hue_between(h1, h2)
    off = abs(h_mean - 280)
    x = ((off if off <= 180 else 360 - off) / 30) ** 2
    d = dc * c_mean * exp(-x) / 100
    dc_f = (dc - d) / (1 + (20 * c_mean / 1000) ** 2)
    dh_f = (dh - d) / (1 + (10 * c_mean / 1000) ** 2)
    de_f = sqrt(dl**2 + dc_f**2 + dh_f**2)
    rating = 5 - de_f / 1.7 if de_f <= 3.4 else 5 - log2(de_f / 0.85)
    grade = GRADES[sum(de_f >= limit for limit in A05_LIMITS)]
    de = sqrt(sum((t - o) ** 2 for o, t in zip(original, tested)))
    return [de, dl, dc, dh, c_mean, h_mean, x, d, dc_f, dh_f, de_f, rating, max(rating, 1.0)], grade


def a04(de, dl):
    """ISO 105-A04: ΔE_GS, the rating, the rating to two decimals, and the grade that is read from it."""
    de_gs = de - 0.4 * sqrt(max(de**2 - dl**2, 0.0))
    rating = 5.0 if de_gs == 0 else 6.1 - 1.45 * log(de_gs)
    if rating > 4:
        rating = 5 - 0.23 * de_gs
    grade = GRADES[sum(round(rating, 2) * 100 < limit - 0.5 for limit in A04_LIMITS)]
    return de_gs, rating, grade


def rewrite(name, compute):
    with open(name, encoding="utf-8") as file:
        lines = file.read().splitlines()
    first = next(i for i, line in enumerate(lines) if not line.startswith("#")) + 1
    lines[first:] = [",".join(compute(line.split(","))) for line in lines[first:]]
    with open(name, "w", encoding="utf-8") as file:
        file.write("\n".join(lines) + "\n")


def a05_row(cells):
    colours = [float(cell) for cell in cells[1:7]]
    numbers, grade = a05(colours[:3], colours[3:])
    return cells[:7] + [f"{number:.6f}" for number in numbers] + [grade]


def a04_row(cells):
    de_gs, rating, grade = a04(float(cells[0]), float(cells[1]))
    return cells[:2] + [f"{de_gs:.6f}", f"{rating:.6f}", f"{rating:.2f}", grade]


rewrite("iso105-a05-examples.csv", a05_row)
rewrite("iso105-a04-examples.csv", a04_row)
