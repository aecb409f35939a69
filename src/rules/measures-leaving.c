/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways out: how many, how wide and how far apart, against what the printed tables want of so many people (capacity.h). */
#include "measure-evidence.h"

#include "footpace/capacity.h"

#include <math.h>

typedef struct
{
  FpLeaving leaving;
  GArray   *ways;
  gboolean  sprinklers;
  FpUnits   units;
} Leaving;

/* FALSE where nobody has to leave, or no way out is drawn: nobody can leave a church without doors, and so they were not
 * surveyed. */
static gboolean
begin (const FpMeasuring *of, Leaving *l)
{
  const FpProject *project = fp_scene_project (of->scene);

  *l = (Leaving) { fp_leaving (of->people), NULL, fp_project_reckoning (project)->sprinklers,
                   fp_project_brief (project)->units };
  if (l->leaving.load == 0 || l->leaving.ways == 0)
    return FALSE;
  l->ways = fp_ways_out (of->scene);
  return TRUE;
}

static const FpWayOut *
widest (const Leaving *l)
{
  const FpWayOut *most = &g_array_index (l->ways, FpWayOut, 0);

  for (guint i = 1; i < l->ways->len; i++)
    if (g_array_index (l->ways, FpWayOut, i).clear > most->clear)
      most = &g_array_index (l->ways, FpWayOut, i);
  return most;
}

static FpMeasured *
add (const FpMeasuring *of, const Leaving *l, GArray *out, double lacking)
{
  const FpWayOut *way = widest (l);
  const double z = fp_placed_middle (fp_measuring_placed (of, (int) way->opening), 0).z;
  FpMeasured *measured
    = fp_measured_add_at (out, MAX (lacking, 0), (int) way->opening, (FpVec3) { way->at.x, way->at.y, z });

  measured->detail = g_strdup_printf ("%u way%s out", l->leaving.ways, l->leaving.ways == 1 ? "" : "s");
  return measured;
}

static void
add_length (const FpMeasuring *of, const Leaving *l, GArray *out, double found, double asked)
{
  g_autofree char *there = fp_length_format_unit (found, l->units), *wanted = fp_length_format_unit (asked, l->units);
  FpMeasured *measured = add (of, l, out, asked - found);

  measured->text = g_strdup_printf ("%s of %s for %u people", there, wanted, l->leaving.load);
}

static void
add_number (const FpMeasuring *of, const Leaving *l, GArray *out, guint found, guint asked)
{
  const guint lacking = asked > found ? asked - found : 0;

  add (of, l, out, lacking)->text = lacking > 0 ? g_strdup_printf ("%u lacking: %u of %u for %u people", lacking, found, asked, l->leaving.load)
                                                : g_strdup_printf ("%u of %u for %u people", found, asked, l->leaving.load);
}

static void
end (Leaving *l)
{
  g_array_unref (l->ways);
}

void
fp_take_way_out_clear (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) ways = fp_ways_out (of->scene);

  for (guint i = 0; i < ways->len; i++)
    {
      const FpWayOut *way = &g_array_index (ways, FpWayOut, i);
      const double z = fp_placed_middle (fp_measuring_placed (of, (int) way->opening), 0).z;
      FpMeasured *measured = fp_measured_add_at (out, way->clear, (int) way->opening, (FpVec3) { way->at.x, way->at.y, z });

      fp_measured_span (measured, (FpVec3) { way->jamb[0].x, way->jamb[0].y, z }, (FpVec3) { way->jamb[1].x, way->jamb[1].y, z });
    }
}

/* --- United States -------------------------------------------------------------------------- */

void
fp_take_ways_out_lacking_us (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  add_number (of, &l, out, l.leaving.ways, fp_us_ways_wanted (l.leaving.load));
  end (&l);
}

void
fp_take_ways_out_width_us (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  add_length (of, &l, out, l.leaving.clear, fp_us_width_wanted (l.leaving.load, l.sprinklers));
  end (&l);
}

/* Asked only where more than one is. */
void
fp_take_ways_out_loss_us (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  if (l.leaving.ways > 1 && fp_us_ways_wanted (l.leaving.load) > 1)
    add_length (of, &l, out, l.leaving.clear - l.leaving.widest, fp_us_width_wanted (l.leaving.load, l.sprinklers) / 2);
  end (&l);
}

void
fp_take_ways_out_apart_us (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  if (l.leaving.ways > 1 && fp_us_ways_wanted (l.leaving.load) > 1)
    add_length (of, &l, out, l.leaving.apart, fp_us_apart_wanted (l.leaving.diagonal, l.sprinklers));
  end (&l);
}

void
fp_take_ways_out_main_us (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  if (fp_us_main_wanted (l.leaving.load, l.sprinklers) > 0)
    add_length (of, &l, out, l.leaving.widest, fp_us_main_wanted (l.leaving.load, l.sprinklers));
  end (&l);
}

/* --- United Kingdom ------------------------------------------------------------------------- */

void
fp_take_ways_out_lacking_uk (const FpMeasuring *of, GArray *out)
{
  Leaving l;

  if (!begin (of, &l))
    return;
  add_number (of, &l, out, l.leaving.ways, fp_uk_ways_wanted (l.leaving.load));
  end (&l);
}

void
fp_take_ways_out_hold_uk (const FpMeasuring *of, GArray *out)
{
  Leaving l;
  guint hold;

  if (!begin (of, &l))
    return;
  hold = fp_uk_ways_hold (l.ways);
  add (of, &l, out, (double) l.leaving.load - hold)->text
    = g_strdup_printf ("%u of %u people%s", hold, l.leaving.load,
                       l.leaving.ways < fp_uk_ways_wanted (l.leaving.load) ? ", by fewer ways out than are asked" : "");
  end (&l);
}

/* --- what is drawn of it ----------------------------------------------------------------------- */

#define ASKED_IN 400.0 /* mm: what is asked for is drawn so far within the church from what there is; design judgement */

static double
level_of (const FpMeasuring *of, const FpWayOut *way)
{
  return fp_placed_middle (fp_measuring_placed (of, (int) way->opening), 0).z;
}

static void
show_way (const FpMeasuring *of, const FpWayOut *way, double times, FpEvidence *out)
{
  const double z = level_of (of, way);

  fp_evidence_add_length (out, (FpVec3) { way->jamb[0].x, way->jamb[0].y, z },
                          (FpVec3) { way->jamb[1].x, way->jamb[1].y, z }, times);
}

/* As wide as is asked for, before the widest way out. */
static void
show_asked (const FpMeasuring *of, const FpWayOut *way, double asked, FpEvidence *out)
{
  const double z = level_of (of, way), dx = (way->jamb[1].x - way->jamb[0].x) / way->clear;
  const double dy = (way->jamb[1].y - way->jamb[0].y) / way->clear;
  const FpPoint at = { way->at.x + dy * ASKED_IN, way->at.y - dx * ASKED_IN };

  fp_evidence_add_length (out, (FpVec3) { at.x - dx * asked / 2, at.y - dy * asked / 2, z },
                          (FpVec3) { at.x + dx * asked / 2, at.y + dy * asked / 2, z }, 1);
}

typedef enum { ALL, ALL_BUT_WIDEST, WIDEST } Which;

/* What is lacking is what is asked for less what there is; where nothing is, what there is stands beside it. */
static void
show_widths (const FpMeasuring *of, const FpMeasured *one, Which which, double share, FpEvidence *out)
{
  Leaving l;
  const FpWayOut *most;

  if (!begin (of, &l))
    return;
  most = widest (&l);
  for (guint i = 0; i < l.ways->len; i++)
    {
      const FpWayOut *way = &g_array_index (l.ways, FpWayOut, i);

      if (which == ALL || (way == most) == (which == WIDEST))
        show_way (of, way, one->value > 0 ? -1 : 0, out);
    }
  if (one->value > 0)
    show_asked (of, most, fp_us_width_wanted (l.leaving.load, l.sprinklers) * share, out);
  end (&l);
}

void
fp_show_ways_out (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  Leaving l;

  (void) one;
  if (!begin (of, &l))
    return;
  for (guint i = 0; i < l.ways->len; i++)
    show_way (of, &g_array_index (l.ways, FpWayOut, i), 0, out);
  end (&l);
}

void
fp_show_ways_out_width_us (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show_widths (of, one, ALL, 1, out);
}

void
fp_show_ways_out_loss_us (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show_widths (of, one, ALL_BUT_WIDEST, 0.5, out);
}

void
fp_show_ways_out_main_us (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show_widths (of, one, WIDEST, 0.5, out);
}

static void
farthest (const GArray *ways, const FpWayOut *two[2])
{
  double most = -1;

  for (guint i = 0; i < ways->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const FpWayOut *a = &g_array_index (ways, FpWayOut, i), *b = &g_array_index (ways, FpWayOut, k);
        const double apart = hypot (a->at.x - b->at.x, a->at.y - b->at.y);

        if (apart <= most)
          continue;
        most = apart;
        two[0] = a;
        two[1] = b;
      }
}

/* How far they lie apart, and from the first of them on how far they should. */
void
fp_show_ways_out_apart_us (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpWayOut *two[2] = { NULL, NULL };
  Leaving l;

  if (!begin (of, &l))
    return;
  farthest (l.ways, two);
  if (two[0] != NULL && l.leaving.apart > 0)
    {
      const double longer = fp_us_apart_wanted (l.leaving.diagonal, l.sprinklers) / l.leaving.apart, z = level_of (of, two[0]);
      const FpPoint a = two[0]->at, b = two[1]->at, to = { a.x + (b.x - a.x) * longer, a.y + (b.y - a.y) * longer };

      fp_evidence_add_length (out, (FpVec3) { a.x, a.y, z }, (FpVec3) { b.x, b.y, z }, one->value > 0 ? -1 : 0);
      if (one->value > 0)
        fp_evidence_add_length (out, (FpVec3) { a.x, a.y, z }, (FpVec3) { to.x, to.y, z }, 1);
    }
  end (&l);
}
