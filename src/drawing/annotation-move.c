/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation-move.c - what was set out about (0, 0) is moved to where the view lies, and grows with it */
#include "annotation.h"

static FpPoint
times_point (FpPoint p, double times)
{
  return (FpPoint) { p.x * times, p.y * times };
}

static FpPoint
moved (FpPoint p, FpPoint by)
{
  return (FpPoint) { p.x + by.x, p.y + by.y };
}

/* --- growing ----------------------------------------------------------------------- */

static void
grow_dimension (FpWanted *w, double times)
{
  w->a = times_point (w->a, times);
  w->b = times_point (w->b, times);
  w->lo *= times;
  w->hi *= times;
  w->grown = times;
  w->base *= times;
  w->offset *= times;
  for (guint i = 0; i < 4; i++)
    {
      w->border[i / 2][i % 2] *= times;
      w->span[i / 2][i % 2] *= times;
    }
}

/* By how much the middle of a text moves: its lines keep their distance. */
static FpPoint
growth (FpPoint middle, double times)
{
  return (FpPoint) { middle.x * (times - 1), middle.y * (times - 1) };
}

static void
grow_label (FpLabel *label, double times)
{
  FpPoint middle = { 0, 0 }, by;

  for (guint i = 0; i < label->n_lines; i++)
    middle = moved (middle, times_point (label->at[i], 1.0 / label->n_lines));
  by = growth (middle, times);
  for (guint i = 0; i < label->n_lines; i++)
    label->at[i] = moved (label->at[i], by);
  /* The leader grows as a whole, and reaches the text by a shelf: the room between the two grew with them. */
  label->shelf = moved (label->shelf, by);
  label->leader[0] = times_point (label->leader[0], times);
  label->leader[1] = times_point (label->leader[1], times);
}

static void
grow_fall (FpFall *fall, double times)
{
  const FpPoint by = growth (fall->at, times);

  fall->at = moved (fall->at, by);
  fall->from = moved (fall->from, by);
  fall->to = moved (fall->to, by);
}

void
fp_annotation_grow (FpAnnotation *self, double times)
{
  for (guint i = 0; i < self->wanted->len; i++)
    grow_dimension (&g_array_index (self->wanted, FpWanted, i), times);
  for (guint i = 0; i < self->levels->len; i++)
    g_array_index (self->levels, FpLevelMark, i).v *= times;
  for (guint i = 0; i < self->labels->len; i++)
    grow_label (&g_array_index (self->labels, FpLabel, i), times);
  for (guint i = 0; i < self->falls->len; i++)
    grow_fall (&g_array_index (self->falls, FpFall, i), times);
  fp_set_marks_grow (self->set, times);
}

/* --- moving ------------------------------------------------------------------------- */

static void
move_dimension (FpWanted *w, FpPoint by)
{
  w->a = moved (w->a, by);
  w->b = moved (w->b, by);
  w->lo += w->upright ? by.y : by.x;
  w->hi += w->upright ? by.y : by.x;
}

static void
move_label (FpLabel *label, FpPoint by)
{
  for (guint i = 0; i < label->n_lines; i++)
    label->at[i] = moved (label->at[i], by);
  label->leader[0] = moved (label->leader[0], by);
  label->leader[1] = moved (label->leader[1], by);
  label->shelf = moved (label->shelf, by);
}

static void
move_fall (FpFall *fall, FpPoint by)
{
  fall->at = moved (fall->at, by);
  fall->from = moved (fall->from, by);
  fall->to = moved (fall->to, by);
}

void
fp_annotation_move (FpAnnotation *self, FpPoint by)
{
  FpBox *c = &self->sides.content;

  *c = (FpBox) { c->x0 + by.x, c->y0 + by.y, c->x1 + by.x, c->y1 + by.y };
  self->title_at = moved (self->title_at, by);
  for (guint i = 0; i < self->wanted->len; i++)
    move_dimension (&g_array_index (self->wanted, FpWanted, i), by);
  for (guint i = 0; i < self->levels->len; i++)
    g_array_index (self->levels, FpLevelMark, i).v += by.y;
  for (guint i = 0; i < self->labels->len; i++)
    move_label (&g_array_index (self->labels, FpLabel, i), by);
  for (guint i = 0; i < self->falls->len; i++)
    move_fall (&g_array_index (self->falls, FpFall, i), by);
  fp_set_marks_move (self->set, by);
}
