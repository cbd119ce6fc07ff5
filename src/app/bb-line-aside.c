/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-aside"

#include "bb-line-aside.h"

#include <glib/gi18n-lib.h>

#include "bb-after-paint.h"
#include "bb-artwork-panel.h"
#include "bb-line-recipe.h"
#include "bb-worksheet.h"

/* The field for the artwork is no longer than this; of a longer path the name alone is kept. */
#define LONGEST_PATH 200

struct _BbLineAside
{
  AdwBin parent_instance;

  /* template */
  BbLineRecipe *recipe;
  BbArtworkPanel *artwork;

  /* owned */
  BbSession *session;

  /* Beside it; not owned. */
  BbForm *form;

  /* The revision that was put in for a person who chose none; 0 for none. */
  gint64 proposed;

  /* What the artwork's panel was told last. */
  gint64 shown_revision;
  gint64 shown_colourway;
  guint begin_id;
  gboolean is_begun;
};

G_DEFINE_FINAL_TYPE (BbLineAside, bb_line_aside, ADW_TYPE_BIN)

static const BbField *
field (const char *name)
{
  return bb_table_find_field (&bb_job_line_table, name);
}

static gint64
find_customer (BbLineAside *self,
               gint64       job)
{
  g_autoptr (BbJob) record = NULL;

  if (job == 0)
    return 0;
  record = bb_book_load (bb_session_get_book (self->session), &bb_job_table, job, NULL);

  return record != NULL ? record->customer : 0;
}

/* Recipe */

static void
take_recipe (BbLineAside *self,
             gint64       revision,
             const char  *why)
{
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  draft->revision = revision;
  bb_form_take (self->form, field ("revision"), draft);
  g_free (draft->why);
  draft->why = g_strdup (why);
  bb_form_take (self->form, field ("why"), draft);
}

static void
recipe_chosen_cb (BbLineAside *self,
                  gint64       revision,
                  const char  *why)
{
  self->proposed = 0;
  take_recipe (self, revision, why);
}

/* Where nobody has chosen, the proven one is put in, with what speaks for it. */
static void
recipe_found_cb (BbLineAside *self)
{
  const BbLineOption *recalled = bb_line_recipe_get_recalled (self->recipe);
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  if (draft->revision != 0 && draft->revision != self->proposed)
    return;
  if (recalled != NULL && recalled->revision != draft->revision)
    {
      self->proposed = recalled->revision;
      take_recipe (self, recalled->revision, recalled->why);
    }
  else if (recalled == NULL && draft->revision != 0)
    {
      self->proposed = 0;
      take_recipe (self, 0, NULL);
    }
}

/* Artwork */

static void
show_garment (BbLineAside     *self,
              const BbJobLine *draft)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbColourway) colourway = NULL;
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbRecipe) recipe = NULL;

  if (draft->revision == self->shown_revision && draft->colourway == self->shown_colourway)
    return;
  self->shown_revision = draft->revision;
  self->shown_colourway = draft->colourway;
  if (draft->colourway != 0)
    colourway = bb_book_load (book, &bb_colourway_table, draft->colourway, NULL);
  if (draft->revision != 0)
    revision = bb_book_load (book, &bb_revision_table, draft->revision, NULL);
  if (revision != NULL)
    recipe = bb_book_load (book, &bb_recipe_table, revision->recipe, NULL);
  if (recipe == NULL)
    recipe = bb_recipe_new ();
  if (colourway != NULL)
    recipe->blank = colourway->blank;
  bb_artwork_panel_set_recipe (self->artwork, colourway != NULL ? recipe : NULL, colourway,
                               revision != NULL ? revision->print_mode : BB_CHOICE_NONE);
}

static void
show_box (BbLineAside     *self,
          const BbJobLine *draft)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbWorksheetIn) in = bb_worksheet_in_new ();
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbSupply) product = NULL;
  BbBoxOut box;

  if (draft->revision != 0)
    revision = bb_book_load (book, &bb_revision_table, draft->revision, NULL);
  if (revision != NULL && revision->pretreat_product != 0)
    product = bb_book_load (book, &bb_supply_table, revision->pretreat_product, NULL);
  if (revision != NULL)
    bb_worksheet_take_revision (in, revision, product);
  in->print_width_mm = draft->print_width_mm;
  in->print_height_mm = draft->print_height_mm;
  bb_artwork_panel_set_box (self->artwork, revision != NULL && bb_worksheet_box (in, &box, NULL) ? &box : NULL);
}

/* An artwork keeps its ratio: what is typed of one side decides the other. */
static void
follow_artwork (BbLineAside *self,
                BbJobLine   *draft)
{
  double width_mm = draft->print_width_mm;
  double height_mm = draft->print_height_mm;

  if (!bb_artwork_panel_follow (self->artwork, &width_mm, &height_mm))
    return;
  if (height_mm != draft->print_height_mm)
    bb_form_set_fixed (self->form, field ("print_height_mm"), height_mm);
  if (width_mm != draft->print_width_mm)
    bb_form_set_fixed (self->form, field ("print_width_mm"), width_mm);
  draft->print_width_mm = width_mm;
  draft->print_height_mm = height_mm;
}

static void
update (BbLineAside *self)
{
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  bb_line_recipe_set_garment (self->recipe, find_customer (self, draft->job), draft->colourway);
  bb_line_recipe_set_revision (self->recipe, draft->revision, draft->print_mode);
  show_garment (self, draft);
  follow_artwork (self, draft);
  show_box (self, draft);
}

static void
form_changed_cb (BbLineAside *self)
{
  update (self);
}

static void
artwork_sized_cb (BbLineAside *self,
                  double       width_mm,
                  double       height_mm)
{
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  draft->print_width_mm = width_mm;
  draft->print_height_mm = height_mm;
  bb_form_set_fixed (self->form, field ("print_width_mm"), width_mm);
  bb_form_take (self->form, field ("print_height_mm"), draft);
}

/* What the file says of itself goes into the line: its name, and how much of it each ink covers. */
static void
take_artwork (BbLineAside *self)
{
  const BbCoverage *coverage = bb_artwork_panel_get_coverage (self->artwork);
  const char *path = bb_artwork_panel_get_path (self->artwork);
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  if (coverage == NULL || path == NULL)
    return;

  g_free (draft->artwork);
  draft->artwork = g_utf8_validate (path, -1, NULL) && g_utf8_strlen (path, -1) <= LONGEST_PATH
                     ? g_strdup (path) : g_filename_display_basename (path);
  draft->white_fraction = coverage->underbase.fraction;
  draft->highlight_fraction = coverage->highlight.fraction;
  draft->colour_fraction = coverage->colour.fraction;
  bb_form_set_fixed (self->form, field ("white_fraction"), draft->white_fraction);
  bb_form_set_fixed (self->form, field ("highlight_fraction"), draft->highlight_fraction);
  bb_form_set_fixed (self->form, field ("colour_fraction"), draft->colour_fraction);
  bb_form_take (self->form, field ("artwork"), draft);
}

static void
artwork_changed_cb (BbLineAside *self)
{
  take_artwork (self);
}

/* The form is loaded, or resumed, after this widget is made. */
static void
begin (GtkWidget *widget)
{
  BbLineAside *self = BB_LINE_ASIDE (widget);
  g_autoptr (BbJobLine) draft = bb_form_dup_draft (self->form);

  update (self);
  if (draft->artwork != NULL && g_path_is_absolute (draft->artwork) &&
      g_file_test (draft->artwork, G_FILE_TEST_IS_REGULAR))
    bb_artwork_panel_load (self->artwork, draft->artwork);
}

static void
bb_line_aside_map (GtkWidget *widget)
{
  BbLineAside *self = BB_LINE_ASIDE (widget);

  GTK_WIDGET_CLASS (bb_line_aside_parent_class)->map (widget);
  if (!self->is_begun)
    bb_after_paint (widget, &self->begin_id, 0, begin);
  self->is_begun = TRUE;
}

/**
 * bb_line_aside_new:
 * @form: the form of a job's line
 * @session: the session
 *
 * Returns: (transfer floating): what stands beside it
 */
GtkWidget *
bb_line_aside_new (BbForm    *form,
                   BbSession *session)
{
  BbLineAside *self = g_object_new (BB_TYPE_LINE_ASIDE, NULL);

  g_return_val_if_fail (BB_IS_FORM (form) && BB_IS_SESSION (session), NULL);

  self->form = form;
  self->session = g_object_ref (session);
  bb_line_recipe_set_session (self->recipe, session);
  bb_artwork_panel_set_session (self->artwork, session);
  bb_artwork_panel_take_drops (self->artwork, GTK_WIDGET (form));
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

static void
bb_line_aside_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_LINE_ASIDE (object)->session);

  G_OBJECT_CLASS (bb_line_aside_parent_class)->dispose (object);
}

static void
bb_line_aside_class_init (BbLineAsideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_line_aside_dispose;
  widget_class->map = bb_line_aside_map;
  g_type_ensure (BB_TYPE_ARTWORK_PANEL);
  g_type_ensure (BB_TYPE_LINE_RECIPE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-line-aside.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLineAside, recipe);
  gtk_widget_class_bind_template_child (widget_class, BbLineAside, artwork);
  gtk_widget_class_bind_template_callback (widget_class, recipe_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, recipe_found_cb);
  gtk_widget_class_bind_template_callback (widget_class, artwork_sized_cb);
  gtk_widget_class_bind_template_callback (widget_class, artwork_changed_cb);
}

static void
bb_line_aside_init (BbLineAside *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
