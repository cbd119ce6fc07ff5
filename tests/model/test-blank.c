/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-blank.h"
#include "bb-error.h"
#include "bb-problem.h"

#include <math.h>

static GArray *
make_composition (const BbFibreShare *shares,
                  guint               n)
{
  GArray *composition = g_array_new (FALSE, TRUE, sizeof (BbFibreShare));

  g_array_append_vals (composition, shares, n);

  return composition;
}

static void
assert_composition (const BbFibreShare *shares,
                    guint               n,
                    const char         *message)
{
  g_autoptr (GArray) composition = make_composition (shares, n);
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_composition_check (composition, "composition", &error) == (message == NULL));
  g_assert_cmpstr (error != NULL ? error->message : NULL, ==, message);
}

static void
test_shares_make_one (void)
{
  const BbFibreShare whole[] = { { BB_FIBRE_COTTON, 0.6 }, { BB_FIBRE_POLYESTER, 0.4 } };
  const BbFibreShare slack[] = { { BB_FIBRE_COTTON, 0.595 }, { BB_FIBRE_POLYESTER, 0.4 } };
  const BbFibreShare more_slack[] = { { BB_FIBRE_COTTON, 0.605 }, { BB_FIBRE_POLYESTER, 0.4 } };
  const BbFibreShare less[] = { { BB_FIBRE_COTTON, 0.5 }, { BB_FIBRE_POLYESTER, 0.4 } };
  const BbFibreShare twice[] = { { BB_FIBRE_COTTON, 0.5 }, { BB_FIBRE_COTTON, 0.5 } };
  const BbFibreShare no_number[] = { { BB_FIBRE_COTTON, (double) NAN } };
  const BbFibreShare no_fibre[] = { { BB_CHOICE_NONE, 1 } };

  assert_composition (whole, 2, NULL);
  assert_composition (slack, 2, NULL);
  assert_composition (more_slack, 2, NULL);
  assert_composition (less, 2, "composition: the shares make 90 %, they have to make 100 %.");
  assert_composition (twice, 2, "composition: Cotton is listed twice.");
  assert_composition (no_number, 1, "composition: the shares make nan %, they have to make 100 %.");
  assert_composition (no_fibre, 1, "composition: a share has no fibre.");
  assert_composition (NULL, 0, "composition: the shares make 0 %, they have to make 100 %.");
}

static void
test_text_as_on_a_label (void)
{
  const BbFibreShare shares[] = { { BB_FIBRE_COTTON, 0.925 }, { BB_FIBRE_ELASTANE, 0.075 } };
  g_autoptr (GArray) composition = make_composition (shares, 2);
  g_autofree char *text = bb_composition_dup_text (composition);
  g_autofree char *none = bb_composition_dup_text (NULL);

  g_assert_cmpstr (text, ==, "92.5 % Cotton, 7.5 % Elastane");
  g_assert_cmpstr (none, ==, "");
}

static void
test_colours (void)
{
  const char * const bad[] = {
    NULL, "", "#", "1b2a49", "#1b2a4", "#1b2a499", "#1b2a4g", "#-1-1-1", "#1b 2a4", "#½½½",
  };
  guint8 rgb[3] = { 9, 9, 9 };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_assert_false (bb_srgb_parse (bad[i], rgb));
      g_assert_cmpuint (rgb[0], ==, 9);
    }

  g_assert_true (bb_srgb_parse ("#1b2Aff", rgb));
  g_assert_cmpuint (rgb[0], ==, 0x1b);
  g_assert_cmpuint (rgb[1], ==, 0x2a);
  g_assert_cmpuint (rgb[2], ==, 0xff);
}

/* Every value that can be written comes back, and what lies between is the nearest of them. */
static void
test_colours_are_written (void)
{
  g_autofree char *between = bb_srgb_format (0.5, -0.1, 1.2);

  for (guint i = 0; i < 256; i++)
    {
      g_autofree char *text = bb_srgb_format (i / 255.0, (255 - i) / 255.0, 0);
      guint8 rgb[3] = { 0 };

      g_assert_true (bb_srgb_parse (text, rgb));
      g_assert_cmpuint (rgb[0], ==, i);
      g_assert_cmpuint (rgb[1], ==, 255 - i);
      g_assert_cmpuint (rgb[2], ==, 0);
    }
  g_assert_cmpstr (between, ==, "#8000ff");
}

static void
test_colourway_needs_its_colour (void)
{
  g_autoptr (BbColourway) self = bb_colourway_new ();
  g_autoptr (GError) error = NULL;

  self->code = g_strdup ("TEE-1/NAVY");
  self->blank = 1;
  self->name = g_strdup ("Navy");
  self->srgb = g_strdup ("navy-ish");
  g_assert_false (bb_record_validate (&bb_colourway_table, self, &error));
  g_assert_cmpstr (error->message, ==, "srgb: 8 characters, the maximum is 7");
  g_clear_error (&error);
  g_free (self->srgb);
  self->srgb = g_strdup ("#navyis");
  g_assert_false (bb_record_validate (&bb_colourway_table, self, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, "srgb: #navyis is not a colour. Write it as #rrggbb, like #1b2a49.");
  g_clear_error (&error);
  g_free (self->srgb);
  self->srgb = g_strdup ("#1b2a49");
  g_assert_true (bb_record_validate (&bb_colourway_table, self, &error));
  g_assert_no_error (error);
}

/* How many characters it lacks is no help to who writes a colour's name. */
static void
test_colour_is_named_at_its_field (void)
{
  static const char * const typed[] = { "black", "midnight blue" };
  const BbField *field = bb_table_find_field (&bb_colourway_table, "srgb");

  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autoptr (BbColourway) self = bb_colourway_new ();
      g_autofree char *text = NULL;
      BbProblem problem;

      self->srgb = g_strdup (typed[i]);
      g_assert_true (bb_field_find_problem (field, self, &problem));
      text = bb_problem_to_text (&problem, NULL);
      g_assert_cmpstr (text, ==, "This is not a colour. Write it as #rrggbb, like #1b2a49.");
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/blank/shares-make-one", test_shares_make_one);
  g_test_add_func ("/blank/text-as-on-a-label", test_text_as_on_a_label);
  g_test_add_func ("/blank/colours", test_colours);
  g_test_add_func ("/blank/colours-are-written", test_colours_are_written);
  g_test_add_func ("/blank/colour-is-named-at-its-field", test_colour_is_named_at_its_field);
  g_test_add_func ("/blank/colourway-needs-its-colour", test_colourway_needs_its_colour);

  return g_test_run ();
}
