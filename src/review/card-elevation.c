/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-elevation.c - the altar as it is set, with letters and numbers */
#include "card-sketch.h"

#include "footpace/order-marks.h"

#include <math.h>

/* About what is shown, mm of the church. */
#define AROUND 160.0
#define STEPS  2.0   /* widths of the rest, at most, of the steps           */
#define BELOW  170.0
#define ALTAR  320.0 /* of the altar itself, from its top down, where there is no room for all */
/* Capitals of numbers, paper mm: the altar is shown whole where they are no smaller (design judgement). */
#define READABLE 2.0
/* In widths of the area: capitals of letters and numbers at most, and flames. */
#define TAG        0.025
#define FLAME      0.018

/* --- what is shown ------------------------------------------------------------------- */

FpBox3
fp_card_body_of (const FpScene *scene, const FpPlaced *placed)
{
  const FpSolid *solid = fp_scene_solids (scene, NULL);
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
    {
      const FpBox3 own = fp_solid_box (&solid[i]);

      fp_box3_add_box (&box, &own);
    }
  return box;
}

gboolean
fp_card_belongs (const FpCard *card, int thing, int altar)
{
  const FpPlaced *all = fp_scene_placed (card->set, NULL);
  const FpSetThing *set = fp_setting_find (fp_scene_setting (card->set), fp_item_id (all[thing].item));

  if (all[thing].ghost || all[thing].n_solids == 0)
    return FALSE;
  for (int at = thing; at >= 0; at = all[at].support)
    if (at == altar)
      return TRUE;
  return set != NULL && set->about;
}

/* Down to the lowest step; of steps that go on far to both sides, a part. */
static void
add_steps (const FpCard *card, int altar, FpBox3 *box)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (card->set, &n);
  const int under = all[altar].support;

  for (guint i = 0; i < n; i++)
    if (!all[i].ghost && all[i].n_solids > 0 && fp_item_kind (all[i].item)->role == FP_ROLE_FOOTPACE
        && ((int) i == under || under < 0))
      {
        const FpBox3 own = fp_card_body_of (card->set, &all[i]);
        const double middle = (box->lo.x + box->hi.x) / 2, half = (box->hi.x - box->lo.x) * STEPS / 2;

        if (own.lo.x > box->hi.x || own.hi.x < box->lo.x)
          continue;
        box->lo.z = MIN (box->lo.z, own.lo.z);
        box->lo.y = MIN (box->lo.y, own.lo.y);
        box->lo.x = MIN (box->lo.x, MAX (own.lo.x, middle - half));
        box->hi.x = MAX (box->hi.x, MIN (own.hi.x, middle + half));
      }
}

/* The altar, or its upper part; what stands on it or hangs before it, and the candles beside it. */
static FpBox3
shown (const FpCard *card, int altar, gboolean whole)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (card->set, &n);
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = 0; i < n; i++)
    if (fp_card_belongs (card, (int) i, altar))
      {
        FpBox3 own = fp_card_body_of (card->set, &all[i]);

        if (!whole && ((int) i == altar || fp_item_kind (all[i].item)->role == FP_ROLE_ALTAR_CLOTHS))
          own.lo.z = MAX (own.lo.z, own.hi.z - ALTAR);
        fp_box3_add_box (&box, &own);
      }
  if (whole)
    add_steps (card, altar, &box);
  return box;
}

static void
lay_out (FpCardSketch *s, const FpBox3 *box, const FpBox *area)
{
  const double words = s->tag * 2.2, numbers = s->flame + s->tag * 2.4;
  const double width = box->hi.x - box->lo.x + 2 * AROUND, height = box->hi.z - box->lo.z + BELOW;
  const double across = area->x1 - area->x0 - 2 * (FP_CARD_COLUMN + 1) * s->tag, up = area->y1 - area->y0 - words - numbers;
  const double scale = MAX (width / across, height / up);

  s->layout = (FpViewLayout) { .scale = scale, .hidden = 1u << FP_SHOW_REMOVED };
  s->layout.clip = (FpBox) { box->lo.x - AROUND, box->lo.z - BELOW, box->hi.x + AROUND, box->hi.z + numbers * scale };
  s->layout.origin.x = (area->x0 + area->x1) / 2 - (box->lo.x + box->hi.x) / 2 / scale;
  s->layout.origin.y = area->y0 + words - s->layout.clip.y0 / scale;
  s->area = *area;
}

FpPoint
fp_card_on_paper (const FpCardSketch *s, FpVec3 p)
{
  return fp_view_to_paper (&s->layout, fp_layout_point (&s->layout, FP_VIEW_ELEVATION, p));
}

/* What stands behind or beside would be cut at the edges of the drawing: the altar stands alone, on its steps. */
static gboolean
is_copied (const FpCard *card, const char *item)
{
  const int thing = item != NULL ? fp_scene_find (card->set, item) : -1, altar = fp_scene_celebrated_altar (card->set);
  const FpPlaced *all = fp_scene_placed (card->set, NULL);

  return thing >= 0 && (fp_card_belongs (card, thing, altar) || fp_item_kind (all[thing].item)->role == FP_ROLE_FOOTPACE);
}

/* All of it in the ink of what is there: on a card nothing is proposed. */
static void
copy_plain (const FpCard *card, FpDrawing *to, const FpDrawing *from)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (from, &n);
  const FpPoint *pt = fp_drawing_points (from);

  for (guint i = 0; i < n; i++)
    switch (is_copied (card, mark[i].item) ? mark[i].type : FP_MARK_TEXT)
      {
      case FP_MARK_LINE:
        fp_drawing_run (to, mark[i].pen, pt + mark[i].first, mark[i].n, mark[i].closed);
        break;
      case FP_MARK_AREA:
        fp_drawing_area (to, mark[i].pen, mark[i].fill, mark[i].hatch, pt + mark[i].first, mark[i].n);
        break;
      case FP_MARK_CIRCLE:
        fp_drawing_circle (to, mark[i].pen, mark[i].fill, mark[i].at, mark[i].radius);
        break;
      case FP_MARK_TEXT:
      case FP_MARK_PICTURE:
      default:
        break;
      }
}

/* Seen from just before it: rail and benches are not in the way. */
static void
draw_church (const FpCardSketch *s, double front)
{
  const FpCut cut = { .placed = TRUE, .at = front };
  g_autoptr (FpProjection) projection
    = fp_projection_new_cut (s->card->set, FP_VIEW_ELEVATION, &cut, s->layout.hidden);
  g_autoptr (FpDrawing) view = fp_drawing_new (fp_drawing_width (s->drawing), fp_drawing_height (s->drawing));

  fp_drawing_add_view (view, projection, &s->layout);
  copy_plain (s->card, s->drawing, view);
}

/* --- all of it ------------------------------------------------------------------------ */

static void
draw_sides (const FpCardSketch *s)
{
  const double y = s->area.y0 + s->tag * 0.4;

  fp_drawing_text (s->drawing, (FpPoint) { s->area.x0, y }, s->tag * 0.85, 0, FP_ALIGN_LEFT, "Gospel side");
  fp_drawing_text (s->drawing, (FpPoint) { s->area.x1, y }, s->tag * 0.85, 0, FP_ALIGN_RIGHT, "Epistle side");
}

static void
lay_out_shown (FpCardSketch *s, int altar, gboolean whole, FpBox3 *box, const FpBox *area)
{
  guint n;
  const FpOrderLight *light = fp_order_lights (s->card->order, &n);

  *box = shown (s->card, altar, whole);
  lay_out (s, box, area);
  s->number = fp_card_number_height (s, light, n);
  if (!whole)
    s->number = MAX (s->number, s->tag * 0.5); /* there is no larger drawing: they lie over each other's place */
}

/* Where the rest of the altar is left out: a thin line with a zigzag, as ISO 128 has it (from memory). */
static void
draw_break (const FpCardSketch *s, const FpBox3 *box)
{
  const FpPoint a = fp_card_on_paper (s, (FpVec3) { box->lo.x, box->lo.y, s->layout.clip.y0 });
  const FpPoint b = fp_card_on_paper (s, (FpVec3) { box->hi.x, box->lo.y, s->layout.clip.y0 });
  const double x = (a.x + b.x) / 2, by = s->tag * 0.3;
  const FpPoint line[] = { a, { x - by, a.y }, { x - by / 2, a.y + by }, { x + by / 2, a.y - by }, { x + by, a.y }, b };

  fp_drawing_run (s->drawing, FP_PEN_DIMENSION, line, G_N_ELEMENTS (line), FALSE);
}

void
fp_card_draw_elevation (FpCard *self, FpDrawing *drawing, const FpBox *area)
{
  g_autoptr (GArray) tags = g_array_new (FALSE, FALSE, sizeof (FpPoint)), covered = g_array_new (FALSE, FALSE, sizeof (FpBox));
  const int altar = fp_scene_celebrated_altar (self->set);
  FpCardSketch s = { .card = self, .drawing = drawing, .tags = tags, .covered = covered,
               .tag = TAG * (area->x1 - area->x0), .flame = FLAME * (area->x1 - area->x0) };
  FpBox3 box;

  if (altar < 0)
    return;
  lay_out_shown (&s, altar, TRUE, &box, area);
  if (s.number < READABLE)
    {
      lay_out_shown (&s, altar, FALSE, &box, area);
      draw_break (&s, &box);
    }
  draw_church (&s, box.lo.y - 50);
  fp_card_letter_rows (&s, altar);
  fp_card_draw_numbers (&s);
  draw_sides (&s);
}
