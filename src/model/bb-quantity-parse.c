/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bb-error.h"
#include "bb-numeral-private.h"
#include "bb-units-private.h"

#define MM2_PER_M2 1e6

/* What stands between the two sides of an area, once folded. */
#define TIMES "xX*"

static gboolean
take_sign (const char **at)
{
  gboolean negative = **at == '-';

  if (**at == '-' || **at == '+')
    (*at)++;
  while (**at == ' ')
    (*at)++;

  return negative;
}

/* Whether the digit at @at belongs to the unit, like the one of `m2`, and begins no number. */
static gboolean
is_power (const char *at)
{
  return (*at == '2' || *at == '3') && !g_ascii_isalnum (at[1]) && at[1] != '.' && at[1] != ',';
}

static const char *
find_unit_end (const char *start,
               const char *decimal)
{
  for (const char *p = start; *p != '\0'; p++)
    {
      char before = p > start ? p[-1] : ' ';

      if (!_bb_numeral_ahead (p, decimal))
        continue;
      if (strchr (" '\"", before) != NULL || (g_ascii_isalpha (before) && !is_power (p)))
        return p;
    }

  return start + strlen (start);
}

/* Brings a typed unit into the form in which units are listed. */
static char *
unit_word (const char *start,
           const char *end)
{
  static const struct {
    const char *from;
    const char *to;
  } spellings[] = {
    { "²", "2" }, { "³", "3" }, { "^", "" }, { " per ", "/" }, { " /", "/" }, { "/ ", "/" },
  };
  g_autofree char *typed = g_strndup (start, (gsize) (end - start));
  g_autoptr (GString) word = g_string_new (g_strstrip (typed));

  for (guint i = 0; i < G_N_ELEMENTS (spellings); i++)
    g_string_replace (word, spellings[i].from, spellings[i].to, 0);
  if (word->len > 1 && word->str[word->len - 1] == '.')
    g_string_truncate (word, word->len - 1);

  return g_strdup (word->str);
}

static const BbUnit *
find_unit (BbQuantity   quantity,
           const char  *word,
           GError     **error)
{
  const BbUnit *unit = _bb_unit_find (quantity, word);
  const BbUnit *other = NULL;
  g_autofree char *echo = NULL;

  if (unit != NULL)
    return unit;

  echo = _bb_text_echo (word);
  other = _bb_unit_find_any (word);
  if (other != NULL)
    /* Translators: a unit's symbol, then what it measures, like "length". */
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT,
                 _("“%s” is a unit of another quantity (%s)."), echo,
                 _bb_quantity_get_name (other->quantity));
  else
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT,
                 _("“%s” is not a unit that can be used here."), echo);

  return NULL;
}

static gboolean
convert (const BbUnit         *unit,
         double                value,
         const BbUnitContext  *context,
         double               *canonical,
         GError              **error)
{
  if (unit == NULL)
    *canonical = value;
  else if ((unit->flags & BB_UNIT_PER_BOX) == 0)
    *canonical = _bb_unit_to_canonical (unit, value);
  else if (isfinite (context->box_area_m2) && context->box_area_m2 > 0)
    *canonical = _bb_unit_to_canonical (unit, value) / context->box_area_m2;
  else
    return bb_refuse_text (error, _("Grams per box need a box, and none is known here."));

  if (!isfinite (*canonical))
    return bb_refuse_text (error, _("This number is too large."));

  return TRUE;
}

static gboolean
refuse_start (const char  *text,
              GError     **error)
{
  g_autofree char *echo = _bb_text_echo (text);

  if (*text == '\0')
    return bb_refuse_text (error, _("Nothing is written here."));

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT, _("“%s” is not a number."), echo);

  return FALSE;
}

/* Adds `2 in` to `1 ft`. The sum is in the unit of the last term, so that 14 in come out exactly. */
static gboolean
add_step (double        *total,
          const BbUnit  *larger,
          gboolean       whole,
          double         value,
          const BbUnit  *smaller,
          GError       **error)
{
  double ratio = 0;

  if (larger == NULL || smaller == NULL ||
      (larger->flags & BB_UNIT_STEPS) == 0 || (smaller->flags & BB_UNIT_STEPS) == 0)
    return bb_refuse_text (error, _("These are two values where one is needed."));

  ratio = larger->numerator * smaller->denominator / (larger->denominator * smaller->numerator);
  if (ratio <= 1)
    return bb_refuse_text (error, _("The larger unit has to come first."));
  if (!whole)
    return bb_refuse_text (error, _("Only the last of several units can have decimals."));

  *total = *total * ratio + value;

  return TRUE;
}

/*
 * Reads a number with its unit, or several like `1 ft 2 in`, from the whole of @text.
 * @unit: (inout): the unit meant where none is written; then the one of the last term
 */
static gboolean
parse_terms (BbQuantity            quantity,
             const char           *text,
             const BbUnitContext  *context,
             const BbUnit        **unit,
             double               *canonical,
             GError              **error)
{
  const char *p = text;
  gboolean negative = take_sign (&p);
  const BbUnit *last = NULL;
  gboolean whole = TRUE;
  double total = 0;

  if (!_bb_numeral_ahead (p, context->decimal))
    return refuse_start (text, error);

  for (gboolean first = TRUE; first || *p != '\0'; first = FALSE)
    {
      BbNumeral numeral = { 0 };
      const char *end = NULL;
      g_autofree char *word = NULL;
      const BbUnit *here = NULL;

      if (!_bb_numeral_read (&p, context->decimal, &numeral, error))
        return FALSE;
      if (numeral.fraction && quantity == BB_QUANTITY_FRACTION)
        return bb_refuse_text (error, _("A share can't be written as a fraction."));

      end = find_unit_end (p, context->decimal);
      word = unit_word (p, end);
      p = end;
      if (*word == '\0' && (!first || *end != '\0'))
        return bb_refuse_text (error, _("Each of several numbers needs its unit."));
      here = *word != '\0' ? find_unit (quantity, word, error) : *unit;
      if (here == NULL && *word != '\0')
        return FALSE;

      if (first)
        total = numeral.value;
      else if (!add_step (&total, last, whole, numeral.value, here, error))
        return FALSE;
      last = here;
      whole = numeral.whole;
    }

  *unit = last;

  return convert (last, negative ? -total : total, context, canonical, error);
}

static gboolean
has_unit (const char *side)
{
  for (const char *p = side; *p != '\0'; p++)
    if (g_ascii_isalpha (*p) || *p == '\'' || *p == '"')
      return TRUE;

  return FALSE;
}

/*
 * Reads `14 × 16 in`. A side without a unit takes the other's; if neither has one, both are in the
 * shown unit of length.
 */
static gboolean
parse_sides (const char           *text,
             const BbUnitContext  *context,
             double               *canonical,
             GError              **error)
{
  gsize n = strcspn (text, TIMES);
  g_autofree char *left = g_strstrip (g_strndup (text, n));
  g_autofree char *right = g_strstrip (g_strdup (text + n + 1));
  const BbUnit *unit = _bb_unit_get_shown (BB_QUANTITY_LENGTH, context->system);
  const char *named = has_unit (left) ? left : right;
  const char *other = has_unit (left) ? right : left;
  double first = 0;
  double second = 0;

  if (strpbrk (right, TIMES) != NULL)
    return bb_refuse_text (error, _("An area has two sides."));
  if (!parse_terms (BB_QUANTITY_LENGTH, named, context, &unit, &first, error) ||
      !parse_terms (BB_QUANTITY_LENGTH, other, context, &unit, &second, error))
    return FALSE;
  if (!(first > 0) || !(second > 0))
    return bb_refuse_text (error, _("Both sides of an area have to be more than 0."));

  return convert (NULL, first * second / MM2_PER_M2, context, canonical, error);
}

/* Takes the shop's currency away, before or behind the number. */
static char *
strip_currency (const char *text,
                const char *currency)
{
  const char *p = text;
  gboolean negative = take_sign (&p);
  g_autofree char *rest = NULL;

  if (currency == NULL || *currency == '\0')
    return g_strdup (text);

  if (g_str_has_prefix (p, currency))
    rest = g_strdup (p + strlen (currency));
  else if (g_str_has_suffix (p, currency))
    rest = g_strndup (p, strlen (p) - strlen (currency));
  else
    return g_strdup (text);

  g_strstrip (rest);

  return negative ? g_strconcat ("-", rest, NULL) : g_steal_pointer (&rest);
}

/* Suggests only what can be understood. */
static const char *
get_example (BbQuantity           quantity,
             const BbUnitContext *context)
{
  if (quantity == BB_QUANTITY_MASS_PER_AREA && context != NULL && isfinite (context->box_area_m2) &&
      context->box_area_m2 > 0)
    return _("Write it like 120 g/m², 18 g/box or 5.3 oz/yd².");

  return _bb_quantity_get_example (quantity);
}

static gboolean
parse_folded (BbQuantity            quantity,
              const char           *text,
              const BbUnitContext  *context,
              double               *canonical,
              GError              **error)
{
  const BbUnit *unit = _bb_unit_get_shown (quantity, context->system);

  if (quantity == BB_QUANTITY_AREA && strpbrk (text, TIMES) != NULL)
    return parse_sides (text, context, canonical, error);
  if (quantity == BB_QUANTITY_TIME && strchr (text, ':') != NULL)
    return _bb_clock_read (text, canonical, error);
  if (quantity == BB_QUANTITY_MONEY)
    {
      g_autofree char *amount = strip_currency (text, context->currency);

      return parse_terms (quantity, amount, context, &unit, canonical, error);
    }

  return parse_terms (quantity, text, context, &unit, canonical, error);
}

/**
 * bb_quantity_parse:
 * @quantity: the quantity asked for
 * @text: what a person typed
 * @context: (nullable): the units meant where the text names none, the decimal separator, the box
 *   and the currency; %NULL for metric and "."
 * @canonical: (out): the value in the canonical unit; left alone on failure
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reads a number with or without a unit. Without one it is in the unit that bb_quantity_get_unit()
 * gives: a fraction so in percent, `10` and `10 %` being 0.1; `300 x 400`, the sides of an area,
 * in the shown unit of length. Understood are units of both systems (`14 in`, `1' 2"`, `355.6 mm`,
 * `gsm`, `psi`), fractions (`14 1/2 in`, `14-1/2`, `½"`), steps (`1 ft 2 in`, `1 min 30 s`,
 * `1:30`), and `18 g/box` where the context has a box.
 *
 * '.' is understood beside the context's separator. Thousands may be grouped where that can't be
 * misread: `1,234.5` with ".", `1.234,5` with ",". What could be meant two ways is refused: `1,5`
 * with ".", and `1,234` or `1.234` where the other sign is the separator. Limits are no concern
 * here: a negative length is read.
 *
 * Returns: %TRUE if it was understood; if not, @error holds %BB_MODEL_ERROR_TEXT and says how to
 *   write it
 */
gboolean
bb_quantity_parse (BbQuantity           quantity,
                   const char          *text,
                   const BbUnitContext *context,
                   double              *canonical,
                   GError             **error)
{
  static const BbUnitContext metric = { BB_UNITS_METRIC, 0, NULL, NULL };
  g_autoptr (GError) local_error = NULL;
  g_autofree char *folded = NULL;
  double value = 0;

  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, FALSE);
  g_return_val_if_fail (text != NULL && canonical != NULL, FALSE);

  folded = _bb_text_fold (text, &local_error);
  if (folded != NULL &&
      parse_folded (quantity, folded, context != NULL ? context : &metric, &value, &local_error))
    {
      /* Minus nothing is nothing. */
      *canonical = value == 0.0 ? 0.0 : value;
      return TRUE;
    }

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT, "%s %s", local_error->message,
               get_example (quantity, context));

  return FALSE;
}
