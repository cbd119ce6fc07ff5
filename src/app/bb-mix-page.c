/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-page"

#include "bb-mix-page.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-load.h"
#include "bb-artwork-panel.h"
#include "bb-keeper.h"
#include "bb-mix-form.h"
#include "bb-mix-result.h"
#include "bb-mix-source.h"
#include "bb-recipe-picker.h"
#include "bb-weigh-strip.h"

/* Under this key the figures are kept, so that they are there again after a restart. */
#define KEPT_KEY "mix"
#define KEPT_TYPE "(xa{ss}" BB_ARTWORK_PANEL_STATE ")"

struct _BbMixPage
{
  BbPage parent_instance;

  /* template */
  BbRecipePicker *picker;
  BbMixForm *form;
  BbMixSource *source;
  GtkStack *stack;
  BbMixResult *result;
  BbWeighStrip *weigh_strip;
  BbArtworkPanel *artwork;

  /* owned; the revision that the figures were taken from, or NULL */
  BbRevision *revision;
  BbKeeper *keeper;
};

G_DEFINE_FINAL_TYPE (BbMixPage, bb_mix_page, BB_TYPE_PAGE)

static char *
describe_kept (gpointer owner)
{
  BbMixPage *self = owner;
  g_autoptr (GVariant) kept = NULL;

  kept = g_variant_ref_sink (g_variant_new ("(x@a{ss}@" BB_ARTWORK_PANEL_STATE ")",
                                            self->revision != NULL ? self->revision->id : (gint64) 0,
                                            bb_mix_form_save_state (self->form),
                                            bb_artwork_panel_save_state (self->artwork)));

  return g_variant_print (kept, FALSE);
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

  /* Where a person is typing nothing may be filled in. */
  bb_mix_form_set_size (self->form, width_mm != draft->print_width_mm ? width_mm : (double) NAN,
                        height_mm != draft->print_height_mm ? height_mm : (double) NAN);
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

/* It is judged what is poured, whatever the recipe says. */
static GPtrArray *
load_advice (BbMixPage           *self,
             const BbWorksheetIn *in)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autoptr (BbRevision) poured = NULL;
  g_autoptr (GError) error = NULL;
  GPtrArray *advice = NULL;

  if (self->revision == NULL)
    return NULL;
  poured = bb_record_copy (&bb_revision_table, self->revision);
  bb_worksheet_give_revision (in, poured);
  advice = bb_advice_load (bb_session_get_book (session), poured, bb_session_get_units (session), &error);
  if (advice == NULL)
    bb_session_report (session, error);

  return advice;
}

static void
show_result (BbMixPage     *self,
             BbWorksheetIn *in)
{
  const BbRevision *revision = self->revision;
  g_autofree char *departures = revision != NULL ? bb_worksheet_describe_departures (in, revision) : NULL;
  g_autoptr (GPtrArray) advice = load_advice (self, in);

  bb_mix_source_remark (self->source, departures == NULL ? _("Pretreat as the recipe has it.") : "");
  bb_mix_result_show (self->result, bb_page_get_session (BB_PAGE (self)), in,
                      revision != NULL ? revision->pretreat_product : 0, departures, advice);
}

static void
show_no_result (BbMixPage *self)
{
  bb_mix_source_remark (self->source, "");
  bb_mix_result_show_empty (self->result, self->revision != NULL
                              ? _("Give the size of the print, or drop its artwork here, and how many garments.")
                              : _("Choose a recipe or type its figures, then give the size of the print, or drop its "
                                  "artwork here, and how many garments."));
}

/* A laydown in grams on a box needs the box first, so the box is computed from whatever is there. */
static void
update (BbMixPage *self)
{
  g_autoptr (BbWorksheetIn) draft = bb_mix_form_dup_draft (self->form);
  g_autoptr (BbWorksheetIn) in = NULL;

  follow_artwork (self, draft);
  update_box (self, draft);
  in = bb_mix_form_dup_figures (self->form);
  if (in == NULL)
    {
      show_no_result (self);
      return;
    }

  update_box (self, in);
  show_result (self, in);
}

static void
form_changed_cb (BbMixPage *self)
{
  update (self);
  bb_keeper_keep_soon (self->keeper);
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
  bb_mix_form_set_size (self->form, width_mm, height_mm);
  update (self);
}

static void
artwork_changed_cb (BbMixPage *self)
{
  update (self);
  bb_keeper_keep (self->keeper);
}

static void
show_source (BbMixPage *self)
{
  const BbRevision *revision = self->revision;

  bb_recipe_picker_set_label (self->picker, revision != NULL ? _("Change Recipe") : _("Choose a Recipe"));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "mix.open-recipe", revision != NULL);
  bb_mix_source_show (self->source, bb_page_get_session (BB_PAGE (self)), revision);
  bb_artwork_panel_set_recipe (self->artwork, bb_mix_source_get_recipe (self->source),
                               bb_mix_source_get_colourway (self->source),
                               revision != NULL ? revision->print_mode : BB_CHOICE_NONE);
}

static void
take_revision (BbMixPage  *self,
               BbRevision *revision)
{
  g_clear_pointer (&self->revision, bb_revision_free);
  self->revision = revision;
  if (revision != NULL)
    bb_mix_form_take_revision (self->form, revision);
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
  bb_keeper_keep (self->keeper);
}

static void
clear_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbMixPage *self = BB_MIX_PAGE (widget);

  (void) name;
  (void) parameter;

  bb_artwork_panel_clear (self->artwork);
  gtk_stack_set_visible_child_name (self->stack, "worksheet");
  bb_mix_form_start_over (self->form);
  take_revision (self, NULL);
  bb_keeper_keep (self->keeper);
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
  g_autofree char *text = bb_keeper_dup_kept (self->keeper);
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
  bb_mix_form_load_state (self->form, state);
  update (self);
  bb_artwork_panel_load_state (self->artwork, artwork);
  gtk_stack_set_visible_child_name (self->stack, "worksheet");
}

static void
bb_mix_page_start (BbPage *page)
{
  BbMixPage *self = BB_MIX_PAGE (page);
  BbSession *session = bb_page_get_session (page);

  self->keeper = bb_keeper_new (session, KEPT_KEY, describe_kept, self);
  bb_mix_form_set_session (self->form, session);
  bb_recipe_picker_set_session (self->picker, session);
  bb_weigh_strip_set_session (self->weigh_strip, session);
  bb_artwork_panel_set_session (self->artwork, session);
  bb_artwork_panel_take_drops (self->artwork, GTK_WIDGET (self));
  resume (self);
}

static void
bb_mix_page_refresh (BbPage *page)
{
  BbMixPage *self = BB_MIX_PAGE (page);

  bb_mix_form_refresh (self->form);
  show_source (self);
  update (self);
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
  bb_keeper_keep (self->keeper);
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

  g_clear_object (&self->keeper);
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
  g_type_ensure (BB_TYPE_MIX_FORM);
  g_type_ensure (BB_TYPE_MIX_RESULT);
  g_type_ensure (BB_TYPE_MIX_SOURCE);
  g_type_ensure (BB_TYPE_RECIPE_PICKER);
  g_type_ensure (BB_TYPE_WEIGH_STRIP);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, picker);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, form);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, source);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, result);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, weigh_strip);
  gtk_widget_class_bind_template_child (widget_class, BbMixPage, artwork);
  gtk_widget_class_bind_template_callback (widget_class, picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, form_changed_cb);
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
