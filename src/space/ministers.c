/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ministers.c - where the ministers stand at a moment of the celebration
 *
 * What a thing tells of its own minister (kind.h) is where he begins: the
 * celebrant at the altar or the chair, the reader at the ambo.  Deacon and
 * subdeacon stand about the celebrant, on whatever step is under them.
 */
#include "body.h"
#include "underfoot.h"

/* Design judgement, mm. */
#define BESIDE        650.0  /* deacon or subdeacon beside the celebrant, middle to middle            */
#define IN_LINE       700.0  /* one behind the other, where no step says better                       */
#define ON_STEP       160.0  /* the middle of one who stands on a step, behind the riser before him   */
#define LOOK_BEHIND   2500.0 /* how far behind the celebrant steps are looked for                     */
#define STRIDE        20.0   /* likewise, in paces of                                                 */
#define LOWER         20.0   /* a step is lower by this at least                                      */

typedef struct
{
  const FpPeople *people;
  const FpPlaced *placed;  /* all of them                                       */
  guint           owner;   /* whose ministers are added                         */
  FpSolids       *out;
} Place;

typedef struct
{
  FpVec3    at;            /* on what he stands; church coordinates             */
  double    facing;
  FpPosture posture;
  double    seat;          /* above that, when sitting                          */
} Stance;

static void
add (const Place *place, const Stance *stance)
{
  const guint percentile = fp_project_brief (fp_scene_project (fp_people_scene (place->people)))->percentile;
  const double seat = stance->posture == FP_POSTURE_SITTING ? stance->seat : 0;
  const FpPerson who = { .percentile = percentile };
  const FpBody body = fp_body (&who, stance->posture, seat, 0);
  const FpPlace at = { stance->at.x, stance->at.y, stance->facing };
  g_autoptr (FpSolids) solids = fp_solids_new ();

  fp_body_solids (&body, seat, 0, solids);
  fp_solids_append_placed (place->out, solids, &at, stance->at.z, place->owner);
}

/* --- where he stands -------------------------------------------------------- */

static FpVec3
aside_of (const FpScene *scene, const Stance *who, double right, double behind)
{
  const FpPlace at = { who->at.x, who->at.y, who->facing };
  const FpPoint p = fp_place_point (&at, (FpPoint) { right, -behind });

  return (FpVec3) { p.x, p.y, fp_level_underfoot (scene, p, who->at.z) };
}

/* Behind somebody, on the next step down: one stands on each. */
static FpVec3
on_next_step (const FpScene *scene, const Stance *who)
{
  for (double behind = STRIDE; behind <= LOOK_BEHIND; behind += STRIDE)
    if (aside_of (scene, who, 0, behind).z < who->at.z - LOWER)
      return aside_of (scene, who, 0, behind + ON_STEP);
  return aside_of (scene, who, 0, IN_LINE);
}

/* --- by office --------------------------------------------------------------- */

/* Where the first minister of a thing is; FALSE where it has none. */
static gboolean
stance_of (const FpPlaced *placed, Stance *stance)
{
  const FpKind *kind = fp_item_kind (placed->item);
  g_autoptr (GArray) ministers = g_array_new (FALSE, FALSE, sizeof (FpMinister));

  if (kind->ministers == NULL)
    return FALSE;
  kind->ministers (&placed->form, ministers);
  if (ministers->len == 0)
    return FALSE;
  const FpMinister *first = &g_array_index (ministers, FpMinister, 0);
  const FpPlace inner = { first->at.x, first->at.y, first->facing };
  const FpPlace place = fp_place_compose (&placed->place, &inner);
  *stance = (Stance) {
    { place.x, place.y, placed->level + first->z }, place.turn,
    first->seated ? FP_POSTURE_SITTING : FP_POSTURE_STANDING, first->seat,
  };
  return TRUE;
}

static gboolean
begin (Place *place, int at, Stance *stance)
{
  if (at < 0 || !stance_of (&place->placed[at], stance))
    return FALSE;
  place->owner = (guint) at;
  return TRUE;
}

static void
add_reader (Place *place)
{
  Stance reader;

  if (begin (place, fp_scene_role (fp_people_scene (place->people), FP_ROLE_AMBO), &reader))
    add (place, &reader);
}

/* FALSE where there is no chair. */
static gboolean
add_at_chair (Place *place, gboolean standing)
{
  const FpScene *scene = fp_people_scene (place->people);
  Stance celebrant;

  if (!begin (place, fp_scene_role (scene, FP_ROLE_CHAIR), &celebrant))
    return FALSE;
  if (standing)
    {
      celebrant.at = aside_of (scene, &celebrant, 0, -fp_body_forward (FP_POSTURE_STANDING, celebrant.seat));
      celebrant.posture = FP_POSTURE_STANDING;
    }
  add (place, &celebrant);
  return TRUE;
}

typedef enum { ALONE, IN_LINE_BEHIND, AT_HIS_SIDES, KNEELING_BEHIND } Attendance;

static void
add_attendants (Place *place, const Stance *celebrant, Attendance attendance)
{
  const FpScene *scene = fp_people_scene (place->people);
  Stance deacon = *celebrant, subdeacon = *celebrant;

  switch (attendance)
    {
    case IN_LINE_BEHIND:
      deacon.at = on_next_step (scene, celebrant);
      subdeacon.at = on_next_step (scene, &deacon);
      break;
    case AT_HIS_SIDES:
      deacon.at = aside_of (scene, celebrant, BESIDE, 0);
      subdeacon.at = aside_of (scene, celebrant, -BESIDE, 0);
      break;
    case KNEELING_BEHIND:
      /* The deacon at his right, to hold the chasuble; the subdeacon in the middle, on the step below. */
      deacon.at = aside_of (scene, celebrant, BESIDE / 2, IN_LINE / 2);
      subdeacon.at = on_next_step (scene, celebrant);
      deacon.posture = subdeacon.posture = FP_POSTURE_KNEELING;
      break;
    case ALONE:
    default:
      return;
    }
  add (place, &deacon);
  add (place, &subdeacon);
}

/* Deacon and subdeacon serve where the parish keeps solemn Mass. */
static gboolean
is_solemn (const FpScene *scene)
{
  const guint with_both = FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL;

  return (fp_project_brief (fp_scene_project (scene))->celebrations & with_both) != 0;
}

/* At the other altars nobody stands. */
static void
add_at_altar (Place *place, Attendance attendance)
{
  const FpScene *scene = fp_people_scene (place->people);
  Stance celebrant;

  if (!begin (place, fp_scene_celebrated_altar (scene), &celebrant))
    return;
  add (place, &celebrant);
  if (is_solemn (scene))
    add_attendants (place, &celebrant, attendance);
}

/* From the chair where the books are the newer, or the celebrant faces the people; from the altar otherwise. */
static void
add_for_collect (Place *place)
{
  const FpScene *scene = fp_people_scene (place->people);
  const FpProject *project = fp_scene_project (scene);
  const gboolean at_chair = fp_project_brief (project)->books == FP_BOOKS_NEWER
                            || fp_project_facing (project, fp_scene_alternative (scene)) == FP_FACING_PEOPLE;

  if (!at_chair || !add_at_chair (place, TRUE))
    add_at_altar (place, IN_LINE_BEHIND);
}

void
fp_people_ministers (const FpPeople *self, FpMoment moment, FpSolids *out)
{
  Place place = { .people = self, .placed = fp_scene_placed (fp_people_scene (self), NULL), .out = out };

  switch (moment)
    {
    case FP_MOMENT_COLLECT:
      add_for_collect (&place);
      break;
    case FP_MOMENT_READINGS:
    case FP_MOMENT_GOSPEL:
      add_reader (&place);
      add_at_chair (&place, moment == FP_MOMENT_GOSPEL);
      break;
    case FP_MOMENT_OFFERTORY:
      add_at_altar (&place, ALONE);
      break;
    case FP_MOMENT_INCENSING:
      add_at_altar (&place, AT_HIS_SIDES);
      break;
    case FP_MOMENT_ELEVATION:
      add_at_altar (&place, KNEELING_BEHIND);
      break;
    case FP_MOMENT_BEFORE:
    case FP_N_MOMENTS:
    default:
      break;
    }
}

/* --- what he looks from ---------------------------------------------------------- */

const char *
fp_office_label (FpOffice self)
{
  static const char *const labels[FP_N_OFFICES] = {
    [FP_OFFICE_AT_ALTAR] = "the celebrant at the altar", [FP_OFFICE_AT_CHAIR] = "the celebrant at the chair",
    [FP_OFFICE_AT_AMBO] = "the reader at the ambo",
  };

  return labels[MIN (self, FP_N_OFFICES - 1)];
}

static int
thing_of (const FpScene *scene, FpOffice office)
{
  switch (office)
    {
    case FP_OFFICE_AT_ALTAR: return fp_scene_celebrated_altar (scene);
    case FP_OFFICE_AT_CHAIR: return fp_scene_role (scene, FP_ROLE_CHAIR);
    case FP_OFFICE_AT_AMBO: return fp_scene_role (scene, FP_ROLE_AMBO);
    case FP_N_OFFICES: default: return -1;
    }
}

gboolean
fp_people_minister_eye (const FpPeople *self, FpOffice office, FpVec3 *eye, double *facing)
{
  const FpScene *scene = fp_people_scene (self);
  const FpPerson who = { .percentile = fp_project_brief (fp_scene_project (scene))->percentile };
  const int at = thing_of (scene, office);
  Stance stance;

  if (at < 0 || !stance_of (&fp_scene_placed (scene, NULL)[at], &stance))
    return FALSE;
  const FpBody body = fp_body (&who, stance.posture, stance.posture == FP_POSTURE_SITTING ? stance.seat : 0, 0);
  const FpPlace place = { stance.at.x, stance.at.y, stance.facing };
  const FpPoint p = fp_place_point (&place, (FpPoint) { 0, fp_body_eye_forward (&body) });
  *eye = (FpVec3) { p.x, p.y, stance.at.z + body.eye };
  *facing = stance.facing;
  return TRUE;
}
