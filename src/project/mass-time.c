/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/mass-time.h"

#include "footpace/error.h"
#include "footpace/units.h"

#include <math.h>
#include <string.h>

#define ZONE_MAX    64 /* bytes                                              */
#define LETTERS     3  /* by which a day or a month is told at the least      */
#define MINUTES     (24 * 60)
#define WEEK        7

static const char *const weekdays[WEEK + 1] = { NULL, "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday",
                                                "Sunday" };
static const char *const weekday_ids[WEEK + 1] = { NULL, "monday", "tuesday", "wednesday", "thursday", "friday", "saturday",
                                                   "sunday" };
static const char *const months[13] = { NULL, "January", "February", "March", "April", "May", "June", "July", "August",
                                        "September", "October", "November", "December" };
/* February as long as it can be: what is once a year is told without a year. */
static const guint month_days[13] = { 0, 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };

const char *
fp_weekday_id (guint weekday)
{
  return weekday_ids[CLAMP (weekday, 1, WEEK)];
}

const char *
fp_weekday_label (guint weekday)
{
  return weekdays[CLAMP (weekday, 1, WEEK)];
}

/* --- the place ------------------------------------------------------------------- */

/* A name of the zone database, hours, or the rule of a zone.  Never a path: a file that is opened must open no other. */
static gboolean
is_zone (const char *zone)
{
  if (zone == NULL || *zone == '\0' || strlen (zone) > ZONE_MAX || *zone == '/' || strstr (zone, "..") != NULL)
    return FALSE;
  for (; *zone != '\0'; zone++)
    if (!g_ascii_isalnum (*zone) && strchr ("+-_/:,.", *zone) == NULL)
      return FALSE;
  return TRUE;
}

static gboolean
degrees_are_fair (const char *what, double value, double most, GError **error)
{
  if (fabs (value) <= most) /* NaN is not */
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %.10g, allowed -%g to %g degrees", what, value, most, most);
  return FALSE;
}

/* Without the letter at its end, where it is one of the two; @sign (out): -1 for the second. */
static char *
without_letter (const char *text, const char *letters, double *sign)
{
  char *bare = g_strstrip (g_strdup (text));
  const gsize length = strlen (bare);
  const char letter = length > 0 ? g_ascii_toupper (bare[length - 1]) : '\0';

  *sign = letter == letters[1] ? -1 : 1;
  if (letter == letters[0] || letter == letters[1])
    bare[length - 1] = '\0';
  g_strchomp (bare);
  if (g_str_has_suffix (bare, "°"))
    bare[strlen (bare) - strlen ("°")] = '\0';
  return bare;
}

gboolean
fp_site_degrees_parse (const char *text, gboolean latitude, double *value, GError **error)
{
  double sign;
  g_autofree char *bare = without_letter (text, latitude ? "NS" : "EW", &sign);

  if (!fp_number_parse (bare, value, error))
    return FALSE;
  *value *= sign;
  return degrees_are_fair (latitude ? "latitude" : "longitude", *value, latitude ? 90 : 180, error);
}

gboolean
fp_site_check (const FpSite *self, GError **error)
{
  if (!self->known)
    return TRUE;
  if (!degrees_are_fair ("latitude", self->latitude, 90, error)
      || !degrees_are_fair ("longitude", self->longitude, 180, error))
    return FALSE;
  if (is_zone (self->zone))
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID,
                       "the time zone is no name such as Europe/London, nor hours before UTC such as +01:00");
  return FALSE;
}

gboolean
fp_site_equal (const FpSite *a, const FpSite *b)
{
  if (!a->known || !b->known)
    return !a->known == !b->known;
  return a->latitude == b->latitude && a->longitude == b->longitude && g_strcmp0 (a->zone, b->zone) == 0;
}

static guint
last_day (int year, guint month)
{
  return g_date_get_days_in_month ((GDateMonth) month, (GDateYear) year);
}

GDateTime *
fp_site_time (const FpSite *self, int year, guint month, guint day, guint minute, GError **error)
{
  g_autoptr (GTimeZone) zone = is_zone (self->zone) ? g_time_zone_new_identifier (self->zone) : NULL;
  GDateTime *time;

  if (zone == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "the time zone “%s” is not known on this computer",
                   self->zone != NULL ? self->zone : "");
      return NULL;
    }
  time = year >= 1 && year <= 9999 && month >= 1 && month <= 12
           ? g_date_time_new (zone, year, (int) month, (int) MIN (day, last_day (year, month)), (int) (minute / 60),
                              (int) (minute % 60), 0)
           : NULL;
  if (time == NULL)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "there is no such day as %04d-%02u-%02u", year, month, day);
  return time;
}

/* --- one Mass --------------------------------------------------------------------- */

gboolean
fp_mass_time_check (const FpMassTime *self, GError **error)
{
  const gboolean weekly = self->weekday >= 1 && self->weekday <= WEEK && self->month == 0 && self->day == 0;
  const gboolean yearly = self->weekday == 0 && self->month >= 1 && self->month <= 12 && self->day >= 1
                          && self->day <= month_days[self->month];

  if ((weekly || yearly) && self->minute < MINUTES)
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "a Mass is on no day of the week or the year, or at no time of the day");
  return FALSE;
}

gboolean
fp_mass_time_equal (const FpMassTime *a, const FpMassTime *b)
{
  return a->weekday == b->weekday && a->month == b->month && a->day == b->day && a->minute == b->minute;
}

char *
fp_mass_time_text (const FpMassTime *self)
{
  if (self->weekday > 0)
    return g_strdup_printf ("%s %02u:%02u", fp_weekday_label (self->weekday), self->minute / 60, self->minute % 60);
  return g_strdup_printf ("%u %s %02u:%02u", self->day, months[CLAMP (self->month, 1, 12)], self->minute / 60,
                          self->minute % 60);
}

static gboolean
is_same_day (const FpMassTime *a, const FpMassTime *b)
{
  return a->weekday == b->weekday && a->month == b->month && a->day == b->day;
}

char *
fp_mass_times_text (const FpMassTime *mass, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *one = fp_mass_time_text (&mass[i]);
      if (i == 0)
        g_string_append (text, one);
      else if (is_same_day (&mass[i - 1], &mass[i]))
        g_string_append_printf (text, ", %02u:%02u", mass[i].minute / 60, mass[i].minute % 60);
      else
        g_string_append_printf (text, ", %s", one);
    }
  return g_string_free (text, FALSE);
}

void
fp_mass_time_day (const FpMassTime *self, int year, guint *month, guint *day)
{
  GDate date, first, last;
  int away;

  if (self->weekday == 0)
    {
      *month = self->month;
      *day = self->day;
      return;
    }
  g_date_set_dmy (&first, 1, G_DATE_JANUARY, (GDateYear) year);
  g_date_set_dmy (&last, 31, G_DATE_DECEMBER, (GDateYear) year);
  g_date_set_dmy (&date, (GDateDay) *day, (GDateMonth) *month, (GDateYear) year);
  away = ((int) self->weekday - (int) g_date_get_weekday (&date) + WEEK) % WEEK;
  away -= away > WEEK / 2 ? WEEK : 0;
  if (away < 0)
    g_date_subtract_days (&date, (guint) -away);
  else
    g_date_add_days (&date, (guint) away);
  if (g_date_compare (&date, &first) < 0)
    g_date_add_days (&date, WEEK);
  if (g_date_compare (&date, &last) > 0)
    g_date_subtract_days (&date, WEEK);
  *month = g_date_get_month (&date);
  *day = g_date_get_day (&date);
}

/* --- as typed ----------------------------------------------------------------------- */

/* 0: none of them, in whatever case, cut or whole. */
static guint
find_name (const char *word, const char *const *names, guint n)
{
  const gsize length = strlen (word);

  for (guint i = 1; i <= n && length >= LETTERS; i++)
    if (g_ascii_strncasecmp (names[i], word, length) == 0)
      return i;
  return 0;
}

/* All of @text is a number of one or two digits. */
static gboolean
read_digits (const char *text, gsize length, guint *value)
{
  if (length < 1 || length > 2 || strspn (text, "0123456789") < length)
    return FALSE;
  *value = (guint) (text[0] - '0');
  if (length == 2)
    *value = *value * 10 + (guint) (text[1] - '0');
  return TRUE;
}

static gboolean
read_clock (const char *word, guint *minute)
{
  const char *colon = strchr (word, ':');
  guint hours, minutes;

  if (colon == NULL || strlen (colon + 1) != 2 || !read_digits (word, (gsize) (colon - word), &hours)
      || !read_digits (colon + 1, 2, &minutes) || hours > 23 || minutes > 59)
    return FALSE;
  *minute = hours * 60 + minutes;
  return TRUE;
}

/* "Sunday", or "25 December": up to the time, which is the last word. */
static gboolean
read_day (char *const *word, guint n, FpMassTime *mass)
{
  *mass = (FpMassTime) { 0 };
  if (n == 1)
    return (mass->weekday = find_name (word[0], weekdays, WEEK)) > 0;
  return n == 2 && read_digits (word[0], strlen (word[0]), &mass->day)
         && (mass->month = find_name (word[1], months, 12)) > 0;
}

/* @before: (nullable): on whose day a time alone is */
static gboolean
read_mass (const char *text, const FpMassTime *before, FpMassTime *mass)
{
  g_auto (GStrv) word = g_strsplit_set (text, " \t\n", -1);
  guint n = 0, minute;

  for (guint i = 0; word[i] != NULL; i++)
    if (*word[i] != '\0')
      {
        char *kept = word[i];
        word[i] = word[n];
        word[n++] = kept;
      }
  if (n == 0 || !read_clock (word[n - 1], &minute))
    return FALSE;
  if (n == 1 && before == NULL)
    return FALSE;
  if (n == 1)
    *mass = *before;
  else if (!read_day (word, n - 1, mass))
    return FALSE;
  mass->minute = minute;
  return fp_mass_time_check (mass, NULL);
}

gboolean
fp_mass_times_parse (const char *text, FpMassTime mass[FP_MASS_TIMES_MAX], guint *n, GError **error)
{
  g_auto (GStrv) parts = g_strsplit_set (text, ",;", -1);

  *n = 0;
  for (guint i = 0; parts[i] != NULL; i++)
    {
      FpMassTime one;

      if (*g_strstrip (parts[i]) == '\0')
        continue;
      if (!read_mass (parts[i], *n > 0 ? &mass[*n - 1] : NULL, &one))
        {
          g_set_error (error, FP_ERROR, FP_ERROR_SYNTAX, "“%s” is no day and time such as Sunday 9:30 or 25 December 0:00",
                       parts[i]);
          return FALSE;
        }
      if (*n >= FP_MASS_TIMES_MAX)
        {
          g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "more than %d Masses are told", FP_MASS_TIMES_MAX);
          return FALSE;
        }
      mass[(*n)++] = one;
    }
  return TRUE;
}
