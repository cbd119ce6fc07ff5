/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-takes-view"

#include "bb-takes-view.h"

#include "bb-advice-list.h"
#include "bb-book-jobs.h"
#include "bb-evidence-load.h"
#include "bb-job-words.h"
#include "bb-moment.h"

struct _BbTakesView
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *label;
  BbAdviceList *advice;
};

G_DEFINE_FINAL_TYPE (BbTakesView, bb_takes_view, GTK_TYPE_BOX)

static void
bb_takes_view_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_TAKES_VIEW);

  G_OBJECT_CLASS (bb_takes_view_parent_class)->dispose (object);
}

static void
bb_takes_view_class_init (BbTakesViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_takes_view_dispose;
  g_type_ensure (BB_TYPE_ADVICE_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-takes-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbTakesView, label);
  gtk_widget_class_bind_template_child (widget_class, BbTakesView, advice);
}

static void
bb_takes_view_init (BbTakesView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_takes_view_show:
 * @self: a view
 * @session: the session
 * @mix: a mix whose containers are chosen
 */
void
bb_takes_view_show (BbTakesView      *self,
                    BbSession        *session,
                    const BbMixSheet *mix)
{
  const BbUnitContext *units = bb_session_get_units (session);
  g_autoptr (GPtrArray) warnings = bb_words_of_mix_warnings (mix, units);
  g_autoptr (GString) text = g_string_new (NULL);

  g_return_if_fail (BB_IS_TAKES_VIEW (self));

  for (guint i = 0; mix->takes != NULL && i < mix->takes->len; i++)
    {
      g_autofree char *take = bb_words_of_take (&g_array_index (mix->takes, BbTake, i), units);

      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", take);
    }
  gtk_label_set_label (self->label, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->label), text->len > 0);
  bb_advice_list_clear (self->advice);
  for (guint i = 0; i < warnings->len; i++)
    bb_advice_list_add_warning (self->advice, warnings->pdata[i]);
  gtk_widget_set_visible (GTK_WIDGET (self->advice), warnings->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self), text->len > 0 || warnings->len > 0);
}

/**
 * bb_takes_view_reckon:
 * @self: a view
 * @session: the session
 * @supply: key of a pretreat, 0 for none
 * @concentrate_g: how much of it is to be taken, in g
 *
 * Shows which containers that would be taken from today; nothing where the shop has never entered one.
 *
 * Returns: (transfer full) (nullable): the mix with these containers; %NULL where there are none
 */
BbMixSheet *
bb_takes_view_reckon (BbTakesView *self,
                      BbSession   *session,
                      gint64       supply,
                      double       concentrate_g)
{
  BbBook *book = bb_session_get_book (session);
  g_autoptr (BbMixSheet) mix = bb_mix_sheet_new ();
  g_autofree char *today = bb_dup_today ();
  g_autoptr (BbSupply) product = NULL;
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (BB_IS_TAKES_VIEW (self), NULL);

  if (supply != 0)
    product = bb_book_load (book, &bb_supply_table, supply, &error);
  if (product != NULL)
    stock = bb_book_load_stock (book, supply, &error);
  if (error != NULL)
    bb_session_report (session, error);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  if (stock == NULL || stock->len == 0)
    return NULL;

  mix->supply = supply;
  mix->concentrate_g = concentrate_g;
  bb_mix_sheet_choose_lots (mix, product, stock, today);
  bb_takes_view_show (self, session, mix);

  return g_steal_pointer (&mix);
}
