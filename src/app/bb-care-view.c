/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-care-view"

#include "bb-care-view.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-moment.h"
#include "bb-person-menu.h"
#include "bb-session-stock.h"
#include "bb-show.h"
#include "bb-word-badge.h"

struct _BbCareView
{
  GtkBox parent_instance;

  /* template */
  BbWordBadge *badge;
  GtkLabel *label;
  GtkLabel *person_label;
  GtkDropDown *person_drop_down;

  /* owned */
  BbSession *session;
  BbEquipment *machine;
};

G_DEFINE_FINAL_TYPE (BbCareView, bb_care_view, GTK_TYPE_BOX)

static void
calibrated_action (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  BbCareView *self = BB_CARE_VIEW (widget);

  (void) name;
  (void) parameter;

  if (self->session != NULL && self->machine != NULL)
    bb_session_note_calibration (self->session, self->machine);
}

static void
bb_care_view_dispose (GObject *object)
{
  BbCareView *self = BB_CARE_VIEW (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->machine, bb_equipment_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_CARE_VIEW);

  G_OBJECT_CLASS (bb_care_view_parent_class)->dispose (object);
}

static void
bb_care_view_class_init (BbCareViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_care_view_dispose;
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-care-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbCareView, badge);
  gtk_widget_class_bind_template_child (widget_class, BbCareView, label);
  gtk_widget_class_bind_template_child (widget_class, BbCareView, person_label);
  gtk_widget_class_bind_template_child (widget_class, BbCareView, person_drop_down);
  gtk_widget_class_install_action (widget_class, "care.calibrated", NULL, calibrated_action);
}

static void
bb_care_view_init (BbCareView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->person_drop_down), _("Calibrated by"));
}

/**
 * bb_care_view_new:
 *
 * Returns: (transfer floating): the care of no machine
 */
GtkWidget *
bb_care_view_new (void)
{
  return g_object_new (BB_TYPE_CARE_VIEW, NULL);
}

static char *
dup_mark (const BbEquipment *machine)
{
  g_autofree char *today = bb_dup_today ();
  g_autofree char *due = bb_equipment_dup_due_day (machine);
  g_autofree char *day = bb_show_date (due);

  if (!bb_equipment_is_due (machine, today))
    return NULL;

  return due != NULL ? g_strdup_printf (_("Calibration is due since %s"), day) : g_strdup (_("Calibration is due"));
}

static char *
describe (const BbEquipment *machine)
{
  g_autofree char *due = bb_equipment_dup_due_day (machine);
  g_autofree char *last = bb_show_date (machine->calibrated_at);
  g_autofree char *next = bb_show_date (due);

  if (machine->calibrated_at == NULL)
    return g_strdup (_("Nobody has entered a calibration yet."));
  if (due == NULL)
    return g_strdup_printf (_("Last calibrated on %s. Nobody has said how often that has to be."), last);

  return g_strdup_printf (_("Last calibrated on %s, next on %s."), last, next);
}

/* Others rely on the mark, so that it carries a name. Where the shop has named nobody there is nobody to choose. */
static void
ask_for_person (BbCareView *self)
{
  const gboolean has_people = g_list_model_get_n_items (gtk_drop_down_get_model (self->person_drop_down)) > 1;
  const gboolean lacks_person = has_people && bb_session_get_person (self->session) == 0;

  gtk_widget_set_visible (GTK_WIDGET (self->person_drop_down), has_people);
  gtk_widget_set_visible (GTK_WIDGET (self->person_label), lacks_person);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "care.calibrated", !lacks_person);
}

static void
take_session (BbCareView *self,
              BbSession  *session)
{
  if (!g_set_object (&self->session, session))
    return;
  bb_person_menu_connect (self->person_drop_down, session);
  g_signal_connect_object (session, "changed", G_CALLBACK (ask_for_person), self, G_CONNECT_SWAPPED);
}

/**
 * bb_care_view_show:
 * @self: a view
 * @session: the session
 * @machine: the machine whose care to show
 */
void
bb_care_view_show (BbCareView        *self,
                   BbSession         *session,
                   const BbEquipment *machine)
{
  g_autofree char *mark = dup_mark (machine);
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_CARE_VIEW (self) && BB_IS_SESSION (session));

  take_session (self, session);
  g_clear_pointer (&self->machine, bb_equipment_free);
  self->machine = bb_record_copy (&bb_equipment_table, machine);
  ask_for_person (self);
  text = describe (machine);
  gtk_label_set_label (self->label, text);
  if (mark != NULL)
    bb_word_badge_say (self->badge, BB_TONE_SOON, mark);
  else if (machine->calibrate_days != BB_INTEGER_NONE)
    bb_word_badge_say (self->badge, BB_TONE_GOOD, _("Calibrated"));
  else
    bb_word_badge_say (self->badge, BB_TONE_PLAIN, _("No calibration planned"));
}
