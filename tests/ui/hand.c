/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "hand.h"

#include <string.h>

#include "look.h"

/**
 * hand_look:
 * @stage: a stage with a running program
 * @role: what it is, or %ROLE_ANY
 * @name: what it is called
 * @tree: (out): the tree that it is in, which keeps it alive
 *
 * Waits for something that can be seen.
 *
 * Returns: (transfer none): it
 */
Node *
hand_look (Stage       *stage,
           Role         role,
           const char  *name,
           Node       **tree)
{
  const Wanted wanted = { role, name, NULL, 0 };
  Node *found = look_wait (stage, look_for_name, &wanted, tree);

  if (found == NULL)
    look_give_up (stage, "Nothing that can be seen is called", name);

  return found;
}

/**
 * hand_sees:
 * @stage: a stage with a running program
 * @text: a text
 *
 * Returns: whether something that can be seen now contains @text
 */
gboolean
hand_sees (Stage      *stage,
           const char *text)
{
  const Wanted wanted = { ROLE_ANY, text, NULL, 0 };
  g_autoptr (Node) root = tree_read (stage);

  return look_for_text (root, &wanted) != NULL;
}

/**
 * hand_wait_window:
 * @stage: a stage with a running program
 * @title: (nullable): title of the window
 *
 * Waits for a window, and gives it the keyboard.
 */
void
hand_wait_window (Stage      *stage,
                  const char *title)
{
  const Wanted wanted = { ROLE_WINDOW, title, NULL, 0 };
  g_autoptr (Node) tree = NULL;

  if (look_wait (stage, look_for_window, &wanted, &tree) == NULL)
    look_give_up (stage, "There is no window", title != NULL ? title : "");
  glass_focus (stage_get_glass (stage), glass_find_window (stage_get_glass (stage)));
}

/**
 * hand_expect:
 * @stage: a stage with a running program
 * @text: a text
 *
 * Waits until something that can be seen contains @text.
 */
void
hand_expect (Stage      *stage,
             const char *text)
{
  const Wanted wanted = { ROLE_ANY, text, NULL, 0 };
  g_autoptr (Node) tree = NULL;

  if (look_wait (stage, look_for_text, &wanted, &tree) == NULL)
    look_give_up (stage, "Nothing that can be seen says", text);
}

/**
 * hand_expect_not:
 * @stage: a stage with a running program
 * @text: a text
 *
 * Waits until nothing that can be seen contains @text.
 */
void
hand_expect_not (Stage      *stage,
                 const char *text)
{
  const Wanted wanted = { ROLE_ANY, text, NULL, 0 };
  g_autoptr (Node) tree = NULL;

  if (look_wait (stage, look_without_text, &wanted, &tree) == NULL)
    look_give_up (stage, "It can still be read", text);
}

/**
 * hand_expect_state:
 * @stage: a stage with a running program
 * @role: what it is
 * @name: what it is called
 * @state: the state that it has to come into
 */
void
hand_expect_state (Stage      *stage,
                   Role        role,
                   const char *name,
                   State       state)
{
  const Wanted wanted = { role, name, NULL, state };
  g_autoptr (Node) tree = NULL;

  /* From GTK 4.18 on nothing is focused in a window that does not have the keyboard. */
  if (state == STATE_FOCUSED)
    glass_focus (stage_get_glass (stage), glass_find_window (stage_get_glass (stage)));
  if (look_wait (stage, look_for_state, &wanted, &tree) == NULL)
    look_give_up (stage, "It does not come into the state that is expected", name);
}

/**
 * hand_read:
 * @stage: a stage with a running program
 * @name: name of something to type into
 *
 * Returns: (transfer full): the text that stands in it
 */
char *
hand_read (Stage      *stage,
           const char *name)
{
  const Wanted wanted = { ROLE_ENTRY, name, NULL, 0 };
  g_autoptr (Node) tree = NULL;
  const Node *entry = look_wait (stage, look_for_entry, &wanted, &tree);

  if (entry == NULL)
    look_give_up (stage, "There is nothing to type into called", name);

  return g_strdup (entry->text);
}

/**
 * hand_expect_text:
 * @stage: a stage with a running program
 * @name: name of something to type into
 * @text: the whole text that has to stand in it
 */
void
hand_expect_text (Stage      *stage,
                  const char *name,
                  const char *text)
{
  const Wanted wanted = { ROLE_ENTRY, name, text, 0 };
  g_autoptr (Node) tree = NULL;

  if (look_wait (stage, look_for_entry, &wanted, &tree) == NULL)
    look_give_up (stage, "Something else than was expected stands in", name);
}

/**
 * hand_read_figure:
 * @stage: a stage with a running program
 * @title: what the number is
 * @note: (out) (optional): what stands below the number
 *
 * Returns: (transfer full): the number with its unit, as it is read out
 */
char *
hand_read_figure (Stage       *stage,
                  const char  *title,
                  char       **note)
{
  const Wanted wanted = { ROLE_ANY, title, NULL, 0 };
  g_autoptr (Node) tree = NULL;
  Node *figure = look_wait (stage, look_for_figure, &wanted, &tree);

  if (figure == NULL)
    look_give_up (stage, "There is no figure called", title);

  if (note != NULL)
    for (Node *node = figure; node != NULL; node = node_next (figure, node))
      if (node->role == ROLE_LABEL && node->shown)
        {
          g_free (*note);
          *note = g_strdup (node->name);
        }

  return g_strstrip (g_strdup (figure->name + strlen (title) + 1));
}

/**
 * hand_keys:
 * @stage: a stage with a running program
 * @keys: names of keys held down together, as `Control_L+f`
 *
 * Presses keys in the topmost window.
 */
void
hand_keys (Stage      *stage,
           const char *keys)
{
  Glass *glass = stage_get_glass (stage);

  glass_focus (glass, glass_find_window (glass));
  glass_press (glass, keys);
}

static int
find_action (Stage      *stage,
             const Node *node)
{
  static const char *const names[] = { "click", "toggle", "activate", "press", NULL };
  g_autoptr (GVariant) reply = node_call (stage, node, "Action", "GetActions", NULL, "(a(sss))");
  g_autoptr (GVariantIter) actions = NULL;
  const char *name = NULL;

  if (reply == NULL)
    return -1;

  g_variant_get (reply, "(a(sss))", &actions);
  for (int i = 0; g_variant_iter_next (actions, "(&s&s&s)", &name, NULL, NULL); i++)
    {
      g_autofree char *lower = g_ascii_strdown (name, -1);

      if (g_strv_contains (names, lower))
        return i;
    }

  return -1;
}

/* Things that can be pressed say so; of a menu's button, it is the button inside that can be. */
static void
act (Stage      *stage,
     Node       *node,
     const char *name)
{
  g_autoptr (GVariant) done = NULL;

  for (Node *part = node; part != NULL && done == NULL; part = node_next (node, part))
    {
      const int action = part->role == node->role ? find_action (stage, part) : -1;

      if (action >= 0)
        done = node_call (stage, part, "Action", "DoAction", g_variant_new ("(i)", action), "(b)");
    }
  if (done == NULL)
    look_give_up (stage, "It can't be pressed", name);
}

/**
 * hand_press:
 * @stage: a stage with a running program
 * @role: what it is
 * @name: what it is called
 *
 * Presses a button, ticks a box, opens what opens.
 */
void
hand_press (Stage      *stage,
            Role        role,
            const char *name)
{
  g_autoptr (Node) tree = NULL;
  Node *node = hand_look (stage, role, name, &tree);

  if (!node_has_state (node, STATE_SENSITIVE))
    look_give_up (stage, "It is greyed out", name);
  act (stage, node, name);
}

/**
 * hand_select:
 * @stage: a stage with a running program
 * @name: what the item is called
 *
 * Selects an item of a list.
 */
void
hand_select (Stage      *stage,
             const char *name)
{
  const Wanted wanted = { ROLE_ITEM, name, NULL, 0 };
  g_autoptr (Node) tree = NULL;
  const Node *item = look_wait (stage, look_for_item, &wanted, &tree);
  g_autoptr (GVariant) done = NULL;

  if (item != NULL)
    done = node_call (stage, item->parent, "Selection", "SelectChild", g_variant_new ("(i)", (int) item->index), "(b)");
  if (done == NULL)
    look_give_up (stage, "No list has an item to select that is called", name);
}

/**
 * hand_enter:
 * @stage: a stage with a running program
 * @name: name of something to type into
 * @text: what to write, in place of what stands there
 */
void
hand_enter (Stage      *stage,
            const char *name,
            const char *text)
{
  const Wanted wanted = { ROLE_ENTRY, name, NULL, 0 };
  g_autoptr (Node) tree = NULL;
  const Node *entry = look_wait (stage, look_for_entry, &wanted, &tree);
  g_autoptr (GVariant) done = NULL;

  if (entry != NULL)
    done = node_call (stage, entry, "EditableText", "SetTextContents", g_variant_new ("(s)", text), "(b)");
  if (done == NULL)
    look_give_up (stage, "There is nothing to type into called", name);
  hand_expect_text (stage, name, text);
}

/* A window below a dialog still says where the keyboard was in it: the dialog comes last. */
static Node *
find_focused (Node *root)
{
  Node *found = NULL;

  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && node_has_state (node, STATE_FOCUSED))
      if (found == NULL || node_get_window (found) != node_get_window (node))
        found = node;

  return found;
}

/**
 * hand_move_to:
 * @stage: a stage with a running program
 * @key: a key that moves the keyboard on, as `Tab`
 * @name: what to stop at
 *
 * Presses a key until the keyboard is at what is called @name.
 */
void
hand_move_to (Stage      *stage,
              const char *key,
              const char *name)
{
  const gint64 limit = look_get_limit ();

  while (g_get_monotonic_time () < limit)
    {
      g_autoptr (Node) tree = tree_read (stage);
      Node *focused = find_focused (tree);

      if (focused != NULL && look_is_called (focused, name))
        return;
      hand_keys (stage, key);
      stage_pause (LOOK_PAUSE_MS);
    }

  look_give_up (stage, "The keyboard does not come to", name);
}

/**
 * hand_choose:
 * @stage: a stage with a running program
 * @name: name of a drop-down
 * @item: the item to choose
 *
 * Opens a drop-down, goes down its list to the item, and takes it.
 */
void
hand_choose (Stage      *stage,
             const char *name,
             const char *item)
{
  const Wanted wanted = { ROLE_ITEM, item, NULL, 0 };
  g_autoptr (Node) tree = NULL;
  g_autoptr (Node) opened = NULL;
  Node *combo = hand_look (stage, ROLE_COMBO, name, &tree);
  Node *button = NULL;

  for (Node *node = combo; node != NULL && button == NULL; node = node_next (combo, node))
    if (node->role == ROLE_BUTTON)
      button = node;
  if (button == NULL)
    look_give_up (stage, "The drop-down has nothing to press", name);
  act (stage, button, name);
  if (look_wait (stage, look_for_item, &wanted, &opened) == NULL)
    look_give_up (stage, "The drop-down does not offer", item);
  hand_move_to (stage, "Down", item);
  hand_keys (stage, "Return");
}

/**
 * hand_resize:
 * @stage: a stage with a running program
 * @width: width of the window
 * @height: its height
 *
 * Waits until the window has that size; ends the test where the window is too small for what stands in it.
 */
void
hand_resize (Stage *stage,
             int    width,
             int    height)
{
  const gint64 limit = look_get_limit ();
  Glass *glass = stage_get_glass (stage);
  GlassBox box = { 0 };

  glass_resize (glass, glass_find_window (glass), width, height);
  do
    {
      if (glass_get_box (glass, glass_find_window (glass), &box) && box.width == width && box.height == height)
        return;
      stage_pause (LOOK_PAUSE_MS);
    }
  while (g_get_monotonic_time () < limit);

  stage_fail (stage, "The window is %d × %d, not %d × %d", box.width, box.height, width, height);
}

/**
 * hand_picture:
 * @stage: a stage with a running program
 * @path: where the picture goes
 *
 * Saves a picture of the window once nothing moves in it any more.
 */
void
hand_picture (Stage      *stage,
              const char *path)
{
  Glass *glass = stage_get_glass (stage);
  const GlassWindow window = glass_find_window (glass);
  g_autofree guint8 *before = NULL;

  for (guint i = 0; i < 100; i++)
    {
      GlassBox box = { 0 };
      guint8 *now = glass_copy_pixels (glass, window, &box);

      if (now != NULL && before != NULL && memcmp (now, before, (gsize) box.width * (gsize) box.height * 3) == 0)
        {
          g_free (now);
          break;
        }
      g_free (before);
      before = now;
      stage_pause (150);
    }
  if (!glass_save_png (glass, window, path))
    stage_fail (stage, "The picture %s can't be saved", path);
}

/**
 * hand_close:
 * @stage: a stage with a running program
 *
 * Closes the window, waits until the program has ended, and fails the test where it did not end well.
 */
void
hand_close (Stage *stage)
{
  Glass *glass = stage_get_glass (stage);
  int status = 0;

  glass_ask_to_close (glass, glass_find_window (glass));
  status = stage_wait_end (stage);
  if (status != 0)
    stage_fail (stage, "The program ended with status %d", status);
}
