/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-moments.c - who sees what in each alternative, moment by moment */
#include "comparison-private.h"

#define NOTHING "–"
#define SEEN "places, galleries apart, from which all of it is seen, or so nearly that nobody would say otherwise"

typedef struct { guint places, whole; } Seen;

static Seen
count (const FpMeasuring *of, FpMoment moment, FpFocus focus)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  Seen seen = { 0, 0 };

  for (guint i = 0; i < n; i++)
    {
      const FpSightHow how = fp_sight_how (of->sight, i, moment, focus);
      if (how == FP_SIGHT_NOBODY || place[i].gallery || place[i].at_rail)
        continue;
      seen.places++;
      seen.whole += how == FP_SIGHT_WHOLE ? 1 : 0;
    }
  return seen;
}

static const FpMeasuring *
measuring (const FpComparison *self, guint column)
{
  return fp_findings_measuring (self->findings[column]);
}

static gboolean
has (const FpComparison *self, guint column, FpFocus focus)
{
  const FpSight *sight = measuring (self, column)->sight;

  return sight != NULL && fp_sight_has (sight, focus);
}

static gboolean
any_has (const FpComparison *self, FpFocus focus)
{
  for (guint c = 0; c < self->columns; c++)
    if (has (self, c, focus))
      return TRUE;
  return FALSE;
}

/* --- a row ------------------------------------------------------------------------------ */

/* "Offertory, sitting" */
static void
add_heading (FpComparison *self, FpMoment moment)
{
  const guint row = fp_comparison_add_row (self, TRUE, "%s, %s", fp_moment_label (moment),
                                           fp_posture_label (fp_moment_posture (moment)));

  for (guint c = 0; c < self->columns; c++)
    fp_comparison_cell_of (self, row, c)->text = g_strdup ("");
}

/* Where all are alike, none is the best. */
static void
mark_best (FpComparison *self, guint row, const double *share)
{
  double most = -1, least = 2;

  for (guint c = 0; c < self->columns; c++)
    {
      most = MAX (most, share[c]);
      least = MIN (least, share[c]);
    }
  for (guint c = 0; c < self->columns; c++)
    fp_comparison_cell_of (self, row, c)->is_best = most > least && most > 0 && !(share[c] < most);
}

static void
add_focus (FpComparison *self, FpMoment moment, FpFocus focus)
{
  const guint row = fp_comparison_add_row (self, FALSE, "%s", fp_focus_label (focus));
  g_autofree double *share = g_new (double, MAX (self->columns, 1u));

  self->label[row][0] = g_ascii_toupper (self->label[row][0]);
  for (guint c = 0; c < self->columns; c++)
    {
      const Seen seen = has (self, c, focus) ? count (measuring (self, c), moment, focus) : (Seen) { 0, 0 };
      FpComparisonCell *cell = fp_comparison_cell_of (self, row, c);
      share[c] = seen.places > 0 ? (double) seen.whole / seen.places : -1;
      g_autofree char *percent = seen.places > 0 ? fp_share_format (share[c], 0) : NULL;
      cell->text = percent == NULL ? g_strdup (NOTHING)
                                   : g_strdup_printf ("%u of %u, %s", seen.whole, seen.places, percent);
    }
  mark_best (self, row, share);
}

/* --- all of it -------------------------------------------------------------------------- */

FpComparison *
fp_comparison_by_moment (const FpComparison *of)
{
  FpComparison *self = fp_comparison_begin (of->findings, of->columns);

  self->seen = SEEN;
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      gboolean begun = FALSE;
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          if (!fp_moment_shows ((FpMoment) moment, (FpFocus) focus) || !any_has (self, (FpFocus) focus))
            continue;
          if (!begun)
            add_heading (self, (FpMoment) moment);
          begun = TRUE;
          add_focus (self, (FpMoment) moment, (FpFocus) focus);
        }
    }
  return self;
}
