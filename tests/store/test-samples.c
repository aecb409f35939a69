/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-samples.c - the invented parishes: they load, they are written as we write, they hold what they say */
#include "store-cases.h"

#include "footpace/people.h"

#include <string.h>

typedef struct
{
  const char *file, *title;
  guint       seats;
  guint       gallery;        /* of those, on a gallery                       */
  FpUnits     units;
  const char *alternatives[5]; /* ended by NULL                               */
} Sample;

static const Sample samples[] = {
  { "parish", "Holy Rood", 312, 0, FP_UNITS_METRIC, { "existing", "a", "b" } },
  { "fan", "Our Lady of the Sheepfold", 492, 0, FP_UNITS_METRIC, { "existing", "raised" } },
  { "cathedral", "Cathedral of Our Lady of the Ford", 1200, 304, FP_UNITS_METRIC, { "existing", "a" } },
  { "chapel", "Chapel of the Good Shepherd", 90, 0, FP_UNITS_IMPERIAL, { "existing", "a" } },
};

static char *
path_of (const Sample *sample)
{
  g_autofree char *file = g_strconcat (sample->file, ".footpace", NULL);

  return g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), file, NULL);
}

static FpProject *
load (const Sample *sample)
{
  g_autofree char *path = path_of (sample);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  g_assert_true (fp_project_check (project, NULL));
  return project;
}

static void
test_says (gconstpointer data)
{
  const Sample *sample = data;
  g_autoptr (FpProject) project = load (sample);
  guint n = 0;

  g_assert_cmpstr (fp_project_brief (project)->title, ==, sample->title);
  g_assert_cmpint (fp_project_brief (project)->units, ==, sample->units);
  for (; sample->alternatives[n] != NULL; n++)
    g_assert_cmpstr (fp_alternative_id (fp_project_alternative (project, n)), ==, sample->alternatives[n]);
  g_assert_cmpuint (fp_project_n_alternatives (project), ==, n);
}

/* Opening a sample and saving it changes nothing. */
static void
test_bytes (gconstpointer data)
{
  g_autofree char *path = path_of (data), *found = NULL, *written = NULL;
  g_autoptr (FpProject) project = load (data);

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  written = store_case_bytes (project);
  g_assert_cmpstr (found, ==, written);
}

static void
test_xmllint (gconstpointer data)
{
  g_autofree char *path = path_of (data), *says = NULL;
  int status;

  if (!store_case_xmllint (path, &status, &says))
    {
      g_test_skip ("xmllint is not installed");
      return;
    }
  g_test_message ("%s", says);
  g_assert_cmpint (status, ==, 0);
}

static guint
seats_on_gallery (const FpPeople *people)
{
  guint n, on_gallery = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    on_gallery += place[i].gallery && place[i].seat > 0;
  return on_gallery;
}

static void
test_seats (gconstpointer data)
{
  const Sample *sample = data;
  g_autoptr (FpProject) project = load (sample);

  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, i);
      g_autoptr (FpPeople) people = fp_people_new (scene);
      g_assert_cmpuint (fp_people_seats (people), ==, sample->seats);
      g_assert_cmpuint (seats_on_gallery (people), ==, sample->gallery);
      g_assert_cmpint (fp_scene_role (scene, FP_ROLE_ALTAR), >=, 0);
    }
  g_assert_cmpuint (fp_project_brief (project)->seats, <=, sample->seats);
}

/* The chapel was measured with a rule in inches: 1 in = 25.4 mm exactly (international inch, 1959). */
static void
assert_whole_inches (const FpItem *item)
{
  const FpKind *kind = fp_item_kind (item);

  for (guint i = 0; i < fp_kind_n_params (kind); i++)
    if (kind->params[i].type == FP_PARAM_LENGTH && fp_item_params (item)[i] != kind->params[i].def)
      {
        const double inches = fp_item_params (item)[i] / FP_MM_PER_INCH;
        g_assert_cmpfloat_with_epsilon (inches, (double) (int) (inches + 0.5), 1e-9);
      }
}

static void
test_inches (void)
{
  g_autoptr (FpProject) project = load (&samples[3]);
  const FpAlternative *a = fp_project_alternative (project, 1);

  for (guint i = 0; i < fp_project_n_survey (project); i++)
    assert_whole_inches (fp_project_survey (project, i));
  for (guint i = 0; i < fp_alternative_n_items (a); i++)
    assert_whole_inches (fp_alternative_item (a, i));
}

/* In the fan the last rows are above the footpace as it is, and below it when it is raised. */
static void
test_fall (void)
{
  g_autoptr (FpProject) project = load (&samples[1]);
  static const char *const footpaces[] = { "platform", "footpace" };

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, i);
      g_autoptr (FpPeople) people = fp_people_new (scene);
      const FpPlaced *footpace = fp_scene_placed (scene, NULL) + fp_scene_find (scene, footpaces[i]);
      const double top = footpace->level + footpace->extent.top;
      guint n, above = 0;
      const FpPersonPlace *place = fp_people_places (people, &n);
      for (guint p = 0; p < n; p++)
        above += place[p].at.z >= top;
      g_test_message ("%u of %u places are at or above the footpace at %g", above, n, top);
      if (i == 0)
        g_assert_cmpuint (above, >, 50);
      else
        g_assert_cmpuint (above, ==, 0);
    }
}

static void
add (const char *what, const Sample *sample, GTestDataFunc function)
{
  g_autofree char *name = g_strconcat ("/samples/", sample->file, "/", what, NULL);

  g_test_add_data_func (name, sample, function);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      add ("says", &samples[i], test_says);
      add ("bytes", &samples[i], test_bytes);
      add ("xmllint", &samples[i], test_xmllint);
      add ("seats", &samples[i], test_seats);
    }
  g_test_add_func ("/samples/inches", test_inches);
  g_test_add_func ("/samples/fall", test_fall);
  return g_test_run ();
}
