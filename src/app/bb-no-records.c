/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-no-records"

#include "bb-no-records.h"

#include <glib/gi18n-lib.h>

struct _BbNoRecords
{
  AdwBin parent_instance;

  /* template */
  GtkStack *stack;
  AdwStatusPage *first_page;
  GtkButton *first_button;
  GtkButton *other_button;
};

G_DEFINE_FINAL_TYPE (BbNoRecords, bb_no_records, ADW_TYPE_BIN)

static void
bb_no_records_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_no_records_parent_class)->dispose (object);
}

static void
bb_no_records_class_init (BbNoRecordsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_no_records_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-no-records.ui");
  gtk_widget_class_bind_template_child (widget_class, BbNoRecords, stack);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecords, first_page);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecords, first_button);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecords, other_button);
}

static void
bb_no_records_init (BbNoRecords *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_no_records_start:
 * @self: what stands where a record would
 * @info: what the catalogue holds
 *
 * To be called once.
 */
void
bb_no_records_start (BbNoRecords           *self,
                     const BbCatalogueInfo *info)
{
  g_return_if_fail (BB_IS_NO_RECORDS (self) && info != NULL);

  adw_status_page_set_icon_name (self->first_page, info->icon_name);
  adw_status_page_set_title (self->first_page, _(info->empty_title));
  adw_status_page_set_description (self->first_page, _(info->empty_text));
  gtk_button_set_label (self->first_button, _(info->add_title));
  if (info->other_action != NULL)
    {
      gtk_button_set_label (self->other_button, _(info->other_title));
      gtk_actionable_set_action_name (GTK_ACTIONABLE (self->other_button), info->other_action);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->other_button), info->other_action != NULL);
}

/**
 * bb_no_records_show:
 * @self: what stands where a record would
 * @is_narrowed: whether only some of the records were asked for
 */
void
bb_no_records_show (BbNoRecords *self,
                    gboolean     is_narrowed)
{
  g_return_if_fail (BB_IS_NO_RECORDS (self));

  gtk_stack_set_visible_child_name (self->stack, is_narrowed ? "nothing" : "first");
}
