/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-field-row"

#include "bb-field-row.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-entry-row.h"
#include "bb-list-row.h"
#include "bb-note-row.h"
#include "bb-pick-row.h"
#include "bb-quick-row.h"
#include "bb-show.h"

typedef struct {
  /* template */
  GtkBox *column;
  GtkBox *line;
  GtkLabel *title_label;
  GtkBox *control;
  GtkLabel *unit_label;
  GtkLabel *hint_label;

  /* owned */
  BbSession *session;
  char *message;

  const BbTable *table;
  const BbField *field;
  gboolean touched;
  gboolean has_focus;
} BbFieldRowPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BbFieldRow, bb_field_row, ADW_TYPE_PREFERENCES_ROW)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show_hint (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);
  g_autofree char *limits = NULL;
  g_autofree char *hint = NULL;

  if (priv->message != NULL)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self), "faulty");
      gtk_label_set_label (priv->hint_label, priv->message);
      gtk_widget_set_visible (GTK_WIDGET (priv->hint_label), TRUE);
      return;
    }

  gtk_widget_remove_css_class (GTK_WIDGET (self), "faulty");
  if (!priv->has_focus)
    {
      gtk_widget_set_visible (GTK_WIDGET (priv->hint_label), FALSE);
      return;
    }

  limits = bb_show_limits (priv->session, priv->field);
  hint = limits == NULL ? g_strdup (_(priv->field->help)) : g_strjoin (" ", _(priv->field->help), limits, NULL);
  gtk_label_set_label (priv->hint_label, hint);
  gtk_widget_set_visible (GTK_WIDGET (priv->hint_label), TRUE);
}

static void
focus_entered_cb (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  priv->has_focus = TRUE;
  show_hint (self);
}

static void
focus_left_cb (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  priv->has_focus = FALSE;
  show_hint (self);
}

static void
bb_field_row_dispose (GObject *object)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (BB_FIELD_ROW (object));

  g_clear_object (&priv->session);

  G_OBJECT_CLASS (bb_field_row_parent_class)->dispose (object);
}

static void
bb_field_row_finalize (GObject *object)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (BB_FIELD_ROW (object));

  g_free (priv->message);

  G_OBJECT_CLASS (bb_field_row_parent_class)->finalize (object);
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
  G_OBJECT_CLASS (klass)->finalize = bb_field_row_finalize;
  widget_class->focus = bb_field_row_take_keyboard;

  /**
   * BbFieldRow::changed:
   *
   * The person typed or chose something else.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_FIELD_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-field-row.ui");
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, column);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, line);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, title_label);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, control);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, unit_label);
  gtk_widget_class_bind_template_child_private (widget_class, BbFieldRow, hint_label);
  gtk_widget_class_bind_template_callback (widget_class, focus_entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, focus_left_cb);
}

static void
bb_field_row_init (BbFieldRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static GType
choose_type (const BbField *field)
{
  if (field->quick)
    return BB_TYPE_QUICK_ROW;

  switch (field->kind)
    {
    case BB_KIND_CHOICE:
    case BB_KIND_REFERENCE:
    case BB_KIND_FLAG:
      return BB_TYPE_PICK_ROW;
    case BB_KIND_LIST:
      return BB_TYPE_LIST_ROW;
    case BB_KIND_TEXT:
      if (field->names != NULL)
        return BB_TYPE_PICK_ROW;
      return field->multiline ? BB_TYPE_NOTE_ROW : BB_TYPE_ENTRY_ROW;
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
    case BB_KIND_DATE:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
    case BB_KIND_OBJECT:
    default:
      return BB_TYPE_ENTRY_ROW;
    }
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

  self = g_object_new (choose_type (field), NULL);
  priv = bb_field_row_get_instance_private (self);
  priv->session = g_object_ref (session);
  priv->table = table;
  priv->field = field;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _(field->title));
  gtk_label_set_label (priv->title_label, _(field->title));
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
  if (BB_FIELD_ROW_GET_CLASS (self)->refresh != NULL)
    BB_FIELD_ROW_GET_CLASS (self)->refresh (self);
  show_hint (self);
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

  if (g_strcmp0 (message, priv->message) != 0)
    {
      g_free (priv->message);
      priv->message = g_strdup (message);
    }
  show_hint (self);
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

  return priv->message != NULL;
}

/**
 * bb_field_row_focus:
 * @self: a row
 *
 * Puts the keyboard into the row's editor.
 *
 * Returns: %FALSE if it could not
 */
gboolean
bb_field_row_focus (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);
  GtkWidget *focus = gtk_label_get_mnemonic_widget (priv->title_label);

  return focus != NULL && gtk_widget_grab_focus (focus);
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

static void
set_focus_widget (BbFieldRow *self,
                  GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  /* The title names what it stands beside; a name of its own would make screen readers say it twice. */
  gtk_label_set_mnemonic_widget (priv->title_label, focus);
  gtk_accessible_update_property (GTK_ACCESSIBLE (focus), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _(priv->field->help),
                                  -1);
}

/**
 * bb_field_row_set_editor:
 * @self: a row
 * @editor: (transfer floating): what stands at the end of the row's line
 * @focus: the widget inside @editor that takes the keyboard
 *
 * For subclasses. Labels @focus with the row's title for those who can't see it.
 */
void
bb_field_row_set_editor (BbFieldRow *self,
                         GtkWidget  *editor,
                         GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  gtk_box_prepend (priv->control, editor);
  set_focus_widget (self, focus);
}

/**
 * bb_field_row_set_below:
 * @self: a row
 * @editor: (transfer floating): an editor that needs the row's whole width
 * @focus: the widget inside @editor that takes the keyboard
 *
 * For subclasses.
 */
void
bb_field_row_set_below (BbFieldRow *self,
                        GtkWidget  *editor,
                        GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  gtk_box_insert_child_after (priv->column, editor, GTK_WIDGET (priv->line));
  set_focus_widget (self, focus);
}

/**
 * bb_field_row_align:
 * @self: a row
 * @controls: what the editors of a form have in common
 *
 * Lets the editors of a form begin below each other.
 */
void
bb_field_row_align (BbFieldRow   *self,
                    GtkSizeGroup *controls)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  gtk_size_group_add_widget (controls, GTK_WIDGET (priv->control));
}

/**
 * bb_field_row_set_stacked:
 * @self: a row
 *
 * Puts the title above the editor: the row stands beside others, as in a strip.
 */
void
bb_field_row_set_stacked (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (priv->line), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (priv->line, 3);
  gtk_widget_add_css_class (GTK_WIDGET (self), "stacked");
}

/**
 * bb_field_row_set_compact:
 * @self: a row
 *
 * Leaves the title to those who can't see the row: it stands in a line of a list.
 */
void
bb_field_row_set_compact (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);
  GtkWidget *focus = gtk_label_get_mnemonic_widget (priv->title_label);

  gtk_label_set_mnemonic_widget (priv->title_label, NULL);
  bb_compat_set_name (focus, _(priv->field->title));
  gtk_widget_set_visible (GTK_WIDGET (priv->title_label), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "compact");
}

/**
 * bb_field_row_set_unit:
 * @self: a row
 * @unit: the unit shown behind the editor; an empty one keeps its place, so that numbers stand below each other
 *
 * For subclasses.
 */
void
bb_field_row_set_unit (BbFieldRow *self,
                       const char *unit)
{
  BbFieldRowPrivate *priv = bb_field_row_get_instance_private (self);

  gtk_label_set_label (priv->unit_label, unit);
  gtk_widget_set_visible (GTK_WIDGET (priv->unit_label), TRUE);
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
