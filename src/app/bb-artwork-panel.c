/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-artwork-panel"

#include "bb-artwork-panel.h"

#include "bb-artwork-reader.h"
#include "bb-artwork-view.h"
#include "bb-print-size.h"

struct _BbArtworkPanel
{
  AdwBin parent_instance;

  /* template */
  BbArtworkReader *reader;
  GtkBox *empty_box;
  BbArtworkView *view;

  /* owned */
  BbSession *session;
  BbArtworkPicture *picture;

  BbPrintSize size;
};

G_DEFINE_FINAL_TYPE (BbArtworkPanel, bb_artwork_panel, ADW_TYPE_BIN)

enum {
  SIGNAL_STARTED,
  SIGNAL_SIZED,
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* What was counted of the artwork; NULL where there is none, or nothing of it is visible. */
static const BbCounts *
get_art (BbArtworkPanel *self)
{
  const BbCounts *counts = self->picture != NULL ? &self->picture->counts : NULL;

  return counts != NULL && counts->left != counts->right ? counts : NULL;
}

/* Size */

static void
show_size (BbArtworkPanel *self)
{
  bb_artwork_view_set_width (self->view, bb_print_size_is_length (self->size.width_mm) ? self->size.width_mm
                                                                                       : (double) NAN);
}

static void
size_picture (BbArtworkPanel *self)
{
  const BbCounts *art = get_art (self);

  if (art == NULL || !bb_print_size_take_art (&self->size, art))
    return;

  show_size (self);
  g_signal_emit (self, signals[SIGNAL_SIZED], 0, self->size.width_mm, self->size.height_mm);
}

/**
 * bb_artwork_panel_follow:
 * @self: a panel
 * @width_mm: (inout): width of the print as the form has it; NaN where it has none
 * @height_mm: (inout): its height
 *
 * Tells what the form has now. Where a person changed one of the two, the other is made to suit the artwork.
 *
 * Returns: %TRUE if the panel changed one of them
 */
gboolean
bb_artwork_panel_follow (BbArtworkPanel *self,
                         double         *width_mm,
                         double         *height_mm)
{
  const BbCounts *art = NULL;
  gboolean is_changed = FALSE;

  g_return_val_if_fail (BB_IS_ARTWORK_PANEL (self), FALSE);

  art = get_art (self);
  is_changed = bb_print_size_follow (&self->size, art, width_mm, height_mm);
  if (is_changed || art == NULL)
    show_size (self);

  return is_changed;
}

/**
 * bb_artwork_panel_set_box:
 * @self: a panel
 * @box: (nullable): what is sprayed around the print, or %NULL where that is not known
 */
void
bb_artwork_panel_set_box (BbArtworkPanel *self,
                          const BbBoxOut *box)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self));

  bb_artwork_view_set_box (self->view, box);
}

/* The artwork */

static void
take_picture (BbArtworkPanel   *self,
              BbArtworkPicture *picture)
{
  bb_artwork_view_set_picture (self->view, NULL);
  g_clear_pointer (&self->picture, bb_artwork_picture_free);
  self->picture = picture;
  gtk_widget_set_visible (GTK_WIDGET (self->empty_box), picture == NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->view), picture != NULL);
  if (picture == NULL)
    return;

  size_picture (self);
  bb_artwork_view_set_picture (self->view, picture);
}

static void
started_cb (BbArtworkPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_STARTED], 0);
}

/* A file that was kept may be gone while nobody looks at the panel. */
static void
refused_cb (BbArtworkPanel *self,
            const char     *message)
{
  if (self->session != NULL && !gtk_widget_get_mapped (GTK_WIDGET (self)))
    bb_session_say (self->session, message);
}

static void
read_cb (BbArtworkPanel *self)
{
  take_picture (self, bb_artwork_reader_take_picture (self->reader));
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * bb_artwork_panel_load:
 * @self: a panel
 * @path: a file's name
 *
 * Reads an artwork, as if it had been dropped.
 */
void
bb_artwork_panel_load (BbArtworkPanel *self,
                       const char     *path)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self) && path != NULL);

  bb_artwork_reader_load (self->reader, path);
}

/**
 * bb_artwork_panel_take_drops:
 * @self: a panel
 * @widget: a widget around it
 *
 * Lets files be dropped on a larger place than the panel is.
 */
void
bb_artwork_panel_take_drops (BbArtworkPanel *self,
                             GtkWidget      *widget)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self) && GTK_IS_WIDGET (widget));

  bb_artwork_reader_take_drops (self->reader, widget);
}

static void
choose_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  bb_artwork_reader_choose (BB_ARTWORK_PANEL (widget)->reader);
}

static void
remove_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbArtworkPanel *self = BB_ARTWORK_PANEL (widget);

  (void) name;
  (void) parameter;

  bb_artwork_panel_clear (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
garment_picked_cb (BbArtworkPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * bb_artwork_panel_clear:
 * @self: a panel
 *
 * Puts the artwork away, and a reading under way. The form keeps the print's size.
 */
void
bb_artwork_panel_clear (BbArtworkPanel *self)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self));

  self->size.is_typed = FALSE;
  bb_artwork_reader_clear (self->reader);
  take_picture (self, NULL);
  bb_artwork_view_pick_garment (self->view, NULL, NULL);
}

/**
 * bb_artwork_panel_set_session:
 * @self: a panel
 * @session: the session
 */
void
bb_artwork_panel_set_session (BbArtworkPanel *self,
                              BbSession      *session)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_artwork_view_set_session (self->view, session);
}

/**
 * bb_artwork_panel_set_recipe:
 * @self: a panel
 * @recipe: (nullable): the recipe in hand
 * @colourway: (nullable): its one colour, if it is for one
 * @mode: its #BbPrintMode, or %BB_CHOICE_NONE
 *
 * Tells on which garment the artwork is to be printed, and how.
 */
void
bb_artwork_panel_set_recipe (BbArtworkPanel    *self,
                             const BbRecipe    *recipe,
                             const BbColourway *colourway,
                             int                mode)
{
  g_return_if_fail (BB_IS_ARTWORK_PANEL (self));

  bb_artwork_view_set_recipe (self->view, recipe, colourway, mode);
}

/**
 * bb_artwork_panel_get_coverage:
 * @self: a panel
 *
 * Returns: (nullable): how much of the art box each ink covers in the mode that is shown, or %NULL without an artwork
 */
const BbCoverage *
bb_artwork_panel_get_coverage (BbArtworkPanel *self)
{
  g_return_val_if_fail (BB_IS_ARTWORK_PANEL (self), NULL);

  return bb_artwork_view_get_coverage (self->view);
}

/**
 * bb_artwork_panel_get_path:
 * @self: a panel
 *
 * Returns: (nullable): the name of the artwork's file, or %NULL without one
 */
const char *
bb_artwork_panel_get_path (BbArtworkPanel *self)
{
  g_return_val_if_fail (BB_IS_ARTWORK_PANEL (self), NULL);

  return self->picture != NULL ? self->picture->path : NULL;
}

/**
 * bb_artwork_panel_save_state:
 * @self: a panel
 *
 * Returns: (transfer floating): what is kept of it, as %BB_ARTWORK_PANEL_STATE
 */
GVariant *
bb_artwork_panel_save_state (BbArtworkPanel *self)
{
  const char *path = NULL;
  const char *srgb = NULL;
  const char *name = NULL;

  g_return_val_if_fail (BB_IS_ARTWORK_PANEL (self), NULL);

  path = self->picture != NULL ? self->picture->path : bb_artwork_reader_get_unread (self->reader);
  if (!bb_artwork_view_get_garment (self->view, &srgb, &name))
    srgb = name = "";

  return g_variant_new ("(@ayss)", g_variant_new_bytestring (path != NULL ? path : ""), srgb,
                        name);
}

/**
 * bb_artwork_panel_load_state:
 * @self: a panel
 * @state: what bb_artwork_panel_save_state() gave earlier
 *
 * Reads the artwork again. If its file is gone, the panel says so.
 */
void
bb_artwork_panel_load_state (BbArtworkPanel *self,
                             GVariant       *state)
{
  g_autoptr (GVariant) kept_path = NULL;
  const char *path = NULL;
  const char *srgb = NULL;
  const char *name = NULL;
  guint8 rgb[3];

  g_return_if_fail (BB_IS_ARTWORK_PANEL (self) &&
                    g_variant_is_of_type (state, G_VARIANT_TYPE (BB_ARTWORK_PANEL_STATE)));

  g_variant_get (state, "(@ay&s&s)", &kept_path, &srgb, &name);
  path = g_variant_get_bytestring (kept_path);
  if (bb_srgb_parse (srgb, rgb))
    bb_artwork_view_pick_garment (self->view, srgb, name);
  if (*path != '\0')
    bb_artwork_panel_load (self, path);
}

static void
bb_artwork_panel_dispose (GObject *object)
{
  BbArtworkPanel *self = BB_ARTWORK_PANEL (object);

  if (self->view != NULL)
    {
      bb_artwork_view_set_picture (self->view, NULL);
      self->view = NULL;
    }
  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_artwork_panel_parent_class)->dispose (object);
}

static void
bb_artwork_panel_finalize (GObject *object)
{
  BbArtworkPanel *self = BB_ARTWORK_PANEL (object);

  g_clear_pointer (&self->picture, bb_artwork_picture_free);

  G_OBJECT_CLASS (bb_artwork_panel_parent_class)->finalize (object);
}

static void
install_signals (void)
{
  /**
   * BbArtworkPanel::started:
   *
   * An artwork is being read: a good moment to show the panel.
   */
  signals[SIGNAL_STARTED] = g_signal_new ("started", BB_TYPE_ARTWORK_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  /**
   * BbArtworkPanel::sized:
   * @width_mm: width of what is visible of the artwork
   * @height_mm: its height
   *
   * A new artwork has a size, which the form has to take.
   */
  signals[SIGNAL_SIZED] = g_signal_new ("sized", BB_TYPE_ARTWORK_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  /**
   * BbArtworkPanel::changed:
   *
   * There is something else to be kept of the panel.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_ARTWORK_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_artwork_panel_class_init (BbArtworkPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_artwork_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_artwork_panel_finalize;
  install_signals ();

  g_type_ensure (BB_TYPE_ARTWORK_READER);
  g_type_ensure (BB_TYPE_ARTWORK_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-artwork-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, BbArtworkPanel, reader);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkPanel, empty_box);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkPanel, view);
  gtk_widget_class_bind_template_callback (widget_class, started_cb);
  gtk_widget_class_bind_template_callback (widget_class, read_cb);
  gtk_widget_class_bind_template_callback (widget_class, refused_cb);
  gtk_widget_class_bind_template_callback (widget_class, garment_picked_cb);
  gtk_widget_class_install_action (widget_class, "artwork.choose", NULL, choose_action);
  gtk_widget_class_install_action (widget_class, "artwork.remove", NULL, remove_action);
}

static void
bb_artwork_panel_init (BbArtworkPanel *self)
{
  self->size = BB_PRINT_SIZE_UNKNOWN;
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_artwork_panel_take_drops (self, GTK_WIDGET (self));
}
