/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers of lights, in the order in which they are lit. */
#include "card-sketch.h"

#include "footpace/order-marks.h"

#include <math.h>

#define APART      1.75 /* of two numbers, in heights of their capitals         */

static gboolean
is_free (const FpCardSketch *s, FpPoint at)
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
lift (const FpCardSketch *s, FpPoint at)
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
find_room (FpCardSketch *s, FpPoint wanted)
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
is_branched (const FpCardSketch *s, const FpOrderLight *light)
{
  return fp_item_kind (fp_scene_placed (s->card->set, NULL)[light->owner].item)->role == FP_ROLE_BRANCHED_LIGHTS;
}

static gboolean
goes_with (const FpCardSketch *s, const FpOrderLight *light, const FpOrderLight *first)
{
  return is_branched (s, light) && light->owner == first->owner && light->side == first->side && light->server == first->server;
}

/* So small that a number stands clear of the letter over the cross: half of each, in heights, is 1.05 and 0.85. */
static double
clear_of_cross (const FpCardSketch *s, const FpOrderLight *light, guint n)
{
  const int cross = fp_scene_role (s->card->set, FP_ROLE_CRUCIFIX);
  double least = s->tag;
  FpBox3 body;

  if (cross < 0)
    return least;
  body = fp_card_body_of (s->card->set, &fp_scene_placed (s->card->set, NULL)[cross]);
  for (guint i = 0; i < n; i++)
    {
      const double apart = fabs (light[i].at.x - (body.lo.x + body.hi.x) / 2) / s->layout.scale;

      if (apart > 0.5 && !is_branched (s, &light[i]))
        least = MIN (least, apart / 1.95);
    }
  return least;
}

double
fp_card_number_height (const FpCardSketch *s, const FpOrderLight *light, guint n)
{
  double least = clear_of_cross (s, light, n) * 2;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      {
        const double apart = fabs (fp_card_on_paper (s, light[i].at).x - fp_card_on_paper (s, light[k].at).x);

        if (apart > 0.5 && !is_branched (s, &light[i]) && !is_branched (s, &light[k]))
          least = MIN (least, apart);
      }
  return least / 2;
}

/* Over the middle of all that are lit with @first. */
static void
draw_branched (FpCardSketch *s, const FpOrderLight *first, const FpOrderLight *light, guint n)
{
  guint last = first->number, from = first->number;
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    if (goes_with (s, &light[i], first))
      {
        fp_box_add_point (&box, fp_card_on_paper (s, light[i].at));
        last = MAX (last, light[i].number);
        from = MIN (from, light[i].number);
      }
  if (first->number == from)
    fp_draw_order_range (s->drawing, find_room (s, (FpPoint) { (box.x0 + box.x1) / 2, box.y1 + s->flame + s->number * 1.15 }),
                         s->number, from, last);
}

void
fp_card_draw_numbers (FpCardSketch *s)
{
  guint n;
  const FpOrderLight *light = fp_order_lights (s->card->order, &n);

  for (guint i = 0; i < n; i++)
    fp_draw_flame (s->drawing, fp_card_on_paper (s, light[i].at), s->flame);
  for (guint i = 0; i < n; i++)
    {
      const FpPoint wick = fp_card_on_paper (s, light[i].at);

      if (is_branched (s, &light[i]))
        draw_branched (s, &light[i], light, n);
      else
        fp_draw_order_number (s->drawing, find_room (s, lift (s, (FpPoint) { wick.x, wick.y + s->flame + s->number * 1.15 })),
                             s->number, light[i].number);
    }
}
