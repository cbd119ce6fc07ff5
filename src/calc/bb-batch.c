/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-batch.h"

#include "bb-rounding.h"

/* Beyond 2⁵³ steps neighbouring doubles lie further apart than one step. */
#define MOST_STEPS 9007199254740992.0

static double
round_up_to (double total,
             double step)
{
  double steps = total / step;

  if (step <= 0.0 || steps > MOST_STEPS)
    return total;

  return bb_ceil_steady (steps) * step;
}

/**
 * bb_calc_batch:
 * @in: the order's lines and what is added to them
 * @out: garments and grams
 * @error: return location for a #GError; never set
 *
 * Computes how much to make up; see the top of bb-batch.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_batch (const BbBatchIn *in,
               BbBatchOut      *out,
               GError         **error G_GNUC_UNUSED)
{
  gint64 garments = 0;
  double needed = 0.0;
  double total = 0.0;

  for (guint i = 0; i < in->lines->len; i++)
    {
      const BbBatchLine *line = &g_array_index (in->lines, BbBatchLine, i);
      double spares = bb_ceil_steady ((double) line->count * in->spoilage_fraction);
      gint64 count = line->count + (gint64) spares;

      garments += count;
      needed += (double) count * line->used_g;
    }

  out->garments = garments;
  out->needed_g = needed;
  total = (needed + in->line_loss_g) * (1.0 + in->reserve_fraction);
  out->total_g = round_up_to (total, in->round_up_to_g);

  return TRUE;
}

BB_DEFINE_TABLE (BbBatchLine, bb_batch_line, "batch_line", N_("Line"), BB_BATCH_LINE_FIELDS, NULL)
BB_DEFINE_TABLE (BbBatchIn, bb_batch_in, "batch_in", N_("Batch"), BB_BATCH_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbBatchOut, bb_batch_out, "batch_out", N_("Batch"), BB_BATCH_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Batch, batch, "batch", N_("Batch"),
                      .summary = N_("How much pretreat to make up for an order, with spares, "
                                    "line loss and reserve."),
                      .assumes = N_("Spare garments are rounded up on each line; the loss of "
                                    "the line falls once."),
                      .source = N_("Plain arithmetic."))
