/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-fibre-data.h"

/*
 * Sources, as cited below:
 *   Broadbent      A. D. Broadbent, Basic Principles of Textile Coloration, 2001, Table 2.1 (20 °C, 65 %)
 *   M&H regain     Morton and Hearle 2008, as cited in Table 10 of doi 10.1186/s40643-020-00339-1 (secondary)
 *   M&H 6.1        Morton and Hearle, Physical Properties of Textile Fibres, Table 6.1 (reproduced, secondary)
 *   lecture        a textile-science lecture's table of man-made fibres (secondary)
 *   Annex IX       Regulation (EU) No 1007/2011, agreed allowances: gives viscose, modal and lyocell one figure
 *   CMMD           Springer Handbook of Condensed Matter and Materials Data, Table 3.3-6, polypropylene at 20 °C
 *   ISO 3758       iron symbols, 200, 150 and 110 °C; which fibre goes with which, from care guides (secondary)
 */
static const BbFibreData fibres[BB_N_FIBRES] = {
  [BB_FIBRE_COTTON] = {
    .regain_fraction = 0.075,         /* 7–8 %: Broadbent; M&H regain */
    .heat_capacity_j_per_g_k = 1.285, /* 1.22–1.35: M&H 6.1 */
    .heat_limit_c = 200,              /* ISO 3758 */
    .limit_reason = N_("Care labels allow cotton no hotter iron than this."),
  },
  [BB_FIBRE_POLYESTER] = {
    .regain_fraction = 0.004,        /* Broadbent */
    .heat_capacity_j_per_g_k = 1.03, /* M&H 6.1 */
    .heat_limit_c = 150,             /* ISO 3758; a fibre data sheet has sticking from 205 °C (secondary) */
    .limit_reason = N_("Care labels allow polyester no hotter iron than this: it glazes and shrinks."),
  },
  [BB_FIBRE_VISCOSE] = {
    .regain_fraction = 0.13,         /* Broadbent; 12–14 %: lecture */
    .heat_capacity_j_per_g_k = 1.47, /* 1.35–1.59: M&H 6.1 */
    .heat_limit_c = 150,             /* ISO 3758 */
    .limit_reason = N_("Care labels allow viscose no hotter iron than this."),
  },
  [BB_FIBRE_MODAL] = {
    .regain_fraction = 0.13,         /* as viscose: Annex IX gives both 13 % */
    .heat_capacity_j_per_g_k = 1.47, /* as viscose, the same cellulose */
    .heat_limit_c = 150,             /* as viscose */
    .limit_reason = N_("Care labels allow modal no hotter iron than this."),
  },
  [BB_FIBRE_LYOCELL] = {
    .regain_fraction = 0.13,         /* as viscose: Annex IX gives both 13 % */
    .heat_capacity_j_per_g_k = 1.47, /* as viscose, the same cellulose */
    .heat_limit_c = 150,             /* as viscose */
    .limit_reason = N_("Care labels allow lyocell no hotter iron than this."),
  },
  [BB_FIBRE_LINEN] = {
    .regain_fraction = 0.07,          /* M&H regain */
    .heat_capacity_j_per_g_k = 1.285, /* as cotton, the same cellulose */
    .heat_limit_c = 200,              /* ISO 3758 */
    .limit_reason = N_("Care labels allow linen no hotter iron than this."),
  },
  [BB_FIBRE_HEMP] = {
    .regain_fraction = 0.08,          /* M&H regain */
    .heat_capacity_j_per_g_k = 1.285, /* as cotton, the same cellulose */
    .heat_limit_c = 200,              /* as linen */
    .limit_reason = N_("Care labels allow hemp, like linen, no hotter iron than this."),
  },
  [BB_FIBRE_WOOL] = {
    .regain_fraction = 0.14,         /* 13–15 %: Broadbent; 14 %: M&H regain */
    .heat_capacity_j_per_g_k = 1.36, /* M&H 6.1 */
    .heat_limit_c = 150,             /* ISO 3758 */
    .limit_reason = N_("Care labels allow wool no hotter iron than this."),
  },
  [BB_FIBRE_SILK] = {
    .regain_fraction = 0.10,         /* M&H regain */
    .heat_capacity_j_per_g_k = 1.38, /* M&H 6.1 */
    .heat_limit_c = 150,             /* ISO 3758 */
    .limit_reason = N_("Care labels allow silk no hotter iron than this."),
  },
  [BB_FIBRE_POLYAMIDE] = {
    .regain_fraction = 0.0425,        /* 4.0–4.5 %: Broadbent; lecture */
    .heat_capacity_j_per_g_k = 1.445, /* nylon 6 1.43, nylon 6.6 1.46: M&H 6.1 */
    .heat_limit_c = 110,              /* ISO 3758 */
    .limit_reason = N_("Care labels allow polyamide no hotter iron than this: it glazes and shrinks."),
  },
  [BB_FIBRE_ACRYLIC] = {
    .regain_fraction = 0.0175,      /* 1.0–2.5 %: Broadbent */
    .heat_capacity_j_per_g_k = 1.3, /* from memory */
    .heat_limit_c = 110,            /* ISO 3758 */
    .limit_reason = N_("Care labels allow acrylic no hotter iron than this: it glazes and stretches."),
  },
  [BB_FIBRE_POLYPROPYLENE] = {
    .regain_fraction = 0,            /* it takes up none: a teaching page (secondary) */
    .heat_capacity_j_per_g_k = 1.68, /* CMMD */
    .heat_limit_c = 110,             /* ISO 3758's lowest; that it is polypropylene's, from memory */
    .limit_reason = N_("Care labels allow polypropylene no hotter iron than this: it softens soon above."),
  },
  [BB_FIBRE_ELASTANE] = {
    .regain_fraction = 0.0085,      /* 0.4–1.3 %: lecture */
    .heat_capacity_j_per_g_k = 1.8, /* from memory, polyurethane rubbers */
    .heat_limit_c = 177,            /* sticks from 350 °F: a fibre page (secondary) */
    .limit_reason = N_("Elastane begins to stick at this temperature."),
  },
};

/**
 * bb_fibre_data_get:
 * @fibre: a fibre
 *
 * Returns: (transfer none): what is published about it
 */
const BbFibreData *
bb_fibre_data_get (BbFibre fibre)
{
  g_return_val_if_fail ((guint) fibre < BB_N_FIBRES, &fibres[BB_FIBRE_COTTON]);

  return &fibres[fibre];
}

/**
 * bb_composition_get_regain:
 * @composition: (nullable): a list of #BbFibreShare that bb_composition_check() accepts
 *
 * Returns: the mean standard moisture regain, each fibre's weighted by its share as it stands
 */
double
bb_composition_get_regain (const GArray *composition)
{
  double sum = 0;

  for (guint i = 0; composition != NULL && i < composition->len; i++)
    {
      const BbFibreShare *share = &g_array_index (composition, BbFibreShare, i);

      sum += share->fraction * bb_fibre_data_get ((BbFibre) share->fibre)->regain_fraction;
    }

  return sum;
}

/**
 * bb_composition_get_heat_capacity:
 * @composition: (nullable): a list of #BbFibreShare that bb_composition_check() accepts
 *
 * Returns: the mean specific heat in J/(g K), each fibre's weighted by its share as it stands
 */
double
bb_composition_get_heat_capacity (const GArray *composition)
{
  double sum = 0;

  for (guint i = 0; composition != NULL && i < composition->len; i++)
    {
      const BbFibreShare *share = &g_array_index (composition, BbFibreShare, i);

      sum += share->fraction * bb_fibre_data_get ((BbFibre) share->fibre)->heat_capacity_j_per_g_k;
    }

  return sum;
}

/**
 * bb_composition_has:
 * @composition: (nullable): a list of #BbFibreShare
 * @fibre: a fibre
 *
 * Returns: %TRUE if any share is of @fibre
 */
gboolean
bb_composition_has (const GArray *composition,
                    BbFibre       fibre)
{
  for (guint i = 0; composition != NULL && i < composition->len; i++)
    if (g_array_index (composition, BbFibreShare, i).fibre == (int) fibre)
      return TRUE;

  return FALSE;
}
