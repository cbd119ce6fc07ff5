/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-heat-limit.h"

/* Common practice, no source. */
#define FINISH_MARGIN_C 10.0

/* What a finish adds to the reason; NULL where it leaves the limit as it is. */
static const char *
get_finish_reason (BbFinish finish)
{
  switch (finish)
    {
    case BB_FINISH_GARMENT_DYED:
      return _("The limit is set lower for a garment-dyed piece, whose shade can shift under heat.");
    case BB_FINISH_SOFTENED:
      return _("The limit is set lower for a heavily softened garment, whose softener can yellow.");
    case BB_FINISH_WATER_REPELLENT:
      return _("The limit is set lower for a water-repellent garment, whose finish can suffer.");
    case BB_FINISH_NONE:
    case BB_FINISH_RING_SPUN:
    case BB_FINISH_ENZYME:
    default:
      return NULL;
    }
}

static BbFibre
find_limiting_fibre (const GArray *composition)
{
  int found = BB_CHOICE_NONE;

  for (int fibre = 0; fibre < BB_N_FIBRES; fibre++)
    if (bb_composition_has (composition, (BbFibre) fibre) &&
        (found == BB_CHOICE_NONE || bb_fibre_data_get ((BbFibre) fibre)->heat_limit_c <
                                      bb_fibre_data_get ((BbFibre) found)->heat_limit_c))
      found = fibre;

  return (BbFibre) found;
}

static void
append_sentence (GString    *text,
                 const char *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
}

/**
 * bb_calc_heat_limit:
 * @in: what a garment is made of
 * @out: its heat limit, and why
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Finds the hottest surface that a garment should meet; see the top of bb-heat-limit.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_heat_limit (const BbHeatLimitIn *in,
                    BbHeatLimitOut      *out,
                    G_GNUC_UNUSED GError **error)
{
  BbFibre fibre = find_limiting_fibre (in->composition);
  const BbFibreData *data = bb_fibre_data_get (fibre);
  const char *finish_reason = get_finish_reason ((BbFinish) in->finish);
  GString *reason = g_string_new (_(data->limit_reason));

  out->limit_c = data->heat_limit_c;
  out->limiting_fibre = (int) fibre;
  if (finish_reason != NULL)
    {
      out->limit_c -= FINISH_MARGIN_C;
      append_sentence (reason, finish_reason);
    }
  if (bb_composition_has (in->composition, BB_FIBRE_POLYESTER))
    append_sentence (reason, _("Dyes of polyester can migrate into the print well below this limit: "
                               "try a spare garment, and look again after some days."));
  out->reason = g_string_free (reason, FALSE);

  return TRUE;
}

static gboolean
check_heat_limit (gconstpointer record,
                  GError      **error)
{
  const BbHeatLimitIn *in = record;

  return bb_composition_check (in->composition, "composition", error);
}

BB_DEFINE_TABLE (BbHeatLimitIn, bb_heat_limit_in, "heat_limit_in", N_("Heat limit"), BB_HEAT_LIMIT_IN_FIELDS,
                 check_heat_limit)
BB_DEFINE_TABLE (BbHeatLimitOut, bb_heat_limit_out, "heat_limit_out", N_("Heat limit"), BB_HEAT_LIMIT_OUT_FIELDS,
                 NULL)
BB_DEFINE_CALCULATOR (HeatLimit, heat_limit, "heat-limit", N_("Heat limit"),
                      .summary = N_("The hottest surface that a garment should meet, by its fibres and finish."),
                      .assumes = N_("Contact for seconds to a few minutes. The care label and a test come first."),
                      .source = N_("ISO 3758 iron symbols and handbooks. Finishes are common practice, no source."))

/**
 * bb_heat_limit_of_blank:
 * @blank: a garment
 * @out: its heat limit, and why
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Runs the calculator on what a garment is made of.
 *
 * Returns: %FALSE if that is not known
 */
gboolean
bb_heat_limit_of_blank (const BbBlank   *blank,
                        BbHeatLimitOut  *out,
                        GError         **error)
{
  g_autoptr (BbHeatLimitIn) in = bb_heat_limit_in_new ();
  const BbField *composition = bb_table_find_field (&bb_heat_limit_in_table, "composition");

  g_return_val_if_fail (blank != NULL && out != NULL, FALSE);

  for (guint i = 0; blank->composition != NULL && i < blank->composition->len; i++)
    *(BbFibreShare *) bb_field_append_item (composition, in) = g_array_index (blank->composition, BbFibreShare, i);
  in->finish = blank->finish;

  return bb_calculator_run (&bb_heat_limit_calculator, in, out, error);
}
