/* SPDX-License-Identifier: GPL-3.0-or-later */
/* levels-ground.c - the ground along the nave, as seen from the side */
#include "footpace/levels.h"

#include <math.h>

#define SAME 0.001 /* mm */
/* A row that stands so much above the floor of the survey stands on a step of its own. */
#define RAISED 1.0
/* Depth of a row that has no spacing (design judgement). */
#define ROW_DEPTH 600.0

/* --- what there is to stand on ------------------------------------------------- */

static void
add_piece (GArray *out, double y0, double z0, double y1, double z1, FpStanding standing)
{
  const FpGroundPart piece = { y0, z0, y1, z1, standing };

  if (y1 - y0 > SAME)
    g_array_append_val (out, piece);
}

/* However a plane falls, at each y it is highest on its edge. */
static void
add_outline (GArray *out, const FpPoint *pt, guint n, double z, double gx, double gy, FpStanding standing)
{
  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n];
      const FpPoint west = a.y < b.y ? a : b, east = a.y < b.y ? b : a;

      add_piece (out, west.y, z + gx * west.x + gy * west.y, east.y, z + gx * east.x + gy * east.y,
                 standing);
    }
}

static void
add_floors (GArray *out, const FpScene *scene)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE || floor[i].use == FP_FLOOR_MINISTERS)
      add_outline (out, floor[i].outline, floor[i].n_outline, floor[i].z, floor[i].gx, floor[i].gy,
                   placed[floor[i].owner].standing);
}

static gboolean
carries (const FpPlaced *placed, int altar, int thing)
{
  for (int at = altar; at >= 0; at = placed[at].support)
    if (at == thing)
      return at != altar;
  return FALSE;
}

static void
add_steps (GArray *out, const FpScene *scene)
{
  guint n, n_solids;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpSolid *solid = fp_scene_solids (scene, &n_solids);
  const int altar = fp_scene_celebrated_altar (scene);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < placed[i].n_solids; k++)
      {
        const FpSolid *one = &solid[placed[i].first_solid + k];
        const gboolean steps = fp_item_kind (placed[i].item)->role == FP_ROLE_STEPS || carries (placed, altar, (int) i);

        if (!placed[i].ghost && steps && one->shape == FP_SOLID_PRISM
            && (one->part == FP_PART_STEP || one->part == FP_PART_FOOTPACE))
          add_outline (out, one->outline, one->n_outline, one->z1, one->gx, one->gy, placed[i].standing);
      }
}

static double
depth_of (const FpPlaced *placed)
{
  const int spacing = fp_kind_param_index (fp_item_kind (placed->item), "spacing");

  return spacing >= 0 ? fp_item_params (placed->item)[spacing] : ROW_DEPTH;
}

static void
add_rows (GArray *out, const FpScene *scene, const GArray *rows)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowLevel *row = &g_array_index (rows, FpRowLevel, i);
      const double half = depth_of (&placed[row->owner]) / 2;

      if (row->at.z > fp_scene_floor_at (scene, (FpPoint) { row->at.x, row->at.y }, NULL) + RAISED)
        add_piece (out, row->west - half, row->at.z, row->east + half, row->at.z,
                   placed[row->owner].standing);
    }
}

/* --- the highest of it ------------------------------------------------------------ */

static double
level_at (const FpGroundPart *piece, double y)
{
  return piece->z0 + (piece->z1 - piece->z0) * (y - piece->y0) / (piece->y1 - piece->y0);
}

static void
add_crossing (GArray *cuts, const FpGroundPart *a, const FpGroundPart *b)
{
  const double west = MAX (a->y0, b->y0), east = MIN (a->y1, b->y1);
  double from, to, y;

  if (east <= west)
    return;
  from = level_at (a, west) - level_at (b, west);
  to = level_at (a, east) - level_at (b, east);
  if ((from > 0) == (to > 0))
    return;
  y = west + (east - west) * from / (from - to);
  g_array_append_val (cuts, y);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* Where the highest may change from one piece to another. */
static GArray *
cuts_of (const GArray *pieces)
{
  GArray *cuts = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < pieces->len; i++)
    {
      const FpGroundPart *a = &g_array_index (pieces, FpGroundPart, i);

      g_array_append_val (cuts, a->y0);
      g_array_append_val (cuts, a->y1);
      for (guint k = 0; k < i; k++)
        add_crossing (cuts, a, &g_array_index (pieces, FpGroundPart, k));
    }
  g_array_sort (cuts, compare_doubles);
  return cuts;
}

static const FpGroundPart *
highest_at (const GArray *pieces, double y)
{
  const FpGroundPart *best = NULL;

  for (guint i = 0; i < pieces->len; i++)
    {
      const FpGroundPart *one = &g_array_index (pieces, FpGroundPart, i);
      if (y > one->y0 && y < one->y1 && (best == NULL || level_at (one, y) > level_at (best, y)))
        best = one;
    }
  return best;
}

/* What goes on straight is one stretch. */
static void
append (GArray *out, const FpGroundPart *piece, double y0, double y1)
{
  const FpGroundPart next = { y0, level_at (piece, y0), y1, level_at (piece, y1), piece->standing };
  FpGroundPart *last = out->len > 0 ? &g_array_index (out, FpGroundPart, out->len - 1) : NULL;

  if (last != NULL && last->standing == next.standing && fabs (last->y1 - y0) < SAME && fabs (last->z1 - next.z0) < SAME
      && fabs (level_at (last, y1) - next.z1) < SAME)
    *last = (FpGroundPart) { last->y0, last->z0, y1, next.z1, next.standing };
  else
    g_array_append_val (out, next);
}

GArray *
fp_ground_along_nave (const FpScene *scene, const GArray *rows)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpGroundPart));
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (FpGroundPart)), cuts = NULL;

  add_floors (pieces, scene);
  add_steps (pieces, scene);
  add_rows (pieces, scene, rows);
  cuts = cuts_of (pieces);
  for (guint i = 1; i < cuts->len; i++)
    {
      const double y0 = g_array_index (cuts, double, i - 1), y1 = g_array_index (cuts, double, i);
      const FpGroundPart *piece = y1 - y0 > SAME ? highest_at (pieces, (y0 + y1) / 2) : NULL;

      if (piece != NULL)
        append (out, piece, y0, y1);
    }
  return out;
}
