/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-every-kind.c - what must hold of every kind, for its defaults and for forms drawn at random
 *
 * A kind that forgets something fails here without a test of its own.
 */
#include "kind-fixture.h"

#include "footpace/error.h"

#include <math.h>

#define RANDOM_FORMS 200
#define TOLERANCE    1.0 /* mm */

/* Openings are cut out of their wall; standing room and wheelchair places are made of people. */
static gboolean
has_body (const FpKind *kind)
{
  return kind->role != FP_ROLE_OPENING && kind->role != FP_ROLE_STANDING_ROOM
         && kind->role != FP_ROLE_WHEELCHAIR;
}

/* --- the table ------------------------------------------------------------ */

static void
test_table (void)
{
  /* The ids that project files are written with. */
  static const char *const ids[] = {
    "altar", "footpace", "gradine", "tabernacle", "crucifix", "candlesticks", "reredos", "credence", "sedilia", "ambo",
    "chair", "rail", "wall", "opening", "pier", "floor", "steps", "pews", "gallery", "standing-room",
    "wheelchair-places", "altar-cloths", "frontal", "tabernacle-veil", "altar-cards", "missal-stand", "hand-bell",
    "sanctus-candle", "flowers", "reliquaries", "branched-lights",
    "seventh-candle", "sanctuary-lamp", "paschal-candlestick", "processional-candlesticks", "canopy", "statue",
    "credence-vessels", "ambry", "piscina", "font", "throne", "faldstool", "stools", "choir-stalls", "lectern",
    "pulpit", "kneelers", "chairs", "ramp", "handrail", "screen",
  };
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  g_assert_cmpuint (n, >=, G_N_ELEMENTS (ids));
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    g_assert_nonnull (fp_kind_find (ids[i]));
  g_assert_null (fp_kind_find ("sofa"));
  g_assert_null (fp_kind_find (NULL));
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (fp_kind_find (kinds[i]->id) == kinds[i]);
      for (guint j = 0; j < i; j++)
        {
          g_assert_cmpstr (kinds[i]->label, !=, kinds[j]->label);
          g_assert_true (kinds[i]->role != kinds[j]->role);
        }
    }
}

static void
check_text (const char *text)
{
  g_assert_nonnull (text);
  g_assert_cmpuint (strlen (text), >=, 2);
  g_assert_true (g_utf8_validate (text, -1, NULL));
}

static void
check_refused (const FpParam *param, double value)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_param_check (param, value, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, param->label));
  g_assert_false (fp_param_check_in (param, value, FP_UNITS_IMPERIAL, NULL));
}

static void
check_param (const FpParam *param)
{
  g_autoptr (GError) error = NULL;

  check_text (param->label);
  check_text (param->source);
  g_assert_true (fp_param_check (param, param->def, &error));
  g_assert_no_error (error);
  g_assert_true (fp_param_check (param, param->min, NULL));
  g_assert_true (fp_param_check_in (param, param->min, FP_UNITS_IMPERIAL, NULL));
  g_assert_true (fp_param_check (param, param->max, NULL));
  check_refused (param, NAN);
  check_refused (param, INFINITY);
  check_refused (param, -INFINITY);
  check_refused (param, param->min - 1);
  check_refused (param, param->max + 1);
  if (param->type == FP_PARAM_COUNT || param->type == FP_PARAM_CHOICE)
    check_refused (param, param->min + 0.5);
  if (param->type == FP_PARAM_LENGTH)
    g_assert_cmpfloat (param->min, >=, 0);
  g_assert_cmpfloat (fabs (param->max), <=, FP_LENGTH_MAX);
}

static void
check_choices (const FpParam *param)
{
  guint n = 0;

  while (param->choices[n].id != NULL)
    {
      check_text (param->choices[n].label);
      for (guint i = 0; i < n; i++)
        g_assert_cmpstr (param->choices[i].id, !=, param->choices[n].id);
      n++;
    }
  g_assert_cmpuint (n, >=, 2);
  g_assert_cmpfloat (param->min, ==, 0);
  g_assert_cmpfloat (param->max, ==, n - 1);
}

static void
test_params (gconstpointer data)
{
  const FpKind *kind = data;
  const guint n = fp_kind_n_params (kind);

  check_text (kind->label);
  check_text (kind->tells);
  g_assert_true (g_str_has_suffix (kind->tells, "."));
  g_assert_cmpuint (n, >, 0);
  g_assert_cmpuint (n, <=, FP_PARAM_MAX);
  for (guint i = 0; i < n; i++)
    {
      const FpParam *param = &kind->params[i];
      check_param (param);
      g_assert_true ((param->type == FP_PARAM_CHOICE) == (param->choices != NULL));
      if (param->choices != NULL)
        check_choices (param);
      g_assert_cmpint (fp_kind_param_index (kind, param->id), ==, (int) i);
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (kind->params[j].label, !=, param->label);
    }
  g_assert_cmpint (fp_kind_param_index (kind, "no-such"), ==, -1);
}

/* --- one form --------------------------------------------------------------- */

static void
check_point_within (FpPoint p, const FpBox *box, double more)
{
  g_assert_cmpfloat (p.x, >=, box->x0 - more);
  g_assert_cmpfloat (p.x, <=, box->x1 + more);
  g_assert_cmpfloat (p.y, >=, box->y0 - more);
  g_assert_cmpfloat (p.y, <=, box->y1 + more);
}

static void
check_extent (const FpKind *kind, const FpExtent *extent)
{
  g_assert_false (fp_box_is_empty (&extent->plan));
  g_assert_true (isfinite (extent->plan.x0 + extent->plan.y0 + extent->plan.x1 + extent->plan.y1));
  g_assert_true (isfinite (extent->height) && isfinite (extent->top));
  if (!(kind->flags & FP_KIND_FROM_DATUM))
    g_assert_cmpfloat (extent->height, >=, 0);
  if (!fp_box_is_empty (&extent->bearing))
    {
      check_point_within ((FpPoint) { extent->bearing.x0, extent->bearing.y0 }, &extent->plan, TOLERANCE);
      check_point_within ((FpPoint) { extent->bearing.x1, extent->bearing.y1 }, &extent->plan, TOLERANCE);
      g_assert_cmpfloat (extent->top, <=, extent->height + TOLERANCE);
    }
}

static void
check_solids (const Fixture *fixture, const FpKind *kind, const FpExtent *extent)
{
  g_autoptr (FpSolids) solids = fixture_solids (fixture, kind);
  const FpSolid *s;
  guint n;

  s = fp_solids_peek (solids, &n);
  g_assert_true ((n > 0) == has_body (kind));
  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&s[i]);
      g_assert_cmpfloat (fp_solid_volume (&s[i]), >, 0);
      check_point_within ((FpPoint) { box.lo.x, box.lo.y }, &extent->plan, TOLERANCE);
      check_point_within ((FpPoint) { box.hi.x, box.hi.y }, &extent->plan, TOLERANCE);
      g_assert_cmpfloat (box.hi.z, <=, extent->height + TOLERANCE);
      if (!(kind->flags & (FP_KIND_FROM_DATUM | FP_KIND_HUNG)) && fixture->form.ground == NULL)
        g_assert_cmpfloat (box.lo.z, >=, -TOLERANCE);
      if (s[i].shape == FP_SOLID_PRISM)
        g_assert_false (fp_outline_crosses_itself (s[i].outline, s[i].n_outline, NULL));
    }
}

static void
check_dims (const Fixture *fixture, const FpKind *kind)
{
  g_autoptr (GArray) dims = fixture_take (fixture, kind->dims, sizeof (FpDimSpec));

  for (guint i = 0; i < dims->len; i++)
    {
      const FpDimSpec *dim = &g_array_index (dims, FpDimSpec, i);
      const double length = fp_vec3_length (fp_vec3_sub (dim->b, dim->a));
      g_assert_cmpfloat (length, >, 0);
      g_assert_cmpuint (dim->views, !=, 0);
      g_assert_cmpuint (dim->views >> FP_N_VIEWS, ==, 0);
      g_assert_cmpuint (dim->times, >=, 1);
      if (dim->param < 0)
        continue;
      g_assert_cmpint (dim->param, <, (int) fp_kind_n_params (kind));
      g_assert_cmpint (kind->params[dim->param].type, ==, FP_PARAM_LENGTH);
      g_assert_cmpfloat_with_epsilon (length, dim->times * fixture->param[dim->param], 1e-6);
    }
}

static void
check_people (const Fixture *fixture, const FpKind *kind, const FpExtent *extent)
{
  g_autoptr (GArray) seats = fixture_take (fixture, kind->seats, sizeof (FpSeat));
  g_autoptr (GArray) ministers = fixture_take (fixture, kind->ministers, sizeof (FpMinister));
  FpBox room = extent->plan;

  /* Communicants kneel on the ledge before the rail: 1 ft (Micklethwaite, Modern Parish Churches, 1874, XIII); before a
   * bowed one, to its sides as well. */
  if (kind->role == FP_ROLE_RAIL)
    room = (FpBox) { room.x0 - 305, room.y0 - 305, room.x1 + 305, room.y1 };
  for (guint i = 0; i < seats->len; i++)
    {
      const FpSeat *seat = &g_array_index (seats, FpSeat, i);
      check_point_within (seat->at, &room, TOLERANCE);
      g_assert_cmpuint (seat->row, >=, 1);
      g_assert_cmpuint (seat->number, >=, 1);
      g_assert_cmpuint (seat->postures, !=, 0);
      g_assert_true (isfinite (seat->facing + seat->z));
    }
  for (guint i = 0; i < ministers->len; i++)
    g_assert_true (isfinite (g_array_index (ministers, FpMinister, i).facing));
}

static void
check_targets (const Fixture *fixture, const FpKind *kind)
{
  g_autoptr (GArray) targets = fixture_take (fixture, kind->targets, sizeof (FpTarget));

  for (guint i = 0; i < targets->len; i++)
    {
      const FpTarget *target = &g_array_index (targets, FpTarget, i);
      g_assert_cmpfloat (fp_vec3_length (fp_vec3_cross (target->u, target->v)), >, 1000); /* mm2 */
    }
}

static void
check_quantities (const Fixture *fixture, const FpKind *kind)
{
  g_autoptr (GArray) found = fixture_take (fixture, kind->quantities, sizeof (FpQuantity));

  for (guint i = 0; i < found->len; i++)
    {
      const FpQuantity *quantity = &g_array_index (found, FpQuantity, i);
      check_text (quantity->what);
      g_assert_cmpfloat (quantity->amount, >, 0);
      g_assert_true (isfinite (quantity->amount));
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (g_array_index (found, FpQuantity, j).what, !=, quantity->what);
    }
}

static void
check_surfaces (const Fixture *fixture, const FpKind *kind)
{
  g_autoptr (GArray) surfaces = fp_surfaces_new ();

  if (kind->surfaces == NULL)
    return;
  kind->surfaces (&fixture->form, surfaces);
  /* A font may stand without a step, and stalls level with the floor. */
  if (kind->role != FP_ROLE_FONT && kind->role != FP_ROLE_CHOIR_STALLS)
    g_assert_cmpuint (surfaces->len, >, 0);
  for (guint i = 0; i < surfaces->len; i++)
    {
      const FpSurface *surface = &g_array_index (surfaces, FpSurface, i);
      g_assert_cmpint (surface->use, !=, FP_FLOOR_NONE);
      g_assert_cmpfloat (fabs (fp_outline_area (surface->outline, surface->n_outline)), >, 0);
    }
}

static void
check_amiss (const Fixture *fixture, const FpKind *kind, gboolean must_be_well)
{
  g_autofree char *amiss = kind->amiss != NULL ? kind->amiss (&fixture->form) : NULL;

  if (must_be_well)
    g_assert_cmpstr (amiss, ==, NULL);
  else if (amiss != NULL)
    g_assert_true (g_str_has_suffix (amiss, "."));
}

static void
check_form (const Fixture *fixture, const FpKind *kind, gboolean must_be_well)
{
  const FpExtent extent = fixture_extent (fixture, kind);

  check_extent (kind, &extent);
  check_solids (fixture, kind, &extent);
  check_dims (fixture, kind);
  check_people (fixture, kind, &extent);
  check_targets (fixture, kind);
  check_quantities (fixture, kind);
  check_surfaces (fixture, kind);
  check_amiss (fixture, kind, must_be_well);
  g_autoptr (GArray) strokes = fixture_take (fixture, kind->strokes, sizeof (FpStroke));
  for (guint i = 0; i < strokes->len; i++)
    g_assert_true (isfinite (g_array_index (strokes, FpStroke, i).a.x + g_array_index (strokes, FpStroke, i).b.y));
}

static void
test_defaults (gconstpointer data)
{
  const FpKind *kind = data;
  Fixture fixture;

  fixture_init (&fixture, kind);
  check_form (&fixture, kind, TRUE);
  fixture.form.facing = FP_FACING_PEOPLE;
  check_form (&fixture, kind, TRUE);
}

/* --- forms at random ---------------------------------------------------------- */

static double
random_value (const FpParam *param, GRand *rand)
{
  if (param->type == FP_PARAM_COUNT || param->type == FP_PARAM_CHOICE)
    return g_rand_int_range (rand, (int) param->min, (int) param->max + 1);

  /* Half of them near the default, as people draw; half anywhere in the range. */
  if (g_rand_boolean (rand))
    return CLAMP (param->def * g_rand_double_range (rand, 0.5, 2), param->min, param->max);
  return g_rand_double_range (rand, param->min, param->max);
}

static double
falling_ground (gconstpointer data, FpPoint local)
{
  const double *fall = data;

  return local.x * fall[0] + local.y * fall[1];
}

static void
add_random_holes (Fixture *fixture, FpHole hole[3], GRand *rand)
{
  for (guint i = 0; i < 3; i++)
    hole[i] = (FpHole) {
      .side = (guint) g_rand_int_range (rand, 0, 7),
      .along = g_rand_double_range (rand, 0, 9000),
      .width = g_rand_double_range (rand, 50, 4000),
      .sill = g_rand_double_range (rand, 0, 3000),
      .head = g_rand_double_range (rand, 0, 9000),
      .arched = g_rand_boolean (rand),
    };
  fixture->form.hole = hole;
  fixture->form.n_holes = (guint) g_rand_int_range (rand, 0, 4);
}

static void
test_random (gconstpointer data)
{
  const FpKind *kind = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (20240229);

  for (guint i = 0; i < RANDOM_FORMS; i++)
    {
      const double fall[2] = { g_rand_double_range (rand, -0.2, 0.2), g_rand_double_range (rand, -0.2, 0.2) };
      FpHole hole[3];
      Fixture fixture;

      fixture_init (&fixture, kind);
      for (guint p = 0; p < fp_kind_n_params (kind); p++)
        fixture.param[p] = random_value (&kind->params[p], rand);
      if (kind->flags & FP_KIND_RUN)
        add_random_holes (&fixture, hole, rand);
      if (kind->role == FP_ROLE_PEWS && g_rand_boolean (rand))
        {
          fixture.form.ground = falling_ground;
          fixture.form.ground_data = fall;
        }
      check_form (&fixture, kind, FALSE);
    }
}

/* --- solids beside each other --------------------------------------------------- */

static double
radius_at (const FpSolid *s, double z)
{
  return s->r0 + (s->r1 - s->r0) * (z - s->z0) / (s->z1 - s->z0);
}

static gboolean
is_inside (const FpSolid *s, FpVec3 p)
{
  if (s->shape == FP_SOLID_PRISM)
    return p.z > fp_solid_foot_at (s, p.x, p.y) && p.z < fp_solid_top_at (s, p.x, p.y)
           && fp_outline_contains (s->outline, s->n_outline, (FpPoint) { p.x, p.y });
  if (s->shape == FP_SOLID_ROUND)
    return p.z > s->z0 && p.z < s->z1 && hypot (p.x - s->cx, p.y - s->cy) < radius_at (s, p.z);
  return pow ((p.x - s->cx) / s->rx, 2) + pow ((p.y - s->cy) / s->ry, 2) + pow ((p.z - s->cz) / s->rz, 2) < 1;
}

/* Quantities add up volumes, so pieces must not stand in each other.  The blocks of a footpace are nested on purpose
 * (its quantities allow for it), and the limbs of a figure join. */
static void
test_apart (gconstpointer data)
{
  const FpKind *kind = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  Fixture fixture;

  fixture_init (&fixture, kind);
  for (int form = 0; form < 3; form++)
    {
      g_autoptr (FpSolids) solids = NULL;
      const FpSolid *s;
      guint n;

      for (guint p = 0; p < fp_kind_n_params (kind); p++)
        if (kind->params[p].type == FP_PARAM_CHOICE)
          fixture.param[p] = MIN (form, kind->params[p].max);
      solids = fixture_solids (&fixture, kind);
      s = fp_solids_peek (solids, &n);
      for (guint i = 0; i < n; i++)
        for (int probe = 0; probe < 20; probe++)
          {
            const FpBox3 box = fp_solid_box (&s[i]);
            const FpVec3 p = { g_rand_double_range (rand, box.lo.x, box.hi.x),
                               g_rand_double_range (rand, box.lo.y, box.hi.y),
                               g_rand_double_range (rand, box.lo.z, box.hi.z) };
            for (guint j = 0; is_inside (&s[i], p) && j < n; j++)
              g_assert_false (j != i && is_inside (&s[j], p));
          }
    }
}

/* --- all of them ------------------------------------------------------------------ */

static void
add_tests (const FpKind *kind)
{
  g_autofree char *params = g_strdup_printf ("/kinds/%s/params", kind->id);
  g_autofree char *defaults = g_strdup_printf ("/kinds/%s/defaults", kind->id);
  g_autofree char *random = g_strdup_printf ("/kinds/%s/random", kind->id);
  g_autofree char *apart = g_strdup_printf ("/kinds/%s/apart", kind->id);

  g_test_add_data_func (params, kind, test_params);
  g_test_add_data_func (defaults, kind, test_defaults);
  g_test_add_data_func (random, kind, test_random);
  if (kind->role != FP_ROLE_FOOTPACE && kind->role != FP_ROLE_CRUCIFIX)
    g_test_add_data_func (apart, kind, test_apart);
}

int
main (int argc, char **argv)
{
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kinds/table", test_table);
  for (guint i = 0; i < n; i++)
    add_tests (kinds[i]);
  return g_test_run ();
}
