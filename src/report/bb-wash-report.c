/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-wash-report.h"

#include <glib/gi18n-lib.h>

#include "bb-evidence-load.h"
#include "bb-wash-charts.h"
#include "bb-wash-proof.h"
#include "bb-wash-report-private.h"
#include "bb-words.h"

#define FIGURE_HEIGHT 225.0

static const BbSpecimen *
only_specimen (const BbWashReport *self)
{
  return self->about->wash_test != 0 ? self->evidence->specimens->pdata[0] : NULL;
}

/* All that it failed by, at the reading that ended it. */
static char *
describe_faults (const BbWashReport *self,
                 const BbSpecimen   *specimen)
{
  for (guint r = 0; r < specimen->readings->len; r++)
    {
      const BbReading *reading = specimen->readings->pdata[r];

      if (reading->cycles == specimen->verdict.failed_at)
        return bb_wash_proof_describe_faults (bb_wash_proof_find_faults (self->evidence->revision, reading));
    }

  return g_strdup ("");
}

static char *
describe_verdict (const BbWashReport *self,
                  const BbSpecimen   *specimen)
{
  g_autofree char *faults = describe_faults (self, specimen);
  const char *reason = specimen->verdict.reason != BB_CHOICE_NONE
                         ? bb_choices_get_title (&bb_verdict_reason_choices, specimen->verdict.reason)
                         : "";

  switch ((BbVerdict) specimen->verdict.verdict)
    {
    case BB_VERDICT_PASSED:
      return g_strdup_printf (ngettext ("Specimen %s passed: it stood %d wash cycle.",
                                        "Specimen %s passed: it stood %d wash cycles.",
                                        (gulong) specimen->test->plan_cycles),
                              specimen->test->code, (int) specimen->test->plan_cycles);
    case BB_VERDICT_FAILED:
      return g_strdup_printf (ngettext ("Specimen %s failed after %d wash cycle. %s",
                                        "Specimen %s failed after %d wash cycles. %s",
                                        (gulong) specimen->verdict.failed_at),
                              specimen->test->code, (int) specimen->verdict.failed_at, faults);
    case BB_VERDICT_OPEN:
    default:
      return g_strdup_printf (_("The verdict on specimen %s is open. %s"), specimen->test->code, reason);
    }
}

static char *
describe_state (const BbWashReport *self)
{
  g_autofree char *day = bb_words_of_day (self->standing->since);
  g_autofree char *person = bb_words_of_name (self->book, &bb_person_table, self->standing->person);
  const char *state = bb_choices_get_title (&bb_state_choices, self->standing->state);

  if (self->signature == NULL)
    /* Translators: a revision's code, its state and since when: "MUD-BLACK.3: Draft since 3 Feb 2025." */
    return g_strdup_printf (_("%s: %s since %s."), self->evidence->revision->code, state, day);
  if (self->signature->overruled)
    return g_strdup_printf (_("%s: %s. Signed by %s on %s, although the shop's rule was not met: %s"),
                            self->evidence->revision->code, state, person, day, self->signature->reason);

  return g_strdup_printf (ngettext ("%s: %s. Signed by %s on %s, by the shop's rule of %d specimen that passed and "
                                    "none that failed.",
                                    "%s: %s. Signed by %s on %s, by the shop's rule of %d specimens that passed and "
                                    "none that failed.", (gulong) self->signature->needed),
                          self->evidence->revision->code, state, person, day, (int) self->signature->needed);
}

static void
add_verdict (const BbWashReport *self)
{
  g_autofree char *rate = only_specimen (self) != NULL ? describe_verdict (self, only_specimen (self))
                                                       : bb_wash_evidence_describe_rate (self->evidence);
  g_autofree char *state = describe_state (self);

  bb_document_take (self->document, bb_heading_new (_("Verdict"), 1));
  bb_document_take (self->document, bb_text_new (rate, TRUE));
  bb_document_take (self->document, bb_text_new (state, FALSE));
  if (self->evidence->n_open > 0 && only_specimen (self) == NULL)
    {
      g_autofree char *open = g_strdup_printf (ngettext ("%u specimen is still being washed.",
                                                         "%u specimens are still being washed.",
                                                         self->evidence->n_open),
                                               self->evidence->n_open);

      bb_document_take (self->document, bb_text_new (open, FALSE));
    }
}

static void
add_charts (const BbWashReport *self)
{
  bb_document_take (self->document, bb_heading_new (_("Charts"), 1));
  bb_document_take (self->document, bb_figure_new (bb_wash_chart_grades (self->evidence, 0), FIGURE_HEIGHT));
  if (only_specimen (self) != NULL)
    return;
  bb_document_take (self->document, bb_figure_new (bb_wash_chart_survival (self->evidence), FIGURE_HEIGHT));
  _bb_wash_report_add_life (self);
}

static void
add_title (const BbWashReport *self)
{
  g_autofree char *under = only_specimen (self) != NULL
                             /* Translators: a recipe's name, a revision's code, a specimen's code. */
                             ? g_strdup_printf (_("%s, revision %s, specimen %s"), self->recipe->name,
                                                self->evidence->revision->code, only_specimen (self)->test->code)
                             : g_strdup_printf (_("%s, revision %s"), self->recipe->name,
                                                self->evidence->revision->code);

  bb_document_take (self->document, bb_heading_new (_("Wash report"), 0));
  bb_document_take (self->document, bb_text_new (under, TRUE));
  if (self->evidence->shop->address != NULL)
    bb_document_take (self->document, bb_text_new (self->evidence->shop->address, FALSE));
  if (self->about->customer != NULL && *self->about->customer != '\0')
    {
      /* Translators: a customer's name. */
      g_autofree char *customer = g_strdup_printf (_("Made for %s"), self->about->customer);

      bb_document_take (self->document, bb_text_new (customer, FALSE));
    }
}

static BbDocument *
make_document (const BbWashReport *self)
{
  const char *shop = self->evidence->shop->name != NULL ? self->evidence->shop->name : _("Wash report");
  g_autofree char *title = g_strdup_printf (_("Wash report %s"), self->evidence->revision->code);
  g_autofree char *head = g_strdup_printf ("%s · %s", self->evidence->revision->code, self->recipe->name);
  g_autofree char *day = bb_words_of_day (self->about->today);
  g_autofree char *foot = g_strdup_printf (_("Made by Blankbook from the shop's wash log on %s"), day);

  return bb_document_new (title, shop, head, foot);
}

static gboolean
load (BbWashReport  *self,
      GError       **error)
{
  self->evidence = self->about->wash_test != 0
                     ? bb_evidence_load_test (self->book, self->about->wash_test, self->about->today, error)
                     : bb_evidence_load (self->book, self->about->revision, self->about->today, error);
  if (self->evidence == NULL)
    return FALSE;
  self->recipe = bb_book_load (self->book, &bb_recipe_table, self->evidence->revision->recipe, error);
  if (self->recipe == NULL)
    return FALSE;
  self->standing = bb_book_load_standing (self->book, self->evidence->revision->id, error);

  return self->standing != NULL &&
         bb_book_find_signature (self->book, self->evidence->revision->id, &self->signature, error) >= 0;
}

static void
clear (BbWashReport *self)
{
  g_clear_pointer (&self->evidence, bb_wash_evidence_free);
  g_clear_pointer (&self->recipe, bb_recipe_free);
  g_clear_pointer (&self->standing, bb_standing_free);
  g_clear_pointer (&self->signature, bb_signature_free);
}

/**
 * bb_wash_report_new:
 * @book: a book
 * @about: what it is about
 * @error: return location for a #GError
 *
 * Writes a wash report for a customer: verdict, recipe, method, specimens, readings, charts, who and when, and what it
 * does not show. All numbers are those of #BbWashEvidence.
 *
 * Returns: (transfer full) (nullable): the report; %NULL with an error of the book or of the domain %BB_MODEL_ERROR
 */
BbDocument *
bb_wash_report_new (BbBook                   *book,
                    const BbWashReportAbout  *about,
                    GError                  **error)
{
  BbWashReport self = { .book = book, .about = about };

  g_return_val_if_fail (BB_IS_BOOK (book) && about != NULL, NULL);

  if (load (&self, error))
    {
      self.document = make_document (&self);
      add_title (&self);
      add_verdict (&self);
      _bb_wash_report_add_recipe (&self);
      _bb_wash_report_add_method (&self);
      _bb_wash_report_add_tables (&self);
      add_charts (&self);
      _bb_wash_report_add_limits (&self);
    }
  clear (&self);

  return self.document;
}
