/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the altar weighs on the floor, by the stone and the rating that the schedules go by. */
#include "measuring.h"

#include "footpace/bearing.h"

#define MM2_PER_M2 1e6
#define N_PER_KN   1000.0
/* The pound of force: 0.45359237 kg (exact, 1959) × 9.80665 m/s2. */
#define KN_PER_POUND 0.0044482216152605

static FpUnits
units_of (const FpMeasuring *of)
{
  return fp_project_brief (fp_scene_project (of->scene))->units;
}

static char *
weight_text (double weight, FpUnits units)
{
  const gboolean metric = units == FP_UNITS_METRIC;
  g_autofree char *heavy = fp_number_format_grouped (metric ? weight : weight / KN_PER_POUND, metric ? 1 : 0);

  return g_strconcat (heavy, metric ? " kN" : " lb", NULL);
}

static char *
area_text (double area, FpUnits units)
{
  g_autofree char *wide = units == FP_UNITS_METRIC ? fp_number_format_rounded (area / MM2_PER_M2, 2)
                          : fp_number_format_rounded (area / (FP_MM_PER_FOOT * FP_MM_PER_FOOT), 1);

  return g_strconcat (wide, units == FP_UNITS_METRIC ? " m²" : " sq ft", NULL);
}

/* "Limestone, dense at 25.9 kN/m³ (where that is printed), as the works say". */
static char *
stone_text (const FpProject *project)
{
  const FpMatter *stone = fp_stone (fp_project_works (project)->stone);
  g_autofree char *weight = fp_number_format_rounded (stone->weight, 2);

  return g_strdup_printf ("%s at %s kN/m³ (%s), %s", stone->label, weight, stone->source,
                          fp_project_has_works (project) ? "as the works of this project say"
                                                         : "for nobody has said yet which stone it is");
}

static char *
rating_text (const FpWorks *works, FpUnits units)
{
  const gboolean metric = units == FP_UNITS_METRIC;
  g_autofree char *rating = !(works->bears > 0) ? NULL
                            : metric ? fp_number_format_rounded (works->bears, 2)
                                     : fp_number_format_rounded (works->bears / FP_KN_M2_PER_PSF, 0);

  return rating == NULL ? g_strdup ("")
         : g_strdup_printf ("; the floor was told to bear %s %s", rating, metric ? "kN/m²" : "lb/sq ft");
}

/* "High altar: about 29.9 kN, with what stands on it, on 1.12 m²; Slate at 28 kN/m³ (…), as the works of this project say". */
static char *
told (const FpMeasuring *of, int index, const FpBearing *bearing)
{
  const FpProject *project = fp_scene_project (of->scene);
  g_autofree char *name = fp_measuring_name (of, index), *stone = stone_text (project);
  g_autofree char *heavy = weight_text (bearing->all * FP_GRAVITY / N_PER_KN, units_of (of));
  g_autofree char *wide = area_text (bearing->area, units_of (of));
  g_autofree char *rating = rating_text (fp_project_works (project), units_of (of));

  return g_strdup_printf ("%s: about %s%s, on %s; stone is reckoned as %s%s", name, heavy,
                          bearing->all > bearing->own ? " with what stands on it" : "", wide, stone, rating);
}

/* @share: of the floor's rating, where that was told. */
static void
take (const FpMeasuring *of, GArray *out, gboolean share)
{
  const double bears = fp_project_works (fp_scene_project (of->scene))->bears;

  if (share != (bears > 0))
    return;
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR, i))
    {
      const FpBearing bearing = fp_scene_bearing (of->scene, (guint) i);

      if (bearing.pressure > 0)
        fp_measured_add_at (out, share ? bearing.pressure / bears : bearing.pressure, i,
                            fp_placed_middle (fp_measuring_placed (of, i), 0))->detail = told (of, i, &bearing);
    }
}

void
fp_take_altar_pressure (const FpMeasuring *of, GArray *out)
{
  take (of, out, FALSE);
}

void
fp_take_altar_on_rating (const FpMeasuring *of, GArray *out)
{
  take (of, out, TRUE);
}
