/* SPDX-License-Identifier: GPL-3.0-or-later */
/* credence-vessels.c - what stands on the credence for Mass: chalice under its veil, cruets, basin and towel, finger
 * bowl, communion paten
 *
 * They stand in one row, in this order from its Gospel end.
 */
#include "kind-private.h"

enum { CHALICE, CRUETS, BASIN, PATEN };
enum { NO, YES };

static const FpChoice yes_or_no[] = { { "no", "No" }, { "yes", "Yes" }, { NULL, NULL } };

static const FpParam params[] = {
  [CHALICE] = FP_CHOICE ("chalice", "Chalice, veiled", yes_or_no, YES, "GIRM (3rd ed.) 118, 139, from memory; a solemn Mass of the older form, from memory"),
  [CRUETS] = FP_LENGTH ("cruets", "Height of the cruets", 60, 120, 300, FP_JUDGEMENT),
  [BASIN] = FP_LENGTH ("basin", "Diameter of the basin", 80, 150, 350, FP_JUDGEMENT),
  [PATEN] = FP_CHOICE ("paten", "Communion paten", yes_or_no, YES, FP_CUSTOM),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_CREDENCE, FP_ROLE_ALTAR, FP_ROLE_NONE };

/* Design judgement, as all that follows. */
#define AIR     8.0
#define VEIL    160.0 /* square of the veiled chalice on the table            */
#define CHALICE_HIGH 240.0
#define TOWEL   45.0
#define BOWL    35.0  /* radius of the finger bowl                            */
#define PLATE   65.0  /* of the paten                                         */
#define HANDLE  100.0

static double
cruet_radius (const FpForm *form)
{
  return form->param[CRUETS] * 0.22;
}

static double
tray_width (const FpForm *form)
{
  return 5 * cruet_radius (form) + 2 * AIR;
}

static gboolean
has (const FpForm *form, guint what)
{
  return fp_form_is (form, what, YES);
}

static double
whole_width (const FpForm *form)
{
  double width = tray_width (form) + AIR + form->param[BASIN] + TOWEL + AIR + 2 * BOWL;

  if (has (form, CHALICE))
    width += VEIL + AIR;
  if (has (form, PATEN))
    width += AIR + 2 * PLATE;
  return width;
}

static double
depth (const FpForm *form)
{
  return MAX (MAX (form->param[BASIN], has (form, CHALICE) ? VEIL : 0), MAX (has (form, PATEN) ? 2 * PLATE + HANDLE : 0, 3.2 * cruet_radius (form)));
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (whole_width (form), depth (form)),
                         MAX (form->param[CRUETS], has (form, CHALICE) ? CHALICE_HIGH : 60));
}

/* Under the veil one sees four falling sides and the square pall on top. */
static double
add_chalice (double x, FpSolids *out)
{
  const FpBox box = { x, -VEIL / 2, x + VEIL, VEIL / 2 };
  const double middle = x + VEIL / 2, foot = VEIL / 2, neck = 68;

  fp_solids_add_round (out, FP_PART_BODY, middle, 0, 0, CHALICE_HIGH - 12, foot, neck);
  fp_solids_add_box (out, FP_PART_BODY, middle - 75, -75, CHALICE_HIGH - 12, middle + 75, 75, CHALICE_HIGH);
  return box.x1 + AIR;
}

/* Two cruets with their stoppers on a tray. */
static double
add_cruets (const FpForm *form, double x, FpSolids *out)
{
  const double r = cruet_radius (form), h = form->param[CRUETS], width = tray_width (form), tray = 8;

  fp_solids_add_box (out, FP_PART_SHELF, x, -1.6 * r, 0, x + width, 1.6 * r, tray);
  for (guint i = 0; i < 2; i++)
    {
      const double at = x + AIR + r + i * 3 * r;
      fp_solids_add_round (out, FP_PART_BODY, at, 0, tray, tray + (h - tray) * 0.5, r, r);
      fp_solids_add_round (out, FP_PART_BODY, at, 0, tray + (h - tray) * 0.5, tray + (h - tray) * 0.75, r, r * 0.4);
      fp_solids_add_round (out, FP_PART_BODY, at, 0, tray + (h - tray) * 0.75, h, r * 0.4, r * 0.55);
    }
  return x + width + AIR;
}

/* The basin, the towel folded beside it, and the bowl for the fingers. */
static double
add_basin (const FpForm *form, double x, FpSolids *out)
{
  const double r = form->param[BASIN] / 2;

  fp_solids_add_round (out, FP_PART_BODY, x + r, 0, 0, 45, r * 0.6, r);
  fp_solids_add_box (out, FP_PART_BODY, x + 2 * r, -r * 0.7, 0, x + 2 * r + TOWEL, r * 0.7, 18);
  x += 2 * r + TOWEL + AIR;
  fp_solids_add_round (out, FP_PART_BODY, x + BOWL, 0, 0, 55, BOWL * 0.7, BOWL);
  return x + 2 * BOWL + AIR;
}

static void
solids (const FpForm *form, FpSolids *out)
{
  double x = -whole_width (form) / 2;

  if (has (form, CHALICE))
    x = add_chalice (x, out);
  x = add_cruets (form, x, out);
  x = add_basin (form, x, out);
  if (has (form, PATEN))
    {
      /* Its handle towards the server. */
      fp_solids_add_round (out, FP_PART_BODY, x + PLATE, HANDLE / 2, 0, 15, PLATE * 0.8, PLATE);
      fp_solids_add_box (out, FP_PART_BODY, x + PLATE - 10, -PLATE - HANDLE / 2, 4, x + PLATE + 10, HANDLE / 2 - PLATE, 15);
    }
}

/* The cross on the veil. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double x = -whole_width (form) / 2 + VEIL / 2, arm = 50;

  if (!has (form, CHALICE))
    return;
  fp_strokes_add (out, (FpPoint) { x - arm, 0 }, (FpPoint) { x + arm, 0 }, FALSE);
  fp_strokes_add (out, (FpPoint) { x, -arm }, (FpPoint) { x, arm }, FALSE);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "chalice with its veil", FP_MATERIAL_METAL, FP_AMOUNT_NUMBER, has (form, CHALICE) ? 1 : 0);
  fp_quantities_add (out, "cruets", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 2);
  fp_quantities_add (out, "basin and finger bowl", FP_MATERIAL_METAL, FP_AMOUNT_NUMBER, 2);
  fp_quantities_add (out, "towels", FP_MATERIAL_LINEN, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add (out, "communion paten", FP_MATERIAL_METAL, FP_AMOUNT_NUMBER, has (form, PATEN) ? 1 : 0);
}

const FpKind fp_kind_credence_vessels = {
  .id = "credence-vessels",
  .label = "Vessels on the credence",
  .tells = "What is needed at Mass and stands on the credence: chalice, cruets, basin and towel, finger bowl, communion paten.",
  .role = FP_ROLE_VESSELS,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .quantities = quantities,
};
