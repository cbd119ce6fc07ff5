/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-grade.h"
#include "bb-quick-buttons.h"
#include "bb-quick.h"
#include "bb-remark.h"
#include "store-helpers.h"
#include "bb-wash.h"

/* Values that are entered by one key. */

static const BbField *
find (const char *name)
{
  return bb_table_find_field (&bb_reading_table, name);
}

/* A whole grade has its own number as its key, a half step the lower number and five more. */
static void
test_grade_keys (void)
{
  for (BbGrade grade = BB_GRADE_5; grade <= BB_GRADE_1; grade++)
    {
      const double number = bb_grade_to_number (grade);
      const guint key = (guint) (number == floor (number) ? number : floor (number) + 5);

      g_assert_cmpint (bb_quick_find (find ("change"), GDK_KEY_0 + key), ==, (int) grade);
      g_assert_cmpint (bb_quick_find (find ("stain"), GDK_KEY_KP_0 + key), ==, (int) grade);
    }
  g_assert_cmpint (bb_quick_find (find ("change"), GDK_KEY_0), ==, -1);
  g_assert_cmpint (bb_quick_find (find ("change"), GDK_KEY_a), ==, -1);
  g_assert_cmpint (bb_quick_find (find ("change"), GDK_KEY_F1), ==, -1);
}

static void
test_other_keys (void)
{
  g_autoptr (BbReading) reading = bb_reading_new ();

  g_assert_cmpint (bb_quick_find (find ("lifting"), GDK_KEY_3), ==, BB_FAULT_MARKED);
  g_assert_cmpint (bb_quick_find (find ("lifting"), GDK_KEY_4), ==, -1);
  g_assert_cmpuint (bb_quick_get_n (find ("hand")), ==, 5);
  g_assert_cmpint (bb_quick_get (find ("hand"), reading), ==, -1);
  bb_quick_set (find ("hand"), reading, bb_quick_find (find ("hand"), GDK_KEY_4));
  g_assert_cmpint (reading->hand, ==, 4);
  g_assert_cmpint (bb_quick_get (find ("hand"), reading), ==, 3);
  bb_quick_set (find ("hand"), reading, -1);
  g_assert_cmpint (reading->hand, ==, BB_INTEGER_NONE);
}

static void
count_cb (guint *n)
{
  (*n)++;
}

static GtkToggleButton *
get_button (BbQuickButtons *buttons,
            guint           index)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (buttons));

  while (index-- > 0)
    child = gtk_widget_get_next_sibling (child);

  return GTK_TOGGLE_BUTTON (child);
}

/* One at most is chosen, one can be reached by Tab, and what has to be given is not let go of. */
static void
test_buttons (gconstpointer data)
{
  const gboolean required = GPOINTER_TO_INT (data);
  g_autoptr (GtkWidget) widget = g_object_ref_sink (bb_quick_buttons_new (find (required ? "change" : "stain")));
  BbQuickButtons *buttons = BB_QUICK_BUTTONS (widget);
  guint n = 0;

  g_signal_connect_swapped (buttons, "changed", G_CALLBACK (count_cb), &n);
  g_assert_cmpint (bb_quick_buttons_get_chosen (buttons), ==, -1);
  g_assert_true (gtk_widget_get_focusable (GTK_WIDGET (get_button (buttons, 0))));
  bb_quick_buttons_set_chosen (buttons, BB_GRADE_4);
  g_assert_cmpuint (n, ==, 0);
  gtk_toggle_button_set_active (get_button (buttons, BB_GRADE_3), TRUE);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (bb_quick_buttons_get_chosen (buttons), ==, BB_GRADE_3);
  g_assert_false (gtk_toggle_button_get_active (get_button (buttons, BB_GRADE_4)));
  g_assert_true (gtk_widget_get_focusable (GTK_WIDGET (get_button (buttons, BB_GRADE_3))));
  g_assert_false (gtk_widget_get_focusable (GTK_WIDGET (get_button (buttons, 0))));
  gtk_toggle_button_set_active (get_button (buttons, BB_GRADE_3), FALSE);
  g_assert_cmpint (bb_quick_buttons_get_chosen (buttons), ==, required ? (int) BB_GRADE_3 : -1);
}

static void
test_remark (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbReading) reading = bb_reading_new ();
  g_autoptr (BbWashPlan) plan = helper_make_wash_plan ("6330-4N-F");
  g_autofree char *none = NULL;
  g_autofree char *remark = NULL;
  g_autofree char *of_plan = NULL;
  BbBook *book = helper_create (path);
  BbSession *session = NULL;

  plan->standard = BB_WASH_ISO_6330;
  plan->publication = g_strdup ("ISO 6330:2021");
  plan->procedure = g_strdup ("4N");
  plan->origin = BB_PLAN_ORIGIN_MEMORY;
  helper_save (book, &bb_wash_plan_table, plan);
  helper_close (book);
  session = helper_open_session (path);

  reading->change = BB_GRADE_4;
  reading->change_measured = BB_GRADE_3_4;
  none = bb_remark_dup (session, &bb_reading_table, reading);
  g_assert_null (none);
  reading->change_measured = BB_GRADE_3;
  remark = bb_remark_dup (session, &bb_reading_table, reading);
  g_assert_nonnull (strstr (remark, "4 by eye and 3 measured"));
  g_assert_null (bb_remark_dup (session, &bb_wash_test_table, reading));

  /* What a published method says is closed until somebody says that they have it in hand. */
  of_plan = bb_remark_dup (session, &bb_wash_plan_table, plan);
  g_assert_nonnull (strstr (of_plan, "checked against the standard"));
  plan->origin = BB_PLAN_ORIGIN_STANDARD;
  g_assert_null (bb_remark_dup (session, &bb_wash_plan_table, plan));
  helper_end_session (session);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/quick/grade-keys", test_grade_keys);
  g_test_add_func ("/quick/other-keys", test_other_keys);
  g_test_add_data_func ("/quick/buttons-required", GINT_TO_POINTER (TRUE), test_buttons);
  g_test_add_data_func ("/quick/buttons-optional", GINT_TO_POINTER (FALSE), test_buttons);
  g_test_add_func ("/quick/remark", test_remark);

  return g_test_run ();
}
