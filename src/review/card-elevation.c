/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-elevation.c - the altar as it is set, with letters and numbers */
#include "card-private.h"

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
#define APART      1.75 /* of two numbers, in heights of their capitals         */
#define COLUMN     2.1  /* of the letters from the drawing, likewise            */
#define SPACED     1.9  /* of letters in their column, likewise                 */

typedef struct
{
  FpCard      *card;
  FpDrawing   *drawing;
  FpViewLayout layout;
  FpBox        area;    /* paper mm: of the view                              */
  double       tag;     /* height of the capitals of letters                  */
  double       number;  /* of numbers                                         */
  double       flame;
  GArray      *tags;    /* (element-type FpPoint): middles, paper mm          */
  GArray      *covered; /* (element-type FpBox): where no number goes, paper mm */
} Sketch;

/* --- letters and numbers ------------------------------------------------------------ */

void
fp_card_draw_letter (FpDrawing *drawing, FpPoint at, double height, char letter)
{
  const double half = height * 0.85;
  const FpPoint frame[] = { { at.x - half, at.y - half }, { at.x + half, at.y - half }, { at.x + half, at.y + half },
                            { at.x - half, at.y + half } };
  const char text[] = { letter, '\0' };

  fp_drawing_area (drawing, FP_PEN_DIMENSION, FP_FILL_PAPER, 0, frame, G_N_ELEMENTS (frame));
  fp_drawing_text (drawing, (FpPoint) { at.x, at.y - height / 2 }, height, 0, FP_ALIGN_MIDDLE, text);
}

/* --- what is shown ------------------------------------------------------------------- */

static FpBox3
body_of (const FpScene *scene, const FpPlaced *placed)
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

static gboolean
belongs (const FpCard *card, int thing, int altar)
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
        const FpBox3 own = body_of (card->set, &all[i]);
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
    if (belongs (card, (int) i, altar))
      {
        FpBox3 own = body_of (card->set, &all[i]);

        if (!whole && ((int) i == altar || fp_item_kind (all[i].item)->role == FP_ROLE_ALTAR_CLOTHS))
          own.lo.z = MAX (own.lo.z, own.hi.z - ALTAR);
        fp_box3_add_box (&box, &own);
      }
  if (whole)
    add_steps (card, altar, &box);
  return box;
}

static void
lay_out (Sketch *s, const FpBox3 *box, const FpBox *area)
{
  const double words = s->tag * 2.2, numbers = s->flame + s->tag * 2.4;
  const double width = box->hi.x - box->lo.x + 2 * AROUND, height = box->hi.z - box->lo.z + BELOW;
  const double across = area->x1 - area->x0 - 2 * (COLUMN + 1) * s->tag, up = area->y1 - area->y0 - words - numbers;
  const double scale = MAX (width / across, height / up);

  s->layout = (FpViewLayout) { .scale = scale, .hidden = 1u << FP_SHOW_REMOVED };
  s->layout.clip = (FpBox) { box->lo.x - AROUND, box->lo.z - BELOW, box->hi.x + AROUND, box->hi.z + numbers * scale };
  s->layout.origin.x = (area->x0 + area->x1) / 2 - (box->lo.x + box->hi.x) / 2 / scale;
  s->layout.origin.y = area->y0 + words - s->layout.clip.y0 / scale;
  s->area = *area;
}

static FpPoint
on_paper (const Sketch *s, FpVec3 p)
{
  return fp_view_to_paper (&s->layout, fp_layout_point (&s->layout, FP_VIEW_ELEVATION, p));
}

/* What stands behind or beside would be cut at the edges of the drawing: the altar stands alone, on its steps. */
static gboolean
is_copied (const FpCard *card, const char *item)
{
  const int thing = item != NULL ? fp_scene_find (card->set, item) : -1, altar = fp_scene_celebrated_altar (card->set);
  const FpPlaced *all = fp_scene_placed (card->set, NULL);

  return thing >= 0 && (belongs (card, thing, altar) || fp_item_kind (all[thing].item)->role == FP_ROLE_FOOTPACE);
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
draw_church (const Sketch *s, double front)
{
  const FpCut cut = { .placed = TRUE, .at = front };
  g_autoptr (FpProjection) projection
    = fp_projection_new_cut (s->card->set, FP_VIEW_ELEVATION, &cut, s->layout.hidden);
  g_autoptr (FpDrawing) view = fp_drawing_new (fp_drawing_width (s->drawing), fp_drawing_height (s->drawing));

  fp_drawing_add_view (view, projection, &s->layout);
  copy_plain (s->card, s->drawing, view);
}

/* --- what is written on it ------------------------------------------------------------ */

static gboolean
is_free (const Sketch *s, FpPoint at)
{
  for (guint i = 0; i < s->tags->len; i++)
    {
      const FpPoint other = g_array_index (s->tags, FpPoint, i);

      if (fabs (other.x - at.x) < s->number * APART && fabs (other.y - at.y) < s->number * APART)
        return FALSE;
    }
  return at.x > s->area.x0 && at.x < s->area.x1 && at.y > s->area.y0 && at.y < s->area.y1;
}

/* Straight up from there, until it lies on nothing that is drawn. */
static FpPoint
lift (const Sketch *s, FpPoint at)
{
  const double half = s->number * 1.05;

  for (guint step = 0, i = 0; step < 40 && i < s->covered->len;)
    {
      const FpBox *box = &g_array_index (s->covered, FpBox, i);

      if (at.x + half < box->x0 || at.x - half > box->x1 || at.y + half < box->y0 || at.y - half > box->y1)
        {
          i++;
          continue;
        }
      at.y = box->y1 + half * 1.01;
      i = 0;
      step++;
    }
  return at;
}

/* There, or as near to it as there is room. */
static FpPoint
find_room (Sketch *s, FpPoint wanted)
{
  FpPoint at = wanted;

  for (guint ring = 0; ring < 12 && !is_free (s, at); ring++)
    for (guint i = 0; i < 8; i++)
      {
        const double by = (ring + 1) * s->number * 0.6;
        const FpPoint near = { wanted.x + by * cos (i * G_PI / 4), wanted.y + by * sin (i * G_PI / 4) };

        if (!is_free (s, near))
          continue;
        at = near;
        break;
      }
  g_array_append_val (s->tags, at);
  return at;
}

/* Of candelabra one label tells all that are lit one after the other on one side. */
static gboolean
is_branched (const Sketch *s, const FpOrderLight *light)
{
  return fp_item_kind (fp_scene_placed (s->card->set, NULL)[light->owner].item)->role == FP_ROLE_BRANCHED_LIGHTS;
}

static gboolean
goes_with (const Sketch *s, const FpOrderLight *light, const FpOrderLight *first)
{
  return is_branched (s, light) && light->owner == first->owner && light->side == first->side && light->server == first->server;
}

/* So small that a number stands clear of the letter over the cross: half of each, in heights, is 1.05 and 0.85. */
static double
clear_of_cross (const Sketch *s, const FpOrderLight *light, guint n)
{
  const int cross = fp_scene_role (s->card->set, FP_ROLE_CRUCIFIX);
  double least = s->tag;
  FpBox3 body;

  if (cross < 0)
    return least;
  body = body_of (s->card->set, &fp_scene_placed (s->card->set, NULL)[cross]);
  for (guint i = 0; i < n; i++)
    {
      const double apart = fabs (light[i].at.x - (body.lo.x + body.hi.x) / 2) / s->layout.scale;

      if (apart > 0.5 && !is_branched (s, &light[i]))
        least = MIN (least, apart / 1.95);
    }
  return least;
}

/* So large that those of neighbours stand beside each other. */
static double
number_height (const Sketch *s, const FpOrderLight *light, guint n)
{
  double least = clear_of_cross (s, light, n) * 2;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      {
        const double apart = fabs (on_paper (s, light[i].at).x - on_paper (s, light[k].at).x);

        if (apart > 0.5 && !is_branched (s, &light[i]) && !is_branched (s, &light[k]))
          least = MIN (least, apart);
      }
  return least / 2;
}

/* Over the middle of all that are lit with @first. */
static void
draw_branched (Sketch *s, const FpOrderLight *first, const FpOrderLight *light, guint n)
{
  guint last = first->number, from = first->number;
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    if (goes_with (s, &light[i], first))
      {
        fp_box_add_point (&box, on_paper (s, light[i].at));
        last = MAX (last, light[i].number);
        from = MIN (from, light[i].number);
      }
  if (first->number == from)
    fp_draw_order_range (s->drawing, find_room (s, (FpPoint) { (box.x0 + box.x1) / 2, box.y1 + s->flame + s->number * 1.15 }),
                         s->number, from, last);
}

static void
draw_numbers (Sketch *s)
{
  guint n;
  const FpOrderLight *light = fp_order_lights (s->card->order, &n);

  for (guint i = 0; i < n; i++)
    fp_draw_flame (s->drawing, on_paper (s, light[i].at), s->flame);
  for (guint i = 0; i < n; i++)
    {
      const FpPoint wick = on_paper (s, light[i].at);

      if (is_branched (s, &light[i]))
        draw_branched (s, &light[i], light, n);
      else
        fp_draw_order_number (s->drawing, find_room (s, lift (s, (FpPoint) { wick.x, wick.y + s->flame + s->number * 1.15 })),
                             s->number, light[i].number);
    }
}

/* A letter beside the drawing, and to what its leader goes. */
typedef struct
{
  char    letter;
  FpPoint left, right; /* the part of it that is farthest on either side     */
  FpPoint to, at;
  gboolean on_right;
} Leader;

/* The middles of those parts; of candles at the stick. */
static void
find_ends (const Sketch *s, const FpCardRow *row, const FpBox3 *body, Leader *leader)
{
  const FpCard *card = s->card;
  const FpPlaced *placed = &fp_scene_placed (card->set, NULL)[row->placed];
  const FpSolid *solid = fp_scene_solids (card->set, NULL);
  g_autoptr (GArray) lights = fp_scene_lights (card->set);
  const double middle = (body->lo.x + body->hi.x) / 2, low = body->lo.z, high = body->hi.z;
  FpVec3 left = { middle, body->lo.y, (low + high) / 2 }, right = left;

  if (row->thing->lights > 0)
    for (guint i = 0; i < lights->len; i++)
      {
        const FpLight *light = &g_array_index (lights, FpLight, i);
        const FpVec3 at = { light->at.x, light->at.y, low + (light->at.z - low) * 0.4 };

        if ((int) light->owner == row->placed && at.x < left.x)
          left = at;
        if ((int) light->owner == row->placed && at.x > right.x)
          right = at;
      }
  else
    for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
      {
        const FpBox3 own = fp_solid_box (&solid[i]);
        const FpVec3 at = { (own.lo.x + own.hi.x) / 2, own.lo.y, (own.lo.z + own.hi.z) / 2 };

        if (at.x < left.x - 1)
          left = at;
        if (at.x > right.x + 1)
          right = at;
      }
  left.z = MAX (left.z, s->layout.clip.y0 + 60);
  right.z = MAX (right.z, s->layout.clip.y0 + 60);
  leader->left = on_paper (s, left);
  leader->right = on_paper (s, right);
}

/* On the side where it lies; what lies in the middle or on both, where there are fewer. */
static void
choose_side (const Sketch *s, Leader *leader, guint *n_left, guint *n_right)
{
  const double middle = (s->area.x0 + s->area.x1) / 2, near = s->tag;

  if (leader->right.x < middle - near)
    leader->on_right = FALSE;
  else if (leader->left.x > middle + near)
    leader->on_right = TRUE;
  else
    leader->on_right = *n_right <= *n_left;
  *(leader->on_right ? n_right : n_left) += 1;
  leader->to = leader->on_right ? leader->right : leader->left;
}

/* Over the cross, where no candle is between; no larger than the numbers beside it. */
static void
letter_crucifix (Sketch *s, const FpCardRow *row, const FpBox3 *body)
{
  const FpPlaced *placed = &fp_scene_placed (s->card->set, NULL)[row->placed];
  const FpSolid *solid = fp_scene_solids (s->card->set, NULL);
  const FpPoint top = on_paper (s, (FpVec3) { (body->lo.x + body->hi.x) / 2, body->lo.y, body->hi.z });
  const double tag = MIN (s->tag, s->number), half = 0.85 * tag;
  const FpPoint at = { top.x, top.y + 1.35 * tag };
  const FpBox frame = { at.x - half, at.y - half, at.x + half, at.y + half };

  fp_drawing_line (s->drawing, FP_PEN_DIMENSION, (FpPoint) { at.x, at.y - half }, top);
  fp_card_draw_letter (s->drawing, at, tag, row->letter);
  g_array_append_val (s->covered, frame);
  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
    {
      const FpBox3 own = fp_solid_box (&solid[i]);
      const FpPoint low = on_paper (s, own.lo), high = on_paper (s, own.hi);
      const FpBox box = { low.x, low.y, high.x, high.y };

      g_array_append_val (s->covered, box);
    }
}

static int
highest_first (gconstpointer a, gconstpointer b)
{
  const Leader *p = a, *q = b;

  return (p->to.y < q->to.y) - (p->to.y > q->to.y);
}

/* One under the other, each as near to the height of what it points to as the others let it. */
static void
stack (const Sketch *s, GArray *leaders, gboolean on_right)
{
  const FpPoint a = fp_view_to_paper (&s->layout, (FpPoint) { s->layout.clip.x0, s->layout.clip.y0 });
  const FpPoint b = fp_view_to_paper (&s->layout, (FpPoint) { s->layout.clip.x1, s->layout.clip.y1 });
  double limit = b.y;

  for (guint i = 0; i < leaders->len; i++)
    {
      Leader *leader = &g_array_index (leaders, Leader, i);

      if (leader->on_right != on_right)
        continue;
      leader->at = (FpPoint) { on_right ? b.x + COLUMN * s->tag : a.x - COLUMN * s->tag, MIN (leader->to.y, limit) };
      limit = leader->at.y - SPACED * s->tag;
    }
  limit = a.y + s->tag * 0.5;
  for (guint i = leaders->len; i-- > 0;)
    {
      Leader *leader = &g_array_index (leaders, Leader, i);

      if (leader->on_right != on_right)
        continue;
      leader->at.y = MAX (leader->at.y, limit);
      limit = leader->at.y + SPACED * s->tag;
    }
}

static void
draw_leader (const Sketch *s, const Leader *leader)
{
  const double edge = s->tag * (leader->on_right ? -0.85 : 0.85);

  fp_drawing_line (s->drawing, FP_PEN_DIMENSION, (FpPoint) { leader->at.x + edge, leader->at.y }, leader->to);
  fp_drawing_circle (s->drawing, FP_PEN_DIMENSION, FP_FILL_INK, leader->to, s->tag * 0.14);
  fp_card_draw_letter (s->drawing, leader->at, s->tag, leader->letter);
}

static void
letter_rows (Sketch *s, int altar)
{
  const FpPlaced *all = fp_scene_placed (s->card->set, NULL);
  g_autoptr (GArray) leaders = g_array_new (FALSE, TRUE, sizeof (Leader));
  guint n_left = 0, n_right = 0, lettered = 0;

  for (guint i = 0; i < s->card->rows->len; i++)
    {
      FpCardRow *row = &g_array_index (s->card->rows, FpCardRow, i);
      Leader leader = { .letter = (char) ('A' + lettered) };
      FpBox3 body;

      row->letter = 0;
      if (row->section == FP_CARD_SECTION_AWAY || row->placed < 0 || !belongs (s->card, row->placed, altar) || lettered >= 26)
        continue;
      body = body_of (s->card->set, &all[row->placed]);
      row->letter = leader.letter;
      lettered++;
      if (fp_item_kind (row->thing->item)->role == FP_ROLE_CRUCIFIX)
        {
          letter_crucifix (s, row, &body);
          continue;
        }
      find_ends (s, row, &body, &leader);
      choose_side (s, &leader, &n_left, &n_right);
      g_array_append_val (leaders, leader);
    }
  g_array_sort (leaders, highest_first);
  stack (s, leaders, FALSE);
  stack (s, leaders, TRUE);
  for (guint i = 0; i < leaders->len; i++)
    draw_leader (s, &g_array_index (leaders, Leader, i));
}

static void
draw_sides (const Sketch *s)
{
  const double y = s->area.y0 + s->tag * 0.4;

  fp_drawing_text (s->drawing, (FpPoint) { s->area.x0, y }, s->tag * 0.85, 0, FP_ALIGN_LEFT, "Gospel side");
  fp_drawing_text (s->drawing, (FpPoint) { s->area.x1, y }, s->tag * 0.85, 0, FP_ALIGN_RIGHT, "Epistle side");
}

static void
lay_out_shown (Sketch *s, int altar, gboolean whole, FpBox3 *box, const FpBox *area)
{
  guint n;
  const FpOrderLight *light = fp_order_lights (s->card->order, &n);

  *box = shown (s->card, altar, whole);
  lay_out (s, box, area);
  s->number = number_height (s, light, n);
  if (!whole)
    s->number = MAX (s->number, s->tag * 0.5); /* there is no larger drawing: they lie over each other's place */
}

/* Where the rest of the altar is left out: a thin line with a zigzag, as ISO 128 has it (from memory). */
static void
draw_break (const Sketch *s, const FpBox3 *box)
{
  const FpPoint a = on_paper (s, (FpVec3) { box->lo.x, box->lo.y, s->layout.clip.y0 });
  const FpPoint b = on_paper (s, (FpVec3) { box->hi.x, box->lo.y, s->layout.clip.y0 });
  const double x = (a.x + b.x) / 2, by = s->tag * 0.3;
  const FpPoint line[] = { a, { x - by, a.y }, { x - by / 2, a.y + by }, { x + by / 2, a.y - by }, { x + by, a.y }, b };

  fp_drawing_run (s->drawing, FP_PEN_DIMENSION, line, G_N_ELEMENTS (line), FALSE);
}

void
fp_card_draw_elevation (FpCard *self, FpDrawing *drawing, const FpBox *area)
{
  g_autoptr (GArray) tags = g_array_new (FALSE, FALSE, sizeof (FpPoint)), covered = g_array_new (FALSE, FALSE, sizeof (FpBox));
  const int altar = fp_scene_celebrated_altar (self->set);
  Sketch s = { .card = self, .drawing = drawing, .tags = tags, .covered = covered,
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
  letter_rows (&s, altar);
  draw_numbers (&s);
  draw_sides (&s);
}
