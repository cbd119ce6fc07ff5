/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <stdlib.h>

#include "bb-book-private.h"
#include "sim-disk.h"
#include "store-helpers.h"

/*
 * What was acknowledged is in the book, whatever the disk does: it fails at each of its operations, once or for ever,
 * or its power is cut. That a program that is killed loses nothing is no proof of this, and is tested elsewhere.
 *
 * BLANKBOOK_CUTS asks for another number of cuts than an ordinary run has time for.
 */

#define CUTS 300
#define CONTROL_CUTS 100
#define SAVES 4

/* The whole check of a book takes longer than all the rest. */
#define WHOLE_CHECK 25

/* What is written goes from the log into the book after so many pages: often, so that a few saves have all that there
 * is in them, or not before the end. */
#define EARLY "PRAGMA wal_autocheckpoint = 10;"
#define LATE "PRAGMA wal_autocheckpoint = 10000;"

/* SQLite gets nothing of this file but its name: see sim-disk.h. */
typedef struct {
  char *path;
  GBytes *empty;
  GRand *rand;
  guint n_checks;
} Fixture;

static gboolean
save_numbered (BbBook  *book,
               guint    number,
               GError **error)
{
  g_autofree char *code = g_strdup_printf ("B-%u", number);
  g_autoptr (BbBlank) blank = helper_make_blank (code, "Tee");

  return bb_book_save (book, &bb_blank_table, blank, error);
}

static gboolean
save_two (BbBook    *book,
          gpointer   data,
          GError   **error)
{
  const guint number = GPOINTER_TO_UINT (data);

  return save_numbered (book, number, error) && save_numbered (book, number + 1, error);
}

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *contents = NULL;
  BbBook *book = NULL;
  gsize length = 0;

  (void) data;
  self->path = helper_new_path ();
  self->rand = g_rand_new_with_seed (20250314);
  /* Made on the system's own disk: a new book gets its name there. */
  book = helper_create (self->path);
  g_assert_true (save_numbered (book, 0, &error));
  helper_close (book);
  g_assert_true (g_file_get_contents (self->path, &contents, &length, NULL));
  self->empty = g_bytes_new_take (g_steal_pointer (&contents), length);
  sim_disk_install ();
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  sim_disk_remove ();
  g_rand_free (self->rand);
  g_bytes_unref (self->empty);
  g_free (self->path);
}

/* Some saves, alone and together, some of which fail; and the end of the program, which may fail too. Which records
 * were acknowledged: bit n for that of the code B-n. */
static guint
work (Fixture    *self,
      const char *settings)
{
  g_autoptr (BbBook) book = bb_book_open (self->path, NULL);
  guint acknowledged = 0;

  if (book == NULL || !bb_db_run_script (book->db, settings, NULL))
    return 0;

  for (guint i = 1; i <= SAVES; i++)
    if (save_numbered (book, i, NULL))
      acknowledged |= 1u << i;
  if (bb_book_in_transaction (book, save_two, GUINT_TO_POINTER (SAVES + 1), NULL))
    acknowledged |= 3u << (SAVES + 1);
  bb_book_close (book, NULL);

  return acknowledged;
}

static gboolean
has_record (BbBook *book,
            guint   number)
{
  g_autofree char *code = g_strdup_printf ("B-%u", number);
  g_autoptr (BbBlank) blank = bb_book_load_by_code (book, &bb_blank_table, code, NULL);

  return blank != NULL && g_str_equal (blank->name, "Tee") && blank->composition->len == 2;
}

static gboolean
is_sound (Fixture *self,
          BbBook  *book)
{
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (BbStatement) statement = NULL;

  if (self->n_checks++ % WHOLE_CHECK == 0)
    {
      findings = bb_book_check (book, NULL, NULL);
      return findings != NULL && findings->len == 0;
    }
  statement = bb_db_prepare (book->db, "PRAGMA integrity_check", NULL);

  return statement != NULL && bb_statement_step (statement, NULL) == BB_STEP_ROW &&
         g_strcmp0 (bb_statement_get_text (statement, 0), "ok") == 0;
}

/* How many of the records that were acknowledged are not there; G_MAXUINT if the book is not sound. */
static guint
count_lost (Fixture *self,
            guint    acknowledged)
{
  g_autoptr (BbBook) book = bb_book_open (self->path, NULL);
  guint n = 0;

  if (book == NULL || !is_sound (self, book))
    return G_MAXUINT;

  for (guint i = 0; i <= SAVES + 2; i++)
    if (((acknowledged | 1) & (1u << i)) != 0 && !has_record (book, i))
      n++;
  /* Two that were saved together are both there, or neither. */
  g_assert_true (has_record (book, SAVES + 1) == has_record (book, SAVES + 2));
  g_assert_true (bb_book_close (book, NULL));

  return n;
}

/* How many operations there are to fail. */
static guint
count_operations (Fixture  *self,
                  SimFault  fault)
{
  guint acknowledged = 0;

  sim_disk_restore (self->path, self->empty);
  sim_disk_set_fault (fault, 0, FALSE);
  acknowledged = work (self, EARLY);
  g_assert_cmpuint (acknowledged, ==, ((1u << (SAVES + 3)) - 1) & ~1u);

  return sim_disk_get_count ();
}

static guint
count_cuts (guint ordinary)
{
  const char *told = g_getenv ("BLANKBOOK_CUTS");

  return told != NULL ? (guint) strtoul (told, NULL, 10) : ordinary;
}

/* Whether a record was refused. */
static gboolean
fail_at (Fixture  *self,
         SimFault  fault,
         guint     at,
         gboolean  for_ever)
{
  guint acknowledged = 0;
  guint lost = 0;

  sim_disk_restore (self->path, self->empty);
  sim_disk_set_fault (fault, at, for_ever);
  acknowledged = work (self, EARLY);
  sim_disk_set_fault (SIM_FAULT_NONE, 0, FALSE);
  if (fault == SIM_FAULT_SYNC)
    sim_disk_cut_power (self->rand);
  lost = count_lost (self, acknowledged);
  if (lost != 0)
    g_error ("fault %d at %u%s: %u of %x are lost", (int) fault, at, for_ever ? " and after" : "", lost, acknowledged);

  return acknowledged != (((1u << (SAVES + 3)) - 1) & ~1u);
}

static void
test_operation_fails (Fixture       *self,
                      gconstpointer  data)
{
  const SimFault fault = (SimFault) GPOINTER_TO_INT (data);
  const guint n = count_operations (self, fault);
  guint n_refused = 0;

  for (guint at = 1; at <= n; at++)
    for (guint for_ever = 0; for_ever < 2; for_ever++)
      n_refused += fail_at (self, fault, at, for_ever != 0) ? 1 : 0;
  g_test_message ("%u operations, each once and for ever: %u times a record was refused, and none was lost", n,
                  n_refused);
  g_assert_cmpuint (n_refused, >, n / 2);
}

/* Cuts the power at some operation of each run; how many runs lost a record, or were not sound afterwards. */
static void
cut (Fixture    *self,
     const char *synchronous,
     guint       n_cuts,
     guint      *n_lost,
     guint      *n_damaged)
{
  g_autofree char *early = g_strdup_printf (EARLY "PRAGMA synchronous = %s", synchronous);
  g_autofree char *late = g_strdup_printf (LATE "PRAGMA synchronous = %s", synchronous);
  const guint n = count_operations (self, SIM_FAULT_POWER);

  *n_lost = 0;
  *n_damaged = 0;
  for (guint i = 0; i < n_cuts; i++)
    {
      guint acknowledged = 0;
      guint lost = 0;

      sim_disk_restore (self->path, self->empty);
      sim_disk_set_fault (SIM_FAULT_POWER, (guint) g_rand_int_range (self->rand, 1, (gint32) n + 1), TRUE);
      acknowledged = work (self, i % 2 == 0 ? early : late);
      sim_disk_cut_power (self->rand);
      lost = count_lost (self, acknowledged);
      *n_damaged += lost == G_MAXUINT ? 1 : 0;
      *n_lost += lost != 0 && lost != G_MAXUINT ? 1 : 0;
    }
  g_test_message ("%u cuts: %u lost records, %u damaged the book", n_cuts, *n_lost, *n_damaged);
}

static void
test_power_cut (Fixture       *self,
                gconstpointer  data)
{
  guint n_lost = 0;
  guint n_damaged = 0;

  (void) data;
  cut (self, "FULL", count_cuts (CUTS), &n_lost, &n_damaged);
  g_assert_cmpuint (n_lost, ==, 0);
  g_assert_cmpuint (n_damaged, ==, 0);
}

/* With less than the book asks for the same cuts do harm, or this test would see none. */
static void
test_power_cut_without_sync_at_commit (Fixture       *self,
                                       gconstpointer  data)
{
  guint n_lost = 0;
  guint n_damaged = 0;

  (void) data;
  cut (self, "NORMAL", count_cuts (CONTROL_CUTS), &n_lost, &n_damaged);
  g_assert_cmpuint (n_lost, >, CONTROL_CUTS / 30);
}

static void
test_power_cut_without_sync (Fixture       *self,
                             gconstpointer  data)
{
  guint n_lost = 0;
  guint n_damaged = 0;

  (void) data;
  cut (self, "OFF", count_cuts (CONTROL_CUTS), &n_lost, &n_damaged);
  g_assert_cmpuint (n_damaged, >, CONTROL_CUTS / 30);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, data, func) g_test_add (path, Fixture, GINT_TO_POINTER (data), set_up, func, tear_down)
  ADD ("/durability/operation-fails", SIM_FAULT_IO, test_operation_fails);
  ADD ("/durability/disk-is-full", SIM_FAULT_FULL, test_operation_fails);
  ADD ("/durability/write-is-cut-short", SIM_FAULT_SHORT, test_operation_fails);
  ADD ("/durability/sync-fails-and-loses", SIM_FAULT_SYNC, test_operation_fails);
  ADD ("/durability/power-cut", 0, test_power_cut);
  ADD ("/durability/power-cut-without-sync-at-commit", 0, test_power_cut_without_sync_at_commit);
  ADD ("/durability/power-cut-without-sync", 0, test_power_cut_without_sync);
#undef ADD

  return g_test_run ();
}
