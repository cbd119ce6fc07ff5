/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-result"

#include "bb-mix-result.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-list.h"
#include "bb-advice.h"
#include "bb-takes-view.h"
#include "bb-worksheet-view.h"

struct _BbMixResult
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *departure_label;
  BbAdviceList *advice;
  BbWorksheetView *worksheet;
  BbTakesView *takes;
};

G_DEFINE_FINAL_TYPE (BbMixResult, bb_mix_result, GTK_TYPE_BOX)

/* What was changed against the recipe is said before anything is poured. */
static void
show_departures (BbMixResult *self,
                 const char  *names)
{
  g_autofree char *text = names != NULL ? g_strdup_printf (_("Differs from the recipe: %s."), names) : NULL;

  gtk_label_set_label (self->departure_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->departure_label), text != NULL);
}

/* What the supplier says of what is about to be poured. */
static void
show_advice (BbMixResult     *self,
             const GPtrArray *advice)
{
  guint n_here = 0;

  bb_advice_list_clear (self->advice);
  for (guint i = 0; advice != NULL && i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      if (one->field->station != BB_STATION_PRETREAT)
        continue;
      bb_advice_list_add_warning (self->advice, one->text);
      n_here++;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->advice), n_here > 0);
}

/* How far a container reaches is counted from the one that the mix is taken from, unless a person said what is left. */
static void
show_sheet (BbMixResult   *self,
            BbSession     *session,
            BbWorksheetIn *in,
            gint64         pretreat,
            BbWorksheet   *sheet)
{
  g_autoptr (BbMixSheet) mix = bb_takes_view_reckon (self->takes, session, pretreat, sheet->mix.concentrate_g);
  const char *container = NULL;
  BbWorksheet counted;

  if (mix != NULL && bb_worksheet_take_container (in, mix) && bb_worksheet_compute (in, &counted, NULL))
    {
      container = g_array_index (mix->takes, BbTake, 0).code;
      *sheet = counted;
    }
  bb_worksheet_view_show (self->worksheet, session, in, sheet, container);
}

static void
show_none (BbMixResult *self,
           const char  *text)
{
  bb_worksheet_view_show_empty (self->worksheet, text);
  gtk_widget_set_visible (GTK_WIDGET (self->takes), FALSE);
}

/**
 * bb_mix_result_show:
 * @self: a result
 * @session: the session
 * @in: the figures of a mix; what the container holds is filled in where the book says it
 * @pretreat: key of the pretreat that is mixed, or 0 where that is not known
 * @departures: (nullable): what differs from the recipe, by name; %NULL for nothing
 * @advice: (nullable) (element-type BbAdvice): what a person should know of the figures; %NULL for nothing
 *
 * Reckons the worksheet and shows it. Where the figures do not go together, it says why.
 */
void
bb_mix_result_show (BbMixResult   *self,
                    BbSession     *session,
                    BbWorksheetIn *in,
                    gint64         pretreat,
                    const char    *departures,
                    GPtrArray     *advice)
{
  g_autoptr (GError) error = NULL;
  BbWorksheet sheet;

  g_return_if_fail (BB_IS_MIX_RESULT (self) && in != NULL);

  show_departures (self, departures);
  show_advice (self, advice);
  bb_worksheet_view_set_pretreat (self->worksheet, session, pretreat);
  if (bb_worksheet_compute (in, &sheet, &error))
    show_sheet (self, session, in, pretreat, &sheet);
  else
    show_none (self, error->message);
}

/**
 * bb_mix_result_show_empty:
 * @self: a result
 * @text: what is still to be done before there is a result
 */
void
bb_mix_result_show_empty (BbMixResult *self,
                          const char  *text)
{
  g_return_if_fail (BB_IS_MIX_RESULT (self) && text != NULL);

  show_departures (self, NULL);
  show_advice (self, NULL);
  show_none (self, text);
}

static void
bb_mix_result_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_MIX_RESULT);

  G_OBJECT_CLASS (bb_mix_result_parent_class)->dispose (object);
}

static void
bb_mix_result_class_init (BbMixResultClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_mix_result_dispose;

  g_type_ensure (BB_TYPE_ADVICE_LIST);
  g_type_ensure (BB_TYPE_TAKES_VIEW);
  g_type_ensure (BB_TYPE_WORKSHEET_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-result.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixResult, departure_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixResult, advice);
  gtk_widget_class_bind_template_child (widget_class, BbMixResult, worksheet);
  gtk_widget_class_bind_template_child (widget_class, BbMixResult, takes);
}

static void
bb_mix_result_init (BbMixResult *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
