/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-withdrawn-toggle"

#include "bb-withdrawn-toggle.h"

#include <glib/gi18n-lib.h>

#include "bb-signal.h"

struct _BbWithdrawnToggle
{
  AdwBin parent_instance;

  /* template */
  GtkCheckButton *button;

  /* owned */
  BbSession *session;

  const BbTable *table;
};

G_DEFINE_FINAL_TYPE (BbWithdrawnToggle, bb_withdrawn_toggle, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
toggled_cb (BbWithdrawnToggle *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
bb_withdrawn_toggle_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_WITHDRAWN_TOGGLE (object)->session);

  G_OBJECT_CLASS (bb_withdrawn_toggle_parent_class)->dispose (object);
}

static void
bb_withdrawn_toggle_class_init (BbWithdrawnToggleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_withdrawn_toggle_dispose;

  /**
   * BbWithdrawnToggle::changed:
   *
   * A person wants what is withdrawn to be shown, or no longer.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_WITHDRAWN_TOGGLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-withdrawn-toggle.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWithdrawnToggle, button);
  gtk_widget_class_bind_template_callback (widget_class, toggled_cb);
}

static void
bb_withdrawn_toggle_init (BbWithdrawnToggle *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_withdrawn_toggle_start:
 * @self: a toggle
 * @session: the session
 * @table: the table of what is listed
 *
 * To be called once.
 */
void
bb_withdrawn_toggle_start (BbWithdrawnToggle *self,
                           BbSession         *session,
                           const BbTable     *table)
{
  g_return_if_fail (BB_IS_WITHDRAWN_TOGGLE (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  self->table = table;
}

/**
 * bb_withdrawn_toggle_refresh:
 * @self: a toggle, started
 *
 * Counts anew what is withdrawn.
 */
void
bb_withdrawn_toggle_refresh (BbWithdrawnToggle *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *label = NULL;
  guint n = 0;

  g_return_if_fail (BB_IS_WITHDRAWN_TOGGLE (self) && self->session != NULL);

  if (!bb_book_count_withdrawn (bb_session_get_book (self->session), self->table, &n, &error))
    bb_session_report (self->session, error);
  label = g_strdup_printf (ngettext ("Show %u withdrawn", "Show %u withdrawn", n), n);
  gtk_check_button_set_label (self->button, label);
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
}

/**
 * bb_withdrawn_toggle_get_wanted:
 * @self: a toggle
 *
 * Returns: what a person wants to see
 */
BbWithdrawn
bb_withdrawn_toggle_get_wanted (BbWithdrawnToggle *self)
{
  g_return_val_if_fail (BB_IS_WITHDRAWN_TOGGLE (self), BB_WITHDRAWN_NONE);

  return gtk_check_button_get_active (self->button) ? BB_WITHDRAWN_TOO : BB_WITHDRAWN_NONE;
}

/**
 * bb_withdrawn_toggle_set:
 * @self: a toggle
 * @shows: whether what is withdrawn is shown from now on
 *
 * Says so to nobody.
 */
void
bb_withdrawn_toggle_set (BbWithdrawnToggle *self,
                         gboolean           shows)
{
  g_return_if_fail (BB_IS_WITHDRAWN_TOGGLE (self));

  g_signal_handlers_block_by_func (self->button, BB_HANDLER (toggled_cb), self);
  gtk_check_button_set_active (self->button, shows);
  g_signal_handlers_unblock_by_func (self->button, BB_HANDLER (toggled_cb), self);
}
