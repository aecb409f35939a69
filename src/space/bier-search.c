/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bier-search.h"

#include <math.h>
#include <string.h>

#define KNOTS_MOST 400000 /* where more are needed, no way is told          */
#define GRAIN      4.0    /* mm: widths that differ by less are taken for equal */
#define BLOCK      8      /* turns that are kept together                    */

typedef struct { int ix, iy, turn; } Where;

typedef struct
{
  float  width;     /* of the widest that stands there      */
  float  aside;     /* to its left                          */
  float  tightest;  /* on the way by which it was reached   */
  gint8  before[3]; /* steps back on that way               */
  guint8 looked, reached, done;
} Knot;

typedef struct
{
  gint64 key;
  guint  allowed; /* bits, of each turn one */
  Knot   knot[BLOCK];
} Block;

typedef struct { int tightest; double far; Where at; } Waiting;

typedef struct
{
  const FpBierAsk *ask;
  double           turn;    /* one step of it, radians                                    */
  GHashTable      *blocks;  /* a set of Block, by their keys                              */
  Block           *last;    /* (nullable) whose turns were asked for last                 */
  GArray          *waiting; /* a heap                                                     */
  guint            looked;
} Search;

double
fp_bier_turn_between (double a, double b)
{
  return fabs (remainder (a - b, G_PI));
}

/* --- knots ---------------------------------------------------------------------------- */

static gint64
key_of (const Where *at)
{
  return (gint64) (((guint64) (at->ix & 0xffffff) << 40) | ((guint64) (at->iy & 0xffffff) << 16) | (guint64) (at->turn / BLOCK));
}

static FpBierPose
pose_of (const Search *self, const Where *at, double aside)
{
  const FpBierEnd *from = self->ask->from;
  const double angle = at->turn * self->turn + from->turn * G_PI / 180 + G_PI / 2;

  return (FpBierPose) { from->at.x + at->ix * self->ask->step - aside * sin (angle),
                        from->at.y + at->iy * self->ask->step + aside * cos (angle), angle };
}

/* Keys differ in few of their bits: those are spread. */
static guint
hash_key (gconstpointer key)
{
  return (guint) ((*(const guint64 *) key * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15)) >> 32);
}

/* NULL: nobody made it. */
static Block *
block_at (Search *self, const Where *at)
{
  const gint64 key = key_of (at);
  Block *block = self->last != NULL && self->last->key == key ? self->last : g_hash_table_lookup (self->blocks, &key);

  if (block != NULL)
    self->last = block;
  return block;
}

static Block *
make_block (Search *self, const Where *at, guint allowed)
{
  Block *block = block_at (self, at);

  if (block == NULL)
    {
      block = g_new0 (Block, 1);
      block->key = key_of (at);
      g_hash_table_add (self->blocks, block);
      self->last = block;
    }
  block->allowed |= allowed;
  return block;
}

/* NULL: so far aside nobody looks. */
static Knot *
knot_at (Search *self, const Where *at)
{
  Block *block = self->ask->about != NULL ? block_at (self, at) : make_block (self, at, ~0u);

  return block != NULL && (block->allowed >> (at->turn % BLOCK) & 1) != 0 ? &block->knot[at->turn % BLOCK] : NULL;
}

static void
look (Search *self, const Where *at, Knot *knot)
{
  const FpBierPose pose = pose_of (self, at, 0);
  FpBierSides sides;
  double aside;

  fp_bier_room_sides (self->ask->room, &pose, &sides);
  self->looked++;
  knot->looked = TRUE;
  aside = CLAMP ((sides.left - sides.right) / 2, -self->ask->step / 2, self->ask->step / 2);
  knot->aside = (float) aside;
  knot->width = (float) (sides.left > 0 && sides.right > 0 ? MIN (2 * MIN (sides.left - aside, sides.right + aside), self->ask->most) : 0);
}

/* --- who is next ------------------------------------------------------------------------ */

static gboolean
comes_before (const Waiting *a, const Waiting *b)
{
  return a->tightest != b->tightest ? a->tightest > b->tightest : a->far < b->far;
}

static Waiting *
waiting (const Search *self, guint i)
{
  return &g_array_index (self->waiting, Waiting, i);
}

static void
swap (const Search *self, guint i, guint k)
{
  const Waiting one = *waiting (self, i);

  *waiting (self, i) = *waiting (self, k);
  *waiting (self, k) = one;
}

static void
push (Search *self, const Where *at, double tightest)
{
  const FpBierPose pose = pose_of (self, at, 0);
  const Waiting one = { (int) floor (tightest / GRAIN), hypot (pose.x - self->ask->to->at.x, pose.y - self->ask->to->at.y), *at };
  guint i = self->waiting->len;

  g_array_append_val (self->waiting, one);
  for (; i > 0 && comes_before (waiting (self, i), waiting (self, (i - 1) / 2)); i = (i - 1) / 2)
    swap (self, i, (i - 1) / 2);
}

static Waiting
pop (Search *self)
{
  const Waiting first = *waiting (self, 0);
  guint i = 0;

  swap (self, 0, self->waiting->len - 1);
  g_array_set_size (self->waiting, self->waiting->len - 1);
  for (;;)
    {
      guint best = i;
      for (guint k = 2 * i + 1; k <= 2 * i + 2; k++)
        if (k < self->waiting->len && comes_before (waiting (self, k), waiting (self, best)))
          best = k;
      if (best == i)
        return first;
      swap (self, i, best);
      i = best;
    }
}

/* --- from knot to knot ---------------------------------------------------------------------- */

static void
reach (Search *self, const Where *at, double tightest, int dx, int dy, int dt)
{
  Knot *knot = knot_at (self, at);

  if (knot == NULL || knot->done)
    return;
  if (!knot->looked)
    look (self, at, knot);
  tightest = MIN (tightest, (double) knot->width);
  if (tightest < FP_WAY_LEAST || (knot->reached && tightest <= (double) knot->tightest))
    return;
  knot->reached = TRUE;
  knot->tightest = (float) tightest;
  knot->before[0] = (gint8) -dx;
  knot->before[1] = (gint8) -dy;
  knot->before[2] = (gint8) -dt;
  push (self, at, tightest);
}

static int
turned (const Search *self, int turn)
{
  const int n = (int) self->ask->turns;

  return (turn % n + n) % n;
}

static void
go_on (Search *self, const Where *at, double tightest)
{
  for (int dy = -1; dy <= 1; dy++)
    for (int dx = -1; dx <= 1; dx++)
      for (int dt = -1; dt <= 1; dt++)
        {
          const Where next = { at->ix + dx, at->iy + dy, turned (self, at->turn + dt) };
          if (dx != 0 || dy != 0 || dt != 0)
            reach (self, &next, tightest, dx, dy, dt);
        }
}

/* --- ends ---------------------------------------------------------------------------------- */

static void
begin (Search *self)
{
  const int r = (int) floor (self->ask->from->reach / self->ask->step);

  for (int iy = -r; iy <= r; iy++)
    for (int ix = -r; ix <= r; ix++)
      {
        const Where at = { ix, iy, 0 };
        reach (self, &at, self->ask->most, 0, 0, 0);
      }
}

static gboolean
is_at_end (const Search *self, const Where *at)
{
  const FpBierEnd *end = self->ask->to;
  const FpBierPose pose = pose_of (self, at, 0);

  return hypot (pose.x - end->at.x, pose.y - end->at.y) <= end->reach
         && (isnan (end->turn) || fp_bier_turn_between (pose.turn, end->turn * G_PI / 180 + G_PI / 2) <= self->turn * 0.75);
}

static GArray *
way_back (Search *self, Where at)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBierPose));

  for (;;)
    {
      const Knot *knot = knot_at (self, &at);
      const FpBierPose pose = pose_of (self, &at, (double) knot->aside);

      g_array_prepend_val (out, pose);
      if (knot->before[0] == 0 && knot->before[1] == 0 && knot->before[2] == 0)
        return out;
      at = (Where) { at.ix + knot->before[0], at.iy + knot->before[1], turned (self, at.turn + knot->before[2]) };
    }
}

/* --- near to a way that is known -------------------------------------------------------------- */

/* All turns from the first on, so many of them, at the places about that one. */
static void
allow (Search *self, const Where *first, int n_turns, int r)
{
  for (int t = 0; t < n_turns;)
    {
      const int turn = turned (self, first->turn + t);
      const int n = MIN (MIN (BLOCK - turn % BLOCK, n_turns - t), (int) self->ask->turns - turn);
      const guint bits = ((1u << n) - 1) << (turn % BLOCK);

      for (int dy = -r; dy <= r; dy++)
        for (int dx = -r; dx <= r; dx++)
          make_block (self, &(Where) { first->ix + dx, first->iy + dy, turn }, bits);
      t += n;
    }
}

static void
allow_about (Search *self)
{
  const FpBierAsk *ask = self->ask;
  const int r = (int) ceil (ask->near / ask->step), rt = (int) ceil (ask->near_turn / self->turn);

  for (guint i = 0; i < ask->about->len; i++)
    {
      const FpBierPose *pose = &g_array_index (ask->about, FpBierPose, i);
      const Where at = { (int) lround ((pose->x - ask->from->at.x) / ask->step), (int) lround ((pose->y - ask->from->at.y) / ask->step),
                         (int) lround ((pose->turn - ask->from->turn * G_PI / 180 - G_PI / 2) / self->turn) - rt };

      allow (self, &at, 2 * rt + 1, r);
    }
}

/* --- together ---------------------------------------------------------------------------------- */

GArray *
fp_bier_search (const FpBierAsk *ask)
{
  Search self = { .ask = ask, .turn = G_PI / ask->turns };
  GArray *found = NULL;

  self.blocks = g_hash_table_new_full (hash_key, g_int64_equal, g_free, NULL);
  self.waiting = g_array_new (FALSE, FALSE, sizeof (Waiting));
  if (ask->about != NULL)
    allow_about (&self);
  begin (&self);
  while (found == NULL && self.waiting->len > 0 && self.looked < KNOTS_MOST)
    {
      const Waiting one = pop (&self);
      Knot *knot = knot_at (&self, &one.at);

      if (knot->done)
        continue;
      knot->done = TRUE;
      if (is_at_end (&self, &one.at))
        found = way_back (&self, one.at);
      else
        go_on (&self, &one.at, (double) knot->tightest);
    }
  g_hash_table_unref (self.blocks);
  g_array_unref (self.waiting);
  return found != NULL ? found : g_array_new (FALSE, FALSE, sizeof (FpBierPose));
}
