/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-nearest.h"

#include "bb-fibre-data.h"
#include "bb-lab.h"

#define FIBRE_WEIGHT 4.0
#define MASS_WEIGHT 1.5
#define KNIT_WEIGHT 1.0
#define FINISH_WEIGHT 1.0
#define COLOUR_WEIGHT 2.0
#define PROOF_WEIGHT 1.5
#define ALL_WEIGHTS (FIBRE_WEIGHT + MASS_WEIGHT + KNIT_WEIGHT + FINISH_WEIGHT + COLOUR_WEIGHT + PROOF_WEIGHT)

#define WITHIN_FAMILY 0.35
#define NEARLY 0.5
#define FARTHEST_DE 50.0

/* Shares of a label are whole per cents: a difference below half of one is none. */
#define SHARE_SLACK 0.005

typedef enum {
  CELLULOSE = 0,
  PROTEIN,
  SYNTHETIC,
  N_FAMILIES
} Family;

static Family
family_of (BbFibre fibre)
{
  switch (fibre)
    {
    case BB_FIBRE_COTTON:
    case BB_FIBRE_VISCOSE:
    case BB_FIBRE_MODAL:
    case BB_FIBRE_LYOCELL:
    case BB_FIBRE_LINEN:
    case BB_FIBRE_HEMP:
      return CELLULOSE;
    case BB_FIBRE_WOOL:
    case BB_FIBRE_SILK:
      return PROTEIN;
    case BB_FIBRE_POLYESTER:
    case BB_FIBRE_POLYAMIDE:
    case BB_FIBRE_ACRYLIC:
    case BB_FIBRE_POLYPROPYLENE:
    case BB_FIBRE_ELASTANE:
    default:
      return SYNTHETIC;
    }
}

static void
add_shares (const GArray *composition,
            double        sign,
            double        shares[BB_N_FIBRES])
{
  for (guint i = 0; i < composition->len; i++)
    {
      const BbFibreShare *share = &g_array_index (composition, BbFibreShare, i);

      shares[share->fibre] += sign * share->fraction;
    }
}

/* A share that changes its fibre leaves one surplus and fills another: half the sum of all is what has to change. */
static double
fibre_distance (const GArray *a,
                const GArray *b)
{
  double shares[BB_N_FIBRES] = { 0 };
  double families[N_FAMILIES] = { 0 };
  double changed = 0;
  double left = 0;

  add_shares (a, 1.0, shares);
  add_shares (b, -1.0, shares);
  for (int i = 0; i < BB_N_FIBRES; i++)
    {
      changed += fabs (shares[i]) / 2.0;
      families[family_of ((BbFibre) i)] += shares[i];
    }
  for (guint i = 0; i < N_FAMILIES; i++)
    left += fabs (families[i]) / 2.0;

  return WITHIN_FAMILY * (changed - left) + left;
}

static gboolean
have_same_fibres (const GArray *a,
                  const GArray *b)
{
  double shares[BB_N_FIBRES] = { 0 };

  add_shares (a, 1.0, shares);
  add_shares (b, -1.0, shares);
  for (int i = 0; i < BB_N_FIBRES; i++)
    if (fabs (shares[i]) > SHARE_SLACK)
      return FALSE;

  return TRUE;
}

/* Which knits are near each other: those of one group. */
static int
group_of (int knit)
{
  switch ((BbKnit) knit)
    {
    case BB_KNIT_JERSEY:
    case BB_KNIT_RIB:
    case BB_KNIT_INTERLOCK:
      return 0;
    case BB_KNIT_FLEECE:
    case BB_KNIT_TERRY:
      return 1;
    case BB_KNIT_PIQUE:
    case BB_KNIT_MESH:
      return 2;
    case BB_KNIT_WOVEN:
    default:
      return 3;
    }
}

static double
knit_distance (int a,
               int b)
{
  if (a == b)
    return 0.0;

  return group_of (a) == group_of (b) ? NEARLY : 1.0;
}

static double
finish_distance (int a,
                 int b)
{
  if (a == b)
    return 0.0;

  return a == BB_FINISH_NONE || b == BB_FINISH_NONE ? NEARLY : 1.0;
}

/* NaN where one of the colours is not known. */
static double
colour_difference (const char *a,
                   const char *b)
{
  guint8 rgb_a[3];
  guint8 rgb_b[3];
  cmsCIELab lab_a;
  cmsCIELab lab_b;

  if (!bb_srgb_parse (a, rgb_a) || !bb_srgb_parse (b, rgb_b))
    return (double) NAN;
  lab_a = bb_lab_from_srgb (rgb_a);
  lab_b = bb_lab_from_srgb (rgb_b);

  return cmsCIE2000DeltaE (&lab_a, &lab_b, 1.0, 1.0, 1.0);
}

static double
proof_distance (const BbCandidate *candidate)
{
  const double of_state[] = { [BB_STATE_DRAFT] = 0.8, [BB_STATE_ON_TRIAL] = 0.5, [BB_STATE_PROVEN] = 0.0,
                              [BB_STATE_WITHDRAWN] = 1.0 };

  return (of_state[candidate->state] + 1.0 / (1.0 + (double) candidate->passed)) / 2.0;
}

static void
measure (const BbNearestIn *wanted,
         const BbCandidate *garment,
         BbNear            *near)
{
  double mass = fmin (fabs (log2 (garment->mass_g_per_m2 / wanted->mass_g_per_m2)), 1.0);
  double colour = 0;

  near->name = g_strdup (garment->name);
  near->fibre_distance = fibre_distance (garment->composition, wanted->composition);
  near->mass_difference_g_per_m2 = garment->mass_g_per_m2 - wanted->mass_g_per_m2;
  near->same_fibres = have_same_fibres (garment->composition, wanted->composition);
  near->same_knit = garment->knit == wanted->knit;
  near->same_finish = garment->finish == wanted->finish;
  near->de_00 = colour_difference (garment->srgb, wanted->srgb);
  colour = isnan (near->de_00) ? NEARLY : fmin (near->de_00 / FARTHEST_DE, 1.0);
  near->distance = (FIBRE_WEIGHT * near->fibre_distance + MASS_WEIGHT * mass +
                    KNIT_WEIGHT * knit_distance (garment->knit, wanted->knit) +
                    FINISH_WEIGHT * finish_distance (garment->finish, wanted->finish) + COLOUR_WEIGHT * colour +
                    PROOF_WEIGHT * proof_distance (garment)) / ALL_WEIGHTS;
}

static int
compare_near (gconstpointer a,
              gconstpointer b)
{
  const BbNear *first = a;
  const BbNear *second = b;

  if (first->distance != second->distance)
    return first->distance < second->distance ? -1 : 1;

  return (first->candidate > second->candidate) - (first->candidate < second->candidate);
}

/**
 * bb_calc_nearest:
 * @in: a garment, and recipes to choose from
 * @out: the nearest of them
 * @error: return location for a #GError; never set
 *
 * Ranks recipes by how much their garment is like another; see the top of bb-nearest.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_nearest (const BbNearestIn     *in,
                 BbNearestOut          *out,
                 G_GNUC_UNUSED GError **error)
{
  const BbField *list = bb_table_find_field (&bb_nearest_out_table, "nearest");
  GArray *nearest = bb_field_ensure_array (list, out);

  for (guint i = 0; i < in->candidates->len; i++)
    {
      BbNear *near = bb_field_append_item (list, out);

      near->candidate = i;
      measure (in, &g_array_index (in->candidates, BbCandidate, i), near);
    }
  g_array_sort (nearest, compare_near);
  for (guint i = (guint) in->limit; i < nearest->len; i++)
    bb_record_clear (&bb_near_table, &g_array_index (nearest, BbNear, i));
  g_array_set_size (nearest, MIN (nearest->len, (guint) in->limit));

  return TRUE;
}

static gboolean
check_candidate (gconstpointer record,
                 GError      **error)
{
  const BbCandidate *self = record;

  return bb_composition_check (self->composition, "composition", error) &&
         bb_srgb_check (self->srgb, "srgb", error);
}

static gboolean
check_nearest (gconstpointer record,
               GError      **error)
{
  const BbNearestIn *in = record;

  return bb_composition_check (in->composition, "composition", error) &&
         bb_srgb_check (in->srgb, "srgb", error);
}

BB_DEFINE_TABLE (BbCandidate, bb_candidate, "candidate", N_("Recipe"), BB_CANDIDATE_FIELDS, check_candidate)
BB_DEFINE_TABLE (BbNearestIn, bb_nearest_in, "nearest_in", N_("Nearest recipes"), BB_NEAREST_IN_FIELDS, check_nearest)
BB_DEFINE_TABLE (BbNear, bb_near, "near", N_("Near recipe"), BB_NEAR_FIELDS, NULL)
BB_DEFINE_TABLE (BbNearestOut, bb_nearest_out, "nearest_out", N_("Nearest recipes"), BB_NEAREST_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Nearest, nearest, "nearest", N_("Nearest recipes"),
                      .summary = N_("Which recipes lie nearest to a garment that nobody has printed, by fibres, mass, "
                                    "knit, finish, colour and proof."),
                      .assumes = N_("The fibre counts most, then how the fabric takes up liquid, then the colour under "
                                    "the ink. An order to look at things in: a trial says whether a recipe holds."),
                      .source = N_("CIEDE2000: ISO/CIE 11664-6, by Little CMS; sRGB: IEC 61966-2-1. Weights are common "
                                   "practice, no source."))
