/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "pointer.h"

/* How far newer toolkits may be wrong about where something is, and in what steps the right place is looked for. */
#define MAX_OFFSET 44
#define OFFSET_STEP 4

/* What is left of a thing at the edge of a list can be pressed if it is as high as this. */
#define LEAST_HEIGHT 8

/* From the edge of a list: within it, and beside what stands in it. */
#define EDGE 4

/* Longer than a frame takes on a busy machine. */
#define REST_MS 50

/* A window or popover on the display, and where its accessible coordinates begin. */
typedef struct {
  Node *node;
  gboolean is_popup;
  int x;
  int y;
} Surface;

static gboolean
find_surface (Stage   *stage,
              Node    *node,
              Surface *surface)
{
  Glass *glass = stage_get_glass (stage);
  GlassBox box = { 0 };
  GlassWindow window = 0;
  Node *owner = node;

  /* A popover is a window of its own on the display, as large as what it is in the tree. */
  for (; owner != NULL && owner->role != ROLE_WINDOW; owner = owner->parent)
    {
      window = owner->has_box ? glass_find_popup (glass, owner->box.width, owner->box.height) : 0;
      if (window != 0)
        break;
    }
  if (owner == NULL)
    return FALSE;

  surface->node = owner;
  surface->is_popup = window != 0;
  if (!surface->is_popup)
    window = glass_find_window (glass);
  if (window == 0 || !glass_get_box (glass, window, &box))
    return FALSE;

  surface->x = box.x + (box.width - owner->box.width) / 2 - owner->box.x;
  surface->y = box.y + (box.height - owner->box.height) / 2 - owner->box.y;

  return TRUE;
}

static Node *
find_scroller (Node *node)
{
  for (Node *owner = node->parent; owner != NULL && owner->role != ROLE_WINDOW; owner = owner->parent)
    if (owner->role == ROLE_SCROLLER)
      return owner;

  return NULL;
}

static gboolean
is_hit (Stage         *stage,
        const Surface *surface,
        const Node    *node,
        int            x,
        int            y)
{
  const Node *found = tree_find_at (stage, surface->node, x, y);

  /* What is inside an entry is nothing of its own: nothing is told about it. */
  if (found == NULL)
    return node->role == ROLE_ENTRY;

  for (; found != NULL; found = found->parent)
    if (found == node)
      return TRUE;

  return FALSE;
}

/*
 * From 4.10 on, GTK leaves the padding of everything around a thing out of its place, which is then too far up and
 * left. The middle of the points that are found to be on it is on it in any case.
 */
static gboolean
aim (Stage         *stage,
     const Surface *surface,
     const Node    *node,
     int           *x,
     int           *y)
{
  int first = -1;
  int last = -1;

  if (surface->is_popup || is_hit (stage, surface, node, *x, *y))
    return TRUE;

  for (int offset = 0; offset <= MAX_OFFSET; offset += OFFSET_STEP)
    if (is_hit (stage, surface, node, *x + offset, *y + offset))
      {
        first = first < 0 ? offset : first;
        last = offset;
      }
  *x += (first + last) / 2;
  *y += (first + last) / 2;

  return first >= 0;
}

/* Whether a thing is where it was when the tree was read: what has just been scrolled or opened may still move. */
static gboolean
is_at_rest (Stage      *stage,
            const Node *node)
{
  GlassBox now = { 0 };
  g_autoptr (GVariant) reply = NULL;

  stage_pause (REST_MS);
  reply = node_call (stage, node, "Component", "GetExtents", g_variant_new ("(u)", 1u), "((iiii))");
  if (reply == NULL)
    return FALSE;
  g_variant_get (reply, "((iiii))", &now.x, &now.y, &now.width, &now.height);

  return now.x == node->box.x && now.y == node->box.y && now.width == node->box.width && now.height == node->box.height;
}

/**
 * pointer_click:
 * @stage: a stage
 * @node: what to press
 *
 * Presses a thing with the pointer. What is outside of the visible part of a list is scrolled towards instead; what
 * moves, is covered or was scrolled has to be looked for again.
 *
 * Returns: whether it was pressed, has to be looked for again, or has no place on the display
 */
PointerResult
pointer_click (Stage *stage,
               Node  *node)
{
  Glass *glass = stage_get_glass (stage);
  const Node *scroller = find_scroller (node);
  GlassBox box = node->box;
  Surface surface = { 0 };
  int x = 0;
  int y = 0;

  if (!find_surface (stage, node, &surface))
    return POINTER_LOST;
  if (!is_at_rest (stage, node))
    return POINTER_MOVING;

  if (scroller != NULL)
    {
      const int top = MAX (box.y, scroller->box.y);
      const int bottom = MIN (box.y + box.height, scroller->box.y + scroller->box.height);

      if (bottom - top < LEAST_HEIGHT)
        {
          /* A list has not yet placed what is far down in it. */
          const gboolean upwards = box.height > 0 && box.y < scroller->box.y;

          /* At the right edge, where nothing is that the wheel would turn instead. */
          glass_scroll (glass, surface.x + scroller->box.x + scroller->box.width - EDGE,
                        surface.y + scroller->box.y + scroller->box.height / 2, upwards ? -1 : 1);
          return POINTER_MOVING;
        }
      box.y = top;
      box.height = bottom - top;
    }

  x = box.x + box.width / 2;
  y = box.y + box.height / 2;
  if (!aim (stage, &surface, node, &x, &y))
    return POINTER_MOVING;
  glass_click (glass, surface.x + x, surface.y + y);

  return POINTER_PRESSED;
}
