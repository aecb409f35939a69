/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rail.c - the communion rail, with a gate of two leaves in the middle, straight or returned at its ends
 *
 * Origin: middle of the front run; returns reach towards +y.  Communicants
 * kneel on its -y side, on the ledge between the rail and the edge of its step,
 * so their places lie before its plan.
 */
#include "kind-private.h"

#include <math.h>

enum { LENGTH, HEIGHT, TOP, GATE, RETURNS, POSTS, KNEELING };

#define SCHULTE "Catholic Encyclopedia I (1907), Altar Rail"

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length in all", 600, 6000, 60000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 400, 762, 1300, SCHULTE ": about 2 ft 6 in"),
  [TOP] = FP_LENGTH ("top", "Width of the top", 40, 200, 600, SCHULTE ": 6 to 9 in"),
  [GATE] = FP_LENGTH ("gate", "Gate, clear; 0 for none", 0, 1200, 6000,
                      FP_JUDGEMENT "; J. T. Micklethwaite, Modern Parish Churches (1874), XIII, has only \"a wide "
                      "gate\""),
  [RETURNS] = FP_LENGTH ("returns", "Length of each return (0: straight)", 0, 0, 20000, FP_JUDGEMENT),
  [POSTS] = FP_LENGTH ("posts", "Spacing of posts, at most", 300, 1200, 4000, FP_JUDGEMENT),
  [KNEELING] = FP_LENGTH ("kneeling", "Length for each communicant", 400, 600, 1200, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* Sections of the timbers, and how far the knees are from the middle of the rail; design judgement. */
#define TOP_THICK  60.0
#define POST       80.0
#define SILL       60.0   /* the lower rail, and its level                    */
#define BALUSTERS  3      /* between two posts                                */
#define LEAF       40.0   /* thickness of a gate leaf                         */
#define KNEES      150.0  /* before the front of the top: on a ledge of 305   */

/* --- runs ----------------------------------------------------------------- */

/* One straight piece between two end posts: from (x, y) along +x or +y. */
typedef struct { double x, y, length; gboolean along_y; } Run;

static double
post_side (const FpForm *form)
{
  return MIN (POST, form->param[TOP]);
}

static gboolean
has_gate (const FpForm *form)
{
  return form->param[GATE] > 0;
}

/* Of the front, on either side of the gate. */
static double
front_half (const FpForm *form)
{
  return MAX ((form->param[LENGTH] - form->param[GATE]) / 2, 0);
}

static guint
runs (const FpForm *form, Run run[4])
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2;
  guint n = 0;

  if (has_gate (form))
    {
      run[n++] = (Run) { -half, 0, front_half (form), FALSE };
      run[n++] = (Run) { half - front_half (form), 0, front_half (form), FALSE };
    }
  else
    run[n++] = (Run) { -half, 0, p[LENGTH], FALSE };
  if (p[RETURNS] > 0)
    {
      run[n++] = (Run) { -half + p[TOP] / 2, p[TOP] / 2, p[RETURNS], TRUE };
      run[n++] = (Run) { half - p[TOP] / 2, p[TOP] / 2, p[RETURNS], TRUE };
    }
  return n;
}

/* From s0 to s1 along the run, `wide` across it. */
static void
add_piece (FpSolids *out, const Run *run, FpPart part, double s0, double s1, double wide, double z0, double z1)
{
  if (run->along_y)
    fp_solids_add_box (out, part, run->x - wide / 2, run->y + s0, z0, run->x + wide / 2, run->y + s1, z1);
  else
    fp_solids_add_box (out, part, run->x + s0, run->y - wide / 2, z0, run->x + s1, run->y + wide / 2, z1);
}

static guint
bays (const Run *run, double post, double spacing)
{
  return MAX (1, (guint) ceil ((run->length - post) / spacing - 1e-9));
}

/* Sill and balusters from one post to the next. */
static void
add_bay (FpSolids *out, const Run *run, double s0, double s1, double wide, double under)
{
  add_piece (out, run, FP_PART_RAIL_POST, s0, s1, MIN (SILL, wide), SILL, 2 * SILL);
  for (guint i = 1; i <= BALUSTERS; i++)
    {
      const double s = s0 + (s1 - s0) * i / (BALUSTERS + 1);
      const double x = run->x + (run->along_y ? 0 : s), y = run->y + (run->along_y ? s : 0);
      const double r = MIN (MIN (22, wide / 2), (s1 - s0) / 12);
      fp_solids_add_round (out, FP_PART_RAIL_POST, x, y, 2 * SILL, under, r, r);
    }
}

static void
add_run (const FpForm *form, const Run *run, FpSolids *out)
{
  const double post = MIN (post_side (form), run->length / 2), under = form->param[HEIGHT] - TOP_THICK;
  const guint n = bays (run, post, form->param[POSTS]);
  const double step = (run->length - post) / n;

  if (!(run->length > 0))
    return;
  for (guint i = 0; i <= n; i++)
    add_piece (out, run, FP_PART_RAIL_POST, i * step, i * step + post, post, 0, under);
  for (guint i = 0; i < n; i++)
    add_bay (out, run, i * step + post, (i + 1) * step, post_side (form), under);
  add_piece (out, run, FP_PART_RAIL_TOP, 0, run->length, form->param[TOP], under, form->param[HEIGHT]);
}

/* Stiles, two rails, and bars as close as the balusters. */
static void
add_leaf (FpSolids *out, double x0, double x1, double thick, double z1)
{
  const double frame = MIN (50, (x1 - x0) / 4), z0 = SILL, half = thick / 2;
  const guint bars = (guint) ((x1 - x0 - 2 * frame) / 160);

  fp_solids_add_box (out, FP_PART_GATE, x0, -half, z0, x0 + frame, half, z1);
  fp_solids_add_box (out, FP_PART_GATE, x1 - frame, -half, z0, x1, half, z1);
  fp_solids_add_box (out, FP_PART_GATE, x0 + frame, -half, z0, x1 - frame, half, z0 + frame);
  fp_solids_add_box (out, FP_PART_GATE, x0 + frame, -half, z1 - frame, x1 - frame, half, z1);
  for (guint i = 1; i <= bars; i++)
    {
      const double r = MIN (12, half), x = x0 + frame + (x1 - x0 - 2 * frame) * i / (bars + 1);
      fp_solids_add_round (out, FP_PART_GATE, x, 0, z0 + frame, z1 - frame, r, r);
    }
}

/* Shut: two leaves that meet in the middle, no higher than the underside of the rail's top. */
static void
add_gate (const FpForm *form, FpSolids *out)
{
  const double half = MIN (form->param[GATE], form->param[LENGTH]) / 2, top = form->param[HEIGHT] - TOP_THICK;
  const double air = MIN (5, half / 10), thick = MIN (LEAF, form->param[TOP]);

  add_leaf (out, -half + air, -air, thick, top);
  add_leaf (out, air, half - air, thick, top);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double half = form->param[LENGTH] / 2, deep = form->param[TOP] / 2;

  *out = fp_extent_bare ((FpBox) { -half, -deep, half, deep + form->param[RETURNS] }, form->param[HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  Run run[4];
  const guint n = runs (form, run);

  for (guint i = 0; i < n; i++)
    add_run (form, &run[i], out);
  if (has_gate (form))
    add_gate (form, out);
}

/* --- symbol, dimensions ---------------------------------------------------- */

/* Each leaf open towards the altar, and the quarter circle that it sweeps. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double leaf = form->param[GATE] / 2;
  const guint pieces = 8;

  if (!has_gate (form))
    return;
  for (int side = -1; side <= 1; side += 2)
    {
      const double hinge = side * leaf;
      fp_strokes_add (out, (FpPoint) { hinge, 0 }, (FpPoint) { hinge, leaf }, TRUE);
      for (guint i = 0; i < pieces; i++)
        {
          const double a = i * G_PI / 2 / pieces, b = (i + 1) * G_PI / 2 / pieces;
          fp_strokes_add (out, (FpPoint) { hinge - side * leaf * cos (a), leaf * sin (a) },
                          (FpPoint) { hinge - side * leaf * cos (b), leaf * sin (b) }, TRUE);
        }
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[LENGTH] / 2, y = p[TOP] / 2;

  fp_dims_add_x (out, LENGTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[LENGTH], FP_IN_PLAN, 0);
  fp_dims_add_x (out, GATE, (FpVec3) { -p[GATE] / 2, -y, p[HEIGHT] }, p[GATE], FP_IN_PLAN, 0);
  fp_dims_add_x (out, GATE, (FpVec3) { -p[GATE] / 2, -y, 0 }, p[GATE], FP_IN_ELEVATION, 0);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_SECTION | FP_IN_ELEVATION, 0);
  fp_dims_add_y (out, TOP, (FpVec3) { 0, -y, p[HEIGHT] }, p[TOP], FP_IN_SECTION, 5);
  fp_dims_add_y (out, RETURNS, (FpVec3) { x, y, p[HEIGHT] }, p[RETURNS], FP_IN_PLAN, 2);
}

/* --- communicants ----------------------------------------------------------- */

static guint
kneeling_on (const FpForm *form, double length)
{
  return (guint) floor (length / form->param[KNEELING] + 1e-9);
}

static void
add_places (const FpForm *form, const Run *run, guint *number, GArray *out)
{
  const guint n = kneeling_on (form, run->length);
  const double middle = run->x + run->length / 2;

  for (guint i = 0; i < n; i++)
    {
      const FpSeat seat = {
        .at = { middle + (i - (n - 1) / 2.0) * form->param[KNEELING], -form->param[TOP] / 2 - KNEES },
        .postures = 1 << FP_POSTURE_KNEELING,
        .row = 1,
        .number = ++*number,
      };
      g_array_append_val (out, seat);
    }
}

static void
seats (const FpForm *form, GArray *out)
{
  Run run[4];
  const guint n = runs (form, run);
  guint number = 0;

  for (guint i = 0; i < n; i++)
    if (!run[i].along_y)
      add_places (form, &run[i], &number, out);
}

static guint
n_places (const FpForm *form)
{
  return has_gate (form) ? 2 * kneeling_on (form, front_half (form)) : kneeling_on (form, form->param[LENGTH]);
}

static void
quantities (const FpForm *form, GArray *out)
{
  Run run[4];
  const guint n = runs (form, run);
  double length = 0;

  for (guint i = 0; i < n; i++)
    length += run[i].length;
  fp_quantities_add (out, "rail, less the gate", FP_MATERIAL_WOOD, FP_AMOUNT_LENGTH, length);
  fp_quantities_add_part (out, &fp_kind_rail, form, FP_PART_RAIL_TOP, "top of the rail", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_rail, form, FP_PART_RAIL_POST, "posts, sill and balusters", FP_MATERIAL_WOOD);
  fp_quantities_add (out, "gates of two leaves", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, has_gate (form) ? 1 : 0);
  fp_quantities_add (out, "kneeling places", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, n_places (form));
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;
  const double between = p[LENGTH] - 2 * POST - (p[RETURNS] > 0 ? 2 * p[TOP] : 0);

  if (p[GATE] > between)
    return g_strdup ("The gate is wider than the rail in which it hangs.");
  if (p[RETURNS] > 0 && p[LENGTH] < 2 * p[TOP])
    return g_strdup ("The returns of the rail meet.");
  return NULL;
}

const FpKind fp_kind_rail = {
  .id = "rail",
  .label = "Communion rail",
  .tells = "The low altar rail at the entrance to the sanctuary, where the people kneel to receive Communion.",
  .role = FP_ROLE_RAIL,
  .anchor = FP_ANCHOR_FRONT,
  .spot = FP_SPOT_OPENING,
  .clearance = 305,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .seats = seats,
  .quantities = quantities,
  .amiss = amiss,
};
