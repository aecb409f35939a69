/* SPDX-License-Identifier: GPL-3.0-or-later */
/* units.c - how lengths and numbers are shown and written */
#include "footpace/units.h"

#include <math.h>
#include <string.h>

#define MINUS "\342\210\222"          /* U+2212 */
#define NARROW_SPACE "\342\200\257"   /* U+202F */
#define PLUS_MINUS "\302\261"
#define NO_LENGTH "\342\200\223"      /* for what is not a number */

static char *
fixed (double value, int decimals)
{
  char format[] = "%.0f", buffer[400];

  format[2] = (char) ('0' + decimals);
  g_ascii_formatd (buffer, sizeof buffer, format, value);
  return g_strdup (buffer);
}

/* Not below zero; one decimal where the length is not whole. */
static char *
metric_magnitude (double mm)
{
  const double tenths = round (mm * 10);

  return fixed (tenths / 10, fmod (tenths, 10) == 0 ? 0 : 1);
}

static void
append_inches (GString *out, gint64 sixteenths, gboolean always)
{
  gint64 over = 16, part = sixteenths % 16;
  const gint64 whole = sixteenths / 16;

  while (part != 0 && part % 2 == 0)
    {
      part /= 2;
      over /= 2;
    }
  if (sixteenths == 0 && !always)
    return;
  if (whole != 0 || part == 0)
    g_string_append_printf (out, "%" G_GINT64_FORMAT, whole);
  if (whole != 0 && part != 0)
    g_string_append_c (out, ' ');
  if (part != 0)
    g_string_append_printf (out, "%" G_GINT64_FORMAT "/%" G_GINT64_FORMAT, part, over);
  g_string_append_c (out, '"');
}

/* Not below zero, below 1e15 mm. */
static char *
imperial_magnitude (double mm)
{
  const gint64 sixteenths = llround (mm / FP_MM_PER_INCH * 16);
  const gint64 feet = sixteenths / (12 * 16);
  GString *out = g_string_new (NULL);

  if (feet != 0)
    g_string_append_printf (out, "%" G_GINT64_FORMAT "' ", feet);
  append_inches (out, sixteenths % (12 * 16), TRUE);
  return g_string_free (out, FALSE);
}

static gboolean
is_showable (double mm)
{
  return fabs (mm) < 1e15; /* a NaN fails too */
}

static char *
magnitude (double mm, FpUnits units)
{
  return units == FP_UNITS_IMPERIAL ? imperial_magnitude (fabs (mm)) : metric_magnitude (fabs (mm));
}

static gboolean
reads_as_nothing (const char *text)
{
  return strpbrk (text, "123456789") == NULL;
}

char *
fp_length_format (double mm, FpUnits units)
{
  g_autofree char *shown = NULL;

  if (!is_showable (mm))
    return g_strdup (NO_LENGTH);
  shown = magnitude (mm, units);
  return g_strconcat (mm < 0 && !reads_as_nothing (shown) ? MINUS : "", shown, NULL);
}

/* Sets groups of three digits apart before the decimal point. */
static char *
grouped (const char *digits)
{
  GString *out = g_string_new (NULL);
  const gsize whole = strcspn (digits, ".");

  for (gsize i = 0; digits[i] != '\0'; i++)
    {
      if (i > 0 && i < whole && (whole - i) % 3 == 0)
        g_string_append (out, NARROW_SPACE);
      g_string_append_c (out, digits[i]);
    }
  return g_string_free (out, FALSE);
}

char *
fp_number_format_grouped (double value, int decimals)
{
  char format[8], text[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value))
    return g_strdup (NO_LENGTH);
  g_snprintf (format, sizeof format, "%%.%df", CLAMP (decimals, 0, 9));
  g_ascii_formatd (text, sizeof text, format, fabs (value));
  g_autofree char *groups = grouped (text);
  return g_strconcat (value < 0 && !reads_as_nothing (text) ? MINUS : "", groups, NULL);
}

char *
fp_length_format_unit (double mm, FpUnits units)
{
  g_autofree char *shown = NULL, *groups = NULL;

  if (units == FP_UNITS_IMPERIAL || !is_showable (mm))
    return fp_length_format (mm, units);
  shown = metric_magnitude (fabs (mm));
  groups = grouped (shown);
  return g_strconcat (mm < 0 && !reads_as_nothing (shown) ? MINUS : "", groups, " mm", NULL);
}

char *
fp_level_format (double mm, FpUnits units)
{
  g_autofree char *shown = NULL;
  const char *sign;

  if (!is_showable (mm))
    return g_strdup (NO_LENGTH);
  shown = units == FP_UNITS_IMPERIAL ? imperial_magnitude (fabs (mm)) : fixed (round (fabs (mm)) / 1000, 3);
  sign = reads_as_nothing (shown) ? PLUS_MINUS : mm < 0 ? MINUS : "+";
  return g_strconcat (sign, shown, NULL);
}

/* The fewest significant digits that read back: "-d.ddde±xx". */
static void
shortest_scientific (double value, char *buffer, int size)
{
  char format[8];

  for (int digits = 0; digits <= 16; digits++)
    {
      g_snprintf (format, sizeof format, "%%.%de", digits);
      g_ascii_formatd (buffer, size, format, value);
      if (g_ascii_strtod (buffer, NULL) == value)
        return;
    }
}

char *
fp_number_format (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  GString *out;
  int exponent, n;

  g_return_val_if_fail (isfinite (value), g_strdup ("0"));
  if (value == 0)
    return g_strdup ("0");

  shortest_scientific (fabs (value), buffer, sizeof buffer);
  exponent = (int) g_ascii_strtoll (strchr (buffer, 'e') + 1, NULL, 10);
  *strchr (buffer, 'e') = '\0';
  if (buffer[1] == '.')
    memmove (buffer + 1, buffer + 2, strlen (buffer + 2) + 1);
  n = (int) strlen (buffer);

  out = g_string_new (value < 0 ? "-" : "");
  if (exponent < 0)
    g_string_append (out, "0.");
  for (int i = exponent + 1; i < 0; i++)
    g_string_append_c (out, '0');
  for (int i = 0; i < MAX (n, exponent + 1); i++)
    {
      if (i == exponent + 1 && exponent >= 0)
        g_string_append_c (out, '.');
      g_string_append_c (out, i < n ? buffer[i] : '0');
    }
  return g_string_free (out, FALSE);
}

char *
fp_number_format_rounded (double value, int decimals)
{
  const double tens = pow (10, CLAMP (decimals, 0, 9)), rounded = round (value * tens) / tens;

  return fp_number_format (isfinite (rounded) ? rounded : 0);
}

char *
fp_share_format (double share, int more)
{
  int decimals = (fabs (share) < 0.1 ? 1 : 0) + more;
  g_autofree char *text = fp_number_format_rounded (share * 100, decimals);

  while (decimals < 6 && ((strcmp (text, "100") == 0 && share < 1) || (strcmp (text, "0") == 0 && share > 0)))
    {
      g_free (text);
      text = fp_number_format_rounded (share * 100, ++decimals);
    }
  return g_strconcat (text, " %", NULL);
}
