/* SPDX-License-Identifier: GPL-3.0-or-later */
/* length-parse.c - lengths as people type them
 *
 *   sum      = product { ("+" | "-") product }
 *   product  = signed { ("*" | "/") signed }
 *   signed   = { "+" | "-" } operand
 *   operand  = "(" sum ")" [unit] | quantity
 *   quantity = number [unit], or feet and inches: number feet ["-"] number [inches]
 *   number   = decimal | whole " " fraction | fraction (only before a unit)
 *
 * Draughtsmen write 3'-6" for three feet six: a hyphen that touches both is
 * a joiner.  With a space on either side it takes away.
 */
#include "footpace/units.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

#define BRACKETS_MAX 32

typedef struct
{
  const char *text, *at;
  double      bare;     /* mm of a number without a unit; 0: units are not taken here */
  guint       brackets;
  GError    **error;
} Reader;

/* A bare number has no unit yet; a length is in mm. */
typedef struct
{
  double   value;
  gboolean is_length;
} Amount;

static gboolean read_sum (Reader *r, Amount *out);

G_GNUC_PRINTF (4, 5)
static gboolean
refuse (Reader *r, FpError code, const char *where, const char *format, ...)
{
  g_autofree char *why = NULL;
  va_list args;

  va_start (args, format);
  why = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (r->error, FP_ERROR, (int) code, "At character %ld of “%s”: %s",
               g_utf8_pointer_to_offset (r->text, where) + 1, r->text, why);
  return FALSE;
}

static gboolean
take (const char **at, const char *token)
{
  if (!g_str_has_prefix (*at, token))
    return FALSE;
  *at += strlen (token);
  return TRUE;
}

static gboolean
take_any (const char **at, const char *const *tokens)
{
  for (guint i = 0; tokens[i] != NULL; i++)
    if (take (at, tokens[i]))
      return TRUE;
  return FALSE;
}

static const char *const spaces[] = { " ", "\t", "\302\240", "\342\200\257", NULL };
static const char *const minuses[] = { "-", "\342\210\222", "\342\200\223", NULL };
static const char *const timeses[] = { "*", "\303\227", "\302\267", NULL };
static const char *const overs[] = { "/", "\303\267", "\342\201\204", NULL };

static void
skip_spaces (const char **at)
{
  while (take_any (at, spaces))
    ;
}

typedef struct
{
  const char *name;
  double      mm;
} Unit;

/* Longer names before those that they begin with. */
static const Unit signs[] = {
  { "''", FP_MM_PER_INCH }, { "\"", FP_MM_PER_INCH }, { "\342\200\263", FP_MM_PER_INCH },
  { "\342\200\235", FP_MM_PER_INCH }, { "'", FP_MM_PER_FOOT }, { "\342\200\262", FP_MM_PER_FOOT },
  { "\342\200\231", FP_MM_PER_FOOT },
};
static const Unit words[] = {
  { "mm", 1 }, { "cm", 10 }, { "dm", 100 }, { "m", 1000 }, { "in", FP_MM_PER_INCH }, { "inch", FP_MM_PER_INCH },
  { "inches", FP_MM_PER_INCH }, { "ft", FP_MM_PER_FOOT }, { "foot", FP_MM_PER_FOOT }, { "feet", FP_MM_PER_FOOT },
};

static gsize
word_length (const char *at)
{
  gsize n = 0;

  while (g_unichar_isalpha (g_utf8_get_char (at + n)))
    n = (gsize) (g_utf8_next_char (at + n) - at);
  return n;
}

/* 0 where no unit stands at @at; moves past one that does. */
static double
take_unit (const char **at)
{
  const gsize n = word_length (*at);

  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    if (take (at, signs[i].name))
      return signs[i].mm;
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (n == strlen (words[i].name) && g_ascii_strncasecmp (*at, words[i].name, n) == 0)
      {
        *at += n;
        if (**at == '.' && words[i].mm == FP_MM_PER_INCH)
          ++*at; /* "in." */
        return words[i].mm;
      }
  return 0;
}

static double
take_unit_after_spaces (const char **at)
{
  const char *ahead = *at;
  double mm;

  skip_spaces (&ahead);
  mm = take_unit (&ahead);
  if (mm != 0)
    *at = ahead;
  return mm;
}

static guint
count_digits (const char *at)
{
  guint n = 0;

  while (g_ascii_isdigit (at[n]))
    n++;
  return n;
}

/* Digits of a whole number, groups of three set apart by spaces taken together. */
static gboolean
take_digits (const char **at, GString *digits)
{
  guint n = count_digits (*at);
  gboolean groups = n >= 1 && n <= 3;

  g_string_append_len (digits, *at, n);
  *at += n;
  while (groups)
    {
      const char *ahead = *at;
      groups = take_any (&ahead, spaces) && count_digits (ahead) == 3;
      if (groups)
        {
          g_string_append_len (digits, ahead, 3);
          *at = ahead + 3;
        }
    }
  return n > 0;
}

/* "1/2" or "½"; TRUE and moves past it. */
static gboolean
take_fraction (const char **at, double *value)
{
  static const struct { const char *sign; double value; } ready[] = {
    { "½", 0.5 }, { "¼", 0.25 }, { "¾", 0.75 }, { "⅛", 0.125 }, { "⅜", 0.375 }, { "⅝", 0.625 }, { "⅞", 0.875 },
  };
  const char *ahead = *at;
  const guint n = count_digits (ahead);
  double upper, lower;

  for (guint i = 0; i < G_N_ELEMENTS (ready); i++)
    if (take (at, ready[i].sign))
      {
        *value = ready[i].value;
        return TRUE;
      }
  ahead += n;
  if (n == 0 || !take_any (&ahead, overs) || count_digits (ahead) == 0)
    return FALSE;
  upper = g_ascii_strtod (*at, NULL);
  lower = g_ascii_strtod (ahead, NULL);
  ahead += count_digits (ahead);
  if (lower == 0 || *ahead == '.' || *ahead == ',')
    return FALSE;
  *value = upper / lower;
  *at = ahead;
  return TRUE;
}

static gboolean
take_fraction_before_unit (const char **at, double *value)
{
  const char *ahead = *at, *after;

  if (!take_fraction (&ahead, value))
    return FALSE;
  after = ahead;
  if (count_digits (*at) > 0 && take_unit_after_spaces (&after) == 0)
    return FALSE;
  *at = ahead;
  return TRUE;
}

static gboolean
read_decimals (Reader *r, GString *digits)
{
  const char mark = *r->at++;
  const guint n = count_digits (r->at);

  if (n == 0)
    return refuse (r, FP_ERROR_SYNTAX, r->at, "a digit is missing after the decimal “%c”", mark);
  g_string_append_c (digits, '.');
  g_string_append_len (digits, r->at, n);
  r->at += n;
  if (*r->at == '.' || *r->at == ',')
    return refuse (r, FP_ERROR_SYNTAX, r->at, "a number has only one decimal mark");
  return TRUE;
}

static gboolean
read_number (Reader *r, double *value)
{
  g_autoptr (GString) digits = g_string_new (NULL);
  const char *const start = r->at;
  const char *ahead;
  double part;

  if (take_fraction_before_unit (&r->at, value))
    return TRUE;
  if (!take_digits (&r->at, digits) && *r->at != '.' && *r->at != ',')
    return refuse (r, FP_ERROR_SYNTAX, start, *start == '\0' ? "a number is missing at the end"
                   : "a number is wanted here");
  if (*r->at == '.' || *r->at == ',')
    {
      if (!read_decimals (r, digits))
        return FALSE;
      *value = g_ascii_strtod (digits->str, NULL);
      return TRUE;
    }
  *value = g_ascii_strtod (digits->str, NULL);
  ahead = r->at;
  skip_spaces (&ahead);
  if ((ahead > r->at || !g_ascii_isdigit (*ahead)) && take_fraction (&ahead, &part))
    {
      *value += part;
      r->at = ahead;
    }
  return TRUE;
}

static gboolean
starts_number (const char *at)
{
  double ignored;

  return g_ascii_isdigit (*at) || take_fraction (&at, &ignored);
}

/* After feet: the inches, if any follow. */
static gboolean
read_inches (Reader *r, double *mm)
{
  const char *ahead = r->at;
  double inches, unit;

  if (take_any (&ahead, minuses) ? !starts_number (ahead) : (skip_spaces (&ahead), !starts_number (ahead)))
    return TRUE;
  r->at = ahead;
  if (!read_number (r, &inches))
    return FALSE;
  ahead = r->at;
  unit = take_unit_after_spaces (&r->at);
  if (unit != 0 && unit != FP_MM_PER_INCH)
    return refuse (r, FP_ERROR_SYNTAX, ahead, "after feet, inches are wanted");
  *mm += inches * FP_MM_PER_INCH;
  return TRUE;
}

static gboolean
read_unit (Reader *r, Amount *amount)
{
  const char *start;
  double mm;

  skip_spaces (&r->at);
  start = r->at;
  mm = take_unit (&r->at);
  if (mm == 0 && word_length (start) > 0)
    return refuse (r, FP_ERROR_SYNTAX, start, r->bare == 0 ? "a number without a unit is wanted here"
                   : "“%.*s” is not a unit of length (mm, cm, m, ft, in)", (int) word_length (start), start);
  if (mm == 0)
    return TRUE;
  if (r->bare == 0)
    return refuse (r, FP_ERROR_SYNTAX, start, "a number without a unit is wanted here");
  if (amount->is_length)
    return refuse (r, FP_ERROR_SYNTAX, start, "this length has a unit already");
  *amount = (Amount) { amount->value * mm, TRUE };
  return mm != FP_MM_PER_FOOT || read_inches (r, &amount->value);
}

static gboolean
read_operand (Reader *r, Amount *out)
{
  const char *const start = r->at;

  if (*r->at != '(')
    {
      out->is_length = FALSE;
      return read_number (r, &out->value) && read_unit (r, out);
    }
  if (++r->brackets > BRACKETS_MAX)
    return refuse (r, FP_ERROR_SYNTAX, start, "too many brackets within each other");
  r->at++;
  if (!read_sum (r, out))
    return FALSE;
  if (*r->at != ')')
    return refuse (r, FP_ERROR_SYNTAX, start, "this bracket is not closed");
  r->brackets--;
  r->at++;
  return read_unit (r, out);
}

static gboolean
read_signed (Reader *r, Amount *out)
{
  gboolean negative = FALSE, more = TRUE;

  while (more)
    {
      skip_spaces (&r->at);
      more = take_any (&r->at, minuses);
      if (more)
        negative = !negative;
      else
        more = take (&r->at, "+");
    }
  if (!read_operand (r, out))
    return FALSE;
  if (negative)
    out->value = -out->value;
  skip_spaces (&r->at);
  return TRUE;
}

static gboolean
read_product (Reader *r, Amount *out)
{
  if (!read_signed (r, out))
    return FALSE;
  for (;;)
    {
      const char *const start = r->at;
      const gboolean times = take_any (&r->at, timeses);
      Amount next;
      if (!times && !take_any (&r->at, overs))
        return TRUE;
      if (!read_signed (r, &next))
        return FALSE;
      if (times && out->is_length && next.is_length)
        return refuse (r, FP_ERROR_SYNTAX, start, "a length times a length is an area");
      if (!times && next.is_length)
        return refuse (r, FP_ERROR_SYNTAX, start, "only a number without a unit can divide a length");
      if (!times && next.value == 0)
        return refuse (r, FP_ERROR_RANGE, start, "nothing can be divided by 0");
      out->value = times ? out->value * next.value : out->value / next.value;
      out->is_length = out->is_length || next.is_length;
    }
}

static double
in_mm (const Reader *r, const Amount *amount)
{
  return amount->is_length ? amount->value : amount->value * r->bare;
}

static gboolean
read_sum (Reader *r, Amount *out)
{
  if (!read_product (r, out))
    return FALSE;
  for (;;)
    {
      const gboolean minus = take_any (&r->at, minuses);
      Amount next;
      if (!minus && !take (&r->at, "+"))
        return TRUE;
      if (!read_product (r, &next))
        return FALSE;
      if (out->is_length || next.is_length)
        *out = (Amount) { in_mm (r, out) + (minus ? -in_mm (r, &next) : in_mm (r, &next)), TRUE };
      else
        out->value += minus ? -next.value : next.value;
    }
}

static gboolean
read_all (Reader *r, Amount *out)
{
  if (!g_utf8_validate (r->text, -1, NULL))
    {
      g_set_error_literal (r->error, FP_ERROR, FP_ERROR_SYNTAX, "What was typed is not text");
      return FALSE;
    }
  if (!read_sum (r, out))
    return FALSE;
  if (*r->at != '\0')
    return refuse (r, FP_ERROR_SYNTAX, r->at, *r->at == ')' ? "there is no bracket to close here"
                   : "this cannot be read as part of a %s", r->bare == 0 ? "number" : "length");
  return TRUE;
}

gboolean
fp_length_parse (const char *text, FpUnits units, double *mm, GError **error)
{
  Reader r = { text, text, units == FP_UNITS_IMPERIAL ? FP_MM_PER_INCH : 1, 0, error };
  Amount amount;
  double length;

  if (!read_all (&r, &amount))
    return FALSE;
  length = in_mm (&r, &amount);
  if (!(fabs (length) <= FP_LENGTH_MAX))
    return refuse (&r, FP_ERROR_RANGE, text, "the length is more than a kilometre");
  *mm = length;
  return TRUE;
}

gboolean
fp_number_parse (const char *text, double *value, GError **error)
{
  Reader r = { text, text, 0, 0, error };
  Amount amount;

  if (!read_all (&r, &amount))
    return FALSE;
  if (!isfinite (amount.value))
    return refuse (&r, FP_ERROR_RANGE, text, "the number is too large");
  *value = amount.value;
  return TRUE;
}

/* --- in which unit ------------------------------------------------------------- */

static gboolean
names_a_unit (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isalpha (g_utf8_get_char (p)) || strchr ("'\"", *p) != NULL || g_str_has_prefix (p, "\342\200\262")
        || g_str_has_prefix (p, "\342\200\263")) /* U+2032, U+2033 */
      return TRUE;
  return FALSE;
}

char *
fp_length_reading (const char *text, FpUnits units)
{
  const gboolean metric = units == FP_UNITS_METRIC;

  if (!g_utf8_validate (text, -1, NULL) || names_a_unit (text))
    return NULL;
  return g_strdup_printf ("“%.40s” was read in %s; for %s write “%.40s %s”", text, metric ? "millimetres" : "inches",
                          metric ? "inches" : "millimetres", text, metric ? "in" : "mm");
}
