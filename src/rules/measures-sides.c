/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on which side, what is in the middle, and what there is one of. */
#include "measure-evidence.h"

#include <math.h>

/* How far a thing stands towards the Epistle side of the altar's middle (of the axis, where there is no altar). */
static double
towards_epistle (const FpMeasuring *of, const FpPlaced *thing)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  FpVec3 middle = fp_placed_middle (thing, 0);

  return altar ? fp_placed_local (altar, (FpPoint) { middle.x, middle.y }).x : middle.x;
}

/* That there is none of it is told only where there is an altar that lacks it. */
static void
take_count (const FpMeasuring *of, GArray *out, FpRole role)
{
  if (!fp_measuring_count (of, role, out) && of->levels.has_altar)
    fp_measured_add (out, 0);
}

void
fp_take_credences (const FpMeasuring *of, GArray *out)
{
  take_count (of, out, FP_ROLE_CREDENCE);
}

void
fp_take_tabernacles (const FpMeasuring *of, GArray *out)
{
  take_count (of, out, FP_ROLE_TABERNACLE);
}

void
fp_take_crucifixes (const FpMeasuring *of, GArray *out)
{
  take_count (of, out, FP_ROLE_CRUCIFIX);
}

void
fp_take_ambos (const FpMeasuring *of, GArray *out)
{
  take_count (of, out, FP_ROLE_AMBO);
}

void
fp_take_chairs (const FpMeasuring *of, GArray *out)
{
  take_count (of, out, FP_ROLE_CHAIR);
}

/* At least one of them on the Epistle side will do: there may be a second for another use. */
static void
take_side (const FpMeasuring *of, GArray *out, FpRole role)
{
  int first = fp_measuring_next (of, role, -1);
  gboolean epistle = FALSE;

  for (int i = first; i >= 0; i = fp_measuring_next (of, role, i))
    if (towards_epistle (of, fp_measuring_placed (of, i)) > 0)
      {
        epistle = TRUE;
        first = i;
      }
  if (first >= 0)
    fp_measured_add_at (out, epistle, first, fp_placed_middle (fp_measuring_placed (of, first), 0))->text
      = g_strdup (epistle ? "Epistle side" : "not on the Epistle side");
}

void
fp_take_credence_epistle (const FpMeasuring *of, GArray *out)
{
  take_side (of, out, FP_ROLE_CREDENCE);
}

void
fp_take_sedilia_epistle (const FpMeasuring *of, GArray *out)
{
  take_side (of, out, FP_ROLE_SEDILIA);
}

void
fp_take_bell_epistle (const FpMeasuring *of, GArray *out)
{
  take_side (of, out, FP_ROLE_HAND_BELL);
}

void
fp_take_sanctus_epistle (const FpMeasuring *of, GArray *out)
{
  take_side (of, out, FP_ROLE_SANCTUS_CANDLE);
}

/* Whether who sits in it looks towards the people, be it askance. */
void
fp_take_chair_faces (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_CHAIR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_CHAIR, i))
    {
      FpVec3 eye;
      double facing;

      if (!fp_people_minister_eye (of->people, FP_OFFICE_AT_CHAIR, &eye, &facing))
        continue;
      fp_measured_add_at (out, cos (facing * G_PI / 180) < 0.5, i, eye)->text
        = g_strdup (cos (facing * G_PI / 180) < 0.5 ? "it does" : "it looks towards the altar's end");
      return;
    }
}

/* The thing, and the middle of the altar that tells the sides. */
void
fp_show_side (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  fp_evidence_add_thing (out, of, one->owner);
  if (altar)
    fp_evidence_add_axis (out, altar, one->at);
}

/* Which way he looks: so far is enough to be seen, mm (design judgement). */
#define LOOK 2000.0

void
fp_show_chair_faces (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  FpVec3 eye;
  double facing;

  fp_evidence_add_thing (out, of, one->owner);
  if (fp_people_minister_eye (of->people, FP_OFFICE_AT_CHAIR, &eye, &facing))
    {
      const double turn = facing * G_PI / 180;
      fp_evidence_add_line (out, eye, (FpVec3) { eye.x - LOOK * sin (turn), eye.y + LOOK * cos (turn), eye.z });
    }
}

void
fp_show_credence_area (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *credence = fp_measuring_placed (of, one->owner);

  fp_evidence_add_box (out, credence, &credence->extent.bearing, credence->extent.top);
}

void
fp_take_credence_area (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_CREDENCE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_CREDENCE, i))
    {
      const FpPlaced *credence = fp_measuring_placed (of, i);

      fp_measured_add_at (out, fp_placed_param (credence, "length", NAN) * fp_placed_param (credence, "depth", NAN), i,
                          fp_placed_middle (credence, credence->extent.top));
    }
}

void
fp_take_ministers_seats (const FpMeasuring *of, GArray *out)
{
  double most = 0;
  int best = -1;

  for (int i = fp_measuring_next (of, FP_ROLE_SEDILIA, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_SEDILIA, i))
    {
      double seats = fp_placed_param (fp_measuring_placed (of, i), "seats", 0);

      if (best < 0 || seats > most)
        {
          most = seats;
          best = i;
        }
    }
  if (best >= 0)
    fp_measured_add_at (out, most, best, fp_placed_middle (fp_measuring_placed (of, best), 0));
  else if (of->levels.has_altar)
    fp_measured_add (out, 0);
}

void
fp_take_ambo_desk (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_AMBO, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_AMBO, i))
    {
      const FpPlaced *ambo = fp_measuring_placed (of, i);

      fp_measured_add_at (out, fp_placed_param (ambo, "height", NAN), i, fp_placed_middle (ambo, 0));
    }
}

/* --- about the middle of the altar --------------------------------------- */

static void
take_off_middle (const FpMeasuring *of, GArray *out, int index)
{
  const FpPlaced *thing = fp_measuring_placed (of, index);

  if (thing)
    {
      const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
      const FpVec3 at = fp_placed_middle (thing, thing->extent.height / 2);
      FpVec3 middle = { 0, at.y, at.z };

      if (altar)
        middle = fp_placed_point (altar, (FpVec3) { 0, fp_placed_local (altar, (FpPoint) { at.x, at.y }).y, at.z - altar->level });
      fp_measured_span (fp_measured_add_at (out, fabs (towards_epistle (of, thing)), index, at), at, middle);
    }
}

void
fp_take_crucifix_off_middle (const FpMeasuring *of, GArray *out)
{
  take_off_middle (of, out, fp_scene_role (of->scene, FP_ROLE_CRUCIFIX));
}

void
fp_take_tabernacle_off_middle (const FpMeasuring *of, GArray *out)
{
  int altar;

  fp_measuring_celebrated (of, &altar);
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0;
       i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    if (fp_measuring_stands_on (of, i, altar))
      take_off_middle (of, out, i);
}

void
fp_take_tabernacle_on_altar (const FpMeasuring *of, GArray *out)
{
  int altar;

  fp_measuring_celebrated (of, &altar);
  if (altar < 0)
    return;
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0;
       i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    {
      gboolean on = fp_measuring_stands_on (of, i, altar);

      fp_measured_add_at (out, on, i, fp_placed_middle (fp_measuring_placed (of, i), 0))->text
        = g_strdup (on ? "on the altar of celebration" : "apart from the altar of celebration");
    }
}

/* --- the crucifix against the candlesticks ------------------------------- */

/* Lowest or highest level of the pieces of a kind in a thing; NAN when it has none. */
static double
level_of_part (const FpMeasuring *of, const FpPlaced *thing, FpPart part, gboolean highest)
{
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  double level = NAN;

  for (guint i = thing->first_solid; i < thing->first_solid + thing->n_solids && i < n; i++)
    if (solid[i].part == part)
      {
        FpBox3 box = fp_solid_box (&solid[i]);
        double z = highest ? box.hi.z : box.lo.z;

        if (isnan (level) || (highest ? z > level : z < level))
          level = z;
      }
  return level;
}

/* Top of the highest candlestick that stands on the altar, candles not counted; NAN. */
static double
sticks_top (const FpMeasuring *of)
{
  int altar;
  double top = NAN;

  fp_measuring_celebrated (of, &altar);
  for (int i = fp_measuring_next (of, FP_ROLE_CANDLES, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_CANDLES, i))
    if (altar >= 0 && fp_measuring_stands_on (of, i, altar))
      {
        double z = level_of_part (of, fp_measuring_placed (of, i), FP_PART_STICK, TRUE);

        if (!isnan (z) && (isnan (top) || z > top))
          top = z;
      }
  return top;
}

static void
take_over_sticks (const FpMeasuring *of, GArray *out, double level, int crucifix)
{
  double top = sticks_top (of);
  FpMeasured *measured;
  FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;

  if (isnan (level) || isnan (top))
    return;
  measured = fp_measured_add_at (out, level - top, crucifix, fp_placed_middle (fp_measuring_placed (of, crucifix), 0));
  measured->at.z = level;
  fp_measured_span (measured, (FpVec3) { measured->at.x, measured->at.y, top }, measured->at);
  if (level < top)
    {
      g_autofree char *under = fp_length_format_unit (top - level, units);

      measured->text = g_strdup_printf ("%s below them", under);
    }
}

void
fp_take_corpus_over_sticks (const FpMeasuring *of, GArray *out)
{
  int i;
  const FpPlaced *crucifix = fp_measuring_role (of, FP_ROLE_CRUCIFIX, &i);

  if (crucifix)
    take_over_sticks (of, out, level_of_part (of, crucifix, FP_PART_CORPUS, FALSE), i);
}

void
fp_take_cross_over_sticks (const FpMeasuring *of, GArray *out)
{
  int i;
  const FpPlaced *crucifix = fp_measuring_role (of, FP_ROLE_CRUCIFIX, &i);

  if (crucifix)
    take_over_sticks (of, out, level_of_part (of, crucifix, FP_PART_CROSS, FALSE), i);
}
