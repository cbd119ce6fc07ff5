/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-add-button.h"
#include "bb-form.h"
#include "bb-grade.h"
#include "store-helpers.h"

/* The form of a reading: whoever grades says so, and what came from elsewhere without a grader stays as it is. */

typedef struct {
  BbSession *session;
  BbForm *form;
  gint64 specimen;
  gint64 person;
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
  self->form = BB_FORM (g_object_ref_sink (bb_form_new (self->session, &bb_reading_table)));
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  g_assert_finalize_object (self->form);
  helper_end_session (self->session);
}

static BbFieldRow *
find_row (Fixture    *self,
          const char *name)
{
  return bb_form_find_row (self->form, bb_table_find_field (&bb_reading_table, name));
}

static void
fill (Fixture *self,
      gint64   id,
      gint64   person)
{
  g_autoptr (BbReading) reading = helper_make_reading (self->specimen, 10);

  reading->id = id;
  reading->person = person;
  bb_form_load (self->form, reading);
}

static gboolean
is_accepted (Fixture *self)
{
  g_autoptr (BbReading) reading = bb_form_dup_record (self->form, TRUE);

  return reading != NULL;
}

static void
take_person (Fixture *self,
             gint64   person)
{
  g_autofree char *state = g_strdup_printf ("%" G_GINT64_FORMAT, person);

  bb_field_row_set_state (find_row (self, "person"), state, BB_UNITS_METRIC);
}

/* It is said at the field, and at no other. */
static void
test_asks_who_graded (Fixture       *self,
                      gconstpointer  data)
{
  (void) data;
  fill (self, BB_INTEGER_NONE, 0);
  g_assert_false (is_accepted (self));
  g_assert_true (bb_field_row_is_faulty (find_row (self, "person")));
  g_assert_false (bb_field_row_is_faulty (find_row (self, "change")));
  take_person (self, self->person);
  g_assert_true (is_accepted (self));
  g_assert_false (bb_field_row_is_faulty (find_row (self, "person")));
}

/* Nobody is told of what they have not come to yet. */
static void
test_waits_with_it (Fixture       *self,
                    gconstpointer  data)
{
  (void) data;
  fill (self, BB_INTEGER_NONE, 0);
  g_assert_null (bb_form_dup_record (self->form, FALSE));
  g_assert_false (bb_field_row_is_faulty (find_row (self, "person")));
}

/* What stands in the book without a grader can be corrected without inventing one; a grader who is named stays. */
static void
test_stored (Fixture       *self,
             gconstpointer  data)
{
  (void) data;
  fill (self, 7, 0);
  g_assert_true (is_accepted (self));
  fill (self, 7, self->person);
  g_assert_true (is_accepted (self));
  take_person (self, 0);
  g_assert_false (is_accepted (self));
}

/* A shop that has named nobody names somebody here. */
static void
test_names_somebody (Fixture       *self,
                     gconstpointer  data)
{
  g_autoptr (BbPerson) person = helper_make_person ("NEW");
  g_autoptr (BbReading) reading = NULL;
  BbBook *book = bb_session_get_book (self->session);
  GtkWidget *button = helper_find_widget (GTK_WIDGET (find_row (self, "person")), BB_TYPE_ADD_BUTTON);

  (void) data;
  fill (self, BB_INTEGER_NONE, 0);
  g_assert_nonnull (button);
  g_assert_true (bb_book_save (book, &bb_person_table, person, NULL));
  g_signal_emit_by_name (button, "added", person->id);
  reading = bb_form_dup_record (self->form, TRUE);
  g_assert_nonnull (reading);
  g_assert_cmpint (reading->person, ==, person->id);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/reading-form/asks-who-graded", test_asks_who_graded);
  ADD ("/reading-form/waits-with-it", test_waits_with_it);
  ADD ("/reading-form/stored", test_stored);
  ADD ("/reading-form/names-somebody", test_names_somebody);
#undef ADD

  return g_test_run ();
}
