/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mode-switch"

#include "bb-mode-switch.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-signal.h"

/* By print mode. */
static const char * const labels[] = {
  [BB_PRINT_COLOUR_ONLY] = N_("_Colour Only"),
  [BB_PRINT_UNDERBASE] = N_("_Underbase"),
  [BB_PRINT_UNDERBASE_KNOCKOUT] = N_("_Knockout"),
};

struct _BbModeSwitch
{
  AdwBin parent_instance;

  GtkToggleButton *buttons[G_N_ELEMENTS (labels)];
};

G_DEFINE_FINAL_TYPE (BbModeSwitch, bb_mode_switch, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
toggled_cb (BbModeSwitch    *self,
            GtkToggleButton *button)
{
  if (gtk_toggle_button_get_active (button))
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
bb_mode_switch_class_init (BbModeSwitchClass *klass)
{
  /**
   * BbModeSwitch::changed:
   *
   * The person chose another mode.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_MODE_SWITCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_mode_switch_init (BbModeSwitch *self)
{
  GtkBox *box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));

  gtk_widget_add_css_class (GTK_WIDGET (box), "linked");
  for (int mode = 0; mode < (int) G_N_ELEMENTS (labels); mode++)
    {
      const char *title = bb_choices_get_title (&bb_print_mode_choices, mode);

      self->buttons[mode] = GTK_TOGGLE_BUTTON (gtk_toggle_button_new_with_mnemonic (_(labels[mode])));
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->buttons[mode]), title);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->buttons[mode]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, title,
                                      -1);
      gtk_widget_set_hexpand (GTK_WIDGET (self->buttons[mode]), TRUE);
      if (mode > 0)
        gtk_toggle_button_set_group (self->buttons[mode], self->buttons[0]);
      g_signal_connect_swapped (self->buttons[mode], "toggled", G_CALLBACK (toggled_cb), self);
      gtk_box_append (box, GTK_WIDGET (self->buttons[mode]));
    }
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (box));
  bb_compat_set_name (GTK_WIDGET (self), _("Print mode to look at"));
}

/**
 * bb_mode_switch_get_mode:
 * @self: a switch
 *
 * Returns: the mode that is chosen
 */
BbPrintMode
bb_mode_switch_get_mode (BbModeSwitch *self)
{
  g_return_val_if_fail (BB_IS_MODE_SWITCH (self), BB_PRINT_COLOUR_ONLY);

  for (int mode = 0; mode < (int) G_N_ELEMENTS (labels); mode++)
    if (gtk_toggle_button_get_active (self->buttons[mode]))
      return (BbPrintMode) mode;

  return BB_PRINT_COLOUR_ONLY;
}

/**
 * bb_mode_switch_set_mode:
 * @self: a switch
 * @mode: the mode that is chosen from now on; nobody is told
 */
void
bb_mode_switch_set_mode (BbModeSwitch *self,
                         BbPrintMode   mode)
{
  g_return_if_fail (BB_IS_MODE_SWITCH (self));

  g_signal_handlers_block_by_func (self->buttons[mode], BB_HANDLER (toggled_cb), self);
  gtk_toggle_button_set_active (self->buttons[mode], TRUE);
  g_signal_handlers_unblock_by_func (self->buttons[mode], BB_HANDLER (toggled_cb), self);
}
