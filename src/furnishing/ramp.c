/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ramp.c - a straight ramp with its landings, and handrails on both sides
 *
 * Origin: the middle of its foot, at the beginning of the slope; it rises towards +y.  The landing at its foot is the
 * floor before it; the one at its head belongs to it.
 */
#include "kind-private.h"

#include <math.h>

enum { RISE, SLOPE, WIDTH, LANDING, RUN, HANDRAIL };

#define ADA "ADA Standards (2010) "

static const FpParam params[] = {
  [RISE] = FP_LENGTH ("rise", "Rises in all", 20, 150, 4000, FP_JUDGEMENT),
  [SLOPE] = FP_SHARE ("slope", "Slope", 0.02, 1.0 / 12, 0.25, ADA "405.2: not steeper than 1:12, read in quotation"),
  [WIDTH] = FP_LENGTH ("width", "Clear width", 600, 1000, 4000, ADA "405.5: 36 in at least"),
  [LANDING] = FP_LENGTH ("landing", "Length of a landing", 600, 1525, 4000, ADA "405.7: 60 in at least"),
  [RUN] = FP_LENGTH ("run", "Rise between two landings, at most", 150, 760, 2000, ADA "405.6: 30 in, read in quotation"),
  [HANDRAIL] = FP_LENGTH ("handrail", "Height of the handrails (0: none)", 0, 900, 1200, ADA "505.4: 34 to 38 in, from memory"),
  FP_NO_MORE_PARAMS
};

/* Design judgement. */
#define CURB 50.0  /* at its sides, within which the handrails stand */
#define BAR  42.0
#define POST 40.0
#define APART 1200.0

static guint
n_runs (const FpForm *form)
{
  return MAX (1, (guint) ceil (form->param[RISE] / form->param[RUN] - 1e-9));
}

/* How long a single run is. */
static double
run_length (const FpForm *form)
{
  return form->param[RISE] / n_runs (form) / form->param[SLOPE];
}

static double
whole_length (const FpForm *form)
{
  return n_runs (form) * (run_length (form) + form->param[LANDING]);
}

/* So low that no hand finds it, there is none. */
static gboolean
has_handrails (const FpForm *form)
{
  return form->param[HANDRAIL] > 2 * BAR;
}

static double
half_width (const FpForm *form)
{
  return form->param[WIDTH] / 2 + CURB;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double half = half_width (form);

  *out = fp_extent_bare ((FpBox) { -half, 0, half, whole_length (form) }, form->param[RISE] + form->param[HANDRAIL] + BAR);
}

/* Posts and a bar along one side, over a floor that rises from @z0 by @slope between @y0 and @y1. */
static void
add_handrail (const FpForm *form, double x0, double y0, double y1, double z0, double slope, FpSolids *out)
{
  const double h = form->param[HANDRAIL], length = y1 - y0, at = x0 + (CURB - BAR) / 2;
  const guint n = MAX (1, (guint) ceil (length / APART));
  const FpPoint bar[4] = { { at, y0 }, { at + BAR, y0 }, { at + BAR, y1 }, { at, y1 } };

  if (!has_handrails (form))
    return;
  fp_solids_add_slanting (out, FP_PART_RAIL_TOP, bar, 4, z0 + h - BAR - slope * y0, 0, slope, z0 + h - slope * y0, 0, slope);
  for (guint i = 0; i < n; i++)
    {
      const double y = y0 + (i + 0.5) * length / n, half = MIN (POST / 2, length / n / 3);
      const FpPoint post[4] = { { at, y - half }, { at + BAR, y - half }, { at + BAR, y + half }, { at, y + half } };
      fp_solids_add_slanting (out, FP_PART_RAIL_POST, post, 4, z0 - slope * y0, 0, slope, z0 + h - BAR - slope * y0, 0, slope);
    }
}

static void
add_part (const FpForm *form, double y0, double y1, double z0, double z1, FpSolids *out)
{
  const double half = half_width (form), slope = (z1 - z0) / (y1 - y0);
  const FpPoint corner[4] = { { -half, y0 }, { half, y0 }, { half, y1 }, { -half, y1 } };

  fp_solids_add_sloping (out, FP_PART_STEP, corner, 4, 0, z0 - slope * y0, 0, slope);
  add_handrail (form, -half, y0, y1, z0, slope, out);
  add_handrail (form, half - CURB, y0, y1, z0, slope, out);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const guint n = n_runs (form);
  const double run = run_length (form), rise = form->param[RISE] / n;
  double y = 0;

  for (guint i = 0; i < n; i++)
    {
      add_part (form, y, y + run, i * rise, (i + 1) * rise, out);
      y += run;
      add_part (form, y, y + form->param[LANDING], (i + 1) * rise, (i + 1) * rise, out);
      y += form->param[LANDING];
    }
}

/* Each run and its landing, over the whole width. */
static void
surfaces (const FpForm *form, GArray *out)
{
  const guint n = n_runs (form);
  const double run = run_length (form), step = run + form->param[LANDING], rise = form->param[RISE] / n, half = half_width (form);

  for (guint i = 0; i < n; i++)
    {
      const double y = i * step;
      const FpPoint slope[4] = { { -half, y }, { half, y }, { half, y + run }, { -half, y + run } };
      const FpPoint landing[4] = { { -half, y + run }, { half, y + run }, { half, y + step }, { -half, y + step } };

      fp_surfaces_add (out, FP_FLOOR_WAY, slope, 4, i * rise - rise / run * y, 0, rise / run);
      fp_surfaces_add (out, FP_FLOOR_WAY, landing, 4, (i + 1) * rise, 0, 0);
    }
}

/* An arrow up each run. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double run = run_length (form), step = run + form->param[LANDING];

  for (guint i = 0; i < n_runs (form); i++)
    fp_strokes_add_arrow (out, (FpPoint) { 0, i * step }, (FpPoint) { 0, i * step + run });
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double half = half_width (form), run = run_length (form);

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, 0, 0 }, p[WIDTH], FP_IN_PLAN, 2);
  fp_dims_add_y (out, -1, (FpVec3) { half, 0, 0 }, run, FP_IN_PLAN | FP_IN_SECTION, 2);
  fp_dims_add_y (out, LANDING, (FpVec3) { half, run, p[RISE] / n_runs (form) }, p[LANDING], FP_IN_PLAN | FP_IN_SECTION, 3);
  fp_dims_add_z (out, RISE, (FpVec3) { half, whole_length (form), 0 }, p[RISE], FP_IN_SECTION, 2);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double length = whole_length (form);

  fp_quantities_add (out, "ramp and landings, on plan", FP_MATERIAL_NONE, FP_AMOUNT_AREA, length * 2 * half_width (form));
  fp_quantities_add_part (out, &fp_kind_ramp, form, FP_PART_STEP, "ramp, its whole body", FP_MATERIAL_STONE);
  fp_quantities_add (out, "handrails of the ramp", FP_MATERIAL_METAL, FP_AMOUNT_LENGTH, has_handrails (form) ? 2 * length : 0);
}

const FpKind fp_kind_ramp = {
  .id = "ramp",
  .label = "Ramp",
  .tells = "A ramp with landings and handrails, for those who cannot climb steps.",
  .role = FP_ROLE_RAMP,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .surfaces = surfaces,
  .dims = dims,
  .quantities = quantities,
};
