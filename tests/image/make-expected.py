#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write what other decoders read in the valid pictures of PngSuite: size, resolution, gamma, and a hash of all pixels.

libspng reads PNG by code of its own. netpbm's pngtopam asks libpng for none of its transformations, but leaves tRNS of
RGB out; ImageMagick knows transparency, but changes colours by gAMA. So libspng has to agree with the colours of the one
and the alpha of the other in every sample of 16 bits. Only then are they made 8 bits here, v / 257 rounded to the
nearest in whole numbers, as tests/image/test-pngsuite.c expects of the reader without any allowance.

Needs Debian's libspng0, netpbm and imagemagick; made with libspng 0.7.3, netpbm 11.01 and ImageMagick 6.9.11.

Usage: make-expected.py [FOLDER] > FOLDER/expected.csv
"""

import ctypes
import hashlib
import pathlib
import struct
import subprocess
import sys

RGBA16 = 2
APPLY_TRNS = 1


class Header(ctypes.Structure):
    _fields_ = [("width", ctypes.c_uint32), ("height", ctypes.c_uint32), ("rest", ctypes.c_uint8 * 5)]


class Resolution(ctypes.Structure):
    _fields_ = [("x", ctypes.c_uint32), ("y", ctypes.c_uint32), ("unit", ctypes.c_uint8)]


def load_spng():
    spng = ctypes.CDLL("libspng.so.0")
    spng.spng_ctx_new.restype = ctypes.c_void_p
    spng.spng_strerror.restype = ctypes.c_char_p
    return spng


def read_spng(spng, data):
    """Header, resolution, gamma in 1/100000, and samples of 16 bits, of a PNG file that is read to its end."""
    context = ctypes.c_void_p(spng.spng_ctx_new(0))

    def call(name, *arguments):
        code = getattr(spng, name)(context, *arguments)
        if code:
            raise ValueError(spng.spng_strerror(code).decode())

    try:
        call("spng_set_png_buffer", data, ctypes.c_size_t(len(data)))
        size = ctypes.c_size_t()
        call("spng_decoded_image_size", RGBA16, ctypes.byref(size))
        pixels = ctypes.create_string_buffer(size.value)
        call("spng_decode_image", pixels, size, RGBA16, APPLY_TRNS)
        call("spng_decode_chunks")
        header = Header()
        call("spng_get_ihdr", ctypes.byref(header))
        resolution, gamma = Resolution(), ctypes.c_uint32()
        if spng.spng_get_phys(context, ctypes.byref(resolution)) or resolution.unit != 1:
            resolution = Resolution(0, 0, 0)
        if spng.spng_get_gama_int(context, ctypes.byref(gamma)):
            gamma = ctypes.c_uint32(0)
    finally:
        spng.spng_ctx_free(context)
    return header, resolution, gamma.value, struct.unpack(f"={size.value // 2}H", pixels.raw)


def read_netpbm(path):
    """The colours by pngtopam, from the PAM that it writes (netpbm's documentation, "pam")."""
    pam = subprocess.run(["pngtopam", "-alphapam", path], check=True, capture_output=True).stdout
    head, _, body = pam.partition(b"ENDHDR\n")
    words = dict(line.split(maxsplit=1) for line in head.decode().splitlines()[1:])
    depth, highest = int(words["DEPTH"]), int(words["MAXVAL"])
    form = f">{len(body) // 2}H" if highest > 255 else f"{len(body)}B"
    samples = [sample * 65535 // highest for sample in struct.unpack(form, body)]
    return [samples[depth * i + (channel if depth > 2 else 0)] for i in range(len(samples) // depth) for channel in range(3)]


def read_imagemagick(path):
    """The alpha by ImageMagick."""
    alpha = subprocess.run(["convert", path, "-alpha", "extract", "-depth", "16", "-endian", "MSB", "GRAY:-"], check=True,
                           capture_output=True).stdout
    return list(struct.unpack(f">{len(alpha) // 2}H", alpha))


def main():
    folder = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else pathlib.Path(__file__).parent / "pngsuite"
    spng = load_spng()
    print("name,width,height,pixels_per_metre_x,pixels_per_metre_y,gamma,rgba_sha256")
    for path in sorted(folder.glob("*.png")):
        # The names of the broken ones begin with x, as PngSuite has it.
        if path.name.startswith("x"):
            continue
        header, resolution, gamma, samples = read_spng(spng, path.read_bytes())
        if [sample for i, sample in enumerate(samples) if i % 4 < 3] != read_netpbm(path):
            sys.exit(f"{path.name}: libspng and netpbm do not agree on colours")
        if list(samples[3::4]) != read_imagemagick(path):
            sys.exit(f"{path.name}: libspng and ImageMagick do not agree on transparency")
        rgba = bytes((2 * sample + 257) // 514 for sample in samples)
        print(path.stem, header.width, header.height, resolution.x, resolution.y, f"{gamma / 100000:.5f}",
              hashlib.sha256(rgba).hexdigest(), sep=",")


if __name__ == "__main__":
    main()
