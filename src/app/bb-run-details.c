/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-details"

#include "bb-run-details.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-run-aim.h"
#include "bb-run-words.h"
#include "bb-show.h"

struct _BbRunDetails
{
  GtkBox parent_instance;
};

G_DEFINE_FINAL_TYPE (BbRunDetails, bb_run_details, GTK_TYPE_BOX)

static void
add_entries (BbRunDetails    *self,
             BbSession       *session,
             const GPtrArray *entries)
{
  BbBook *book = bb_session_get_book (session);

  if (entries->len > 0)
    bb_children_add_text (GTK_BOX (self), _("Taken From"), "heading");
  for (guint i = 0; i < entries->len; i++)
    {
      g_autofree char *text = bb_words_of_entry (book, entries->pdata[i], bb_session_get_units (session));

      bb_children_add_text (GTK_BOX (self), text, "numeral");
    }
}

/* The verdict is the Mix page's: its word and shape first. */
static void
add_weigh_in (BbRunDetails    *self,
              BbSession       *session,
              const BbRunAim  *aim,
              const BbWeighed *weighed)
{
  const BbUnitContext *units = bb_session_get_units (session);
  g_autofree char *text = bb_words_of_weighed (weighed, aim->laydown_g_per_m2, units);
  g_autoptr (BbWeighInOut) out = bb_weigh_in_out_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  bb_children_add_text (GTK_BOX (box), text, "numeral");
  if (bb_run_aim_judge (aim, weighed, out))
    {
      g_autofree char *verdict = bb_words_of_weigh_in (out, units);

      gtk_widget_add_css_class (box, "weighed");
      gtk_widget_add_css_class (box, bb_choices_get_key (&bb_weigh_verdict_choices, (int) out->verdict));
      bb_children_add_text (GTK_BOX (box), verdict, "weighed-verdict");
    }
  gtk_box_append (GTK_BOX (self), box);
}

static void
add_weighed (BbRunDetails *self,
             BbSession    *session,
             const BbRun  *run)
{
  const GArray *weighed = run->weighed;
  g_autoptr (GError) error = NULL;
  BbRunAim aim;

  if (weighed == NULL || weighed->len == 0)
    return;
  bb_children_add_text (GTK_BOX (self), _("Weigh-ins"), "heading");
  if (!bb_run_aim_load (bb_session_get_book (session), run, &aim, &error))
    bb_session_report (session, error);
  for (guint i = 0; i < weighed->len; i++)
    add_weigh_in (self, session, &aim, &g_array_index (weighed, BbWeighed, i));
}

static void
add_departures (BbRunDetails     *self,
                BbSession        *session,
                const BbRun      *run,
                const BbRevision *revision)
{
  const GArray *departures = run->departures;

  if (departures == NULL || departures->len == 0)
    return;
  bb_children_add_text (GTK_BOX (self), _("Set Otherwise"), "heading");
  for (guint i = 0; i < departures->len; i++)
    {
      g_autofree char *text = bb_words_of_departure (bb_session_get_book (session), revision,
                                                     &g_array_index (departures, BbDeparture, i),
                                                     bb_session_get_units (session));

      bb_children_add_text (GTK_BOX (self), text, "numeral");
    }
}

static void
add_remarks (BbRunDetails    *self,
             BbSession       *session,
             const GPtrArray *remarks)
{
  if (remarks->len > 0)
    bb_children_add_text (GTK_BOX (self), _("Remarks"), "heading");
  for (guint i = 0; i < remarks->len; i++)
    {
      const BbAnnotation *remark = remarks->pdata[i];
      g_autofree char *day = bb_show_date (remark->at);
      g_autofree char *person = bb_show_name (session, &bb_person_table, remark->person);
      g_autofree char *head = *person != '\0' ? g_strjoin (" · ", day, person, NULL) : g_strdup (day);

      bb_children_add_text (GTK_BOX (self), head, "caption");
      bb_children_add_text (GTK_BOX (self), remark->text, "body");
    }
}

static void
bb_run_details_class_init (BbRunDetailsClass *klass)
{
  gtk_widget_class_set_template_from_resource (GTK_WIDGET_CLASS (klass),
                                               "/io/blankbook/Blankbook/bb-run-details.ui");
}

static void
bb_run_details_init (BbRunDetails *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_run_details_show:
 * @self: the details of a run
 * @session: the session
 * @run: the run
 * @revision: what it was made by
 * @entries: (element-type BbLotEntry): what was taken for it
 * @remarks: (element-type BbAnnotation): what was remarked on it
 *
 * Shows the details of a run, in place of those before.
 */
void
bb_run_details_show (BbRunDetails     *self,
                     BbSession        *session,
                     const BbRun      *run,
                     const BbRevision *revision,
                     const GPtrArray  *entries,
                     const GPtrArray  *remarks)
{
  g_return_if_fail (BB_IS_RUN_DETAILS (self) && BB_IS_SESSION (session) && run != NULL && revision != NULL);

  bb_children_empty_box (GTK_BOX (self));
  add_entries (self, session, entries);
  add_weighed (self, session, run);
  add_departures (self, session, run, revision);
  add_remarks (self, session, remarks);
}
