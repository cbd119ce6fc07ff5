/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-artwork-view"

#include "bb-artwork-view.h"

#include "bb-artwork-facts.h"
#include "bb-garment-picker.h"
#include "bb-mode-switch.h"
#include "bb-placed-print.h"

/* Stands for a width that is not known: shares are right at any, and so small that nothing is warned of. */
#define NO_WIDTH_MM 1.0

struct _BbArtworkView
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *name_label;
  BbGarmentPicker *garment_picker;
  BbModeSwitch *mode_switch;
  BbPlacedPrint *print;
  BbArtworkFacts *facts;

  /* owned */
  BbSession *session;

  /* borrowed; may be NULL */
  const BbArtworkPicture *picture;

  double width_mm;
  BbBoxOut box;
  gboolean is_boxed;
  BbCoverage coverage;

  /* Print modes, or BB_CHOICE_NONE: the recipe's, the one advised, and the one that the person wants to see. */
  int recipe_mode;
  int advised_mode;
  int picked_mode;
};

G_DEFINE_FINAL_TYPE (BbArtworkView, bb_artwork_view, ADW_TYPE_BIN)

enum {
  SIGNAL_GARMENT_PICKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static gboolean
has_art (BbArtworkView *self)
{
  return self->picture->counts.left != self->picture->counts.right;
}

static gboolean
has_size (BbArtworkView *self)
{
  return has_art (self) && !isnan (self->width_mm);
}

static gboolean
has_box (BbArtworkView *self)
{
  return self->is_boxed && has_size (self);
}

static int
get_shown_mode (BbArtworkView *self)
{
  if (self->picked_mode != BB_CHOICE_NONE)
    return self->picked_mode;

  return self->recipe_mode != BB_CHOICE_NONE ? self->recipe_mode : self->advised_mode;
}

static void
place (BbArtworkView *self,
       BbPlacement   *placement)
{
  const BbCounts *counts = &self->picture->counts;
  const gboolean boxed = has_box (self);
  const double width_mm = has_size (self) ? self->width_mm : NO_WIDTH_MM;
  const double height_mm = bb_placement_height_for_width (counts, width_mm);

  bb_placement_fill (placement, counts, width_mm, boxed ? self->box.box_width_mm : width_mm,
                     boxed ? self->box.box_height_mm : height_mm);
}

static void
show_print (BbArtworkView     *self,
            const BbArtworkIn *in,
            const BbPlacement *placement)
{
  const BbPrintMode mode = (BbPrintMode) in->mode;

  bb_placed_print_draw (self->print, self->picture->preview, bb_garment_picker_get_srgb (self->garment_picker), mode,
                        (guint8) in->black_at);
  bb_placed_print_place (self->print, bb_session_get_units (self->session), placement, has_art (self),
                         has_size (self), has_box (self));
  bb_placed_print_describe (self->print, self->picture->name, bb_garment_picker_get_name (self->garment_picker), mode);
}

static void
advise (BbArtworkView      *self,
        const BbArtworkOut *out)
{
  g_autoptr (BbPrintModeIn) in = bb_print_mode_in_new ();
  g_autoptr (BbPrintModeOut) advice = bb_print_mode_out_new ();
  g_autoptr (GError) error = NULL;

  in->garment_srgb = g_strdup (bb_garment_picker_get_srgb (self->garment_picker));
  in->white_fraction = out->white_fraction;
  in->black_fraction = out->black_fraction;
  in->partial_fraction = out->partial_fraction;
  if (!bb_calculator_run (&bb_print_mode_calculator, in, advice, &error))
    {
      bb_session_report (self->session, error);
      return;
    }

  self->advised_mode = advice->mode;
  bb_artwork_facts_show_advice (self->facts, advice, self->recipe_mode);
}

/* The advice comes first: where no recipe and no person names a mode, it is the one that is shown. */
static void
update_facts (BbArtworkView     *self,
              BbArtworkIn       *in,
              const BbPlacement *placement)
{
  const BbCounts *counts = &self->picture->counts;
  g_autoptr (BbArtworkOut) counted = bb_artwork_out_new ();
  g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();

  in->print_width_mm = placement->picture.width_mm;
  in->mode = BB_PRINT_COLOUR_ONLY;
  bb_artwork_fill (in, counts, counted);
  advise (self, counted);

  in->mode = get_shown_mode (self);
  bb_artwork_fill (in, counts, out);
  bb_coverage_fill (&self->coverage, in, out);
  bb_artwork_facts_show (self->facts, bb_session_get_units (self->session), in, out, &self->coverage,
                         has_size (self) ? &placement->art : NULL);
}

/* Everything follows from what was counted once. */
static void
update (BbArtworkView *self)
{
  g_autoptr (BbArtworkIn) in = bb_artwork_in_new ();
  BbPlacement placement;

  if (self->picture == NULL || self->session == NULL)
    return;

  place (self, &placement);
  update_facts (self, in, &placement);
  bb_mode_switch_set_mode (self->mode_switch, (BbPrintMode) in->mode);
  show_print (self, in, &placement);
}

static void
mode_changed_cb (BbArtworkView *self)
{
  self->picked_mode = (int) bb_mode_switch_get_mode (self->mode_switch);
  update (self);
}

static void
garment_changed_cb (BbArtworkView *self)
{
  update (self);
  g_signal_emit (self, signals[SIGNAL_GARMENT_PICKED], 0);
}

/**
 * bb_artwork_view_set_session:
 * @self: a view
 * @session: the session
 */
void
bb_artwork_view_set_session (BbArtworkView *self,
                             BbSession     *session)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_garment_picker_set_session (self->garment_picker, session);
  g_signal_connect_object (session, "units-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
}

/**
 * bb_artwork_view_set_picture:
 * @self: a view
 * @picture: (nullable): what to show; it has to stay until there is another
 */
void
bb_artwork_view_set_picture (BbArtworkView          *self,
                             const BbArtworkPicture *picture)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self));

  self->picture = picture;
  self->picked_mode = BB_CHOICE_NONE;
  bb_placed_print_forget (self->print);
  gtk_label_set_label (self->name_label, picture != NULL ? picture->name : "");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->name_label), picture != NULL ? picture->path : NULL);
  update (self);
}

/**
 * bb_artwork_view_set_width:
 * @self: a view
 * @width_mm: width of what is visible of the picture; NaN where it is not known
 */
void
bb_artwork_view_set_width (BbArtworkView *self,
                           double         width_mm)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self));

  self->width_mm = width_mm;
  update (self);
}

/**
 * bb_artwork_view_set_box:
 * @self: a view
 * @box: (nullable): what is sprayed, or %NULL where that is not known
 */
void
bb_artwork_view_set_box (BbArtworkView  *self,
                         const BbBoxOut *box)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self));

  self->is_boxed = box != NULL;
  if (box != NULL)
    self->box = *box;
  update (self);
}

/**
 * bb_artwork_view_set_recipe:
 * @self: a view
 * @recipe: (nullable): the recipe in hand
 * @colourway: (nullable): its one colour, if it is for one
 * @mode: its #BbPrintMode, or %BB_CHOICE_NONE
 */
void
bb_artwork_view_set_recipe (BbArtworkView     *self,
                            const BbRecipe    *recipe,
                            const BbColourway *colourway,
                            int                mode)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self));

  bb_garment_picker_set_recipe (self->garment_picker, recipe, colourway);
  if (mode != self->recipe_mode)
    self->picked_mode = BB_CHOICE_NONE;
  self->recipe_mode = mode;
  update (self);
}

/**
 * bb_artwork_view_get_coverage:
 * @self: a view
 *
 * Returns: (nullable): how much of the art box each ink covers in the mode that is shown, or %NULL without a picture
 */
const BbCoverage *
bb_artwork_view_get_coverage (BbArtworkView *self)
{
  g_return_val_if_fail (BB_IS_ARTWORK_VIEW (self), NULL);

  return self->picture != NULL ? &self->coverage : NULL;
}

/**
 * bb_artwork_view_pick_garment:
 * @self: a view
 * @srgb: (nullable): a colour as `#rrggbb`, or %NULL for the recipe's own
 * @name: (nullable): what it is called
 */
void
bb_artwork_view_pick_garment (BbArtworkView *self,
                              const char    *srgb,
                              const char    *name)
{
  g_return_if_fail (BB_IS_ARTWORK_VIEW (self));

  bb_garment_picker_pick (self->garment_picker, srgb, name);
  update (self);
}

/**
 * bb_artwork_view_get_garment:
 * @self: a view
 * @srgb: (out): the colour as `#rrggbb`
 * @name: (out): what it is called
 *
 * Returns: %TRUE if the person picked it, %FALSE if it is the recipe's
 */
gboolean
bb_artwork_view_get_garment (BbArtworkView  *self,
                             const char    **srgb,
                             const char    **name)
{
  g_return_val_if_fail (BB_IS_ARTWORK_VIEW (self), FALSE);

  *srgb = bb_garment_picker_get_srgb (self->garment_picker);
  *name = bb_garment_picker_get_name (self->garment_picker);

  return bb_garment_picker_get_picked (self->garment_picker) != NULL;
}

static void
bb_artwork_view_dispose (GObject *object)
{
  BbArtworkView *self = BB_ARTWORK_VIEW (object);

  self->picture = NULL;
  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_artwork_view_parent_class)->dispose (object);
}

static void
bb_artwork_view_class_init (BbArtworkViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_artwork_view_dispose;

  /**
   * BbArtworkView::garment-picked:
   *
   * The person picked another colour for the garment.
   */
  signals[SIGNAL_GARMENT_PICKED] = g_signal_new ("garment-picked", BB_TYPE_ARTWORK_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                                 NULL, NULL, G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_ARTWORK_FACTS);
  g_type_ensure (BB_TYPE_GARMENT_PICKER);
  g_type_ensure (BB_TYPE_MODE_SWITCH);
  g_type_ensure (BB_TYPE_PLACED_PRINT);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-artwork-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbArtworkView, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkView, garment_picker);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkView, mode_switch);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkView, print);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkView, facts);
  gtk_widget_class_bind_template_callback (widget_class, mode_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, garment_changed_cb);
}

static void
bb_artwork_view_init (BbArtworkView *self)
{
  self->width_mm = (double) NAN;
  self->recipe_mode = BB_CHOICE_NONE;
  self->picked_mode = BB_CHOICE_NONE;
  gtk_widget_init_template (GTK_WIDGET (self));
}
