/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-adding.c - whatever is added to the sample parishes stands neither in a door nor in another thing */
#include "footpace/new-church.h"
#include "footpace/rules.h"
#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <string.h>

static const char *const samples[] = { "parish", "fan", "cathedral", "chapel" };

static FpProject *
load (const char *sample)
{
  g_autofree char *file = g_strconcat (sample, ".footpace", NULL);
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), file, NULL);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

/* How many things the rule finds in each other, or in a door. */
static guint
times_short (const FpProject *project, guint alternative, const char *rule)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  const FpMeasuring of = { scene, people, fp_levels (people), NULL };
  g_autoptr (FpFindings) findings = fp_findings_new (&of, books);
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (strcmp (finding[i].rule->id, rule) == 0)
      {
        if (finding[i].found == FP_FOUND_SHORT)
          g_test_message ("%s: %s", rule, finding[i].detail);
        return finding[i].found == FP_FOUND_SHORT ? finding[i].times : 0;
      }
  g_error ("no rule %s", rule);
}

/* A church to begin from is not full of faults: nothing that is required is short, and what else there is follows from seats
 * on one level, from a stone altar, from places for wheelchairs and other doors that somebody has to choose, or from what the authors
 * themselves differ about. */
static void
test_new_churches (void)
{
  static const char *const may_be_short[] = { "altar-weight", "mensa-seen", "mensa-mean", "sight-over-heads", "ambo-seen",
                                              "chair-seen", "cross-over-candlesticks", "floor-flight-short", "footpace-ends-burnett",
                                              "handrail-reach", "handrail-short-flight", "handrail-sides",
                                              "row-clear-quebec", "seat-width-ufc", "wheelchair-places", "ways-out-us", "ways-out-uk", NULL };

  for (guint shape = 0; shape < FP_ROOM_WALKED; shape++)
    for (guint books = FP_BOOKS_OLDER; books <= FP_BOOKS_BOTH; books++)
      {
        g_autoptr (GError) error = NULL;
        g_autoptr (FpProject) project = NULL;
        g_autoptr (FpFindings) findings = NULL;
        FpNewChurch spec;
        guint n;
        const FpFinding *finding;

        fp_new_church_defaults (&spec);
        spec.shape = (FpRoomShape) shape;
        spec.brief.books = (FpBooks) books;
        spec.brief.seats = 150;
        project = fp_new_church_make (&spec, &error);
        g_assert_no_error (error);
        findings = fp_findings_of (project, 0, NULL, NULL);
        finding = fp_findings_get (findings, &n);
        for (guint i = 0; i < n; i++)
          if (finding[i].found == FP_FOUND_SHORT)
            {
              g_test_message ("%s, books %u: %s: %s", fp_room_shape_label (spec.shape), books, finding[i].rule->id,
                              finding[i].measured);
              g_assert_cmpint (finding[i].rule->weight, !=, FP_WEIGHT_REQUIRED);
              g_assert_true (g_strv_contains (may_be_short, finding[i].rule->id));
            }
      }
}

static void
try_kind (const FpProject *project, guint alternative, const FpKind *kind)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) next = NULL;

  /* In each of them there is an altar, but not always a tabernacle. */
  if (kind->role == FP_ROLE_TABERNACLE_VEIL && fp_scene_role (scene, FP_ROLE_TABERNACLE) < 0)
    return;
  next = fp_set_out_new (scene, kind, NULL, &error);
  g_test_message ("%s in %s", kind->id, fp_alternative_id (fp_project_alternative (project, alternative)));
  g_assert_no_error (error);
  g_assert_nonnull (next);
  g_assert_cmpuint (times_short (next, alternative, "doors-clear"), ==, 0);
  /* Lights and cross are set on the altar about what is there, which may fill it; a second footpace goes nowhere, and in a
   * full nave there is no room for a ramp. */
  if (kind->role != FP_ROLE_CANDLES && kind->role != FP_ROLE_CRUCIFIX && kind->role != FP_ROLE_TABERNACLE
      && kind->role != FP_ROLE_GRADINE && kind->role != FP_ROLE_RAMP && kind->role != FP_ROLE_REREDOS && kind->role != FP_ROLE_FOOTPACE)
    g_assert_cmpuint (times_short (next, alternative, "things-apart"), ==, 0);
}

static void
test_sample (gconstpointer data)
{
  g_autoptr (FpProject) project = load (data);
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  for (guint a = 0; a < fp_project_n_alternatives (project); a++)
    {
      guint added = 0;

      g_assert_cmpuint (times_short (project, a, "doors-clear"), ==, 0);
      for (guint i = 0; i < n; i++)
        if ((kind[i]->flags & FP_KIND_SURVEY) == 0)
          {
            try_kind (project, a, kind[i]);
            added++;
          }
      g_assert_cmpuint (added, >=, 12);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      g_autofree char *name = g_strconcat ("/adding/", samples[i], NULL);
      g_test_add_data_func (name, samples[i], test_sample);
    }
  g_test_add_func ("/adding/new-churches", test_new_churches);
  return g_test_run ();
}
