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
  GSimpleActionGroup *actions;
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
sign_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       self)
{
  (void) action;
  (void) parameter;

  open_dialog (self, FALSE);
}

static void
overrule_cb (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       self)
{
  (void) action;
  (void) parameter;

  open_dialog (self, TRUE);
}

static void
allow (BbProofBox *self,
       const char *name,
       gboolean    allowed)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self->actions), name)),
                               allowed);
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
  allow (self, "sign", is_met && person != NULL);
  allow (self, "overrule", evidence != NULL && !is_met && is_lead);
  gtk_widget_set_visible (self->overrule_button, !is_met);
}

static void
show_state (BbProofBox           *self,
            BbState               state,
            const BbWashEvidence *evidence)
{
  allow (self, "sign", FALSE);
  allow (self, "overrule", FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), state != BB_STATE_WITHDRAWN);
  gtk_widget_set_visible (self->buttons, state == BB_STATE_ON_TRIAL);
  gtk_widget_set_visible (GTK_WIDGET (self->rule_label), state == BB_STATE_DRAFT || state == BB_STATE_ON_TRIAL);
  if (state == BB_STATE_PROVEN)
    show_proven (self);
  else if (state == BB_STATE_ON_TRIAL)
    show_on_trial (self, evidence);
  else
    set_who (self, _("A draft is put on trial first; then it can be signed."));
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

  gtk_label_set_label (self->rule_label, self->rule);
  show_state (self, state, evidence);
}

/**
 * bb_proof_box_dup_missing:
 * @self: a box
 *
 * Returns: (transfer full) (nullable): what a revision that is not proven still lacks, in sentences; %NULL for any
 *   other, and until that is computed
 */
char *
bb_proof_box_dup_missing (BbProofBox *self)
{
  const char *who = NULL;

  g_return_val_if_fail (BB_IS_PROOF_BOX (self), NULL);

  if (!gtk_widget_get_visible (GTK_WIDGET (self->rule_label)) || self->rule == NULL || *self->rule == '\0')
    return NULL;
  who = gtk_label_get_label (self->who_label);

  return *who != '\0' ? g_strjoin (" ", self->rule, who, NULL) : g_strdup (self->rule);
}

/**
 * bb_proof_box_get_actions:
 * @self: a box
 *
 * Returns: (transfer none): `sign` and `overrule`, which ask for a signature; each is enabled where it may be given
 */
GActionGroup *
bb_proof_box_get_actions (BbProofBox *self)
{
  g_return_val_if_fail (BB_IS_PROOF_BOX (self), NULL);

  return G_ACTION_GROUP (self->actions);
}

static void
bb_proof_box_dispose (GObject *object)
{
  BbProofBox *self = BB_PROOF_BOX (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "proof", NULL);
  g_clear_object (&self->actions);
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
}

static void
bb_proof_box_init (BbProofBox *self)
{
  static const GActionEntry entries[] = {
    { .name = "sign", .activate = sign_cb },
    { .name = "overrule", .activate = overrule_cb },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  allow (self, "sign", FALSE);
  allow (self, "overrule", FALSE);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "proof", G_ACTION_GROUP (self->actions));
  gtk_widget_init_template (GTK_WIDGET (self));
}
