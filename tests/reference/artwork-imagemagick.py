#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes artwork-imagemagick.csv: artwork-imagemagick.py >artwork-imagemagick.csv

ImageMagick expands each picture of tests/image/pictures to 16-bit RGBA; the counts are taken of that, rounded to 8 bits.
Ran with ImageMagick 6.9.11-60 Q16 (Debian 8:6.9.11.60+dfsg-1.6+deb12u15) and Python 3.
"""

import pathlib
import struct
import subprocess

CONVERT = "/usr/bin/convert-im6.q16"
PICTURES = pathlib.Path(__file__).resolve().parent.parent / "image" / "pictures"
BLACK_AT, WHITE_AT = 24, 245
KEYS = ["width", "height", "empty", "opaque", "black", "white", "alpha", "black_alpha", "white_alpha",
        "left", "top", "right", "bottom"]


def run(*arguments):
    return subprocess.run([CONVERT, *arguments], capture_output=True, check=True).stdout


def pixels_of(path):
    width, height = map(int, run(str(path), "-format", "%w %h", "info:-").split())
    raw = run(str(path), "-alpha", "on", "-depth", "16", "-endian", "MSB", "rgba:-")
    samples = [(value + 128) // 257 for value in struct.unpack(f">{len(raw) // 2}H", raw)]
    return width, height, [samples[i:i + 4] for i in range(0, len(samples), 4)]


def counts(path):
    width, height, pixels = pixels_of(path)
    assert len(pixels) == width * height
    alphas = [pixel[3] for pixel in pixels]
    black = [p[3] for p in pixels if p[3] > 0 and max(p[:3]) <= BLACK_AT]
    white = [p[3] for p in pixels if p[3] > 0 and min(p[:3]) >= WHITE_AT]
    seen = [i for i, alpha in enumerate(alphas) if alpha > 0]
    columns, rows = [i % width for i in seen], [i // width for i in seen]
    box = [min(columns), min(rows), max(columns) + 1, max(rows) + 1] if seen else [0, 0, 0, 0]
    return [width, height, alphas.count(0), alphas.count(255), len(black), len(white), sum(alphas), sum(black),
            sum(white), *box]


def main():
    print("# Counts of the pictures of tests/image/pictures as ImageMagick 6.9.11-60 Q16 expands them, by")
    print(f"# artwork-imagemagick.py; black up to {BLACK_AT}, white from {WHITE_AT}.")
    print(",".join(["name", *KEYS]))
    for path in sorted(PICTURES.glob("*.png")):
        print(",".join([path.stem, *map(str, counts(path))]))


main()
