/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The height of the altar by the depth of seating. */
#include "measure-evidence.h"

#include <math.h>

#define TABLE_STEP 150.0 /* as the table's source prints it beside 6 in */

/* Rows that sit one behind another on the floor of the church: blocks that overlap across are added up. */
static double
rows_deep (const FpMeasuring *of)
{
  double deepest = 0;
  guint n = 0;
  const FpPlaced *placed = fp_scene_placed (of->scene, &n);
  g_autofree double *chain = g_new0 (double, n + 1);

  /* Longest chain of blocks, each wholly behind the next; a few blocks at most, so the plain way will do. */
  for (guint pass = 0; pass < n; pass++)
    {
      gboolean changed = FALSE;

      for (guint i = 0; i < n; i++)
        {
          double best;

          if (placed[i].ghost || fp_placed_role (&placed[i]) != FP_ROLE_PEWS || placed[i].support >= 0)
            continue;
          best = fp_placed_param (&placed[i], "rows", 0);
          for (guint j = 0; j < n; j++)
            if (j != i && chain[j] > 0 && placed[j].plan.y0 >= placed[i].plan.y1 - 1
                && placed[j].plan.x0 < placed[i].plan.x1 && placed[i].plan.x0 < placed[j].plan.x1)
              best = MAX (best, chain[j] + fp_placed_param (&placed[i], "rows", 0));
          if (best > chain[i])
            {
              chain[i] = best;
              changed = TRUE;
            }
          deepest = MAX (deepest, chain[i]);
        }
      if (!changed)
        break;
    }
  return deepest;
}

/* UFC 4-730-02, 3-2g: one step for up to six rows, two for up to ten, three for up to thirteen; 0: not in the table. */
static double
steps_for (double rows)
{
  return rows <= 6 ? 1 : rows <= 10 ? 2 : rows <= 13 ? 3 : 0;
}

/* Level of the floor before the row nearest the altar. */
static double
front_row_level (const FpMeasuring *of)
{
  guint n = 0, front = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  gboolean found = FALSE;

  for (guint i = 0; i < n; i++)
    if (fp_measuring_in_church (of, i) && (!found || place[i].at.y > place[front].at.y))
      {
        front = i;
        found = TRUE;
      }
  return found ? place[front].at.z : 0;
}

void
fp_take_steps_lacking_for_rows (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  double rows = rows_deep (of), wanted = steps_for (rows), have;
  FpMeasured *measured;

  if (!altar || rows < 1)
    return;
  if (!(wanted > 0))
    {
      fp_measured_add_nothing (out, "more than thirteen rows: outside the table");
      return;
    }
  have = MAX (0, floor ((altar->level - front_row_level (of) + 1) / TABLE_STEP));
  measured = fp_measured_add_at (out, MAX (0, wanted - have), -1, fp_placed_middle (altar, 0));
  measured->text = g_strdup_printf ("as high as %u step%s", (guint) have, have > 0 && have < 2 ? "" : "s");
  measured->detail = g_strdup_printf ("%u wanted for %u row%s of seats one behind another", (guint) wanted,
                                      (guint) rows, rows < 2 ? "" : "s");
}

/* How high the altar stands over the front row, and all the rows. */
void
fp_show_steps_lacking_for_rows (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  (void) one;
  if (altar)
    fp_evidence_add_length_in (out, altar, (FpVec3) { 0, altar->extent.plan.y0, front_row_level (of) - altar->level },
                               (FpVec3) { 0, altar->extent.plan.y0, 0 }, 0);
  fp_evidence_add_role (out, of, FP_ROLE_PEWS);
}
