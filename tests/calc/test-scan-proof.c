/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-scan-proof.h"

#include <math.h>

#include "bb-error.h"

static BbScan *
make_scan (gint64    cycles,
           BbSubject subject,
           double    l,
           double    a,
           double    b)
{
  BbScan *self = bb_scan_new ();

  self->wash_test = 7;
  self->cycles = cycles;
  self->subject = (int) subject;
  self->l = l;
  self->a = a;
  self->b = b;

  return self;
}

static void
add_patch (BbScan *self,
           double  l,
           double  a,
           double  b)
{
  self->patch_x_px = 0;
  self->patch_y_px = 0;
  self->patch_width_px = 8;
  self->patch_height_px = 8;
  self->patch_l = l;
  self->patch_a = a;
  self->patch_b = b;
}

/* On the grey axis ΔEF is ΔL, by the formula of ISO 105-A05: 1.7 is the step of grade 4 in ISO 105-A02, 3.4 of 3. */
static void
test_change (void)
{
  const struct {
    double dl;
    int grade;
  } rows[] = {
    { 0.0, BB_GRADE_5 }, { 1.7, BB_GRADE_4 }, { 3.4, BB_GRADE_3 }, { 6.8, BB_GRADE_2 }, { 13.6, BB_GRADE_1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbScan) before = make_scan (0, BB_SUBJECT_PRINT, 40, 0, 0);
      g_autoptr (BbScan) after = make_scan (20, BB_SUBJECT_PRINT, 40 + rows[i].dl, 0, 0);
      g_autoptr (BbScanProof) proof = bb_scan_proof_new ();
      g_autoptr (GError) error = NULL;

      g_assert_true (bb_scan_proof_judge (before, after, proof, &error));
      g_assert_no_error (error);
      g_assert_cmpint (proof->grade, ==, rows[i].grade);
      g_assert_cmpfloat_with_epsilon (proof->difference, rows[i].dl, 1e-9);
      g_assert_true (isnan (proof->drift_de_00));
      g_assert_false (proof->drifted);
    }
}

/* The steps of ISO 105-A03 for grades 5, 4 and 1 on the grey axis, where ΔEGS is ΔL. */
static void
test_stain (void)
{
  const struct {
    double dl;
    int grade;
  } rows[] = { { 0.0, BB_GRADE_5 }, { 4.3, BB_GRADE_4 }, { 34.1, BB_GRADE_1 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbScan) before = make_scan (0, BB_SUBJECT_CLOTH, 95, 0, 0);
      g_autoptr (BbScan) after = make_scan (5, BB_SUBJECT_CLOTH, 95 - rows[i].dl, 0, 0);
      g_autoptr (BbScanProof) proof = bb_scan_proof_new ();
      g_autoptr (GError) error = NULL;

      g_assert_true (bb_scan_proof_judge (before, after, proof, &error));
      g_assert_no_error (error);
      g_assert_cmpint (proof->grade, ==, rows[i].grade);
    }
}

/* A scanner that reads everything 0.5 lighter has changed no print; one that reads 5 lighter has to be seen to. */
static void
test_drift (void)
{
  const struct {
    double drift;
    gboolean drifted;
  } rows[] = { { 0.0, FALSE }, { 0.5, FALSE }, { 5.0, TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbScan) before = make_scan (0, BB_SUBJECT_PRINT, 40, 30, -10);
      g_autoptr (BbScan) after = make_scan (20, BB_SUBJECT_PRINT, 40 + rows[i].drift, 30, -10);
      g_autoptr (BbScanProof) proof = bb_scan_proof_new ();
      g_autoptr (GError) error = NULL;

      add_patch (before, 60, 0, 0);
      add_patch (after, 60 + rows[i].drift, 0, 0);
      g_assert_true (bb_scan_proof_judge (before, after, proof, &error));
      g_assert_no_error (error);
      g_assert_cmpint (proof->grade, ==, BB_GRADE_5);
      g_assert_cmpfloat_with_epsilon (proof->l, 40, 1e-9);
      g_assert_cmpfloat_with_epsilon (proof->de_00, 0, 1e-9);
      g_assert_cmpint (proof->drifted, ==, rows[i].drifted);
    }
}

static void
test_one_patch_mends_nothing (void)
{
  g_autoptr (BbScan) before = make_scan (0, BB_SUBJECT_PRINT, 40, 0, 0);
  g_autoptr (BbScan) after = make_scan (20, BB_SUBJECT_PRINT, 41.7, 0, 0);
  g_autoptr (BbScanProof) proof = bb_scan_proof_new ();
  g_autoptr (GError) error = NULL;

  add_patch (after, 70, 0, 0);
  g_assert_true (bb_scan_proof_judge (before, after, proof, &error));
  g_assert_no_error (error);
  g_assert_cmpint (proof->grade, ==, BB_GRADE_4);
  g_assert_true (isnan (proof->drift_de_00));
}

static void
test_refuses (void)
{
  g_autoptr (BbScan) before = make_scan (5, BB_SUBJECT_PRINT, 40, 0, 0);
  g_autoptr (BbScan) other_subject = make_scan (20, BB_SUBJECT_CLOTH, 40, 0, 0);
  g_autoptr (BbScan) earlier = make_scan (5, BB_SUBJECT_PRINT, 40, 0, 0);
  g_autoptr (BbScan) other_test = make_scan (20, BB_SUBJECT_PRINT, 40, 0, 0);
  BbScan *refused[] = { other_subject, earlier, other_test };

  other_test->wash_test = 8;
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (BbScanProof) proof = bb_scan_proof_new ();
      g_autoptr (GError) error = NULL;

      g_assert_false (bb_scan_proof_judge (before, refused[i], proof, &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/scan-proof/change", test_change);
  g_test_add_func ("/scan-proof/stain", test_stain);
  g_test_add_func ("/scan-proof/drift", test_drift);
  g_test_add_func ("/scan-proof/one-patch-mends-nothing", test_one_patch_mends_nothing);
  g_test_add_func ("/scan-proof/refuses", test_refuses);

  return g_test_run ();
}
