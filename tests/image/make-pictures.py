#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write the small pictures of tests/image/pictures: every colour type and bit depth of PNG, plain and interlaced, with
tRNS, resolution and colour profiles. The pictures are invented; nothing but Python is needed.

Usage: make-pictures.py [FOLDER]
"""

import math
import pathlib
import struct
import sys
import zlib

WIDTH, HEIGHT = 29, 19
PASSES = [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)]
GREY, RGB, PALETTE, GREY_ALPHA, RGBA = 0, 2, 3, 4, 6
NAMES = {GREY: "grey", RGB: "rgb", PALETTE: "palette", GREY_ALPHA: "grey-alpha", RGBA: "rgba"}
DEPTHS = {GREY: (1, 2, 4, 8, 16), RGB: (8, 16), PALETTE: (1, 2, 4, 8), GREY_ALPHA: (8, 16), RGBA: (8, 16)}
CHANNELS = {GREY: 1, RGB: 3, PALETTE: 1, GREY_ALPHA: 2, RGBA: 4}


# PNG, as ISO/IEC 15948 has it

def chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def pack(samples, depth):
    """The samples of one row as bytes, the first in the highest bits."""
    if depth == 16:
        return b"".join(struct.pack(">H", sample) for sample in samples)
    out, bits, n_bits = bytearray(), 0, 0
    for sample in samples:
        bits, n_bits = bits << depth | sample, n_bits + depth
        if n_bits == 8:
            out.append(bits)
            bits, n_bits = 0, 0
    if n_bits:
        out.append(bits << 8 - n_bits)
    return bytes(out)


def paeth(a, b, c):
    p = a + b - c
    distances = abs(p - a), abs(p - b), abs(p - c)
    return (a, b, c)[distances.index(min(distances))]


def filtered(row, above, kind, step):
    """One row behind its filter; each of the five kinds is used in turn."""
    out = bytearray([kind])
    for i, byte in enumerate(row):
        a = row[i - step] if i >= step else 0
        b = above[i]
        c = above[i - step] if i >= step else 0
        out.append(byte - (0, a, b, (a + b) // 2, paeth(a, b, c))[kind] & 0xFF)
    return bytes(out)


def scanlines(rows, depth, channels, start):
    data, above, step = b"", None, max(1, depth * channels // 8)
    for y, row in enumerate(rows):
        packed = pack([sample for pixel in row for sample in pixel], depth)
        data += filtered(packed, above or bytes(len(packed)), (y + start) % 5, step)
        above = packed
    return data


def image_data(pixels, depth, channels, interlaced):
    if not interlaced:
        return scanlines(pixels, depth, channels, 0)
    data = b""
    for n, (x, y, dx, dy) in enumerate(PASSES):
        rows = [row[x::dx] for row in pixels[y::dy]]
        if rows and rows[0]:
            data += scanlines(rows, depth, channels, n)
    return data


def png(pixels, colour_type, depth, interlaced=False, before=b""):
    """@before holds whole chunks that stand before the image data."""
    header = struct.pack(">IIBBBBB", len(pixels[0]), len(pixels), depth, colour_type, 0, 0, int(interlaced))
    body = zlib.compress(image_data(pixels, depth, CHANNELS[colour_type], interlaced), 9)
    half = len(body) // 2
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + before + chunk(b"IDAT", body[:half]) +
            chunk(b"IDAT", body[half:]) + chunk(b"IEND", b""))


# What is on the pictures: a disc with a soft edge on nothing, shaded from black to white, with a band of strong colours

def alpha_at(x, y):
    distance = math.hypot((x - 14) / 12, (y - 9) / 8)
    return min(1, max(0, (1.08 - distance) * 6))


def colour_at(x, y):
    shade = min(1, max(0, (x - 5) / 19))
    if 6 <= y <= 9:
        return shade, 0.9 - 0.8 * shade, 0.5 + 0.5 * math.sin(x)
    return tuple(min(1, max(0, shade + 0.04 * math.cos(x * y * channel))) for channel in (1, 2, 3))


def sample(value, depth):
    return round(value * (2 ** depth - 1))


def pixel(colour_type, depth, x, y):
    colour, alpha = colour_at(x, y), alpha_at(x, y)
    if colour_type == PALETTE:
        return (round(colour[0] * (2 ** depth - 1)) if alpha > 0 else 0,)
    grey = sum(colour) / 3
    values = {GREY: (grey,), GREY_ALPHA: (grey, alpha), RGB: colour, RGBA: (*colour, alpha)}[colour_type]
    return tuple(sample(value, depth) for value in values)


def draw(colour_type, depth):
    return [[pixel(colour_type, depth, x, y) for x in range(WIDTH)] for y in range(HEIGHT)]


def palette_colour(i, n):
    if i in (0, n // 4):
        return 24, 3 * i, 5
    if i == n - 1:
        return 250, 255, 245
    return 255 * i // (n - 1), abs(255 - 510 * i // (n - 1)), 255 - 255 * i // (n - 1)


def palette(depth):
    return b"".join(bytes(palette_colour(i, 2 ** depth)) for i in range(2 ** depth))


def transparent(colour_type, depth, pixels):
    """A tRNS chunk that makes some of the picture transparent: of a palette the first three entries."""
    if colour_type == PALETTE:
        return chunk(b"tRNS", bytes((0, 100, 200))[:2 ** depth])
    return chunk(b"tRNS", b"".join(struct.pack(">H", value) for value in pixels[HEIGHT - 1][3]))


def resolution(x, y, unit=1):
    return chunk(b"pHYs", struct.pack(">IIB", x, y, unit))


# Colour profiles, as ICC.1:2001-04 has them

def s15f16(value):
    return struct.pack(">i", round(value * 65536))


def xyz(x, y, z):
    return b"XYZ \0\0\0\0" + s15f16(x) + s15f16(y) + s15f16(z)


def curve(gamma):
    return b"curv\0\0\0\0" + struct.pack(">IH", 1, round(gamma * 256)) + b"\0\0"


def description(text):
    data = text.encode("ascii") + b"\0"
    return b"desc\0\0\0\0" + struct.pack(">I", len(data)) + data + bytes(78)


def table_16(grid):
    """A table from RGB to Lab (lut16Type): an invented device, darker and less vivid than any screen."""
    linear = struct.pack(">HH", 0, 65535)
    nodes = b""
    for i in range(grid ** 3):
        r, g, b = (i // grid ** n % grid / (grid - 1) for n in (2, 1, 0))
        lightness = 8 + 84 * (0.25 * r + 0.6 * g + 0.15 * b) ** 0.8
        a, b_star = 70 * (r - g), 60 * (0.5 * (r + g) - b)
        nodes += struct.pack(">HHH", round(lightness * 652.8), round((a + 128) * 256), round((b_star + 128) * 256))
    matrix = b"".join(s15f16(value) for value in (1, 0, 0, 0, 1, 0, 0, 0, 1))
    return (b"mft2\0\0\0\0" + struct.pack(">BBBB", 3, 3, grid, 0) + matrix + struct.pack(">HH", 2, 2) + linear * 3 +
            nodes + linear * 3)


def profile(name, device_class, space, pcs, tags):
    tags = {b"desc": description(name), b"cprt": b"text\0\0\0\0Public domain\0", b"wtpt": xyz(0.9642, 1, 0.8249), **tags}
    table, data = struct.pack(">I", len(tags)), b""
    start = 128 + 4 + 12 * len(tags)
    for signature, value in tags.items():
        table += signature + struct.pack(">II", start + len(data), len(value))
        data += value + bytes(-len(value) % 4)
    header = struct.pack(">I4sI4s4s4s6H4s", start + len(data), b"\0\0\0\0", 0x02400000, device_class, space, pcs,
                         2025, 1, 1, 0, 0, 0, b"acsp")
    header += bytes(28) + s15f16(0.9642) + s15f16(1) + s15f16(0.8249)
    return header.ljust(128, b"\0") + table + data


def wide_profile():
    """Three invented primaries that make up D50, and a gamma of 1.9."""
    red, green = (0.58, 0.29, 0.02), (0.21, 0.64, 0.07)
    blue = (0.9642 - red[0] - green[0], 1 - red[1] - green[1], 0.8249 - red[2] - green[2])
    tags = {b"rXYZ": xyz(*red), b"gXYZ": xyz(*green), b"bXYZ": xyz(*blue)}
    return profile("Invented wide RGB", b"mntr", b"RGB ", b"XYZ ", tags | {name: curve(1.9) for name in (b"rTRC", b"gTRC", b"bTRC")})


def table_profile():
    return profile("Invented scanner", b"scnr", b"RGB ", b"Lab ", {b"A2B0": table_16(5)})


def grey_profile():
    return profile("Invented grey", b"mntr", b"GRAY", b"XYZ ", {b"kTRC": curve(1.8)})


def embedded(data):
    return chunk(b"iCCP", b"profile\0\0" + zlib.compress(data, 9))


def pictures():
    for colour_type, depths in DEPTHS.items():
        for depth in depths:
            pixels, start = draw(colour_type, depth), b""
            if colour_type == PALETTE:
                start = chunk(b"PLTE", palette(depth))
            for suffix, interlaced in (("", False), ("-adam7", True)):
                yield f"{NAMES[colour_type]}-{depth}{suffix}", png(pixels, colour_type, depth, interlaced, start)
                if colour_type in (GREY, RGB, PALETTE):
                    yield (f"{NAMES[colour_type]}-{depth}-trns{suffix}",
                           png(pixels, colour_type, depth, interlaced, start + transparent(colour_type, depth, pixels)))

    art, photo, grey = draw(RGBA, 8), draw(RGB, 8), draw(GREY, 8)
    yield "rgba-8-300ppi", png(art, RGBA, 8, before=chunk(b"sRGB", b"\0") + chunk(b"gAMA", struct.pack(">I", 45455)) +
                               resolution(11811, 11811))
    yield "rgba-8-aspect", png(art, RGBA, 8, before=resolution(3, 4, 0))
    yield "rgba-8-empty", png([[(200, 100, 50, 0)] * 7] * 5, RGBA, 8)
    yield "rgba-16-wide-profile", png(draw(RGBA, 16), RGBA, 16, before=embedded(wide_profile()))
    yield "rgb-8-wide-profile", png(photo, RGB, 8, before=embedded(wide_profile()))
    yield "rgb-8-table-profile", png(photo, RGB, 8, before=embedded(table_profile()))
    yield "rgb-16-table-profile-adam7", png(draw(RGB, 16), RGB, 16, True, embedded(table_profile()))
    yield "grey-8-grey-profile", png(grey, GREY, 8, before=embedded(grey_profile()))
    yield "rgb-8-cut-profile", png(photo, RGB, 8, before=embedded(wide_profile()[:200]))
    yield "rgb-8-grey-profile", png(photo, RGB, 8, before=embedded(grey_profile()))


def main():
    folder = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else pathlib.Path(__file__).parent / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    for name, data in pictures():
        (folder / f"{name}.png").write_bytes(data)


if __name__ == "__main__":
    main()
