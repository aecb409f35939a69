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

/* With the seconds that people leave out and the library asks for; NULL where it does not tell how far it is from UTC. */
static char *
with_seconds (const char *text)
{
  const char *hour = strchr (text, 'T');
  const char *offset = hour != NULL ? strpbrk (hour, "Z+-") : NULL;

  if (offset == NULL)
    return NULL;
  if (offset - hour != (gssize) strlen ("T09:30"))
    return g_strdup (text);
  return g_strdup_printf ("%.*s:00%s", (int) (offset - text), text, offset);
}

GDateTime *
fp_sun_time_parse (const char *text, GError **error)
{
  g_autofree char *whole = with_seconds (text);
  g_autoptr (GDateTime) time = whole != NULL ? g_date_time_new_from_iso8601 (whole, NULL) : NULL;

  if (time == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_SYNTAX,
                   "“%s” is no time such as 2026-06-21T09:30+01:00: date, time by the clock, and its hours before UTC",
                   text);
      return NULL;
    }
  if (g_date_time_get_year (time) < FP_SUN_YEAR_FIRST || g_date_time_get_year (time) > FP_SUN_YEAR_LAST)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the year %d is not one of %d to %d, for which the sun is reckoned",
                   g_date_time_get_year (time), FP_SUN_YEAR_FIRST, FP_SUN_YEAR_LAST);
      return NULL;
    }
  return g_steal_pointer (&time);
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
  const Orbit o = orbit_at ((UNIX_JULIAN_DAY + days - 2451545) / 36525);
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
