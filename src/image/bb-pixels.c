/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-pixels-private.h"

#include <string.h>

/*
 * Four RGBA pixels at a time, by the vectors that GCC and Clang have for every machine. A comparison of vectors gives
 * all bits set where it is true, which is -1 as a number.
 */
typedef guint8 Bytes __attribute__ ((vector_size (16)));
typedef guint32 Four __attribute__ ((vector_size (16)));
typedef guint64 Halves __attribute__ ((vector_size (16)));

#define VECTORS 4
#define BLOCK (4 * VECTORS)

/* Where alpha lies in a pixel that was read as a number. */
#if G_BYTE_ORDER == G_LITTLE_ENDIAN
#define ALPHA_OF(pixels) ((pixels) >> 24)
#else
#define ALPHA_OF(pixels) ((pixels) & 0xff)
#endif

typedef struct {
  Bytes black_limit;
  Bytes white_limit;
  guint32 n_empty;
  guint32 n_opaque;
  Four empty;
  Four opaque;
  Four black;
  Four white;
  Four alpha;
  Four black_alpha;
  Four white_alpha;
} Lanes;

/* Four pixels of one colour. */
static inline Bytes
repeat_pixel (guint8 colour,
              guint8 alpha)
{
  return (Bytes) { colour, colour, colour, alpha, colour, colour, colour, alpha,
                   colour, colour, colour, alpha, colour, colour, colour, alpha };
}

static inline guint32
add_lanes (Four lanes)
{
  return lanes[0] + lanes[1] + lanes[2] + lanes[3];
}

static inline gboolean
all_lanes (Four  lanes,
           guint value)
{
  Halves different = (Halves) (lanes ^ value);

  return (different[0] | different[1]) == 0;
}

/* All bits set for each pixel none of whose bytes is above @limit. */
static inline Four
find_not_above (Bytes pixels,
                Bytes limit)
{
  return (Four) ((Four) (pixels > limit) == 0);
}

static inline void
add_opaque (Lanes       *lanes,
            const Bytes  block[VECTORS])
{
  for (guint i = 0; i < VECTORS; i++)
    {
      Four black = find_not_above (block[i], lanes->black_limit);
      Four white = find_not_above (lanes->white_limit, block[i]);

      lanes->black -= black;
      lanes->white -= white;
      lanes->black_alpha += black & 255;
      lanes->white_alpha += white & 255;
    }
  lanes->n_opaque += BLOCK;
}

static inline void
add_mixed (Lanes       *lanes,
           const Bytes  block[VECTORS])
{
  for (guint i = 0; i < VECTORS; i++)
    {
      Four alpha = ALPHA_OF ((Four) block[i]);
      Four empty = (Four) (alpha == 0);
      Four black = find_not_above (block[i], lanes->black_limit);
      Four white = find_not_above (lanes->white_limit, block[i]);

      lanes->empty -= empty;
      lanes->opaque -= (Four) (alpha == 255);
      lanes->black -= black & ~empty;
      lanes->white -= white & ~empty;
      lanes->alpha += alpha;
      lanes->black_alpha += alpha & black;
      lanes->white_alpha += alpha & white;
    }
}

/* Artwork has long runs that are wholly empty or wholly opaque; there is less to do for those. */
static inline void
add_block (Lanes        *lanes,
           const guint8 *pixels)
{
  Bytes block[VECTORS];
  Four any;
  Four all;

  memcpy (block, pixels, sizeof block);
  any = ALPHA_OF ((Four) (block[0] | block[1] | block[2] | block[3]));
  all = ALPHA_OF ((Four) (block[0] & block[1] & block[2] & block[3]));
  if (all_lanes (any, 0))
    lanes->n_empty += BLOCK;
  else if (all_lanes (all, 255))
    add_opaque (lanes, block);
  else
    add_mixed (lanes, block);
}

/**
 * _bb_pixels_sum_rgba:
 * @pixels: RGBA of 8 bits
 * @n_pixels: how many
 * @black_at: the most that a black pixel has of any colour
 * @white_at: the least that a white pixel has of every colour
 * @sums: (out): the sums
 *
 * Sums up one row of a picture that has alpha.
 */
void
_bb_pixels_sum_rgba (const guint8 *pixels,
                     gsize         n_pixels,
                     guint8        black_at,
                     guint8        white_at,
                     BbPixelSums  *sums)
{
  Lanes lanes = { .black_limit = repeat_pixel (black_at, 255), .white_limit = repeat_pixel (white_at, 0) };
  guint8 rest[4 * BLOCK] = { 0 };
  gsize n_rest = n_pixels % BLOCK;

  for (gsize i = 0; i + BLOCK <= n_pixels; i += BLOCK)
    add_block (&lanes, pixels + 4 * i);
  /* The last block is filled up with pixels that are empty, and is counted for what it holds. */
  if (n_rest > 0)
    {
      memcpy (rest, pixels + 4 * (n_pixels - n_rest), 4 * n_rest);
      add_block (&lanes, rest);
      lanes.n_empty -= (guint32) (BLOCK - n_rest);
    }

  *sums = (BbPixelSums) {
    .n_empty = lanes.n_empty + add_lanes (lanes.empty),
    .n_opaque = lanes.n_opaque + add_lanes (lanes.opaque),
    .n_black = add_lanes (lanes.black),
    .n_white = add_lanes (lanes.white),
    .alpha = 255 * lanes.n_opaque + add_lanes (lanes.alpha),
    .black_alpha = add_lanes (lanes.black_alpha),
    .white_alpha = add_lanes (lanes.white_alpha),
  };
}

/* What a sample has to say of its pixel; a pixel is what all three of its samples say. */
#define MAY_BE_BLACK 1
#define MAY_BE_WHITE 2
#define STRETCH 256

/**
 * _bb_pixels_sum_rgb:
 * @pixels: RGB of 8 bits
 * @n_pixels: how many
 * @black_at: the most that a black pixel has of any colour
 * @white_at: the least that a white pixel has of every colour
 * @sums: (out): the sums
 *
 * Sums up one row of a picture that has no alpha. Samples first and pixels then, because the compiler makes vectors of
 * the first loop, and can't of one that takes three bytes at a time.
 */
void
_bb_pixels_sum_rgb (const guint8 *pixels,
                    gsize         n_pixels,
                    guint8        black_at,
                    guint8        white_at,
                    BbPixelSums  *sums)
{
  guint8 says[3 * STRETCH];
  guint32 n_black = 0;
  guint32 n_white = 0;

  for (gsize start = 0; start < n_pixels; start += STRETCH)
    {
      gsize n = MIN (STRETCH, n_pixels - start);
      const guint8 *samples = pixels + 3 * start;

      for (gsize i = 0; i < 3 * n; i++)
        says[i] = (guint8) ((samples[i] <= black_at) * MAY_BE_BLACK | (samples[i] >= white_at) * MAY_BE_WHITE);
      for (gsize i = 0; i < n; i++)
        {
          guint8 pixel = says[3 * i] & says[3 * i + 1] & says[3 * i + 2];

          n_black += pixel & MAY_BE_BLACK;
          n_white += pixel / MAY_BE_WHITE;
        }
    }

  *sums = (BbPixelSums) {
    .n_opaque = (guint32) n_pixels,
    .n_black = n_black,
    .n_white = n_white,
    .alpha = (guint32) n_pixels * 255,
    .black_alpha = n_black * 255,
    .white_alpha = n_white * 255,
  };
}

/* Eight bytes as one number. */
static inline guint64
load_eight (const guint8 *bytes)
{
  guint64 value = 0;

  memcpy (&value, bytes, sizeof value);

  return value;
}

static inline guint64
repeat (guint8 byte)
{
  return byte * G_GUINT64_CONSTANT (0x0101010101010101);
}

/**
 * _bb_pixels_count_bytes:
 * @bytes: any bytes
 * @n_bytes: how many
 * @counts: (inout) (array fixed-size=256): how often each value was met; added to
 *
 * Counts how often each value occurs. Eight alike are counted at once; else there are four tables, because bytes that
 * are alike would wait for each other's count.
 */
void
_bb_pixels_count_bytes (const guint8 *bytes,
                        gsize         n_bytes,
                        guint32       counts[256])
{
  guint32 apart[4][256] = { { 0 } };
  gsize i = 0;

  for (; i + 8 <= n_bytes; i += 8)
    if (load_eight (bytes + i) == repeat (bytes[i]))
      apart[0][bytes[i]] += 8;
    else
      for (guint k = 0; k < 8; k++)
        apart[k % 4][bytes[i + k]]++;
  for (; i < n_bytes; i++)
    apart[0][bytes[i]]++;

  for (guint value = 0; value < 256; value++)
    counts[value] += apart[0][value] + apart[1][value] + apart[2][value] + apart[3][value];
}

/**
 * _bb_pixels_skip_alike:
 * @bytes: any bytes
 * @n_bytes: how many
 *
 * Returns: how many bytes at the beginning are the same for sure; more than that may be
 */
gsize
_bb_pixels_skip_alike (const guint8 *bytes,
                       gsize         n_bytes)
{
  gsize i = 0;

  while (i + 8 <= n_bytes && load_eight (bytes + i) == repeat (bytes[0]))
    i += 8;

  return i;
}

/**
 * _bb_pixels_skip_alike_back:
 * @bytes: any bytes
 * @n_bytes: how many
 *
 * Returns: how many bytes there are without those at the end that are the same for sure
 */
gsize
_bb_pixels_skip_alike_back (const guint8 *bytes,
                            gsize         n_bytes)
{
  gsize end = n_bytes;

  while (end >= 8 && load_eight (bytes + end - 8) == repeat (bytes[n_bytes - 1]))
    end -= 8;

  return end;
}

/* Whether any of a block of pixels has alpha > 0. */
static inline gboolean
is_seen (const guint8 *pixels)
{
  Bytes block[VECTORS];

  memcpy (block, pixels, sizeof block);

  return !all_lanes (ALPHA_OF ((Four) (block[0] | block[1] | block[2] | block[3])), 0);
}

/**
 * _bb_pixels_skip_empty:
 * @pixels: RGBA of 8 bits
 * @n_pixels: how many
 *
 * Returns: how many pixels at the beginning have alpha 0 for sure; more than that may
 */
gsize
_bb_pixels_skip_empty (const guint8 *pixels,
                       gsize         n_pixels)
{
  gsize i = 0;

  while (i + BLOCK <= n_pixels && !is_seen (pixels + 4 * i))
    i += BLOCK;

  return i;
}

/**
 * _bb_pixels_skip_empty_back:
 * @pixels: RGBA of 8 bits
 * @n_pixels: how many
 *
 * Returns: how many pixels there are without those at the end that have alpha 0 for sure
 */
gsize
_bb_pixels_skip_empty_back (const guint8 *pixels,
                            gsize         n_pixels)
{
  gsize end = n_pixels;

  while (end >= BLOCK && !is_seen (pixels + 4 * (end - BLOCK)))
    end -= BLOCK;

  return end;
}
