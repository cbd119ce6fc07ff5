/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

/* For ptrace(). */
#define _GNU_SOURCE

#include "peak.h"

#include <fcntl.h>
#include <signal.h>
#include <string.h>
#include <sys/ptrace.h>
#include <sys/wait.h>
#include <unistd.h>

static G_NORETURN void
run_traced (const char * const *argv)
{
  int nothing = open ("/dev/null", O_RDWR);

  dup2 (nothing, STDIN_FILENO);
  dup2 (nothing, STDOUT_FILENO);
  ptrace (PTRACE_TRACEME, 0, NULL, NULL);
  execv (argv[0], (char * const *) argv);
  _exit (127);
}

/* VmHWM of a process that is about to end, in KiB. */
static guint64
read_peak (pid_t child)
{
  g_autofree char *path = g_strdup_printf ("/proc/%d/status", (int) child);
  g_autofree char *status = NULL;
  const char *line = NULL;

  g_assert_true (g_file_get_contents (path, &status, NULL, NULL));
  line = strstr (status, "VmHWM:");
  g_assert_nonnull (line);

  return g_ascii_strtoull (line + strlen ("VmHWM:"), NULL, 10);
}

/*
 * The most memory that a program held at any time, in KiB, as the kernel counts it of that program alone: ru_maxrss
 * would also hold what the one that started it had. The program is stopped on its way out, while it still can be
 * asked.
 */
guint64
peak_of (const char * const *argv)
{
  guint64 peak = 0;
  int status = 0;
  pid_t child = fork ();

  if (child == 0)
    run_traced (argv);

  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSTOPPED (status));
  g_assert_cmpint (ptrace (PTRACE_SETOPTIONS, child, NULL, PTRACE_O_TRACEEXIT), ==, 0);
  while (!WIFEXITED (status) && !WIFSIGNALED (status))
    {
      int event = status >> 8;
      int signal = WSTOPSIG (status) == SIGTRAP ? 0 : WSTOPSIG (status);

      if (event == (SIGTRAP | PTRACE_EVENT_EXIT << 8))
        {
          peak = read_peak (child);
          signal = 0;
        }
      g_assert_cmpint (ptrace (PTRACE_CONT, child, NULL, (void *) (gintptr) signal), ==, 0);
      g_assert_cmpint (waitpid (child, &status, 0), ==, child);
    }
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);

  return peak;
}
