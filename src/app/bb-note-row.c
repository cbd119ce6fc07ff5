/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-note-row"

#include "bb-note-row.h"

#include <glib/gi18n-lib.h>

#include "bb-signal.h"

struct _BbNoteRow
{
  BbFieldRow parent_instance;

  GtkTextView *view;
};

G_DEFINE_FINAL_TYPE (BbNoteRow, bb_note_row, BB_TYPE_FIELD_ROW)

static void
changed_cb (GtkTextBuffer *buffer,
            BbNoteRow     *self)
{
  (void) buffer;

  bb_field_row_edited (BB_FIELD_ROW (self));
}

static char *
bb_note_row_dup_state (BbFieldRow *row)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (BB_NOTE_ROW (row)->view);
  GtkTextIter start;
  GtkTextIter end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);

  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
set_text (BbFieldRow *row,
          const char *text)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (BB_NOTE_ROW (row)->view);

  g_signal_handlers_block_by_func (buffer, BB_HANDLER (changed_cb), row);
  gtk_text_buffer_set_text (buffer, text, -1);
  g_signal_handlers_unblock_by_func (buffer, BB_HANDLER (changed_cb), row);
}

static void
bb_note_row_set_state (BbFieldRow  *row,
                       const char  *state,
                       BbUnitSystem system)
{
  (void) system;

  set_text (row, state);
}

static void
bb_note_row_load (BbFieldRow    *row,
                  gconstpointer  record)
{
  const char *text = bb_field_get_text (bb_field_row_get_field (row), record);

  set_text (row, text != NULL ? text : "");
}

static gboolean
bb_note_row_store (BbFieldRow  *row,
                   gpointer     record,
                   char       **message)
{
  g_autofree char *text = g_strstrip (bb_note_row_dup_state (row));

  (void) message;

  bb_field_set_text (bb_field_row_get_field (row), record, *text != '\0' ? text : NULL);

  return TRUE;
}

static void
bb_note_row_build (BbFieldRow *row)
{
  BbNoteRow *self = BB_NOTE_ROW (row);
  GtkWidget *window = gtk_scrolled_window_new ();

  self->view = GTK_TEXT_VIEW (gtk_text_view_new ());
  gtk_text_view_set_wrap_mode (self->view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (self->view, FALSE);
  gtk_text_view_set_top_margin (self->view, 6);
  gtk_text_view_set_bottom_margin (self->view, 6);
  gtk_text_view_set_left_margin (self->view, 8);
  gtk_text_view_set_right_margin (self->view, 8);
  g_signal_connect (gtk_text_view_get_buffer (self->view), "changed", G_CALLBACK (changed_cb), self);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (window), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (window), 64);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (window), 180);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (window), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (window), GTK_WIDGET (self->view));
  gtk_widget_add_css_class (window, "note");
  bb_field_row_set_below (row, window, GTK_WIDGET (self->view));
}

static void
bb_note_row_class_init (BbNoteRowClass *klass)
{
  BbFieldRowClass *row_class = BB_FIELD_ROW_CLASS (klass);

  row_class->build = bb_note_row_build;
  row_class->load = bb_note_row_load;
  row_class->store = bb_note_row_store;
  row_class->dup_state = bb_note_row_dup_state;
  row_class->set_state = bb_note_row_set_state;
}

static void
bb_note_row_init (BbNoteRow *self)
{
  (void) self;
}
