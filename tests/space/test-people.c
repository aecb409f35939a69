/* SPDX-License-Identifier: GPL-3.0-or-later */
/* People: how tall they are, by the survey, and where they are, by the scene.
 *
 * ANSUR II: C. C. Gordon et al., NATICK/TR-15/007 (2014), percentiles of a
 * population half women, half men, computed from the public data.
 */
#include "church.h"
#include "footpace/levels.h"
#include "footpace/people.h"

#include <math.h>
#include <string.h>

#define SLUMP 40 /* from memory; common practice */

static void
near_to (double found, double expected)
{
  g_assert_cmpfloat_with_epsilon (found, expected, 1e-6);
}

/* --- tables --------------------------------------------------------------- */

typedef struct
{
  guint  percentile;
  double stature, standing_eye, sitting_eye, kneeling_eye, kneeling_crown, head_breadth, head_length, shoulder;
} Row;

static const Row TABLE[] = {
  { 5, 1547, 1442, 708, 1028, 1133, 141, 180, 415 },
  { 50, 1689, 1578, 775, 1127, 1238, 151, 195, 478 },
  { 95, 1844, 1727, 847, 1232, 1349, 161, 209, 553 },
};

static FpBody
grown (FpPosture posture, double percentile, double seat, double kneeler)
{
  const FpPerson who = { .percentile = percentile };

  return fp_body (&who, posture, seat, kneeler);
}

static void
test_tables (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (TABLE); i++)
    {
      const Row *row = &TABLE[i];
      FpBody stands = grown (FP_POSTURE_STANDING, row->percentile, 450, 100);
      FpBody sits = grown (FP_POSTURE_SITTING, row->percentile, 450, 100);
      FpBody kneels = grown (FP_POSTURE_KNEELING, row->percentile, 450, 100);
      near_to (stands.eye, row->standing_eye);
      near_to (stands.crown, row->stature);
      near_to (sits.eye, 450 + row->sitting_eye - SLUMP);
      near_to (kneels.eye, 100 + row->kneeling_eye);
      near_to (kneels.crown, 100 + row->kneeling_crown);
      near_to (sits.head_breadth, row->head_breadth);
      near_to (sits.head_length, row->head_length);
      near_to (sits.shoulder, row->shoulder);
    }
}

/* What is symmetric about its median is normal: the percentile comes back by the error function of the C library. */
static void
test_between_percentiles (void)
{
  const double z95 = 1.6448536269514722; /* tables of the normal distribution */
  double last = 0;

  for (guint i = 1; i <= 999; i++)
    {
      const double percentile = i / 10.0;
      const FpBody body = grown (FP_POSTURE_STANDING, percentile, 0, 0);
      const double z = (body.head_breadth - 151) / (161 - 151) * z95;
      g_assert_cmpfloat_with_epsilon (50 * erfc (-z / G_SQRT2), percentile, 1e-6);
      g_assert_cmpfloat (body.crown, >, last);
      last = body.crown;
    }
  near_to (grown (FP_POSTURE_STANDING, 0, 0, 0).eye, grown (FP_POSTURE_STANDING, 0.1, 0, 0).eye);
  near_to (grown (FP_POSTURE_STANDING, 999, 0, 0).eye, grown (FP_POSTURE_STANDING, 99.9, 0, 0).eye);
  /* The tallest man and the smallest woman of the survey were 1993 and 1409 (from memory). */
  g_assert_cmpfloat_with_epsilon (grown (FP_POSTURE_STANDING, 99.9, 0, 0).crown, 1993, 30);
  g_assert_cmpfloat_with_epsilon (grown (FP_POSTURE_STANDING, 0.1, 0, 0).crown, 1409, 30);
}

/* Stature at seven years by the CDC growth charts (2000), and sitting height 0.55 of it (both from memory; 10 mm). */
static void
test_child (void)
{
  static const struct { double percentile, stature; } CDC[] = { { 5, 1130 }, { 50, 1220 }, { 95, 1310 } };

  for (guint i = 0; i < G_N_ELEMENTS (CDC); i++)
    {
      const FpPerson child = { .child = TRUE, .percentile = CDC[i].percentile };
      const FpBody stands = fp_body (&child, FP_POSTURE_STANDING, 450, 100);
      const FpBody sits = fp_body (&child, FP_POSTURE_SITTING, 450, 100);
      const FpBody kneels = fp_body (&child, FP_POSTURE_KNEELING, 450, 100);
      near_to (stands.crown, CDC[i].stature);
      g_assert_cmpfloat_with_epsilon (sits.crown - 450, 0.55 * CDC[i].stature, 2);
      g_assert_cmpfloat (kneels.eye, >, sits.eye - 450);
      g_assert_cmpfloat (kneels.eye, <, stands.eye);
      g_assert_cmpfloat (sits.eye, <, grown (FP_POSTURE_SITTING, 5, 450, 0).eye);
      g_assert_cmpfloat (stands.acromion, <, stands.eye);
    }
}

/* Theatre Catalog 1947, p. 155: seated eyes 3 ft 8 in above the floor, 4 1/2 in from eye to crown. That is a small or a
 * slumped person: our 5th percentile on a pew of 450. */
static void
test_handbook (void)
{
  const double eye = 44 * 25.4, to_crown = 4.5 * 25.4;
  FpBody small = grown (FP_POSTURE_SITTING, 5, 450, 0), middle = grown (FP_POSTURE_SITTING, 50, 450, 0);
  g_assert_cmpfloat_with_epsilon (small.eye, eye, 5);
  g_assert_cmpfloat (small.eye, <=, middle.eye);
  g_assert_cmpfloat_with_epsilon (middle.crown - middle.eye, to_crown, 5);
}

/* Eye to vertex by sex, ANSUR II: 96 (women, 5th) to 129 (men, 95th). "Kneeling height" of US forces: 1145 (women, 5th)
 * to 1369 (men, 95th), from memory: ours are derived, and women's published figures lie some 30 mm higher. */
static void
test_plausible (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (TABLE); i++)
    for (int posture = 0; posture < FP_N_POSTURES; posture++)
      {
        FpBody body = grown ((FpPosture) posture, TABLE[i].percentile, 450, 0);
        g_assert_cmpfloat (body.crown - body.eye, >=, 96);
        g_assert_cmpfloat (body.crown - body.eye, <=, 129);
      }
  g_assert_cmpfloat_with_epsilon (grown (FP_POSTURE_KNEELING, 5, 0, 0).crown, 1145, 36);
  g_assert_cmpfloat_with_epsilon (grown (FP_POSTURE_KNEELING, 95, 0, 0).crown, 1369, 36);
}

/* --- places --------------------------------------------------------------- */

static FpPeople *
people_of (FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  return fp_people_new (scene);
}

static FpProject *
two_blocks (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  church_floor (&project, "nave", (FpBox) { -8000, -20000, 8000, 0 }, 0, 0, 0, 0);
  const ChurchThing left = {
    "pews", "gospel", NULL, { -3000, -2000, 0 }, NULL, 0, { { "rows", 4 }, { "length", 2000 }, { NULL, 0 } },
  };
  const ChurchThing right = {
    "pews", "epistle", NULL, { 3000, -2000, 10 }, NULL, 0,
    { { "rows", 3 }, { "rise", 100 }, { "kneeler", 0 }, { NULL, 0 } },
  };
  church_survey (&project, &left);
  church_survey (&project, &right);
  return project;
}

/* --- who is there ------------------------------------------------------------ */

static int
by_size (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

/* Statures of the grown, in order; @children (out): how many others. */
static GArray *
statures_of (const FpPeople *people, guint *children)
{
  GArray *statures = g_array_new (FALSE, FALSE, sizeof (double));
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);

  *children = 0;
  for (guint i = 0; i < n; i++)
    {
      const double stature = fp_body (&place[i].who, FP_POSTURE_STANDING, 0, 0).crown;
      if (place[i].who.child)
        (*children)++;
      else
        g_array_append_val (statures, stature);
    }
  g_array_sort (statures, by_size);
  return statures;
}

static FpProject *
great_church (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const ChurchThing left = {
    "pews", "gospel", NULL, { -10000, -2000, 0 }, NULL, 0, { { "rows", 100 }, { "length", 18280 }, { NULL, 0 } },
  };
  const ChurchThing right = {
    "pews", "epistle", NULL, { 10000, -2000, 0 }, NULL, 0, { { "rows", 100 }, { "length", 18280 }, { NULL, 0 } },
  };
  church_survey (&project, &left);
  church_survey (&project, &right);
  return project;
}

/* ANSUR II, half women, half men: the percentiles as above; of stature a mean of 1692 and a standard deviation of 92,
 * which follow from 1628 and 64 of the women, 1756 and 69 of the men (all four from memory). */
static void
test_population (void)
{
  g_autoptr (FpProject) project = great_church ();
  church_population (&project, 7, 8);
  g_autoptr (FpPeople) people = people_of (project);
  guint children;
  g_autoptr (GArray) statures = statures_of (people, &children);
  const guint n = statures->len;
  double sum = 0, squares = 0;

  g_assert_cmpuint (n + children, ==, 8000);
  g_assert_cmpfloat_with_epsilon (children, 1000, 4 * sqrt (8000 * (1.0 / 8) * (7.0 / 8)));
  for (guint i = 0; i < G_N_ELEMENTS (TABLE); i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (statures, double, n * TABLE[i].percentile / 100), TABLE[i].stature, 8);
  for (guint i = 0; i < n; i++)
    sum += g_array_index (statures, double, i);
  for (guint i = 0; i < n; i++)
    squares += pow (g_array_index (statures, double, i) - sum / n, 2);
  g_assert_cmpfloat_with_epsilon (sum / n, 1692, 4);
  g_assert_cmpfloat_with_epsilon (sqrt (squares / n), 92, 4);
}

static void
test_alike (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene), varied = fp_people_new_varied (scene, 3);
  guint children;
  g_autoptr (GArray) alike = statures_of (people, &children), each = statures_of (varied, &children);

  g_assert_cmpuint (children, ==, 0);
  near_to (g_array_index (alike, double, 0), 1689);
  near_to (g_array_index (alike, double, alike->len - 1), 1689);
  g_assert_cmpfloat (g_array_index (each, double, each->len - 1) - g_array_index (each, double, 0), >, 150);
  /* What a place is good for does not hang on who takes it. */
  const FpVec3 plain = fp_people_plain_eye (varied, 0, FP_POSTURE_SITTING), eye = fp_people_eye (people, 0, FP_POSTURE_SITTING);
  near_to (plain.z, eye.z);
}

/* By place of the block: who he is. */
static guint
count_same (const FpPeople *a, const FpPeople *b, const char *block)
{
  guint n, m, same = 0;
  const FpPersonPlace *p = fp_people_places (a, &n), *q = fp_people_places (b, &m);
  const guint in_a = (guint) fp_scene_find (fp_people_scene (a), block), in_b = (guint) fp_scene_find (fp_people_scene (b), block);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < m; k++)
      if (p[i].owner == in_a && q[k].owner == in_b && p[i].row == q[k].row && p[i].number == q[k].number)
        same += memcmp (&p[i].who.percentile, &q[k].who.percentile, sizeof (double)) == 0
                && p[i].who.child == q[k].who.child;
  return same;
}

/* Blocks that are moved, lengthened, added or taken away leave everybody else, and all who stay, as they were. */
static void
test_nobody_is_changed (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  church_population (&project, 5, 4);
  g_autoptr (FpPeople) before = people_of (project);
  const ChurchThing left = {
    "pews", "gospel", NULL, { -3100, -2500, 3 }, NULL, 0, { { "rows", 6 }, { "length", 2500 }, { NULL, 0 } },
  };
  const ChurchThing more = { "pews", "aisle", NULL, { -7000, -2000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &left);
  church_survey (&project, &more);
  g_autoptr (FpPeople) after = people_of (project);
  church_population (&project, 6, 4);
  g_autoptr (FpPeople) others = people_of (project);

  g_assert_cmpuint (count_same (before, after, "gospel"), ==, 4 * 4);
  g_assert_cmpuint (count_same (before, after, "epistle"), ==, 3 * 8);
  g_assert_cmpuint (count_same (before, others, "epistle"), ==, 0);
}

/* CEN/TR 15913:2009 (as reported): eyes at 1.15 m, whatever all others do, and whoever it is. */
static void
test_wheelchair (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  const ChurchThing chair = { "wheelchair-places", "front", NULL, { 0, -1500, 0 }, NULL, 0, { { "count", 2 }, { NULL, 0 } } };
  church_add (&project, &chair);
  church_population (&project, 2, 1); /* all others are children */
  g_autoptr (FpPeople) people = people_of (project);
  const FpLevels levels = fp_levels (people);
  guint n, found = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  g_assert_cmpuint (fp_people_seats (people), ==, n); /* they count as seats */
  g_assert_true (levels.has_people);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (place[i].who.child == !(place[i].who.eye > 0));
      if (!(place[i].who.eye > 0))
        continue;
      for (int moment = 0; moment < FP_N_MOMENTS; moment++)
        {
          FpPosture posture;
          g_assert_true (fp_people_looks (people, i, (FpMoment) moment, &posture));
          g_assert_cmpint (posture, ==, FP_POSTURE_SITTING);
          near_to (fp_people_eye (people, i, fp_moment_posture ((FpMoment) moment)).z, 1150);
        }
      near_to (fp_people_plain_eye (people, i, FP_POSTURE_STANDING).z, 1150);
      g_autofree char *name = fp_people_name (people, i);
      g_assert_cmpstr (name, ==, found == 0 ? "Wheelchair places: place 1" : "Wheelchair places: place 2");
      found++;
    }
  g_assert_cmpuint (found, ==, 2);
  g_autofree char *words = fp_people_population (people);
  g_assert_nonnull (strstr (words, "40 of them are children"));
  g_assert_nonnull (strstr (words, "2 are in a wheelchair and stay seated."));
}

/* A child stands on the floor and kneels on the kneeler, as the others do. */
static void
test_child_in_a_pew (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  church_population (&project, 2, 1);
  g_autoptr (FpPeople) people = people_of (project);
  const FpPersonPlace *place = fp_people_places (people, NULL);

  near_to (fp_people_eye (people, 0, FP_POSTURE_STANDING).z, fp_body (&place[0].who, FP_POSTURE_STANDING, 0, 0).eye);
  near_to (fp_people_eye (people, 0, FP_POSTURE_KNEELING).z, fp_body (&place[0].who, FP_POSTURE_KNEELING, 0, 100).eye);
  g_assert_cmpfloat (fp_people_eye (people, 0, FP_POSTURE_STANDING).z, <, 1300);
}

/* --- seats ------------------------------------------------------------------- */

/* IBC 2015, 1004.4: one person for each 18 in (457) of bench; 2000 hold 4, 4000 hold 8. */
static void
test_places (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  g_autoptr (FpPeople) people = people_of (project);
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);
  g_assert_cmpuint (n, ==, 4 * 4 + 3 * 8);
  g_assert_cmpuint (fp_people_seats (people), ==, n);

  int gospel = fp_scene_find (fp_people_scene (people), "gospel");
  for (guint i = 0; i < 16; i++)
    {
      g_assert_cmpint ((int) place[i].owner, ==, gospel);
      g_assert_cmpuint (place[i].row, ==, i / 4 + 1);
      g_assert_cmpuint (place[i].number, ==, i % 4 + 1);
      near_to (place[i].at.z, 0);
      near_to (place[i].facing, 0);
      near_to (place[i].at.x, -3000 + ((double) (i % 4) - 1.5) * 457);
      near_to (place[i].at.y, place[0].at.y - 900 * (i / 4));
    }
  g_autofree char *name = fp_people_name (people, 6);
  g_assert_cmpstr (name, ==, "Pews: row 2, seat 3");
  g_autofree char *nobody = fp_people_name (people, 999);
  g_assert_cmpstr (nobody, ==, "");

  near_to (place[16].at.z, 0);
  near_to (place[24].at.z, 100);
  near_to (place[32].at.z, 200);
  near_to (place[32].facing, 10);
}

static void
test_eyes (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  g_autoptr (FpPeople) people = people_of (project);
  const FpPersonPlace *place = fp_people_places (people, NULL);
  FpVec3 sits = fp_people_eye (people, 24, FP_POSTURE_SITTING);
  FpVec3 stands = fp_people_eye (people, 24, FP_POSTURE_STANDING);

  near_to (sits.z, 100 + 450 + 775 - SLUMP);
  near_to (stands.z, 100 + 1578);
  /* The eyes lie before the middle of the body, the way it faces. */
  double forward = hypot (sits.x - place[24].at.x, sits.y - place[24].at.y);
  near_to (forward, 195.0 / 2 - 20);
  near_to (sits.x - place[24].at.x, -forward * sin (10 * G_PI / 180));
  /* One stands up out of a pew before the seat, not on it. */
  g_assert_cmpfloat (stands.y, >, sits.y);
}

static void
test_falling_floor (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  church_floor (&project, "nave", (FpBox) { -8000, -20000, 8000, 0 }, 0, 0, 0.04, 0);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -2000, 0 }, NULL, 0, { { "rows", 12 }, { NULL, 0 } } };
  church_survey (&project, &pews);
  g_autoptr (FpPeople) people = people_of (project);
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);
  g_assert_cmpuint (n, >, 50);
  for (guint i = 0; i < n; i++)
    near_to (place[i].at.z, -0.04 * place[i].at.y);
}

static void
test_gallery_rail_and_standing (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  const FpPoint loft[] = { { -5000, -20000 }, { 5000, -20000 }, { 5000, -16000 }, { -5000, -16000 } };
  const ChurchThing gallery = { "gallery", "loft", NULL, { 0, 0, 0 }, loft, 4, { { "level", 3200 }, { NULL, 0 } } };
  const ChurchThing choir = { "pews", "choir", "loft", { 0, -16500, 0 }, NULL, 0, { { "rows", 2 }, { NULL, 0 } } };
  const FpPoint corner[] = { { 0, 0 }, { 1800, 0 }, { 1800, 1200 }, { 0, 1200 } };
  const ChurchThing standing = { "standing-room", "back", NULL, { 0, -15000, 0 }, corner, 4, { { NULL, 0 } } };
  const ChurchThing rail = { "rail", "rail", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &gallery);
  church_survey (&project, &choir);
  church_survey (&project, &standing);
  church_add (&project, &rail);
  g_autoptr (FpPeople) people = people_of (project);
  guint n, up = 0, kneeling = 0, stand = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    {
      up += place[i].gallery ? 1 : 0;
      kneeling += place[i].at_rail ? 1 : 0;
      stand += place[i].postures == 1u << FP_POSTURE_STANDING;
      if (place[i].gallery)
        near_to (place[i].at.z, 3200);
      if (place[i].at_rail)
        g_assert_cmpuint (place[i].postures & (1u << FP_POSTURE_KNEELING), !=, 0);
    }
  g_assert_cmpuint (up, ==, 16);
  g_assert_cmpuint (stand, ==, 3 * 2); /* 600 mm squares */
  g_assert_cmpuint (kneeling, ==, 2 * (guint) floor ((6000 - 1200) / 2.0 / 600));
  g_assert_cmpuint (fp_people_seats (people), ==, 40 + 16);

  /* Kneeling places stay empty while the others look; all the others have a head and a trunk. */
  g_autoptr (FpSolids) bodies = fp_solids_new ();
  fp_people_bodies (people, FP_POSTURE_KNEELING, bodies);
  g_assert_cmpuint (fp_solids_count (bodies), ==, 2 * (n - kneeling));
}

/* --- bodies --------------------------------------------------------------- */

static void
check_body (const FpPeople *people, guint place, const FpSolid *head, const FpSolid *trunk, double foot)
{
  const FpPersonPlace *at = &fp_people_places (people, NULL)[place];
  g_assert_cmpint (head->part, ==, FP_PART_HEAD);
  g_assert_cmpint (trunk->part, ==, FP_PART_TRUNK);
  g_assert_cmpuint (head->owner, ==, place);
  g_assert_cmpuint (trunk->owner, ==, place);
  near_to (trunk->z0, at->at.z + foot);
  g_assert_cmpfloat (trunk->z1, <, head->cz);
  g_assert_cmpfloat (trunk->z1, >, trunk->z0 + 300);
  near_to (head->rx * 2, 151);
  near_to (head->ry * 2, 195);
  near_to (head->turn, at->facing);
  FpBox plan = fp_outline_box (trunk->outline, trunk->n_outline);
  if (at->facing == 0)
    {
      near_to (plan.x1 - plan.x0, 478);
      near_to (plan.y1 - plan.y0, 478 * 0.6);
    }
}

static void
test_bodies (void)
{
  g_autoptr (FpProject) project = two_blocks ();
  g_autoptr (FpPeople) people = people_of (project);
  static const double FOOT[] = { 450, 100, 0 };

  for (int posture = 0; posture < FP_N_POSTURES; posture++)
    {
      g_autoptr (FpSolids) bodies = fp_solids_new ();
      fp_people_bodies (people, (FpPosture) posture, bodies);
      guint n;
      const FpSolid *solid = fp_solids_peek (bodies, &n);
      g_assert_cmpuint (n, ==, 2 * 40);
      check_body (people, 0, &solid[0], &solid[1], FOOT[posture]);
      FpVec3 eye = fp_people_eye (people, 0, (FpPosture) posture);
      FpBody body = grown ((FpPosture) posture, 50, 450, 100);
      near_to (solid[0].cz, eye.z);
      near_to (fp_solid_box (&solid[0]).hi.z, body.crown);
    }
}

static double
celebrant_y (FpFacing facing)
{
  g_autoptr (FpProject) project = church_new (facing);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_add (&project, &altar);
  g_autoptr (FpPeople) people = people_of (project);
  g_autoptr (FpSolids) bodies = fp_solids_new ();
  fp_people_ministers (people, FP_MOMENT_OFFERTORY, bodies);
  g_assert_cmpuint (fp_solids_count (bodies), ==, 2);
  g_assert_cmpuint (fp_solids_get (bodies, 0)->owner, ==, 0);
  near_to (fp_solids_get (bodies, 0)->cz, 1578);
  return fp_solids_get (bodies, 0)->cy;
}

static void
test_celebrant (void)
{
  g_assert_cmpfloat (celebrant_y (FP_FACING_EAST), <, 5000 - 375);
  g_assert_cmpfloat (celebrant_y (FP_FACING_PEOPLE), >, 5000 + 375);
}

/* Where the celebrant stands: @y of his head, and at which thing. */
static double
only_celebrant (FpProject *project, const char *altar)
{
  g_autoptr (FpPeople) people = people_of (project);
  g_autoptr (FpSolids) bodies = fp_solids_new ();
  fp_people_ministers (people, FP_MOMENT_OFFERTORY, bodies);
  g_assert_cmpuint (fp_solids_count (bodies), ==, 2);
  g_assert_cmpint ((int) fp_solids_get (bodies, 0)->owner, ==, fp_scene_find (fp_people_scene (people), altar));
  return fp_solids_get (bodies, 0)->cy;
}

/* Facing the people he stands behind the altar only where there is room for him. */
static void
test_celebrant_before_wall (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_PEOPLE);
  const FpPoint run[] = { { -5000, 0 }, { 5000, 0 } };
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 5375 + 1000, 0 }, run, 2, { { NULL, 0 } } };
  const ChurchThing near = { "wall", "wall", NULL, { 0, 5375 + 250, 0 }, run, 2, { { NULL, 0 } } };
  church_add (&project, &altar);
  church_survey (&project, &wall);
  g_assert_cmpfloat (only_celebrant (project, "altar"), >, 5375);
  church_survey (&project, &near);
  g_assert_cmpfloat (only_celebrant (project, "altar"), <, 5000 - 375);

  church_survey (&project, &wall);
  church_param (&project, "altar", "setting", 1);
  g_assert_cmpfloat (only_celebrant (project, "altar"), <, 5000 - 375);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_assert_cmpint (church_placed (scene, "altar")->form.facing, ==, FP_FACING_EAST);
}

/* Many altars have one celebrant. */
static void
test_one_celebrant (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_PEOPLE);
  const ChurchThing old = { "altar", "old", NULL, { 0, 9000, 0 }, NULL, 0, { { "setting", 1 }, { NULL, 0 } } };
  const ChurchThing side = { "altar", "side", NULL, { -4000, 6000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing new = { "altar", "new", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &old);
  church_survey (&project, &side);
  church_add (&project, &new);
  g_assert_cmpfloat (only_celebrant (project, "new"), >, 5375);
}

static void
test_ministers (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_PEOPLE);
  const ChurchThing chair = { "chair", "chair", NULL, { 2000, 7000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing ambo = { "ambo", "ambo", NULL, { -2000, 2000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_add (&project, &chair);
  church_add (&project, &ambo);
  g_autoptr (FpPeople) people = people_of (project);
  g_autoptr (FpSolids) bodies = fp_solids_new ();
  fp_people_ministers (people, FP_MOMENT_READINGS, bodies);
  g_assert_cmpuint (fp_solids_count (bodies), ==, 4);
  /* Standing on a platform of 150; seated on 450 above a step of 150. */
  near_to (fp_solids_get (bodies, 0)->cz, 150 + 1578);
  near_to (fp_solids_get (bodies, 2)->cz, 150 + 450 + 775 - SLUMP);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/people/tables", test_tables);
  g_test_add_func ("/people/between-percentiles", test_between_percentiles);
  g_test_add_func ("/people/child", test_child);
  g_test_add_func ("/people/handbook", test_handbook);
  g_test_add_func ("/people/plausible", test_plausible);
  g_test_add_func ("/people/places", test_places);
  g_test_add_func ("/people/population", test_population);
  g_test_add_func ("/people/alike", test_alike);
  g_test_add_func ("/people/wheelchair", test_wheelchair);
  g_test_add_func ("/people/child-in-a-pew", test_child_in_a_pew);
  g_test_add_func ("/people/nobody-is-changed", test_nobody_is_changed);
  g_test_add_func ("/people/eyes", test_eyes);
  g_test_add_func ("/people/falling-floor", test_falling_floor);
  g_test_add_func ("/people/gallery-rail-and-standing", test_gallery_rail_and_standing);
  g_test_add_func ("/people/bodies", test_bodies);
  g_test_add_func ("/people/celebrant", test_celebrant);
  g_test_add_func ("/people/celebrant-before-wall", test_celebrant_before_wall);
  g_test_add_func ("/people/one-celebrant", test_one_celebrant);
  g_test_add_func ("/people/ministers", test_ministers);
  return g_test_run ();
}
