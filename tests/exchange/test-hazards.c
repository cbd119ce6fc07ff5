/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-hazards.h"

#include <json-glib/json-glib.h>
#include <string.h>

/* Wordings of Regulation (EC) No 1272/2008, Annex III, in its English and German versions. */
static const char statements[] =
  "{\"statements\":{\"H319\":{\"en\":\"Causes serious eye irritation.\",\"de\":\"Verursacht schwere Augenreizung.\"},"
  "\"P280\":{\"en\":\"Wear protective gloves.\"}}}";

static BbHazards *
make_hazards (const char *json)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (json, strlen (json));
  g_autoptr (GError) error = NULL;
  BbHazards *hazards = bb_hazards_new (bytes, &error);

  g_assert_no_error (error);

  return hazards;
}

static void
test_describe (void)
{
  const char * const english[] = { "en_GB", "C", NULL };
  const char * const german[] = { "de_AT", "de", "en", NULL };
  g_autoptr (BbHazards) hazards = make_hazards (statements);
  g_autofree char *both = bb_hazards_describe (hazards, "h319 P280, H999", english);
  g_autofree char *other = bb_hazards_describe (hazards, "H319", german);
  g_autofree char *precaution = bb_hazards_describe (hazards, "P280", english);
  g_autofree char *none = bb_hazards_describe (hazards, NULL, english);

  /* Written in lower case it is the same statement; what is not in the list is not left out. */
  g_assert_cmpstr (both, ==,
                   "H319  Causes serious eye irritation.\nH999  Not in our list: read the safety data sheet.");
  g_assert_cmpstr (other, ==, "H319  Verursacht schwere Augenreizung.");
  g_assert_null (precaution);
  g_assert_null (none);
}

static void
test_other_file (void)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static ("[]", 2);
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_hazards_new (bytes, &error));
  g_assert_error (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_INVALID_DATA);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/hazards/describe", test_describe);
  g_test_add_func ("/hazards/other-file", test_other_file);

  return g_test_run ();
}
