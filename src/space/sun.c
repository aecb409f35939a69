/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun.c - the position of the sun, by the equations of the NOAA solar calculator
 *
 * https://gml.noaa.gov/grad/solcalc/ and the spreadsheet offered there, after
 * J. Meeus, "Astronomical Algorithms".  Coefficients are as printed there.
 */
#include "footpace/sun.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

#define UNIX_JULIAN_DAY 2440587.5 /* of 1 January 1970, 0 h UTC */
#define SECONDS_A_DAY   86400.0
#define MINUTES_A_DAY   1440.0
#define MINUTES_A_DEGREE 4.0      /* that the sky takes to turn so far */

static double
radians (double degrees)
{
  return degrees * G_PI / 180;
}

static double
degrees (double radian)
{
  return radian * 180 / G_PI;
}

static double
sine (double degree)
{
  return sin (radians (degree));
}

static double
cosine (double degree)
{
  return cos (radians (degree));
}

/* 0 <= result < @round */
static double
around (double value, double round)
{
  const double rest = fmod (value, round);

  return rest < 0 ? rest + round : rest;
}

/* --- time -------------------------------------------------------------------- */

/* Where it begins to tell how far it is from UTC; its end, where it does not.  NULL where it tells no time. */
static const char *
offset_of (const char *text)
{
  const char *hour = strchr (text, 'T'), *offset;

  if (hour == NULL)
    return NULL;
  offset = strpbrk (hour, "Z+-");
  return offset != NULL ? offset : hour + strlen (hour);
}

/* With the seconds that people leave out and the library asks for. */
static char *
with_seconds (const char *text, const char *offset)
{
  if (offset - strchr (text, 'T') != (gssize) strlen ("T09:30"))
    return g_strdup (text);
  return g_strdup_printf ("%.*s:00%s", (int) (offset - text), text, offset);
}

/* NULL where it is no such time. */
static GDateTime *
read_time (const char *text, GTimeZone *zone)
{
  const char *offset = offset_of (text);
  g_autofree char *whole = offset != NULL ? with_seconds (text, offset) : NULL;

  return whole != NULL ? g_date_time_new_from_iso8601 (whole, zone) : NULL;
}

/* The same hour and minute by the clock of the place. */
static GDateTime *
by_clock_of (const FpSite *site, GDateTime *time, GError **error)
{
  return fp_site_time (site, g_date_time_get_year (time), (guint) g_date_time_get_month (time),
                       (guint) g_date_time_get_day_of_month (time),
                       (guint) (g_date_time_get_hour (time) * 60 + g_date_time_get_minute (time)), error);
}

static gboolean
is_told (GDateTime *time, GError **error)
{
  const int year = g_date_time_get_year (time);

  if (year >= FP_SUN_YEAR_FIRST && year <= FP_SUN_YEAR_LAST)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the year %d is not one of %d to %d, for which the sun is reckoned", year,
               FP_SUN_YEAR_FIRST, FP_SUN_YEAR_LAST);
  return FALSE;
}

GDateTime *
fp_sun_time_parse (const char *text, const FpSite *site, GError **error)
{
  const char *offset = offset_of (text);
  const gboolean local = offset != NULL && *offset == '\0' && site != NULL && site->known;
  g_autoptr (GTimeZone) utc = local ? g_time_zone_new_utc () : NULL;
  g_autoptr (GDateTime) read = read_time (text, utc), time = NULL;

  if (read == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_SYNTAX,
                   "“%s” is no time such as 2026-06-21T09:30+01:00: date, time by the clock, and its hours before UTC",
                   text);
      return NULL;
    }
  time = local ? by_clock_of (site, read, error) : g_date_time_ref (read);
  return time != NULL && is_told (time, error) ? g_steal_pointer (&time) : NULL;
}

static double
days_of_unix (GDateTime *time)
{
  return ((double) g_date_time_to_unix (time) + g_date_time_get_microsecond (time) / 1e6) / SECONDS_A_DAY;
}

/* --- in the sky -------------------------------------------------------------- */

/* All that follows from the time alone. */
typedef struct
{
  double mean_longitude, mean_anomaly, eccentricity;
  double longitude; /* apparent */
  double obliquity; /* of the ecliptic, corrected */
} Orbit;

/* @t: Julian centuries since the beginning of 2000. */
static Orbit
orbit_at (double t)
{
  const double node = 125.04 - 1934.136 * t;
  const double seconds = 21.448 - t * (46.815 + t * (0.00059 - t * 0.001813));
  Orbit o = {
    .mean_longitude = around (280.46646 + t * (36000.76983 + t * 0.0003032), 360),
    .mean_anomaly = 357.52911 + t * (35999.05029 - 0.0001537 * t),
    .eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t),
    .obliquity = 23 + (26 + seconds / 60) / 60 + 0.00256 * cosine (node),
  };
  const double centre = sine (o.mean_anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
                        + sine (2 * o.mean_anomaly) * (0.019993 - 0.000101 * t) + sine (3 * o.mean_anomaly) * 0.000289;

  o.longitude = o.mean_longitude + centre - 0.00569 - 0.00478 * sine (node);
  return o;
}

static Orbit
orbit_of (GDateTime *time)
{
  return orbit_at ((UNIX_JULIAN_DAY + days_of_unix (time) - 2451545) / 36525);
}

/* Minutes. */
static double
equation_of_time (const Orbit *o)
{
  const double half = tan (radians (o->obliquity / 2)), y = half * half, e = o->eccentricity;

  return MINUTES_A_DEGREE
         * degrees (y * sine (2 * o->mean_longitude) - 2 * e * sine (o->mean_anomaly)
                    + 4 * e * y * sine (o->mean_anomaly) * cosine (2 * o->mean_longitude)
                    - 0.5 * y * y * sine (4 * o->mean_longitude) - 1.25 * e * e * sine (2 * o->mean_anomaly));
}

/* --- above the place ----------------------------------------------------------- */

/* Degrees, by the elevation without air. */
static double
refraction_at (double elevation)
{
  const double slope = tan (radians (elevation));
  double seconds;

  if (elevation > 85)
    return 0;
  if (elevation > 5)
    seconds = 58.1 / slope - 0.07 / pow (slope, 3) + 0.000086 / pow (slope, 5);
  else if (elevation > -0.575)
    seconds = 1735 + elevation * (-518.2 + elevation * (103.4 + elevation * (-12.79 + elevation * 0.711)));
  else
    seconds = -20.772 / slope;
  return seconds / 3600;
}

/* @hour: degrees that the sun is past the meridian.  By the two parts of the way towards it on the level, which
 * answers at the poles too, where the printed arc cosine does not. */
static void
look_up (FpSun *sun, double hour, double latitude)
{
  const double d = sun->declination;
  const double up = sine (latitude) * sine (d) + cosine (latitude) * cosine (d) * cosine (hour);
  const double east = -cosine (d) * sine (hour);
  const double north = cosine (latitude) * sine (d) - sine (latitude) * cosine (d) * cosine (hour);

  sun->elevation = degrees (atan2 (up, hypot (east, north)));
  sun->azimuth = around (degrees (atan2 (east, north)), 360);
  sun->refraction = refraction_at (sun->elevation);
}

FpSun
fp_sun_at (GDateTime *time, double latitude, double longitude)
{
  const double days = days_of_unix (time);
  const Orbit o = orbit_of (time);
  FpSun sun = {
    .declination = degrees (asin (sine (o.obliquity) * sine (o.longitude))),
    .right_ascension = degrees (atan2 (cosine (o.obliquity) * sine (o.longitude), cosine (o.longitude))),
    .equation_of_time = equation_of_time (&o),
  };
  /* Of true solar time; noon is half a day. */
  const double minutes = around (days, 1) * MINUTES_A_DAY + sun.equation_of_time + MINUTES_A_DEGREE * longitude;

  look_up (&sun, around (minutes, MINUTES_A_DAY) / MINUTES_A_DEGREE - 180, latitude);
  return sun;
}

double
fp_sun_height (const FpSun *sun)
{
  return sun->elevation + sun->refraction;
}

FpVec3
fp_sun_direction (const FpSun *sun, double north)
{
  const double height = fp_sun_height (sun);
  /* The azimuth runs clockwise on the plan, turns counter-clockwise. */
  const double turn = north - sun->azimuth;

  return (FpVec3) { -sine (turn) * cosine (height), cosine (turn) * cosine (height), sine (height) };
}

/* --- days ------------------------------------------------------------------------ */

#define DAY_EARLIEST 17 /* of its month, for as long as the equations are told: with days to spare */
#define DAY_LATEST   25

static const struct { const char *label; guint month; double longitude; } days[FP_N_SUN_DAYS] = {
  [FP_SUN_MARCH] = { "March equinox", 3, 0 },
  [FP_SUN_JUNE] = { "June solstice", 6, 90 },
  [FP_SUN_SEPTEMBER] = { "September equinox", 9, 180 },
  [FP_SUN_DECEMBER] = { "December solstice", 12, 270 },
};

const char *
fp_sun_day_label (FpSunDay self)
{
  return days[MIN (self, FP_N_SUN_DAYS - 1)].label;
}

void
fp_sun_day (FpSunDay self, int year, guint *month, guint *day)
{
  self = MIN (self, FP_N_SUN_DAYS - 1);
  *month = days[self].month;
  for (*day = DAY_EARLIEST; *day < DAY_LATEST; ++*day)
    {
      g_autoptr (GDateTime) midnight = g_date_time_new_utc (CLAMP (year, FP_SUN_YEAR_FIRST, FP_SUN_YEAR_LAST), (int) *month,
                                                            (int) *day + 1, 0, 0, 0);
      if (around (orbit_of (midnight).longitude - days[self].longitude + 180, 360) >= 180)
        break;
    }
}

GDateTime *
fp_sun_mass_time (const FpBrief *brief, guint mass, int year, guint month, guint day, GError **error)
{
  g_autoptr (GDateTime) time = NULL;

  fp_mass_time_day (&brief->mass[mass], year, &month, &day);
  time = fp_site_time (&brief->site, year, month, day, brief->mass[mass].minute, error);
  return time != NULL && is_told (time, error) ? g_steal_pointer (&time) : NULL;
}
