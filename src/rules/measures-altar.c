/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The altar itself: its size, the room on it and about it, and what it weighs on the floor. */
#include "measure-evidence.h"

#include <math.h>

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

/* From the front edge back, before the middle of what stands there, or of the altar. */
static void
span_from_front (const FpMeasuring *of, int altar_index, int thing, FpMeasured *measured)
{
  const FpPlaced *altar = fp_measuring_placed (of, altar_index);
  const FpBox box = fp_placed_box_in (fp_measuring_placed (of, thing >= 0 ? thing : altar_index), altar);
  const double x = CLAMP ((box.x0 + box.x1) / 2, altar->extent.bearing.x0, altar->extent.bearing.x1);
  const double y = altar->extent.bearing.y0, z = altar->extent.top;

  fp_measured_span (measured, fp_placed_point (altar, (FpVec3) { x, y, z }),
                    fp_placed_point (altar, (FpVec3) { x, y + measured->value, z }));
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
  span_from_front (of, index, thing, measured);
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
    span_from_front (of, index, thing, fp_measured_add_at (out, clear, thing, top));
}

/* Clear distance between the walls and piers to both sides of the altar, measured along its length; NAN. @span: (out) */
static double
width_at (const FpMeasuring *of, const FpPlaced *altar, FpVec3 top, FpVec3 span[2])
{
  const double turn = altar->place.turn * G_PI / 180;
  const double left = fp_measuring_reach (of, top, -cos (turn), -sin (turn), 10 * FAR, fp_reach_building, NULL);
  const double right = fp_measuring_reach (of, top, cos (turn), sin (turn), 10 * FAR, fp_reach_building, NULL);

  span[0] = (FpVec3) { top.x - left * cos (turn), top.y - left * sin (turn), top.z };
  span[1] = (FpVec3) { top.x + right * cos (turn), top.y + right * sin (turn), top.z };
  return left >= 0 && right >= 0 && left + right > 0 ? left + right : NAN;
}

void
fp_take_sanctuary_width (const FpMeasuring *of, GArray *out)
{
  FpVec3 top, span[2];
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double width = altar ? width_at (of, altar, top, span) : NAN;

  if (!isnan (width))
    fp_measured_span (fp_measured_add_at (out, width, index, top), span[0], span[1]);
  else if (altar)
    fp_measured_add_nothing (out, "no walls or piers to both sides of the altar");
}

void
fp_take_mensa_share_of_sanctuary (const FpMeasuring *of, GArray *out)
{
  FpVec3 top, span[2];
  int index;
  const FpPlaced *altar = altar_top (of, &index, &top);
  double share = altar ? fp_placed_param (altar, "length", NAN) / width_at (of, altar, top, span) : NAN;

  if (!isnan (share))
    fp_measured_add_at (out, share, index, top);
  else if (altar)
    fp_measured_add_nothing (out, "no walls or piers to both sides of the altar");
}

void
fp_show_mensa_share_of_sanctuary (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *altar = fp_measuring_placed (of, one->owner);
  FpVec3 span[2];

  fp_evidence_add_param (out, altar, "length", 0);
  if (!isnan (width_at (of, altar, one->at, span)))
    fp_evidence_add_length (out, span[0], span[1], 0);
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

static void
span_behind (const FpPlaced *altar, const FpBox *where, double room, FpVec3 span[2])
{
  const double x = (where->x0 + where->x1) / 2, y = altar->extent.plan.y1;

  span[0] = fp_placed_point (altar, (FpVec3) { x, y, 0 });
  span[1] = fp_placed_point (altar, (FpVec3) { x, y + room, 0 });
}

void
fp_show_altar_freestanding (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  FpBox where;
  const double room = fp_scene_room_behind_altar (of->scene, one->owner, &where);
  FpVec3 span[2];

  fp_evidence_add_thing (out, of, one->owner);
  if (room < 0)
    return;
  span_behind (fp_measuring_placed (of, one->owner), &where, room, span);
  fp_evidence_add_length (out, span[0], span[1], 0);
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
    {
      FpVec3 span[2];

      span_behind (altar, &where, room, span);
      fp_measured_span (fp_measured_add_at (out, room, index,
                                            fp_placed_point (altar, (FpVec3) { (where.x0 + where.x1) / 2, (where.y0 + where.y1) / 2, 0 })),
                        span[0], span[1]);
    }
}

/* The altars beside the one of celebration. */
void
fp_take_side_altar_length (const FpMeasuring *of, GArray *out)
{
  int high;

  fp_measuring_celebrated (of, &high);
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR, i))
    if (i != high)
      fp_measured_add_at (out, fp_placed_param (fp_measuring_placed (of, i), "length", NAN), i,
                          fp_placed_middle (fp_measuring_placed (of, i), 0));
}

void
fp_take_side_altar_steps (const FpMeasuring *of, GArray *out)
{
  int high;

  fp_measuring_celebrated (of, &high);
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR, i))
    {
      const FpPlaced *altar = fp_measuring_placed (of, i);
      const FpPlaced *footpace = fp_measuring_placed (of, fp_measuring_footpace (of, altar));

      if (i != high)
        fp_measured_add_at (out, footpace ? fp_placed_param (footpace, "count", 1) : 0, i, fp_placed_middle (altar, 0));
    }
}

void
fp_take_altars (const FpMeasuring *of, GArray *out)
{
  if (!fp_measuring_count (of, FP_ROLE_ALTAR, out))
    fp_measured_add (out, 0);
}
