/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bier-way.c - the way on which a bier gets through: looked for in coarse steps, and about what was found in finer ones */
#include "bier-path.h"
#include "ways-private.h"

#include <math.h>

#define COARSEST 100.0 /* mm */
#define TURNS    30    /* in half a circle, of the coarsest */
#define TIMES    4     /* that steps are halved             */
#define TOLD     250.0 /* mm: between points of the route that is told           */
#define TO_SPARE 50.0  /* mm: what is wider by so much turns with ease           */
#define COURT    1500.0 /* mm: outside, beyond either jamb                        */
#define AT_WALL  60.0  /* mm: an edge so near to the wall's face lies along it   */
#define INSIDE   600.0 /* mm: who has come in stands so far behind the wall      */
#define REACH    900.0 /* mm: and may be anywhere about there                    */

/* --- told --------------------------------------------------------------------------------- */

static void
tell_route (FpWay *way, const GArray *poses)
{
  g_autoptr (GArray) route = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < poses->len; i++)
    {
      const FpBierPose *pose = &g_array_index (poses, FpBierPose, i);
      const FpPoint at = { pose->x, pose->y }, *last = route->len > 0 ? &g_array_index (route, FpPoint, route->len - 1) : NULL;

      if (last == NULL || i + 1 == poses->len || hypot (at.x - last->x, at.y - last->y) >= TOLD)
        {
          way->length += last != NULL ? hypot (at.x - last->x, at.y - last->y) : 0;
          g_array_append_val (route, at);
        }
    }
  way->n_route = route->len;
  way->route = g_memdup2 (route->data, route->len * sizeof (FpPoint));
}

static FpPoint
on_bier (const FpBierPose *pose, double along, double across)
{
  return (FpPoint) { pose->x + along * cos (pose->turn) - across * sin (pose->turn),
                     pose->y + along * sin (pose->turn) + across * cos (pose->turn) };
}

/* What it nearly touches is told; drawn is its width in its middle. */
static void
tell_tightest (FpWay *way, const FpScene *scene, FpBierRoom *room, double length, const FpBierTightest *tightest)
{
  const double half = tightest->width / 2;
  const FpBierPose *pose = &tightest->at;
  FpBierSides sides;

  fp_bier_room_sides (room, pose, &sides);
  way->narrow[0] = sides.at[0];
  way->narrow[1] = sides.at[1];
  fp_way_tell_beside (scene, way);
  way->narrow[0] = on_bier (pose, 0, half);
  way->narrow[1] = on_bier (pose, 0, -half);
  way->n_outline = 4;
  way->outline = g_new (FpPoint, 4);
  for (guint i = 0; i < 4; i++)
    way->outline[i] = on_bier (pose, i == 0 || i == 3 ? -length / 2 : length / 2, i < 2 ? -half : half);
}

/* --- through a door ---------------------------------------------------------------------------- */

static FpPoint
by_door (const FpBierDoor *door, FpPoint jamb, double aside, double out)
{
  const double dx = door->jamb[1].x - door->jamb[0].x, dy = door->jamb[1].y - door->jamb[0].y, d = hypot (dx, dy);

  return (FpPoint) { jamb.x + dx / d * aside + door->out.x * out, jamb.y + dy / d * aside + door->out.y * out };
}

static void
add_run (GArray *out, FpPoint a, FpPoint b)
{
  const FpBar run = { a, b };

  if (hypot (b.x - a.x, b.y - a.y) > 1e-6)
    g_array_append_val (out, run);
}

/* What of an edge along the wall lies on either side of the door; the whole of any other. */
static void
add_less_door (GArray *out, const FpBierDoor *door, const FpBar *edge)
{
  const double dx = door->jamb[1].x - door->jamb[0].x, dy = door->jamb[1].y - door->jamb[0].y, d = hypot (dx, dy);
  const FpPoint end[2] = { edge->a, edge->b };
  double at[2];

  for (guint i = 0; i < 2; i++)
    {
      const double x = end[i].x - door->jamb[0].x, y = end[i].y - door->jamb[0].y;
      at[i] = (x * dx + y * dy) / d;
      if (fabs (x * door->out.x + y * door->out.y) > AT_WALL)
        at[0] = at[1] = NAN; /* it does not lie along the wall */
    }
  if (isnan (at[0]) || isnan (at[1]) || MAX (at[0], at[1]) < 0 || MIN (at[0], at[1]) > d)
    {
      g_array_append_val (out, *edge);
      return;
    }
  if (MIN (at[0], at[1]) < 0)
    add_run (out, at[0] < at[1] ? edge->a : edge->b, door->jamb[0]);
  if (MAX (at[0], at[1]) > d)
    add_run (out, at[0] > at[1] ? edge->a : edge->b, door->jamb[1]);
}

/* All that a bier may not cross: the jambs through the wall, and outside a court before it, too. */
static GArray *
edges_with_door (const FpScene *scene, const FpBierDoor *door, double length)
{
  const GArray *edges = fp_room_edges (scene, FP_GAIT_ON_FOOT);
  GArray *out = g_array_sized_new (FALSE, FALSE, sizeof (FpBar), edges->len + 8);
  FpPoint far[2];

  if (door == NULL)
    {
      g_array_append_vals (out, edges->data, edges->len);
      return out;
    }
  for (guint i = 0; i < edges->len; i++)
    add_less_door (out, door, &g_array_index (edges, FpBar, i));
  for (guint i = 0; i < 2; i++)
    {
      const double side = i == 0 ? -COURT : COURT;
      const FpPoint face = by_door (door, door->jamb[i], 0, door->thickness), corner = by_door (door, door->jamb[i], side, door->thickness);

      far[i] = by_door (door, door->jamb[i], side, door->thickness + 2 * length);
      add_run (out, door->jamb[i], face);
      add_run (out, face, corner);
      add_run (out, corner, far[i]);
    }
  add_run (out, far[0], far[1]);
  return out;
}

/* --- together -------------------------------------------------------------------------------- */

/* @widest: no bier can be wider than a round body that gets there, and is not asked for.  Finer steps can tell nothing more of
 * a way that is so wide already, or of one on which a bier as wide as is asked for has its room. */
static FpBierPath *
search (FpBierRoom *room, double length, double most, double widest, const FpBierEnd *from, const FpBierEnd *to)
{
  const double enough = MIN (most, widest - FP_BIER_SAMPLE);
  FpBierAsk ask = { .room = room, .from = from, .to = to, .most = widest, .step = COARSEST, .turns = TURNS };
  g_autoptr (GArray) poses = fp_bier_search (&ask);
  FpBierPath *best;

  if (poses->len == 0)
    return NULL;
  best = fp_bier_path_new (room, length, most, g_steal_pointer (&poses));
  for (guint i = 0; i < TIMES && fp_bier_path_tightest (best).width < enough; i++)
    {
      fp_bier_path_refine (best, &ask, enough);
      ask.step /= 2;
      ask.turns *= 2;
    }
  return best;
}

/* Of a body that is as long as it is wide.  A body without hollows gets through a door only where its least width does. */
static double
widest_round (const FpScene *scene, const FpBierEnd *from, const FpBierDoor *door, const FpBierEnd *to)
{
  const FpWayEnd end = { to->at, to->reach };
  FpWayEnd begin = { from->at, from->reach };
  g_autoptr (FpWay) way = NULL;

  if (door != NULL)
    begin = (FpWayEnd) { { (door->jamb[0].x + door->jamb[1].x) / 2 - door->out.x * INSIDE,
                           (door->jamb[0].y + door->jamb[1].y) / 2 - door->out.y * INSIDE }, REACH };
  way = fp_way_widest (scene, FP_GAIT_ON_FOOT, &begin, &end, NULL, 0);
  return door == NULL ? way->width
                      : MIN (way->width, hypot (door->jamb[1].x - door->jamb[0].x, door->jamb[1].y - door->jamb[0].y));
}

FpWay *
fp_way_of_bier (const FpScene *scene, double length, double most, const FpBierEnd *from, const FpBierDoor *door, const FpBierEnd *to)
{
  const double widest = MIN (most + TO_SPARE, widest_round (scene, from, door, to));
  FpWay *way = g_new0 (FpWay, 1);
  FpBierTightest tightest = { 0, { 0, 0, 0 } };
  g_autoptr (FpBierPath) path = NULL;
  FpBierRoom *room;

  way->owner[0] = way->owner[1] = -1;
  if (!(widest > 0))
    return way;
  /* A little more, so that what stands aside is found to be aside. */
  room = fp_bier_room_new (edges_with_door (scene, door, length), length, most + TO_SPARE + COARSEST);
  path = search (room, length, most, widest, from, to);
  if (path != NULL)
    tightest = fp_bier_path_tightest (path);
  if (tightest.width >= FP_WAY_LEAST)
    {
      way->width = tightest.width;
      way->tolerance = FP_BIER_SAMPLE;
      tell_route (way, path->poses);
      if (tightest.width < most)
        tell_tightest (way, scene, room, length, &tightest);
    }
  fp_bier_room_free (room);
  return way;
}
