/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-verdict-badge"

#include "bb-verdict-badge.h"

#include <glib/gi18n-lib.h>

#include "bb-sign.h"
#include "bb-wash-proof.h"

struct _BbVerdictBadge
{
  GtkBox parent_instance;

  BbSign *sign;
  GtkLabel *label;
  BbVerdict verdict;
};

G_DEFINE_FINAL_TYPE (BbVerdictBadge, bb_verdict_badge, GTK_TYPE_BOX)

static const struct {
  const char *css_name;
  BbSignShape shape;
} looks[] = {
  [BB_VERDICT_PASSED] = { "passed", BB_SIGN_TICK },
  [BB_VERDICT_FAILED] = { "failed", BB_SIGN_CROSS },
  [BB_VERDICT_OPEN] = { "open", BB_SIGN_HALF },
};

static void
bb_verdict_badge_class_init (BbVerdictBadgeClass *klass)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "verdictbadge");
}

static void
set_verdict (BbVerdictBadge *self,
             BbVerdict       verdict)
{
  gtk_widget_remove_css_class (GTK_WIDGET (self), looks[self->verdict].css_name);
  gtk_widget_add_css_class (GTK_WIDGET (self), looks[verdict].css_name);
  self->verdict = verdict;
  bb_sign_set_shape (self->sign, looks[verdict].shape);
}

static void
bb_verdict_badge_init (BbVerdictBadge *self)
{
  self->sign = BB_SIGN (bb_sign_new ());
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->label, 0.0f);
  gtk_label_set_ellipsize (self->label, PANGO_ELLIPSIZE_END);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sign));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->label));
  set_verdict (self, BB_VERDICT_OPEN);
}

/**
 * bb_verdict_badge_new:
 *
 * Returns: (transfer floating): a badge that says nothing
 */
GtkWidget *
bb_verdict_badge_new (void)
{
  return g_object_new (BB_TYPE_VERDICT_BADGE, NULL);
}

static gint64
find_last_cycle (GPtrArray *readings)
{
  gint64 last = 0;

  for (guint i = 0; i < readings->len; i++)
    last = MAX (last, ((const BbReading *) readings->pdata[i])->cycles);

  return last;
}

static char *
describe (const BbWashVerdictOut *verdict,
          gint64                  last,
          gint64                  plan)
{
  switch ((BbVerdict) verdict->verdict)
    {
    case BB_VERDICT_PASSED:
      return g_strdup_printf (ngettext ("Passed %d wash", "Passed %d washes", (gulong) last), (int) last);
    case BB_VERDICT_FAILED:
      return g_strdup_printf (_("Failed at wash %d. %s"), (int) verdict->failed_at,
                              bb_choices_get_title (&bb_verdict_reason_choices, verdict->reason));
    case BB_VERDICT_OPEN:
    default:
      if (verdict->reason == BB_VERDICT_REASON_STAIN_NOT_READ)
        return g_strdup (bb_choices_get_title (&bb_verdict_reason_choices, verdict->reason));
      return g_strdup_printf (_("Running: %d of %d washes read"), (int) last, (int) plan);
    }
}

/**
 * bb_verdict_badge_show:
 * @self: a badge
 * @session: the session
 * @test: the specimen whose verdict to show
 *
 * Judges the specimen by its revision and its readings in the book.
 */
void
bb_verdict_badge_show (BbVerdictBadge   *self,
                       BbSession        *session,
                       const BbWashTest *test)
{
  BbBook *book = bb_session_get_book (session);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (GPtrArray) readings = NULL;
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_VERDICT_BADGE (self));

  revision = bb_book_load (book, &bb_revision_table, test->revision, &error);
  if (revision != NULL)
    readings = bb_book_load_referring (book, &bb_reading_table, &bb_wash_test_table, test->id, &error);
  if (readings == NULL || !bb_wash_proof_judge (revision, test, readings, verdict, &error))
    {
      set_verdict (self, BB_VERDICT_OPEN);
      gtk_label_set_label (self->label, error->message);
      return;
    }

  text = describe (verdict, find_last_cycle (readings), MAX (test->plan_cycles, revision->proof_cycles));
  gtk_label_set_label (self->label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), text);
  set_verdict (self, (BbVerdict) verdict->verdict);
}

/**
 * bb_verdict_badge_get_verdict:
 * @self: a badge
 *
 * Returns: the verdict that it shows
 */
BbVerdict
bb_verdict_badge_get_verdict (BbVerdictBadge *self)
{
  g_return_val_if_fail (BB_IS_VERDICT_BADGE (self), BB_VERDICT_OPEN);

  return self->verdict;
}
