/* SPDX-License-Identifier: GPL-3.0-or-later */
/* reredos.c - the upright panel behind an altar: base, framed bays, cornice, a gable if it has one, and wings that open
 *
 * Wings hang at its front edges; shut they lie before it, opened by half a turn they continue it.
 */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, HEIGHT, DEPTH, TOP, WINGS, OPENING };
enum { FLAT, GABLED };

static const FpChoice tops[] = { { "flat", "Flat" }, { "gabled", "Gabled" }, { NULL, NULL } };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 500, 3000, 15000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 500, 3500, 20000, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 40, 200, 2000, FP_JUDGEMENT),
  [TOP] = FP_CHOICE ("top", "Top", tops, FLAT, FP_JUDGEMENT),
  [WINGS] = FP_LENGTH ("wings", "Width of each wing (0: none)", 0, 0, 7500, FP_JUDGEMENT),
  [OPENING] = FP_ANGLE ("opening", "Wings opened by", 0, 120, 180, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FOOTPACE, FP_ROLE_NONE };

static gboolean
has_wings (const FpForm *form)
{
  return form->param[WINGS] > 0;
}

/* Of the wing on the Epistle side (1) or the Gospel side (-1): from its hinge along it, and across. */
static void
wing_corners (const FpForm *form, int side, FpPoint corner[4])
{
  const double *p = form->param;
  const double turn = p[OPENING] * G_PI / 180, width = MIN (p[WINGS], p[WIDTH] / 2), thick = MIN (p[DEPTH] / 2, 60);
  const FpPoint hinge = { side * p[WIDTH] / 2, -p[DEPTH] / 2 };
  const FpPoint along = { -side * cos (turn) * width, -sin (turn) * width };
  const FpPoint across = { side * sin (turn) * thick, -cos (turn) * thick };

  corner[0] = hinge;
  corner[1] = (FpPoint) { hinge.x + along.x, hinge.y + along.y };
  corner[2] = (FpPoint) { corner[1].x + across.x, corner[1].y + across.y };
  corner[3] = (FpPoint) { hinge.x + across.x, hinge.y + across.y };
}

static void
extent (const FpForm *form, FpExtent *out)
{
  FpBox plan = fp_centred_box (form->param[WIDTH], form->param[DEPTH]);
  FpPoint corner[4];

  for (int side = -1; has_wings (form) && side <= 1; side += 2)
    {
      wing_corners (form, side, corner);
      for (guint i = 0; i < 4; i++)
        fp_box_add_point (&plan, corner[i]);
    }
  *out = fp_extent_bare (plan, form->param[HEIGHT]);
}

static double
gable_height (const FpForm *form)
{
  const double *p = form->param;

  return fp_form_is (form, TOP, GABLED) ? MIN (p[WIDTH] * 0.3, p[HEIGHT] * 0.35) : 0;
}

/* The panel lies back by half its depth behind base, posts and cornice. */
static void
add_bays (FpSolids *out, const FpBox *box, double z0, double z1)
{
  const double length = box->x1 - box->x0, middle = (box->y0 + box->y1) / 2, post = length * 0.05;
  const double left[4] = { 0, 0.3, 0.65, 0.95 }; /* the middle bay is the widest */

  fp_solids_call (out, "panel of the reredos");
  fp_solids_add_box (out, FP_PART_PANEL, box->x0, middle, z0, box->x1, box->y1, z1);
  fp_solids_call (out, "posts of the reredos");
  for (guint i = 0; i < G_N_ELEMENTS (left); i++)
    {
      const double x = box->x0 + left[i] * length;
      fp_solids_add_box (out, FP_PART_PANEL, x, box->y0, z0, x + post, middle, z1);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = fp_centred_box (p[WIDTH], p[DEPTH]);
  const double gable = gable_height (form);
  const double eaves = p[HEIGHT] - gable, base = p[HEIGHT] * 0.1, cornice = p[HEIGHT] * 0.04;

  fp_solids_call (out, "base of the reredos");
  fp_solids_add_box (out, FP_PART_PANEL, box.x0, box.y0, 0, box.x1, box.y1, base);
  add_bays (out, &box, base, eaves - cornice);
  fp_solids_call (out, "cornice of the reredos");
  fp_solids_add_box (out, FP_PART_PANEL, box.x0, box.y0, eaves - cornice, box.x1, box.y1, eaves);
  fp_solids_call (out, "gable of the reredos");
  if (gable > 0)
    fp_solids_add_gable (out, FP_PART_PANEL, &box, eaves, gable);
  fp_solids_call (out, "wings of the reredos");
  for (int side = -1; has_wings (form) && side <= 1; side += 2)
    {
      FpPoint corner[4];
      wing_corners (form, side, corner);
      fp_solids_add_prism (out, FP_PART_DOOR, corner, 4, base, eaves);
    }
}

/* As wide as a leaf sweeps. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double width = MIN (p[WINGS], p[WIDTH] / 2), last = p[OPENING] * G_PI / 180;
  const guint pieces = 8;

  for (int side = -1; has_wings (form) && side <= 1; side += 2)
    for (guint i = 0; i < pieces; i++)
      {
        const double a = last * i / pieces, b = last * (i + 1) / pieces, x = side * p[WIDTH] / 2, y = -p[DEPTH] / 2;
        fp_strokes_add (out, (FpPoint) { x - side * width * cos (a), y - width * sin (a) },
                        (FpPoint) { x - side * width * cos (b), y - width * sin (b) }, TRUE);
      }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = p[DEPTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION, 2);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_ELEVATION, 1);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[HEIGHT] }, p[DEPTH], FP_IN_PLAN, 5);
}

/* Its front over the altar and beside it, as it is parted in solids(). */
static void
targets (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double gable = gable_height (form), y = -p[DEPTH] / 2;

  fp_targets_add_upright (out, FP_FOCUS_REREDOS, (FpVec3) { 0, y, 0 }, p[WIDTH], p[HEIGHT] - gable);
  if (gable > 0)
    fp_targets_add_shaped (out, FP_FOCUS_REREDOS, FP_TARGET_GABLE, (FpVec3) { 0, y, p[HEIGHT] - gable }, p[WIDTH], gable);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_called (out, &fp_kind_reredos, form, FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[WINGS] > form->param[WIDTH] / 2)
    return g_strdup ("The wings are wider than what they shut.");
  return NULL;
}

const FpKind fp_kind_reredos = {
  .id = "reredos",
  .label = "Reredos",
  .tells = "A wall of panelling or stone that rises behind the altar and frames it; it may have wings that open.",
  .role = FP_ROLE_REREDOS,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_BEHIND_ALTAR,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .targets = targets,
  .quantities = quantities,
  .amiss = amiss,
};
