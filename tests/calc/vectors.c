/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "vectors.h"

#include <glib/gstdio.h>

#include "bb-json.h"

/**
 * vectors_load:
 * @name: a calculator's name
 *
 * Reads its file in tests/vectors; ends the test if that can't be read.
 *
 * Returns: (transfer full): the list of its vectors
 */
JsonNode *
vectors_load (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".json", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "vectors", base, NULL);
  g_autofree char *text = NULL;
  gsize length = 0;
  JsonNode *node = NULL;
  g_autoptr (GError) error = NULL;

  if (g_file_get_contents (path, &text, &length, &error))
    node = bb_json_parse (text, length, &error);
  if (node == NULL)
    g_error ("%s: %s", path, error->message);
  if (!JSON_NODE_HOLDS_ARRAY (node))
    g_error ("%s: is not a list of vectors", path);

  return node;
}

/* Into the folder from which vectors name the files that they want to be read. */
void
vectors_enter_folder (void)
{
  g_assert_cmpint (g_chdir (g_test_get_dir (G_TEST_DIST)), ==, 0);
}
