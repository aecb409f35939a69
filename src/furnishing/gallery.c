/* SPDX-License-Identifier: GPL-3.0-or-later */
/* gallery.c - a gallery for people, with its front
 *
 * Drawn corner by corner, z = 0 the datum.  The front stands within the
 * outline along one of its sides, numbered from 1.
 */
#include "kind-private.h"

#include <math.h>

enum { LEVEL, THICKNESS, FRONT, FRONT_SIDE };

static const FpParam params[] = {
  [LEVEL] = FP_LEVEL ("level", "Level of its floor", -1000, 3500, 40000, FP_SURVEYED),
  [THICKNESS] = FP_LENGTH ("thickness", "Thickness of its floor", 10, 300, 3000, FP_SURVEYED),
  [FRONT] = FP_LENGTH ("front", "Height of its front (0: none)", 0, 1000, 3000, FP_JUDGEMENT),
  [FRONT_SIDE] = FP_COUNT ("front-side", "Side along which its front stands", 1, 1, 2000, FP_SURVEYED),
  FP_NO_MORE_PARAMS
};

#define FRONT_THICK 100.0 /* design judgement */

static gboolean
front_corners (const FpForm *form, FpPoint *a, FpPoint *b)
{
  const guint side = fp_form_count (form, FRONT_SIDE) - 1;

  if (side >= form->n_corners)
    return FALSE;
  *a = form->corner[side];
  *b = form->corner[(side + 1) % form->n_corners];
  return TRUE;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  FpPoint a, b;

  *out = fp_extent_bearing (fp_outline_box (form->corner, form->n_corners), form->param[LEVEL]);
  if (front_corners (form, &a, &b))
    out->height += form->param[FRONT];
}

static void
add_front (const FpForm *form, FpSolids *out)
{
  FpPoint a, b;

  if (!front_corners (form, &a, &b))
    return;
  const double length = hypot (b.x - a.x, b.y - a.y);
  if (!(length > 0))
    return;
  const double inward = fp_outline_area (form->corner, form->n_corners) > 0 ? FRONT_THICK : -FRONT_THICK;
  const double nx = -(b.y - a.y) / length * inward, ny = (b.x - a.x) / length * inward;
  const FpPoint outline[4] = { a, b, { b.x + nx, b.y + ny }, { a.x + nx, a.y + ny } };
  fp_solids_add_prism (out, FP_PART_PANEL, outline, 4, form->param[LEVEL], form->param[LEVEL] + form->param[FRONT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double level = form->param[LEVEL];

  fp_solids_add_prism (out, FP_PART_FLOOR, form->corner, form->n_corners, level - form->param[THICKNESS], level);
  add_front (form, out);
}

static void
dims (const FpForm *form, GArray *out)
{
  FpPoint a, b;

  if (front_corners (form, &a, &b))
    fp_dims_add_z (out, FRONT, (FpVec3) { a.x, a.y, form->param[LEVEL] }, form->param[FRONT], FP_IN_SECTION, 6);
}

static void
surfaces (const FpForm *form, GArray *out)
{
  fp_surfaces_add (out, FP_FLOOR_GALLERY, form->corner, form->n_corners, form->param[LEVEL], 0, 0);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "gallery floor", FP_MATERIAL_NONE, FP_AMOUNT_AREA,
                     fabs (fp_outline_area (form->corner, form->n_corners)));
}

static char *
amiss (const FpForm *form)
{
  if (fp_form_count (form, FRONT_SIDE) > form->n_corners)
    return g_strdup_printf ("The front is told to stand along side %u, but the outline has only %u sides.",
                            fp_form_count (form, FRONT_SIDE), form->n_corners);
  return NULL;
}

const FpKind fp_kind_gallery = {
  .id = "gallery",
  .label = "Gallery",
  .tells = "A floor for people above the nave, with the front that guards its edge.",
  .role = FP_ROLE_GALLERY,
  .flags = FP_KIND_SURVEY | FP_KIND_OUTLINE | FP_KIND_FROM_DATUM,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .surfaces = surfaces,
  .quantities = quantities,
  .amiss = amiss,
};
