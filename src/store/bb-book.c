/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <sys/stat.h>

#include "bb-clean-close.h"
#include "bb-frozen.h"
#include "bb-migrate.h"
#include "bb-search-words.h"
#include "bb-text.h"

G_DEFINE_FINAL_TYPE (BbBook, bb_book, G_TYPE_OBJECT)

static void
bb_book_finalize (GObject *object)
{
  BbBook *self = BB_BOOK (object);
  g_autoptr (GError) error = NULL;

  if (self->db != NULL && !bb_db_close (g_steal_pointer (&self->db), FALSE, &error))
    g_warning ("%s: %s", self->path, error->message);

  for (guint i = 0; i < BB_N_SEARCHES; i++)
    g_clear_pointer (&self->stale[i], g_hash_table_unref);
  g_clear_pointer (&self->words, g_hash_table_unref);
  g_clear_pointer (&self->path, g_free);

  G_OBJECT_CLASS (bb_book_parent_class)->finalize (object);
}

static void
bb_book_class_init (BbBookClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_book_finalize;
}

static void
bb_book_init (BbBook *self)
{
  self->thread = g_thread_self ();
  for (guint i = 0; i < BB_N_SEARCHES; i++)
    self->stale[i] = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->words = bb_search_words_new ();
}

/**
 * _bb_book_new:
 * @path: absolute path of a book
 * @db: (transfer full): its database, of the latest version
 * @access: what may be done with it
 *
 * Returns: (transfer full): the book, for the calling thread
 */
BbBook *
_bb_book_new (const char *path,
              BbDb       *db,
              BbAccess    access)
{
  BbBook *self = g_object_new (BB_TYPE_BOOK, NULL);

  self->path = g_strdup (path);
  self->db = db;
  self->access = access;

  return self;
}

/**
 * _bb_book_name_file:
 * @path: path of a book
 * @error: the return location of a #GError that is set
 *
 * Lets a message about a book name its file.
 *
 * Returns: %NULL, to be returned
 */
gpointer
_bb_book_name_file (const char *path,
                    GError    **error)
{
  g_autofree char *name = g_filename_display_name (path);

  g_prefix_error (error, "%s: ", name);

  return NULL;
}

/**
 * _bb_book_set_errno:
 * @error: return location for a #GError
 * @number: what the system said
 *
 * Returns: %FALSE, to be returned
 */
gboolean
_bb_book_set_errno (GError **error,
                    int      number)
{
  g_set_error_literal (error, BB_STORE_ERROR, number == EEXIST ? BB_STORE_ERROR_EXISTS : BB_STORE_ERROR_IO,
                       g_strerror (number));
  return FALSE;
}

/* SQLite would make a book of an empty file, and say little of a folder. */
static gboolean
check_file (const char *path,
            BbFile     *file,
            GError    **error)
{
  struct stat book;
  const int failed = stat (path, &book) == 0 ? 0 : errno;

  if (failed == ENOENT || failed == ENOTDIR)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_IO,
                           _("There is no such file. Was the book moved, or is its disk not there?"));
      return FALSE;
    }
  if (failed != 0)
    return _bb_book_set_errno (error, failed);

  if (!S_ISREG (book.st_mode) || book.st_size == 0)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_A_BOOK,
                           S_ISREG (book.st_mode) ? _("This file is empty: it is not a book of Blankbook.")
                                                  : _("This is not a file, so it is not a book of Blankbook."));
      return FALSE;
    }
  *file = (BbFile) { .device = (guint64) book.st_dev, .number = (guint64) book.st_ino };

  return TRUE;
}

static void
set_damaged (GError     **error,
             const char  *finding)
{
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED, _("The book is damaged (%s). Go back to a copy of it."),
               finding);
}

/* SQLite reads nothing where the last page ends too early, and takes that for what was written. Where the log holds
 * pages still, they are put in their place from there. */
static gboolean
check_length (BbDb        *db,
              const char  *path,
              GError     **error)
{
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  gint64 page_size = 0;
  struct stat book;
  struct stat wal;

  if (!bb_db_query_integer (db, "PRAGMA page_size", &page_size, error))
    return FALSE;
  if (stat (path, &book) != 0)
    return _bb_book_set_errno (error, errno);
  if ((stat (log, &wal) == 0 && wal.st_size > 0) || page_size <= 0 || book.st_size % page_size == 0)
    return TRUE;

  set_damaged (error, _("the end of the file is missing"));
  return FALSE;
}

static gboolean
check_pages (BbDb    *db,
             GError **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (db, "PRAGMA quick_check (1)", error);
  BbStep step = statement != NULL ? bb_statement_step (statement, error) : BB_STEP_ERROR;
  const char *finding = "quick_check";
  g_autofree char *line = NULL;

  if (step == BB_STEP_ERROR)
    return FALSE;
  if (step == BB_STEP_ROW)
    finding = bb_statement_get_text (statement, 0);
  /* The line before says which database it is, of which there is one. */
  if (strrchr (finding, '\n') != NULL)
    finding = strrchr (finding, '\n') + 1;
  if (g_strcmp0 (finding, "ok") == 0)
    return TRUE;

  line = bb_text_quote (finding, -1, LONGEST_FINDING);
  set_damaged (error, line);
  return FALSE;
}

static gboolean
prepare_db (BbDb       *db,
            const char *path,
            BbAccess    access,
            gboolean    is_sound,
            GError    **error)
{
  guint version = 0;

  if (!bb_book_identify (db, &version, error) ||
      (!is_sound && !bb_clean_close_holds (path) && (!check_length (db, path, error) || !check_pages (db, error))) ||
      !bb_db_settle (db, error))
    return FALSE;
  if (version == bb_migrations_get_latest ())
    return TRUE;
  if (access == BB_ACCESS_WRITE)
    return bb_book_migrate (db, error);

  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY,
                       _("This book is of an earlier Blankbook and has to be brought up to date, but can't be written "
                         "where it is. Copy it to a folder that you may write in, and open the copy."));
  return FALSE;
}

/**
 * _bb_book_open_for:
 * @path: absolute path of the book
 * @access: what may be done with it
 * @sound: (nullable): the file of a book that was opened before and is open still: it is not looked through again
 * @error: return location for a #GError
 *
 * Opens a book as bb_book_open() does. What only reads is refused by the database itself whatever it tries to write.
 *
 * Returns: (transfer full) (nullable): the book, or %NULL with an error as bb_book_open()
 */
BbBook *
_bb_book_open_for (const char    *path,
                   BbAccess       access,
                   const BbFile  *sound,
                   GError       **error)
{
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  gboolean unfinished = FALSE;
  gboolean is_sound = FALSE;
  BbFile file = { 0 };
  BbBook *self = NULL;
  BbDb *db = NULL;

  if (!check_file (path, &file, error))
    return _bb_book_name_file (path, error);

  unfinished = g_file_test (log, G_FILE_TEST_EXISTS);
  db = bb_db_open (path, access, error);
  if (db == NULL)
    return _bb_book_name_file (path, error);

  is_sound = sound != NULL && sound->device == file.device && sound->number == file.number;
  if (!prepare_db (db, path, access, is_sound, error))
    {
      bb_db_close (db, unfinished, NULL);
      return _bb_book_name_file (path, error);
    }

  self = _bb_book_new (path, db, access);
  self->file = file;

  return self;
}

/**
 * bb_book_open:
 * @path: where the book is
 * @error: return location for a #GError
 *
 * Opens a book for the calling thread. A book of an earlier version is brought to this one. A book that this
 * program did not close itself is looked through first, which takes some tenths of a second for a large one. One that
 * can't be written where it is can be read: see bb_book_can_write().
 *
 * Returns: (transfer full) (nullable): the book, or %NULL with %BB_STORE_ERROR_NOT_A_BOOK, %BB_STORE_ERROR_NEWER,
 *   %BB_STORE_ERROR_DAMAGED, %BB_STORE_ERROR_BUSY, %BB_STORE_ERROR_IO, or %BB_STORE_ERROR_READ_ONLY for one of an
 *   earlier version that can't be brought to this one; the file is then as it was
 */
BbBook *
bb_book_open (const char  *path,
              GError     **error)
{
  g_autofree char *absolute = NULL;

  g_return_val_if_fail (path != NULL, NULL);

  absolute = g_canonicalize_filename (path, NULL);

  return _bb_book_open_for (absolute, bb_file_can_be_written (absolute) ? BB_ACCESS_WRITE : BB_ACCESS_READ, NULL,
                            error);
}

/**
 * bb_book_get_path:
 * @self: a book
 *
 * Returns: (transfer none): the absolute path
 */
const char *
bb_book_get_path (BbBook *self)
{
  g_return_val_if_fail (BB_IS_BOOK (self), NULL);

  return self->path;
}

/**
 * bb_book_can_write:
 * @self: a book
 *
 * Returns: %FALSE if neither its file nor what has to stand beside it can be written: then all that would write it is
 *   refused with %BB_STORE_ERROR_READ_ONLY
 */
gboolean
bb_book_can_write (BbBook *self)
{
  g_return_val_if_fail (BB_IS_BOOK (self), FALSE);

  return self->access == BB_ACCESS_WRITE;
}

/**
 * bb_book_get_person:
 * @self: a book
 *
 * Returns: the key of the person in whose name the book is written; 0 for nobody in particular
 */
gint64
bb_book_get_person (BbBook *self)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), 0);

  return self->person;
}

/**
 * bb_book_set_person:
 * @self: a book
 * @person: the key of a person; 0 for nobody in particular
 *
 * Says in whose name the book is written from now on.
 */
void
bb_book_set_person (BbBook *self,
                    gint64  person)
{
  g_return_if_fail (BB_BOOK_IS_USABLE (self));

  self->person = person;
}

/**
 * bb_book_set_importing:
 * @self: a book
 * @importing: %TRUE while records are brought in from elsewhere
 *
 * What is added from now on is recorded as imported, or as added.
 */
void
bb_book_set_importing (BbBook   *self,
                       gboolean  importing)
{
  g_return_if_fail (BB_BOOK_IS_USABLE (self));

  self->importing = importing;
}

/**
 * bb_book_close:
 * @self: a book, in no transaction
 * @error: return location for a #GError
 *
 * Closes the book; afterwards it can only be let go of. Closing it again does nothing.
 *
 * Returns: %FALSE if it was not closed properly; what was saved is safe in any case
 */
gboolean
bb_book_close (BbBook  *self,
               GError **error)
{
  g_return_val_if_fail (BB_IS_BOOK (self) && self->thread == g_thread_self (), FALSE);

  if (self->db == NULL)
    return TRUE;

  g_return_val_if_fail (bb_db_get_depth (self->db) == 0, FALSE);

  if (!bb_db_close (g_steal_pointer (&self->db), FALSE, error))
    return FALSE;
  bb_clean_close_note (self->path);

  return TRUE;
}

/**
 * bb_book_in_transaction:
 * @self: a book
 * @func: what to do
 * @data: data for @func
 * @error: return location for a #GError
 *
 * Runs @func, and keeps all that it wrote if it returns %TRUE, or nothing. @func may run a further transaction, which
 * can fail alone. Records that were given a key by what was then undone keep that key in memory only. Where the book
 * was opened for reading, @func sees it as it was at its first read, and can write nothing.
 *
 * Returns: %FALSE if nothing was kept
 */
gboolean
bb_book_in_transaction (BbBook      *self,
                        BbBookFunc   func,
                        gpointer     data,
                        GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return bb_db_begin (self->db, self->access, error) && _bb_book_end (self, func (self, data, error), error);
}

/**
 * _bb_book_begin:
 * @self: a book
 * @error: return location for a #GError
 *
 * Begins what has to be written together; _bb_book_end() ends it.
 *
 * Returns: %FALSE if it did not begin, with %BB_STORE_ERROR_READ_ONLY where the book is open for reading
 */
gboolean
_bb_book_begin (BbBook  *self,
                GError **error)
{
  if (self->access == BB_ACCESS_WRITE)
    return bb_db_begin (self->db, BB_ACCESS_WRITE, error);

  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY,
                       _("Nothing was saved: this book can only be read where it is. Copy it to a folder that you may "
                         "write in, and open the copy."));
  return FALSE;
}

/**
 * _bb_book_end:
 * @self: a book
 * @keep: whether all went well
 * @error: return location for a #GError
 *
 * Ends what _bb_book_begin() began: keeps it if @keep, and undoes it otherwise.
 *
 * Returns: %TRUE if it was kept
 */
gboolean
_bb_book_end (BbBook   *self,
              gboolean  keep,
              GError  **error)
{
  gboolean outermost = bb_db_get_depth (self->db) == 1;

  keep = keep && (!outermost || _bb_book_write_search (self, error));
  if (keep)
    keep = bb_db_commit (self->db, error);
  else
    bb_db_rollback (self->db);

  for (guint i = 0; outermost && i < BB_N_SEARCHES; i++)
    g_hash_table_remove_all (self->stale[i]);

  /* Words that were noted and undone are not in the book. */
  if (!keep)
    g_hash_table_remove_all (self->words);

  return keep;
}
