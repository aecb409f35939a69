/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt.c - how pieces are laid out on a bolt
 *
 * What is laid so far is known by its skyline: how far along the bolt is taken
 * at each x.  First pieces are put down one after the other in many orders
 * (bolt-orders.c).  When there are few, all ways are searched that could be
 * shorter (bolt-search.c); when there are more, all ways of the largest, and
 * the others go into the gaps (bolt-fill.c): what the largest take alone is the
 * least that all of them can.
 */
#include "bolt-private.h"

#include "footpace/error.h"

#include <math.h>
#include <stdarg.h>

#define STEPS 2000000 /* of the search of all ways */

/* --- what is asked ------------------------------------------------------------ */

static gboolean G_GNUC_PRINTF (2, 3)
refuse (GError **error, const char *format, ...)
{
  va_list args;
  g_autofree char *words = NULL;

  va_start (args, format);
  words = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, words);
  return FALSE;
}

static gboolean
is_measure (double v)
{
  return isfinite (v) && v >= 0.0 && v <= 1e6;
}

static gboolean
is_way (double across, double along, double width)
{
  return across > 0.0 && along > 0.0 && across <= width + FP_BOLT_HAIR;
}

static gboolean
check (const FpBoltPiece *piece, guint n, double width, GError **error)
{
  if (!is_measure (width) || width <= 0.0)
    return refuse (error, "The bolt has no width.");
  if (n > FP_BOLT_PIECES_MAX)
    return refuse (error, "%u pieces are more than can be fp_bolt_laid out; at most %u.", n, FP_BOLT_PIECES_MAX);
  for (guint i = 0; i < n; i++)
    {
      const FpBoltPiece *p = &piece[i];

      if (!is_measure (p->across) || !is_measure (p->along) || !is_measure (p->turned_across) || !is_measure (p->turned_along))
        return refuse (error, "Piece %u has a measure that is none.", i + 1);
      if (!is_way (p->across, p->along, width) && !is_way (p->turned_across, p->turned_along, width))
        return refuse (error, "Piece %u is wider than the bolt of %.0f mm; take a wider one, or join it.",
                          i + 1, width);
    }
  return TRUE;
}

/* --- the layout ------------------------------------------------------------------- */

static double
least_along (const FpBoltPiece *p, double width)
{
  const double straight = is_way (p->across, p->along, width) ? p->along : INFINITY;
  const double turned = is_way (p->turned_across, p->turned_along, width) ? p->turned_along : INFINITY;

  return MIN (straight, turned);
}

static double
bound_of (const FpBoltPiece *piece, guint n, double width)
{
  double area = 0.0, longest = 0.0;

  for (guint i = 0; i < n; i++)
    {
      area += fp_bolt_area_of (&piece[i]);
      longest = MAX (longest, least_along (&piece[i], width));
    }
  return MAX (area / width, longest);
}

FpBoltLayout *
fp_bolt_lay_out (const FpBoltPiece *piece, guint n, double width, GError **error)
{
  FpBoltLayout *self;
  FpBoltTask bolt;

  if (!check (piece, n, width, error))
    return NULL;
  self = g_new0 (FpBoltLayout, 1);
  self->place = g_new0 (FpBoltPlace, MAX (n, 1));
  self->bound = bound_of (piece, n, width);
  bolt = (FpBoltTask) { .piece = piece, .n = n, .width = width, .best = self->place, .length = n > 0 ? INFINITY : 0.0 };
  if (n > 0)
    fp_bolt_try_orders (&bolt);
  if (n > FP_BOLT_SEARCHED && bolt.length > self->bound + FP_BOLT_HAIR)
    self->bound = MAX (self->bound, fp_bolt_fill_gaps (&bolt));
  self->least = bolt.length <= self->bound + FP_BOLT_HAIR || (n <= FP_BOLT_SEARCHED && fp_bolt_search_all (&bolt, STEPS));
  self->length = bolt.length;
  return self;
}

void
fp_bolt_layout_free (FpBoltLayout *self)
{
  if (self != NULL)
    g_free (self->place);
  g_free (self);
}
