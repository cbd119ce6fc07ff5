/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include <zlib.h>

#include "fuzz.h"

/*
 * Changes a PNG file so that it mostly stays one: libFuzzer knows bytes only, and a byte changed at random is no more
 * than one more wrong checksum. Chunks are changed, left out, doubled and moved, and the rows and profiles behind their
 * compression; then lengths and checksums are made right, but for some that are left wrong on purpose.
 */

#define SIGNATURE "\x89PNG\r\n\x1a\n"
#define MAX_INFLATED 65536

typedef struct {
  char name[4];
  GByteArray *data;
} Chunk;

static void
chunk_free (gpointer data)
{
  Chunk *self = data;

  g_byte_array_unref (self->data);
  g_free (self);
}

static Chunk *
chunk_new (const char   *name,
           const guint8 *data,
           gsize         length)
{
  Chunk *self = g_new0 (Chunk, 1);

  memcpy (self->name, name, 4);
  self->data = g_byte_array_append (g_byte_array_new (), data, (guint) length);

  return self;
}

static guint32
number_at (const guint8 *data)
{
  return (guint32) data[0] << 24 | (guint32) data[1] << 16 | (guint32) data[2] << 8 | data[3];
}

static void
append_number (GByteArray *out,
               guint32     number)
{
  const guint8 bytes[4] = { (guint8) (number >> 24), (guint8) (number >> 16), (guint8) (number >> 8),
                            (guint8) number };

  g_byte_array_append (out, bytes, 4);
}

static GPtrArray *
take_apart (const guint8 *data,
            gsize         length)
{
  GPtrArray *chunks = g_ptr_array_new_with_free_func (chunk_free);
  gsize at = 8;

  while (at + 8 <= length)
    {
      gsize n = MIN (number_at (data + at), length - at - 8);

      g_ptr_array_add (chunks, chunk_new ((const char *) data + at + 4, data + at + 8, n));
      at += 8 + n + 4;
    }

  return chunks;
}

static gsize
put_together (GPtrArray *chunks,
              guint8    *data,
              gsize      max_length,
              GRand     *rand)
{
  g_autoptr (GByteArray) out = g_byte_array_append (g_byte_array_new (), (const guint8 *) SIGNATURE, 8);
  int wrong = g_rand_int_range (rand, 0, 40) == 0 ? g_rand_int_range (rand, 0, (int) chunks->len + 1) : -1;

  for (guint i = 0; i < chunks->len; i++)
    {
      const Chunk *chunk = chunks->pdata[i];
      guint start = out->len + 4;

      append_number (out, chunk->data->len);
      g_byte_array_append (out, (const guint8 *) chunk->name, 4);
      g_byte_array_append (out, chunk->data->data, chunk->data->len);
      append_number (out, (guint32) crc32 (0, out->data + start, out->len - start) ^ (wrong == (int) i));
    }
  memcpy (data, out->data, MIN (out->len, max_length));

  return MIN (out->len, max_length);
}

/* Lets libFuzzer change bytes, of which there may become a few more. */
static void
mutate_bytes (GByteArray *bytes)
{
  guint length = bytes->len;
  guint room = length + 64;

  g_byte_array_set_size (bytes, room);
  g_byte_array_set_size (bytes, (guint) LLVMFuzzerMutate (bytes->data, length, room));
}

static Chunk *
pick (GPtrArray *chunks,
      GRand     *rand)
{
  return chunks->pdata[g_rand_int_range (rand, 0, (int) chunks->len)];
}

/* What is behind the compression from a place on; FALSE where nothing is. */
static gboolean
mutate_inflated (GByteArray *bytes,
                 guint       at)
{
  g_autoptr (GByteArray) inflated = g_byte_array_new ();
  uLongf length = MAX_INFLATED;
  int result = Z_OK;

  g_byte_array_set_size (inflated, MAX_INFLATED);
  if (at >= bytes->len)
    return FALSE;
  result = uncompress (inflated->data, &length, bytes->data + at, bytes->len - at);
  if (result != Z_OK && result != Z_DATA_ERROR)
    return FALSE;

  g_byte_array_set_size (inflated, (guint) length);
  mutate_bytes (inflated);
  length = compressBound (inflated->len);
  g_byte_array_set_size (bytes, at + (guint) length);
  compress2 (bytes->data + at, &length, inflated->data, inflated->len, 1);
  g_byte_array_set_size (bytes, at + (guint) length);

  return TRUE;
}

/* All image data, which goes into one chunk, or into two. */
static gboolean
mutate_rows (GPtrArray *chunks,
             GRand     *rand)
{
  g_autoptr (GByteArray) rows = g_byte_array_new ();
  guint first = G_MAXUINT;

  for (guint i = 0; i < chunks->len;)
    {
      const Chunk *chunk = chunks->pdata[i];

      if (memcmp (chunk->name, "IDAT", 4) != 0)
        {
          i++;
          continue;
        }
      g_byte_array_append (rows, chunk->data->data, chunk->data->len);
      first = MIN (first, i);
      g_ptr_array_remove_index (chunks, i);
    }
  if (first == G_MAXUINT)
    return FALSE;

  mutate_inflated (rows, 0);
  if (rows->len > 1 && g_rand_boolean (rand))
    {
      guint half = (guint) g_rand_int_range (rand, 0, (int) rows->len);

      g_ptr_array_insert (chunks, (int) first, chunk_new ("IDAT", rows->data + half, rows->len - half));
      g_byte_array_set_size (rows, half);
    }
  g_ptr_array_insert (chunks, (int) first, chunk_new ("IDAT", rows->data, rows->len));

  return TRUE;
}

/* The profile stands behind its name, a zero and the method of compression. */
static gboolean
mutate_profile (GPtrArray *chunks)
{
  for (guint i = 0; i < chunks->len; i++)
    {
      const Chunk *chunk = chunks->pdata[i];
      const guint8 *zero = NULL;

      if (memcmp (chunk->name, "iCCP", 4) != 0 || chunk->data->len == 0)
        continue;
      zero = memchr (chunk->data->data, 0, chunk->data->len);
      return zero != NULL && mutate_inflated (chunk->data, (guint) (zero - chunk->data->data) + 2);
    }

  return FALSE;
}

static void
mutate_order (GPtrArray *chunks,
              GRand     *rand)
{
  static const char names[][5] = { "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "pHYs", "gAMA", "sRGB", "iCCP", "cHRM",
                                   "sBIT", "bKGD", "hIST", "tEXt", "zTXt", "iTXt", "eXIf", "tIME", "sPLT",
                                   "oFFs", "pCAL", "sCAL", "ABCD", "abCd" };
  const Chunk *one = pick (chunks, rand);
  int to = g_rand_int_range (rand, 0, (int) chunks->len);
  const guint8 zeros[26] = { 0 };

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      g_ptr_array_remove_index (chunks, (guint) to);
      break;
    case 1:
      g_ptr_array_insert (chunks, to, chunk_new (one->name, one->data->data, one->data->len));
      break;
    case 2:
      memcpy (pick (chunks, rand)->name, names[g_rand_int_range (rand, 0, G_N_ELEMENTS (names))], 4);
      break;
    default:
      g_ptr_array_insert (chunks, to, chunk_new (names[g_rand_int_range (rand, 0, G_N_ELEMENTS (names))], zeros,
                                                 (gsize) g_rand_int_range (rand, 0, sizeof zeros + 1)));
      mutate_bytes (((Chunk *) chunks->pdata[to])->data);
      break;
    }
}

/* Another size, colour type, depth or interlacing, that PNG knows. */
static void
mutate_header (GPtrArray *chunks,
               GRand     *rand)
{
  static const guint8 types[] = { 0, 2, 3, 4, 6 };
  const Chunk *header = chunks->pdata[0];

  if (header->data->len != 13)
    return;
  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      header->data->data[8] = (guint8) (1 << g_rand_int_range (rand, 0, 5));
      break;
    case 1:
      header->data->data[9] = types[g_rand_int_range (rand, 0, G_N_ELEMENTS (types))];
      break;
    case 2:
      header->data->data[12] ^= 1;
      break;
    default:
      header->data->data[g_rand_boolean (rand) ? 3 : 7] = (guint8) g_rand_int_range (rand, 1, 40);
      break;
    }
}

gsize
LLVMFuzzerCustomMutator (guint8      *data,
                         gsize        length,
                         gsize        max_length,
                         unsigned int seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  g_autoptr (GPtrArray) chunks = NULL;
  int kind = g_rand_int_range (rand, 0, 16);

  if (length >= 16 && kind > 0)
    chunks = take_apart (data, length);
  if (chunks == NULL || chunks->len == 0)
    return LLVMFuzzerMutate (data, length, max_length);

  if (kind < 4)
    mutate_order (chunks, rand);
  else if (kind < 6)
    mutate_header (chunks, rand);
  else if (!(kind < 9 && mutate_rows (chunks, rand)) && !(kind == 9 && mutate_profile (chunks)))
    mutate_bytes (pick (chunks, rand)->data);

  return put_together (chunks, data, max_length, rand);
}
