/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-communion.c - how long Communion takes, at the rail and in lines */
#include "capacities-private.h"

#include "footpace/communion.h"

#include <math.h>

#define SECONDS_TOLD 300 /* of longer times whole minutes are told: what is entered is no more exact */

static char *
minutes_words (double seconds, gboolean told)
{
  const char *how = told ? "about " : "at least ";
  const guint whole = (guint) ceil (seconds);

  return whole < SECONDS_TOLD ? g_strdup_printf ("%s%u min %02u s", told ? "" : how, whole / 60, whole % 60)
                              : g_strdup_printf ("%s%u min", how, told ? (whole + 30) / 60 : whole / 60);
}

static void
append_time (GString *out, const FpReckoning *reckoning, FpReckoningPart part, const char *what)
{
  g_autofree char *seconds = fp_number_format (fp_reckoning_get (reckoning, part));

  if (fp_reckoning_unsaid (reckoning, part))
    g_string_append_printf (out, "; %s was not said, and is left out", what);
  else
    g_string_append_printf (out, "; %s %s s", what, seconds);
}

static double
said (const FpReckoning *reckoning, FpReckoningPart part)
{
  return fp_reckoning_unsaid (reckoning, part) ? 0 : fp_reckoning_get (reckoning, part);
}

static guint
kneeling (const FpCapacityAsked *of)
{
  guint places = 0;

  for (guint i = 0; i < of->lines->len; i++)
    {
      const FpCapacityLine *line = &g_array_index (of->lines, FpCapacityLine, i);
      places += line->sort == FP_PLACES_KNEELING ? line->places : 0;
    }
  return MIN (places, FP_COMMUNION_PLACES_MAX);
}

static void
add_timed (FpCapacitySection *to, char *what, const FpCommunion *c, gboolean told, GString *with)
{
  const double seconds = fp_communion_seconds (c);
  FpCapacityRow *row = fp_capacity_add (to, what, minutes_words (seconds, told), NULL, g_string_free (with, FALSE));

  fp_capacity_data (row, "s", seconds, NAN);
}

static GString *
with_each (const FpReckoning *reckoning, guint people)
{
  g_autofree char *each = fp_number_format (reckoning->each);
  GString *with = g_string_new (NULL);

  g_string_printf (with, "%u people, %s s each", people, each);
  return with;
}

static void
add_at_rail (const FpCapacityAsked *of, FpCapacitySection *to, guint people, guint places)
{
  const FpReckoning *r = of->reckoning;
  const FpCommunion c = { people, r->ministers, places, r->each, said (r, FP_RECKONING_CHANGE), said (r, FP_RECKONING_BACK) };
  GString *with = with_each (r, people);

  append_time (with, r, FP_RECKONING_CHANGE, "a change");
  append_time (with, r, FP_RECKONING_BACK, "the way back along the rail");
  add_timed (to, g_strdup_printf ("At the rail, %u places, %u minister%s", places, r->ministers, r->ministers == 1 ? "" : "s"), &c,
             !fp_reckoning_unsaid (r, FP_RECKONING_CHANGE) && !fp_reckoning_unsaid (r, FP_RECKONING_BACK), with);
}

static void
add_in_lines (const FpCapacityAsked *of, FpCapacitySection *to, guint people)
{
  const FpReckoning *r = of->reckoning;
  const guint lines = r->lines > 0 ? r->lines : r->ministers;
  const FpCommunion c = { people, lines, 0, r->each, said (r, FP_RECKONING_STEP), 0 };
  GString *with = with_each (r, people);

  append_time (with, r, FP_RECKONING_STEP, "a step to the next");
  add_timed (to, g_strdup_printf ("In %u line%s, a minister at each", lines, lines == 1 ? "" : "s"), &c,
             !fp_reckoning_unsaid (r, FP_RECKONING_STEP), with);
}

void
fp_capacity_fill_communion (const FpCapacityAsked *of, FpCapacitySection *to)
{
  const guint seats = fp_people_seats (of->people), people = of->reckoning->people > 0 ? of->reckoning->people
                                                                                      : CLAMP (seats, 1, FP_COMMUNION_PEOPLE_MAX);
  const guint places = kneeling (of);

  if (fp_reckoning_unsaid (of->reckoning, FP_RECKONING_EACH))
    fp_capacity_add (to, g_strdup ("Not reckoned"), NULL, NULL,
                     g_strdup ("how many seconds one communicant takes was not said"));
  else
    {
      if (places > 0)
        add_at_rail (of, to, people, places);
      add_in_lines (of, to, people);
    }
  to->closing = g_strdup ("Reckoned person by person, from the first communicant to the last: at the rail each "
                          "minister goes along his part of it again and again, waits where a place is being taken, and "
                          "passes one that stays empty; in lines the people divide themselves evenly. No printed "
                          "figure was found for any of these times, and none is assumed: the parish measures its own. "
                          "How many seats there are is not how many come.");
}
