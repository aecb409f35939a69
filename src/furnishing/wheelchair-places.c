/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wheelchair-places.c - clear floor for people in wheelchairs, side by side
 *
 * Origin: middle of the edge nearest to the altar; the floor lies from there
 * towards -y.  z = 0 is the floor beneath: the chair comes with whoever sits in it.
 */
#include "kind-private.h"

enum { COUNT, WIDTH, WIDTH_BESIDE, DEPTH, EYE };

#define BODY 450.0 /* middle of the body of one who sits there, before the rear edge: half-way along a chair less its front
                    * with the feet; design judgement */
#define SEAT 480.0 /* height of the seat of a wheelchair: common practice, from memory */

/* Of the chair as drawn, a common one of about 650 by 1050 in all: design judgement. */
#define HALF_SEAT 230.0

#define A117 "ICC A117.1-2003, 802; "

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Places side by side", 1, 1, 20, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width of a single place", 700, 915, 2000, A117 "36 in, rounded up to 5 mm"),
  [WIDTH_BESIDE] = FP_LENGTH ("width-beside", "Width of each of several", 700, 840, 2000, A117 "33 in each, rounded up to 5 mm"),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 900, 1220, 2500, A117 "48 in where it is entered from front or rear"),
  [EYE] = FP_LENGTH ("eye", "Height of the eyes", 900, 1150, 1500,
                     "CEN/TR 15913:2009, as reported in a published note on its preview: 1.15 m"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GALLERY, FP_ROLE_NONE };

static double
width_of_each (const FpForm *form)
{
  return form->param[fp_form_count (form, COUNT) > 1 ? WIDTH_BESIDE : WIDTH];
}

static FpBox
floor_of (const FpForm *form)
{
  const double half = fp_form_count (form, COUNT) * width_of_each (form) / 2;

  return (FpBox) { -half, -form->param[DEPTH], half, 0 };
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (floor_of (form), 0);
}

/* It has no body: people make it up. */
static void
solids (const FpForm *form, FpSolids *out)
{
  (void) form;
  (void) out;
}

/* Its seat, its large wheels and its footrest, as they stand there when the place is taken. */
static void
stroke_chair (double x, double y, GArray *out)
{
  const FpPoint seat[4] = { { x - HALF_SEAT, y - 220 }, { x + HALF_SEAT, y - 220 }, { x + HALF_SEAT, y + 220 },
                            { x - HALF_SEAT, y + 220 } };
  const FpPoint rest[4] = { { x - 170, y + 360 }, { x + 170, y + 360 }, { x + 170, y + 500 }, { x - 170, y + 500 } };

  fp_strokes_add_outline (out, seat, 4, TRUE);
  fp_strokes_add_outline (out, rest, 4, TRUE);
  for (int side = -1; side <= 1; side += 2)
    {
      const double inner = x + side * (HALF_SEAT + 20), outer = x + side * (HALF_SEAT + 70);
      const FpPoint wheel[4] = { { MIN (inner, outer), y - 300 }, { MAX (inner, outer), y - 300 },
                                 { MAX (inner, outer), y + 300 }, { MIN (inner, outer), y + 300 } };
      fp_strokes_add_outline (out, wheel, 4, TRUE);
      fp_strokes_add (out, (FpPoint) { x + side * 150, y + 220 }, (FpPoint) { x + side * 150, y + 360 }, TRUE);
    }
}

/* Clear floor is dashed: nothing stands there, and so is the chair that comes and goes. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox box = floor_of (form);
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  fp_strokes_add_outline (out, corner, 4, TRUE);
  for (guint i = 1; i < fp_form_count (form, COUNT); i++)
    {
      const double x = box.x0 + i * width_of_each (form);
      fp_strokes_add (out, (FpPoint) { x, box.y0 }, (FpPoint) { x, box.y1 }, TRUE);
    }
  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    stroke_chair (box.x0 + (i + 0.5) * width_of_each (form), box.y0 + BODY, out);
}

/* IBC 2015, 1004.4 (from memory) counts one person for each place. Whoever sits there cannot rise when others do. */
static void
seats (const FpForm *form, GArray *out)
{
  const FpBox box = floor_of (form);

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    {
      const FpSeat seat = {
        .at = { box.x0 + (i + 0.5) * width_of_each (form), box.y0 + BODY },
        .postures = 1 << FP_POSTURE_SITTING,
        .seat = SEAT,
        .eye = form->param[EYE],
        .row = 1,
        .number = i + 1,
      };
      g_array_append_val (out, seat);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const FpBox box = floor_of (form);
  const gboolean several = fp_form_count (form, COUNT) > 1;

  fp_dims_add_x (out, several ? WIDTH_BESIDE : WIDTH, (FpVec3) { box.x0, 0, 0 }, width_of_each (form), FP_IN_PLAN, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { box.x1, 0, 0 }, -form->param[DEPTH], FP_IN_PLAN, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "wheelchair places", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, form->param[COUNT]);
}

const FpKind fp_kind_wheelchair_places = {
  .id = "wheelchair-places",
  .label = "Wheelchair places",
  .tells = "Clear floor among the seats where people stay in their wheelchairs.",
  .role = FP_ROLE_WHEELCHAIR,
  .flags = FP_KIND_ON_FLOOR,
  .spot = FP_SPOT_NAVE,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .seats = seats,
  .quantities = quantities,
};
