/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rail.c - the communion rail, with a gate of two leaves in the middle, straight, bowed, or returned at its ends
 *
 * Origin: middle of the line between its ends; a bowed rail reaches from there towards the people, returns towards +y.  Communicants
 * kneel on its -y side, on the ledge between the rail and the edge of its step,
 * so their places lie before its plan.
 */
#include "kind-private.h"

#include <math.h>

enum { LENGTH, HEIGHT, TOP, GATE, RETURNS, POSTS, KNEELING, BOW, CUSHION, CLOTH };

#define SCHULTE "Catholic Encyclopedia I (1907), Altar Rail"

enum { NO_CLOTH, CLOTH_ON_RAIL, CLOTH_OVER_GATE };
static const FpChoice cloths[] = {
  { "no", "None" }, { "yes", "On the rail" }, { "over-gate", "On the rail, and its own over the gate" }, { NULL, NULL },
};

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length in all", 600, 6000, 60000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 400, 762, 1300, SCHULTE ": about 2 ft 6 in"),
  [TOP] = FP_LENGTH ("top", "Width of the top", 40, 200, 600, SCHULTE ": 6 to 9 in"),
  [GATE] = FP_LENGTH ("gate", "Gate, clear; 0 for none", 0, 1200, 6000,
                      FP_JUDGEMENT "; J. T. Micklethwaite, Modern Parish Churches (1874), XIII, has only \"a wide "
                      "gate\""),
  [RETURNS] = FP_LENGTH ("returns", "Length of each return (0: straight)", 0, 0, 20000, FP_JUDGEMENT),
  [POSTS] = FP_LENGTH ("posts", "Spacing of posts, at most", 300, 1200, 4000, FP_JUDGEMENT),
  [KNEELING] = FP_LENGTH ("kneeling", "Length for each communicant", 400, 600, 1200, FP_JUDGEMENT),
  [BOW] = FP_LENGTH ("bow", "Bowed towards the people by", 0, 0, 20000, FP_JUDGEMENT),
  [CUSHION] = FP_LENGTH ("cushion", "Thickness of the kneeling cushion (0: none)", 0, 0, 200,
                         "UFC 4-730-02 (2004), ch. 3, 2g: about 3 in where there is one"),
  [CLOTH] = FP_CHOICE ("cloth", "Communion cloth", cloths, NO_CLOTH,
                       SCHULTE ": fine linen, as long as the rail, about 2 ft wide, on the sanctuary side"),
  FP_NO_MORE_PARAMS
};

/* Sections of the timbers, and how far the knees are from the middle of the rail; design judgement. */
#define TOP_THICK  60.0
#define POST       80.0
#define SILL       60.0   /* the lower rail, and its level                    */
#define BALUSTERS  3      /* between two posts                                */
#define LEAF       40.0   /* thickness of a gate leaf                         */
#define KNEES      150.0  /* before the front of the top: on a ledge of 305   */
#define CHORD      600.0  /* of what is bowed, at most                        */
/* UFC 4-730-02 (2004), ch. 3, 2g: the cushion lies on a ledge of 10 in; Catholic Encyclopedia I (1907), Altar Rail: 2 ft. */
#define CUSHION_DEEP 250.0
#define CLOTH_WIDE   610.0
#define CLOTH_THICK  2.0

/* --- runs ----------------------------------------------------------------- */

/* One straight piece between two end posts: from (x, y) along +x or +y. */
typedef struct { double x, y, length; gboolean along_y; } Run;

static double
post_side (const FpForm *form)
{
  return MIN (POST, form->param[TOP]);
}

static gboolean
has_gate (const FpForm *form)
{
  return form->param[GATE] > 0;
}

static gboolean
has_cloth (const FpForm *form)
{
  return !fp_form_is (form, CLOTH, NO_CLOTH);
}

static gboolean
has_cloth_over_gate (const FpForm *form)
{
  return has_gate (form) && fp_form_is (form, CLOTH, CLOTH_OVER_GATE);
}

/* Of the front, on either side of the gate. */
static double
front_half (const FpForm *form)
{
  return MAX ((form->param[LENGTH] - form->param[GATE]) / 2, 0);
}

/* --- bowed -------------------------------------------------------------------- */

/* On a circle about (0, middle): at the angle a, seen from there towards the people, its axis is at
 * (radius sin a, middle - radius cos a); the gate ends at `first`, the rail at `last`. */
typedef struct { double radius, middle, first, last; guint chords; } Bow;

static double
bow_of (const FpForm *form)
{
  return MIN (form->param[BOW], form->param[LENGTH] * 0.45);
}

static gboolean
is_bowed (const FpForm *form)
{
  return form->param[BOW] > 1 && form->param[LENGTH] > 4 * form->param[TOP];
}

static Bow
bow (const FpForm *form)
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2, rise = bow_of (form), radius = (half * half + rise * rise) / (2 * rise);
  Bow of = { .radius = radius, .middle = radius - rise };

  of.last = rise < half ? asin (half / (radius + p[TOP] / 2)) : G_PI / 2;
  of.first = has_gate (form) ? MIN (asin (MIN (p[GATE] / 2 / radius, 1)), of.last * 0.9) : 0;
  of.chords = MAX (1, (guint) ceil (radius * (of.last - of.first) / CHORD));
  return of;
}

static FpPoint
on_bow (const Bow *of, double angle, double outward)
{
  const double r = of->radius + outward;

  return (FpPoint) { r * sin (angle), of->middle - r * cos (angle) };
}

/* Between two angles and two distances from the axis, on the side @side. */
static void
add_sector (FpSolids *out, const Bow *of, FpPart part, int side, double a0, double a1, double in, double outer, double z0, double z1)
{
  const FpPoint corner[4] = { on_bow (of, side * a0, in), on_bow (of, side * a0, outer), on_bow (of, side * a1, outer),
                              on_bow (of, side * a1, in) };

  fp_solids_add_prism (out, part, corner, 4, z0, z1);
}

static guint
runs (const FpForm *form, Run run[4])
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2;
  guint n = 0;

  if (is_bowed (form))
    ;
  else if (has_gate (form))
    {
      run[n++] = (Run) { -half, 0, front_half (form), FALSE };
      run[n++] = (Run) { half - front_half (form), 0, front_half (form), FALSE };
    }
  else
    run[n++] = (Run) { -half, 0, p[LENGTH], FALSE };
  if (p[RETURNS] > 0)
    {
      run[n++] = (Run) { -half + p[TOP] / 2, p[TOP] / 2, p[RETURNS], TRUE };
      run[n++] = (Run) { half - p[TOP] / 2, p[TOP] / 2, p[RETURNS], TRUE };
    }
  return n;
}

/* From s0 to s1 along the run, `wide` across it. */
static void
add_piece (FpSolids *out, const Run *run, FpPart part, double s0, double s1, double wide, double z0, double z1)
{
  if (run->along_y)
    fp_solids_add_box (out, part, run->x - wide / 2, run->y + s0, z0, run->x + wide / 2, run->y + s1, z1);
  else
    fp_solids_add_box (out, part, run->x + s0, run->y - wide / 2, z0, run->x + s1, run->y + wide / 2, z1);
}

static guint
bays (const Run *run, double post, double spacing)
{
  return MAX (1, (guint) ceil ((run->length - post) / spacing - 1e-9));
}

/* Sill and balusters from one post to the next. */
static void
add_bay (FpSolids *out, const Run *run, double s0, double s1, double wide, double under)
{
  add_piece (out, run, FP_PART_RAIL_POST, s0, s1, MIN (SILL, wide), SILL, 2 * SILL);
  for (guint i = 1; i <= BALUSTERS; i++)
    {
      const double s = s0 + (s1 - s0) * i / (BALUSTERS + 1);
      const double x = run->x + (run->along_y ? 0 : s), y = run->y + (run->along_y ? s : 0);
      const double r = MIN (MIN (22, wide / 2), (s1 - s0) / 12);
      fp_solids_add_round (out, FP_PART_RAIL_POST, x, y, 2 * SILL, under, r, r);
    }
}

static void
add_run (const FpForm *form, const Run *run, FpSolids *out)
{
  const double post = MIN (post_side (form), run->length / 2), under = form->param[HEIGHT] - TOP_THICK;
  const guint n = bays (run, post, form->param[POSTS]);
  const double step = (run->length - post) / n;

  if (!(run->length > 0))
    return;
  for (guint i = 0; i <= n; i++)
    add_piece (out, run, FP_PART_RAIL_POST, i * step, i * step + post, post, 0, under);
  for (guint i = 0; i < n; i++)
    add_bay (out, run, i * step + post, (i + 1) * step, post_side (form), under);
  add_piece (out, run, FP_PART_RAIL_TOP, 0, run->length, form->param[TOP], under, form->param[HEIGHT]);
}

/* Stiles, two rails, and bars as close as the balusters. */
static void
add_leaf (FpSolids *out, double x0, double x1, double y, double thick, double z1)
{
  const double frame = MIN (50, (x1 - x0) / 4), z0 = SILL, half = thick / 2;
  const guint bars = (guint) ((x1 - x0 - 2 * frame) / 160);

  fp_solids_add_box (out, FP_PART_GATE, x0, y - half, z0, x0 + frame, y + half, z1);
  fp_solids_add_box (out, FP_PART_GATE, x1 - frame, y - half, z0, x1, y + half, z1);
  fp_solids_add_box (out, FP_PART_GATE, x0 + frame, y - half, z0, x1 - frame, y + half, z0 + frame);
  fp_solids_add_box (out, FP_PART_GATE, x0 + frame, y - half, z1 - frame, x1 - frame, y + half, z1);
  for (guint i = 1; i <= bars; i++)
    {
      const double r = MIN (12, half), x = x0 + frame + (x1 - x0 - 2 * frame) * i / (bars + 1);
      fp_solids_add_round (out, FP_PART_GATE, x, y, z0 + frame, z1 - frame, r, r);
    }
}

/* On the line of the rail, or where its two halves end. */
static double
gate_y (const FpForm *form)
{
  const Bow of = is_bowed (form) ? bow (form) : (Bow) { 0 };

  return is_bowed (form) ? on_bow (&of, of.first, 0).y : 0;
}

/* Shut: two leaves that meet in the middle, no higher than the underside of the rail's top. */
static void
add_gate (const FpForm *form, FpSolids *out)
{
  const double half = MIN (form->param[GATE], form->param[LENGTH]) / 2, top = form->param[HEIGHT] - TOP_THICK;
  const double air = MIN (5, half / 10), thick = MIN (LEAF, form->param[TOP]);

  add_leaf (out, -half + air, -air, gate_y (form), thick, top);
  add_leaf (out, air, half - air, gate_y (form), thick, top);
}

/* How far before the line between its ends it reaches. */
static double
reach (const FpForm *form)
{
  return form->param[TOP] / 2 + (is_bowed (form) ? bow_of (form) : 0);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2, deep = p[TOP] / 2, cushion = p[CUSHION] > 0 ? CUSHION_DEEP : 0;
  const double aside = is_bowed (form) ? cushion : 0, cloth = has_cloth (form) ? CLOTH_THICK : 0;

  *out = fp_extent_bare ((FpBox) { -half - aside, -reach (form) - cushion, half + aside, deep + MAX (p[RETURNS], cloth) }, p[HEIGHT]);
}

/* Top, sill and balusters of one chord, and the post at its beginning; the last has one at its end, too. */
static void
add_chord (const FpForm *form, const Bow *of, int side, guint i, FpSolids *out)
{
  const double *p = form->param;
  const double step = (of->last - of->first) / of->chords, a0 = of->first + i * step, a1 = a0 + step;
  const double half = post_side (form) / 2, under = p[HEIGHT] - TOP_THICK, turn = MIN (half / of->radius, step / 6);
  const double deep = MIN (SILL, post_side (form)) / 2, b0 = a0 + (i == 0 ? 2 : 1) * turn, b1 = a1 - (i + 1 == of->chords ? 2 : 1) * turn;
  const double r = MIN (MIN (22, half), of->radius * (b1 - b0) / 12);

  add_sector (out, of, FP_PART_RAIL_TOP, side, a0, a1, -p[TOP] / 2, p[TOP] / 2, under, p[HEIGHT]);
  add_sector (out, of, FP_PART_RAIL_POST, side, i == 0 ? a0 : a0 - turn, b0, -half, half, 0, under);
  if (i + 1 == of->chords)
    add_sector (out, of, FP_PART_RAIL_POST, side, b1, a1, -half, half, 0, under);
  add_sector (out, of, FP_PART_RAIL_POST, side, b0, b1, -deep, deep, SILL, 2 * SILL);
  for (guint k = 1; k <= BALUSTERS; k++)
    {
      /* On the chord, as the sill is. */
      const FpPoint from = on_bow (of, side * b0, 0), to = on_bow (of, side * b1, 0);
      const double t = k / (BALUSTERS + 1.0);
      fp_solids_add_round (out, FP_PART_RAIL_POST, from.x + t * (to.x - from.x), from.y + t * (to.y - from.y), 2 * SILL, under, r, r);
    }
}

static void
add_bowed (const FpForm *form, FpSolids *out)
{
  const Bow of = bow (form);

  for (int side = -1; side <= 1; side += 2)
    for (guint i = 0; i < of.chords; i++)
      add_chord (form, &of, side, i, out);
}

/* --- what lies and hangs on it ---------------------------------------------------- */

static double
cloth_foot (const FpForm *form)
{
  return MAX (form->param[HEIGHT] - CLOTH_WIDE, 50);
}

static void
add_gate_cloth (const FpForm *form, FpSolids *out)
{
  const double half = MIN (form->param[GATE], form->param[LENGTH]) / 2, y = gate_y (form) + form->param[TOP] / 2;

  fp_solids_add_box (out, FP_PART_CLOTH, -half, y, cloth_foot (form), half, y + CLOTH_THICK, form->param[HEIGHT]);
}

static void
add_cloths (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2, deep = p[TOP] / 2, hem = cloth_foot (form), open = has_gate (form) ? MIN (p[GATE] / 2, half) : 0;
  const double step = is_bowed (form) ? (bow (form).last - bow (form).first) / bow (form).chords : 0;
  const gboolean cloth = has_cloth (form);

  for (int side = -1; side <= 1; side += 2)
    if (is_bowed (form))
      for (guint i = 0; i < bow (form).chords; i++)
        {
          const Bow of = bow (form);
          const double a0 = of.first + i * step, a1 = a0 + step;
          add_sector (out, &of, FP_PART_CLOTH, side, a0, a1, deep, deep + CUSHION_DEEP, 0, p[CUSHION]);
          if (cloth)
            add_sector (out, &of, FP_PART_CLOTH, side, a0, a1, -deep - CLOTH_THICK, -deep, hem, p[HEIGHT]);
        }
    else
      {
        const double x0 = side < 0 ? -half : open, x1 = side < 0 ? -open : half;
        fp_solids_add_box (out, FP_PART_CLOTH, x0, -deep - CUSHION_DEEP, 0, x1, -deep, p[CUSHION]);
        if (cloth)
          fp_solids_add_box (out, FP_PART_CLOTH, x0, deep, hem, x1, deep + CLOTH_THICK, p[HEIGHT]);
      }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  Run run[4];
  const guint n = runs (form, run);

  for (guint i = 0; i < n; i++)
    add_run (form, &run[i], out);
  if (is_bowed (form))
    add_bowed (form, out);
  add_cloths (form, out);
  if (has_cloth_over_gate (form))
    add_gate_cloth (form, out);
  if (has_gate (form))
    add_gate (form, out);
}

/* --- symbol, dimensions ---------------------------------------------------- */

/* Each leaf open towards the altar, and the quarter circle that it sweeps. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double leaf = form->param[GATE] / 2, y = gate_y (form);
  const guint pieces = 8;

  if (!has_gate (form))
    return;
  for (int side = -1; side <= 1; side += 2)
    {
      const double hinge = side * leaf;
      fp_strokes_add (out, (FpPoint) { hinge, y }, (FpPoint) { hinge, y + leaf }, TRUE);
      for (guint i = 0; i < pieces; i++)
        {
          const double a = i * G_PI / 2 / pieces, b = (i + 1) * G_PI / 2 / pieces;
          fp_strokes_add (out, (FpPoint) { hinge - side * leaf * cos (a), y + leaf * sin (a) },
                          (FpPoint) { hinge - side * leaf * cos (b), y + leaf * sin (b) }, TRUE);
        }
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[LENGTH] / 2, y = p[TOP] / 2;

  fp_dims_add_x (out, LENGTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[LENGTH], FP_IN_PLAN, 0);
  fp_dims_add_x (out, GATE, (FpVec3) { -p[GATE] / 2, gate_y (form) - y, p[HEIGHT] }, p[GATE], FP_IN_PLAN, 0);
  fp_dims_add_x (out, GATE, (FpVec3) { -p[GATE] / 2, gate_y (form) - y, 0 }, p[GATE], FP_IN_ELEVATION, 0);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_SECTION | FP_IN_ELEVATION, 0);
  fp_dims_add_y (out, TOP, (FpVec3) { 0, -y, p[HEIGHT] }, p[TOP], FP_IN_SECTION, 5);
  if (is_bowed (form) && bow_of (form) == p[BOW])
    fp_dims_add_y (out, BOW, (FpVec3) { 0, -p[BOW], 0 }, p[BOW], FP_IN_PLAN, 2);
  fp_dims_add_y (out, RETURNS, (FpVec3) { x, y, p[HEIGHT] }, p[RETURNS], FP_IN_PLAN, 2);
}

/* --- communicants ----------------------------------------------------------- */

static guint
kneeling_on (const FpForm *form, double length)
{
  return (guint) floor (length / form->param[KNEELING] + 1e-9);
}

static void
add_places (const FpForm *form, const Run *run, guint *number, GArray *out)
{
  const guint n = kneeling_on (form, run->length);
  const double middle = run->x + run->length / 2;

  for (guint i = 0; i < n; i++)
    {
      const FpSeat seat = {
        .at = { middle + (i - (n - 1) / 2.0) * form->param[KNEELING], -form->param[TOP] / 2 - KNEES },
        .postures = 1 << FP_POSTURE_KNEELING,
        .row = 1,
        .number = ++*number,
      };
      g_array_append_val (out, seat);
    }
}

/* Along the arc, each facing its middle. */
static void
add_bowed_places (const FpForm *form, GArray *out)
{
  const Bow of = bow (form);
  const double before = form->param[TOP] / 2 + KNEES;
  const guint n = kneeling_on (form, of.radius * (of.last - of.first));
  guint number = 0;

  for (int side = -1; side <= 1; side += 2)
    for (guint i = 0; i < n; i++)
      {
        const double middle = (of.first + of.last) / 2, apart = form->param[KNEELING] / of.radius;
        const double angle = side * middle + (i - (n - 1) / 2.0) * apart;
        const FpSeat seat = { .at = on_bow (&of, angle, before), .facing = angle * 180 / G_PI,
                              .postures = 1 << FP_POSTURE_KNEELING, .row = 1, .number = ++number };
        g_array_append_val (out, seat);
      }
}

static void
seats (const FpForm *form, GArray *out)
{
  Run run[4];
  const guint n = runs (form, run);
  guint number = 0;

  if (is_bowed (form))
    {
      add_bowed_places (form, out);
      return;
    }

  for (guint i = 0; i < n; i++)
    if (!run[i].along_y)
      add_places (form, &run[i], &number, out);
}

static guint
n_places (const FpForm *form)
{
  const Bow of = is_bowed (form) ? bow (form) : (Bow) { 0 };

  if (is_bowed (form))
    return 2 * kneeling_on (form, of.radius * (of.last - of.first));
  return has_gate (form) ? 2 * kneeling_on (form, front_half (form)) : kneeling_on (form, form->param[LENGTH]);
}

/* As it is finished: along the front on either side of the gate, and over it. */
static void
add_cloth_quantities (const FpForm *form, double front, GArray *out)
{
  const guint pieces = has_gate (form) || is_bowed (form) ? 2 : 1;
  const Bow of = is_bowed (form) ? bow (form) : (Bow) { 0 };
  const double length = is_bowed (form) ? (of.radius - form->param[TOP] / 2) * (of.last - of.first) : front / pieces;
  const gboolean whole = is_bowed (form) && !has_gate (form);

  if (!has_cloth (form))
    return;
  fp_quantities_add_sized (out, "Communion cloth", FP_MATERIAL_LINEN, whole ? 1 : pieces,
                           (FpVec3) { whole ? 2 * length : length, CLOTH_WIDE, 0 });
  if (has_cloth_over_gate (form))
    fp_quantities_add_sized (out, "Communion cloth over the gate", FP_MATERIAL_LINEN, 1,
                             (FpVec3) { form->param[GATE], CLOTH_WIDE, 0 });
}

static void
quantities (const FpForm *form, GArray *out)
{
  Run run[4];
  const guint n = runs (form, run);
  double length = 0, front;

  for (guint i = 0; i < n; i++)
    length += run[i].length;
  front = (is_bowed (form) ? 2 * bow (form).radius * (bow (form).last - bow (form).first) : has_gate (form) ? 2 * front_half (form)
           : form->param[LENGTH]);
  if (is_bowed (form))
    length += front;
  fp_quantities_add (out, "rail, less the gate", FP_MATERIAL_WOOD, FP_AMOUNT_LENGTH, length);
  fp_quantities_add_part (out, &fp_kind_rail, form, FP_PART_RAIL_TOP, "top of the rail", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_rail, form, FP_PART_RAIL_POST, "posts, sill and balusters", FP_MATERIAL_WOOD);
  fp_quantities_add (out, "gates of two leaves", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, has_gate (form) ? 1 : 0);
  fp_quantities_add (out, "kneeling cushions", FP_MATERIAL_NONE, FP_AMOUNT_LENGTH, form->param[CUSHION] > 0 ? front : 0);
  add_cloth_quantities (form, front, out);
  fp_quantities_add (out, "kneeling places", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, n_places (form));
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;
  const double between = p[LENGTH] - 2 * POST - (p[RETURNS] > 0 ? 2 * p[TOP] : 0);

  if (p[GATE] > between)
    return g_strdup ("The gate is wider than the rail in which it hangs.");
  if (p[BOW] > p[LENGTH] * 0.45)
    return g_strdup ("The rail is bowed by more than half a circle.");
  if (p[RETURNS] > 0 && p[LENGTH] < 2 * p[TOP])
    return g_strdup ("The returns of the rail meet.");
  return NULL;
}

const FpKind fp_kind_rail = {
  .id = "rail",
  .label = "Communion rail",
  .tells = "The low altar rail at the entrance to the sanctuary, where the people kneel to receive Communion.",
  .role = FP_ROLE_RAIL,
  .anchor = FP_ANCHOR_FRONT,
  .spot = FP_SPOT_OPENING,
  .clearance = 305,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .seats = seats,
  .quantities = quantities,
  .amiss = amiss,
};
