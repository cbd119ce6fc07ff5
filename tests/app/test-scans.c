/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-helpers.h"

#include <glib/gstdio.h>

#include "bb-book-pictures.h"
#include "bb-exchange.h"
#include "bb-scan-area.h"
#include "bb-scan-side.h"
#include "bb-scans.h"

/* The demo shop's scanned specimen, in a window of its own. */
typedef struct {
  char *folder;
  char *path;
  BbSession *session;
  GtkWidget *window;
  BbScans *scans;
  gint64 wash_test;
  gint64 cycles;
} Fixture;

static void
set_up (Fixture      *self,
        gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbWashTest) test = NULL;
  g_autoptr (GSettings) settings = g_settings_new ("io.blankbook.Blankbook");

  self->folder = g_dir_make_tmp ("scans-XXXXXX", &error);
  g_assert_no_error (error);
  self->path = g_build_filename (self->folder, "demo.book", NULL);
  g_assert_true (bb_exchange_make_demo (self->path, NULL, NULL, &error));
  g_assert_no_error (error);
  self->session = bb_session_new (self->path, settings, &error);
  g_assert_no_error (error);
  test = bb_book_load_by_code (bb_session_get_book (self->session), &bb_wash_test_table, "2609-06", &error);
  g_assert_no_error (error);
  self->wash_test = test->id;

  self->window = gtk_window_new ();
  self->scans = BB_SCANS (bb_scans_new ());
  gtk_window_set_default_size (GTK_WINDOW (self->window), 800, 700);
  gtk_window_set_child (GTK_WINDOW (self->window), GTK_WIDGET (self->scans));
  bb_scans_show (self->scans, self->session, self->wash_test);
  gtk_window_present (GTK_WINDOW (self->window));
}

static void
tear_down (Fixture      *self,
           gconstpointer unused G_GNUC_UNUSED)
{
  gtk_window_destroy (GTK_WINDOW (self->window));
  helper_end_session (self->session);
  g_free (self->path);
  g_free (self->folder);
}

static BbScan *
load_scan (Fixture *self,
           gint64   cycles)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) scans = bb_book_load_scans (bb_session_get_book (self->session), self->wash_test, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < scans->len; i++)
    if (((BbScan *) scans->pdata[i])->cycles == cycles)
      return bb_record_copy (&bb_scan_table, scans->pdata[i]);

  return NULL;
}

/* Both areas have their picture once both have their rectangle. */
static gboolean
is_shown (gpointer data)
{
  const Fixture *self = data;
  BbScanArea *area = helper_find_widget (GTK_WIDGET (self->scans), BB_TYPE_SCAN_AREA);

  return bb_scan_area_get_rectangle (area, BB_SCAN_PART_SUBJECT).width == 70 &&
         bb_scan_area_get_rectangle (area, BB_SCAN_PART_PATCH).width == 30;
}

static void
test_stored_scans_are_shown (Fixture      *self,
                             gconstpointer unused G_GNUC_UNUSED)
{
  helper_wait_until (is_shown, self);
}

static gboolean
is_measured_anew (gpointer data)
{
  Fixture *self = data;
  g_autoptr (BbScan) scan = load_scan (self, 0);

  return scan->width_px == 20 && scan->height_px == 10;
}

/* The blue cloth of the picture, which was drawn as sRGB (38, 62, 122): its a* is far from the red print's 58. */
static void
test_a_new_rectangle_is_measured_and_kept (Fixture      *self,
                                           gconstpointer unused G_GNUC_UNUSED)
{
  const GdkRectangle cloth = { 112, 5, 20, 10 };
  BbScanArea *area = NULL;
  g_autoptr (BbScan) before = load_scan (self, 0);
  g_autoptr (BbScan) after = NULL;

  helper_wait_until (is_shown, self);
  area = helper_find_widget (GTK_WIDGET (self->scans), BB_TYPE_SCAN_AREA);
  bb_scan_area_set_rectangle (area, BB_SCAN_PART_SUBJECT, &cloth);
  g_signal_emit_by_name (area, "changed");
  helper_wait_until (is_measured_anew, self);

  after = load_scan (self, 0);
  g_assert_cmpint (after->id, ==, before->id);
  g_assert_cmpint (after->picture, ==, before->picture);
  g_assert_cmpfloat (before->a, >, 50);
  g_assert_cmpfloat (after->a, <, 20);
  g_assert_cmpfloat (after->b, <, -20);
  g_assert_true (bb_scan_has_patch (after));
}

static gboolean
has_no_rectangle (gpointer data)
{
  BbScanArea *area = helper_find_widget (data, BB_TYPE_SCAN_AREA);

  return bb_scan_area_get_rectangle (area, BB_SCAN_PART_SUBJECT).width == 0;
}

static gboolean
has_another_picture (gpointer data)
{
  Fixture *self = data;
  g_autoptr (BbScan) scan = load_scan (self, 0);

  return scan->width_px == 50;
}

/* A picture that is chosen instead of the stored one is not kept before it is measured. */
static void
test_another_picture (Fixture      *self,
                      gconstpointer unused G_GNUC_UNUSED)
{
  const GdkRectangle somewhere = { 30, 30, 50, 40 };
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demo-scans", "after-20.png", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (BbScan) before = load_scan (self, 0);
  g_autoptr (BbScan) after = NULL;
  GtkWidget *side = NULL;
  BbScanArea *area = NULL;

  helper_wait_until (is_shown, self);
  side = helper_find_widget (GTK_WIDGET (self->scans), BB_TYPE_SCAN_SIDE);
  area = helper_find_widget (side, BB_TYPE_SCAN_AREA);
  bb_scan_side_take_file (BB_SCAN_SIDE (side), file);
  helper_wait_until (has_no_rectangle, side);
  bb_scan_area_set_rectangle (area, BB_SCAN_PART_SUBJECT, &somewhere);
  g_signal_emit_by_name (area, "changed");
  helper_wait_until (has_another_picture, self);

  after = load_scan (self, 0);
  g_assert_cmpint (after->id, ==, before->id);
  g_assert_cmpint (after->picture, !=, before->picture);
  g_assert_false (bb_scan_has_patch (after));
}

static gboolean
has_problem (gpointer data)
{
  GtkWidget *label = GTK_WIDGET (gtk_widget_get_template_child (data, BB_TYPE_SCAN_SIDE, "problem_label"));

  return gtk_widget_get_visible (label);
}

static void
test_a_bad_file_is_refused (Fixture      *self,
                            gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *path = g_build_filename (self->folder, "no.png", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (BbScan) before = load_scan (self, 0);
  g_autoptr (BbScan) after = NULL;
  GtkWidget *side = NULL;

  g_assert_true (g_file_set_contents (path, "not a picture", -1, NULL));
  helper_wait_until (is_shown, self);
  side = helper_find_widget (GTK_WIDGET (self->scans), BB_TYPE_SCAN_SIDE);
  bb_scan_side_take_file (BB_SCAN_SIDE (side), file);
  helper_wait_until (has_problem, side);

  after = load_scan (self, 0);
  g_assert_true (bb_record_equal (&bb_scan_table, before, after));
  g_unlink (path);
}

static gboolean
is_kept (gpointer data)
{
  const Fixture *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) readings = bb_book_load_referring (bb_session_get_book (self->session), &bb_reading_table,
                                                           &bb_wash_test_table, self->wash_test, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < readings->len; i++)
    {
      const BbReading *reading = readings->pdata[i];

      if (reading->cycles == 20)
        return reading->change_measured == BB_GRADE_3_4 && reading->change == BB_GRADE_4;
    }

  return FALSE;
}

/* The measured grade stands beside the eye's, which stays. */
static void
test_the_grade_is_kept (Fixture      *self,
                        gconstpointer unused G_GNUC_UNUSED)
{
  GtkWidget *button = NULL;

  helper_wait_until (is_shown, self);
  button = GTK_WIDGET (gtk_widget_get_template_child (GTK_WIDGET (self->scans), BB_TYPE_SCANS, "keep_button"));
  g_assert_true (gtk_widget_get_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
  helper_wait_until (is_kept, self);
  bb_scans_show (self->scans, self->session, self->wash_test);
  g_assert_false (gtk_widget_get_sensitive (button));
}

#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  ADD ("/scans/stored-are-shown", test_stored_scans_are_shown);
  ADD ("/scans/a-new-rectangle-is-measured-and-kept", test_a_new_rectangle_is_measured_and_kept);
  ADD ("/scans/another-picture", test_another_picture);
  ADD ("/scans/a-bad-file-is-refused", test_a_bad_file_is_refused);
  ADD ("/scans/the-grade-is-kept", test_the_grade_is_kept);

  return g_test_run ();
}
