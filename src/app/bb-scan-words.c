/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-scan-words"

#include "bb-scan-words.h"

#include <glib/gi18n-lib.h>

/* One decimal: what a scanner repeats. All of them are stored. */
static char *
describe_subject (const BbScan *scan)
{
  if (isnan (scan->l_sd))
    return g_strdup_printf (_("L* %.1f   a* %.1f   b* %.1f"), scan->l, scan->a, scan->b);

  /* Translators: a colour, each value with its standard deviation. */
  return g_strdup_printf (_("L* %.1f ± %.1f   a* %.1f ± %.1f   b* %.1f ± %.1f"), scan->l, scan->l_sd, scan->a,
                          scan->a_sd, scan->b, scan->b_sd);
}

static char *
describe_patch (const BbScan *scan)
{
  return g_strdup_printf (_("Patch: L* %.1f   a* %.1f   b* %.1f"), scan->patch_l, scan->patch_a, scan->patch_b);
}

/**
 * bb_scan_dup_colours:
 * @scan: a scan
 *
 * Returns: (transfer full) (nullable): the colours that were measured on it, CIELAB of D50, one a line; %NULL where
 *   none was
 */
char *
bb_scan_dup_colours (const BbScan *scan)
{
  g_autofree char *subject = NULL;
  g_autofree char *patch = NULL;

  g_return_val_if_fail (scan != NULL, NULL);

  if (isnan (scan->l))
    return NULL;
  subject = describe_subject (scan);
  patch = bb_scan_has_patch (scan) ? describe_patch (scan) : NULL;

  return g_strjoin ("\n", subject, patch, NULL);
}
