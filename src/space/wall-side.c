/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wall-side.h"

#include <math.h>

static double
crown_of (const FpItem *opening)
{
  const double rise = fp_item_param (opening, "arch") == 1 ? fp_item_param (opening, "width") / 2 : 0;

  return MAX (fp_item_param (opening, "head"), fp_item_param (opening, "sill")) + rise;
}

/* A door passes under a window. */
static gboolean
pass_each_other (const FpItem *a, const FpItem *b)
{
  return crown_of (a) <= fp_item_param (b, "sill") || crown_of (b) <= fp_item_param (a, "sill");
}

void
fp_wall_side_room (const FpProject *project, const FpItem *opening, double length, double *least, double *most)
{
  const double along = fp_item_param (opening, "along"), half = fp_item_param (opening, "width") / 2;
  const guint side = (guint) fp_item_param (opening, "side");

  *least = half;
  *most = length - half;
  for (guint i = 0; i < fp_project_n_survey (project); i++)
    {
      const FpItem *other = fp_project_survey (project, i);
      double at, apart;
      if (other == opening || !fp_item_is_in_side (other, fp_item_on (opening), side)
          || pass_each_other (opening, other))
        continue;
      at = fp_item_param (other, "along");
      apart = half + fp_item_param (other, "width") / 2;
      if (at < along)
        *least = MAX (*least, at + apart);
      else
        *most = MIN (*most, at - apart);
    }
}

static gboolean
is_free (const FpProject *project, const FpItem *opening, guint side, double length, double along)
{
  const double half = fp_item_param (opening, "width") / 2;

  for (guint i = 0; i < fp_project_n_survey (project); i++)
    {
      const FpItem *other = fp_project_survey (project, i);

      if (other != opening && fp_item_is_in_side (other, fp_item_on (opening), side) && !pass_each_other (opening, other)
          && fabs (fp_item_param (other, "along") - along) < half + fp_item_param (other, "width") / 2 - 1e-6)
        return FALSE;
    }
  return along >= half && along <= length - half;
}

double
fp_wall_side_nearest (const FpProject *project, const FpItem *opening, guint side, double length, double wanted)
{
  const double half = fp_item_param (opening, "width") / 2;
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (double));
  double best = G_MAXDOUBLE;

  g_array_append_vals (spots, ((double[]) { wanted, half, length - half }), 3);
  for (guint i = 0; i < fp_project_n_survey (project); i++)
    {
      const FpItem *other = fp_project_survey (project, i);
      double apart, at[2];

      if (!fp_item_is_in_side (other, fp_item_on (opening), side))
        continue;
      apart = half + fp_item_param (other, "width") / 2;
      at[0] = fp_item_param (other, "along") - apart;
      at[1] = fp_item_param (other, "along") + apart;
      g_array_append_vals (spots, at, 2);
    }
  for (guint i = 0; i < spots->len; i++)
    {
      const double spot = g_array_index (spots, double, i);

      if (is_free (project, opening, side, length, spot) && fabs (spot - wanted) < fabs (best - wanted))
        best = spot;
    }
  return best < G_MAXDOUBLE ? best : wanted;
}
