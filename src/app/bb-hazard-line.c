/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-hazard-line"

#include "bb-hazard-line.h"

#include <glib/gi18n-lib.h>

#include "bb-hazard-view.h"
#include "bb-text-box.h"

struct _BbHazardLine
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *name_label;
  GtkLabel *statements_label;

  /* owned; read when the first statement is shown */
  BbHazards *hazards;
};

G_DEFINE_FINAL_TYPE (BbHazardLine, bb_hazard_line, ADW_TYPE_BIN)

static char *
describe (BbHazardLine   *self,
          const BbSupply *supply)
{
  if (supply->hazards == NULL)
    return NULL;
  if (self->hazards == NULL)
    self->hazards = bb_hazard_view_load_hazards ();

  return self->hazards != NULL ? bb_hazards_describe (self->hazards, supply->hazards, g_get_language_names ()) : NULL;
}

/**
 * bb_hazard_line_show:
 * @self: a line
 * @session: the session
 * @supply: key of the supply that is used, 0 for none
 */
void
bb_hazard_line_show (BbHazardLine *self,
                     BbSession    *session,
                     gint64        supply)
{
  g_autoptr (BbSupply) record = NULL;
  g_autofree char *statements = NULL;
  g_autofree char *name = NULL;

  g_return_if_fail (BB_IS_HAZARD_LINE (self) && BB_IS_SESSION (session));

  if (supply != 0)
    record = bb_book_load (bb_session_get_book (session), &bb_supply_table, supply, NULL);
  statements = record != NULL ? describe (self, record) : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), statements != NULL);
  if (statements == NULL)
    return;
  /* Translators: the name of a supply. */
  name = g_strdup_printf (_("%s: the supplier's safety data sheet comes first."), record->name);
  gtk_label_set_label (self->name_label, name);
  gtk_label_set_label (self->statements_label, statements);
}

static void
bb_hazard_line_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_hazard_line_parent_class)->dispose (object);
}

static void
bb_hazard_line_finalize (GObject *object)
{
  bb_hazards_free (BB_HAZARD_LINE (object)->hazards);

  G_OBJECT_CLASS (bb_hazard_line_parent_class)->finalize (object);
}

static void
bb_hazard_line_class_init (BbHazardLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_hazard_line_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_hazard_line_finalize;
  g_type_ensure (BB_TYPE_TEXT_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-hazard-line.ui");
  gtk_widget_class_bind_template_child (widget_class, BbHazardLine, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbHazardLine, statements_label);
}

static void
bb_hazard_line_init (BbHazardLine *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
