/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-narrow.c - between what does not settle it and what does: which value just does */
#include "remedy-private.h"

#include <math.h>

#define HALVINGS 24
#define STEEPER  2.0
#define DUST     1e-6 /* printed unit */

/* --- what just settles it --------------------------------------------------- */

/* Most of what is measured goes along a straight line: where that meets the limit, rounded to the side that settles it. */
static double
by_line (FpRemedyStage *stage, const FpDial *dial, double bad, double good)
{
  const double at_bad = fp_dial_excess (stage, dial, bad), at_good = fp_dial_excess (stage, dial, good), way = good > bad ? 1.0 : -1.0;
  const double steps = fabs (good - bad) / dial->least * (at_bad / (at_bad - at_good));

  if (!isfinite (steps))
    return NAN;
  return bad + way * MAX (1.0, ceil (steps - DUST)) * dial->least;
}

static double
by_half (const FpDial *dial, double bad, double good)
{
  return bad + round ((good - bad) / 2.0 / dial->least) * dial->least;
}

/* Between what does not settle it and what does, down to the resolution; the end that does. */
double
fp_dial_narrow (FpRemedyStage *stage, const FpDial *dial, double bad, double good)
{
  for (guint i = 0; fabs (good - bad) > dial->least * 1.001; i++)
    {
      const double line = i % 3 == 0 ? by_line (stage, dial, bad, good) : NAN;
      /* After the line has met it, what lies just before it is asked; and in between halves, for what is not straight. */
      double middle = i % 3 == 1 ? good - (good > bad ? 1.0 : -1.0) * dial->least : isnan (line) ? by_half (dial, bad, good) : line;

      if (middle == good)
        middle = by_half (dial, bad, good);
      if (middle == bad || middle == good)
        break;
      if (fp_dial_settles (stage, dial, middle))
        good = middle;
      else
        bad = middle;
    }
  return good;
}

/* A figure that a person would write. The narrowed one may lie a little beyond the one that just settles it, so the
 * nearest on either side is tried: the one nearer to how things stand first. */
double
fp_dial_even (FpRemedyStage *stage, const FpDial *dial, double value, int way)
{
  const double grain = stage->all->grain, origin = dial->param != NULL ? 0.0 : dial->start;
  double before = origin + (way > 0 ? floor ((value - origin) / grain) : ceil ((value - origin) / grain)) * grain;

  for (int i = fp_stage_is_dear (stage) && before != value ? 1 : 0; fp_dial_is_length (dial) && i < 2; i++)
    {
      double even_value = before + i * way * grain;

      if (way * (even_value - dial->start) > 0.0 && even_value >= dial->min && even_value <= dial->max
          && fp_dial_settles (stage, dial, even_value))
        return even_value;
    }
  return value;
}

/* A limit of two sides, or one figure, is easily stepped over: the excess falls and rises again between @from and
 * @to.  Where it is least, by the golden section; NAN where even that does not settle it. */
double
fp_dial_least (FpRemedyStage *stage, const FpDial *dial, double from, double to)
{
  const double golden = (sqrt (5.0) - 1.0) / 2.0;

  for (guint i = 0; i < 2 * HALVINGS && fabs (to - from) > 3.0 * dial->least; i++)
    {
      const double a = fp_dial_on_grid (dial, to - golden * (to - from)), b = fp_dial_on_grid (dial, from + golden * (to - from));
      const double at_a = fp_dial_excess (stage, dial, a), at_b = fp_dial_excess (stage, dial, b);

      if (at_a <= 0.0)
        return a;
      if (at_b <= 0.0)
        return b;
      *(at_a < at_b ? &to : &from) = at_a < at_b ? b : a;
    }
  for (double v = MIN (from, to); v <= MAX (from, to); v += dial->least)
    if (fp_dial_settles (stage, dial, v))
      return v;
  return NAN;
}

/* Whether it may meet the limit between two that do not: it falls no more than so many times as fast as it did, or as it rises
 * after that. */
gboolean
fp_dial_may_dip (const FpRemedyStage *stage, FpProbe before, FpProbe last, FpProbe next)
{
  const double falls = (before.excess - last.excess) / fabs (last.at - before.at);
  const double rises = isfinite (next.excess) ? (next.excess - last.excess) / fabs (next.at - last.at) : INFINITY;
  const double reach = fabs (next.at - before.at);

  return fp_measure_goes_by_jumps (stage->measure) || last.excess <= STEEPER * MAX (falls, isfinite (rises) ? rises : 0.0) * reach;
}

/* The line through where it stands and @from leads to the first guess; then as far as it goes. */
static double
guess_beyond (FpRemedyStage *stage, const FpDial *dial, double from, int way)
{
  const double at_from = fp_dial_excess (stage, dial, from), gone = fabs (from - dial->start);
  const double more = gone > 0.0 ? at_from * gone / (stage->excess - at_from) : 0.0;
  const double guess = fp_dial_within (dial, fp_dial_on_grid (dial, from + way * ceil (more / dial->least - DUST) * dial->least));

  if (gone > 0.0 && !(stage->excess - at_from > DUST))
    return NAN;
  for (double step = dial->first; gone <= 0.0 && step < fabs ((way > 0 ? dial->max : dial->min) - from); step *= 2.0)
    if (fp_dial_settles (stage, dial, from + way * step))
      return from + way * step;
  return gone > 0.0 && guess != from && fp_dial_settles (stage, dial, guess) ? guess : way > 0 ? dial->max : dial->min;
}

double
fp_remedy_beyond (FpRemedyStage *stage, const FpDial *dial, double from, int way)
{
  const double good = guess_beyond (stage, dial, from, way);

  if (isnan (good) || good == from || fp_dial_excess (stage, dial, from) <= 0.0 || !fp_dial_settles (stage, dial, good))
    return NAN;
  return fp_dial_even (stage, dial, fp_dial_narrow (stage, dial, from, good), way);
}
