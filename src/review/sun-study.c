/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-private.h"

#include "footpace/sun-marks.h"

#include <math.h>

static void
look_at_ministers (FpSunStudy *self)
{
  for (int i = 0; i < FP_N_OFFICES; i++)
    {
      FpVec3 eye;
      double facing;
      self->serves[i] = fp_people_minister_eye (self->people, (FpOffice) i, &eye, &facing);
      self->minister[i] = fp_sunlight_in_minister (self->light, (FpOffice) i);
    }
}

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
  look_at_ministers (self);
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

int
fp_sun_study_place (const FpSunStudy *self, guint place)
{
  return place < self->n_places ? self->dazzled[place] : -1;
}

GArray *
fp_sun_study_patches (const FpSunStudy *self)
{
  return fp_sunlight_patches (self->light);
}

void
fp_sun_study_draw_eyes (const FpSunStudy *self, FpDrawing *drawing, const FpViewLayout *plan)
{
  const FpPersonPlace *place = fp_people_places (self->people, NULL);

  for (guint i = 0; i < self->n_places; i++)
    if (self->dazzled[i] >= 0)
      fp_drawing_add_sun_eye (drawing, place[i].at, FALSE, plan);
  for (int i = 0; i < FP_N_OFFICES; i++)
    {
      FpVec3 eye;
      double facing;
      if (self->minister[i] >= 0 && fp_people_minister_eye (self->people, (FpOffice) i, &eye, &facing))
        fp_drawing_add_sun_eye (drawing, eye, TRUE, plan);
    }
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

static const char *
faced (const FpSunStudy *self)
{
  const FpScene *scene = fp_people_scene (self->people);

  return fp_project_facing (fp_scene_project (scene), fp_scene_alternative (scene)) == FP_FACING_PEOPLE ? "the people"
                                                                                                        : "liturgical east";
}

char *
fp_sun_study_minister_name (const FpSunStudy *self, FpOffice office)
{
  if (office != FP_OFFICE_AT_ALTAR)
    return g_strdup (fp_office_label (office));
  return g_strdup_printf ("%s, who faces %s", fp_office_label (office), faced (self));
}

/* Those in whose eyes it is, or is not: "the celebrant at the chair, and of the reader at the ambo". NULL: nobody. */
static char *
ministers (const FpSunStudy *self, gboolean dazzled)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (int i = 0; i < FP_N_OFFICES; i++)
    if (self->serves[i] && (self->minister[i] >= 0) == dazzled)
      g_ptr_array_add (names, fp_sun_study_minister_name (self, (FpOffice) i));
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return g_strjoinv (dazzled ? ", and of " : ", nor of ", (char **) names->pdata);
}

char *
fp_sun_study_result (const FpSunStudy *self)
{
  const guint n = fp_sun_study_counts (self, -1);
  g_autofree char *who = ministers (self, TRUE);

  if (n > 0)
    return g_strdup_printf ("In the eyes of people in %u of %u places%s%s", n, count_places (self), who != NULL ? ", and of " : "",
                            who != NULL ? who : "");
  if (who != NULL)
    return g_strdup_printf ("In the eyes of %s; of the people in nobody's", who);
  if (!(self->towards.z > 0))
    return g_strdup ("In nobody's eyes: it is below the horizon");
  if (fp_sun_height (&self->sun) > FP_SUN_HEIGHT_MOST)
    return g_strdup_printf ("In nobody's eyes: it is more than %g° high", FP_SUN_HEIGHT_MOST);
  return g_strdup ("In nobody's eyes");
}

char *
fp_sun_study_spared (const FpSunStudy *self)
{
  const gboolean low = self->towards.z > 0 && fp_sun_height (&self->sun) <= FP_SUN_HEIGHT_MOST;
  g_autofree char *who = low ? ministers (self, FALSE) : NULL;

  return who != NULL ? g_strdup_printf ("Not in the eyes of %s", who) : g_strdup ("");
}

char *
fp_sun_study_through (const FpSunStudy *self, int opening)
{
  const guint n = fp_sun_study_counts (self, opening);
  GString *text = g_string_new (NULL);

  if (n > 0)
    g_string_append_printf (text, "%u %s", n, n == 1 ? "place" : "places");
  for (int i = 0; i < FP_N_OFFICES; i++)
    if (self->minister[i] == opening)
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", fp_office_label ((FpOffice) i));
  return g_string_free (text, text->len == 0);
}

char *
fp_sun_study_sentence (const FpSunStudy *self)
{
  g_autofree char *when = g_date_time_format (self->time, "%Y-%m-%d, %H:%M (UTC%:z)");
  g_autofree char *where = fp_sun_study_where (self), *result = fp_sun_study_result (self);
  /* Days of the week in our own words: those of the library follow the locale. */
  const char *weekday = fp_weekday_label ((guint) g_date_time_get_day_of_week (self->time));

  return g_strdup_printf ("%s %s. %s. %s.", weekday, when, where, result);
}

GPtrArray *
fp_sun_study_windows (const FpSunStudy *self, gboolean rows)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (self->people), &n);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *who = fp_sun_study_through (self, (int) i);
      GString *line;
      if (who == NULL)
        continue;
      line = g_string_new (NULL);
      g_string_append_printf (line, "Through %s: %s%s", fp_item_name (placed[i].item), who, rows ? "\n" : "");
      if (rows)
        fp_sun_study_add_rows (self, (int) i, line);
      g_ptr_array_add (lines, g_strchomp (g_string_free (line, FALSE)));
    }
  return lines;
}
