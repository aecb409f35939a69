/* SPDX-License-Identifier: GPL-3.0-or-later */
/* printed-unit.h - the units in which sources print their figures
 *
 * A limit is kept and compared in its own unit; only for showing is it turned
 * into the units of the brief.  Private to src/rules.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef enum { FP_PRINTED_PLAIN, FP_PRINTED_METRIC, FP_PRINTED_INCHES, FP_PRINTED_OLD } FpPrintedSystem;

typedef struct
{
  const char   *id;      /* as in a rulebook                                 */
  const char   *label;   /* as shown                                         */
  FpMeasureType type;
  double        size;    /* one of them in mm, mm2, kN/m2, 1                 */
  gboolean      rounded; /* sources that print it print whole mm beside it   */
  const char   *counts;  /* unit of the count that it can hold; NULL: a plain number, or no count */
  FpPrintedSystem system;
} FpPrintedUnit;

const FpPrintedUnit *fp_printed_unit_find (const char *id); /* NULL when there is none */
/* On which side of the limit a value lies outside. */
typedef enum { FP_SIDE_NONE, FP_SIDE_BELOW, FP_SIDE_ABOVE } FpSide;
FpSide               fp_rule_side (const FpRule *rule, double value);

/* Whether a measure can be held against figures in this unit. */
gboolean             fp_printed_unit_fits (const FpPrintedUnit *unit, const FpMeasure *measure);

/* "160 mm", "12 %", "2.31 m²", "9 places", "yes", in the units of the brief: owned by the caller. */
char *fp_printed_value (const FpMeasure *measure, double value, FpUnits units);
/* As fp_printed_value() for a value outside of a rule's limit, but never what the limit itself would be shown as:
 * "32.7 %" where a third, too, would be "33 %". */
char *fp_printed_outside (const FpMeasure *measure, const FpRule *rule, double value, FpUnits units);
/* "at least 914 mm (36 in)", "from 137 mm to 168 mm (printed: about 6 in)", "none", "an odd number of steps": in the
 * units of the brief, and in brackets as it was printed where that differs.  Owned by the caller. */
char *fp_printed_limit (const FpMeasure *measure, const FpRule *rule, FpUnits units);

G_END_DECLS
