/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-wash-report-private.h"

#include <glib/gi18n-lib.h>

#include "bb-words.h"

static void
add_field (const BbWashReport *self,
           BbBlock            *facts,
           const BbTable      *table,
           const BbField      *field,
           gconstpointer       record)
{
  g_autofree char *value = bb_words_of_field (self->book, table, field, record, self->about->units);

  if (*value != '\0')
    bb_facts_add (facts, _(field->title), value);
}

static void
add_station (const BbWashReport *self,
             BbStation           station)
{
  BbBlock *facts = bb_facts_new ();

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];

      if (field->station == station && !bb_table_is_second_part (&bb_revision_table, field))
        add_field (self, facts, &bb_revision_table, field, self->evidence->revision);
    }
  bb_document_take (self->document, bb_heading_new (bb_station_get_title (station), 2));
  bb_document_take (self->document, facts);
}

/**
 * _bb_wash_report_add_recipe:
 * @self: a report
 *
 * Adds what was printed and how, along the chain.
 */
void
_bb_wash_report_add_recipe (const BbWashReport *self)
{
  const char * const names[] = { "blank", "family", "colourway", "shade" };
  BbBlock *facts = bb_facts_new ();
  g_autofree char *made = bb_words_of_day (self->evidence->revision->made_at);

  bb_document_take (self->document, bb_heading_new (_("Recipe"), 1));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    add_field (self, facts, &bb_recipe_table, bb_table_find_field (&bb_recipe_table, names[i]), self->recipe);
  bb_facts_add (facts, _("Revision made"), made);
  bb_document_take (self->document, facts);
  for (guint station = BB_STATION_PRETREAT; station < BB_STATION_PROOF; station++)
    add_station (self, (BbStation) station);
}

static void
add_plan (const BbWashReport *self,
          const BbWashPlan   *plan)
{
  const char * const names[] = {
    "standard", "publication", "procedure", "wash_c", "wash_s", "liquor_ml", "steel_balls", "detergent", "drying",
    "launderings", "origin", "grade_at",
  };
  BbBlock *facts = bb_facts_new ();
  g_autofree char *heading = g_strdup_printf (_("Wash plan %s: %s"), plan->code, plan->name);

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    add_field (self, facts, &bb_wash_plan_table, bb_table_find_field (&bb_wash_plan_table, names[i]), plan);
  bb_document_take (self->document, bb_heading_new (heading, 2));
  bb_document_take (self->document, facts);
}

static gboolean
is_first_of_plan (const BbWashEvidence *evidence,
                  guint                 index)
{
  const BbSpecimen *specimen = evidence->specimens->pdata[index];

  for (guint i = 0; i < index; i++)
    {
      const BbSpecimen *before = evidence->specimens->pdata[i];

      if (before->plan != NULL && before->plan->id == specimen->plan->id)
        return FALSE;
    }

  return TRUE;
}

/**
 * _bb_wash_report_add_method:
 * @self: a report
 *
 * Adds how specimens are washed, and what they have to stand.
 */
void
_bb_wash_report_add_method (const BbWashReport *self)
{
  bb_document_take (self->document, bb_heading_new (_("Method"), 1));
  add_station (self, BB_STATION_PROOF);
  for (guint s = 0; s < self->evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = self->evidence->specimens->pdata[s];

      if (specimen->plan != NULL && is_first_of_plan (self->evidence, s))
        add_plan (self, specimen->plan);
    }
}

/* What was not looked at. */
#define NOTHING "–"

/* A balance and a box tell a laydown no finer than this, in g/m² (common practice, no source). */
#define LAYDOWN_STEP 0.1

static char *
describe_laydown (const BbWashReport *self,
                  const BbWashTest   *test)
{
  double laydown = (test->wet_g - test->tare_g) / test->box_area_m2;

  return isnan (laydown) ? g_strdup (NOTHING)
                         : bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA,
                                                         round (laydown / LAYDOWN_STEP) * LAYDOWN_STEP,
                                                         self->about->units);
}

static char *
describe_specimen_verdict (const BbSpecimen *specimen)
{
  const char *verdict = bb_choices_get_title (&bb_verdict_choices, specimen->verdict.verdict);

  if (specimen->test->withdrawn_at != NULL)
    /* Translators: a verdict, like "Passed", of a specimen that does not count. */
    return g_strdup_printf (_("%s; withdrawn, does not count"), verdict);
  if (!specimen->counts)
    return g_strdup_printf (_("%s; washed by another method, does not count"), verdict);
  if (specimen->verdict.verdict == BB_VERDICT_FAILED)
    return g_strdup_printf (ngettext ("%s after %d cycle", "%s after %d cycles", (gulong) specimen->verdict.failed_at),
                            verdict, (int) specimen->verdict.failed_at);

  return g_strdup (verdict);
}

static void
add_specimens (const BbWashReport *self)
{
  const BbColumn columns[] = {
    { _("Specimen"), 1.2, FALSE }, { _("Colourway"), 1.7, FALSE }, { _("Printed"), 1.1, FALSE },
    { _("By"), 1.6, FALSE }, { _("Laydown"), 1.1, TRUE }, { _("Planned"), 1.0, TRUE }, { _("Verdict"), 2.2, FALSE },
  };
  BbBlock *table = bb_table_new (columns, G_N_ELEMENTS (columns));

  for (guint s = 0; s < self->evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = self->evidence->specimens->pdata[s];
      const BbWashTest *test = specimen->test;
      g_autofree char *colour = bb_words_of_name (self->book, &bb_colourway_table, test->colourway);
      g_autofree char *day = bb_words_of_day (test->made_at);
      g_autofree char *person = bb_words_of_name (self->book, &bb_person_table, test->person);
      g_autofree char *laydown = describe_laydown (self, test);
      g_autofree char *planned = g_strdup_printf ("%" G_GINT64_FORMAT, test->plan_cycles);
      g_autofree char *verdict = describe_specimen_verdict (specimen);
      const char *cells[] = { test->code, colour, day, person, laydown, planned, verdict, NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, test->note);
    }
  bb_document_take (self->document, bb_heading_new (_("Specimens"), 1));
  bb_document_take (self->document, table);
}

static char *
join_notes (const BbReading *reading)
{
  g_autofree char *dispute = bb_reading_describe_dispute (reading);

  if (reading->note == NULL)
    return g_steal_pointer (&dispute);

  return dispute != NULL ? g_strjoin ("\n", reading->note, dispute, NULL) : g_strdup (reading->note);
}

/* The columns of the readings; one that nobody filled is left out, unless @always. */
static const struct {
  const char *title;
  double share;
  gboolean to_right;
  gboolean always;
} reading_columns[] = {
  { N_("Specimen"), 1.4, FALSE, TRUE },  { N_("Cycles"), 1.0, TRUE, TRUE },    { N_("Change"), 1.1, TRUE, TRUE },
  { N_("Change, measured"), 1.4, TRUE, FALSE },                                { N_("Staining"), 1.2, TRUE, FALSE },
  { N_("Staining, measured"), 1.4, TRUE, FALSE },                              { N_("Cracking"), 1.6, FALSE, TRUE },
  { N_("Lifting"), 1.1, FALSE, FALSE },  { N_("Fibres"), 1.1, FALSE, FALSE },  { N_("Hand"), 0.95, TRUE, FALSE },
  { N_("Box mark"), 1.1, FALSE, FALSE }, { N_("Read"), 1.9, FALSE, TRUE },     { N_("By"), 0.9, FALSE, TRUE },
};

static const char *
choice_or_nothing (const BbChoices *choices,
                   int              choice)
{
  return choice != BB_CHOICE_NONE ? bb_choices_get_title (choices, choice) : "";
}

/* A text for each of the columns, empty where there is nothing. */
static GStrv
make_cells (const BbWashReport *self,
            const BbSpecimen   *specimen,
            const BbReading    *reading)
{
  g_autofree char *cycles = g_strdup_printf ("%" G_GINT64_FORMAT, reading->cycles);
  g_autofree char *hand = reading->hand != BB_INTEGER_NONE ? g_strdup_printf ("%" G_GINT64_FORMAT, reading->hand)
                                                           : g_strdup ("");
  g_autofree char *day = bb_words_of_day (reading->read_at);
  g_autoptr (BbPerson) person = reading->person == 0
                                  ? NULL
                                  : bb_book_load (self->book, &bb_person_table, reading->person, NULL);
  const char *cells[] = {
    specimen->test->code,
    cycles,
    choice_or_nothing (&bb_grade_choices, reading->change),
    choice_or_nothing (&bb_grade_choices, reading->change_measured),
    choice_or_nothing (&bb_grade_choices, reading->stain),
    choice_or_nothing (&bb_grade_choices, reading->stain_measured),
    choice_or_nothing (&bb_crack_choices, reading->crack),
    choice_or_nothing (&bb_fault_choices, reading->lifting),
    choice_or_nothing (&bb_fault_choices, reading->fibrillation),
    hand,
    choice_or_nothing (&bb_fault_choices, reading->box_mark),
    day,
    person != NULL ? person->code : "",
    NULL,
  };

  return g_strdupv ((GStrv) (gpointer) cells);
}

static gboolean
is_filled (const GPtrArray *rows,
           guint            column)
{
  if (reading_columns[column].always)
    return TRUE;
  for (guint r = 0; r < rows->len; r++)
    if (*((GStrv) rows->pdata[r])[column] != '\0')
      return TRUE;

  return FALSE;
}

static BbBlock *
make_readings (const GPtrArray *rows,
               const GPtrArray *notes)
{
  g_autoptr (GArray) columns = g_array_new (FALSE, FALSE, sizeof (BbColumn));
  BbBlock *table = NULL;

  for (guint c = 0; c < G_N_ELEMENTS (reading_columns); c++)
    {
      BbColumn column = { _(reading_columns[c].title), reading_columns[c].share, reading_columns[c].to_right };

      if (is_filled (rows, c))
        g_array_append_val (columns, column);
    }
  table = bb_table_new ((const BbColumn *) (gpointer) columns->data, columns->len);
  for (guint r = 0; r < rows->len; r++)
    {
      g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();
      g_auto (GStrv) shown = NULL;

      for (guint c = 0; c < G_N_ELEMENTS (reading_columns); c++)
        if (is_filled (rows, c))
          {
            const char *cell = ((GStrv) rows->pdata[r])[c];

            g_strv_builder_add (cells, *cell != '\0' ? cell : NOTHING);
          }
      shown = g_strv_builder_end (cells);
      bb_table_add (table, shown, notes->pdata[r]);
    }

  return table;
}

static void
add_readings (const BbWashReport *self)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);

  for (guint s = 0; s < self->evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = self->evidence->specimens->pdata[s];

      for (guint r = 0; r < specimen->readings->len; r++)
        {
          g_ptr_array_add (rows, make_cells (self, specimen, specimen->readings->pdata[r]));
          g_ptr_array_add (notes, join_notes (specimen->readings->pdata[r]));
        }
    }
  bb_document_take (self->document, bb_heading_new (_("Readings"), 1));
  if (rows->len > 0)
    bb_document_take (self->document, make_readings (rows, notes));
  else
    bb_document_take (self->document, bb_text_new (_("No specimen has been read yet."), FALSE));
}

/**
 * _bb_wash_report_add_tables:
 * @self: a report
 *
 * Adds the specimens and their readings.
 */
void
_bb_wash_report_add_tables (const BbWashReport *self)
{
  if (self->evidence->specimens->len == 0)
    {
      bb_document_take (self->document, bb_heading_new (_("Specimens"), 1));
      bb_document_take (self->document, bb_text_new (_("No specimen has been made yet."), FALSE));
      return;
    }
  add_specimens (self);
  add_readings (self);
}

static gboolean
any_not_checked (const BbWashEvidence *evidence)
{
  for (guint s = 0; s < evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = evidence->specimens->pdata[s];

      if (specimen->plan != NULL && (specimen->plan->origin == BB_PLAN_ORIGIN_MEMORY ||
                                     specimen->plan->origin == BB_PLAN_ORIGIN_PART))
        return TRUE;
    }

  return FALSE;
}

/**
 * _bb_wash_report_add_limits:
 * @self: a report
 *
 * Adds what the report does not show.
 */
void
_bb_wash_report_add_limits (const BbWashReport *self)
{
  const char *limits[] = {
    _("Grades are those of the grey scales, ISO 105-A02 for change in colour and ISO 105-A03 for staining, read by eye "
      "by the persons named. Measured grades come from scans: they support the eye and do not replace it."),
    _("What is said of other garments than these specimens holds for garments that are made alike: the same blank, "
      "recipe, machines and artwork. Specimens count as made alike and washed apart."),
    _("A bound says how low the share that passes may be and still give this result by chance no more often than the "
      "confidence allows. It is as wide as the specimens are few."),
    _("Household machines, loads and detergents differ from those of the method, and so may the wear of a garment at "
      "home."),
    _("The shop made and read these specimens itself. This report is no certificate of a testing laboratory."),
  };

  bb_document_take (self->document, bb_heading_new (_("Limits of the method"), 1));
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    bb_document_take (self->document, bb_text_new (limits[i], FALSE));
  if (self->about->remark != NULL && *self->about->remark != '\0')
    bb_document_take (self->document, bb_text_new (self->about->remark, FALSE));
  if (any_not_checked (self->evidence))
    bb_document_take (self->document,
                      bb_text_new (_("The parameters of a wash plan above were not checked against the text of its "
                                     "standard: only who follows that text can claim to have tested by it."), FALSE));
}
