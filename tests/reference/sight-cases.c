/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-cases.h"

#include "footpace/store.h"

#define PLACES_MAX 200 /* looked from, for each posture and focus */

SightCase *
sight_case_new (const FpProject *project)
{
  guint n;
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  SightCase *self = g_new0 (SightCase, 1);
  self->people = fp_people_new (scene);
  fp_people_places (self->people, &n);
  self->every = 1 + n / PLACES_MAX;
  return self;
}

SightCase *
sight_case_load (const char *name)
{
  g_autoptr (GError) error = NULL;
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *path = folder != NULL ? g_build_filename (folder, name, NULL) : NULL;

  if (path == NULL || !g_file_test (path, G_FILE_TEST_EXISTS))
    return NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);
  g_assert_no_error (error);
  return sight_case_new (project);
}

void
sight_case_free (SightCase *self)
{
  fp_people_unref (self->people);
  g_free (self);
}

FpVec3
sight_case_end (FpVec3 eye, FpVec3 point)
{
  FpVec3 d = fp_vec3_sub (point, eye);
  double length = fp_vec3_length (d);
  return fp_vec3_add (eye, fp_vec3_scale (d, length > 2 ? 1 - 2 / length : 0));
}

guint
sight_case_minister (const SightCase *self, FpFocus focus)
{
  const FpScene *scene = fp_people_scene (self->people);
  int at = -1;
  if (focus == FP_FOCUS_AMBO)
    at = fp_scene_role (scene, FP_ROLE_AMBO);
  else if (focus == FP_FOCUS_CHAIR)
    at = fp_scene_role (scene, FP_ROLE_CHAIR);
  return at >= 0 ? (guint) at : G_MAXUINT;
}
