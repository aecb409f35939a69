/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying-section.c - the slabs of the lowest steps cut through, with what the mason has to hold to */
#include "laying-private.h"

#include "span.h"

#include <math.h>

typedef struct
{
  const FpPanel *panel;
  FpDrawing     *drawing;
  FpPoint        origin;
  double         scale;
  FpUnits        units;
} Sketch;

static FpPoint
at (const Sketch *s, double y, double z)
{
  return (FpPoint) { s->origin.x + (y - s->panel->box.x0) / s->scale, s->origin.y + (z - s->panel->box.y0) / s->scale };
}

/* What runs in front, from its first row. */
static gboolean
is_cut (const FpStonework *stonework, const FpSlab *slab)
{
  return slab->row == 0 && g_array_index (stonework->courses, FpCourse, slab->course).along.x > 0.5;
}

/* One slab of each course will do: all of them are cut alike. */
static void
draw_slabs (const Sketch *s)
{
  const FpStonework *stonework = s->panel->laid->stonework;
  const FpBox *room = &s->panel->box;

  for (guint i = 0; i < stonework->slabs->len; i++)
    {
      const FpSlab *slab = &g_array_index (stonework->slabs, FpSlab, i);
      const double y0 = MAX (slab->box.lo.y, room->x0), y1 = MIN (slab->box.hi.y, room->x1);
      const double z0 = MAX (slab->box.lo.z, room->y0), z1 = MIN (slab->box.hi.z, room->y1);
      const FpPoint corner[4] = { at (s, y0, z0), at (s, y1, z0), at (s, y1, z1), at (s, y0, z1) };

      if (is_cut (stonework, slab) && y0 < y1 && z0 < z1
          && (i == 0 || g_array_index (stonework->slabs, FpSlab, i - 1).course != slab->course))
        fp_drawing_area (s->drawing, FP_PEN_OUTLINE, FP_FILL_CUT, 45, corner, 4);
    }
}

static void
span (const Sketch *s, FpPoint from, FpPoint to, double value, const char *what)
{
  g_autofree char *length = fp_length_format (round (value * 10) / 10, s->units), *figure = g_strdup_printf ("%s %s", what, length);

  fp_draw_span (s->drawing, from, to, FP_LAYING_LETTERS, figure);
}

static const FpCourse *
find (const Sketch *s, FpCourseType type, guint step)
{
  const GArray *courses = s->panel->laid->stonework->courses;

  for (guint i = 0; i < courses->len; i++)
    {
      const FpCourse *course = &g_array_index (courses, FpCourse, i);
      if (course->type == type && course->step == step)
        return course;
    }
  return NULL;
}

static void
draw_measures (const Sketch *s)
{
  const FpCourse *riser = find (s, FP_COURSE_RISER, 1), *tread = find (s, FP_COURSE_TREAD, 1);
  const FpBox *room = &s->panel->box;
  const double edge = riser->from.y, above = room->y1 - 15;

  span (s, at (s, edge - 30, riser->foot), at (s, edge - 30, riser->top), riser->top - riser->foot, "rise");
  if (tread != NULL)
    span (s, at (s, edge, above), at (s, edge + tread->width, above), tread->width, "edge to edge");
}

/* "core", and what is too small to be measured on paper. */
static void
write_words (const Sketch *s, const FpWorks *works)
{
  g_autofree char *joint = fp_length_format_unit (works->joint, s->units), *nosing = fp_length_format_unit (works->nosing, s->units);
  g_autofree char *slab = fp_length_format_unit (works->slab, s->units);
  g_autofree char *words = works->nosing > 0 ? g_strdup_printf ("slabs %s; nosing %s; joints and beds %s", slab, nosing, joint)
                                             : g_strdup_printf ("slabs %s; no nosing; joints and beds %s", slab, joint);
  const FpPoint floor = at (s, s->panel->box.x0, 0), end = at (s, s->panel->box.x1, 0);

  fp_drawing_line (s->drawing, FP_PEN_EDGE, floor, end);
  fp_drawing_text (s->drawing, (FpPoint) { floor.x, floor.y - 2 - FP_LAYING_LETTERS }, FP_LAYING_LETTERS, 0, FP_ALIGN_LEFT, words);
  fp_drawing_text (s->drawing, (FpPoint) { end.x - 8, floor.y + 4 }, FP_LAYING_LETTERS, 0, FP_ALIGN_RIGHT, "core");
}

void
fp_laying_section (const FpPanel *self, FpDrawing *drawing, FpPoint origin, double scale, const FpWorks *works, FpUnits units)
{
  const Sketch s = { .panel = self, .drawing = drawing, .origin = origin, .scale = scale, .units = units };

  draw_slabs (&s);
  draw_measures (&s);
  write_words (&s, works);
}
