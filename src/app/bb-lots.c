/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-lots"

#include "bb-lots.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-compat.h"
#include "bb-gone-list.h"
#include "bb-lot-row.h"
#include "bb-moment.h"
#include "bb-record-dialog.h"
#include "bb-session-stock.h"
#include "bb-show.h"
#include "bb-trace-dialog.h"
#include "bb-word-badge.h"

struct _BbLots
{
  GtkBox parent_instance;

  /* template */
  BbWordBadge *badge;
  GtkLabel *sum_label;
  GtkListBox *list;
  BbGoneList *gone;

  /* owned */
  BbSession *session;

  gint64 supply;
};

G_DEFINE_FINAL_TYPE (BbLots, bb_lots, GTK_TYPE_BOX)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbLots *self = BB_LOTS (widget);
  g_autoptr (BbLot) lot = bb_lot_new ();

  (void) name;
  (void) parameter;

  lot->supply = self->supply;
  lot->received_at = bb_dup_today ();
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, lot);
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbLots *self = BB_LOTS (widget);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbLot) lot = bb_book_load (bb_session_get_book (self->session), &bb_lot_table,
                                        g_variant_get_int64 (parameter), &error);

  (void) name;

  if (lot == NULL)
    bb_session_report (self->session, error);
  else
    g_signal_emit (self, signals[SIGNAL_EDIT], 0, lot);
}

static void
open_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  (void) name;

  bb_session_open_lot (BB_LOTS (widget)->session, g_variant_get_int64 (parameter));
}

static void
ask (BbLots        *self,
     const char    *title,
     const BbTable *table,
     gpointer       record)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));

  gtk_window_present (GTK_WINDOW (bb_record_dialog_new (window, self->session, title, table, record)));
}

static void
trace_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  (void) name;

  bb_trace_dialog_present (widget, BB_LOTS (widget)->session, &bb_lot_table, g_variant_get_int64 (parameter));
}

static void
weigh_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbWeighing *weighing = bb_weighing_new ();

  (void) name;

  weighing->lot = g_variant_get_int64 (parameter);
  ask (BB_LOTS (widget), _("Weigh the Container"), &bb_weighing_table, weighing);
}

static void
dispose_action (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  BbDisposal *disposal = bb_disposal_new ();

  (void) name;

  disposal->lot = g_variant_get_int64 (parameter);
  ask (BB_LOTS (widget), _("Use Up or Throw Away"), &bb_disposal_table, disposal);
}

static void
show_sum (BbLots          *self,
          const BbSupply  *supply,
          const GPtrArray *stock,
          const char      *today)
{
  const BbUnitContext *units = bb_session_get_units (self->session);
  const double left_g = bb_stock_sum_left (stock, today);
  const gboolean is_low = bb_supply_is_low (supply, left_g);
  g_autofree char *left = bb_quantity_format_with_unit (BB_QUANTITY_MASS, left_g, units);
  g_autofree char *least = bb_quantity_format_with_unit (BB_QUANTITY_MASS, supply->low_stock_g, units);
  g_autofree char *text = NULL;

  if (stock->len == 0)
    text = g_strdup (_("None in the shop. Mixes and runs say which container was used, so that a fault can be traced "
                       "to it and nothing past its date is poured."));
  else if (isnan (left_g))
    text = g_strdup (_("How much is left is not counted."));
  else if (isnan (supply->low_stock_g))
    text = g_strdup_printf (_("%s may still be used."), left);
  else
    text = g_strdup_printf (_("%s may still be used; the shop wants to have %s."), left, least);
  gtk_label_set_label (self->sum_label, text);
  bb_word_badge_say (self->badge, BB_TONE_SOON, is_low ? _("Low stock: time to order") : "");
}

static char *
count_gone (guint n)
{
  return g_strdup_printf (ngettext ("%u container that is gone", "%u containers that are gone", n), n);
}

static char *
describe_gone (BbSession     *session,
               gconstpointer  record)
{
  (void) session;

  return g_strdup (((const BbLot *) record)->code);
}

static const BbGoneInfo gone_info = { &bb_lot_table, count_gone, describe_gone };

static void
bb_lots_dispose (GObject *object)
{
  g_clear_object (&BB_LOTS (object)->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_LOTS);

  G_OBJECT_CLASS (bb_lots_parent_class)->dispose (object);
}

static void
bb_lots_class_init (BbLotsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_lots_dispose;

  /**
   * BbLots::edit:
   * @lot: the lot to edit; a new one has no key
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_LOTS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                       G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_GONE_LIST);
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-lots.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLots, badge);
  gtk_widget_class_bind_template_child (widget_class, BbLots, sum_label);
  gtk_widget_class_bind_template_child (widget_class, BbLots, list);
  gtk_widget_class_bind_template_child (widget_class, BbLots, gone);
  gtk_widget_class_install_action (widget_class, "lots.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "lots.edit", "x", edit_action);
  gtk_widget_class_install_action (widget_class, "lots.open", "x", open_action);
  gtk_widget_class_install_action (widget_class, "lots.weigh", "x", weigh_action);
  gtk_widget_class_install_action (widget_class, "lots.dispose", "x", dispose_action);
  gtk_widget_class_install_action (widget_class, "lots.trace", "x", trace_action);
}

static void
bb_lots_init (BbLots *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_lots_new:
 *
 * Returns: (transfer floating): the containers of no supply
 */
GtkWidget *
bb_lots_new (void)
{
  return g_object_new (BB_TYPE_LOTS, NULL);
}

/**
 * bb_lots_show:
 * @self: the containers
 * @session: the session
 * @supply: the supply whose containers to show
 */
void
bb_lots_show (BbLots         *self,
              BbSession      *session,
              const BbSupply *supply)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) stock = bb_book_load_stock (bb_session_get_book (session), supply->id, &error);

  g_return_if_fail (BB_IS_LOTS (self));

  if (stock == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  g_set_object (&self->session, session);
  self->supply = supply->id;
  bb_compat_empty_list (self->list);
  for (guint i = 0; i < stock->len; i++)
    gtk_list_box_append (self->list, bb_lot_row_new (session, stock->pdata[i], today));
  gtk_widget_set_visible (GTK_WIDGET (self->list), stock->len > 0);
  show_sum (self, supply, stock, today);
  bb_gone_list_show (self->gone, session, &gone_info, &bb_supply_table, supply->id, FALSE);
}

/**
 * bb_lots_mark:
 * @self: the containers of a supply
 * @lot: key of one of them
 *
 * Puts the keyboard on its row, which scrolls to it.
 */
void
bb_lots_mark (BbLots *self,
              gint64  lot)
{
  GtkListBoxRow *row = NULL;

  g_return_if_fail (BB_IS_LOTS (self));

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (bb_lot_row_get_id (BB_LOT_ROW (row)) == lot)
      {
        gtk_widget_grab_focus (GTK_WIDGET (row));
        return;
      }
  bb_gone_list_focus (self->gone, lot);
}
