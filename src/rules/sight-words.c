/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-words.c - who sees something, in a sentence, and who sees least */
#include "measuring.h"
#include "printed-unit.h"

#include <string.h>

typedef struct { FpMoment moment; FpFocus focus; FpSightHow how; int thing; } Wanted;

static gboolean
sees_so (const FpMeasuring *of, guint i, gpointer data)
{
  const Wanted *wanted = data;

  return fp_measuring_in_church (of, i) && fp_sight_how (of->sight, i, wanted->moment, wanted->focus) == wanted->how
         && (wanted->thing < 0 || fp_sight_blocker (of->sight, i, wanted->moment, wanted->focus, NULL) == wanted->thing);
}

static guint
count (const FpMeasuring *of, Wanted *wanted)
{
  guint n, found = 0;

  fp_people_places (of->people, &n);
  for (guint i = 0; i < n; i++)
    found += sees_so (of, i, wanted) ? 1 : 0;
  return found;
}

/* "Pier 3", or "the celebrant" where it is the minister there who stands in the way of the first of them. */
static char *
thing_words (const FpMeasuring *of, Wanted *wanted)
{
  guint n;

  fp_people_places (of->people, &n);
  for (guint i = 0; i < n; i++)
    if (sees_so (of, i, wanted))
      {
        const FpSightLine line = {
          .stopped = TRUE, .thing = wanted->thing, .place_in_front = -1,
          .is_minister = fp_sight_blocker_is_minister (of->sight, i, wanted->moment, wanted->focus),
        };
        return line.is_minister ? fp_sight_line_words (of->sight, &line) : fp_measuring_name (of, wanted->thing);
      }
  return NULL;
}

/* The thing past which most of those look that look past things; -1. */
static int
most_in_the_way (const FpMeasuring *of, const Wanted *wanted)
{
  guint n_placed, n, most = 0;
  int found = -1;

  fp_scene_placed (of->scene, &n_placed);
  fp_people_places (of->people, &n);
  g_autofree guint *times = g_new0 (guint, n_placed + 1);
  for (guint i = 0; i < n; i++)
    if (sees_so (of, i, (gpointer) wanted))
      {
        const int thing = fp_sight_blocker (of->sight, i, wanted->moment, wanted->focus, NULL);
        if (thing >= 0 && ++times[thing] > most)
          {
            most = times[thing];
            found = thing;
          }
      }
  return found;
}

static void
add_past_things (const FpMeasuring *of, FpMoment moment, FpFocus focus, GString *out)
{
  Wanted wanted = { moment, focus, FP_SIGHT_PAST_THINGS, -1 };
  const guint all = count (of, &wanted);

  if (all == 0)
    return;
  wanted.thing = most_in_the_way (of, &wanted);
  const guint some = wanted.thing >= 0 ? count (of, &wanted) : 0;
  g_autofree char *where = fp_measuring_where (of, sees_so, &wanted);
  g_autofree char *name = some > 0 ? thing_words (of, &wanted) : NULL;
  g_string_append_printf (out, "; %u look%s past something", all, all == 1 ? "s" : "");
  if (some > 0 && name != NULL)
    g_string_append_printf (out, ", %s past %s (%s)", some == all ? "all" : "most", name, where ? where : "");
}

static void
add_others (const FpMeasuring *of, FpMoment moment, FpFocus focus, GString *out)
{
  Wanted between = { moment, focus, FP_SIGHT_BETWEEN_HEADS, -1 }, nothing = { moment, focus, FP_SIGHT_NOTHING, -1 };
  const guint some = count (of, &between), none = count (of, &nothing);

  if (some > 0)
    g_string_append_printf (out, "; %u look%s between heads", some, some == 1 ? "s" : "");
  add_past_things (of, moment, focus, out);
  if (none > 0)
    {
      g_autofree char *where = fp_measuring_where (of, sees_so, &nothing);
      g_string_append_printf (out, "; %u see%s nothing of it (%s)", none, none == 1 ? "s" : "", where ? where : "");
    }
}

/* Those that are there at that moment, and of them, those that see all. */
static void
count_children (const FpMeasuring *of, FpMoment moment, FpFocus focus, guint *all, guint *whole)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  *all = *whole = 0;
  for (guint i = 0; i < n; i++)
    if (place[i].who.child && fp_measuring_in_church (of, i) && fp_sight_share (of->sight, i, moment, focus) >= 0)
      {
        (*all)++;
        *whole += fp_sight_how (of->sight, i, moment, focus) == FP_SIGHT_WHOLE;
      }
}

static void
add_children (const FpMeasuring *of, FpMoment moment, FpFocus focus, GString *out)
{
  guint all, whole;

  count_children (of, moment, focus, &all, &whole);
  if (all > 0)
    g_string_append_printf (out, " (of %u child%s %u see%s all of it)", all, all == 1 ? "" : "ren", whole,
                            whole == 1 ? "s" : "");
}

char *
fp_sight_spread_sentence (const FpSightSpread *spread, FpMoment moment, FpFocus focus)
{
  const FpSightRange range = fp_sight_spread_range (spread, moment, focus);

  return g_strdup_printf ("With other people in these places, %u times over (seeds %u to %u): wholly seen from %u of %u places "
                          "at least, %u in the middle, %u at most; half or more of it from %u at least, %u in the middle, %u at "
                          "most.", range.seeds, range.first, range.last, range.whole.least, range.places, range.whole.middle,
                          range.whole.most, range.half.least, range.half.middle, range.half.most);
}

char *
fp_sight_sentence (const FpMeasuring *of, FpMoment moment, FpFocus focus)
{
  const FpSightSum sum = fp_sight_church (of->sight, moment, focus);
  Wanted whole = { moment, focus, FP_SIGHT_WHOLE, -1 };
  GString *out;

  if (!fp_sight_has (of->sight, focus))
    return g_strdup_printf ("There is no %s to see.", fp_focus_label (focus));
  if (sum.places == 0)
    return g_strdup ("There are no places for people.");
  out = g_string_new (NULL);
  g_string_append_printf (out, "%s, %s: from %u of %u places the %s is wholly seen, from %u half or more of it",
                          fp_moment_label (moment), fp_posture_label (fp_people_posture (of->people, moment)),
                          count (of, &whole), sum.places, fp_focus_label (focus), sum.half);
  add_children (of, moment, focus, out);
  add_others (of, moment, focus, out);
  g_string_append_c (out, '.');
  return g_string_free (out, FALSE);
}

/* --- from where nobody could see it ------------------------------------------------------ */

static char *
area_words (const FpMeasuring *of, const GArray *blind, gboolean gallery)
{
  static const FpMeasure AREA = { .type = FP_MEASURE_AREA };

  return fp_printed_value (&AREA, fp_blind_area (blind, gallery), fp_project_brief (fp_scene_project (of->scene))->units);
}

char *
fp_sight_blind_sentence (const FpMeasuring *of, FpMoment moment, FpFocus focus)
{
  const GArray *blind = fp_sight_blind (of->sight, moment, focus, NULL);

  if (blind == NULL || blind->len == 0)
    return NULL;
  g_autofree char *floor = area_words (of, blind, FALSE), *gallery = area_words (of, blind, TRUE);
  const gboolean on_floor = fp_blind_area (blind, FALSE) > 0, on_gallery = fp_blind_area (blind, TRUE) > 0;
  if (on_floor && on_gallery)
    return g_strdup_printf ("Building or furnishings hide all of it on %s of the people's floor, and on %s of the gallery.",
                            floor, gallery);
  if (on_floor || on_gallery)
    return g_strdup_printf ("Building or furnishings hide all of it on %s of the %s.", on_floor ? floor : gallery,
                            on_floor ? "people's floor" : "gallery");
  return g_strdup ("Nowhere where the people are do building or furnishings hide all of it.");
}

/* --- who sees least ------------------------------------------------------------------ */

typedef struct { guint place; double share; } Least;

static int
by_share (gconstpointer a, gconstpointer b)
{
  const Least *p = a, *q = b;

  if (p->share < q->share || p->share > q->share)
    return p->share < q->share ? -1 : 1;
  return p->place < q->place ? -1 : p->place > q->place;
}

GArray *
fp_sight_worst (const FpMeasuring *of, FpMoment moment, FpFocus focus, guint most)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Least));
  GArray *worst = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n;

  fp_people_places (of->people, &n);
  for (guint i = 0; i < n; i++)
    {
      const Least one = { i, fp_sight_share (of->sight, i, moment, focus) };
      if (fp_measuring_in_church (of, i) && fp_sight_how (of->sight, i, moment, focus) != FP_SIGHT_WHOLE && one.share >= 0)
        g_array_append_val (all, one);
    }
  g_array_sort (all, by_share);
  for (guint i = 0; i < MIN (all->len, most); i++)
    g_array_append_val (worst, g_array_index (all, Least, i).place);
  return worst;
}

/* "31 %, past the pier", "nothing, past the person in row 4, seat 2" */
char *
fp_sight_place_words (const FpMeasuring *of, guint place, FpMoment moment, FpFocus focus)
{
  const double share = fp_sight_share (of->sight, place, moment, focus);
  int in_front;
  const int thing = fp_sight_blocker (of->sight, place, moment, focus, &in_front);
  const FpSightLine line = {
    .stopped = thing >= -1, .thing = thing, .place_in_front = in_front,
    .is_minister = fp_sight_blocker_is_minister (of->sight, place, moment, focus),
  };
  g_autofree char *past = fp_sight_line_words (of->sight, &line);
  g_autofree char *seen = share > 0 ? fp_share_format (share, 0) : g_strdup ("nothing");

  if (share < 0)
    return g_strdup ("nobody is there then");
  return past == NULL ? g_steal_pointer (&seen) : g_strdup_printf ("%s, past %s", seen, past);
}
