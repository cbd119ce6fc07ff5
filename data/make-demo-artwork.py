#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Draw demo-artwork.png, the artwork that the pictures of the window show: a sun behind two hills and a stream, of plain
shapes. It has what an artwork can have that matters to a print: black, white, colours, an empty edge, and a soft glow.

Usage: make-demo-artwork.py [FILE]
"""

import math
import pathlib
import struct
import sys
import zlib

WIDTH, HEIGHT = 1200, 1320
PIXELS_PER_METRE = 5906  # 150 an inch, so that it is 203 mm wide

SUN = (600.0, 552.0, 376.0)
GLOW = 40.0
BANDS = [(288, (247, 206, 86)), (448, (243, 163, 66)), (608, (229, 112, 62)), (9999, (186, 66, 84))]
HILLS = [((408.0, 448.0), 348.0, 944.0, (14, 14, 16)), ((790.0, 552.0), 316.0, 944.0, (20, 20, 22))]
SNOW = 96.0
STREAM = [(926.0, (29, 111, 114)), (1030.0, (255, 255, 255)), (1048.0, (27, 72, 110)), (1134.0, (255, 255, 255)),
          (1150.0, (24, 42, 73))]
STREAM_END = 1246.0


def chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def write_png(path, rows):
    """RGBA of 8 bits, without a filter: plain shapes need none."""
    packed = b"".join(b"\0" + row for row in rows)
    header = struct.pack(">IIBBBBB", WIDTH, HEIGHT, 8, 6, 0, 0, 0)
    size = struct.pack(">IIB", PIXELS_PER_METRE, PIXELS_PER_METRE, 1)
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"sRGB", b"\0") + chunk(b"pHYs", size) +
                     chunk(b"IDAT", zlib.compress(packed, 9)) + chunk(b"IEND", b""))


def cover(distance):
    """How much of a pixel lies inside, by the distance of its middle from the edge, in eighths: the file stays small."""
    return min(8, max(0, round(4 - 8 * distance))) / 8


def over(below, colour, share):
    """A colour laid over what is there; alpha is not multiplied in."""
    red, green, blue, alpha = below
    if share <= 0:
        return below
    both = share + alpha * (1 - share)
    mix = [(c * share + b * alpha * (1 - share)) / both for c, b in zip(colour, (red, green, blue))]
    return (*mix, both)


def sun_at(x, y, pixel):
    away = math.hypot(x - SUN[0], y - SUN[1]) - SUN[2]
    if away > GLOW:
        return pixel
    band = next(colour for end, colour in BANDS if y < end)
    if away > 0.5:
        return over(pixel, BANDS[1][1], round(0.7 * (1 - away / GLOW) ** 2 * 20) / 20)
    return over(pixel, band, cover(away))


def hill_at(x, y, hill, pixel):
    (top_x, top_y), half, foot, colour = hill
    slope = (foot - top_y) / half
    away = (abs(x - top_x) * slope - (y - top_y)) / math.hypot(slope, 1)
    if away > 0.5 or y > foot:
        return pixel
    pixel = over(pixel, colour, cover(away))
    edge = top_y + SNOW + 20 * (2 * abs((x / 60) % 1 - 0.5) - 0.5)
    return over(pixel, (255, 255, 255), cover(y - edge) if away < -14 else 0)


def stream_at(x, y, pixel):
    wave = 12 * math.sin(x / 84)
    inset = abs(x - 600) - (500 - (y - 926) * 0.7)
    for top, colour in STREAM:
        pixel = over(pixel, colour, min(cover(top + wave - y), cover(inset), cover(y - STREAM_END - wave)))
    return pixel


def row_at(y):
    row = bytearray()
    for x in range(WIDTH):
        pixel = (0, 0, 0, 0.0)
        if y < 1000:
            pixel = sun_at(x, y, pixel)
            for hill in HILLS:
                pixel = hill_at(x, y, hill, pixel)
        if y > 900:
            pixel = stream_at(x, y, pixel)
        red, green, blue, alpha = pixel
        row += bytes((round(red), round(green), round(blue), round(255 * alpha))) if alpha > 0 else b"\0\0\0\0"
    return bytes(row)


def main():
    path = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else pathlib.Path(__file__).with_name("demo-artwork.png")
    write_png(path, (row_at(y) for y in range(HEIGHT)))


if __name__ == "__main__":
    main()
