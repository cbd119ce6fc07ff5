/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-typed-number"

#include "bb-typed-number.h"

#include <glib/gi18n-lib.h>

/* NaN where there is none. */
typedef struct {
  double number;
  double second;
} Value;

static const Value nothing = { (double) NAN, (double) NAN };

struct _BbTypedNumber
{
  const BbField *field;

  /* What the record holds and how it was last shown. */
  Value held;
  char *shown;

  /* What was typed last, as it was understood then. */
  Value understood;
  char *typed;
  BbUnitSystem typed_system;
};

static char *
format (const BbTypedNumber *self,
        const BbUnitContext *units)
{
  const BbField *field = self->field;

  if (isnan (self->held.number))
    return g_strdup ("");
  if (field->parts_with != NULL)
    return isnan (self->held.second) ? g_strdup ("")
                                     : bb_dilution_format (self->held.number, self->held.second, units);
  if (field->kind == BB_KIND_INTEGER)
    return g_strdup_printf ("%.0f", self->held.number);

  return bb_quantity_format_typed (field->quantity, self->held.number, units);
}

static const char *
show (BbTypedNumber       *self,
      const BbUnitContext *units)
{
  g_free (self->shown);
  self->shown = format (self, units);

  return self->shown;
}

static gboolean
parse_integer (const char  *text,
               Value       *value,
               char       **message)
{
  gint64 number = 0;

  if (!g_ascii_string_to_signed (text, 10, G_MININT32, G_MAXINT32, &number, NULL))
    {
      *message = g_strdup (_("This has to be a whole number."));
      return FALSE;
    }
  value->number = (double) number;

  return TRUE;
}

/* What a text says in itself, whatever the record holds and was typed before. */
static gboolean
understand (const BbField       *field,
            const char          *text,
            const BbUnitContext *units,
            Value               *value,
            char               **message)
{
  g_autoptr (GError) error = NULL;

  *value = nothing;
  if (field->kind == BB_KIND_INTEGER)
    return parse_integer (text, value, message);

  if (field->parts_with != NULL ? bb_dilution_parse (text, units, &value->number, &value->second, &error)
                                : bb_quantity_parse (field->quantity, text, units, &value->number, &error))
    return TRUE;

  *message = g_strdup (error->message);
  *value = nothing;

  return FALSE;
}

static gboolean
was_typed_in_other_units (const BbTypedNumber *self,
                          const char          *text,
                          const BbUnitContext *units)
{
  return self->typed_system != units->system && g_strcmp0 (self->typed, text) == 0;
}

static void
remember (BbTypedNumber *self,
          const char    *text,
          const Value   *value,
          BbUnitSystem   system)
{
  g_free (self->typed);
  self->typed = g_strdup (text);
  self->understood = *value;
  self->typed_system = system;
}

/**
 * bb_typed_number_new:
 * @field: a field that holds a number or an integer
 *
 * Returns: (transfer full): nothing typed, and nothing held
 */
BbTypedNumber *
bb_typed_number_new (const BbField *field)
{
  BbTypedNumber *self = NULL;

  g_return_val_if_fail (field != NULL, NULL);

  self = g_new0 (BbTypedNumber, 1);
  self->field = field;
  self->held = nothing;
  self->understood = nothing;

  return self;
}

/**
 * bb_typed_number_free:
 * @self: (transfer full): a typed number
 */
void
bb_typed_number_free (BbTypedNumber *self)
{
  g_free (self->shown);
  g_free (self->typed);
  g_free (self);
}

/**
 * bb_typed_number_load:
 * @self: a typed number
 * @number: what the record holds, or NaN
 * @second: what it holds in the field that is entered together with this one, or NaN
 * @units: the units that hold now
 *
 * Returns: (transfer none): the text that shows it
 */
const char *
bb_typed_number_load (BbTypedNumber       *self,
                      double               number,
                      double               second,
                      const BbUnitContext *units)
{
  g_return_val_if_fail (self != NULL && units != NULL, NULL);

  self->held = (Value) { number, second };

  return show (self, units);
}

/**
 * bb_typed_number_read:
 * @self: a typed number
 * @text: what stands in the editor, without space around it
 * @units: the units that hold now
 * @number: (out): what it says, or NaN
 * @second: (out): what it says of the field that is entered together with this one, or NaN
 * @message: (out) (transfer full): what is wrong with it
 *
 * Returns: %FALSE if it can't be understood
 */
gboolean
bb_typed_number_read (BbTypedNumber        *self,
                      const char           *text,
                      const BbUnitContext  *units,
                      double               *number,
                      double               *second,
                      char                **message)
{
  Value value = nothing;
  gboolean understood = TRUE;

  g_return_val_if_fail (self != NULL && text != NULL && units != NULL && number != NULL && second != NULL, FALSE);

  if (*text == '\0')
    value = nothing;
  else if (g_strcmp0 (self->shown, text) == 0)
    value = self->held;
  else if (was_typed_in_other_units (self, text, units))
    value = self->understood;
  else
    understood = understand (self->field, text, units, &value, message);

  if (!was_typed_in_other_units (self, text, units))
    remember (self, understood ? text : NULL, &value, units->system);
  *number = value.number;
  *second = value.second;

  return understood;
}

/**
 * bb_typed_number_refresh:
 * @self: a typed number
 * @text: what stands in the editor, without space around it
 * @units: the units that hold now, other ones than before
 *
 * What can't be understood stays as it was typed; everything else is the same value in the new units.
 *
 * Returns: (transfer none) (nullable): the text that stands for it now, or %NULL for the same
 */
const char *
bb_typed_number_refresh (BbTypedNumber       *self,
                         const char          *text,
                         const BbUnitContext *units)
{
  g_return_val_if_fail (self != NULL && text != NULL && units != NULL, NULL);

  if (g_strcmp0 (self->shown, text) == 0)
    return show (self, units);
  if (!was_typed_in_other_units (self, text, units))
    return NULL;
  self->held = self->understood;

  return show (self, units);
}

/**
 * bb_typed_number_resume:
 * @self: a typed number, loaded
 * @text: what stood in the editor earlier, without space around it
 * @system: the units that held then
 * @units: the units that hold now
 *
 * A text that shows what the record holds stands for the exact value, also where it was shown in other units.
 *
 * Returns: (transfer none) (nullable): the text that stands for it now, or %NULL for the same
 */
const char *
bb_typed_number_resume (BbTypedNumber       *self,
                        const char          *text,
                        BbUnitSystem         system,
                        const BbUnitContext *units)
{
  BbUnitContext then;
  g_autofree char *shown = NULL;
  g_autofree char *message = NULL;
  Value value = nothing;

  g_return_val_if_fail (self != NULL && text != NULL && units != NULL, NULL);

  if (*text == '\0' || units->system == system)
    return NULL;

  then = *units;
  then.system = system;
  shown = format (self, &then);
  if (g_str_equal (shown, text))
    return show (self, units);
  if (!understand (self->field, text, &then, &value, &message))
    return NULL;
  g_clear_pointer (&self->shown, g_free);
  remember (self, text, &value, system);

  return bb_typed_number_refresh (self, text, units);
}
