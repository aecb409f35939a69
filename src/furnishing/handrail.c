/* SPDX-License-Identifier: GPL-3.0-or-later */
/* handrail.c - a handrail beside steps or a ramp, level at its ends
 *
 * Origin: the middle of its foot, where the slope begins; it rises towards +y.
 */
#include "kind-private.h"

#include <math.h>

enum { LENGTH, RISE, HEIGHT, EXTEND, DIAMETER };

#define ADA "ADA Standards (2010) "

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length of the slope on plan", 100, 900, 20000, FP_JUDGEMENT),
  [RISE] = FP_LENGTH ("rise", "Rises by", 0, 450, 6000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 600, 900, 1200, ADA "505.4: 34 to 38 in, from memory"),
  [EXTEND] = FP_LENGTH ("extend", "Goes on level beyond each end by", 0, 305, 1000, ADA "505.10: 12 in, from memory"),
  [DIAMETER] = FP_LENGTH ("diameter", "Diameter", 25, 40, 80, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define APART 1200.0 /* between posts at most; design judgement */

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;

  *out = fp_extent_bare ((FpBox) { -p[DIAMETER] / 2, -p[EXTEND], p[DIAMETER] / 2, p[LENGTH] + p[EXTEND] }, p[HEIGHT] + p[RISE]);
}

static void
add_bar (const FpForm *form, double y0, double y1, double z0, double slope, FpSolids *out)
{
  const double half = form->param[DIAMETER] / 2, top = z0 + form->param[HEIGHT] - slope * y0;
  const FpPoint bar[4] = { { -half, y0 }, { half, y0 }, { half, y1 }, { -half, y1 } };

  fp_solids_add_slanting (out, FP_PART_RAIL_TOP, bar, 4, top - 2 * half, 0, slope, top, 0, slope);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double slope = p[RISE] / p[LENGTH], half = p[DIAMETER] / 2 * 0.8;
  const guint n = 1 + MAX (1, (guint) ceil (p[LENGTH] / APART));

  add_bar (form, -p[EXTEND], 0, 0, 0, out);
  add_bar (form, 0, p[LENGTH], 0, slope, out);
  add_bar (form, p[LENGTH], p[LENGTH] + p[EXTEND], p[RISE], 0, out);
  for (guint i = 0; i < n; i++)
    {
      const double y = half + (p[LENGTH] - 2 * half) * i / (n - 1), top = p[HEIGHT] - p[DIAMETER] + slope * (y - half);
      fp_solids_add_round (out, FP_PART_RAIL_POST, 0, y, slope * MAX (y - half, 0), top, half, half);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_z (out, HEIGHT, (FpVec3) { 0, 0, 0 }, p[HEIGHT], FP_IN_SECTION | FP_IN_ELEVATION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_quantities_add_metal (out, &fp_kind_handrail, form, "handrail", FP_AMOUNT_LENGTH,
                           hypot (p[LENGTH], p[RISE]) + 2 * p[EXTEND]);
}

const FpKind fp_kind_handrail = {
  .id = "handrail",
  .label = "Handrail",
  .tells = "A rail for the hand beside steps or a ramp.",
  .role = FP_ROLE_HANDRAIL,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
