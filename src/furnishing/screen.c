/* SPDX-License-Identifier: GPL-3.0-or-later */
/* screen.c - an open screen across the entrance to a chancel or a chapel: panels below, bars above, a beam with a cross
 *
 * Origin: the middle of its length and thickness.
 */
#include "kind-private.h"

#include <math.h>

enum { LENGTH, HEIGHT, GATE, BASE, BAY, THICKNESS, CROSS };

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length in all", 800, 6000, 40000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the beam", 1800, 3200, 12000, FP_JUDGEMENT),
  [GATE] = FP_LENGTH ("gate", "Opening in the middle, clear; 0 for none", 0, 1500, 6000, FP_JUDGEMENT),
  [BASE] = FP_LENGTH ("base", "Height of the panels", 0, 900, 3000, FP_JUDGEMENT),
  [BAY] = FP_LENGTH ("bay", "Spacing of the bars, at most", 80, 350, 3000, FP_JUDGEMENT),
  [THICKNESS] = FP_LENGTH ("thickness", "Thickness of its posts", 40, 140, 600, FP_JUDGEMENT),
  [CROSS] = FP_LENGTH ("cross", "Height of the cross on it (0: none)", 0, 900, 5000, FP_CUSTOM),
  FP_NO_MORE_PARAMS
};

static double
gate (const FpForm *form)
{
  return MIN (form->param[GATE], form->param[LENGTH] - 4 * form->param[THICKNESS]);
}

static double
beam (const FpForm *form)
{
  return MIN (form->param[THICKNESS] * 1.6, form->param[HEIGHT] * 0.15);
}

static double
base (const FpForm *form)
{
  return MIN (form->param[BASE], (form->param[HEIGHT] - beam (form)) * 0.9);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[LENGTH], form->param[THICKNESS]), form->param[HEIGHT] + form->param[CROSS]);
}

/* Between two posts: a panel, a rail on it, and bars up to the beam. */
static void
add_bay (const FpForm *form, double x0, double x1, double z1, FpSolids *out)
{
  const double *p = form->param;
  const double foot = base (form);
  const double t = p[THICKNESS] * 0.3, rail = foot > 0 ? MIN (p[THICKNESS], foot / 2) : 0, bar = MIN (p[THICKNESS] * 0.15, 18);
  const guint n = MAX (1, (guint) ceil ((x1 - x0) / p[BAY]));

  if (!(x1 > x0))
    return;
  if (foot > 0)
    {
      fp_solids_add_box (out, FP_PART_BODY, x0, -t / 2, 0, x1, t / 2, foot - rail);
      fp_solids_add_box (out, FP_PART_BODY, x0, -p[THICKNESS] * 0.4, foot - rail, x1, p[THICKNESS] * 0.4, foot);
    }
  for (guint i = 1; i < n; i++)
    fp_solids_add_round (out, FP_PART_RAIL_POST, x0 + (x1 - x0) * i / n, 0, foot, z1, bar, bar);
}

static void
add_side (const FpForm *form, double x0, double x1, FpSolids *out)
{
  const double *p = form->param;
  const double t = p[THICKNESS], z1 = p[HEIGHT] - beam (form);
  const guint bays = MAX (1, (guint) ceil ((x1 - x0) / 1500));
  const double step = (x1 - x0 - t) / bays;

  for (guint i = 0; i <= bays; i++)
    fp_solids_add_box (out, FP_PART_BODY, x0 + i * step, -t / 2, 0, x0 + i * step + t, t / 2, z1);
  for (guint i = 0; i < bays; i++)
    add_bay (form, x0 + i * step + t, x0 + (i + 1) * step, z1, out);
}

static void
add_cross (const FpForm *form, FpSolids *out)
{
  const double z = form->param[HEIGHT], h = form->param[CROSS], t = MIN (form->param[THICKNESS] * 0.7, h * 0.12);
  const double arm = MIN (h * 0.3, form->param[LENGTH] / 2);

  fp_solids_add_box (out, FP_PART_CROSS, -t / 2, -t / 2, z, t / 2, t / 2, z + h);
  fp_solids_add_box (out, FP_PART_CROSS, -arm, -t / 2, z + h * 0.65, -t / 2, t / 2, z + h * 0.65 + t);
  fp_solids_add_box (out, FP_PART_CROSS, t / 2, -t / 2, z + h * 0.65, arm, t / 2, z + h * 0.65 + t);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2, open = gate (form) / 2;

  if (open > 0)
    {
      add_side (form, -half, -open, out);
      add_side (form, open, half, out);
    }
  else
    add_side (form, -half, half, out);
  fp_solids_add_box (out, FP_PART_BODY, -half, -p[THICKNESS] / 2, p[HEIGHT] - beam (form), half, p[THICKNESS] / 2, p[HEIGHT]);
  if (p[CROSS] > 0)
    add_cross (form, out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double y = -p[THICKNESS] / 2;

  fp_dims_add_x (out, LENGTH, (FpVec3) { -p[LENGTH] / 2, y, 0 }, p[LENGTH], FP_IN_PLAN, 2);
  if (gate (form) == p[GATE])
    fp_dims_add_x (out, GATE, (FpVec3) { -p[GATE] / 2, y, 0 }, p[GATE], FP_IN_PLAN | FP_IN_ELEVATION, 2);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[LENGTH] / 2, y, 0 }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 3);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "screen, its length", FP_MATERIAL_WOOD, FP_AMOUNT_LENGTH, form->param[LENGTH] - gate (form));
  fp_quantities_add_part (out, &fp_kind_screen, form, FP_PART_BODY, "screen, posts, panels and beam", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_screen, form, FP_PART_RAIL_POST, "bars of the screen", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[GATE] > form->param[LENGTH] - 4 * form->param[THICKNESS])
    return g_strdup ("The opening is wider than the screen leaves room for.");
  if (form->param[BASE] > form->param[HEIGHT] * 0.8)
    return g_strdup ("The panels leave nothing open under the beam.");
  return NULL;
}

const FpKind fp_kind_screen = {
  .id = "screen",
  .label = "Screen",
  .tells = "An open screen of wood between the nave and a chancel or a chapel, with a cross on its beam.",
  .role = FP_ROLE_SCREEN,
  .flags = FP_KIND_CUT,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_OPENING,
  .clearance = 100,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
