/* SPDX-License-Identifier: GPL-3.0-or-later */
/* floor.c - a floor of the church, level or with a fall
 *
 * Drawn corner by corner, z = 0 the datum.  Its level is told at the item's
 * own origin; with a fall it is a plane that descends in one direction.
 */
#include "kind-private.h"

#include <math.h>

enum { LEVEL, THICKNESS, USE, FALL, DIRECTION };
enum { PEOPLE, MINISTERS };

static const FpChoice uses[] = { { "people", "The people" }, { "ministers", "The ministers" }, { NULL, NULL } };

static const FpParam params[] = {
  [LEVEL] = FP_LEVEL ("level", "Level", -20000, 0, 20000, FP_SURVEYED "; the datum is the nave floor"),
  [THICKNESS] = FP_LENGTH ("thickness", "Thickness", 10, 200, 3000, FP_JUDGEMENT),
  [USE] = FP_CHOICE ("use", "Used by", uses, PEOPLE, FP_JUDGEMENT),
  [FALL] = FP_SHARE ("fall", "Fall", 0, 0, 0.25, FP_SURVEYED "; most floors are level"),
  [DIRECTION] = FP_ANGLE ("direction", "It descends towards (0°: liturgical east)", -360, 0, 360, FP_SURVEYED),
  FP_NO_MORE_PARAMS
};

/* The plane of its top: level + gx * x + gy * y. */
static FpPoint
gradient (const FpForm *form)
{
  const double a = form->param[DIRECTION] * G_PI / 180;

  return (FpPoint) { form->param[FALL] * sin (a), -form->param[FALL] * cos (a) };
}

static void
top_range (const FpForm *form, double *low, double *high)
{
  const FpPoint g = gradient (form);

  *low = G_MAXDOUBLE;
  *high = -G_MAXDOUBLE;
  for (guint i = 0; i < form->n_corners; i++)
    {
      const double z = form->param[LEVEL] + g.x * form->corner[i].x + g.y * form->corner[i].y;
      *low = MIN (*low, z);
      *high = MAX (*high, z);
    }
}

static void
extent (const FpForm *form, FpExtent *out)
{
  double low, high;

  top_range (form, &low, &high);
  *out = fp_extent_bare (fp_outline_box (form->corner, form->n_corners), form->n_corners > 0 ? high : 0);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const FpPoint g = gradient (form);
  double low, high;

  top_range (form, &low, &high);
  fp_solids_add_sloping (out, FP_PART_FLOOR, form->corner, form->n_corners, low - form->param[THICKNESS],
                         form->param[LEVEL], g.x, g.y);
}

static void
surfaces (const FpForm *form, GArray *out)
{
  const FpPoint g = gradient (form);

  fp_surfaces_add (out, fp_form_is (form, USE, PEOPLE) ? FP_FLOOR_PEOPLE : FP_FLOOR_MINISTERS, form->corner,
                   form->n_corners, form->param[LEVEL], g.x, g.y);
}

/* Up the slope: against the fall. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpPoint g = gradient (form), middle = fp_outline_centroid (form->corner, form->n_corners);
  const double fall = hypot (g.x, g.y), half = 600;

  if (fall > 0)
    fp_strokes_add_arrow (out, (FpPoint) { middle.x - g.x / fall * half, middle.y - g.y / fall * half },
                          (FpPoint) { middle.x + g.x / fall * half, middle.y + g.y / fall * half });
}

static void
quantities (const FpForm *form, GArray *out)
{
  const FpPoint g = gradient (form);
  const double on_plan = fabs (fp_outline_area (form->corner, form->n_corners));

  fp_quantities_add (out, "floor", FP_MATERIAL_NONE, FP_AMOUNT_AREA, on_plan * sqrt (1 + g.x * g.x + g.y * g.y));
}

const FpKind fp_kind_floor = {
  .id = "floor",
  .label = "Floor",
  .tells = "A floor of the church as it was measured: its outline, its level, and its fall if it has one.",
  .role = FP_ROLE_FLOOR,
  .flags = FP_KIND_SURVEY | FP_KIND_OUTLINE | FP_KIND_FROM_DATUM,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .surfaces = surfaces,
  .quantities = quantities,
};
