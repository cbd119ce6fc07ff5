/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bb-calculators.h"
#include "bb-json.h"
#include "run.h"

#define GOOD "{\"print_width_mm\":300,\"print_height_mm\":400,\"margin_mm\":10}"

static void
test_computes (void)
{
  g_autoptr (Answer) answer = run_cli (GOOD, -1, "calc", "box", NULL);

  g_assert_cmpint (answer->status, ==, 0);
  g_assert_cmpstr (answer->err, ==, "");
  g_assert_cmpstr (answer->out, ==,
                   "{\"box_width_mm\":320,\"box_height_mm\":420,\"box_area_m2\":0.1344,\"clipped\":false}\n");
}

static void
test_reads_a_file (void)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "a file.json", NULL);
  g_autofree char *option = g_strconcat ("--in=", path, NULL);
  g_autoptr (Answer) apart = NULL;
  g_autoptr (Answer) joined = NULL;

  g_mkdir_with_parents (g_get_user_cache_dir (), 0700);
  g_assert_true (g_file_set_contents (path, GOOD, -1, NULL));
  apart = run_cli ("", 0, "calc", "box", "--in", path, NULL);
  joined = run_cli ("", 0, "calc", option, "box", NULL);
  g_assert_cmpint (apart->status, ==, 0);
  g_assert_cmpstr (apart->out, ==, joined->out);
  g_assert_true (g_str_has_prefix (apart->out, "{\"box_width_mm\":320,"));
}

static const struct {
  const char *input;
  int status;
  const char *part;
} refused[] = {
  { "{\"print_width_mm\":300}", 2, "print_height_mm: missing" },
  { "{\"print_width_mm\":300,\"print_height_mm\":400,\"colour\":1}", 2, "colour: unknown key" },
  { "{\"print_width_mm\":\"300\",\"print_height_mm\":400}", 2, "print_width_mm: \"300\" is not a number" },
  { "{\"print_width_mm\":NaN,\"print_height_mm\":400}", 2, "print_width_mm: NaN is not a finite number" },
  { "{\"print_width_mm\":-Infinity,\"print_height_mm\":400}", 2, "print_width_mm: -Infinity" },
  { "{\"print_width_mm\":1e999,\"print_height_mm\":400}", 2, "print_width_mm: 1e999" },
  { "{\"print_width_mm\":5001,\"print_height_mm\":400}", 2, "print_width_mm: 5001 is above the maximum 5000" },
  { "{\"print_width_mm\":-1,\"print_height_mm\":400}", 2, "print_width_mm: -1 is not allowed, it must be more than 0" },
  { "{\"print_width_mm\":300,\"print_height_mm\":400,\"max_width_mm\":299}", 2, "300 is above the maximum 299" },
  { "{\"print_width_mm\":300,\"print_width_mm\":400}", 2, "print_width_mm: the key is given twice" },
  { "{\"print_width_mm\":null,\"print_height_mm\":400}", 2, "print_width_mm: null" },
  { "{\"a\\nb\\u202e\":1}", 2, "a\\u000ab\\u202e: unknown key" },
  { "[1]", 2, "input: a list is not an object" },
  { "", 3, "standard input: not JSON: an empty text" },
  { "{\"print_width_mm\":", 3, "standard input: not JSON: an early end" },
  { "print_width_mm: 300", 3, "standard input: not JSON" },
  { "{\"print_width_mm\":\"\xff\"}", 3, "standard input: not UTF-8" },
};

static void
test_refusals (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (Answer) answer = run_cli (refused[i].input, -1, "calc", "box", NULL);

      assert_refused (answer, refused[i].status, refused[i].part);
    }
}

static void
test_hostile_depth (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (Answer) lists = NULL;
  g_autoptr (Answer) objects = NULL;

  for (guint i = 0; i < 500000; i++)
    g_string_append_c (text, '[');
  lists = run_cli (text->str, (gssize) text->len, "calc", "box", NULL);
  assert_refused (lists, 3, "nested deeper than 32 levels");

  g_string_truncate (text, 0);
  for (guint i = 0; i < 100000; i++)
    g_string_append (text, "{\"a\":");
  objects = run_cli (text->str, (gssize) text->len, "calc", "box", NULL);
  assert_refused (objects, 2, "a: nested deeper than the limit of 32 levels");
}

static void
test_files_that_cant_be_read (void)
{
  g_autofree char *missing = g_build_filename (g_get_user_cache_dir (), "missing.json", NULL);
  g_autoptr (Answer) none = run_cli ("", 0, "calc", "box", "--in", missing, NULL);
  g_autoptr (Answer) folder = run_cli ("", 0, "calc", "box", "--in", g_get_tmp_dir (), NULL);
  g_autoptr (Answer) device = run_cli ("", 0, "calc", "box", "--in", "/dev/zero", NULL);

  assert_refused (none, 3, "missing.json: ");
  assert_refused (folder, 3, g_get_tmp_dir ());
  assert_refused (device, 3, "/dev/zero: ");
}

/* A picture that can't be read is a file that can't be read, and the one that the message names. */
static void
test_pictures (void)
{
  static const struct {
    const char *file;
    int status;
    const char *part;
  } pictures[] = {
    { "none.png", 3, "none.png: No such file or directory" },
    { "meson.build", 3, "meson.build: is not a PNG picture" },
    { "cli", 3, "cli: is a folder" },
  };
  g_autofree char *good = g_test_build_filename (G_TEST_DIST, "image", "pictures", "rgba-8.png", NULL);
  g_autofree char *input = g_strdup_printf ("{\"file\":\"%s\",\"print_width_mm\":29,\"mode\":\"underbase\"}", good);
  g_autoptr (Answer) answer = run_cli (input, -1, "calc", "artwork", NULL);

  g_assert_cmpint (answer->status, ==, 0);
  g_assert_true (g_str_has_prefix (answer->out, "{\"width_px\":29,\"height_px\":19,\"print_height_mm\":19,"));
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    {
      g_autofree char *path = g_test_build_filename (G_TEST_DIST, pictures[i].file, NULL);
      g_autofree char *bad = g_strdup_printf ("{\"file\":\"%s\",\"print_width_mm\":29,\"mode\":\"underbase\"}", path);
      g_autoptr (Answer) refusal = run_cli (bad, -1, "calc", "artwork", NULL);

      assert_refused (refusal, pictures[i].status, pictures[i].part);
      assert_refused (refusal, pictures[i].status, path);
    }
}

static void
test_usage (void)
{
  g_autoptr (Answer) nothing = run_cli ("", 0, NULL);
  g_autoptr (Answer) no_name = run_cli (GOOD, -1, "calc", NULL);
  g_autoptr (Answer) two_names = run_cli (GOOD, -1, "calc", "box", "mix", NULL);
  g_autoptr (Answer) unknown = run_cli (GOOD, -1, "calc", "bix", NULL);
  g_autoptr (Answer) option = run_cli (GOOD, -1, "calc", "box", "--loud", NULL);
  g_autoptr (Answer) command = run_cli (GOOD, -1, "bake", NULL);
  g_autoptr (Answer) list = run_cli (GOOD, -1, "calc", "--list", "box", NULL);

  assert_refused (nothing, 2, "Give a command");
  assert_refused (no_name, 2, "the name of one calculator");
  assert_refused (two_names, 2, "the name of one calculator");
  assert_refused (unknown, 2, "'bix'");
  assert_refused (option, 2, "--loud");
  assert_refused (command, 2, "'bake'");
  assert_refused (list, 2, "takes nothing else");
}

static void
test_help_and_version (void)
{
  g_autoptr (Answer) help = run_cli ("", 0, "--help", NULL);
  g_autoptr (Answer) calc = run_cli ("", 0, "calc", "--help", NULL);
  g_autoptr (Answer) version = run_cli ("", 0, "--version", NULL);

  g_assert_cmpint (help->status, ==, 0);
  g_assert_nonnull (strstr (help->out, "calc NAME"));
  g_assert_cmpint (calc->status, ==, 0);
  g_assert_nonnull (strstr (calc->out, "--in=FILE"));
  g_assert_cmpint (version->status, ==, 0);
  g_assert_cmpstr (version->out, ==, "blankbook-cli " BB_VERSION "\n");
}

static void
test_full_disk_is_noticed (void)
{
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDERR_PIPE);
  g_autoptr (GSubprocess) process = NULL;
  g_autofree char *err = NULL;

  g_subprocess_launcher_set_stdout_file_path (launcher, "/dev/full");
  process = g_subprocess_launcher_spawn (launcher, NULL, g_getenv ("BB_CLI"), "calc", "--list", NULL);
  g_assert_nonnull (process);
  g_assert_true (g_subprocess_communicate_utf8 (process, NULL, NULL, NULL, &err, NULL));
  g_assert_cmpint (g_subprocess_get_exit_status (process), ==, 1);
  g_assert_nonnull (strstr (err, "could not be written"));
}

static void
check_keys (const BbTable *table,
            JsonArray     *keys,
            gboolean       is_input)
{
  g_assert_cmpuint (json_array_get_length (keys), ==, table->n_fields);
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      JsonObject *key = json_array_get_object_element (keys, i);
      gboolean has_default = !field->required || field->fallback.set;

      g_assert_cmpstr (json_object_get_string_member (key, "key"), ==, field->name);
      g_assert_true (json_object_has_member (key, "title"));
      g_assert_true (json_object_has_member (key, "help"));
      g_assert_true (json_object_has_member (key, "choices") == (field->choices != NULL));
      if (is_input)
        {
          g_assert_true (json_object_get_boolean_member (key, "required") == !has_default);
          g_assert_true (json_object_has_member (key, "default") == has_default);
          g_assert_true (json_object_has_member (key, "minimum") ==
                         (field->limits.set && field->kind != BB_KIND_TEXT));
        }
      if (field->kind == BB_KIND_NUMBER)
        g_assert_cmpstr (json_object_get_string_member (key, "unit"), ==,
                         bb_quantity_get_canonical_unit (field->quantity));
      if (field->item != NULL)
        check_keys (field->item, json_object_get_array_member (key, "items"), is_input);
    }
}

static void
test_list_holds_every_key (void)
{
  g_autoptr (Answer) answer = run_cli ("", 0, "calc", "--list", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = bb_json_parse (answer->out, strlen (answer->out), &error);
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);
  JsonArray *list = NULL;

  g_assert_no_error (error);
  g_assert_cmpint (answer->status, ==, 0);
  list = json_node_get_array (node);
  g_assert_cmpuint (json_array_get_length (list), ==, n_calculators);
  for (guint i = 0; i < n_calculators; i++)
    {
      JsonObject *entry = json_array_get_object_element (list, i);

      g_assert_cmpstr (json_object_get_string_member (entry, "name"), ==, calculators[i]->name);
      g_assert_cmpstr (json_object_get_string_member (entry, "source"), ==, calculators[i]->source);
      check_keys (calculators[i]->in, json_object_get_array_member (entry, "in"), TRUE);
      check_keys (calculators[i]->out, json_object_get_array_member (entry, "out"), FALSE);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/cli-calc/computes", test_computes);
  g_test_add_func ("/cli-calc/reads-a-file", test_reads_a_file);
  g_test_add_func ("/cli-calc/refusals", test_refusals);
  g_test_add_func ("/cli-calc/hostile-depth", test_hostile_depth);
  g_test_add_func ("/cli-calc/files-that-cant-be-read", test_files_that_cant_be_read);
  g_test_add_func ("/cli-calc/pictures", test_pictures);
  g_test_add_func ("/cli-calc/usage", test_usage);
  g_test_add_func ("/cli-calc/help-and-version", test_help_and_version);
  g_test_add_func ("/cli-calc/full-disk-is-noticed", test_full_disk_is_noticed);
  g_test_add_func ("/cli-calc/list-holds-every-key", test_list_holds_every_key);

  return g_test_run ();
}
