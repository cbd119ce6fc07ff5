/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-scans"

#include "bb-scans.h"

#include <glib/gi18n-lib.h>

#include "bb-book-pictures.h"
#include "bb-compat.h"
#include "bb-figure.h"
#include "bb-scan-proof.h"
#include "bb-scan-side.h"
#include "bb-session-scans.h"
#include "bb-show.h"
#include "bb-signal.h"

/* What is shown of two scans, in this order. */
static const char * const shown[] = { "grade", "difference", "de_00", "drift_de_00" };

struct _BbScans
{
  GtkBox parent_instance;

  /* template */
  GtkDropDown *subject_drop;
  GtkDropDown *cycles_drop;
  GtkWidget *unread_label;
  BbScanSide *before_side;
  BbScanSide *after_side;
  GtkWidget *verdict_box;
  BbFigures *figures;
  GtkLabel *drift_label;
  GtkWidget *keep_button;

  /* owned */
  BbSession *session;
  GPtrArray *scans;
  GPtrArray *readings;
  BbScanProof *proof;

  gint64 wash_test;
  BbFigure *figure[G_N_ELEMENTS (shown)];
};

G_DEFINE_FINAL_TYPE (BbScans, bb_scans, GTK_TYPE_BOX)

static BbSubject
get_subject (BbScans *self)
{
  return gtk_drop_down_get_selected (self->subject_drop) == 1 ? BB_SUBJECT_CLOTH : BB_SUBJECT_PRINT;
}

/* The reading that the scan after washes belongs to. */
static const BbReading *
get_reading (BbScans *self)
{
  const guint selected = gtk_drop_down_get_selected (self->cycles_drop);

  return self->readings != NULL && selected < self->readings->len ? self->readings->pdata[selected] : NULL;
}

static const BbScan *
find_scan (BbScans *self,
           gint64   cycles)
{
  for (guint i = 0; i < self->scans->len; i++)
    {
      const BbScan *scan = self->scans->pdata[i];

      if (scan->subject == (int) get_subject (self) && scan->cycles == cycles)
        return scan;
    }

  return NULL;
}

static void
show_side (BbScans    *self,
           BbScanSide *side,
           gint64      cycles)
{
  const BbScan *stored = find_scan (self, cycles);
  g_autoptr (BbScan) empty = bb_scan_new ();
  g_autofree char *title = NULL;

  if (cycles == 0)
    title = g_strdup (_("Before washing"));
  else
    title = g_strdup_printf (ngettext ("After %d wash", "After %d washes", (gulong) cycles), (int) cycles);
  empty->wash_test = self->wash_test;
  empty->cycles = cycles;
  empty->subject = (int) get_subject (self);
  bb_scan_side_show (side, self->session, title, stored != NULL ? stored : empty);
}

/* Two decimals of a difference: more than any eye or scanner tells. */
static void
show_figure (BbScans *self,
             guint    i)
{
  const BbField *field = bb_table_find_field (&bb_scan_proof_table, shown[i]);
  g_autofree char *text = NULL;

  if (field->kind == BB_KIND_NUMBER && bb_field_is_set (field, self->proof))
    text = g_strdup_printf ("%.2f", bb_field_get_number (field, self->proof));
  else
    text = bb_show_field (self->session, &bb_scan_proof_table, field, self->proof);
  bb_figure_set (self->figure[i], text, "", NULL);
}

static void
show_proof (BbScans         *self,
            const BbReading *reading)
{
  const gboolean kept = bb_field_get_choice (bb_subject_get_measured_field (get_subject (self)), reading) ==
                        self->proof->grade;

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    show_figure (self, i);

  if (self->proof->drifted)
    gtk_label_set_label (self->drift_label, _("The patches differ too much for a correction: scan both again in the "
                                              "same set-up."));
  else if (bb_field_is_set (bb_table_find_field (&bb_scan_proof_table, "drift_de_00"), self->proof))
    gtk_label_set_label (self->drift_label, _("What the patch moved was taken off the colour after washing."));
  else
    gtk_label_set_label (self->drift_label, _("Without a patch on both scans, the scanner's drift counts as change."));

  gtk_widget_set_sensitive (self->keep_button, !kept && !self->proof->drifted);
  gtk_button_set_label (GTK_BUTTON (self->keep_button), kept ? _("Kept with the Reading")
                                                             : _("Keep This Grade with the Reading"));
}

static void
judge (BbScans *self)
{
  const BbReading *reading = get_reading (self);
  const BbScan *before = find_scan (self, 0);
  const BbScan *after = reading != NULL ? find_scan (self, reading->cycles) : NULL;
  g_autoptr (GError) error = NULL;

  gtk_widget_set_visible (self->verdict_box, FALSE);
  if (before == NULL || after == NULL)
    return;

  g_clear_pointer (&self->proof, bb_scan_proof_free);
  self->proof = bb_scan_proof_new ();
  if (!bb_scan_proof_judge (before, after, self->proof, &error))
    {
      bb_session_report (self->session, error);
      return;
    }
  gtk_widget_set_visible (self->verdict_box, TRUE);
  show_proof (self, reading);
}

static void
show_all (BbScans *self)
{
  const BbReading *reading = get_reading (self);

  gtk_widget_set_visible (GTK_WIDGET (self->after_side), reading != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->cycles_drop), reading != NULL);
  gtk_widget_set_visible (self->unread_label, reading == NULL);
  show_side (self, self->before_side, 0);
  if (reading != NULL)
    show_side (self, self->after_side, reading->cycles);
  judge (self);
}

static void
chosen_cb (BbScans *self)
{
  if (self->session != NULL && self->scans != NULL)
    show_all (self);
}

static void
keep_cb (BbScans *self)
{
  const BbReading *reading = get_reading (self);

  if (reading != NULL && self->proof != NULL)
    bb_session_keep_grade (self->session, reading->id, get_subject (self), self->proof->grade);
}

/* One line for each reading after a wash; the last is the one that matters, or the one that was chosen before. */
static void
fill_cycles (BbScans *self,
             gint64   wanted)
{
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  guint selected = self->readings->len > 0 ? self->readings->len - 1 : GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < self->readings->len; i++)
    {
      const BbReading *reading = self->readings->pdata[i];
      g_autofree char *line = g_strdup_printf (ngettext ("%d wash", "%d washes", (gulong) reading->cycles),
                                               (int) reading->cycles);

      gtk_string_list_append (lines, line);
      if (reading->cycles == wanted)
        selected = i;
    }

  g_signal_handlers_block_by_func (self->cycles_drop, BB_HANDLER (chosen_cb), self);
  gtk_drop_down_set_model (self->cycles_drop, G_LIST_MODEL (lines));
  gtk_drop_down_set_selected (self->cycles_drop, selected);
  g_signal_handlers_unblock_by_func (self->cycles_drop, BB_HANDLER (chosen_cb), self);
}

static gboolean
load (BbScans  *self,
      GError  **error)
{
  BbBook *book = bb_session_get_book (self->session);

  g_clear_pointer (&self->readings, g_ptr_array_unref);
  g_clear_pointer (&self->scans, g_ptr_array_unref);
  self->scans = bb_book_load_scans (book, self->wash_test, error);
  if (self->scans == NULL)
    return FALSE;
  self->readings = bb_book_load_referring (book, &bb_reading_table, &bb_wash_test_table, self->wash_test, error);
  if (self->readings == NULL)
    return FALSE;

  for (guint i = self->readings->len; i-- > 0;)
    if (((const BbReading *) self->readings->pdata[i])->cycles == 0)
      g_ptr_array_remove_index (self->readings, i);
  bb_records_sort (&bb_reading_table, "cycles", self->readings);

  return TRUE;
}

static void
bb_scans_dispose (GObject *object)
{
  BbScans *self = BB_SCANS (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->scans, g_ptr_array_unref);
  g_clear_pointer (&self->readings, g_ptr_array_unref);
  g_clear_pointer (&self->proof, bb_scan_proof_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_SCANS);

  G_OBJECT_CLASS (bb_scans_parent_class)->dispose (object);
}

static void
bb_scans_class_init (BbScansClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_scans_dispose;
  g_type_ensure (BB_TYPE_FIGURES);
  g_type_ensure (BB_TYPE_SCAN_SIDE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-scans.ui");
  gtk_widget_class_bind_template_child (widget_class, BbScans, subject_drop);
  gtk_widget_class_bind_template_child (widget_class, BbScans, cycles_drop);
  gtk_widget_class_bind_template_child (widget_class, BbScans, unread_label);
  gtk_widget_class_bind_template_child (widget_class, BbScans, before_side);
  gtk_widget_class_bind_template_child (widget_class, BbScans, after_side);
  gtk_widget_class_bind_template_child (widget_class, BbScans, verdict_box);
  gtk_widget_class_bind_template_child (widget_class, BbScans, figures);
  gtk_widget_class_bind_template_child (widget_class, BbScans, drift_label);
  gtk_widget_class_bind_template_child (widget_class, BbScans, keep_button);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, keep_cb);
}

static void
bb_scans_init (BbScans *self)
{
  g_autoptr (GtkStringList) subjects = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->subject_drop), _("What is scanned"));
  bb_compat_set_name (GTK_WIDGET (self->cycles_drop), _("After how many washes"));
  for (guint i = 0; i < bb_subject_choices.n_items; i++)
    gtk_string_list_append (subjects, _(bb_subject_choices.items[i].title));
  gtk_drop_down_set_model (self->subject_drop, G_LIST_MODEL (subjects));
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    self->figure[i] = bb_figure_add (self->figures, _(bb_table_find_field (&bb_scan_proof_table, shown[i])->title));
}

/**
 * bb_scans_new:
 *
 * Returns: (transfer floating): the scans of no specimen
 */
GtkWidget *
bb_scans_new (void)
{
  return g_object_new (BB_TYPE_SCANS, NULL);
}

/**
 * bb_scans_show:
 * @self: the scans
 * @session: the session
 * @wash_test: key of the specimen
 */
void
bb_scans_show (BbScans   *self,
               BbSession *session,
               gint64     wash_test)
{
  g_autoptr (GError) error = NULL;
  const BbReading *chosen = NULL;
  gint64 cycles = 0;

  g_return_if_fail (BB_IS_SCANS (self) && BB_IS_SESSION (session));

  chosen = self->wash_test == wash_test ? get_reading (self) : NULL;
  cycles = chosen != NULL ? chosen->cycles : 0;
  g_set_object (&self->session, session);
  self->wash_test = wash_test;
  if (!load (self, &error))
    {
      bb_session_report (session, error);
      return;
    }
  fill_cycles (self, cycles);
  show_all (self);
}
