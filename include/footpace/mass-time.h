/* SPDX-License-Identifier: GPL-3.0-or-later */
/* mass-time.h - where on the earth the church is, and when Mass is said there by the clock of that place
 *
 * Values without a scene: the brief keeps them, the sun is reckoned by them.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Zero: not said. */
typedef struct
{
  gboolean    known;     /* otherwise nothing else of it counts               */
  double      latitude;  /* degrees, north positive: -90..90                  */
  double      longitude; /* degrees, east positive: -180..180                 */
  const char *zone;      /* by which clocks are set: "Europe/London"; or the hours before UTC: "+01:00" */
} FpSite;

/* Either every week or once a year. */
typedef struct
{
  guint weekday;    /* ISO 8601: 1 Monday … 7 Sunday; 0: once a year          */
  guint month, day; /* 1..12, 1..31; 0 where it is every week                 */
  guint minute;     /* of the day, by the clock                               */
} FpMassTime;

#define FP_MASS_TIMES_MAX 12

/* FALSE with %FP_ERROR_RANGE or %FP_ERROR_INVALID; says which part is wrong: "latitude is 91, …".  Of the zone its spelling:
 * whether a machine knows it is told by fp_site_time(). */
gboolean    fp_site_check      (const FpSite *self, GError **error);
gboolean    fp_site_equal      (const FpSite *a, const FpSite *b);
/* "51.5", "51.5° N", "0.1 W": of latitudes N and S, of longitudes E and W.  FALSE with %FP_ERROR_SYNTAX or %FP_ERROR_RANGE */
gboolean    fp_site_degrees_parse (const char *text, gboolean latitude, double *value, GError **error);
gboolean    fp_mass_time_check (const FpMassTime *self, GError **error);
gboolean    fp_mass_time_equal (const FpMassTime *a, const FpMassTime *b);

const char *fp_weekday_id    (guint weekday); /* "monday" … "sunday", for 1..7 */
const char *fp_weekday_label (guint weekday); /* "Monday" … */

/* "Sunday 09:30", "25 December 00:00"; the caller's. */
char       *fp_mass_time_text  (const FpMassTime *self);
/* All of them, parted by commas, a day once: what fp_mass_times_parse() reads. */
char       *fp_mass_times_text (const FpMassTime *mass, guint n);

/**
 * fp_mass_times_parse:
 * @text: "Sunday 8:00, 9:30; 25 December 00:00": a day (of the week or the year) and a time, parted by commas or
 *   semicolons; a time alone is on the day before it.  Names of days and months may be cut to three letters or more.
 *
 * FALSE with %FP_ERROR_SYNTAX, or %FP_ERROR_RANGE where there are too many.
 */
gboolean    fp_mass_times_parse (const char *text, FpMassTime mass[FP_MASS_TIMES_MAX], guint *n, GError **error);

/* That moment there.  A day that the month has not is its last.  (transfer full): NULL with %FP_ERROR_INVALID where the zone
 * is not known on this machine, with %FP_ERROR_RANGE where there is no such date. */
GDateTime  *fp_site_time (const FpSite *self, int year, guint month, guint day, guint minute, GError **error);

/* The day on which it is that is nearest to the given one, of the same year: itself, where it has no such day of the week
 * near it; for what is once a year its own.  @month, @day: (inout) */
void        fp_mass_time_day (const FpMassTime *self, int year, guint *month, guint *day);

G_END_DECLS
