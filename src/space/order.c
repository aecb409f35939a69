/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "order-private.h"
#include "underfoot.h"

#include <math.h>

/* Design judgement, mm. */
#define HALF_BODY  250.0 /* the middle of a server from what he stands at      */
#define PASSAGE    550.0 /* behind an altar, that he passes there at all       */
#define MIDDLE     5.0   /* this near to the axis is on it                     */
#define SAME       2.0   /* candles as far from the cross as each other        */

/* --- the axis ----------------------------------------------------------------- */

/* In the altar's own coordinates. */
static FpPoint
in_altar (const FpOrder *self, FpVec3 p)
{
  return fp_place_unpoint (&self->altar->place, (FpPoint) { p.x, p.y });
}

static const FpPlaced *
stands_over_altar (const FpOrder *self, FpRole role)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (self->scene, &n);
  const double half = (self->altar->extent.plan.x1 - self->altar->extent.plan.x0) / 2;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint at = in_altar (self, (FpVec3) { placed[i].place.x, placed[i].place.y, 0 });

      if (!placed[i].ghost && fp_item_kind (placed[i].item)->role == role && fabs (at.x) < half)
        return &placed[i];
    }
  return NULL;
}

/* Of the cross; where there is none, of the altar. */
static double
axis (const FpOrder *self)
{
  const FpPlaced *cross = stands_over_altar (self, FP_ROLE_CRUCIFIX);

  return cross != NULL ? in_altar (self, (FpVec3) { cross->place.x, cross->place.y, 0 }).x : 0;
}

static gboolean
is_good_friday (const FpOrder *self)
{
  return fp_setting_celebration (fp_scene_setting (self->scene)) == FP_CELEBRATION_GOOD_FRIDAY;
}

/* --- where the server stands ---------------------------------------------------- */

/* He stands at the place that brings him nearest to the wick. */
static void
try_stand (const FpOrder *self, FpOrderLight *light, FpPoint local)
{
  const FpPoint at = fp_place_point (&self->altar->place, local);
  const double level = fp_level_underfoot (self->scene, at, self->altar->level);
  const double away = sqrt (pow (light->at.x - at.x, 2) + pow (light->at.y - at.y, 2)
                            + pow (light->at.z - level - self->spec.shoulder, 2));

  if (light->away > 0 && away >= light->away)
    return;
  light->away = away;
  light->stand = (FpVec3) { at.x, at.y, level };
}

static void
stand_at_altar (const FpOrder *self, FpOrderLight *light, FpPoint wick)
{
  const FpBox *b = &self->altar->extent.plan;
  const double x = CLAMP (wick.x, b->x0, b->x1), y = CLAMP (wick.y, b->y0, b->y1);
  const double behind = fp_scene_room_behind_altar (self->scene, fp_scene_celebrated_altar (self->scene), NULL);

  try_stand (self, light, (FpPoint) { x, b->y0 - HALF_BODY });
  try_stand (self, light, (FpPoint) { b->x0 - HALF_BODY, y });
  try_stand (self, light, (FpPoint) { b->x1 + HALF_BODY, y });
  if (behind < 0 || behind >= PASSAGE)
    try_stand (self, light, (FpPoint) { x, b->y1 + HALF_BODY });
}

static void
find_stand (const FpOrder *self, FpOrderLight *light)
{
  const FpPoint wick = in_altar (self, light->at);
  const FpBox *b = &self->altar->extent.plan;
  const gboolean over = wick.x > b->x0 - HALF_BODY && wick.x < b->x1 + HALF_BODY && wick.y > b->y0 - HALF_BODY
                        && wick.y < b->y1 + HALF_BODY;

  if (over)
    stand_at_altar (self, light, wick);
  else /* it stands by itself: before it */
    try_stand (self, light, (FpPoint) { wick.x, wick.y - 2 * HALF_BODY });
  light->height = light->at.z - light->stand.z;
  light->reached = light->away <= self->spec.arm + self->spec.pole;
}

/* --- the order -------------------------------------------------------------------- */

/* @unit: of candelabra that of the nearest of their candles on that side, so that they are lit together. */
typedef struct { FpOrderLight light; double from_cross, unit; } Ranked;

/* The middle, then from the cross outward; as far out, the higher first. */
static int
by_distance (gconstpointer a, gconstpointer b)
{
  const Ranked *p = a, *q = b;

  if (p->light.middle != q->light.middle)
    return p->light.middle ? -1 : 1;
  if (fabs (p->unit - q->unit) > SAME)
    return p->unit < q->unit ? -1 : 1;
  if (p->light.owner != q->light.owner)
    return p->light.owner < q->light.owner ? -1 : 1;
  if (fabs (p->from_cross - q->from_cross) > SAME)
    return p->from_cross < q->from_cross ? -1 : 1;
  return (p->light.at.z < q->light.at.z) - (p->light.at.z > q->light.at.z);
}

static void
keep_together (const FpOrder *self, GArray *ranked)
{
  const FpPlaced *placed = fp_scene_placed (self->scene, NULL);

  for (guint i = 0; i < ranked->len; i++)
    for (guint k = 0; k < ranked->len; k++)
      {
        Ranked *a = &g_array_index (ranked, Ranked, i), *b = &g_array_index (ranked, Ranked, k);

        if (a->light.owner == b->light.owner && a->light.side == b->light.side
            && fp_item_kind (placed[a->light.owner].item)->role == FP_ROLE_BRANCHED_LIGHTS)
          a->unit = MIN (a->unit, b->from_cross);
      }
}

static GArray *
gather (const FpOrder *self)
{
  g_autoptr (GArray) lights = fp_scene_lights (self->scene);
  const FpPlaced *placed = fp_scene_placed (self->scene, NULL);
  GArray *out = g_array_new (FALSE, TRUE, sizeof (Ranked));
  const double on_axis = axis (self);

  for (guint i = 0; i < lights->len; i++)
    {
      const FpLight *light = &g_array_index (lights, FpLight, i);
      const FpSetThing *thing = fp_setting_find (fp_scene_setting (self->scene), fp_item_id (placed[light->owner].item));
      const double x = in_altar (self, light->at).x - on_axis;
      Ranked ranked = { { .at = light->at, .owner = light->owner, .beside = -1 }, fabs (x), 0 };

      if (!light->lit || thing == NULL || !thing->about)
        continue;
      ranked.light.middle = fabs (x) < MIDDLE;
      ranked.light.side = ranked.light.middle ? self->spec.first : x > 0 ? FP_EPISTLE_SIDE : FP_GOSPEL_SIDE;
      find_stand (self, &ranked.light);
      ranked.light.beside = fp_flame_nearest (self->scene, light->at, &ranked.light.beside_by, NULL);
      ranked.unit = ranked.from_cross;
      g_array_append_val (out, ranked);
    }
  keep_together (self, out);
  g_array_sort (out, by_distance);
  return out;
}

/* Numbers those of one side from @number on, and returns the next. */
static guint
take_side (FpOrder *self, const GArray *ranked, FpAltarSide side, gboolean middle, guint server, guint number)
{
  for (guint i = 0; i < ranked->len; i++)
    {
      FpOrderLight light = g_array_index (ranked, Ranked, i).light;

      if (light.middle != middle || (!middle && light.side != side))
        continue;
      light.server = server;
      light.number = number++;
      g_array_append_val (self->lights, light);
    }
  return number;
}

static int
by_number (gconstpointer a, gconstpointer b)
{
  const FpOrderLight *p = a, *q = b;

  return p->number != q->number ? (p->number > q->number) - (p->number < q->number)
                                : (p->server > q->server) - (p->server < q->server);
}

static void
number_lights (FpOrder *self)
{
  g_autoptr (GArray) ranked = gather (self);
  const FpAltarSide first = self->spec.first, other = first == FP_EPISTLE_SIDE ? FP_GOSPEL_SIDE : FP_EPISTLE_SIDE;
  const guint after_middle = take_side (self, ranked, first, TRUE, 0, 1);
  const guint next = take_side (self, ranked, first, FALSE, 0, after_middle);

  take_side (self, ranked, other, FALSE, self->spec.servers > 1 ? 1 : 0, self->spec.servers > 1 ? after_middle : next);
  g_array_sort (self->lights, by_number);
}

FpOrder *
fp_order_new (const FpScene *set, const FpOrderSpec *spec)
{
  FpOrder *self = g_new0 (FpOrder, 1);
  const int altar = fp_scene_celebrated_altar (set);

  self->scene = set;
  self->spec = *spec;
  self->lights = g_array_new (FALSE, FALSE, sizeof (FpOrderLight));
  if (altar < 0 || fp_scene_setting (set) == NULL)
    return self;
  self->altar = &fp_scene_placed (set, NULL)[altar];
  self->genuflects = stands_over_altar (self, FP_ROLE_TABERNACLE) != NULL && !is_good_friday (self);
  number_lights (self);
  return self;
}

void
fp_order_free (FpOrder *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->lights);
  g_free (self);
}

const FpOrderSpec *
fp_order_spec (const FpOrder *self)
{
  return &self->spec;
}

const FpOrderLight *
fp_order_lights (const FpOrder *self, guint *n)
{
  *n = self->lights->len;
  return (const FpOrderLight *) (gpointer) self->lights->data;
}

gboolean
fp_order_genuflects (const FpOrder *self)
{
  return self->genuflects;
}
