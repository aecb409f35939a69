/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram.c - what the diagram of levels shows */
#include "level-diagram-private.h"

static void
find_altar (FpLevelDiagram *self)
{
  const int at = fp_scene_celebrated_altar (self->scene);

  if (at >= 0)
    self->altar = &fp_scene_placed (self->scene, NULL)[at];
}

static void
add_to_extent (FpLevelDiagram *self, double y, double z)
{
  fp_box_add_point (&self->extent, (FpPoint) { y, z });
}

static void
measure_extent (FpLevelDiagram *self)
{
  double level;

  self->extent = FP_BOX_EMPTY;
  for (guint i = 0; i < self->ground->len; i++)
    {
      const FpGroundPart *one = &g_array_index (self->ground, FpGroundPart, i);

      add_to_extent (self, one->y0, one->z0);
      add_to_extent (self, one->y1, one->z1);
    }
  for (guint i = 0; i < self->rows->len; i++)
    {
      const FpRowLevel *row = &g_array_index (self->rows, FpRowLevel, i);

      add_to_extent (self, row->west, row->at.z);
      add_to_extent (self, row->east, MAX (row->eye, row->high));
    }
  if (self->altar != NULL)
    {
      add_to_extent (self, self->altar->plan.y0, self->altar->level);
      add_to_extent (self, self->altar->plan.y1, fp_level_diagram_mensa (self));
    }
  if (fp_level_diagram_wanted (self, &level) && !fp_box_is_empty (&self->extent))
    add_to_extent (self, self->extent.x0, level);
}

FpLevelDiagram *
fp_level_diagram_new (const FpPeople *people, const FpLevelAims *aims)
{
  FpLevelDiagram *self = g_new0 (FpLevelDiagram, 1);

  self->people = fp_people_ref (people);
  self->scene = fp_people_scene (people);
  self->aims = *aims;
  self->units = fp_project_brief (fp_scene_project (self->scene))->units;
  self->levels = fp_levels (people);
  self->rows = fp_row_levels (people, &self->levels);
  self->ground = fp_ground_along_nave (self->scene, self->rows);
  find_altar (self);
  measure_extent (self);
  return self;
}

void
fp_level_diagram_free (FpLevelDiagram *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->rows);
  g_array_unref (self->ground);
  fp_people_unref (self->people);
  g_free (self);
}

double
fp_level_diagram_mensa (const FpLevelDiagram *self)
{
  return self->altar->level + self->altar->extent.top;
}

gboolean
fp_level_diagram_wanted (const FpLevelDiagram *self, double *level)
{
  if (!self->levels.has_altar || !self->levels.has_people)
    return FALSE;
  *level = fp_levels_footpace_wanted (&self->levels, self->aims.margin);
  return TRUE;
}

char *
fp_level_diagram_name (const FpLevelDiagram *self, guint owner)
{
  const FpItem *item = fp_scene_placed (self->scene, NULL)[owner].item;

  return g_strdup (*fp_item_name (item) != '\0' ? fp_item_name (item) : fp_item_kind (item)->label);
}
