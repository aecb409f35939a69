/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The letters of what stands on and about the altar, beside the drawing. */
#include "card-sketch.h"

#include <math.h>

#define SPACED     1.9  /* of letters in their column, in heights of their capitals                 */

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
find_ends (const FpCardSketch *s, const FpCardRow *row, const FpBox3 *body, Leader *leader)
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
  leader->left = fp_card_on_paper (s, left);
  leader->right = fp_card_on_paper (s, right);
}

/* On the side where it lies; what lies in the middle or on both, where there are fewer. */
static void
choose_side (const FpCardSketch *s, Leader *leader, guint *n_left, guint *n_right)
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
letter_crucifix (FpCardSketch *s, const FpCardRow *row, const FpBox3 *body)
{
  const FpPlaced *placed = &fp_scene_placed (s->card->set, NULL)[row->placed];
  const FpSolid *solid = fp_scene_solids (s->card->set, NULL);
  const FpPoint top = fp_card_on_paper (s, (FpVec3) { (body->lo.x + body->hi.x) / 2, body->lo.y, body->hi.z });
  const double tag = MIN (s->tag, s->number), half = 0.85 * tag;
  const FpPoint at = { top.x, top.y + 1.35 * tag };
  const FpBox frame = { at.x - half, at.y - half, at.x + half, at.y + half };

  fp_drawing_line (s->drawing, FP_PEN_DIMENSION, (FpPoint) { at.x, at.y - half }, top);
  fp_card_draw_letter (s->drawing, at, tag, row->letter);
  g_array_append_val (s->covered, frame);
  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
    {
      const FpBox3 own = fp_solid_box (&solid[i]);
      const FpPoint low = fp_card_on_paper (s, own.lo), high = fp_card_on_paper (s, own.hi);
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
stack (const FpCardSketch *s, GArray *leaders, gboolean on_right)
{
  const FpPoint a = fp_view_to_paper (&s->layout, (FpPoint) { s->layout.clip.x0, s->layout.clip.y0 });
  const FpPoint b = fp_view_to_paper (&s->layout, (FpPoint) { s->layout.clip.x1, s->layout.clip.y1 });
  double limit = b.y;

  for (guint i = 0; i < leaders->len; i++)
    {
      Leader *leader = &g_array_index (leaders, Leader, i);

      if (leader->on_right != on_right)
        continue;
      leader->at = (FpPoint) { on_right ? b.x + FP_CARD_COLUMN * s->tag : a.x - FP_CARD_COLUMN * s->tag, MIN (leader->to.y, limit) };
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
draw_leader (const FpCardSketch *s, const Leader *leader)
{
  const double edge = s->tag * (leader->on_right ? -0.85 : 0.85);

  fp_drawing_line (s->drawing, FP_PEN_DIMENSION, (FpPoint) { leader->at.x + edge, leader->at.y }, leader->to);
  fp_drawing_circle (s->drawing, FP_PEN_DIMENSION, FP_FILL_INK, leader->to, s->tag * 0.14);
  fp_card_draw_letter (s->drawing, leader->at, s->tag, leader->letter);
}

void
fp_card_letter_rows (FpCardSketch *s, int altar)
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
      if (row->section == FP_CARD_SECTION_AWAY || row->placed < 0 || !fp_card_belongs (s->card, row->placed, altar) || lettered >= 26)
        continue;
      body = fp_card_body_of (s->card->set, &all[row->placed]);
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
