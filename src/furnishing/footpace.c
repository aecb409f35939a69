/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace.c - the platform of the altar and the steps that lead up to it
 *
 * Laid round the altar (FpForm.core).  Step 0 is the footpace itself, step
 * count - 1 the lowest; each is a block from the floor up to its own top, so
 * they are nested in each other.
 */
#include "edge-marking.h"

enum { COUNT, RISER, TREAD, FRONT, BEHIND, ENDS, SIDES, EDGE };
enum { FRONT_ONLY, THREE, FOUR };

static const FpChoice sides[] = {
  { "front", "In front" }, { "three", "On three sides" }, { "four", "All round" }, { NULL, NULL },
};

#define SCHULTE "Catholic Encyclopedia I (1907), Altar Steps"

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Steps, the footpace included", 1, 3, 15, SCHULTE),
  [RISER] = FP_LENGTH ("riser", "Riser", 50, 152, 250, SCHULTE ": about 6 in"),
  [TREAD] = FP_LENGTH ("tread", "Tread", 200, 305, 1500, SCHULTE ": about 1 ft"),
  [FRONT] = FP_LENGTH ("front", "Footpace in front of the altar", 0, 1067, 5000, SCHULTE ": about 3 ft 6 in"),
  [BEHIND] = FP_LENGTH ("behind", "Footpace behind the altar", 0, 0, 5000, FP_JUDGEMENT),
  [ENDS] = FP_LENGTH ("ends", "Footpace beyond the ends of the altar", 0, 305, 5000, SCHULTE ": about 1 ft"),
  [SIDES] = FP_CHOICE ("sides", "Steps pass", sides, THREE, SCHULTE),
  FP_EDGE_PARAMS,
  FP_NO_MORE_PARAMS
};

/* What it lies round; a common altar where nothing stands on it yet (design judgement). */
static FpBox
core_box (const FpForm *form)
{
  return fp_box_is_empty (&form->core) ? fp_centred_box (2400, 900) : form->core;
}

static const char solid[] = "steps and footpace, solid";

static double
top (const FpForm *form)
{
  return form->param[COUNT] * form->param[RISER];
}

/* Step 0 is the footpace. */
static FpBox
step_box (const FpForm *form, guint step)
{
  const double *p = form->param;
  const FpBox core = core_box (form);
  const double out = step * p[TREAD];
  const double at_ends = fp_form_is (form, SIDES, FRONT_ONLY) ? 0 : out;
  const double at_back = fp_form_is (form, SIDES, FOUR) ? out : 0;

  return (FpBox) {
    core.x0 - p[ENDS] - at_ends, core.y0 - p[FRONT] - out, core.x1 + p[ENDS] + at_ends, core.y1 + p[BEHIND] + at_back,
  };
}

static FpBox
lowest_box (const FpForm *form)
{
  return step_box (form, fp_form_count (form, COUNT) - 1);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = (FpExtent) {
    .plan = lowest_box (form), .bearing = step_box (form, 0), .top = top (form), .height = top (form),
  };
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const guint n = fp_form_count (form, COUNT);

  for (guint step = 0; step < n; step++)
    {
      const FpBox box = step_box (form, step);
      fp_solids_add_box (out, step == 0 ? FP_PART_FOOTPACE : FP_PART_STEP, box.x0, box.y0, 0, box.x1, box.y1,
                         (n - step) * form->param[RISER]);
    }
}

static void
mark_edges (const FpForm *form, const FpBox *box, GArray *out)
{
  FpPoint corner[4];

  fp_box_corners (box, corner); /* from the front one on the Gospel side, the body on the left */
  for (guint i = 0; i < 4; i++)
    if (i == 0 || fp_form_is (form, SIDES, FOUR) || (i != 2 && fp_form_is (form, SIDES, THREE)))
      fp_strokes_add_edge_marking (out, form, EDGE, corner[i], corner[(i + 1) % 4]);
}

/* The arrow lies beside the axis, which is a line of its own. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox low = lowest_box (form), high = step_box (form, 0), core = core_box (form);
  const double x = core.x0 + (core.x1 - core.x0) * 0.75;

  if (fp_form_count (form, COUNT) > 1)
    fp_strokes_add_arrow (out, (FpPoint) { x, low.y0 }, (FpPoint) { x, high.y0 + MIN (form->param[FRONT], 150) });
  for (guint step = 0; step < fp_form_count (form, COUNT); step++)
    {
      const FpBox box = step_box (form, step);
      mark_edges (form, &box, out);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT);
  const FpBox low = lowest_box (form), high = step_box (form, 0), core = core_box (form);
  const double z = top (form);

  fp_dims_add (out, RISER, (FpVec3) { high.x0, low.y0, 0 }, (FpVec3) { high.x0, low.y0, z }, FP_IN_SECTION, n, 0);
  fp_dims_add (out, TREAD, (FpVec3) { high.x0, low.y0, 0 }, (FpVec3) { high.x0, high.y0, 0 }, FP_IN_SECTION,
               MAX (n, 2) - 1, 0);
  fp_dims_add_y (out, FRONT, (FpVec3) { high.x0, high.y0, z }, p[FRONT], FP_IN_SECTION | FP_IN_PLAN, 0);
  fp_dims_add_y (out, BEHIND, (FpVec3) { high.x0, core.y1, z }, p[BEHIND], FP_IN_SECTION, 1);
  fp_dims_add_x (out, ENDS, (FpVec3) { core.x1, high.y0, z }, p[ENDS], FP_IN_ELEVATION, 1);
  fp_dims_add_x (out, -1, (FpVec3) { low.x0, low.y0, 0 }, low.x1 - low.x0, FP_IN_PLAN, 2);
  fp_dims_add_y (out, -1, (FpVec3) { low.x0, low.y0, 0 }, low.y1 - low.y0, FP_IN_PLAN, 3);
}

static void
surfaces (const FpForm *form, GArray *out)
{
  const FpBox box = step_box (form, 0);
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  fp_surfaces_add (out, FP_FLOOR_MINISTERS, corner, 4, top (form), 0, 0);
}

static double
edge_length (const FpForm *form, const FpBox *box)
{
  const double width = box->x1 - box->x0, depth = box->y1 - box->y0;

  if (fp_form_is (form, SIDES, FRONT_ONLY))
    return width;
  return fp_form_is (form, SIDES, THREE) ? width + 2 * depth : 2 * (width + depth);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const guint n = fp_form_count (form, COUNT);
  double volume = 0, edges = 0;

  /* Nested blocks: each counts only the height of its own riser, or the inner ones would be counted twice. */
  for (guint step = 0; step < n; step++)
    {
      const FpBox box = step_box (form, step);
      volume += fp_box_area (&box) * form->param[RISER];
      edges += edge_length (form, &box);
    }
  const FpBox high = step_box (form, 0);
  fp_quantities_add (out, solid, FP_MATERIAL_STONE, FP_AMOUNT_VOLUME, volume);
  g_array_index (out, FpQuantity, out->len - 1).laid = TRUE;
  fp_quantities_add (out, "edges of steps", FP_MATERIAL_STONE, FP_AMOUNT_LENGTH, edges);
  fp_quantities_add (out, "floor of the footpace", FP_MATERIAL_NONE, FP_AMOUNT_AREA, fp_box_area (&high));
}

/* A run in front passes the ends of those beside it; what is behind lies between them. */
static void
add_ring (GArray *out, const FpCourse *model, const FpBox *box, guint sides_passed)
{
  const double length = box->x1 - box->x0, depth = box->y1 - box->y0;
  const FpCourseEnd front = sides_passed == FRONT_ONLY ? FP_END_FREE : FP_END_PASSES;
  const FpCourseEnd back = sides_passed == FOUR ? FP_END_BUTTS : FP_END_FREE;
  const FpCourse runs[] = {
    { .side = "in front", .from = { box->x0, box->y0 }, .along = { 1, 0 }, .length = length, .begins = front, .ends = front },
    { .side = "at the ends", .from = { box->x1, box->y0 }, .along = { 0, 1 }, .length = depth, .begins = FP_END_BUTTS, .ends = back },
    { .side = "at the ends", .from = { box->x0, box->y1 }, .along = { 0, -1 }, .length = depth, .begins = back, .ends = FP_END_BUTTS },
    { .side = "behind", .from = { box->x1, box->y1 }, .along = { -1, 0 }, .length = length, .begins = FP_END_PASSES,
      .ends = FP_END_PASSES },
  };
  const guint n = sides_passed == FRONT_ONLY ? 1 : sides_passed == THREE ? 3 : 4;

  for (guint i = 0; i < n; i++)
    {
      FpCourse run = runs[i];

      run.type = model->type;
      run.of = solid;
      run.what = model->what;
      run.step = model->step;
      run.width = model->width;
      run.foot = model->foot;
      run.top = model->top;
      g_array_append_val (out, run);
    }
}

static void
add_floor (const FpForm *form, GArray *out, guint n)
{
  const FpBox high = step_box (form, 0);
  const FpCourse floor = {
    .type = FP_COURSE_FLOOR, .of = solid, .what = "floor of slabs", .step = n, .side = "of the uppermost step",
    .from = { high.x0, high.y0 }, .along = { 1, 0 }, .length = high.x1 - high.x0, .width = high.y1 - high.y0, .foot = top (form),
    .top = top (form),
  };

  g_array_append_val (out, floor);
}

static void
courses (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT), passed = fp_form_count (form, SIDES);

  for (guint step = n; step-- > 0;)
    {
      const FpBox box = step_box (form, step);
      const double foot = (n - step - 1) * p[RISER], head = (n - step) * p[RISER];
      const FpCourse riser = { .type = FP_COURSE_RISER, .what = "risers", .step = n - step, .foot = foot, .top = head };
      const FpCourse tread = { .type = FP_COURSE_TREAD, .what = "treads", .step = n - step, .width = p[TREAD], .foot = head, .top = head };

      add_ring (out, &riser, &box, passed);
      if (step > 0)
        add_ring (out, &tread, &box, passed);
    }
  add_floor (form, out, n);
}

static char *
amiss (const FpForm *form)
{
  if (fp_form_is (form, SIDES, FOUR) && form->param[BEHIND] < 1)
    return g_strdup ("The steps pass behind the altar, but the footpace ends at its back: nobody can stand there.");
  return NULL;
}

const FpKind fp_kind_footpace = {
  .id = "footpace",
  .label = "Footpace and steps",
  .tells = "The platform on which the altar stands and the celebrant moves, with the steps that lead up to it.",
  .role = FP_ROLE_FOOTPACE,
  .flags = FP_KIND_LAID_ROUND,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_AXIS_ALTAR,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .surfaces = surfaces,
  .quantities = quantities,
  .courses = courses,
  .amiss = amiss,
};
