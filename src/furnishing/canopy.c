/* SPDX-License-Identifier: GPL-3.0-or-later */
/* canopy.c - the covering over an altar and its footpace, on four columns or hung from above
 *
 * Origin: on the floor under its middle.
 */
#include "kind-private.h"

enum { FORM, WIDTH, DEPTH, HEIGHT, THICKNESS, ROOF, COLUMN };
enum { ON_COLUMNS, HUNG };

#define CANOPY "Catholic Encyclopedia I (1907), Altar Canopy, p. 351 (Caer. Ep. I, xii, 13): over the altar and its footpace; "

static const FpChoice forms[] = { { "columns", "On four columns" }, { "hung", "Hung from above" }, { NULL, NULL } };

static const FpParam params[] = {
  [FORM] = FP_CHOICE ("form", "Form", forms, ON_COLUMNS, "Catholic Encyclopedia I (1907), Altar Canopy: either"),
  [WIDTH] = FP_LENGTH ("width", "Width", 800, 3600, 15000, CANOPY FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 600, 3000, 15000, CANOPY FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Underside above the floor", 2000, 4500, 25000, FP_JUDGEMENT),
  [THICKNESS] = FP_LENGTH ("thickness", "Height of its edge", 60, 350, 2500, FP_JUDGEMENT),
  [ROOF] = FP_LENGTH ("roof", "Rise of its roof (0: flat)", 0, 900, 12000, FP_JUDGEMENT),
  [COLUMN] = FP_LENGTH ("column", "Diameter of a column", 60, 260, 1500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;

  *out = fp_extent_bare (fp_centred_box (p[WIDTH], p[DEPTH]), p[HEIGHT] + p[THICKNESS] + p[ROOF]);
}

/* Never so thick that they meet. */
static double
column_radius (const FpForm *form)
{
  return MIN (form->param[COLUMN] / 2, MIN (form->param[WIDTH], form->param[DEPTH]) / 6);
}

/* Base, shaft that tapers a little, capital; proportions: design judgement. */
static void
add_column (const FpForm *form, double x, double y, FpSolids *out)
{
  const double r = column_radius (form), h = form->param[HEIGHT], base = r * 0.8;

  fp_solids_add_box (out, FP_PART_SUPPORT, x - r, y - r, 0, x + r, y + r, base);
  fp_solids_add_round (out, FP_PART_SUPPORT, x, y, base, h - 1.4 * r, r * 0.78, r * 0.68);
  fp_solids_add_round (out, FP_PART_SUPPORT, x, y, h - 1.4 * r, h - 0.4 * r, r * 0.68, r * 0.95);
  fp_solids_add_box (out, FP_PART_SUPPORT, x - r, y - r, h - 0.4 * r, x + r, y + r, h);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = fp_centred_box (p[WIDTH], p[DEPTH]);
  const double r = column_radius (form), edge = p[HEIGHT] + p[THICKNESS];

  if (fp_form_is (form, FORM, ON_COLUMNS))
    for (guint i = 0; i < 4; i++)
      add_column (form, i % 2 == 0 ? box.x0 + r : box.x1 - r, i < 2 ? box.y0 + r : box.y1 - r, out);
  fp_solids_add_box (out, FP_PART_BODY, box.x0, box.y0, p[HEIGHT], box.x1, box.y1, edge);
  if (p[ROOF] > 0)
    fp_solids_add_pyramid (out, FP_PART_BODY, &box, edge, p[ROOF]);
}

/* Its diagonals, as of a vault overhead. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox box = fp_centred_box (form->param[WIDTH], form->param[DEPTH]);

  fp_strokes_add (out, (FpPoint) { box.x0, box.y0 }, (FpPoint) { box.x1, box.y1 }, TRUE);
  fp_strokes_add (out, (FpPoint) { box.x1, box.y0 }, (FpPoint) { box.x0, box.y1 }, TRUE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = p[DEPTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION | FP_IN_PLAN, 3);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[HEIGHT] }, p[DEPTH], FP_IN_PLAN | FP_IN_SECTION, 3);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 3);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_canopy, form, FP_PART_SUPPORT, "columns of the canopy", FP_MATERIAL_STONE);
  fp_quantities_add_part (out, &fp_kind_canopy, form, FP_PART_BODY, "canopy, its whole body", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  const double least = MIN (form->param[WIDTH], form->param[DEPTH]);

  if (fp_form_is (form, FORM, ON_COLUMNS) && form->param[COLUMN] > least / 3)
    return g_strdup ("The columns of the canopy leave no room between them.");
  return NULL;
}

const FpKind fp_kind_canopy = {
  .id = "canopy",
  .label = "Canopy",
  .tells = "A covering over the altar and its footpace, on columns or hung from above.",
  .role = FP_ROLE_CANOPY,
  .flags = FP_KIND_CUT,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ABOVE_ALTAR,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
