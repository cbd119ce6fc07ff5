/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-calculators.h"
#include "bb-canonical.h"
#include "bb-json.h"
#include "fuzz.h"
#include "records.h"

/*
 * The input of a calculator as JSON, as the command line takes it. Whatever the tables allow is answered by a result
 * that is JSON itself, so that no number in it is infinite or none, or by a message.
 */

static void
check_output (const BbTable *table,
              gconstpointer  out)
{
  g_autofree char *text = bb_record_to_json (table, out, BB_SCOPE_OUTPUT);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = bb_json_parse (text, strlen (text), &error);

  g_assert_no_error (error);
}

static gboolean
calculate (const BbCalculator *calculator,
           JsonNode           *node)
{
  gpointer in = bb_record_new (calculator->in);
  gpointer out = bb_record_new (calculator->out);
  g_autoptr (GError) error = NULL;
  gboolean read = bb_json_read_record (calculator->in, node, NULL, in, &error) &&
                  bb_calculator_run (calculator, in, out, &error);

  if (read)
    check_output (calculator->out, out);
  else
    fuzz_check_message (error);
  bb_record_free (calculator->in, in);
  bb_record_free (calculator->out, out);

  return read;
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  const char *text = length > 0 ? (const char *) data : "";
  g_autoptr (JsonNode) node = bb_json_parse (text, length, NULL);
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);
  gboolean read = FALSE;

  for (guint i = 0; node != NULL && i < n_calculators; i++)
    read = calculate (calculators[i], node) || read;

  return read;
}
