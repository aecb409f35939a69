/* SPDX-License-Identifier: GPL-3.0-or-later */
/* altar-cloths.c - the linen on the altar: cloths of the size of the mensa, and one over them that falls at the ends
 *
 * Origin: that of the altar, at the level of its mensa.  It takes its size from what of the mensa is free: before a gradine,
 * round a tabernacle (mensa.h).
 */
#include "kind-private.h"

enum { LAYERS, CLEAR, FRONT };

#define CLOTHS "Catholic Encyclopedia I (1907), Altar Cloths"

static const FpParam params[] = {
  [LAYERS] = FP_COUNT ("layers", "Cloths", 1, 3, 4, "Missale Romanum, Rubr. gen. XX, through " CLOTHS ": three"),
  [CLEAR] = FP_LENGTH ("clear", "Its ends above the footpace", 0, 0, 1200, CLOTHS ": they reach to the predella"),
  [FRONT] = FP_LENGTH ("front", "Fall in front", 0, 0, 1200,
                       "P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 60: as wide as the mensa, none over the front"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_NONE };

#define LAYER 1.0 /* thickness of a cloth; design judgement */

typedef struct { double foot, thick, fall, front; } Parts;

static Parts
parts (const FpForm *form)
{
  const double *p = form->param;
  double foot, head;
  Parts of;

  fp_form_hang (form, &foot, &head);
  of = (Parts) { foot, p[LAYERS] * LAYER, MIN (foot + p[CLEAR], -2 * LAYER), MIN (p[FRONT], -foot) };
  return of;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const FpBox *core = &form->core;
  const Parts of = parts (form);

  *out = fp_extent_bare ((FpBox) { core->x0 - LAYER, core->y0 - (of.front > 0 ? LAYER : 0), core->x1 + LAYER, core->y1 },
                         of.thick);
}

/* Within the core, open to its back or front; no area: none. */
static gboolean
is_notched (const FpForm *form)
{
  return form->notch.x1 > form->notch.x0 && form->notch.y1 > form->notch.y0;
}

/* On the mensa: whole, or beside the notch and before or behind it. */
static void
add_top (const FpForm *form, double thick, FpSolids *out)
{
  const FpBox *core = &form->core, *notch = &form->notch;

  if (!is_notched (form))
    {
      fp_solids_add_box (out, FP_PART_CLOTH, core->x0, core->y0, 0, core->x1, core->y1, thick);
      return;
    }
  fp_solids_add_box (out, FP_PART_CLOTH, core->x0, core->y0, 0, notch->x0, core->y1, thick);
  fp_solids_add_box (out, FP_PART_CLOTH, notch->x1, core->y0, 0, core->x1, core->y1, thick);
  fp_solids_add_box (out, FP_PART_CLOTH, notch->x0, core->y0, 0, notch->x1, notch->y0, thick);
  fp_solids_add_box (out, FP_PART_CLOTH, notch->x0, notch->y1, 0, notch->x1, core->y1, thick);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const FpBox *core = &form->core;
  const Parts of = parts (form);

  add_top (form, of.thick, out);
  fp_solids_add_box (out, FP_PART_CLOTH, core->x0 - LAYER, core->y0, of.fall, core->x0, core->y1, of.thick);
  fp_solids_add_box (out, FP_PART_CLOTH, core->x1, core->y0, of.fall, core->x1 + LAYER, core->y1, of.thick);
  if (of.front > 0)
    fp_solids_add_box (out, FP_PART_CLOTH, core->x0, core->y0 - LAYER, -of.front, core->x1, core->y0, of.thick);
}

static void
dims (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);

  fp_dims_add_z (out, -1, (FpVec3) { form->core.x1, form->core.y0, of.fall }, -of.fall, FP_IN_ELEVATION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const FpBox *core = &form->core;
  const double length = core->x1 - core->x0, depth = core->y1 - core->y0;
  const double notch = is_notched (form) ? fp_box_area (&form->notch) : 0;
  const Parts of = parts (form);

  fp_quantities_add (out, "top cloth as it lies, without hems", FP_MATERIAL_LINEN, FP_AMOUNT_AREA,
                     length * depth - notch - 2 * of.fall * depth + of.front * length);
  fp_quantities_add (out, "lower cloths as they lie, without hems", FP_MATERIAL_LINEN, FP_AMOUNT_AREA,
                     (form->param[LAYERS] - 1) * (length * depth - notch));
}

const FpKind fp_kind_altar_cloths = {
  .id = "altar-cloths",
  .label = "Altar cloths",
  .tells = "The white linen on the altar; the uppermost cloth falls at both ends to the footpace.",
  .role = FP_ROLE_ALTAR_CLOTHS,
  .flags = FP_KIND_HUNG,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
