/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-standing-view"

#include "bb-standing-view.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-revision-menu.h"
#include "bb-show.h"
#include "bb-word-badge.h"

struct _BbStandingView
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *standing_label;
  BbWordBadge *failed_badge;
  GtkLabel *missing_label;
  GtkLabel *reason_label;
};

G_DEFINE_FINAL_TYPE (BbStandingView, bb_standing_view, GTK_TYPE_BOX)

/* How the revision stands, since when and by whom, as a sentence; NULL where nobody has judged it. */
static char *
describe_state (BbSession        *session,
                const BbRevision *revision)
{
  g_autoptr (BbStanding) standing = bb_revision_menu_load_standing (session, revision->id);
  g_autoptr (BbSignature) signature = NULL;
  g_autofree char *since = NULL;
  g_autofree char *person = NULL;
  const char *state = NULL;

  if (standing == NULL)
    return NULL;

  state = bb_choices_get_title (&bb_state_choices, standing->state);
  since = bb_show_date (standing->since);
  person = bb_show_name (session, &bb_person_table, standing->person);
  if (bb_book_find_signature (bb_session_get_book (session), revision->id, &signature, NULL) == 1 &&
      signature->overruled)
    return g_strdup_printf (_("%s since %s, by %s, who overruled the shop's rule."), state, since, person);

  return *person != '\0' ? g_strdup_printf (_("%s since %s, by %s."), state, since, person)
                         : g_strdup_printf (_("%s since %s."), state, since);
}

/* Where another revision is newer than the one that counts, people want to know before they set a machine. NULL where
 * it is the newest itself. */
static char *
describe_newest (BbSession        *session,
                 const BbRevision *newest,
                 const BbRevision *revision)
{
  const char *state = NULL;

  if (newest->id == revision->id)
    return NULL;

  state = bb_choices_get_title (&bb_state_choices, (int) bb_revision_menu_load_state (session, newest->id));

  /* Translators: the number of a newer revision and its state: Revision 4 is newer (On trial). */
  return g_strdup_printf (_("Revision %d is newer (%s)."), (int) newest->number, state);
}

/* On the first screen: since when it stands as it does, who said so, and on what. */
static void
show_standing (BbStandingView   *self,
               BbSession        *session,
               const BbRevision *revision,
               const BbRevision *newest,
               BbEvidence       *evidence)
{
  g_autofree char *state = describe_state (session, revision);
  g_autofree char *summary = bb_evidence_dup_summary (evidence);
  g_autofree char *newer = describe_newest (session, newest, revision);
  const char * const sentences[] = { state, summary, newer };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (sentences); i++)
    if (sentences[i] != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentences[i]);
  gtk_label_set_label (self->standing_label, text->str);
}

/* What it takes to sign it, where a person looks first. */
static void
show_proof (BbStandingView *self,
            BbEvidence     *evidence)
{
  const guint n_failed = bb_evidence_get_n_failed (evidence);
  g_autofree char *missing = bb_evidence_dup_missing (evidence);
  g_autofree char *failed = n_failed > 0 ? g_strdup_printf (ngettext ("%u specimen failed", "%u specimens failed",
                                                                      n_failed), n_failed)
                                         : g_strdup ("");

  gtk_label_set_label (self->missing_label, missing != NULL ? missing : "");
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), missing != NULL);
  bb_word_badge_say (self->failed_badge, BB_TONE_BAD, failed);
}

static void
show_reason (BbStandingView   *self,
             BbSession        *session,
             const BbRevision *revision)
{
  g_autofree char *made = bb_show_date (revision->made_at);
  g_autofree char *person = bb_show_name (session, &bb_person_table, revision->made_by);
  g_autofree char *written = NULL;
  g_autofree char *text = NULL;

  written = *person != '\0' ? g_strdup_printf (_("Written %s by %s."), made, person)
                            : g_strdup_printf (_("Written %s."), made);
  text = revision->reason != NULL ? g_strjoin (" ", written, revision->reason, NULL) : g_strdup (written);
  gtk_label_set_label (self->reason_label, text);
}

/**
 * bb_standing_view_show:
 * @self: a view
 * @session: the session
 * @revision: the revision that is looked at
 * @newest: the newest revision of its recipe, which may be the same
 * @evidence: the evidence of @revision; once that is loaded, it has to be shown again
 */
void
bb_standing_view_show (BbStandingView   *self,
                       BbSession        *session,
                       const BbRevision *revision,
                       const BbRevision *newest,
                       BbEvidence       *evidence)
{
  g_return_if_fail (BB_IS_STANDING_VIEW (self) && revision != NULL && newest != NULL);

  show_standing (self, session, revision, newest, evidence);
  show_proof (self, evidence);
  show_reason (self, session, revision);
}

static void
bb_standing_view_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_STANDING_VIEW);

  G_OBJECT_CLASS (bb_standing_view_parent_class)->dispose (object);
}

static void
bb_standing_view_class_init (BbStandingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_standing_view_dispose;

  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-standing-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbStandingView, standing_label);
  gtk_widget_class_bind_template_child (widget_class, BbStandingView, failed_badge);
  gtk_widget_class_bind_template_child (widget_class, BbStandingView, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbStandingView, reason_label);
}

static void
bb_standing_view_init (BbStandingView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
