/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "falls.h"

#include "dimension-line.h"

#include <math.h>

/* All in paper mm. */
#define CLEAR   0.6
#define APART   1.4
#define ARROW   9.0 /* its length                                            */
#define BARB    1.6
#define UNDER   1.6 /* from the text to its arrow                            */
#define AWAY    2.2 /* from the floor in section to the text                 */
#define PLACES  9u  /* along a floor                                         */
#define STRIP   9.5 /* under the view: nearer than its dimensions              */
#define FAR     24.0 /* from the arrow on the plan                           */
#define OWNER   400000

typedef struct
{
  FpProjection       *projection;
  const FpViewLayout *layout;
  const FpBox        *content;
  FpBox               within;   /* with a strip under it */
  FpCover            *room;
  GArray             *out;
} Falls;

/* --- one place ------------------------------------------------------------------- */

static gboolean
lies_within (const FpBox *box, const FpBox *in)
{
  return box->x0 >= in->x0 && box->y0 >= in->y0 && box->x1 <= in->x1 && box->y1 <= in->y1;
}

static gboolean
is_free (const Falls *f, const FpFall *fall, double width, FpBox *text)
{
  const guint owner = OWNER + f->out->len;
  FpBox kept, apart;

  *text = fp_lettering_box (fall->at, width, FP_FIGURE_HEIGHT, 0, FP_ALIGN_MIDDLE);
  kept = (FpBox) { text->x0 - CLEAR, text->y0 - CLEAR, text->x1 + CLEAR, text->y1 + CLEAR };
  if (fall->has_arrow)
    {
      fp_box_add_point (&kept, (FpPoint) { fall->from.x, fall->from.y - BARB });
      fp_box_add_point (&kept, (FpPoint) { fall->to.x, fall->to.y - BARB });
    }
  apart = (FpBox) { kept.x0 - APART, kept.y0 - APART, kept.x1 + APART, kept.y1 + APART };
  return lies_within (&kept, &f->within) && fp_cover_is_blank (f->room, &kept, 0) && fp_cover_text_is_free (f->room, &apart, owner);
}

static gboolean
try_at (Falls *f, FpFall *fall)
{
  const double width = fp_lettering_width (fall->text, FP_FIGURE_HEIGHT);
  FpBox text;

  if (!is_free (f, fall, width, &text))
    return FALSE;
  fp_cover_take_text (f->room, &text, OWNER + f->out->len);
  if (fall->has_arrow)
    fp_cover_take_line (f->room, fall->from, fall->to, OWNER + f->out->len);
  g_array_append_val (f->out, *fall);
  return TRUE;
}

/* --- on the plan ------------------------------------------------------------------- */

/* Round the arrow of the floor, the nearest first. */
static gboolean
set_on_plan (Falls *f, const FpFloor *floor, FpFall *fall)
{
  const FpPoint middle = fp_view_to_paper (f->layout, fp_outline_centroid (floor->outline, floor->n_outline));

  for (double away = 4; away <= FAR; away += 4)
    for (guint i = 0; i < 12; i++)
      {
        const double turn = G_PI * i / 6;
        fall->at = (FpPoint) { middle.x + away * 1.5 * cos (turn), middle.y + away * sin (turn) };
        if (fp_outline_contains (floor->outline, floor->n_outline, fp_view_from_paper (f->layout, fall->at))
            && try_at (f, fall))
          return TRUE;
      }
  return FALSE;
}

/* --- in the section ------------------------------------------------------------------ */

/* Where the plane of the section, at @x, passes over the floor: from y0 to y1; FALSE where it does not. */
static gboolean
cut_floor (const FpFloor *floor, double x, double *y0, double *y1)
{
  *y0 = G_MAXDOUBLE;
  *y1 = -G_MAXDOUBLE;
  for (guint i = 0; i < floor->n_outline; i++)
    {
      const FpPoint p = floor->outline[i], q = floor->outline[(i + 1) % floor->n_outline];
      if ((p.x > x) == (q.x > x))
        continue;
      const double y = p.y + (q.y - p.y) * (x - p.x) / (q.x - p.x);
      *y0 = MIN (*y0, y);
      *y1 = MAX (*y1, y);
    }
  return *y1 > *y0;
}

/* @above: over the floor rather than under all that is drawn */
static gboolean
try_in_section (Falls *f, const FpFloor *floor, FpFall *fall, double y, gboolean above)
{
  const FpCut cut = fp_projection_cut (f->projection);
  const double z = floor->z + floor->gx * cut.at + floor->gy * y;
  const double down = (floor->gy > 0) == cut.turned ? -1 : 1; /* east is on the left, or turned on the right */
  const FpPoint on = fp_view_to_paper (f->layout, fp_layout_point (f->layout, FP_VIEW_SECTION, (FpVec3) { 0, y, z }));
  const double foot = above ? on.y + AWAY + UNDER + ARROW / 2 * fabs (floor->gy)
                            : f->content->y0 - AWAY - FP_FIGURE_HEIGHT;
  const double half = ARROW / 2, rise = half * fabs (floor->gy);

  if (on.x - half < f->content->x0 || on.x + half > f->content->x1)
    return FALSE;
  fall->at = (FpPoint) { on.x, foot };
  fall->has_arrow = TRUE;
  fall->from = (FpPoint) { on.x - down * half, foot - UNDER + rise };
  fall->to = (FpPoint) { on.x + down * half, foot - UNDER - rise };
  return try_at (f, fall);
}

static gboolean
set_in_section (Falls *f, const FpFloor *floor, FpFall *fall)
{
  static const double shares[PLACES] = { 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9 };
  const FpBox *clip = &f->layout->clip;
  const FpCut cut = fp_projection_cut (f->projection);
  double y0, y1;

  if (fabs (floor->gy) < 1e-6 || !cut_floor (floor, cut.at, &y0, &y1))
    return FALSE;
  if (!fp_box_is_empty (clip))
    {
      y0 = MAX (y0, cut.turned ? clip->x0 : -clip->x1);
      y1 = MIN (y1, cut.turned ? clip->x1 : -clip->x0);
    }
  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < PLACES && y1 > y0; i++)
      if (try_in_section (f, floor, fall, y0 + (y1 - y0) * shares[i], pass == 0))
        return TRUE;
  return FALSE;
}

/* --- all of them ------------------------------------------------------------------------ */

static void
set_slope (FpFall *one, double fall)
{
  g_autofree char *run = fp_number_format_rounded (1 / fall, 1);

  g_snprintf (one->text, sizeof one->text, "1:%s", run);
}

GArray *
fp_falls_place (FpProjection *projection, const FpViewLayout *layout, const FpBox *content, FpCover *room)
{
  Falls f = { projection, layout, content, *content, room, g_array_new (FALSE, FALSE, sizeof (FpFall)) };
  const FpScene *scene = fp_projection_scene (projection);
  guint n, n_placed;
  const FpFloor *floor = fp_scene_floors (scene, &n);
  const FpPlaced *placed = fp_scene_placed (scene, &n_placed);

  f.within.y0 -= STRIP;
  for (guint i = 0; i < n; i++)
    {
      const double fall = hypot (floor[i].gx, floor[i].gy);
      FpFall one = { .item = g_intern_string (fp_item_id (placed[floor[i].owner].item)) };
      const FpPlaced *owner = &placed[floor[i].owner];
      if (fall < 1e-4 || !fp_shows_thing (layout->hidden, fp_item_kind (owner->item), owner->standing))
        continue;
      set_slope (&one, fall);
      if (fp_projection_view (projection) == FP_VIEW_PLAN)
        set_on_plan (&f, &floor[i], &one);
      else if (fp_projection_view (projection) == FP_VIEW_SECTION)
        set_in_section (&f, &floor[i], &one);
    }
  return f.out;
}

static void
draw_arrow (FpDrawing *drawing, FpPoint from, FpPoint to)
{
  const double length = hypot (to.x - from.x, to.y - from.y);
  const FpPoint u = { (to.x - from.x) / length, (to.y - from.y) / length };

  fp_drawing_line (drawing, FP_PEN_DIMENSION, from, to);
  for (int side = -1; side <= 1; side += 2)
    fp_drawing_line (drawing, FP_PEN_DIMENSION, to,
                     (FpPoint) { to.x - BARB * u.x - side * BARB / 3 * u.y, to.y - BARB * u.y + side * BARB / 3 * u.x });
}

void
fp_falls_draw (FpDrawing *drawing, const GArray *falls, FpViewId view)
{
  for (guint i = 0; i < falls->len; i++)
    {
      const FpFall *fall = &g_array_index (falls, FpFall, i);
      fp_drawing_set_item (drawing, fall->item, FP_STANDING_EXISTING, (int) view);
      if (fall->has_arrow)
        draw_arrow (drawing, fall->from, fall->to);
      fp_drawing_text (drawing, fall->at, FP_FIGURE_HEIGHT, 0, FP_ALIGN_MIDDLE, fall->text);
    }
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
