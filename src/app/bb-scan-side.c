/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-scan-side"

#include "bb-scan-side.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-moment.h"
#include "bb-picture-file.h"
#include "bb-scan-measure.h"
#include "bb-scan-rectangles.h"
#include "bb-scan-words.h"
#include "bb-session-scans.h"

/* The longest side of a scan as it is shown. */
#define SHOWN_PX 1024

struct _BbScanSide
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *hint_label;
  GtkLabel *colours_label;
  GtkLabel *problem_label;
  GtkSpinner *spinner;
  GtkWidget *part_box;
  GtkToggleButton *subject_button;
  GtkToggleButton *patch_button;
  BbScanArea *area;

  /* owned; @picture while the book does not have it yet */
  BbSession *session;
  BbScan *scan;
  BbPicture *picture;
  GBytes *content;
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (BbScanSide, bb_scan_side, GTK_TYPE_BOX)

static void
show_colours (BbScanSide *self)
{
  g_autofree char *colours = bb_scan_dup_colours (self->scan);

  gtk_label_set_label (self->colours_label,
                       colours != NULL         ? colours
                       : self->content != NULL ? _("Drag a rectangle around an even part of what is graded.")
                                               : "");
}

static void
show_problem (BbScanSide   *self,
              const GError *error)
{
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  gtk_spinner_stop (self->spinner);
  gtk_label_set_label (self->problem_label, error != NULL ? error->message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem_label), error != NULL);
}

/* What still runs is of no use any more. */
static void
begin_work (BbScanSide *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  show_problem (self, NULL);
  gtk_spinner_start (self->spinner);
}

/* From now on the picture is the book's, unless another was chosen meanwhile. */
static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbScanSide) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BbScan) saved = bb_session_save_scan_finish (BB_SESSION (source), result, &error);

  if (saved == NULL)
    {
      show_problem (self, error);
      return;
    }
  if (self->scan == NULL || !bb_scan_is_in_place_of (self->scan, saved) || isnan (self->scan->l))
    return;

  self->scan->id = saved->id;
  self->scan->picture = saved->picture;
  g_clear_pointer (&self->picture, bb_picture_free);
}

static void
measured_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (BbScanSide) self = data;
  g_autoptr (GError) error = NULL;
  BbScan *scan = bb_scan_measure_finish (result, &error);

  (void) source;

  if (scan == NULL)
    {
      show_problem (self, error);
      return;
    }

  gtk_spinner_stop (self->spinner);
  bb_scan_free (self->scan);
  self->scan = scan;
  show_colours (self);
  bb_session_save_scan_async (self->session, self->scan, self->picture, self->content, saved_cb, g_object_ref (self));
}

static void
area_changed_cb (BbScanSide *self)
{
  if (self->content == NULL || bb_scan_area_get_rectangle (self->area, BB_SCAN_PART_SUBJECT).width == 0)
    return;

  bb_scan_rectangles_take (self->scan, self->area);
  begin_work (self);
  bb_scan_measure_async (self->scan, self->content, gtk_label_get_label (self->title_label), self->cancellable,
                         measured_cb, g_object_ref (self));
}

static void
previewed_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  g_autoptr (BbScanSide) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPreview) preview = bb_preview_load_finish (result, &error);

  (void) source;

  if (preview == NULL)
    {
      /* A picture that can't be shown can't be measured. */
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        {
          g_clear_pointer (&self->content, g_bytes_unref);
          g_clear_pointer (&self->picture, bb_picture_free);
          show_colours (self);
        }
      show_problem (self, error);
      return;
    }

  gtk_spinner_stop (self->spinner);
  gtk_widget_set_visible (GTK_WIDGET (self->hint_label), FALSE);
  gtk_widget_set_visible (self->part_box, TRUE);
  bb_scan_area_set_preview (self->area, preview);
  if (self->picture != NULL)
    {
      self->picture->width_px = preview->full_width;
      self->picture->height_px = preview->full_height;
    }
  bb_scan_rectangles_show (self->scan, self->area);
  show_colours (self);
}

static void
set_content (BbScanSide *self,
             GBytes     *content)
{
  g_clear_pointer (&self->content, g_bytes_unref);
  self->content = g_bytes_ref (content);
  bb_preview_load_bytes_async (content, gtk_label_get_label (self->title_label), SHOWN_PX, self->cancellable,
                               previewed_cb, g_object_ref (self));
}

static void
stored_loaded_cb (GObject      *source,
                  GAsyncResult *result,
                  gpointer      data)
{
  g_autoptr (BbScanSide) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) content = bb_session_load_content_finish (BB_SESSION (source), result, &error);

  if (content != NULL)
    set_content (self, content);
  else
    show_problem (self, error);
}

/* Another picture: the rectangles of the last are of no use on it. */
static void
take_new_picture (BbScanSide *self,
                  const char *name,
                  GBytes     *content)
{
  BbScan *scan = bb_scan_new ();

  scan->id = self->scan->id;
  scan->wash_test = self->scan->wash_test;
  scan->cycles = self->scan->cycles;
  scan->subject = self->scan->subject;
  bb_scan_free (self->scan);
  self->scan = scan;
  self->scan->scanned_at = bb_dup_today ();
  self->scan->person = bb_session_get_person (self->session);

  g_clear_pointer (&self->picture, bb_picture_free);
  self->picture = bb_picture_new ();
  self->picture->name = g_strdup (name);
  self->picture->added_at = bb_dup_today ();
  bb_scan_area_set_preview (self->area, NULL);
  set_content (self, content);
}

static void
file_loaded_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      data)
{
  g_autoptr (BbScanSide) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = NULL;
  g_autoptr (GBytes) content = bb_picture_file_load_finish (result, &name, &error);

  (void) source;

  if (content != NULL)
    take_new_picture (self, name, content);
  else
    show_problem (self, error);
}

/**
 * bb_scan_side_take_file:
 * @self: a side that shows a specimen
 * @file: a PNG file
 *
 * Takes another picture, whose rectangles are then to be drawn.
 */
void
bb_scan_side_take_file (BbScanSide *self,
                        GFile      *file)
{
  g_return_if_fail (BB_IS_SCAN_SIDE (self) && G_IS_FILE (file));

  if (self->scan == NULL)
    return;
  begin_work (self);
  bb_picture_file_load_async (file, self->cancellable, file_loaded_cb, g_object_ref (self));
}

static void
chosen_cb (GFile    *file,
           gpointer  data)
{
  BbScanSide *self = BB_SCAN_SIDE (data);

  /* The window may be gone by now. */
  if (gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    bb_scan_side_take_file (self, file);
}

static void
choose_cb (BbScanSide *self)
{
  bb_compat_open_file (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _("Choose a Scan"), _("PNG pictures"),
                       "*.png", chosen_cb, g_object_ref (self), g_object_unref);
}

static gboolean
dropped_cb (BbScanSide   *self,
            const GValue *value)
{
  GSList *files = g_value_get_boxed (value);

  if (files == NULL)
    return FALSE;
  bb_scan_side_take_file (self, files->data);

  return TRUE;
}

static void
part_cb (BbScanSide *self)
{
  bb_scan_area_set_part (self->area, gtk_toggle_button_get_active (self->patch_button) ? BB_SCAN_PART_PATCH
                                                                                       : BB_SCAN_PART_SUBJECT);
}

static void
bb_scan_side_dispose (GObject *object)
{
  BbScanSide *self = BB_SCAN_SIDE (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->session);
  g_clear_pointer (&self->scan, bb_scan_free);
  g_clear_pointer (&self->picture, bb_picture_free);
  g_clear_pointer (&self->content, g_bytes_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_SCAN_SIDE);

  G_OBJECT_CLASS (bb_scan_side_parent_class)->dispose (object);
}

static void
bb_scan_side_class_init (BbScanSideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_scan_side_dispose;
  g_type_ensure (BB_TYPE_SCAN_AREA);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-scan-side.ui");
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, hint_label);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, colours_label);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, problem_label);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, spinner);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, part_box);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, subject_button);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, patch_button);
  gtk_widget_class_bind_template_child (widget_class, BbScanSide, area);
  gtk_widget_class_bind_template_callback (widget_class, choose_cb);
  gtk_widget_class_bind_template_callback (widget_class, area_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, part_cb);
}

static void
bb_scan_side_init (BbScanSide *self)
{
  GtkDropTarget *drop = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (drop, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}

/* Whether @scan stands here already, or what is about to take its place: then nothing may disturb who draws on it. */
static gboolean
is_shown (BbScanSide   *self,
          const BbScan *scan)
{
  if (self->scan == NULL || !bb_scan_is_in_place_of (self->scan, scan))
    return FALSE;

  return gtk_spinner_get_spinning (self->spinner) || self->picture != NULL ||
         (self->content != NULL && self->scan->picture == scan->picture);
}

/**
 * bb_scan_side_show:
 * @self: a side
 * @session: the session
 * @title: what the scan is called, for people
 * @scan: a scan of the book, or one that is yet to be made: with its specimen, cycles and subject alone
 *
 * Shows a scan. Where it is the one that stands here already, or a picture was chosen that is yet to take its place,
 * all stays as it is.
 */
void
bb_scan_side_show (BbScanSide   *self,
                   BbSession    *session,
                   const char   *title,
                   const BbScan *scan)
{
  g_return_if_fail (BB_IS_SCAN_SIDE (self) && scan != NULL);

  g_set_object (&self->session, session);
  gtk_label_set_label (self->title_label, title);
  bb_compat_set_name (GTK_WIDGET (self->area), title);
  if (is_shown (self, scan))
    return;

  g_clear_pointer (&self->scan, bb_scan_free);
  self->scan = bb_record_copy (&bb_scan_table, scan);
  g_clear_pointer (&self->picture, bb_picture_free);
  g_clear_pointer (&self->content, g_bytes_unref);
  bb_scan_area_set_preview (self->area, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->hint_label), scan->picture == 0);
  gtk_widget_set_visible (self->part_box, FALSE);
  show_colours (self);
  begin_work (self);
  if (scan->picture != 0)
    bb_session_load_content_async (session, scan->picture, self->cancellable, stored_loaded_cb, g_object_ref (self));
  else
    gtk_spinner_stop (self->spinner);
}
