/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-tunnel.h"

#include "bb-canonical.h"

#define S_PER_H 3600.0

/**
 * bb_calc_tunnel:
 * @in: two of heated length, belt speed and dwell, and a pitch
 * @out: all three, and the rate
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Computes the third of three; see the top of bb-tunnel.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_tunnel (const BbTunnelIn *in,
                BbTunnelOut      *out,
                G_GNUC_UNUSED GError **error)
{
  out->heated_length_mm = in->heated_length_mm;
  out->belt_mm_per_s = in->belt_mm_per_s;
  out->dwell_s = in->dwell_s;

  if (isnan (in->heated_length_mm))
    out->heated_length_mm = in->belt_mm_per_s * in->dwell_s;
  else if (isnan (in->belt_mm_per_s))
    out->belt_mm_per_s = in->heated_length_mm / in->dwell_s;
  else
    out->dwell_s = in->heated_length_mm / in->belt_mm_per_s;

  out->garments_per_hour = S_PER_H * out->belt_mm_per_s / in->pitch_mm;

  return TRUE;
}

static gboolean
check_tunnel (gconstpointer record,
              GError      **error)
{
  const BbTunnelIn *in = record;
  gboolean has_length = !isnan (in->heated_length_mm);
  gboolean has_belt = !isnan (in->belt_mm_per_s);
  gboolean has_dwell = !isnan (in->dwell_s);
  g_autofree char *dwell = NULL;

  if (has_length + has_belt + has_dwell == 2)
    return TRUE;

  if (!has_length || !has_belt || !has_dwell)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                   _("%s: missing. Give exactly 2 of heated_length_mm, belt_mm_per_s and dwell_s."),
                   !has_length ? "heated_length_mm" : !has_belt ? "belt_mm_per_s" : "dwell_s");
      return FALSE;
    }

  dwell = bb_number_to_text (in->dwell_s);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               _("dwell_s: %s is one value too many. Give exactly 2 of heated_length_mm, belt_mm_per_s and dwell_s."),
               dwell);
  return FALSE;
}

BB_DEFINE_TABLE (BbTunnelIn, bb_tunnel_in, "tunnel_in", N_("Tunnel"), BB_TUNNEL_IN_FIELDS, check_tunnel)
BB_DEFINE_TABLE (BbTunnelOut, bb_tunnel_out, "tunnel_out", N_("Tunnel"), BB_TUNNEL_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Tunnel, tunnel, "tunnel", N_("Tunnel"),
                      .summary = N_("Belt speed, heated length or dwell of a tunnel dryer from the other two."),
                      .assumes = N_("The belt runs at one speed, with one lane of garments."),
                      .source = N_("Plain kinematics."))
