/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-look.h"

#include "footpace/error.h"

#include <string.h>

gboolean
fp_sun_look_equal (const FpSunLook *a, const FpSunLook *b)
{
  return a->mass == b->mass && a->minute == b->minute && a->day == b->day && a->year == b->year && a->month == b->month
         && a->date == b->date;
}

static void
day_of (const FpSunLook *self, int *year, guint *month, guint *day)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  *year = g_date_time_get_year (now);
  if (self->day < FP_N_SUN_DAYS)
    {
      fp_sun_day (self->day, *year, month, day);
      return;
    }
  *year = self->year;
  *month = self->month;
  *day = self->date;
}

GDateTime *
fp_sun_look_time (const FpSunLook *self, const FpBrief *brief, GError **error)
{
  int year;
  guint month, day;

  if (!brief->site.known)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID,
                           "The brief does not tell where the church is: latitude, longitude and time zone.");
      return NULL;
    }
  day_of (self, &year, &month, &day);
  if (self->mass < brief->n_masses)
    return fp_sun_mass_time (brief, self->mass, year, month, day, error);
  return fp_site_time (&brief->site, year, month, day, self->minute, error);
}

/* --- as typed -------------------------------------------------------------------- */

/* By the reader of times, which knows what days there are, and years. */
static GDateTime *
read_time (const char *date, const char *clock)
{
  g_autofree char *whole = g_strconcat (date, "T", clock, "Z", NULL);

  return fp_sun_time_parse (whole, NULL, NULL);
}

gboolean
fp_sun_look_set_date (FpSunLook *self, const char *text)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  g_autoptr (GDateTime) time = strlen (bare) == strlen ("2026-06-21") ? read_time (bare, "12:00") : NULL;

  if (time == NULL)
    return FALSE;
  self->year = g_date_time_get_year (time);
  self->month = (guint) g_date_time_get_month (time);
  self->date = (guint) g_date_time_get_day_of_month (time);
  return TRUE;
}

gboolean
fp_sun_look_set_clock (FpSunLook *self, const char *text)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  g_autofree char *two = strlen (bare) == strlen ("9:30") ? g_strconcat ("0", bare, NULL) : g_strdup (bare);
  g_autoptr (GDateTime) time = strlen (two) == strlen ("09:30") ? read_time ("2000-01-01", two) : NULL;

  if (time == NULL)
    return FALSE;
  self->minute = (guint) (g_date_time_get_hour (time) * 60 + g_date_time_get_minute (time));
  return TRUE;
}
