/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <time.h>

#include "app-helpers.h"
#include "bb-finder.h"
#include "bb-recipe-filter.h"
#include "bb-recipe-picker.h"
#include "bb-withdrawn-toggle.h"

/* The pane that every list stands in, in a window, with more records than anybody looks at. */

/* Far more than are seen at once, and far fewer than there are. */
#define FEW_PAGES 12

typedef struct {
  BbSession *session;
  GtkWidget *window;
  BbFinder *finder;
  GtkEditable *search_entry;
  GtkListView *list_view;
  guint n_chosen;
} Fixture;

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbWashLine *wash = record;
  const BbWashTest *test = wash->test;

  (void) session;
  bb_row_set (row, test->code, "", ((const BbRevision *) wash->revision)->code);
}

static char *
count (guint n)
{
  return g_strdup_printf ("%u tests", n);
}

static const BbFinderInfo info = {
  .table = &bb_wash_test_table,
  .fill = fill,
  .title = "Tests",
  .search_title = "Search tests",
  .search_hint = "Words",
  .count = count,
  .by_recipe = TRUE,
};

static void
chosen_cb (Fixture *self)
{
  self->n_chosen++;
}

static gboolean
is_mapped (gpointer data)
{
  return gtk_widget_get_mapped (data);
}

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  GtkWidget *filter = NULL;

  (void) data;
  self->session = helper_open_crowd ();
  self->finder = g_object_new (BB_TYPE_FINDER, NULL);
  self->window = gtk_window_new ();
  g_signal_connect_swapped (self->finder, "chosen", G_CALLBACK (chosen_cb), self);
  bb_finder_start (self->finder, self->session, &info, "tests.add", "Add a test");
  bb_finder_refresh (self->finder);
  self->search_entry = helper_find_widget (GTK_WIDGET (self->finder), GTK_TYPE_SEARCH_ENTRY);
  /* The filter above the list has a list of its own. */
  filter = helper_find_widget (GTK_WIDGET (self->finder), BB_TYPE_RECIPE_FILTER);
  self->list_view = helper_find_widget (gtk_widget_get_next_sibling (filter), GTK_TYPE_LIST_VIEW);
  gtk_window_set_default_size (GTK_WINDOW (self->window), 320, 800);
  gtk_window_set_child (GTK_WINDOW (self->window), GTK_WIDGET (self->finder));
  gtk_window_present (GTK_WINDOW (self->window));
  helper_wait_until (is_mapped, self->list_view);
  helper_wait_drawn (self->window);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  g_object_add_weak_pointer (G_OBJECT (self->finder), (gpointer *) &self->finder);
  gtk_window_destroy (GTK_WINDOW (self->window));
  helper_wait_idle ();
  g_assert_null (self->finder);
  helper_end_session (self->session);
}

static BbLineList *
get_lines (Fixture *self)
{
  GtkSelectionModel *selection = gtk_list_view_get_model (self->list_view);

  return BB_LINE_LIST (gtk_single_selection_get_model (GTK_SINGLE_SELECTION (selection)));
}

static void
expect_few_pages (Fixture *self)
{
  const guint n = bb_line_list_get_n_loaded (get_lines (self));

  g_test_message ("%u pages", n);
  g_assert_cmpuint (n, >, 0);
  g_assert_cmpuint (n, <=, FEW_PAGES);
}

static GtkAdjustment *
get_adjustment (Fixture *self)
{
  return gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (self->list_view));
}

/* The position of the line that stands at the top of the view, by its share of the whole. */
static double
get_top (Fixture *self)
{
  GtkAdjustment *adjustment = get_adjustment (self);

  return gtk_adjustment_get_value (adjustment) / gtk_adjustment_get_upper (adjustment) *
         bb_finder_get_n_found (self->finder);
}

static void
scroll_to_share (Fixture *self,
                 double   share)
{
  GtkAdjustment *adjustment = get_adjustment (self);

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment) * share);
  helper_wait_drawn (self->window);
}

/* Prints what the list took of the processor, drawing aside: a figure for people, as it drifts with the machine. */
static void
type_text (Fixture    *self,
           const char *text)
{
  const clock_t start = clock ();

  gtk_editable_set_text (self->search_entry, text);
  g_test_message ("“%s”: %u found in %.1f ms", text, bb_finder_get_n_found (self->finder),
                  (double) (clock () - start) * 1000 / CLOCKS_PER_SEC);
  helper_wait_drawn (self->window);
}

static void
test_shows_at_once (Fixture       *self,
                    gconstpointer  data)
{
  (void) data;
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, 1000 + MANY);
  g_assert_cmpuint (self->n_chosen, ==, 1);
  g_assert_false (bb_finder_is_narrowed (self->finder));
  expect_few_pages (self);
}

static void
test_scrolls (Fixture       *self,
              gconstpointer  data)
{
  (void) data;
  for (guint i = 1; i <= 4; i++)
    {
      bb_finder_refresh (self->finder);
      helper_wait_drawn (self->window);
      scroll_to_share (self, i / 4.0);
      g_assert_cmpfloat_with_epsilon (get_top (self), MIN (MANY * i / 4.0, MANY - 10), 40);
      expect_few_pages (self);
    }
}

static void
test_reload_keeps_place (Fixture       *self,
                         gconstpointer  data)
{
  const gint64 chosen = 1000 + MANY / 2;
  double top = 0;

  (void) data;
  bb_finder_show (self->finder, chosen);
  helper_wait_drawn (self->window);
  top = get_top (self);
  g_assert_cmpfloat_with_epsilon (top, MANY / 2.0, 40);

  self->n_chosen = 0;
  bb_finder_refresh (self->finder);
  g_assert_cmpuint (self->n_chosen, ==, 1);
  helper_wait_drawn (self->window);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, chosen);
  g_assert_cmpfloat_with_epsilon (get_top (self), top, 2);
  expect_few_pages (self);
}

static void
test_search_and_back (Fixture       *self,
                      gconstpointer  data)
{
  static const char * const words[] = { "a", "am", "amb", "amber", "amber W", "amber W-1" };
  const gint64 looked_at = 1000 + 321;
  guint n = MANY;

  (void) data;
  bb_finder_show (self->finder, looked_at);
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      type_text (self, words[i]);
      g_assert_cmpuint (bb_finder_get_n_found (self->finder), <=, n);
      n = bb_finder_get_n_found (self->finder);
      g_assert_cmpuint (n, >, 0);
      /* The first that is found is shown. */
      g_assert_cmpuint (bb_line_list_find (get_lines (self), bb_finder_get_chosen (self->finder)), ==, 0);
      g_assert_true (bb_finder_is_narrowed (self->finder));
      expect_few_pages (self);
    }

  type_text (self, "nothing of the kind");
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, 0);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, 0);
  type_text (self, "");
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), !=, 0);

  /* Whatever is searched for, what has to be shown is. */
  type_text (self, "amber");
  bb_finder_show (self->finder, looked_at);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, looked_at);
  g_assert_cmpstr (gtk_editable_get_text (self->search_entry), ==, "");
}

static gboolean
knows_change (gpointer data)
{
  return *(gboolean *) data;
}

static void
changed_cb (BbSession *session,
            gboolean  *changed)
{
  (void) session;
  *changed = TRUE;
}

static void
wait_for_change (Fixture *self)
{
  gboolean changed = FALSE;
  const gulong handler = g_signal_connect (self->session, "changed", G_CALLBACK (changed_cb), &changed);

  helper_wait_until (knows_change, &changed);
  g_signal_handler_disconnect (self->session, handler);
  bb_finder_refresh (self->finder);
  helper_wait_drawn (self->window);
}

static void
test_withdrawal_and_undo (Fixture       *self,
                          gconstpointer  data)
{
  const gint64 gone = 1000 + MANY / 2;

  (void) data;
  bb_finder_show (self->finder, gone);
  bb_session_withdraw (self->session, &bb_wash_test_table, gone, "W");
  wait_for_change (self);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY - 1);
  /* What has come into its place is the next older one. */
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, gone - 1);
  expect_few_pages (self);

  bb_session_restore (self->session, &bb_wash_test_table, gone);
  wait_for_change (self);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, gone - 1);
  g_assert_cmpuint (bb_line_list_find (get_lines (self), gone), !=, G_MAXUINT);
}

/* What is withdrawn is shown, first and marked, to whoever asks for it or is led to it. */
static void
test_shows_withdrawn (Fixture       *self,
                      gconstpointer  data)
{
  GtkWidget *toggle = helper_find_widget (GTK_WIDGET (self->finder), BB_TYPE_WITHDRAWN_TOGGLE);
  GtkCheckButton *button = helper_find_widget (toggle, GTK_TYPE_CHECK_BUTTON);
  const gint64 gone = 1000 + MANY / 2;

  (void) data;
  g_assert_false (gtk_widget_get_visible (toggle));
  bb_session_withdraw (self->session, &bb_wash_test_table, gone, "W");
  wait_for_change (self);
  g_assert_true (gtk_widget_get_visible (toggle));
  g_assert_cmpstr (gtk_check_button_get_label (button), ==, "Show 1 withdrawn");

  gtk_check_button_set_active (button, TRUE);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, gone);
  g_assert_cmpuint (bb_line_list_find (get_lines (self), gone), ==, 0);
  g_assert_nonnull (((const BbWashLine *) bb_line_list_load (get_lines (self), 0))->withdrawn_at);
  g_assert_null (((const BbWashLine *) bb_line_list_load (get_lines (self), 1))->withdrawn_at);

  gtk_check_button_set_active (button, FALSE);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY - 1);
  bb_finder_show (self->finder, gone);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, gone);
  g_assert_true (gtk_check_button_get_active (button));
}

static void
test_of_one_recipe (Fixture       *self,
                    gconstpointer  data)
{
  GtkWidget *filter = helper_find_widget (GTK_WIDGET (self->finder), BB_TYPE_RECIPE_FILTER);
  GtkWidget *picker = helper_find_widget (filter, BB_TYPE_RECIPE_PICKER);
  const gint64 recipe = 5;
  const gint64 of_recipe = 1000 + 4;
  const gint64 of_another = 1000 + 5;

  (void) data;
  g_assert_true (gtk_widget_get_visible (filter));
  g_signal_emit_by_name (picker, "picked", recipe);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY / 200);
  g_assert_true (bb_finder_is_narrowed (self->finder));
  type_text (self, "W-4");
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), <, MANY / 200);

  /* The recipe stays where what has to be shown is one of its tests, and goes where it is not. */
  bb_finder_show (self->finder, of_recipe);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, of_recipe);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY / 200);
  bb_finder_show (self->finder, of_another);
  g_assert_cmpint (bb_finder_get_chosen (self->finder), ==, of_another);
  g_assert_cmpuint (bb_finder_get_n_found (self->finder), ==, MANY);
  g_assert_false (bb_finder_is_narrowed (self->finder));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/finder/shows-at-once", test_shows_at_once);
  ADD ("/finder/scrolls", test_scrolls);
  ADD ("/finder/reload-keeps-place", test_reload_keeps_place);
  ADD ("/finder/search-and-back", test_search_and_back);
  ADD ("/finder/withdrawal-and-undo", test_withdrawal_and_undo);
  ADD ("/finder/shows-withdrawn", test_shows_withdrawn);
  ADD ("/finder/of-one-recipe", test_of_one_recipe);
#undef ADD

  return g_test_run ();
}
