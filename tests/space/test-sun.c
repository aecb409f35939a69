/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the sun stands: the worked example of the printed equations, and what everybody knows of noon. */
#include "footpace/error.h"
#include "footpace/sun.h"

#include <math.h>

static FpSun
sun_at (const char *text, double latitude, double longitude)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) time = fp_sun_time_parse (text, NULL, &error);

  g_assert_no_error (error);
  return fp_sun_at (time, latitude, longitude);
}

static void
near_to (double found, double expected, double most)
{
  g_assert_cmpfloat_with_epsilon (found, expected, most);
}

/* NOAA_Solar_Calculations_day.ods, 21 June 2010, first row of its day: 00:06 at UTC-7, 40 north, 105 west. */
static void
test_printed_example (void)
{
  const FpSun sun = sun_at ("2010-06-21T00:06:00-07:00", 40, -105);

  near_to (sun.right_ascension, 89.8094800844214, 1e-6);
  near_to (sun.declination, 23.4383706192869, 1e-6);
  near_to (sun.equation_of_time, -1.71536757846953, 1e-6);
  near_to (sun.elevation, -26.5537621191813, 1e-6);
  near_to (sun.refraction, 0.0115456865919242, 1e-6);
  near_to (fp_sun_height (&sun), -26.5422164325893, 1e-6);
  near_to (sun.azimuth, 1.09867118388445, 1e-6);
}

/* J. Meeus, "Astronomical Algorithms", example 25.a, from memory: 13 October 1992 at 0 h dynamical time, which was some
 * 59 seconds before UTC; so to less than a hundredth of a degree. */
static void
test_book_example (void)
{
  const FpSun sun = sun_at ("1992-10-13T00:00Z", 0, 0);

  near_to (sun.declination, -7.78507, 0.002);
  near_to (sun.right_ascension + 360, 198.38083, 0.002);
}

/* The highest of the day as it is seen, looked at each minute. */
static FpSun
noon (int month, double latitude)
{
  FpSun best = { .elevation = -90 };

  for (int minute = 0; minute < 24 * 60; minute++)
    {
      g_autoptr (GDateTime) time = g_date_time_new_utc (2021, month, 21, minute / 60, minute % 60, 0);
      const FpSun sun = fp_sun_at (time, latitude, 0);
      if (sun.elevation > best.elevation)
        best = sun;
    }
  return best;
}

/* 90 degrees less the latitude, more or less the obliquity of the ecliptic: published test values 73.45 and 26.55. */
static void
test_noon (void)
{
  near_to (noon (6, 40).elevation, 73.45, 0.6);
  near_to (noon (12, 40).elevation, 26.55, 0.6);
  near_to (noon (6, -40).elevation, 26.55, 0.6);
  near_to (noon (12, -40).elevation, 73.45, 0.6);
  near_to (noon (6, 40).azimuth, 180, 1);
  near_to (fabs (noon (12, -40).azimuth - 180), 180, 1);
}

/* Nothing is wild at the poles, overhead, or where the pieces of the printed refraction meet. */
static void
test_everywhere (void)
{
  for (double latitude = -90; latitude <= 90; latitude += 5)
    for (int hour = 0; hour < 24; hour++)
      {
        g_autoptr (GDateTime) time = g_date_time_new_utc (2026, 3, 20, hour, 0, 0);
        const FpSun sun = fp_sun_at (time, latitude, 12);
        const FpVec3 way = fp_sun_direction (&sun, 33);
        g_assert_true (isfinite (sun.azimuth) && sun.azimuth >= 0 && sun.azimuth < 360);
        g_assert_cmpfloat (fabs (sun.refraction), <, 0.6);
        near_to (fp_vec3_length (way), 1, 1e-12);
      }
}

/* The same moment by other clocks. */
static void
test_clocks (void)
{
  const FpSun london = sun_at ("2026-06-21T09:30+01:00", 51.5, -0.1), utc = sun_at ("2026-06-21T08:30Z", 51.5, -0.1);
  const FpSun day_before = sun_at ("2026-06-20T22:30-10:00", 51.5, -0.1);

  near_to (london.azimuth, utc.azimuth, 1e-9);
  near_to (london.elevation, utc.elevation, 1e-9);
  near_to (day_before.azimuth, utc.azimuth, 1e-9);
  /* By daylight saving time the sun is an hour lower than the clock seems to say. */
  g_assert_cmpfloat (sun_at ("2026-06-21T09:30Z", 51.5, -0.1).elevation, >, london.elevation + 5);
}

static void
test_refused_times (void)
{
  static const struct { const char *text; int code; } bad[] = {
    { "", FP_ERROR_SYNTAX }, { "noon", FP_ERROR_SYNTAX }, { "2026-06-21", FP_ERROR_SYNTAX },
    { "2026-06-21T09:30", FP_ERROR_SYNTAX }, { "2026-02-30T09:30Z", FP_ERROR_SYNTAX },
    { "2026-06-21T25:30Z", FP_ERROR_SYNTAX }, { "1900-06-21T09:30Z", FP_ERROR_RANGE },
    { "2100-06-21T09:30Z", FP_ERROR_RANGE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (fp_sun_time_parse (bad[i].text, NULL, &error));
      g_assert_error (error, FP_ERROR, bad[i].code);
    }
}

/* --- in the church ---------------------------------------------------------------- */

static void
points (double azimuth, double height, double north, FpVec3 expected)
{
  const FpSun sun = { .azimuth = azimuth, .elevation = height };
  const FpVec3 way = fp_sun_direction (&sun, north);

  near_to (way.x, expected.x, 1e-12);
  near_to (way.y, expected.y, 1e-12);
  near_to (way.z, expected.z, 1e-12);
}

/* Liturgical east is true east: north lies to the left of who looks at the altar, that is on the Gospel side. */
static void
test_oriented (void)
{
  points (90, 0, 90, (FpVec3) { 0, 1, 0 });
  points (180, 0, 90, (FpVec3) { 1, 0, 0 });
  points (270, 30, 90, (FpVec3) { 0, -sqrt (0.75), 0.5 });
  points (0, 90, 90, (FpVec3) { 0, 0, 1 });
}

/* The altar stands in the west: the morning sun shines in at the doors. */
static void
test_occidented (void)
{
  points (90, 0, -90, (FpVec3) { 0, -1, 0 });
  points (180, 0, -90, (FpVec3) { -1, 0, 0 });
  points (270, 0, -90, (FpVec3) { 0, 1, 0 });
}

/* The altar stands in the north: north is ahead. Half-way between, in the north-east: north is 45 degrees to the left. */
static void
test_other_ways (void)
{
  points (0, 0, 0, (FpVec3) { 0, 1, 0 });
  points (90, 0, 0, (FpVec3) { 1, 0, 0 });
  points (45, 0, 45, (FpVec3) { 0, 1, 0 });
  points (0, 0, 45, (FpVec3) { -sqrt (0.5), sqrt (0.5), 0 });
}

static void
check_day (FpSunDay which, int year, guint month, guint day)
{
  guint found_month, found_day;

  fp_sun_day (which, year, &found_month, &found_day);
  g_assert_cmpuint (found_month, ==, month);
  g_assert_cmpuint (found_day, ==, day);
}

/* From memory, UTC: 2024 on 20 March 03:06, 20 June 20:51, 22 September 12:44, 21 December 09:20; 2025 on 20 March 09:01,
 * 21 June 02:42, 22 September 18:19, 21 December 15:03. */
static void
test_solstices (void)
{
  check_day (FP_SUN_MARCH, 2024, 3, 20);
  check_day (FP_SUN_JUNE, 2024, 6, 20);
  check_day (FP_SUN_SEPTEMBER, 2024, 9, 22);
  check_day (FP_SUN_DECEMBER, 2024, 12, 21);
  check_day (FP_SUN_MARCH, 2025, 3, 20);
  check_day (FP_SUN_JUNE, 2025, 6, 21);
  check_day (FP_SUN_SEPTEMBER, 2025, 9, 22);
  check_day (FP_SUN_DECEMBER, 2025, 12, 21);
}

/* At the solstices it is as far from the equator as it goes, at the equinoxes over it; about noon of the day. */
static void
test_days_of_every_year (void)
{
  static const double declination[FP_N_SUN_DAYS] = { 0, 23.44, 0, -23.44 };

  for (int year = FP_SUN_YEAR_FIRST; year <= FP_SUN_YEAR_LAST; year += 11)
    for (int i = 0; i < FP_N_SUN_DAYS; i++)
      {
        guint month, day;
        g_autoptr (GDateTime) noon = NULL;
        fp_sun_day ((FpSunDay) i, year, &month, &day);
        noon = g_date_time_new_utc (year, (int) month, (int) day, 12, 0, 0);
        /* A day changes it by 0.4 degrees at the most. */
        near_to (fp_sun_at (noon, 0, 0).declination, declination[i], 0.21);
      }
}

static void
test_mass_time (void)
{
  FpBrief brief = { .site = { TRUE, 52.25, -0.75, "GMT0BST,M3.5.0/1,M10.5.0" }, .n_masses = 2 };
  g_autoptr (GDateTime) summer = NULL, winter = NULL, never = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *at = NULL, *christmas = NULL;

  brief.mass[0] = (FpMassTime) { .weekday = 7, .minute = 570 };
  brief.mass[1] = (FpMassTime) { .month = 12, .day = 25 };
  summer = fp_sun_mass_time (&brief, 0, 2025, 6, 21, &error); /* a Saturday */
  g_assert_no_error (error);
  at = g_date_time_format (summer, "%Y-%m-%dT%H:%M%:z");
  g_assert_cmpstr (at, ==, "2025-06-22T09:30+01:00");
  winter = fp_sun_mass_time (&brief, 1, 2025, 6, 21, &error);
  christmas = g_date_time_format (winter, "%Y-%m-%dT%H:%M%:z");
  g_assert_cmpstr (christmas, ==, "2025-12-25T00:00+00:00");
  never = fp_sun_mass_time (&brief, 0, 1850, 6, 21, &error);
  g_assert_null (never);
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun/printed-example", test_printed_example);
  g_test_add_func ("/sun/book-example", test_book_example);
  g_test_add_func ("/sun/noon", test_noon);
  g_test_add_func ("/sun/everywhere", test_everywhere);
  g_test_add_func ("/sun/clocks", test_clocks);
  g_test_add_func ("/sun/refused-times", test_refused_times);
  g_test_add_func ("/sun/oriented", test_oriented);
  g_test_add_func ("/sun/occidented", test_occidented);
  g_test_add_func ("/sun/other-ways", test_other_ways);
  g_test_add_func ("/sun/solstices", test_solstices);
  g_test_add_func ("/sun/days-of-every-year", test_days_of_every_year);
  g_test_add_func ("/sun/mass-time", test_mass_time);
  return g_test_run ();
}
