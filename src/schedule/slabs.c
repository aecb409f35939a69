/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "slabs.h"

#include <math.h>

/* A run that is longer by a rounding error needs no further slab. */
#define SLACK 1e-6

static guint
parts (double length, double longest)
{
  return (guint) MAX (ceil (length / longest - SLACK), 1.0);
}

/* Both ways: a floor is laid in rows. */
static FpSlabs
floor_of (const FpCourse *course, const FpWorks *works)
{
  const guint along = parts (course->length, works->longest), across = parts (course->width, works->longest);

  return (FpSlabs) { course->number * along * across, course->length / along, course->width / across, works->slab };
}

FpSlabs
fp_slabs_of (const FpCourse *course, const FpWorks *works)
{
  const double length = course->length - course->butts * works->slab;
  /* A tread reaches under the riser that stands on it; a riser is so much lower, as the tread that lies on it is thick. */
  const double width = course->type == FP_COURSE_TREAD ? course->width + works->slab : course->width - works->slab;

  if (course->type == FP_COURSE_FLOOR)
    return floor_of (course, works);
  if (!(length > 0) || !(width > 0))
    return (FpSlabs) { 0, 0, 0, 0 };
  const guint n = parts (length, works->longest);
  return (FpSlabs) { course->number * n, length / n, width, works->slab };
}

double
fp_slabs_volume (const FpSlabs *self)
{
  return self->number * self->length * self->width * self->thickness;
}
