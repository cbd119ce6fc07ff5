/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-artwork-reader"

#include "bb-artwork-reader.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"

/* A small file is read before anybody could see that it is. */
#define PROGRESS_MS 120

struct _BbArtworkReader
{
  AdwBin parent_instance;

  /* template */
  GtkBox *reading_box;
  GtkLabel *reading_label;
  GtkProgressBar *progress_bar;
  GtkBox *problem_box;
  GtkLabel *problem_label;
  GtkButton *again_button;

  /* owned: the file that was asked for last, and what was read of it until somebody takes it */
  char *path;
  BbArtworkPicture *picture;

  /* owned: the reading under way, or NULL */
  GCancellable *cancellable;
  BbArtworkProgress *progress;
  guint progress_source;
};

G_DEFINE_FINAL_TYPE (BbArtworkReader, bb_artwork_reader, ADW_TYPE_BIN)

enum {
  SIGNAL_STARTED,
  SIGNAL_READ,
  SIGNAL_REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show_problem (BbArtworkReader *self,
              const char     *text,
              gboolean        can_retry)
{
  gtk_label_set_label (self->problem_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem_box), text != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->again_button), can_retry);
}

static gboolean
progress_cb (gpointer data)
{
  BbArtworkReader *self = BB_ARTWORK_READER (data);

  gtk_widget_set_visible (GTK_WIDGET (self->reading_box), TRUE);
  gtk_progress_bar_set_fraction (self->progress_bar, bb_artwork_progress_get_fraction (self->progress));

  return G_SOURCE_CONTINUE;
}

/* What is still on its way has another cancellable, and is dropped when it arrives. */
static void
end_reading (BbArtworkReader *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->progress, bb_artwork_progress_unref);
  g_clear_handle_id (&self->progress_source, g_source_remove);
  gtk_widget_set_visible (GTK_WIDGET (self->reading_box), FALSE);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  BbArtworkReader *self = BB_ARTWORK_READER (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbArtworkPicture) picture = bb_artwork_picture_read_finish (result, &error);

  (void) data;

  if (self->cancellable == NULL || g_task_get_cancellable (G_TASK (result)) != self->cancellable)
    return;

  end_reading (self);
  if (picture == NULL)
    {
      show_problem (self, error->message, TRUE);
      g_signal_emit (self, signals[SIGNAL_REFUSED], 0, error->message);
      return;
    }
  g_clear_pointer (&self->picture, bb_artwork_picture_free);
  self->picture = g_steal_pointer (&picture);
  g_signal_emit (self, signals[SIGNAL_READ], 0);
}

/**
 * bb_artwork_reader_load:
 * @self: a reader
 * @path: a file's name
 *
 * Reads an artwork, as if it had been dropped. What was being read before is given up.
 */
void
bb_artwork_reader_load (BbArtworkReader *self,
                       const char     *path)
{
  char *wanted = g_strdup (path);
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *text = g_strdup_printf (_("Reading %s"), name);

  g_return_if_fail (BB_IS_ARTWORK_READER (self) && path != NULL);

  end_reading (self);
  show_problem (self, NULL, FALSE);
  g_free (self->path);
  self->path = wanted;
  gtk_label_set_label (self->reading_label, text);
  gtk_progress_bar_set_fraction (self->progress_bar, 0);

  self->cancellable = g_cancellable_new ();
  self->progress = bb_artwork_progress_new ();
  self->progress_source = g_timeout_add (PROGRESS_MS, progress_cb, self);
  bb_artwork_picture_read_async (self, wanted, self->progress, self->cancellable, read_cb, NULL);
  g_signal_emit (self, signals[SIGNAL_STARTED], 0);
}

static void
take_file (BbArtworkReader *self,
           GFile          *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *uri = NULL;
  g_autofree char *text = NULL;

  if (path != NULL)
    {
      bb_artwork_reader_load (self, path);
      return;
    }
  uri = g_file_get_uri (file);
  text = g_strdup_printf (_("%s is not on this computer. Copy it here first."), uri);
  show_problem (self, text, FALSE);
}

static gboolean
drop_cb (BbArtworkReader *self,
         const GValue   *value)
{
  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  if (files == NULL)
    return FALSE;
  if (files->next != NULL)
    {
      show_problem (self, _("Several files were dropped. Drop one picture at a time."), FALSE);
      return FALSE;
    }
  take_file (self, files->data);

  return TRUE;
}

/**
 * bb_artwork_reader_take_drops:
 * @self: a reader
 * @widget: a widget around it
 *
 * Lets files be dropped on a larger place than the panel is.
 */
void
bb_artwork_reader_take_drops (BbArtworkReader *self,
                             GtkWidget      *widget)
{
  GtkDropTarget *target = NULL;

  g_return_if_fail (BB_IS_ARTWORK_READER (self) && GTK_IS_WIDGET (widget));

  target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect_object (target, "drop", G_CALLBACK (drop_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (target));
}

/* What a person does */

static void
chosen_cb (GFile    *file,
           gpointer  data)
{
  BbArtworkReader *self = BB_ARTWORK_READER (data);

  /* The window may be gone by now. */
  if (gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    take_file (self, file);
}

/**
 * bb_artwork_reader_choose:
 * @self: a reader
 *
 * Asks the person for a file.
 */
void
bb_artwork_reader_choose (BbArtworkReader *self)
{
  g_return_if_fail (BB_IS_ARTWORK_READER (self));

  bb_compat_open_file (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _("Choose Artwork"), _("PNG pictures"),
                       "*.[pP][nN][gG]", chosen_cb, g_object_ref (self), g_object_unref);
}

static void
stop_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbArtworkReader *self = BB_ARTWORK_READER (widget);

  (void) name;
  (void) parameter;

  if (self->cancellable == NULL)
    return;
  end_reading (self);
  show_problem (self, _("The reading was stopped."), TRUE);
}

static void
again_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbArtworkReader *self = BB_ARTWORK_READER (widget);

  (void) name;
  (void) parameter;

  if (self->path != NULL)
    bb_artwork_reader_load (self, self->path);
}

/**
 * bb_artwork_reader_take_picture:
 * @self: a reader that has just said that it has read one
 *
 * Returns: (transfer full): the picture
 */
BbArtworkPicture *
bb_artwork_reader_take_picture (BbArtworkReader *self)
{
  g_return_val_if_fail (BB_IS_ARTWORK_READER (self), NULL);

  return g_steal_pointer (&self->picture);
}

/**
 * bb_artwork_reader_get_unread:
 * @self: a reader
 *
 * Returns: (nullable): the file that is being read, or that could not be read
 */
const char *
bb_artwork_reader_get_unread (BbArtworkReader *self)
{
  g_return_val_if_fail (BB_IS_ARTWORK_READER (self), NULL);

  return self->path;
}

/**
 * bb_artwork_reader_clear:
 * @self: a reader
 *
 * Gives up what is being read, and forgets what could not be.
 */
void
bb_artwork_reader_clear (BbArtworkReader *self)
{
  g_return_if_fail (BB_IS_ARTWORK_READER (self));

  end_reading (self);
  show_problem (self, NULL, FALSE);
  g_clear_pointer (&self->path, g_free);
}

static void
bb_artwork_reader_dispose (GObject *object)
{
  BbArtworkReader *self = BB_ARTWORK_READER (object);

  if (self->reading_box != NULL)
    end_reading (self);
  self->reading_box = NULL;
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_artwork_reader_parent_class)->dispose (object);
}

static void
bb_artwork_reader_finalize (GObject *object)
{
  BbArtworkReader *self = BB_ARTWORK_READER (object);

  g_clear_pointer (&self->picture, bb_artwork_picture_free);
  g_free (self->path);

  G_OBJECT_CLASS (bb_artwork_reader_parent_class)->finalize (object);
}

static void
bb_artwork_reader_class_init (BbArtworkReaderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_artwork_reader_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_artwork_reader_finalize;

  /**
   * BbArtworkReader::started:
   *
   * A file is being read.
   */
  signals[SIGNAL_STARTED] = g_signal_new ("started", BB_TYPE_ARTWORK_READER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  /**
   * BbArtworkReader::read:
   *
   * A file was read, and its picture can be taken.
   */
  signals[SIGNAL_READ] = g_signal_new ("read", BB_TYPE_ARTWORK_READER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 0);
  /**
   * BbArtworkReader::refused:
   * @message: what is wrong with the file
   *
   * A file could not be read. The reader says so itself, where it can be seen.
   */
  signals[SIGNAL_REFUSED] = g_signal_new ("refused", BB_TYPE_ARTWORK_READER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-artwork-reader.ui");
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, reading_box);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, reading_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, progress_bar);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, problem_box);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, problem_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkReader, again_button);
  gtk_widget_class_install_action (widget_class, "artwork-reader.stop", NULL, stop_action);
  gtk_widget_class_install_action (widget_class, "artwork-reader.again", NULL, again_action);
}

static void
bb_artwork_reader_init (BbArtworkReader *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
