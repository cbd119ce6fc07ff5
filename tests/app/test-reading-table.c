/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-add-button.h"
#include "bb-grade.h"
#include "bb-quick-cell.h"
#include "bb-reading-table.h"
#include "store-helpers.h"

/* The table in which all that is due is graded, on a book with one specimen that waits for it. */

typedef struct {
  BbSession *session;
  gint64 specimen;
  gint64 person;
  GtkWidget *table;
} Fixture;

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  (void) data;
  self->specimen = shop->wash_test->id;
  self->person = shop->person->id;
  helper_close (book);
  self->session = helper_open_session (path);
}

static gboolean
has_cells (gpointer table)
{
  return helper_find_widget (table, BB_TYPE_QUICK_CELL) != NULL;
}

static void
open_table (Fixture *self)
{
  self->table = bb_reading_table_new (NULL, self->session);
  gtk_window_present (GTK_WINDOW (self->table));
  helper_wait_until (has_cells, self->table);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  helper_wait_idle ();
  helper_end_session (self->session);
}

/* Cells stand beside each other in the order of the record's fields. */
static BbQuickCell *
find_cell (Fixture    *self,
           const char *name)
{
  GtkWidget *cell = helper_find_widget (self->table, BB_TYPE_QUICK_CELL);

  while (cell != NULL && !g_str_equal (bb_quick_cell_get_field (BB_QUICK_CELL (cell))->name, name))
    cell = gtk_widget_get_next_sibling (cell);
  g_assert_nonnull (cell);

  return BB_QUICK_CELL (cell);
}

static void
enter (Fixture    *self,
       const char *name,
       int         value)
{
  BbQuickCell *cell = find_cell (self, name);

  bb_quick_cell_set_chosen (cell, value);
  g_signal_emit_by_name (cell, "changed");
}

static gboolean
is_faulty (Fixture    *self,
           const char *name)
{
  return gtk_widget_has_css_class (GTK_WIDGET (find_cell (self, name)), "faulty");
}

static guint
count_readings (Fixture *self)
{
  g_autoptr (GPtrArray) readings = bb_book_load_referring (bb_session_get_book (self->session), &bb_reading_table,
                                                           &bb_wash_test_table, self->specimen, NULL);

  return readings->len;
}

static gint64
get_last_person (Fixture *self)
{
  g_autoptr (GPtrArray) readings = bb_book_load_referring (bb_session_get_book (self->session), &bb_reading_table,
                                                           &bb_wash_test_table, self->specimen, NULL);

  return ((const BbReading *) readings->pdata[readings->len - 1])->person;
}

static gboolean
has_two_readings (gpointer data)
{
  return count_readings (data) == 2;
}

static void
test_saves_what_is_whole (Fixture       *self,
                          gconstpointer  data)
{
  (void) data;
  open_table (self);
  g_assert_cmpuint (count_readings (self), ==, 1);
  enter (self, "stain", BB_GRADE_5);
  gtk_widget_activate_action (self->table, "table.save", NULL);
  g_assert_true (is_faulty (self, "change"));
  g_assert_false (is_faulty (self, "stain"));
  enter (self, "change", BB_GRADE_4_5);
  g_assert_false (is_faulty (self, "change"));
  /* Nobody has looked for cracks yet. */
  gtk_widget_activate_action (self->table, "table.save", NULL);
  g_assert_true (is_faulty (self, "crack"));
  g_assert_cmpuint (count_readings (self), ==, 1);
  enter (self, "crack", BB_CRACK_NONE);
  /* Nobody has said who grades. */
  bb_session_set_person (self->session, 0);
  gtk_widget_activate_action (self->table, "table.save", NULL);
  helper_wait_idle ();
  g_assert_cmpuint (count_readings (self), ==, 1);
  bb_session_set_person (self->session, self->person);
  gtk_widget_activate_action (self->table, "table.save", NULL);
  helper_wait_until (has_two_readings, self);
  g_assert_cmpint (get_last_person (self), ==, self->person);
}

static void
test_keeps_what_is_entered (Fixture       *self,
                            gconstpointer  data)
{
  (void) data;
  open_table (self);
  enter (self, "stain", BB_GRADE_3);
  /* As the whole window does where it goes away. */
  gtk_window_destroy (GTK_WINDOW (self->table));
  open_table (self);
  g_assert_cmpint (bb_quick_cell_get_chosen (find_cell (self, "stain")), ==, BB_GRADE_3);
  g_assert_cmpint (bb_quick_cell_get_chosen (find_cell (self, "change")), ==, -1);
  /* A person gives it up. */
  gtk_window_close (GTK_WINDOW (self->table));
  open_table (self);
  g_assert_cmpint (bb_quick_cell_get_chosen (find_cell (self, "stain")), ==, -1);
  gtk_window_destroy (GTK_WINDOW (self->table));
}

static gboolean
names_person (gpointer data)
{
  const Fixture *self = data;

  return bb_session_get_person (self->session) == self->person;
}

/* A shop that has named nobody is told to, here, and goes on from there. */
static void
test_names_somebody (Fixture       *self,
                     gconstpointer  data)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbPerson) person = helper_make_person ("NEW");
  GtkWidget *add = NULL;

  (void) data;
  bb_session_set_person (self->session, 0);
  g_assert_true (bb_book_withdraw (book, &bb_person_table, self->person, NULL));
  open_table (self);
  enter (self, "change", BB_GRADE_4_5);
  enter (self, "crack", BB_CRACK_NONE);
  gtk_widget_activate_action (self->table, "table.save", NULL);
  helper_wait_idle ();
  g_assert_cmpuint (count_readings (self), ==, 1);
  add = helper_find_widget (self->table, BB_TYPE_ADD_BUTTON);
  g_assert_true (gtk_widget_get_visible (add));

  g_assert_true (bb_book_save (book, &bb_person_table, person, NULL));
  self->person = person->id;
  g_signal_emit_by_name (add, "added", person->id);
  helper_wait_until (names_person, self);
  g_assert_false (gtk_widget_get_visible (add));
  gtk_widget_activate_action (self->table, "table.save", NULL);
  helper_wait_until (has_two_readings, self);
  g_assert_cmpint (get_last_person (self), ==, person->id);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/reading-table/saves-what-is-whole", test_saves_what_is_whole);
  ADD ("/reading-table/keeps-what-is-entered", test_keeps_what_is_entered);
  ADD ("/reading-table/names-somebody", test_names_somebody);
#undef ADD

  return g_test_run ();
}
