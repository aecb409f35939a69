/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The people below the altar: floor against floor, as levels.h counts it. */
#include "measure-evidence.h"

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

/* Upright over the highest floor, and level from there to the altar. */
void
fp_show_margin_below (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpVec3 foot = one->at, top = { foot.x, foot.y, of->levels.footpace };
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  fp_evidence_add_length (out, foot, top, one->value < 0 ? -1 : 1);
  if (altar)
    {
      const FpVec3 front = fp_placed_point (altar, (FpVec3) { 0, altar->extent.plan.y0, 0 });
      fp_evidence_add_line (out, top, (FpVec3) { front.x, front.y, of->levels.footpace });
    }
}

void
fp_show_places_not_below (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_places (out, of, not_below, NULL);
}

void
fp_show_places_above_sanctuary (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_places (out, of, above_sanctuary, NULL);
}

void
fp_show_gallery_places (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_places (out, of, in_gallery, NULL);
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

static double
level_of (const FpFloor *floor, FpPoint p)
{
  return floor->z + floor->gx * p.x + floor->gy * p.y;
}

/* What of it is at least so high. */
static void
add_floor_from (FpEvidence *out, const FpFloor *floor, double level)
{
  g_autoptr (GArray) pt = g_array_new (FALSE, FALSE, sizeof (FpVec3));

  for (guint i = 0; i < floor->n_outline; i++)
    {
      const FpPoint a = floor->outline[i], b = floor->outline[(i + 1) % floor->n_outline];
      const double over_a = level_of (floor, a) - level, over_b = level_of (floor, b) - level, t = over_a / (over_a - over_b);
      const FpVec3 corner = { a.x, a.y, level_of (floor, a) }, cut = { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), level };

      if (over_a >= 0)
        g_array_append_val (pt, corner);
      if ((over_a >= 0) != (over_b >= 0))
        g_array_append_val (pt, cut);
    }
  fp_evidence_add_outline (out, (const FpVec3 *) (gpointer) pt->data, pt->len);
}

void
fp_show_area_not_below (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; one->value > 0 && i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE)
      add_floor_from (out, &floor[i], of->levels.footpace - (floor[i].gx == 0 && floor[i].gy == 0 ? 1e-6 : 0));
}

/* Its outline, and over its middle how far it falls on the way on which it falls most. */
void
fp_show_floor_fall (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const double fall = hypot (floor[i].gx, floor[i].gy), dx = floor[i].gx / fall, dy = floor[i].gy / fall;
      double low = 0, high = 0;

      if ((int) floor[i].owner != one->owner || floor[i].use != FP_FLOOR_PEOPLE)
        continue;
      fp_evidence_add_floor (out, &floor[i]);
      if (!(fall > 0) || fabs (fall - one->value) > 1e-9)
        continue;
      for (guint c = 0; c < floor[i].n_outline; c++)
        {
          const double along = (floor[i].outline[c].x - one->at.x) * dx + (floor[i].outline[c].y - one->at.y) * dy;
          low = MIN (low, along);
          high = MAX (high, along);
        }
      {
        const FpPoint foot = { one->at.x + low * dx, one->at.y + low * dy }, head = { one->at.x + high * dx, one->at.y + high * dy };
        const FpVec3 a = { foot.x, foot.y, level_of (&floor[i], foot) }, b = { head.x, head.y, level_of (&floor[i], head) };

        fp_evidence_add_line (out, a, b);
        fp_evidence_add_length (out, a, (FpVec3) { b.x, b.y, a.z }, 0);
        fp_evidence_add_length (out, (FpVec3) { b.x, b.y, a.z }, b, 0);
      }
    }
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
