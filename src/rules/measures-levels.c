/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The people below the altar: floor against floor, as levels.h counts it. */
#include "measuring.h"

#include <math.h>

static gboolean
comparable (const FpMeasuring *of)
{
  return of->levels.has_altar && of->levels.has_people;
}

static gboolean
not_below (const FpMeasuring *of, guint i, gpointer data)
{
  (void) data;
  return fp_measuring_in_church (of, i) && !fp_levels_place_below (&of->levels, fp_measuring_place (of, i));
}

static gboolean
above_sanctuary (const FpMeasuring *of, guint i, gpointer data)
{
  (void) data;
  return fp_measuring_in_church (of, i) && fp_measuring_place (of, i)->at.z > of->levels.sanctuary + 1e-6;
}

static gboolean
in_gallery (const FpMeasuring *of, guint i, gpointer data)
{
  (void) data;
  return fp_measuring_place (of, i)->gallery;
}

/* Within the floor or on its edge, at its level. */
static gboolean
is_on_floor (const FpFloor *floor, FpVec3 at)
{
  const FpPoint p = { at.x, at.y };
  gboolean near = fp_outline_contains (floor->outline, floor->n_outline, p);

  for (guint i = 0; i < floor->n_outline && !near; i++)
    near = fp_segment_distance (floor->outline[i], floor->outline[(i + 1) % floor->n_outline], p) < 1;
  return near && fabs (floor->z + floor->gx * at.x + floor->gy * at.y - at.z) < 1;
}

/* The people's floor at that point; NULL. */
static char *
floor_named (const FpMeasuring *of, FpVec3 at)
{
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE && is_on_floor (&floor[i], at))
      return fp_measuring_name (of, (int) floor[i].owner);
  return NULL;
}

/* "Nave floor; Floor of the aisle": the people's floors that somewhere are not below the altar's; NULL. */
static char *
floors_not_below (const FpMeasuring *of)
{
  GString *out = g_string_new (NULL);
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      double highest = -G_MAXDOUBLE;
      g_autofree char *name = fp_measuring_name (of, (int) floor[i].owner);

      for (guint c = 0; floor[i].use == FP_FLOOR_PEOPLE && c < floor[i].n_outline; c++)
        highest = MAX (highest, floor[i].z + floor[i].gx * floor[i].outline[c].x + floor[i].gy * floor[i].outline[c].y);
      if (!(highest < of->levels.footpace - 1e-6) && floor[i].use == FP_FLOOR_PEOPLE)
        g_string_append_printf (out, "%s%s", out->len ? "; " : "", name);
    }
  return g_string_free (out, out->len == 0);
}

void
fp_take_margin_below (const FpMeasuring *of, GArray *out)
{
  FpMeasured *measured;

  if (!comparable (of))
    return;
  measured = fp_measured_add_at (out, of->levels.margin, -1, of->levels.highest_at);
  if (of->levels.margin <= 0)
    {
      FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
      g_autofree char *length = fp_length_format_unit (-of->levels.margin, units);
      g_autofree char *highest = fp_level_format (of->levels.highest, units);
      g_autofree char *footpace = fp_level_format (of->levels.footpace, units);
      g_autofree char *name = floor_named (of, of->levels.highest_at);

      measured->text = of->levels.margin < 0 ? g_strdup_printf ("%s above", length) : g_strdup ("level with it");
      measured->detail = g_strdup_printf ("%s, at its highest %s; floor of the altar %s",
                                          name ? name : "floor of the people", highest, footpace);
    }
}

void
fp_take_places_not_below (const FpMeasuring *of, GArray *out)
{
  FpMeasured *measured;

  if (!comparable (of) || of->levels.places == 0)
    return;
  measured = fp_measured_add (out, of->levels.not_below);
  if (of->levels.not_below > 0)
    {
      measured->at = of->levels.worst_at;
      measured->has_at = TRUE;
    }
  measured->text = fp_places_of (of->levels.not_below, of->levels.places, "", "");
  measured->detail = fp_measuring_where (of, not_below, NULL);
}

void
fp_take_area_not_below (const FpMeasuring *of, GArray *out)
{
  FpMeasured *measured;

  if (!comparable (of) || !(of->levels.area > 0))
    return;
  measured = fp_measured_add (out, of->levels.area_not_below);
  if (of->levels.area_not_below > 0)
    {
      measured->at = of->levels.worst_at;
      measured->has_at = TRUE;
      measured->detail = floors_not_below (of);
    }
}

void
fp_take_places_above_sanctuary (const FpMeasuring *of, GArray *out)
{
  FpMeasured *measured;

  if (!comparable (of) || of->levels.places == 0)
    return;
  measured = fp_measured_add (out, of->levels.not_below_sanctuary);
  measured->text = fp_places_of (of->levels.not_below_sanctuary, of->levels.places, "", "");
  measured->detail = fp_measuring_where (of, above_sanctuary, NULL);
}

void
fp_take_gallery_places (const FpMeasuring *of, GArray *out)
{
  FpMeasured *measured;
  FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
  g_autofree char *level = NULL, *where = NULL;

  if (!of->levels.has_altar || of->levels.gallery_places == 0)
    return;
  level = fp_level_format (of->levels.gallery, units);
  where = fp_measuring_where (of, in_gallery, NULL);
  measured = fp_measured_add (out, of->levels.gallery_places);
  measured->detail = g_strdup_printf ("%s, at %s", where ? where : "gallery", level);
}

void
fp_take_floor_fall (const FpMeasuring *of, GArray *out)
{
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE)
      {
        FpPoint middle = fp_outline_centroid (floor[i].outline, floor[i].n_outline);
        double z = floor[i].z + floor[i].gx * middle.x + floor[i].gy * middle.y;
        double fall = hypot (floor[i].gx, floor[i].gy);
        FpMeasured *measured
          = fp_measured_add_at (out, fall, (int) floor[i].owner, (FpVec3) { middle.x, middle.y, z });

        measured->detail = fp_measuring_name (of, (int) floor[i].owner);
        if (fall > 0)
          {
            g_autofree char *run = fp_number_format_rounded (1 / fall, 1);

            measured->text = g_strdup_printf ("1:%s", run);
          }
      }
}

/* --- the platform by the depth of seating -------------------------------- */

#define TABLE_STEP 150.0 /* as the table's source prints it beside 6 in */

/* Rows that sit one behind another on the floor of the church: blocks that overlap across are added up. */
static double
rows_deep (const FpMeasuring *of)
{
  double deepest = 0;
  guint n = 0;
  const FpPlaced *placed = fp_scene_placed (of->scene, &n);
  g_autofree double *chain = g_new0 (double, n + 1);

  /* Longest chain of blocks, each wholly behind the next; a few blocks at most, so the plain way will do. */
  for (guint pass = 0; pass < n; pass++)
    {
      gboolean changed = FALSE;

      for (guint i = 0; i < n; i++)
        {
          double best;

          if (placed[i].ghost || fp_placed_role (&placed[i]) != FP_ROLE_PEWS || placed[i].support >= 0)
            continue;
          best = fp_placed_param (&placed[i], "rows", 0);
          for (guint j = 0; j < n; j++)
            if (j != i && chain[j] > 0 && placed[j].plan.y0 >= placed[i].plan.y1 - 1
                && placed[j].plan.x0 < placed[i].plan.x1 && placed[i].plan.x0 < placed[j].plan.x1)
              best = MAX (best, chain[j] + fp_placed_param (&placed[i], "rows", 0));
          if (best > chain[i])
            {
              chain[i] = best;
              changed = TRUE;
            }
          deepest = MAX (deepest, chain[i]);
        }
      if (!changed)
        break;
    }
  return deepest;
}

/* UFC 4-730-02, 3-2g: one step for up to six rows, two for up to ten, three for up to thirteen; 0: not in the table. */
static double
steps_for (double rows)
{
  return rows <= 6 ? 1 : rows <= 10 ? 2 : rows <= 13 ? 3 : 0;
}

/* Level of the floor before the row nearest the altar. */
static double
front_row_level (const FpMeasuring *of)
{
  guint n = 0, front = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  gboolean found = FALSE;

  for (guint i = 0; i < n; i++)
    if (fp_measuring_in_church (of, i) && (!found || place[i].at.y > place[front].at.y))
      {
        front = i;
        found = TRUE;
      }
  return found ? place[front].at.z : 0;
}

void
fp_take_steps_lacking_for_rows (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  double rows = rows_deep (of), wanted = steps_for (rows), have;
  FpMeasured *measured;

  if (!altar || rows < 1)
    return;
  if (!(wanted > 0))
    {
      fp_measured_add_nothing (out, "more than thirteen rows: outside the table");
      return;
    }
  have = MAX (0, floor ((altar->level - front_row_level (of) + 1) / TABLE_STEP));
  measured = fp_measured_add_at (out, MAX (0, wanted - have), -1, fp_placed_middle (altar, 0));
  measured->text = g_strdup_printf ("as high as %u step%s", (guint) have, have > 0 && have < 2 ? "" : "s");
  measured->detail = g_strdup_printf ("%u wanted for %u row%s of seats one behind another", (guint) wanted,
                                      (guint) rows, rows < 2 ? "" : "s");
}
