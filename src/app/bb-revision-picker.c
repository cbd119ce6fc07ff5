/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-revision-picker"

#include "bb-revision-picker.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-revision-menu.h"
#include "bb-signal.h"

struct _BbRevisionPicker
{
  AdwBin parent_instance;

  /* template */
  GtkDropDown *drop_down;

  /* owned; NULL before a recipe is shown */
  GPtrArray *revisions;

  /* Key of the revision that the person chose; 0 to show the one that counts now. */
  gint64 chosen;
};

G_DEFINE_FINAL_TYPE (BbRevisionPicker, bb_revision_picker, ADW_TYPE_BIN)

enum {
  SIGNAL_PICKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static BbRevision *
get_at (BbRevisionPicker *self,
        guint             position)
{
  return self->revisions != NULL && position < self->revisions->len ? self->revisions->pdata[position] : NULL;
}

static void
selected_cb (BbRevisionPicker *self)
{
  if (bb_revision_picker_hold (self) != NULL)
    g_signal_emit (self, signals[SIGNAL_PICKED], 0);
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  const BbRevision *first = *(BbRevision * const *) a;
  const BbRevision *second = *(BbRevision * const *) b;

  return (first->number < second->number) - (first->number > second->number);
}

static guint
find_position (BbRevisionPicker *self,
               BbSession        *session,
               gint64            recipe)
{
  g_autoptr (BbRevision) current = NULL;

  for (guint i = 0; i < self->revisions->len; i++)
    if (get_at (self, i)->id == self->chosen)
      return i;

  current = bb_book_load_current (bb_session_get_book (session), recipe, NULL);
  for (guint i = 0; current != NULL && i < self->revisions->len; i++)
    if (get_at (self, i)->id == current->id)
      return i;

  return 0;
}

/**
 * bb_revision_picker_show:
 * @self: a picker
 * @session: the session
 * @recipe: key of a recipe
 *
 * Offers the revisions of a recipe as the book has them now. What was chosen stays chosen. A refusal is told to the
 * person.
 */
void
bb_revision_picker_show (BbRevisionPicker *self,
                         BbSession        *session,
                         gint64            recipe)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (BB_IS_REVISION_PICKER (self) && BB_IS_SESSION (session));

  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  self->revisions = bb_book_load_referring (bb_session_get_book (session), &bb_revision_table, &bb_recipe_table,
                                            recipe, &error);
  if (self->revisions == NULL)
    {
      bb_session_report (session, error);
      self->revisions = g_ptr_array_new ();
    }
  g_ptr_array_sort (self->revisions, compare_numbers);

  g_signal_handlers_block_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  bb_revision_menu_fill (self->drop_down, session, self->revisions, find_position (self, session, recipe));
  g_signal_handlers_unblock_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
}

/**
 * bb_revision_picker_choose:
 * @self: a picker
 * @revision: key of the revision to show from the next bb_revision_picker_show() on, where the recipe has it
 */
void
bb_revision_picker_choose (BbRevisionPicker *self,
                           gint64            revision)
{
  g_return_if_fail (BB_IS_REVISION_PICKER (self));

  self->chosen = revision;
}

/**
 * bb_revision_picker_get_shown:
 * @self: a picker
 *
 * Returns: (transfer none) (nullable): the revision that is looked at; %NULL where the recipe has none
 */
BbRevision *
bb_revision_picker_get_shown (BbRevisionPicker *self)
{
  g_return_val_if_fail (BB_IS_REVISION_PICKER (self), NULL);

  return get_at (self, gtk_drop_down_get_selected (self->drop_down));
}

/**
 * bb_revision_picker_hold:
 * @self: a picker
 *
 * Chooses the revision that is looked at, so that it stays whatever is done to it.
 *
 * Returns: (transfer none) (nullable): that revision; %NULL where the recipe has none
 */
BbRevision *
bb_revision_picker_hold (BbRevisionPicker *self)
{
  BbRevision *revision = bb_revision_picker_get_shown (self);

  if (revision != NULL)
    self->chosen = revision->id;

  return revision;
}

/**
 * bb_revision_picker_get_before:
 * @self: a picker that shows a revision
 *
 * Returns: (transfer none) (nullable): the revision before the one that is looked at; %NULL for the first
 */
BbRevision *
bb_revision_picker_get_before (BbRevisionPicker *self)
{
  g_return_val_if_fail (BB_IS_REVISION_PICKER (self), NULL);

  return get_at (self, gtk_drop_down_get_selected (self->drop_down) + 1);
}

/**
 * bb_revision_picker_get_newest:
 * @self: a picker
 *
 * Returns: (transfer none) (nullable): the recipe's newest revision; %NULL where it has none
 */
BbRevision *
bb_revision_picker_get_newest (BbRevisionPicker *self)
{
  g_return_val_if_fail (BB_IS_REVISION_PICKER (self), NULL);

  return get_at (self, 0);
}

/**
 * bb_revision_picker_get_all:
 * @self: a picker
 *
 * Returns: (transfer none) (nullable): #BbRevision of the recipe, newest first; %NULL before a recipe is shown
 */
GPtrArray *
bb_revision_picker_get_all (BbRevisionPicker *self)
{
  g_return_val_if_fail (BB_IS_REVISION_PICKER (self), NULL);

  return self->revisions;
}

static void
bb_revision_picker_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_pointer (&BB_REVISION_PICKER (object)->revisions, g_ptr_array_unref);

  G_OBJECT_CLASS (bb_revision_picker_parent_class)->dispose (object);
}

static void
bb_revision_picker_class_init (BbRevisionPickerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_revision_picker_dispose;

  /**
   * BbRevisionPicker::picked:
   *
   * A person looks at another revision.
   */
  signals[SIGNAL_PICKED] = g_signal_new ("picked", BB_TYPE_REVISION_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-revision-picker.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRevisionPicker, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

static void
bb_revision_picker_init (BbRevisionPicker *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->drop_down), _("Revision"));
}
