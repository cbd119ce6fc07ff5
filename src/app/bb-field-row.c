/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-field-row"

#include "bb-field-row-private.h"

#include <glib/gi18n-lib.h>

#include "bb-field-row-type.h"

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BbFieldRow, bb_field_row, ADW_TYPE_PREFERENCES_ROW)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/**
 * _bb_field_row_get_private:
 * @self: a row
 *
 * Returns: what the row is made of
 */
BbFieldRowPrivate *
_bb_field_row_get_private (BbFieldRow *self)
{
  return bb_field_row_get_instance_private (self);
}

static void
focus_entered_cb (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  bb_field_hint_set_attended (priv->hint, TRUE);
}

static void
focus_left_cb (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  bb_field_hint_set_attended (priv->hint, FALSE);
}

static void
bb_field_row_dispose (GObject *object)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (BB_FIELD_ROW (object));

  g_clear_object (&priv->session);

  G_OBJECT_CLASS (bb_field_row_parent_class)->dispose (object);
}

/* A row stands in a list, or by itself among the editors of a line, where it can't take the keyboard itself. */
static gboolean
bb_field_row_take_keyboard (GtkWidget        *widget,
                            GtkDirectionType  direction)
{
  GtkWidget *child = gtk_list_box_row_get_child (GTK_LIST_BOX_ROW (widget));

  if (GTK_IS_LIST_BOX (gtk_widget_get_parent (widget)))
    return GTK_WIDGET_CLASS (bb_field_row_parent_class)->focus (widget, direction);

  return child != NULL && gtk_widget_child_focus (child, direction);
}

static void
bb_field_row_class_init (BbFieldRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_field_row_dispose;
  widget_class->focus = bb_field_row_take_keyboard;

  /**
   * BbFieldRow::changed:
   *
   * The person typed or chose something else.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_FIELD_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_FIELD_HINT);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-field-row.ui");
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, column);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, line);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, title_label);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, control);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, unit_label);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, hint);
  gtk_widget_class_bind_template_callback (widget_class, focus_entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, focus_left_cb);
}

static void
bb_field_row_init (BbFieldRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_field_row_new:
 * @session: the session
 * @table: the record's table
 * @field: a field of @table
 *
 * Returns: (transfer floating): a row with the editor that fits the field's kind
 */
BbFieldRow *
bb_field_row_new (BbSession     *session,
                  const BbTable *table,
                  const BbField *field)
{
  BbFieldRow *self = NULL;
  BbFieldRowPrivate *priv = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL && field != NULL, NULL);

  self = g_object_new (bb_field_row_type_for (field), NULL);
  priv = bb_field_row_get_instance_private (self);
  priv->session = g_object_ref (session);
  priv->table = table;
  priv->field = field;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _(field->title));
  gtk_label_set_label (priv->title_label, _(field->title));
  bb_field_hint_set_field (priv->hint, session, field);
  BB_FIELD_ROW_GET_CLASS (self)->build (self);
  bb_field_row_refresh (self);

  return self;
}

/**
 * bb_field_row_get_field:
 * @self: a row
 *
 * Returns: the field that the row edits
 */
const BbField *
bb_field_row_get_field (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  return priv->field;
}

/**
 * bb_field_row_get_table:
 * @self: a row
 *
 * Returns: the table of the record that the row edits
 */
const BbTable *
bb_field_row_get_table (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  return priv->table;
}

/**
 * bb_field_row_get_session:
 * @self: a row
 *
 * Returns: (transfer none): the session
 */
BbSession *
bb_field_row_get_session (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  return priv->session;
}

/**
 * bb_field_row_load:
 * @self: a row
 * @record: a record of the row's table
 *
 * Shows the record's value; the row counts as untouched.
 */
void
bb_field_row_load (BbFieldRow    *self,
                   gconstpointer  record)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  BB_FIELD_ROW_GET_CLASS (self)->load (self, record);
  priv->touched = FALSE;
  bb_field_row_set_message (self, NULL);
}

/**
 * bb_field_row_store:
 * @self: a row
 * @record: a record of the row's table
 * @message: (out) (transfer full): what is wrong with what was typed
 *
 * Returns: %FALSE if what was typed can't be read; the record's value is then empty
 */
gboolean
bb_field_row_store (BbFieldRow  *self,
                    gpointer     record,
                    char       **message)
{
  return BB_FIELD_ROW_GET_CLASS (self)->store (self, record, message);
}

/**
 * bb_field_row_dup_state:
 * @self: a row
 *
 * Returns: (transfer full) (nullable): what is typed, %NULL for nothing
 */
char *
bb_field_row_dup_state (BbFieldRow *self)
{
  return BB_FIELD_ROW_GET_CLASS (self)->dup_state (self);
}

/**
 * bb_field_row_set_state:
 * @self: a row
 * @state: what bb_field_row_dup_state() gave earlier
 * @system: the units that held then
 */
void
bb_field_row_set_state (BbFieldRow  *self,
                        const char  *state,
                        BbUnitSystem system)
{
  BB_FIELD_ROW_GET_CLASS (self)->set_state (self, state, system);
}

/**
 * bb_field_row_refresh:
 * @self: a row
 *
 * Shows numbers in the units that hold now.
 */
void
bb_field_row_refresh (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  if (BB_FIELD_ROW_GET_CLASS (self)->refresh != NULL)
    BB_FIELD_ROW_GET_CLASS (self)->refresh (self);
  bb_field_hint_refresh (priv->hint);
}

/**
 * bb_field_row_set_message:
 * @self: a row
 * @message: (nullable): what is wrong with the value, or %NULL if nothing is
 */
void
bb_field_row_set_message (BbFieldRow *self,
                          const char *message)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  bb_field_hint_set_fault (priv->hint, message);
  if (message != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self), "faulty");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "faulty");
}

/**
 * bb_field_row_set_advice:
 * @self: a row
 * @advice: (nullable): what a person should know of the value, although it is allowed; %NULL for nothing
 */
void
bb_field_row_set_advice (BbFieldRow *self,
                         const char *advice)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  bb_field_hint_set_advice (priv->hint, advice);
  if (advice != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self), "advised");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "advised");
}

/**
 * bb_field_row_is_faulty:
 * @self: a row
 *
 * Returns: %TRUE if it says that something is wrong with the value
 */
gboolean
bb_field_row_is_faulty (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  return bb_field_hint_has_fault (priv->hint);
}

/**
 * bb_field_row_is_touched:
 * @self: a row
 *
 * Returns: %TRUE if the person changed the value, so that they may be told what is wrong with it
 */
gboolean
bb_field_row_is_touched (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  return priv->touched;
}

/**
 * bb_field_row_set_touched:
 * @self: a row
 * @touched: whether the person changed the value
 */
void
bb_field_row_set_touched (BbFieldRow *self,
                          gboolean    touched)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  priv->touched = touched;
}

/**
 * bb_field_row_judge_nested:
 * @self: a row
 * @even_if_untouched: whether to speak of what the person has not come to yet
 *
 * Lets the rows within a row say what is wrong with what each holds.
 *
 * Returns: %FALSE if something is
 */
gboolean
bb_field_row_judge_nested (BbFieldRow *self,
                           gboolean    even_if_untouched)
{
  const BbFieldRowClass *klass = BB_FIELD_ROW_GET_CLASS (self);

  return klass->judge == NULL || klass->judge (self, even_if_untouched);
}

/**
 * bb_field_row_find_nested:
 * @self: a row
 * @path: the way from it to a field within, like `[0].wet_g`
 *
 * Returns: (transfer none) (nullable): the row within it that edits the field; itself for an empty path; %NULL if
 *   there is none
 */
BbFieldRow *
bb_field_row_find_nested (BbFieldRow *self,
                          const char *path)
{
  const BbFieldRowClass *klass = BB_FIELD_ROW_GET_CLASS (self);

  if (*path == '\0')
    return self;

  return klass->find_nested != NULL ? klass->find_nested (self, path) : NULL;
}

/**
 * bb_field_row_find_faulty:
 * @self: a row
 *
 * Returns: (transfer none) (nullable): the row itself, or the first within it, that says that something is wrong
 */
BbFieldRow *
bb_field_row_find_faulty (BbFieldRow *self)
{
  const BbFieldRowClass *klass = BB_FIELD_ROW_GET_CLASS (self);

  if (bb_field_row_is_faulty (self))
    return self;

  return klass->find_faulty != NULL ? klass->find_faulty (self) : NULL;
}

/**
 * bb_field_row_edited:
 * @self: a row
 *
 * For subclasses: tells that the person changed the value.
 */
void
bb_field_row_edited (BbFieldRow *self)
{
  bb_field_row_set_touched (self, TRUE);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}
