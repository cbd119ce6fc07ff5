/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "glass-private.h"

#include <X11/XKBlib.h>
#include <X11/extensions/XTest.h>

static void
send_key (Glass   *self,
          KeyCode   code,
          gboolean  down)
{
  XTestFakeKeyEvent (self->display, code, down, CurrentTime);
  XSync (self->display, False);
}

static void
stroke (Glass   *self,
        KeyCode   code,
        gboolean  shifted)
{
  const KeyCode shift = XKeysymToKeycode (self->display, XStringToKeysym ("Shift_L"));

  if (shifted)
    send_key (self, shift, TRUE);
  send_key (self, code, TRUE);
  send_key (self, code, FALSE);
  if (shifted)
    send_key (self, shift, FALSE);
}

/**
 * glass_press:
 * @self: a display
 * @keys: names of keys that are held down together, as `Control_L+f`
 *
 * Presses keys of the window that has the keyboard.
 */
void
glass_press (Glass     *self,
              const char *keys)
{
  g_auto (GStrv) names = g_strsplit (keys, "+", -1);
  const guint n = g_strv_length (names);
  KeyCode codes[8];

  g_assert_cmpuint (n, <=, G_N_ELEMENTS (codes));
  for (guint i = 0; i < n; i++)
    {
      codes[i] = XKeysymToKeycode (self->display, XStringToKeysym (names[i]));
      if (codes[i] == 0)
        g_error ("No key is called “%s”", names[i]);
      send_key (self, codes[i], TRUE);
    }
  for (guint i = n; i > 0; i--)
    send_key (self, codes[i - 1], FALSE);
}

/**
 * glass_type:
 * @self: a display
 * @text: printable ASCII
 *
 * Types a text, key by key.
 *
 * Returns: whether the keyboard has all its characters
 */
gboolean
glass_type (Glass     *self,
             const char *text)
{
  for (const char *c = text; *c != '\0'; c++)
    {
      /* The keysyms of printable ASCII are its codes. */
      const KeySym symbol = (guchar) *c;
      const KeyCode code = XKeysymToKeycode (self->display, symbol);

      if (symbol < 0x20 || symbol > 0x7e || code == 0)
        return FALSE;
      stroke (self, code, XkbKeycodeToKeysym (self->display, code, 0, 0) != symbol);
    }

  return TRUE;
}
