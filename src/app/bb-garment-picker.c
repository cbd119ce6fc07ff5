/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-garment-picker"

#include "bb-garment-picker.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-swatch.h"

/* What garments of no blank are often like. Our own, no source: they are looked at, not measured. */
static const struct {
  const char *name;
  const char *srgb;
} plain[] = {
  { N_("White"), "#ffffff" },
  { N_("Natural"), "#efe8d8" },
  { N_("Ash grey"), "#c9ccd0" },
  { N_("Red"), "#a8202c" },
  { N_("Green"), "#1f5a3c" },
  { N_("Navy blue"), "#1b2a49" },
  { N_("Charcoal"), "#3a3d42" },
  { N_("Black"), "#161618" },
};

/* In whose place a recipe for several colours is looked at. */
static const struct {
  const char *name;
  const char *srgb;
} stand_ins[] = {
  [BB_SHADE_ANY] = { N_("White"), "#ffffff" },
  [BB_SHADE_WHITE] = { N_("White"), "#ffffff" },
  [BB_SHADE_LIGHT] = { N_("A light garment"), "#cdd2d6" },
  [BB_SHADE_DARK] = { N_("A dark garment"), "#33373e" },
  [BB_SHADE_BLACK] = { N_("Black"), "#161618" },
};

struct _BbGarmentPicker
{
  AdwBin parent_instance;

  /* template */
  GtkMenuButton *button;
  BbSwatch *swatch;
  GtkLabel *label;
  GtkPopover *popover;
  GtkListBox *list;

  /* owned */
  BbSession *session;
  char *own_srgb;
  char *own_name;
  char *picked_srgb;
  char *picked_name;

  gint64 recipe;
  gint64 blank;
};

G_DEFINE_FINAL_TYPE (BbGarmentPicker, bb_garment_picker, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show (BbGarmentPicker *self)
{
  g_autofree char *spoken = NULL;

  /* Translators: the garment's colour, for a screen reader. */
  spoken = g_strdup_printf (_("The garment's colour: %s"), bb_garment_picker_get_name (self));
  bb_swatch_set_srgb (self->swatch, bb_garment_picker_get_srgb (self));
  gtk_label_set_label (self->label, bb_garment_picker_get_name (self));
  bb_compat_set_name (GTK_WIDGET (self->button), spoken);
}

static void
add_row (BbGarmentPicker *self,
         const char      *name,
         const char      *srgb)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *swatch = bb_swatch_new (22);

  bb_swatch_set_srgb (BB_SWATCH (swatch), srgb);
  gtk_box_append (GTK_BOX (box), swatch);
  gtk_box_append (GTK_BOX (box), gtk_label_new (name));
  gtk_widget_add_css_class (box, "pick");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), "name", g_strdup (name), g_free);
  g_object_set_data_full (G_OBJECT (row), "srgb", g_strdup (srgb), g_free);
  bb_compat_set_name (row, name);
  gtk_list_box_append (self->list, row);
}

static guint
add_colourways (BbGarmentPicker *self)
{
  g_autoptr (GPtrArray) colourways = NULL;
  g_autoptr (GError) error = NULL;
  guint n_added = 0;

  if (self->blank == 0)
    return 0;

  colourways = bb_book_load_referring (bb_session_get_book (self->session), &bb_colourway_table, &bb_blank_table,
                                       self->blank, &error);
  if (colourways == NULL)
    {
      bb_session_report (self->session, error);
      return 0;
    }
  for (guint i = 0; i < colourways->len; i++)
    {
      const BbColourway *colourway = colourways->pdata[i];

      if (colourway->withdrawn_at != NULL)
        continue;
      add_row (self, colourway->name, colourway->srgb);
      n_added++;
    }

  return n_added;
}

static void
shown_cb (BbGarmentPicker *self)
{
  bb_compat_empty_list (self->list);
  if (add_colourways (self) > 0)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    add_row (self, _(plain[i].name), plain[i].srgb);
}

static void
pick (BbGarmentPicker *self,
      const char      *srgb,
      const char      *name)
{
  bb_garment_picker_pick (self, srgb, name);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
row_activated_cb (BbGarmentPicker *self,
                  GtkListBoxRow   *row)
{
  gtk_popover_popdown (self->popover);
  pick (self, g_object_get_data (G_OBJECT (row), "srgb"), g_object_get_data (G_OBJECT (row), "name"));
}

static void
chosen_cb (const GdkRGBA *colour,
           gpointer       data)
{
  BbGarmentPicker *self = BB_GARMENT_PICKER (data);
  g_autofree char *srgb = bb_srgb_format ((double) colour->red, (double) colour->green, (double) colour->blue);

  /* The window may be gone by now. */
  if (gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    pick (self, srgb, srgb);
}

static void
another_cb (BbGarmentPicker *self)
{
  GdkRGBA now;

  gdk_rgba_parse (&now, bb_garment_picker_get_srgb (self));
  gtk_popover_popdown (self->popover);
  bb_compat_choose_colour (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _("The Garment's Colour"), &now,
                           chosen_cb, G_OBJECT (self));
}

/**
 * bb_garment_picker_set_session:
 * @self: a picker
 * @session: the session whose blanks have colours
 */
void
bb_garment_picker_set_session (BbGarmentPicker *self,
                               BbSession       *session)
{
  g_return_if_fail (BB_IS_GARMENT_PICKER (self) && self->session == NULL);

  self->session = g_object_ref (session);
}

/**
 * bb_garment_picker_set_recipe:
 * @self: a picker
 * @recipe: (nullable): the recipe in hand
 * @colourway: (nullable): its one colour, if it is for one
 *
 * What a person picked holds as long as the recipe is the same.
 */
void
bb_garment_picker_set_recipe (BbGarmentPicker   *self,
                              const BbRecipe    *recipe,
                              const BbColourway *colourway)
{
  const int shade = recipe != NULL ? recipe->shade : BB_SHADE_ANY;
  const gint64 id = recipe != NULL ? recipe->id : 0;

  g_return_if_fail (BB_IS_GARMENT_PICKER (self));

  if (id != self->recipe)
    bb_garment_picker_pick (self, NULL, NULL);
  self->recipe = id;
  self->blank = recipe != NULL ? recipe->blank : 0;
  g_free (self->own_srgb);
  self->own_srgb = g_strdup (colourway != NULL ? colourway->srgb : stand_ins[shade].srgb);
  g_free (self->own_name);
  self->own_name = g_strdup (colourway != NULL ? colourway->name : _(stand_ins[shade].name));
  show (self);
}

/**
 * bb_garment_picker_pick:
 * @self: a picker
 * @srgb: (nullable): a colour as `#rrggbb`, or %NULL for the recipe's own
 * @name: (nullable): what it is called
 *
 * Picks a colour as a person would, without telling anybody.
 */
void
bb_garment_picker_pick (BbGarmentPicker *self,
                        const char      *srgb,
                        const char      *name)
{
  char *new_srgb = g_strdup (srgb);
  char *new_name = g_strdup (name);

  g_return_if_fail (BB_IS_GARMENT_PICKER (self));

  g_free (self->picked_srgb);
  self->picked_srgb = new_srgb;
  g_free (self->picked_name);
  self->picked_name = new_name;
  show (self);
}

/**
 * bb_garment_picker_get_picked:
 * @self: a picker
 *
 * Returns: (nullable): the colour that the person picked, as `#rrggbb`
 */
const char *
bb_garment_picker_get_picked (BbGarmentPicker *self)
{
  g_return_val_if_fail (BB_IS_GARMENT_PICKER (self), NULL);

  return self->picked_srgb;
}

/**
 * bb_garment_picker_get_srgb:
 * @self: a picker
 *
 * Returns: the garment's colour as `#rrggbb`
 */
const char *
bb_garment_picker_get_srgb (BbGarmentPicker *self)
{
  g_return_val_if_fail (BB_IS_GARMENT_PICKER (self), NULL);

  return self->picked_srgb != NULL ? self->picked_srgb : self->own_srgb;
}

/**
 * bb_garment_picker_get_name:
 * @self: a picker
 *
 * Returns: what the garment's colour is called
 */
const char *
bb_garment_picker_get_name (BbGarmentPicker *self)
{
  g_return_val_if_fail (BB_IS_GARMENT_PICKER (self), NULL);

  return self->picked_srgb != NULL ? self->picked_name : self->own_name;
}

static void
bb_garment_picker_dispose (GObject *object)
{
  BbGarmentPicker *self = BB_GARMENT_PICKER (object);

  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_garment_picker_parent_class)->dispose (object);
}

static void
bb_garment_picker_finalize (GObject *object)
{
  BbGarmentPicker *self = BB_GARMENT_PICKER (object);

  g_free (self->own_srgb);
  g_free (self->own_name);
  g_free (self->picked_srgb);
  g_free (self->picked_name);

  G_OBJECT_CLASS (bb_garment_picker_parent_class)->finalize (object);
}

static void
bb_garment_picker_class_init (BbGarmentPickerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_garment_picker_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_garment_picker_finalize;

  /**
   * BbGarmentPicker::changed:
   *
   * The person picked another colour.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_GARMENT_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-garment-picker.ui");
  gtk_widget_class_bind_template_child (widget_class, BbGarmentPicker, button);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentPicker, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentPicker, label);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentPicker, popover);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentPicker, list);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, another_cb);
}

static void
bb_garment_picker_init (BbGarmentPicker *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_garment_picker_set_recipe (self, NULL, NULL);
}
