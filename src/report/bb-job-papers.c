/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-job-papers.h"

#include "bb-trace.h"

/* A record that is loaded, under its table and key: lines share blanks, recipes and supplies. */
typedef struct {
  const BbTable *table;
  gint64 id;
  gpointer record;
} Loaded;

static guint
loaded_hash (gconstpointer data)
{
  const Loaded *self = data;

  return g_direct_hash (self->table) ^ g_int64_hash (&self->id);
}

static gboolean
loaded_equal (gconstpointer a,
              gconstpointer b)
{
  const Loaded *left = a;
  const Loaded *right = b;

  return left->table == right->table && left->id == right->id;
}

static void
loaded_free (gpointer data)
{
  Loaded *self = data;

  bb_record_free (self->table, self->record);
  g_free (self);
}

/* Loads a record once; where there is none to load, that is no error. */
static gboolean
load (BbJobPapers    *self,
      BbBook         *book,
      const BbTable  *table,
      gint64          id,
      gconstpointer  *record,
      GError        **error)
{
  const Loaded wanted = { table, id, NULL };
  Loaded *loaded = g_hash_table_lookup (self->records, &wanted);

  *record = NULL;
  if (id == 0)
    return TRUE;
  if (loaded == NULL)
    {
      gpointer fresh = bb_book_load (book, table, id, error);

      if (fresh == NULL)
        return FALSE;
      loaded = g_new0 (Loaded, 1);
      *loaded = (Loaded) { table, id, fresh };
      g_hash_table_add (self->records, loaded);
    }
  *record = loaded->record;

  return TRUE;
}

/* Which kind of machine a way of heating needs, or BB_CHOICE_NONE. */
static int
kind_for_heat (int method)
{
  switch (method)
    {
    case BB_HEAT_PRESS:
    case BB_HEAT_HOVER:
      return BB_EQUIPMENT_PRESS;
    case BB_HEAT_TUNNEL:
      return BB_EQUIPMENT_TUNNEL;
    case BB_HEAT_AIR:
    default:
      return BB_CHOICE_NONE;
    }
}

/* The machine that the line was last run on, where that is still of the kind, or else the shop's first of the kind. */
static const BbEquipment *
choose_machine (const GPtrArray *machines,
                int              kind,
                gint64           before)
{
  const BbEquipment *first = NULL;

  for (guint i = 0; i < machines->len; i++)
    {
      const BbEquipment *machine = machines->pdata[i];

      if (machine->kind != kind || machine->withdrawn_at != NULL)
        continue;
      if (machine->id == before)
        return machine;
      if (first == NULL)
        first = machine;
    }

  return first;
}

static void
choose_machines (BbSheetLine     *line,
                 const GPtrArray *machines,
                 const BbRun     *run)
{
  const BbRevision *revision = line->revision;
  const int dryer = kind_for_heat (revision->dry_method);
  const int curer = kind_for_heat (revision->cure_method);

  line->printer = choose_machine (machines, BB_EQUIPMENT_PRINTER, run != NULL ? run->printer : 0);
  if (revision->pretreat_method == BB_PRETREAT_MACHINE)
    line->sprayer = choose_machine (machines, BB_EQUIPMENT_SPRAYER, run != NULL ? run->sprayer : 0);
  if (dryer != BB_CHOICE_NONE)
    line->dryer = choose_machine (machines, dryer, run != NULL ? run->dryer : 0);
  if (curer != BB_CHOICE_NONE)
    line->curer = choose_machine (machines, curer, run != NULL ? run->curer : 0);
}

static gboolean
load_garment (BbJobPapers  *self,
              BbBook       *book,
              BbSheetLine  *line,
              GError      **error)
{
  gconstpointer colourway = NULL;
  gconstpointer blank = NULL;

  if (!load (self, book, &bb_colourway_table, line->line->colourway, &colourway, error))
    return FALSE;
  if (colourway != NULL && !load (self, book, &bb_blank_table, ((const BbColourway *) colourway)->blank, &blank, error))
    return FALSE;
  line->blank = blank;

  return TRUE;
}

static gboolean
load_recipe (BbJobPapers      *self,
             BbBook           *book,
             const GPtrArray  *machines,
             BbSheetLine      *line,
             GError          **error)
{
  gconstpointer revision = NULL;
  gconstpointer supplies[3] = { NULL, NULL, NULL };
  g_autoptr (GPtrArray) runs = NULL;

  if (!load (self, book, &bb_revision_table, line->line->revision, &revision, error))
    return FALSE;
  line->revision = revision;
  if (revision == NULL)
    return TRUE;

  if (!load (self, book, &bb_supply_table, line->revision->pretreat_product, &supplies[0], error) ||
      !load (self, book, &bb_supply_table, line->revision->dry_sheet, &supplies[1], error) ||
      !load (self, book, &bb_supply_table, line->revision->cure_sheet, &supplies[2], error))
    return FALSE;
  line->pretreat = supplies[0];
  line->dry_sheet = supplies[1];
  line->cure_sheet = supplies[2];

  runs = bb_book_load_referring (book, &bb_run_table, &bb_job_line_table, line->line->id, error);
  if (runs == NULL)
    return FALSE;
  choose_machines (line, machines, runs->len > 0 ? runs->pdata[runs->len - 1] : NULL);

  return TRUE;
}

static gboolean
load_lines (BbJobPapers      *self,
            BbBook           *book,
            const GPtrArray  *machines,
            GError          **error)
{
  g_autoptr (GArray) ids = bb_book_list_job_lines (book, self->job->id, error);

  for (guint i = 0; ids != NULL && i < ids->len; i++)
    {
      BbSheetLine line = { 0 };
      gconstpointer record = NULL;

      if (!load (self, book, &bb_job_line_table, g_array_index (ids, gint64, i), &record, error))
        return FALSE;
      line.line = record;
      if (!load_garment (self, book, &line, error) || !load_recipe (self, book, machines, &line, error))
        return FALSE;
      g_array_append_val (self->lines, line);
    }

  return ids != NULL;
}

static gboolean
load_all (BbJobPapers  *self,
          BbBook       *book,
          gint64        job,
          const char   *day,
          GError      **error)
{
  g_autoptr (GPtrArray) machines = NULL;
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (BbShop) shop = NULL;

  self->job = bb_book_load (book, &bb_job_table, job, error);
  if (self->job == NULL)
    return FALSE;
  machines = bb_book_load_all (book, &bb_equipment_table, FALSE, error);
  if (machines == NULL)
    return FALSE;
  stock = bb_book_load_stock (book, 0, error);
  if (stock == NULL)
    return FALSE;
  shop = bb_book_load_shop (book, error);
  if (shop == NULL || !load_lines (self, book, machines, error))
    return FALSE;

  /* The sheet keeps nothing of what it was computed from; the lines borrow the machines, which stay with the papers. */
  bb_job_sheet_compute (self->sheet, self->job, (const BbSheetLine *) (gpointer) self->lines->data, self->lines->len,
                        shop, stock, day);
  self->machines = g_steal_pointer (&machines);

  return TRUE;
}

/**
 * bb_job_papers_load:
 * @book: a book
 * @job: the key of a job
 * @day: the day of the mix, as an ISO date
 * @error: return location for a #GError
 *
 * Loads a job with all that its sheet is computed from, and computes it. Each stage takes the machine that the line was
 * last run on, or the first one in use of the kind that the recipe needs.
 *
 * Returns: (transfer full) (nullable): the papers; %NULL with an error of the book
 */
BbJobPapers *
bb_job_papers_load (BbBook      *book,
                    gint64       job,
                    const char  *day,
                    GError     **error)
{
  g_autoptr (BbJobPapers) self = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && day != NULL, NULL);

  self = g_new0 (BbJobPapers, 1);
  self->lines = g_array_new (FALSE, FALSE, sizeof (BbSheetLine));
  self->sheet = bb_job_sheet_new ();
  self->records = g_hash_table_new_full (loaded_hash, loaded_equal, loaded_free, NULL);

  return load_all (self, book, job, day, error) ? g_steal_pointer (&self) : NULL;
}

/* The machine of the run before; any other only where the shop has no second one that does the same. */
static gint64
propose (const GPtrArray   *machines,
         const BbEquipment *machine,
         gint64             before)
{
  guint n_alike = 0;

  if (machine == NULL)
    return 0;
  for (guint i = 0; i < machines->len; i++)
    {
      const BbEquipment *other = machines->pdata[i];

      if (other->kind != machine->kind || other->withdrawn_at != NULL)
        continue;
      if (other->id == before)
        return before;
      n_alike++;
    }

  return n_alike == 1 ? machine->id : 0;
}

/* Of the line; of a line that never ran, of what it is printed by. Returns: %FALSE with an error */
static gboolean
find_run_before (BbBook             *book,
                 const BbSheetLine  *line,
                 BbRun             **before,
                 GError            **error)
{
  const int found = bb_book_find_last_run (book, &bb_job_line_table, line->line->id, before, error);

  if (found != 0 || line->revision == NULL)
    return found >= 0;

  return bb_book_find_last_run (book, &bb_revision_table, line->revision->id, before, error) >= 0;
}

/**
 * bb_job_papers_propose_run:
 * @self: papers
 * @book: the book that they are from
 * @run: a run whose line is set; gets the machines that the line, or else its revision, was run on before, or that
 *   there is only one of
 * @error: return location for a #GError
 *
 * Proposes machines for a new run. Where several could do it, a person has to say which.
 *
 * Returns: (transfer none) (nullable): the run's line; %NULL with an error, or without one where the job has no such
 *   line
 */
const BbSheetLine *
bb_job_papers_propose_run (const BbJobPapers  *self,
                           BbBook             *book,
                           BbRun              *run,
                           GError            **error)
{
  const BbSheetLine *line = NULL;
  g_autoptr (BbRun) before = NULL;

  g_return_val_if_fail (self != NULL && BB_IS_BOOK (book) && run != NULL, NULL);

  for (guint i = 0; line == NULL && i < self->lines->len; i++)
    if (g_array_index (self->lines, BbSheetLine, i).line->id == run->line)
      line = &g_array_index (self->lines, BbSheetLine, i);
  if (line == NULL || !find_run_before (book, line, &before, error))
    return NULL;

  run->sprayer = propose (self->machines, line->sprayer, before != NULL ? before->sprayer : 0);
  run->dryer = propose (self->machines, line->dryer, before != NULL ? before->dryer : 0);
  run->printer = propose (self->machines, line->printer, before != NULL ? before->printer : 0);
  run->curer = propose (self->machines, line->curer, before != NULL ? before->curer : 0);

  return line;
}

/**
 * bb_job_papers_free:
 * @self: (nullable): papers
 */
void
bb_job_papers_free (BbJobPapers *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->lines);
  bb_job_sheet_free (self->sheet);
  bb_job_free (self->job);
  g_hash_table_unref (self->records);
  g_clear_pointer (&self->machines, g_ptr_array_unref);
  g_free (self);
}
