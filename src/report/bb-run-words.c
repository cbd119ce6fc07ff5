/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-run-words.h"

#include <glib/gi18n-lib.h>

#include "bb-words.h"

/**
 * bb_words_of_counts:
 * @good: how many came out well, or %BB_INTEGER_NONE
 * @spoiled: how many were spoiled, or %BB_INTEGER_NONE
 *
 * Returns: (transfer full): both, as “36 good, 1 spoiled”; empty where neither is known
 */
char *
bb_words_of_counts (gint64 good,
                    gint64 spoiled)
{
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  if (good != BB_INTEGER_NONE)
    first = g_strdup_printf (ngettext ("%d good", "%d good", (gulong) good), (int) good);
  if (spoiled != BB_INTEGER_NONE)
    second = g_strdup_printf (ngettext ("%d spoiled", "%d spoiled", (gulong) spoiled), (int) spoiled);
  if (first != NULL && second != NULL)
    return g_strdup_printf ("%s, %s", first, second);

  return first != NULL ? g_steal_pointer (&first) : second != NULL ? g_steal_pointer (&second) : g_strdup ("");
}

/**
 * bb_words_of_progress:
 * @line: a line of a job
 *
 * Returns: (transfer full): how far it has come
 */
char *
bb_words_of_progress (const BbLineCard *line)
{
  g_autofree char *counts = bb_words_of_counts (line->good, line->spoiled > 0 ? line->spoiled : BB_INTEGER_NONE);
  /* Translators: how many are wanted, and how many came out well: “72 wanted · 36 good, 1 spoiled”. */
  g_autofree char *text = g_strdup_printf (ngettext ("%d wanted · %s", "%d wanted · %s", (gulong) line->count),
                                           (int) line->count, counts);

  if (line->running == 0)
    return g_steal_pointer (&text);

  return g_strdup_printf (ngettext ("%s · %d run under way", "%s · %d runs under way", (gulong) line->running), text,
                          (int) line->running);
}

/**
 * bb_words_of_rest:
 * @line: a line of a job
 *
 * Returns: (transfer full): how many garments are still to come out well, of how many
 */
char *
bb_words_of_rest (const BbLineCard *line)
{
  const gint64 good = line->good != BB_INTEGER_NONE ? line->good : 0;
  const gint64 rest = MAX (line->count - good, 0);

  /* Translators: how many garments are wanted yet, and how many were ordered. */
  return g_strdup_printf (ngettext ("%d garment still to print, of %d", "%d garments still to print, of %d",
                                    (gulong) rest), (int) rest, (int) line->count);
}

static char *
describe_done (BbBook              *book,
               const BbRevision    *revision,
               const BbField       *field,
               const BbDeparture   *departure,
               const BbUnitContext *units)
{
  g_autoptr (BbRevision) copy = bb_record_copy (&bb_revision_table, revision);

  if (!bb_departure_apply (departure, copy))
    return g_strdup (departure->done != NULL ? departure->done : _("not at all"));

  return bb_words_of_field (book, &bb_revision_table, field, copy, units);
}

/**
 * bb_words_of_departure:
 * @book: a book
 * @revision: what the revision says
 * @departure: what was set otherwise
 * @units: the units to show
 *
 * Returns: (transfer full): both, as “Cure, dwell: 40 s, not 35 s. The press was cold.”
 */
char *
bb_words_of_departure (BbBook              *book,
                       const BbRevision    *revision,
                       const BbDeparture   *departure,
                       const BbUnitContext *units)
{
  const BbField *field = bb_table_find_field (&bb_revision_table, departure->setting);
  g_autofree char *done = NULL;
  g_autofree char *said = NULL;
  g_autofree char *text = NULL;

  if (field == NULL || field->station == BB_STATION_NONE)
    text = g_strdup_printf ("%s: %s", departure->setting, departure->done != NULL ? departure->done : _("not at all"));
  else
    {
      done = describe_done (book, revision, field, departure, units);
      said = bb_words_of_field (book, &bb_revision_table, field, revision, units);
      /* Translators: a station, one of its settings, what was set, and what the recipe says. */
      text = *said != '\0' ? g_strdup_printf (_("%s, %s: %s, not %s."), bb_station_get_title (field->station),
                                              _(field->title), done, said)
                           : g_strdup_printf (_("%s, %s: %s."), bb_station_get_title (field->station), _(field->title),
                                              done);
    }

  return departure->why != NULL ? g_strjoin (" ", text, departure->why, NULL) : g_steal_pointer (&text);
}

/**
 * bb_words_of_weighed:
 * @weighed: a garment that was weighed
 * @target_g_per_m2: the laydown that was aimed at; NaN where that is not known
 * @units: the units to show
 *
 * Returns: (transfer full): both masses, the laydown that they amount to, and what was aimed at
 */
char *
bb_words_of_weighed (const BbWeighed     *weighed,
                     double               target_g_per_m2,
                     const BbUnitContext *units)
{
  g_autofree char *tare = bb_quantity_format_with_unit (BB_QUANTITY_MASS, weighed->tare_g, units);
  g_autofree char *wet = bb_quantity_format_with_unit (BB_QUANTITY_MASS, weighed->wet_g, units);
  double laydown = (weighed->wet_g - weighed->tare_g) / weighed->box_area_m2;
  g_autofree char *per_area = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, laydown, units);

  g_autofree char *target = NULL;

  if (isnan (target_g_per_m2))
    /* Translators: mass of a garment before and after pretreat, and the laydown. */
    return g_strdup_printf (_("%s → %s: %s"), tare, wet, per_area);
  target = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, target_g_per_m2, units);

  /* Translators: mass of a garment before and after pretreat, the laydown, and that which was aimed at. */
  return g_strdup_printf (_("%s → %s: %s, aimed at %s"), tare, wet, per_area, target);
}

/**
 * bb_words_of_weigh_in:
 * @out: what the calculator says of a weigh-in
 * @units: the units to show
 *
 * Returns: (transfer full): the verdict, with a shape, its word, and how far it is from the target
 */
char *
bb_words_of_weigh_in (const BbWeighInOut  *out,
                      const BbUnitContext *units)
{
  g_autofree char *deviation = bb_quantity_format_with_unit (BB_QUANTITY_FRACTION, fabs (out->deviation_fraction),
                                                             units);

  switch ((BbWeighVerdict) out->verdict)
    {
    case BB_WEIGH_LOW:
      return g_strdup_printf (_("▼ Low: %s too little"), deviation);
    case BB_WEIGH_HIGH:
      return g_strdup_printf (_("▲ High: %s too much"), deviation);
    case BB_WEIGH_OK:
    default:
      return g_strdup_printf (_("✓ OK: within %s of the target"), deviation);
    }
}

/**
 * bb_words_of_entry:
 * @book: a book
 * @entry: what was taken from a lot
 * @units: the units to show
 *
 * Returns: (transfer full): the lot, what is in it, and how much was taken, where that was weighed
 */
char *
bb_words_of_entry (BbBook              *book,
                   const BbLotEntry    *entry,
                   const BbUnitContext *units)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbLot) lot = bb_book_load (book, &bb_lot_table, entry->lot, &error);
  g_autofree char *name = NULL;
  g_autofree char *amount = NULL;

  if (lot == NULL)
    return g_strdup (error->message);
  name = bb_words_of_name (book, &bb_supply_table, lot->supply);
  if (isnan (entry->change_g))
    return g_strdup_printf ("%s, %s", lot->code, name);

  amount = bb_quantity_format_with_unit (BB_QUANTITY_MASS, -entry->change_g, units);

  /* Translators: the code of a lot, what is in it, and how much was taken. */
  return g_strdup_printf (_("%s, %s: %s"), lot->code, name, amount);
}

/* What the shop has no machine for can't be named. */
static void
add_unnamed (GPtrArray         *titles,
             const char        *name,
             const BbEquipment *usual,
             const BbRun       *run)
{
  const BbField *field = bb_table_find_field (&bb_run_table, name);

  if (usual != NULL && !bb_field_is_set (field, run))
    g_ptr_array_add (titles, _(field->title));
}

/**
 * bb_words_of_unnamed_machines:
 * @line: a line, with a machine for each step that the shop has one for
 * @run: a run of it
 *
 * Returns: (transfer full) (nullable): which of the machines the run does not name, and what that costs; %NULL where it
 *   names all
 */
char *
bb_words_of_unnamed_machines (const BbSheetLine *line,
                              const BbRun       *run)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();
  g_autofree char *list = NULL;

  g_return_val_if_fail (line != NULL && run != NULL, NULL);

  add_unnamed (titles, "sprayer", line->sprayer, run);
  add_unnamed (titles, "dryer", line->dryer, run);
  add_unnamed (titles, "printer", line->printer, run);
  add_unnamed (titles, "curer", line->curer, run);
  if (titles->len == 0)
    return NULL;
  g_ptr_array_add (titles, NULL);
  list = g_strjoinv (", ", (char **) titles->pdata);

  /* Translators: a list of titles, like "Dried on, Printer". */
  return g_strdup_printf (_("Not named: %s. A fault can't be traced to a machine that nobody has named."), list);
}
