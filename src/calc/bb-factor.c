/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-factor.h"

#include "bb-canonical.h"
#include "bb-error.h"

/**
 * bb_factor_check_range:
 * @low: a factor's least setting
 * @high: its greatest
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Returns: %TRUE if there is something between them
 */
gboolean
bb_factor_check_range (double   low,
                       double   high,
                       GError **error)
{
  g_autofree char *low_text = NULL;
  g_autofree char *high_text = NULL;

  if (low < high)
    return TRUE;

  low_text = bb_number_to_text (low);
  high_text = bb_number_to_text (high);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "high: %s is not allowed, it must be more than low, %s",
               high_text, low_text);

  return FALSE;
}

/**
 * bb_factor_check_keys:
 * @table: the table of a factor, which has BB_FACTOR_FIELDS
 * @factors: its records, as the input's `factors` holds them
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Returns: %TRUE if no two factors have one key
 */
gboolean
bb_factor_check_keys (const BbTable *table,
                      const GArray  *factors,
                      GError       **error)
{
  const BbField *field = bb_table_find_field (table, "key");
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < factors->len; i++)
    {
      const char *key = bb_field_get_text (field, factors->data + i * table->size);

      if (!g_hash_table_add (seen, (gpointer) key))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                       "factors[%u].key: %s is given twice, the maximum is once", i, key);
          return FALSE;
        }
    }

  return TRUE;
}
