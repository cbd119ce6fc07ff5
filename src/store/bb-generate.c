/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-generate.h"

#include <glib/gi18n-lib.h>

#include "bb-book-index.h"
#include "bb-book-private.h"

/*
 * A large book of nothing real, to see how fast the program is with many years in it. Names are made of syllables,
 * settings are of the size that printing works with, and the days run from the first to the last. Records are written
 * without events: nobody did them.
 */

#define BLANKS 400
#define COLOURS_PER_BLANK 6
#define MACHINES 4
#define LOTS 200
#define PEOPLE 6
#define SIGNER 1
#define WORDS 1500
/* Pages that were written stay in memory: an index in no order would read and write each of them many times. */
#define MUCH_CACHE "PRAGMA cache_size = -262144"
#define USUAL_CACHE "PRAGMA cache_size = -2000"
#define FIRST_DAY 735900 /* days since 1 January of the year 1: 2015-10-26 */
#define DAYS 4000

static const char * const heads[] = {
  "bar", "bel", "bri", "cal", "cor", "dal", "dru", "el", "fen", "gar", "har", "hol", "ka", "kel", "lor", "mar", "mo",
  "nor", "ol", "pel", "quin", "ra", "rav", "sel", "sta", "tan", "thor", "ul", "ver", "wen", "yar", "zin",
};
static const char * const tails[] = {
  "by", "combe", "dale", "den", "fell", "ford", "gate", "ham", "hurst", "ley", "low", "mere", "more", "ness", "ock",
  "pool", "rick", "sea", "ster", "thorpe", "ton", "wald", "wick", "worth",
};
static const char * const garments[] = { "tee", "heavy tee", "hoodie", "crew", "tank", "polo", "kids tee", "tote" };
static const char * const colours[] = { "black", "navy", "white", "sand", "brick", "moss", "slate", "plum", "sky" };
static const char * const srgb[] = {
  "#17171a", "#1b2a49", "#f5f5f3", "#d9c7a3", "#9c1f2b", "#4d5a3a", "#56646a", "#5e3b52", "#b9d3e6",
};

typedef struct {
  BbBook *book;
  const BbGenerate *plan;
  GRand *rand;
  GPtrArray *words;
  gint64 colourways[BLANKS * COLOURS_PER_BLANK];
  gint64 pretreat;
  GArray *revisions;
  guint n_customers;
  guint n_runs;
} Generator;

static guint
below (Generator *self,
       guint      n)
{
  return (guint) g_rand_int_range (self->rand, 0, (gint32) n);
}

/* Few come often and many seldom, as customers and garments do. */
static guint
often (Generator *self,
       guint      n)
{
  double part = g_rand_double (self->rand);

  return MIN ((guint) (part * part * part * (double) n), n - 1);
}

static const char *
word (Generator *self)
{
  return self->words->pdata[often (self, self->words->len)];
}

static void
make_words (Generator *self)
{
  for (guint i = 0; i < WORDS; i++)
    {
      const char *middle = below (self, 2) == 0 ? heads[below (self, G_N_ELEMENTS (heads))] : "";

      g_ptr_array_add (self->words, g_strconcat (heads[below (self, G_N_ELEMENTS (heads))], middle,
                                                 tails[below (self, G_N_ELEMENTS (tails))], NULL));
    }
}

/* The day that a share of all the days has come to. */
static char *
day_at (double share)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, FIRST_DAY + (guint32) (share * DAYS));

  return g_strdup_printf ("%04u-%02u-%02uT09:00:00Z", g_date_get_year (&date), (guint) g_date_get_month (&date),
                          g_date_get_day (&date));
}

static gboolean
add (Generator      *self,
     const BbTable  *table,
     gpointer        record,
     GError        **error)
{
  return _bb_book_complete (self->book, table, record, error) &&
         _bb_book_write_record (self->book, table, record, error);
}

static gboolean
add_people (Generator *self,
            GError   **error)
{
  for (guint i = 0; i < PEOPLE; i++)
    {
      g_autoptr (BbPerson) person = bb_person_new ();

      person->code = g_strdup_printf ("P%u", i + 1);
      person->name = g_strdup_printf ("%s %s", word (self), word (self));
      person->role = i + 1 == SIGNER ? BB_ROLE_LEAD : (int) below (self, bb_role_choices.n_items);
      if (!add (self, &bb_person_table, person, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_supplies (Generator *self,
              GError   **error)
{
  g_autoptr (BbSupply) supply = bb_supply_new ();

  supply->code = g_strdup ("PT");
  supply->name = g_strdup_printf ("%s pretreat", word (self));
  supply->kind = BB_SUPPLY_PRETREAT;
  supply->density_g_per_ml = 1.1;
  supply->price_per_kg = 8;
  if (!add (self, &bb_supply_table, supply, error))
    return FALSE;
  self->pretreat = supply->id;

  for (guint i = 0; i < LOTS; i++)
    {
      g_autoptr (BbLot) lot = bb_lot_new ();

      lot->code = g_strdup_printf ("LOT-%u", i + 1);
      lot->supply = supply->id;
      lot->received_at = day_at ((double) i / LOTS);
      lot->start_g = 1e6;
      lot->container_g = 90;
      if (!add (self, &bb_lot_table, lot, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_machines (Generator *self,
              GError   **error)
{
  for (guint i = 0; i < MACHINES; i++)
    {
      g_autoptr (BbEquipment) machine = bb_equipment_new ();

      machine->kind = (int) i;
      machine->code = g_strdup_printf ("M%u", i + 1);
      machine->name = g_strdup_printf ("%s by the %s", bb_equipment_kind_choices.items[i].key, word (self));
      if (!add (self, &bb_equipment_table, machine, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_colourways (Generator      *self,
                const BbBlank  *blank,
                guint           nth,
                GError        **error)
{
  for (guint c = 0; c < COLOURS_PER_BLANK; c++)
    {
      guint colour = (nth + c) % G_N_ELEMENTS (colours);
      g_autoptr (BbColourway) colourway = bb_colourway_new ();

      colourway->code = g_strdup_printf ("%s-%u", blank->code, c + 1);
      colourway->blank = blank->id;
      colourway->name = g_strdup_printf ("%s %s", word (self), colours[colour]);
      colourway->srgb = g_strdup (srgb[colour]);
      if (!add (self, &bb_colourway_table, colourway, error))
        return FALSE;
      self->colourways[nth * COLOURS_PER_BLANK + c] = colourway->id;
    }

  return TRUE;
}

static gboolean
add_blanks (Generator *self,
            GError   **error)
{
  for (guint i = 0; i < BLANKS; i++)
    {
      g_autoptr (BbBlank) blank = bb_blank_new ();
      BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);

      share->fibre = (int) often (self, bb_fibre_choices.n_items);
      share->fraction = 1;
      blank->code = g_strdup_printf ("B-%u", i + 1);
      blank->name = g_strdup_printf ("%s %s", word (self), garments[below (self, G_N_ELEMENTS (garments))]);
      blank->maker = g_strdup_printf ("%s mill", word (self));
      blank->mass_g_per_m2 = 130 + 10 * below (self, 20);
      blank->knit = (int) often (self, bb_knit_choices.n_items);
      if (!add (self, &bb_blank_table, blank, error) || !add_colourways (self, blank, i, error))
        return FALSE;
    }

  return TRUE;
}

static BbRevision *
make_revision (Generator *self,
               gint64     recipe,
               guint      number)
{
  BbRevision *revision = bb_revision_new ();

  revision->recipe = recipe;
  revision->number = number;
  revision->made_at = day_at ((double) self->revisions->len / self->plan->n_revisions);
  revision->made_by = 1 + below (self, PEOPLE);
  revision->reason = number > 1 ? g_strdup_printf ("Less %s.", word (self)) : NULL;
  revision->pretreat_product = self->pretreat;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 1 + below (self, 4);
  revision->pretreat_laydown_g_per_m2 = 90 + 5 * below (self, 22);
  revision->pretreat_margin_mm = 10;
  revision->dry_c = 160;
  revision->dry_s = 35;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->print_white_g_per_m2 = 150 + 5 * below (self, 12);
  revision->cure_c = 140 + below (self, 25);
  revision->cure_s = 35;
  revision->proof_cycles = 20;

  return revision;
}

/* No specimens are invented, so that a lead has overruled the shop's rule each time. */
static gboolean
sign (Generator         *self,
      const BbRevision  *revision,
      BbStanding        *standing,
      GError           **error)
{
  g_autoptr (BbSignature) signature = bb_signature_new ();

  signature->revision = revision->id;
  signature->signed_at = g_strdup (revision->made_at);
  signature->person = SIGNER;
  signature->overruled = 1;
  signature->reason = g_strdup ("Invented.");
  signature->passed = 0;
  signature->failed = 0;
  signature->needed = 1;
  standing->person = SIGNER;

  return add (self, &bb_signature_table, signature, error);
}

static gboolean
add_revision (Generator  *self,
              gint64      recipe,
              guint       number,
              gboolean    last,
              GError    **error)
{
  g_autoptr (BbRevision) revision = make_revision (self, recipe, number);
  g_autoptr (BbStanding) standing = bb_standing_new ();

  if (!add (self, &bb_revision_table, revision, error))
    return FALSE;
  standing->revision = revision->id;
  standing->state = last ? (below (self, 5) == 0 ? BB_STATE_ON_TRIAL : BB_STATE_PROVEN) : BB_STATE_WITHDRAWN;
  standing->since = g_strdup (revision->made_at);
  g_array_append_val (self->revisions, revision->id);

  return (standing->state != BB_STATE_PROVEN || sign (self, revision, standing, error)) &&
         add (self, &bb_standing_table, standing, error);
}

static gboolean
add_recipe (Generator  *self,
            guint       nth,
            GError    **error)
{
  guint garment = often (self, BLANKS);
  guint n = MIN (1 + below (self, 3), self->plan->n_revisions - self->revisions->len);
  g_autoptr (BbRecipe) recipe = bb_recipe_new ();

  recipe->code = g_strdup_printf ("R-%05u", nth + 1);
  recipe->name = g_strdup_printf ("%s on %s", word (self), garments[below (self, G_N_ELEMENTS (garments))]);
  recipe->blank = garment + 1;
  if (below (self, 2) == 0)
    recipe->colourway = self->colourways[garment * COLOURS_PER_BLANK + below (self, COLOURS_PER_BLANK)];
  if (!add (self, &bb_recipe_table, recipe, error))
    return FALSE;
  for (guint i = 1; i <= n; i++)
    if (!add_revision (self, recipe->id, i, i == n, error))
      return FALSE;

  return TRUE;
}

static gboolean
add_customers (Generator *self,
               GError   **error)
{
  for (guint i = 0; i < self->n_customers; i++)
    {
      g_autoptr (BbCustomer) customer = bb_customer_new ();

      customer->code = g_strdup_printf ("C-%u", i + 1);
      customer->name = g_strdup_printf ("%s %s choir", word (self), word (self));
      if (!add (self, &bb_customer_table, customer, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_run (Generator        *self,
         const BbJobLine  *line,
         guint             number,
         const char       *day,
         GError          **error)
{
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (BbLotEntry) entry = bb_lot_entry_new ();

  run->line = line->id;
  run->number = number;
  run->revision = line->revision;
  run->person = 1 + below (self, PEOPLE);
  run->sprayer = 1;
  run->dryer = 2;
  run->printer = 3;
  run->curer = 2;
  run->started_at = g_strdup (day);
  run->finished_at = g_strdup (day);
  run->good = line->count;
  run->spoiled = below (self, 3);
  run->spoilt_by = (int) below (self, bb_spoilt_choices.n_items);
  if (!add (self, &bb_run_table, run, error))
    return FALSE;

  entry->lot = 1 + self->n_runs * LOTS / self->plan->n_runs;
  entry->number = 1 + self->n_runs;
  entry->at = g_strdup (day);
  entry->deed = BB_LOT_USED;
  entry->run = run->id;
  entry->change_g = -2;
  self->n_runs++;

  return add (self, &bb_lot_entry_table, entry, error);
}

static gboolean
add_line (Generator    *self,
          const BbJob  *job,
          guint         number,
          const char   *day,
          GError      **error)
{
  g_autoptr (BbJobLine) line = bb_job_line_new ();
  guint n = MIN (1 + below (self, 2), self->plan->n_runs - self->n_runs);

  line->job = job->id;
  line->number = number;
  line->colourway = self->colourways[often (self, G_N_ELEMENTS (self->colourways))];
  line->count = 6 + below (self, 90);
  line->artwork = g_strdup_printf ("%s-%s.png", word (self), word (self));
  line->print_width_mm = 280;
  line->print_height_mm = 320;
  line->revision = g_array_index (self->revisions, gint64, below (self, self->revisions->len));
  if (!add (self, &bb_job_line_table, line, error))
    return FALSE;
  for (guint i = 1; i <= n; i++)
    if (!add_run (self, line, i, day, error))
      return FALSE;

  return TRUE;
}

static gboolean
add_job (Generator  *self,
         guint       nth,
         GError    **error)
{
  g_autofree char *day = day_at ((double) self->n_runs / self->plan->n_runs);
  g_autoptr (BbJob) job = bb_job_new ();
  guint n = 1 + below (self, 3);

  job->code = g_strdup_printf ("J-%06u", nth + 1);
  job->customer = 1 + often (self, self->n_customers);
  job->title = g_strdup_printf ("%s fair", word (self));
  job->ordered_at = g_strdup (day);
  job->state = BB_JOB_DONE;
  if (!add (self, &bb_job_table, job, error))
    return FALSE;
  for (guint i = 1; i <= n && self->n_runs < self->plan->n_runs; i++)
    if (!add_line (self, job, i, day, error))
      return FALSE;

  return TRUE;
}

static gboolean
fill (BbBook    *book,
      gpointer   data,
      GError   **error)
{
  Generator *self = data;

  make_words (self);
  if (!add_people (self, error) || !add_supplies (self, error) || !add_machines (self, error) ||
      !add_blanks (self, error) || !add_customers (self, error))
    return FALSE;
  for (guint i = 0; self->revisions->len < self->plan->n_revisions; i++)
    if (!add_recipe (self, i, error))
      return FALSE;
  for (guint i = 0; self->n_runs < self->plan->n_runs; i++)
    if (!add_job (self, i, error))
      return FALSE;

  return bb_search_rebuild (book->db, error);
}

/**
 * bb_book_generate:
 * @self: an empty book
 * @plan: how large it shall be
 * @error: return location for a #GError
 *
 * Fills a book with invented recipes, jobs and runs, to see how fast the program is with many.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where there is something in the book, or another error; nothing is
 *   written then
 */
gboolean
bb_book_generate (BbBook            *self,
                  const BbGenerate  *plan,
                  GError           **error)
{
  Generator generator = { .book = self, .plan = plan };
  gint64 n = 0;
  gboolean done = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && plan != NULL, FALSE);
  g_return_val_if_fail (plan->n_revisions >= 1 && plan->n_revisions <= BB_GENERATE_MOST, FALSE);
  g_return_val_if_fail (plan->n_runs <= BB_GENERATE_MOST, FALSE);

  if (!bb_db_query_integer (self->db, "SELECT (SELECT COUNT (*) FROM person) + (SELECT COUNT (*) FROM blank) + "
                            "(SELECT COUNT (*) FROM supply)", &n, error))
    return FALSE;
  if (n > 0)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED,
                           _("Only an empty book can be filled with invented records."));
      return FALSE;
    }

  generator.rand = g_rand_new_with_seed (plan->seed);
  generator.words = g_ptr_array_new_with_free_func (g_free);
  generator.revisions = g_array_new (FALSE, FALSE, sizeof (gint64));
  generator.n_customers = MAX (1, MIN (2000, plan->n_runs / 50));
  done = bb_db_run_script (self->db, MUCH_CACHE, error) &&
         bb_book_in_transaction (self, fill, &generator, error) && bb_db_run_script (self->db, USUAL_CACHE, error);
  g_rand_free (generator.rand);
  g_ptr_array_unref (generator.words);
  g_array_unref (generator.revisions);

  return done;
}
