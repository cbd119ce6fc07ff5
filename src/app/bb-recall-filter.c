/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recall-filter"

#include "bb-recall-filter.h"

#include <glib/gi18n-lib.h>

#include "bb-form.h"
#include "bb-show.h"
#include "bb-signal.h"

struct _BbRecallFilter
{
  AdwBin parent_instance;

  /* template */
  GtkMenuButton *button;
  GtkPopover *popover;
  AdwBin *form_bin;
  GtkButton *clear_button;

  /* owned; @narrow is what the form held last that makes sense */
  BbSession *session;
  BbNarrow *narrow;

  /* borrowed; made when it is first opened, so that the list does not wait for it */
  BbForm *form;
};

G_DEFINE_FINAL_TYPE (BbRecallFilter, bb_recall_filter, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
take (BbRecallFilter *self,
      BbNarrow       *narrow)
{
  gboolean is_set = !bb_narrow_is_empty (narrow);

  bb_narrow_free (self->narrow);
  self->narrow = narrow;
  gtk_widget_set_sensitive (GTK_WIDGET (self->clear_button), is_set);
  if (is_set)
    gtk_widget_add_css_class (GTK_WIDGET (self->button), "accent");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->button), "accent");
}

/* What is half typed narrows nothing anew. */
static void
form_changed_cb (BbRecallFilter *self)
{
  BbNarrow *narrow = bb_form_dup_record (self->form, FALSE);

  if (narrow == NULL)
    return;
  if (bb_record_equal (&bb_narrow_table, narrow, self->narrow))
    {
      bb_narrow_free (narrow);
      return;
    }
  take (self, narrow);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
load_form (BbRecallFilter *self)
{
  g_signal_handlers_block_by_func (self->form, BB_HANDLER (form_changed_cb), self);
  bb_form_load (self->form, self->narrow);
  g_signal_handlers_unblock_by_func (self->form, BB_HANDLER (form_changed_cb), self);
}

static void
shown_cb (BbRecallFilter *self)
{
  if (self->form == NULL)
    {
      self->form = BB_FORM (bb_form_new (self->session, &bb_narrow_table));
      g_signal_connect_object (self->form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);
      adw_bin_set_child (self->form_bin, GTK_WIDGET (self->form));
    }
  load_form (self);
  gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

static void
clear_cb (BbRecallFilter *self)
{
  bb_recall_filter_clear (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  if (self->form != NULL)
    gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

/**
 * bb_recall_filter_set_session:
 * @self: a filter
 * @session: the session in whose units masses are written
 */
void
bb_recall_filter_set_session (BbRecallFilter *self,
                              BbSession      *session)
{
  g_return_if_fail (BB_IS_RECALL_FILTER (self) && self->session == NULL);

  self->session = g_object_ref (session);
}

/**
 * bb_recall_filter_get_narrow:
 * @self: a filter
 *
 * Returns: (nullable): what is narrowed by, %NULL where it is nothing
 */
const BbNarrow *
bb_recall_filter_get_narrow (BbRecallFilter *self)
{
  g_return_val_if_fail (BB_IS_RECALL_FILTER (self), NULL);

  return bb_narrow_is_empty (self->narrow) ? NULL : self->narrow;
}

/**
 * bb_recall_filter_dup_summary:
 * @self: a filter
 *
 * Returns: (transfer full): what is narrowed by, as a person reads it; an empty text where it is nothing
 */
char *
bb_recall_filter_dup_summary (BbRecallFilter *self)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (BB_IS_RECALL_FILTER (self), NULL);

  for (guint i = 0; i < bb_narrow_table.n_fields; i++)
    {
      const BbField *field = &bb_narrow_table.fields[i];
      g_autofree char *value = NULL;

      if (!bb_field_is_set (field, self->narrow))
        continue;
      value = bb_show_field (self->session, &bb_narrow_table, field, self->narrow);
      /* Translators: what is narrowed by, and its value: "Fibre: Cotton". */
      g_ptr_array_add (parts, g_strdup_printf (_("%s: %s"), _(field->title), value));
    }
  g_ptr_array_add (parts, NULL);

  return g_strjoinv (" · ", (char **) parts->pdata);
}

/**
 * bb_recall_filter_clear:
 * @self: a filter
 *
 * Lets everything through from now on, and says so to nobody.
 */
void
bb_recall_filter_clear (BbRecallFilter *self)
{
  g_return_if_fail (BB_IS_RECALL_FILTER (self));

  take (self, bb_narrow_new ());
  if (self->form != NULL)
    load_form (self);
}

static void
bb_recall_filter_dispose (GObject *object)
{
  BbRecallFilter *self = BB_RECALL_FILTER (object);

  self->form = NULL;
  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_recall_filter_parent_class)->dispose (object);
}

static void
bb_recall_filter_finalize (GObject *object)
{
  bb_narrow_free (BB_RECALL_FILTER (object)->narrow);

  G_OBJECT_CLASS (bb_recall_filter_parent_class)->finalize (object);
}

static void
bb_recall_filter_class_init (BbRecallFilterClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recall_filter_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_recall_filter_finalize;

  /**
   * BbRecallFilter::changed:
   *
   * A person narrows by something else now.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_RECALL_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recall-filter.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecallFilter, button);
  gtk_widget_class_bind_template_child (widget_class, BbRecallFilter, popover);
  gtk_widget_class_bind_template_child (widget_class, BbRecallFilter, form_bin);
  gtk_widget_class_bind_template_child (widget_class, BbRecallFilter, clear_button);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, clear_cb);
}

static void
bb_recall_filter_init (BbRecallFilter *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  take (self, bb_narrow_new ());
}
