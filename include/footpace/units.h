/* SPDX-License-Identifier: GPL-3.0-or-later */
/* units.h - lengths as people write them
 *
 * Inside the program a length is a double in millimetres.  Metric and
 * feet-and-inches are ways to show and to type one, never ways to keep one.
 * 1 in = 25.4 mm exactly (international inch, 1959).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FP_MM_PER_INCH 25.4
#define FP_MM_PER_FOOT 304.8

/* No length in a project is longer than this, nor a coordinate farther out: a kilometre. */
#define FP_LENGTH_MAX 1.0e6

typedef enum
{
  FP_UNITS_METRIC,   /* 2700, without a unit sign                        */
  FP_UNITS_IMPERIAL, /* 8' 10 1/4", to the nearest sixteenth of an inch  */
} FpUnits;

/**
 * fp_length_format:
 * @mm: a length in millimetres
 * @units: how to show it
 *
 * As lettered on a drawing: whole millimetres without a unit sign
 * (one decimal where the length is not whole), or feet, inches and the nearest sixteenth.
 *
 * Returns: (transfer full): the text
 */
char *fp_length_format (double mm, FpUnits units);

/**
 * fp_length_format_unit:
 *
 * As fp_length_format(), with the unit named ("2 700 mm", groups of three set
 * apart by U+202F; imperial as above).  For panels and messages.
 */
char *fp_length_format_unit (double mm, FpUnits units);

/**
 * fp_level_format:
 * @mm: height above the datum in millimetres
 *
 * A level as lettered on a drawing: metres with sign and three decimals,
 * "+0.480", "±0.000"; or feet and inches with sign.
 *
 * Returns: (transfer full): the text
 */
char *fp_level_format (double mm, FpUnits units);

/**
 * fp_length_parse:
 * @text: what was typed: `1067`, `1.067 m`, `106,7 cm`, `3' 6"`,
 *   `3 ft 6 1/2 in`, `1200 + 2*35`, `(2700 - 300) / 2`
 * @units: what a bare number means: millimetres or inches
 * @mm: (out): the length in millimetres; untouched on failure
 *
 * Decimal comma and point are both read; there are no thousands signs except
 * spaces (also U+00A0 and U+202F) between groups of exactly three digits.
 *
 * Returns: FALSE with %FP_ERROR_SYNTAX or %FP_ERROR_RANGE, saying at which character and why
 */
gboolean fp_length_parse (const char *text, FpUnits units, double *mm, GError **error);

/**
 * fp_length_reading:
 * @text: what was typed, as fp_length_parse() reads it
 *
 * Returns: (transfer full) (nullable): in which unit it was read, where it names none, and how to write another:
 *   "“1500” was read in inches; for millimetres write “1500 mm”"; NULL where it names its unit
 */
char *fp_length_reading (const char *text, FpUnits units);

/**
 * fp_number_parse:
 *
 * A number without a unit (counts, degrees, percentages), read as
 * fp_length_parse() reads bare numbers, sums and fractions too.
 */
gboolean fp_number_parse (const char *text, double *value, GError **error);

/**
 * fp_number_format:
 * @value: any finite number
 *
 * The shortest decimal text that reads back to the same double, with a point
 * whatever the locale, without exponent, never "-0".  This is how numbers
 * are written in files.
 *
 * Returns: (transfer full): the text
 */
char *fp_number_format (double value);

/**
 * fp_number_format_rounded:
 * @decimals: at most so many, 0 to 9
 *
 * A number as it is shown to people: rounded, without zeros at the end, with
 * a point whatever the locale; "0" for what is not finite.
 *
 * Returns: (transfer full): the text
 */
char *fp_number_format_rounded (double value, int decimals);

/**
 * fp_number_format_grouped:
 * @decimals: exactly so many, 0 to 9
 *
 * A sum, a mass or an amount as people read it: groups of three digits before the point stand apart by a narrow space
 * that does not break.
 *
 * Returns: (transfer full): the text; a dash for what is not finite
 */
char *fp_number_format_grouped (double value, int decimals);

/**
 * fp_share_format:
 * @share: of a whole, 0 to 1
 * @more: decimals beyond the usual: none, and one below a tenth
 *
 * A share as people are told it: "66 %", "3.4 %"; "100 %" and "0 %" only of all and of none.
 *
 * Returns: (transfer full): the text
 */
char *fp_share_format (double share, int more);

G_END_DECLS
