/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-trace"

#include "bb-run-trace.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-show.h"
#include "bb-trace-dialog.h"

/* Characters of a line of the menu. */
#define WIDEST 44

struct _BbRunTrace
{
  AdwBin parent_instance;

  /* template */
  GtkPopover *popover;
  GtkBox *box;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbRunTrace, bb_run_trace, ADW_TYPE_BIN)

static void
open_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbRunTrace *self = BB_RUN_TRACE (widget);
  const char *table = NULL;
  gint64 id = 0;

  (void) name;

  gtk_popover_popdown (self->popover);
  g_variant_get (parameter, "(&sx)", &table, &id);
  bb_trace_dialog_present (widget, self->session, bb_book_find_table (table), id);
}

static gboolean
has (BbRunTrace *self,
     GVariant   *target)
{
  for (GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (self->box)); button != NULL;
       button = gtk_widget_get_next_sibling (button))
    if (g_variant_equal (gtk_actionable_get_action_target_value (GTK_ACTIONABLE (button)), target))
      return TRUE;

  return FALSE;
}

/* A container may have been taken from twice, and one press both dry and cure. */
static void
add (BbRunTrace    *self,
     const BbTable *table,
     gint64         id)
{
  g_autoptr (GVariant) target = g_variant_ref_sink (g_variant_new ("(sx)", table->name, id));
  g_autofree char *name = NULL;
  g_autofree char *text = NULL;
  GtkWidget *button = NULL;
  GtkLabel *label = NULL;

  if (id == 0 || has (self, target))
    return;
  name = bb_show_name (self->session, table, id);
  /* Translators: what kind of thing it is, and its name. */
  text = g_strdup_printf (_("%s: %s"), _(table->title), name);
  button = gtk_button_new_with_label (text);
  label = GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button)));
  gtk_widget_add_css_class (button, "flat");
  gtk_label_set_xalign (label, 0.0f);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (label, WIDEST);
  gtk_actionable_set_action_target_value (GTK_ACTIONABLE (button), target);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "trace.open");
  gtk_box_append (self->box, button);
}

static void
bb_run_trace_dispose (GObject *object)
{
  g_clear_object (&BB_RUN_TRACE (object)->session);
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_run_trace_parent_class)->dispose (object);
}

static void
bb_run_trace_class_init (BbRunTraceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_run_trace_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-run-trace.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRunTrace, popover);
  gtk_widget_class_bind_template_child (widget_class, BbRunTrace, box);
  gtk_widget_class_install_action (widget_class, "trace.open", "(sx)", open_action);
}

static void
bb_run_trace_init (BbRunTrace *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_run_trace_show:
 * @self: a trace menu
 * @session: the session
 * @run: the run
 * @entries: (element-type BbLotEntry): what was taken for it
 *
 * Offers what had a part in a run, in place of the run before.
 */
void
bb_run_trace_show (BbRunTrace      *self,
                   BbSession       *session,
                   const BbRun     *run,
                   const GPtrArray *entries)
{
  g_return_if_fail (BB_IS_RUN_TRACE (self) && BB_IS_SESSION (session) && run != NULL && entries != NULL);

  g_set_object (&self->session, session);
  bb_children_empty_box (self->box);
  add (self, &bb_revision_table, run->revision);
  for (guint i = 0; i < entries->len; i++)
    add (self, &bb_lot_table, ((const BbLotEntry *) entries->pdata[i])->lot);
  add (self, &bb_equipment_table, run->sprayer);
  add (self, &bb_equipment_table, run->dryer);
  add (self, &bb_equipment_table, run->printer);
  add (self, &bb_equipment_table, run->curer);
  add (self, &bb_person_table, run->person);
}
