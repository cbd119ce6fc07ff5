/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-blanks-page.h"
#include "bb-editor.h"
#include "bb-form.h"
#include "bb-lines-view.h"
#include "bb-nearest-row.h"
#include "bb-nearest-view.h"
#include "bb-recall-filter.h"
#include "bb-recall-pane.h"
#include "bb-recipes-page.h"
#include "bb-tag.h"
#include "store-helpers.h"

/* The page of recipes: one search over recipes and jobs, what it is narrowed by, and what lies near to a blank. */

/* The shop's proven recipe is on its tee; nobody has printed @wool, a sweater that comes in black. */
typedef struct {
  BbSession *session;
  GtkWindow *window;
  BbPage *page;
  BbRecallPane *pane;
  GtkEditable *search_entry;
  gint64 recipe;
  gint64 job;
  gint64 specimen;
  gint64 wool;
  gint64 black;
  char *path;
  char *shown_page;
  gint64 shown;
} Scene;

static void
fill_book (Scene  *scene,
           BbBook *book)
{
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbBlank) blank = helper_make_blank ("WOOL-1", "Fjord sweater");
  g_autoptr (BbColourway) colourway = NULL;
  g_autoptr (BbWashTest) specimen = NULL;

  helper_fill_jobs (book, shop);
  helper_prove (book, shop->revision->id);
  g_array_index (blank->composition, BbFibreShare, 1).fibre = BB_FIBRE_WOOL;
  helper_save (book, &bb_blank_table, blank);
  colourway = helper_make_colourway ("WOOL-1-BLACK", blank->id, "Black");
  helper_save (book, &bb_colourway_table, colourway);
  specimen = helper_make_wash_test (shop->job->code, shop->revision->id);
  helper_save (book, &bb_wash_test_table, specimen);
  scene->recipe = shop->recipe->id;
  scene->job = shop->job->id;
  scene->specimen = specimen->id;
  scene->wool = blank->id;
  scene->black = colourway->id;
}

static void
show_cb (Scene      *scene,
         const char *page,
         gint64      id)
{
  g_free (scene->shown_page);
  scene->shown_page = g_strdup (page);
  scene->shown = id;
}

static void
open_window (Scene *scene)
{
  scene->session = helper_open_session (scene->path);
  g_signal_connect_swapped (scene->session, "show", G_CALLBACK (show_cb), scene);
  scene->window = GTK_WINDOW (gtk_window_new ());
  scene->page = g_object_new (BB_TYPE_RECIPES_PAGE, NULL);
  gtk_window_set_child (scene->window, GTK_WIDGET (scene->page));
  gtk_window_set_default_size (scene->window, 1000, 700);
  gtk_window_present (scene->window);
  bb_page_set_session (scene->page, scene->session);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  scene->pane = helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_RECALL_PANE);
  scene->search_entry = helper_find_widget (GTK_WIDGET (scene->pane), GTK_TYPE_SEARCH_ENTRY);
}

static void
close_window (Scene *scene)
{
  bb_session_close (scene->session);
  gtk_window_destroy (scene->window);
  helper_finalize (scene->session);
}

static void
set_up (Scene         *scene,
        gconstpointer  data)
{
  BbBook *book = NULL;

  (void) data;
  scene->path = helper_new_path ();
  book = helper_create (scene->path);
  fill_book (scene, book);
  helper_close (book);
  open_window (scene);
}

static void
tear_down (Scene         *scene,
           gconstpointer  data)
{
  (void) data;
  close_window (scene);
  g_free (scene->shown_page);
  g_free (scene->path);
}

static void
expect (Scene      *scene,
        const char *text,
        guint       n_recipes,
        guint       n_jobs)
{
  g_test_message ("%s", text);
  gtk_editable_set_text (scene->search_entry, text);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  g_assert_cmpuint (bb_recall_pane_get_n_found (scene->pane), ==, n_recipes);
  g_assert_cmpuint (bb_recall_pane_get_n_jobs (scene->pane), ==, n_jobs);
}

static gboolean
is_shown (GtkWidget  *within,
          const char *text)
{
  if (GTK_IS_LABEL (within) && gtk_widget_get_mapped (within) &&
      g_str_equal (gtk_label_get_text (GTK_LABEL (within)), text))
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_shown (child, text))
      return TRUE;

  return FALSE;
}

static void
expect_shown (Scene      *scene,
              const char *text,
              gboolean    shown)
{
  g_test_message ("“%s”", text);
  g_assert_cmpint (is_shown (GTK_WIDGET (scene->page), text), ==, shown);
}

static void
show_for_cb (Scene         *scene,
             const char    *page,
             const BbTable *table,
             gint64         id)
{
  g_assert_true (table == &bb_lot_table || table == &bb_revision_table);
  show_cb (scene, page, id);
}

/* As a scanner does it: the whole text, then Enter. */
static void
scan (Scene      *scene,
      const char *text)
{
  g_test_message ("%s", text);
  g_clear_pointer (&scene->shown_page, g_free);
  scene->shown = 0;
  gtk_editable_set_text (scene->search_entry, text);
  g_signal_emit_by_name (scene->search_entry, "activate");
  helper_wait_drawn (GTK_WIDGET (scene->page));
}

static void
expect_opened (Scene         *scene,
               BbTagKind      kind,
               const BbTable *table,
               const char    *page)
{
  g_autoptr (GPtrArray) records = bb_book_load_all (bb_session_get_book (scene->session), table, TRUE, NULL);
  gconstpointer record = records->pdata[0];
  g_autofree char *tag = bb_tag_to_text (kind, bb_field_get_text (bb_table_find_field (table, "code"), record));

  scan (scene, tag);
  g_assert_cmpstr (scene->shown_page, ==, page);
  g_assert_cmpint (scene->shown, ==, bb_record_get_key (table, record));
}

/* Each label leads to the page where that very thing stands; a label of another book is said to be none of this. */
static void
test_labels (Scene         *scene,
             gconstpointer  data)
{
  (void) data;
  g_signal_connect_swapped (scene->session, "show-for", G_CALLBACK (show_for_cb), scene);
  expect_opened (scene, BB_TAG_JOB, &bb_job_table, "jobs");
  expect_opened (scene, BB_TAG_RECIPE, &bb_recipe_table, "recipes");
  expect_opened (scene, BB_TAG_RECIPE, &bb_revision_table, "recipes");
  expect_opened (scene, BB_TAG_LOT, &bb_lot_table, "supplies");
  scan (scene, "LOT OF-ANOTHER-BOOK");
  g_assert_null (scene->shown_page);
  scan (scene, "navy");
  g_assert_null (scene->shown_page);
}

/* Which of both lists is seen is what was found, unless both were. */
static void
test_search (Scene         *scene,
             gconstpointer  data)
{
  GtkWidget *jobs = NULL;

  (void) data;
  expect (scene, "", 1, 1);
  expect (scene, "navy", 1, 1);
  expect_shown (scene, "Dark tees", TRUE);
  expect (scene, "heron", 0, 1);
  expect_shown (scene, "Heron Street Choir", TRUE);
  expect_shown (scene, "Only Jobs Found", TRUE);
  jobs = gtk_widget_get_next_sibling (helper_find_widget (GTK_WIDGET (scene->pane), BB_TYPE_LINES_VIEW));
  gtk_widget_activate_action (helper_find_widget (jobs, GTK_TYPE_LIST_VIEW), "list.activate-item", "u", 0);
  g_assert_cmpstr (scene->shown_page, ==, "jobs");
  g_assert_cmpint (scene->shown, ==, scene->job);

  expect (scene, "heorn", 0, 1);
  expect_shown (scene, "Showing “heron” for “heorn”.", TRUE);
  expect (scene, "dark", 1, 1);
  expect_shown (scene, "Showing “heron” for “heorn”.", FALSE);
  expect (scene, "zzzz", 0, 0);
  expect_shown (scene, "No Recipe Found", TRUE);
  bb_page_show_record (scene->page, scene->recipe);
  g_assert_cmpint (bb_recall_pane_get_chosen (scene->pane), ==, scene->recipe);
  g_assert_cmpstr (bb_recall_pane_get_text (scene->pane), ==, "");
}

static gboolean
is_button (GtkWidget  *widget,
           const char *label)
{
  GtkWidget *child = GTK_IS_BUTTON (widget) ? gtk_button_get_child (GTK_BUTTON (widget)) : NULL;

  return GTK_IS_LABEL (child) && g_str_equal (gtk_label_get_text (GTK_LABEL (child)), label);
}

static GtkWidget *
find_button (GtkWidget  *within,
             const char *label)
{
  GtkWidget *found = NULL;

  if (is_button (within, label))
    return within;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_button (child, label);

  return found;
}

/* As keys and assistive technologies press it. */
static void
press (Scene      *scene,
       const char *label)
{
  GtkWidget *button = find_button (GTK_WIDGET (scene->pane), label);

  g_test_message ("“%s”", label);
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  helper_wait_drawn (GTK_WIDGET (scene->page));
}

/* Where both are found, a person sees that list which is asked for, and still does with another word. */
static void
test_switch (Scene         *scene,
             gconstpointer  data)
{
  (void) data;
  expect_shown (scene, "Heron Street Choir", FALSE);
  press (scene, "Jobs: 1");
  expect_shown (scene, "Heron Street Choir", TRUE);
  expect (scene, "navy", 1, 1);
  expect_shown (scene, "Heron Street Choir", TRUE);
  press (scene, "Recipes: 1");
  expect_shown (scene, "Heron Street Choir", FALSE);
  press (scene, "Jobs: 1");
  expect_shown (scene, "Heron Street Choir", TRUE);
}

/* A number that a job and a specimen share leads to both; Enter opens the first, or the only one. */
static void
test_shared_number (Scene         *scene,
                    gconstpointer  data)
{
  (void) data;
  expect (scene, "2503-0", 0, 1);
  expect_shown (scene, "Specimen 2503-0, on the Wash Log", FALSE);
  scan (scene, "2503-01");
  g_assert_cmpstr (scene->shown_page, ==, "jobs");
  g_assert_cmpint (scene->shown, ==, scene->job);
  expect_shown (scene, "Heron Street Choir", TRUE);
  press (scene, "Specimen 2503-01, on the Wash Log");
  g_assert_cmpstr (scene->shown_page, ==, "wash");
  g_assert_cmpint (scene->shown, ==, scene->specimen);
  scan (scene, "heron");
  g_assert_cmpstr (scene->shown_page, ==, "jobs");
  g_assert_cmpint (scene->shown, ==, scene->job);
  expect_shown (scene, "Specimen 2503-01, on the Wash Log", FALSE);
}

static void
narrow_by (Scene      *scene,
           const char *field,
           const char *value)
{
  GtkWidget *filter = helper_find_widget (GTK_WIDGET (scene->pane), BB_TYPE_RECALL_FILTER);
  BbForm *form = helper_find_widget (filter, BB_TYPE_FORM);
  GVariantBuilder state;
  g_autoptr (GVariant) filled = NULL;

  g_variant_builder_init (&state, G_VARIANT_TYPE ("a{ss}"));
  g_variant_builder_add (&state, "{ss}", field, value);
  filled = g_variant_ref_sink (g_variant_builder_end (&state));
  bb_form_load_state (form, filled);
  g_signal_emit_by_name (form, "changed");
  helper_wait_drawn (GTK_WIDGET (scene->page));
}

static void
test_filters (Scene         *scene,
              gconstpointer  data)
{
  GtkWidget *filter = helper_find_widget (GTK_WIDGET (scene->pane), BB_TYPE_RECALL_FILTER);
  GtkWidget *popover = helper_find_widget (filter, GTK_TYPE_POPOVER);
  g_autofree char *wool = g_strdup_printf ("%d", BB_FIBRE_WOOL);
  g_autofree char *cotton = g_strdup_printf ("%d", BB_FIBRE_COTTON);

  (void) data;
  gtk_menu_button_popup (helper_find_widget (filter, GTK_TYPE_MENU_BUTTON));
  helper_wait_drawn (GTK_WIDGET (scene->page));
  narrow_by (scene, "fibre", wool);
  expect (scene, "", 0, 0);
  expect_shown (scene, "Fibre: Wool", TRUE);
  g_assert_true (bb_recall_pane_is_narrowed (scene->pane));
  narrow_by (scene, "fibre", cotton);
  expect (scene, "", 1, 1);

  /* What makes no sense, or is half typed, narrows by nothing else than before. */
  narrow_by (scene, "srgb", "#1b2a");
  expect_shown (scene, "Fibre: Cotton", TRUE);
  narrow_by (scene, "srgb", "#1b2a49");
  expect (scene, "", 1, 1);
  narrow_by (scene, "srgb", "#f0f0f0");
  expect (scene, "", 0, 0);

  /* A page that comes back is as it was left; a recipe that has to be shown is. */
  bb_page_show_record (scene->page, 0);
  g_assert_true (bb_recall_pane_is_narrowed (scene->pane));
  gtk_popover_popdown (GTK_POPOVER (popover));
  bb_page_show_record (scene->page, scene->recipe);
  g_assert_cmpint (bb_recall_pane_get_chosen (scene->pane), ==, scene->recipe);
  g_assert_false (bb_recall_pane_is_narrowed (scene->pane));
}

static gboolean
has_rows (gpointer data)
{
  BbNearestView *view = helper_find_widget (data, BB_TYPE_NEAREST_VIEW);

  return view != NULL && helper_find_widget (GTK_WIDGET (view), BB_TYPE_NEAREST_ROW) != NULL;
}

static void
activate_nearest (Scene      *scene,
                  const char *action)
{
  gtk_widget_activate_action (helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_NEAREST_VIEW), action, NULL);
}

/* Looking for what nobody has printed shows what is near to it, by itself; so does being asked for a colour of it. */
static void
test_nearest (Scene         *scene,
              gconstpointer  data)
{
  const char *reasons = "60 % cotton, 40 % polyester instead of 60 % cotton, 40 % wool; proven on 3 specimens";

  (void) data;
  expect (scene, "fjord", 0, 0);
  helper_wait_until (has_rows, scene->page);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  expect_shown (scene, "Nearest", TRUE);
  expect_shown (scene, "For This Garment", FALSE);
  expect_shown (scene, reasons, TRUE);
  expect (scene, "", 1, 1);
  expect_shown (scene, reasons, FALSE);

  bb_page_show_for (scene->page, &bb_blank_table, scene->wool);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  expect_shown (scene, reasons, TRUE);
  expect (scene, "dark", 1, 1);
  expect_shown (scene, reasons, FALSE);
  bb_page_show_for (scene->page, &bb_blank_table, scene->wool);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  expect_shown (scene, reasons, TRUE);
  activate_nearest (scene, "nearest.close");
  helper_wait_drawn (GTK_WIDGET (scene->page));
  expect_shown (scene, reasons, FALSE);
}

static gboolean
has_editor_of (gpointer data)
{
  Scene *scene = data;
  BbEditor *editor = helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_EDITOR);
  BbForm *form = helper_find_widget (GTK_WIDGET (editor), BB_TYPE_FORM);

  return form != NULL && bb_form_get_table (form) == &bb_revision_table;
}

static gboolean
has_no_form (gpointer data)
{
  Scene *scene = data;

  return !bb_editor_is_open (helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_EDITOR));
}

static void
start_from_nearest (Scene *scene)
{
  bb_page_show_for (scene->page, &bb_colourway_table, scene->black);
  helper_wait_until (has_rows, scene->page);
  activate_nearest (scene, "nearest.start");
}

static void
save_form (Scene     *scene,
           Condition  condition)
{
  gtk_widget_activate_action (helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_EDITOR), "editor.save", NULL);
  helper_wait_until (condition, scene);
}

static void
expect_proposed (Scene *scene)
{
  BbBook *book = bb_session_get_book (scene->session);
  g_autoptr (BbRecipe) recipe = bb_book_load_by_code (book, &bb_recipe_table, "WOOL-1-BLACK", NULL);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbRevision) source = bb_book_load_current (book, scene->recipe, NULL);
  g_autoptr (BbStanding) standing = NULL;

  g_assert_nonnull (recipe);
  g_assert_cmpint (recipe->blank, ==, scene->wool);
  g_assert_cmpint (recipe->colourway, ==, scene->black);
  revision = bb_book_load_current (book, recipe->id, NULL);
  g_assert_cmpstr (revision->reason, ==, "Proposed from R-1.1. Not proven on this garment.");
  g_assert_cmpint (revision->pretreat_product, ==, source->pretreat_product);
  g_assert_cmpint (revision->print_mode, ==, source->print_mode);
  /* A proposal is rounded to 5 g/m². */
  g_assert_cmpfloat_with_epsilon (revision->pretreat_laydown_g_per_m2, source->pretreat_laydown_g_per_m2, 2.5);
  standing = bb_book_load_standing (book, revision->id, NULL);
  g_assert_cmpint (standing->state, ==, BB_STATE_DRAFT);
}

/* From the nearest to a recipe of its own: a draft, of that garment, that says where it is from. */
static void
test_start (Scene         *scene,
            gconstpointer  data)
{
  (void) data;
  start_from_nearest (scene);
  save_form (scene, has_editor_of);
  save_form (scene, has_no_form);
  expect_proposed (scene);
}

/* What is proposed and not touched is there again when the window was closed, whichever of both forms was open. */
static void
test_proposal_kept (Scene         *scene,
                    gconstpointer  data)
{
  (void) data;
  start_from_nearest (scene);
  close_window (scene);
  open_window (scene);
  g_assert_false (has_no_form (scene));
  save_form (scene, has_editor_of);
  close_window (scene);
  open_window (scene);
  g_assert_true (has_editor_of (scene));
  save_form (scene, has_no_form);
  expect_proposed (scene);
  close_window (scene);
  open_window (scene);
  g_assert_true (has_no_form (scene));
}

/* The recipe is shown a moment after it is found; until then nobody edits the one that was found before. */
static void
test_edits_what_is_found (Scene         *scene,
                          gconstpointer  data)
{
  (void) data;
  gtk_editable_set_text (scene->search_entry, "Fjord");
  bb_page_edit (scene->page);
  g_assert_true (has_no_form (scene));
  gtk_editable_set_text (scene->search_entry, "");
  bb_page_edit (scene->page);
  g_assert_false (has_no_form (scene));
}

/* So it is on every page that lists the records of a table. */
static void
test_catalogue_edits_what_is_found (Scene         *scene,
                                    gconstpointer  data)
{
  GtkWidget *window = gtk_window_new ();
  BbPage *page = g_object_new (BB_TYPE_BLANKS_PAGE, NULL);
  GtkEditable *entry = NULL;
  g_autoptr (BbBlank) blank = NULL;

  (void) data;
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (page));
  gtk_window_present (GTK_WINDOW (window));
  bb_page_set_session (page, scene->session);
  helper_wait_drawn (GTK_WIDGET (page));
  entry = helper_find_widget (GTK_WIDGET (page), GTK_TYPE_SEARCH_ENTRY);
  gtk_editable_set_text (entry, "Fjord");
  helper_wait_drawn (GTK_WIDGET (page));
  gtk_editable_set_text (entry, "Bench");
  bb_page_edit (page);
  blank = bb_form_dup_record (helper_find_widget (GTK_WIDGET (page), BB_TYPE_FORM), FALSE);
  g_assert_cmpstr (blank->name, ==, "Bench tee");

  gtk_window_destroy (GTK_WINDOW (window));
}

static void
said_cb (gboolean *said)
{
  *said = TRUE;
}

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

/* Where what is near to a garment can't be read, nothing is started from what was near to the one before. */
static void
test_unreadable (Scene         *scene,
                 gconstpointer  data)
{
  sqlite3 *plain = helper_open_plain (scene->path);
  gboolean said = FALSE;
  gulong id = g_signal_connect_swapped (scene->session, "say", G_CALLBACK (said_cb), &said);

  (void) data;
  bb_page_show_for (scene->page, &bb_blank_table, scene->wool);
  helper_wait_until (has_rows, scene->page);
  g_assert_cmpint (helper_run_plain (plain, "DROP TABLE blank_composition"), ==, SQLITE_OK);
  sqlite3_close (plain);
  bb_page_show_for (scene->page, &bb_colourway_table, scene->black);
  helper_wait_until (is_true, &said);
  g_assert_false (has_rows (scene->page));
  activate_nearest (scene, "nearest.start");
  g_assert_true (has_no_form (scene));
  g_signal_handler_disconnect (scene->session, id);
}

#define ADD(path, func) g_test_add ("/recall-page/" path, Scene, NULL, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  /* A test's own folders have no data by which GTK would know the file of an icon: looked up before they are there. */
  g_content_type_get_mime_dirs ();
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();
  ADD ("edits-what-is-found", test_edits_what_is_found);
  ADD ("catalogue-edits-what-is-found", test_catalogue_edits_what_is_found);
  ADD ("labels", test_labels);
  ADD ("search", test_search);
  ADD ("switch", test_switch);
  ADD ("shared-number", test_shared_number);
  ADD ("filters", test_filters);
  ADD ("nearest", test_nearest);
  ADD ("start", test_start);
  ADD ("proposal-kept", test_proposal_kept);
  ADD ("unreadable", test_unreadable);

  return g_test_run ();
}
