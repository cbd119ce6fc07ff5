/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-keeper"

#include "bb-keeper.h"

/* Long enough not to write at every key, short enough to lose next to nothing. */
#define KEEP_AFTER_MS 600

struct _BbKeeper
{
  GObject parent_instance;

  /* owned */
  BbSession *session;
  char *key;

  /* borrowed: the owner has this keeper */
  gpointer owner;

  BbKeeperDescribe describe;
  guint keep_source;
};

G_DEFINE_FINAL_TYPE (BbKeeper, bb_keeper, G_TYPE_OBJECT)

static gboolean
keep_cb (gpointer data)
{
  BbKeeper *self = BB_KEEPER (data);

  self->keep_source = 0;
  bb_keeper_keep (self);

  return G_SOURCE_REMOVE;
}

static void
closing_cb (BbKeeper *self)
{
  if (self->keep_source != 0)
    bb_keeper_keep (self);
}

static void
bb_keeper_dispose (GObject *object)
{
  BbKeeper *self = BB_KEEPER (object);

  g_clear_handle_id (&self->keep_source, g_source_remove);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_keeper_parent_class)->dispose (object);
}

static void
bb_keeper_finalize (GObject *object)
{
  g_free (BB_KEEPER (object)->key);

  G_OBJECT_CLASS (bb_keeper_parent_class)->finalize (object);
}

static void
bb_keeper_class_init (BbKeeperClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_keeper_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_keeper_finalize;
}

static void
bb_keeper_init (BbKeeper *self)
{
  (void) self;
}

/**
 * bb_keeper_new:
 * @session: the session
 * @key: under which it is kept in the book
 * @describe: says what is half typed
 * @owner: for @describe; has to let go of the keeper before it goes away itself
 *
 * Returns: (transfer full): a keeper that has nothing to keep yet
 */
BbKeeper *
bb_keeper_new (BbSession        *session,
               const char       *key,
               BbKeeperDescribe  describe,
               gpointer          owner)
{
  BbKeeper *self = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && key != NULL && describe != NULL, NULL);

  self = g_object_new (BB_TYPE_KEEPER, NULL);
  self->session = g_object_ref (session);
  self->key = g_strdup (key);
  self->describe = describe;
  self->owner = owner;
  g_signal_connect_object (session, "closing", G_CALLBACK (closing_cb), self, G_CONNECT_SWAPPED);

  return self;
}

/**
 * bb_keeper_keep:
 * @self: a keeper
 *
 * Keeps what is half typed, now.
 */
void
bb_keeper_keep (BbKeeper *self)
{
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_KEEPER (self));

  bb_keeper_rest (self);
  text = self->describe (self->owner);
  if (text != NULL)
    bb_session_keep_form (self->session, self->key, text);
}

/**
 * bb_keeper_keep_soon:
 * @self: a keeper
 *
 * To be called whenever the person types or chooses something: keeps it when they pause, or close the window.
 */
void
bb_keeper_keep_soon (BbKeeper *self)
{
  g_return_if_fail (BB_IS_KEEPER (self));

  g_clear_handle_id (&self->keep_source, g_source_remove);
  self->keep_source = g_timeout_add (KEEP_AFTER_MS, keep_cb, self);
}

/**
 * bb_keeper_rest:
 * @self: a keeper
 *
 * Leaves in the book what was kept last, whatever was typed since.
 */
void
bb_keeper_rest (BbKeeper *self)
{
  g_return_if_fail (BB_IS_KEEPER (self));

  g_clear_handle_id (&self->keep_source, g_source_remove);
}

/**
 * bb_keeper_forget:
 * @self: a keeper
 *
 * Keeps nothing any more: it is saved, or given up.
 */
void
bb_keeper_forget (BbKeeper *self)
{
  g_return_if_fail (BB_IS_KEEPER (self));

  bb_keeper_rest (self);
  bb_session_keep_form (self->session, self->key, NULL);
}

/**
 * bb_keeper_put_aside:
 * @self: a keeper
 * @name: what is half typed, for a person
 *
 * Keeps nothing any more: it is cancelled. The person is offered to have it back.
 */
void
bb_keeper_put_aside (BbKeeper   *self,
                     const char *name)
{
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_KEEPER (self) && name != NULL);

  bb_keeper_rest (self);
  text = self->describe (self->owner);
  if (text != NULL)
    bb_session_put_aside (self->session, self->key, name, text);
}

/**
 * bb_keeper_get_key:
 * @self: a keeper
 *
 * Returns: (transfer none): under which it is kept
 */
const char *
bb_keeper_get_key (BbKeeper *self)
{
  g_return_val_if_fail (BB_IS_KEEPER (self), NULL);

  return self->key;
}

/**
 * bb_keeper_dup_kept:
 * @self: a keeper
 *
 * Returns: (transfer full) (nullable): what was half typed when the window went away
 */
char *
bb_keeper_dup_kept (BbKeeper *self)
{
  g_return_val_if_fail (BB_IS_KEEPER (self), NULL);

  return bb_session_dup_form (self->session, self->key);
}
