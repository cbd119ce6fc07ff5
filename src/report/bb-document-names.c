/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-document-names.h"

#include <string.h>

#define ENDING ".png"

/**
 * bb_document_name_page:
 * @name: the name of a picture
 * @page: which page, counted from 0
 * @n_pages: how many there are
 *
 * Returns: (transfer full): what the picture of a page is called: @name for the only one, else `NAME-1.png` and so on
 */
char *
bb_document_name_page (const char *name,
                       guint       page,
                       guint       n_pages)
{
  g_autofree char *stem = NULL;

  if (n_pages == 1)
    return g_strdup (name);
  stem = g_strndup (name, strlen (name) - (g_str_has_suffix (name, ENDING) ? strlen (ENDING) : 0));

  return g_strdup_printf ("%s-%u%s", stem, page + 1, ENDING);
}
