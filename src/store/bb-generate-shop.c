/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-generate-private.h"

/* What there is in the shop before it prints: people, supplies, machines, garments and customers. */

#define MACHINES 4

static const char * const colours[] = { "black", "navy", "white", "sand", "brick", "moss", "slate", "plum", "sky" };
static const char * const srgb[] = {
  "#17171a", "#1b2a49", "#f5f5f3", "#d9c7a3", "#9c1f2b", "#4d5a3a", "#56646a", "#5e3b52", "#b9d3e6",
};

static gboolean
add_people (BbGenerator  *self,
            GError      **error)
{
  for (guint i = 0; i < BB_GENERATED_PEOPLE; i++)
    {
      g_autoptr (BbPerson) person = bb_person_new ();

      person->code = g_strdup_printf ("P%u", i + 1);
      person->name = g_strdup_printf ("%s %s", _bb_generator_word (self), _bb_generator_word (self));
      person->role = i + 1 == BB_GENERATED_SIGNER ? BB_ROLE_LEAD
                                                  : (int) _bb_generator_below (self, bb_role_choices.n_items);
      if (!_bb_generator_add (self, &bb_person_table, person, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_supplies (BbGenerator  *self,
              GError      **error)
{
  g_autoptr (BbSupply) supply = bb_supply_new ();

  supply->code = g_strdup ("PT");
  supply->name = g_strdup_printf ("%s pretreat", _bb_generator_word (self));
  supply->kind = BB_SUPPLY_PRETREAT;
  supply->density_g_per_ml = 1.1;
  supply->price_per_kg = 8;
  if (!_bb_generator_add (self, &bb_supply_table, supply, error))
    return FALSE;
  self->pretreat = supply->id;

  for (guint i = 0; i < BB_GENERATED_LOTS; i++)
    {
      g_autoptr (BbLot) lot = bb_lot_new ();

      lot->code = g_strdup_printf ("LOT-%u", i + 1);
      lot->supply = supply->id;
      lot->received_at = _bb_generator_dup_day ((double) i / BB_GENERATED_LOTS);
      lot->start_g = 1e6;
      lot->container_g = 90;
      if (!_bb_generator_add (self, &bb_lot_table, lot, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_machines (BbGenerator  *self,
              GError      **error)
{
  for (guint i = 0; i < MACHINES; i++)
    {
      g_autoptr (BbEquipment) machine = bb_equipment_new ();

      machine->kind = (int) i;
      machine->code = g_strdup_printf ("M%u", i + 1);
      machine->name = g_strdup_printf ("%s by the %s", bb_equipment_kind_choices.items[i].key,
                                       _bb_generator_word (self));
      if (!_bb_generator_add (self, &bb_equipment_table, machine, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_colourways (BbGenerator    *self,
                const BbBlank  *blank,
                guint           nth,
                GError        **error)
{
  for (guint c = 0; c < BB_GENERATED_COLOURS; c++)
    {
      guint colour = (nth + c) % G_N_ELEMENTS (colours);
      g_autoptr (BbColourway) colourway = bb_colourway_new ();

      colourway->code = g_strdup_printf ("%s-%u", blank->code, c + 1);
      colourway->blank = blank->id;
      colourway->name = g_strdup_printf ("%s %s", _bb_generator_word (self), colours[colour]);
      colourway->srgb = g_strdup (srgb[colour]);
      if (!_bb_generator_add (self, &bb_colourway_table, colourway, error))
        return FALSE;
      self->colourways[nth * BB_GENERATED_COLOURS + c] = colourway->id;
    }

  return TRUE;
}

static gboolean
add_blanks (BbGenerator  *self,
            GError      **error)
{
  for (guint i = 0; i < BB_GENERATED_BLANKS; i++)
    {
      g_autoptr (BbBlank) blank = bb_blank_new ();
      BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);

      share->fibre = (int) _bb_generator_often (self, bb_fibre_choices.n_items);
      share->fraction = 1;
      blank->code = g_strdup_printf ("B-%u", i + 1);
      blank->name = g_strdup_printf ("%s %s", _bb_generator_word (self), _bb_generator_garment (self));
      blank->maker = g_strdup_printf ("%s mill", _bb_generator_word (self));
      blank->mass_g_per_m2 = 130 + 10 * _bb_generator_below (self, 20);
      blank->knit = (int) _bb_generator_often (self, bb_knit_choices.n_items);
      if (!_bb_generator_add (self, &bb_blank_table, blank, error) || !add_colourways (self, blank, i, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
add_customers (BbGenerator  *self,
               GError      **error)
{
  for (guint i = 0; i < self->n_customers; i++)
    {
      g_autoptr (BbCustomer) customer = bb_customer_new ();

      customer->code = g_strdup_printf ("C-%u", i + 1);
      customer->name = g_strdup_printf ("%s %s choir", _bb_generator_word (self), _bb_generator_word (self));
      if (!_bb_generator_add (self, &bb_customer_table, customer, error))
        return FALSE;
    }

  return TRUE;
}

/**
 * _bb_generator_add_shop:
 * @self: a book in the making
 * @error: return location for a #GError
 *
 * Adds what there is before anything is printed.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_generator_add_shop (BbGenerator *self,
                        GError     **error)
{
  return add_people (self, error) && add_supplies (self, error) && add_machines (self, error) &&
         add_blanks (self, error) && add_customers (self, error);
}
