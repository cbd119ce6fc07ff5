/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-proof-box"

#include "bb-proof-box.h"

#include <glib/gi18n-lib.h>

#include "bb-revision-menu.h"
#include "bb-show.h"
#include "bb-sign-dialog.h"

struct _BbProofBox
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *rule_label;
  GtkLabel *who_label;
  GtkWidget *buttons;
  GtkWidget *overrule_button;

  /* owned */
  BbSession *session;
  BbRevision *revision;
  char *rule;
};

G_DEFINE_FINAL_TYPE (BbProofBox, bb_proof_box, ADW_TYPE_BIN)

static void
open_dialog (BbProofBox *self,
             gboolean    overrule)
{
  GtkWidget *dialog = NULL;

  if (self->revision == NULL)
    return;
  dialog = bb_sign_dialog_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), self->session, self->revision,
                               self->rule, overrule);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
sign_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  open_dialog (BB_PROOF_BOX (widget), FALSE);
}

static void
overrule_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  open_dialog (BB_PROOF_BOX (widget), TRUE);
}

static void
set_who (BbProofBox *self,
         const char *text)
{
  gtk_label_set_label (self->who_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->who_label), *text != '\0');
}

static char *
describe_signature (BbProofBox        *self,
                    const BbSignature *signature)
{
  g_autofree char *person = bb_show_name (self->session, &bb_person_table, signature->person);
  g_autofree char *day = bb_show_date (signature->signed_at);
  g_autofree char *text = signature->overruled
                            /* Translators: a person and a day. */
                            ? g_strdup_printf (_("The shop's rule was overruled by %s, %s."), person, day)
                            /* Translators: a person and a day, then how many specimens had passed of how many. */
                            : g_strdup_printf (_("Signed by %s, %s: %d passed, and %d were needed."), person, day,
                                               (int) signature->passed, (int) signature->needed);

  return signature->reason != NULL ? g_strjoin ("\n", text, signature->reason, NULL) : g_steal_pointer (&text);
}

static void
show_proven (BbProofBox *self)
{
  g_autoptr (BbSignature) signature = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (bb_book_find_signature (bb_session_get_book (self->session), self->revision->id, &signature, &error) < 0)
    bb_session_report (self->session, error);
  text = signature != NULL ? describe_signature (self, signature) : g_strdup ("");
  set_who (self, text);
}

static BbPerson *
load_person (BbProofBox *self)
{
  const gint64 person = bb_session_get_person (self->session);

  return person != 0 ? bb_book_load (bb_session_get_book (self->session), &bb_person_table, person, NULL) : NULL;
}

/* Who may do what now. */
static void
show_on_trial (BbProofBox           *self,
               const BbWashEvidence *evidence)
{
  g_autoptr (BbPerson) person = load_person (self);
  const gboolean is_lead = person != NULL && (person->role == BB_ROLE_LEAD || person->role == BB_ROLE_OWNER);
  const gboolean is_met = evidence != NULL && evidence->rule_is_met;

  if (person == NULL)
    set_who (self, _("A proof needs the signature of a person: say first who is at the bench."));
  else
    set_who (self, is_met || is_lead ? "" : _("A lead or the owner can overrule the shop's rule, and has to say why."));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "proof.sign", is_met && person != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "proof.overrule", evidence != NULL && !is_met && is_lead);
  gtk_widget_set_visible (self->overrule_button, !is_met);
}

/**
 * bb_proof_box_show:
 * @self: a box
 * @session: the session
 * @revision: the revision
 * @evidence: (nullable): what the wash log has on it; %NULL until that is computed
 */
void
bb_proof_box_show (BbProofBox           *self,
                   BbSession            *session,
                   const BbRevision     *revision,
                   const BbWashEvidence *evidence)
{
  const BbState state = bb_revision_menu_load_state (session, revision->id);

  g_return_if_fail (BB_IS_PROOF_BOX (self));

  g_set_object (&self->session, session);
  g_clear_pointer (&self->revision, bb_revision_free);
  self->revision = bb_record_copy (&bb_revision_table, revision);
  g_clear_pointer (&self->rule, g_free);
  self->rule = evidence != NULL ? bb_wash_evidence_describe_rule (evidence) : g_strdup ("");

  gtk_widget_set_visible (GTK_WIDGET (self), state == BB_STATE_ON_TRIAL || state == BB_STATE_PROVEN);
  gtk_widget_set_visible (self->buttons, state == BB_STATE_ON_TRIAL);
  gtk_widget_set_visible (GTK_WIDGET (self->rule_label), state == BB_STATE_ON_TRIAL);
  gtk_label_set_label (self->rule_label, self->rule);
  if (state == BB_STATE_PROVEN)
    show_proven (self);
  else
    show_on_trial (self, evidence);
}

static void
bb_proof_box_dispose (GObject *object)
{
  BbProofBox *self = BB_PROOF_BOX (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);
  g_clear_pointer (&self->revision, bb_revision_free);
  g_clear_pointer (&self->rule, g_free);

  G_OBJECT_CLASS (bb_proof_box_parent_class)->dispose (object);
}

static void
bb_proof_box_class_init (BbProofBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_proof_box_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-proof-box.ui");
  gtk_widget_class_bind_template_child (widget_class, BbProofBox, rule_label);
  gtk_widget_class_bind_template_child (widget_class, BbProofBox, who_label);
  gtk_widget_class_bind_template_child (widget_class, BbProofBox, buttons);
  gtk_widget_class_bind_template_child (widget_class, BbProofBox, overrule_button);
  gtk_widget_class_install_action (widget_class, "proof.sign", NULL, sign_action);
  gtk_widget_class_install_action (widget_class, "proof.overrule", NULL, overrule_action);
}

static void
bb_proof_box_init (BbProofBox *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
