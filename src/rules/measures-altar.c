/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The altar itself: its size, the room on it and about it, and what it weighs on the floor. */
#include "measuring.h"

#include <math.h>

/* Marble, kN/m3: 27 to 28 (from memory; EN 1991-1-1 Table A.2 does not name it).  The heavier is taken. */
#define STONE_WEIGHT 28.0
#define MM3_PER_M3 1e9
#define MM2_PER_M2 1e6
/* The pound of force: 0.45359237 kg (exact, 1959) × 9.80665 m/s2. */
#define KN_PER_POUND 0.0044482216152605

#define FAR 20000.0 /* how far one looks for walls */

/* mm, through which one person passes behind the altar: common practice, no source. How wide the way should be is
 * another rule's matter. */
#define PASSES 500.0
#define TOUCHES 1.0

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
    measured->detail = g_strdup_printf ("%s, in front of “%s”", fp_item_name (altar->item),
                                        fp_item_name (fp_measuring_placed (of, thing)->item));
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

/* Clear distance between the walls and piers to both sides of the altar, measured along its length; NAN. */
static double
width_at (const FpMeasuring *of, const FpPlaced *altar, FpVec3 top)
{
  const double turn = altar->place.turn * G_PI / 180;
  const double left = fp_measuring_reach (of, top, -cos (turn), -sin (turn), 10 * FAR, fp_reach_building, NULL);
  const double right = fp_measuring_reach (of, top, cos (turn), sin (turn), 10 * FAR, fp_reach_building, NULL);

  return left >= 0 && right >= 0 && left + right > 0 ? left + right : NAN;
}

void
fp_take_sanctuary_width (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double width = altar ? width_at (of, altar, top) : NAN;

  if (!isnan (width))
    fp_measured_add_at (out, width, index, top);
  else if (altar)
    fp_measured_add_nothing (out, "no walls or piers to both sides of the altar");
}

void
fp_take_mensa_share_of_sanctuary (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double share = altar ? fp_placed_param (altar, "length", NAN) / width_at (of, altar, top) : NAN;

  if (!isnan (share))
    fp_measured_add_at (out, share, index, top);
  else if (altar)
    fp_measured_add_nothing (out, "no walls or piers to both sides of the altar");
}

/* Where it stands tells, not what it was made for. */
static char *
room_told (double room)
{
  if (room < TOUCHES && room >= 0)
    return g_strdup ("against the wall");
  return g_strdup (room < 0 || room >= PASSES ? "apart from the wall" : "too near the wall for anyone to pass behind it");
}

void
fp_take_altar_freestanding (const FpMeasuring *of, GArray *out)
{
  FpVec3 top;
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  const double room = altar ? fp_scene_room_behind_altar (of->scene, index, NULL) : NAN;

  if (altar)
    fp_measured_add_at (out, room < 0 || room >= PASSES, index, top)->text = room_told (room);
}

void
fp_take_room_behind_altar (const FpMeasuring *of, GArray *out)
{
  int index;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  FpBox where;
  double room;

  if (!altar || !fp_altar_is_free (altar))
    return;
  room = fp_scene_room_behind_altar (of->scene, index, &where);
  if (room >= 0)
    fp_measured_add_at (out, room, index, fp_placed_point (altar, (FpVec3) { (where.x0 + where.x1) / 2,
                                                                             (where.y0 + where.y1) / 2, 0 }));
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

/* "High altar: about 29.9 kN, if it is of stone, on 1.12 m²", in the units of the brief. */
static char *
weight_on (const FpMeasuring *of, int index, double weight, double area)
{
  const gboolean metric = fp_project_brief (fp_scene_project (of->scene))->units == FP_UNITS_METRIC;
  g_autofree char *name = fp_measuring_name (of, index);
  g_autofree char *heavy = metric ? fp_number_format_rounded (weight, 1)
                                  : fp_number_format_rounded (weight / KN_PER_POUND, 0);
  g_autofree char *wide = metric ? fp_number_format_rounded (area / MM2_PER_M2, 2)
                                 : fp_number_format_rounded (area / (FP_MM_PER_FOOT * FP_MM_PER_FOOT), 1);

  return g_strdup_printf ("%s: about %s %s, if it is of stone, on %s %s", name, heavy, metric ? "kN" : "lb", wide,
                          metric ? "m²" : "sq ft");
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
          = weight_on (of, i, weight, area);
    }
}

void
fp_take_altars (const FpMeasuring *of, GArray *out)
{
  if (!fp_measuring_count (of, FP_ROLE_ALTAR, out))
    fp_measured_add (out, 0);
}
