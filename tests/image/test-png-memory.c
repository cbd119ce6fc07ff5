/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "memory.h"
#include "pictures.h"

/* The reader without memory: each time that it asks for some it gets none, once, or from then on. */

static void
ignore_row (G_GNUC_UNUSED const BbPngRow *row,
            G_GNUC_UNUSED gpointer        data)
{
}

static Memory
read_with_less (GBytes    *bytes,
                BbPngForm  form,
                guint      first_refusal,
                guint      last_refusal,
                GError   **error)
{
  g_autoptr (BbPng) png = NULL;

  memory_begin (first_refusal, last_refusal);
  png = bb_png_new_for_bytes (bytes, "a picture", form, error);
  if (png != NULL)
    bb_png_read (png, ignore_row, NULL, NULL, error);

  return memory_end ();
}

static void
assert_refused (GBytes    *bytes,
                BbPngForm  form,
                guint      first_refusal,
                guint      last_refusal)
{
  g_autoptr (GError) error = NULL;

  read_with_less (bytes, form, first_refusal, last_refusal, &error);
  g_assert_error (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_LIMIT);
  g_assert_cmpstr (error->message, ==, "a picture: there is not enough memory to read it");
}

static void
test_each_call_refused (void)
{
  g_auto (GStrv) names = picture_list ();

  for (guint i = 0; names[i] != NULL; i++)
    for (BbPngForm form = BB_PNG_FORM_COUNTABLE; form <= BB_PNG_FORM_DEEP; form++)
      {
        g_autoptr (GBytes) bytes = picture_load (names[i]);
        g_autoptr (GError) error = NULL;
        Memory whole = read_with_less (bytes, form, 0, 0, &error);

        g_assert_no_error (error);
        /* The decoder, what it knows of the picture, its row, ours, and what inflates. */
        g_assert_cmpuint (whole.n_calls, >=, 5);
        for (guint call = 1; call <= whole.n_calls; call++)
          {
            assert_refused (bytes, form, call, call);
            assert_refused (bytes, form, call, G_MAXUINT);
          }
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/png-memory/each-call-refused", test_each_call_refused);

  return g_test_run ();
}
