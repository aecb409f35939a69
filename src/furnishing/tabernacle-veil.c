/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tabernacle-veil.c - the veil about a tabernacle: like a tent, straight, or a curtain before its door
 *
 * Origin: that of the tabernacle.  It takes its size from the tabernacle.
 */
#include "kind-private.h"

#include <math.h>

enum { SHAPE, CLEAR };
enum { TENT, STRAIGHT, CURTAIN };

static const FpChoice shapes[] = {
  { "tent", "Like a tent" }, { "straight", "Straight on all sides" }, { "curtain", "A curtain before the door" }, { NULL, NULL },
};

static const FpParam params[] = {
  [SHAPE] = FP_CHOICE ("shape", "Shape", shapes, TENT,
                       "E. Ryan, The Liturgical Construction of the Altar, Liturgical Arts I (1931): it covers the tabernacle "
                       "on all sides"),
  [CLEAR] = FP_LENGTH ("clear", "Clear of the tabernacle by", 2, 10, 80, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_TABERNACLE, FP_ROLE_NONE };

#define FOLDS 7 /* on the front; design judgement, as all proportions here */
#define FULLNESS 1.5 /* so much wider is the cloth than what it hangs about  */

typedef struct { FpBox box; double eaves, tip, fold; } Parts;

static Parts
parts (const FpForm *form)
{
  const double clear = form->param[CLEAR];
  const gboolean known = form->foot < form->head;
  const FpBox own = known ? form->core : fp_centred_box (450, 450);
  const double head = known ? form->head : 600;
  Parts of = { own, head + clear, head + clear, MAX (clear * 0.4, 2) };

  if (fp_form_is (form, SHAPE, TENT))
    {
      of.eaves = head * 0.75;
      of.tip = head * 1.25;
    }
  of.box.y0 -= clear;
  if (fp_form_is (form, SHAPE, CURTAIN))
    {
      of.box.y1 = own.y0 - 1;
      of.eaves = of.tip = head * 0.64;
      return of;
    }
  of.box.x0 -= clear;
  of.box.x1 += clear;
  of.box.y1 += clear;
  return of;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const Parts of = parts (form);
  FpBox plan = of.box;

  plan.y0 -= of.fold;
  *out = fp_extent_bare (plan, of.tip);
}

/* Its two halves meet before the door. */
static void
add_folds (const Parts *of, FpSolids *out)
{
  const double width = of->box.x1 - of->box.x0, fold = width / (2 * FOLDS);

  for (guint i = 0; i < FOLDS; i++)
    {
      const double x = of->box.x0 + (i + 0.5) * width / FOLDS - fold / 2;
      fp_solids_add_box (out, FP_PART_CLOTH, x, of->box.y0 - of->fold, 0, x + fold, of->box.y0, of->eaves);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const Parts of = parts (form);

  fp_solids_add_box (out, FP_PART_CLOTH, of.box.x0, of.box.y0, 0, of.box.x1, of.box.y1, of.eaves);
  if (of.tip > of.eaves)
    fp_solids_add_pyramid (out, FP_PART_CLOTH, &of.box, of.eaves, of.tip - of.eaves);
  add_folds (&of, out);
}

/* Its two halves, wider than they hang, and what covers the top: four gores to the tip, or one piece. */
static void
quantities (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);
  const double width = of.box.x1 - of.box.x0, depth = of.box.y1 - of.box.y0, rise = of.tip - of.eaves;
  const gboolean curtain = fp_form_is (form, SHAPE, CURTAIN);

  fp_quantities_add_pieces (out, "half of the tabernacle veil", FP_MATERIAL_SILK, 2, FULLNESS * (curtain ? width / 2 : width + depth),
                            of.eaves);
  if (curtain)
    return;
  if (rise > 0)
    {
      fp_quantities_add_pieces (out, "gore of the veil's top, a triangle, over front and back", FP_MATERIAL_SILK, 2, width,
                                hypot (depth / 2, rise));
      fp_quantities_add_pieces (out, "gore of the veil's top, a triangle, over the sides", FP_MATERIAL_SILK, 2, depth,
                                hypot (width / 2, rise));
    }
  else
    fp_quantities_add_pieces (out, "top of the tabernacle veil", FP_MATERIAL_SILK, 1, width, depth);
}

const FpKind fp_kind_tabernacle_veil = {
  .id = "tabernacle-veil",
  .label = "Tabernacle veil",
  .tells = "The veil that covers the tabernacle while the Blessed Sacrament is in it.",
  .role = FP_ROLE_TABERNACLE_VEIL,
  .flags = FP_KIND_HUNG,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .quantities = quantities,
};
