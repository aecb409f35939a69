/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is made again after an edit must be, to the last bit, what is made from nothing: whatever the edit was. */
#include "projection-private.h"

#include "../bench/parish.h"

#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <string.h>

#define EDITS 50
#define PICKS 60

/* --- one projection against another ------------------------------------------------ */

static void
assert_same_cuts (const FpProjection *a, const FpProjection *b)
{
  guint n, m;
  const FpProjectedCut *p = fp_projection_cuts (a, &n), *q = fp_projection_cuts (b, &m);

  g_assert_cmpuint (n, ==, m);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (p[i].owner, ==, q[i].owner);
      g_assert_cmpuint (p[i].n, ==, q[i].n);
      g_assert_true (memcmp (p[i].outline, q[i].outline, p[i].n * sizeof (FpPoint)) == 0);
    }
}

/* Pens and ends too: the lines are numbers without gaps between them. */
static void
assert_same_lines (const FpProjection *a, const FpProjection *b)
{
  guint n, m;
  const FpProjectedLine *p = fp_projection_lines (a, &n), *q = fp_projection_lines (b, &m);

  G_STATIC_ASSERT (sizeof (FpProjectedLine) == 4 * sizeof (double) + sizeof (guint) + sizeof (FpPen));
  g_assert_cmpuint (n, ==, m);
  g_assert_true (memcmp (p, q, n * sizeof *p) == 0);
}

static void
assert_same_picks (const FpProjection *a, const FpProjection *b, GRand *rand)
{
  const FpBox box = fp_projection_box (a), other = fp_projection_box (b);

  g_assert_true (memcmp (&box, &other, sizeof box) == 0);
  for (guint i = 0; i < PICKS && !fp_box_is_empty (&box); i++)
    {
      const FpPoint at = { g_rand_double_range (rand, box.x0 - 1, box.x1 + 1),
                           g_rand_double_range (rand, box.y0 - 1, box.y1 + 1) };
      g_assert_cmpint (fp_projection_pick (a, at), ==, fp_projection_pick (b, at));
    }
}

/* --- edits at random ------------------------------------------------------------------ */

typedef struct
{
  GRand     *rand;
  GPtrArray *past;   /* FpProject: newest last */
  FpScene   *scene;
  FpHidden   hidden;
  FpCut      cut[FP_N_VIEWS];
  guint      done;   /* edits that could be made */
} Hand;

static const FpPlaced *
any_placed (Hand *hand)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (hand->scene, &n);

  return &placed[g_rand_int_range (hand->rand, 0, (gint32) n)];
}

static double
any_of (Hand *hand, double from, double to)
{
  return from < to ? g_rand_double_range (hand->rand, from, to) : from;
}

static FpProject *
move_any (Hand *hand)
{
  const FpVec3 by = { any_of (hand, -1500, 1500), any_of (hand, -1500, 1500), 0 };

  return fp_set_out_move (hand->scene, fp_item_id (any_placed (hand)->item), by, NULL);
}

/* As while something is dragged. */
static FpProject *
nudge_any (Hand *hand)
{
  const FpVec3 by = { g_rand_int_range (hand->rand, -2, 3) * 10.0, g_rand_int_range (hand->rand, -2, 3) * 10.0, 0 };

  return fp_set_out_move (hand->scene, fp_item_id (any_placed (hand)->item), by, NULL);
}

static FpProject *
turn_any (Hand *hand)
{
  const FpItem *item = any_placed (hand)->item;
  FpPlace place = fp_item_place (item);

  place.turn += g_rand_boolean (hand->rand) ? 90 : any_of (hand, -180, 180);
  return fp_set_out_place (hand->scene, fp_item_id (item), &place, NULL);
}

/* Its size, its level, how many there are of it: any of its parameters. */
static FpProject *
resize_any (Hand *hand)
{
  const FpItem *item = any_placed (hand)->item;
  const FpKind *kind = fp_item_kind (item);
  const guint n = fp_kind_n_params (kind);
  const FpParam *param = n > 0 ? &kind->params[g_rand_int_range (hand->rand, 0, (gint32) n)] : NULL;
  double value;

  if (param == NULL)
    return NULL;
  value = any_of (hand, MAX (param->min, -5000), MIN (param->max, param->def > 100 ? 2 * param->def : param->max));
  return fp_set_out_param (hand->scene, fp_item_id (item), param->id,
                           param->type == FP_PARAM_LENGTH ? value : (double) (gint64) value, NULL);
}

static FpProject *
add_any (Hand *hand)
{
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  return fp_set_out_new (hand->scene, kinds[g_rand_int_range (hand->rand, 0, (gint32) n)], NULL, NULL);
}

static FpProject *
remove_any (Hand *hand)
{
  return fp_set_out_remove (hand->scene, fp_item_id (any_placed (hand)->item), NULL);
}

static FpProject *
restore_any (Hand *hand)
{
  return fp_set_out_restore (hand->scene, fp_item_id (any_placed (hand)->item), NULL);
}

static FpProject *
put_any (Hand *hand)
{
  return fp_set_out_on (hand->scene, fp_item_id (any_placed (hand)->item), fp_item_id (any_placed (hand)->item), NULL);
}

static FpProject *
undo (Hand *hand)
{
  if (hand->past->len < 2)
    return NULL;
  g_ptr_array_set_size (hand->past, (int) hand->past->len - 1);
  return (FpProject *) fp_project_ref (g_ptr_array_index (hand->past, hand->past->len - 1));
}

/* No edit of the project, but of what is drawn of it. */
static FpProject *
look_otherwise (Hand *hand)
{
  if (g_rand_boolean (hand->rand))
    hand->hidden ^= 1u << g_rand_int_range (hand->rand, 0, FP_N_SHOWS);
  else
    hand->cut[FP_VIEW_SECTION] = (FpCut) { g_rand_boolean (hand->rand), any_of (hand, -900, 900),
                                           g_rand_boolean (hand->rand) };
  return NULL;
}

typedef FpProject *(*Edit) (Hand *hand);

static void
take (Hand *hand, FpProject *next)
{
  if (next == NULL)
    return;
  hand->done++;
  g_ptr_array_add (hand->past, next);
  fp_scene_unref (hand->scene);
  hand->scene = fp_scene_new (next, fp_project_n_alternatives (next) - 1);
}

static void
edit (Hand *hand)
{
  static const Edit edits[] = { move_any, move_any, nudge_any, nudge_any, nudge_any, turn_any, resize_any, resize_any,
                                add_any, remove_any, restore_any, put_any, undo, look_otherwise };

  take (hand, edits[g_rand_int_range (hand->rand, 0, G_N_ELEMENTS (edits))](hand));
}

static void
hand_clear (Hand *hand)
{
  fp_scene_unref (hand->scene);
  g_ptr_array_unref (hand->past);
  g_rand_free (hand->rand);
}

static Hand
hand_new (FpProject *project, guint32 seed)
{
  Hand hand = { .rand = g_rand_new_with_seed (seed),
                .past = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_project_unref) };

  g_ptr_array_add (hand.past, project);
  hand.scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  return hand;
}

/* --- chains of them ------------------------------------------------------------------- */

/* Each is made of the one before, which is let go. */
static void
follow (FpProject *project, guint32 seed, guint n_edits)
{
  Hand hand = hand_new (project, seed);
  FpProjection *last[FP_N_VIEWS] = { NULL };

  for (guint i = 0; i <= n_edits; i++)
    {
      if (i > 0)
        edit (&hand);
      for (FpViewId v = 0; v < FP_N_VIEWS; v++)
        {
          g_autoptr (FpProjection) anew = fp_projection_new_cut (hand.scene, v, &hand.cut[v], hand.hidden);
          FpProjection *again = fp_projection_again (last[v], hand.scene, v, &hand.cut[v], hand.hidden, NULL);
          fp_projection_unref (last[v]);
          last[v] = again;
          assert_same_cuts (again, anew);
          assert_same_lines (again, anew);
          assert_same_picks (again, anew, hand.rand);
        }
    }
  g_assert_cmpuint (hand.done, >, n_edits / 4);
  for (FpViewId v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (last[v]);
  hand_clear (&hand);
}

static FpProject *
sample (const char *name)
{
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *path = g_build_filename (folder != NULL ? folder : "samples", name, NULL);
  FpProject *project = fp_store_load (path, NULL);

  g_assert_nonnull (project);
  return project;
}

static void
test_parish (void)
{
  for (guint32 seed = 1; seed <= 2; seed++)
    follow (sample ("parish.footpace"), seed, EDITS);
}

static void
test_chapel (void)
{
  for (guint32 seed = 11; seed <= 12; seed++)
    follow (sample ("chapel.footpace"), seed, EDITS);
}

/* Curved pews, arches, galleries. */
static void
test_great (void)
{
  follow (sample ("cathedral.footpace"), 21, 8);
  follow (sample ("fan.footpace"), 22, 8);
}

static void
test_seats (void)
{
  follow (parish_new (13), 31, EDITS);
  follow (cathedral_new (25), 32, EDITS / 4);
}

/* What was cut short is of no use to the next. */
/* Of three altars in one place the first hides nothing from the others when it has gone, and comes back as it was; that after
 * it comes before it. */
static void
test_doubles (void)
{
  static const double way[] = { 0, 2500, -2500, 300, -300 };
  FpProject *project = sample ("chapel.footpace");
  FpProjection *last[FP_N_VIEWS] = { NULL };
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  const FpScene *scene;

  for (guint i = 0; i < 3; i++)
    {
      FpProject *before = project;
      g_autofree char *id = g_strdup_printf ("double-%u", i);
      double values[FP_PARAM_MAX];
      const FpItemInit init = { .id = id, .kind = fp_kind_find ("altar"), .param = values, .place = { 0, 1500, 0 } };
      g_autoptr (FpItem) item = NULL;

      fp_kind_defaults (init.kind, values);
      item = fp_item_new (&init, NULL);
      project = fp_project_with_item (before, 0, item, NULL);
      g_assert_nonnull (project);
      fp_project_unref (before);
    }
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  for (guint i = 0; i < 2 * G_N_ELEMENTS (way); i++)
    {
      g_autoptr (FpProject) next = fp_set_out_move (scene, i < G_N_ELEMENTS (way) ? "double-0" : "double-1",
                                                    (FpVec3) { way[i % G_N_ELEMENTS (way)], 0, 0 }, NULL);

      fp_scene_unref (scene);
      scene = fp_scene_new (next, 0);
      for (FpViewId v = 0; v < FP_N_VIEWS; v++)
        {
          g_autoptr (FpProjection) anew = fp_projection_new_cut (scene, v, NULL, 0);
          FpProjection *again = fp_projection_again (last[v], scene, v, NULL, 0, NULL);
          fp_projection_unref (last[v]);
          last[v] = again;
          assert_same_cuts (again, anew);
          assert_same_lines (again, anew);
          assert_same_picks (again, anew, rand);
        }
    }
  for (FpViewId v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (last[v]);
  fp_scene_unref (scene);
}

static void
test_cancelled (void)
{
  g_autoptr (FpProject) project = parish_new (3);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (FpProjection) anew = fp_projection_new (scene, FP_VIEW_PLAN), last = NULL, again = NULL;

  g_cancellable_cancel (cancel);
  last = fp_projection_again (NULL, scene, FP_VIEW_PLAN, NULL, 0, cancel);
  again = fp_projection_again (last, scene, FP_VIEW_PLAN, NULL, 0, NULL);
  assert_same_lines (again, anew);
}

/* --- how far an edge looks about -------------------------------------------------------- */

/* Two boards of one thing. */
static FpSolids *
boards_new (double gap)
{
  FpSolids *solids = fp_solids_new ();

  fp_solids_add_box (solids, FP_PART_BODY, 0, 0, 0, 60, 600, 500);
  fp_solids_add_box (solids, FP_PART_BODY, 60 + gap, 0, 0, 260 + gap, 600, 500);
  return solids;
}

/* As a scene is sketched. */
static FpSketch *
sketch_boards (const FpSolids *boards, FpAgain *again, GArray *first, GArray *pieces)
{
  FpSketch *sketch = fp_sketch_new (FP_VIEW_PLAN, FALSE, G_MAXDOUBLE);
  FpSketchPart part = { .pass = FP_PASS_SOLIDS, .how = { 0, G_MAXDOUBLE, FALSE, 0, 0 } };
  g_autoptr (FpFaceGrid) grid = NULL;

  for (guint i = 0; i < fp_solids_count (boards); i++)
    {
      part.source = part.how.index = i;
      part.point = sketch->points->len;
      part.face = sketch->faces->len;
      part.edge = sketch->edges->len;
      if (again == NULL || !fp_again_take_part (again, sketch, &part, 0))
        {
          fp_sketch_add_solid (sketch, fp_solids_get (boards, i), &part.how);
          if (again != NULL)
            fp_again_note_part (again, sketch, &part);
        }
      g_array_append_val (sketch->parts, part);
    }
  part = (FpSketchPart) { .pass = FP_PASS_JOINED, .point = sketch->points->len, .face = sketch->faces->len,
                          .edge = sketch->edges->len };
  if (again != NULL)
    fp_again_end_parts (again);
  g_array_append_val (sketch->parts, part);
  grid = fp_face_grid_new (sketch);
  fp_face_grid_visible (grid, FALSE, NULL, again, first, pieces);
  return sketch;
}

static FpPen
pen_of_far_side (const GArray *pieces)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const FpPiece *piece = &g_array_index (pieces, FpPiece, i);
      if (piece->a.x == 0 && piece->b.x == 0)
        return piece->pen;
    }
  g_assert_not_reached ();
}

/* The first board is slight unless the second, which does not touch it, lies within 100 mm of its far side. */
static void
test_reach (void)
{
  g_autoptr (FpSolids) before = boards_new (20), after = boards_new (60);
  g_autoptr (GArray) first = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) was = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  g_autoptr (GArray) anew = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  g_autoptr (GArray) again = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  g_autoptr (GArray) number = g_array_new (FALSE, FALSE, sizeof (int));
  g_autoptr (FpSketch) last = sketch_boards (before, NULL, first, was);
  g_autoptr (FpSketch) nothing = sketch_boards (after, NULL, NULL, anew);
  int thing[] = { 0 }, solid[] = { 0, -1 };
  const FpCounterparts same = { thing, solid, thing };
  const FpLastLayer layer = { last, NULL, first, was };
  g_autoptr (FpAgain) taken = fp_again_new (&layer, &same, number);
  g_autoptr (FpSketch) now = sketch_boards (after, taken, NULL, again);

  g_assert_cmpuint (was->len, ==, anew->len);
  g_assert_cmpint (pen_of_far_side (was), ==, FP_PEN_OUTLINE);
  g_assert_cmpint (pen_of_far_side (anew), ==, FP_PEN_EDGE);
  g_assert_cmpuint (again->len, ==, anew->len);
  for (guint i = 0; i < anew->len; i++)
    g_assert_cmpint (g_array_index (again, FpPiece, i).pen, ==, g_array_index (anew, FpPiece, i).pen);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projection-again/parish", test_parish);
  g_test_add_func ("/projection-again/chapel", test_chapel);
  g_test_add_func ("/projection-again/great", test_great);
  g_test_add_func ("/projection-again/seats", test_seats);
  g_test_add_func ("/projection-again/doubles", test_doubles);
  g_test_add_func ("/projection-again/cancelled", test_cancelled);
  g_test_add_func ("/projection-again/reach", test_reach);
  return g_test_run ();
}
