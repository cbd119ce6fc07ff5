/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "tree.h"

#define ATSPI "org.a11y.atspi."
#define ROOT "/org/a11y/atspi/accessible/root"

/* A kind of relation in the protocol. */
#define LABELLED_BY 2

/* Requests that are sent before the first answer is waited for; the stage's bus takes some thousands. */
#define IN_FLIGHT 1000

/* Sent and not yet answered requests of one level of the tree. */
typedef struct {
  Stage *stage;
  guint left;
  gboolean is_sure;

  /* What the program told about everything at once, by path. */
  GHashTable *items;
} Round;

typedef void (*ReplyFunc) (Node     *node,
                           GVariant *reply);

typedef struct {
  Round *round;
  Node *node;
  ReplyFunc func;
} Request;

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  Request *request = data;
  g_autoptr (GVariant) reply = g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);

  /* What has gone between two requests has no answer, and stays as it was made: not shown. */
  if (reply != NULL)
    request->func (request->node, reply);
  request->round->left--;
  g_free (request);
}

static void
ask (Round      *round,
     Node       *node,
     const char *interface,
     const char *method,
     GVariant   *arguments,
     ReplyFunc   func)
{
  Request *request = g_new0 (Request, 1);

  while (round->left >= IN_FLIGHT)
    g_main_context_iteration (NULL, TRUE);

  request->round = round;
  request->node = node;
  request->func = func;
  round->left++;
  g_dbus_connection_call (stage_get_bus (round->stage), node->owner, node->path, interface, method, arguments, NULL,
                          G_DBUS_CALL_FLAGS_NO_AUTO_START, (int) (stage_get_patience () * 1000), NULL, answered_cb,
                          request);
}

static void
wait_for_answers (Round *round)
{
  while (round->left > 0)
    g_main_context_iteration (NULL, TRUE);
}

static void
take_properties (Node     *node,
                 GVariant *reply)
{
  g_autoptr (GVariant) values = g_variant_get_child_value (reply, 0);
  const char *name = NULL;

  if (g_variant_lookup (values, "Name", "&s", &name))
    node_set_name (node, name);
}

static void
take_role (Node     *node,
           GVariant *reply)
{
  guint number = 0;

  g_variant_get (reply, "(u)", &number);
  node_set_role (node, number);
}

static void
take_states (Node     *node,
             GVariant *reply)
{
  g_autoptr (GVariant) words = g_variant_get_child_value (reply, 0);

  node_set_states (node, words);
}

static void
take_box (Node     *node,
          GVariant *reply)
{
  g_variant_get (reply, "((iiii))", &node->box.x, &node->box.y, &node->box.width, &node->box.height);
  node->has_box = TRUE;
}

static void
take_children (Node     *node,
               GVariant *reply)
{
  g_autoptr (GVariantIter) children = NULL;
  const char *owner = NULL;
  const char *path = NULL;

  g_variant_get (reply, "(a(so))", &children);
  while (g_variant_iter_next (children, "(&s&o)", &owner, &path))
    if (!g_str_has_suffix (path, "/null"))
      node_new (node, owner, path);
}

static void
take_text (Node     *node,
           GVariant *reply)
{
  g_free (node->text);
  g_variant_get (reply, "(s)", &node->text);
}

static void
add_items (Round      *round,
           const Node *program)
{
  g_autoptr (GVariant) reply = NULL;
  g_autoptr (GVariantIter) items = NULL;
  GVariant *item = NULL;

  reply = g_dbus_connection_call_sync (stage_get_bus (round->stage), program->owner, "/org/a11y/atspi/cache",
                                       ATSPI "Cache", "GetItems", NULL, G_VARIANT_TYPE ("(a((so)(so)(so)iiassusau))"),
                                       G_DBUS_CALL_FLAGS_NO_AUTO_START, (int) (stage_get_patience () * 1000), NULL,
                                       NULL);
  if (reply == NULL)
    return;

  g_variant_get (reply, "(a*)", &items);
  while ((item = g_variant_iter_next_value (items)) != NULL)
    {
      char *path = NULL;

      g_variant_get_child (item, 0, "(so)", NULL, &path);
      g_hash_table_insert (round->items, path, item);
    }
}

static gboolean
take_item (Round *round,
           Node  *node)
{
  GVariant *item = g_hash_table_lookup (round->items, node->path);
  g_autoptr (GVariant) states = NULL;
  const char *name = NULL;
  guint number = 0;

  if (item == NULL)
    return FALSE;

  g_variant_get_child (item, 6, "&s", &name);
  g_variant_get_child (item, 7, "u", &number);
  states = g_variant_get_child_value (item, 9);
  node_set_name (node, name);
  node_set_role (node, number);
  node_set_states (node, states);

  return TRUE;
}

static void
ask_about (Round *round,
           Node  *node)
{
  if (!take_item (round, node))
    {
      ask (round, node, "org.freedesktop.DBus.Properties", "GetAll", g_variant_new ("(s)", ATSPI "Accessible"),
           take_properties);
      ask (round, node, ATSPI "Accessible", "GetRole", NULL, take_role);
      ask (round, node, ATSPI "Accessible", "GetState", NULL, take_states);
    }
}

/* Nothing is in these and nobody presses them, they are a third of all, and where the thing around them is. */
static gboolean
is_leaf (const Node *node)
{
  return node->role == ROLE_LABEL || node->role == ROLE_IMAGE;
}

static void
collect (Node      *node,
         guint      depth,
         GPtrArray *level)
{
  if (depth == 0)
    g_ptr_array_add (level, node);
  else
    for (guint i = 0; i < node->children->len; i++)
      collect (node->children->pdata[i], depth - 1, level);
}

static void
place (Node *node)
{
  const Node *parent = node->parent;

  node->shown = TRUE;
  if (parent == NULL || parent->role == ROLE_PROGRAM)
    return;

  node->shown = parent->shown && node_has_state (node, STATE_VISIBLE) &&
                (!node->has_box || (node->box.width > 0 && node->box.height > 0));
}

/* A page of a stack fills the stack. */
static gboolean
is_page (const Node *node)
{
  const GlassBox *whole = &node->parent->box;

  return node->shown && node->role != ROLE_WINDOW && node->has_box && node->parent->has_box &&
         10.0 * node->box.width * node->box.height > 8.0 * whole->width * whole->height;
}

static Node *
find_path (Node       *root,
           const char *path)
{
  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (g_str_equal (node->path, path))
      return node;

  return NULL;
}

static GVariant *
ask_parent (Stage    *stage,
            GVariant *place)
{
  Node node = { 0 };
  g_autoptr (GVariant) reply = NULL;
  g_autoptr (GVariant) value = NULL;

  g_variant_get (place, "(&s&o)", &node.owner, &node.path);
  reply = node_call (stage, &node, NULL, "Get", g_variant_new ("(ss)", ATSPI "Accessible", "Parent"), "(v)");
  if (reply != NULL)
    g_variant_get (reply, "(v)", &value);

  return g_steal_pointer (&value);
}

/* What a press there would reach, or the nearest thing around it that was read. */
static Node *
find_at (Stage *stage,
         Node  *window,
         int    x,
         int    y)
{
  g_autoptr (GVariant) reply = NULL;
  g_autoptr (GVariant) place = NULL;

  reply = node_call (stage, window, "Component", "GetAccessibleAtPoint", g_variant_new ("(iiu)", x, y, 1u), "((so))");
  if (reply != NULL)
    place = g_variant_get_child_value (reply, 0);
  while (place != NULL)
    {
      const char *path = NULL;
      Node *found = NULL;
      GVariant *parent = NULL;

      g_variant_get (place, "(&s&o)", NULL, &path);
      found = find_path (window, path);
      if (found != NULL || g_str_has_suffix (path, "/null"))
        return found;
      parent = ask_parent (stage, place);
      g_variant_unref (place);
      place = parent;
    }

  return NULL;
}

/*
 * GTK 4.8 says of every page of a stack that was ever shown that it is visible, with the place it had. Where brothers
 * lie on top of each other, what is found under a point tells which of them a person sees. From 4.10 on, where what is
 * shown says so, pages that are not seen have nothing in them.
 */
static gboolean
hide_covered_pages (Stage *stage,
                    Node  *parent)
{
  static const int points[][2] = { { 50, 50 }, { 50, 12 }, { 25, 30 }, { 75, 75 }, { 6, 6 }, { 93, 20 }, { 12, 85 } };
  g_autoptr (GPtrArray) pages = g_ptr_array_new ();
  Node *window = node_get_window (parent);
  Node *seen = NULL;

  for (guint i = 0; i < parent->children->len; i++)
    if (is_page (parent->children->pdata[i]))
      g_ptr_array_add (pages, parent->children->pdata[i]);
  if (pages->len < 2 || window == NULL || node_has_state (parent, STATE_SHOWING))
    return TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (points) && seen == NULL; i++)
    {
      seen = find_at (stage, window, parent->box.x + parent->box.width * points[i][0] / 100,
                           parent->box.y + parent->box.height * points[i][1] / 100);
      if (!g_ptr_array_find (pages, seen, NULL))
        seen = NULL;
    }
  for (guint i = 0; i < pages->len && seen != NULL; i++)
    ((Node *) pages->pdata[i])->shown = pages->pdata[i] == seen;

  return seen != NULL;
}

static void
settle (Round     *round,
        GPtrArray *level)
{
  const Node *parent = NULL;

  for (guint i = 0; i < level->len; i++)
    place (level->pdata[i]);
  for (guint i = 0; i < level->len; i++)
    {
      Node *node = level->pdata[i];

      if (node->parent != parent && !hide_covered_pages (round->stage, node->parent))
        round->is_sure = FALSE;
      parent = node->parent;
    }
}

/* From 4.10 on, GTK leaves the items of menus without a name, and tells what labels them. */
static void
name_by_label (Stage *stage,
               Node  *item)
{
  g_autoptr (GVariant) reply = node_call (stage, item, "Accessible", "GetRelationSet", NULL, "(a(ua(so)))");
  g_autoptr (GVariantIter) relations = NULL;
  g_autoptr (GVariant) targets = NULL;
  guint kind = 0;

  if (reply != NULL)
    g_variant_get (reply, "(a(ua(so)))", &relations);
  while (relations != NULL && g_variant_iter_loop (relations, "(u@a(so))", &kind, &targets))
    if (kind == LABELLED_BY && g_variant_n_children (targets) > 0)
      {
        Node label = { 0 };
        g_autoptr (GVariant) text = NULL;

        g_variant_get_child (targets, 0, "(&s&o)", &label.owner, &label.path);
        text = node_call (stage, &label, "Text", "GetText", g_variant_new ("(ii)", 0, G_MAXINT32), "(s)");
        if (text != NULL)
          {
            const char *name = NULL;

            g_variant_get (text, "(&s)", &name);
            node_set_name (item, name);
          }
      }
}

static void
ask_about_level (Round     *round,
                 GPtrArray *level)
{
  for (guint i = 0; i < level->len; i++)
    ask_about (round, level->pdata[i]);
  wait_for_answers (round);
  /* 1: relative to the window. */
  for (guint i = 0; i < level->len; i++)
    if (!is_leaf (level->pdata[i]))
      ask (round, level->pdata[i], ATSPI "Component", "GetExtents", g_variant_new ("(u)", 1u), take_box);
  wait_for_answers (round);
  settle (round, level);

  for (guint i = 0; i < level->len; i++)
    {
      Node *node = level->pdata[i];

      if (node->shown && node->role == ROLE_MENU_ITEM && *node->name == '\0')
        name_by_label (round->stage, node);
      if (node->shown && !is_leaf (node))
        ask (round, node, ATSPI "Accessible", "GetChildren", NULL, take_children);
      if (node->shown && node->role == ROLE_ENTRY)
        ask (round, node, ATSPI "Text", "GetText", g_variant_new ("(ii)", 0, G_MAXINT32), take_text);
    }
  wait_for_answers (round);
}

static Node *
read_once (Round *round)
{
  g_autoptr (GPtrArray) level = g_ptr_array_new ();
  Node *root = node_new (NULL, "org.a11y.atspi.Registry", ROOT);

  root->shown = TRUE;
  root->role = ROLE_PROGRAM;
  round->is_sure = TRUE;
  ask (round, root, ATSPI "Accessible", "GetChildren", NULL, take_children);
  wait_for_answers (round);
  round->items = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_variant_unref);
  for (guint i = 0; i < root->children->len; i++)
    add_items (round, root->children->pdata[i]);

  for (guint depth = 1; depth == 1 || level->len > 0; depth++)
    {
      g_ptr_array_set_size (level, 0);
      collect (root, depth, level);
      ask_about_level (round, level);
    }
  g_clear_pointer (&round->items, g_hash_table_unref);

  return root;
}

/**
 * tree_read:
 * @stage: a stage with a running program
 *
 * Reads everything of the program that assistive technology can see.
 *
 * Returns: (transfer full): the root; a program that is still starting has no windows under it
 */
Node *
tree_read (Stage *stage)
{
  Round round = { stage, 0, TRUE, NULL };
  Node *root = read_once (&round);

  /* GTK finds under a point only what was asked about before: the second time it knows the pages of a stack apart. */
  if (!round.is_sure)
    {
      node_free (root);
      root = read_once (&round);
    }

  return root;
}
