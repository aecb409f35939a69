/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparison-arrange.h"

#include "footpace/sheet.h"

/* A sanctuary at 1:100 can be read well (design judgement): then one page is worth more than larger drawings. */
#define READ_WELL 100.0

double
fp_arrangement_table_width (guint columns)
{
  return FP_COMPARISON_LABEL + columns * FP_COMPARISON_LEAST;
}

guint
fp_arrangement_pages (FpArrangementId id)
{
  return id == FP_ARRANGED_APART || id == FP_ARRANGED_BY_VIEW ? 2 : 1;
}

/* --- whether it fits ------------------------------------------------------------------ */

static double
column_width (const FpArrangementRoom *room, FpArrangementId id)
{
  const double aside = fp_arrangement_table_width (room->columns) + FP_COMPARISON_APART + FP_COMPARISON_ASIDE;
  const double width = room->width - (id == FP_ARRANGED_BESIDE ? aside : FP_COMPARISON_LABEL);

  return MIN (FP_COMPARISON_MOST, width / room->columns);
}

static gboolean
is_wide_enough (const FpArrangementRoom *room, FpArrangementId id, double scale)
{
  return room->wide / scale <= column_width (room, id) - 2 * FP_COMPARISON_GAP;
}

/* @drawn: world mm, of so many drawings above each other; @table: paper mm below them */
static gboolean
is_high_enough (const FpArrangementRoom *room, double drawn, guint drawings, double scale, double table)
{
  return FP_COMPARISON_HEAD + drawn / scale + (drawings + 1) * FP_COMPARISON_GAP + table <= room->height;
}

static gboolean
elevations_fit (const FpArrangementRoom *room, FpArrangementId id, double scale)
{
  const double all = room->elevation + room->plan;

  if (!is_wide_enough (room, id, scale))
    return FALSE;
  switch (id)
    {
    case FP_ARRANGED_ABOVE: return is_high_enough (room, all, 2, scale, room->table);
    case FP_ARRANGED_BESIDE: return is_high_enough (room, all, 2, scale, 0)
                                    && FP_COMPARISON_HEAD + room->table <= room->height;
    case FP_ARRANGED_APART: return is_high_enough (room, all, 2, scale, 0);
    case FP_ARRANGED_BY_VIEW: return is_high_enough (room, room->elevation, 1, scale, room->table);
    case FP_N_ARRANGEMENTS: break;
    }
  return FALSE;
}

static gboolean
plans_fit (const FpArrangementRoom *room, FpArrangementId id, double scale)
{
  if (id != FP_ARRANGED_BY_VIEW)
    return elevations_fit (room, id, scale);
  return is_wide_enough (room, id, scale) && is_high_enough (room, room->plan, 1, scale, 0);
}

/* --- which one ------------------------------------------------------------------------- */

static double
largest (const FpArrangementRoom *room, FpArrangementId id,
         gboolean (*fits) (const FpArrangementRoom *room, FpArrangementId id, double scale))
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  for (guint i = 0; i < n; i++)
    if (fits (room, id, scale[i]))
      return scale[i];
  return 0;
}

static gboolean
arrange (const FpArrangementRoom *room, FpArrangementId id, double scale, FpArrangement *out)
{
  out->id = id;
  if (scale > 0)
    {
      out->elevation = out->plan = scale;
      return elevations_fit (room, id, scale) && plans_fit (room, id, scale);
    }
  out->elevation = largest (room, id, elevations_fit);
  out->plan = largest (room, id, plans_fit);
  return out->elevation > 0 && out->plan > 0;
}

/* Of its smallest drawings. */
static double
smallest (const FpArrangement *self)
{
  return MAX (self->elevation, self->plan);
}

gboolean
fp_arrangement_is_better (const FpArrangement *a, const FpArrangement *b)
{
  const double p = smallest (a), q = smallest (b);
  const guint n = fp_arrangement_pages (a->id), m = fp_arrangement_pages (b->id);

  if (p != q || n != m)
    return p < q || (p == q && n < m);
  return MIN (a->elevation, a->plan) < MIN (b->elevation, b->plan);
}

/* The largest of those that take so many pages, of equals the first. */
static gboolean
find_best (const FpArrangementRoom *room, guint pages, double scale, FpArrangement *out)
{
  gboolean found = FALSE;

  for (FpArrangementId id = 0; id < FP_N_ARRANGEMENTS; id++)
    {
      FpArrangement one;
      if (fp_arrangement_pages (id) != pages || !arrange (room, id, scale, &one) || (found && !fp_arrangement_is_better (&one, out)))
        continue;
      *out = one;
      found = TRUE;
    }
  return found;
}

gboolean
fp_arrangement_find (const FpArrangementRoom *room, double scale, FpArrangement *out)
{
  FpArrangement two;

  if (!find_best (room, 1, scale, out))
    return find_best (room, 2, scale, out);
  if (smallest (out) > READ_WELL && find_best (room, 2, scale, &two) && smallest (&two) < smallest (out))
    *out = two;
  return TRUE;
}
