/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/change-marks.h"

#include <math.h>

#define STRIP 1.3  /* paper mm: of paper under a line                         */
#define APART 0.01 /* mm: less is no other place                              */

/* --- what is changed ------------------------------------------------------------ */

static gboolean
is_apart (double a, double b)
{
  return fabs (a - b) > APART;
}

static gboolean
is_another_box (const FpBox *a, const FpBox *b)
{
  return is_apart (a->x0, b->x0) || is_apart (a->x1, b->x1) || is_apart (a->y0, b->y0) || is_apart (a->y1, b->y1);
}

static gboolean
has_other_params (const FpItem *a, const FpItem *b)
{
  const FpKind *kind = fp_item_kind (a);

  if (kind != fp_item_kind (b))
    return TRUE;
  for (guint i = 0; i < fp_kind_n_params (kind); i++)
    if (fp_item_params (a)[i] != fp_item_params (b)[i])
      return TRUE;
  return FALSE;
}

static gboolean
stands_otherwise (const FpPlaced *now, const FpPlaced *then)
{
  return is_apart (now->level, then->level) || is_apart (now->place.x, then->place.x) || is_apart (now->place.y, then->place.y)
         || is_apart (now->place.turn, then->place.turn) || is_apart (now->extent.height, then->extent.height)
         || is_another_box (&now->plan, &then->plan) || has_other_params (now->item, then->item);
}

GArray *
fp_changed_things (const FpScene *now, const FpScene *then)
{
  GArray *changed = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n;
  const FpPlaced *was = fp_scene_placed (now, NULL), *placed = fp_scene_placed (then, &n);

  for (guint i = 0; i < n; i++)
    {
      const int before = placed[i].ghost ? -1 : fp_scene_find (now, fp_item_id (placed[i].item));

      if (!placed[i].ghost && (before < 0 || stands_otherwise (&was[before], &placed[i])))
        g_array_append_val (changed, i);
    }
  return changed;
}

/* --- drawn --------------------------------------------------------------------------- */

static gboolean
is_changed (const GArray *changed, guint owner)
{
  for (guint i = 0; i < changed->len; i++)
    if (g_array_index (changed, guint, i) == owner)
      return TRUE;
  return FALSE;
}

static void
add_strip (FpDrawing *self, FpPoint a, FpPoint b)
{
  const double length = hypot (b.x - a.x, b.y - a.y), k = length > 0 ? STRIP / 2 / length : 0;
  const FpPoint along = { (b.x - a.x) * k, (b.y - a.y) * k };
  const FpPoint corner[] = {
    { a.x - along.x - along.y, a.y - along.y + along.x }, { a.x - along.x + along.y, a.y - along.y - along.x },
    { b.x + along.x + along.y, b.y + along.y - along.x }, { b.x + along.x - along.y, b.y + along.y + along.x },
  };

  if (length > 0)
    fp_drawing_area (self, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, G_N_ELEMENTS (corner));
}

static gboolean
is_shown (const FpProjectedLine *line, const GArray *changed)
{
  return line->pen != FP_PEN_HIDDEN && is_changed (changed, line->owner);
}

void
fp_drawing_add_change (FpDrawing *self, const FpProjection *then, const GArray *changed, const FpViewLayout *layout)
{
  const FpPlaced *placed = fp_scene_placed (fp_projection_scene (then), NULL);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (then, &n);

  for (guint i = 0; i < n; i++)
    if (is_shown (&line[i], changed))
      add_strip (self, fp_view_to_paper (layout, line[i].a), fp_view_to_paper (layout, line[i].b));
  for (guint i = 0; i < n; i++)
    if (is_shown (&line[i], changed))
      {
        const FpPen pen = line[i].pen == FP_PEN_CUT ? FP_PEN_OUTLINE : line[i].pen;

        fp_drawing_set_item (self, fp_item_id (placed[line[i].owner].item), FP_STANDING_PROPOSED, fp_projection_view (then));
        fp_drawing_line (self, pen, fp_view_to_paper (layout, line[i].a), fp_view_to_paper (layout, line[i].b));
      }
}
