/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-plan-words.h"

#include <glib/gi18n-lib.h>

#include "bb-format.h"
#include "bb-words.h"

/**
 * bb_plan_words_of_standard:
 * @plan: a wash plan
 *
 * Returns: (transfer full): in a few words what it follows: the standard to buy, and its procedure
 */
char *
bb_plan_words_of_standard (const BbWashPlan *plan)
{
  g_return_val_if_fail (plan != NULL, NULL);

  if (!bb_wash_plan_is_published (plan))
    return g_strdup (bb_choices_get_title (&bb_plan_origin_choices, BB_PLAN_ORIGIN_SHOP));

  /* Translators: a standard, and the code of a procedure in it: "ISO 6330:2021, 4N". */
  return g_strdup_printf (_("%s, %s"), plan->publication, plan->procedure);
}

/**
 * bb_plan_words_of_method:
 * @plan: a wash plan
 * @units: the units to show
 *
 * Returns: (transfer full): one line for a list: what it follows, how warm it washes, and how it dries
 */
char *
bb_plan_words_of_method (const BbWashPlan    *plan,
                         const BbUnitContext *units)
{
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;
  g_autofree char *standard = bb_plan_words_of_standard (plan);

  g_strv_builder_add (parts, standard);
  if (!isnan (plan->wash_c))
    {
      g_autofree char *warmth = bb_quantity_format_with_unit (BB_QUANTITY_TEMPERATURE, plan->wash_c, units);

      g_strv_builder_add (parts, warmth);
    }
  if (plan->drying != BB_CHOICE_NONE)
    g_strv_builder_add (parts, bb_choices_get_title (&bb_drying_choices, plan->drying));
  list = g_strv_builder_end (parts);

  return g_strjoinv (" · ", list);
}

/**
 * bb_plan_words_of_source:
 * @plan: a wash plan
 *
 * Returns: (transfer full): whole sentences that say which standard to buy, or that there is none behind the plan
 */
char *
bb_plan_words_of_source (const BbWashPlan *plan)
{
  g_return_val_if_fail (plan != NULL, NULL);

  if (!bb_wash_plan_is_published (plan))
    return g_strdup (_("No standard stands behind this plan: its grades can be compared with those of specimens that "
                       "were washed to the same plan, and with no others."));

  return g_strdup_printf (_("Buy %s, and wash by its procedure %s. Only parameters of it are in this book: its text "
                            "stays with its publisher, and comes first where the two differ."),
                          plan->publication, plan->procedure);
}

/**
 * bb_plan_words_of_use:
 * @plan: a wash plan
 * @n_specimens: how many specimens are washed to it
 *
 * Returns: (transfer full): whole sentences that say what can be changed of it, and what to do otherwise
 */
char *
bb_plan_words_of_use (const BbWashPlan *plan,
                      gint64            n_specimens)
{
  g_return_val_if_fail (plan != NULL, NULL);

  if (n_specimens > 0)
    return g_strdup_printf (ngettext ("%d specimen is washed to this plan. How it washes, and where it grades, stays "
                                      "as it is, so that the result means what it meant. To wash otherwise, copy the "
                                      "plan as one of your own.",
                                      "%d specimens are washed to this plan. How it washes, and where it grades, "
                                      "stays as it is, so that their results mean what they meant. To wash "
                                      "otherwise, copy the plan as one of your own.",
                                      (gulong) n_specimens), (int) n_specimens);
  if (!bb_wash_plan_is_published (plan))
    return g_strdup (_("No specimen is washed to this plan yet: all of it can be changed."));

  return g_strdup (_("No specimen is washed to this plan yet. If the standard in your hand says otherwise, edit the "
                     "plan and say that its numbers were checked against the standard. To wash otherwise than the "
                     "standard, copy the plan as one of your own."));
}

/**
 * bb_plan_words_of_next:
 * @plan: (nullable): the wash plan of a specimen
 * @due: when that specimen has to be read next
 * @units: the units to show
 *
 * Returns: (transfer full): whole sentences that say how a specimen is washed, by which standard, and when it is graded
 */
char *
bb_plan_words_of_next (const BbWashPlan    *plan,
                       const BbWashDue     *due,
                       const BbUnitContext *units)
{
  g_autoptr (GString) out = g_string_new (NULL);

  g_return_val_if_fail (due != NULL, NULL);

  if (plan != NULL)
    {
      const BbField *grade_at = bb_table_find_field (&bb_wash_plan_table, "grade_at");
      g_autofree char *method = bb_plan_words_of_method (plan, units);
      g_autofree char *stops = bb_field_format (&bb_wash_plan_table, grade_at, plan, units);

      /* Translators: the code and the name of a wash plan, how it washes, and after how many washes it grades. */
      g_string_append_printf (out, _("Washed to %s, %s (%s), and graded at wash %s."), plan->code, plan->name, method,
                              stops);
    }
  else
    g_string_append (out, _("Washed to no plan of this book."));
  if (due->state != BB_DUE_DONE)
    {
      g_autofree char *day = bb_words_of_day (due->due_on);

      g_string_append_c (out, ' ');
      /* Translators: a number of washes, and a day. */
      g_string_append_printf (out, _("The next reading is at wash %d, due on %s."), (int) due->cycles, day);
    }

  return g_strdup (out->str);
}
