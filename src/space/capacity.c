/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/capacity.h"

#include <math.h>

#define BENCH (18 * FP_MM_PER_INCH)

const char *
fp_places_label (FpPlacesSort sort)
{
  static const char *const labels[FP_N_PLACES] = { "Seats", "Places for wheelchairs", "Room to stand", "Places at the rail" };

  return (guint) sort < FP_N_PLACES ? labels[sort] : "";
}

static FpPlacesSort
sort_of (const FpPersonPlace *place, FpRole role)
{
  if (place->at_rail)
    return FP_PLACES_KNEELING;
  if (role == FP_ROLE_WHEELCHAIR)
    return FP_PLACES_WHEELCHAIR;
  return role == FP_ROLE_STANDING_ROOM ? FP_PLACES_STANDING : FP_PLACES_SEATED;
}

static double
param_of (const FpPlaced *placed, const char *id)
{
  const int i = fp_kind_param_index (fp_item_kind (placed->item), id);

  return i >= 0 ? placed->form.param[i] : NAN;
}

static gboolean
is_straight_bench (const FpPlaced *placed)
{
  return fp_item_kind (placed->item)->role == FP_ROLE_PEWS && !(param_of (placed, "radius") > 0);
}

static guint
by_rule (const FpPlaced *placed)
{
  return (guint) floor (param_of (placed, "length") / BENCH + 1e-9) * (guint) param_of (placed, "rows");
}

GArray *
fp_capacity (const FpPeople *people)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (FpCapacityLine));
  guint n, n_placed;
  const FpPersonPlace *place = fp_people_places (people, &n);
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (people), &n_placed);

  for (guint i = 0; i < n;)
    {
      FpCapacityLine line = { .owner = place[i].owner, .gallery = place[i].gallery };

      line.sort = sort_of (&place[i], fp_item_kind (placed[line.owner].item)->role);
      for (; i < n && place[i].owner == line.owner; i++)
        line.places++;
      line.ruled = is_straight_bench (&placed[line.owner]);
      line.by_rule = line.ruled ? by_rule (&placed[line.owner]) : line.places;
      g_array_append_val (lines, line);
    }
  return lines;
}

guint
fp_occupant_load (const FpPeople *people)
{
  g_autoptr (GArray) lines = fp_capacity (people);
  guint load = 0;

  for (guint i = 0; i < lines->len; i++)
    {
      const FpCapacityLine *line = &g_array_index (lines, FpCapacityLine, i);

      load += line->sort != FP_PLACES_KNEELING ? line->by_rule : 0;
    }
  return load;
}
