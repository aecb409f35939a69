/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The altar itself: its size, the room on it and about it, and what it weighs on the floor. */
#include "measuring.h"

#include <math.h>

/* Marble, kN/m3: 27 to 28 (from memory; EN 1991-1-1 Table A.2 does not name it).  The heavier is taken. */
#define STONE_WEIGHT 28.0
#define MM3_PER_M3 1e9
#define MM2_PER_M2 1e6

/* Heights above the floor at which a person's way past is tried, and how far one looks. */
static const double way_heights[] = { 300, 900, 1500 };
#define FAR 20000.0

static const FpPlaced *
altar_top (const FpMeasuring *of, int *index, FpVec3 *top)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, index);

  if (altar)
    *top = fp_placed_middle (altar, altar->extent.top);
  return altar;
}

static void
take_param (const FpMeasuring *of, GArray *out, const char *id)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double value = altar ? fp_placed_param (altar, id, NAN) : NAN;

  if (!isnan (value))
    fp_measured_add_at (out, value, index, top);
}

void
fp_take_mensa_length (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "length");
}

void
fp_take_mensa_depth (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "depth");
}

void
fp_take_mensa_overhang (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "overhang");
}

void
fp_take_mensa_height (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);

  if (altar)
    fp_measured_add_at (out, altar->extent.top, index, top);
}

/* Clear depth of the mensa before the foremost thing of the given offices that stands directly or
 * indirectly on it; -1 when there is none. */
static double
clear_before (const FpMeasuring *of, int altar_index, gboolean gradines, int *thing)
{
  static const FpRole roles[] = { FP_ROLE_TABERNACLE, FP_ROLE_GRADINE };
  const FpPlaced *altar = fp_measuring_placed (of, altar_index);
  double clear = -1;

  for (guint r = 0; r < (gradines ? 2 : 1); r++)
    for (int i = fp_measuring_next (of, roles[r], -1); i >= 0; i = fp_measuring_next (of, roles[r], i))
      if (fp_measuring_stands_on (of, i, altar_index))
        {
          FpBox box = fp_placed_box_in (fp_measuring_placed (of, i), altar);
          double before = MAX (0, box.y0 - altar->extent.bearing.y0);

          if (clear < 0 || before < clear)
            {
              clear = before;
              *thing = i;
            }
        }
  return clear;
}

void
fp_take_mensa_clear_depth (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index, thing = -1;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double clear;
  FpMeasured *measured;

  if (!altar)
    return;
  clear = clear_before (of, index, TRUE, &thing);
  measured = fp_measured_add_at (out, clear < 0 ? fp_placed_param (altar, "depth", NAN) : clear, index, top);
  if (thing >= 0)
    measured->detail = g_strdup_printf ("in front of: %s", fp_item_name (fp_measuring_placed (of, thing)->item));
}

void
fp_take_mensa_before_tabernacle (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index, thing = -1;
  double clear;

  if (!altar_top (of, &index, &top))
    return;
  clear = clear_before (of, index, FALSE, &thing);
  if (clear >= 0)
    fp_measured_add_at (out, clear, thing, top);
}

/* Clear distance between the walls and piers to both sides of the altar, measured along its length. */
void
fp_take_mensa_share_of_sanctuary (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  double turn, west, east, length;

  if (!altar)
    return;
  top = fp_placed_middle (altar, altar->extent.top);
  turn = altar->place.turn * G_PI / 180;
  west = fp_measuring_reach (of, top, -cos (turn), -sin (turn), 10 * FAR, fp_reach_building, NULL);
  east = fp_measuring_reach (of, top, cos (turn), sin (turn), 10 * FAR, fp_reach_building, NULL);
  length = fp_placed_param (altar, "length", NAN);
  if (west < 0 || east < 0 || !(west + east > 0) || isnan (length))
    {
      fp_measured_add_nothing (out, "no walls or piers to both sides of the altar");
      return;
    }
  fp_measured_add_at (out, length / (west + east), index, top);
}

void
fp_take_altar_freestanding (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);

  if (altar)
    fp_measured_add_at (out, fp_altar_is_free (altar), index, top);
}

/* Everything upright that is not the altar, nor stands on it, nor carries it. */
static gboolean
in_the_way (const FpMeasuring *of, const FpSolid *solid, gconstpointer data)
{
  int altar = *(const int *) data, owner = (int) solid->owner;

  if (solid->part == FP_PART_FLOOR || solid->part == FP_PART_STEP || solid->part == FP_PART_FOOTPACE)
    return FALSE;
  return owner != altar && !fp_measuring_stands_on (of, owner, altar);
}

void
fp_take_room_behind_altar (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double nearest = -1, dx, dy;
  FpVec3 at = { 0 };

  if (!altar || !fp_altar_is_free (altar))
    return;

  dx = -sin (altar->place.turn * G_PI / 180);
  dy = cos (altar->place.turn * G_PI / 180);
  for (int side = -2; side <= 2; side++)
    for (guint h = 0; h < G_N_ELEMENTS (way_heights); h++)
      {
        const FpBox *plan = &altar->extent.plan;
        /* The outermost lines run just inside the ends, so as not to graze a wall in line with them. */
        double x = (plan->x0 + plan->x1) / 2 + side / 2.0 * ((plan->x1 - plan->x0) / 2 - 1);
        FpVec3 from = fp_placed_point (altar, (FpVec3) { x, plan->y1, way_heights[h] });
        double reach = fp_measuring_reach (of, from, dx, dy, FAR, in_the_way, &index);

        if (reach >= 0 && (nearest < 0 || reach < nearest))
          {
            nearest = reach;
            at = (FpVec3) { from.x + dx * reach / 2, from.y + dy * reach / 2, from.z };
          }
      }

  if (nearest >= 0)
    fp_measured_add_at (out, nearest, index, at);
}

/* Plan area of what touches the floor, mm2. */
static double
footprint (const FpMeasuring *of, const FpPlaced *altar)
{
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  double area = 0;

  for (guint i = altar->first_solid; i < altar->first_solid + altar->n_solids && i < n; i++)
    if (solid[i].shape == FP_SOLID_PRISM && solid[i].bx == 0 && solid[i].by == 0 && solid[i].z0 <= altar->level + 1)
      area += fabs (fp_outline_area (solid[i].outline, solid[i].n_outline));
  return area;
}

/* Stone in the altar by its own schedule, mm3. */
static double
stone (const FpPlaced *altar)
{
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (FpQuantity));
  double volume = 0;

  if (!fp_item_kind (altar->item)->quantities)
    return 0;
  fp_item_kind (altar->item)->quantities (&altar->form, lines);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpQuantity *line = &g_array_index (lines, FpQuantity, i);

      if (line->material == FP_MATERIAL_STONE && line->type == FP_AMOUNT_VOLUME)
        volume += line->amount;
    }
  return volume;
}

void
fp_take_altar_pressure (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR, i))
    {
      const FpPlaced *altar = fp_measuring_placed (of, i);
      double area = footprint (of, altar), volume = stone (altar), weight = volume / MM3_PER_M3 * STONE_WEIGHT;

      if (area > 0 && volume > 0)
        fp_measured_add_at (out, weight / (area / MM2_PER_M2), i, fp_placed_middle (altar, 0))->detail
          = g_strdup_printf ("about %.1f kN of stone on %.2f m²", weight, area / MM2_PER_M2);
    }
}

void
fp_take_altars (const FpMeasuring *of, GArray *out)
{
  double n = 0;
  int last = -1;

  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR, i))
    {
      n++;
      last = i;
    }
  if (last >= 0)
    fp_measured_add_at (out, n, last, fp_placed_middle (fp_measuring_placed (of, last), 0));
  else
    fp_measured_add (out, 0);
}
