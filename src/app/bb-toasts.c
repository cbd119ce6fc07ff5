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

typedef struct {
  BbSession *session;
  char *key;
} Offer;

static void
offer_free (gpointer  data,
            GClosure *closure)
{
  Offer *offer = data;

  (void) closure;

  g_object_unref (offer->session);
  g_free (offer->key);
  g_free (offer);
}

static void
offer_dismissed_cb (AdwToast *toast,
                    gpointer  data)
{
  const Offer *offer = data;

  (void) toast;

  bb_session_give_up (offer->session, offer->key);
}

/**
 * bb_toasts_offer_form:
 * @overlay: where it is told, below a widget that has the action `win.take-up`
 * @session: the session
 * @page: the page that is shown
 * @name: what was put aside
 * @key: the form's key
 * @state: what is typed in it
 *
 * Offers to open a form again that was cancelled, and gives it up when the offer is over.
 */
void
bb_toasts_offer_form (AdwToastOverlay *overlay,
                      BbSession       *session,
                      const char      *page,
                      const char      *name,
                      const char      *key,
                      const char      *state)
{
  g_autofree char *text = NULL;
  AdwToast *toast = NULL;
  Offer *offer = NULL;

  g_return_if_fail (ADW_IS_TOAST_OVERLAY (overlay) && BB_IS_SESSION (session));

  /* Translators: a form that was cancelled, such as “Blank · Heavy tee”. */
  text = g_strdup_printf (_("“%s” was put aside."), name);
  offer = g_new0 (Offer, 1);
  offer->session = g_object_ref (session);
  offer->key = g_strdup (key);
  toast = make_toast (text, UNDO_TIME);
  adw_toast_set_button_label (toast, _("Undo"));
  adw_toast_set_action_name (toast, "win.take-up");
  adw_toast_set_action_target (toast, "(sss)", page, key, state);
  g_signal_connect_data (toast, "dismissed", G_CALLBACK (offer_dismissed_cb), offer, offer_free, 0);
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
