/* SPDX-License-Identifier: GPL-3.0-or-later */
/* whereabouts.c - from where a builder sets out what stands on the floor
 *
 * Across the church from the axis to the middle of the thing; along it from
 * the thing's nearer edge to the nearest line that is there before the thing is:
 * the east wall or the reredos, an edge of the altar steps or of a flight, a face of the rail.
 */
#include "between-private.h"

#include <math.h>

/* Nearer than this to the axis a thing stands on it, and nothing is told; mm. */
#define ON_AXIS 0.5

/* What is closer than this touches, mm. */
#define TOUCHES 1.0

/* A line that does not run past the thing is no help this near: nothing could be told by it; mm. */
#define LEAST_ASIDE 100.0

/* A line that does not run past the thing has to be carried on to it: each mm of that counts as so many of distance
 * (design judgement). */
#define PER_MM_ASIDE 0.5

/* Lesser than what the altar, its steps and the rail have to say, and of use to nobody at small scales. */
#define RANK 5u

/* A line across the church from which is measured. */
typedef struct { double y, x0, x1; const FpPlaced *of; /* NULL: the building */ } Line;

/* --- what is set out ---------------------------------------------------------------- */

static gboolean
is_on_floor (const FpBetweenSearch *s, const FpPlaced *p)
{
  return p->support < 0
         || ((fp_item_kind (p->item)->flags & FP_KIND_ON_FLOOR) != 0
             && fp_item_kind (s->placed[p->support].item)->role == FP_ROLE_FOOTPACE);
}

/* Altar, steps, rail and reredos are told by what lies between them. */
static gboolean
is_set_out (const FpBetweenSearch *s, const FpPlaced *p)
{
  const FpKind *kind = fp_item_kind (p->item);

  if (p->ghost || (kind->flags & FP_KIND_SURVEY) != 0 || p == s->altar || !is_on_floor (s, p))
    return FALSE;
  return kind->role != FP_ROLE_FOOTPACE && kind->role != FP_ROLE_RAIL && kind->role != FP_ROLE_REREDOS;
}

/* Turned by a multiple of the angle, degrees. */
static gboolean
is_square (const FpPlaced *p, double angle)
{
  return fabs (sin (G_PI * p->place.turn / angle)) < 1e-6;
}

/* --- the lines ------------------------------------------------------------------------ */

static void
add_line (GArray *lines, double y, const FpPlaced *of)
{
  const Line line = { y, of->plan.x0, of->plan.x1, of };

  g_array_append_val (lines, line);
}

/* The uppermost step reaches one tread into the floor above: the last edge is that of its riser. */
static void
add_flight (GArray *lines, const FpPlaced *p)
{
  const FpKind *kind = fp_item_kind (p->item);
  const double count = p->form.param[fp_kind_param_index (kind, "count")];
  const double tread = p->form.param[fp_kind_param_index (kind, "tread")];

  add_line (lines, fp_placed_point (p, (FpVec3) { 0, 0, 0 }).y, p);
  add_line (lines, fp_placed_point (p, (FpVec3) { 0, (count - 1) * tread, 0 }).y, p);
}

/* Of footpaces that on which Mass is celebrated. */
static void
add_lines_of (const FpBetweenSearch *s, const FpPlaced *p, GArray *lines)
{
  switch ((int) fp_item_kind (p->item)->role)
    {
    case FP_ROLE_RAIL:
      add_line (lines, fp_between_rail_face (p, TRUE), p);
      add_line (lines, fp_between_rail_face (p, FALSE), p);
      break;
    case FP_ROLE_STEPS:
      add_flight (lines, p);
      break;
    case FP_ROLE_REREDOS:
      add_line (lines, p->plan.y0, p);
      break;
    case FP_ROLE_FOOTPACE:
      if (p == s->footpace)
        {
          add_line (lines, p->plan.y0, p);
          add_line (lines, p->plan.y1, p);
        }
      break;
    default:
      break;
    }
}

static GArray *
lines_of (const FpBetweenSearch *s)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));

  for (guint i = 0; i < s->n_placed; i++)
    if (!s->placed[i].ghost && is_square (&s->placed[i], 180))
      add_lines_of (s, &s->placed[i], lines);
  return lines;
}

/* From the nearer edge of the thing; NAN where the line runs through it. */
static double
distance (const FpPlaced *p, const Line *line)
{
  return line->y <= p->plan.y0 ? p->plan.y0 - line->y : line->y >= p->plan.y1 ? line->y - p->plan.y1 : NAN;
}

static double
aside (const FpPlaced *p, const Line *line)
{
  return fmax (0, fmax (line->x0 - p->plan.x1, p->plan.x0 - line->x1));
}

/* FALSE where there is none, or the thing stands against it. */
static gboolean
nearest_line (const FpBetweenSearch *s, const GArray *lines, const FpPlaced *p, Line *best)
{
  double least = G_MAXDOUBLE;
  FpBox face;

  if (fp_between_face_ahead (s, p->plan.x0, p->plan.x1, (p->plan.y0 + p->plan.y1) / 2, p->level + FP_REACH_HEIGHT, &face)
      && face.y0 > p->plan.y1 - TOUCHES)
    {
      *best = (Line) { face.y0, face.x0, face.x1, NULL };
      least = fmax (0, face.y0 - p->plan.y1);
    }
  for (guint i = 0; i < lines->len; i++)
    {
      const Line *line = &g_array_index (lines, Line, i);
      const double apart = distance (p, line), costs = apart + PER_MM_ASIDE * aside (p, line);

      if (isnan (apart) || costs >= least || (apart < LEAST_ASIDE && aside (p, line) > 0))
        continue;
      least = costs;
      *best = *line;
    }
  return least < G_MAXDOUBLE && !(distance (p, best) < TOUCHES);
}

/* --- what is measured --------------------------------------------------------------------- */

static void
add (FpBetweenSearch *s, const FpPlaced *p, const FpPlaced *from, FpBetween one)
{
  one.item = one.of = g_intern_string (fp_item_id (p->item));
  one.other = from != NULL ? g_intern_string (fp_item_id (from->item)) : NULL;
  one.sort = FP_STRETCH_PLACE;
  one.is_whereabouts = TRUE;
  g_array_append_val (s->out, one);
}

/* From where to where a line along the church through its origin runs over the thing. */
static void
find_depth (const FpPlaced *p, double span[2])
{
  const FpBox *plan = &p->extent.plan;
  const double turn = p->place.turn * G_PI / 180, way[2] = { sin (turn), cos (turn) };
  const double lo[2] = { plan->x0, plan->y0 }, hi[2] = { plan->x1, plan->y1 };
  double back = -G_MAXDOUBLE, forth = G_MAXDOUBLE;

  for (guint i = 0; i < 2; i++)
    if (fabs (way[i]) > 1e-9)
      {
        back = fmax (back, fmin (lo[i] / way[i], hi[i] / way[i]));
        forth = fmin (forth, fmax (lo[i] / way[i], hi[i] / way[i]));
      }
  span[0] = p->place.y + fmin (back, 0);
  span[1] = p->place.y + fmax (forth, 0);
}

/* What a chair or an ambo is set out by is the middle of itself, not of the step on which it stands: its origin. */
static void
add_from_axis (FpBetweenSearch *s, const FpPlaced *p)
{
  const double x = p->place.x, y = p->place.y;
  FpBetween one = { .spec = { -1, { x, y, p->level }, { 0, y, p->level }, 1u << FP_VIEW_PLAN, 1, RANK },
                    .span = { { 0, 0 }, { -G_MAXDOUBLE, G_MAXDOUBLE } } };

  find_depth (p, one.span[0]);
  if (fabs (x) > ON_AXIS)
    add (s, p, NULL, one);
}

/* The edge of the thing that faces the line; of one that is turned, its corner. */
static void
edge_towards (const FpPlaced *p, gboolean eastern, double span[2])
{
  const FpBox *box = &p->extent.plan;

  span[0] = p->plan.x0;
  span[1] = p->plan.x1;
  for (guint i = 0; i < 4 && !is_square (p, 90); i++)
    {
      const FpVec3 at = fp_placed_point (p, (FpVec3) { i % 2 ? box->x1 : box->x0, i / 2 ? box->y1 : box->y0, 0 });
      if (fabs (at.y - (eastern ? p->plan.y1 : p->plan.y0)) < TOUCHES / 10)
        span[0] = span[1] = at.x;
    }
}

static void
add_from_line (FpBetweenSearch *s, const FpPlaced *p, const Line *line)
{
  const gboolean eastern = line->y >= p->plan.y1;
  FpBetween one = { .span = { { 0, 0 }, { line->x0, line->x1 } } };
  double lo, hi, x;

  edge_towards (p, eastern, one.span[0]);
  lo = fmax (one.span[0][0], line->x0);
  hi = fmin (one.span[0][1], line->x1);
  /* Where the line does not pass the edge it is carried on to it. */
  one.slide[0] = lo < hi ? lo : one.span[0][0];
  one.slide[1] = lo < hi ? hi : one.span[0][1];
  x = (one.slide[0] + one.slide[1]) / 2;
  one.spec = (FpDimSpec) { -1, { x, eastern ? p->plan.y1 : p->plan.y0, p->level }, { x, line->y, p->level },
                           1u << FP_VIEW_PLAN, 1, RANK };
  add (s, p, line->of, one);
}

void
fp_between_add_whereabouts (FpBetweenSearch *s)
{
  g_autoptr (GArray) lines = lines_of (s);

  for (guint i = 0; i < s->n_placed; i++)
    {
      Line line = { 0 };

      if (!is_set_out (s, &s->placed[i]))
        continue;
      add_from_axis (s, &s->placed[i]);
      if (nearest_line (s, lines, &s->placed[i], &line))
        add_from_line (s, &s->placed[i], &line);
    }
}
