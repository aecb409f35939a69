/* SPDX-License-Identifier: GPL-3.0-or-later */
/* printed-unit.h - the units in which sources print their figures
 *
 * A limit is kept and compared in its own unit; only for showing is it turned
 * into the units of the brief.  Private to src/rules.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct
{
  const char   *id;      /* as in a rulebook                                 */
  const char   *label;   /* as shown                                         */
  FpMeasureType type;
  double        size;    /* one of them in mm, mm2, kN/m2, 1                 */
  gboolean      rounded; /* sources that print it print whole mm beside it   */
  const char   *counts;  /* unit of the count that it can hold; NULL: a plain number, or no count */
} FpPrintedUnit;

const FpPrintedUnit *fp_printed_unit_find (const char *id); /* NULL when there is none */
/* Whether a measure can be held against figures in this unit. */
gboolean             fp_printed_unit_fits (const FpPrintedUnit *unit, const FpMeasure *measure);

/* "160 mm", "12 %", "2.31 m²", "555.6 psf", "3", "yes": owned by the caller. */
char *fp_printed_value (const FpMeasure *measure, const char *unit, double value, FpUnits units);
/* As fp_printed_value() for a value outside of a rule's limit, but never what the limit itself would be shown as:
 * "32.7 %" where a third, too, would be "33 %". */
char *fp_printed_outside (const FpMeasure *measure, const FpRule *rule, double value, FpUnits units);
/* "about 6 in (152 mm)", "at most 7 in (178 mm)", "an odd number": owned by the caller. */
char *fp_printed_limit (const FpMeasure *measure, const FpRule *rule, FpUnits units);

G_END_DECLS
