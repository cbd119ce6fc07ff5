/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "app-helpers.h"
#include "bb-book-jobs.h"
#include "bb-editor.h"
#include "bb-form.h"
#include "bb-job-detail.h"
#include "bb-job-head.h"
#include "bb-record-dialog.h"
#include "bb-repeat-card.h"
#include "bb-repeat-dialog.h"
#include "bb-run-panel.h"
#include "bb-run-take.h"
#include "bb-run-trace.h"
#include "bb-run-view.h"
#include "bb-start-dialog.h"
#include "bb-trace-dialog.h"
#include "bb-trace-view.h"
#include "bb-trace.h"
#include "paper.h"
#include "store-helpers.h"

/* The runs of a job in a window of their own: what is pressed there, and what the book has of it afterwards. */
typedef struct {
  BbSession *session;
  GtkWindow *window;
  BbRunPanel *panel;
  Shop *shop;
} Scene;

static void
changed_cb (Scene *scene)
{
  bb_run_panel_show (scene->panel, scene->session, scene->shop->job->id);
}

static void
set_up (Scene         *scene,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);

  (void) data;
  scene->shop = helper_fill (book);
  helper_prove (book, scene->shop->revision->id);
  helper_fill_jobs (book, scene->shop);
  helper_close (book);
  scene->session = helper_open_session (path);
  scene->window = GTK_WINDOW (gtk_window_new ());
  scene->panel = BB_RUN_PANEL (bb_run_panel_new ());
  gtk_window_set_child (scene->window, GTK_WIDGET (scene->panel));
  gtk_window_set_default_size (scene->window, 900, 700);
  bb_run_panel_show (scene->panel, scene->session, scene->shop->job->id);
  g_signal_connect_swapped (scene->session, "changed", G_CALLBACK (changed_cb), scene);
  gtk_window_present (scene->window);
  helper_wait_drawn (GTK_WIDGET (scene->panel));
}

static void
tear_down (Scene         *scene,
           gconstpointer  data)
{
  (void) data;
  g_signal_handlers_disconnect_by_data (scene->session, scene);
  bb_session_close (scene->session);
  gtk_window_destroy (scene->window);
  helper_finalize (scene->session);
  helper_shop_free (scene->shop);
}

static gboolean
says (GtkWidget  *within,
      const char *part)
{
  if (GTK_IS_LABEL (within) && gtk_widget_get_visible (within) &&
      strstr (gtk_label_get_text (GTK_LABEL (within)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (says (child, part))
      return TRUE;

  return FALSE;
}

static BbRun *
load_last (Scene *scene)
{
  BbRun *run = NULL;

  bb_book_find_last_run (bb_session_get_book (scene->session), &bb_job_line_table, scene->shop->line->id, &run, NULL);

  return run;
}

static gboolean
is_second_started (gpointer data)
{
  g_autoptr (BbRun) run = load_last (data);

  return run->number == 2;
}

static gboolean
is_finished (gpointer data)
{
  g_autoptr (BbRun) run = load_last (data);

  return run->finished_at != NULL;
}

static gboolean
is_remark_shown (gpointer data)
{
  return says (GTK_WIDGET (((Scene *) data)->panel), "The press was cold at first.") &&
         says (GTK_WIDGET (((Scene *) data)->panel), "Heated longer since.");
}

static gboolean
is_use_shown (gpointer data)
{
  return says (GTK_WIDGET (((Scene *) data)->panel), "L-1, ") && says (GTK_WIDGET (((Scene *) data)->panel), ": 40 g");
}

static gboolean
is_weigh_in_shown (gpointer data)
{
  return says (GTK_WIDGET (((Scene *) data)->panel), "aimed at ") &&
         says (GTK_WIDGET (((Scene *) data)->panel), "▼ Low: ");
}

/* The last window that is there besides the scene's own. */
static gpointer
find_dialog (GType type)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      if (G_TYPE_CHECK_INSTANCE_TYPE (window, type))
        return window;
    }

  return NULL;
}

/* It begins by the line's revision, on the press of the run before, once it is said who prints. */
static void
test_start (Scene         *scene,
            gconstpointer  data)
{
  g_autoptr (BbRun) run = NULL;
  g_autoptr (BbRun) draft = NULL;
  GtkWidget *dialog = NULL;

  (void) data;
  g_assert_true (says (GTK_WIDGET (scene->panel), "24 wanted · 10 good, 1 spoiled · 1 run under way"));
  bb_session_set_person (scene->session, 0);
  gtk_widget_activate_action (GTK_WIDGET (scene->panel), "runs.start", "x", scene->shop->line->id);
  dialog = find_dialog (BB_TYPE_START_DIALOG);
  g_assert_nonnull (dialog);
  g_assert_true (says (dialog, "14 garments still to print, of 24"));
  g_assert_true (says (dialog, "Choose under “By” who prints"));
  gtk_window_destroy (GTK_WINDOW (dialog));
  helper_wait_idle ();

  bb_session_set_person (scene->session, scene->shop->person->id);
  gtk_widget_activate_action (GTK_WIDGET (scene->panel), "runs.start", "x", scene->shop->line->id);
  dialog = find_dialog (BB_TYPE_START_DIALOG);
  g_assert_nonnull (dialog);
  g_assert_false (says (dialog, "Choose under “By” who prints"));
  draft = bb_form_dup_draft (helper_find_widget (dialog, BB_TYPE_FORM));
  g_assert_cmpint (draft->person, ==, scene->shop->person->id);
  g_assert_cmpint (draft->curer, ==, scene->shop->press->id);
  g_assert_false (says (dialog, "Not named"));
  draft->dryer = 0;
  bb_form_take (helper_find_widget (dialog, BB_TYPE_FORM), bb_table_find_field (&bb_run_table, "dryer"), draft);
  g_assert_true (says (dialog, "Not named: Dried on."));
  gtk_widget_activate_action (dialog, "start.run", NULL);
  helper_wait_until (is_second_started, scene);
  helper_wait_drawn (GTK_WIDGET (scene->panel));
  run = load_last (scene);
  g_assert_cmpint (run->revision, ==, scene->shop->revision->id);
  g_assert_cmpint (run->curer, ==, scene->shop->press->id);
  g_assert_cmpint (run->person, ==, scene->shop->person->id);
  g_assert_true (says (GTK_WIDGET (scene->panel), run->code));
}

/* Returns: how many records of a table belong to the shop's run */
static guint
count (Scene         *scene,
       const BbTable *table)
{
  g_autoptr (GPtrArray) records = bb_book_load_referring (bb_session_get_book (scene->session), table, &bb_run_table,
                                                          scene->shop->run->id, NULL);

  return records->len;
}

static void
test_take_remark_finish (Scene         *scene,
                         gconstpointer  data)
{
  BbRunView *view = helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_RUN_VIEW);
  BbForm *form = helper_find_widget (GTK_WIDGET (view), BB_TYPE_FORM);
  GtkWidget *take = helper_find_widget (GTK_WIDGET (view), BB_TYPE_RUN_TAKE);
  GtkWidget *entry = NULL;
  g_autoptr (BbLotUse) use = bb_lot_use_new ();
  const guint n_entries = count (scene, &bb_lot_entry_table);
  const guint n_remarks = count (scene, &bb_annotation_table);

  (void) data;
  for (GtkWidget *box = gtk_widget_get_first_child (gtk_widget_get_first_child (GTK_WIDGET (view))); box != NULL;
       box = gtk_widget_get_next_sibling (box))
    if (GTK_IS_ENTRY (gtk_widget_get_first_child (box)))
      entry = gtk_widget_get_first_child (box);

  /* A remark that is half typed is still there once something else was written. */
  gtk_editable_set_text (GTK_EDITABLE (entry), "Heated lon");
  use->lot = scene->shop->lot->id;
  use->amount_g = 40;
  bb_form_load (form, use);
  gtk_widget_activate_action (take, "take.enter", NULL);
  gtk_widget_activate_action (take, "take.enter", NULL);
  helper_wait_until (is_use_shown, scene);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "Heated lon");

  gtk_editable_set_text (GTK_EDITABLE (entry), "Heated longer since.");
  gtk_widget_activate_action (GTK_WIDGET (view), "run.remark", NULL);
  gtk_widget_activate_action (GTK_WIDGET (view), "run.remark", NULL);
  helper_wait_until (is_remark_shown, scene);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "");

  gtk_widget_activate_action (GTK_WIDGET (view), "run.finish", NULL);
  helper_wait_until (is_finished, scene);
  helper_wait_drawn (GTK_WIDGET (scene->panel));
  g_assert_true (says (GTK_WIDGET (scene->panel), "Finished on"));
  g_assert_true (says (GTK_WIDGET (scene->panel), "Cure, Dwell: 40 s, not 35 s."));
  /* What was pressed twice was entered once. */
  g_assert_cmpuint (count (scene, &bb_lot_entry_table), ==, n_entries + 1);
  g_assert_cmpuint (count (scene, &bb_annotation_table), ==, n_remarks + 1);
}

/* What is not there is not asked for: an empty list of weigh-ins does not keep a run from being saved. */
static void
test_record (Scene         *scene,
             gconstpointer  data)
{
  BbRunView *view = helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_RUN_VIEW);
  BbForm *form = NULL;
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (BbRun) saved = NULL;
  GtkWidget *dialog = NULL;

  (void) data;
  gtk_widget_activate_action (GTK_WIDGET (view), "run.record", NULL);
  dialog = find_dialog (BB_TYPE_RECORD_DIALOG);
  g_assert_nonnull (dialog);
  form = helper_find_widget (dialog, BB_TYPE_FORM);
  run->line = scene->shop->line->id;
  run->started_at = g_strdup ("2025-03-14");
  run->good = 3;
  bb_form_load (form, run);
  saved = bb_form_dup_record (form, TRUE);
  g_assert_nonnull (saved);
  g_assert_true (saved->weighed == NULL || saved->weighed->len == 0);
  gtk_window_destroy (GTK_WINDOW (dialog));
  helper_wait_idle ();
}

static gboolean
is_traced (gpointer dialog)
{
  return says (dialog, "Lot L-1, ");
}

static void
test_trace (Scene         *scene,
            gconstpointer  data)
{
  GtkWidget *trace = helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_RUN_TRACE);
  GtkWidget *dialog = NULL;

  (void) data;
  gtk_widget_activate_action (trace, "trace.open", "(sx)", "lot", scene->shop->lot->id);
  dialog = find_dialog (BB_TYPE_TRACE_DIALOG);
  g_assert_nonnull (dialog);
  helper_wait_until (is_traced, dialog);
  g_assert_true (says (dialog, "It had a part in 1 run. 1 job was touched. 1 customer was touched. "
                            "10 garments came out well. 1 garment was spoiled."));
  g_assert_true (says (dialog, "Heron Street Choir"));
  gtk_window_destroy (GTK_WINDOW (dialog));
  helper_wait_idle ();
}

static void
trace_said_cb (char       **said,
               const char  *text)
{
  g_free (*said);
  *said = g_strdup (text);
}

static gboolean
has_said (gpointer said)
{
  return *(char **) said != NULL;
}

/* Returns: what is said of the fault report, after it was saved in the units that are set */
static char *
save_trace (Scene       *scene,
            BbTraceView *view,
            GFile       *file)
{
  char *said = NULL;
  gulong id = g_signal_connect_swapped (scene->session, "say", G_CALLBACK (trace_said_cb), &said);

  bb_trace_view_save (view, file, TRUE);
  helper_wait_until (has_said, &said);
  g_signal_handler_disconnect (scene->session, id);

  return said;
}

/* A fault report is on the paper that goes with the shop's units. */
static void
test_trace_saved (Scene         *scene,
                  gconstpointer  data)
{
  BbTraceView *view = g_object_ref_sink (BB_TRACE_VIEW (bb_trace_view_new ()));
  g_autoptr (GSettings) settings = g_settings_new ("io.blankbook.Blankbook");
  const char * const systems[] = { "us", "metric" };
  /* Rounded as poppler tells them. */
  const char * const sizes[] = { "612 x 792", "595.276 x 841.89" };

  (void) data;
  bb_trace_view_show (view, scene->session, &bb_lot_table, scene->shop->lot->id);
  for (guint i = 0; i < G_N_ELEMENTS (systems); i++)
    {
      g_autofree char *path = helper_new_path ();
      g_autoptr (GFile) file = g_file_new_for_path (path);
      g_autofree char *said = NULL;
      g_autofree char *facts = NULL;
      g_autoptr (GBytes) pdf = NULL;

      g_settings_set_string (settings, "unit-system", systems[i]);
      said = save_trace (scene, view, file);
      g_assert_nonnull (strstr (said, path));
      pdf = g_file_load_bytes (file, NULL, NULL, NULL);
      facts = paper_read_facts (pdf);
      g_assert_nonnull (strstr (facts, sizes[i]));
      g_assert_true (g_file_delete (file, NULL, NULL));
    }
  g_settings_reset (settings, "unit-system");
  helper_wait_idle ();
  g_assert_finalize_object (view);
}

/* The box of a weigh-in is that of the line's print, and its verdict is the Mix page's: 280 mm by 300 mm without a
 * margin are 0.084 m², and half of what the recipe asks for is too little. */
static void
test_weigh_in (Scene         *scene,
               gconstpointer  data)
{
  BbBook *book = bb_session_get_book (scene->session);
  BbRunView *view = helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_RUN_VIEW);
  BbForm *form = NULL;
  BbFieldRow *list = NULL;
  GtkWidget *dialog = NULL;
  g_autoptr (BbRun) run = NULL;
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, scene->shop->revision->id, NULL);
  const double area_m2 = 0.084;
  const BbWeighed *weighed = NULL;
  g_autofree char *wet = NULL;

  (void) data;
  gtk_widget_activate_action (GTK_WIDGET (view), "run.record", NULL);
  dialog = find_dialog (BB_TYPE_RECORD_DIALOG);
  form = helper_find_widget (dialog, BB_TYPE_FORM);
  list = bb_form_find_row (form, bb_table_find_field (&bb_run_table, "weighed"));
  run = bb_form_dup_draft (form);
  g_assert_cmpuint (run->weighed->len, ==, 1);
  g_signal_emit_by_name (helper_find_widget (GTK_WIDGET (list), GTK_TYPE_BUTTON), "clicked");
  g_clear_pointer (&run, bb_run_free);
  run = bb_form_dup_draft (form);
  weighed = &g_array_index (run->weighed, BbWeighed, 1);
  g_assert_cmpfloat_with_epsilon (weighed->box_area_m2, area_m2, 1e-9);
  g_assert_true (isnan (weighed->tare_g));

  bb_field_row_set_state (bb_field_row_find_nested (list, "[1].tare_g"), "180", BB_UNITS_METRIC);
  wet = g_strdup_printf ("%.1f", 180 + area_m2 * revision->pretreat_laydown_g_per_m2 * 0.5);
  bb_field_row_set_state (bb_field_row_find_nested (list, "[1].wet_g"), wet, BB_UNITS_METRIC);
  gtk_widget_activate_action (helper_find_widget (dialog, BB_TYPE_EDITOR), "editor.save", NULL);
  helper_wait_until (is_weigh_in_shown, scene);
}

/* No button stands there that would move on a job which is not shown. */
static void
test_no_job (Scene         *scene,
             gconstpointer  data)
{
  GtkWidget *detail = g_object_ref_sink (bb_job_detail_new ());

  (void) data;
  g_assert_false (gtk_widget_get_visible (detail));
  bb_job_detail_show (BB_JOB_DETAIL (detail), scene->session, scene->shop->job->id);
  g_assert_true (gtk_widget_get_visible (detail));
  bb_job_detail_show (BB_JOB_DETAIL (detail), scene->session, 999);
  g_assert_false (gtk_widget_get_visible (detail));
  g_assert_finalize_object (detail);
}

/* As narrow as the page gets in the smallest window, whatever the names. */
#define NARROWEST 520

static void
assert_narrow (GtkWidget *widget)
{
  int least = 0;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  g_test_message ("%s: %d", G_OBJECT_TYPE_NAME (widget), least);
  g_assert_cmpint (least, <=, NARROWEST);
}

static gboolean
is_long_shown (gpointer data)
{
  return says (GTK_WIDGET (((Scene *) data)->panel), "Loughside");
}

static gboolean
write_long_names (BbBook   *book,
                  gpointer  data,
                  GError  **error)
{
  Shop *shop = data;

  g_free (shop->blank->name);
  shop->blank->name = g_strdup ("Loughside “Slow Morning” women’s scoop-neck tee, relaxed cut, long side vents & "
                                "twice-hemmed sleeves");
  g_free (shop->press->name);
  shop->press->name = g_strdup ("Press, the new one under the skylight with the two platens and the humidifier that "
                                "Bartholomew bought");

  return bb_book_save (book, &bb_blank_table, shop->blank, error) &&
         bb_book_save (book, &bb_equipment_table, shop->press, error);
}

static void
test_narrow (Scene         *scene,
             gconstpointer  data)
{
  (void) data;
  bb_session_write_async (scene->session, write_long_names, scene->shop, NULL, NULL, NULL);
  helper_wait_until (is_long_shown, scene);
  assert_narrow (GTK_WIDGET (scene->panel));
  assert_narrow (helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_RUN_VIEW));
}

static gboolean
is_repeated (gpointer data)
{
  g_autoptr (GArray) jobs = bb_book_list_jobs (bb_session_get_book (((Scene *) data)->session), BB_JOB_PLANNED, 0,
                                               NULL);

  return jobs->len == 1;
}

static void
test_repeat (Scene         *scene,
             gconstpointer  data)
{
  GtkWidget *dialog = NULL;

  (void) data;
  bb_repeat_dialog_present (GTK_WIDGET (scene->panel), scene->session, scene->shop->job->id);
  dialog = find_dialog (BB_TYPE_REPEAT_DIALOG);
  g_assert_nonnull (dialog);
  g_assert_true (says (dialog, "Job 2503-01 for Heron Street Choir, once more"));
  g_assert_true (says (dialog, "Nothing has changed since."));
  gtk_widget_activate_action (dialog, "repeat.open", NULL);
  helper_wait_until (is_repeated, scene);
  helper_wait_idle ();
  g_assert_null (find_dialog (BB_TYPE_REPEAT_DIALOG));
}

/* A run that nothing came out well of is no print. */
static void
test_never_printed (Scene         *scene,
                    gconstpointer  data)
{
  g_autoptr (BbRun) run = load_last (scene);
  GtkWidget *dialog = NULL;

  (void) data;
  run->good = 0;
  g_assert_true (bb_book_save_run (bb_session_get_book (scene->session), run, NULL));
  bb_repeat_dialog_present (GTK_WIDGET (scene->panel), scene->session, scene->shop->job->id);
  dialog = find_dialog (BB_TYPE_REPEAT_DIALOG);
  g_assert_true (says (dialog, "and never printed"));
  g_assert_false (says (dialog, "Last printed on"));
  gtk_window_destroy (GTK_WINDOW (dialog));
  helper_wait_idle ();
}

/* A job of which something is open says so before it is done. */
static void
test_done (Scene         *scene,
           gconstpointer  data)
{
  GtkWidget *head = g_object_ref_sink (g_object_new (BB_TYPE_JOB_HEAD, NULL));
  g_autoptr (BbJob) job = bb_book_load (bb_session_get_book (scene->session), &bb_job_table, scene->shop->job->id,
                                        NULL);
  GtkWidget *menu = NULL;

  (void) data;
  bb_job_head_show (BB_JOB_HEAD (head), scene->session, job);
  menu = helper_find_widget (head, GTK_TYPE_MENU_BUTTON);
  g_assert_true (gtk_widget_get_visible (menu));
  g_assert_true (says (GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (menu))),
                       "14 prints of 24 are not yet recorded as good. 1 run is under way"));
  g_assert_finalize_object (head);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Scene, NULL, set_up, func, tear_down)
  ADD ("/runs/start", test_start);
  ADD ("/runs/take-remark-finish", test_take_remark_finish);
  ADD ("/runs/record", test_record);
  ADD ("/runs/weigh-in", test_weigh_in);
  ADD ("/runs/trace", test_trace);
  ADD ("/runs/trace-saved", test_trace_saved);
  ADD ("/runs/repeat", test_repeat);
  ADD ("/runs/never-printed", test_never_printed);
  ADD ("/runs/done", test_done);
  ADD ("/runs/no-job", test_no_job);
  ADD ("/runs/narrow", test_narrow);
#undef ADD

  return g_test_run ();
}
