/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-new-recipe"

#include "bb-new-recipe.h"

#include "bb-form.h"

/* Under this key the settings are kept. */
#define KEPT_KEY "recipes-next"
#define KEPT_TYPE "a{ss}"

struct _BbNewRecipe
{
  GObject parent_instance;

  /* owned; NULL where no settings are proposed */
  BbSession *session;
  BbRevision *settings;
};

G_DEFINE_FINAL_TYPE (BbNewRecipe, bb_new_recipe, G_TYPE_OBJECT)

/* A code that no recipe has yet: the garment's own, with a number where that is taken. */
static char *
make_code (BbBook     *book,
           const char *garment)
{
  g_autoptr (BbRecipe) same = bb_book_load_by_code (book, &bb_recipe_table, garment, NULL);

  for (guint i = 2; same != NULL; i++)
    {
      g_autofree char *code = g_strdup_printf ("%s-%u", garment, i);
      g_autoptr (BbRecipe) other = bb_book_load_by_code (book, &bb_recipe_table, code, NULL);

      if (other == NULL)
        return g_steal_pointer (&code);
    }

  return g_strdup (garment);
}

/* A form that nobody sees gives and takes what a kept one holds. */
static BbForm *
make_unseen_form (BbNewRecipe *self)
{
  return BB_FORM (g_object_ref_sink (bb_form_new (self->session, &bb_revision_table)));
}

static void
keep (BbNewRecipe *self)
{
  g_autoptr (BbForm) form = make_unseen_form (self);
  g_autoptr (GVariant) state = NULL;
  g_autofree char *text = NULL;

  bb_form_load (form, self->settings);
  state = g_variant_ref_sink (bb_form_save_state (form));
  text = g_variant_print (state, FALSE);
  bb_session_keep_form (self->session, KEPT_KEY, text);
}

/**
 * bb_new_recipe_new:
 * @session: the session
 *
 * Returns: (transfer full): a recipe that nothing is known of yet
 */
BbNewRecipe *
bb_new_recipe_new (BbSession *session)
{
  BbNewRecipe *self = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session), NULL);

  self = g_object_new (BB_TYPE_NEW_RECIPE, NULL);
  self->session = g_object_ref (session);

  return self;
}

/**
 * bb_new_recipe_start:
 * @self: a new recipe
 * @settings: what is proposed for the garment
 * @blank: the garment
 * @colourway: (nullable): its one colour, or %NULL for all of a shade
 * @shade: a #BbShade, where there is no @colourway
 *
 * Returns: (transfer full): a recipe for the garment that has its name, and a code that is free; to be edited and saved
 */
BbRecipe *
bb_new_recipe_start (BbNewRecipe       *self,
                     const BbRevision  *settings,
                     const BbBlank     *blank,
                     const BbColourway *colourway,
                     int                shade)
{
  BbRecipe *recipe = NULL;

  g_return_val_if_fail (BB_IS_NEW_RECIPE (self) && settings != NULL && blank != NULL, NULL);

  recipe = bb_recipe_new ();
  recipe->blank = blank->id;
  recipe->colourway = colourway != NULL ? colourway->id : 0;
  if (colourway == NULL)
    recipe->shade = shade;
  recipe->code = make_code (bb_session_get_book (self->session), colourway != NULL ? colourway->code : blank->code);
  recipe->name = colourway != NULL ? g_strjoin (", ", blank->name, colourway->name, NULL) : g_strdup (blank->name);

  g_clear_pointer (&self->settings, bb_revision_free);
  self->settings = bb_record_copy (&bb_revision_table, settings);
  keep (self);

  return recipe;
}

/**
 * bb_new_recipe_resume:
 * @self: a new recipe
 *
 * Takes up the settings that were proposed before the window was closed.
 */
void
bb_new_recipe_resume (BbNewRecipe *self)
{
  g_autofree char *text = NULL;
  g_autoptr (GVariant) state = NULL;
  g_autoptr (BbForm) form = NULL;
  g_autoptr (BbRevision) fresh = NULL;

  g_return_if_fail (BB_IS_NEW_RECIPE (self));

  text = bb_session_dup_form (self->session, KEPT_KEY);
  if (text != NULL)
    state = g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), text, NULL, NULL, NULL);
  if (state == NULL)
    return;

  form = make_unseen_form (self);
  fresh = bb_revision_new ();
  bb_form_load (form, fresh);
  bb_form_load_state (form, state);
  g_clear_pointer (&self->settings, bb_revision_free);
  self->settings = bb_form_dup_draft (form);
}

/**
 * bb_new_recipe_forget:
 * @self: a new recipe
 *
 * Proposes nothing any more: it has its first revision, or was given up.
 */
void
bb_new_recipe_forget (BbNewRecipe *self)
{
  g_return_if_fail (BB_IS_NEW_RECIPE (self));

  if (self->settings == NULL)
    return;
  g_clear_pointer (&self->settings, bb_revision_free);
  bb_session_keep_form (self->session, KEPT_KEY, NULL);
}

static gboolean
has_revision (BbNewRecipe *self,
              gint64       recipe)
{
  g_autoptr (GPtrArray) revisions = bb_book_load_referring (bb_session_get_book (self->session), &bb_revision_table,
                                                            &bb_recipe_table, recipe, NULL);

  return revisions == NULL || revisions->len > 0;
}

/**
 * bb_new_recipe_dup_first:
 * @self: a new recipe
 * @recipe: key of a recipe that was just saved
 *
 * Returns: (transfer full) (nullable): the first revision of a recipe that has none, as it was proposed; %NULL where it
 *   has one
 */
BbRevision *
bb_new_recipe_dup_first (BbNewRecipe *self,
                         gint64       recipe)
{
  BbRevision *revision = NULL;

  g_return_val_if_fail (BB_IS_NEW_RECIPE (self), NULL);

  if (has_revision (self, recipe))
    return NULL;

  revision = self->settings != NULL ? bb_record_copy (&bb_revision_table, self->settings) : bb_revision_new ();
  revision->recipe = recipe;
  revision->number = 1;

  return revision;
}

static void
bb_new_recipe_finalize (GObject *object)
{
  BbNewRecipe *self = BB_NEW_RECIPE (object);

  g_clear_pointer (&self->settings, bb_revision_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_new_recipe_parent_class)->finalize (object);
}

static void
bb_new_recipe_class_init (BbNewRecipeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_new_recipe_finalize;
}

static void
bb_new_recipe_init (BbNewRecipe *self)
{
  (void) self;
}
