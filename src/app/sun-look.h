/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-look.h - the time at which the sun is looked at; knows no toolkit */
#pragma once

#include "footpace/sun.h"

G_BEGIN_DECLS

/* Zero: the first Mass of the brief, at the March equinox. */
typedef struct
{
  guint    mass;             /* of the brief, from 0; as many as it has, or more: another time of the day */
  guint    minute;           /* of the day: that other time                  */
  FpSunDay day;              /* FP_N_SUN_DAYS: a day of one's own            */
  int      year;             /* of that                                      */
  guint    month, date;
} FpSunLook;

gboolean   fp_sun_look_equal (const FpSunLook *a, const FpSunLook *b);

/* When that is in this year, or in the own one; a Mass is on the day of it that is nearest.  (transfer full): NULL with an
 * error of fp_sun_mass_time(), or %FP_ERROR_INVALID where the brief does not tell where the church is. */
GDateTime *fp_sun_look_time  (const FpSunLook *self, const FpBrief *brief, GError **error);

/* "2026-06-21" and "9:30", as they are typed; FALSE, with the rest as it was, where it is none. */
gboolean   fp_sun_look_set_date (FpSunLook *self, const char *text);
gboolean   fp_sun_look_set_clock (FpSunLook *self, const char *text);

G_END_DECLS
