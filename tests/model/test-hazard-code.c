/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-hazard-code.h"
#include "bb-problem.h"
#include "bb-supply.h"

/* Codes of Regulation (EC) No 1272/2008, Annexes III and IV, but for H999, which has their form and is none. */

static void
test_form (void)
{
  static const char * const codes[] = {
    "H319", "h317", "H360FD", "H360Fd", "H350i", "EUH208", "EUH201A", "euh066", "P280", "P305+P351+P338",
    "H300+H310+H330", "H999",
  };
  static const char * const others[] = {
    "", "banana", "H", "H31", "H3190", "319", "X319", "P280a", "EUH", "H319+", "+H319", "H319++H317", "H319+P280",
    "H360FDx", "H319.", "Ｈ319",
  };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    g_assert_true (bb_hazard_code_is_well_formed (codes[i]));
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_false (bb_hazard_code_is_well_formed (others[i]));
}

static void
test_split (void)
{
  static const struct {
    const char *codes;
    const char *folded;
  } cases[] = {
    { NULL, "" },
    { " ,; ", "" },
    { "H319, h317;H999", "H319 H317 H999" },
    { "euh208 p305 + P351 +p338", "EUH208 P305+P351+P338" },
    /* Which letters are capitals matters: the one harms fertility and the unborn child, the other may harm it. */
    { "h360FD H360Fd H350i", "H360FD H360Fd H350i" },
    { "Banana", "Banana" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (GStrv) list = bb_hazard_codes_split (cases[i].codes);
      g_autofree char *joined = g_strjoinv (" ", list);

      g_assert_cmpstr (joined, ==, cases[i].folded);
    }
}

static void
test_supply (void)
{
  g_autoptr (BbSupply) supply = bb_supply_new ();
  g_autoptr (GError) error = NULL;

  supply->code = g_strdup ("PT");
  supply->name = g_strdup ("Pretreat");
  supply->kind = BB_SUPPLY_PRETREAT;
  supply->hazards = g_strdup ("H319, h317 H999");
  bb_record_check_wanted (&bb_supply_table, supply, &error);
  g_assert_no_error (error);

  /* An older book may hold it, but nobody writes it anew. */
  g_free (supply->hazards);
  supply->hazards = g_strdup ("H319 banana");
  bb_record_validate (&bb_supply_table, supply, &error);
  g_assert_no_error (error);
  g_assert_false (bb_record_check_wanted (&bb_supply_table, supply, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==,
                   "hazards: “banana” is not the code of a statement. Write codes like H319, EUH208 or P305+P351+P338, "
                   "with spaces between them.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/hazard-code/form", test_form);
  g_test_add_func ("/hazard-code/split", test_split);
  g_test_add_func ("/hazard-code/supply", test_supply);

  return g_test_run ();
}
