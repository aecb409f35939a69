/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "made-pieces.h"

#include <math.h>

#define ALIKE 0.05

/* Longest first, as stone and timber are ordered. */
static FpVec3
size_of (const FpBox3 *box)
{
  const double x = box->hi.x - box->lo.x, y = box->hi.y - box->lo.y, z = box->hi.z - box->lo.z;
  const double most = MAX (MAX (x, y), z), least = MIN (MIN (x, y), z);

  return (FpVec3) { most, x + y + z - most - least, least };
}

gboolean
fp_sizes_are_alike (FpVec3 a, FpVec3 b)
{
  return fabs (a.x - b.x) < ALIKE && fabs (a.y - b.y) < ALIKE && fabs (a.z - b.z) < ALIKE;
}

static void
count_piece (GArray *pieces, FpVec3 size, double volume)
{
  const FpPieces one = { size, 1, volume };

  for (guint i = 0; i < pieces->len; i++)
    {
      FpPieces *p = &g_array_index (pieces, FpPieces, i);

      if (!fp_sizes_are_alike (p->size, size))
        continue;
      p->number++;
      p->volume += volume;
      return;
    }
  g_array_append_val (pieces, one);
}

/* A column or a baluster is turned of one piece, however many solids it takes to say how. */
static gboolean
goes_on (const FpSolid *a, const FpSolid *b)
{
  return a->shape == FP_SOLID_ROUND && b->shape == FP_SOLID_ROUND && a->part == b->part && a->called == b->called
         && fabs (a->cx - b->cx) < ALIKE && fabs (a->cy - b->cy) < ALIKE;
}

GArray *
fp_pieces_of (const FpPlaced *placed, const FpQuantity *quantity)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (FpPieces));
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const FpSolid *s;
  guint n;

  fp_item_kind (placed->item)->solids (&placed->form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0, next; i < n; i = next)
    {
      FpBox3 box = fp_solid_box (&s[i]);
      double volume = fp_solid_volume (&s[i]);

      for (next = i + 1; next < n && goes_on (&s[i], &s[next]); next++)
        {
          const FpBox3 more = fp_solid_box (&s[next]);

          fp_box3_add_box (&box, &more);
          volume += fp_solid_volume (&s[next]);
        }
      if (s[i].part == quantity->part && (quantity->called == NULL || s[i].called == quantity->called))
        count_piece (pieces, size_of (&box), volume);
    }
  return pieces;
}
