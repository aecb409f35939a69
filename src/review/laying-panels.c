/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying-panels.c - which drawings a thing needs: a plan of each lift, its front, a section through the lowest steps */
#include "laying-private.h"

#include <math.h>

#define SECTION_SCALE 5.0
/* mm that the section shows before the lowest edge, behind the second, and over it. */
#define BEFORE 60.0
#define BEHIND 260.0
#define OVER   60.0

static const FpCourse *
course_of (const FpLaid *laid, guint slab)
{
  return &g_array_index (laid->stonework->courses, FpCourse, g_array_index (laid->stonework->slabs, FpSlab, slab).course);
}

static const FpSlab *
slab_at (const FpLaid *laid, guint i)
{
  return &g_array_index (laid->stonework->slabs, FpSlab, i);
}

char *
fp_laying_mark (const FpLaid *laid, const FpSlab *slab)
{
  return g_strdup_printf ("S%u", laid->marked + slab->number);
}

char *
fp_laying_lift_name (const FpCourse *course)
{
  if (course->step == 0 || course->type == FP_COURSE_FLOOR)
    return g_strdup (course->what);
  return g_strdup_printf ("%s of step %u", course->what, course->step);
}

/* What is laid in one go: of one sort and step. */
static gboolean
same_lift (const FpCourse *a, const FpCourse *b)
{
  return a->type == b->type && a->step == b->step && g_str_equal (a->of, b->of);
}

static void
take_box (FpBox *box, const FpBox3 *from, FpPanelType type)
{
  const gboolean plan = type == FP_PANEL_PLAN;

  fp_box_add_point (box, (FpPoint) { from->lo.x, plan ? from->lo.y : from->lo.z });
  fp_box_add_point (box, (FpPoint) { from->hi.x, plan ? from->hi.y : from->hi.z });
}

static char *
marks_of (const FpLaid *laid, guint first, guint n)
{
  g_autofree char *from = fp_laying_mark (laid, slab_at (laid, first)), *to = fp_laying_mark (laid, slab_at (laid, first + n - 1));

  return n == 1 ? g_steal_pointer (&from) : g_strdup_printf ("%s–%s", from, to);
}

/* What lies beneath is shown too, and the room of the whole thing, so that plans are read one over the other. */
static void
add_plan (const FpLaid *laid, guint first, guint n, const FpPanel *under, FpUnits units, GArray *out)
{
  FpPanel panel = { .type = FP_PANEL_PLAN, .laid = laid, .first = first, .n = n, .box = FP_BOX_EMPTY };
  g_autofree char *marks = marks_of (laid, first, n), *name = fp_laying_lift_name (course_of (laid, first));
  const FpBox3 *box = &slab_at (laid, first)->box;
  g_autofree char *top = fp_length_format_unit (box->hi.z, units), *thick = fp_length_format_unit (box->hi.z - box->lo.z, units);
  const gboolean lies = g_str_equal (course_of (laid, first)->what, "mensa");

  if (under != NULL)
    {
      panel.under = under->first;
      panel.n_under = under->n;
    }
  for (guint i = first; i < first + n; i++)
    take_box (&panel.box, &slab_at (laid, i)->box, FP_PANEL_PLAN);
  for (guint i = panel.under; i < panel.under + panel.n_under; i++)
    take_box (&panel.box, &slab_at (laid, i)->box, FP_PANEL_PLAN);
  panel.title = g_strdup_printf ("%s: %s, %s; %s%stop %s above what it stands on", fp_item_name (laid->placed->item), name, marks,
                                 lies ? thick : "", lies ? " thick, " : "", top);
  g_array_append_val (out, panel);
}

static void
add_plans (const FpLaid *laid, FpUnits units, GArray *out)
{
  const guint all = laid->stonework->slabs->len, before = out->len;

  for (guint first = 0, next; first < all; first = next)
    {
      for (next = first + 1; next < all && same_lift (course_of (laid, first), course_of (laid, next)); next++)
        ;
      /* A copy: adding moves them. */
      const FpPanel under = out->len > before ? g_array_index (out, FpPanel, out->len - 1) : (FpPanel) { 0 };
      add_plan (laid, first, next - first, out->len > before ? &under : NULL, units, out);
    }
}

static gboolean
is_square (const FpPlaced *placed)
{
  return fabs (sin (placed->place.turn * G_PI / 180)) < 1e-6 && cos (placed->place.turn * G_PI / 180) > 0;
}

/* Where an altar stands on the floor of its footpace, and how far its middle is from the axis; "" of anything else, and of what is
 * turned. */
static char *
stands_text (const FpScene *scene, const FpPlaced *altar, FpUnits units)
{
  const FpPlaced *steps = altar->support >= 0 ? &fp_scene_placed (scene, NULL)[altar->support] : NULL;

  if (fp_item_kind (altar->item)->role != FP_ROLE_ALTAR || steps == NULL || fp_box_is_empty (&steps->extent.bearing)
      || !is_square (altar) || !is_square (steps))
    return g_strdup ("");
  const FpBox *floor = &steps->extent.bearing, *own = &altar->plan;
  const double middle = round ((own->x0 + own->x1) / 2);
  g_autofree char *front = fp_length_format_unit (round (own->y0 - floor->y0 - steps->place.y), units);
  g_autofree char *left = fp_length_format_unit (round (own->x0 - floor->x0 - steps->place.x), units);
  g_autofree char *right = fp_length_format_unit (round (floor->x1 + steps->place.x - own->x1), units);
  g_autofree char *aside = fp_length_format_unit (fabs (middle), units);
  g_autofree char *axis = fabs (middle) < 1 ? g_strdup ("on") : g_strdup_printf ("%s %s of", aside, middle < 0 ? "left" : "right");

  return g_strdup_printf ("; mensa %s behind the front edge of the floor of “%s”, %s from the left end of that, %s from the right, middle %s the axis",
                          front, fp_item_name (steps->item), left, right, axis);
}

static void
add_front (const FpScene *scene, const FpLaid *laid, FpUnits units, GArray *out)
{
  FpPanel panel = { .type = FP_PANEL_FRONT, .laid = laid, .n = laid->stonework->slabs->len, .box = FP_BOX_EMPTY };

  for (guint i = 0; i < panel.n; i++)
    take_box (&panel.box, &slab_at (laid, i)->box, FP_PANEL_FRONT);
  panel.box.y0 = 0; /* with the bed */
  g_autofree char *stands = stands_text (scene, laid->placed, units);
  panel.title = g_strdup_printf ("%s: its front, seen from the people%s", fp_item_name (laid->placed->item), stands);
  g_array_append_val (out, panel);
}

/* Of the lowest step with the edge of what follows it. */
static void
add_section (const FpLaid *laid, GArray *out)
{
  const GArray *courses = laid->stonework->courses;
  FpPanel panel = { .type = FP_PANEL_SECTION, .laid = laid, .n = laid->stonework->slabs->len, .scale = SECTION_SCALE };
  double tread = 0, rise = 0;

  if (course_of (laid, 0)->type != FP_COURSE_RISER)
    return;
  for (guint i = 0; i < courses->len; i++)
    {
      const FpCourse *course = &g_array_index (courses, FpCourse, i);

      if (course->type == FP_COURSE_TREAD && course->step == 1)
        tread = course->width;
      if (course->type == FP_COURSE_RISER && course->step <= 2)
        rise = course->top;
    }
  const double edge = g_array_index (courses, FpCourse, 0).from.y;
  panel.box = (FpBox) { edge - BEFORE, 0, edge + tread + BEHIND, rise + OVER };
  panel.title = g_strdup_printf ("%s: section through the front, 1:%g", fp_item_name (laid->placed->item), SECTION_SCALE);
  g_array_append_val (out, panel);
}

void
fp_laying_add_panels (const FpScene *scene, const FpLaid *laid, FpUnits units, GArray *out)
{
  if (laid->stonework->slabs->len == 0)
    return;
  add_plans (laid, units, out);
  add_front (scene, laid, units, out);
  add_section (laid, out);
}
