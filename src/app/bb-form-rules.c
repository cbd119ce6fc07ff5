/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form-rules"

#include "bb-form-rules.h"

#include "bb-advice-load.h"
#include "bb-list-row.h"
#include "bb-run-aim.h"

/* What is settled can be seen, but not changed. */
static void
set_settled (BbForm        *form,
             const BbField *field,
             gboolean       settled)
{
  BbFieldRow *row = bb_form_find_row (form, field);

  if (row != NULL)
    gtk_widget_set_sensitive (GTK_WIDGET (row), !settled);
}

/* What the plan leaves open is the person's to say. */
static void
follow_plan (BbForm     *form,
             BbBook     *book,
             BbWashTest *draft)
{
  g_autoptr (BbWashPlan) plan = draft->plan != 0 ? bb_book_load (book, &bb_wash_plan_table, draft->plan, NULL) : NULL;
  g_autoptr (BbWashTest) wanted = bb_record_copy (&bb_wash_test_table, draft);

  if (plan != NULL)
    bb_wash_test_follow (wanted, plan);
  for (guint i = 0; i < bb_wash_test_table.n_fields; i++)
    {
      const BbField *field = &bb_wash_test_table.fields[i];
      const gboolean is_followed = plan != NULL && bb_wash_test_is_followed (plan, field);
      g_autoptr (BbWashTest) now = bb_form_dup_draft (form);

      if (is_followed && !bb_field_equal (field, now, wanted))
        bb_form_take (form, field, wanted);
      set_settled (form, field, is_followed);
    }
}

/* Nothing goes away under the hands of a person who empties it to type it anew. */
static void
leave_out (BbForm           *form,
           const BbWashPlan *draft,
           const BbField    *field)
{
  BbFieldRow *row = bb_form_find_row (form, field);

  if (row != NULL && (gtk_widget_get_state_flags (GTK_WIDGET (row)) & GTK_STATE_FLAG_FOCUS_WITHIN) == 0)
    gtk_widget_set_visible (GTK_WIDGET (row), bb_wash_plan_asks_for (draft, field));
}

static void
settle_plan (BbForm     *form,
             BbBook     *book,
             BbWashPlan *draft)
{
  g_autoptr (BbWashPlan) plan = NULL;
  gint64 n_specimens = 0;

  for (guint i = 0; i < bb_wash_plan_table.n_fields; i++)
    leave_out (form, draft, &bb_wash_plan_table.fields[i]);
  if (draft->id != BB_INTEGER_NONE)
    plan = bb_book_load (book, &bb_wash_plan_table, draft->id, NULL);
  if (plan == NULL)
    return;
  n_specimens = bb_book_count_referring (book, &bb_wash_test_table, &bb_wash_plan_table, plan->id, NULL);
  for (guint i = 0; i < bb_wash_plan_table.n_fields; i++)
    set_settled (form, &bb_wash_plan_table.fields[i],
                 bb_wash_plan_is_settled (plan, draft, n_specimens > 0, &bb_wash_plan_table.fields[i]));
}

/* The box follows from what is printed: each weigh-in begins with it. */
static void
fill_in_box (BbForm      *form,
             BbBook      *book,
             const BbRun *draft)
{
  BbFieldRow *row = bb_form_find_row (form, bb_table_find_field (&bb_run_table, "weighed"));
  g_autoptr (BbWeighed) fresh = bb_weighed_new ();
  BbRunAim aim;

  if (row == NULL || draft->line == 0 || draft->revision == 0 || !bb_run_aim_load (book, draft, &aim, NULL))
    return;
  fresh->box_area_m2 = aim.box_area_m2;
  bb_list_row_set_fresh (BB_LIST_ROW (row), fresh);
}

/* It stands at the setting that it is about. A half-typed recipe is judged as far as it goes. */
static void
advise (BbForm           *form,
        BbSession        *session,
        const BbRevision *draft)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) advice = bb_advice_load (bb_session_get_book (session), draft, bb_session_get_units (session),
                                                 &error);

  if (advice == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      BbFieldRow *row = bb_form_find_row (form, &bb_revision_table.fields[i]);

      if (row != NULL)
        bb_field_row_set_advice (row, bb_advice_find (advice, &bb_revision_table.fields[i]));
    }
}

/**
 * bb_form_rules_apply:
 * @form: a form
 * @session: the session
 *
 * Leaves alone what the book would not let go of, fills in what follows from a record that is chosen, asks only for
 * what belongs to the record, and says what a person should know of a setting. To be called when the form is filled,
 * and whenever it changes.
 */
void
bb_form_rules_apply (BbForm    *form,
                     BbSession *session)
{
  const BbTable *table = NULL;
  BbBook *book = NULL;
  gpointer draft = NULL;

  g_return_if_fail (BB_IS_FORM (form) && BB_IS_SESSION (session));

  table = bb_form_get_table (form);
  if (table != &bb_wash_test_table && table != &bb_wash_plan_table && table != &bb_revision_table &&
      table != &bb_run_table)
    return;
  book = bb_session_get_book (session);
  draft = bb_form_dup_draft (form);
  if (table == &bb_run_table)
    fill_in_box (form, book, draft);
  else if (table == &bb_wash_test_table)
    follow_plan (form, book, draft);
  else if (table == &bb_revision_table)
    advise (form, session, draft);
  else
    settle_plan (form, book, draft);
  bb_record_free (table, draft);
}
