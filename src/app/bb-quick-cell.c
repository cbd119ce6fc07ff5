/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-quick-cell"

#include "bb-quick-cell.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-quick-buttons.h"
#include "bb-quick.h"

/* Characters of a value; the whole of a longer one is in the tooltip. */
#define WIDTH 9

struct _BbQuickCell
{
  GtkButton parent_instance;

  GtkLabel *label;

  /* owned */
  char *row;

  const BbField *field;
  int chosen;
};

G_DEFINE_FINAL_TYPE (BbQuickCell, bb_quick_cell, GTK_TYPE_BUTTON)

enum {
  SIGNAL_CHANGED,
  SIGNAL_ENTERED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show (BbQuickCell *self)
{
  g_autofree char *title = self->chosen >= 0 ? bb_quick_dup_title (self->field, (guint) self->chosen) : g_strdup ("–");
  /* Translators: what stands in a row and a column of a table: "2610-07, Change: 4-5". */
  g_autofree char *name = g_strdup_printf (_("%s, %s: %s"), self->row, _(self->field->title), title);

  gtk_label_set_label (self->label, title);
  bb_compat_set_name (GTK_WIDGET (self), name);
}

static void
choose (BbQuickCell *self,
        int          index)
{
  bb_quick_cell_set_chosen (self, index);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static gboolean
key_pressed_cb (BbQuickCell     *self,
                guint            keyval,
                guint            keycode,
                GdkModifierType  state)
{
  const int index = bb_quick_find (self->field, keyval);

  (void) keycode;

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (index >= 0)
    {
      choose (self, index);
      g_signal_emit (self, signals[SIGNAL_ENTERED], 0);
      return TRUE;
    }
  if (keyval != GDK_KEY_Delete && keyval != GDK_KEY_BackSpace)
    return FALSE;
  choose (self, -1);

  return TRUE;
}

static void
picked_cb (BbQuickButtons *buttons,
           BbQuickCell    *self)
{
  GtkWidget *popover = gtk_widget_get_ancestor (GTK_WIDGET (buttons), GTK_TYPE_POPOVER);

  choose (self, bb_quick_buttons_get_chosen (buttons));
  gtk_popover_popdown (GTK_POPOVER (popover));
}

static void
unparent_cb (gpointer popover)
{
  gtk_widget_unparent (popover);
  g_object_unref (popover);
}

/* Not while it is still dealing with what closed it. */
static void
closed_cb (GtkPopover *popover)
{
  g_idle_add_once (unparent_cb, g_object_ref (popover));
}

static void
bb_quick_cell_clicked (GtkButton *button)
{
  BbQuickCell *self = BB_QUICK_CELL (button);
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *buttons = bb_quick_buttons_new (self->field);

  bb_quick_buttons_set_chosen (BB_QUICK_BUTTONS (buttons), self->chosen);
  g_signal_connect_object (buttons, "changed", G_CALLBACK (picked_cb), self, 0);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), NULL);
  gtk_popover_set_child (GTK_POPOVER (popover), buttons);
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  gtk_popover_popup (GTK_POPOVER (popover));
}

static void
bb_quick_cell_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_last_child (GTK_WIDGET (object));

  if (GTK_IS_POPOVER (child))
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (bb_quick_cell_parent_class)->dispose (object);
}

static void
bb_quick_cell_finalize (GObject *object)
{
  g_free (BB_QUICK_CELL (object)->row);

  G_OBJECT_CLASS (bb_quick_cell_parent_class)->finalize (object);
}

static void
bb_quick_cell_class_init (BbQuickCellClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_quick_cell_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_quick_cell_finalize;
  GTK_BUTTON_CLASS (klass)->clicked = bb_quick_cell_clicked;

  /**
   * BbQuickCell::changed:
   *
   * The person chose another value.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_QUICK_CELL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  /**
   * BbQuickCell::entered:
   *
   * The person chose by a key, and goes on to what comes next.
   */
  signals[SIGNAL_ENTERED] = g_signal_new ("entered", BB_TYPE_QUICK_CELL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_quick_cell_init (BbQuickCell *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->chosen = -1;
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_ellipsize (self->label, PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (self->label, WIDTH);
  gtk_button_set_child (GTK_BUTTON (self), GTK_WIDGET (self->label));
  gtk_widget_add_css_class (GTK_WIDGET (self), "flat");
  gtk_widget_add_css_class (GTK_WIDGET (self), "cell");
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/**
 * bb_quick_cell_new:
 * @field: a quick field
 * @row: what the cell's row is about
 *
 * Returns: (transfer floating): a cell without a value
 */
GtkWidget *
bb_quick_cell_new (const BbField *field,
                   const char    *row)
{
  BbQuickCell *self = NULL;

  g_return_val_if_fail (field != NULL && field->quick && row != NULL, NULL);

  self = g_object_new (BB_TYPE_QUICK_CELL, NULL);
  self->field = field;
  self->row = g_strdup (row);
  show (self);

  return GTK_WIDGET (self);
}

/**
 * bb_quick_cell_get_field:
 * @self: a cell
 *
 * Returns: the field whose value it holds
 */
const BbField *
bb_quick_cell_get_field (BbQuickCell *self)
{
  g_return_val_if_fail (BB_IS_QUICK_CELL (self), NULL);

  return self->field;
}

/**
 * bb_quick_cell_get_chosen:
 * @self: a cell
 *
 * Returns: which value is chosen, -1 for none
 */
int
bb_quick_cell_get_chosen (BbQuickCell *self)
{
  g_return_val_if_fail (BB_IS_QUICK_CELL (self), -1);

  return self->chosen;
}

/**
 * bb_quick_cell_set_chosen:
 * @self: a cell
 * @index: which value is chosen from now on, -1 for none; nobody is told
 */
void
bb_quick_cell_set_chosen (BbQuickCell *self,
                          int          index)
{
  g_return_if_fail (BB_IS_QUICK_CELL (self));

  self->chosen = index;
  show (self);
}

/**
 * bb_quick_cell_set_fault:
 * @cell: a cell, or any other control in the same table
 * @message: (nullable): what is wrong with its value, %NULL if nothing is
 *
 * Marks a cell whose value can't be saved.
 */
void
bb_quick_cell_set_fault (GtkWidget  *cell,
                         const char *message)
{
  g_return_if_fail (GTK_IS_WIDGET (cell));

  if (message != NULL)
    gtk_widget_add_css_class (cell, "faulty");
  else
    gtk_widget_remove_css_class (cell, "faulty");
  gtk_widget_set_tooltip_text (cell, message);
  gtk_accessible_update_state (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_STATE_INVALID,
                               message != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}
