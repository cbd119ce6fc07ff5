/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-save"

#include "bb-save.h"

#include <glib/gi18n-lib.h>

/**
 * bb_save_ask:
 * @widget: what is saved from
 * @title: what is asked for, translated
 * @name: the name proposed, which may have what a file's name can't
 * @func: called with the file, if one is named: it makes a #BbSave of it at once
 * @data: for @func
 * @free_data: (nullable): frees @data once there is an answer, whatever it is
 *
 * Asks where something shall be saved, and whether a file that is there shall be replaced.
 */
void
bb_save_ask (GtkWidget        *widget,
             const char       *title,
             const char       *name,
             BbCompatFileFunc  func,
             gpointer          data,
             GDestroyNotify    free_data)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  g_autofree char *plain = g_strdelimit (g_strdup (name), G_DIR_SEPARATOR_S, '-');

  bb_compat_save_file (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, title, plain, func, data, free_data);
}

/**
 * bb_save_new:
 * @file: a file that a person has just named
 * @for_owner: whether nobody but its owner may read it
 *
 * Returns: (transfer full): what is to be saved there
 */
BbSave *
bb_save_new (GFile    *file,
             gboolean  for_owner)
{
  BbSave *self = NULL;

  g_return_val_if_fail (G_IS_FILE (file), NULL);

  self = g_new0 (BbSave, 1);
  self->file = g_object_ref (file);
  self->replace = g_file_query_exists (file, NULL);
  self->for_owner = for_owner;

  return self;
}

/**
 * bb_save_free:
 * @self: (transfer full): what was to be saved
 */
void
bb_save_free (BbSave *self)
{
  g_object_unref (self->file);
  g_free (self);
}

static gboolean
write_stream (GFileOutputStream  *stream,
              GBytes             *bytes,
              GCancellable       *cancellable,
              GError            **error)
{
  return g_output_stream_write_all (G_OUTPUT_STREAM (stream), g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes),
                                    NULL, cancellable, error) &&
         g_output_stream_close (G_OUTPUT_STREAM (stream), cancellable, error);
}

/* Nobody has heard of the file beside it. */
static void
name_file (const BbSave *self,
           GFile        *beside,
           GError       *error)
{
  g_autoptr (GString) message = g_string_new (error->message);
  g_autofree char *heard_of = g_file_get_parse_name (self->file);
  g_autofree char *unheard_of = g_file_get_parse_name (beside);

  g_string_replace (message, unheard_of, heard_of, 0);
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_EXISTS))
    g_string_printf (message, _("%s exists already: choose another name."), heard_of);
  g_free (error->message);
  error->message = g_strdup (message->str);
}

/* A new file is given its name once it is whole, unless something has that name by now. */
static gboolean
write_new (const BbSave      *self,
           GFileCreateFlags   flags,
           GBytes            *bytes,
           GCancellable      *cancellable,
           GError           **error)
{
  g_autoptr (GFile) folder = g_file_get_parent (self->file);
  g_autofree char *random = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (".blankbook-", random, NULL);
  g_autoptr (GFile) beside = g_file_get_child (folder != NULL ? folder : self->file, name);
  g_autoptr (GFileOutputStream) stream = NULL;
  GError *local = NULL;

  stream = g_file_create (beside, flags, cancellable, &local);
  if (stream != NULL && write_stream (stream, bytes, cancellable, &local) &&
      g_file_move (beside, self->file, G_FILE_COPY_NONE, cancellable, NULL, NULL, &local))
    return TRUE;

  if (stream != NULL)
    g_file_delete (beside, NULL, NULL);
  name_file (self, beside, local);
  g_propagate_error (error, local);

  return FALSE;
}

/**
 * bb_save_write:
 * @self: what is to be saved
 * @bytes: what the file shall hold
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError
 *
 * Writes the file; on any thread.
 *
 * Returns: %FALSE with %G_IO_ERROR_EXISTS where a file that nobody agreed to replace is there, or another error;
 *   nothing has changed then
 */
gboolean
bb_save_write (const BbSave  *self,
               GBytes        *bytes,
               GCancellable  *cancellable,
               GError       **error)
{
  const GFileCreateFlags flags = self->for_owner ? G_FILE_CREATE_PRIVATE : G_FILE_CREATE_NONE;

  if (!self->replace)
    return write_new (self, flags, bytes, cancellable, error);

  return g_file_replace_contents (self->file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, FALSE,
                                  flags | G_FILE_CREATE_REPLACE_DESTINATION, NULL, cancellable, error);
}

/**
 * bb_save_describe:
 * @self: what was to be saved
 * @error: (nullable): why it was not; %NULL where it was
 *
 * Returns: (transfer full): what a person has to be told
 */
char *
bb_save_describe (const BbSave *self,
                  const GError *error)
{
  g_autofree char *name = g_file_get_parse_name (self->file);

  return error == NULL ? g_strdup_printf (_("Saved as %s."), name)
                       : g_strdup_printf (_("It was not saved: %s"), error->message);
}

typedef struct {
  BbSave *save;
  BbSaveMake make;
  gpointer data;
  GDestroyNotify free_data;
} Run;

static void
run_free (gpointer data)
{
  Run *self = data;

  bb_save_free (self->save);
  if (self->free_data != NULL)
    self->free_data (self->data);
  g_free (self);
}

static void
run_in_thread (GTask        *task,
               gpointer      source,
               gpointer      data,
               GCancellable *cancellable)
{
  const Run *self = data;
  GError *error = NULL;
  g_autoptr (GBytes) bytes = self->make (self->data, &error);

  (void) source;
  if (bytes != NULL && bb_save_write (self->save, bytes, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/**
 * bb_save_run_async:
 * @self: (transfer full): what is to be saved
 * @make: makes what the file shall hold
 * @data: for @make
 * @free_data: (nullable): frees @data
 * @callback: called when that is done, without a source
 * @user_data: for @callback
 *
 * Makes and writes the file off the main loop.
 */
void
bb_save_run_async (BbSave              *self,
                   BbSaveMake           make,
                   gpointer             data,
                   GDestroyNotify       free_data,
                   GAsyncReadyCallback  callback,
                   gpointer             user_data)
{
  const Run run = { self, make, data, free_data };
  g_autoptr (GTask) task = g_task_new (NULL, NULL, callback, user_data);

  g_task_set_task_data (task, g_memdup2 (&run, sizeof run), run_free);
  g_task_run_in_thread (task, run_in_thread);
}

/**
 * bb_save_run_finish:
 * @result: what the callback was given
 *
 * Returns: (transfer full): what a person has to be told: where it is now, or why it is not
 */
char *
bb_save_run_finish (GAsyncResult *result)
{
  const Run *self = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  g_task_propagate_boolean (G_TASK (result), &error);

  return bb_save_describe (self->save, error);
}

static void
ran_cb (GObject      *source,
        GAsyncResult *result,
        gpointer      data)
{
  g_autoptr (BbSession) session = data;
  g_autofree char *text = bb_save_run_finish (result);

  (void) source;
  bb_session_say (session, text);
}

/**
 * bb_save_run:
 * @self: (transfer full): what is to be saved
 * @make: makes what the file shall hold
 * @data: for @make
 * @free_data: (nullable): frees @data
 * @session: the session
 *
 * Makes and writes the file off the main loop, and lets the session say how that went.
 */
void
bb_save_run (BbSave         *self,
             BbSaveMake      make,
             gpointer        data,
             GDestroyNotify  free_data,
             BbSession      *session)
{
  bb_save_run_async (self, make, data, free_data, ran_cb, g_object_ref (session));
}
