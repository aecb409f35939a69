/* SPDX-License-Identifier: GPL-3.0-or-later */
/* font.c - the baptismal font: an octagonal bowl on a stem, on its steps, with a cover */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, HEIGHT, STEPS, RISER, TREAD, COVER, COVER_HEIGHT };
enum { NONE, FLAT, SPIRE };

static const FpChoice covers[] = {
  { "none", "None" }, { "flat", "Flat" }, { "spire", "Like a spire" }, { NULL, NULL },
};

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width of the bowl", 350, 850, 3000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height above its step", 500, 1000, 1400, FP_JUDGEMENT),
  [STEPS] = FP_COUNT ("steps", "Steps", 0, 1, 5, FP_JUDGEMENT),
  [RISER] = FP_LENGTH ("riser", "Height of a step", 60, 150, 250, FP_JUDGEMENT),
  [TREAD] = FP_LENGTH ("tread", "Depth of a step", 150, 450, 1200, FP_JUDGEMENT),
  [COVER] = FP_CHOICE ("cover", "Cover", covers, FLAT, FP_CUSTOM ": the water is kept covered and locked"),
  [COVER_HEIGHT] = FP_LENGTH ("cover-height", "Height of the cover", 30, 120, 4000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define SIDES 8

static double
top_step (const FpForm *form)
{
  return form->param[STEPS] * form->param[RISER];
}

/* From the middle to a flat of step @i, the lowest first. */
static double
step_flat (const FpForm *form, guint i)
{
  return form->param[WIDTH] / 2 * 0.8 + (form->param[STEPS] - i) * form->param[TREAD];
}

static double
half_plan (const FpForm *form)
{
  return fp_form_count (form, STEPS) > 0 ? MAX (step_flat (form, 0), form->param[WIDTH] / 2) : form->param[WIDTH] / 2;
}

static double
cover_height (const FpForm *form)
{
  return fp_form_is (form, COVER, NONE) ? 0 : form->param[COVER_HEIGHT];
}

static void
octagon (double flat, FpPoint pt[SIDES])
{
  const double r = flat / cos (G_PI / SIDES);

  for (guint i = 0; i < SIDES; i++)
    {
      const double a = -G_PI / 2 - G_PI / SIDES + i * 2 * G_PI / SIDES;
      pt[i] = (FpPoint) { r * cos (a), r * sin (a) };
    }
}

/* Between two octagons; @in 0: the whole. */
static void
add_ring (FpSolids *out, FpPart part, double in, double flat, double z0, double z1)
{
  FpPoint inner[SIDES], outer[SIDES];

  octagon (flat, outer);
  octagon (in, inner);
  if (in <= 0)
    {
      fp_solids_add_prism (out, part, outer, SIDES, z0, z1);
      return;
    }
  for (guint i = 0; i < SIDES; i++)
    {
      const guint k = (i + 1) % SIDES;
      const FpPoint side[4] = { inner[i], outer[i], outer[k], inner[k] };
      fp_solids_add_prism (out, part, side, 4, z0, z1);
    }
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double half = half_plan (form);

  *out = fp_extent_bare (fp_centred_box (2 * half, 2 * half), top_step (form) + form->param[HEIGHT] + cover_height (form));
}

static void
add_steps (const FpForm *form, FpSolids *out)
{
  const guint n = fp_form_count (form, STEPS);

  for (guint i = 0; i < n; i++)
    add_ring (out, FP_PART_STEP, i + 1 < n ? step_flat (form, i + 1) : 0, step_flat (form, i), 0, (i + 1) * form->param[RISER]);
}

/* One over the other: the highest is walked on. */
static void
surfaces (const FpForm *form, GArray *out)
{
  for (guint i = 0; i < fp_form_count (form, STEPS); i++)
    {
      FpPoint step[SIDES];

      octagon (step_flat (form, i), step);
      fp_surfaces_add (out, FP_FLOOR_WAY, step, SIDES, (i + 1) * form->param[RISER], 0, 0);
    }
}

/* Base, stem, and the bowl with the water in it. */
static void
add_font (const FpForm *form, FpSolids *out)
{
  const double z = top_step (form), h = form->param[HEIGHT], flat = form->param[WIDTH] / 2, wall = MIN (90, flat * 0.25);

  add_ring (out, FP_PART_BODY, 0, flat * 0.72, z, z + h * 0.12);
  add_ring (out, FP_PART_BODY, 0, flat * 0.45, z + h * 0.12, z + h * 0.5);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, z + h * 0.5, z + h * 0.62, flat * 0.45, flat * 0.95);
  add_ring (out, FP_PART_BODY, 0, flat, z + h * 0.62, z + h * 0.68);
  add_ring (out, FP_PART_BODY, flat - wall, flat, z + h * 0.68, z + h);
}

/* Rests on the rim; a spire in three stages, or a low roof, with a knob. */
static void
add_cover (const FpForm *form, FpSolids *out)
{
  const double z = top_step (form) + form->param[HEIGHT], flat = form->param[WIDTH] / 2 * 0.96, h = form->param[COVER_HEIGHT];

  if (fp_form_is (form, COVER, SPIRE))
    {
      add_ring (out, FP_PART_DOOR, 0, flat, z, z + h * 0.08);
      fp_solids_add_round (out, FP_PART_DOOR, 0, 0, z + h * 0.08, z + h * 0.4, flat * 0.9, flat * 0.45);
      fp_solids_add_round (out, FP_PART_DOOR, 0, 0, z + h * 0.4, z + h * 0.93, flat * 0.4, flat * 0.06);
    }
  else
    {
      add_ring (out, FP_PART_DOOR, 0, flat, z, z + h * 0.35);
      fp_solids_add_round (out, FP_PART_DOOR, 0, 0, z + h * 0.35, z + h * 0.8, flat * 0.85, flat * 0.2);
    }
  fp_solids_add_round (out, FP_PART_DOOR, 0, 0, z + h * (fp_form_is (form, COVER, SPIRE) ? 0.93 : 0.8), z + h, flat * 0.08, flat * 0.05);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  add_steps (form, out);
  add_font (form, out);
  if (cover_height (form) > 0)
    add_cover (form, out);
}

/* The octagon of a font, with its eight ribs. */
static void
strokes (const FpForm *form, GArray *out)
{
  FpPoint rim[SIDES];

  octagon (form->param[WIDTH] / 2 * 0.9, rim);
  for (guint i = 0; i < SIDES; i++)
    fp_strokes_add (out, (FpPoint) { rim[i].x * 0.3, rim[i].y * 0.3 }, rim[i], FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, 0, top_step (form) + p[HEIGHT] }, p[WIDTH], FP_IN_PLAN | FP_IN_ELEVATION, 5);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[WIDTH] / 2, 0, top_step (form) }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_font, form, FP_PART_BODY, "font", FP_MATERIAL_STONE);
  fp_quantities_add_part (out, &fp_kind_font, form, FP_PART_STEP, "steps of the font", FP_MATERIAL_STONE);
  if (cover_height (form) > 0)
    fp_quantities_add_part (out, &fp_kind_font, form, FP_PART_DOOR, "cover of the font", FP_MATERIAL_WOOD);
}

const FpKind fp_kind_font = {
  .id = "font",
  .label = "Font",
  .tells = "The basin of baptism on its step, with its cover.",
  .role = FP_ROLE_FONT,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .surfaces = surfaces,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
