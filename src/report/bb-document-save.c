/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-document-save.h"

#include <glib/gi18n-lib.h>
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

static gboolean
write_bytes (GFile         *file,
             GBytes        *bytes,
             GCancellable  *cancellable,
             GError       **error)
{
  return g_file_replace_contents (file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, FALSE,
                                  G_FILE_CREATE_REPLACE_DESTINATION, NULL, cancellable, error);
}

/**
 * bb_document_save_pdf:
 * @self: a document with all its blocks
 * @paper: the size of its pages
 * @file: where to; a person agreed to replace it, if it exists
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type GFile): what was written; %NULL with an error, the file being as it
 *   was
 */
GPtrArray *
bb_document_save_pdf (BbDocument    *self,
                      BbPaper        paper,
                      GFile         *file,
                      GCancellable  *cancellable,
                      GError       **error)
{
  g_autoptr (GBytes) bytes = bb_document_to_pdf (self, paper, error);
  GPtrArray *files = NULL;

  if (bytes == NULL || !write_bytes (file, bytes, cancellable, error))
    return NULL;
  files = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_add (files, g_object_ref (file));

  return files;
}

/* A person agreed to replace the file that was named, and nothing was said of others. */
static GPtrArray *
name_files (GFile   *file,
            guint    n_pages,
            GError **error)
{
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *name = g_file_get_basename (file);
  g_autoptr (GFile) folder = g_file_get_parent (file);

  for (guint i = 0; i < n_pages; i++)
    {
      g_autofree char *page = bb_document_name_page (name, i, n_pages);
      GFile *child = folder != NULL && n_pages > 1 ? g_file_get_child (folder, page) : g_object_ref (file);
      g_autofree char *shown = g_file_get_parse_name (child);

      g_ptr_array_add (files, child);
      if (n_pages > 1 && g_file_query_exists (child, NULL))
        {
          g_set_error (error, G_IO_ERROR, G_IO_ERROR_EXISTS, _("%s exists already: choose another name."), shown);
          return NULL;
        }
    }

  return g_steal_pointer (&files);
}

/**
 * bb_document_save_pngs:
 * @self: a document with all its blocks
 * @paper: the size of its pages
 * @file: where to: several pages go beside it, see bb_document_name_page(), and replace nothing
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError
 *
 * Saves a picture of each page.
 *
 * Returns: (transfer full) (nullable) (element-type GFile): what was written, page by page; %NULL with an error
 */
GPtrArray *
bb_document_save_pngs (BbDocument    *self,
                       BbPaper        paper,
                       GFile         *file,
                       GCancellable  *cancellable,
                       GError       **error)
{
  g_autoptr (GPtrArray) pages = bb_document_to_pngs (self, paper, BB_DOCUMENT_PNG_SCALE, error);
  g_autoptr (GPtrArray) files = pages != NULL ? name_files (file, pages->len, error) : NULL;

  for (guint i = 0; files != NULL && i < files->len; i++)
    if (!write_bytes (files->pdata[i], pages->pdata[i], cancellable, error))
      return NULL;

  return g_steal_pointer (&files);
}
