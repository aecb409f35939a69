/* SPDX-License-Identifier: GPL-3.0-or-later */
/* chairs.c - movable chairs for the people, in rows
 *
 * Origin: the middle of the block.  Row 1 is nearest the altar; the people face +y.
 */
#include "kind-private.h"

enum { ROWS, SEATS, SPACING, WIDTH, DEPTH, SEAT_HEIGHT, BACK_HEIGHT };

#define UFC "UFC 4-730-02 (2004), ch. 3, 2e: 20 in from shoulder to shoulder, 36 in from back to back"

static const FpParam params[] = {
  [ROWS] = FP_COUNT ("rows", "Rows", 1, 3, 60, FP_JUDGEMENT),
  [SEATS] = FP_COUNT ("seats", "Chairs in a row", 1, 6, 40, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "From back to back", 600, 900, 2000, UFC),
  [WIDTH] = FP_LENGTH ("width", "Width for each", 400, 508, 900, UFC),
  [DEPTH] = FP_LENGTH ("depth", "Depth of a chair", 350, 500, 700, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 450, 600, FP_CUSTOM),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the back", 500, 830, 1300, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* Design judgement. */
#define BOARD 30.0
#define LEG   35.0
#define AIR   40.0 /* between two chairs */

static double
depth_of_block (const FpForm *form)
{
  return (form->param[ROWS] - 1) * form->param[SPACING] + form->param[DEPTH];
}

static FpBox
plan (const FpForm *form)
{
  return fp_centred_box (form->param[SEATS] * form->param[WIDTH], depth_of_block (form));
}

/* Back of the chairs of a row, from 0 nearest the altar. */
static double
back_of (const FpForm *form, guint row)
{
  return depth_of_block (form) / 2 - form->param[DEPTH] - row * form->param[SPACING];
}

static double
seat_x (const FpForm *form, guint i)
{
  return (i - (form->param[SEATS] - 1) / 2) * form->param[WIDTH];
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), MAX (form->param[BACK_HEIGHT], form->param[SEAT_HEIGHT]));
}

static void
add_chair (const FpForm *form, double x, double y, FpSolids *out)
{
  const double *p = form->param;
  const double half = (p[WIDTH] - AIR) / 2, seat = p[SEAT_HEIGHT], y1 = y + p[DEPTH];

  for (int side = -1; side <= 1; side += 2)
    {
      const double x0 = side < 0 ? x - half : x + half - LEG;
      fp_solids_add_box (out, FP_PART_BODY, x0, y1 - LEG, 0, x0 + LEG, y1, seat - BOARD);
      fp_solids_add_box (out, FP_PART_BODY, x0, y, 0, x0 + LEG, y + LEG, seat - BOARD);
    }
  fp_solids_add_box (out, FP_PART_SEAT, x - half, y, seat - BOARD, x + half, y1, seat);
  fp_solids_add_box (out, FP_PART_BACK, x - half, y, seat, x + half, y + BOARD, p[BACK_HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    for (guint i = 0; i < fp_form_count (form, SEATS); i++)
      add_chair (form, seat_x (form, i), back_of (form, row), out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const FpBox box = plan (form);
  const guint rows = fp_form_count (form, ROWS);

  fp_dims_add (out, WIDTH, (FpVec3) { box.x0, box.y0, 0 }, (FpVec3) { box.x1, box.y0, 0 }, FP_IN_PLAN, fp_form_count (form, SEATS), 4);
  if (rows > 1)
    fp_dims_add (out, SPACING, (FpVec3) { box.x1, back_of (form, rows - 1), 0 }, (FpVec3) { box.x1, back_of (form, 0), 0 }, FP_IN_PLAN,
                 rows - 1, 3);
}

static void
seats (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    for (guint i = 0; i < fp_form_count (form, SEATS); i++)
      {
        /* As far before the back as one sits in a pew; on the floor one kneels where there is no kneeler. */
        const FpSeat seat = {
          .at = { seat_x (form, i), back_of (form, row) + MIN (200, p[DEPTH] / 2) },
          .postures = 1 << FP_POSTURE_SITTING | 1 << FP_POSTURE_STANDING | 1 << FP_POSTURE_KNEELING,
          .seat = p[SEAT_HEIGHT],
          .row = row + 1,
          .number = i + 1,
        };
        g_array_append_val (out, seat);
      }
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "chairs of the people", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, form->param[ROWS] * form->param[SEATS]);
}

static char *
amiss (const FpForm *form)
{
  if (fp_form_count (form, ROWS) > 1 && form->param[SPACING] < form->param[DEPTH] + 150)
    return g_strdup ("Nobody can pass between the rows of chairs.");
  if (form->param[BACK_HEIGHT] < form->param[SEAT_HEIGHT])
    return g_strdup ("The backs are lower than the seats.");
  return NULL;
}

const FpKind fp_kind_chairs = {
  .id = "chairs",
  .label = "Movable chairs",
  .tells = "Chairs for the people that can be moved, in rows.",
  .role = FP_ROLE_CHAIRS,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .seats = seats,
  .quantities = quantities,
  .amiss = amiss,
};
