/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-verdict-badge"

#include "bb-verdict-badge.h"

#include <glib/gi18n-lib.h>

#include "bb-due-load.h"
#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-wash-proof.h"

/* Characters of the verdict that are shown however narrow it gets; bold ones take the room of a few more. */
#define LEAST_WIDTH 20
#define BOLD 2

struct _BbVerdictBadge
{
  BbBadge parent_instance;


  /* owned: what the label says, at length */
  char *whole;

  BbDue due;
};

G_DEFINE_FINAL_TYPE (BbVerdictBadge, bb_verdict_badge, BB_TYPE_BADGE)

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

  gtk_tooltip_set_text (tooltip, BB_VERDICT_BADGE (widget)->whole);

  return TRUE;
}

static void
bb_verdict_badge_finalize (GObject *object)
{
  g_free (BB_VERDICT_BADGE (object)->whole);

  G_OBJECT_CLASS (bb_verdict_badge_parent_class)->finalize (object);
}

static void
bb_verdict_badge_class_init (BbVerdictBadgeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_verdict_badge_finalize;
  GTK_WIDGET_CLASS (klass)->query_tooltip = bb_verdict_badge_query_tooltip;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "verdictbadge");
}

static void
set_look (BbVerdictBadge *self,
          BbVerdict       verdict,
          BbDue           due)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_remove_css_class (widget, bb_choices_get_key (&bb_due_choices, (int) self->due));
  gtk_widget_add_css_class (widget, bb_choices_get_key (&bb_due_choices, (int) due));
  self->due = due;
  bb_badge_set_look (BB_BADGE (self), looks[verdict].css_name, looks[verdict].shape);
}

static void
bb_verdict_badge_init (BbVerdictBadge *self)
{
  GtkLabel *label = bb_badge_get_label (BB_BADGE (self));

  gtk_label_set_xalign (label, 0.0f);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  set_look (self, BB_VERDICT_OPEN, BB_DUE_DONE);
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
find_last_cycle (const BbWashLine *line)
{
  const GArray *readings = line->readings;

  return readings != NULL && readings->len > 0 ? g_array_index (readings, BbReading, readings->len - 1).cycles : 0;
}

static char *
describe_failure (const BbWashLine       *line,
                  const BbWashVerdictOut *verdict,
                  gboolean                at_length)
{
  const guint faults = bb_wash_line_find_faults (line, verdict);
  g_autofree char *why = at_length ? bb_wash_proof_describe_faults (faults) : bb_wash_proof_name_faults (faults);

  return at_length ? g_strdup_printf (_("Failed at wash %d. %s"), (int) verdict->failed_at, why)
                   /* Translators: a word or two: "Failed: colour, cracking". */
                   : g_strdup_printf (_("Failed: %s"), why);
}

static char *
describe (const BbWashLine       *line,
          const BbWashVerdictOut *verdict,
          gboolean                at_length)
{
  const BbWashTest *test = line->test;
  const BbRevision *revision = line->revision;
  const gint64 last = find_last_cycle (line);

  switch ((BbVerdict) verdict->verdict)
    {
    case BB_VERDICT_PASSED:
      return g_strdup_printf (ngettext ("Passed %d wash", "Passed %d washes", (gulong) last), (int) last);
    case BB_VERDICT_FAILED:
      return describe_failure (line, verdict, at_length);
    case BB_VERDICT_OPEN:
    default:
      if (verdict->reason == BB_VERDICT_REASON_STAIN_NOT_READ)
        return g_strdup (bb_choices_get_title (&bb_verdict_reason_choices, verdict->reason));
      return g_strdup_printf (_("%d of %d washes read"), (int) last,
                              (int) MAX (test->plan_cycles, revision->proof_cycles));
    }
}

static void
say (BbVerdictBadge *self,
     BbVerdict       verdict,
     BbDue           due,
     const char     *text,
     const char     *whole)
{
  GtkLabel *label = bb_badge_get_label (BB_BADGE (self));

  gtk_label_set_label (label, text);
  gtk_label_set_width_chars (label, MIN ((int) g_utf8_strlen (text, -1) + BOLD, LEAST_WIDTH));
  g_free (self->whole);
  self->whole = g_strdup (whole);
  set_look (self, verdict, due);
}

static void
show (BbVerdictBadge   *self,
      const BbWashLine *line,
      gboolean          with_due,
      gboolean          at_length)
{
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autoptr (BbWashDue) due = bb_wash_due_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *today = bb_dup_today ();
  g_autofree char *text = NULL;
  g_autofree char *whole = NULL;

  if (!bb_wash_line_judge (line, today, verdict, due, &error))
    {
      say (self, BB_VERDICT_OPEN, BB_DUE_DONE, error->message, error->message);
      return;
    }
  if (with_due)
    text = bb_wash_due_describe (due);
  whole = text != NULL ? g_strdup (text) : describe (line, verdict, TRUE);
  if (text == NULL)
    text = describe (line, verdict, at_length);
  say (self, (BbVerdict) verdict->verdict, (BbDue) due->state, text, whole);
}

/**
 * bb_verdict_badge_show:
 * @self: a badge
 * @line: the specimen whose verdict to show, with its revision and readings
 *
 * Shows the verdict, or how far an open one has come.
 */
void
bb_verdict_badge_show (BbVerdictBadge   *self,
                       const BbWashLine *line)
{
  g_return_if_fail (BB_IS_VERDICT_BADGE (self) && line != NULL);

  show (self, line, FALSE, FALSE);
}

/**
 * bb_verdict_badge_show_due:
 * @self: a badge
 * @line: the specimen whose verdict to show, with its revision, plan and readings
 *
 * Shows the verdict, or when an open one has to be read next.
 */
void
bb_verdict_badge_show_due (BbVerdictBadge   *self,
                           const BbWashLine *line)
{
  g_return_if_fail (BB_IS_VERDICT_BADGE (self) && line != NULL);

  show (self, line, TRUE, FALSE);
}

/**
 * bb_verdict_badge_show_whole:
 * @self: a badge with room for sentences
 * @line: the specimen whose verdict to show, with its revision, plan and readings
 *
 * Shows the verdict, with all that it failed by, or when an open one has to be read next.
 */
void
bb_verdict_badge_show_whole (BbVerdictBadge   *self,
                             const BbWashLine *line)
{
  GtkLabel *label = NULL;

  g_return_if_fail (BB_IS_VERDICT_BADGE (self) && line != NULL);

  label = bb_badge_get_label (BB_BADGE (self));
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_NONE);
  gtk_label_set_wrap (label, TRUE);
  show (self, line, TRUE, TRUE);
}
