/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sketching.h"

static void
add_all (FpSketch *sketch, const FpSolids *solids, gboolean cut_face)
{
  for (guint i = 0; i < fp_solids_count (solids); i++)
    fp_sketch_add_solid (sketch, fp_solids_get (solids, i), &(FpSketchHow) { i, G_MAXDOUBLE, cut_face, 0 });
}

FpSketch *
sketching_new_turned (const FpSolids *solids, FpViewId view)
{
  FpSketch *sketch = fp_sketch_new (view, TRUE, G_MAXDOUBLE);

  add_all (sketch, solids, FALSE);
  return sketch;
}

FpSketch *
sketching_new (const FpSolids *solids, FpViewId view, double near, gboolean cut_face)
{
  FpSketch *sketch = fp_sketch_new (view, FALSE, near);

  add_all (sketch, solids, cut_face);
  return sketch;
}

GArray *
sketching_lines (FpSketch *sketch)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  g_autoptr (FpFaceGrid) grid = fp_face_grid_new (sketch);
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (FpProjectedLine));

  fp_face_grid_visible (grid, FALSE, NULL, NULL, NULL, pieces);
  fp_pieces_merge (pieces, lines);
  return lines;
}

void
sketching_own_last (FpSolids *solids, guint owner)
{
  ((FpSolid *) fp_solids_get (solids, fp_solids_count (solids) - 1))->owner = owner;
}

void
sketching_add_box (FpSolids *solids, guint owner, double x0, double y0, double z0, double x1, double y1, double z1)
{
  fp_solids_add_box (solids, FP_PART_BODY, x0, y0, z0, x1, y1, z1);
  sketching_own_last (solids, owner);
}
