/* SPDX-License-Identifier: GPL-3.0-or-later */
/* flowers.c - vases with flowers, in pairs about the cross */
#include "kind-private.h"

#include <math.h>

enum { COUNT, GAP, SPACING, VASE, HEIGHT, WIDTH };

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Vases", 1, 2, 12, FP_CUSTOM),
  [GAP] = FP_LENGTH ("gap", "Between the two middle ones", 80, 900, 8000, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "Spacing of the others", 80, 400, 4000, FP_JUDGEMENT),
  [VASE] = FP_LENGTH ("vase", "Height of the vase", 60, 180, 1000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height with the flowers", 100, 400, 2500, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width of the flowers", 60, 180, 1500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* GIRM (3rd ed.) 305: rather about the altar than on its table. */
static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_FOOTPACE, FP_ROLE_ALTAR, FP_ROLE_FLOOR, FP_ROLE_NONE };

#define PETALS 8

static double
foot_radius (const FpForm *form)
{
  return MIN (form->param[VASE] * 0.22, form->param[WIDTH] / 2);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double half = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]) + p[WIDTH] / 2;

  *out = fp_extent_bare (fp_centred_box (2 * half, p[WIDTH]), MAX (p[HEIGHT], p[VASE]));
}

/* Foot, belly and neck; the flowers rise out of it. */
static void
add_vase (const FpForm *form, double x, FpSolids *out)
{
  const double *p = form->param;
  const double r = foot_radius (form), z = p[VASE];

  fp_solids_add_round (out, FP_PART_BODY, x, 0, 0, z * 0.08, r * 0.8, r * 0.8);
  fp_solids_add_round (out, FP_PART_BODY, x, 0, z * 0.08, z * 0.5, r * 0.45, r);
  fp_solids_add_round (out, FP_PART_BODY, x, 0, z * 0.5, z * 0.8, r, r * 0.45);
  fp_solids_add_round (out, FP_PART_BODY, x, 0, z * 0.8, z, r * 0.45, r * 0.75);
  if (p[HEIGHT] > z)
    fp_solids_add_ellipsoid (out, FP_PART_FLOWERS, (FpVec3) { x, 0, (z + p[HEIGHT]) / 2 }, p[WIDTH] / 2, p[WIDTH] / 2,
                             (p[HEIGHT] - z) / 2, 0);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT);

  for (guint i = 0; i < n; i++)
    add_vase (form, fp_pair_x (i, n, p[GAP], p[SPACING]), out);
}

/* A flower seen from above. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < PETALS; k++)
      {
        const double x = fp_pair_x (i, n, p[GAP], p[SPACING]), a = k * 2 * G_PI / PETALS, r = p[WIDTH] / 2;
        fp_strokes_add (out, (FpPoint) { x + r * 0.3 * cos (a), r * 0.3 * sin (a) },
                        (FpPoint) { x + r * 0.85 * cos (a), r * 0.85 * sin (a) }, FALSE);
      }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double outer = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]) + p[WIDTH] / 2;

  if (p[HEIGHT] >= p[VASE])
    fp_dims_add_z (out, HEIGHT, (FpVec3) { outer, 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "vases", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, form->param[COUNT]);
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;

  if (p[HEIGHT] < p[VASE])
    return g_strdup ("The flowers are lower than their vase.");
  return fp_pairs_amiss ("vases", fp_form_count (form, COUNT), p[GAP], p[SPACING], p[WIDTH]);
}

const FpKind fp_kind_flowers = {
  .id = "flowers",
  .label = "Flowers",
  .tells = "Vases with flowers, in pairs about the altar; none in Lent.",
  .role = FP_ROLE_FLOWERS,
  .anchor = FP_ANCHOR_CENTRE,
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
