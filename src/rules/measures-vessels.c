/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The room that the vessels need: on the mensa before the celebrant, in the tabernacle, and on the credence. */
#include "measuring.h"

#include <math.h>
#include <string.h>

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
    fp_measured_add_at (out, least + VESSELS_HIGH, owner, foot)->detail =
      g_strdup_printf ("under “%s”", fp_item_name (fp_measuring_placed (of, owner)->item));
}

/* --- in the tabernacle -------------------------------------------------------- */

typedef struct { double width, depth, height, door_width, door_height; } Inside;

/* From @from to the first of the solids that way. */
static double
way_within (const FpSolids *solids, FpVec3 from, FpVec3 way)
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
  return least;
}

/* Of its own solids: what is between its walls, behind the middle of its door. */
static gboolean
find_inside (const FpPlaced *tabernacle, Inside *inside)
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
        const FpVec3 middle = { (door.lo.x + door.hi.x) / 2, (tabernacle->extent.plan.y0 + tabernacle->extent.plan.y1) / 2,
                                (door.lo.z + door.hi.z) / 2 };
        *inside = (Inside) {
          .width = way_within (solids, middle, (FpVec3) { -1, 0, 0 }) + way_within (solids, middle, (FpVec3) { 1, 0, 0 }),
          .depth = way_within (solids, middle, (FpVec3) { 0, -1, 0 }) + way_within (solids, middle, (FpVec3) { 0, 1, 0 }),
          .height = way_within (solids, middle, (FpVec3) { 0, 0, -1 }) + way_within (solids, middle, (FpVec3) { 0, 0, 1 }),
          .door_width = door.hi.x - door.lo.x,
          .door_height = door.hi.z - door.lo.z,
        };
        return TRUE;
      }
  return FALSE;
}

static void
take_inside (const FpMeasuring *of, GArray *out, gsize offset)
{
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    {
      const FpPlaced *tabernacle = fp_measuring_placed (of, i);
      Inside inside;
      double value;

      if (!find_inside (tabernacle, &inside))
        continue;
      memcpy (&value, (const char *) &inside + offset, sizeof value);
      fp_measured_add_at (out, value, i, fp_placed_middle (tabernacle, tabernacle->extent.height / 2));
    }
}

void
fp_take_tabernacle_width_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, G_STRUCT_OFFSET (Inside, width));
}

void
fp_take_tabernacle_depth_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, G_STRUCT_OFFSET (Inside, depth));
}

void
fp_take_tabernacle_height_within (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, G_STRUCT_OFFSET (Inside, height));
}

void
fp_take_tabernacle_door_width (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, G_STRUCT_OFFSET (Inside, door_width));
}

void
fp_take_tabernacle_door_height (const FpMeasuring *of, GArray *out)
{
  take_inside (of, out, G_STRUCT_OFFSET (Inside, door_height));
}

/* --- on the credence ---------------------------------------------------------- */

/* At a low Mass of the older form the celebrant carries the chalice to the altar himself (A. Fortescue, "The Ceremonies
 * of the Roman Rite Described", 1918, from memory). */
static FpBox
common_vessels (const FpMeasuring *of)
{
  const FpKind *kind = fp_kind_find ("credence-vessels");
  const guint asked = fp_project_brief (fp_scene_project (of->scene))->celebrations;
  FpExtent extent = { .plan = FP_BOX_EMPTY, .bearing = FP_BOX_EMPTY };
  double param[FP_PARAM_MAX];

  fp_kind_defaults (kind, param);
  param[fp_kind_param_index (kind, "chalice")] = (asked & ~(guint) FP_CELEBRATION_LOW) != 0;
  kind->extent (&(FpForm) { .param = param }, &extent);
  return extent.plan;
}

/* What has to stand there: what is drawn, and the common vessels where none are. */
static void
needed_on (const FpMeasuring *of, int credence, double *length, double *depth)
{
  const FpPlaced *table = fp_measuring_placed (of, credence);
  gboolean vessels = FALSE;
  guint n;

  fp_scene_placed (of->scene, &n);
  *length = *depth = 0;
  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *thing = fp_measuring_placed (of, (int) i);
      const FpBox box = fp_placed_box_in (thing, table);

      if (thing->ghost || thing->support != credence)
        continue;
      vessels = vessels || fp_placed_role (thing) == FP_ROLE_VESSELS;
      *length += box.x1 - box.x0;
      *depth = MAX (*depth, box.y1 - box.y0);
    }
  if (!vessels)
    {
      const FpBox box = common_vessels (of);

      *length += box.x1 - box.x0;
      *depth = MAX (*depth, box.y1 - box.y0);
    }
}

/* The one on which the vessels stand, or the first. */
static int
credence_of_vessels (const FpMeasuring *of)
{
  for (int i = fp_measuring_next (of, FP_ROLE_VESSELS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_VESSELS, i))
    {
      const int on = fp_measuring_placed (of, i)->support;

      if (on >= 0 && fp_placed_role (fp_measuring_placed (of, on)) == FP_ROLE_CREDENCE)
        return on;
    }
  return fp_measuring_next (of, FP_ROLE_CREDENCE, -1);
}

/* "135 mm too little of 600 mm". */
static char *
left_told (const FpMeasuring *of, double left, double has)
{
  const FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
  g_autofree char *by = fp_length_format_unit (fabs (left), units), *all = fp_length_format_unit (has, units);

  return g_strdup_printf (left < 0 ? "%s too little; it has %s" : "%s to spare; it has %s", by, all);
}

static void
take_left (const FpMeasuring *of, GArray *out, gboolean deep)
{
  const int index = credence_of_vessels (of);
  const FpPlaced *table = fp_measuring_placed (of, index);
  double length, depth, has;

  if (table == NULL)
    return;
  needed_on (of, index, &length, &depth);
  has = deep ? table->extent.bearing.y1 - table->extent.bearing.y0 : table->extent.bearing.x1 - table->extent.bearing.x0;
  fp_measured_add_at (out, has - (deep ? depth : length), index, fp_placed_middle (table, table->extent.top))->text =
    left_told (of, has - (deep ? depth : length), has);
}

void
fp_take_credence_length_left (const FpMeasuring *of, GArray *out)
{
  take_left (of, out, FALSE);
}

void
fp_take_credence_depth_left (const FpMeasuring *of, GArray *out)
{
  take_left (of, out, TRUE);
}
