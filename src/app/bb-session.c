/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-private.h"

#include <locale.h>

struct _BbSession
{
  GObject parent_instance;

  /* owned */
  BbBook *book;
  BbBookThread *writer;
  BbBookThread *reader;
  GSettings *settings;
  char *decimal;
  char *currency;

  BbUnitContext units;
  gint64 person;
};

G_DEFINE_FINAL_TYPE (BbSession, bb_session, G_TYPE_OBJECT)

enum {
  SIGNAL_CHANGED,
  SIGNAL_UNITS_CHANGED,
  SIGNAL_SHOW,
  SIGNAL_SHOW_FOR,
  SIGNAL_SAY,
  SIGNAL_WITHDRAWN,
  SIGNAL_RESTORED,
  SIGNAL_CALIBRATED,
  SIGNAL_PUT_ASIDE,
  SIGNAL_TAKEN_UP,
  SIGNAL_GIVEN_UP,
  SIGNAL_CLOSING,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
read_units (BbSession *self)
{
  g_autofree char *system = g_settings_get_string (self->settings, "unit-system");

  g_free (self->currency);
  self->currency = g_settings_get_string (self->settings, "currency");
  self->units.system = g_str_equal (system, "us") ? BB_UNITS_US : BB_UNITS_METRIC;
  self->units.decimal = self->decimal;
  self->units.currency = self->currency;
}

static void
units_setting_changed_cb (BbSession *self)
{
  read_units (self);
  g_signal_emit (self, signals[SIGNAL_UNITS_CHANGED], 0);
}

static void
read_person (BbSession *self)
{
  g_autofree char *code = g_settings_get_string (self->settings, "person");
  g_autoptr (BbPerson) person = NULL;

  if (*code != '\0')
    person = bb_book_load_by_code (self->book, &bb_person_table, code, NULL);

  self->person = person != NULL ? person->id : 0;
  bb_book_set_person (self->book, self->person);
}

static void
bb_session_finalize (GObject *object)
{
  BbSession *self = BB_SESSION (object);

  g_clear_object (&self->reader);
  g_clear_object (&self->writer);
  g_clear_object (&self->book);
  g_clear_object (&self->settings);
  g_free (self->decimal);
  g_free (self->currency);

  G_OBJECT_CLASS (bb_session_parent_class)->finalize (object);
}

/* What is asked of the window: to show something, or to say it. */
static void
add_requests (void)
{
  /**
   * BbSession::show:
   * @page: a page's name
   * @id: key of the record to show there, or 0
   */
  signals[SIGNAL_SHOW] = g_signal_new ("show", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_INT64);
  /**
   * BbSession::show-for:
   * @page: a page's name
   * @table: the table of a record
   * @id: its key
   *
   * What the page has for a record of another page is to be shown.
   */
  signals[SIGNAL_SHOW_FOR] = g_signal_new ("show-for", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 3, G_TYPE_STRING, G_TYPE_POINTER, G_TYPE_INT64);
  /**
   * BbSession::say:
   * @text: one line for the person to read
   */
  signals[SIGNAL_SAY] = g_signal_new ("say", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                      G_TYPE_NONE, 1, G_TYPE_STRING);
}

/* What was done and can be undone, and what was. */
static void
add_undo_signals (void)
{
  /**
   * BbSession::withdrawn:
   * @name: what was withdrawn
   * @table: the table of the record
   * @id: its key
   *
   * Something was withdrawn; the person is offered to undo it.
   */
  signals[SIGNAL_WITHDRAWN] = g_signal_new ("withdrawn", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                            G_TYPE_NONE, 3, G_TYPE_STRING, G_TYPE_POINTER, G_TYPE_INT64);
  /**
   * BbSession::restored:
   * @table: the table of the record
   * @id: its key
   *
   * A withdrawal was undone: the record can be chosen again.
   */
  signals[SIGNAL_RESTORED] = g_signal_new ("restored", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_INT64);
  /**
   * BbSession::calibrated:
   * @name: the machine's name
   * @id: its key
   * @before: the day on which it was calibrated before; empty where it never was
   *
   * It was entered that a machine was calibrated; the person is offered to undo it.
   */
  signals[SIGNAL_CALIBRATED] = g_signal_new ("calibrated", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                             G_TYPE_NONE, 3, G_TYPE_STRING, G_TYPE_INT64, G_TYPE_STRING);
}

/* What becomes of a half-typed form that somebody cancels. */
static void
add_form_signals (void)
{
  /**
   * BbSession::put-aside:
   * @name: what was half typed
   * @key: the form's key
   * @state: what is typed in it
   *
   * A half-typed form was cancelled; the person is offered to undo it.
   */
  signals[SIGNAL_PUT_ASIDE] = g_signal_new ("put-aside", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                            G_TYPE_NONE, 3, G_TYPE_STRING, G_TYPE_STRING, G_TYPE_STRING);
  /**
   * BbSession::taken-up:
   * @key: the form's key
   * @state: what is typed in it
   *
   * The person wants a form back that was put aside.
   */
  signals[SIGNAL_TAKEN_UP] = g_signal_new ("taken-up", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
  /**
   * BbSession::given-up:
   * @key: the form's key
   *
   * Nobody wanted back what was put aside while it was offered.
   */
  signals[SIGNAL_GIVEN_UP] = g_signal_new ("given-up", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
bb_session_class_init (BbSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_session_finalize;
  add_requests ();

  /**
   * BbSession::changed:
   *
   * The book holds something else than before.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  /**
   * BbSession::units-changed:
   *
   * Numbers are shown in other units from now on.
   */
  signals[SIGNAL_UNITS_CHANGED] = g_signal_new ("units-changed", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                                NULL, G_TYPE_NONE, 0);
  add_undo_signals ();
  add_form_signals ();
  /**
   * BbSession::closing:
   *
   * The book is about to be closed: what is half typed has to be kept now.
   */
  signals[SIGNAL_CLOSING] = g_signal_new ("closing", BB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_session_init (BbSession *self)
{
  const struct lconv *numbers = localeconv ();

  self->decimal = g_strdup (numbers->decimal_point != NULL && *numbers->decimal_point != '\0'
                              ? numbers->decimal_point : ".");
}

/**
 * bb_session_new:
 * @path: absolute path of a book
 * @settings: the person's settings
 * @error: return location for a #GError
 *
 * Opens a book for the window: one connection to read from here, one thread that writes, and one that reads what takes
 * long, which opens the book when that is first asked for.
 *
 * Returns: (transfer full): the session, or %NULL if the book can't be opened
 */
BbSession *
bb_session_new (const char *path,
                GSettings  *settings,
                GError    **error)
{
  g_autoptr (BbSession) self = g_object_new (BB_TYPE_SESSION, NULL);
  BbAccess access = BB_ACCESS_READ;

  g_return_val_if_fail (path != NULL && G_IS_SETTINGS (settings), NULL);

  self->settings = g_object_ref (settings);
  self->book = bb_book_open (path, error);
  if (self->book == NULL)
    return NULL;
  /* Where nothing can be written, what would is refused there as by any connection that only reads. */
  access = bb_book_can_write (self->book) ? BB_ACCESS_WRITE : BB_ACCESS_READ;
  self->writer = bb_book_thread_new (self->book, access, NULL);
  self->reader = bb_book_thread_new (self->book, BB_ACCESS_READ, self->writer);
  if (access == BB_ACCESS_WRITE && !bb_book_thread_start (self->writer, error))
    return NULL;

  read_units (self);
  read_person (self);
  g_signal_connect_object (settings, "changed::unit-system", G_CALLBACK (units_setting_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "changed::currency", G_CALLBACK (units_setting_changed_cb), self,
                           G_CONNECT_SWAPPED);

  return g_steal_pointer (&self);
}

/**
 * bb_session_get_book:
 * @self: a session
 *
 * Returns: (transfer none): the book, for reading
 */
BbBook *
bb_session_get_book (BbSession *self)
{
  g_return_val_if_fail (BB_IS_SESSION (self), NULL);

  return self->book;
}

/**
 * bb_session_get_settings:
 * @self: a session
 *
 * Returns: (transfer none): the person's settings
 */
GSettings *
bb_session_get_settings (BbSession *self)
{
  g_return_val_if_fail (BB_IS_SESSION (self), NULL);

  return self->settings;
}

/**
 * bb_session_get_units:
 * @self: a session
 *
 * Returns: (transfer none): how numbers are shown and read now
 */
const BbUnitContext *
bb_session_get_units (BbSession *self)
{
  g_return_val_if_fail (BB_IS_SESSION (self), NULL);

  return &self->units;
}

/**
 * bb_session_copy_units:
 * @self: a session
 *
 * The preferences may change while another thread writes numbers: it gets the units with texts that stay. The box in
 * hand, which only helps to read what is typed, is left out.
 *
 * Returns: how numbers are shown now
 */
BbUnitContext
bb_session_copy_units (BbSession *self)
{
  g_return_val_if_fail (BB_IS_SESSION (self), (BbUnitContext) { 0 });

  return (BbUnitContext) {
    .system = self->units.system,
    .decimal = g_intern_string (self->units.decimal),
    .currency = g_intern_string (self->units.currency),
  };
}

/**
 * bb_session_set_box_area:
 * @self: a session
 * @box_area_m2: area of the box in hand, 0 for none
 *
 * Tells what a laydown in grams on a box refers to.
 */
void
bb_session_set_box_area (BbSession *self,
                         double     box_area_m2)
{
  g_return_if_fail (BB_IS_SESSION (self));

  self->units.box_area_m2 = box_area_m2;
}

/**
 * bb_session_get_person:
 * @self: a session
 *
 * Returns: key of the person who works now, 0 where nobody said
 */
gint64
bb_session_get_person (BbSession *self)
{
  g_return_val_if_fail (BB_IS_SESSION (self), 0);

  return self->person;
}

/**
 * bb_session_set_person:
 * @self: a session
 * @person: key of a person, 0 for nobody
 *
 * Sets who works now, remembers it, and tells.
 */
void
bb_session_set_person (BbSession *self,
                       gint64     person)
{
  g_autoptr (BbPerson) record = NULL;
  const gint64 before = self->person;

  g_return_if_fail (BB_IS_SESSION (self));

  if (person != 0)
    record = bb_book_load (self->book, &bb_person_table, person, NULL);

  self->person = record != NULL ? person : 0;
  bb_book_set_person (self->book, self->person);
  g_settings_set_string (self->settings, "person", record != NULL ? record->code : "");
  if (self->person != before)
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * bb_session_close:
 * @self: a session
 *
 * Waits for what is still being written and read, and closes the book.
 */
void
bb_session_close (BbSession *self)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  g_signal_emit (self, signals[SIGNAL_CLOSING], 0);
  bb_book_thread_close (self->writer);
  bb_book_thread_close (self->reader);
  if (!bb_book_close (self->book, &error))
    g_warning ("The book was not closed cleanly: %s", error->message);
}

/**
 * _bb_session_write_quietly:
 * @self: a session
 * @func: what to do with the book, in one transaction, on the writing thread
 * @data: (transfer full): a snapshot that @func alone uses
 * @free_data: frees @data
 * @callback: called by the thread when it is written
 * @user_data: for @callback
 *
 * Writes without telling anybody that the book changed: what is written is shown nowhere.
 */
void
_bb_session_write_quietly (BbSession           *self,
                           BbBookFunc           func,
                           gpointer             data,
                           GDestroyNotify       free_data,
                           GAsyncReadyCallback  callback,
                           gpointer             user_data)
{
  bb_book_thread_run_async (self->writer, self->person, func, data, free_data, NULL, callback, user_data);
}

/**
 * _bb_session_read_within:
 * @self: a session
 * @func: what to do with the book, in one transaction, on the reading thread
 * @data: (transfer full): a snapshot that @func alone uses
 * @free_data: frees @data
 * @cancellable: (nullable): keeps @func from being begun, and stops it
 * @callback: called by the thread when it is read
 * @user_data: for @callback
 *
 * Reads after all that was asked to be written before, without holding back what is written meanwhile.
 */
void
_bb_session_read_within (BbSession           *self,
                         BbBookFunc           func,
                         gpointer             data,
                         GDestroyNotify       free_data,
                         GCancellable        *cancellable,
                         GAsyncReadyCallback  callback,
                         gpointer             user_data)
{
  bb_book_thread_run_async (self->reader, self->person, func, data, free_data, cancellable, callback, user_data);
}
