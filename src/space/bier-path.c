/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bier-path.h"

#include <math.h>

#define APPROACH 1100.0 /* mm, half a bier: before and behind where it is tight, finer steps are taken too */

static const FpBierPose *
pose_at (const FpBierPath *self, guint i)
{
  return &g_array_index (self->poses, FpBierPose, i);
}

static double
far_between (const FpBierPose *a, const FpBierPose *b)
{
  return hypot (b->x - a->x, b->y - a->y);
}

/* --- how wide ------------------------------------------------------------------------------ */

/* From one knot to the next, as it goes straight and turns evenly. */
static FpBierTightest
look_between (const FpBierPath *self, const FpBierPose *a, const FpBierPose *b)
{
  const double turn = remainder (b->turn - a->turn, G_PI), arm = hypot (self->length, 2 * FP_WAY_LEAST) / 2;
  const guint n = (guint) MAX (1, ceil ((far_between (a, b) + arm * fabs (turn)) / FP_BIER_SAMPLE));
  FpBierTightest out = { self->most, *a };

  for (guint i = 0; i <= n; i++)
    {
      const double t = (double) i / n;
      const FpBierPose pose = { a->x + t * (b->x - a->x), a->y + t * (b->y - a->y), a->turn + t * turn };
      const double width = fp_bier_room_width (self->room, &pose);

      if (width < out.width)
        out = (FpBierTightest) { width, pose };
    }
  return out;
}

static FpBierPath *
path_of (FpBierRoom *room, double length, double most, GArray *poses)
{
  FpBierPath *self = g_new (FpBierPath, 1);

  *self = (FpBierPath) { room, length, most, poses, g_array_new (FALSE, FALSE, sizeof (FpBierTightest)) };
  return self;
}

FpBierPath *
fp_bier_path_new (FpBierRoom *room, double length, double most, GArray *poses)
{
  FpBierPath *self = path_of (room, length, most, poses);

  for (guint i = 1; i < poses->len; i++)
    {
      const FpBierTightest leg = look_between (self, pose_at (self, i - 1), pose_at (self, i));
      g_array_append_val (self->legs, leg);
    }
  return self;
}

void
fp_bier_path_free (FpBierPath *self)
{
  g_array_unref (self->poses);
  g_array_unref (self->legs);
  g_free (self);
}

static FpBierTightest
tightest_between (const FpBierPath *self, guint first, guint last)
{
  FpBierTightest out = { self->most, *pose_at (self, first) };

  for (guint i = first; i < last; i++)
    if (g_array_index (self->legs, FpBierTightest, i).width < out.width)
      out = g_array_index (self->legs, FpBierTightest, i);
  return out;
}

FpBierTightest
fp_bier_path_tightest (const FpBierPath *self)
{
  return tightest_between (self, 0, self->legs->len);
}

/* --- its tight parts ------------------------------------------------------------------------- */

typedef struct { guint first, last; } Stretch; /* poses */

static double
far_on (const FpBierPath *self, guint leg)
{
  return far_between (pose_at (self, leg), pose_at (self, leg + 1));
}

/* The next from that pose on with legs less wide than that, and some way before and behind; tight legs so near to each other
 * that those ways would meet are in one. */
static gboolean
next_tight (const FpBierPath *self, guint from, double width, Stretch *out)
{
  const guint n = self->legs->len;
  guint first = from, last;
  double gone = 0;

  while (first < n && g_array_index (self->legs, FpBierTightest, first).width >= width)
    first++;
  if (first == n)
    return FALSE;
  last = first + 1;
  for (guint i = last; i < n && gone < 2 * APPROACH; i++)
    {
      const gboolean is_tight = g_array_index (self->legs, FpBierTightest, i).width < width;
      gone = is_tight ? 0 : gone + far_on (self, i);
      last = is_tight ? i + 1 : last;
    }
  for (gone = 0; first > from && gone < APPROACH; first--)
    gone += far_on (self, first - 1);
  for (gone = 0; last < n && gone < APPROACH; last++)
    gone += far_on (self, last);
  *out = (Stretch) { first, last };
  return TRUE;
}

/* --- in finer steps -------------------------------------------------------------------------- */

static FpBierEnd
end_at (const FpBierPose *pose, double reach)
{
  return (FpBierEnd) { { pose->x, pose->y }, reach, (pose->turn - G_PI / 2) * 180 / G_PI };
}

/* Of that part, so near to each other that what is looked at about them hangs together. */
static GArray *
poses_along (const FpBierPath *self, const Stretch *part, double step, double turn)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBierPose));

  for (guint k = part->first; k < part->last; k++)
    {
      const FpBierPose *a = pose_at (self, k), *b = pose_at (self, k + 1);
      const double turned = remainder (b->turn - a->turn, G_PI);
      const guint n = (guint) MAX (1, ceil (MAX (far_between (a, b) / step, fabs (turned) / turn)));

      for (guint i = 0; i < n; i++)
        {
          const double t = (double) i / n;
          const FpBierPose pose = { a->x + t * (b->x - a->x), a->y + t * (b->y - a->y), a->turn + t * turned };
          g_array_append_val (out, pose);
        }
    }
  g_array_append_vals (out, pose_at (self, part->last), 1);
  return out;
}

/* That part once more, from its first pose to its last; NULL: nothing was found. */
static FpBierPath *
look_finer (const FpBierPath *self, const FpBierAsk *coarse, const Stretch *part)
{
  const FpBierEnd from = end_at (pose_at (self, part->first), 0), to = end_at (pose_at (self, part->last), coarse->step);
  g_autoptr (GArray) about = poses_along (self, part, coarse->step, G_PI / coarse->turns), finer = NULL;
  FpBierAsk ask = *coarse;

  ask.from = &from;
  ask.to = &to;
  ask.about = about;
  ask.near = 2 * coarse->step;
  ask.near_turn = 2 * G_PI / coarse->turns;
  ask.step = coarse->step / 2;
  ask.turns = coarse->turns * 2;
  finer = fp_bier_search (&ask);
  if (finer->len == 0)
    return NULL;
  if (part->first > 0) /* the way begins where it may */
    g_array_prepend_vals (finer, pose_at (self, part->first), 1);
  g_array_append_vals (finer, pose_at (self, part->last), 1);
  return fp_bier_path_new (self->room, self->length, self->most, g_steal_pointer (&finer));
}

/* From one pose to the other; @to ends with the first of them, or is empty. */
static void
go_along (FpBierPath *to, const FpBierPath *of, guint first, guint last)
{
  const guint skip = to->poses->len > 0 ? 1 : 0;

  g_array_append_vals (to->poses, pose_at (of, first) + skip, last - first + 1 - skip);
  if (last > first)
    g_array_append_vals (to->legs, &g_array_index (of->legs, FpBierTightest, first), last - first);
}

void
fp_bier_path_refine (FpBierPath *self, const FpBierAsk *coarse, double enough)
{
  const double width = MIN (enough, fp_bier_path_tightest (self).width + coarse->step);
  g_autoptr (FpBierPath) finer = path_of (self->room, self->length, self->most, g_array_new (FALSE, FALSE, sizeof (FpBierPose)));
  guint at = 0;
  Stretch part;

  while (next_tight (self, at, width, &part))
    {
      g_autoptr (FpBierPath) other = look_finer (self, coarse, &part);

      if (part.first > at)
        go_along (finer, self, at, part.first);
      if (other != NULL && fp_bier_path_tightest (other).width > tightest_between (self, part.first, part.last).width)
        go_along (finer, other, 0, other->legs->len);
      else
        go_along (finer, self, part.first, part.last);
      at = part.last;
    }
  if (at < self->legs->len || finer->poses->len == 0)
    go_along (finer, self, at, self->legs->len);
  {
    const FpBierPath was = *self;
    *self = *finer;
    *finer = was;
  }
}
