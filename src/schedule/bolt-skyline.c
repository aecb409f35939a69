/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt-skyline.c - how far along the bolt is taken at each x */
#include "bolt-private.h"

#include <math.h>
#include <string.h>

void
fp_skyline_begin (FpSkyline *self, double width)
{
  self->n = 1;
  self->step[0] = (FpSkylineStep) { 0.0, 0.0 };
  self->width = width;
}

void
fp_skyline_copy (FpSkyline *self, const FpSkyline *other)
{
  self->n = other->n;
  self->width = other->width;
  memcpy (self->step, other->step, other->n * sizeof *other->step);
}

double
fp_skyline_end_of (const FpSkyline *self, guint i)
{
  return i + 1 < self->n ? self->step[i + 1].x : self->width;
}

double
fp_skyline_highest_over (const FpSkyline *self, double x, double across)
{
  double y = 0.0;

  for (guint i = 0; i < self->n; i++)
    if (self->step[i].x < x + across - FP_BOLT_HAIR && fp_skyline_end_of (self, i) > x + FP_BOLT_HAIR)
      y = MAX (y, self->step[i].y);
  return y;
}

static void
add_step (FpSkylineStep *step, guint *n, double x, double y)
{
  if (*n > 0 && fabs (step[*n - 1].y - y) <= FP_BOLT_HAIR)
    return;
  step[(*n)++] = (FpSkylineStep) { x, y };
}

/* From @x to @x + @across it is @y now. */
void
fp_skyline_raise (FpSkyline *self, double x, double across, double y)
{
  const double x1 = x + across;
  gboolean done = FALSE;
  FpSkyline was;

  fp_skyline_copy (&was, self);
  self->n = 0;
  for (guint i = 0; i < was.n; i++)
    {
      const double from = was.step[i].x, to = fp_skyline_end_of (&was, i);

      if (from < x - FP_BOLT_HAIR)
        add_step (self->step, &self->n, from, was.step[i].y);
      if (!done && to > x + FP_BOLT_HAIR)
        {
          add_step (self->step, &self->n, x, y);
          done = TRUE;
        }
      if (to > x1 + FP_BOLT_HAIR)
        add_step (self->step, &self->n, MAX (from, x1), was.step[i].y);
    }
}

guint
fp_skyline_lowest_step (const FpSkyline *self)
{
  guint lowest = 0;

  for (guint i = 1; i < self->n; i++)
    if (self->step[i].y < self->step[lowest].y)
      lowest = i;
  return lowest;
}

double
fp_skyline_highest (const FpSkyline *self)
{
  double y = 0.0;

  for (guint i = 0; i < self->n; i++)
    y = MAX (y, self->step[i].y);
  return y;
}

/* Into the lowest step nothing more goes: it is as high as the lower of those beside it now. */
void
fp_skyline_fill (FpSkyline *self, guint i)
{
  const double left = i > 0 ? self->step[i - 1].y : INFINITY, right = i + 1 < self->n ? self->step[i + 1].y : INFINITY;

  fp_skyline_raise (self, self->step[i].x, fp_skyline_end_of (self, i) - self->step[i].x, MIN (left, right));
}
