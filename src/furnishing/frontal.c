/* SPDX-License-Identifier: GPL-3.0-or-later */
/* frontal.c - the hanging of silk before the altar, from the mensa to the footpace and from end to end
 *
 * Origin: that of the altar, at the level of its mensa.  It takes its size from the altar.
 */
#include "kind-private.h"

enum { GUARD, FRONTLET, BANDS, SIDES };
enum { FRONT, FRONT_AND_BACK };

#define FRONTAL "Catholic Encyclopedia I (1907), Altar Frontal, p. 353"

static const FpChoice sides[] = {
  { "front", "Towards the people" }, { "front-and-back", "On both sides" }, { NULL, NULL },
};

static const FpParam params[] = {
  [GUARD] = FP_LENGTH ("guard", "Height of the guard at its foot", 0, 76, 300, FRONTAL ": about 3 in"),
  [FRONTLET] = FP_LENGTH ("frontlet", "Depth of the frontlet (0: none)", 0, 180, 400, FP_JUDGEMENT),
  [BANDS] = FP_COUNT ("bands", "Upright bands", 0, 2, 8, FP_JUDGEMENT),
  [SIDES] = FP_CHOICE ("sides", "Hangs", sides, FRONT, FRONTAL ": behind as well where the people see it"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_NONE };

/* Thicknesses, with frame and lining: design judgement. */
#define CLOTH  12.0
#define RELIEF 4.0   /* of bands and frontlet before it                      */
#define BAND   0.05  /* of the length of the altar                           */
#define DEEP   (CLOTH + 2 * RELIEF)

static gboolean
is_on_both (const FpForm *form)
{
  return fp_form_is (form, SIDES, FRONT_AND_BACK);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const FpBox *core = &form->core;
  double foot, head;

  fp_form_hang (form, &foot, &head);
  *out = fp_extent_bare ((FpBox) { core->x0, core->y0 - DEEP, core->x1, is_on_both (form) ? core->y1 + DEEP : core->y0 }, head);
}

/* From @y outward (-1: towards the people), over x0 to x1. */
static void
add_layer (FpSolids *out, int way, double y, double thick, double x0, double x1, double z0, double z1)
{
  fp_solids_add_box (out, FP_PART_CLOTH, x0, way < 0 ? y - thick : y, z0, x1, way < 0 ? y : y + thick, z1);
}

static void
add_hanging (const FpForm *form, int way, FpSolids *out)
{
  const FpBox *core = &form->core;
  const double *p = form->param;
  const double y = way < 0 ? core->y0 : core->y1, outer = y + way * CLOTH, width = (core->x1 - core->x0) * BAND;
  const guint n = fp_form_count (form, BANDS);
  double foot, head, guard, fringe;

  fp_form_hang (form, &foot, &head);
  guard = MIN (foot + p[GUARD], (foot + head) / 2);
  fringe = MAX (head - p[FRONTLET], (foot + head) / 2);
  add_layer (out, way, y, CLOTH, core->x0, core->x1, guard, head);
  add_layer (out, way, y, DEEP, core->x0, core->x1, foot, guard);
  if (p[FRONTLET] > 0)
    add_layer (out, way, outer, 2 * RELIEF, core->x0, core->x1, fringe, head);
  for (guint i = 0; i < n; i++)
    {
      const double x = core->x0 + (core->x1 - core->x0) * (i + 1) / (n + 1) - width / 2;
      add_layer (out, way, outer, RELIEF, x, x + width, guard, p[FRONTLET] > 0 ? fringe : head);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  add_hanging (form, -1, out);
  if (is_on_both (form))
    add_hanging (form, 1, out);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double length = form->core.x1 - form->core.x0, times = is_on_both (form) ? 2 : 1;
  double foot, head, frontlet;

  fp_form_hang (form, &foot, &head);
  frontlet = MIN (form->param[FRONTLET], (head - foot) / 2);
  fp_quantities_add_pieces (out, "frontal", FP_MATERIAL_SILK, times, length, head - foot);
  fp_quantities_add_pieces (out, "frontlet", FP_MATERIAL_SILK, times, length, frontlet);
  fp_quantities_add_pieces (out, "upright band of the frontal", FP_MATERIAL_SILK, times * fp_form_count (form, BANDS),
                            head - foot - frontlet, length * BAND);
}

const FpKind fp_kind_frontal = {
  .id = "frontal",
  .label = "Frontal",
  .tells = "A hanging that covers the whole front of the altar in the colour of the day.",
  .role = FP_ROLE_FRONTAL,
  .flags = FP_KIND_HUNG,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .quantities = quantities,
};
