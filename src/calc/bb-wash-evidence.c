/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-evidence.h"

#include "bb-wash-proof.h"

/* Below this a difference counts as shown (common practice, no source). */
#define SHOWN_BELOW 0.05

static void
specimen_free (gpointer data)
{
  BbSpecimen *self = data;

  g_clear_pointer (&self->test, bb_wash_test_free);
  g_clear_pointer (&self->plan, bb_wash_plan_free);
  g_clear_pointer (&self->readings, g_ptr_array_unref);
  bb_record_clear (&bb_wash_verdict_out_table, &self->verdict);
  bb_record_clear (&bb_wash_due_table, &self->due);
  g_free (self);
}

/**
 * bb_wash_evidence_new:
 * @revision: a revision
 * @shop: the shop, with its rule
 *
 * Returns: (transfer full): no evidence yet
 */
BbWashEvidence *
bb_wash_evidence_new (const BbRevision *revision,
                      const BbShop     *shop)
{
  BbWashEvidence *self = g_new0 (BbWashEvidence, 1);

  self->revision = bb_record_copy (&bb_revision_table, revision);
  self->shop = bb_record_copy (&bb_shop_table, shop);
  self->specimens = g_ptr_array_new_with_free_func (specimen_free);
  bb_record_init (&bb_pass_rate_out_table, &self->rate);

  return self;
}

/**
 * bb_wash_evidence_free:
 * @self: (transfer full): evidence
 */
void
bb_wash_evidence_free (BbWashEvidence *self)
{
  g_clear_pointer (&self->revision, bb_revision_free);
  g_clear_pointer (&self->shop, bb_shop_free);
  g_clear_pointer (&self->specimens, g_ptr_array_unref);
  g_clear_pointer (&self->life, bb_wash_life_out_free);
  bb_record_clear (&bb_pass_rate_out_table, &self->rate);
  g_free (self);
}

static GPtrArray *
copy_readings (GPtrArray *readings)
{
  GPtrArray *copy = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);

  for (guint i = 0; i < readings->len; i++)
    g_ptr_array_add (copy, bb_record_copy (&bb_reading_table, readings->pdata[i]));
  bb_records_sort (&bb_reading_table, "cycles", copy);

  return copy;
}

/**
 * bb_wash_evidence_add:
 * @self: evidence
 * @test: a specimen of its revision
 * @plan: (nullable): the plan that it is washed to
 * @readings: (element-type BbReading): its readings, in any order
 * @today: the day, as an ISO date
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Adds a specimen, with its verdict and when it has to be read next. Everything is copied.
 *
 * Returns: %FALSE if the readings contradict each other
 */
gboolean
bb_wash_evidence_add (BbWashEvidence    *self,
                      const BbWashTest  *test,
                      const BbWashPlan  *plan,
                      GPtrArray         *readings,
                      const char        *today,
                      GError           **error)
{
  BbSpecimen *specimen = NULL;

  g_return_val_if_fail (self != NULL && test != NULL && readings != NULL && today != NULL, FALSE);

  specimen = g_new0 (BbSpecimen, 1);
  g_ptr_array_add (self->specimens, specimen);
  specimen->test = bb_record_copy (&bb_wash_test_table, test);
  specimen->plan = plan != NULL ? bb_record_copy (&bb_wash_plan_table, plan) : NULL;
  specimen->readings = copy_readings (readings);
  specimen->counts = test->withdrawn_at == NULL && test->method == self->revision->proof_method;
  bb_record_init (&bb_wash_verdict_out_table, &specimen->verdict);
  bb_record_init (&bb_wash_due_table, &specimen->due);

  return bb_wash_proof_judge (self->revision, test, specimen->readings, &specimen->verdict, error) &&
         bb_wash_schedule (test, plan, specimen->readings, (BbVerdict) specimen->verdict.verdict, today, &specimen->due,
                           error);
}

/* To the first bad reading, also where that came after the plan was stood. */
static void
add_life (BbWashLifeIn     *in,
          const BbRevision *revision,
          const BbSpecimen *specimen)
{
  BbWashLifeSpecimen *life = bb_field_append_item (bb_table_find_field (&bb_wash_life_in_table, "specimens"), in);

  life->last_good_cycles = 0;
  for (guint i = 0; i < specimen->readings->len; i++)
    {
      const BbReading *reading = specimen->readings->pdata[i];

      if (bb_wash_proof_find_faults (revision, reading) != 0)
        {
          life->first_bad_cycles = (double) MAX (reading->cycles, 1);
          return;
        }
      life->last_good_cycles = (double) reading->cycles;
    }
}

static gboolean
estimate_life (BbWashEvidence *self,
               GError        **error)
{
  g_autoptr (BbWashLifeIn) in = bb_wash_life_in_new ();

  for (guint i = 0; i < self->specimens->len; i++)
    {
      const BbSpecimen *specimen = self->specimens->pdata[i];

      if (specimen->counts && specimen->readings->len > 0)
        add_life (in, self->revision, specimen);
    }
  if (in->specimens == NULL)
    return TRUE;
  self->life = bb_wash_life_out_new ();

  return bb_calculator_run (&bb_wash_life_calculator, in, self->life, error);
}

static gboolean
bound_rate (BbWashEvidence *self,
            GError        **error)
{
  g_autoptr (BbPassRateIn) in = bb_pass_rate_in_new ();

  if (self->n_passed + self->n_failed == 0)
    return TRUE;
  in->passed = self->n_passed;
  in->tested = (gint64) self->n_passed + self->n_failed;
  in->confidence = self->shop->proof_confidence_fraction;

  return bb_calculator_run (&bb_pass_rate_calculator, in, &self->rate, error);
}

static void
count_specimen (BbWashEvidence   *self,
                const BbSpecimen *specimen)
{
  if (!specimen->counts)
    self->n_apart++;
  else if (specimen->verdict.verdict == BB_VERDICT_PASSED)
    self->n_passed++;
  else if (specimen->verdict.verdict == BB_VERDICT_FAILED)
    self->n_failed++;
  else
    self->n_open++;
}

/**
 * bb_wash_evidence_sum_up:
 * @self: evidence with all its specimens
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Counts, bounds the pass rate and estimates wash life; see the top of bb-wash-evidence.h. Called once, at the end.
 *
 * Returns: %FALSE if something can't be computed
 */
gboolean
bb_wash_evidence_sum_up (BbWashEvidence *self,
                         GError        **error)
{
  g_return_val_if_fail (self != NULL, FALSE);

  for (guint i = 0; i < self->specimens->len; i++)
    count_specimen (self, self->specimens->pdata[i]);
  self->rule_is_met = self->n_failed == 0 && (gint64) self->n_passed >= self->shop->proof_specimens;

  return bound_rate (self, error) && estimate_life (self, error);
}

/* Down to whole per cent: a bound is not made better by rounding it. */
static int
percent_below (double fraction)
{
  return (int) floor (fraction * 100.0 + 1e-9);
}

/**
 * bb_wash_evidence_describe_rate:
 * @self: evidence that was summed up
 *
 * Returns: (transfer full): how many passed, and what that shows, as a sentence
 */
char *
bb_wash_evidence_describe_rate (const BbWashEvidence *self)
{
  guint tested = self->n_passed + self->n_failed;

  if (tested == 0)
    return g_strdup (_("No specimen has been tested to the end yet."));
  if (self->n_passed == 0)
    return g_strdup_printf (ngettext ("The one specimen that was tested failed.",
                                      "None of %u specimens passed.", tested), tested);

  /* Translators: how many of how many specimens passed, then two percentages: "3 of 3 passed; with 90 % confidence at
   * least 46 % would." */
  return g_strdup_printf (_("%u of %u passed; with %d %% confidence at least %d %% would."), self->n_passed, tested,
                          percent_below (self->shop->proof_confidence_fraction),
                          percent_below (self->rate.one_sided_lower));
}

static char *
describe_chance (const BbCompareOut *out,
                 const char         *better)
{
  int percent = (int) lround (out->p_value * 100.0);

  if (out->difference == 0.0)
    return g_strdup (_("That is the same share (Fisher's exact test, p = 1): it does not show which is better."));
  if (out->p_value < 0.01)
    return g_strdup_printf (_("Were both equally good, so uneven a split would come by chance in fewer than 1 of 100 "
                              "trials (Fisher's exact test): %s is better."), better);
  if (out->p_value < SHOWN_BELOW)
    return g_strdup_printf (_("Were both equally good, so uneven a split would come by chance in about %d of 100 "
                              "trials (Fisher's exact test, p = %.3f): %s is better."),
                            percent, out->p_value, better);

  return g_strdup_printf (_("Were both equally good, so uneven a split would come by chance in about %d of 100 "
                            "trials (Fisher's exact test, p = %.2f): it does not show which is better."),
                          percent, out->p_value);
}

static char *
describe_comparison (const BbWashEvidence *self,
                     const BbWashEvidence *other,
                     const BbCompareOut   *out)
{
  g_autofree char *chance = describe_chance (out, (out->difference > 0.0 ? self : other)->revision->code);
  /* Translators: a revision's code and how many of how many specimens passed, then the same of another. */
  g_autofree char *counts = g_strdup_printf (_("%s passed %u of %u, %s %u of %u."),
                                             self->revision->code, self->n_passed, self->n_passed + self->n_failed,
                                             other->revision->code, other->n_passed, other->n_passed + other->n_failed);

  return g_strjoin (" ", counts, chance, NULL);
}

/**
 * bb_wash_evidence_compare:
 * @self: evidence that was summed up
 * @other: evidence on another revision, summed up
 * @out: (out caller-allocates): Fisher's p and the difference of the pass rates
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Compares two revisions by how many of their specimens passed.
 *
 * Returns: (transfer full) (nullable): what the comparison means, in sentences; %NULL with %BB_MODEL_ERROR_VALUE where
 *   one of them has no specimen with a verdict
 */
char *
bb_wash_evidence_compare (const BbWashEvidence  *self,
                          const BbWashEvidence  *other,
                          BbCompareOut          *out,
                          GError               **error)
{
  g_autoptr (BbCompareIn) in = bb_compare_in_new ();
  const BbWashEvidence *untested = self->n_passed + self->n_failed == 0 ? self : other;

  if (untested->n_passed + untested->n_failed == 0)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   _("%s can't be compared yet: none of its specimens has a verdict."), untested->revision->code);
      return NULL;
    }
  in->passed_1 = self->n_passed;
  in->tested_1 = (gint64) self->n_passed + self->n_failed;
  in->passed_2 = other->n_passed;
  in->tested_2 = (gint64) other->n_passed + other->n_failed;

  return bb_calculator_run (&bb_compare_calculator, in, out, error) ? describe_comparison (self, other, out) : NULL;
}
