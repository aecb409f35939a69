/* SPDX-License-Identifier: GPL-3.0-or-later */
/* crucifix.c - the altar cross: a stepped foot, the cross, and the figure before it
 *
 * The level of the foot of the corpus is a parameter because it is what the
 * candlesticks are held against (E. Ryan, Liturgical Arts I, 1931).
 */
#include "kind-private.h"

enum { HEIGHT, WIDTH, CORPUS };

static const FpParam params[] = {
  [HEIGHT] = FP_LENGTH ("height", "Height in all", 200, 1200, 6000, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width of the arms", 80, 450, 4000, FP_JUDGEMENT),
  [CORPUS] = FP_LENGTH ("corpus", "Level of the foot of the corpus", 20, 500, 5000,
                        FP_JUDGEMENT ": not below candlesticks of 500"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_ALTAR, FP_ROLE_NONE };

/* Proportions: design judgement. */
#define SHOULDERS 0.84 /* of the height of the figure                        */
#define BREAST    0.085 /* half its breadth there, of its build              */

typedef struct
{
  double beam;         /* thickness of the timbers                          */
  double foot, foot_top; /* side and height of the foot                     */
  double arms;         /* level of the middle of the arms                   */
  double figure;       /* height of the corpus, foot to head                */
  double build;        /* what its breadths go by: less where the arms are narrow */
  double front;        /* y of the foremost point of the corpus             */
} Parts;

static Parts
parts (const FpForm *form)
{
  const double *p = form->param;
  Parts of = { .beam = CLAMP (p[HEIGHT] * 0.03, 12, 140) };

  of.beam = MIN (of.beam, p[WIDTH] / 4);
  of.foot = CLAMP (p[HEIGHT] * 0.16, 2 * of.beam, 600);
  of.foot_top = MIN (p[HEIGHT] * 0.09, 180);
  of.arms = p[HEIGHT] - MAX (MIN (p[WIDTH] * 0.36, p[HEIGHT] * 0.3), of.beam);
  of.figure = CLAMP ((of.arms - p[CORPUS]) / SHOULDERS, 0, MAX (p[HEIGHT] - p[CORPUS], 0));
  of.build = MIN (of.figure, p[WIDTH] * 1.6);
  of.front = -of.beam / 2 - 2 * BREAST * of.build;
  return of;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const Parts of = parts (form);
  const double half = MAX (form->param[WIDTH], of.foot) / 2;
  const FpBox plan = { -half, MIN (of.front, -of.foot / 2), half, MAX (of.beam, of.foot) / 2 };

  *out = fp_extent_bare (plan, form->param[HEIGHT]);
}

static void
add_cross (const FpForm *form, const Parts *of, FpSolids *out)
{
  const double b = of->beam / 2, half = form->param[WIDTH] / 2, f = of->foot / 2;

  fp_solids_add_box (out, FP_PART_BODY, -f, -f, 0, f, f, of->foot_top * 0.55);
  fp_solids_add_box (out, FP_PART_BODY, -f * 0.62, -f * 0.62, of->foot_top * 0.55, f * 0.62, f * 0.62, of->foot_top);
  fp_solids_add_box (out, FP_PART_CROSS, -b, -b, of->foot_top, b, b, form->param[HEIGHT]);
  fp_solids_add_box (out, FP_PART_CROSS, -half, -b, of->arms - b, -b, b, of->arms + b);
  fp_solids_add_box (out, FP_PART_CROSS, b, -b, of->arms - b, half, b, of->arms + b);
}

/* Legs, cloth about the loins, trunk, head, and arms laid along the beam. */
static void
add_corpus (const FpForm *form, const Parts *of, FpSolids *out)
{
  const double h = of->figure, w = of->build, z = form->param[CORPUS], y = -of->beam / 2 - w * BREAST;
  const double reach = form->param[WIDTH] / 2 * 0.88, arm = MIN (w * 0.03, of->beam), from = w * BREAST;

  fp_solids_add_round (out, FP_PART_CORPUS, 0, y, z, z + h * 0.40, w * 0.022, w * 0.058);
  fp_solids_add_round (out, FP_PART_CORPUS, 0, y, z + h * 0.40, z + h * 0.52, w * 0.078, w * 0.066);
  fp_solids_add_round (out, FP_PART_CORPUS, 0, y, z + h * 0.52, z + h * SHOULDERS, w * 0.055, w * BREAST);
  fp_solids_add_ellipsoid (out, FP_PART_CORPUS, (FpVec3) { 0, y, z + h * (SHOULDERS + 1) / 2 }, w * 0.045, w * 0.055,
                           h * (1 - SHOULDERS) / 2, 0);
  if (reach > from)
    for (int side = -1; side <= 1; side += 2)
      fp_solids_add_ellipsoid (out, FP_PART_CORPUS, (FpVec3) { side * (reach + from) / 2, y, of->arms - arm },
                               (reach - from) / 2, arm, arm, 0);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const Parts of = parts (form);

  add_cross (form, &of, out);
  add_corpus (form, &of, out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, 0, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION, 4);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 2);
  fp_dims_add_z (out, CORPUS, (FpVec3) { x, 0, 0 }, p[CORPUS], FP_IN_ELEVATION, 5);
}

/* In the plane of the foremost point of the figure, so that the figure does not hide its own cross. */
static void
targets (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);

  fp_targets_add_upright (out, FP_FOCUS_CRUCIFIX, (FpVec3) { 0, of.front, of.foot_top }, form->param[WIDTH],
                          form->param[HEIGHT] - of.foot_top);
}

static void
quantities (const FpForm *form, GArray *out)
{
  (void) form;
  fp_quantities_add_metal (out, &fp_kind_crucifix, form, "crucifix", FP_AMOUNT_NUMBER, 1);
}

static char *
amiss (const FpForm *form)
{
  const Parts of = parts (form);

  if (form->param[CORPUS] > of.arms - of.beam * 2)
    return g_strdup ("The foot of the corpus is so high that no figure has room below the arms of the cross.");
  return NULL;
}

const FpKind fp_kind_crucifix = {
  .id = "crucifix",
  .label = "Crucifix",
  .tells = "The cross with the figure of the Crucified, in the middle of the altar between the candlesticks.",
  .role = FP_ROLE_CRUCIFIX,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .targets = targets,
  .quantities = quantities,
  .amiss = amiss,
};
