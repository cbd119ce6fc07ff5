/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-store-error.h"

#include <glib/gi18n-lib.h>
#include <sqlite3.h>

#include "bb-book-private.h"
#include "bb-text.h"

G_DEFINE_QUARK (bb-store-error-quark, bb_store_error)

/* What the book's own triggers say, word for word, so that it can be translated. A test holds this against the
 * migrations. */
static const struct {
  const char *text;
  BbStoreError code;
} rules[] = {
  { N_("A revision in use cannot be changed: save the change as the next revision."), BB_STORE_ERROR_REFUSED },
  { N_("A revision in use cannot be deleted: withdraw it."), BB_STORE_ERROR_REFUSED },
  { N_("There is a revision with this code or number already."), BB_STORE_ERROR_EXISTS },
  { N_("The code of a recipe cannot be changed once a revision of it is in use."), BB_STORE_ERROR_REFUSED },
  { N_("A revision cannot go from this state to that one."), BB_STORE_ERROR_REFUSED },
  { N_("A state stays with its revision."), BB_STORE_ERROR_REFUSED },
  { N_("The state of a revision in use cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("This revision has a state already."), BB_STORE_ERROR_EXISTS },
  { N_("An event cannot be changed."), BB_STORE_ERROR_REFUSED },
  { N_("An event cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("This event is in the book already."), BB_STORE_ERROR_EXISTS },
  { N_("A record is referred to that is of another kind."), BB_STORE_ERROR_REFUSED },
  { N_("The kind cannot be changed: a recipe or a run uses this as what it is."), BB_STORE_ERROR_REFUSED },
  { N_("A job cannot go from this state to that one."), BB_STORE_ERROR_REFUSED },
  { N_("The number of a job cannot be changed once a line of it was run."), BB_STORE_ERROR_REFUSED },
  { N_("A line that was run keeps its garment and its print: add another line."), BB_STORE_ERROR_REFUSED },
  { N_("A line that was run cannot be deleted: strike it off."), BB_STORE_ERROR_REFUSED },
  { N_("There is a line with this code or number already."), BB_STORE_ERROR_EXISTS },
  { N_("A finished run cannot be changed: add a remark to it."), BB_STORE_ERROR_REFUSED },
  { N_("A run keeps its line and its revision: finish it, and start another."), BB_STORE_ERROR_REFUSED },
  { N_("A run cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("There is a run with this code or number already."), BB_STORE_ERROR_EXISTS },
  { N_("A remark cannot be changed: add another."), BB_STORE_ERROR_REFUSED },
  { N_("A remark cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("There is a remark with this number already."), BB_STORE_ERROR_EXISTS },
  { N_("A lot that was used stays a lot of its supply."), BB_STORE_ERROR_REFUSED },
  { N_("A lot that was used cannot be deleted: withdraw it."), BB_STORE_ERROR_REFUSED },
  { N_("There is a lot with this code already."), BB_STORE_ERROR_EXISTS },
  { N_("An entry of a lot cannot be changed: add another."), BB_STORE_ERROR_REFUSED },
  { N_("An entry of a lot cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("There is an entry of this lot with this number already."), BB_STORE_ERROR_EXISTS },
  { N_("A picture cannot be changed: add another."), BB_STORE_ERROR_REFUSED },
  { N_("This picture is in the book already."), BB_STORE_ERROR_EXISTS },
  { N_("The book has a shop already."), BB_STORE_ERROR_EXISTS },
  { N_("A wash plan in use cannot be changed: add another, and withdraw this one."), BB_STORE_ERROR_REFUSED },
  { N_("A published method is changed only as checked against the standard: make a plan of your own."),
    BB_STORE_ERROR_REFUSED },
  { N_("There is a wash plan with this code already."), BB_STORE_ERROR_EXISTS },
  { N_("Method, temperature and cycles of a specimen have to be those of its wash plan."), BB_STORE_ERROR_REFUSED },
  { N_("A specimen that was read stays with its revision."), BB_STORE_ERROR_REFUSED },
  { N_("Only a lead or the owner can overrule the rule of the shop, and has to say why."), BB_STORE_ERROR_REFUSED },
  { N_("This signature is in the book already."), BB_STORE_ERROR_EXISTS },
  { N_("A signature cannot be changed."), BB_STORE_ERROR_REFUSED },
  { N_("A signature cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("A proof needs the signature of a person."), BB_STORE_ERROR_UNPROVEN },
  { N_("The specimens do not bear out a proof by the rule of the shop."), BB_STORE_ERROR_UNPROVEN },
  { N_("A specimen of a proven revision fails: the revision has to go back on trial first."),
    BB_STORE_ERROR_DISPROVED },
  { N_("The proof of a revision rests on this specimen: the revision has to go back on trial first."),
    BB_STORE_ERROR_UNFOUNDED },
  { N_("There is a reading of this specimen at as many cycles already."), BB_STORE_ERROR_EXISTS },
  { N_("There is a specimen with this code already."), BB_STORE_ERROR_EXISTS },
  { N_("A notice cannot be deleted."), BB_STORE_ERROR_REFUSED },
  { N_("A notice cannot be changed, but for who took note of it."), BB_STORE_ERROR_REFUSED },
  { N_("This notice is in the book already."), BB_STORE_ERROR_EXISTS },
};

/**
 * bb_store_error_find_rule:
 * @text: what a trigger of the book said
 *
 * Returns: the #BbStoreError that it means, or 0 if no trigger says that
 */
int
bb_store_error_find_rule (const char *text)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (g_str_equal (rules[i].text, text))
      return (int) rules[i].code;

  return 0;
}

static void
set_constraint (GError     **error,
                int          code,
                const char  *message)
{
  int rule = bb_store_error_find_rule (message);

  switch (code)
    {
    case SQLITE_CONSTRAINT_TRIGGER:
      g_set_error_literal (error, BB_STORE_ERROR, rule != 0 ? rule : BB_STORE_ERROR_REFUSED, _(message));
      break;
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
    case SQLITE_CONSTRAINT_ROWID:
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS, _("There is such a record already (%s)."), message);
      break;
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND,
                           _("The record refers to another that is not in the book."));
      break;
    default:
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("The book refuses the value (%s)."), message);
      break;
    }
}

static void
set_disk (GError **error,
          int      code)
{
  const char *message = NULL;

  switch (code & 0xff)
    {
    case SQLITE_FULL:
      message = _("The disk is full: nothing was saved. Make room, then save again.");
      break;
    case SQLITE_READONLY:
      message = _("The book can't be written: its file or folder is read-only. Copy it to a folder that you may write "
                  "in, and open the copy.");
      break;
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      message = _("The book can't be opened: check that it is there, and that you may read and write its folder.");
      break;
    case SQLITE_NOMEM:
      message = _("There is not enough memory for this.");
      break;
    default:
      break;
    }

  if (message != NULL)
    g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_IO, message);
  else
    g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO, _("The disk failed to read or write the book (%s)."),
                 sqlite3_errstr (code));
}

/**
 * bb_store_error_set_sqlite:
 * @error: return location for a #GError
 * @code: an extended result code of SQLite
 * @message: what SQLite said to it; it may quote the file, and so hold anything
 *
 * Turns what SQLite refused into one line that a person can act on.
 */
void
bb_store_error_set_sqlite (GError     **error,
                           int          code,
                           const char  *message)
{
  g_autofree char *line = bb_text_quote (message, -1, LONGEST_FINDING);

  switch (code & 0xff)
    {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_BUSY,
                           _("Another program is writing to this book. Try again when it has finished."));
      break;
    case SQLITE_CONSTRAINT:
      set_constraint (error, code, line);
      break;
    case SQLITE_NOTADB:
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_A_BOOK,
                           _("This file is not a book of Blankbook."));
      break;
    case SQLITE_CORRUPT:
    case SQLITE_ERROR:
    case SQLITE_FORMAT:
    case SQLITE_SCHEMA:
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED,
                   _("The book is damaged (%s). Go back to a copy of it."), line);
      break;
    case SQLITE_INTERRUPT:
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, _("This was stopped."));
      break;
    default:
      set_disk (error, code);
      break;
    }
}
