/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-wash-evidence.h"

#include "bb-wash-proof.h"
#include "reference.h"

static BbRevision *
make_revision (const char *code)
{
  BbRevision *revision = bb_revision_new ();

  revision->code = g_strdup (code);
  revision->proof_cycles = 20;

  return revision;
}

static BbWashTest *
make_test (const char *made_at)
{
  BbWashTest *test = bb_wash_test_new ();

  test->code = g_strdup ("S");
  test->method = BB_WASH_SHOP;
  test->plan_cycles = 20;
  test->made_at = g_strdup (made_at);

  return test;
}

static GPtrArray *
new_readings (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);
}

static void
add_reading (GPtrArray  *readings,
             gint64      cycles,
             BbGrade     change,
             const char *read_at)
{
  BbReading *reading = bb_reading_new ();

  reading->cycles = cycles;
  reading->change = (int) change;
  reading->stain = BB_GRADE_5;
  reading->read_at = g_strdup (read_at);
  g_ptr_array_add (readings, reading);
}

static void
add (BbWashEvidence *evidence,
     BbWashTest     *test,
     GPtrArray      *readings)
{
  g_autoptr (GError) error = NULL;

  bb_wash_evidence_add (evidence, test, NULL, readings, "2025-05-01", &error);
  g_assert_no_error (error);
}

/* A specimen that is good at 5, and grade @last at 20; one read at 5 only where there is none. */
static void
add_specimen (BbWashEvidence *evidence,
              int             last)
{
  g_autoptr (BbWashTest) test = make_test ("2025-03-14");
  g_autoptr (GPtrArray) readings = new_readings ();

  add_reading (readings, 5, BB_GRADE_5, "2025-03-20");
  if (last != BB_CHOICE_NONE)
    add_reading (readings, 20, (BbGrade) last, "2025-04-01");
  add (evidence, test, readings);
}

static BbWashEvidence *
make_evidence (const char *code,
               guint       n_passed,
               guint       n_failed,
               guint       n_open)
{
  g_autoptr (BbRevision) revision = make_revision (code);
  g_autoptr (BbShop) shop = bb_shop_new ();
  BbWashEvidence *evidence = bb_wash_evidence_new (revision, shop);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n_passed; i++)
    add_specimen (evidence, BB_GRADE_4);
  for (guint i = 0; i < n_failed; i++)
    add_specimen (evidence, BB_GRADE_3);
  for (guint i = 0; i < n_open; i++)
    add_specimen (evidence, BB_CHOICE_NONE);
  bb_wash_evidence_sum_up (evidence, &error);
  g_assert_no_error (error);

  return evidence;
}

/* The bound of 3 of 3 at 90 % is 0.1^(1/3) = 0.464 (success run, by hand). */
static void
test_rate_in_words (void)
{
  const struct {
    guint passed;
    guint failed;
    guint open;
    gboolean rule_is_met;
    const char *text;
  } rows[] = {
    { 3, 0, 0, TRUE, "3 of 3 passed; with 90 % confidence at least 46 % would." },
    { 3, 0, 2, TRUE, "3 of 3 passed; with 90 % confidence at least 46 % would." },
    /* 0.1^(1/22) = 0.9006: the success-run theorem's 22 specimens for 90 %. */
    { 22, 0, 0, TRUE, "22 of 22 passed; with 90 % confidence at least 90 % would." },
    { 21, 0, 0, TRUE, "21 of 21 passed; with 90 % confidence at least 89 % would." },
    { 1, 0, 0, FALSE, "1 of 1 passed; with 90 % confidence at least 10 % would." },
    { 0, 1, 0, FALSE, "The one specimen that was tested failed." },
    { 0, 3, 0, FALSE, "None of 3 specimens passed." },
    { 0, 0, 4, FALSE, "No specimen has been tested to the end yet." },
    { 0, 0, 0, FALSE, "No specimen has been tested to the end yet." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbWashEvidence) evidence = make_evidence ("R.1", rows[i].passed, rows[i].failed, rows[i].open);
      g_autofree char *text = bb_wash_evidence_describe_rate (evidence);

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_cmpint (evidence->rule_is_met, ==, rows[i].rule_is_met);
      g_assert_cmpuint (evidence->n_open, ==, rows[i].open);
    }
}

/* The shop's rule as it is where nothing was decided: three pass, none fails. */
static void
test_rule_in_words (void)
{
  const struct {
    guint passed;
    guint failed;
    guint open;
    const char *text;
  } rows[] = {
    { 0, 0, 0, "0 of the 3 specimens that the shop's rule asks for passed, and none failed: 3 more have to pass. None "
               "is being washed." },
    { 2, 0, 1, "2 of the 3 specimens that the shop's rule asks for passed, and none failed: 1 more has to pass. 1 is "
               "being washed." },
    { 3, 0, 2, "The shop's rule is met: 3 specimens passed, and none failed." },
    { 4, 1, 0, "1 specimen failed: by the shop's rule this revision can't be proven any more." },
    { 0, 2, 0, "2 specimens failed: by the shop's rule this revision can't be proven any more." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbWashEvidence) evidence = make_evidence ("R.1", rows[i].passed, rows[i].failed, rows[i].open);
      g_autofree char *text = bb_wash_evidence_describe_rule (evidence);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* Whoever grades a specimen wants to know all that is wrong with it, not what comes first. */
static void
test_faults_in_words (void)
{
  const struct {
    BbGrade change;
    BbGrade stain;
    BbCrack crack;
    const char *words;
    const char *sentences;
  } rows[] = {
    { BB_GRADE_4, BB_GRADE_4, BB_CRACK_HAIRLINE, "", "" },
    { BB_GRADE_3_4, BB_GRADE_5, BB_CRACK_NONE, "colour", "The colour changed more than is allowed." },
    { BB_GRADE_2, BB_GRADE_4, BB_CRACK_VISIBLE, "colour, cracking",
      "The colour changed more than is allowed. It cracked." },
    { BB_GRADE_2, BB_GRADE_3, BB_CRACK_VISIBLE, "colour, staining, cracking",
      "The colour changed more than is allowed. It stained white fabric more than is allowed. It cracked." },
  };
  g_autoptr (BbRevision) revision = make_revision ("R.1");
  g_autoptr (BbReading) reading = bb_reading_new ();

  revision->proof_change = BB_GRADE_4;
  revision->proof_stain = BB_GRADE_4;
  revision->proof_crack = BB_CRACK_HAIRLINE;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint faults = 0;
      g_autofree char *words = NULL;
      g_autofree char *sentences = NULL;

      reading->change = (int) rows[i].change;
      reading->stain = (int) rows[i].stain;
      reading->crack = (int) rows[i].crack;
      faults = bb_wash_proof_find_faults (revision, reading);
      words = bb_wash_proof_name_faults (faults);
      sentences = bb_wash_proof_describe_faults (faults);
      g_assert_cmpstr (words, ==, rows[i].words);
      g_assert_cmpstr (sentences, ==, rows[i].sentences);
    }
}

/* A failure keeps the rule from being met, however many passed. */
static void
test_one_failure_breaks_the_rule (void)
{
  g_autoptr (BbWashEvidence) evidence = make_evidence ("R.1", 9, 1, 0);

  g_assert_false (evidence->rule_is_met);
  g_assert_cmpuint (evidence->life->steps->len, ==, 1);
}

/* Stood its plan at 20, washed on, and bad at 40: it passed, and its life ended by 40. */
static void
test_life_goes_on_after_the_plan (void)
{
  g_autoptr (BbRevision) revision = make_revision ("R.1");
  g_autoptr (BbShop) shop = bb_shop_new ();
  g_autoptr (BbWashEvidence) evidence = bb_wash_evidence_new (revision, shop);
  g_autoptr (BbWashTest) test = make_test ("2025-03-14");
  g_autoptr (GPtrArray) readings = new_readings ();
  g_autoptr (GError) error = NULL;

  add_reading (readings, 40, BB_GRADE_3, "2025-04-20");
  add_reading (readings, 20, BB_GRADE_4, "2025-04-01");
  add (evidence, test, readings);
  g_assert_true (bb_wash_evidence_sum_up (evidence, &error));
  g_assert_cmpuint (evidence->n_passed, ==, 1);
  g_assert_cmpuint (evidence->life->steps->len, ==, 1);
  g_assert_cmpfloat (g_array_index (evidence->life->steps, BbSurvivalStep, 0).cycles, ==, 40);
}

static void
test_what_does_not_count (void)
{
  g_autoptr (BbWashEvidence) evidence = make_evidence ("R.1", 3, 0, 0);
  g_autoptr (BbRevision) revision = make_revision ("R.1");
  g_autoptr (BbShop) shop = bb_shop_new ();
  g_autoptr (BbWashEvidence) apart = bb_wash_evidence_new (revision, shop);
  g_autoptr (BbWashTest) other_method = make_test ("2025-03-14");
  g_autoptr (BbWashTest) withdrawn = make_test ("2025-03-14");
  g_autoptr (GPtrArray) bad = new_readings ();
  g_autoptr (GError) error = NULL;

  add_reading (bad, 1, BB_GRADE_1, "2025-03-15");
  other_method->method = BB_WASH_ISO_6330;
  withdrawn->withdrawn_at = g_strdup ("2025-03-16");
  add (apart, other_method, bad);
  add (apart, withdrawn, bad);
  g_assert_true (bb_wash_evidence_sum_up (apart, &error));
  g_assert_cmpuint (apart->n_apart, ==, 2);
  g_assert_cmpuint (apart->n_failed, ==, 0);
  g_assert_null (apart->life);
  g_assert_true (isnan (apart->rate.rate));
  g_assert_cmpuint (evidence->n_apart, ==, 0);
}

/* Fisher's p of 3/3 against 0/3 is 2/20 = 0.1, of 4/4 against 0/4 2/70 = 0.0286, of 8/8 against 0/8 2/12870 (by
 * hand). */
static void
test_comparison_in_words (void)
{
  const struct {
    guint passed_1, failed_1, passed_2, failed_2;
    double p;
    const char *end;
  } rows[] = {
    { 3, 0, 0, 3, 0.1, "in about 10 of 100 trials (Fisher's exact test, p = 0.10): it does not show which is better." },
    { 4, 0, 0, 4, 2.0 / 70, "in about 3 of 100 trials (Fisher's exact test, p = 0.029): R.1 is better." },
    { 0, 4, 4, 0, 2.0 / 70, "in about 3 of 100 trials (Fisher's exact test, p = 0.029): R.2 is better." },
    { 8, 0, 0, 8, 2.0 / 12870, "in fewer than 1 of 100 trials (Fisher's exact test): R.1 is better." },
    { 3, 0, 4, 0, 1.0, "R.1 passed 3 of 3, R.2 4 of 4. That is the same share (Fisher's exact test, p = 1): it does "
                       "not show which is better." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbWashEvidence) first = make_evidence ("R.1", rows[i].passed_1, rows[i].failed_1, 0);
      g_autoptr (BbWashEvidence) second = make_evidence ("R.2", rows[i].passed_2, rows[i].failed_2, 1);
      g_autoptr (BbCompareOut) out = bb_compare_out_new ();
      g_autoptr (GError) error = NULL;
      g_autofree char *text = bb_wash_evidence_compare (first, second, out, &error);

      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (out->p_value, rows[i].p, 1e-9);
      g_test_message ("%s", text);
      g_assert_true (g_str_has_suffix (text, rows[i].end));
    }
}

static void
test_untested_is_not_compared (void)
{
  g_autoptr (BbWashEvidence) first = make_evidence ("R.1", 3, 0, 0);
  g_autoptr (BbWashEvidence) second = make_evidence ("R.2", 0, 0, 3);
  g_autoptr (BbCompareOut) out = bb_compare_out_new ();
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_wash_evidence_compare (first, second, out, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "R.2 "));
}

static void
test_disputes (void)
{
  g_autoptr (BbReading) reading = bb_reading_new ();
  g_autofree char *none = NULL;
  g_autofree char *change = NULL;
  g_autofree char *both = NULL;
  g_autofree char *stain = NULL;

  for (int eye = BB_GRADE_5; eye <= BB_GRADE_1; eye++)
    for (int measured = BB_GRADE_5; measured <= BB_GRADE_1; measured++)
      g_assert_cmpint (bb_grades_disagree ((BbGrade) eye, (BbGrade) measured), ==, ABS (eye - measured) >= 2);
  g_assert_false (bb_grades_disagree ((BbGrade) BB_CHOICE_NONE, BB_GRADE_1));
  g_assert_false (bb_grades_disagree (BB_GRADE_5, (BbGrade) BB_CHOICE_NONE));

  reading->change = BB_GRADE_4_5;
  reading->stain = BB_GRADE_5;
  reading->change_measured = BB_GRADE_4;
  none = bb_reading_describe_dispute (reading);
  g_assert_null (none);
  reading->change_measured = BB_GRADE_3_4;
  change = bb_reading_describe_dispute (reading);
  g_assert_true (g_str_has_prefix (change, "Change is 4-5 by eye and 3-4 measured:"));
  reading->stain_measured = BB_GRADE_4;
  both = bb_reading_describe_dispute (reading);
  g_assert_true (g_str_has_prefix (both, "Change is 4-5 by eye and 3-4 measured, staining 5 and 4:"));
  reading->change_measured = BB_CHOICE_NONE;
  stain = bb_reading_describe_dispute (reading);
  g_assert_true (g_str_has_prefix (stain, "Staining is 5 by eye and 4 measured:"));
}

/*
 * Kaplan and Meier's estimate for the aml data, with its log-log band (tests/reference/km-aml.csv, by R's survival),
 * from a wash log of the same lives: good one wash before it failed, or good when it was last read.
 */
static void
add_lives (BbWashEvidence  *evidence,
           const Reference *data,
           const char      *group)
{
  for (guint i = 0; i < reference_get_length (data); i++)
    {
      gint64 cycles = (gint64) reference_get_number (data, i, "time_weeks");
      gboolean failed = reference_get_number (data, i, "status_1event_0censored") > 0;
      g_autoptr (BbWashTest) test = make_test ("2025-03-14");
      g_autoptr (GPtrArray) readings = new_readings ();

      if (!g_str_equal (group, "all") && !g_str_equal (reference_get_text (data, i, "group"), group))
        continue;
      test->plan_cycles = 500;
      if (cycles > 1)
        add_reading (readings, cycles - 1, BB_GRADE_5, "2025-03-20");
      add_reading (readings, cycles, failed ? BB_GRADE_2 : BB_GRADE_5, "2025-04-01");
      add (evidence, test, readings);
    }
}

static void
test_published_survival (void)
{
  const char *groups[] = { "Maintained", "Nonmaintained", "all" };
  g_autoptr (Reference) data = reference_load ("km-aml-data");
  g_autoptr (Reference) wanted = reference_load ("km-aml");
  guint n_checked = 0;

  for (guint g = 0; g < G_N_ELEMENTS (groups); g++)
    {
      g_autoptr (BbRevision) revision = make_revision ("R.1");
      g_autoptr (BbShop) shop = bb_shop_new ();
      g_autoptr (BbWashEvidence) evidence = bb_wash_evidence_new (revision, shop);
      g_autoptr (GError) error = NULL;
      guint step = 0;

      add_lives (evidence, data, groups[g]);
      g_assert_true (bb_wash_evidence_sum_up (evidence, &error));
      for (guint i = 0; i < reference_get_length (wanted); i++)
        {
          const BbSurvivalStep *found = NULL;

          if (!g_str_equal (reference_get_text (wanted, i, "stratum"), groups[g]) ||
              reference_get_number (wanted, i, "n_event_count") < 1)
            continue;
          found = &g_array_index (evidence->life->steps, BbSurvivalStep, step++);
          g_assert_cmpfloat (found->cycles, ==, reference_get_number (wanted, i, "time_weeks"));
          g_assert_cmpfloat_with_epsilon (found->survival, reference_get_number (wanted, i, "surv_fraction"), 1e-11);
          g_assert_cmpint (found->at_risk, ==, (gint64) reference_get_number (wanted, i, "n_risk_count"));
          if (found->survival > 0)
            {
              g_assert_cmpfloat_with_epsilon (found->low, reference_get_number (wanted, i, "lower95_loglog"), 1e-11);
              g_assert_cmpfloat_with_epsilon (found->high, reference_get_number (wanted, i, "upper95_loglog"), 1e-11);
            }
          n_checked++;
        }
      g_assert_cmpuint (step, ==, evidence->life->steps->len);
    }
  g_assert_cmpuint (n_checked, >=, 30);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/wash-evidence/rate-in-words", test_rate_in_words);
  g_test_add_func ("/wash-evidence/rule-in-words", test_rule_in_words);
  g_test_add_func ("/wash-evidence/faults-in-words", test_faults_in_words);
  g_test_add_func ("/wash-evidence/one-failure-breaks-the-rule", test_one_failure_breaks_the_rule);
  g_test_add_func ("/wash-evidence/life-goes-on-after-the-plan", test_life_goes_on_after_the_plan);
  g_test_add_func ("/wash-evidence/what-does-not-count", test_what_does_not_count);
  g_test_add_func ("/wash-evidence/comparison-in-words", test_comparison_in_words);
  g_test_add_func ("/wash-evidence/untested-is-not-compared", test_untested_is_not_compared);
  g_test_add_func ("/wash-evidence/disputes", test_disputes);
  g_test_add_func ("/wash-evidence/published-survival", test_published_survival);

  return g_test_run ();
}
