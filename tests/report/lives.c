/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "lives.h"

#include <string.h>

#include "store-helpers.h"

void
lives_add_reading (BbBook  *book,
                   gint64   test,
                   gint64   cycles,
                   BbGrade  change)
{
  g_autoptr (BbReading) reading = helper_make_reading (test, cycles);

  reading->change = (int) change;
  reading->stain = BB_GRADE_5;
  helper_save (book, &bb_reading_table, reading);
}

const BbSeries *
lives_find_series (const BbChart *chart,
                   const char    *name)
{
  for (guint i = 0; i < chart->layers->len; i++)
    {
      const BbLayer *layer = chart->layers->pdata[i];

      if (layer->series != NULL && strstr (layer->series->name, name) != NULL)
        return layer->series;
    }

  g_error ("There is no series %s", name);
}

const BbPoint *
lives_get_point (const BbSeries *series,
                 guint           i)
{
  g_assert_cmpuint (i, <, series->points->len);

  return &g_array_index (series->points, BbPoint, i);
}

typedef struct {
  const Reference *data;
  const char *group;
  gint64 revision;
} Lives;

static gboolean
add_each (BbBook   *book,
          gpointer  all,
          GError  **error)
{
  const Lives *self = all;

  (void) error;
  for (guint i = 0; i < reference_get_length (self->data); i++)
    {
      gint64 cycles = (gint64) reference_get_number (self->data, i, "time_weeks");
      gboolean failed = reference_get_number (self->data, i, "status_1event_0censored") > 0;
      g_autofree char *code = g_strdup_printf ("%.3s-%u", self->group, i);
      g_autoptr (BbWashTest) test = NULL;

      if (!g_str_equal (self->group, "all") && !g_str_equal (reference_get_text (self->data, i, "group"), self->group))
        continue;
      test = helper_make_wash_test (code, self->revision);
      test->plan_cycles = 500;
      helper_save (book, &bb_wash_test_table, test);
      if (cycles > 1)
        lives_add_reading (book, test->id, cycles - 1, BB_GRADE_5);
      lives_add_reading (book, test->id, cycles, failed ? BB_GRADE_2 : BB_GRADE_5);
    }

  return TRUE;
}

void
lives_add (BbBook     *book,
           gint64      revision,
           const char *group)
{
  g_autoptr (Reference) data = reference_load ("km-aml-data");

  g_assert_true (bb_book_in_transaction (book, add_each, &(Lives) { data, group, revision }, NULL));
}

void
lives_check_curve (const BbSeries *curve,
                   const char     *group)
{
  g_autoptr (Reference) wanted = reference_load ("km-aml");
  guint n = 1;
  double survival = 1.0;

  g_assert_cmpfloat (lives_get_point (curve, 0)->x, ==, 0);
  g_assert_cmpfloat (lives_get_point (curve, 0)->y, ==, 1);
  for (guint i = 0; i < reference_get_length (wanted); i++)
    {
      const BbPoint *point = NULL;

      if (!g_str_equal (reference_get_text (wanted, i, "stratum"), group))
        continue;
      survival = reference_get_number (wanted, i, "surv_fraction");
      if (reference_get_number (wanted, i, "n_event_count") < 1)
        continue;
      point = lives_get_point (curve, n++);
      g_assert_cmpfloat (point->x, ==, reference_get_number (wanted, i, "time_weeks"));
      g_assert_cmpfloat_with_epsilon (point->y, survival, 1e-11);
      if (survival <= 0)
        continue;
      g_assert_cmpfloat_with_epsilon (point->low, reference_get_number (wanted, i, "lower95_loglog"), 1e-11);
      g_assert_cmpfloat_with_epsilon (point->high, reference_get_number (wanted, i, "upper95_loglog"), 1e-11);
    }
  /* Beyond the last failure the curve goes on to the last reading. */
  g_assert_cmpuint (curve->points->len, <=, n + 1);
  g_assert_cmpfloat_with_epsilon (lives_get_point (curve, curve->points->len - 1)->y, survival, 1e-11);
}
