/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-job-report.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bb-job-papers.h"
#include "bb-job-words.h"
#include "bb-rounding.h"
#include "bb-safety.h"
#include "bb-words.h"

/*
 * @book: a book
 * @papers: the job with what it takes
 * @units: the units that are shown
 * @document: what is being made
 */
typedef struct {
  BbBook *book;
  const BbJobPapers *papers;
  const BbUnitContext *units;
  BbDocument *document;
} Report;

static BbDocument *
make_document (const BbShop *shop,
               const BbJob  *job,
               const char   *today)
{
  g_autofree char *title = g_strdup_printf (_("Job sheet %s"), job->code);
  g_autofree char *day = bb_words_of_day (today);
  g_autofree char *foot = g_strdup_printf (_("Made by Blankbook from the shop's book on %s"), day);

  return bb_document_new (title, shop->name != NULL ? shop->name : _("Job sheet"), job->code, foot);
}

static char *
format_field (const Report  *self,
              const BbTable *table,
              const char    *name,
              gconstpointer  record)
{
  return bb_words_of_field (self->book, table, bb_table_find_field (table, name), record, self->units);
}

/* Leaves out what is not known. */
static void
add_fact (BbBlock    *facts,
          const char *name,
          const char *value)
{
  if (value != NULL && *value != '\0')
    bb_facts_add (facts, name, value);
}

static void
add_field (const Report  *self,
           BbBlock       *facts,
           const BbTable *table,
           const char    *name,
           gconstpointer  record)
{
  g_autofree char *value = format_field (self, table, name, record);

  add_fact (facts, _(bb_table_find_field (table, name)->title), value);
}

static void
add_text (const Report *self,
          const char   *text,
          gboolean      strong)
{
  if (text != NULL && *text != '\0')
    bb_document_take (self->document, bb_text_new (text, strong));
}

static void
add_count (BbBlock    *facts,
           const char *title,
           gint64      garments,
           gint64      spares)
{
  g_autofree char *note = bb_words_of_spares (garments, spares);
  g_autofree char *text = note != NULL ? g_strdup_printf ("%" G_GINT64_FORMAT " · %s", garments, note)
                                       : g_strdup_printf ("%" G_GINT64_FORMAT, garments);

  bb_facts_add (facts, title, text);
}

static void
add_time (BbBlock    *facts,
          const char *title,
          double      time_s,
          const char *bottleneck)
{
  g_autofree char *time = bb_words_of_time (time_s);
  g_autofree char *pace = bottleneck != NULL ? g_strdup_printf (_("%s sets the pace"), bottleneck) : NULL;
  g_autofree char *text = pace != NULL && *time != '\0' ? g_strjoin (" · ", time, pace, NULL) : g_strdup (time);

  add_fact (facts, title, text);
}

static void
add_head (const Report *self)
{
  const BbJob *job = self->papers->job;
  const BbJobSheet *sheet = self->papers->sheet;
  g_autofree char *customer = bb_words_of_name (self->book, &bb_customer_table, job->customer);
  g_autofree char *title = g_strjoin (" · ", job->code, customer, job->title, NULL);
  g_autofree char *sheets = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->sheets);
  BbBlock *facts = bb_facts_new ();

  bb_document_take (self->document, bb_heading_new (_("Job sheet"), 0));
  add_text (self, title, TRUE);
  add_field (self, facts, &bb_job_table, "ordered_at", job);
  add_field (self, facts, &bb_job_table, "due_at", job);
  add_field (self, facts, &bb_job_table, "state", job);
  add_count (facts, _("Garments to set out"), sheet->garments, sheet->spares);
  add_time (facts, _("Time in all"), sheet->time_s, sheet->bottleneck);
  add_field (self, facts, &bb_job_sheet_table, "cost", sheet);
  add_field (self, facts, &bb_job_sheet_table, "cost_per_garment", sheet);
  add_fact (facts, _("Cover sheets"), sheet->sheets != BB_INTEGER_NONE ? sheets : NULL);
  add_field (self, facts, &bb_job_table, "note", job);
  bb_document_take (self->document, facts);
}

static BbState
load_state (const Report *self,
            gint64        revision)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self->book, revision, NULL);

  return standing != NULL ? (BbState) standing->state : BB_STATE_DRAFT;
}

static char *
dup_caution (const Report      *self,
             const BbSheetLine *line)
{
  if (line->revision == NULL)
    return NULL;

  return bb_words_of_line_caution (line, load_state (self, line->revision->id), self->units);
}

/* What should not be printed yet, before anything is mixed for it. */
static void
add_cautions (const Report *self)
{
  for (guint i = 0; i < self->papers->lines->len; i++)
    {
      const BbSheetLine *line = &g_array_index (self->papers->lines, BbSheetLine, i);
      g_autofree char *caution = dup_caution (self, line);
      g_autofree char *text = NULL;

      if (caution == NULL)
        continue;
      text = g_strdup_printf ("%s · %s: %s", line->line->code, line->revision->code, caution);
      add_text (self, text, TRUE);
    }
  if (self->papers->lines->len == 0)
    add_text (self, _("What the job takes stands here once it has a line."), FALSE);
  else if (self->papers->sheet->whole != 1)
    add_text (self, _("Not everything can be computed yet: see what the lines below lack."), TRUE);
}

/* As the scale and the measuring cup show it. */
static char *
format_pour (const Report *self,
             double        grams,
             double        millilitres)
{
  g_autofree char *mass = bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (grams), self->units);
  g_autofree char *volume = bb_quantity_format_with_unit (BB_QUANTITY_VOLUME, bb_round_for_scale (millilitres),
                                                          self->units);

  /* Translators: a mass, and the same by volume. */
  return *volume != '\0' ? g_strdup_printf (_("%s or %s"), mass, volume) : g_steal_pointer (&mass);
}

static void
add_texts (const Report *self,
           GPtrArray    *texts,
           gboolean      strong)
{
  for (guint i = 0; i < texts->len; i++)
    add_text (self, texts->pdata[i], strong);
}

static void
add_mix (const Report     *self,
         const BbMixSheet *mix)
{
  g_autofree char *title = bb_words_of_mix (mix, self->units);
  g_autofree char *concentrate = format_pour (self, mix->concentrate_g, mix->concentrate_ml);
  g_autofree char *water = format_pour (self, mix->water_g, mix->water_ml);
  g_autofree char *total = format_pour (self, mix->total_g, (double) NAN);
  g_autofree char *surplus = bb_words_of_surplus (mix, self->units);
  g_autoptr (GPtrArray) warnings = bb_words_of_mix_warnings (mix, self->units);
  BbBlock *facts = bb_facts_new ();

  bb_document_take (self->document, bb_heading_new (title, 2));
  add_fact (facts, _("Concentrate"), concentrate);
  add_fact (facts, _("Water"), water);
  add_fact (facts, _("Makes"), total);
  bb_document_take (self->document, facts);
  add_text (self, surplus, FALSE);
  for (guint i = 0; i < mix->takes->len; i++)
    {
      g_autofree char *take = bb_words_of_take (&g_array_index (mix->takes, BbTake, i), self->units);

      add_text (self, take, FALSE);
    }
  add_texts (self, warnings, TRUE);
  add_text (self, _(bb_safety_find (BB_STATION_PRETREAT, 0)->brief), FALSE);
}

/* The settings of one station beside each other. */
static void
add_station (const Report     *self,
             BbBlock          *facts,
             const BbRevision *revision,
             BbStation         station)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];
      g_autofree char *value = NULL;

      if (field->station != station || bb_table_is_second_part (&bb_revision_table, field))
        continue;
      value = bb_words_of_field (self->book, &bb_revision_table, field, revision, self->units);
      if (*value != '\0')
        g_string_append_printf (text, "%s%s: %s", text->len > 0 ? " · " : "", _(field->title), value);
    }
  add_fact (facts, bb_station_get_title (station), text->str);
}

static void
add_pretreat (const Report      *self,
              BbBlock           *facts,
              const BbLineSheet *sheet)
{
  g_autofree char *width = bb_quantity_format (BB_QUANTITY_LENGTH, sheet->box_width_mm, self->units);
  g_autofree char *height = bb_quantity_format (BB_QUANTITY_LENGTH, sheet->box_height_mm, self->units);
  g_autofree char *box = g_strdup_printf ("%s × %s %s", width, height,
                                          bb_quantity_get_unit (BB_QUANTITY_LENGTH, self->units));
  g_autofree char *wet = format_pour (self, sheet->wet_g, (double) NAN);
  g_autofree char *needed = format_pour (self, sheet->needed_g, (double) NAN);

  add_fact (facts, _("Box"), box);
  if (sheet->clipped == 1)
    add_fact (facts, _("Margin"), _("the margin is cut to the sprayer's reach"));
  add_fact (facts, _("On each garment"), wet);
  add_fact (facts, _("Pretreat in all"), needed);
}

static void
add_settings (const Report     *self,
              BbBlock          *facts,
              const BbRevision *revision)
{
  static const BbStation stations[] = { BB_STATION_PRETREAT, BB_STATION_DRY, BB_STATION_PRINT, BB_STATION_CURE };

  bb_facts_add (facts, _("Recipe"), revision->code);
  for (guint i = 0; i < G_N_ELEMENTS (stations); i++)
    add_station (self, facts, revision, stations[i]);
}

static void
add_order (const Report    *self,
           BbBlock         *facts,
           const BbJobLine *line)
{
  static const char *const names[] = {
    "size", "artwork", "placement", "print_width_mm", "print_height_mm", "print_mode", "note",
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    add_field (self, facts, &bb_job_line_table, names[i], line);
}

static void
add_line (const Report      *self,
          const BbSheetLine *line,
          const BbLineSheet *sheet)
{
  g_autofree char *garment = bb_words_of_name (self->book, &bb_colourway_table, line->line->colourway);
  g_autofree char *title = g_strjoin (" · ", line->line->code, line->blank != NULL ? line->blank->name : garment,
                                      line->blank != NULL ? garment : NULL, NULL);
  g_autoptr (GPtrArray) steps = line->revision != NULL ? bb_words_of_step_cautions (line->revision) : NULL;
  BbBlock *facts = bb_facts_new ();

  bb_document_take (self->document, bb_heading_new (title, 2));
  add_text (self, sheet->missing, TRUE);
  add_count (facts, line->line->same_garments == 1 ? _("Those of another line, a second time") : _("Garments"),
             sheet->garments, sheet->spares);
  add_order (self, facts, line->line);
  if (line->revision != NULL)
    add_settings (self, facts, line->revision);
  if (sheet->missing == NULL)
    {
      if (line->revision->pretreat_method != BB_PRETREAT_NONE)
        add_pretreat (self, facts, sheet);
      add_time (facts, _("Time"), sheet->time_s, sheet->bottleneck);
    }
  bb_document_take (self->document, facts);
  if (steps != NULL)
    add_texts (self, steps, FALSE);
}

static void
add_parts (const Report *self)
{
  const BbJobSheet *sheet = self->papers->sheet;

  if (sheet->mixes->len > 0)
    bb_document_take (self->document, bb_heading_new (_("To mix"), 1));
  for (guint i = 0; i < sheet->mixes->len; i++)
    add_mix (self, &g_array_index (sheet->mixes, BbMixSheet, i));

  if (sheet->lines->len > 0)
    bb_document_take (self->document, bb_heading_new (_("Lines"), 1));
  for (guint i = 0; i < sheet->lines->len; i++)
    add_line (self, &g_array_index (self->papers->lines, BbSheetLine, i),
              &g_array_index (sheet->lines, BbLineSheet, i));
}

/**
 * bb_job_report_new:
 * @book: a book
 * @job: the key of a job
 * @today: the day of the mix, as an ISO date
 * @units: the units that are shown
 * @error: return location for a #GError
 *
 * Writes the sheet that goes to the bench with a job: what was ordered, what to look at first, what to mix, and for
 * each line the settings of its recipe, the box and the cautions of each step. The numbers are those of
 * bb_job_papers_load().
 *
 * Returns: (transfer full) (nullable): the sheet; %NULL with an error of the book
 */
BbDocument *
bb_job_report_new (BbBook               *book,
                   gint64                job,
                   const char           *today,
                   const BbUnitContext  *units,
                   GError              **error)
{
  g_autoptr (BbJobPapers) papers = NULL;
  g_autoptr (BbShop) shop = NULL;
  Report self = { .book = book, .units = units };

  g_return_val_if_fail (BB_IS_BOOK (book) && today != NULL && units != NULL, NULL);

  papers = bb_job_papers_load (book, job, today, error);
  shop = papers != NULL ? bb_book_load_shop (book, error) : NULL;
  if (shop == NULL)
    return NULL;

  self.papers = papers;
  self.document = make_document (shop, papers->job, today);
  add_head (&self);
  add_cautions (&self);
  add_parts (&self);
  add_text (&self, bb_safety_disclaimer (), FALSE);

  return self.document;
}
