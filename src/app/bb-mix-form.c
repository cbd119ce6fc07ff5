/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-form"

#include "bb-mix-form.h"

#include <glib/gi18n-lib.h>

#include "bb-form.h"

struct _BbMixForm
{
  GtkBox parent_instance;

  /* template */
  AdwBin *form_bin;
  GtkLabel *losses_label;

  /* borrowed from the bin */
  BbForm *form;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbMixForm, bb_mix_form, GTK_TYPE_BOX)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static BbShop *
load_shop (BbMixForm *self)
{
  g_autoptr (GError) error = NULL;
  BbShop *shop = bb_book_load_shop (bb_session_get_book (self->session), &error);

  if (shop == NULL)
    bb_session_report (self->session, error);

  return shop;
}

/* A job sheet for the same garments comes to the same, unless something was changed here. */
static void
show_losses (BbMixForm *self)
{
  g_autoptr (BbWorksheetIn) draft = bb_form_dup_draft (self->form);
  g_autoptr (BbShop) shop = load_shop (self);
  g_autofree char *own = shop != NULL ? bb_worksheet_describe_own_losses (draft, shop) : NULL;
  g_autofree char *text = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->losses_label), shop != NULL);
  if (shop == NULL)
    return;
  text = own != NULL ? g_strdup_printf (_("Other than the shop's settings, which job sheets reckon with: %s."), own)
                     : g_strdup (_("Losses and reserve are the shop's settings, spoilage that of a new job: a job "
                                   "sheet reckons with the same."));
  gtk_label_set_label (self->losses_label, text);
}

static void
form_changed_cb (BbMixForm *self)
{
  show_losses (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * bb_mix_form_start_over:
 * @self: a form
 *
 * Empties it, but for the shop's losses.
 */
void
bb_mix_form_start_over (BbMixForm *self)
{
  g_autoptr (BbWorksheetIn) in = bb_worksheet_in_new ();
  g_autoptr (BbShop) shop = NULL;

  g_return_if_fail (BB_IS_MIX_FORM (self));

  shop = load_shop (self);
  in->basis = BB_BASIS_VOLUME;
  if (shop != NULL)
    bb_worksheet_take_shop (in, shop);
  bb_form_load (self->form, in);
  show_losses (self);
}

/**
 * bb_mix_form_set_session:
 * @self: a form
 * @session: the session
 *
 * Makes the form and starts over.
 */
void
bb_mix_form_set_session (BbMixForm *self,
                         BbSession *session)
{
  g_return_if_fail (BB_IS_MIX_FORM (self) && self->session == NULL);

  self->session = g_object_ref (session);
  self->form = BB_FORM (bb_form_new (session, &bb_worksheet_in_table));
  bb_mix_form_start_over (self);
  adw_bin_set_child (self->form_bin, GTK_WIDGET (self->form));
  g_signal_connect_object (self->form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_mix_form_refresh:
 * @self: a form
 *
 * Says anew what the shop's settings have to do with it; the figures stay.
 */
void
bb_mix_form_refresh (BbMixForm *self)
{
  g_return_if_fail (BB_IS_MIX_FORM (self));

  show_losses (self);
}

/**
 * bb_mix_form_take_revision:
 * @self: a form
 * @revision: a revision
 *
 * Fills in what the revision says of its pretreat; the rest stays.
 */
void
bb_mix_form_take_revision (BbMixForm        *self,
                           const BbRevision *revision)
{
  g_autoptr (BbWorksheetIn) in = NULL;
  g_autoptr (BbSupply) product = NULL;

  g_return_if_fail (BB_IS_MIX_FORM (self) && revision != NULL);

  in = bb_form_dup_draft (self->form);
  if (revision->pretreat_product != 0)
    product = bb_book_load (bb_session_get_book (self->session), &bb_supply_table, revision->pretreat_product, NULL);
  bb_worksheet_take_revision (in, revision, product);
  bb_form_load (self->form, in);
  show_losses (self);
}

static void
set_length (BbMixForm  *self,
            const char *name,
            double      mm)
{
  bb_form_set_fixed (self->form, bb_table_find_field (&bb_worksheet_in_table, name), mm);
}

/**
 * bb_mix_form_set_size:
 * @self: a form
 * @width_mm: width of the print; NaN leaves what stands there
 * @height_mm: its height; likewise
 *
 * Fills in a size that follows from something else than what was typed.
 */
void
bb_mix_form_set_size (BbMixForm *self,
                      double     width_mm,
                      double     height_mm)
{
  g_return_if_fail (BB_IS_MIX_FORM (self));

  if (!isnan (width_mm))
    set_length (self, "print_width_mm", width_mm);
  if (!isnan (height_mm))
    set_length (self, "print_height_mm", height_mm);
}

/**
 * bb_mix_form_dup_draft:
 * @self: a form
 *
 * Returns: (transfer full): the figures as far as they can be read: what is wrong or missing is left empty
 */
BbWorksheetIn *
bb_mix_form_dup_draft (BbMixForm *self)
{
  g_return_val_if_fail (BB_IS_MIX_FORM (self), NULL);

  return bb_form_dup_draft (self->form);
}

/**
 * bb_mix_form_dup_figures:
 * @self: a form
 *
 * Returns: (transfer full) (nullable): the figures; %NULL while one of them is wrong or missing
 */
BbWorksheetIn *
bb_mix_form_dup_figures (BbMixForm *self)
{
  g_return_val_if_fail (BB_IS_MIX_FORM (self), NULL);

  return bb_form_dup_record (self->form, FALSE);
}

/**
 * bb_mix_form_save_state:
 * @self: a form
 *
 * Returns: (transfer floating): what is typed in it, as `a{ss}`
 */
GVariant *
bb_mix_form_save_state (BbMixForm *self)
{
  g_return_val_if_fail (BB_IS_MIX_FORM (self), NULL);

  return bb_form_save_state (self->form);
}

/**
 * bb_mix_form_load_state:
 * @self: a form
 * @state: what bb_mix_form_save_state() gave earlier
 */
void
bb_mix_form_load_state (BbMixForm *self,
                        GVariant  *state)
{
  g_return_if_fail (BB_IS_MIX_FORM (self));

  bb_form_load_state (self->form, state);
  show_losses (self);
}

static void
bb_mix_form_dispose (GObject *object)
{
  BbMixForm *self = BB_MIX_FORM (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_MIX_FORM);

  G_OBJECT_CLASS (bb_mix_form_parent_class)->dispose (object);
}

static void
bb_mix_form_class_init (BbMixFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_mix_form_dispose;

  /**
   * BbMixForm::changed:
   *
   * A person changed one of the figures.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_MIX_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-form.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixForm, form_bin);
  gtk_widget_class_bind_template_child (widget_class, BbMixForm, losses_label);
}

static void
bb_mix_form_init (BbMixForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
