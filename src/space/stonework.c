/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/stonework.h"

#include <math.h>

/* A run that is longer by a rounding error needs no further slab. */
#define SLACK 1e-6
/* mm that a joint stands aside from one beneath it, where the lengths allow it: design judgement. */
#define LAP   150.0
/* A floor lies in rows, which are at most half as deep as a slab is long: design judgement. */
#define ROW   0.5

enum { EAST, NORTH, WEST, SOUTH, N_WAYS }; /* which way a course goes */

typedef struct
{
  const FpWorks *works;
  FpStonework   *out;
  guint          course;
  guint          row;
  GArray        *joints[N_WAYS]; /* of double: where those of the course laid last that way are, by x or y */
} Laying;

/* A run as it is laid: from and to along its course, inward from its edge, and levels. */
typedef struct { double t0, t1, a0, a1, z0, z1; } Run;

/* --- how a run is divided -------------------------------------------------------- */

/* So many units, each with a joint; or so that the first and the last slab are half a unit. */
typedef struct { guint units; gboolean halved; } Pattern;

static double
unit_of (double length, guint units, double joint)
{
  return (length - (units - 1) * joint) / units;
}

static guint
least_units (double length, double longest, double joint)
{
  return (guint) MAX (ceil ((length + joint) / (longest + joint) - SLACK), 1.0);
}

/* Where the next slab begins and how long it is. */
static double
slab_length (const Pattern *p, double unit, double joint, guint which)
{
  const guint last = p->units; /* of one that is halved */

  return p->halved && (which == 0 || which == last) ? (unit - joint) / 2 : unit;
}

static guint
n_slabs (const Pattern *p)
{
  return p->units + (p->halved ? 1 : 0);
}

static double
across_axis (const FpCourse *course, double t)
{
  return fabs (course->along.x) > 0.5 ? course->from.x + t * course->along.x : course->from.y + t * course->along.y;
}

static double
nearest (const GArray *joints, double at)
{
  double least = INFINITY;

  for (guint i = 0; i < joints->len; i++)
    least = MIN (least, fabs (g_array_index (joints, double, i) - at));
  return least;
}

/* The least that a joint of that pattern stands aside from one beneath. */
static double
lap_of (const Pattern *p, const FpCourse *course, const Run *run, double joint, const GArray *beneath)
{
  const double unit = unit_of (run->t1 - run->t0, p->units, joint);
  double least = INFINITY, t = run->t0;

  for (guint i = 0; i + 1 < n_slabs (p); i++)
    {
      t += slab_length (p, unit, joint, i);
      least = MIN (least, nearest (beneath, across_axis (course, t + joint / 2)));
      t += joint;
    }
  return least;
}

/* The fewest slabs whose joints are broken; where none are, those that come nearest to it. */
static Pattern
pattern_of (const FpCourse *course, const Run *run, const FpWorks *works, const GArray *beneath)
{
  const double length = run->t1 - run->t0;
  const guint least = least_units (length, works->longest, works->joint);
  const Pattern tried[] = { { least, FALSE }, { least, TRUE }, { least + 1, FALSE }, { least + 1, TRUE } };
  Pattern best = tried[0];
  double most = -1;

  if (course->whole)
    return (Pattern) { 1, FALSE };
  for (guint i = 0; i < G_N_ELEMENTS (tried); i++)
    {
      const double unit = unit_of (length, tried[i].units, works->joint);
      const double lap = lap_of (&tried[i], course, run, works->joint, beneath);

      if ((tried[i].halved && tried[i].units < 2) || !(unit > 2 * works->joint) || !(lap > most))
        continue;
      best = tried[i];
      most = lap;
      if (lap >= LAP)
        break;
    }
  return best;
}

/* --- slabs ----------------------------------------------------------------------- */

static guint
way_of (const FpCourse *course)
{
  if (fabs (course->along.x) > 0.5)
    return course->along.x > 0 ? EAST : WEST;
  return course->along.y > 0 ? NORTH : SOUTH;
}

static void
add_slab (Laying *l, const FpCourse *course, const Run *run, double t0, double t1)
{
  const FpPoint in = { -course->along.y, course->along.x };
  FpSlab slab = { .number = l->out->slabs->len + 1, .course = l->course, .row = l->row, .length = t1 - t0, .box = FP_BOX3_EMPTY };

  for (guint i = 0; i < 2; i++)
    {
      const double t = i == 0 ? t0 : t1, a = i == 0 ? run->a0 : run->a1, z = i == 0 ? run->z0 : run->z1;

      fp_box3_add_point (&slab.box, (FpVec3) { course->from.x + t * course->along.x + a * in.x,
                                               course->from.y + t * course->along.y + a * in.y, z });
    }
  if (course->type == FP_COURSE_RISER || course->type == FP_COURSE_FACE)
    {
      slab.width = run->z1 - run->z0;
      slab.thickness = run->a1 - run->a0;
    }
  else
    {
      slab.width = run->a1 - run->a0;
      slab.thickness = run->z1 - run->z0;
    }
  g_array_append_val (l->out->slabs, slab);
}

static void
lay_run (Laying *l, const FpCourse *course, const Run *run)
{
  GArray *beneath = l->joints[way_of (course)], *joints;
  const double joint = l->works->joint;
  double t = run->t0;

  if (!(run->t1 - run->t0 > 0) || !(run->a1 - run->a0 > 0) || !(run->z1 - run->z0 > 0))
    return;
  const Pattern p = pattern_of (course, run, l->works, beneath);
  const double unit = unit_of (run->t1 - run->t0, p.units, joint);
  joints = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < n_slabs (&p); i++)
    {
      const double length = slab_length (&p, unit, joint, i), at = across_axis (course, t + length + joint / 2);

      add_slab (l, course, run, t, t + length);
      if (i + 1 < n_slabs (&p))
        g_array_append_val (joints, at);
      t += length + joint;
    }
  g_array_unref (beneath);
  l->joints[way_of (course)] = joints;
}

/* --- courses ----------------------------------------------------------------------- */

/* How much shorter a run is at an end that is so. */
static double
taken_at (const FpCourse *course, FpCourseEnd end, const FpWorks *works)
{
  switch (course->type)
    {
    case FP_COURSE_RISER:
      return end == FP_END_PASSES ? works->nosing : end == FP_END_BUTTS ? works->nosing + works->slab + works->joint : 0;
    case FP_COURSE_TREAD:
      return end == FP_END_BUTTS ? course->width + works->nosing + works->slab + works->joint : 0;
    case FP_COURSE_FACE:
      return end == FP_END_BUTTS ? works->slab + works->joint : 0;
    case FP_COURSE_FLOOR:
    case FP_COURSE_BLOCK:
      break;
    }
  return 0;
}

static void
lay_floor (Laying *l, const FpCourse *course)
{
  const FpWorks *works = l->works;
  const guint rows = least_units (course->width, works->longest * ROW, works->joint);
  const double deep = unit_of (course->width, rows, works->joint);

  for (guint i = 0; i < rows; i++)
    {
      const double a0 = i * (deep + works->joint);
      const Run run = { 0, course->length, a0, a0 + deep, course->top - works->slab, course->top };

      l->row = i;
      lay_run (l, course, &run);
    }
  l->row = 0;
}

static void
lay_course (Laying *l, const FpCourse *course)
{
  const FpWorks *works = l->works;
  const double slab = works->slab, joint = works->joint, nosing = works->nosing;
  Run run = { taken_at (course, course->begins, works), course->length - taken_at (course, course->ends, works), 0, 0, 0, 0 };

  if (course->type == FP_COURSE_FACE && works->solid)
    return;
  switch (course->type)
    {
    case FP_COURSE_RISER:
      run.a0 = nosing;
      run.a1 = nosing + slab;
      run.z0 = course->foot + joint;
      run.z1 = course->top - slab - joint;
      break;
    case FP_COURSE_TREAD:
      run.a1 = course->width + nosing + slab;
      run.z0 = course->top - slab;
      run.z1 = course->top;
      break;
    case FP_COURSE_FACE:
      run.a1 = slab;
      run.z0 = course->foot + joint;
      run.z1 = course->top;
      break;
    case FP_COURSE_BLOCK:
      run.a1 = course->width;
      run.z0 = course->foot + joint;
      run.z1 = course->top;
      break;
    case FP_COURSE_FLOOR:
      lay_floor (l, course);
      return;
    }
  lay_run (l, course, &run);
}

FpStonework *
fp_stonework_new (const FpKind *kind, const FpForm *form, const FpWorks *works)
{
  FpStonework *self = g_new (FpStonework, 1);
  Laying l = { .works = works, .out = self };

  self->courses = g_array_new (FALSE, FALSE, sizeof (FpCourse));
  self->slabs = g_array_new (FALSE, FALSE, sizeof (FpSlab));
  if (kind->courses != NULL)
    kind->courses (form, self->courses);
  for (guint i = 0; i < N_WAYS; i++)
    l.joints[i] = g_array_new (FALSE, FALSE, sizeof (double));
  for (l.course = 0; l.course < self->courses->len; l.course++)
    lay_course (&l, &g_array_index (self->courses, FpCourse, l.course));
  for (guint i = 0; i < N_WAYS; i++)
    g_array_unref (l.joints[i]);
  return self;
}

void
fp_stonework_free (FpStonework *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->courses);
  g_array_unref (self->slabs);
  g_free (self);
}

double
fp_stonework_air (const FpCourse *course, const FpWorks *works)
{
  const double corners = (course->begins == FP_END_BUTTS ? works->nosing : 0) + (course->ends == FP_END_BUTTS ? works->nosing : 0);

  if (course->type != FP_COURSE_RISER)
    return 0;
  return works->nosing * MAX (course->length - corners, 0.0) * MAX (course->top - course->foot - works->slab, 0.0);
}

gboolean
fp_placed_is_new (const FpPlaced *placed)
{
  return placed->standing == FP_STANDING_PROPOSED && !placed->moved && !placed->in_survey;
}
