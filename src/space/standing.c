/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "standing.h"

#include "footpace/mensa.h"

#include <math.h>

enum { UNKNOWN, BEING_FOUND, KNOWN };

/* How far before its lowest riser a flight looks for the floor: more than surveys are off by (design judgement). */
#define BEFORE_RISER 10.0

/* What a footpace lies round while nothing stands on it: a common altar, 2400 x 900 (design judgement). */
static const FpBox DEFAULT_CORE = { -1200, -450, 1200, 450 };

/* The floor under a thing, told to its kind in the kind's own coordinates. */
typedef struct
{
  const FpFloorSet *floors;
  FpPlace           place;
  double            level;
} Ground;

static double
ground_at (gconstpointer data, FpPoint local)
{
  const Ground *ground = data;
  gboolean found;
  double level = fp_floor_set_at (ground->floors, fp_place_point (&ground->place, local), &found);
  return found ? level - ground->level : 0;
}

/* --- anchors -------------------------------------------------------------- */

static FpBox
turned_box (const FpBox *box, double turn)
{
  if (turn == 0 || fp_box_is_empty (box))
    return *box;
  FpPlace place = { 0, 0, turn };
  FpBox turned = FP_BOX_EMPTY;
  fp_box_add_point (&turned, fp_place_point (&place, (FpPoint) { box->x0, box->y0 }));
  fp_box_add_point (&turned, fp_place_point (&place, (FpPoint) { box->x1, box->y0 }));
  fp_box_add_point (&turned, fp_place_point (&place, (FpPoint) { box->x1, box->y1 }));
  fp_box_add_point (&turned, fp_place_point (&place, (FpPoint) { box->x0, box->y1 }));
  return turned;
}

static FpPoint
anchor_point (const FpBox *box, FpAnchor anchor)
{
  if (fp_box_is_empty (box))
    return (FpPoint) { 0, 0 };
  double x = (box->x0 + box->x1) / 2;
  switch (anchor)
    {
    case FP_ANCHOR_BACK:
      return (FpPoint) { x, box->y1 };
    case FP_ANCHOR_FRONT:
      return (FpPoint) { x, box->y0 };
    case FP_ANCHOR_CENTRE:
    default:
      return (FpPoint) { x, (box->y0 + box->y1) / 2 };
    }
}

FpPlace
fp_place_on_bearing (const FpBox *bearing, FpAnchor anchor, const FpBox *plan, const FpPlace *given)
{
  FpBox own = turned_box (plan, given->turn);
  FpPoint to = anchor_point (bearing, anchor), from = anchor_point (&own, anchor);
  return (FpPlace) { to.x - from.x + given->x, to.y - from.y + given->y, given->turn };
}

FpPlace
fp_place_from_bearing (const FpBox *bearing, FpAnchor anchor, const FpBox *plan, const FpPlace *origin)
{
  FpBox own = turned_box (plan, origin->turn);
  FpPoint to = anchor_point (bearing, anchor), from = anchor_point (&own, anchor);
  return (FpPlace) { origin->x - (to.x - from.x), origin->y - (to.y - from.y), origin->turn };
}

/* --- gathering ------------------------------------------------------------ */

static void
add_thing (FpArrangement *self, const FpItem *item, gboolean in_survey, const FpAlternative *alternative,
           GPtrArray *on)
{
  FpStandingThing thing = {
    .item = item, .in_survey = in_survey, .present = TRUE, .given = fp_item_place (item),
    .on = -1, .support = -1, .laid_round = -1,
  };
  const char *support = fp_item_on (item);

  if (in_survey && alternative != NULL)
    {
      FpPlace moved;
      const char *moved_on = NULL;
      thing.fate = fp_alternative_fate (alternative, fp_item_id (item), &moved, &moved_on);
      thing.present = thing.fate != FP_FATE_REMOVED;
      if (thing.fate == FP_FATE_MOVED)
        {
          thing.given = moved;
          support = moved_on;
        }
    }
  g_ptr_array_add (on, (gpointer) support);
  g_array_append_val (self->thing, thing);
}

static GHashTable *
numbers_by_id (const FpArrangement *self)
{
  GHashTable *number = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < self->thing->len; i++)
    g_hash_table_insert (number, (gpointer) fp_item_id (fp_arrangement_get (self, i)->item), GUINT_TO_POINTER (i + 1));
  return number;
}

static void
find_supports (FpArrangement *self, GPtrArray *on)
{
  g_autoptr (GHashTable) number = numbers_by_id (self);
  for (guint i = 0; i < self->thing->len; i++)
    {
      const char *id = g_ptr_array_index (on, i);
      gpointer found = id != NULL ? g_hash_table_lookup (number, id) : NULL;
      if (found != NULL && GPOINTER_TO_UINT (found) - 1 != i)
        fp_arrangement_get (self, i)->on = GPOINTER_TO_INT (found) - 1;
    }
}

/* An opening goes with its wall; all else outlasts what carried it. */
static void
settle_supports (FpArrangement *self)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      FpStandingThing *thing = fp_arrangement_get (self, i);
      if (thing->on < 0)
        continue;
      gboolean carried = fp_arrangement_get (self, (guint) thing->on)->present;
      if (carried)
        thing->support = thing->on;
      else if (fp_item_kind (thing->item)->flags & FP_KIND_IN_WALL)
        thing->present = FALSE;
    }
}

static void
find_laid_round (FpArrangement *self)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      FpStandingThing *thing = fp_arrangement_get (self, i);
      if (!thing->present || thing->support < 0 || !(fp_item_kind (thing->item)->flags & FP_KIND_ON_FLOOR))
        continue;
      FpStandingThing *support = fp_arrangement_get (self, (guint) thing->support);
      if (support->laid_round < 0 && (fp_item_kind (support->item)->flags & FP_KIND_LAID_ROUND))
        support->laid_round = (int) i;
    }
}

/* --- forms ---------------------------------------------------------------- */

static FpHole
hole_of (const FpItem *opening)
{
  return (FpHole) {
    .side = (guint) fp_item_param (opening, "side") - 1,
    .along = fp_item_param (opening, "along"),
    .width = fp_item_param (opening, "width"),
    .sill = fp_item_param (opening, "sill"),
    .head = fp_item_param (opening, "head"),
    .arched = fp_item_param (opening, "arch") == 1,
  };
}

static void
cut_walls (FpArrangement *self)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      const FpStandingThing *opening = fp_arrangement_get (self, i);
      if (!opening->present || opening->support < 0 || !(fp_item_kind (opening->item)->flags & FP_KIND_IN_WALL))
        continue;
      FpStandingThing *wall = fp_arrangement_get (self, (guint) opening->support);
      wall->hole = g_renew (FpHole, wall->hole, wall->form.n_holes + 1);
      wall->hole[wall->form.n_holes++] = hole_of (opening->item);
      wall->form.hole = wall->hole;
    }
}

static void
init_forms (FpArrangement *self, FpFacing facing)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      FpStandingThing *thing = fp_arrangement_get (self, i);
      thing->form.param = fp_item_params (thing->item);
      thing->form.corner = fp_item_corners (thing->item, &thing->form.n_corners);
      thing->form.core = DEFAULT_CORE;
      thing->form.facing = facing;
    }
  cut_walls (self);
}

/* A thing of the survey as it was measured; NULL for what is new, and in the survey itself. */
static const FpStandingThing *
as_measured (const FpArrangement *self, guint i)
{
  return self->before != NULL && fp_arrangement_get (self, i)->in_survey ? fp_arrangement_get (self->before, i) : NULL;
}

/* Where nothing stands on it any more, a footpace keeps the shape that it was measured with. */
static FpBox
find_core_of_old (const FpArrangement *self, guint i)
{
  const FpStandingThing *before = as_measured (self, i);

  return before != NULL ? before->form.core : DEFAULT_CORE;
}

void
fp_form_hang_over (FpForm *form, const FpExtent *support)
{
  const gboolean bears = !fp_box_is_empty (&support->bearing);
  const double level = bears ? support->top : 0; /* of what stands on it, above its foot */

  form->core = bears ? support->bearing : support->plan;
  form->foot = -level;
  form->head = (bears ? support->top : support->height) - level;
}

static const FpExtent *find_extent (FpArrangement *self, guint i);

/* In the coordinates of what it stands on. */
static FpBox
plan_on_support (FpArrangement *self, guint i)
{
  const FpStandingThing *thing = fp_arrangement_get (self, i);
  const FpExtent *support = find_extent (self, (guint) thing->support), *own = find_extent (self, i);
  const FpPlace inner = fp_place_on_bearing (&support->bearing, fp_item_kind (thing->item)->anchor, &own->plan, &thing->given);
  FpBox box = turned_box (&own->plan, inner.turn);

  if (!fp_box_is_empty (&box))
    box = (FpBox) { box.x0 + inner.x, box.y0 + inner.y, box.x1 + inner.x, box.y1 + inner.y };
  return box;
}

/* Cloths keep off what stands fast on the mensa. */
static void
clear_of_others (FpArrangement *self, guint i)
{
  FpStandingThing *thing = fp_arrangement_get (self, i);
  FpMensaFast fast = { 0 };
  FpMensaFree clear;

  if (fp_item_kind (thing->item)->role != FP_ROLE_ALTAR_CLOTHS)
    return;
  for (guint k = 0; k < self->thing->len; k++)
    {
      const FpStandingThing *other = fp_arrangement_get (self, k);
      const FpRole role = fp_item_kind (other->item)->role;

      if (!other->present || other->support != thing->support || !fp_mensa_holds_fast (role))
        continue;
      const FpBox plan = plan_on_support (self, k);
      fp_mensa_fast_add (&fast, role, &plan);
    }
  fp_mensa_free_of (&thing->form.core, &fast, &clear);
  thing->form.core = clear.free;
  thing->form.notch = clear.notch;
}

static const FpExtent *
find_extent (FpArrangement *self, guint i)
{
  FpStandingThing *thing = fp_arrangement_get (self, i);
  if (thing->extent_state != UNKNOWN)
    return &thing->extent;
  thing->extent_state = BEING_FOUND;
  if (thing->laid_round >= 0)
    {
      const FpExtent *core = find_extent (self, (guint) thing->laid_round);
      if (!fp_box_is_empty (&core->plan))
        thing->form.core = core->plan;
    }
  else if ((fp_item_kind (thing->item)->flags & FP_KIND_HUNG) != 0 && thing->support >= 0)
    {
      fp_form_hang_over (&thing->form, find_extent (self, (guint) thing->support));
      clear_of_others (self, i);
    }
  else
    thing->form.core = find_core_of_old (self, i);
  thing->extent.plan = thing->extent.bearing = FP_BOX_EMPTY;
  fp_item_kind (thing->item)->extent (&thing->form, &thing->extent);
  thing->extent_state = KNOWN;
  return &thing->extent;
}

/* --- places --------------------------------------------------------------- */

/* In the middle of the opening, on the inner face of the wall; +x runs as the wall was walked. */
static FpPlace
place_in_wall (const FpStandingThing *wall, const FpItem *opening)
{
  FpHole hole = hole_of (opening);
  guint n = wall->form.n_corners;
  if (n < 2)
    return wall->place;
  FpPoint a = wall->form.corner[hole.side % n], b = wall->form.corner[(hole.side + 1) % n];
  double length = hypot (b.x - a.x, b.y - a.y);
  double t = length > 0 ? hole.along / length : 0;
  FpPlace inner = {
    a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), atan2 (b.y - a.y, b.x - a.x) * 180 / G_PI,
  };
  return fp_place_compose (&wall->place, &inner);
}

/* A footpace whose altar is gone lies where it was measured round it. */
static gboolean
lay_as_measured (const FpArrangement *self, guint i, FpPlace *place)
{
  const FpStandingThing *thing = fp_arrangement_get (self, i), *before = as_measured (self, i);

  if (before == NULL || before->laid_round < 0 || thing->fate == FP_FATE_MOVED)
    return FALSE;
  *place = before->place;
  return TRUE;
}

static FpPlace
find_place (FpArrangement *self, guint i)
{
  FpStandingThing *thing = fp_arrangement_get (self, i);
  if (thing->place_state != UNKNOWN)
    return thing->place;
  thing->place_state = BEING_FOUND;
  thing->place = thing->given;

  const FpKind *kind = fp_item_kind (thing->item);
  if (thing->laid_round >= 0)
    thing->place = find_place (self, (guint) thing->laid_round);
  else if (!lay_as_measured (self, i, &thing->place) && thing->on >= 0 && !(kind->flags & FP_KIND_ON_FLOOR))
    {
      /* What carried it is gone: it keeps its place on the plan, as that stood when it was measured. */
      const FpArrangement *in = thing->support >= 0 || self->before == NULL ? self : self->before;
      const FpStandingThing *support = fp_arrangement_get (in, (guint) thing->on);
      if (in == self)
        find_place (self, (guint) thing->on);
      if (kind->flags & FP_KIND_IN_WALL)
        thing->place = place_in_wall (support, thing->item);
      else if (kind->flags & FP_KIND_HUNG)
        thing->place = fp_place_compose (&support->place, &thing->given);
      else
        {
          FpPlace inner = fp_place_on_bearing (&support->extent.bearing, kind->anchor, &thing->extent.plan,
                                               &thing->given);
          thing->place = fp_place_compose (&support->place, &inner);
        }
    }
  thing->place_state = KNOWN;
  return thing->place;
}

static FpBox
plan_box (const FpStandingThing *thing)
{
  FpBox box = turned_box (&thing->extent.plan, thing->place.turn);
  if (fp_box_is_empty (&box))
    return box;
  return (FpBox) { box.x0 + thing->place.x, box.y0 + thing->place.y, box.x1 + thing->place.x, box.y1 + thing->place.y };
}

/* --- levels --------------------------------------------------------------- */

static void
gather_floors (FpArrangement *self)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      const FpStandingThing *thing = fp_arrangement_get (self, i);
      const FpKind *kind = fp_item_kind (thing->item);
      if (thing->present && (kind->flags & FP_KIND_SURVEY) && (kind->flags & FP_KIND_FROM_DATUM)
          && kind->role != FP_ROLE_GALLERY)
        fp_floor_set_add (self->floors, kind, &thing->form, &thing->place, 0, i);
    }
}

/* Sills and heads of openings are counted from it. */
static double
foot_of_wall (const FpStandingThing *wall)
{
  int base = fp_kind_param_index (fp_item_kind (wall->item), "base");
  return base >= 0 ? wall->form.param[base] : 0;
}

/* A flight rises from the floor just before its lowest riser, though that may stand at the very edge of the upper
 * floor. */
static double
floor_under (const FpArrangement *self, const FpStandingThing *thing)
{
  FpPoint at = { thing->place.x, thing->place.y };
  if (fp_item_kind (thing->item)->role == FP_ROLE_STEPS)
    {
      gboolean found;
      FpPoint before = fp_place_point (&thing->place, (FpPoint) { 0, -BEFORE_RISER });
      double level = fp_floor_set_at (self->floors, before, &found);
      if (found)
        return level;
    }
  return fp_floor_set_at (self->floors, at, NULL);
}

static double
find_level (FpArrangement *self, guint i)
{
  FpStandingThing *thing = fp_arrangement_get (self, i);
  if (thing->level_state != UNKNOWN)
    return thing->level;
  thing->level_state = BEING_FOUND;

  const FpKind *kind = fp_item_kind (thing->item);
  if (kind->flags & FP_KIND_FROM_DATUM)
    thing->level = 0;
  else if (thing->support >= 0)
    {
      const FpStandingThing *support = fp_arrangement_get (self, (guint) thing->support);
      thing->level = find_level (self, (guint) thing->support);
      thing->level += kind->flags & FP_KIND_IN_WALL ? foot_of_wall (support) : support->extent.top;
    }
  else
    thing->level = floor_under (self, thing);
  thing->level_state = KNOWN;
  return thing->level;
}

/* Kinds are told of the ground only where it matters: most floors are level. */
static void
lay_ground (FpArrangement *self, FpStandingThing *thing)
{
  if (thing->support >= 0 || (fp_item_kind (thing->item)->flags & FP_KIND_FROM_DATUM)
      || fp_floor_set_is_level (self->floors, &thing->plan, thing->level))
    return;
  Ground *ground = g_new (Ground, 1);
  *ground = (Ground) { self->floors, thing->place, thing->level };
  thing->ground = ground;
  thing->form.ground = ground_at;
  thing->form.ground_data = ground;
  fp_item_kind (thing->item)->extent (&thing->form, &thing->extent);
  thing->plan = plan_box (thing);
}

static double
lowest_floor_at_corners (const FpArrangement *self, const FpStandingThing *thing)
{
  double lowest = G_MAXDOUBLE;
  for (guint i = 0; i < thing->form.n_corners; i++)
    {
      gboolean found;
      double level = fp_floor_set_at (self->floors, fp_place_point (&thing->place, thing->form.corner[i]), &found);
      if (found)
        lowest = MIN (lowest, level);
    }
  return lowest < G_MAXDOUBLE ? lowest : 0;
}

/* People and ministers stand on a footpace or a gallery as on a floor; on an altar nobody does. */
static double
find_floor (const FpArrangement *self, const FpStandingThing *thing)
{
  guint depth = 0;
  while (thing->support >= 0 && depth++ < self->thing->len)
    {
      const FpStandingThing *support = fp_arrangement_get (self, (guint) thing->support);
      if (fp_item_kind (support->item)->surfaces != NULL)
        return support->level + support->extent.top;
      thing = support;
    }
  if (fp_item_kind (thing->item)->flags & FP_KIND_FROM_DATUM)
    return lowest_floor_at_corners (self, thing);
  return thing->level;
}

/* --- all of it ------------------------------------------------------------ */

static void
gather (FpArrangement *self, const FpProject *project, const FpAlternative *alternative, GHashTable *away)
{
  guint n_survey = fp_project_n_survey (project);
  guint n_items = alternative != NULL ? fp_alternative_n_items (alternative) : 0;
  g_autoptr (GPtrArray) on = g_ptr_array_sized_new (n_survey + n_items);

  self->thing = g_array_sized_new (FALSE, FALSE, sizeof (FpStandingThing), n_survey + n_items);
  for (guint i = 0; i < n_survey; i++)
    add_thing (self, fp_project_survey (project, i), TRUE, alternative, on);
  for (guint i = 0; i < n_items; i++)
    add_thing (self, fp_alternative_item (alternative, i), FALSE, alternative, on);
  for (guint i = 0; away != NULL && i < self->thing->len; i++)
    if (g_hash_table_contains (away, fp_arrangement_get (self, i)->item))
      fp_arrangement_get (self, i)->present = FALSE;
  find_supports (self, on);
  settle_supports (self);
  find_laid_round (self);
}

void
fp_arrangement_init (FpArrangement *self, const FpProject *project, const FpAlternative *alternative,
                     FpFacing facing, const FpArrangement *before, FpFloorSet *floors, GHashTable *away)
{
  self->before = before;
  self->floors = floors;
  gather (self, project, alternative, away);
  init_forms (self, facing);
  for (guint i = 0; i < self->thing->len; i++)
    find_extent (self, i);
  for (guint i = 0; i < self->thing->len; i++)
    find_place (self, i);
  gather_floors (self);
  for (guint i = 0; i < self->thing->len; i++)
    {
      find_level (self, i);
      FpStandingThing *thing = fp_arrangement_get (self, i);
      thing->plan = plan_box (thing);
      lay_ground (self, thing);
    }
  for (guint i = 0; i < self->thing->len; i++)
    fp_arrangement_get (self, i)->floor = find_floor (self, fp_arrangement_get (self, i));
}

void
fp_arrangement_clear (FpArrangement *self)
{
  for (guint i = 0; i < self->thing->len; i++)
    {
      g_free (fp_arrangement_get (self, i)->hole);
      g_free (fp_arrangement_get (self, i)->ground);
    }
  g_clear_pointer (&self->thing, g_array_unref);
}
