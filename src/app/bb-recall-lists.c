/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recall-lists"

#include "bb-recall-lists.h"

#include <glib/gi18n-lib.h>

#include "bb-job-card-fill.h"
#include "bb-lines-view.h"
#include "bb-recipe-line.h"
#include "bb-session-things.h"
#include "bb-signal.h"

struct _BbRecallLists
{
  GtkBox parent_instance;

  /* template */
  GtkToggleButton *recipes_button;
  GtkToggleButton *jobs_button;
  GtkLabel *corrected_label;
  GtkButton *specimen_button;
  GtkLabel *specimen_label;
  GtkStack *stack;
  BbLinesView *recipes;
  BbLinesView *jobs;

  /* owned */
  BbSession *session;

  /* What the person wants to see, where both are found. */
  gboolean wants_jobs;

  /* The specimen whose number is typed; 0 for none. */
  gint64 specimen;
};

G_DEFINE_FINAL_TYPE (BbRecallLists, bb_recall_lists, GTK_TYPE_BOX)

enum {
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
chosen_cb (BbRecallLists *self)
{
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static void
job_opened_cb (BbRecallLists *self,
               gint64         job)
{
  bb_session_show (self->session, "jobs", job);
}

static void
specimen_cb (BbRecallLists *self)
{
  bb_session_show (self->session, "wash", self->specimen);
}

static void toggled_cb (BbRecallLists *self);

/* Where only the other list has something, that is what a person looks for. */
static void
show_lists (BbRecallLists *self)
{
  const guint n_recipes = bb_lines_view_get_n_found (self->recipes);
  const guint n_jobs = bb_lines_view_get_n_found (self->jobs);
  const gboolean shows_jobs = self->wants_jobs ? n_jobs > 0 || n_recipes == 0 : n_recipes == 0 && n_jobs > 0;
  g_autofree char *recipes = g_strdup_printf (_("Recipes: %u"), n_recipes);
  g_autofree char *jobs = g_strdup_printf (n_jobs == BB_RECALL_LISTS_MOST ? _("Jobs: newest %u") : _("Jobs: %u"),
                                           n_jobs);

  gtk_button_set_label (GTK_BUTTON (self->recipes_button), recipes);
  gtk_button_set_label (GTK_BUTTON (self->jobs_button), jobs);
  g_signal_handlers_block_by_func (self->recipes_button, BB_HANDLER (toggled_cb), self);
  gtk_toggle_button_set_active (shows_jobs ? self->jobs_button : self->recipes_button, TRUE);
  g_signal_handlers_unblock_by_func (self->recipes_button, BB_HANDLER (toggled_cb), self);
  /* There is nothing to turn to where only the other list has something. */
  gtk_widget_set_sensitive (GTK_WIDGET (self->recipes_button), n_recipes > 0 || n_jobs == 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->jobs_button), n_jobs > 0 || n_recipes == 0);
  gtk_stack_set_visible_child_name (self->stack, shows_jobs ? "jobs" : "recipes");
}

/* The button of recipes tells, because it is released before that of jobs counts as pressed. */
static void
toggled_cb (BbRecallLists *self)
{
  self->wants_jobs = !gtk_toggle_button_get_active (self->recipes_button);
  gtk_stack_set_visible_child_name (self->stack, self->wants_jobs ? "jobs" : "recipes");
}

static void
bb_recall_lists_dispose (GObject *object)
{
  g_clear_object (&BB_RECALL_LISTS (object)->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_RECALL_LISTS);

  G_OBJECT_CLASS (bb_recall_lists_parent_class)->dispose (object);
}

static void
bb_recall_lists_class_init (BbRecallListsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recall_lists_dispose;

  /**
   * BbRecallLists::chosen:
   *
   * Another recipe is chosen, or the list was made anew.
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_RECALL_LISTS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_LINES_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recall-lists.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, recipes_button);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, jobs_button);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, corrected_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, specimen_button);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, specimen_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, recipes);
  gtk_widget_class_bind_template_child (widget_class, BbRecallLists, jobs);
  gtk_widget_class_bind_template_callback (widget_class, specimen_cb);
}

static void
bb_recall_lists_init (BbRecallLists *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->recipes, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->jobs, "opened", G_CALLBACK (job_opened_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->recipes_button, "toggled", G_CALLBACK (toggled_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_recall_lists_start:
 * @self: the lists
 * @session: the session
 *
 * To be called once. The lists are empty until bb_recall_lists_take().
 */
void
bb_recall_lists_start (BbRecallLists *self,
                       BbSession     *session)
{
  g_return_if_fail (BB_IS_RECALL_LISTS (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_lines_view_start (self->recipes, session, &bb_recipe_table, bb_recipe_line_fill, _("Recipes"));
  bb_lines_view_start (self->jobs, session, &bb_job_table, bb_job_card_fill, _("Jobs"));
  bb_lines_view_set_opens (self->jobs, TRUE);
}

/**
 * bb_recall_lists_take:
 * @self: the lists, started
 * @recipes: (transfer full) (element-type gint64): keys of the recipes that are found
 * @jobs: (transfer full) (element-type gint64): keys of the jobs that are found, #BB_RECALL_LISTS_MOST of them at most
 * @keep: whether what is chosen stays chosen where it is still there; else the first of each is
 *
 * Shows what was found. Where only one list has something, it is that one.
 */
void
bb_recall_lists_take (BbRecallLists *self,
                      GArray        *recipes,
                      GArray        *jobs,
                      gboolean       keep)
{
  g_return_if_fail (BB_IS_RECALL_LISTS (self) && recipes != NULL && jobs != NULL);

  bb_lines_view_take (self->jobs, jobs, keep);
  g_signal_handlers_block_by_func (self->recipes, BB_HANDLER (chosen_cb), self);
  bb_lines_view_take (self->recipes, recipes, keep);
  g_signal_handlers_unblock_by_func (self->recipes, BB_HANDLER (chosen_cb), self);
  show_lists (self);
  chosen_cb (self);
}

/**
 * bb_recall_lists_tell:
 * @self: the lists
 * @typed: what was typed
 * @corrected: (nullable): what was looked for instead; %NULL where it is what was typed
 * @specimen: key of the specimen whose number was typed, 0 for none
 *
 * Says what was looked for, and leads to the specimen: a number that a specimen and a job share leads to both.
 */
void
bb_recall_lists_tell (BbRecallLists *self,
                      const char    *typed,
                      const char    *corrected,
                      gint64         specimen)
{
  g_return_if_fail (BB_IS_RECALL_LISTS (self) && typed != NULL);

  self->specimen = specimen;
  gtk_widget_set_visible (GTK_WIDGET (self->specimen_button), specimen != 0);
  gtk_widget_set_visible (GTK_WIDGET (self->corrected_label), corrected != NULL);
  if (corrected != NULL)
    {
      /* Translators: what is looked for instead of what was typed. */
      g_autofree char *text = g_strdup_printf (_("Showing “%s” for “%s”."), corrected, typed);

      gtk_label_set_label (self->corrected_label, text);
    }
  if (specimen != 0)
    {
      /* Translators: a specimen's number. */
      g_autofree char *text = g_strdup_printf (_("Specimen %s, on the Wash Log"), typed);

      gtk_label_set_label (self->specimen_label, text);
    }
}

/**
 * bb_recall_lists_keep:
 * @self: the lists, started
 * @recipe: key of a recipe
 *
 * Chooses a recipe as soon as it is found, and turns to the list of recipes.
 */
void
bb_recall_lists_keep (BbRecallLists *self,
                      gint64         recipe)
{
  g_return_if_fail (BB_IS_RECALL_LISTS (self));

  self->wants_jobs = FALSE;
  bb_lines_view_keep (self->recipes, recipe);
}

/**
 * bb_recall_lists_get_chosen:
 * @self: the lists, started
 *
 * Returns: key of the recipe that is chosen, 0 where none is found
 */
gint64
bb_recall_lists_get_chosen (BbRecallLists *self)
{
  g_return_val_if_fail (BB_IS_RECALL_LISTS (self), 0);

  return bb_lines_view_get_chosen (self->recipes);
}

/**
 * bb_recall_lists_get_n_recipes:
 * @self: the lists, started
 *
 * Returns: how many recipes are found
 */
guint
bb_recall_lists_get_n_recipes (BbRecallLists *self)
{
  g_return_val_if_fail (BB_IS_RECALL_LISTS (self), 0);

  return bb_lines_view_get_n_found (self->recipes);
}

/**
 * bb_recall_lists_get_n_jobs:
 * @self: the lists, started
 *
 * Returns: how many jobs are found
 */
guint
bb_recall_lists_get_n_jobs (BbRecallLists *self)
{
  g_return_val_if_fail (BB_IS_RECALL_LISTS (self), 0);

  return bb_lines_view_get_n_found (self->jobs);
}

/**
 * bb_recall_lists_bring_into_sight:
 * @self: the lists, started
 *
 * Scrolls to what is chosen.
 */
void
bb_recall_lists_bring_into_sight (BbRecallLists *self)
{
  g_return_if_fail (BB_IS_RECALL_LISTS (self));

  bb_lines_view_bring_into_sight (self->recipes);
  bb_lines_view_bring_into_sight (self->jobs);
}

/**
 * bb_recall_lists_activate:
 * @self: the lists, started
 * @open: whether a job is opened; a recipe is shown already
 *
 * Goes on to the list that is seen, or opens the job that is chosen in it.
 */
void
bb_recall_lists_activate (BbRecallLists *self,
                          gboolean       open)
{
  gboolean shows_jobs = FALSE;

  g_return_if_fail (BB_IS_RECALL_LISTS (self));

  shows_jobs = g_str_equal (gtk_stack_get_visible_child_name (self->stack), "jobs");
  if (shows_jobs && open && bb_lines_view_get_chosen (self->jobs) != 0)
    job_opened_cb (self, bb_lines_view_get_chosen (self->jobs));
  else
    bb_lines_view_focus (shows_jobs ? self->jobs : self->recipes);
}
