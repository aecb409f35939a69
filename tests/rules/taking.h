/* SPDX-License-Identifier: GPL-3.0-or-later */
/* taking.h - measures and findings of a small invented church, for tests */
#pragma once

#include "footpace/rules.h"

#include "church.h"

G_BEGIN_DECLS

/* A nave floor 12 × 20 m at the datum, a sanctuary floor 12 × 10 m at 300 beyond y = 0, two steps of 150 between
 * them, a footpace of three steps with an altar at y = 8000: defaults of their kinds. */
FpProject *taking_church (FpBooks books, FpFacing facing, guint celebrations);

void taking_brief (FpProject **project, FpBooks books, FpFacing facing, guint celebrations);
void taking_units (FpProject **project, FpUnits units);
void taking_works (FpProject **project, const FpWorks *works);
void taking_seats (FpProject **project, guint seats);
/* Six (or @count) candlesticks on a gradine on the altar, and a crucifix in the middle. */
void taking_altar_group (FpProject **project, double count);
/* A thing of the alternative with one parameter changed from the defaults (NULL: none). */
void taking_add (FpProject **project, const char *kind, const char *id, const char *on, double x, double y,
                 const char *param, double value);
void taking_survey (FpProject **project, const char *kind, const char *id, double x, double y, const char *param,
                    double value);
void taking_wall (FpProject **project, const char *id, double x0, double y0, double x1, double y1);

/* The values of a measure; sight is computed where the measure needs it. */
GArray *taking_values (const FpProject *project, const char *measure);
/* The only value; fails where there is none or more than one. */
double  taking_value  (const FpProject *project, const char *measure);
/* How many values there are that say something. */
guint   taking_count  (const FpProject *project, const char *measure);

#define assert_measure(project, measure, value) \
  g_assert_cmpfloat_with_epsilon (taking_value (project, measure), value, 1e-6)

/* The finding of one rule ("book:rule") of the built-in books; borrowed. */
const FpFinding *taking_finding (FpFindings *findings, const char *rule);
FpFindings      *taking_findings (const FpProject *project, gboolean sight);
FpFound          taking_found (const FpProject *project, const char *rule);

#define assert_short(project, rule) \
  g_assert_cmpstr (fp_found_id (taking_found (project, rule)), ==, "short")
#define assert_within(project, rule) \
  g_assert_cmpstr (fp_found_id (taking_found (project, rule)), ==, "within")

G_END_DECLS
