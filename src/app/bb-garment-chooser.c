/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-garment-chooser"

#include "bb-garment-chooser.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-pick-width.h"
#include "bb-show.h"
#include "bb-signal.h"

/* Most characters in the buttons. */
#define BLANK_WIDTH 30
#define COLOUR_WIDTH 20

struct _BbGarmentChooser
{
  AdwBin parent_instance;

  /* template */
  GtkDropDown *blank_drop_down;
  GtkDropDown *colour_drop_down;

  /* owned; the keys are those of the positions in the drop-downs */
  BbSession *session;
  GArray *blanks;
  GArray *colourways;
};

G_DEFINE_FINAL_TYPE (BbGarmentChooser, bb_garment_chooser, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static gint64
get_key (GtkDropDown *drop_down,
         GArray      *keys)
{
  const guint position = gtk_drop_down_get_selected (drop_down);

  return position < keys->len ? g_array_index (keys, gint64, position) : 0;
}

static guint
find_key (GArray *keys,
          gint64  key)
{
  for (guint i = 0; i < keys->len; i++)
    if (g_array_index (keys, gint64, i) == key)
      return i;

  return G_MAXUINT;
}

static void
set_choices (GtkDropDown   *drop_down,
             GtkStringList *titles,
             guint          position)
{
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (titles));
  gtk_drop_down_set_selected (drop_down, position != G_MAXUINT ? position : 0);
}

static void
changed_cb (BbGarmentChooser *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
fill_colours (BbGarmentChooser *self,
              gint64            colourway)
{
  const gint64 blank = bb_garment_chooser_get_blank (self);
  const gint64 any = 0;
  g_autoptr (GtkStringList) titles = gtk_string_list_new (NULL);
  g_autoptr (GPtrArray) colourways = NULL;
  g_autoptr (GError) error = NULL;

  g_array_set_size (self->colourways, 0);
  g_array_append_val (self->colourways, any);
  gtk_string_list_append (titles, _("Any colour"));
  if (blank != 0)
    colourways = bb_book_load_referring (bb_session_get_book (self->session), &bb_colourway_table, &bb_blank_table,
                                         blank, &error);
  if (error != NULL)
    bb_session_report (self->session, error);
  for (guint i = 0; colourways != NULL && i < colourways->len; i++)
    {
      const BbColourway *colour = colourways->pdata[i];

      if (colour->withdrawn_at != NULL && colour->id != colourway)
        continue;
      g_array_append_val (self->colourways, colour->id);
      gtk_string_list_append (titles, colour->name);
    }
  g_signal_handlers_block_by_func (self->colour_drop_down, BB_HANDLER (changed_cb), self);
  set_choices (self->colour_drop_down, titles, find_key (self->colourways, colourway));
  g_signal_handlers_unblock_by_func (self->colour_drop_down, BB_HANDLER (changed_cb), self);
}

static void
blank_chosen_cb (BbGarmentChooser *self)
{
  fill_colours (self, 0);
  changed_cb (self);
}

static void
add_blank (BbGarmentChooser *self,
           GtkStringList    *titles,
           gint64            id,
           const char       *title)
{
  g_array_append_val (self->blanks, id);
  gtk_string_list_append (titles, title);
}

static void
fill_blanks (BbGarmentChooser *self,
             gint64            blank)
{
  g_autoptr (GtkStringList) titles = gtk_string_list_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) names = bb_book_load_names (bb_session_get_book (self->session),
                                                    bb_table_find_field (&bb_recipe_table, "blank"), &error);

  g_array_set_size (self->blanks, 0);
  if (names == NULL)
    bb_session_report (self->session, error);
  for (guint i = 0; names != NULL && i < names->len; i++)
    {
      const BbNameLine *line = names->pdata[i];
      g_autofree char *title = g_strdup_printf ("%s · %s", line->name, line->code);

      add_blank (self, titles, line->id, title);
    }
  /* One that is withdrawn is not offered, but stays where it is asked for. */
  if (blank != 0 && find_key (self->blanks, blank) == G_MAXUINT)
    {
      g_autofree char *title = bb_show_name (self->session, &bb_blank_table, blank);

      add_blank (self, titles, blank, title);
    }
  g_signal_handlers_block_by_func (self->blank_drop_down, BB_HANDLER (blank_chosen_cb), self);
  set_choices (self->blank_drop_down, titles, find_key (self->blanks, blank));
  g_signal_handlers_unblock_by_func (self->blank_drop_down, BB_HANDLER (blank_chosen_cb), self);
}

/**
 * bb_garment_chooser_set_session:
 * @self: a chooser
 * @session: the session whose book has the blanks
 */
void
bb_garment_chooser_set_session (BbGarmentChooser *self,
                                BbSession        *session)
{
  g_return_if_fail (BB_IS_GARMENT_CHOOSER (self) && self->session == NULL);

  self->session = g_object_ref (session);
}

/**
 * bb_garment_chooser_choose:
 * @self: a chooser
 * @blank: key of a blank; 0 for that of @colourway, the one chosen before, or the first
 * @colourway: key of it in a colour; 0 for any colour
 *
 * Reads the blanks anew and chooses one as a person would, without telling anybody.
 */
void
bb_garment_chooser_choose (BbGarmentChooser *self,
                           gint64            blank,
                           gint64            colourway)
{
  g_autoptr (BbColourway) known = NULL;
  g_autoptr (GError) error = NULL;

  g_return_if_fail (BB_IS_GARMENT_CHOOSER (self) && self->session != NULL);

  if (blank == 0 && colourway != 0)
    known = bb_book_load (bb_session_get_book (self->session), &bb_colourway_table, colourway, &error);
  if (error != NULL)
    bb_session_report (self->session, error);
  if (known != NULL)
    blank = known->blank;
  fill_blanks (self, blank != 0 ? blank : bb_garment_chooser_get_blank (self));
  fill_colours (self, colourway);
}

/**
 * bb_garment_chooser_get_blank:
 * @self: a chooser
 *
 * Returns: key of the blank that is chosen, 0 where there is none
 */
gint64
bb_garment_chooser_get_blank (BbGarmentChooser *self)
{
  g_return_val_if_fail (BB_IS_GARMENT_CHOOSER (self), 0);

  return get_key (self->blank_drop_down, self->blanks);
}

/**
 * bb_garment_chooser_get_colourway:
 * @self: a chooser
 *
 * Returns: key of the blank in the colour that is chosen, 0 for any colour
 */
gint64
bb_garment_chooser_get_colourway (BbGarmentChooser *self)
{
  g_return_val_if_fail (BB_IS_GARMENT_CHOOSER (self), 0);

  return get_key (self->colour_drop_down, self->colourways);
}

/**
 * bb_garment_chooser_focus:
 * @self: a chooser
 *
 * Puts the keyboard where the blank is chosen.
 */
void
bb_garment_chooser_focus (BbGarmentChooser *self)
{
  g_return_if_fail (BB_IS_GARMENT_CHOOSER (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->blank_drop_down));
}

static void
bb_garment_chooser_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_GARMENT_CHOOSER (object)->session);

  G_OBJECT_CLASS (bb_garment_chooser_parent_class)->dispose (object);
}

static void
bb_garment_chooser_finalize (GObject *object)
{
  BbGarmentChooser *self = BB_GARMENT_CHOOSER (object);

  g_array_unref (self->blanks);
  g_array_unref (self->colourways);

  G_OBJECT_CLASS (bb_garment_chooser_parent_class)->finalize (object);
}

static void
bb_garment_chooser_class_init (BbGarmentChooserClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_garment_chooser_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_garment_chooser_finalize;

  /**
   * BbGarmentChooser::changed:
   *
   * A person chose another garment.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_GARMENT_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-garment-chooser.ui");
  gtk_widget_class_bind_template_child (widget_class, BbGarmentChooser, blank_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentChooser, colour_drop_down);
}

static void
bb_garment_chooser_init (BbGarmentChooser *self)
{
  self->blanks = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->colourways = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->blank_drop_down), _("Blank"));
  bb_compat_set_name (GTK_WIDGET (self->colour_drop_down), _("Colour"));
  bb_pick_set_width (self->blank_drop_down, BLANK_WIDTH);
  bb_pick_set_width (self->colour_drop_down, COLOUR_WIDTH);
  g_signal_connect_object (self->blank_drop_down, "notify::selected", G_CALLBACK (blank_chosen_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->colour_drop_down, "notify::selected", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
}
