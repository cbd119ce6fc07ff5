/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-repeat-card"

#include "bb-repeat-card.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-compat.h"
#include "bb-show.h"

struct _BbRepeatCard
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *since_label;
  GtkBox *findings;
  GtkDropDown *choice;

  /* What each entry of the choice means. */
  GArray *choices;
};

G_DEFINE_FINAL_TYPE (BbRepeatCard, bb_repeat_card, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
fill_findings (BbRepeatCard   *self,
               const BbRepeatPart *part)
{
  for (guint i = 0; i < part->findings->len; i++)
    {
      const BbFinding *finding = part->findings->pdata[i];
      g_autofree char *day = bb_show_date (finding->at);
      g_autofree char *sentence = bb_finding_describe (finding, day);

      bb_children_add_text (self->findings, sentence, "missing");
    }
  if (part->findings->len == 0)
    bb_children_add_text (self->findings, _("Nothing has changed since."), "dim-label");
}

static void
add_choice (BbRepeatCard       *self,
            GtkStringList      *texts,
            const char         *text,
            const BbRepeatLine *choice)
{
  gtk_string_list_append (texts, text);
  g_array_append_val (self->choices, *choice);
}

/* Who printed by it then may not want to now: it is not taken again without a word. */
static gboolean
has_to_be_chosen (const BbRepeatPart *part)
{
  return part->newer != NULL || (part->standing != NULL && part->standing->state == BB_STATE_WITHDRAWN);
}

static void
add_revisions (BbRepeatCard       *self,
               GtkStringList      *texts,
               const BbRepeatPart *part)
{
  const gint64 line = part->line->id;

  if (part->newer != NULL)
    {
      /* Translators: the code of a revision. */
      g_autofree char *newer = g_strdup_printf (_("Print by %s, which is proven now"), part->newer->code);

      add_choice (self, texts, newer, &(BbRepeatLine) { line, part->newer->id, FALSE });
    }
  if (part->revision != NULL && (part->standing == NULL || part->standing->state != BB_STATE_WITHDRAWN))
    {
      /* Translators: the code of a revision. */
      g_autofree char *same = g_strdup_printf (_("Print by %s, as then"), part->revision->code);

      add_choice (self, texts, same, &(BbRepeatLine) { line, 0, FALSE });
    }
  else
    add_choice (self, texts, _("Take it over without a recipe"), &(BbRepeatLine) { line, BB_INTEGER_NONE, FALSE });
}

static void
fill_choices (BbRepeatCard       *self,
              const BbRepeatPart *part)
{
  g_autoptr (GtkStringList) texts = gtk_string_list_new (NULL);
  const gint64 line = part->line->id;

  if (has_to_be_chosen (part))
    add_choice (self, texts, _("Choose how to print it…"), &(BbRepeatLine) { 0, 0, FALSE });
  add_revisions (self, texts, part);
  add_choice (self, texts, _("Leave this line out"), &(BbRepeatLine) { line, 0, TRUE });
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (texts));
}

static void
selected_cb (BbRepeatCard *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * bb_repeat_card_new:
 * @part: a line of a job, and what has changed since it was printed
 *
 * Returns: (transfer floating): the line; the revision that it was printed by is chosen, unless that was withdrawn or
 *   followed by another
 */
GtkWidget *
bb_repeat_card_new (const BbRepeatPart *part)
{
  BbRepeatCard *self = g_object_new (BB_TYPE_REPEAT_CARD, NULL);
  g_autofree char *day = bb_show_date (part->since);
  g_autofree char *title = g_strjoin (" · ", part->line->code, part->blank->name, part->colourway->name, NULL);
  g_autofree char *since = g_strdup_printf (part->run != NULL ? _("Last printed on %s")
                                                              : _("Ordered on %s, and never printed"), day);
  /* Translators: the code of a line of a job. */
  g_autofree char *label = g_strdup_printf (_("How to print line %s"), part->line->code);

  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->since_label, since);
  fill_findings (self, part);
  fill_choices (self, part);
  bb_compat_set_name (GTK_WIDGET (self->choice), label);

  return GTK_WIDGET (self);
}

/**
 * bb_repeat_card_get_choice:
 * @self: a line
 *
 * Returns: what was chosen for it; nothing yet where it names no line
 */
BbRepeatLine
bb_repeat_card_get_choice (BbRepeatCard *self)
{
  return g_array_index (self->choices, BbRepeatLine, gtk_drop_down_get_selected (self->choice));
}

static void
bb_repeat_card_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_repeat_card_parent_class)->dispose (object);
}

static void
bb_repeat_card_finalize (GObject *object)
{
  g_array_unref (BB_REPEAT_CARD (object)->choices);

  G_OBJECT_CLASS (bb_repeat_card_parent_class)->finalize (object);
}

static void
bb_repeat_card_class_init (BbRepeatCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_repeat_card_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_repeat_card_finalize;

  /**
   * BbRepeatCard::changed:
   *
   * Something else was chosen.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_REPEAT_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-repeat-card.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRepeatCard, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbRepeatCard, since_label);
  gtk_widget_class_bind_template_child (widget_class, BbRepeatCard, findings);
  gtk_widget_class_bind_template_child (widget_class, BbRepeatCard, choice);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

static void
bb_repeat_card_init (BbRepeatCard *self)
{
  self->choices = g_array_new (FALSE, FALSE, sizeof (BbRepeatLine));
  gtk_widget_init_template (GTK_WIDGET (self));
}
