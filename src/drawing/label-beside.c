/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-beside.c - places for a name: inside its thing, and beside it at a leader */
#include "labels-private.h"

#include "pew-block.h"

#include <math.h>

/* Paper mm kept between a text and the border of the thing that it is lettered on, besides what it keeps of any line. */
#define EDGE 0.7

/* Distances of a text from its thing, tried in turn. */
static const double DISTANCES[] = { 3, 1.8, 6, 10, 15 };

/* A longer leader would wander over the drawing, mm. */
#define LEADER_MOST 22.0

/* --- inside --------------------------------------------------------------------- */

static gboolean
contains (const FpLettering *l, FpPoint paper)
{
  const FpPoint world = fp_view_from_paper (l->layout, paper), local = fp_place_unpoint (&l->placed->place, world);
  const FpBox *plan = &l->placed->extent.plan;

  if (fp_item_kind (l->placed->item)->role == FP_ROLE_PEWS)
    return fp_pews_contain (l->placed, world);
  return local.x >= plan->x0 && local.x <= plan->x1 && local.y >= plan->y0 && local.y <= plan->y1;
}

static gboolean
stands_on (const FpPlaced *placed, guint index, const FpPlaced *below)
{
  int on = placed[index].support;

  while (on >= 0 && &placed[on] != below)
    on = placed[on].support;
  return on >= 0;
}

/* On the mensa the name of the footpace would be read as that of the altar; a cloth on it is not told from it. */
static gboolean
is_on_what_it_carries (const FpLettering *l, FpPoint middle, double turn)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  const double w = turn == 0 ? l->words->widest : l->words->height, h = turn == 0 ? l->words->height : l->words->widest;
  const FpPoint a = fp_view_from_paper (l->layout, (FpPoint) { middle.x - w / 2, middle.y - h / 2 });
  const FpPoint b = fp_view_from_paper (l->layout, (FpPoint) { middle.x + w / 2, middle.y + h / 2 });
  const FpBox text = { a.x, a.y, b.x, b.y };

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && (fp_item_kind (placed[i].item)->flags & FP_KIND_HUNG) == 0
        && fp_box_overlaps (&placed[i].plan, &text) && stands_on (placed, i, l->placed))
      return TRUE;
  return FALSE;
}

/* The box of a turned thing is larger than the thing, and that of curved rows has empty corners. */
gboolean
fp_label_is_inside (const FpLettering *l, FpPoint middle, double turn)
{
  const FpPlace place = { middle.x, middle.y, turn };
  const double w = l->words->widest / 2 + FP_LABEL_CLEAR, h = l->words->height / 2 + FP_LABEL_CLEAR;

  for (int i = 0; i < 4; i++)
    if (!contains (l, fp_place_point (&place, (FpPoint) { i % 2 ? w : -w, i / 2 ? h : -h })))
      return FALSE;
  return !is_on_what_it_carries (l, middle, turn);
}

/* From the middle outwards. */
static gboolean
try_inside (FpLettering *l, FpLabel *label, const FpBox *in, double turn)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };
  const double w = turn == 0 ? l->words->widest : l->words->height, h = turn == 0 ? l->words->height : l->words->widest;
  const double free_x = in->x1 - in->x0 - w - 2 * EDGE, free_y = in->y1 - in->y0 - h - 2 * EDGE;

  if (free_x < 0 || free_y < 0)
    return FALSE;
  label->has_leader = FALSE;
  for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        const FpPoint middle = { in->x0 + EDGE + w / 2 + free_x * shares[i], in->y0 + EDGE + h / 2 + free_y * shares[j] };
        if (fp_label_is_inside (l, middle, turn) && fp_label_try (l, label, middle, turn))
          return TRUE;
      }
  return FALSE;
}

/* As it is read along the thing's own front: not standing on its head. */
static double
own_turn (const FpPlaced *placed)
{
  const double turn = remainder (placed->place.turn, 180);

  return turn <= -90 + 1e-6 ? turn + 180 : turn;
}

static gboolean
is_oblique (const FpPlaced *placed)
{
  return fabs (remainder (placed->place.turn, 90)) > 1;
}

/* Along the thing's own front, where it is turned. */
static gboolean
try_inside_turned (FpLettering *l, FpLabel *label)
{
  static const double shares[] = { 0.5, 0.3, 0.7, 0.1, 0.9 };
  const FpBox *plan = &l->placed->extent.plan;
  const double turn = own_turn (l->placed);

  label->has_leader = FALSE;
  for (guint j = 0; is_oblique (l->placed) && j < G_N_ELEMENTS (shares); j++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        const FpPoint local = { plan->x0 + (plan->x1 - plan->x0) * shares[i],
                                plan->y0 + (plan->y1 - plan->y0) * shares[j] };
        const FpPoint middle = fp_view_to_paper (l->layout, fp_place_point (&l->placed->place, local));
        if (fp_label_is_inside (l, middle, turn) && fp_label_try (l, label, middle, turn))
          return TRUE;
      }
  return FALSE;
}

gboolean
fp_label_try_inside (FpLettering *l, FpLabel *label, const FpBox *in)
{
  return try_inside (l, label, in, 0) || try_inside (l, label, in, 90) || try_inside_turned (l, label);
}

/* --- beside --------------------------------------------------------------------- */

static FpPoint
nearest_on (FpPoint a, FpPoint b, FpPoint p)
{
  const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  const double t = square > 0 ? CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0, 1) : 0;

  return (FpPoint) { a.x + t * dx, a.y + t * dy };
}

/* The point of the thing's own lines nearest to @p; @p where it has none. */
static FpPoint
nearest_own (const FpLettering *l, FpPoint p)
{
  FpPoint nearest = p;
  double least = G_MAXDOUBLE;

  for (guint i = 0; i + 1 < l->own->len; i += 2)
    {
      const FpPoint q = nearest_on (g_array_index (l->own, FpPoint, i), g_array_index (l->own, FpPoint, i + 1), p);
      const double d = hypot (q.x - p.x, q.y - p.y);
      if (d < least)
        {
          least = d;
          nearest = q;
        }
    }
  return nearest;
}

/* Where a text may stand beside its thing: to which side, and at what share of that side the leader begins. */
typedef struct { int dx, dy; double share; } Beside;

static const Beside BESIDE[] = {
  { 1, 0, 0.5 },   { -1, 0, 0.5 },   { 0, -1, 0.5 },  { 0, 1, 0.5 },   { 1, 0, 0.2 },   { -1, 0, 0.2 }, { 1, 0, 0.8 },
  { -1, 0, 0.8 },  { 1, -1, 0 },     { -1, -1, 0 },   { 1, 1, 0 },     { -1, 1, 0 },    { 0, -1, 0.2 }, { 0, -1, 0.8 },
  { 0, 1, 0.2 },   { 0, 1, 0.8 },    { 0, -1, 0.08 }, { 0, -1, 0.92 }, { 0, 1, 0.08 },  { 0, 1, 0.92 },
};

/* The box of a turned thing has empty corners: there a leader ends on the outline instead. */
FpPoint
fp_label_end_on_thing (const FpLettering *l, FpPoint from)
{
  const FpPoint own = nearest_own (l, from);

  return contains (l, from) && hypot (own.x - from.x, own.y - from.y) <= 0.8 ? from : own;
}

G_STATIC_ASSERT (G_N_ELEMENTS (DISTANCES) * G_N_ELEMENTS (BESIDE) == FP_LABEL_BESIDE);

/* A name that finds no place is tried at the same ones again and again, with other leaders and over the axis: whether a
 * text has room there is looked up once, for none is taken meanwhile. */
static gboolean
is_free_beside (FpLettering *l, FpPoint text, guint place)
{
  FpBeside *known = &l->beside[l->words - l->ways][place];

  if (!fp_label_text_keeps_off_axis (l, text, 0))
    return FALSE;
  if (*known == FP_BESIDE_UNKNOWN)
    *known = fp_label_text_has_room (l, text, 0) ? FP_BESIDE_ROOM : FP_BESIDE_NONE;
  return *known == FP_BESIDE_ROOM;
}

static gboolean
try_beside (FpLettering *l, FpLabel *label, const FpBox *thing, guint place)
{
  const double distance = DISTANCES[place / G_N_ELEMENTS (BESIDE)];
  const Beside *to = &BESIDE[place % G_N_ELEMENTS (BESIDE)];
  const double half_w = l->words->widest / 2, half_h = l->words->height / 2;
  const FpPoint on = { thing->x0 + (thing->x1 - thing->x0) * to->share,
                       thing->y0 + (thing->y1 - thing->y0) * to->share };
  /* A leader on the axis could not be told from it. */
  const double aside = to->dx == 0 && fabs (on.x - l->axis) < 1 ? MIN (2, (thing->x1 - thing->x0) / 4) : 0;
  /* The leader begins on the edge, a little inside, and ends before the text. */
  const FpPoint from = { to->dx == 0 ? on.x + aside : to->dx > 0 ? thing->x1 - 0.4 : thing->x0 + 0.4,
                         to->dy == 0 ? on.y : to->dy > 0 ? thing->y1 - 0.4 : thing->y0 + 0.4 };
  const FpPoint text = {
    to->dx == 0 ? on.x : (to->dx > 0 ? thing->x1 : thing->x0) + to->dx * (distance + half_w),
    to->dy == 0 ? on.y : (to->dy > 0 ? thing->y1 : thing->y0) + to->dy * (distance + half_h),
  };

  if (!is_free_beside (l, text, place))
    return FALSE;
  label->has_leader = TRUE;
  label->leader[0] = fp_label_end_on_thing (l, from);
  label->leader[1] = (FpPoint) { to->dx == 0 ? on.x + aside : text.x - to->dx * (half_w + FP_LABEL_TO_LEADER),
                                 to->dx != 0 ? text.y : text.y - to->dy * (half_h + FP_LABEL_TO_LEADER) };
  label->shelf = label->leader[1];
  return hypot (label->leader[1].x - label->leader[0].x, label->leader[1].y - label->leader[0].y) < LEADER_MOST
         && fp_label_try (l, label, text, 0);
}

gboolean
fp_label_try_around (FpLettering *l, FpLabel *label, const FpBox *thing)
{
  for (guint place = 0; place < FP_LABEL_BESIDE; place++)
    if (try_beside (l, label, thing, place))
      return TRUE;
  return FALSE;
}
