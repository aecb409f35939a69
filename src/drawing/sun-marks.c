/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-marks.c - sunlight on a plan or a section: where it meets the floor, and the shafts on which it comes in */
#include "footpace/sun-marks.h"

#include "footpace/sight-drawing.h"

#include "sheet-parts.h"

#include <math.h>

#define LIGHT_HATCH 60.0 /* degrees                                            */
#define SMALLEST    0.4  /* mm2 of paper: less is a blot                       */
#define EYE         0.7  /* paper mm: radius of the dot on a place, but        */
#define EYE_MOST    200.0 /* mm in the church: those of neighbours stay apart   */
#define RING        2.2  /* times that: of the ring about the dot of a minister */
#define SAMPLE      2.2  /* paper mm: half as long as in the key                */
/* Paper mm, of the sun beside the north point. */
#define SUN_AWAY   10.0
#define SUN_RADIUS 1.4
#define HEAD       2.2
#define SPREAD     0.7

/* --- light on the floor -------------------------------------------------------- */

/* Of @at in the view, on paper; (element-type FpPoint). */
static void
add_points (const FpVec3 *at, guint n, FpViewId view, const FpViewLayout *layout, GArray *out)
{
  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = fp_view_to_paper (layout, fp_layout_point (layout, view, at[i]));
      g_array_append_val (out, p);
    }
}

static GArray *
ring_on_paper (const FpSunPatch *patch, FpViewId view, const FpViewLayout *layout)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  add_points (patch->floor, patch->n, view, layout, out);
  return out;
}

/* An area and its holes as one outline with slits, to be filled by the even-odd rule.  @i: (inout): past its holes */
static GArray *
area_with_slits (const GArray *patches, guint *i, const FpViewLayout *layout)
{
  GArray *all = ring_on_paper (&g_array_index (patches, FpSunPatch, *i), FP_VIEW_PLAN, layout);
  const FpPoint first = g_array_index (all, FpPoint, 0);

  g_array_append_val (all, first);
  for (++*i; *i < patches->len && g_array_index (patches, FpSunPatch, *i).hole; ++*i)
    {
      g_autoptr (GArray) hole = ring_on_paper (&g_array_index (patches, FpSunPatch, *i), FP_VIEW_PLAN, layout);
      g_array_append_vals (all, hole->data, hole->len);
      g_array_append_vals (all, hole->data, 1);
      g_array_append_val (all, first);
    }
  return all;
}

void
fp_drawing_add_sun_floor (FpDrawing *self, const GArray *patches, const FpViewLayout *layout)
{
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  for (guint i = 0; i < patches->len;)
    {
      const FpSunPatch *patch = &g_array_index (patches, FpSunPatch, i);
      g_autoptr (GArray) ring = ring_on_paper (patch, FP_VIEW_PLAN, layout);
      g_autoptr (GArray) area = area_with_slits (patches, &i, layout);
      if (fabs (fp_outline_area ((const FpPoint *) ring->data, ring->len)) < SMALLEST)
        continue;
      fp_drawing_area (self, FP_PEN_HATCH, FP_FILL_NONE, LIGHT_HATCH, (const FpPoint *) area->data, area->len);
    }
}

static void
draw_rings (FpDrawing *self, const GArray *patches, FpViewId view, const FpViewLayout *layout)
{
  for (guint i = 0; i < patches->len; i++)
    {
      g_autoptr (GArray) ring = ring_on_paper (&g_array_index (patches, FpSunPatch, i), view, layout);
      if (fabs (fp_outline_area ((const FpPoint *) ring->data, ring->len)) >= SMALLEST)
        fp_drawing_run (self, FP_PEN_EDGE, (const FpPoint *) ring->data, ring->len, TRUE);
    }
}

/* --- shafts ---------------------------------------------------------------------- */

/* What comes through one opening reaches from the middle of its wall to the floor: seen from anywhere the outline of that is
 * the hull of both ends.  @i: (inout): past the patches of that opening */
static void
draw_shaft (FpDrawing *self, const GArray *patches, guint *i, FpViewId view, const FpViewLayout *layout)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  const guint opening = g_array_index (patches, FpSunPatch, *i).opening;
  guint n;

  for (; *i < patches->len && g_array_index (patches, FpSunPatch, *i).opening == opening; ++*i)
    {
      const FpSunPatch *patch = &g_array_index (patches, FpSunPatch, *i);
      add_points (patch->floor, patch->n, view, layout, points);
      add_points (patch->window, patch->n, view, layout, points);
    }
  n = fp_hull ((FpPoint *) points->data, points->len);
  fp_drawing_run (self, view == FP_VIEW_PLAN ? FP_PEN_GUIDE : FP_PEN_EDGE, (const FpPoint *) points->data, n, TRUE);
}

void
fp_drawing_add_sun_shafts (FpDrawing *self, const GArray *patches, FpViewId view, const FpViewLayout *layout)
{
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, (int) view);
  if (view == FP_VIEW_PLAN)
    draw_rings (self, patches, view, layout);
  for (guint i = 0; i < patches->len;)
    draw_shaft (self, patches, &i, view, layout);
}

/* --- whose eyes ---------------------------------------------------------------------- */

static void
draw_eye (FpDrawing *self, FpPoint middle, double radius, gboolean minister)
{
  fp_drawing_circle (self, FP_PEN_EDGE, FP_FILL_INK, middle, radius);
  if (minister)
    fp_drawing_circle (self, FP_PEN_EDGE, FP_FILL_NONE, middle, RING * radius);
}

void
fp_drawing_add_sun_eye (FpDrawing *self, FpVec3 at, gboolean minister, const FpViewLayout *plan)
{
  draw_eye (self, fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, at)), MIN (EYE, EYE_MOST / plan->scale),
            minister);
}

/* --- the key ------------------------------------------------------------------------ */

static void
draw_sample_of_light (FpDrawing *self, FpPoint middle)
{
  const FpPoint corner[4] = { { middle.x - SAMPLE, middle.y - 1 }, { middle.x + SAMPLE, middle.y - 1 },
                              { middle.x + SAMPLE, middle.y + 1 }, { middle.x - SAMPLE, middle.y + 1 } };

  fp_drawing_area (self, FP_PEN_HATCH, FP_FILL_NONE, LIGHT_HATCH, corner, 4);
  fp_drawing_run (self, FP_PEN_EDGE, corner, 4, TRUE);
}

static void
draw_sample (FpDrawing *self, guint line, FpPoint middle)
{
  switch (line)
    {
    case 0: draw_eye (self, middle, EYE, FALSE); break;
    case 1: draw_eye (self, middle, EYE, TRUE); break;
    case 2: draw_sample_of_light (self, middle); break;
    default: fp_drawing_line (self, FP_PEN_GUIDE, (FpPoint) { middle.x - SAMPLE, middle.y },
                              (FpPoint) { middle.x + SAMPLE, middle.y }); break;
    }
}

void
fp_drawing_add_sun_key (FpDrawing *self, const FpBox *box)
{
  static const char *const WORDS[] = { "has the sun in his eyes", "a minister with the sun in his eyes", "the sun shines on the floor",
                                       "on its way from the window" };
  const double foot = box->y1 - G_N_ELEMENTS (WORDS) * FP_SIGHT_KEY_STEP;
  const FpPoint ground[4] = { { box->x0, foot }, { box->x1, foot }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  /* Whatever lies there, the words stand clear of it. */
  fp_drawing_area (self, FP_PEN_HATCH, FP_FILL_PAPER, 0, ground, 4);
  for (guint i = 0; i < G_N_ELEMENTS (WORDS); i++)
    {
      const double y = box->y1 - (i + 0.5) * FP_SIGHT_KEY_STEP;
      draw_sample (self, i, (FpPoint) { box->x0 + SAMPLE, y });
      fp_drawing_text (self, (FpPoint) { box->x0 + FP_SIGHT_KEY_WORDS, y - FP_SIGHT_KEY_LETTERS / 2 }, FP_SIGHT_KEY_LETTERS, 0,
                       FP_ALIGN_LEFT, WORDS[i]);
    }
}

/* --- whence it comes ---------------------------------------------------------------- */

double
fp_drawing_add_sun_point (FpDrawing *self, FpPoint middle, double radius, double north, FpVec3 towards)
{
  const double length = hypot (towards.x, towards.y), away = radius + SUN_AWAY;
  const FpPoint way = length > 0 ? (FpPoint) { towards.x / length, towards.y / length } : (FpPoint) { 0, 0 };
  const FpPoint sun = { middle.x + way.x * away, middle.y + way.y * away };
  const FpPoint tip = { middle.x + way.x * (radius + 1), middle.y + way.y * (radius + 1) };
  const FpPoint neck = { tip.x + way.x * HEAD, tip.y + way.y * HEAD };
  const FpPoint head[3] = { tip, { neck.x - way.y * SPREAD, neck.y + way.x * SPREAD },
                            { neck.x + way.y * SPREAD, neck.y - way.x * SPREAD } };

  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, -1);
  fp_draw_north_point (self, middle, radius, north);
  if (length > 0)
    {
      fp_drawing_line (self, FP_PEN_DIMENSION, (FpPoint) { sun.x - way.x * SUN_RADIUS, sun.y - way.y * SUN_RADIUS }, neck);
      fp_drawing_area (self, FP_PEN_HATCH, FP_FILL_INK, 0, head, 3);
      fp_drawing_circle (self, FP_PEN_OUTLINE, FP_FILL_NONE, sun, SUN_RADIUS);
    }
  return away + SUN_RADIUS;
}
