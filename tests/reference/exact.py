# SPDX-License-Identifier: GPL-3.0-or-later
"""Random cases of the plain calculators, answered from their formulas in exact rational arithmetic.

Prints the vectors that stand in tests/vectors/NAME.json under the source "exact rational arithmetic by Python 3.11
fractions": python3 exact.py NAME. Ran with Python 3.11.2; a square root or a power is to 40 digits by its decimal.
Everything but the calculators' keys was written from the formulas, without a look at the program.
"""
import decimal
import json
import math
import random
import sys
from fractions import Fraction

decimal.getcontext().prec = 40
N_CASES = 5
SOURCE = "exact rational arithmetic by Python 3.11 fractions (tests/reference/exact.py)"


def exact(value):
    """The decimal that stands in the input, not the double nearest to it."""
    return Fraction(str(value))


def to_decimal(value):
    return decimal.Decimal(value.numerator) / decimal.Decimal(value.denominator)


def box(r):
    given = {
        "print_width_mm": r.randint(1000, 4000) / 10,
        "print_height_mm": r.randint(1000, 5000) / 10,
        "margin_mm": r.randint(0, 300) / 10,
        "max_width_mm": r.randint(400, 450),
        "max_height_mm": r.randint(500, 550),
    }
    sides = {}
    for side in ("width", "height"):
        wanted = exact(given[f"print_{side}_mm"]) + 2 * exact(given["margin_mm"])
        sides[side] = wanted, min(wanted, exact(given[f"max_{side}_mm"]))
    return given, {
        "box_width_mm": sides["width"][1],
        "box_height_mm": sides["height"][1],
        "box_area_m2": sides["width"][1] * sides["height"][1] / 10**6,
        "clipped": any(wanted != got for wanted, got in sides.values()),
    }


def laydown(r):
    given = {
        "box_area_m2": r.randint(200, 2000) / 10**4,
        "laydown_g_per_m2": r.randint(500, 3000) / 10,
        "overspray_fraction": r.randint(0, 400) / 1000,
    }
    wet = exact(given["box_area_m2"]) * exact(given["laydown_g_per_m2"])
    return given, {"wet_g": wet, "used_g": wet / (1 - exact(given["overspray_fraction"]))}


def batch(r):
    given = {
        "lines": [
            {"count": r.randint(1, 400), "used_g": r.randint(50, 400) / 10} for _ in range(r.randint(1, 4))
        ],
        "spoilage_fraction": r.randint(0, 20) / 100,
        "line_loss_g": r.randint(0, 200),
        "reserve_fraction": r.randint(0, 30) / 100,
        "round_up_to_g": r.choice([0, 0.1, 25, 100]),
    }
    counts = [
        line["count"] + math.ceil(line["count"] * exact(given["spoilage_fraction"]))
        for line in given["lines"]
    ]
    needed = sum(count * exact(line["used_g"]) for count, line in zip(counts, given["lines"]))
    total = (needed + given["line_loss_g"]) * (1 + exact(given["reserve_fraction"]))
    step = exact(given["round_up_to_g"])
    return given, {
        "garments": sum(counts),
        "needed_g": needed,
        "total_g": math.ceil(total / step) * step if step else total,
    }


def dilution(r):
    return {
        "parts_concentrate": r.randint(1, 3),
        "parts_water": r.randint(0, 80) / 10,
        "basis": r.choice(["mass", "volume"]),
        "concentrate_density_g_per_ml": r.randint(980, 1150) / 1000,
        "water_temperature_c": r.randint(0, 400) / 10,
    }


def water(celsius):
    """Tanaka et al. 2001, in g/ml."""
    t = exact(celsius)
    return (
        exact(999.974950)
        - exact(999.974950)
        * (t - exact(3.983035)) ** 2
        * (t + exact(301.797))
        / (exact(522528.9) * (t + exact(69.34881)))
    ) / 1000


def share(given):
    concentrate, diluent = exact(given["parts_concentrate"]), exact(given["parts_water"])
    if given["basis"] == "volume":
        concentrate *= exact(given["concentrate_density_g_per_ml"])
        diluent *= water(given["water_temperature_c"])
    return concentrate / (concentrate + diluent)


def mix(r):
    given = {
        "total_g": r.randint(1000, 50000) / 10,
        **dilution(r),
        "concentrate_solids_fraction": r.randint(50, 300) / 1000,
    }
    total, part = exact(given["total_g"]), share(given)
    concentrate_ml = total * part / exact(given["concentrate_density_g_per_ml"])
    water_ml = total * (1 - part) / water(given["water_temperature_c"])
    return given, {
        "concentrate_g": total * part,
        "concentrate_ml": concentrate_ml,
        "water_g": total * (1 - part),
        "water_ml": water_ml,
        "total_ml": concentrate_ml + water_ml,
        "density_g_per_ml": total / (concentrate_ml + water_ml),
        "solids_fraction": exact(given["concentrate_solids_fraction"]) * part,
        "concentrate_mass_fraction": part,
    }


def stretch(r):
    given = {
        "concentrate_ml_available": r.randint(500, 50000) / 10,
        "total_g": r.randint(500, 10000),
        **dilution(r),
        **laydown(r)[0],
    }
    used = (
        exact(given["box_area_m2"])
        * exact(given["laydown_g_per_m2"])
        / (1 - exact(given["overspray_fraction"]))
    )
    made = (
        exact(given["concentrate_ml_available"]) * exact(given["concentrate_density_g_per_ml"]) / share(given)
    )
    return given, {
        "garments": math.floor(min(made, given["total_g"]) / used),
        "limited_by": "total" if given["total_g"] < made else "concentrate",
    }


def weigh_in(r):
    given = {
        "tare_g": r.randint(1000, 3000) / 10,
        "box_area_m2": r.randint(200, 2000) / 10**4,
        "target_g_per_m2": r.randint(50, 300),
        "tolerance_fraction": r.choice([0.05, 0.1, 0.15]),
        "scale_resolution_g": r.choice([0.01, 0.1, 0.5, 1]),
    }
    aim = exact(given["box_area_m2"]) * given["target_g_per_m2"]
    given["wet_g"] = round(given["tare_g"] + float(aim) * r.uniform(0.8, 1.2), 1)
    applied = exact(given["wet_g"]) - exact(given["tare_g"])
    off, tolerance = applied / aim - 1, exact(given["tolerance_fraction"])
    return given, {
        "applied_g": applied,
        "laydown_g_per_m2": applied / exact(given["box_area_m2"]),
        "deviation_fraction": off,
        "verdict": "ok" if abs(off) <= tolerance else "low" if off < 0 else "high",
        "resolution_fraction": exact(given["scale_resolution_g"]) / aim,
        "scale_too_coarse": exact(given["scale_resolution_g"]) / 2 / aim > tolerance / 4,
    }


def signals(values, mean, individual, moving):
    for i, value in enumerate(values):
        if abs(value - mean) > individual:
            yield {"index": i, "rule": "beyond-limit"}
        if i > 0 and abs(value - values[i - 1]) > moving:
            yield {"index": i, "rule": "range-beyond-limit"}
        if i > 6 and abs(sum((v > mean) - (v < mean) for v in values[i - 7 : i + 1])) == 8:
            yield {"index": i, "rule": "run-of-8"}
        last = values[max(i - 5, 0) : i + 1]
        if i > 4 and abs(sum((b > a) - (b < a) for a, b in zip(last, last[1:]))) == 5:
            yield {"index": i, "rule": "trend-of-6"}


def control_chart(r):
    level, readings = r.randint(80, 160), []
    for _ in range(20):
        level += r.choice([-1, 0, 0.5, 1])
        readings.append(round(level + r.gauss(0, 1), 1))
    given = {"values": readings, "baseline_count": r.randint(8, 14)}
    values = [exact(v) for v in readings]
    base = values[: given["baseline_count"]]
    mean = sum(base) / len(base)
    moving = sum(abs(b - a) for a, b in zip(base, base[1:])) / (len(base) - 1)
    individual, limit = exact(2.660) * moving, exact(3.267) * moving
    return given, {
        "mean": mean,
        "moving_range_mean": moving,
        "upper_limit": mean + individual,
        "lower_limit": mean - individual,
        "moving_range_limit": limit,
        "signals": list(signals(values, mean, individual, limit)),
    }


def nozzle_balance(r):
    given = {
        "masses_g": [r.randint(80, 120) / 10 for _ in range(r.randint(3, 9))],
        "limit_fraction": r.randint(5, 15) / 100,
    }
    masses = [exact(m) for m in given["masses_g"]]
    mean = sum(masses) / len(masses)
    off = [m / mean - 1 for m in masses]
    worst = max(range(len(masses)), key=lambda i: abs(off[i]))
    variance = sum((m - mean) ** 2 for m in masses) / (len(masses) - 1)
    return given, {
        "mean_g": mean,
        "cv": Fraction(to_decimal(variance).sqrt()) / mean,
        "worst_index": worst,
        "worst_fraction": off[worst],
        "outside": [i for i, o in enumerate(off) if abs(o) > exact(given["limit_fraction"])],
    }


def press_map(r):
    rows, columns = r.randint(2, 4), r.randint(2, 4)
    settings = sorted(r.sample(range(100, 201, 5), r.randint(2, 5)))
    given = {
        "rows": rows,
        "columns": columns,
        "readings_c": [r.randint(1500, 1700) / 10 for _ in range(rows * columns)],
        "set_c": r.randint(150, 170),
        "points": [{"set_c": s, "surface_c": round(s * 0.97 - 4 + r.gauss(0, 1), 1)} for s in settings],
        "wanted_c": r.randint(130, 170),
    }
    readings = [exact(v) for v in given["readings_c"]]
    coldest = readings.index(min(readings))
    x, y = [exact(p["set_c"]) for p in given["points"]], [exact(p["surface_c"]) for p in given["points"]]
    x_mean, y_mean = sum(x) / len(x), sum(y) / len(y)
    slope = sum((a - x_mean) * (b - y_mean) for a, b in zip(x, y)) / sum((a - x_mean) ** 2 for a in x)
    return given, {
        "mean_c": sum(readings) / len(readings),
        "minimum_c": min(readings),
        "maximum_c": max(readings),
        "spread_c": max(readings) - min(readings),
        "cold_row": coldest // columns,
        "cold_column": coldest % columns,
        "offset_c": sum(readings) / len(readings) - given["set_c"],
        "setting_for_c": x_mean + (given["wanted_c"] - y_mean) / slope,
    }


def tunnel(r):
    given = {
        "heated_length_mm": r.randint(1000, 5000),
        "belt_mm_per_s": r.randint(50, 400) / 10,
        "dwell_s": r.randint(300, 2000) / 10,
    }
    del given[r.choice(list(given))]
    length, belt, dwell = (
        exact(given[k]) if k in given else None for k in ("heated_length_mm", "belt_mm_per_s", "dwell_s")
    )
    length = belt * dwell if length is None else length
    belt = length / dwell if belt is None else belt
    given["pitch_mm"] = r.randint(600, 1200)
    return given, {
        "heated_length_mm": length,
        "belt_mm_per_s": belt,
        "dwell_s": length / belt,
        "garments_per_hour": belt * 3600 / given["pitch_mm"],
    }


def time_from(level, earlier, later, reached):
    """Of one step, in which the temperature runs straight, the time at which it is @reached the level."""
    (t1, c1), (t2, c2) = earlier, later
    if c1 == c2:
        return (t2 - t1) * reached(c1, level)
    crossing = min(max((level - c1) / (c2 - c1), 0), 1)
    return (t2 - t1) * (1 - crossing if c2 > c1 else crossing)


def cure_profile(r):
    celsius, log = r.randint(600, 1200) / 10, []
    for i in range(r.randint(6, 12)):
        log.append({"t_s": 5 * i, "c": round(celsius, 1)})
        celsius = min(celsius + r.uniform(-10, 25), 185)
    given = {
        "samples": log,
        "reference_c": r.randint(140, 165),
        "required_s": r.randint(10, 60),
        "z_c": r.randint(10, 30),
        "credit_above_c": r.randint(100, 140),
        "limit_c": r.randint(160, 175),
    }
    points = [(exact(s["t_s"]), exact(s["c"])) for s in log]
    steps = list(zip(points, points[1:]))

    def rate(c):
        if c < given["credit_above_c"]:
            return Fraction(0)
        return Fraction(decimal.Decimal(10) ** to_decimal((c - given["reference_c"]) / given["z_c"]))

    worth = sum((t2 - t1) * (rate(c1) + rate(c2)) / 2 for (t1, c1), (t2, c2) in steps)
    return given, {
        "peak_c": max(c for _, c in points),
        "seconds_above_reference": sum(
            time_from(given["reference_c"], a, b, lambda c, l: c >= l) for a, b in steps
        ),
        "equivalent_s": worth,
        "fraction_of_required": worth / given["required_s"],
        "cured": worth >= given["required_s"],
        "over_limit_s": sum(time_from(given["limit_c"], a, b, lambda c, l: c > l) for a, b in steps),
    }


def cost(r):
    given = {
        "count": r.randint(1, 300),
        "blank_price": r.randint(200, 900) / 100,
        "pretreat_g": r.randint(100, 400) / 10,
        "pretreat_price_per_kg": r.randint(50, 200) / 10,
        "inks": [
            {
                "area_m2": r.randint(10, 150) / 1000,
                "g_per_m2": r.randint(20, 250),
                "price_per_kg": r.randint(60, 160),
            }
            for _ in range(r.randint(1, 3))
        ],
        "sheets_per_garment": r.randint(0, 2),
        "sheet_price": r.randint(10, 50) / 100,
        "sheet_uses": r.randint(1, 12),
        "labour_s": r.randint(60, 400),
        "labour_price_per_h": r.randint(150, 400) / 10,
        "energy_kj": r.randint(200, 1500),
        "energy_price_per_kwh": r.randint(15, 45) / 100,
        "spoilage_fraction": r.randint(0, 10) / 100,
    }
    of = {key: exact(value) for key, value in given.items() if key != "inks"}
    parts = {
        "blank": of["blank_price"],
        "pretreat": of["pretreat_g"] / 1000 * of["pretreat_price_per_kg"],
        "ink": sum(
            exact(i["area_m2"]) * exact(i["g_per_m2"]) / 1000 * exact(i["price_per_kg"])
            for i in given["inks"]
        ),
        "sheet": of["sheets_per_garment"] * of["sheet_price"] / of["sheet_uses"],
        "labour": of["labour_s"] / 3600 * of["labour_price_per_h"],
        "energy": of["energy_kj"] / 3600 * of["energy_price_per_kwh"],
    }
    spoiled = math.ceil(of["count"] * of["spoilage_fraction"])
    parts["spoilage"] = sum(parts.values()) * spoiled / of["count"]
    parts["total"] = sum(parts.values())
    return given, {
        **{f"{part}_per_garment": value for part, value in parts.items()},
        **{f"{part}_per_job": value * of["count"] for part, value in parts.items()},
        "spoiled_garments": spoiled,
    }


def line_rate(r):
    given = {
        "stages": [
            {"name": name, "seconds_per_garment": r.randint(100, 2000) / 10, "stations": r.randint(1, 4)}
            for name in ("pretreat", "dry", "print", "cure")
        ],
        "count": r.randint(1, 500),
    }
    cycles = [exact(s["seconds_per_garment"]) / s["stations"] for s in given["stages"]]
    slowest = max(range(4), key=lambda i: cycles[i])
    through = sum(exact(s["seconds_per_garment"]) for s in given["stages"])
    return given, {
        "bottleneck": given["stages"][slowest]["name"],
        "garments_per_hour": 3600 / cycles[slowest],
        "job_s": through + (given["count"] - 1) * cycles[slowest],
    }


def plain(value):
    """The nearest double of an exact value."""
    if isinstance(value, Fraction):
        return int(value) if value.denominator == 1 and abs(value) < 2**53 else float(value)
    return value


def main():
    name = sys.argv[1]
    r = random.Random(f"exact {name}")
    for i in range(N_CASES):
        given, out = globals()[name.replace("-", "_")](r)
        out = {key: plain(value) for key, value in out.items()}
        print(
            f'  {{\n    "why": "a random case, {i + 1} of {N_CASES}",\n    "source": {json.dumps(SOURCE)},\n'
            f'    "in": {json.dumps(given)},\n    "out": {json.dumps(out)},\n    "tolerance": 1e-12\n  }},'
        )


if __name__ == "__main__":
    main()
