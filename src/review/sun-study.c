/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-private.h"

#include <math.h>

FpSunStudy *
fp_sun_study_new (const FpPeople *people, GDateTime *time, double latitude, double longitude)
{
  const FpScene *scene = fp_people_scene (people);
  FpSunStudy *self = g_new0 (FpSunStudy, 1);

  self->people = fp_people_ref ((FpPeople *) people);
  self->time = g_date_time_ref (time);
  self->latitude = latitude;
  self->longitude = longitude;
  self->sun = fp_sun_at (time, latitude, longitude);
  self->towards = fp_sun_direction (&self->sun, fp_project_brief (fp_scene_project (scene))->north);
  self->light = fp_sunlight_new (people, self->towards);
  fp_people_places (people, &self->n_places);
  self->dazzled = g_new (int, self->n_places);
  for (guint i = 0; i < self->n_places; i++)
    self->dazzled[i] = fp_sunlight_in_eyes (self->light, i);
  return self;
}

void
fp_sun_study_free (FpSunStudy *self)
{
  if (self == NULL)
    return;
  fp_sunlight_free (self->light);
  fp_people_unref ((FpPeople *) self->people);
  g_date_time_unref (self->time);
  g_free (self->dazzled);
  g_free (self);
}

guint
fp_sun_study_counts (const FpSunStudy *self, int opening)
{
  guint n = 0;

  for (guint i = 0; i < self->n_places; i++)
    if (self->dazzled[i] >= 0 && (opening < 0 || self->dazzled[i] == opening))
      n++;
  return n;
}

/* --- in words ---------------------------------------------------------------------- */

static char *
degrees_text (double degrees, int decimals)
{
  g_autofree char *number = fp_number_format_rounded (degrees, decimals);

  return g_strconcat (number, "°", NULL);
}

char *
fp_sun_study_when (const FpSunStudy *self)
{
  g_autofree char *clock = g_date_time_format (self->time, "%Y-%m-%d, %H:%M at UTC%:z");
  g_autofree char *latitude = degrees_text (fabs (self->latitude), 4), *longitude = degrees_text (fabs (self->longitude), 4);

  return g_strdup_printf ("%s; %s %s, %s %s", clock, latitude, self->latitude < 0 ? "south" : "north", longitude,
                          self->longitude < 0 ? "west" : "east");
}

static char *
aside_text (double aside)
{
  g_autofree char *angle = degrees_text (fabs (aside), 0);

  if (fabs (aside) < 0.5)
    return g_strdup ("straight at liturgical east");
  if (fabs (aside) > 179.5)
    return g_strdup ("straight at liturgical west");
  return g_strdup_printf ("%s from liturgical east to the %s side", angle, aside > 0 ? "Epistle" : "Gospel");
}

char *
fp_sun_study_where (const FpSunStudy *self)
{
  const double aside = atan2 (self->towards.x, self->towards.y) * 180 / G_PI;
  g_autofree char *height = degrees_text (fp_sun_height (&self->sun), 1), *azimuth = degrees_text (self->sun.azimuth, 1);
  g_autofree char *in_church = aside_text (aside);

  return g_strdup_printf ("The sun is %s high, at azimuth %s from true north: %s", height, azimuth, in_church);
}

/* Nobody kneels at the rail while others look. */
static guint
count_places (const FpSunStudy *self)
{
  const FpPersonPlace *place = fp_people_places (self->people, NULL);
  guint n = 0;

  for (guint i = 0; i < self->n_places; i++)
    n += !place[i].at_rail;
  return n;
}

char *
fp_sun_study_result (const FpSunStudy *self)
{
  const guint n = fp_sun_study_counts (self, -1);

  if (n > 0)
    return g_strdup_printf ("In the eyes of people in %u of %u places", n, count_places (self));
  if (!(self->towards.z > 0))
    return g_strdup ("In nobody's eyes: it is below the horizon");
  if (fp_sun_height (&self->sun) > FP_SUN_HEIGHT_MOST)
    return g_strdup_printf ("In nobody's eyes: it is more than %g° high", FP_SUN_HEIGHT_MOST);
  return g_strdup ("In nobody's eyes");
}
