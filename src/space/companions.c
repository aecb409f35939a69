/* SPDX-License-Identifier: GPL-3.0-or-later */
/* companions.c - how many places for wheelchairs are wanted, and who sits beside each */
#include "footpace/capacity.h"

#include <math.h>

guint
fp_wheelchairs_wanted (guint seats)
{
  static const struct { guint seats, places; } table[] = { { 3, 0 }, { 25, 1 }, { 50, 2 }, { 150, 4 }, { 300, 5 }, { 500, 6 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (seats <= table[i].seats)
      return table[i].places;
  if (seats <= 5000)
    return 6 + (seats - 500 + 149) / 150;
  return 36 + (seats - 5000 + 199) / 200;
}

static FpRole
role_of (const FpPeople *people, const FpPersonPlace *place)
{
  guint n;

  return fp_item_kind (fp_scene_placed (fp_people_scene (people), &n)[place->owner].item)->role;
}

static gboolean
is_seat (const FpPeople *people, const FpPersonPlace *place)
{
  const FpRole role = role_of (people, place);

  return !place->at_rail && role != FP_ROLE_WHEELCHAIR && role != FP_ROLE_STANDING_ROOM;
}

/* Of @a, as he faces. */
static gboolean
are_beside (const FpPersonPlace *a, const FpPersonPlace *b)
{
  const double turn = a->facing * G_PI / 180, dx = b->at.x - a->at.x, dy = b->at.y - a->at.y;
  const double aside = fabs (dx * cos (turn) + dy * sin (turn)), along = fabs (dy * cos (turn) - dx * sin (turn));

  return aside <= FP_COMPANION_ASIDE && along <= FP_COMPANION_ALONG && a->gallery == b->gallery;
}

typedef struct
{
  const FpPeople      *people;
  const FpPersonPlace *place;
  guint                n;
  GArray              *company;
  int                 *taken;  /* of each place: by which company; -1 */
  gboolean            *tried;  /* of each place, in this search       */
} Search;

/* Who sits beside it and is free, or whose wheelchair finds another (augmenting paths: as many pairs as there can be). */
static gboolean
find_companion (Search *s, guint which)
{
  FpCompany *company = &g_array_index (s->company, FpCompany, which);

  for (guint i = 0; i < s->n; i++)
    {
      if (s->tried[i] || !are_beside (&s->place[company->place], &s->place[i]) || !is_seat (s->people, &s->place[i]))
        continue;
      s->tried[i] = TRUE;
      if (s->taken[i] >= 0 && !find_companion (s, (guint) s->taken[i]))
        continue;
      s->taken[i] = (int) which;
      company->companion = (int) i;
      return TRUE;
    }
  return FALSE;
}

GArray *
fp_companies (const FpPeople *people)
{
  Search s = { .people = people, .company = g_array_new (FALSE, FALSE, sizeof (FpCompany)) };

  s.place = fp_people_places (people, &s.n);
  s.taken = g_new (int, s.n);
  s.tried = g_new (gboolean, s.n);
  for (guint i = 0; i < s.n; i++)
    {
      const FpCompany one = { i, -1 };

      s.taken[i] = -1;
      if (!s.place[i].at_rail && role_of (people, &s.place[i]) == FP_ROLE_WHEELCHAIR)
        g_array_append_val (s.company, one);
    }
  for (guint k = 0; k < s.company->len; k++)
    {
      for (guint i = 0; i < s.n; i++)
        s.tried[i] = FALSE;
      find_companion (&s, k);
    }
  g_free (s.taken);
  g_free (s.tried);
  return s.company;
}
