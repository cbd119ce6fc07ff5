/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-line-row"

#include "bb-job-line-row.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-job-words.h"
#include "bb-revision-menu.h"
#include "bb-show.h"
#include "bb-state-badge.h"
#include "bb-swatch.h"
#include "bb-words.h"

struct _BbJobLineRow
{
  AdwBin parent_instance;

  /* template */
  BbSwatch *swatch;
  GtkLabel *title_label;
  GtkLabel *print_label;
  GtkBox *recipe_box;
  GtkButton *recipe_button;
  GtkLabel *recipe_label;
  BbStateBadge *badge;
  GtkLabel *why_label;
  GtkLabel *caution_label;
  GtkLabel *note_label;
  GtkButton *edit_button;
  GtkButton *strike_button;
};

G_DEFINE_FINAL_TYPE (BbJobLineRow, bb_job_line_row, ADW_TYPE_BIN)

static void
add_part (GPtrArray *parts,
          char      *text)
{
  if (text != NULL && *text != '\0')
    g_ptr_array_add (parts, text);
  else
    g_free (text);
}

static char *
join (GPtrArray *parts)
{
  g_ptr_array_add (parts, NULL);

  return g_strjoinv (" · ", (char **) parts->pdata);
}

static char *
describe_count (const BbJobLine *line)
{
  if (line->same_garments == 1)
    return g_strdup_printf (ngettext ("the same %d garment again", "the same %d garments again", (gulong) line->count),
                            (int) line->count);

  return g_strdup_printf (ngettext ("%d garment", "%d garments", (gulong) line->count), (int) line->count);
}

static char *
describe_print (BbSession       *session,
                const BbJobLine *line)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  add_part (parts, describe_count (line));
  add_part (parts, g_strdup (line->size));
  add_part (parts, bb_words_of_file (line->artwork));
  add_part (parts, g_strdup (line->placement));
  if (!isnan (line->print_width_mm) && !isnan (line->print_height_mm))
    add_part (parts, bb_show_size (bb_session_get_units (session), line->print_width_mm, line->print_height_mm));
  else
    add_part (parts, g_strdup (_("no print size yet")));

  return join (parts);
}

static void
show_text (GtkLabel   *label,
           const char *text)
{
  gtk_label_set_label (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_recipe (BbJobLineRow      *self,
             BbSession         *session,
             const BbSheetLine *line)
{
  const BbRevision *revision = line->revision;
  const BbState state = revision != NULL ? bb_revision_menu_load_state (session, revision->id) : BB_STATE_DRAFT;
  g_autofree char *caution = bb_words_of_line_caution (line, state, bb_session_get_units (session));

  gtk_widget_set_visible (GTK_WIDGET (self->recipe_box), revision != NULL);
  if (revision != NULL)
    {
      g_autofree char *name = bb_show_name (session, &bb_recipe_table, revision->recipe);
      g_autofree char *label = g_strdup_printf (_("%s, revision %d"), name, (int) revision->number);

      gtk_label_set_label (self->recipe_label, label);
      gtk_actionable_set_action_target (GTK_ACTIONABLE (self->recipe_button), "x", revision->recipe);
      bb_state_badge_set_state (self->badge, state);
    }
  show_text (self->why_label, revision != NULL ? line->line->why : NULL);
  show_text (self->caution_label, caution);
}

static void
set_up_button (GtkButton  *button,
               gint64      id,
               const char *label)
{
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", id);
  gtk_widget_set_tooltip_text (GTK_WIDGET (button), label);
  bb_compat_set_name (GTK_WIDGET (button), label);
}

/**
 * bb_job_line_row_dup_title:
 * @session: the session
 * @line: a line of a job
 *
 * Returns: (transfer full): the garment in its colour, as a person calls it
 */
char *
bb_job_line_row_dup_title (BbSession         *session,
                           const BbSheetLine *line)
{
  g_autofree char *colour = bb_show_name (session, &bb_colourway_table, line->line->colourway);

  return line->blank != NULL ? g_strdup_printf (_("%s, %s"), line->blank->name, colour) : g_strdup (colour);
}

/**
 * bb_job_line_row_dup_caution:
 * @session: the session
 * @line: a line of a job
 *
 * Returns: (transfer full) (nullable): what to look at before the line is printed; %NULL for nothing
 */
char *
bb_job_line_row_dup_caution (BbSession         *session,
                             const BbSheetLine *line)
{
  const BbRevision *revision = line->revision;
  const BbState state = revision != NULL ? bb_revision_menu_load_state (session, revision->id) : BB_STATE_DRAFT;

  return bb_words_of_line_caution (line, state, bb_session_get_units (session));
}

/**
 * bb_job_line_row_new:
 * @session: the session
 * @line: a line of a job
 * @is_fixed: whether the line can't be edited any more
 *
 * Returns: (transfer floating): a row of the line, with buttons of the actions `lines.edit`, `lines.strike` and
 *   `lines.open-recipe`
 */
GtkWidget *
bb_job_line_row_new (BbSession         *session,
                     const BbSheetLine *line,
                     gboolean           is_fixed)
{
  BbJobLineRow *self = g_object_new (BB_TYPE_JOB_LINE_ROW, NULL);
  g_autoptr (BbColourway) colourway = bb_book_load (bb_session_get_book (session), &bb_colourway_table,
                                                    line->line->colourway, NULL);
  g_autofree char *title = bb_job_line_row_dup_title (session, line);
  g_autofree char *print = describe_print (session, line->line);
  g_autofree char *edit = g_strdup_printf (_("Edit line %s"), line->line->code);
  g_autofree char *strike = g_strdup_printf (_("Strike off line %s"), line->line->code);

  bb_swatch_set_srgb (self->swatch, colourway != NULL ? colourway->srgb : NULL);
  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->print_label, print);
  show_recipe (self, session, line);
  show_text (self->note_label, line->line->note);
  set_up_button (self->edit_button, line->line->id, edit);
  set_up_button (self->strike_button, line->line->id, strike);
  gtk_widget_set_visible (GTK_WIDGET (self->edit_button), !is_fixed);
  gtk_widget_set_visible (GTK_WIDGET (self->strike_button), !is_fixed);

  return GTK_WIDGET (self);
}

static void
bb_job_line_row_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_job_line_row_parent_class)->dispose (object);
}

static void
bb_job_line_row_class_init (BbJobLineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_line_row_dispose;
  g_type_ensure (BB_TYPE_STATE_BADGE);
  g_type_ensure (BB_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-line-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, print_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, recipe_box);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, recipe_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, recipe_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, badge);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, why_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, caution_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, note_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, edit_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobLineRow, strike_button);
}

static void
bb_job_line_row_init (BbJobLineRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
