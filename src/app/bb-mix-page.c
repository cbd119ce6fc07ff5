/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-page"

#include "bb-mix-page.h"

#include <glib/gi18n-lib.h>

#include "bb-artwork-panel.h"
#include "bb-form.h"
#include "bb-garment-band.h"
#include "bb-recipe-picker.h"
#include "bb-revision-menu.h"
#include "bb-state-badge.h"
#include "bb-takes-view.h"
#include "bb-weigh-strip.h"
#include "bb-worksheet-view.h"

/* Under this key the figures are kept, so that they are there again after a restart. */
#define KEPT_KEY "mix"
#define KEPT_TYPE "(xa{ss}" BB_ARTWORK_PANEL_STATE ")"

struct _BbMixPage
{
  BbPage parent_instance;

  /* template */
  BbRecipePicker *picker;
  AdwBin *form_bin;
  GtkLabel *losses_label;
  GtkBox *source_box;
  BbGarmentBand *band;
  GtkLabel *source_label;
  BbStateBadge *badge;
  GtkStack *stack;
  GtkLabel *departure_label;
  BbWorksheetView *worksheet;
  BbTakesView *takes;
  BbWeighStrip *weigh_strip;
  BbArtworkPanel *artwork;

  BbForm *form;

  /* owned: the revision that the figures were taken from, or NULL */
  BbRevision *revision;
  BbState state;
  guint keep_source;
};

G_DEFINE_FINAL_TYPE (BbMixPage, bb_mix_page, BB_TYPE_PAGE)

static void
keep (BbMixPage *self)
{
  g_autoptr (GVariant) kept = NULL;
  g_autofree char *text = NULL;

  g_clear_handle_id (&self->keep_source, g_source_remove);
  kept = g_variant_ref_sink (g_variant_new ("(x@a{ss}@" BB_ARTWORK_PANEL_STATE ")",
                                            self->revision != NULL ? self->revision->id : (gint64) 0,
                                            bb_form_save_state (self->form),
                                            bb_artwork_panel_save_state (self->artwork)));
  text = g_variant_print (kept, FALSE);
  bb_session_keep_form (bb_page_get_session (BB_PAGE (self)), KEPT_KEY, text);
}

static gboolean
keep_later_cb (gpointer data)
{
  BbMixPage *self = BB_MIX_PAGE (data);

  self->keep_source = 0;
  keep (self);

  return G_SOURCE_REMOVE;
}

static void
closing_cb (BbMixPage *self)
{
  if (self->keep_source != 0)
    keep (self);
}

static void
set_size (BbMixPage *self,
          double     width_mm,
          double     height_mm)
{
  bb_form_set_fixed (self->form, bb_table_find_field (&bb_worksheet_in_table, "print_width_mm"), width_mm);
  bb_form_set_fixed (self->form, bb_table_find_field (&bb_worksheet_in_table, "print_height_mm"), height_mm);
}

/* An artwork keeps its ratio: what is typed of one side decides the other. */
static void
follow_artwork (BbMixPage     *self,
                BbWorksheetIn *draft)
{
  double width_mm = draft->print_width_mm;
  double height_mm = draft->print_height_mm;

  if (!bb_artwork_panel_follow (self->artwork, &width_mm, &height_mm))
    return;

  if (height_mm != draft->print_height_mm)
    bb_form_set_fixed (self->form, bb_table_find_field (&bb_worksheet_in_table, "print_height_mm"), height_mm);
  if (width_mm != draft->print_width_mm)
    bb_form_set_fixed (self->form, bb_table_find_field (&bb_worksheet_in_table, "print_width_mm"), width_mm);
  draft->print_width_mm = width_mm;
  draft->print_height_mm = height_mm;
}

static void
update_box (BbMixPage     *self,
            BbWorksheetIn *in)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  BbBoxOut box;

  if (in != NULL && bb_worksheet_box (in, &box, NULL))
    {
      bb_session_set_box_area (session, box.box_area_m2);
      bb_weigh_strip_set_target (self->weigh_strip, in->laydown_g_per_m2, box.box_area_m2);
      bb_artwork_panel_set_box (self->artwork, &box);
    }
  else
    {
      bb_weigh_strip_set_target (self->weigh_strip, (double) NAN, (double) NAN);
      bb_artwork_panel_set_box (self->artwork, NULL);
    }
}

/* Whoever mixes by a recipe that is not proven has to know it before a whole order is sprayed. */
static void
show_caution (BbMixPage  *self,
              const char *text)
{
  switch (self->state)
    {
    case BB_STATE_WITHDRAWN:
      text = _("Withdrawn: ask the process lead before printing by it.");
      break;
    case BB_STATE_DRAFT:
    case BB_STATE_ON_TRIAL:
      text = _("Not proven: print and wash a specimen before a whole order.");
      break;
    case BB_STATE_PROVEN:
    default:
      break;
    }
  gtk_label_set_label (self->source_label, text);
}

/* What was changed against the recipe is said before anything is poured. */
static void
show_departures (BbMixPage           *self,
                 const BbWorksheetIn *in)
{
  g_autofree char *names = NULL;
  g_autofree char *text = NULL;

  if (self->revision != NULL)
    names = bb_worksheet_describe_departures (in, self->revision);
  if (names != NULL)
    text = g_strdup_printf (_("Differs from the recipe: %s."), names);
  gtk_label_set_label (self->departure_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->departure_label), text != NULL);
  show_caution (self, text == NULL ? _("Pretreat as the recipe has it.") : "");
}

static BbShop *
load_shop (BbMixPage *self)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autoptr (GError) error = NULL;
  BbShop *shop = bb_book_load_shop (bb_session_get_book (session), &error);

  if (shop == NULL)
    bb_session_report (session, error);

  return shop;
}

/* A job sheet for the same garments comes to the same, unless something was changed here. */
static void
show_losses (BbMixPage           *self,
             const BbWorksheetIn *draft)
{
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

/* How far a container reaches is counted from the one that the mix is taken from, unless a person said what is left. */
static void
show_sheet (BbMixPage     *self,
            BbWorksheetIn *in,
            BbWorksheet   *sheet)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  const gint64 supply = self->revision != NULL ? self->revision->pretreat_product : 0;
  g_autoptr (BbMixSheet) mix = bb_takes_view_reckon (self->takes, session, supply, sheet->mix.concentrate_g);
  const char *container = NULL;
  BbWorksheet counted;

  if (mix != NULL && bb_worksheet_take_container (in, mix) && bb_worksheet_compute (in, &counted, NULL))
    {
      container = g_array_index (mix->takes, BbTake, 0).code;
      *sheet = counted;
    }
  bb_worksheet_view_show (self->worksheet, session, in, sheet, container);
}

/* A laydown in grams on a box needs the box first, so the box is computed from whatever is there. */
static void
update (BbMixPage *self)
{
  g_autoptr (BbWorksheetIn) draft = bb_form_dup_draft (self->form);
  g_autoptr (BbWorksheetIn) in = NULL;
  g_autoptr (GError) error = NULL;
  BbWorksheet sheet;

  follow_artwork (self, draft);
  show_losses (self, draft);
  update_box (self, draft);
  in = bb_form_dup_record (self->form, FALSE);
  if (in == NULL)
    {
      bb_worksheet_view_show_empty (self->worksheet, self->revision != NULL
                                      ? _("Give the size of the print, or drop its artwork here, and how many "
                                          "garments.")
                                      : _("Choose a recipe or type its figures, then give the size of the print, or "
                                          "drop its artwork here, and how many garments."));
      gtk_widget_set_visible (GTK_WIDGET (self->departure_label), FALSE);
      gtk_widget_set_visible (GTK_WIDGET (self->takes), FALSE);
      show_caution (self, "");
      return;
    }

  show_departures (self, in);
  update_box (self, in);
  if (bb_worksheet_compute (in, &sheet, &error))
    show_sheet (self, in, &sheet);
  else
    {
      bb_worksheet_view_show_empty (self->worksheet, error->message);
      gtk_widget_set_visible (GTK_WIDGET (self->takes), FALSE);
    }
}

static void
form_changed_cb (BbMixPage *self)
{
  update (self);
  g_clear_handle_id (&self->keep_source, g_source_remove);
  self->keep_source = g_timeout_add (600, keep_later_cb, self);
}

static void
artwork_started_cb (BbMixPage *self)
{
  gtk_stack_set_visible_child_name (self->stack, "artwork");
}

static void
artwork_sized_cb (BbMixPage *self,
                  double     width_mm,
                  double     height_mm)
{
  set_size (self, width_mm, height_mm);
  update (self);
}

static void
artwork_changed_cb (BbMixPage *self)
{
  update (self);
  keep (self);
}

static void
show_source (BbMixPage *self)
{
  BbBook *book = bb_session_get_book (bb_page_get_session (BB_PAGE (self)));
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (BbColourway) colourway = NULL;
  g_autoptr (BbStanding) standing = NULL;
  g_autofree char *text = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->source_box), self->revision != NULL);
  bb_recipe_picker_set_label (self->picker, self->revision != NULL ? _("Change Recipe")
                                                                   : _("Choose a Recipe"));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "mix.open-recipe", self->revision != NULL);
  if (self->revision == NULL)
    {
      bb_artwork_panel_set_recipe (self->artwork, NULL, NULL, BB_CHOICE_NONE);
      return;
    }

  recipe = bb_book_load (book, &bb_recipe_table, self->revision->recipe, NULL);
  standing = bb_revision_menu_load_standing (bb_page_get_session (BB_PAGE (self)), self->revision->id);
  if (recipe == NULL)
    return;
  if (recipe->colourway != 0)
    colourway = bb_book_load (book, &bb_colourway_table, recipe->colourway, NULL);
  text = g_strdup_printf (_("%s · Revision %d"), recipe->code, (int) self->revision->number);
  bb_garment_band_set_title (self->band, recipe->name, text);
  bb_garment_band_set_colour (self->band, colourway != NULL ? colourway->srgb : NULL, (BbShade) recipe->shade);
  bb_artwork_panel_set_recipe (self->artwork, recipe, colourway, self->revision->print_mode);
  self->state = standing != NULL ? (BbState) standing->state : BB_STATE_DRAFT;
  bb_state_badge_set_state (self->badge, self->state);
}

static void
take_revision (BbMixPage  *self,
               BbRevision *revision)
{
  BbBook *book = bb_session_get_book (bb_page_get_session (BB_PAGE (self)));
  g_autoptr (BbWorksheetIn) in = bb_form_dup_draft (self->form);
  g_autoptr (BbSupply) product = NULL;

  g_clear_pointer (&self->revision, bb_revision_free);
  self->revision = revision;
  if (revision != NULL)
    {
      if (revision->pretreat_product != 0)
        product = bb_book_load (book, &bb_supply_table, revision->pretreat_product, NULL);
      bb_worksheet_take_revision (in, revision, product);
      bb_form_load (self->form, in);
    }
  show_source (self);
  update (self);
}

static void
picked_cb (BbMixPage *self,
           gint64     recipe)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autoptr (GError) error = NULL;
  BbRevision *revision = bb_book_load_current (bb_session_get_book (session), recipe, &error);

  if (revision == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  take_revision (self, revision);
  keep (self);
}

static BbWorksheetIn *
make_fresh (BbMixPage *self)
{
  BbWorksheetIn *in = bb_worksheet_in_new ();
  g_autoptr (BbShop) shop = load_shop (self);

  in->basis = BB_BASIS_VOLUME;
  if (shop != NULL)
    bb_worksheet_take_shop (in, shop);

  return in;
}

static void
clear_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbMixPage *self = BB_MIX_PAGE (widget);
  g_autoptr (BbWorksheetIn) fresh = make_fresh (self);

  (void) name;
  (void) parameter;

  bb_artwork_panel_clear (self->artwork);
  gtk_stack_set_visible_child_name (self->stack, "worksheet");
  bb_form_load (self->form, fresh);
  take_revision (self, NULL);
  keep (self);
}

static void
open_recipe_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbMixPage *self = BB_MIX_PAGE (widget);

  (void) name;
  (void) parameter;

  if (self->revision != NULL)
    bb_session_show (bb_page_get_session (BB_PAGE (self)), "recipes", self->revision->recipe);
}

static void
resume (BbMixPage *self)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autofree char *text = bb_session_dup_form (session, KEPT_KEY);
  g_autoptr (GVariant) kept = NULL;
  g_autoptr (GVariant) state = NULL;
  g_autoptr (GVariant) artwork = NULL;
  gint64 id = 0;

  if (text != NULL)
    kept = g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), text, NULL, NULL, NULL);
  if (kept == NULL)
    return;

  g_variant_get (kept, "(x@a{ss}@" BB_ARTWORK_PANEL_STATE ")", &id, &state, &artwork);
  if (id != 0)
    take_revision (self, bb_book_load (bb_session_get_book (session), &bb_revision_table, id, NULL));
  bb_form_load_state (self->form, state);
  update (self);
  bb_artwork_panel_load_state (self->artwork, artwork);
  gtk_stack_set_visible_child_name (self->stack, "worksheet");
}

static void
bb_mix_page_start (BbPage *page)
{
  BbMixPage *self = BB_MIX_PAGE (page);
  BbSession *session = bb_page_get_session (page);
  g_autoptr (BbWorksheetIn) fresh = make_fresh (self);

  self->form = BB_FORM (bb_form_new (session, &bb_worksheet_in_table));
  bb_form_load (self->form, fresh);
  adw_bin_set_child (self->form_bin, GTK_WIDGET (self->form));
  g_signal_connect_object (self->form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "closing", G_CALLBACK (closing_cb), self, G_CONNECT_SWAPPED);
  bb_recipe_picker_set_session (self->picker, session);
  bb_weigh_strip_set_session (self->weigh_strip, session);
  bb_artwork_panel_set_session (self->artwork, session);
  bb_artwork_panel_take_drops (self->artwork, GTK_WIDGET (self));
  resume (self);
}

static void
bb_mix_page_refresh (BbPage *page)
{
  show_source (BB_MIX_PAGE (page));
  update (BB_MIX_PAGE (page));
}

static void
bb_mix_page_show_record (BbPage *page,
                         gint64  id)
{
  BbMixPage *self = BB_MIX_PAGE (page);
  BbSession *session = bb_page_get_session (page);
  g_autoptr (GError) error = NULL;
  BbRevision *revision = bb_book_load (bb_session_get_book (session), &bb_revision_table, id, &error);

  if (revision == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  take_revision (self, revision);
  keep (self);
  gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

static void
bb_mix_page_focus (BbPage *page)
{
  gtk_widget_child_focus (GTK_WIDGET (BB_MIX_PAGE (page)->form), GTK_DIR_TAB_FORWARD);
}

static void
bb_mix_page_find (BbPage *page)
{
  bb_recipe_picker_popup (BB_MIX_PAGE (page)->picker);
}

static void
bb_mix_page_dispose (GObject *object)
{
  BbMixPage *self = BB_MIX_PAGE (object);

  g_clear_handle_id (&self->keep_source, g_source_remove);
  g_clear_pointer (&self->revision, bb_revision_free);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_mix_page_parent_class)->dispose (object);
}

static void
bb_mix_page_class_init (BbMixPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_mix_page_dispose;
  page_class->start = bb_mix_page_start;
  page_class->refresh = bb_mix_page_refresh;
  page_class->show_record = bb_mix_page_show_record;
  page_class->focus = bb_mix_page_focus;
  page_class->find = bb_mix_page_find;

  g_type_ensure (BB_TYPE_ARTWORK_PANEL);
  g_type_ensure (BB_TYPE_RECIPE_PICKER);
  g_type_ensure (BB_TYPE_STATE_BADGE);
  g_type_ensure (BB_TYPE_GARMENT_BAND);
  g_type_ensure (BB_TYPE_TAKES_VIEW);
  g_type_ensure (BB_TYPE_WEIGH_STRIP);
  g_type_ensure (BB_TYPE_WORKSHEET_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, picker);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, form_bin);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, losses_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, source_box);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, band);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, source_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, badge);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, departure_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, worksheet);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, takes);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, weigh_strip);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, artwork);
  gtk_widget_class_bind_template_callback (widget_class, picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, artwork_started_cb);
  gtk_widget_class_bind_template_callback (widget_class, artwork_sized_cb);
  gtk_widget_class_bind_template_callback (widget_class, artwork_changed_cb);
  gtk_widget_class_install_action (widget_class, "mix.clear", NULL, clear_action);
  gtk_widget_class_install_action (widget_class, "mix.open-recipe", NULL, open_recipe_action);
}

static void
bb_mix_page_init (BbMixPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
