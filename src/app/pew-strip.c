/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pew-strip.h"

#define WIDTH 61.0 /* mm of paper, which is 230 px */

static void
look (FpPewSeenFrom *from, const FpSight *sight, FpPewTypical one)
{
  const FpPeople *people = fp_sight_people (sight);
  FpPewSpec spec = { .moment = FP_MOMENT_OFFERTORY };

  if (!fp_pew_typical_spec (people, one, &spec))
    return;
  g_autofree char *eye = fp_pew_eye_text (people, &spec), *seen = fp_pew_seen_text (sight, &spec);
  from->picture = fp_pew_drawing_new (people, &spec, WIDTH);
  from->told = *seen != '\0' ? g_strdup_printf ("%s. Seen: %s", eye, seen) : g_steal_pointer (&eye);
}

FpPewStrip *
fp_pew_strip_new (const FpProject *project, GCancellable *cancel)
{
  FpPewStrip *self = g_new0 (FpPewStrip, 1);

  self->n = fp_project_n_alternatives (project);
  self->from = g_new0 (FpPewSeenFrom, self->n * FP_N_PEW_TYPICAL);
  for (guint i = 0; i < self->n && !g_cancellable_is_cancelled (cancel); i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, i);
      g_autoptr (FpPeople) people = fp_people_new (scene);
      g_autoptr (FpSight) sight = fp_sight_new (people, cancel);
      for (guint k = 0; k < FP_N_PEW_TYPICAL && sight != NULL; k++)
        look (&self->from[i * FP_N_PEW_TYPICAL + k], sight, (FpPewTypical) k);
    }
  if (!g_cancellable_is_cancelled (cancel))
    return self;
  fp_pew_strip_free (self);
  return NULL;
}

void
fp_pew_strip_free (FpPewStrip *self)
{
  for (guint i = 0; i < self->n * FP_N_PEW_TYPICAL; i++)
    {
      fp_drawing_unref (self->from[i].picture);
      g_free (self->from[i].told);
    }
  g_free (self->from);
  g_free (self);
}

const FpPewSeenFrom *
fp_pew_strip_get (const FpPewStrip *self, guint alternative, FpPewTypical from)
{
  return &self->from[alternative * FP_N_PEW_TYPICAL + from];
}

gboolean
fp_pew_strip_has (const FpPewStrip *self, FpPewTypical from)
{
  for (guint i = 0; i < self->n; i++)
    if (fp_pew_strip_get (self, i, from)->picture != NULL)
      return TRUE;
  return FALSE;
}

static void
unref_sight (gpointer sight)
{
  fp_sight_unref (sight);
}

gboolean
fp_pew_strip_write (const FpProject *project, FpInkChoice ink, const char *path, GError **error)
{
  const FpBrief *brief = fp_project_brief (project);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  const FpSheetSpec spec = {
    .paper = brief->units == FP_UNITS_IMPERIAL ? FP_PAPER_TABLOID : FP_PAPER_A3, .landscape = TRUE, .ink = ink, .date = date,
  };
  g_autoptr (GPtrArray) sights = g_ptr_array_new_with_free_func (unref_sight), pages = NULL;

  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, i);
      g_autoptr (FpPeople) people = fp_people_new (scene);
      g_ptr_array_add (sights, fp_sight_new (people, NULL));
    }
  pages = fp_pew_strip_sheets ((FpSight *const *) sights->pdata, sights->len, &spec);
  return fp_drawing_write_pdf ((FpDrawing *const *) pages->pdata, pages->len, brief->title, brief->author, path, error);
}
