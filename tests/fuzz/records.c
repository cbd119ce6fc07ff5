/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "records.h"

#include "bb-error.h"
#include "bb-problem.h"
#include "fuzz.h"

char *
name_record (G_GNUC_UNUSED const BbField *field,
             gint64                       id,
             G_GNUC_UNUSED gpointer       data,
             G_GNUC_UNUSED GError       **error)
{
  return g_strdup_printf ("A-%" G_GINT64_FORMAT, id);
}

gboolean
resolve_record (G_GNUC_UNUSED const BbField *field,
                const char                  *code,
                gint64                      *id,
                G_GNUC_UNUSED gpointer       data,
                GError                     **error)
{
  if (g_str_has_prefix (code, "A-") && g_ascii_string_to_signed (code + 2, 10, 1, G_MAXINT32, id, NULL))
    return TRUE;

  g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "there is no such record");
  return FALSE;
}

/* Whether a record keeps to the limits of its table. */
gboolean
record_is_valid (const BbTable *table,
                 gconstpointer  record)
{
  g_autoptr (GError) error = NULL;

  if (bb_record_validate (table, record, &error))
    return TRUE;

  fuzz_check_message (error);
  return FALSE;
}
