/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "shop.h"

#include <stdarg.h>

#define APPLICATION BB_BUILD_DIR "/src/app/blankbook"
#define COMMAND_LINE BB_BUILD_DIR "/src/cli/blankbook-cli"
#define ARTWORK BB_SOURCE_DIR "/data/demo-artwork.png"

/**
 * shop_new:
 * @size: size of the display, as `1440x900`
 *
 * Returns: (transfer full): a stage whose programs find the settings' schema where it was built
 */
Stage *
shop_new (const char *size)
{
  Stage *stage = stage_new (size);

  stage_set_variable (stage, "GSETTINGS_SCHEMA_DIR", BB_BUILD_DIR "/data");

  return stage;
}

/**
 * shop_run:
 * @stage: a stage
 * @output: (out) (optional): what it printed on standard output
 * @...: arguments of the command line, then %NULL
 *
 * Runs blankbook-cli.
 *
 * Returns: its exit status
 */
int
shop_run (Stage  *stage,
          char  **output,
          ...)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autofree char *own = NULL;
  const char *argument = NULL;
  va_list arguments;
  int status = 0;

  g_ptr_array_add (argv, (char *) COMMAND_LINE);
  va_start (arguments, output);
  while ((argument = va_arg (arguments, const char *)) != NULL)
    g_ptr_array_add (argv, (char *) argument);
  va_end (arguments);
  g_ptr_array_add (argv, NULL);

  status = stage_run (stage, (const char * const *) argv->pdata, output != NULL ? output : &own);

  return status;
}

static char *
make (Stage      *stage,
      const char *command,
      const char *name)
{
  char *path = stage_build_path (stage, name);

  if (shop_run (stage, NULL, "book", command, path, NULL) != 0)
    stage_fail (stage, "The book %s can't be made", path);

  return path;
}

/**
 * shop_make_demo:
 * @stage: a stage
 *
 * Returns: (transfer full): path of a fresh copy of the demo shop's book
 */
char *
shop_make_demo (Stage *stage)
{
  return make (stage, "demo", "demo.book");
}

/**
 * shop_make_book:
 * @stage: a stage
 *
 * Returns: (transfer full): path of a book with nothing in it
 */
char *
shop_make_book (Stage *stage)
{
  return make (stage, "new", "empty.book");
}

/**
 * shop_set:
 * @stage: a stage whose program does not run
 * @key: a key of the program's settings
 * @value: its value, as GVariant text
 *
 * Changes a setting before the program starts.
 */
void
shop_set (Stage      *stage,
          const char *key,
          const char *value)
{
  g_autofree char *folder = stage_build_path (stage, "config/glib-2.0/settings");
  g_autofree char *path = g_build_filename (folder, "keyfile", NULL);
  g_autoptr (GKeyFile) settings = g_key_file_new ();
  g_autoptr (GError) error = NULL;

  g_mkdir_with_parents (folder, 0700);
  g_key_file_load_from_file (settings, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
  g_key_file_set_value (settings, "io/blankbook/Blankbook", key, value);
  if (!g_key_file_save_to_file (settings, path, &error))
    stage_fail (stage, "%s", error->message);
}

/**
 * shop_start:
 * @stage: a stage whose program does not run
 * @file: path of a book, or of something else
 *
 * Starts the program on a file.
 */
void
shop_start (Stage      *stage,
            const char *file)
{
  const char *argv[] = { APPLICATION, file, NULL };

  stage_start (stage, argv);
}

/**
 * shop_start_also:
 * @stage: a stage with the running program
 * @file: path of a book, or of something else
 *
 * Starts the program on another file beside it, which the running one takes over.
 */
void
shop_start_also (Stage      *stage,
                 const char *file)
{
  const char *argv[] = { APPLICATION, file, NULL };

  if (stage_run (stage, argv, NULL) != 0)
    stage_fail (stage, "%s was not taken over", file);
}

/**
 * shop_open:
 * @stage: a stage whose program does not run
 * @book: path of a book
 *
 * Starts the program on a book, and waits for its window.
 */
void
shop_open (Stage      *stage,
           const char *book)
{
  shop_start (stage, book);
  hand_wait_window (stage, "Blankbook");
}

/**
 * shop_go:
 * @stage: a stage with the running program
 * @page: title of a page
 *
 * Goes to a page by the list at the window's side, and waits until it is there.
 */
void
shop_go (Stage      *stage,
         const char *page)
{
  hand_select (stage, page);
  hand_expect_state (stage, ROLE_ITEM, page, STATE_SELECTED);
}

/**
 * shop_choose_file:
 * @stage: a stage with the dialog for files
 * @button: the dialog's button, as it has no name of its own
 * @path: a path
 *
 * Types a path into the dialog for files, and takes it.
 */
void
shop_choose_file (Stage      *stage,
                  const char *button,
                  const char *path)
{
  Glass *glass = stage_get_glass (stage);
  g_autoptr (Node) tree = NULL;

  hand_look (stage, ROLE_BUTTON, button, &tree);
  glass_focus (glass, glass_find_window (glass));
  if (!glass_type (glass, path))
    stage_fail (stage, "The keyboard has not all characters of %s", path);
  hand_keys (stage, "Return");
}

/**
 * shop_choose_artwork:
 * @stage: a stage with the running program, which shows where an artwork goes
 *
 * Chooses the demo's artwork by the dialog for files, and waits until it is shown.
 */
void
shop_choose_artwork (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Choose Artwork…");
  shop_choose_file (stage, "Open", ARTWORK);
  hand_expect (stage, "demo-artwork.png");
  hand_expect (stage, "Advised print mode");
}
