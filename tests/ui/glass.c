/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "glass-private.h"

#include <X11/Xutil.h>
#include <png.h>
#include <string.h>

/* A window may vanish between two requests; what is asked about it then has no answer, and does not end the test. */
static int
ignore_error (Display     *display,
              XErrorEvent *event)
{
  (void) display;
  (void) event;

  return 0;
}

/**
 * glass_new:
 * @display: name of a display, as `:1`
 *
 * Returns: (transfer full) (nullable): the display; %NULL where it can't be opened
 */
Glass *
glass_new (const char *display)
{
  Display *opened = XOpenDisplay (display);
  Glass *self = NULL;

  if (opened == NULL)
    return NULL;

  XSetErrorHandler (ignore_error);
  self = g_new0 (Glass, 1);
  self->display = opened;
  self->root = XDefaultRootWindow (opened);

  return self;
}

/**
 * glass_free:
 * @self: (transfer full): a display
 */
void
glass_free (Glass *self)
{
  XCloseDisplay (self->display);
  g_free (self);
}

static gboolean
get_attributes (Glass            *self,
                GlassWindow       window,
                XWindowAttributes *attributes)
{
  return XGetWindowAttributes (self->display, window, attributes) != 0 && attributes->map_state == IsViewable &&
         attributes->class == InputOutput && attributes->width > 1;
}

/**
 * glass_find_window:
 * @self: a display
 *
 * Without a window manager, every window of a program is a child of the root, the topmost last.
 *
 * Returns: the topmost window that is no menu or popover, or 0
 */
GlassWindow
glass_find_window (Glass *self)
{
  Window root = 0;
  Window parent = 0;
  Window *children = NULL;
  guint n_children = 0;
  GlassWindow found = 0;

  if (XQueryTree (self->display, self->root, &root, &parent, &children, &n_children) == 0)
    return 0;

  for (guint i = n_children; i > 0 && found == 0; i--)
    {
      XWindowAttributes attributes;

      if (get_attributes (self, children[i - 1], &attributes) && !attributes.override_redirect)
        found = children[i - 1];
    }
  if (children != NULL)
    XFree (children);

  return found;
}

/**
 * glass_get_box:
 * @self: a display
 * @window: a window
 * @box: (out): where it is on the display
 *
 * Returns: whether the window can be seen
 */
gboolean
glass_get_box (Glass       *self,
                GlassWindow  window,
                GlassBox    *box)
{
  XWindowAttributes attributes;
  Window child = 0;

  if (!get_attributes (self, window, &attributes))
    return FALSE;
  box->width = attributes.width;
  box->height = attributes.height;

  return XTranslateCoordinates (self->display, window, self->root, 0, 0, &box->x, &box->y, &child) != 0;
}

/**
 * glass_focus:
 * @self: a display
 * @window: a window
 *
 * Gives a window the keyboard, as a window manager would.
 */
void
glass_focus (Glass       *self,
              GlassWindow  window)
{
  Window focused = 0;
  int revert = 0;

  XGetInputFocus (self->display, &focused, &revert);
  if (focused != window)
    XSetInputFocus (self->display, window, RevertToParent, CurrentTime);
  XSync (self->display, False);
}

/**
 * glass_resize:
 * @self: a display
 * @window: a window
 * @width: its new width
 * @height: its new height
 */
void
glass_resize (Glass       *self,
               GlassWindow  window,
               int           width,
               int           height)
{
  XMoveResizeWindow (self->display, window, 0, 0, (guint) width, (guint) height);
  XSync (self->display, False);
}

/**
 * glass_ask_to_close:
 * @self: a display
 * @window: a window
 *
 * Does what the close button of a window frame does. The program may refuse.
 */
void
glass_ask_to_close (Glass       *self,
                     GlassWindow  window)
{
  XEvent event;

  memset (&event, 0, sizeof event);
  event.xclient.type = ClientMessage;
  event.xclient.window = window;
  event.xclient.message_type = XInternAtom (self->display, "WM_PROTOCOLS", False);
  event.xclient.format = 32;
  event.xclient.data.l[0] = (long) XInternAtom (self->display, "WM_DELETE_WINDOW", False);
  XSendEvent (self->display, window, False, NoEventMask, &event);
  XSync (self->display, False);
}

static guint8
get_channel (gulong pixel,
             gulong mask)
{
  return (guint8) ((pixel & mask) >> __builtin_ctzl (mask));
}

/**
 * glass_copy_pixels:
 * @self: a display
 * @window: a window
 * @box: (out): its size, as far as it is on the display
 *
 * What can be seen where the window is: also the menus and dialogs above it.
 *
 * Returns: (transfer full) (nullable): three bytes a pixel, red, green, blue, row by row
 */
guint8 *
glass_copy_pixels (Glass       *self,
                    GlassWindow  window,
                    GlassBox    *box)
{
  XImage *image = NULL;
  XWindowAttributes root;
  guint8 *pixels = NULL;

  if (!glass_get_box (self, window, box) || XGetWindowAttributes (self->display, self->root, &root) == 0)
    return NULL;

  box->width = MIN (box->width, root.width - box->x);
  box->height = MIN (box->height, root.height - box->y);
  image = XGetImage (self->display, self->root, box->x, box->y, (guint) box->width, (guint) box->height, AllPlanes,
                     ZPixmap);
  if (image == NULL)
    return NULL;

  pixels = g_malloc ((gsize) box->width * (gsize) box->height * 3);
  for (int y = 0, i = 0; y < box->height; y++)
    for (int x = 0; x < box->width; x++, i += 3)
      {
        const gulong pixel = XGetPixel (image, x, y);

        pixels[i] = get_channel (pixel, image->red_mask);
        pixels[i + 1] = get_channel (pixel, image->green_mask);
        pixels[i + 2] = get_channel (pixel, image->blue_mask);
      }
  XDestroyImage (image);

  return pixels;
}

/**
 * glass_save_png:
 * @self: a display
 * @window: a window
 * @path: where the picture goes
 *
 * Saves what glass_copy_pixels() sees.
 *
 * Returns: whether there is a picture now
 */
gboolean
glass_save_png (Glass       *self,
                 GlassWindow  window,
                 const char   *path)
{
  GlassBox box;
  g_autofree guint8 *pixels = glass_copy_pixels (self, window, &box);
  png_image image;

  if (pixels == NULL)
    return FALSE;

  memset (&image, 0, sizeof image);
  image.version = PNG_IMAGE_VERSION;
  image.width = (guint32) box.width;
  image.height = (guint32) box.height;
  image.format = PNG_FORMAT_RGB;

  return png_image_write_to_file (&image, path, 0, pixels, 0, NULL) != 0;
}
