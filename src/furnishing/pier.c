/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pier.c - a pier or column: round, square or octagonal (its width is across the flats) */
#include "kind-private.h"

#include <math.h>

enum { SHAPE, WIDTH, HEIGHT };
enum { ROUND, SQUARE, OCTAGONAL };

static const FpChoice shapes[] = {
  { "round", "Round" }, { "square", "Square" }, { "octagonal", "Octagonal" }, { NULL, NULL },
};

static const FpParam params[] = {
  [SHAPE] = FP_CHOICE ("shape", "Shape", shapes, ROUND, FP_SURVEYED),
  [WIDTH] = FP_LENGTH ("width", "Width", 50, 600, 6000, FP_SURVEYED),
  [HEIGHT] = FP_LENGTH ("height", "Height", 100, 8000, 60000, FP_SURVEYED),
  FP_NO_MORE_PARAMS
};

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], form->param[WIDTH]), form->param[HEIGHT]);
}

static void
octagon (double across_flats, FpPoint corner[8])
{
  const double half = across_flats / 2, short_half = half * tan (G_PI / 8);
  const FpPoint first[2] = { { half, -short_half }, { half, short_half } };

  for (guint i = 0; i < 4; i++)
    {
      const FpPlace quarter = { 0, 0, 90.0 * i };
      corner[2 * i] = fp_place_point (&quarter, first[0]);
      corner[2 * i + 1] = fp_place_point (&quarter, first[1]);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double half = form->param[WIDTH] / 2, height = form->param[HEIGHT];
  FpPoint corner[8];

  if (fp_form_is (form, SHAPE, ROUND))
    fp_solids_add_round (out, FP_PART_PIER, 0, 0, 0, height, half, half);
  else if (fp_form_is (form, SHAPE, SQUARE))
    fp_solids_add_box (out, FP_PART_PIER, -half, -half, 0, half, half, height);
  else
    {
      octagon (form->param[WIDTH], corner);
      fp_solids_add_prism (out, FP_PART_PIER, corner, 8, 0, height);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double half = form->param[WIDTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -half, -half, 0 }, form->param[WIDTH], FP_IN_PLAN, 7);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { half, 0, 0 }, form->param[HEIGHT], FP_IN_SECTION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  (void) form;
  fp_quantities_add (out, "piers", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
}

const FpKind fp_kind_pier = {
  .id = "pier",
  .label = "Pier",
  .tells = "A pier or a column of the church, as it was measured.",
  .role = FP_ROLE_PIER,
  .flags = FP_KIND_SURVEY | FP_KIND_CUT,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
