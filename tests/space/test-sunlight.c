/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sun through a window, into somebody's eyes or past them, reckoned by hand in a small church. */
#include "church.h"
#include "footpace/sun.h"

#include <math.h>

/* Within its walls, which are 600 thick and 8000 high; clockwise, the east wall is its second side, the south wall its
 * third. */
static const FpPoint walls[] = { { -5000, -20000 }, { -5000, 10000 }, { 5000, 10000 }, { 5000, -20000 } };

/* In the middle of the east wall, and in the south wall across y = 2500. */
static const ChurchThing wall = { "wall", "walls", NULL, { 0, 0, 0 }, walls, 4, { { "closed", 1 }, { NULL, 0 } } };
static const ChurchThing east = {
  "opening", "east", "walls", { 0, 0, 0 }, NULL, 0,
  { { "side", 2 }, { "along", 5000 }, { "width", 2000 }, { "sill", 3000 }, { "head", 5000 }, { NULL, 0 } },
};
static const ChurchThing south = {
  "opening", "south", "walls", { 0, 0, 0 }, NULL, 0,
  { { "side", 3 }, { "along", 7500 }, { "width", 3000 }, { "sill", 1000 }, { "head", 7000 }, { NULL, 0 } },
};
static const ChurchThing altar = { "altar", "altar", NULL, { 0, 7000, 0 }, NULL, 0, { { NULL, 0 } } };
/* One row of one seat, on the axis. */
static const ChurchThing pew = {
  "pews", "pew", NULL, { 0, -10000, 0 }, NULL, 0, { { "rows", 1 }, { "length", 500 }, { NULL, 0 } },
};

static FpProject *
small_church (void)
{
  FpProject *project = church_new (FP_FACING_EAST);

  church_floor (&project, "floor", (FpBox) { -5000, -20000, 5000, 10000 }, 0, 0, 0, 0);
  church_survey (&project, &wall);
  church_survey (&project, &east);
  church_survey (&project, &south);
  church_survey (&project, &pew);
  church_add (&project, &altar);
  return project;
}

/* @aside: degrees from liturgical east towards the Epistle side */
static FpVec3
sun (double aside, double height)
{
  const double a = aside * G_PI / 180, h = height * G_PI / 180;

  return (FpVec3) { sin (a) * cos (h), cos (a) * cos (h), sin (h) };
}

typedef struct
{
  FpScene    *scene;
  FpPeople   *people;
  FpSunlight *light;
} Lit;

static Lit
lit_by (FpProject *project, FpVec3 towards)
{
  Lit lit;

  lit.scene = fp_scene_new (project, 0);
  lit.people = fp_people_new (lit.scene);
  lit.light = fp_sunlight_new (lit.people, towards);
  return lit;
}

static void
lit_clear (Lit *lit)
{
  fp_sunlight_free (lit->light);
  fp_people_unref (lit->people);
  fp_scene_unref (lit->scene);
}

static const char *
name_of (const Lit *lit, int index)
{
  return index < 0 ? "none" : fp_item_id (fp_scene_placed (lit->scene, NULL)[index].item);
}

/* The id of the opening through which it shines on a point; "none". */
static const char *
shines (FpProject *project, FpVec3 towards, FpVec3 on)
{
  Lit lit = lit_by (project, towards);
  const char *name = g_intern_string (name_of (&lit, fp_sunlight_window (lit.light, on)));

  lit_clear (&lit);
  return name;
}

static const char *
dazzles (FpProject *project, FpVec3 towards, guint place)
{
  Lit lit = lit_by (project, towards);
  const char *name = g_intern_string (name_of (&lit, fp_sunlight_in_eyes (lit.light, place)));

  lit_clear (&lit);
  return name;
}

/* From 1000 up and 20 m before the east wall: to its sill rise 2000 (5.71 degrees), to its head 4000, which have to be
 * cleared on both its faces: by the outer, 20.6 m away, 4000 is reached at 10.99 degrees. */
static void
test_heights (void)
{
  g_autoptr (FpProject) project = small_church ();
  const FpVec3 at = { 0, -10000, 1000 };

  g_assert_cmpstr (shines (project, sun (0, 5.6), at), ==, "none");
  g_assert_cmpstr (shines (project, sun (0, 5.8), at), ==, "east");
  g_assert_cmpstr (shines (project, sun (0, 10.9), at), ==, "east");
  g_assert_cmpstr (shines (project, sun (0, 11.1), at), ==, "none");
  /* Over the wall, of 7000 above it: there is a roof. */
  g_assert_cmpstr (shines (project, sun (0, 25), at), ==, "none");
  g_assert_cmpstr (shines (project, sun (0, -8), at), ==, "none");
  g_assert_cmpstr (shines (project, sun (0, 0), (FpVec3) { 0, -10000, 4000 }), ==, "none");
}

/* Half the width is 1000: at the outer face, 20.6 m away, that is 2.78 degrees. */
static void
test_sides (void)
{
  g_autoptr (FpProject) project = small_church ();
  const FpVec3 at = { 0, -10000, 1000 };

  g_assert_cmpstr (shines (project, sun (2.7, 8), at), ==, "east");
  g_assert_cmpstr (shines (project, sun (-2.7, 8), at), ==, "east");
  g_assert_cmpstr (shines (project, sun (2.85, 8), at), ==, "none");
  /* Abeam of the window in the south wall, and not by its light when the sun is in the north. */
  g_assert_cmpstr (shines (project, sun (90, 20), (FpVec3) { 0, 2500, 0 }), ==, "south");
  g_assert_cmpstr (shines (project, sun (-90, 20), (FpVec3) { 0, 2500, 0 }), ==, "none");
}

/* A half-round of 1000 over the head lets in what the square head kept out, at the middle but not at its shoulder. */
static void
test_arch (void)
{
  g_autoptr (FpProject) project = small_church ();

  church_param (&project, "east", "arch", 1);
  g_assert_cmpstr (shines (project, sun (0, 12), (FpVec3) { 0, -10000, 1000 }), ==, "east");
  g_assert_cmpstr (shines (project, sun (0, 12), (FpVec3) { 950, -10000, 1000 }), ==, "none");
}

/* A door is shut; as wide as an arch it has none. */
static void
test_door (void)
{
  g_autoptr (FpProject) project = small_church ();
  const ChurchThing door = {
    "opening", "door", "walls", { 0, 0, 0 }, NULL, 0,
    { { "side", 3 }, { "along", 20000 }, { "width", 1500 }, { "sill", 0 }, { "head", 2500 }, { NULL, 0 } },
  };

  church_survey (&project, &door);
  g_assert_cmpstr (shines (project, sun (90, 20), (FpVec3) { 4000, -10000, 10 }), ==, "none");
  church_param (&project, "door", "width", 3500);
  g_assert_cmpstr (shines (project, sun (90, 20), (FpVec3) { 4000, -10000, 10 }), ==, "door");
}

static void
test_pier (void)
{
  g_autoptr (FpProject) project = small_church ();
  const ChurchThing pier = { "pier", "pier", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };

  church_survey (&project, &pier);
  g_assert_cmpstr (shines (project, sun (0, 8), (FpVec3) { 0, -10000, 1000 }), ==, "none");
  g_assert_cmpstr (shines (project, sun (0, 8), (FpVec3) { 400, -10000, 1000 }), ==, "east");
  church_fate (&project, "pier", FP_FATE_REMOVED, NULL, NULL);
  g_assert_cmpstr (shines (project, sun (0, 8), (FpVec3) { 0, -10000, 1000 }), ==, "east");
}

/* Beyond the east window stands another room as high, without a roof told: no sun.  A yard wall under its sill is none. */
static void
test_next_room (void)
{
  g_autoptr (FpProject) project = small_church ();
  static const FpPoint run[] = { { -9000, 14000 }, { 9000, 14000 } };
  const ChurchThing yard = { "wall", "yard", NULL, { 0, 0, 0 }, run, 2, { { "height", 2500 }, { NULL, 0 } } };

  church_survey (&project, &yard);
  g_assert_cmpstr (shines (project, sun (0, 10), (FpVec3) { 0, -10000, 1000 }), ==, "east");
  church_param (&project, "yard", "height", 3500);
  g_assert_cmpstr (shines (project, sun (0, 10), (FpVec3) { 0, -10000, 1000 }), ==, "none");
}

/* --- eyes ------------------------------------------------------------------------- */

/* His eye is near the axis some 20 m before the wall, 1.2 m up or so: 8 degrees lead to 4000 on the wall. */
static void
test_eyes (void)
{
  g_autoptr (FpProject) project = small_church ();

  g_assert_cmpstr (dazzles (project, sun (0, 8), 0), ==, "east");
  g_assert_cmpstr (dazzles (project, sun (0, 3), 0), ==, "none");
  g_assert_cmpstr (dazzles (project, sun (90, 20), 0), ==, "none");
  g_assert_cmpstr (dazzles (project, sun (0, 8), 1), ==, "none"); /* there is but one place */
}

/* Some 43 degrees aside of the altar he has the south window, in which the sun may stand too far aside, or too high. */
static void
test_aside (void)
{
  g_autoptr (FpProject) project = small_church ();
  const ChurchThing near_pew = {
    "pews", "near", NULL, { 0, -3000, 0 }, NULL, 0, { { "rows", 1 }, { "length", 500 }, { NULL, 0 } },
  };
  FpVec3 eye;

  church_fate (&project, "pew", FP_FATE_REMOVED, NULL, NULL);
  church_survey (&project, &near_pew);
  Lit lit = lit_by (project, sun (43, 20));
  eye = fp_people_eye (lit.people, 0, FP_POSTURE_SITTING);
  /* Where that way meets the inner and the outer face of the south wall it lies between 1000 and 4000. */
  g_assert_cmpfloat (eye.y + 5000 / tan (43 * G_PI / 180), >, 1000);
  g_assert_cmpfloat (eye.y + 5600 / tan (43 * G_PI / 180), <, 4000);
  g_assert_cmpstr (name_of (&lit, fp_sunlight_in_eyes (lit.light, 0)), ==, "south");
  lit_clear (&lit);
  /* Through the same window, but 47 degrees aside; and higher than a brow lets in. */
  g_assert_cmpstr (shines (project, sun (47, 20), eye), ==, "south");
  g_assert_cmpstr (dazzles (project, sun (47, 20), 0), ==, "none");
  g_assert_cmpstr (shines (project, sun (43, 31), eye), ==, "south");
  g_assert_cmpstr (dazzles (project, sun (43, 31), 0), ==, "none");
  g_assert_cmpstr (dazzles (project, sun (43, 29), 0), ==, "south");
}

/* Without an altar he looks straight ahead, and so backwards where his pew is turned round. */
static void
test_facing (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing turned = {
    "pews", "pew", NULL, { 0, -10000, 180 }, NULL, 0, { { "rows", 1 }, { "length", 500 }, { NULL, 0 } },
  };

  church_floor (&project, "floor", (FpBox) { -5000, -20000, 5000, 10000 }, 0, 0, 0, 0);
  church_survey (&project, &wall);
  church_survey (&project, &east);
  church_survey (&project, &pew);
  g_assert_cmpstr (dazzles (project, sun (0, 8), 0), ==, "east");
  g_clear_pointer (&project, fp_project_unref);
  project = church_new (FP_FACING_EAST);
  church_survey (&project, &wall);
  church_survey (&project, &east);
  church_survey (&project, &turned);
  g_assert_cmpstr (dazzles (project, sun (0, 8), 0), ==, "none");
}

/* --- on the floor ------------------------------------------------------------------- */

static double
area_on_floor (const GArray *patches, const FpBox *within)
{
  double area = 0;

  for (guint i = 0; i < patches->len; i++)
    {
      const FpSunPatch *patch = &g_array_index (patches, FpSunPatch, i);
      g_autofree FpPoint *pt = g_new (FpPoint, patch->n);
      for (guint k = 0; k < patch->n; k++)
        {
          pt[k] = (FpPoint) { patch->floor[k].x, patch->floor[k].y };
          g_assert_cmpfloat_with_epsilon (patch->floor[k].z, 0, 1e-9);
          g_assert_true (pt[k].x >= within->x0 && pt[k].x <= within->x1 && pt[k].y >= within->y0 && pt[k].y <= within->y1);
        }
      area += fabs (fp_outline_area (pt, patch->n)) * (patch->hole ? -1 : 1);
    }
  return area;
}

/* Straight from the east, 20 degrees high: of what comes in the sill cuts off the lower part at the inner face, 3000 up,
 * and the head the upper at the outer face, 5000 up and 600 farther out. */
static void
test_patch (void)
{
  g_autoptr (FpProject) project = small_church ();
  const double slope = tan (20 * G_PI / 180), far = 10600 - 5000 / slope, near = 10000 - 3000 / slope;
  const FpBox within = { -1000.01, far - 0.01, 1000.01, near + 0.01 };
  Lit lit = lit_by (project, sun (0, 20));
  g_autoptr (GArray) patches = fp_sunlight_patches (lit.light);
  const FpSunPatch *patch = &g_array_index (patches, FpSunPatch, 0);

  g_assert_cmpuint (patches->len, ==, 1);
  g_assert_cmpstr (name_of (&lit, (int) patch->opening), ==, "east");
  g_assert_cmpfloat_with_epsilon (area_on_floor (patches, &within), 2000 * (near - far), 100);
  for (guint k = 0; k < patch->n; k++)
    {
      g_assert_cmpfloat_with_epsilon (patch->window[k].y, 10300, 1e-6);
      g_assert_cmpfloat_with_epsilon (patch->window[k].x, patch->floor[k].x, 1e-6);
      g_assert_cmpfloat_with_epsilon (patch->window[k].z, (10300 - patch->floor[k].y) * slope, 1e-6);
    }
  lit_clear (&lit);
}

/* A round pier 600 across stands in the middle of that light and parts it; a low block on the floor leaves a hole of shade,
 * as it is 200 high: as wide as it is, and longer by 200 / tan 20. */
static void
test_patch_with_shade (void)
{
  g_autoptr (FpProject) project = small_church ();
  const double slope = tan (20 * G_PI / 180), length = 2000 / slope - 600;
  const FpBox all = { -5000, -20000, 5000, 10000 };
  const ChurchThing pier = { "pier", "pier", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing block = {
    "pier", "block", NULL, { 0, 0, 0 }, NULL, 0,
    { { "shape", 1 }, { "width", 400 }, { "height", 200 }, { NULL, 0 } },
  };

  church_survey (&project, &block);
  Lit lit = lit_by (project, sun (0, 20));
  g_autoptr (GArray) patches = fp_sunlight_patches (lit.light);
  g_assert_cmpuint (patches->len, ==, 2);
  g_assert_false (g_array_index (patches, FpSunPatch, 0).hole);
  g_assert_true (g_array_index (patches, FpSunPatch, 1).hole);
  g_assert_cmpfloat_with_epsilon (area_on_floor (patches, &all), 2000 * length - 400 * (400 + 200 / slope), 100);
  lit_clear (&lit);

  church_fate (&project, "block", FP_FATE_REMOVED, NULL, NULL);
  church_survey (&project, &pier);
  lit = lit_by (project, sun (0, 20));
  g_autoptr (GArray) parted = fp_sunlight_patches (lit.light);
  g_assert_cmpuint (parted->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (area_on_floor (parted, &all), 1400 * length, 100);
  lit_clear (&lit);
}

/* Wherever the floor is lit, rays find the window, and where it is not they find none: held point by point. */
static void
test_patches_against_rays (void)
{
  g_autoptr (FpProject) project = small_church ();
  guint lit_points = 0;

  church_param (&project, "east", "arch", 1);
  church_param (&project, "south", "arch", 1);
  Lit lit = lit_by (project, sun (40, 24));
  g_autoptr (GArray) patches = fp_sunlight_patches (lit.light);
  for (double x = -4950; x < 5000; x += 130)
    for (double y = -19950; y < 10000; y += 170)
      {
        gboolean inside = FALSE, near_edge = FALSE;
        for (guint i = 0; i < patches->len; i++)
          {
            const FpSunPatch *patch = &g_array_index (patches, FpSunPatch, i);
            g_autofree FpPoint *pt = g_new (FpPoint, patch->n);
            for (guint k = 0; k < patch->n; k++)
              pt[k] = (FpPoint) { patch->floor[k].x, patch->floor[k].y };
            for (guint k = 0; k < patch->n; k++)
              near_edge = near_edge || fp_segment_distance (pt[k], pt[(k + 1) % patch->n], (FpPoint) { x, y }) < 40;
            if (fp_outline_contains (pt, patch->n, (FpPoint) { x, y }))
              inside = !inside;
          }
        if (near_edge)
          continue;
        lit_points += inside ? 1 : 0;
        g_assert_cmpint (fp_sunlight_window (lit.light, (FpVec3) { x, y, 2 }) >= 0, ==, inside);
      }
  g_assert_cmpuint (lit_points, >, 100);
  lit_clear (&lit);
}

static void
test_no_patch (void)
{
  g_autoptr (FpProject) project = small_church ();
  const FpVec3 none[] = { sun (180, 20), sun (-90, 20), sun (0, -5), sun (0, 90) };

  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      Lit lit = lit_by (project, none[i]);
      g_autoptr (GArray) patches = fp_sunlight_patches (lit.light);
      g_assert_cmpuint (patches->len, ==, 0);
      lit_clear (&lit);
    }
}

/* --- ministers -------------------------------------------------------------------- */

static const ChurchThing chair = { "chair", "chair", NULL, { -3000, 2500, 90 }, NULL, 0, { { NULL, 0 } } };

static const char *
dazzles_minister (FpProject *project, FpVec3 towards, FpOffice office)
{
  Lit lit = lit_by (project, towards);
  const char *name = g_intern_string (name_of (&lit, fp_sunlight_in_minister (lit.light, office)));

  lit_clear (&lit);
  return name;
}

/* Facing east his eyes, some 1600 up (ANSUR II, 50th percentile), are no farther than 4000 before the wall, whose sill is
 * 1400 above them: 19.3 degrees at the least, and its head 3400: of the outer face 36 at the most. */
static void
test_celebrant_facing_east (void)
{
  g_autoptr (FpProject) project = small_church ();

  g_assert_cmpstr (dazzles_minister (project, sun (0, 10), FP_OFFICE_AT_ALTAR), ==, "none");
  g_assert_cmpstr (dazzles_minister (project, sun (0, 29), FP_OFFICE_AT_ALTAR), ==, "east");
  /* Higher than his brow lets in, and from behind. */
  g_assert_cmpstr (dazzles_minister (project, sun (0, 31), FP_OFFICE_AT_ALTAR), ==, "none");
  g_assert_cmpstr (dazzles_minister (project, sun (90, 20), FP_OFFICE_AT_ALTAR), ==, "none");
  /* There is nobody else. */
  g_assert_cmpstr (dazzles_minister (project, sun (90, 20), FP_OFFICE_AT_CHAIR), ==, "none");
}

/* In the west wall across the axis: its sill is 3000 up, its head 7000. */
static const ChurchThing west = {
  "opening", "west", "walls", { 0, 0, 0 }, NULL, 0,
  { { "side", 4 }, { "along", 5000 }, { "width", 2000 }, { "sill", 3000 }, { "head", 7000 }, { NULL, 0 } },
};

/* The same church, the same evening sun: in the eyes of who faces the people, and not of who faces east. */
static void
test_celebrant_facing_people (void)
{
  g_autoptr (FpProject) project = small_church ();
  const FpFacing people = FP_FACING_PEOPLE;
  FpProject *turned;

  church_survey (&project, &west);
  g_assert_cmpstr (dazzles_minister (project, sun (180, 8), FP_OFFICE_AT_ALTAR), ==, "none");
  turned = fp_project_with_alternative_facing (project, 0, &people, NULL);
  g_assert_cmpstr (dazzles_minister (turned, sun (180, 8), FP_OFFICE_AT_ALTAR), ==, "west");
  /* Some 27 m away the sill is 1400 above his eyes: below 2.9 degrees it is hidden. */
  g_assert_cmpstr (dazzles_minister (turned, sun (180, 2), FP_OFFICE_AT_ALTAR), ==, "none");
  g_assert_cmpstr (dazzles_minister (turned, sun (0, 29), FP_OFFICE_AT_ALTAR), ==, "none");
  fp_project_unref (turned);
}

/* Sitting on the Gospel side, 8 m before the south window, its sill below his eyes: the sun is in them when he faces it, and
 * not with his back to it. */
static void
test_celebrant_at_chair (void)
{
  g_autoptr (FpProject) project = small_church ();
  ChurchThing turned = chair;

  church_add (&project, &chair);
  g_assert_cmpstr (dazzles_minister (project, sun (90, 25), FP_OFFICE_AT_CHAIR), ==, "south");
  fp_project_unref (project);
  project = small_church ();
  turned.place.turn = -90;
  church_add (&project, &turned);
  g_assert_cmpstr (dazzles_minister (project, sun (90, 25), FP_OFFICE_AT_CHAIR), ==, "none");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sunlight/heights", test_heights);
  g_test_add_func ("/sunlight/sides", test_sides);
  g_test_add_func ("/sunlight/arch", test_arch);
  g_test_add_func ("/sunlight/door", test_door);
  g_test_add_func ("/sunlight/pier", test_pier);
  g_test_add_func ("/sunlight/next-room", test_next_room);
  g_test_add_func ("/sunlight/eyes", test_eyes);
  g_test_add_func ("/sunlight/aside", test_aside);
  g_test_add_func ("/sunlight/facing", test_facing);
  g_test_add_func ("/sunlight/patch", test_patch);
  g_test_add_func ("/sunlight/patch-with-shade", test_patch_with_shade);
  g_test_add_func ("/sunlight/patches-against-rays", test_patches_against_rays);
  g_test_add_func ("/sunlight/no-patch", test_no_patch);
  g_test_add_func ("/sunlight/celebrant-east", test_celebrant_facing_east);
  g_test_add_func ("/sunlight/celebrant-people", test_celebrant_facing_people);
  g_test_add_func ("/sunlight/celebrant-chair", test_celebrant_at_chair);
  return g_test_run ();
}
