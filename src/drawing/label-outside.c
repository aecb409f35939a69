/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-outside.c - the name of what stands at a wall, outside the building */
#include "labels-private.h"

/* How far from its thing the text begins, and in which steps it is looked for, mm. */
#define NEAREST   5.0
#define FARTHEST 26.0
#define STEP      1.0

/* Kept between the text and the wall, mm. */
#define OFF_WALL 2.0

/* A wall has two faces, and may be panelled; its hatching is no line. */
#define CROSSES_WALL 5

/* Where along the side of the thing the leader begins, the best first. */
static const double SHARES[] = { 0.5, 0.25, 0.75, 0.1, 0.9 };

/* The text must stand clear of the wall, not only beside its line. */
static gboolean
is_clear_of_wall (FpLettering *l, FpPoint middle)
{
  const double half_w = l->words->widest / 2 + OFF_WALL, half_h = l->words->height / 2;
  const FpBox box = { middle.x - half_w, middle.y - half_h, middle.x + half_w, middle.y + half_h };

  return fp_cover_is_blank (l->room, &box, 0);
}

/* @right: to the right of its thing */
static gboolean
try_at (FpLettering *l, FpLabel *label, const FpBox *thing, gboolean right, double distance, double share)
{
  const double way = right ? 1 : -1, edge = right ? thing->x1 : thing->x0;
  const double y = thing->y0 + (thing->y1 - thing->y0) * share, text = edge + way * distance;
  const FpPoint middle = { text + way * (FP_LABEL_TO_LEADER + l->words->widest / 2), y };

  label->has_leader = TRUE;
  label->leader[0] = fp_label_end_on_thing (l, (FpPoint) { edge - way * 0.4, y });
  label->leader[1] = label->shelf = (FpPoint) { text, y };
  return is_clear_of_wall (l, middle) && fp_label_try (l, label, middle, 0);
}

static gboolean
try_side (FpLettering *l, FpLabel *label, const FpBox *thing, gboolean right)
{
  for (double distance = NEAREST; distance <= FARTHEST; distance += STEP)
    for (guint i = 0; i < G_N_ELEMENTS (SHARES); i++)
      if (try_at (l, label, thing, right, distance, SHARES[i]))
        return TRUE;
  return FALSE;
}

static gboolean
try_sides (FpLettering *l, FpLabel *label, const FpBox *thing)
{
  const gboolean right = l->outside->x1 - thing->x1 <= thing->x0 - l->outside->x0;

  return try_side (l, label, thing, right) || try_side (l, label, thing, !right);
}

gboolean
fp_label_try_outside (FpLettering *l, FpLabel *label, const FpBox *thing)
{
  const FpBox *inside = l->content, around = fp_box_grown (l->outside, G_MAXFLOAT, 0);
  gboolean found;

  l->content = &around;
  l->crosses = CROSSES_WALL;
  l->through_walls = TRUE;
  found = try_sides (l, label, thing);
  l->through_walls = FALSE;
  l->content = inside;
  return found;
}
