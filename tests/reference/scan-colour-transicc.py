#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes scan-colour-transicc.csv: scan-colour-transicc.py >scan-colour-transicc.csv

The samples are ImageMagick's, the profile is cut out of the file here, each colour is converted by Little CMS's own tool
transicc (floating point, relative colorimetric, to its D50 Lab), and mean and deviation are Python's.
Ran with ImageMagick 6.9.11-60 Q16 (Debian 8:6.9.11.60+dfsg-1.6+deb12u15), transicc 5.1 of Little CMS 2.14 (Debian
liblcms2-utils 2.14-2+deb12u1) and Python 3.
"""

import pathlib
import statistics
import struct
import subprocess
import tempfile
import zlib

CONVERT = "/usr/bin/convert-im6.q16"
PICTURES = pathlib.Path(__file__).resolve().parent.parent / "image" / "pictures"
RECTANGLES = [
    ("rgb-8", 0, 0, 29, 19), ("rgb-8", 10, 3, 7, 8), ("rgb-8-adam7", 10, 3, 7, 8), ("rgb-8", 28, 18, 1, 1),
    ("rgb-16", 0, 6, 29, 4), ("rgb-16-adam7", 1, 6, 28, 4), ("grey-1", 0, 0, 29, 19), ("grey-2", 3, 2, 9, 9),
    ("grey-4-adam7", 3, 2, 9, 9), ("grey-8", 5, 5, 20, 1), ("grey-16", 5, 5, 1, 14), ("palette-2", 0, 0, 29, 19),
    ("palette-8-adam7", 8, 8, 8, 8), ("rgb-8-wide-profile", 0, 0, 29, 19), ("rgb-8-wide-profile", 10, 3, 7, 8),
    ("rgba-16-wide-profile", 12, 6, 5, 6), ("rgb-8-table-profile", 0, 0, 29, 19), ("rgb-8-table-profile", 10, 3, 7, 8),
    ("rgb-16-table-profile-adam7", 10, 3, 7, 8), ("grey-8-grey-profile", 0, 0, 29, 19),
    ("rgb-8-cut-profile", 10, 3, 7, 8), ("rgb-8-grey-profile", 10, 3, 7, 8),
]
# What libpng refuses, and with it this program: they go as sRGB.
BAD_PROFILES = {"rgb-8-cut-profile", "rgb-8-grey-profile"}


def read_profile(name):
    data, at = (PICTURES / f"{name}.png").read_bytes(), 8
    while at < len(data):
        length, kind = struct.unpack(">I4s", data[at:at + 8])
        if kind == b"iCCP" and name not in BAD_PROFILES:
            return zlib.decompress(data[at + 8:at + 8 + length].split(b"\0", 1)[1][1:])
        at += 12 + length
    return None


def read_samples(name, x, y, width, height):
    region = f"{width}x{height}+{x}+{y}"
    raw = subprocess.run([CONVERT, PICTURES / f"{name}.png", "-crop", region, "+repage", "-depth", "16", "-endian", "MSB",
                          "rgb:-"], capture_output=True, check=True).stdout
    samples = [value / 257 for value in struct.unpack(f">{len(raw) // 2}H", raw)]
    return [samples[i:i + 3] for i in range(0, len(samples), 3)]


def convert(colours, profile, grey):
    with tempfile.NamedTemporaryFile(suffix=".icc") as file:
        file.write(profile or b"")
        file.flush()
        text = "".join(" ".join(f"{value:.10f}" for value in colour[:1 if grey else 3]) + "\n" for colour in colours)
        lines = subprocess.run(["transicc", "-n", "-t1", "-c0", "-i", file.name if profile else "*sRGB", "-o", "*Lab4"],
                               input=text, capture_output=True, text=True, check=True).stdout.split("\n")
    return [tuple(map(float, line.split()[:3])) for line in lines[:len(colours)]]


def main():
    print("# Mean and standard deviation of CIELAB (D50) over rectangles of the pictures of tests/image/pictures, each")
    print("# pixel by transicc of Little CMS 2.14, four decimals, by scan-colour-transicc.py.")
    print("name,x,y,width,height,l,a,b,l_sd,a_sd,b_sd")
    for name, *rectangle in RECTANGLES:
        profile = read_profile(name)
        labs = convert(read_samples(name, *rectangle), profile, profile and profile[16:20] == b"GRAY")
        columns = list(zip(*labs))
        means = [statistics.fmean(column) for column in columns]
        deviations = [f"{statistics.stdev(column):.6f}" if len(column) > 1 else "" for column in columns]
        print(",".join([name, *map(str, rectangle), *(f"{mean:.6f}" for mean in means), *deviations]))


main()
