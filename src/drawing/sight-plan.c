/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-plan.c - places marked by what they see, and lines of sight */
#include "footpace/sight-drawing.h"

#include "blank-near.h"

#include <math.h>

#define RADIUS_MOST  1.7    /* paper mm */
#define RADIUS_LEAST 0.35
#define HALF_SEAT    190.0  /* church mm: two circles side by side do not touch */
#define SMALL        0.8    /* paper mm: whoever sees all of it is drawn more quietly, or he would look as full as who sees nothing */
#define QUIET        0.7    /* of the radius, then                 */
#define CORNERS      24     /* of a whole circle, filled          */
#define LETTERS      FP_SIGHT_KEY_LETTERS
#define CROSS        1.6
#define LEADER_FROM  3.5    /* paper mm: nearer words need none    */
#define KEY_STEP     FP_SIGHT_KEY_STEP
#define KEY_RADIUS   1.7

double
fp_sight_mark_radius (double scale)
{
  return CLAMP (HALF_SEAT / scale, RADIUS_LEAST, RADIUS_MOST);
}

/* --- one circle -------------------------------------------------------------------- */

/* Of a circle filled from below over this share of its area, half the angle that the level cuts from its middle. */
static double
half_angle (double share)
{
  double low = 0, high = 2 * G_PI;

  for (guint i = 0; i < 40; i++)
    {
      const double angle = (low + high) / 2;
      if ((angle - sin (angle)) / (2 * G_PI) < share)
        low = angle;
      else
        high = angle;
    }
  return low / 2;
}

static void
fill_from_below (FpDrawing *drawing, FpPoint at, double radius, double share, FpFill fill)
{
  const double half = half_angle (share);
  FpPoint corner[CORNERS + 1];

  for (guint i = 0; i <= CORNERS; i++)
    {
      const double angle = -G_PI / 2 - half + 2 * half * i / CORNERS;
      corner[i] = (FpPoint) { at.x + radius * cos (angle), at.y + radius * sin (angle) };
    }
  fp_drawing_area (drawing, FP_PEN_HATCH, fill, 0, corner, CORNERS + 1);
}

static void
cross_out (FpDrawing *drawing, FpPoint at, double r)
{
  const double d = r * G_SQRT2 / 2 * 1.5;

  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { at.x - d, at.y - d }, (FpPoint) { at.x + d, at.y + d });
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { at.x - d, at.y + d }, (FpPoint) { at.x + d, at.y - d });
}

static void
draw_place (FpDrawing *drawing, FpPoint at, double radius, FpSightHow how, double share)
{
  const FpFill fill = how == FP_SIGHT_BETWEEN_HEADS ? FP_FILL_PEOPLE : FP_FILL_THINGS;
  const gboolean quiet = how == FP_SIGHT_WHOLE && radius < SMALL;

  fp_drawing_circle (drawing, FP_PEN_HATCH, FP_FILL_PAPER, at, radius);
  if (how == FP_SIGHT_NOTHING)
    fp_drawing_circle (drawing, FP_PEN_HATCH, FP_FILL_INK, at, radius);
  else if (how != FP_SIGHT_WHOLE)
    fill_from_below (drawing, at, radius, 1 - share, fill);
  fp_drawing_circle (drawing, quiet ? FP_PEN_DIMENSION : FP_PEN_EDGE, FP_FILL_NONE, at, quiet ? QUIET * radius : radius);
  if (how == FP_SIGHT_NOTHING)
    cross_out (drawing, at, radius);
  if (how == FP_SIGHT_PAST_THINGS)
    fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { at.x - 1.5 * radius, at.y }, (FpPoint) { at.x + 1.5 * radius, at.y });
}

static gboolean
is_within (const FpBox *clip, FpPoint p)
{
  return fp_box_is_empty (clip) || (p.x >= clip->x0 && p.x <= clip->x1 && p.y >= clip->y0 && p.y <= clip->y1);
}

/* --- all places -------------------------------------------------------------------- */

static FpPoint
place_on_plan (const FpPeople *people, guint place, FpMoment moment)
{
  const FpVec3 eye = fp_people_eye (people, place, fp_moment_posture (moment));

  return (FpPoint) { eye.x, eye.y };
}

void
fp_drawing_add_sight (FpDrawing *self, const FpSight *sight, FpMoment moment, FpFocus focus, const FpViewLayout *plan)
{
  const FpPeople *people = fp_sight_people (sight);
  const double radius = fp_sight_mark_radius (plan->scale);
  guint n;

  fp_people_places (people, &n);
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  for (guint i = 0; i < n; i++)
    {
      const FpSightHow how = fp_sight_how (sight, i, moment, focus);
      const FpPoint at = place_on_plan (people, i, moment);
      if (how != FP_SIGHT_NOBODY && is_within (&plan->clip, at))
        draw_place (self, fp_view_to_paper (plan, at), radius, how, fp_sight_share (sight, i, moment, focus));
    }
}

int
fp_sight_place_at (const FpSight *sight, FpMoment moment, FpPoint at, double tolerance)
{
  const FpPeople *people = fp_sight_people (sight);
  double nearest = tolerance;
  FpPosture posture;
  int found = -1;
  guint n;

  fp_people_places (people, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = place_on_plan (people, i, moment);
      const double d = hypot (p.x - at.x, p.y - at.y);
      if (d <= nearest && fp_people_looks (people, i, moment, &posture))
        {
          nearest = d;
          found = (int) i;
        }
    }
  return found;
}

/* --- a line of sight ------------------------------------------------------------------ */

static FpPoint
on_paper (const FpViewLayout *layout, FpViewId view, FpVec3 p)
{
  return fp_view_to_paper (layout, fp_layout_point (layout, view, p));
}

/* Of the marks of a view. */
static FpBox
extent_of (const FpDrawing *drawing, FpViewId view)
{
  const FpPoint *pt = fp_drawing_points (drawing);
  FpBox box = FP_BOX_EMPTY;
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].view == (int) view && (mark[i].type == FP_MARK_LINE || mark[i].type == FP_MARK_AREA))
      for (guint k = 0; k < mark[i].n; k++)
        fp_box_add_point (&box, pt[mark[i].first + k]);
  return box;
}

/* From the cross to the nearest point of the words. */
static void
lead_to (FpDrawing *drawing, FpPoint from, const FpBox *words)
{
  const FpPoint to = { CLAMP (from.x, words->x0, words->x1), CLAMP (from.y, words->y0, words->y1) };

  if (hypot (to.x - from.x, to.y - from.y) > LEADER_FROM)
    fp_drawing_line (drawing, FP_PEN_DIMENSION, from, to);
}

gboolean
fp_sight_stop_room (const FpLaid *laid, guint n, const FpBox *within, FpPoint stop, const char *words, FpPoint *at)
{
  return fp_blank_near (laid, n, within, stop, fp_lettering_width (words, LETTERS), LETTERS, at);
}

void
fp_drawing_add_sight_stop (FpDrawing *self, FpPoint stop, FpPoint at, const char *words)
{
  const double pad = LETTERS * 0.3, width = fp_lettering_width (words, LETTERS);
  const FpBox box = { at.x - pad, at.y - pad, at.x + width + pad, at.y + LETTERS + pad };

  lead_to (self, stop, &box);
  fp_drawing_text (self, at, LETTERS, 0, FP_ALIGN_LEFT, words);
}

/* Near the cross where nothing is drawn, or not at all. */
static void
name_stop (FpDrawing *drawing, FpViewId view, FpPoint stop, const char *words)
{
  const FpBox within = extent_of (drawing, view);
  const FpLaid laid = { drawing, { 0, 0 }, 1 };
  FpPoint at = { NAN, NAN };

  if (fp_sight_stop_room (&laid, 1, &within, stop, words, &at))
    fp_drawing_add_sight_stop (drawing, stop, at, words);
}

void
fp_drawing_add_sight_line (FpDrawing *self, const FpSight *sight, guint place, FpMoment moment, FpFocus focus, FpViewId view,
                           const FpViewLayout *layout, gboolean named)
{
  FpSightLine line;

  if (!fp_sight_line (sight, place, moment, focus, &line))
    return;
  const FpPoint eye = on_paper (layout, view, line.eye), stop = on_paper (layout, view, line.stop),
                end = on_paper (layout, view, line.goal);
  g_autofree char *words = fp_sight_line_words (sight, &line);

  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, (int) view);
  fp_drawing_line (self, FP_PEN_SIGHT, eye, stop);
  fp_drawing_circle (self, FP_PEN_SIGHT, FP_FILL_PAPER, eye, 1.0);
  if (!line.stopped)
    {
      fp_drawing_circle (self, FP_PEN_SIGHT, FP_FILL_NONE, end, 1.0);
      return;
    }
  fp_drawing_line (self, FP_PEN_GUIDE, stop, end);
  cross_out (self, stop, CROSS);
  if (named)
    name_stop (self, view, stop, words);
}

/* --- the key ------------------------------------------------------------------------------ */

/* Whatever lies there, the words stand clear of it. */
static void
ground_of_key (FpDrawing *drawing, const FpBox *box, double height)
{
  const FpPoint ground[4] = {
    { box->x0, box->y1 - height }, { box->x1, box->y1 - height }, { box->x1, box->y1 }, { box->x0, box->y1 },
  };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, ground, 4);
}

double
fp_drawing_add_sight_key (FpDrawing *self, const FpBox *box)
{
  static const struct { FpSightHow how; double share; const char *words; } LINES[] = {
    { FP_SIGHT_WHOLE, 1, "sees all of it" },
    { FP_SIGHT_BETWEEN_HEADS, 0.6, "sees part of it, past other people" },
    { FP_SIGHT_PAST_THINGS, 0.4, "sees part of it, past something else" },
    { FP_SIGHT_NOTHING, 0, "sees nothing of it" },
  };
  double y = box->y1 - KEY_STEP / 2;

  if (self != NULL)
    ground_of_key (self, box, G_N_ELEMENTS (LINES) * KEY_STEP);
  for (guint i = 0; i < G_N_ELEMENTS (LINES) && self != NULL; i++, y -= KEY_STEP)
    {
      draw_place (self, (FpPoint) { box->x0 + 1.5 * KEY_RADIUS, y }, KEY_RADIUS, LINES[i].how, LINES[i].share);
      fp_drawing_text (self, (FpPoint) { box->x0 + FP_SIGHT_KEY_WORDS, y - LETTERS / 2 }, LETTERS, 0, FP_ALIGN_LEFT,
                       LINES[i].words);
    }
  return G_N_ELEMENTS (LINES) * KEY_STEP;
}
