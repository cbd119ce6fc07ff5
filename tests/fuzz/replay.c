/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "fuzz.h"

/* Reads the committed inputs of one target again, without a fuzzer. */

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

static GPtrArray *
list_inputs (const char *folder)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *base = NULL;

  g_assert_nonnull (dir);
  while ((base = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (paths, g_build_filename (folder, base, NULL));
  g_ptr_array_sort (paths, compare_names);

  return paths;
}

static void
test_corpus (gconstpointer data)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "fuzz", "corpus", data, NULL);
  g_autoptr (GPtrArray) paths = list_inputs (folder);
  guint n_read = 0;

  for (guint i = 0; i < paths->len; i++)
    {
      g_autofree char *contents = NULL;
      gsize length = 0;
      g_autoptr (GError) error = NULL;

      /* Whoever looks for the input that ends the program finds it in the log. */
      g_test_message ("%s", (const char *) paths->pdata[i]);
      g_file_get_contents (paths->pdata[i], &contents, &length, &error);
      g_assert_no_error (error);
      if (fuzz_one ((const guint8 *) contents, length))
        n_read++;
    }

  /* Inputs that are all refused, or all read, would try one half of what there is. */
  g_assert_cmpuint (n_read, >, 0);
  g_assert_cmpuint (n_read, <, paths->len);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_data_func ("/fuzz/" FUZZ_TARGET, FUZZ_TARGET, test_corpus);

  return g_test_run ();
}
