/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-save-document"

#include "bb-save-document.h"

#include <glib/gi18n-lib.h>

#include "bb-document-names.h"

/**
 * bb_save_document_pdf:
 * @self: the file that was named
 * @document: a document with all its blocks
 * @paper: the size of its pages
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type GFile): what was written; %NULL with an error, the file being as it
 *   was
 */
GPtrArray *
bb_save_document_pdf (const BbSave  *self,
                      BbDocument    *document,
                      BbPaper        paper,
                      GCancellable  *cancellable,
                      GError       **error)
{
  g_autoptr (GBytes) bytes = bb_document_to_pdf (document, paper, error);
  GPtrArray *files = NULL;

  if (bytes == NULL || !bb_save_write (self, bytes, cancellable, error))
    return NULL;
  files = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_add (files, g_object_ref (self->file));

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
 * bb_save_document_pngs:
 * @self: the file that was named: several pages go beside it, see bb_document_name_page(), and replace nothing
 * @document: a document with all its blocks
 * @paper: the size of its pages
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError
 *
 * Saves a picture of each page.
 *
 * Returns: (transfer full) (nullable) (element-type GFile): what was written, page by page; %NULL with an error
 */
GPtrArray *
bb_save_document_pngs (const BbSave  *self,
                       BbDocument    *document,
                       BbPaper        paper,
                       GCancellable  *cancellable,
                       GError       **error)
{
  g_autoptr (GPtrArray) pages = bb_document_to_pngs (document, paper, BB_DOCUMENT_PNG_SCALE, error);
  g_autoptr (GPtrArray) files = pages != NULL ? name_files (self->file, pages->len, error) : NULL;

  for (guint i = 0; files != NULL && i < files->len; i++)
    {
      const BbSave page = { files->pdata[i], files->len == 1 && self->replace, self->for_owner };

      if (!bb_save_write (&page, pages->pdata[i], cancellable, error))
        return NULL;
    }

  return g_steal_pointer (&files);
}
