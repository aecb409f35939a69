/* SPDX-License-Identifier: GPL-3.0-or-later */
/* view-title.c - what a view is called */
#include "annotation.h"

#include <math.h>

static const char *
usual_title (FpViewId view)
{
  switch (view)
    {
    case FP_VIEW_PLAN: return "PLAN";
    case FP_VIEW_ELEVATION: return "ELEVATION, FACING EAST";
    case FP_VIEW_SECTION: return "SECTION ON THE AXIS";
    case FP_N_VIEWS: break;
    }
  return "";
}

char *
fp_view_title (FpViewId view, const FpCut cuts[FP_N_VIEWS])
{
  const FpCut *cut = &cuts[view];
  const char letter = fp_cut_letter (view);
  const char *way = view == FP_VIEW_ELEVATION ? (cut->turned ? ", FACING WEST" : ", FACING EAST")
                    : cut->turned             ? ", FROM THE EPISTLE SIDE"
                                              : "";

  if (view == FP_VIEW_SECTION && !cut->placed)
    return g_strconcat (usual_title (view), way, NULL);
  return cut->placed ? g_strdup_printf ("SECTION %c–%c%s", letter, letter, way) : g_strdup (usual_title (view));
}

/* "1200 mm to the Epistle side": for a section that stands without its plan; the caller's. */
static char *
where_cut (FpViewId view, const FpCut *cut, FpUnits units)
{
  g_autofree char *length = fp_length_format (fabs (cut->at), units);
  const char *unit = units == FP_UNITS_METRIC ? " mm" : "";

  if (view == FP_VIEW_SECTION)
    return fabs (cut->at) < 0.5 ? g_strdup ("on the axis")
                                : g_strdup_printf ("%s%s to the %s side", length, unit, cut->at > 0 ? "Epistle" : "Gospel");
  return g_strdup_printf ("%s%s into the %s", length, unit, cut->at >= 0 ? "sanctuary" : "nave");
}

char *
fp_scale_text (double scale)
{
  const double rounded = scale < 20 ? round (scale * 10) / 10 : round (scale);
  g_autofree char *number = fp_number_format (rounded);

  return g_strdup_printf ("1:%s", number);
}

char *
fp_view_scale_words (const FpViewLayout *layout, FpViewId view, gboolean alone)
{
  g_autofree char *scale = fp_scale_text (layout->scale);
  const FpCut *cut = &layout->section[view];
  g_autofree char *where = alone && cut->placed && view != FP_VIEW_PLAN ? where_cut (view, cut, layout->units) : NULL;

  return where != NULL ? g_strconcat (scale, ", cut ", where, NULL) : g_steal_pointer (&scale);
}
