/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-walk.c - along one dial: bracketed by ever longer steps, and what settles it offered */
#include "remedy-private.h"

#include <math.h>

#define DEAF     4     /* probes without an answer after which a value is taken to have no say */
#define STILL    2     /* likewise of probes that change nothing at all, where what is measured does not go by jumps */
#define DIPS     0.3   /* of what is to be done is left, where more is sought between (design judgement) */
#define FEW      4     /* values that are all tried                              */
#define FARTHER  4     /* values beyond what settles it that are tried for making nothing worse */
#define DUST     1e-6  /* printed unit                                             */

/* --- offering it -------------------------------------------------------------- */

static gboolean
is_dearer (const FpRemedyStage *stage, const FpDial *dial, double value)
{
  return stage->spent + fp_dial_cost (dial, value) >= stage->all->clean.cost;
}

static gboolean
judge (FpRemedyStage *stage, const FpDial *dial, double value)
{
  const FpChange change = fp_dial_change (dial, value);

  return !is_dearer (stage, dial, value) && fp_remedy_judge (stage, &change, stage->spent + fp_dial_cost (dial, value));
}

/* What makes something worse where it just settles it may not a little farther on. */
static void
go_on (FpRemedyStage *stage, const FpDial *dial, double value, int way)
{
  double step = dial->first;

  for (guint i = 0; i < FARTHER && !fp_remedy_is_over (stage->all); i++, step *= 2.0)
    {
      value += way * step;
      if (value < dial->min || value > dial->max || is_dearer (stage, dial, value))
        return;
      /* What is dear is asked once more where all rules are held, if it comes to that. */
      if ((!fp_stage_is_dear (stage) && !fp_dial_settles (stage, dial, value)) || judge (stage, dial, value))
        return;
    }
}

static void
take (FpRemedyStage *stage, const FpDial *dial, double bad, double good, int way)
{
  const double exact = fp_dial_narrow (stage, dial, bad, good), evened = fp_dial_even (stage, dial, exact, way);

  if (judge (stage, dial, evened) || (exact != evened && judge (stage, dial, exact)) || is_dearer (stage, dial, evened))
    return;
  go_on (stage, dial, evened, way);
}

/* --- walking -------------------------------------------------------------------- */

/* What does a part of it, and what would do all of it beyond the end, as the last two that were measured have it. */
static void
give_up (FpRemedyStage *stage, const FpDial *dial, int way, FpProbe before, FpProbe last, FpProbe best)
{
  const double end = way > 0 ? dial->max : dial->min, gain = before.excess - last.excess;

  if (best.excess < stage->excess - DUST && stage->promises != NULL)
    {
      const FpRemedyPromise promise = { .change = fp_dial_change (dial, best.at), .cost = fp_dial_cost (dial, best.at),
                                        .gain = stage->excess - best.excess };
      g_array_append_val (stage->promises, promise);
    }
  if (last.at == end && gain > DUST && isfinite (last.excess) && stage->made.n_changes == 0)
    fp_remedy_note_limit (stage, dial, last.at + last.excess * (last.at - before.at) / gain, end);
}

/* To look and to walk is dear: of a whole way few values are asked, and between two of them only where one settles it or most
 * of it is done. */
static void
scan (FpRemedyStage *stage, const FpDial *dial, int way)
{
  const double end = way > 0 ? dial->max : dial->min, most = end - dial->start;
  const double little = fp_dial_is_length (dial) ? way * FP_DIAL_LITTLE : way * 4.0 * dial->first;
  const double asked[] = { fp_dial_within (dial, dial->start + little), fp_dial_on_grid (dial, dial->start + most / 4.0),
                           fp_dial_on_grid (dial, dial->start + most / 2.0), end };
  FpProbe before = { dial->start, stage->excess }, last = before, best = before, around[2] = { before, before };

  for (guint i = 0; i < G_N_ELEMENTS (asked) && !fp_remedy_is_over (stage->all) && !is_dearer (stage, dial, last.at); i++)
    {
      FpProbe next = { asked[i], 0.0 };

      if (way * (next.at - last.at) <= 0.0)
        continue;
      next.excess = fp_dial_excess (stage, dial, next.at);
      if (next.excess <= 0.0)
        {
          take (stage, dial, last.at, next.at, way);
          return;
        }
      if (i == 0 && next.excess > stage->excess && !fp_measure_goes_by_jumps (stage->measure))
        return;
      if (last.excess < stage->excess && last.at == best.at)
        around[1] = next;
      if (next.excess < best.excess)
        around[0] = last, best = around[1] = next;
      before = last;
      last = next;
    }
  if (best.excess < DIPS * stage->excess && around[1].at != best.at && fp_dial_may_dip (stage, around[0], best, around[1]))
    {
      const double good = fp_dial_least (stage, dial, around[0].at, around[1].at);

      if (!isnan (good))
        {
          take (stage, dial, way * (good - best.at) > 0.0 ? best.at : around[0].at, good, way);
          return;
        }
    }
  give_up (stage, dial, way, before, last, best);
}

/* Ever longer steps one way, until one settles it or there is no hope that way. */
static void
walk (FpRemedyStage *stage, const FpDial *dial, int way)
{
  const double end = way > 0 ? dial->max : dial->min;
  FpProbe before = { dial->start, stage->excess }, last = before, best = before;
  double step = dial->first;
  guint deaf = 0, still = 0;

  while (last.at != end && deaf < DEAF && still < STILL && !is_dearer (stage, dial, last.at) && !fp_remedy_is_over (stage->all))
    {
      FpProbe next = { way > 0 ? MIN (last.at + step, end) : MAX (last.at - step, end), 0.0 };
      double good;

      next.excess = fp_dial_excess (stage, dial, next.at);
      good = next.excess <= 0.0 ? next.at : NAN;
      if (isnan (good) && next.excess > last.excess && last.excess < stage->excess
          && fp_dial_may_dip (stage, before, last, next))
        good = fp_dial_least (stage, dial, before.at, next.at);
      if (!isnan (good))
        {
          take (stage, dial, way * (good - last.at) > 0.0 ? last.at : before.at, good, way);
          return;
        }
      deaf += next.excess >= stage->excess ? 1 : 0;
      still += next.excess == stage->excess && !fp_measure_goes_by_jumps (stage->measure) ? 1 : 0;
      before = last;
      last = next;
      if (next.excess < best.excess)
        best = next;
      step *= 2.0;
    }
  give_up (stage, dial, way, before, last, best);
}

static void
choose (FpRemedyStage *stage, const FpDial *dial)
{
  for (double c = 0.0; c <= dial->max && !fp_remedy_is_over (stage->all); c += 1.0)
    if (c != dial->start && fp_dial_settles (stage, dial, c) && judge (stage, dial, c))
      return;
}

void
fp_remedy_turn (FpRemedyStage *stage, const FpDial *dial)
{
  if (dial->param != NULL && dial->param->type == FP_PARAM_CHOICE)
    {
      if (!is_dearer (stage, dial, dial->start))
        choose (stage, dial);
      return;
    }
  for (int way = 1; way >= -1; way -= 2)
    if (fp_stage_is_dear (stage) && fabs ((way > 0 ? dial->max : dial->min) - dial->start) > FEW * dial->least)
      scan (stage, dial, way);
    else
      walk (stage, dial, way);
}
