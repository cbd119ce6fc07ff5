/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-nearest-view"

#include "bb-nearest-view.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-garment-chooser.h"
#include "bb-nearest-row.h"
#include "bb-session-near.h"

struct _BbNearestView
{
  AdwBin parent_instance;

  /* template */
  BbGarmentChooser *chooser;
  GtkLabel *garment_label;
  GtkBox *same_box;
  GtkListBox *same_list;
  GtkBox *near_box;
  GtkListBox *near_list;
  GtkBox *start_box;
  GtkLabel *start_label;

  /* owned; @near is what is shown */
  BbSession *session;
  GCancellable *cancellable;
  BbNearRecipes *near;
};

G_DEFINE_FINAL_TYPE (BbNearestView, bb_nearest_view, ADW_TYPE_BIN)

enum {
  SIGNAL_CLOSED,
  SIGNAL_START,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
add_rows (BbNearestView *self)
{
  const BbUnitContext *units = bb_session_get_units (self->session);

  bb_compat_empty_list (self->same_list);
  bb_compat_empty_list (self->near_list);
  for (guint i = 0; self->near != NULL && i < self->near->recipes->len; i++)
    {
      g_autofree char *reasons = bb_near_recipes_dup_reasons (self->near, i, units);
      GtkListBox *list = bb_near_recipes_is_same_garment (self->near, i) ? self->same_list : self->near_list;

      gtk_list_box_append (list, bb_nearest_row_new (self->near->recipes->pdata[i], reasons));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->same_box), gtk_list_box_get_row_at_index (self->same_list, 0) != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->near_box), gtk_list_box_get_row_at_index (self->near_list, 0) != NULL);
}

/* The garment by what counts for the recipe. */
static void
show_garment (BbNearestView *self)
{
  const BbBlank *blank = self->near != NULL ? self->near->blank : NULL;
  g_autofree char *fibres = NULL;
  g_autofree char *mass = NULL;
  g_autofree char *text = NULL;

  if (blank == NULL)
    {
      gtk_label_set_label (self->garment_label,
                           bb_garment_chooser_get_blank (self->chooser) != 0 ? ""
                           : _("There is no blank yet. Add the garments that the shop prints on to its blanks."));
      return;
    }
  fibres = bb_composition_dup_text (blank->composition);
  mass = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, blank->mass_g_per_m2,
                                       bb_session_get_units (self->session));
  text = g_strjoin (" · ", fibres, mass, bb_choices_get_title (&bb_knit_choices, blank->knit),
                    bb_choices_get_title (&bb_finish_choices, blank->finish), NULL);
  gtk_label_set_label (self->garment_label, text);
}

static const char *
describe_start (BbNearestView *self)
{
  if (self->near == NULL)
    return "";
  if (self->near->recipes->len == 0)
    return _("There is no recipe yet for a blank whose fabric is known.");
  if (bb_near_recipes_needs_colour (self->near))
    return _("Choose the garment's colour first: recipes for other colours are near as well, and what holds on dark "
             "garments is wrong on white ones. A blank's colours are entered on the page of blanks.");
  if (!bb_near_recipes_can_propose (self->near))
    return _("None of these is proven for such a garment, so there is nothing to start from yet.");

  return _("A draft from the nearest proven ones, within what the supplier allows and the fibres stand. It is not "
           "proven on this garment: a trial says whether it holds.");
}

/* Who starts a second recipe for a garment should know of the first; %NULL where there is none. */
static char *
describe_same (BbNearestView *self)
{
  g_autoptr (GPtrArray) codes = g_ptr_array_new ();
  g_autofree char *all = NULL;

  for (guint i = 0; self->near != NULL && i < self->near->recipes->len; i++)
    if (bb_near_recipes_is_same_garment (self->near, i))
      g_ptr_array_add (codes, ((const BbKnownRecipe *) self->near->recipes->pdata[i])->code);
  if (codes->len == 0)
    return NULL;
  g_ptr_array_add (codes, NULL);
  all = g_strjoinv (", ", (char **) codes->pdata);

  /* Translators: the codes of one or more recipes. */
  return g_strdup_printf (_("This garment has a recipe already: %s."), all);
}

static void
show_start (BbNearestView *self)
{
  g_autofree char *same = describe_same (self);
  g_autofree char *text = same != NULL ? g_strjoin ("\n", same, describe_start (self), NULL)
                                       : g_strdup (describe_start (self));

  gtk_label_set_label (self->start_label, text);
}

static void
show_near (BbNearestView *self)
{
  show_garment (self);
  add_rows (self);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "nearest.start",
                                 self->near != NULL && bb_near_recipes_can_propose (self->near));
  gtk_widget_set_visible (GTK_WIDGET (self->start_box), self->near != NULL);
  show_start (self);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbNearestView) self = BB_NEAREST_VIEW (data);
  g_autoptr (GError) error = NULL;
  BbNearRecipes *near = bb_session_load_near_finish (BB_SESSION (source), result, &error);

  /* Another garment was chosen meanwhile, or the window is gone. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (near == NULL)
    bb_session_report (BB_SESSION (source), error);
  g_clear_pointer (&self->near, bb_near_recipes_free);
  self->near = near;
  show_near (self);
}

static void
load (BbNearestView *self)
{
  const gint64 blank = bb_garment_chooser_get_blank (self->chooser);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  if (blank == 0)
    {
      g_clear_pointer (&self->near, bb_near_recipes_free);
      show_near (self);
      return;
    }
  self->cancellable = g_cancellable_new ();
  bb_session_load_near_async (self->session, blank, bb_garment_chooser_get_colourway (self->chooser),
                              self->cancellable, loaded_cb, g_object_ref (self));
}

static void
row_activated_cb (BbNearestView *self,
                  GtkListBoxRow *row)
{
  bb_session_show (self->session, "recipes", bb_nearest_row_get_recipe (BB_NEAREST_ROW (row)));
}

static void
close_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  g_signal_emit (widget, signals[SIGNAL_CLOSED], 0);
}

static void
start_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbNearestView *self = BB_NEAREST_VIEW (widget);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (GError) error = NULL;

  (void) name;
  (void) parameter;

  if (self->near == NULL)
    return;
  revision = bb_near_recipes_propose (self->near, bb_session_get_book (self->session),
                                      bb_session_get_units (self->session), &error);
  if (revision != NULL)
    g_signal_emit (self, signals[SIGNAL_START], 0, revision, self->near->blank, self->near->colourway,
                   bb_near_recipes_get_shade (self->near));
  else
    bb_session_report (self->session, error);
}

/**
 * bb_nearest_view_set_session:
 * @self: a view
 * @session: the session whose book has the recipes
 */
void
bb_nearest_view_set_session (BbNearestView *self,
                             BbSession     *session)
{
  g_return_if_fail (BB_IS_NEAREST_VIEW (self) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_garment_chooser_set_session (self->chooser, session);
}

/**
 * bb_nearest_view_show:
 * @self: a view
 * @blank: key of a garment; 0 for that of @colourway, the one shown last, or the first
 * @colourway: key of it in a colour; 0 for any colour
 */
void
bb_nearest_view_show (BbNearestView *self,
                      gint64         blank,
                      gint64         colourway)
{
  g_return_if_fail (BB_IS_NEAREST_VIEW (self) && self->session != NULL);

  bb_garment_chooser_choose (self->chooser, blank, colourway);
  load (self);
}

/**
 * bb_nearest_view_refresh:
 * @self: a view that was shown
 *
 * Looks again, in the book as it is now.
 */
void
bb_nearest_view_refresh (BbNearestView *self)
{
  g_return_if_fail (BB_IS_NEAREST_VIEW (self));

  bb_nearest_view_show (self, 0, bb_garment_chooser_get_colourway (self->chooser));
}

/**
 * bb_nearest_view_focus:
 * @self: a view
 *
 * Puts the keyboard where the garment is chosen.
 */
void
bb_nearest_view_focus (BbNearestView *self)
{
  g_return_if_fail (BB_IS_NEAREST_VIEW (self));

  bb_garment_chooser_focus (self->chooser);
}

static void
bb_nearest_view_dispose (GObject *object)
{
  BbNearestView *self = BB_NEAREST_VIEW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_nearest_view_parent_class)->dispose (object);
}

static void
bb_nearest_view_finalize (GObject *object)
{
  BbNearestView *self = BB_NEAREST_VIEW (object);

  g_clear_pointer (&self->near, bb_near_recipes_free);

  G_OBJECT_CLASS (bb_nearest_view_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, chooser);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, garment_label);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, same_box);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, same_list);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, near_box);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, near_list);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, start_box);
  gtk_widget_class_bind_template_child (widget_class, BbNearestView, start_label);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
bb_nearest_view_class_init (BbNearestViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_nearest_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_nearest_view_finalize;

  /**
   * BbNearestView::closed:
   *
   * A person has seen enough of it.
   */
  signals[SIGNAL_CLOSED] = g_signal_new ("closed", BB_TYPE_NEAREST_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);
  /**
   * BbNearestView::start:
   * @revision: what is proposed, a revision without a recipe
   * @blank: the garment
   * @colourway: (nullable): its colour, where that is told
   * @shade: the #BbShade that it is proposed for
   *
   * A person wants to start a recipe. All are borrowed.
   */
  signals[SIGNAL_START] = g_signal_new ("start", BB_TYPE_NEAREST_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 4, G_TYPE_POINTER, G_TYPE_POINTER, G_TYPE_POINTER, G_TYPE_INT);

  g_type_ensure (BB_TYPE_GARMENT_CHOOSER);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-nearest-view.ui");
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "nearest.close", NULL, close_action);
  gtk_widget_class_install_action (widget_class, "nearest.start", NULL, start_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "nearest.close", NULL);
}

static void
bb_nearest_view_init (BbNearestView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->chooser, "changed", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
}
