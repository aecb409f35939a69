/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sanctuary-lamp.c - the lamp before the Blessed Sacrament: hung from above, on a bracket at a wall, or on a stand
 *
 * Origin: on the floor under the middle one; on a bracket, its back (+y) is the face of the wall.
 */
#include "kind-private.h"

#include <math.h>

enum { MOUNT, COUNT, SPACING, LEVEL, CHAIN, WIDTH, HEIGHT };
enum { HUNG, BRACKET, STAND };

#define LAMP "Catholic Encyclopedia I (1907), Altar Lamp"

static const FpChoice mounts[] = {
  { "hung", "Hung from above" }, { "bracket", "On a bracket" }, { "stand", "On a stand" }, { NULL, NULL },
};

static const FpParam params[] = {
  [MOUNT] = FP_CHOICE ("mount", "Fixed", mounts, HUNG, LAMP ": before the altar, high enough, and clear of the steps"),
  [COUNT] = FP_COUNT ("count", "Lamps", 1, 1, 15, LAMP " (Rit. Rom. IV, 6; Caer. Ep. I, xii, 17): one at least; if more, uneven"),
  [SPACING] = FP_LENGTH ("spacing", "Spacing", 150, 500, 3000, FP_JUDGEMENT),
  [LEVEL] = FP_LENGTH ("underside", "Underside above the floor", 600, 2700, 12000, FP_JUDGEMENT),
  [CHAIN] = FP_LENGTH ("chain", "Length of the chains; reach of the bracket", 100, 1800, 25000, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width", 60, 220, 1200, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the lamp", 80, 350, 2000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* Sections; design judgement. */
#define ROD    8.0
#define ARM    18.0
#define PLATE  60.0

static double
lamp_y (const FpForm *form)
{
  return fp_form_is (form, MOUNT, BRACKET) ? -MAX (MIN (form->param[CHAIN], 1500), MAX (form->param[WIDTH] / 2, PLATE) + 20) : 0;
}

static double
underside (const FpForm *form)
{
  return form->param[LEVEL];
}

static double
half_width (const FpForm *form)
{
  const double *p = form->param;

  return fp_pairs_reach (fp_form_count (form, COUNT), 2 * p[SPACING], p[SPACING]) + MAX (p[WIDTH] / 2, PLATE);
}

static double
lamp_x (const FpForm *form, guint i)
{
  const double spacing = form->param[SPACING];
  const guint n = fp_form_count (form, COUNT);

  return (i - (n - 1) / 2.0) * spacing;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double half = half_width (form), r = MAX (p[WIDTH] / 2, PLATE), y = lamp_y (form);
  const double top = underside (form) + p[HEIGHT] + (fp_form_is (form, MOUNT, HUNG) ? p[CHAIN] : fp_form_is (form, MOUNT, BRACKET) ? 2 * PLATE : 0);

  *out = fp_extent_bare ((FpBox) { -half, y - r, half, y == 0 ? r : 0 }, top);
}

/* Bowl, glass with its flame, and crown. */
static void
add_lamp (const FpForm *form, double x, double z, FpSolids *out)
{
  const double h = form->param[HEIGHT], r = form->param[WIDTH] / 2, y = lamp_y (form);

  fp_solids_add_round (out, FP_PART_STICK, x, y, z, z + h * 0.4, r * 0.15, r);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + h * 0.4, z + h * 0.48, r, r * 0.9);
  fp_solids_add_round (out, FP_PART_CANDLE, x, y, z + h * 0.48, z + h * 0.78, r * 0.3, r * 0.42);
}

/* Three chains, drawn in as one from the crown up. */
static void
add_chains (const FpForm *form, double x, double z, FpSolids *out)
{
  const double h = form->param[HEIGHT], r = form->param[WIDTH] / 2, rod = MIN (ROD / 2, r * 0.1);

  for (guint i = 0; i < 3; i++)
    {
      const double a = G_PI / 2 + i * 2 * G_PI / 3;
      fp_solids_add_round (out, FP_PART_STICK, x + r * 0.8 * cos (a), r * 0.8 * sin (a), z + h * 0.48, z + h * 0.94, rod, rod);
    }
  fp_solids_add_round (out, FP_PART_STICK, x, 0, z + h * 0.94, z + h, r * 0.95, r * 0.3);
  fp_solids_add_round (out, FP_PART_STICK, x, 0, z + h, z + h + form->param[CHAIN], rod, rod);
}

static void
add_bracket (const FpForm *form, double x, double z, FpSolids *out)
{
  const double y = lamp_y (form), r = form->param[WIDTH] / 2, arm = MIN (ARM, r * 0.4), h = form->param[HEIGHT];

  fp_solids_add_box (out, FP_PART_STICK, x - PLATE, -20, z, x + PLATE, 0, z + h);
  fp_solids_add_box (out, FP_PART_STICK, x - arm / 2, y + r, z + h * 0.4, x + arm / 2, -20, z + h * 0.4 + arm);
}

static void
add_stand (const FpForm *form, double x, double z, FpSolids *out)
{
  const double foot = MAX (form->param[WIDTH] / 2, PLATE), stem = MIN (16, foot * 0.3);

  fp_solids_add_round (out, FP_PART_STICK, x, 0, 0, 30, foot, foot * 0.9);
  fp_solids_add_round (out, FP_PART_STICK, x, 0, 30, z, stem, stem);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double z = underside (form);

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    {
      const double x = lamp_x (form, i);
      add_lamp (form, x, z, out);
      if (fp_form_is (form, MOUNT, HUNG))
        add_chains (form, x, z, out);
      else if (fp_form_is (form, MOUNT, BRACKET))
        add_bracket (form, x, z, out);
      else
        add_stand (form, x, z, out);
    }
}

/* A cross within the circle of each. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double r = form->param[WIDTH] * 0.35, y = lamp_y (form);

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    {
      const double x = lamp_x (form, i);
      fp_strokes_add (out, (FpPoint) { x - r, y - r }, (FpPoint) { x + r, y + r }, TRUE);
      fp_strokes_add (out, (FpPoint) { x - r, y + r }, (FpPoint) { x + r, y - r }, TRUE);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double x = half_width (form);

  fp_dims_add_z (out, LEVEL, (FpVec3) { x, lamp_y (form), 0 }, form->param[LEVEL], FP_IN_ELEVATION | FP_IN_SECTION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double n = form->param[COUNT];

  fp_quantities_add_metal (out, &fp_kind_sanctuary_lamp, form, "sanctuary lamps", FP_AMOUNT_NUMBER, n);
  if (fp_form_is (form, MOUNT, HUNG))
    fp_quantities_add (out, "chains of the lamps", FP_MATERIAL_METAL, FP_AMOUNT_LENGTH, n * form->param[CHAIN]);
}

static char *
amiss (const FpForm *form)
{
  if (fp_form_count (form, COUNT) % 2 == 0)
    return g_strdup ("The lamps are not uneven in number: one, three, five or seven.");
  if (fp_form_count (form, COUNT) > 1 && form->param[SPACING] < form->param[WIDTH])
    return g_strdup ("The lamps hang in each other.");
  return NULL;
}

const FpKind fp_kind_sanctuary_lamp = {
  .id = "sanctuary-lamp",
  .label = "Sanctuary lamp",
  .tells = "The lamp that burns before the Blessed Sacrament.",
  .role = FP_ROLE_SANCTUARY_LAMP,
  .flags = FP_KIND_CUT,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_BEFORE_ALTAR,
  .clearance = 600,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
