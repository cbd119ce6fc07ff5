/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "stage-private.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdio.h>
#include <sys/prctl.h>
#include <unistd.h>

static const char registry_places[][48] = {
  "/usr/libexec/at-spi2-registryd",
  "/usr/lib/at-spi2-core/at-spi2-registryd",
};

/* A window that moves can't be read or compared, and a cursor that blinks makes pictures differ. */
static const char toolkit_settings[] =
  "[Settings]\n"
  "gtk-enable-animations=0\n"
  "gtk-cursor-blink=0\n"
  "gtk-overlay-scrolling=0\n"
  "gtk-font-name=Cantarell 11\n"
  "gtk-xft-antialias=1\n"
  "gtk-xft-hinting=1\n"
  "gtk-xft-hintstyle=hintslight\n"
  "gtk-xft-rgba=none\n";

static const char bus_settings[] =
  "<!DOCTYPE busconfig PUBLIC \"-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN\" "
  "\"http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd\">\n"
  "<busconfig><type>session</type><listen>unix:dir=%s</listen><auth>EXTERNAL</auth><policy context=\"default\">"
  "<allow send_destination=\"*\" eavesdrop=\"true\"/><allow eavesdrop=\"true\"/><allow own=\"*\"/></policy>"
  "<limit name=\"max_replies_per_connection\">4096</limit></busconfig>\n";

/* What a test started must not outlive it, even where the test is killed. */
static void
die_with_parent (gpointer data)
{
  (void) data;
  prctl (PR_SET_PDEATHSIG, SIGKILL);
}

/**
 * _stage_spawn:
 * @self: a stage
 * @argv: a program and its arguments
 * @log: name of the file in the stage's folder that takes what it prints
 * @descriptor: a descriptor that becomes its third, or -1
 *
 * Returns: (transfer full): the running program
 */
GSubprocess *
_stage_spawn (Stage              *self,
              const char * const *argv,
              const char         *log,
              int                 descriptor)
{
  g_autoptr (GSubprocessLauncher) launcher = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (self->folder, log, NULL);
  GSubprocess *process = NULL;

  launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDERR_MERGE);
  g_subprocess_launcher_set_environ (launcher, self->environment);
  g_subprocess_launcher_set_child_setup (launcher, die_with_parent, NULL, NULL);
  g_subprocess_launcher_set_stdout_file_path (launcher, path);
  if (descriptor >= 0)
    g_subprocess_launcher_take_fd (launcher, descriptor, 3);

  process = g_subprocess_launcher_spawnv (launcher, argv, &error);
  if (process == NULL)
    stage_fail (self, "%s does not start: %s", argv[0], error->message);

  return process;
}

static void
make_folders (Stage *self)
{
  const char *const folders[] = { "home", "data", "cache", "state", "run", "config/gtk-4.0", NULL };
  const char *const variables[] = { "HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME", "XDG_RUNTIME_DIR" };
  g_autoptr (GError) error = NULL;
  g_autofree char *config = NULL;
  g_autofree char *settings = NULL;

  self->folder = g_dir_make_tmp ("blankbook-stage-XXXXXX", &error);
  if (self->folder == NULL)
    g_error ("%s", error->message);

  for (guint i = 0; folders[i] != NULL; i++)
    {
      g_autofree char *path = stage_build_path (self, folders[i]);

      g_assert_cmpint (g_mkdir_with_parents (path, 0700), ==, 0);
      if (i < G_N_ELEMENTS (variables))
        stage_set_variable (self, variables[i], path);
    }
  config = stage_build_path (self, "config");
  stage_set_variable (self, "XDG_CONFIG_HOME", config);

  settings = stage_build_path (self, "config/gtk-4.0/settings.ini");
  if (!g_file_set_contents (settings, toolkit_settings, -1, &error))
    g_error ("%s", error->message);
}

static void
make_environment (Stage *self)
{
  static const char *const dropped[] = {
    "WAYLAND_DISPLAY", "XAUTHORITY", "NO_AT_BRIDGE", "GTK_THEME", "GDK_SCALE", "GTK_MODULES", "DESKTOP_STARTUP_ID",
    "XDG_CURRENT_DESKTOP", "LANGUAGE", "GTK_DEBUG", NULL,
  };
  static const char *const fixed[][2] = {
    { "GDK_BACKEND", "x11" },
    { "GDK_DEBUG", "gl-disable" },
    { "GDK_DISABLE", "gl" },
    { "GDK_DISABLE", "gl,vulkan" },
    { "GSK_RENDERER", "cairo" },
    { "GTK_A11Y", "atspi" },
    { "GSETTINGS_BACKEND", "keyfile" },
    { "GIO_USE_VFS", "local" },
    { "ADW_DISABLE_PORTAL", "1" },
    { "LC_ALL", "C.UTF-8" },
  };

  self->environment = g_get_environ ();
  for (guint i = 0; dropped[i] != NULL; i++)
    self->environment = g_environ_unsetenv (self->environment, dropped[i]);
  for (guint i = 0; i < G_N_ELEMENTS (fixed); i++)
    stage_set_variable (self, fixed[i][0], fixed[i][1]);
}

/* Starts a program that tells on descriptor 3 how it can be reached, once it can be. */
static GSubprocess *
spawn_server (Stage              *self,
              const char * const *argv,
              const char         *log,
              char              **answer)
{
  char line[256] = "";
  int ends[2];
  FILE *stream = NULL;
  GSubprocess *process = NULL;

  g_assert_cmpint (pipe (ends), ==, 0);
  process = _stage_spawn (self, argv, log, ends[1]);
  stream = fdopen (ends[0], "r");
  if (fgets (line, sizeof line, stream) == NULL)
    stage_fail (self, "%s ended before it could be reached", argv[0]);
  fclose (stream);
  *answer = g_strdup (g_strchomp (line));

  return process;
}

static void
start_display (Stage      *self,
               const char *size)
{
  g_autofree char *screen = g_strconcat (size, "x24", NULL);
  g_autofree char *number = NULL;
  g_autofree char *name = NULL;
  const char *argv[] = {
    "Xvfb", "-displayfd", "3", "-screen", "0", screen, "-nolisten", "tcp", "-noreset", "-dpi", "96", NULL,
  };

  self->display = spawn_server (self, argv, "display.log", &number);
  name = g_strconcat (":", number, NULL);
  stage_set_variable (self, "DISPLAY", name);
  self->glass = glass_new (name);
  if (self->glass == NULL)
    stage_fail (self, "The virtual display %s can't be opened", name);
}

/* Nothing is started by being called: only what the stage starts can answer. */
static void
start_bus (Stage *self)
{
  g_autofree char *run = stage_build_path (self, "run");
  g_autofree char *path = stage_build_path (self, "bus.conf");
  g_autofree char *text = g_strdup_printf (bus_settings, run);
  g_autofree char *option = g_strconcat ("--config-file=", path, NULL);
  g_autofree char *address = NULL;
  g_autoptr (GError) error = NULL;
  const char *argv[] = { "dbus-daemon", option, "--nofork", "--nopidfile", "--print-address=3", NULL };

  if (!g_file_set_contents (path, text, -1, &error))
    stage_fail (self, "%s", error->message);
  self->daemon = spawn_server (self, argv, "bus.log", &address);
  stage_set_variable (self, "DBUS_SESSION_BUS_ADDRESS", address);
  /* One bus for both: programs ask here first, so that no launcher makes a second bus. */
  stage_set_variable (self, "AT_SPI_BUS_ADDRESS", address);
  self->bus = g_dbus_connection_new_for_address_sync (address,
                                                      G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT |
                                                        G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION,
                                                      NULL, NULL, &error);
  if (self->bus == NULL)
    stage_fail (self, "No message bus: %s", error->message);
}

static gboolean
has_registry (Stage *self)
{
  g_autoptr (GVariant) reply = NULL;

  reply = g_dbus_connection_call_sync (self->bus, "org.freedesktop.DBus", "/org/freedesktop/DBus",
                                       "org.freedesktop.DBus", "NameHasOwner",
                                       g_variant_new ("(s)", "org.a11y.atspi.Registry"), G_VARIANT_TYPE ("(b)"),
                                       G_DBUS_CALL_FLAGS_NONE, -1, NULL, NULL);

  return reply != NULL && g_variant_get_boolean (g_variant_get_child_value (reply, 0));
}

static void
start_registry (Stage *self)
{
  const char *argv[] = { NULL, NULL };
  double left = stage_get_patience ();

  for (guint i = 0; i < G_N_ELEMENTS (registry_places); i++)
    if (g_file_test (registry_places[i], G_FILE_TEST_IS_EXECUTABLE))
      argv[0] = registry_places[i];
  if (argv[0] == NULL)
    stage_fail (self, "The registry of accessible programs is not installed (package at-spi2-core)");
  self->registry = _stage_spawn (self, argv, "registry.log", -1);
  for (; !has_registry (self); left -= 0.02)
    {
      if (left < 0)
        stage_fail (self, "The registry of accessible programs does not answer");
      stage_pause (20);
    }
}

/**
 * _stage_start_servers:
 * @self: a new stage
 * @size: size of the display
 *
 * Gives the stage a folder, an environment, a display, a bus and a registry.
 */
void
_stage_start_servers (Stage      *self,
                      const char *size)
{
  make_environment (self);
  make_folders (self);
  start_display (self, size);
  start_bus (self);
  start_registry (self);
}
