/* SPDX-License-Identifier: GPL-3.0-or-later */
/* opening.c - a door, an arch or a window in a wall
 *
 * It has no body of its own: the wall is cut by it.  Origin: middle of the
 * opening on the inner face of the wall at the foot of the wall; +x runs as the wall was walked, +y out through it.
 */
#include "kind-private.h"

#include <math.h>

enum { SIDE, ALONG, WIDTH, SILL, HEAD, ARCH, LEAVES, OPENS, LEAF_AT };
enum { UNSAID, NO_LEAF, NEAR, FAR, TWO };
enum { INWARDS, OUTWARDS };

static const FpChoice arches[] = { { "square", "Square" }, { "arched", "Half-round arch" }, { NULL, NULL } };
static const FpChoice leaves[] = {
  { "unsaid", "Not said" }, { "none", "None" }, { "first", "One, hung nearer the first corner" },
  { "last", "One, hung farther from the first corner" }, { "two", "Two" }, { NULL, NULL },
};
static const FpChoice opens[]
  = { { "in", "To the inner face of the wall" }, { "out", "Away from the inner face" }, { NULL, NULL } };

static const FpParam params[] = {
  [SIDE] = FP_COUNT ("side", "Side of the wall", 1, 1, 2000, FP_SURVEYED),
  [ALONG] = FP_LENGTH ("along", "From the first corner of that side to its middle", 0, 1500, 200000, FP_SURVEYED),
  [WIDTH] = FP_LENGTH ("width", "Width", 50, 1500, 60000, FP_SURVEYED),
  [SILL] = FP_LENGTH ("sill", "Sill above the foot of the wall", 0, 0, 60000, FP_SURVEYED),
  [HEAD] = FP_LENGTH ("head", "Head, or springing of the arch", 0, 2100, 60000, FP_SURVEYED),
  [ARCH] = FP_CHOICE ("arch", "Shape of its head", arches, 0, FP_SURVEYED),
  [LEAVES] = FP_CHOICE ("leaves", "Leaves of the door", leaves, UNSAID, FP_SURVEYED),
  [OPENS] = FP_CHOICE ("opens", "They open", opens, INWARDS, FP_SURVEYED),
  [LEAF_AT] = FP_LENGTH ("leaf-at", "From the inner face of the wall to the leaf", 0, 0, 5000, FP_SURVEYED),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_WALL, FP_ROLE_NONE };

static double
crown (const FpForm *form)
{
  return MAX (form->param[HEAD], form->param[SILL]) + (fp_form_is (form, ARCH, 1) ? form->param[WIDTH] / 2 : 0);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], 0), crown (form));
}

static void
solids (const FpForm *form, FpSolids *out)
{
  (void) form;
  (void) out;
}

/* Open by a right angle, and the quarter of a circle that it sweeps. @hinge: along the wall; @leaf: less than 0 towards -x. */
static void
add_leaf (const FpForm *form, GArray *out, double hinge, double leaf)
{
  const double y = form->param[LEAF_AT], way = fp_form_is (form, OPENS, OUTWARDS) ? fabs (leaf) : -fabs (leaf);
  const guint pieces = 8;

  fp_strokes_add (out, (FpPoint) { hinge, y }, (FpPoint) { hinge, y + way }, FALSE);
  for (guint i = 0; i < pieces; i++)
    {
      const double a = i * G_PI / 2 / pieces, b = (i + 1) * G_PI / 2 / pieces;
      fp_strokes_add (out, (FpPoint) { hinge + leaf * cos (a), y + way * sin (a) },
                      (FpPoint) { hinge + leaf * cos (b), y + way * sin (b) }, TRUE);
    }
}

static void
strokes (const FpForm *form, GArray *out)
{
  const double width = form->param[WIDTH], half = width / 2;

  if (fp_form_is (form, LEAVES, NEAR))
    add_leaf (form, out, -half, width);
  else if (fp_form_is (form, LEAVES, FAR))
    add_leaf (form, out, half, -width);
  else if (fp_form_is (form, LEAVES, TWO))
    {
      add_leaf (form, out, -half, half);
      add_leaf (form, out, half, -half);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, 0, p[SILL] }, p[WIDTH], FP_IN_PLAN, 6);
  fp_dims_add_z (out, SILL, (FpVec3) { x, 0, 0 }, p[SILL], FP_IN_ELEVATION, 8);
  fp_dims_add_z (out, HEAD, (FpVec3) { x, 0, 0 }, p[HEAD], FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  (void) form;
  fp_quantities_add (out, "openings", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[HEAD] < form->param[SILL])
    return g_strdup ("The head of the opening is lower than its sill.");
  return NULL;
}

const FpKind fp_kind_opening = {
  .id = "opening",
  .label = "Opening",
  .tells = "A door, an arch or a window in a wall, as it was measured.",
  .role = FP_ROLE_OPENING,
  .flags = FP_KIND_SURVEY | FP_KIND_IN_WALL,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
