/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-toasts"

#include "bb-toasts.h"

#include <glib/gi18n-lib.h>

/* In seconds: to read a line, and to find out that one did not mean it. */
#define READING_TIME 6
#define UNDO_TIME 12

static AdwToast *
make_toast (const char *text,
            guint       seconds)
{
  /* A toast reads its title as markup. */
  g_autofree char *escaped = g_markup_escape_text (text, -1);
  AdwToast *toast = adw_toast_new (escaped);

  adw_toast_set_timeout (toast, seconds);

  return toast;
}

/**
 * bb_toasts_say:
 * @overlay: where it is told
 * @text: one line
 *
 * Tells a person something that asks for no answer.
 */
void
bb_toasts_say (AdwToastOverlay *overlay,
               const char      *text)
{
  g_return_if_fail (ADW_IS_TOAST_OVERLAY (overlay) && text != NULL);

  adw_toast_overlay_add_toast (overlay, make_toast (text, READING_TIME));
}

static void
withdrawn_cb (AdwToastOverlay *overlay,
              const char      *name,
              gpointer         table,
              gint64           id)
{
  g_autofree char *text = g_strdup_printf (table == &bb_job_table ? _("Job %s is cancelled.")
                                           : table == &bb_job_line_table ? _("“%s” is struck off.")
                                           : _("“%s” is withdrawn."), name);
  AdwToast *toast = make_toast (text, UNDO_TIME);

  adw_toast_set_button_label (toast, _("Undo"));
  adw_toast_set_action_name (toast, "win.restore");
  adw_toast_set_action_target (toast, "(sx)", ((const BbTable *) table)->name, id);
  adw_toast_overlay_add_toast (overlay, toast);
}

static void
calibrated_cb (AdwToastOverlay *overlay,
               const char      *name,
               gint64           id,
               const char      *before)
{
  /* Translators: a machine. */
  g_autofree char *text = g_strdup_printf (_("“%s” is entered as calibrated today."), name);
  AdwToast *toast = make_toast (text, UNDO_TIME);

  adw_toast_set_button_label (toast, _("Undo"));
  adw_toast_set_action_name (toast, "win.undo-calibration");
  adw_toast_set_action_target (toast, "(xs)", id, before);
  adw_toast_overlay_add_toast (overlay, toast);
}

/**
 * bb_toasts_connect:
 * @overlay: where a person is told, below a widget that has the actions `win.restore` and `win.undo-calibration`
 * @session: the session
 *
 * Tells what the session says, and what it withdraws or enters as calibrated, with Undo.
 */
void
bb_toasts_connect (AdwToastOverlay *overlay,
                   BbSession       *session)
{
  g_return_if_fail (ADW_IS_TOAST_OVERLAY (overlay) && BB_IS_SESSION (session));

  g_signal_connect_object (session, "say", G_CALLBACK (bb_toasts_say), overlay, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "withdrawn", G_CALLBACK (withdrawn_cb), overlay, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "calibrated", G_CALLBACK (calibrated_cb), overlay, G_CONNECT_SWAPPED);
}
