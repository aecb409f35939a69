/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-times.h"

#include <string.h>

/* "2026-06-21" alone. */
static gboolean
read_day (const char *at, int *year, guint *month, guint *day)
{
  g_autofree char *noon = NULL;
  g_autoptr (GDateTime) time = NULL;

  if (at == NULL || strlen (at) != strlen ("2026-06-21") || strchr (at, 'T') != NULL)
    return FALSE;
  noon = g_strconcat (at, "T12:00Z", NULL);
  time = fp_sun_time_parse (noon, NULL, NULL);
  if (time == NULL)
    return FALSE;
  *year = g_date_time_get_year (time);
  *month = (guint) g_date_time_get_month (time);
  *day = (guint) g_date_time_get_day_of_month (time);
  return TRUE;
}

gboolean
fp_sun_times_check (const char *at, GError **error)
{
  const FpSite anywhere = { TRUE, 0, 0, "UTC" };
  int year;
  guint month, day;
  g_autoptr (GDateTime) time = NULL;

  if (at == NULL || read_day (at, &year, &month, &day))
    return TRUE;
  time = fp_sun_time_parse (at, &anywhere, error);
  return time != NULL;
}

/* --- Masses ----------------------------------------------------------------------- */

static void
unref_time (gpointer time)
{
  g_date_time_unref (time);
}

static gboolean
has_masses (const FpBrief *brief, GError **error)
{
  if (brief->site.known && brief->n_masses > 0)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "the brief tells no %s, and no time is given",
               brief->n_masses == 0 ? "Mass times" : "time zone, by which Mass times are meant");
  return FALSE;
}

static gboolean
add_mass (GPtrArray *times, const FpBrief *brief, guint mass, int year, guint month, guint day, GError **error)
{
  GDateTime *time = fp_sun_mass_time (brief, mass, year, month, day, error);

  if (time == NULL)
    return FALSE;
  g_ptr_array_add (times, time);
  return TRUE;
}

/* What is on one day of the year has the sun of that day alone. */
static gboolean
add_through_year (GPtrArray *times, const FpBrief *brief, guint mass, int year, GError **error)
{
  const int n = brief->mass[mass].weekday > 0 ? FP_N_SUN_DAYS : 1;

  for (int i = 0; i < n; i++)
    {
      guint month, day;
      fp_sun_day ((FpSunDay) i, year, &month, &day);
      if (!add_mass (times, brief, mass, year, month, day, error))
        return FALSE;
    }
  return TRUE;
}

static int
this_year (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_get_year (now);
}

static gboolean
add_masses (GPtrArray *times, const FpBrief *brief, const char *at, GError **error)
{
  int year = this_year ();
  guint month, day;
  const gboolean one_day = read_day (at, &year, &month, &day);

  if (!has_masses (brief, error))
    return FALSE;
  for (guint i = 0; i < brief->n_masses; i++)
    if (!(one_day ? add_mass (times, brief, i, year, month, day, error) : add_through_year (times, brief, i, year, error)))
      return FALSE;
  return TRUE;
}

GPtrArray *
fp_sun_times_of (const FpBrief *brief, const char *at, GError **error)
{
  g_autoptr (GPtrArray) times = g_ptr_array_new_with_free_func (unref_time);
  GDateTime *time;

  if (at == NULL || strchr (at, 'T') == NULL)
    return add_masses (times, brief, at, error) ? g_steal_pointer (&times) : NULL;
  time = fp_sun_time_parse (at, &brief->site, error);
  if (time == NULL)
    return NULL;
  g_ptr_array_add (times, time);
  return g_steal_pointer (&times);
}

/* --- drawn ------------------------------------------------------------------------ */

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

GPtrArray *
fp_sun_sheets (const FpScene *scene, const GPtrArray *times, double latitude, double longitude, const FpSheetSpec *spec,
               GError **error)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func (unref_drawing);
  FpSheetSpec numbered = *spec;

  numbered.pages = times->len;
  for (guint i = 0; i < times->len; i++)
    {
      g_autoptr (FpSunStudy) study = fp_sun_study_new (people, times->pdata[i], latitude, longitude);
      FpDrawing *page;
      numbered.page = i + 1;
      page = fp_sun_study_sheet (study, &numbered, NULL, error);
      if (page == NULL)
        return NULL;
      g_ptr_array_add (pages, page);
    }
  return g_steal_pointer (&pages);
}
