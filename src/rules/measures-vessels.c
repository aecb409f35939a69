/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The room that the vessels need: on the mensa before the celebrant, and in the tabernacle. */
#include "measure-evidence.h"

#include <math.h>

/* mm above the mensa, within which a thing is in the way of what stands on the corporal: a chalice with its pall.
 * Common practice, no source. */
#define VESSELS_HIGH 250.0
#define TOUCHES      1.0
/* From the celebrant's edge: half of 20 in (P. Dearmer, The Parson's Handbook, 2nd ed. 1899, p. 57). */
#define MIDDLE_OF_CORPORAL 254.0
#define FAR          20000.0

/* --- on the mensa ----------------------------------------------------------- */

/* In the coordinates of a placed thing; upright as it is. */
static FpBox
solid_box_in (const FpSolid *solid, const FpPlaced *frame)
{
  const FpBox3 box = fp_solid_box (solid);
  const FpPoint corner[4] = { { box.lo.x, box.lo.y }, { box.hi.x, box.lo.y }, { box.hi.x, box.hi.y }, { box.lo.x, box.hi.y } };
  FpBox own = FP_BOX_EMPTY;

  for (guint i = 0; i < G_N_ELEMENTS (corner); i++)
    fp_box_add_point (&own, fp_placed_local (frame, corner[i]));
  return own;
}

/* What lies flat, hangs or is itself a vessel keeps no room from the corporal. */
static gboolean
is_in_the_way (const FpMeasuring *of, const FpSolid *solid, int altar)
{
  const FpPlaced *owner = fp_measuring_placed (of, (int) solid->owner);
  const double level = fp_measuring_placed (of, altar)->level + fp_measuring_placed (of, altar)->extent.top;
  const FpBox3 box = fp_solid_box (solid);

  return !owner->ghost && (int) solid->owner != altar && solid->part != FP_PART_CLOTH
         && fp_placed_role (owner) != FP_ROLE_VESSELS && box.hi.z > level + TOUCHES && box.lo.z < level + VESSELS_HIGH;
}

/* The side of the largest square in the middle of the celebrant's edge that @box leaves free. */
static double
square_beside (const FpBox *box, const FpBox *mensa, gboolean from_behind)
{
  const double middle = (mensa->x0 + mensa->x1) / 2;
  const double aside = MAX (MAX (box->x0 - middle, middle - box->x1), 0);
  const double before = MAX (from_behind ? mensa->y1 - box->y1 : box->y0 - mensa->y0, 0);

  return MAX (2 * aside, before);
}

void
fp_take_corporal_square (const FpMeasuring *of, GArray *out)
{
  int index, nearest = -1;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  const FpBox *mensa;
  guint n;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  gboolean behind;
  double side;
  FpMeasured *measured;

  if (altar == NULL)
    return;
  mensa = &altar->extent.bearing;
  behind = altar->form.facing == FP_FACING_PEOPLE;
  side = MIN (mensa->x1 - mensa->x0, mensa->y1 - mensa->y0);
  for (guint i = 0; i < n; i++)
    {
      const FpBox box = solid_box_in (&solid[i], altar);

      if (!fp_box_overlaps (&box, mensa) || !is_in_the_way (of, &solid[i], index) || square_beside (&box, mensa, behind) >= side)
        continue;
      side = square_beside (&box, mensa, behind);
      nearest = (int) solid[i].owner;
    }
  measured = fp_measured_add_at (out, side, nearest >= 0 ? nearest : index,
                                 fp_placed_point (altar, (FpVec3) { (mensa->x0 + mensa->x1) / 2, behind ? mensa->y1 : mensa->y0,
                                                                    altar->extent.top }));
  if (nearest >= 0)
    measured->detail = g_strdup_printf ("“%s” is nearest", fp_item_name (fp_measuring_placed (of, nearest)->item));
}

/* The square, and its side at the edge of the celebrant. */
void
fp_show_corporal_square (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const FpBox *mensa = &altar->extent.bearing;
  const gboolean behind = altar->form.facing == FP_FACING_PEOPLE;
  const double x = (mensa->x0 + mensa->x1) / 2, half = one->value / 2;
  const FpBox square = { x - half, behind ? mensa->y1 - one->value : mensa->y0, x + half, behind ? mensa->y1 : mensa->y0 + one->value };

  fp_evidence_add_box (out, altar, &square, altar->extent.top);
  fp_evidence_add_length_in (out, altar, (FpVec3) { square.x0, behind ? square.y1 : square.y0, altar->extent.top },
                             (FpVec3) { square.x1, behind ? square.y1 : square.y0, altar->extent.top }, 1);
}

/* Over the middle of the corporal. */
void
fp_take_room_over_corporal (const FpMeasuring *of, GArray *out)
{
  int index, owner = -1;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  guint n;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  const FpBox *mensa;
  double least = FAR;
  FpVec3 foot;

  if (altar == NULL)
    return;
  mensa = &altar->extent.bearing;
  foot = fp_placed_point (altar, (FpVec3) { (mensa->x0 + mensa->x1) / 2,
                                            altar->form.facing == FP_FACING_PEOPLE ? mensa->y1 - MIDDLE_OF_CORPORAL
                                                                                   : mensa->y0 + MIDDLE_OF_CORPORAL,
                                            altar->extent.top + VESSELS_HIGH });
  for (guint i = 0; i < n; i++)
    {
      double t;
      const FpPlaced *over = fp_measuring_placed (of, (int) solid[i].owner);

      if (over->ghost || !fp_solid_ray (&solid[i], foot, (FpVec3) { foot.x, foot.y, foot.z + FAR }, &t) || t * FAR >= least)
        continue;
      least = t * FAR;
      owner = (int) solid[i].owner;
    }
  if (owner < 0)
    fp_measured_add_nothing (out, "nothing hangs or reaches over the middle of the altar");
  else
    {
      FpMeasured *measured = fp_measured_add_at (out, least + VESSELS_HIGH, owner, foot);

      measured->detail = g_strdup_printf ("under “%s”", fp_item_name (fp_measuring_placed (of, owner)->item));
      fp_measured_span (measured, (FpVec3) { foot.x, foot.y, foot.z - VESSELS_HIGH }, (FpVec3) { foot.x, foot.y, foot.z + least });
    }
}

/* --- in the tabernacle -------------------------------------------------------- */

typedef enum { WIDTH, DEPTH, HEIGHT, DOOR_WIDTH, DOOR_HEIGHT } Within;

/* From @from to the first of the solids that way. */
static FpVec3
end_within (const FpSolids *solids, FpVec3 from, FpVec3 way)
{
  guint n;
  const FpSolid *s = fp_solids_peek (solids, &n);
  double least = FAR;

  for (guint i = 0; i < n; i++)
    {
      double t;

      if (fp_solid_ray (&s[i], from, fp_vec3_add (from, fp_vec3_scale (way, FAR)), &t))
        least = MIN (least, t * FAR);
    }
  return fp_vec3_add (from, fp_vec3_scale (way, least));
}

static void
span_within (const FpSolids *solids, const FpBox *plan, const FpBox3 *door, Within what, FpVec3 span[2])
{
  static const FpVec3 ways[] = { [WIDTH] = { 1, 0, 0 }, [DEPTH] = { 0, 1, 0 }, [HEIGHT] = { 0, 0, 1 } };
  const FpVec3 middle = { (door->lo.x + door->hi.x) / 2, (plan->y0 + plan->y1) / 2, (door->lo.z + door->hi.z) / 2 };

  if (what == DOOR_WIDTH || what == DOOR_HEIGHT)
    {
      span[0] = what == DOOR_WIDTH ? (FpVec3) { door->lo.x, door->lo.y, middle.z } : (FpVec3) { middle.x, door->lo.y, door->lo.z };
      span[1] = what == DOOR_WIDTH ? (FpVec3) { door->hi.x, door->lo.y, middle.z } : (FpVec3) { middle.x, door->lo.y, door->hi.z };
      return;
    }
  span[0] = end_within (solids, middle, fp_vec3_scale (ways[what], -1));
  span[1] = end_within (solids, middle, ways[what]);
}

/* Of its own solids: what is between its walls, behind the middle of its door; its own coordinates. */
static gboolean
find_inside (const FpPlaced *tabernacle, Within what, FpVec3 span[2])
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  guint n;
  const FpSolid *s;

  fp_item_kind (tabernacle->item)->solids (&tabernacle->form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].part == FP_PART_DOOR)
      {
        const FpBox3 door = fp_solid_box (&s[i]);

        span_within (solids, &tabernacle->extent.plan, &door, what, span);
        return TRUE;
      }
  return FALSE;
}

static void
take_inside (const FpMeasuring *of, GArray *out, Within what)
{
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    {
      const FpPlaced *tabernacle = fp_measuring_placed (of, i);
      FpVec3 span[2];

      if (!find_inside (tabernacle, what, span))
        continue;
      fp_measured_span (fp_measured_add_at (out, fp_vec3_length (fp_vec3_sub (span[1], span[0])), i,
                                            fp_placed_middle (tabernacle, tabernacle->extent.height / 2)),
                        fp_placed_point (tabernacle, span[0]), fp_placed_point (tabernacle, span[1]));
    }
}

void
fp_take_tabernacle_width_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, WIDTH);
}

void
fp_take_tabernacle_depth_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, DEPTH);
}

void
fp_take_tabernacle_height_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, HEIGHT);
}

void
fp_take_tabernacle_door_width (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, DOOR_WIDTH);
}

void
fp_take_tabernacle_door_height (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, DOOR_HEIGHT);
}
