/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-verdict-badge"

#include "bb-verdict-badge.h"

#include <glib/gi18n-lib.h>

#include "bb-sign.h"
#include "bb-wash-proof.h"

/* Characters of the verdict that are shown however narrow it gets; bold ones take the room of a few more. */
#define LEAST_WIDTH 20
#define BOLD 2

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

static gboolean
bb_verdict_badge_query_tooltip (GtkWidget  *widget,
                                int         x,
                                int         y,
                                gboolean    keyboard_mode,
                                GtkTooltip *tooltip)
{
  (void) x;
  (void) y;
  (void) keyboard_mode;

  gtk_tooltip_set_text (tooltip, gtk_label_get_label (BB_VERDICT_BADGE (widget)->label));

  return TRUE;
}

static void
bb_verdict_badge_class_init (BbVerdictBadgeClass *klass)
{
  GTK_WIDGET_CLASS (klass)->query_tooltip = bb_verdict_badge_query_tooltip;
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
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
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
  return readings->len > 0 ? ((const BbReading *) readings->pdata[readings->len - 1])->cycles : 0;
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
      return g_strdup_printf (_("%d of %d washes read"), (int) last, (int) plan);
    }
}

static GPtrArray *
collect_readings (const BbWashLine *line)
{
  GPtrArray *readings = g_ptr_array_new ();

  for (guint i = 0; line->readings != NULL && i < line->readings->len; i++)
    g_ptr_array_add (readings, &g_array_index (line->readings, BbReading, i));

  return readings;
}

static void
say (BbVerdictBadge *self,
     BbVerdict       verdict,
     const char     *text)
{
  gtk_label_set_label (self->label, text);
  gtk_label_set_width_chars (self->label, MIN ((int) g_utf8_strlen (text, -1) + BOLD, LEAST_WIDTH));
  set_verdict (self, verdict);
}

/**
 * bb_verdict_badge_show:
 * @self: a badge
 * @line: the specimen whose verdict to show, with its revision and readings
 */
void
bb_verdict_badge_show (BbVerdictBadge   *self,
                       const BbWashLine *line)
{
  const BbWashTest *test = line->test;
  const BbRevision *revision = line->revision;
  g_autoptr (GPtrArray) readings = collect_readings (line);
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_VERDICT_BADGE (self));

  if (revision == NULL)
    say (self, BB_VERDICT_OPEN, _("No verdict: its revision is damaged. Check the book."));
  else if (!bb_wash_proof_judge (revision, test, readings, verdict, &error))
    say (self, BB_VERDICT_OPEN, error->message);
  else
    {
      text = describe (verdict, find_last_cycle (readings), MAX (test->plan_cycles, revision->proof_cycles));
      say (self, (BbVerdict) verdict->verdict, text);
    }
}
