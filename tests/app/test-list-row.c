/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "app-helpers.h"
#include "bb-form.h"
#include "bb-list-row.h"
#include "bb-run.h"
#include "store-helpers.h"

/* The form of a run with a list of weigh-ins: what is wrong is said at the editor of the line that it is about. */
typedef struct {
  BbSession *session;
  GtkWindow *window;
  BbForm *form;
  BbFieldRow *list;
} Scene;

static void
set_up (Scene         *scene,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbRun) run = bb_run_new ();

  (void) data;
  helper_close (helper_create (path));
  scene->session = helper_open_session (path);
  scene->form = BB_FORM (bb_form_new (scene->session, &bb_run_table));
  scene->list = bb_form_find_row (scene->form, bb_table_find_field (&bb_run_table, "weighed"));
  run->started_at = g_strdup ("2025-03-14");
  bb_form_load (scene->form, run);
  scene->window = GTK_WINDOW (gtk_window_new ());
  gtk_window_set_child (scene->window, GTK_WIDGET (scene->form));
  gtk_window_set_default_size (scene->window, 640, 620);
  gtk_window_present (scene->window);
  helper_wait_drawn (GTK_WIDGET (scene->form));
}

static void
tear_down (Scene         *scene,
           gconstpointer  data)
{
  (void) data;
  gtk_window_destroy (scene->window);
  helper_end_session (scene->session);
}

static void
add_line (Scene *scene)
{
  g_signal_emit_by_name (helper_find_widget (GTK_WIDGET (scene->list), GTK_TYPE_BUTTON), "clicked");
}

static BbFieldRow *
find (Scene      *scene,
      const char *path)
{
  BbFieldRow *row = bb_field_row_find_nested (scene->list, path);

  g_assert_nonnull (row);

  return row;
}

static void
type (Scene      *scene,
      const char *path,
      const char *text)
{
  bb_field_row_set_state (find (scene, path), text, BB_UNITS_METRIC);
}

static gboolean
is_accepted (Scene    *scene,
             gboolean  complain_about_all)
{
  g_autoptr (BbRun) run = bb_form_dup_record (scene->form, complain_about_all);

  return run != NULL;
}

static gboolean
is_faulty (Scene      *scene,
           const char *path)
{
  return bb_field_row_is_faulty (find (scene, path));
}

static gboolean
says (GtkWidget  *within,
      const char *text)
{
  if (GTK_IS_LABEL (within) && gtk_widget_get_mapped (within) &&
      strstr (gtk_label_get_text (GTK_LABEL (within)), text) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (says (child, text))
      return TRUE;

  return FALSE;
}

/* What is missing in a line is said there, once it is to be saved, and the keyboard goes there. */
static void
test_missing (Scene         *scene,
              gconstpointer  data)
{
  (void) data;
  add_line (scene);
  type (scene, "[0].tare_g", "180");
  type (scene, "[0].wet_g", "191");
  g_assert_false (is_accepted (scene, FALSE));
  g_assert_null (bb_field_row_find_faulty (scene->list));
  g_assert_false (is_accepted (scene, TRUE));
  g_assert_false (is_faulty (scene, "[0].tare_g"));
  g_assert_true (is_faulty (scene, "[0].box_area_m2"));
  g_assert_true (says (GTK_WIDGET (scene->list), "Box area: This has to be filled in."));
  g_assert_true (bb_form_focus_fault (scene->form));
  g_assert_nonnull (gtk_widget_get_ancestor (gtk_window_get_focus (scene->window), BB_TYPE_FIELD_ROW));
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (scene->window),
                                         GTK_WIDGET (find (scene, "[0].box_area_m2"))));
  type (scene, "[0].box_area_m2", "1500");
  g_assert_true (is_accepted (scene, TRUE));
  g_assert_null (bb_field_row_find_faulty (scene->list));
}

/* A rule between the fields of a line, what can't be read, and what the book refuses: each at its editor. */
static void
test_at_the_editor (Scene         *scene,
                    gconstpointer  data)
{
  (void) data;
  add_line (scene);
  add_line (scene);
  for (guint i = 0; i < 2; i++)
    {
      g_autofree char *tare = g_strdup_printf ("[%u].tare_g", i);
      g_autofree char *wet = g_strdup_printf ("[%u].wet_g", i);
      g_autofree char *area = g_strdup_printf ("[%u].box_area_m2", i);

      type (scene, tare, "180");
      type (scene, wet, i == 0 ? "191" : "100");
      type (scene, area, "1500");
    }
  g_assert_false (is_accepted (scene, TRUE));
  g_assert_false (is_faulty (scene, "[0].wet_g"));
  g_assert_true (is_faulty (scene, "[1].wet_g"));
  g_assert_true (says (GTK_WIDGET (scene->list), "Wet mass: The garment can't be lighter"));

  type (scene, "[1].wet_g", "heavy");
  g_assert_false (is_accepted (scene, TRUE));
  g_assert_true (is_faulty (scene, "[1].wet_g"));
  g_assert_false (bb_field_row_is_faulty (scene->list));

  type (scene, "[1].wet_g", "190");
  g_assert_true (is_accepted (scene, TRUE));
  g_assert_true (bb_form_show_fault (scene->form, "weighed[1].box_area_m2: the sprayer can't reach so far.", TRUE));
  g_assert_true (is_faulty (scene, "[1].box_area_m2"));
  g_assert_false (bb_form_show_fault (scene->form, "weighed[2].wet_g: there is no such line.", TRUE));
  g_assert_null (bb_field_row_find_nested (scene->list, "[0].nothing"));
}

/* Where a widget begins within the list, in px. */
static float
find_start (Scene     *scene,
            GtkWidget *widget)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (widget, GTK_WIDGET (scene->list), &bounds));

  return bounds.origin.x;
}

static GtkWidget *
find_caption (GtkWidget  *within,
              const char *text)
{
  GtkWidget *found = NULL;

  if (GTK_IS_LABEL (within) && gtk_widget_has_css_class (within, "caption") &&
      g_str_equal (gtk_label_get_text (GTK_LABEL (within)), text))
    return within;
  for (GtkWidget *child = gtk_widget_get_first_child (within); found == NULL && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_caption (child, text);

  return found;
}

static gboolean
says_what_tare_is (gpointer list)
{
  return says (list, "Tare: Mass of the garment before pretreat.");
}

/*
 * What is said of an editor takes no room beside it: headings stand above what they name. It is said once the keyboard
 * is in the editor, which it is only when the display has given it to the window.
 */
static void
test_headings (Scene         *scene,
               gconstpointer  data)
{
  GtkWidget *caption = find_caption (GTK_WIDGET (scene->list), "Box area");

  (void) data;
  g_assert_nonnull (caption);
  add_line (scene);
  helper_wait_until (says_what_tare_is, scene->list);
  helper_wait_drawn (GTK_WIDGET (scene->form));
  /* Without a style sheet, a row of a list has a padding of its own. */
  g_assert_cmpfloat_with_epsilon (find_start (scene, caption),
                                  find_start (scene, GTK_WIDGET (find (scene, "[0].box_area_m2"))), 4.0f);
}

/* When a run began was taken from the clock: it is shown as people here write it, and kept to the second. */
static void
test_moment (Scene         *scene,
             gconstpointer  data)
{
  BbFieldRow *row = bb_form_find_row (scene->form, bb_table_find_field (&bb_run_table, "started_at"));
  GtkEditable *entry = GTK_EDITABLE (helper_find_widget (GTK_WIDGET (row), GTK_TYPE_ENTRY));
  const char *moment = "2026-11-26T12:31:25Z";
  g_autoptr (BbRun) run = bb_form_dup_draft (scene->form);
  g_autoptr (BbRun) typed = NULL;
  g_autofree char *state = NULL;

  (void) data;
  g_assert_true (gtk_editable_get_editable (entry));
  g_free (run->started_at);
  run->started_at = g_strdup (moment);
  bb_form_load (scene->form, run);
  g_assert_false (gtk_editable_get_editable (entry));
  g_assert_null (strchr (gtk_editable_get_text (entry), 'Z'));
  g_assert_nonnull (strstr (gtk_editable_get_text (entry), "Nov 2026, "));
  state = bb_field_row_dup_state (row);
  bb_field_row_set_state (row, state, BB_UNITS_METRIC);
  typed = bb_form_dup_record (scene->form, TRUE);
  g_assert_cmpstr (typed->started_at, ==, moment);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Scene, NULL, set_up, func, tear_down)
  ADD ("/list-row/missing", test_missing);
  ADD ("/list-row/at-the-editor", test_at_the_editor);
  ADD ("/list-row/headings", test_headings);
  ADD ("/list-row/moment", test_moment);
#undef ADD

  return g_test_run ();
}
