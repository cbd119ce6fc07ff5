/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-bench"

/*
 * How fast the window is with a book of many recipes: `bench-window [RECIPES [RUNS]]`. It is held against an empty
 * window of the same toolkit, in turns in the same run, on a virtual display without a graphics card: read the ratios.
 * What a machine does in a millisecond differs from one to the next, and where others work on it too, the time that
 * the processor spent on the program drifts least.
 */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "large-book.h"
#include "shop.h"
#include "store-helpers.h"

#define RUNS 11
#define WORDS 60
#define SCROLLS 40
#define PAUSE_MS 3
#define QUIET_MS 400
#define REST_US 50000

#define EMPTY_WINDOW BB_BUILD_DIR "/tests/bench/empty-window"
#define BLANKBOOK BB_BUILD_DIR "/tests/bench/watched-blankbook"

/* What is aimed at; the ratio and not the milliseconds, where there is one. */
#define MOST_STARTUP_RATIO 3.0
#define MOST_KEY_MS 25.0
#define MOST_BUSY_MS 50.0
#define MOST_MEMORY_MIB 45.0

typedef struct {
  gint64 time;
  gint64 cpu;
  guint n_items;
  guint changes;
} Frame;

/* How long the main loop did not answer, and what of that the program ran. */
typedef struct {
  gint64 time;
  gint64 duration;
  gint64 cpu;
} Busy;

typedef struct {
  int pid;
  GArray *frames;
  GArray *busy;
} Log;

static void
log_clear (Log *self)
{
  g_clear_pointer (&self->frames, g_array_unref);
  g_clear_pointer (&self->busy, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Log, log_clear)

static Log
read_log (Stage *stage)
{
  Log self = {
    .frames = g_array_new (FALSE, FALSE, sizeof (Frame)),
    .busy = g_array_new (FALSE, FALSE, sizeof (Busy)),
  };
  g_autofree char *text = stage_dup_log (stage);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  /* What follows the last line break is still being written. */
  for (guint i = 0; lines[i] != NULL && lines[i + 1] != NULL; i++)
    {
      Frame frame = { 0 };
      Busy busy = { 0 };

      if (sscanf (lines[i], "frame %" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %u %u", &frame.time, &frame.cpu,
                  &frame.n_items, &frame.changes) == 4)
        g_array_append_val (self.frames, frame);
      else if (sscanf (lines[i], "busy %" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT, &busy.time,
                       &busy.duration, &busy.cpu) == 3)
        g_array_append_val (self.busy, busy);
      else
        sscanf (lines[i], "pid %d", &self.pid);
    }

  return self;
}

static const Frame *
get_last (const Log *log)
{
  return log->frames->len > 0 ? &g_array_index (log->frames, Frame, log->frames->len - 1) : NULL;
}

/* The last frame before the window rests for the first time; what is repainted later changes nothing to be seen. */
static const Frame *
get_settled (const Log *log)
{
  for (guint i = 1; i < log->frames->len; i++)
    {
      const Frame *before = &g_array_index (log->frames, Frame, i - 1);
      const Frame *after = &g_array_index (log->frames, Frame, i);
      gint64 idle = after->time - before->time;

      for (guint j = 0; j < log->busy->len; j++)
        {
          const Busy *busy = &g_array_index (log->busy, Busy, j);

          if (busy->time > before->time && busy->time < after->time)
            idle -= busy->duration;
        }
      if (idle > REST_US)
        return before;
    }

  return get_last (log);
}

/* Waits until nothing has been painted for a while. */
static void
wait_quiet (Stage *stage)
{
  while (TRUE)
    {
      g_auto (Log) log = read_log (stage);
      const Frame *last = get_last (&log);

      if (last != NULL && g_get_monotonic_time () - last->time > QUIET_MS * 1000)
        return;
      if (!stage_is_running (stage))
        stage_fail (stage, "The program ended");
      stage_pause (20);
    }
}

static double
read_dirty_mib (int pid)
{
  g_autofree char *path = g_strdup_printf ("/proc/%d/smaps_rollup", pid);
  g_autofree char *text = NULL;
  const char *line = NULL;

  if (!g_file_get_contents (path, &text, NULL, NULL) || (line = strstr (text, "Private_Dirty:")) == NULL)
    g_error ("%s can't be read", path);

  return g_ascii_strtod (line + strlen ("Private_Dirty:"), NULL) / 1024;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const double first = *(const double *) a;
  const double second = *(const double *) b;

  return (first > second) - (first < second);
}

static double
get_share (GArray *numbers,
           double  share)
{
  g_array_sort (numbers, compare);

  return g_array_index (numbers, double, (guint) ((double) (numbers->len - 1) * share + 0.5));
}

static void
note (GArray *numbers,
      double  number)
{
  g_array_append_val (numbers, number);
}

static const char *
judge (double number,
       double most)
{
  return number <= most ? "ok" : "MISSED";
}

typedef struct {
  GArray *first;
  GArray *cpu;
  GArray *settled;
  GArray *memory;
} Startup;

static Startup
startup_new (void)
{
  return (Startup) { g_array_new (FALSE, FALSE, sizeof (double)), g_array_new (FALSE, FALSE, sizeof (double)),
                     g_array_new (FALSE, FALSE, sizeof (double)), g_array_new (FALSE, FALSE, sizeof (double)) };
}

static void
startup_clear (Startup *self)
{
  g_array_unref (self->first);
  g_array_unref (self->cpu);
  g_array_unref (self->settled);
  g_array_unref (self->memory);
}

/* A frame counts once the list in it has its items; an empty window has none to wait for. */
static void
start_once (Stage              *stage,
            const char * const *argv,
            Startup            *startup)
{
  const gboolean has_list = argv[1] != NULL;
  const gint64 start = g_get_monotonic_time ();
  const Frame *first = NULL;

  stage_start (stage, argv);
  wait_quiet (stage);
  {
    g_auto (Log) log = read_log (stage);

    for (guint i = 0; i < log.frames->len && first == NULL; i++)
      if (!has_list || g_array_index (log.frames, Frame, i).n_items > 0)
        first = &g_array_index (log.frames, Frame, i);
    g_assert_nonnull (first);
    note (startup->first, (double) (first->time - start) / 1000);
    note (startup->cpu, (double) first->cpu / 1000);
    note (startup->settled, (double) (get_settled (&log)->time - start) / 1000);
    note (startup->memory, read_dirty_mib (log.pid));
  }
  hand_close (stage);
}

static void
report_startup (const char    *what,
                const Startup *startup)
{
  printf ("  %-32s %6.1f ms (%.1f to %.1f), processor %5.1f ms; all painted %6.1f ms; private dirty %4.1f MiB\n",
          what, get_share (startup->first, 0.5), get_share (startup->first, 0.25), get_share (startup->first, 0.75),
          get_share (startup->cpu, 0.5), get_share (startup->settled, 0.5), get_share (startup->memory, 0.5));
}

static void
bench_startup (Stage      *stage,
               const char *large,
               const char *small,
               guint       n_runs)
{
  const char *const commands[][3] = { { EMPTY_WINDOW }, { BLANKBOOK, large }, { BLANKBOOK, small } };
  Startup startups[] = { startup_new (), startup_new (), startup_new () };
  Startup warm_up = startup_new ();
  double ratio = 0;
  double cpu_ratio = 0;

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    start_once (stage, commands[i], &warm_up);
  for (guint run = 0; run < n_runs; run++)
    for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
      start_once (stage, commands[i], &startups[i]);

  ratio = get_share (startups[1].first, 0.5) / get_share (startups[0].first, 0.5);
  cpu_ratio = get_share (startups[1].cpu, 0.5) / get_share (startups[0].cpu, 0.5);
  printf ("From start to the first frame, median of %u in turns (quartiles):\n", n_runs);
  report_startup ("empty window", &startups[0]);
  report_startup ("Blankbook, the large book", &startups[1]);
  report_startup ("Blankbook, the demo shop's book", &startups[2]);
  printf ("  ratio of the large book's to the empty window's: %.2f, processor %.2f, at most %.0f: %s\n", ratio,
          cpu_ratio, MOST_STARTUP_RATIO, judge (ratio, MOST_STARTUP_RATIO));
  for (guint i = 0; i < G_N_ELEMENTS (startups); i++)
    startup_clear (&startups[i]);
  startup_clear (&warm_up);
}

/* Types, and waits for the frame that shows what the list has become. */
static double
time_key (Stage      *stage,
          const char *text,
          const char *keys)
{
  g_auto (Log) before = read_log (stage);
  const guint changes = get_last (&before)->changes;
  const gint64 start = g_get_monotonic_time ();

  if (text != NULL)
    g_assert_true (glass_type (stage_get_glass (stage), text));
  else
    glass_press (stage_get_glass (stage), keys);

  while (g_get_monotonic_time () - start < 5 * G_USEC_PER_SEC)
    {
      g_auto (Log) log = read_log (stage);

      for (guint i = before.frames->len; i < log.frames->len; i++)
        if (g_array_index (log.frames, Frame, i).changes > changes)
          return (double) (g_array_index (log.frames, Frame, i).time - start) / 1000;
      stage_pause (PAUSE_MS);
    }
  stage_fail (stage, "Nothing was found for a key");
}

static void
report_busy (Stage      *stage,
             const char *what,
             gint64      since)
{
  g_auto (Log) log = read_log (stage);
  gint64 duration = 0;
  gint64 cpu = 0;

  for (guint i = 0; i < log.busy->len; i++)
    {
      const Busy *busy = &g_array_index (log.busy, Busy, i);

      duration = busy->time >= since ? MAX (duration, busy->duration) : duration;
      cpu = busy->time >= since ? MAX (cpu, busy->cpu) : cpu;
    }
  printf ("  %-32s %6.1f ms, processor %5.1f ms: %s\n", what, (double) duration / 1000, (double) cpu / 1000,
          judge ((double) duration / 1000, MOST_BUSY_MS));
}

static void
bench_search (Stage *stage)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (double));
  GRand *rand = g_rand_new_with_seed (2);
  const gint64 since = g_get_monotonic_time ();

  for (guint i = 0; i < WORDS; i++)
    {
      const char *word = large_book_pick_word (rand);
      const guint n_letters = (guint) g_rand_int_range (rand, 2, 6);

      for (guint j = 0; j < n_letters && word[j] != '\0'; j++)
        {
          const char letter[] = { g_ascii_tolower (word[j]), '\0' };

          note (times, time_key (stage, letter, NULL));
        }
      for (guint j = 0; j < n_letters && word[j] != '\0'; j++)
        note (times, time_key (stage, NULL, "BackSpace"));
    }
  g_rand_free (rand);

  printf ("From a key in the search of recipes to the frame that shows what it finds, n %u:\n", times->len);
  printf ("  p50 %.1f ms   p95 %.1f ms   most %.1f ms   p95 at most %.0f: %s\n", get_share (times, 0.5),
          get_share (times, 0.95), get_share (times, 1), MOST_KEY_MS, judge (get_share (times, 0.95), MOST_KEY_MS));
  printf ("The longest that the main loop did not answer, at most %.0f ms:\n", MOST_BUSY_MS);
  report_busy (stage, "typing in the search", since);
}

static void
bench_scroll (Stage *stage)
{
  const gint64 since = g_get_monotonic_time ();

  glass_press (stage_get_glass (stage), "Return");
  for (guint i = 0; i < SCROLLS; i++)
    {
      glass_press (stage_get_glass (stage), i % 2 == 0 ? "Page_Down" : "Down");
      stage_pause (30);
    }
  glass_press (stage_get_glass (stage), "End");
  wait_quiet (stage);
  report_busy (stage, "going through the list", since);
}

static gboolean
has_painted (Stage *stage,
             gint64 since)
{
  g_auto (Log) log = read_log (stage);

  return get_last (&log)->time > since;
}

static void
bench_pages (Stage      *stage,
             const char *times)
{
  for (guint i = 1; i <= 9; i++)
    {
      g_autofree char *keys = g_strdup_printf ("Alt_L+%u", i);
      g_autofree char *what = g_strdup_printf ("page %u, %s", i, times);
      const gint64 since = g_get_monotonic_time ();

      glass_press (stage_get_glass (stage), keys);
      stage_pause (QUIET_MS);
      wait_quiet (stage);
      if (has_painted (stage, since))
        report_busy (stage, what, since);
    }
}

static void
report_memory (Stage      *stage,
               const char *what)
{
  g_auto (Log) log = read_log (stage);
  const double memory = read_dirty_mib (log.pid);

  printf ("  %-32s %6.1f MiB private dirty: %s\n", what, memory, judge (memory, MOST_MEMORY_MIB));
}

static void
bench_window (Stage      *stage,
              const char *large)
{
  const char *const command[] = { BLANKBOOK, large, NULL };

  stage_start (stage, command);
  wait_quiet (stage);
  glass_focus (stage_get_glass (stage), glass_find_window (stage_get_glass (stage)));
  glass_press (stage_get_glass (stage), "Control_L+f");
  wait_quiet (stage);
  bench_search (stage);
  report_memory (stage, "… and after that");
  bench_scroll (stage);
  report_memory (stage, "… and after that");
  bench_pages (stage, "first visit");
  bench_pages (stage, "again");
  report_memory (stage, "… and after that");
  hand_close (stage);
}

int
main (int   argc,
      char *argv[])
{
  const guint n_recipes = argc > 1 ? (guint) atoi (argv[1]) : LARGE_BOOK_RECIPES;
  const guint n_runs = argc > 2 ? (guint) atoi (argv[2]) : RUNS;
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *large = stage_build_path (stage, "large.book");
  g_autofree char *demo = shop_make_demo (stage);
  BbBook *book = helper_create (large);

  setvbuf (stdout, NULL, _IOLBF, 0);
  large_book_fill (book, n_recipes);
  helper_close (book);
  printf ("A book of %u recipes\n", n_recipes);
  bench_startup (stage, large, demo, n_runs);
  bench_window (stage, large);

  return 0;
}
