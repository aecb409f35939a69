/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "capacities-private.h"

#include <math.h>

struct _FpCapacities
{
  FpPeople         *people;
  FpCapacitySection section[FP_N_CAPACITIES];
};

const char fp_capacities_caution[] =
  "A count is not comfort, and approves nothing: local code, the fire authority and a licensed architect say how many "
  "may be in the room, by which ways they leave, and where places for wheelchairs are.";

FpCapacityRow *
fp_capacity_add (FpCapacitySection *to, char *what, char *found, char *asked, char *note)
{
  FpCapacityRow row = { .cell = { what, found, asked, note }, .found = NAN, .asked = NAN, .unit = "" };

  for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
    row.cell[k] = row.cell[k] != NULL ? row.cell[k] : g_strdup ("");
  g_array_append_val (to->rows, row);
  return &g_array_index (to->rows, FpCapacityRow, to->rows->len - 1);
}

void
fp_capacity_data (FpCapacityRow *row, const char *unit, double found, double asked)
{
  row->unit = unit;
  row->found = found;
  row->asked = asked;
}

const FpItem *
fp_capacity_item (const FpCapacityAsked *of, guint placed)
{
  guint n;

  return fp_scene_placed (of->scene, &n)[placed].item;
}

static void
clear_row (gpointer data)
{
  FpCapacityRow *row = data;

  for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
    g_free (row->cell[k]);
}

static const struct
{
  const char *id, *title, *head[FP_N_CAPACITY_CELLS];
  void      (*fill) (const FpCapacityAsked *of, FpCapacitySection *to);
} sections[FP_N_CAPACITIES] = {
  [FP_CAPACITY_PLACES] = { "places", "Places", { "Block", "As drawn", "By the printed rule", "How" }, fp_capacity_fill_places },
  [FP_CAPACITY_WHEELCHAIRS] = { "wheelchairs", "Places for wheelchairs",
                                { "Place", "There are", "By the printed table", "Companion, and what is seen" },
                                fp_capacity_fill_wheelchairs },
  [FP_CAPACITY_COMMUNION] = { "communion", "Communion", { "How they come", "Time", "", "Reckoned with" },
                              fp_capacity_fill_communion },
  [FP_CAPACITY_WAYS_OUT] = { "ways-out", "Ways out", { "Way", "Found", "Asked", "By what" }, fp_capacity_fill_ways_out },
};

FpCapacities *
fp_capacities_new (const FpPeople *people, const FpSight *sight)
{
  FpCapacities *self = g_new0 (FpCapacities, 1);
  const FpScene *scene = fp_people_scene (people);
  const FpProject *project = fp_scene_project (scene);
  g_autoptr (GArray) lines = fp_capacity (people);
  const FpCapacityAsked of = { people, scene, project, fp_project_reckoning (project), sight,
                               fp_project_brief (project)->units, lines };

  self->people = fp_people_ref (people);
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    {
      FpCapacitySection *section = &self->section[i];

      *section = (FpCapacitySection) { .of = (FpCapacityOf) i, .id = sections[i].id, .title = sections[i].title };
      for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
        section->head[k] = sections[i].head[k];
      section->rows = g_array_new (FALSE, FALSE, sizeof (FpCapacityRow));
      g_array_set_clear_func (section->rows, clear_row);
      sections[i].fill (&of, section);
    }
  return self;
}

void
fp_capacities_free (FpCapacities *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    {
      g_array_unref (self->section[i].rows);
      g_free (self->section[i].closing);
    }
  fp_people_unref (self->people);
  g_free (self);
}

const FpScene *
fp_capacities_scene (const FpCapacities *self)
{
  return fp_people_scene (self->people);
}

const FpCapacitySection *
fp_capacities_section (const FpCapacities *self, FpCapacityOf of)
{
  return &self->section[of];
}
