/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store-cases.h"

#include <math.h>
#include <string.h>

static const FpBrief brief = {
  .title = "Chapel of the Ford", .place = "Askerby", .client = "", .author = "", .note = "",
  .books = FP_BOOKS_BOTH, .facing = FP_FACING_EAST,
  .celebrations = FP_CELEBRATION_LOW | FP_CELEBRATION_SUNDAY,
  .ministers = 4, .seats = 80, .units = FP_UNITS_METRIC, .north = 90, .percentile = 50,
};

FpProject *
store_case_small (void)
{
  return fp_project_new (&brief);
}

/* --- one of every kind --- */

static const FpPoint room[] = { { -4000, -6000 }, { -4000, 6000 }, { 4000, 6000 }, { 4000, -6000 } };

static double
some_value (const FpParam *param, GRand *rand)
{
  double value = param->min + (param->max - param->min) * g_rand_double (rand);

  if (param->type == FP_PARAM_COUNT || param->type == FP_PARAM_CHOICE)
    return floor (value);
  /* As people measure, or with all the digits that a double has. */
  return g_rand_boolean (rand) ? CLAMP (round (value * 10) / 10, param->min, param->max) : value;
}

static FpItem *
make (const FpKind *kind, const double *param, const char *on)
{
  g_autofree char *id = g_strconcat ("the-", kind->id, NULL);
  const gboolean drawn = (kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0;
  const FpItemInit init = { .id = id, .kind = kind, .on = on, .place = { 10, -20.5, 0 }, .param = param,
                            .corner = room, .n_corners = drawn ? G_N_ELEMENTS (room) : 0 };

  return fp_item_new (&init, NULL);
}

/* Ranges alone do not make a thing: tries until the relations between its parameters hold too. */
static FpItem *
item_of (const FpKind *kind, GRand *rand, const char *on)
{
  double param[FP_PARAM_MAX];
  FpItem *item = NULL;

  fp_kind_defaults (kind, param);
  for (int tries = 0; item == NULL && tries < (rand != NULL ? 1000 : 1); tries++)
    {
      for (guint i = 0; rand != NULL && i < fp_kind_n_params (kind); i++)
        param[i] = g_rand_boolean (rand) ? some_value (&kind->params[i], rand) : kind->params[i].def;
      item = make (kind, param, on);
    }
  g_assert_nonnull (item);
  return item;
}

/* Walls and what is cut into them must fit each other: these keep their defaults. */
static gboolean
is_free (const FpKind *kind)
{
  return kind->role != FP_ROLE_WALL && (kind->flags & FP_KIND_IN_WALL) == 0;
}

static const char *
support_of (const FpKind *kind)
{
  static char id[80];
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);
  const FpRole wanted = (kind->flags & FP_KIND_IN_WALL) != 0 ? FP_ROLE_WALL
                        : kind->stands_on != NULL ? kind->stands_on[0] : FP_ROLE_NONE;

  for (guint i = 0; i < n; i++)
    if (wanted != FP_ROLE_NONE && wanted != FP_ROLE_FLOOR && kinds[i]->role == wanted)
      {
        g_snprintf (id, sizeof id, "the-%s", kinds[i]->id);
        return id;
      }
  return NULL;
}

FpProject *
store_case_every_kind (GRand *rand)
{
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();
  g_autoptr (GError) error = NULL;
  FpProject *project;
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  fp_project_builder_brief (builder, &brief);
  g_assert_true (fp_project_builder_alternative (builder, "a", "The first", "", NULL));
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (FpItem) item = item_of (kinds[i], is_free (kinds[i]) ? rand : NULL, support_of (kinds[i]));
      if ((kinds[i]->flags & FP_KIND_SURVEY) != 0)
        g_assert_true (fp_project_builder_survey (builder, item, NULL));
      else
        g_assert_true (fp_project_builder_item (builder, item, NULL));
    }
  project = fp_project_builder_end (builder, &error);
  g_assert_no_error (error);
  return project;
}

/* --- bytes --- */

char *
store_case_bytes (const FpProject *project)
{
  gsize length;
  char *bytes = fp_store_write (project, &length);

  g_assert_cmpuint (length, ==, strlen (bytes));
  return bytes;
}

FpProject *
store_case_parse (const char *xml)
{
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_parse (xml, strlen (xml), "test", &error);

  g_assert_no_error (error);
  g_assert_nonnull (project);
  return project;
}

gboolean
store_case_xmllint (const char *path, int *status, char **says)
{
  g_autofree char *schema = g_build_filename (g_getenv ("FOOTPACE_SCHEMAS"), "store", "project.rng", NULL);
  g_autofree char *program = g_find_program_in_path ("xmllint");
  const char *const argv[] = { "xmllint", "--noout", "--nonet", "--relaxng", schema, path, NULL };
  g_autoptr (GError) error = NULL;

  if (program == NULL)
    return FALSE;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, says, status, &error);
  g_assert_no_error (error);
  return TRUE;
}
