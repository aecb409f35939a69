/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-year.c - in whose eyes the sun is at a Mass, week by week: between equinox and solstice it may be worse than at either */
#include "footpace/review.h"

typedef struct
{
  guint days, dazzled; /* on how many it was looked, and is in somebody's eyes */
  guint most;          /* places and ministers, on the worst of them           */
  GDate worst;
} Year;

static guint
count_dazzled (const FpSunlight *light, guint n_places)
{
  guint dazzled = 0;

  for (guint i = 0; i < n_places; i++)
    dazzled += fp_sunlight_in_eyes (light, i) >= 0;
  for (int i = 0; i < FP_N_OFFICES; i++)
    dazzled += fp_sunlight_in_minister (light, (FpOffice) i) >= 0;
  return dazzled;
}

/* FALSE where there is no such time. */
static gboolean
turn_to (FpSunlight *light, const FpBrief *brief, const GDate *day, guint minute)
{
  g_autoptr (GDateTime) time = fp_site_time (&brief->site, g_date_get_year (day), g_date_get_month (day), g_date_get_day (day),
                                             minute, NULL);
  FpSun sun;

  if (time == NULL)
    return FALSE;
  sun = fp_sun_at (time, brief->site.latitude, brief->site.longitude);
  fp_sunlight_turn (light, fp_sun_direction (&sun, brief->north));
  return TRUE;
}

static void
add_day (Year *year, const GDate *day, guint dazzled)
{
  year->days++;
  year->dazzled += dazzled > 0;
  if (dazzled <= year->most)
    return;
  year->most = dazzled;
  year->worst = *day;
}

static gboolean
look_through (Year *self, const FpPeople *people, const FpMassTime *mass, int year, GCancellable *cancel)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (fp_people_scene (people)));
  g_autoptr (FpSunlight) light = fp_sunlight_new (people, (FpVec3) { 0, 0, -1 });
  GDate day;
  guint n;

  fp_people_places (people, &n);
  g_date_set_dmy (&day, 1, G_DATE_JANUARY, (GDateYear) year);
  while (g_date_get_weekday (&day) != (GDateWeekday) mass->weekday)
    g_date_add_days (&day, 1);
  for (; g_date_get_year (&day) == (GDateYear) year; g_date_add_days (&day, 7))
    {
      if (g_cancellable_is_cancelled (cancel) || !turn_to (light, brief, &day, mass->minute))
        return FALSE;
      add_day (self, &day, count_dazzled (light, n));
    }
  return TRUE;
}

char *
fp_sun_year_text (const FpPeople *people, guint mass, int year, GCancellable *cancel, GDate *worst)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (fp_people_scene (people)));
  g_autofree char *name = NULL;
  Year seen = { 0 };

  g_date_clear (&seen.worst, 1);
  if (worst != NULL)
    g_date_clear (worst, 1);
  if (!brief->site.known || mass >= brief->n_masses || brief->mass[mass].weekday == 0 || year < FP_SUN_YEAR_FIRST
      || year > FP_SUN_YEAR_LAST || !look_through (&seen, people, &brief->mass[mass], year, cancel))
    return NULL;
  name = fp_mass_time_text (&brief->mass[mass]);
  if (worst != NULL)
    *worst = seen.worst;
  if (seen.dazzled == 0)
    return g_strdup_printf ("%s: in nobody's eyes on any of %u days of %d", name, seen.days, year);
  return g_strdup_printf ("%s: in somebody's eyes on %u of %u days of %d, in most on %04d-%02d-%02d (%u)", name, seen.dazzled,
                          seen.days, year, year, (int) g_date_get_month (&seen.worst), (int) g_date_get_day (&seen.worst),
                          seen.most);
}
