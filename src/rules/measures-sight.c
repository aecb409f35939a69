/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the people see, as sight.h computes it: shares of places and of what is looked at. */
#include "measure-evidence.h"

#include <math.h>

#define HALF 0.5

typedef struct { FpMoment moment; FpFocus focus; } Look;

/* Each is looked at when it matters (moment.h). */
static Look
look_at (FpFocus focus)
{
  return (Look) { fp_moment_of_focus (focus), focus };
}

static const char *
posture_label (const FpMeasuring *of, FpMoment moment)
{
  return fp_posture_label (fp_people_posture (of->people, moment));
}

static gboolean
sees_less_than_half (const FpMeasuring *of, guint i, gpointer data)
{
  const Look *look = data;
  double share = fp_sight_share (of->sight, i, look->moment, look->focus);

  return fp_measuring_in_church (of, i) && share >= 0 && share < HALF;
}

static gboolean
sees_nothing (const FpMeasuring *of, guint i, gpointer data)
{
  const Look *look = data;
  double share = fp_sight_share (of->sight, i, look->moment, look->focus);

  return fp_measuring_in_church (of, i) && share >= 0 && !(share > 0);
}

/* @sum is of at least one place. */
static FpMeasured *
add_worst (const FpMeasuring *of, GArray *out, double value, const FpSightSum *sum)
{
  const FpPersonPlace *place = fp_measuring_place (of, sum->worst);

  return fp_measured_add_at (out, value, (int) place->owner, place->at);
}

/* "1 of 80 places sees nothing of it, kneeling" */
static char *
places_seeing (guint some, guint all, const char *what, const char *posture)
{
  g_autofree char *one = g_strdup_printf ("sees %s, %s", what, posture);
  g_autofree char *many = g_strdup_printf ("see %s, %s", what, posture);

  return fp_places_of (some, all, one, many);
}

/* Share of the places that see at least half of it. */
static void
take_half (const FpMeasuring *of, GArray *out, FpFocus focus)
{
  Look look = look_at (focus);
  FpSightSum sum;
  FpMeasured *measured;

  if (!fp_sight_has (of->sight, focus))
    return;
  sum = fp_sight_church (of->sight, look.moment, focus);
  if (sum.places == 0)
    return;
  measured = add_worst (of, out, (double) sum.half / sum.places, &sum);
  measured->text = places_seeing (sum.half, sum.places, "half of it or more", posture_label (of, look.moment));
  measured->detail = fp_measuring_where (of, sees_less_than_half, &look);
}

void
fp_take_mensa_seen (const FpMeasuring *of, GArray *out)
{
  take_half (of, out, FP_FOCUS_MENSA);
}

void
fp_take_tabernacle_seen (const FpMeasuring *of, GArray *out)
{
  take_half (of, out, FP_FOCUS_TABERNACLE);
}

void
fp_take_crucifix_seen (const FpMeasuring *of, GArray *out)
{
  take_half (of, out, FP_FOCUS_CRUCIFIX);
}

void
fp_take_ambo_seen (const FpMeasuring *of, GArray *out)
{
  take_half (of, out, FP_FOCUS_AMBO);
}

void
fp_take_chair_seen (const FpMeasuring *of, GArray *out)
{
  take_half (of, out, FP_FOCUS_CHAIR);
}

void
fp_take_mensa_mean (const FpMeasuring *of, GArray *out)
{
  const Look look = look_at (FP_FOCUS_MENSA);
  FpSightSum sum;

  if (!fp_sight_has (of->sight, look.focus))
    return;
  sum = fp_sight_church (of->sight, look.moment, look.focus);
  if (sum.places > 0)
    {
      FpMeasured *measured = add_worst (of, out, sum.mean, &sum);
      g_autofree char *worst = fp_people_name (of->people, sum.worst);

      measured->text = g_strdup_printf ("mean of %u place%s, %s", sum.places, sum.places == 1 ? "" : "s",
                                        posture_label (of, look.moment));
      measured->detail = g_strdup_printf ("least from %s", worst);
    }
}

/* Places from which nothing of the Host is seen as it is raised, the people kneeling. */
void
fp_take_host_unseen (const FpMeasuring *of, GArray *out)
{
  Look look = look_at (FP_FOCUS_HOST);
  FpSightSum sum;
  FpMeasured *measured;

  if (!fp_sight_has (of->sight, look.focus))
    return;
  sum = fp_sight_church (of->sight, look.moment, look.focus);
  if (sum.places == 0)
    return;
  measured = add_worst (of, out, sum.none, &sum);
  measured->text = places_seeing (sum.none, sum.places, "nothing of it", posture_label (of, look.moment));
  measured->detail = fp_measuring_where (of, sees_nothing, &look);
}

/* @data: the FpRole of what is in the way. */
static gboolean
hidden_by_role (const FpMeasuring *of, guint i, gpointer data)
{
  const Look look = look_at (FP_FOCUS_MENSA);
  const FpPlaced *blocker;

  if (!sees_less_than_half (of, i, (gpointer) &look))
    return FALSE;
  blocker = fp_measuring_placed (of, fp_sight_blocker (of->sight, i, look.moment, look.focus, NULL));
  return blocker && fp_placed_role (blocker) == *(const FpRole *) data;
}

static void
take_hidden_by (const FpMeasuring *of, GArray *out, FpRole role)
{
  int thing;
  const FpPlaced *placed = fp_measuring_role (of, role, &thing);
  guint n = 0, hidden = 0;

  if (!placed || !fp_sight_has (of->sight, FP_FOCUS_MENSA))
    return;
  fp_people_places (of->people, &n);
  for (guint i = 0; i < n; i++)
    hidden += hidden_by_role (of, i, &role) ? 1 : 0;
  fp_measured_add_at (out, hidden, thing, fp_placed_middle (placed, 0))->detail
    = hidden ? fp_measuring_where (of, hidden_by_role, &role) : NULL;
}

void
fp_take_hidden_by_ambo (const FpMeasuring *of, GArray *out)
{
  take_hidden_by (of, out, FP_ROLE_AMBO);
}

void
fp_take_hidden_by_candles (const FpMeasuring *of, GArray *out)
{
  take_hidden_by (of, out, FP_ROLE_CANDLES);
}

void
fp_take_row_c (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) rows = fp_row_c_values (of->people);

  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);
      const FpPlaced *pews = fp_measuring_placed (of, (int) row->owner);
      g_autofree char *name = fp_measuring_name (of, (int) row->owner);
      FpMeasured *measured = fp_measured_add_at (out, row->c, (int) row->owner, fp_placed_middle (pews, 0));

      measured->row = row->row;
      measured->detail = g_strdup_printf ("%s: row %u", name, row->row);
    }
}

/* --- drawn ------------------------------------------------------------------- */

/* Walls and floors go on and on: where the line meets them says more than they do. */
static gboolean
is_long (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & (FP_KIND_RUN | FP_KIND_OUTLINE)) != 0;
}

/* What that place itself sees: the share of all places beside its line would be read as its own. */
static void
tell_seen_from (FpEvidence *out, double share)
{
  g_autofree char *seen = fp_share_format (share, 0), *words = g_strdup_printf ("seen from here: %s of it", seen);

  fp_evidence_set_figure (out, share > 0 ? words : "from here nothing of it is seen");
}

/* From the eye of the place that sees least to what is looked at, and what stands in that line. */
static void
add_worst_line (FpEvidence *out, const FpMeasuring *of, const Look *look)
{
  const guint worst = fp_sight_church (of->sight, look->moment, look->focus).worst;
  FpSightLine line;

  if (!fp_sight_line (of->sight, worst, look->moment, look->focus, &line))
    return;
  tell_seen_from (out, fp_sight_share (of->sight, worst, look->moment, look->focus));
  fp_evidence_add_line (out, line.eye, line.stopped ? line.stop : line.goal);
  if (!line.stopped)
    return;
  fp_evidence_add_line (out, line.stop, line.goal);
  if (line.thing >= 0 && !line.is_minister && !is_long (fp_measuring_placed (of, line.thing)))
    fp_evidence_add_thing (out, of, line.thing);
}

static void
show_places (const FpMeasuring *of, FpEvidence *out, FpFocus focus, FpPlaceTest test)
{
  Look look = look_at (focus);

  add_worst_line (out, of, &look);
  if (test)
    fp_evidence_add_places (out, of, test, &look);
}

void
fp_show_mensa_seen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_MENSA, sees_less_than_half);
}

void
fp_show_tabernacle_seen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_TABERNACLE, sees_less_than_half);
}

void
fp_show_crucifix_seen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_CRUCIFIX, sees_less_than_half);
}

void
fp_show_ambo_seen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_AMBO, sees_less_than_half);
}

void
fp_show_chair_seen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_CHAIR, sees_less_than_half);
}

void
fp_show_mensa_mean (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_MENSA, NULL);
}

void
fp_show_host_unseen (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  show_places (of, out, FP_FOCUS_HOST, sees_nothing);
}

/* The thing, and the places from which it is in the way. */
void
fp_show_hidden_by (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  FpRole role = fp_placed_role (fp_measuring_placed (of, one->owner));

  fp_evidence_add_thing (out, of, one->owner);
  fp_evidence_add_places (out, of, hidden_by_role, &role);
}

/* The line from the eyes of a row to the mensa, and by how much it passes over the eyes in front, or under them. */
void
fp_show_row_c (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  g_autoptr (GArray) rows = fp_row_c_values (of->people);

  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);
      const double on = row->between / row->distance;
      FpVec3 line;

      if ((int) row->owner != one->owner || row->row != one->row)
        continue;
      line = fp_vec3_add (row->eye, fp_vec3_scale (fp_vec3_sub (row->focus, row->eye), on));
      fp_evidence_add_line (out, row->eye, row->focus);
      fp_evidence_add_length (out, (FpVec3) { line.x, line.y, line.z - row->c }, line, row->c < 0 ? -1 : 1);
      return;
    }
}

/* --- which focus ------------------------------------------------------------- */

gboolean
fp_measure_focus (const char *id, FpFocus *focus)
{
  static const struct { const char *id; FpFocus focus; } of[] = {
    { "mensa-seen", FP_FOCUS_MENSA },         { "mensa-mean", FP_FOCUS_MENSA },       { "host-unseen", FP_FOCUS_HOST },
    { "tabernacle-seen", FP_FOCUS_TABERNACLE }, { "crucifix-seen", FP_FOCUS_CRUCIFIX }, { "ambo-seen", FP_FOCUS_AMBO },
    { "chair-seen", FP_FOCUS_CHAIR },         { "hidden-by-ambo", FP_FOCUS_MENSA },   { "hidden-by-candles", FP_FOCUS_MENSA },
  };

  for (guint i = 0; i < G_N_ELEMENTS (of); i++)
    if (g_str_equal (of[i].id, id))
      {
        *focus = of[i].focus;
        return TRUE;
      }
  return FALSE;
}
