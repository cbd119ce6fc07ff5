/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "look.h"

#include <stdio.h>
#include <string.h>

/**
 * look_give_up:
 * @stage: a stage with a running program
 * @what: what did not happen
 * @name: to what
 *
 * Says what can be seen instead, and ends the test.
 */
void
look_give_up (Stage      *stage,
              const char *what,
              const char *name)
{
  g_autoptr (Node) root = tree_read (stage);
  g_autofree char *seen = node_print (root);

  fprintf (stderr, "What can be seen:\n%s", seen);
  stage_fail (stage, "%s: “%s”", what, name);
}

/**
 * look_get_limit:
 *
 * Returns: the monotonic time at which to give up what is begun now
 */
gint64
look_get_limit (void)
{
  return g_get_monotonic_time () + (gint64) (stage_get_patience () * G_USEC_PER_SEC);
}

/**
 * look_wait:
 * @stage: a stage with a running program
 * @look: what to look for
 * @wanted: what @look needs to know
 * @tree: (out): the tree that was looked at, which keeps what was found alive
 *
 * Looks again and again.
 *
 * Returns: (transfer none) (nullable): what was found; %NULL where patience ended
 */
Node *
look_wait (Stage        *stage,
           LookFunc      look,
           const Wanted *wanted,
           Node        **tree)
{
  const gint64 limit = look_get_limit ();

  do
    {
      g_autoptr (Node) root = tree_read (stage);
      Node *found = look (root, wanted);

      if (found != NULL)
        {
          *tree = g_steal_pointer (&root);
          return found;
        }
      if (!stage_is_running (stage))
        stage_fail (stage, "The program ended while something was looked for: %s", wanted->name);
      stage_pause (LOOK_PAUSE_MS);
    }
  while (g_get_monotonic_time () < limit);

  return NULL;
}

/**
 * look_is_called:
 * @node: a node
 * @name: a name
 *
 * Returns: whether that is its name
 */
gboolean
look_is_called (Node       *node,
                const char *name)
{
  if (g_str_equal (node->name, name))
    return TRUE;

  /* An item of a list is called what the first of its labels says, where it has no name of its own. */
  if (node->role == ROLE_ITEM && *node->name == '\0')
    for (Node *child = node; child != NULL; child = node_next (node, child))
      if (child->role == ROLE_LABEL)
        return g_str_equal (child->name, name);

  return FALSE;
}

/* The last one: a dialog comes after the window that it belongs to, and covers it. */
/**
 * look_for_name:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_name (Node         *root,
               const Wanted *wanted)
{
  Node *found = NULL;

  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && (wanted->role == ROLE_ANY || node->role == wanted->role) && look_is_called (node, wanted->name))
      if (found == NULL || node_get_window (found) != node_get_window (node))
        found = node;

  return found;
}

/**
 * look_for_state:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_state (Node         *root,
                const Wanted *wanted)
{
  Node *found = look_for_name (root, wanted);

  return found != NULL && node_has_state (found, wanted->state) ? found : NULL;
}

/**
 * look_for_text:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_text (Node         *root,
               const Wanted *wanted)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && (strstr (node->name, wanted->name) != NULL ||
                        (node->text != NULL && strstr (node->text, wanted->name) != NULL)))
      return node;

  return NULL;
}

/**
 * look_without_text:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): @root, where it is not to be seen
 */
Node *
look_without_text (Node         *root,
                   const Wanted *wanted)
{
  return look_for_text (root, wanted) == NULL ? root : NULL;
}

/* What is typed into is either called so itself, or is the only thing to type into within what is called so. */
static Node *
find_entry (Node       *root,
            const char *name)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && node->text != NULL && node->role == ROLE_ENTRY)
      for (Node *owner = node; owner != NULL && owner->role != ROLE_WINDOW; owner = owner->parent)
        {
          if (g_str_equal (owner->name, name))
            return node;
          if (*owner->name != '\0')
            break;
        }

  return NULL;
}

/**
 * look_for_entry:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_entry (Node         *root,
                const Wanted *wanted)
{
  Node *node = find_entry (root, wanted->name);

  return node != NULL && (wanted->text == NULL || g_str_equal (node->text, wanted->text)) ? node : NULL;
}

/**
 * look_for_figure:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_figure (Node         *root,
                 const Wanted *wanted)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && g_str_has_prefix (node->name, wanted->name) && node->name[strlen (wanted->name)] == ':')
      return node;

  return NULL;
}

/**
 * look_for_window:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_window (Node         *root,
                 const Wanted *wanted)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->role == ROLE_WINDOW && node->children->len > 0 &&
        (wanted->name == NULL || g_str_equal (node->name, wanted->name)))
      return node;

  return NULL;
}

/* An item of a list that can be seen, also where the list has not come to the item yet. */
/**
 * look_for_item:
 * @root: a tree
 * @wanted: what is looked for
 *
 * Returns: (transfer none) (nullable): it
 */
Node *
look_for_item (Node         *root,
               const Wanted *wanted)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->role == ROLE_ITEM && node->parent->shown && look_is_called (node, wanted->name))
      return node;

  return NULL;
}
