/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "node.h"

#include <string.h>

static const struct {
  guint number;
  Role role;
} roles[] = {
  /* The numbers of AtspiRole, AT-SPI 2.46. */
  { 7, ROLE_CHECK },      /* check box */
  { 8, ROLE_MENU_ITEM },  /* check menu item */
  { 11, ROLE_COMBO },     /* combo box */
  { 16, ROLE_WINDOW },    /* dialog */
  { 22, ROLE_PANEL },     /* filler */
  { 23, ROLE_WINDOW },    /* frame */
  { 26, ROLE_IMAGE },     /* icon */
  { 27, ROLE_IMAGE },     /* image */
  { 29, ROLE_LABEL },     /* label */
  { 31, ROLE_LIST },      /* list */
  { 32, ROLE_ITEM },      /* list item */
  { 35, ROLE_MENU_ITEM }, /* menu item */
  { 37, ROLE_TAB },       /* page tab */
  { 39, ROLE_PANEL },     /* panel */
  { 40, ROLE_ENTRY },     /* password text */
  { 43, ROLE_BUTTON },    /* push button */
  { 44, ROLE_CHECK },     /* radio button */
  { 45, ROLE_MENU_ITEM }, /* radio menu item */
  { 49, ROLE_SCROLLER },  /* scroll pane */
  { 50, ROLE_IMAGE },     /* separator */
  { 52, ROLE_ENTRY },     /* spin button */
  { 56, ROLE_ITEM },      /* table cell */
  { 61, ROLE_ENTRY },     /* text */
  { 62, ROLE_BUTTON },    /* toggle button */
  { 69, ROLE_WINDOW },    /* window */
  { 75, ROLE_PROGRAM },   /* application */
  { 79, ROLE_ENTRY },     /* entry */
  { 88, ROLE_BUTTON },    /* link */
  { 90, ROLE_ITEM },      /* table row */
  { 98, ROLE_LIST },      /* list box */
  { 99, ROLE_PANEL },     /* grouping */
  { 116, ROLE_LABEL },    /* static */
  { 130, ROLE_CHECK },    /* switch */
};

/**
 * node_free:
 * @self: (transfer full): a node, and all below it
 */
void
node_free (Node *self)
{
  g_clear_pointer (&self->children, g_ptr_array_unref);
  g_free (self->owner);
  g_free (self->path);
  g_free (self->name);
  g_free (self->text);
  g_free (self);
}

/**
 * node_new:
 * @parent: (nullable): the node that it is in, which owns it
 * @owner: name on the bus
 * @path: path on the bus
 *
 * Returns: (transfer none): a node of which nothing else is known; (transfer full) without a parent
 */
Node *
node_new (Node       *parent,
          const char *owner,
          const char *path)
{
  Node *self = g_new0 (Node, 1);

  self->owner = g_strdup (owner);
  self->path = g_strdup (path);
  self->name = g_strdup ("");
  self->parent = parent;
  self->children = g_ptr_array_new_with_free_func ((GDestroyNotify) node_free);
  if (parent != NULL)
    {
      self->index = parent->children->len;
      g_ptr_array_add (parent->children, self);
    }

  return self;
}

/* The underscore before the letter that a key press stands for is not read out. */
static char *
drop_mnemonics (const char *name)
{
  GString *text = g_string_new (NULL);

  for (const char *c = name; *c != '\0'; c++)
    if (*c != '_' || !g_ascii_isalnum (c[1]) || (c != name && g_ascii_isalnum (c[-1])))
      g_string_append_c (text, *c);

  return g_string_free (text, FALSE);
}

static gboolean
is_class_name (const char *name)
{
  static const char *const prefixes[] = { "Gtk", "Adw", "Gdk", "Bb" };

  for (guint i = 0; i < G_N_ELEMENTS (prefixes); i++)
    if (g_str_has_prefix (name, prefixes[i]) && g_ascii_isupper (name[strlen (prefixes[i])]))
      return strspn (name, G_CSET_a_2_z G_CSET_A_2_Z) == strlen (name);

  return FALSE;
}

/* A toolkit that has no name for a thing may give the name of its class; and one that has it twice, twice. */
static char *
tidy (const char *name)
{
  g_autofree char *plain = drop_mnemonics (name);
  const gsize half = strlen (plain) / 2;

  if (is_class_name (plain))
    return g_strdup ("");
  if (half > 0 && plain[half] == ' ' && strncmp (plain, plain + half + 1, half) == 0 && strlen (plain) == 2 * half + 1)
    return g_strndup (plain, half);

  return g_steal_pointer (&plain);
}

/**
 * node_set_role:
 * @node: a node
 * @number: number of its role in the protocol
 */
void
node_set_role (Node  *node,
               guint  number)
{
  node->raw_role = number;
  node->role = ROLE_OTHER;
  for (guint i = 0; i < G_N_ELEMENTS (roles); i++)
    if (roles[i].number == number)
      node->role = roles[i].role;
}

/**
 * node_set_states:
 * @node: a node
 * @words: two words of state bits
 */
void
node_set_states (Node     *node,
                 GVariant *words)
{
  guint32 low = 0;
  guint32 high = 0;

  g_variant_get_child (words, 0, "u", &low);
  g_variant_get_child (words, 1, "u", &high);
  node->states = low | (guint64) high << 32;
}

/**
 * node_set_name:
 * @node: a node
 * @name: its name as the toolkit gives it
 */
void
node_set_name (Node       *node,
               const char *name)
{
  g_free (node->name);
  node->name = tidy (name);
}

/**
 * node_next:
 * @root: a tree
 * @node: (nullable): a node of it
 *
 * Returns: (transfer none) (nullable): the node that comes after @node in reading order, the first for %NULL
 */
Node *
node_next (Node *root,
           Node *node)
{
  if (node == NULL)
    return root;
  if (node->children->len > 0)
    return node->children->pdata[0];

  for (; node != root; node = node->parent)
    if (node->index + 1 < node->parent->children->len)
      return node->parent->children->pdata[node->index + 1];

  return NULL;
}

/**
 * node_print:
 * @root: a tree
 *
 * Returns: (transfer full): one line for each thing that is shown
 */
char *
node_print (Node *root)
{
  GString *text = g_string_new (NULL);

  for (Node *node = root; node != NULL; node = node_next (root, node))
    {
      guint depth = 0;

      for (const Node *parent = node->parent; parent != NULL; parent = parent->parent)
        depth++;
      g_string_append_printf (text, "%*srole %u “%s”", (int) depth * 2, "", node->raw_role, node->name);
      if (node->text != NULL)
        g_string_append_printf (text, " text “%s”", node->text);
      g_string_append_printf (text, " states %" G_GINT64_MODIFIER "x at %d,%d %d×%d%s\n", node->states, node->box.x,
                              node->box.y, node->box.width, node->box.height, node->shown ? "" : " hidden");
    }

  return g_string_free (text, FALSE);
}

/**
 * node_has_state:
 * @self: a node
 * @state: a state
 *
 * Returns: whether it had that state when the tree was read
 */
gboolean
node_has_state (const Node *self,
                State       state)
{
  return (self->states >> state & 1) != 0;
}

/**
 * node_get_window:
 * @self: a node
 *
 * Returns: (transfer none) (nullable): the window that it is in, or is
 */
Node *
node_get_window (Node *self)
{
  while (self != NULL && self->role != ROLE_WINDOW)
    self = self->parent;

  return self;
}

/**
 * node_call:
 * @stage: the stage
 * @self: a node
 * @interface: (nullable): an interface, without `org.a11y.atspi.`; %NULL for that of properties
 * @method: a method
 * @arguments: (nullable): its arguments
 * @reply_type: type of the reply
 *
 * Returns: (transfer full) (nullable): the reply, %NULL where the program refuses
 */
GVariant *
node_call (Stage      *stage,
           const Node *self,
           const char *interface,
           const char *method,
           GVariant   *arguments,
           const char *reply_type)
{
  g_autofree char *full = interface == NULL ? g_strdup ("org.freedesktop.DBus.Properties")
                                            : g_strconcat ("org.a11y.atspi.", interface, NULL);

  return g_dbus_connection_call_sync (stage_get_bus (stage), self->owner, self->path, full, method, arguments,
                                      G_VARIANT_TYPE (reply_type), G_DBUS_CALL_FLAGS_NO_AUTO_START,
                                      (int) (stage_get_patience () * 1000), NULL, NULL);
}
