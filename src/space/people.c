/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "body.h"

struct _FpPeople
{
  gatomicrefcount ref_count;
  const FpScene  *scene;  /* owned reference                    */
  GArray         *place;  /* (element-type FpPersonPlace)       */
  FpBrief         brief;  /* what of it tells of the people; its texts are the scene's */
};

/* --- places --------------------------------------------------------------- */

static gboolean
stands_on_gallery (const FpPlaced *placed, guint i, guint n)
{
  guint depth = 0;
  for (int at = (int) i; at >= 0 && depth++ < n; at = placed[at].support)
    if (fp_item_kind (placed[at].item)->role == FP_ROLE_GALLERY)
      return TRUE;
  return FALSE;
}

static FpPerson
person_at (const FpPeople *self, const FpPlaced *placed, const FpSeat *seat, gboolean at_rail)
{
  /* Who brings his own seat is taken to be grown. */
  const gboolean seated = (seat->postures & (1u << FP_POSTURE_SITTING)) && !at_rail && !(seat->eye > 0);
  FpPerson who = fp_population_person (&self->brief, fp_item_id (placed->item), seat->row, seat->number, seated);

  who.eye = seat->eye;
  return who;
}

static FpPersonPlace
place_of_seat (const FpPeople *self, const FpPlaced *placed, guint owner, const FpSeat *seat)
{
  const FpForm *form = &placed->form;
  const gboolean at_rail = fp_item_kind (placed->item)->role == FP_ROLE_RAIL;
  double ground = form->ground != NULL ? form->ground (form->ground_data, seat->at) : 0;

  return (FpPersonPlace) {
    .owner = owner, .row = seat->row, .number = seat->number,
    .at = fp_placed_point (placed, (FpVec3) { seat->at.x, seat->at.y, ground + seat->z }),
    .facing = placed->place.turn + seat->facing,
    .postures = seat->postures, .seat = seat->seat, .kneeler = seat->kneeler,
    .who = person_at (self, placed, seat, at_rail), .at_rail = at_rail,
  };
}

static void
add_places (FpPeople *self, const FpPlaced *placed, guint i, guint n)
{
  const FpKind *kind = fp_item_kind (placed[i].item);
  if (placed[i].ghost || kind->seats == NULL)
    return;
  g_autoptr (GArray) seats = g_array_new (FALSE, FALSE, sizeof (FpSeat));
  kind->seats (&placed[i].form, seats);
  gboolean gallery = stands_on_gallery (placed, i, n);
  for (guint k = 0; k < seats->len; k++)
    {
      FpPersonPlace place = place_of_seat (self, &placed[i], i, &g_array_index (seats, FpSeat, k));
      place.gallery = gallery;
      g_array_append_val (self->place, place);
    }
}

static FpPeople *
make (const FpScene *scene, const FpBrief *brief)
{
  FpPeople *self = g_new0 (FpPeople, 1);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  g_atomic_ref_count_init (&self->ref_count);
  self->scene = fp_scene_ref (scene);
  self->brief = *brief;
  self->place = g_array_new (FALSE, FALSE, sizeof (FpPersonPlace));
  for (guint i = 0; i < n; i++)
    add_places (self, placed, i, n);
  return self;
}

FpPeople *
fp_people_new (const FpScene *scene)
{
  return make (scene, fp_project_brief (fp_scene_project (scene)));
}

FpPeople *
fp_people_new_varied (const FpScene *scene, guint seed)
{
  FpBrief brief = *fp_project_brief (fp_scene_project (scene));

  brief.varied = TRUE;
  brief.seed = seed;
  return make (scene, &brief);
}

FpPeople *
fp_people_ref (const FpPeople *self)
{
  FpPeople *mine = (FpPeople *) self;
  g_atomic_ref_count_inc (&mine->ref_count);
  return mine;
}

void
fp_people_unref (const FpPeople *self)
{
  FpPeople *mine = (FpPeople *) self;
  if (!g_atomic_ref_count_dec (&mine->ref_count))
    return;
  g_array_unref (mine->place);
  fp_scene_unref (mine->scene);
  g_free (mine);
}

const FpPersonPlace *
fp_people_places (const FpPeople *self, guint *n)
{
  if (n != NULL)
    *n = self->place->len;
  return (const FpPersonPlace *) (gpointer) self->place->data;
}

const FpScene *
fp_people_scene (const FpPeople *self)
{
  return self->scene;
}

static const FpPersonPlace *
get_place (const FpPeople *self, guint i)
{
  return &g_array_index (self->place, FpPersonPlace, i);
}

guint
fp_people_seats (const FpPeople *self)
{
  guint seats = 0;
  for (guint i = 0; i < self->place->len; i++)
    if ((get_place (self, i)->postures & (1u << FP_POSTURE_SITTING)) && !get_place (self, i)->at_rail)
      seats++;
  return seats;
}

char *
fp_people_population (const FpPeople *self)
{
  guint children = 0, wheelchairs = 0;

  for (guint i = 0; i < self->place->len; i++)
    {
      children += get_place (self, i)->who.child ? 1 : 0;
      wheelchairs += get_place (self, i)->who.eye > 0 ? 1 : 0;
    }
  return fp_population_words (&self->brief, children, wheelchairs);
}

char *
fp_people_name (const FpPeople *self, guint place)
{
  if (place >= self->place->len)
    return g_strdup ("");
  const FpPersonPlace *at = get_place (self, place);
  const char *name = fp_item_name (fp_scene_placed (self->scene, NULL)[at->owner].item);
  if (at->who.eye > 0)
    return g_strdup_printf ("%s: place %u", name, at->number);
  if (at->postures & (1u << FP_POSTURE_SITTING))
    return g_strdup_printf ("%s: row %u, seat %u", name, at->row, at->number);
  if (at->at_rail)
    return g_strdup_printf ("%s: place %u", name, at->number);
  return g_strdup_printf ("%s: row %u, place %u", name, at->row, at->number);
}

/* --- eyes and bodies ------------------------------------------------------ */

FpPosture
fp_person_posture (const FpPersonPlace *place, FpPosture posture)
{
  static const FpPosture INSTEAD[] = { FP_POSTURE_SITTING, FP_POSTURE_STANDING, FP_POSTURE_KNEELING };

  if (place->postures & (1u << posture))
    return posture;
  for (guint i = 0; i < G_N_ELEMENTS (INSTEAD); i++)
    if (place->postures & (1u << INSTEAD[i]))
      return INSTEAD[i];
  return FP_POSTURE_STANDING;
}

/* The middle of the body on the plan. */
static FpPlace
stance (const FpPersonPlace *place, FpPosture posture)
{
  FpPlace at = { place->at.x, place->at.y, place->facing };
  FpPoint middle = fp_place_point (&at, (FpPoint) { 0, fp_body_forward (posture, place->seat) });
  return (FpPlace) { middle.x, middle.y, place->facing };
}

gboolean
fp_people_looks (const FpPeople *self, guint place, FpMoment moment, FpPosture *posture)
{
  const FpPersonPlace *at = get_place (self, place);

  *posture = fp_person_posture (at, fp_moment_posture (moment));
  return !at->at_rail || (at->postures & (1u << fp_moment_posture (moment))) != 0;
}

FpPosture
fp_people_posture (const FpPeople *self, FpMoment moment)
{
  FpPosture most = fp_moment_posture (moment), posture;
  guint taken[FP_N_POSTURES] = { 0 };

  for (guint i = 0; i < self->place->len; i++)
    if (fp_people_looks (self, i, moment, &posture) && !get_place (self, i)->gallery)
      taken[posture]++;
  for (int i = 0; i < FP_N_POSTURES; i++)
    if (taken[i] > taken[most])
      most = (FpPosture) i;
  return most;
}

static FpVec3
eye_of (const FpPersonPlace *at, const FpPerson *who, FpPosture posture)
{
  FpPosture taken = fp_person_posture (at, posture);
  FpBody body = fp_body (who, taken, at->seat, at->kneeler);
  FpPlace middle = stance (at, taken);
  FpPoint eye = fp_place_point (&middle, (FpPoint) { 0, fp_body_eye_forward (&body) });
  return (FpVec3) { eye.x, eye.y, at->at.z + body.eye };
}

FpVec3
fp_people_eye (const FpPeople *self, guint place, FpPosture posture)
{
  const FpPersonPlace *at = get_place (self, place);

  return eye_of (at, &at->who, posture);
}

FpVec3
fp_people_eye_of (const FpPeople *self, guint place, const FpPerson *who, FpPosture posture)
{
  return eye_of (get_place (self, place), who, posture);
}

FpVec3
fp_people_plain_eye (const FpPeople *self, guint place, FpPosture posture)
{
  const FpPersonPlace *at = get_place (self, place);
  const FpPerson plain = { .percentile = self->brief.percentile, .eye = at->who.eye };

  return eye_of (at, &plain, posture);
}

/* The body last made: where all are alike, so are neighbours. */
typedef struct
{
  FpSolids *solids;
  FpPerson  who;
  FpPosture posture;
  double    seat, kneeler;
} Pattern;

static gboolean
same_number (double a, double b)
{
  return !(a < b) && !(a > b);
}

static gboolean
is_pattern_for (const Pattern *self, const FpPersonPlace *place, FpPosture posture)
{
  const FpPerson *a = &self->who, *b = &place->who;

  return self->solids != NULL && self->posture == posture && same_number (self->seat, place->seat)
         && same_number (self->kneeler, place->kneeler) && a->child == b->child
         && same_number (a->percentile, b->percentile) && same_number (a->eye, b->eye);
}

static const FpSolids *
pattern_for (Pattern *self, const FpPersonPlace *place, FpPosture posture)
{
  if (is_pattern_for (self, place, posture))
    return self->solids;
  g_clear_pointer (&self->solids, fp_solids_free);
  *self = (Pattern) { fp_solids_new (), place->who, posture, place->seat, place->kneeler };
  const FpBody body = fp_body (&place->who, posture, place->seat, place->kneeler);
  fp_body_solids (&body, place->seat, place->kneeler, self->solids);
  return self->solids;
}

void
fp_people_add_bodies (const FpPeople *self, FpPosture posture, guint first_owner, FpSolids *out)
{
  Pattern pattern = { NULL };
  for (guint i = 0; i < self->place->len; i++)
    {
      const FpPersonPlace *place = get_place (self, i);
      if (place->at_rail)
        continue;
      FpPosture taken = fp_person_posture (place, posture);
      FpPlace middle = stance (place, taken);
      fp_solids_append_placed (out, pattern_for (&pattern, place, taken), &middle, place->at.z, first_owner + i);
    }
  g_clear_pointer (&pattern.solids, fp_solids_free);
}

void
fp_people_bodies (const FpPeople *self, FpPosture posture, FpSolids *out)
{
  fp_people_add_bodies (self, posture, 0, out);
}
