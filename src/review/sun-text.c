/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-text.c - the sun at a time, in words: window by window, row by row */
#include "sun-private.h"

/* --- rows ------------------------------------------------------------------------- */

static gboolean
is_same_row (const FpPersonPlace *a, const FpPersonPlace *b)
{
  return a->owner == b->owner && a->row == b->row;
}

/* "1–4": the first and the last of a run. */
static void
add_run (GString *text, guint first, guint last)
{
  const char *before = text->len > 0 ? ", " : "";

  if (first == last)
    g_string_append_printf (text, "%s%u", before, first);
  else
    g_string_append_printf (text, "%s%u%s%u", before, first, last == first + 1 ? ", " : "–", last);
}

/* The seats of the row of place @i through that opening; they lie one after another.  @end: (out): past the last of them */
static char *
seats_of_row (const FpSunStudy *self, guint i, int opening, guint *n, guint *end)
{
  const FpPersonPlace *place = fp_people_places (self->people, NULL);
  GString *text = g_string_new (NULL);
  guint first = 0, last = 0, k = i;

  for (*n = 0; k < self->n_places && is_same_row (&place[i], &place[k]); k++)
    {
      const guint number = place[k].number;
      if (self->dazzled[k] != opening)
        continue;
      if (++*n > 1 && number == last + 1)
        {
          last = number;
          continue;
        }
      if (*n > 1)
        add_run (text, first, last);
      first = last = number;
    }
  if (*n > 0)
    add_run (text, first, last);
  *end = k;
  return g_string_free (text, FALSE);
}

void
fp_sun_study_add_rows (const FpSunStudy *self, int opening, GString *text)
{
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (self->people), NULL);
  const FpPersonPlace *place = fp_people_places (self->people, NULL);
  guint n, end;

  for (guint i = 0; i < self->n_places; i = end)
    {
      g_autofree char *seats = seats_of_row (self, i, opening, &n, &end);
      const char *what = place[i].postures & (1u << FP_POSTURE_SITTING) ? "seat" : "place";
      if (n > 0)
        g_string_append_printf (text, "    %s: row %u, %s%s %s\n", fp_item_name (placed[place[i].owner].item), place[i].row,
                                what, n == 1 ? "" : "s", seats);
    }
}

/* --- the whole ----------------------------------------------------------------------- */

static void
add_windows (const FpSunStudy *self, GString *text)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (self->people), &n);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *who = fp_sun_study_through (self, (int) i);
      if (who == NULL)
        continue;
      g_string_append_printf (text, "\n  Through %s (%s): %s\n", fp_item_name (placed[i].item), fp_item_id (placed[i].item),
                              who);
      fp_sun_study_add_rows (self, (int) i, text);
    }
}

static void
add_study (const FpSunStudy *self, GString *text)
{
  g_autofree char *when = fp_sun_study_when (self), *where = fp_sun_study_where (self);
  g_autofree char *result = fp_sun_study_result (self), *spared = fp_sun_study_spared (self);

  g_string_append_printf (text, "Sun on %s\n%s.\n%s.\n%s%s", when, where, result, spared, *spared != '\0' ? ".\n" : "");
  add_windows (self, text);
  g_string_append_c (text, '\n');
}

char *
fp_sun_studies_text (FpSunStudy *const *study, guint n)
{
  const FpScene *scene = fp_people_scene (study[0]->people);
  const FpProject *project = fp_scene_project (scene);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (scene));
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%s: %s\n", fp_project_brief (project)->title, fp_alternative_name (alternative));
  for (guint i = 0; i < n; i++)
    add_study (study[i], text);
  g_string_append_printf (text,
                          "Counted is who sits, or stands where there are no seats, and looks towards the altar, and the\n"
                          "ministers, who look before them, while the sun is at most %g° aside of it and %g° high (design\n"
                          "judgement), past the building and all that is set up in it; doors are shut. Roofs, trees, hills,\n"
                          "other buildings and coloured glass are not known.\n"
                          "Position: equations of the NOAA solar calculator. North is true north, not magnetic.\n",
                          FP_SUN_ASIDE_MOST, FP_SUN_HEIGHT_MOST);
  return g_string_free (text, FALSE);
}
