/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the church is and when Mass is said: as it is typed, checked, and found in the calendar. */
#include "footpace/error.h"
#include "footpace/mass-time.h"

#include <string.h>

/* The rule of a zone, which needs no data of the machine: an hour more from the last Sunday of March to that of October. */
#define SUMMER_TIME "GMT0BST,M3.5.0/1,M10.5.0"

static void
check_times (const char *typed, const char *expected)
{
  FpMassTime mass[FP_MASS_TIMES_MAX], again[FP_MASS_TIMES_MAX];
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  guint n, n_again;

  fp_mass_times_parse (typed, mass, &n, &error);
  g_assert_no_error (error);
  text = fp_mass_times_text (mass, n);
  g_assert_cmpstr (text, ==, expected);
  g_assert_true (fp_mass_times_parse (text, again, &n_again, NULL));
  g_assert_cmpuint (n_again, ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_true (fp_mass_time_equal (&mass[i], &again[i]));
}

static void
test_typed (void)
{
  check_times ("", "");
  check_times (" , ;", "");
  check_times ("Sunday 9:30", "Sunday 09:30");
  check_times ("sun 8:00, 9:30; 18:00, WEDNES  7:05", "Sunday 08:00, 09:30, 18:00, Wednesday 07:05");
  check_times ("25 dec 0:00, 8:00", "25 December 00:00, 08:00");
  check_times ("29 February 23:59", "29 February 23:59");
}

static void
test_typed_wrong (void)
{
  static const char *const wrong[] = { "9:30", "Sunday", "Sunday 9", "Sunday 24:00", "Sunday 9:60", "Su 9:30", "Sunnday 9:30",
                                       "30 February 9:00", "0 May 9:00", "December 25 9:00", "25 December 2026 9:00",
                                       "Sunday 9:30 Monday 8:00", "Sunday 9.30", "Sunday 9:3", "Sunday -9:30" };
  FpMassTime mass[FP_MASS_TIMES_MAX];
  guint n;

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (fp_mass_times_parse (wrong[i], mass, &n, &error));
      g_assert_error (error, FP_ERROR, FP_ERROR_SYNTAX);
      g_assert_nonnull (strstr (error->message, wrong[i]));
    }
}

static void
test_too_many (void)
{
  g_autoptr (GString) text = g_string_new ("Sunday 0:00");
  FpMassTime mass[FP_MASS_TIMES_MAX];
  g_autoptr (GError) error = NULL;
  guint n;

  for (int i = 1; i < FP_MASS_TIMES_MAX; i++)
    g_string_append_printf (text, ", %d:00", i);
  g_assert_true (fp_mass_times_parse (text->str, mass, &n, NULL));
  g_assert_cmpuint (n, ==, FP_MASS_TIMES_MAX);
  g_assert_cmpuint (mass[n - 1].minute, ==, 60 * (n - 1));
  g_string_append (text, ", 23:00");
  g_assert_false (fp_mass_times_parse (text->str, mass, &n, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
}

static void
check_degrees (const char *text, gboolean latitude, double expected)
{
  double value;

  g_assert_true (fp_site_degrees_parse (text, latitude, &value, NULL));
  g_assert_cmpfloat (value, ==, expected);
}

static void
test_degrees (void)
{
  static const struct { const char *text; gboolean latitude; } wrong[] = {
    { "", TRUE }, { "N", TRUE }, { "91", TRUE }, { "181", FALSE }, { "52 E", TRUE }, { "5 N", FALSE }, { "far", TRUE },
  };
  double value;

  check_degrees ("52.25", TRUE, 52.25);
  check_degrees (" 52.25° N ", TRUE, 52.25);
  check_degrees ("33.5s", TRUE, -33.5);
  check_degrees ("0.75 W", FALSE, -0.75);
  check_degrees ("-0.75", FALSE, -0.75);
  check_degrees ("180 E", FALSE, 180);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (fp_site_degrees_parse (wrong[i].text, wrong[i].latitude, &value, &error));
      g_assert_nonnull (error);
    }
}

static void
test_sites (void)
{
  static const char *const zones[] = { "Europe/London", "+01:00", "UTC", SUMMER_TIME };
  static const char *const no_zones[] = { "", "/etc/localtime", "../zone", "Europe/../../zone", "Europe London", "Ö", NULL };
  FpSite site = { TRUE, 90, -180, "UTC" }, unknown = { FALSE, 400, 0, NULL };

  g_assert_true (fp_site_check (&unknown, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (zones); i++)
    {
      site.zone = zones[i];
      g_assert_true (fp_site_check (&site, NULL));
    }
  for (guint i = 0; i < G_N_ELEMENTS (no_zones); i++)
    {
      site.zone = no_zones[i];
      g_assert_false (fp_site_check (&site, NULL));
      g_assert_null (fp_site_time (&site, 2026, 6, 21, 0, NULL));
    }
  site = (FpSite) { TRUE, -90.001, 0, "UTC" };
  g_assert_false (fp_site_check (&site, NULL));
}

static void
check_clock (const char *zone, guint month, guint day, int hours_before_utc)
{
  const FpSite site = { TRUE, 52, 0, zone };
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) time = fp_site_time (&site, 2026, month, day, 570, &error);

  g_assert_no_error (error);
  g_assert_cmpint (g_date_time_get_hour (time) * 60 + g_date_time_get_minute (time), ==, 570);
  g_assert_cmpint ((int) (g_date_time_get_utc_offset (time) / G_TIME_SPAN_HOUR), ==, hours_before_utc);
}

/* The last Sundays: 29 March and 25 October 2026. */
static void
test_summer_time (void)
{
  check_clock (SUMMER_TIME, 3, 28, 0);
  check_clock (SUMMER_TIME, 3, 30, 1);
  check_clock (SUMMER_TIME, 10, 24, 1);
  check_clock (SUMMER_TIME, 10, 26, 0);
  check_clock ("-05:00", 6, 21, -5);
}

static void
test_no_such_time (void)
{
  const FpSite nowhere = { TRUE, 52, 0, "Nowhere/At-all" }, site = { TRUE, 52, 0, "UTC" };
  g_autoptr (GError) zone = NULL, date = NULL;
  g_autoptr (GDateTime) leap = fp_site_time (&site, 2026, 2, 29, 0, NULL);

  g_assert_null (fp_site_time (&nowhere, 2026, 6, 21, 0, &zone));
  g_assert_error (zone, FP_ERROR, FP_ERROR_INVALID);
  g_assert_null (fp_site_time (&site, 2026, 13, 1, 0, &date));
  g_assert_error (date, FP_ERROR, FP_ERROR_RANGE);
  g_assert_cmpint (g_date_time_get_day_of_month (leap), ==, 28);
}

static void
check_day (FpMassTime mass, int year, guint month, guint day, guint to_month, guint to_day)
{
  fp_mass_time_day (&mass, year, &month, &day);
  g_assert_cmpuint (month, ==, to_month);
  g_assert_cmpuint (day, ==, to_day);
}

/* 21 June 2026 is a Sunday, 1 January 2026 a Thursday, 31 December 2026 a Thursday. */
static void
test_nearest_day (void)
{
  const FpMassTime sunday = { .weekday = 7 }, wednesday = { .weekday = 3 }, thursday = { .weekday = 4 };
  const FpMassTime friday = { .weekday = 5 }, christmas = { .month = 12, .day = 25 };

  check_day (sunday, 2026, 6, 21, 6, 21);
  check_day (thursday, 2026, 6, 21, 6, 18);
  check_day (wednesday, 2026, 6, 21, 6, 24);
  check_day (wednesday, 2026, 1, 1, 1, 7); /* the one before is of another year */
  check_day (friday, 2026, 12, 31, 12, 25);
  check_day (christmas, 2026, 6, 21, 12, 25);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mass-time/typed", test_typed);
  g_test_add_func ("/mass-time/typed-wrong", test_typed_wrong);
  g_test_add_func ("/mass-time/too-many", test_too_many);
  g_test_add_func ("/mass-time/degrees", test_degrees);
  g_test_add_func ("/mass-time/sites", test_sites);
  g_test_add_func ("/mass-time/summer-time", test_summer_time);
  g_test_add_func ("/mass-time/no-such-time", test_no_such_time);
  g_test_add_func ("/mass-time/nearest-day", test_nearest_day);
  return g_test_run ();
}
