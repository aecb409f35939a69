/* SPDX-License-Identifier: GPL-3.0-or-later */
/* altar-cards.c - three framed cards: a large one in the middle, a smaller one at each end of the altar
 *
 * Origin: between the cards at the ends, halfway through their depth.
 */
#include "kind-private.h"

enum { WIDTH, HEIGHT, SIDE_WIDTH, SIDE_HEIGHT, APART, FORWARD };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width of the middle card", 150, 420, 900, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the middle card", 120, 320, 900, FP_JUDGEMENT),
  [SIDE_WIDTH] = FP_LENGTH ("side-width", "Width of each card at the ends", 100, 240, 700, FP_JUDGEMENT),
  [SIDE_HEIGHT] = FP_LENGTH ("side-height", "Height of each card at the ends", 100, 270, 800, FP_JUDGEMENT),
  [APART] = FP_LENGTH ("apart", "Between the middles of the cards at the ends", 300, 1700, 5600, FP_JUDGEMENT),
  [FORWARD] = FP_LENGTH ("forward", "The middle card stands before the others by", 0, 0, 1500,
                         FP_JUDGEMENT ": it stands before the tabernacle"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_NONE };

/* A framed board with a strut behind it, on which it leans; design judgement. */
#define BOARD 22.0
#define STRUT 60.0
#define DEEP  (BOARD + STRUT)

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  FpBox plan = fp_centred_box (MAX (p[APART] + p[SIDE_WIDTH], p[WIDTH]), DEEP);

  plan.y0 -= p[FORWARD];
  *out = fp_extent_bare (plan, MAX (p[HEIGHT], p[SIDE_HEIGHT]));
}

/* @y: of the middle of its depth */
static void
add_card (FpSolids *out, double x, double y, double width, double height)
{
  const FpBox board = { x - width / 2, y - DEEP / 2, x + width / 2, y - DEEP / 2 + BOARD };
  /* From two thirds of its height down to the table. */
  const double slope = -height * 0.66 / STRUT, strut = width * 0.06, back = y + DEEP / 2;

  fp_solids_add_framed (out, FP_PART_CARD, &board, 0, height);
  for (int side = -1; side <= 1; side += 2)
    {
      const double at = x + side * width * 0.3;
      const FpPoint foot[4] = { { at - strut, board.y1 }, { at + strut, board.y1 }, { at + strut, back }, { at - strut, back } };

      fp_solids_add_sloping (out, FP_PART_CARD, foot, 4, 0, -slope * back, 0, slope);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;

  add_card (out, 0, -p[FORWARD], p[WIDTH], p[HEIGHT]);
  for (int side = -1; side <= 1; side += 2)
    add_card (out, side * p[APART] / 2, 0, p[SIDE_WIDTH], p[SIDE_HEIGHT]);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double y = -DEEP / 2 - p[FORWARD];

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, y, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION, 7);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[WIDTH] / 2, y, 0 }, p[HEIGHT], FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "altar cards", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 3);
  fp_quantities_add_part (out, &fp_kind_altar_cards, form, FP_PART_CARD, "frames of the altar cards", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;

  if (p[APART] < p[WIDTH] + p[SIDE_WIDTH])
    return g_strdup ("The cards at the ends stand in the one in the middle.");
  if (p[SIDE_WIDTH] > p[WIDTH] || p[SIDE_HEIGHT] > p[HEIGHT])
    return g_strdup ("The card in the middle is smaller than those at the ends.");
  return NULL;
}

const FpKind fp_kind_altar_cards = {
  .id = "altar-cards",
  .label = "Altar cards",
  .tells = "Three framed cards with prayers of the older form of Mass: the larger in the middle, one at each end of the altar.",
  .role = FP_ROLE_ALTAR_CARDS,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
