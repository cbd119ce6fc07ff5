/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-quick-buttons"

#include "bb-quick-buttons.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-quick.h"
#include "bb-signal.h"

struct _BbQuickButtons
{
  GtkBox parent_instance;

  const BbField *field;
  GPtrArray *buttons;
  int measured;
};

G_DEFINE_FINAL_TYPE (BbQuickButtons, bb_quick_buttons, GTK_TYPE_BOX)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
tell (BbQuickButtons *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* One of them can be reached by Tab: the chosen one, or the first. */
static void
take_focus (BbQuickButtons *self,
            gboolean        grab)
{
  const int chosen = bb_quick_buttons_get_chosen (self);
  const guint current = chosen >= 0 ? (guint) chosen : 0;

  gtk_widget_set_focusable (self->buttons->pdata[current], TRUE);
  if (grab)
    gtk_widget_grab_focus (self->buttons->pdata[current]);
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_set_focusable (self->buttons->pdata[i], i == current);
}

static void
toggled_cb (BbQuickButtons  *self,
            GtkToggleButton *button)
{
  guint index = 0;

  if (!g_ptr_array_find (self->buttons, button, &index))
    return;
  bb_quick_buttons_set_chosen (self, gtk_toggle_button_get_active (button) ? (int) index
                                     : self->field->required              ? (int) index
                                                                          : -1);
  take_focus (self, TRUE);
  tell (self);
}

static void
choose (BbQuickButtons *self,
        int             index)
{
  bb_quick_buttons_set_chosen (self, index);
  take_focus (self, TRUE);
  tell (self);
}

static void
step (BbQuickButtons *self,
      int             by)
{
  const int chosen = bb_quick_buttons_get_chosen (self);

  choose (self, chosen < 0 ? 0 : CLAMP (chosen + by, 0, (int) self->buttons->len - 1));
}

static gboolean
move (BbQuickButtons *self,
      guint           keyval)
{
  const gboolean is_rtl = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;

  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      step (self, is_rtl ? 1 : -1);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      step (self, is_rtl ? -1 : 1);
      return TRUE;
    case GDK_KEY_Home:
      choose (self, 0);
      return TRUE;
    case GDK_KEY_End:
      choose (self, (int) self->buttons->len - 1);
      return TRUE;
    case GDK_KEY_Delete:
    case GDK_KEY_BackSpace:
      choose (self, -1);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      return gtk_widget_activate_action (GTK_WIDGET (self), "editor.save", NULL);
    default:
      return FALSE;
    }
}

/* On to the next field that is entered like this; from the last one, Enter saves. */
static void
go_on (BbQuickButtons *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = NULL;

  /* What was chosen may have closed what the buttons stood in. */
  if (root == NULL)
    return;
  gtk_widget_child_focus (GTK_WIDGET (root), GTK_DIR_TAB_FORWARD);
  focus = gtk_root_get_focus (root);
  if (focus == NULL || gtk_widget_get_ancestor (focus, BB_TYPE_QUICK_BUTTONS) == NULL)
    take_focus (self, TRUE);
}

static gboolean
key_pressed_cb (BbQuickButtons  *self,
                guint            keyval,
                guint            keycode,
                GdkModifierType  state)
{
  int index = -1;

  (void) keycode;

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  index = bb_quick_find (self->field, keyval);
  if (index < 0)
    return move (self, keyval);

  choose (self, index);
  go_on (self);

  return TRUE;
}

static gboolean
bb_quick_buttons_grab_focus (GtkWidget *widget)
{
  take_focus (BB_QUICK_BUTTONS (widget), TRUE);

  return TRUE;
}

static void
bb_quick_buttons_finalize (GObject *object)
{
  g_ptr_array_unref (BB_QUICK_BUTTONS (object)->buttons);

  G_OBJECT_CLASS (bb_quick_buttons_parent_class)->finalize (object);
}

static void
bb_quick_buttons_class_init (BbQuickButtonsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_quick_buttons_finalize;
  widget_class->grab_focus = bb_quick_buttons_grab_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);

  /**
   * BbQuickButtons::changed:
   *
   * The person chose another value.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_QUICK_BUTTONS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_quick_buttons_init (BbQuickButtons *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->buttons = g_ptr_array_new ();
  self->measured = -1;
  gtk_widget_add_css_class (GTK_WIDGET (self), "linked");
  gtk_widget_add_css_class (GTK_WIDGET (self), "quick");
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_START);
  /* Before the button that has the keyboard takes Enter for itself. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* What it is called, and below it its key. */
static GtkWidget *
make_button (BbQuickButtons *self,
             guint           index)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  const char key[] = { bb_quick_get_key (self->field, index), '\0' };
  GtkWidget *hint = gtk_label_new (key);
  g_autofree char *title = bb_quick_dup_title (self->field, index);
  /* Translators: a field and one of its values: "Change: 4-5". */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), _(self->field->title), title);
  /* Translators: a value, and the key that chooses it. */
  g_autofree char *tip = g_strdup_printf (_("%s: press the key %s"), title, key);

  gtk_widget_add_css_class (hint, "key");
  gtk_widget_set_halign (hint, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, tip);
  gtk_box_append (GTK_BOX (box), gtk_label_new (title));
  gtk_box_append (GTK_BOX (box), hint);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_set_focus_on_click (button, FALSE);
  bb_compat_set_name (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_KEY_SHORTCUTS, key, -1);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (toggled_cb), self);

  return button;
}

/**
 * bb_quick_buttons_new:
 * @field: a quick field
 *
 * Returns: (transfer floating): its values, none of which is chosen
 */
GtkWidget *
bb_quick_buttons_new (const BbField *field)
{
  BbQuickButtons *self = NULL;

  g_return_val_if_fail (field != NULL && field->quick, NULL);

  self = g_object_new (BB_TYPE_QUICK_BUTTONS, NULL);
  self->field = field;
  for (guint i = 0; i < bb_quick_get_n (field); i++)
    {
      GtkWidget *button = make_button (self, i);

      g_ptr_array_add (self->buttons, button);
      gtk_box_append (GTK_BOX (self), button);
    }
  take_focus (self, FALSE);

  return GTK_WIDGET (self);
}

/**
 * bb_quick_buttons_get_chosen:
 * @self: the values
 *
 * Returns: which one is chosen, -1 for none
 */
int
bb_quick_buttons_get_chosen (BbQuickButtons *self)
{
  g_return_val_if_fail (BB_IS_QUICK_BUTTONS (self), -1);

  for (guint i = 0; i < self->buttons->len; i++)
    if (gtk_toggle_button_get_active (self->buttons->pdata[i]))
      return (int) i;

  return -1;
}

/**
 * bb_quick_buttons_set_chosen:
 * @self: the values
 * @index: which one is chosen from now on, -1 for none; nobody is told
 */
void
bb_quick_buttons_set_chosen (BbQuickButtons *self,
                             int             index)
{
  g_return_if_fail (BB_IS_QUICK_BUTTONS (self));

  for (guint i = 0; i < self->buttons->len; i++)
    {
      GtkToggleButton *button = self->buttons->pdata[i];

      g_signal_handlers_block_by_func (button, BB_HANDLER (toggled_cb), self);
      gtk_toggle_button_set_active (button, (int) i == index);
      g_signal_handlers_unblock_by_func (button, BB_HANDLER (toggled_cb), self);
    }
  take_focus (self, FALSE);
}

/**
 * bb_quick_buttons_set_measured:
 * @self: the values
 * @index: which one an instrument gave, -1 for none
 *
 * Marks a value, so that a person sees it beside what they choose.
 */
void
bb_quick_buttons_set_measured (BbQuickButtons *self,
                               int             index)
{
  g_return_if_fail (BB_IS_QUICK_BUTTONS (self));

  if (self->measured >= 0)
    {
      gtk_widget_remove_css_class (self->buttons->pdata[self->measured], "measured");
      gtk_widget_set_tooltip_text (self->buttons->pdata[self->measured], NULL);
    }
  self->measured = index;
  if (index >= 0)
    {
      gtk_widget_add_css_class (self->buttons->pdata[index], "measured");
      gtk_widget_set_tooltip_text (self->buttons->pdata[index], _("Measured from a scan"));
    }
}
