/* SPDX-License-Identifier: GPL-3.0-or-later */
/* statue.c - a standing figure on its pedestal, or both under a veil */
#include "kind-private.h"

enum { HEIGHT, WIDTH, PEDESTAL, VEIL };
enum { BARE, VEILED };

static const FpChoice veils[] = { { "no", "Not veiled" }, { "yes", "Veiled, as in Passiontide" }, { NULL, NULL } };

static const FpParam params[] = {
  [HEIGHT] = FP_LENGTH ("height", "Height of the figure", 200, 1300, 5000, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width", 100, 500, 2500, FP_JUDGEMENT),
  [PEDESTAL] = FP_LENGTH ("pedestal", "Height of the pedestal (0: none)", 0, 1100, 4000, FP_JUDGEMENT),
  [VEIL] = FP_CHOICE ("veil", "Veil", veils, BARE, FP_CUSTOM ": veiled from the fifth Sunday of Lent"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_GRADINE, FP_ROLE_CREDENCE, FP_ROLE_ALTAR, FP_ROLE_NONE };

static double
depth (const FpForm *form)
{
  return form->param[WIDTH] * 0.8;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], depth (form)), form->param[PEDESTAL] + form->param[HEIGHT]);
}

/* Plinth, die and cornice. */
static void
add_pedestal (const FpForm *form, FpSolids *out)
{
  const double h = form->param[PEDESTAL], base = MIN (h * 0.12, 120), cornice = MIN (h * 0.08, 80);
  const FpBox box = fp_centred_box (form->param[WIDTH], depth (form));
  const double in = form->param[WIDTH] * 0.08;

  fp_solids_add_box (out, FP_PART_SUPPORT, box.x0, box.y0, 0, box.x1, box.y1, base);
  fp_solids_add_box (out, FP_PART_SUPPORT, box.x0 + in, box.y0 + in, base, box.x1 - in, box.y1 - in, h - cornice);
  fp_solids_add_box (out, FP_PART_SUPPORT, box.x0, box.y0, h - cornice, box.x1, box.y1, h);
}

/* Robe, shoulders, neck and head; proportions of a standing figure: design judgement. */
static void
add_figure (const FpForm *form, FpSolids *out)
{
  const double z = form->param[PEDESTAL], h = form->param[HEIGHT], r = MIN (depth (form) / 2 * 0.92, h * 0.2);

  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z, z + h * 0.04, r, r);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z + h * 0.04, z + h * 0.55, r * 0.86, r * 0.62);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z + h * 0.55, z + h * 0.78, r * 0.62, r * 0.8);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z + h * 0.78, z + h * 0.84, r * 0.8, r * 0.25);
  fp_solids_add_ellipsoid (out, FP_PART_BODY, (FpVec3) { 0, 0, z + h * 0.92 }, r * 0.34, r * 0.38, h * 0.08, 0);
}

static void
add_veil (const FpForm *form, FpSolids *out)
{
  const double z = form->param[PEDESTAL], h = form->param[HEIGHT], r = MIN (depth (form) / 2, h * 0.22);

  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z, z + h * 0.8, r, r * 0.9);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z + h * 0.8, z + h, r * 0.9, r * 0.3);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  if (form->param[PEDESTAL] > 0)
    add_pedestal (form, out);
  if (fp_form_is (form, VEIL, VEILED))
    add_veil (form, out);
  else
    add_figure (form, out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = -depth (form) / 2;

  fp_dims_add_z (out, PEDESTAL, (FpVec3) { x, y, 0 }, p[PEDESTAL], FP_IN_ELEVATION, 5);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, y, p[PEDESTAL] }, p[HEIGHT], FP_IN_ELEVATION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "statues", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add_part (out, &fp_kind_statue, form, FP_PART_SUPPORT, "pedestal", FP_MATERIAL_STONE);
  if (!fp_form_is (form, VEIL, VEILED))
    fp_quantities_add_part (out, &fp_kind_statue, form, FP_PART_BODY, "figure", FP_MATERIAL_WOOD);
}

const FpKind fp_kind_statue = {
  .id = "statue",
  .label = "Statue",
  .tells = "The figure of a saint on a pedestal; it can be veiled.",
  .role = FP_ROLE_STATUE,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 50,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
