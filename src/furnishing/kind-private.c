/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-private.c - what the files of kinds share */
#include "kind-private.h"

#include <math.h>

/* --- dimensions ----------------------------------------------------------- */

void
fp_dims_add (GArray *out, int param, FpVec3 a, FpVec3 b, guint views, guint times, guint rank)
{
  const FpDimSpec dim = { param, a, b, views, times, rank };

  if (fp_vec3_length (fp_vec3_sub (b, a)) > 0)
    g_array_append_val (out, dim);
}

void
fp_dims_add_x (GArray *out, int param, FpVec3 from, double length, guint views, guint rank)
{
  fp_dims_add (out, param, from, (FpVec3) { from.x + length, from.y, from.z }, views, 1, rank);
}

void
fp_dims_add_y (GArray *out, int param, FpVec3 from, double length, guint views, guint rank)
{
  fp_dims_add (out, param, from, (FpVec3) { from.x, from.y + length, from.z }, views, 1, rank);
}

void
fp_dims_add_z (GArray *out, int param, FpVec3 from, double length, guint views, guint rank)
{
  fp_dims_add (out, param, from, (FpVec3) { from.x, from.y, from.z + length }, views, 1, rank);
}

/* --- strokes -------------------------------------------------------------- */

void
fp_strokes_add (GArray *out, FpPoint a, FpPoint b, gboolean dashed)
{
  const FpStroke stroke = { a, b, dashed };

  g_array_append_val (out, stroke);
}

void
fp_strokes_add_outline (GArray *out, const FpPoint *pt, guint n, gboolean dashed)
{
  for (guint i = 0; i < n; i++)
    fp_strokes_add (out, pt[i], pt[(i + 1) % n], dashed);
}

void
fp_strokes_add_arrow (GArray *out, FpPoint a, FpPoint b)
{
  const double length = hypot (b.x - a.x, b.y - a.y);

  if (!(length > 0))
    return;
  const double barb = MIN (120, length / 3);
  const double ux = (b.x - a.x) / length * barb, uy = (b.y - a.y) / length * barb;
  fp_strokes_add (out, a, b, FALSE);
  fp_strokes_add (out, b, (FpPoint) { b.x - ux - uy / 2, b.y - uy + ux / 2 }, FALSE);
  fp_strokes_add (out, b, (FpPoint) { b.x - ux + uy / 2, b.y - uy - ux / 2 }, FALSE);
}

/* --- targets and quantities ------------------------------------------------- */

void
fp_targets_add_shaped (GArray *out, FpFocus focus, FpTargetShape shape, FpVec3 foot, double width, double height)
{
  const FpTarget target = {
    focus, shape, { foot.x - width / 2, foot.y, foot.z }, { width, 0, 0 }, { 0, 0, height },
  };

  g_array_append_val (out, target);
}

void
fp_targets_add_upright (GArray *out, FpFocus focus, FpVec3 foot, double width, double height)
{
  fp_targets_add_shaped (out, focus, FP_TARGET_PANEL, foot, width, height);
}

/* Head: breadth and height about the median of ANSUR II (151 mm; 222 mm, twice from eye to crown). */
void
fp_targets_add_person (GArray *out, FpFocus focus, FpVec3 foot, double breadth, double height)
{
  const double head = 222, shoulders = height - head;

  fp_targets_add_upright (out, focus, foot, breadth, shoulders);
  fp_targets_add_shaped (out, focus, FP_TARGET_ROUND, (FpVec3) { foot.x, foot.y, foot.z + shoulders }, 151, head);
}

void
fp_quantities_add (GArray *out, const char *what, FpMaterial material, FpAmountType type, double amount)
{
  const FpQuantity quantity = { .what = what, .material = material, .type = type, .amount = amount };

  if (amount > 0)
    g_array_append_val (out, quantity);
}

void
fp_quantities_add_sized (GArray *out, const char *what, FpMaterial material, double number, FpVec3 size)
{
  const FpQuantity quantity = {
    .what = what, .material = material, .type = FP_AMOUNT_NUMBER, .amount = number, .size = size,
  };

  if (number > 0)
    g_array_append_val (out, quantity);
}

void
fp_quantities_add_pieces (GArray *out, const char *what, FpMaterial material, double number, double length, double width)
{
  const FpQuantity quantity = {
    .what = what, .material = material, .type = FP_AMOUNT_AREA, .amount = number * length * width, .size = { length, width, 0 },
  };

  if (quantity.amount > 0)
    g_array_append_val (out, quantity);
}

void
fp_quantities_add_part (GArray *out, const FpKind *kind, const FpForm *form, FpPart part, const char *what,
                        FpMaterial material)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const FpSolid *s;
  double volume = 0;
  guint n;

  kind->solids (form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].part == part)
      volume += fp_solid_volume (&s[i]);
  const FpQuantity quantity = {
    .what = what, .material = material, .type = FP_AMOUNT_VOLUME, .amount = volume, .of_part = TRUE, .part = part,
  };

  if (volume > 0)
    g_array_append_val (out, quantity);
}

/* Of the name of @s, which a line may have been begun for. */
static FpQuantity *
line_called (GArray *out, guint first, const FpSolid *s, FpMaterial material)
{
  const FpQuantity quantity = {
    .what = s->called, .material = material, .type = FP_AMOUNT_VOLUME, .of_part = TRUE, .part = s->part, .called = s->called,
  };

  for (guint i = first; i < out->len; i++)
    if (g_array_index (out, FpQuantity, i).called == s->called)
      return &g_array_index (out, FpQuantity, i);
  g_array_append_val (out, quantity);
  return &g_array_index (out, FpQuantity, out->len - 1);
}

void
fp_quantities_add_called (GArray *out, const FpKind *kind, const FpForm *form, FpMaterial material)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const guint first = out->len;
  const FpSolid *s;
  guint n;

  kind->solids (form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].called != NULL)
      line_called (out, first, &s[i], material)->amount += fp_solid_volume (&s[i]);
}

/* --- metal -------------------------------------------------------------------- */

/* What is left of it inside when its walls are taken away; 0 where it is too thin to have an inside. */
static double
hollow_of (const FpSolid *s)
{
  const double wall = FP_METAL_WALL;
  const FpBox3 box = fp_solid_box (s);
  const double x = box.hi.x - box.lo.x, y = box.hi.y - box.lo.y;
  /* A bar that leans is as thick as it is, however far it rises. */
  const double z = s->shape == FP_SOLID_PRISM ? fp_solid_volume (s) / fabs (fp_outline_area (s->outline, s->n_outline))
                                              : box.hi.z - box.lo.z;
  const double shrunk = (x - 2 * wall) * (y - 2 * wall) * (z - 2 * wall);

  if (!(x > 2 * wall) || !(y > 2 * wall) || !(z > 2 * wall))
    return 0;
  /* Taken as filling the same share of its box when it is made smaller all round. */
  return fp_solid_volume (s) * shrunk / (x * y * z);
}

double
fp_metal_volume (const FpKind *kind, const FpForm *form)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const FpSolid *s;
  double volume = 0;
  guint n;

  kind->solids (form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].part != FP_PART_CANDLE)
      volume += fp_solid_volume (&s[i]) - hollow_of (&s[i]);
  return volume;
}

void
fp_quantities_add_metal (GArray *out, const FpKind *kind, const FpForm *form, const char *what, FpAmountType type, double amount)
{
  const FpQuantity quantity = {
    .what = what, .material = FP_MATERIAL_METAL, .type = type, .amount = amount, .volume = fp_metal_volume (kind, form),
  };

  if (amount > 0)
    g_array_append_val (out, quantity);
}

/* --- shapes --------------------------------------------------------------- */

void
fp_solids_add_gable (FpSolids *out, FpPart part, const FpBox *plan, double z0, double rise)
{
  const double middle = (plan->x0 + plan->x1) / 2, half = middle - plan->x0;
  FpPoint left[4], right[4];

  fp_box_corners (&(FpBox) { plan->x0, plan->y0, middle, plan->y1 }, left);
  fp_box_corners (&(FpBox) { middle, plan->y0, plan->x1, plan->y1 }, right);

  if (!(half > 0))
    return;
  const double slope = rise / half;
  fp_solids_add_sloping (out, part, left, 4, z0, z0 - slope * plan->x0, slope, 0);
  fp_solids_add_sloping (out, part, right, 4, z0, z0 + slope * plan->x1, -slope, 0);
}

void
fp_solids_add_pyramid (FpSolids *out, FpPart part, const FpBox *plan, double z0, double rise)
{
  const FpPoint tip = { (plan->x0 + plan->x1) / 2, (plan->y0 + plan->y1) / 2 };
  const double half_x = tip.x - plan->x0, half_y = tip.y - plan->y0;
  FpPoint corner[4];

  if (!(half_x > 0 && half_y > 0))
    return;
  fp_box_corners (plan, corner);
  for (guint i = 0; i < 4; i++)
    {
      const FpPoint side[3] = { corner[i], corner[(i + 1) % 4], tip };
      /* The sides in turn: front, Epistle side, back, Gospel side. */
      const double gx = i == 1 ? -rise / half_x : i == 3 ? rise / half_x : 0;
      const double gy = i == 0 ? rise / half_y : i == 2 ? -rise / half_y : 0;
      fp_solids_add_sloping (out, part, side, 3, z0, z0 + rise - gx * tip.x - gy * tip.y, gx, gy);
    }
}

double
fp_candle_radius (double foot)
{
  return CLAMP (foot * 0.22, 9, 30);
}

/* Proportions: design judgement. */
void
fp_solids_add_candlestick (FpSolids *out, double x, double y, double z, double height, double foot, double candle)
{
  const double stem = foot * 0.2, knop = foot * 0.36, z_foot = height * 0.14, z_knop = height * 0.5;
  const double half_knop = MIN (knop, height * 0.06), pan = foot * 0.62, z_pan = height * 0.95;
  const double wick = fp_candle_radius (foot);

  fp_solids_add_round (out, FP_PART_STICK, x, y, z, z + z_foot * 0.3, foot, foot);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_foot * 0.3, z + z_foot, foot * 0.85, stem);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_foot, z + z_knop - half_knop, stem, stem);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_knop - half_knop, z + z_knop, stem, knop);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_knop, z + z_knop + half_knop, knop, stem);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_knop + half_knop, z + z_pan, stem, stem);
  fp_solids_add_round (out, FP_PART_STICK, x, y, z + z_pan, z + height, stem * 1.4, pan);
  fp_solids_add_round (out, FP_PART_CANDLE, x, y, z + height, z + height + candle, wick, wick);
}

void
fp_solids_add_framed (FpSolids *out, FpPart part, const FpBox *plan, double z0, double z1)
{
  const double frame = MIN (plan->x1 - plan->x0, z1 - z0) * 0.12, y = plan->y0 + (plan->y1 - plan->y0) * 0.4;

  fp_solids_add_box (out, part, plan->x0, y, z0, plan->x1, plan->y1, z1);
  fp_solids_add_box (out, part, plan->x0, plan->y0, z0, plan->x0 + frame, y, z1);
  fp_solids_add_box (out, part, plan->x1 - frame, plan->y0, z0, plan->x1, y, z1);
  fp_solids_add_box (out, part, plan->x0 + frame, plan->y0, z0, plan->x1 - frame, y, z0 + frame);
  fp_solids_add_box (out, part, plan->x0 + frame, plan->y0, z1 - frame, plan->x1 - frame, y, z1);
}

void
fp_solids_add_bench (FpSolids *out, const FpBox *plan, double z, double seat, double back, double arm)
{
  const double board = 40; /* design judgement: framed oak */
  const double y_back = plan->y1 - board;

  fp_solids_add_box (out, FP_PART_BACK, plan->x0, y_back, z, plan->x1, plan->y1, z + back);
  fp_solids_add_box (out, FP_PART_BODY, plan->x0, plan->y0, z, plan->x0 + board, y_back, z + arm);
  fp_solids_add_box (out, FP_PART_BODY, plan->x1 - board, plan->y0, z, plan->x1, y_back, z + arm);
  fp_solids_add_box (out, FP_PART_SEAT, plan->x0 + board, plan->y0, z + seat - board, plan->x1 - board, y_back,
                     z + seat);
  fp_solids_add_box (out, FP_PART_BODY, plan->x0 + board, plan->y0 + board, z, plan->x1 - board, plan->y0 + 2 * board,
                     z + seat - board);
}

/* --- pairs ------------------------------------------------------------------ */

double
fp_pair_x (guint i, guint count, double gap, double spacing)
{
  const guint pairs = count / 2, first_right = count - pairs;

  if (i < pairs)
    return -(gap / 2 + (pairs - 1 - i) * spacing);
  return i < first_right ? 0 : gap / 2 + (i - first_right) * spacing;
}

double
fp_pairs_reach (guint count, double gap, double spacing)
{
  return count > 1 ? fp_pair_x (count - 1, count, gap, spacing) : 0;
}

char *
fp_pairs_amiss (const char *what, guint count, double gap, double spacing, double wide)
{
  const gboolean middle = count % 2 == 1;

  if (count > 3 && spacing < wide)
    return g_strdup_printf ("The %s stand in each other: each takes %.0f mm across.", what, wide);
  if (count > 1 && gap < (middle ? 2 : 1) * wide)
    return g_strdup_printf ("The middle %s stand in each other: each takes %.0f mm across.", what, wide);
  return NULL;
}

/* --- what hangs ------------------------------------------------------------- */

#define COMMON_ALTAR 990.0 /* high: the default of altar.c */

void
fp_form_hang (const FpForm *form, double *foot, double *head)
{
  const gboolean known = form->foot < form->head;

  *foot = known ? form->foot : -COMMON_ALTAR;
  *head = known ? form->head : 0;
}
