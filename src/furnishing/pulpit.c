/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pulpit.c - a raised octagonal pulpit with its parapet, its desk, a sounding board if it has one, and its stair
 *
 * Origin: the middle of the octagon.  It faces -y; the stair comes up from behind, or from one side.
 */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, FLOOR, PARAPET, TOP, STAIR, RISER, TREAD, STAIR_WIDTH, BOARD };
enum { BEHIND, EPISTLE, GOSPEL };

#define DEARMER "P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 45"

static const FpChoice stairs[] = {
  { "behind", "From behind" }, { "epistle", "On its Epistle side" }, { "gospel", "On its Gospel side" }, { NULL, NULL },
};

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width within the parapet", 600, 950, 2000, FP_JUDGEMENT),
  [FLOOR] = FP_LENGTH ("floor", "Height of its floor", 150, 1200, 3500, DEARMER ": not below the shoulders of those who sit"),
  [PARAPET] = FP_LENGTH ("parapet", "Height of the parapet", 700, 1016, 1300, DEARMER ": 38 to 42 in"),
  [TOP] = FP_LENGTH ("top", "Width of its top", 60, 110, 300, DEARMER ": 4 in at least"),
  [STAIR] = FP_CHOICE ("stair", "Stair", stairs, BEHIND, FP_JUDGEMENT),
  [RISER] = FP_LENGTH ("riser", "Riser of the stair, at most", 100, 180, 250, FP_JUDGEMENT),
  [TREAD] = FP_LENGTH ("tread", "Tread of the stair", 180, 250, 400, FP_JUDGEMENT),
  [STAIR_WIDTH] = FP_LENGTH ("stair-width", "Width of the stair", 400, 650, 1200, FP_JUDGEMENT),
  [BOARD] = FP_LENGTH ("sounding-board", "Sounding board above its floor (0: none)", 0, 0, 5000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define SIDES 8
#define SLAB  120.0 /* thickness of floor and sounding board; design judgement */

static guint
n_risers (const FpForm *form)
{
  return MAX (1, (guint) ceil (form->param[FLOOR] / form->param[RISER] - 1e-9));
}

/* From the middle to the flat of the octagon. */
static double
inner (const FpForm *form)
{
  return form->param[WIDTH] / 2;
}

static double
outer (const FpForm *form)
{
  return inner (form) + form->param[TOP];
}

static double
stair_width (const FpForm *form)
{
  /* As wide as the side by which it comes in, at most. */
  return MIN (form->param[STAIR_WIDTH], 2 * inner (form) * tan (G_PI / SIDES));
}

static double
stair_length (const FpForm *form)
{
  return (n_risers (form) - 1) * form->param[TREAD];
}

/* Corner @i of an octagon whose flats are @flat from the middle, one of them towards -y. */
static FpPoint
corner (double flat, guint i)
{
  const double r = flat / cos (G_PI / SIDES), a = -G_PI / 2 - G_PI / SIDES + i * 2 * G_PI / SIDES;

  return (FpPoint) { r * cos (a), r * sin (a) };
}

/* Side 0 is towards -y, and so on counter-clockwise. */
static guint
stair_side (const FpForm *form)
{
  return fp_form_is (form, STAIR, BEHIND) ? 4 : fp_form_is (form, STAIR, EPISTLE) ? 2 : 6;
}

static void
add_octagon (FpSolids *out, FpPart part, double flat, double z0, double z1)
{
  FpPoint pt[SIDES];

  for (guint i = 0; i < SIDES; i++)
    pt[i] = corner (flat, i);
  fp_solids_add_prism (out, part, pt, SIDES, z0, z1);
}

/* From the floor to the door, each step down to the ground. */
static FpBox
stair_box (const FpForm *form, double near, double far)
{
  const double half = stair_width (form) / 2, flat = outer (form);

  switch (stair_side (form))
    {
    case 2: return (FpBox) { flat + near, -half, flat + far, half };
    case 6: return (FpBox) { -flat - far, -half, -flat - near, half };
    default: return (FpBox) { -half, flat + near, half, flat + far };
    }
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double flat = outer (form);
  FpBox plan = { -flat, -flat, flat, flat };

  if (stair_length (form) > 0)
    {
      const FpBox stair = stair_box (form, 0, stair_length (form));
      fp_box_add_box (&plan, &stair);
    }
  *out = fp_extent_bare (plan, p[FLOOR] + MAX (p[PARAPET], p[BOARD] > p[PARAPET] ? p[BOARD] + SLAB : 0) + 160);
}

static void
add_parapet (const FpForm *form, FpSolids *out)
{
  const double z = form->param[FLOOR];

  for (guint i = 0; i < SIDES; i++)
    {
      const FpPoint side[4] = { corner (inner (form), i), corner (outer (form), i), corner (outer (form), i + 1), corner (inner (form), i + 1) };
      if (i != stair_side (form))
        fp_solids_add_prism (out, FP_PART_BODY, side, 4, z, z + form->param[PARAPET]);
    }
}

/* On the front of the parapet, falling towards the preacher. */
static void
add_desk (const FpForm *form, FpSolids *out)
{
  const double z = form->param[FLOOR] + form->param[PARAPET], flat = inner (form), half = MIN (280, flat * tan (G_PI / SIDES));
  const FpPoint top[4] = { { -half, -outer (form) }, { half, -outer (form) }, { half, -flat }, { -half, -flat } };
  const double slope = -0.36; /* about 20 degrees: UFC 4-730-02 (2004), ch. 3, 2h(2) */

  fp_solids_add_sloping (out, FP_PART_SHELF, top, 4, z, z + 30 + slope * flat, 0, slope);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double slab = MIN (SLAB, p[FLOOR] / 2), stem = inner (form) * 0.35;
  const guint n = n_risers (form);

  fp_solids_add_round (out, FP_PART_SUPPORT, 0, 0, 0, (p[FLOOR] - slab) * 0.12, stem * 1.5, stem * 1.5);
  fp_solids_add_round (out, FP_PART_SUPPORT, 0, 0, (p[FLOOR] - slab) * 0.12, (p[FLOOR] - slab) * 0.6, stem, stem);
  fp_solids_add_round (out, FP_PART_SUPPORT, 0, 0, (p[FLOOR] - slab) * 0.6, p[FLOOR] - slab, stem, inner (form) * 0.95);
  add_octagon (out, FP_PART_SUPPORT, outer (form), p[FLOOR] - slab, p[FLOOR]);
  add_parapet (form, out);
  add_desk (form, out);
  for (guint i = 1; i < n; i++)
    {
      const FpBox step = stair_box (form, (i - 1) * p[TREAD], i * p[TREAD]);
      fp_solids_add_box (out, FP_PART_STEP, step.x0, step.y0, 0, step.x1, step.y1, p[FLOOR] * (n - i) / n);
    }
  if (p[BOARD] > p[PARAPET])
    add_octagon (out, FP_PART_BODY, outer (form), p[FLOOR] + p[BOARD], p[FLOOR] + p[BOARD] + SLAB);
}

/* The treads of its stair, and its own floor within the parapet. */
static void
surfaces (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = n_risers (form);
  FpPoint floor[SIDES];

  for (guint i = 1; i < n; i++)
    {
      const FpBox step = stair_box (form, (i - 1) * p[TREAD], i * p[TREAD]);
      FpPoint tread[4];

      fp_box_corners (&step, tread);
      fp_surfaces_add (out, FP_FLOOR_WAY, tread, 4, p[FLOOR] * (n - i) / n, 0, 0);
    }
  for (guint i = 0; i < SIDES; i++)
    floor[i] = corner (inner (form), i);
  fp_surfaces_add (out, FP_FLOOR_WAY, floor, SIDES, p[FLOOR], 0, 0);
}

/* The arrow points up the stair. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox stair = stair_box (form, 0, MAX (stair_length (form), 1));
  const FpPoint middle = { (stair.x0 + stair.x1) / 2, (stair.y0 + stair.y1) / 2 };

  if (stair_length (form) <= 0)
    return;
  switch (stair_side (form))
    {
    case 2: fp_strokes_add_arrow (out, (FpPoint) { stair.x1, middle.y }, (FpPoint) { stair.x0, middle.y }); break;
    case 6: fp_strokes_add_arrow (out, (FpPoint) { stair.x0, middle.y }, (FpPoint) { stair.x1, middle.y }); break;
    default: fp_strokes_add_arrow (out, (FpPoint) { middle.x, stair.y1 }, (FpPoint) { middle.x, stair.y0 }); break;
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double flat = outer (form);

  fp_dims_add_x (out, WIDTH, (FpVec3) { -inner (form), 0, p[FLOOR] }, p[WIDTH], FP_IN_PLAN, 5);
  fp_dims_add_z (out, FLOOR, (FpVec3) { flat, -flat, 0 }, p[FLOOR], FP_IN_ELEVATION | FP_IN_SECTION, 4);
  fp_dims_add_z (out, PARAPET, (FpVec3) { flat, -flat, p[FLOOR] }, p[PARAPET], FP_IN_ELEVATION | FP_IN_SECTION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_pulpit, form, FP_PART_SUPPORT, "pulpit, stem and floor", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_pulpit, form, FP_PART_BODY, "pulpit, its parapet", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_pulpit, form, FP_PART_STEP, "stair of the pulpit, its whole body", FP_MATERIAL_WOOD);
  fp_quantities_add (out, "risers of the pulpit", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, n_risers (form));
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;

  if (p[BOARD] > 0 && p[BOARD] < 2000)
    return g_strdup ("The sounding board hangs lower than a man stands.");
  if (p[STAIR_WIDTH] > 2 * inner (form) * tan (G_PI / SIDES) + 300)
    return g_strdup ("The stair is wider than the side of the pulpit by which it comes in.");
  return NULL;
}

const FpKind fp_kind_pulpit = {
  .id = "pulpit",
  .label = "Pulpit",
  .tells = "A raised place with a parapet and a stair, from which the sermon is preached.",
  .role = FP_ROLE_PULPIT,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_GOSPEL_FRONT,
  .clearance = 300,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .surfaces = surfaces,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
