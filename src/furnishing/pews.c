/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pews.c - a block of pews, straight or curved about a centre
 *
 * Origin: middle of the front edge of the first row, the one nearest the
 * altar; rows follow towards -y.  A place in a row is given by `s`, along its
 * front edge from the middle towards the Epistle side, and `d`, behind that edge.
 *
 * Rows follow the floor: each is tilted with it, and its foot reaches down to it.
 */
#include "kind-private.h"

#include <math.h>

enum { ROWS, SPACING, LENGTH, SEAT_WIDTH, RISE, RADIUS, DEPTH, SEAT_HEIGHT, BACK_HEIGHT, KNEELER, STAGGER };

#define BOARD        40.0   /* thickness of backs, seats and ends; design judgement           */
#define SEGMENT      3.0    /* degrees of one straight piece of a curved row                  */
#define SEGMENTS_MAX 120
#define ANGLE_MAX    (170 * G_PI / 180)
#define RADIUS_MIN   1000.0 /* a lesser one leaves no room for knees; design judgement        */
#define BODY         200.0  /* middle of a seated body, before the back; design judgement     */
#define SLOPE_MAX    0.3    /* steeper is a step in the floor, which no row is tilted to       */

static const FpChoice no_yes[] = { { "no", "No" }, { "yes", "Yes" }, { NULL, NULL } };

static const FpParam params[] = {
  [ROWS] = FP_COUNT ("rows", "Rows", 1, 10, 100, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "Spacing of rows, back to back", 500, 900, 3000,
                         "UFC 4-730-02 (2004), seating module: 36 in, printed as 900 mm"),
  [LENGTH] = FP_LENGTH ("length", "Length of a row", 400, 4000, 40000, FP_JUDGEMENT),
  [SEAT_WIDTH] = FP_LENGTH ("seat-width", "Width of one seat", 330, 457, 1200,
                            "IBC 2015, 1004.4: one person for each 18 in of bench"),
  [RISE] = FP_LENGTH ("rise", "Rise from row to row", 0, 0, 600, FP_JUDGEMENT),
  [RADIUS] = FP_LENGTH ("radius", "Radius of the first row (0: straight)", 0, 0, 200000, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth of a pew", 300, 550, 1200, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 250, 450, 700,
                             "Building Trades Pocketbook, Church Dimensions: 18 in, rounded"),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the back", 300, 850, 1600, FP_JUDGEMENT),
  [KNEELER] = FP_LENGTH ("kneeler", "Height of the kneeler (0: none)", 0, 100, 300, FP_JUDGEMENT),
  [STAGGER] = FP_CHOICE ("stagger", "Every second row shifted half a seat", no_yes, 0, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GALLERY, FP_ROLE_NONE };

/* --- rows ----------------------------------------------------------------- */

static gboolean
is_curved (const FpForm *form)
{
  return form->param[RADIUS] > 0;
}

static double
front_radius (const FpForm *form, guint row)
{
  return MAX (form->param[RADIUS], RADIUS_MIN) + row * form->param[SPACING];
}

static double
row_angle (const FpForm *form, guint row, double s)
{
  return is_curved (form) ? CLAMP (s / front_radius (form, row), -ANGLE_MAX, ANGLE_MAX) : 0;
}

/* Where (s, d) of a row lies on the plan. */
static FpPoint
row_point (const FpForm *form, guint row, double s, double d)
{
  if (!is_curved (form))
    return (FpPoint) { s, -(row * form->param[SPACING] + d) };

  const double radius = front_radius (form, row), angle = row_angle (form, row, s);
  const double centre = radius - row * form->param[SPACING];
  return (FpPoint) { (radius + d) * sin (angle), centre - (radius + d) * cos (angle) };
}

static double
row_shift (const FpForm *form, guint row)
{
  return fp_form_is (form, STAGGER, 1) && row % 2 == 1 ? form->param[SEAT_WIDTH] / 2 : 0;
}

static guint
seats_in_row (const FpForm *form)
{
  /* A length that is a whole number of seats but for rounding has them all. */
  return (guint) floor (form->param[LENGTH] / form->param[SEAT_WIDTH] + 1e-9);
}

static double
kneeling_room (const FpForm *form)
{
  return MAX (form->param[SPACING] - form->param[DEPTH], 0);
}

/* The kneeler folds down in the room before the seat: from `far` to `near` before the front edge. */
static void
kneeler_range (const FpForm *form, double *near, double *far)
{
  const double room = kneeling_room (form);

  *near = room * 0.3;
  *far = *near + MIN (160, room * 0.5);
}

/* --- the floor under a row ------------------------------------------------- */

/* Its level at (x, y) is z + gx * x + gy * y. */
typedef struct { double z, gx, gy; } Plane;

static double
slope (const FpForm *form, FpPoint at, double dx, double dy)
{
  const double step = hypot (dx, dy);
  const double rise = form->ground (form->ground_data, (FpPoint) { at.x + dx, at.y + dy })
                      - form->ground (form->ground_data, (FpPoint) { at.x - dx, at.y - dy });
  const double found = rise / (2 * step);

  return fabs (found) <= SLOPE_MAX ? found : 0;
}

static Plane
row_floor (const FpForm *form, guint row)
{
  Plane plane = { row * form->param[RISE], 0, 0 };

  if (form->ground == NULL)
    return plane;
  const FpPoint at = row_point (form, row, 0, form->param[DEPTH] - BODY);
  plane.gx = slope (form, at, 10, 0);
  plane.gy = slope (form, at, 0, 10);
  plane.z += form->ground (form->ground_data, at) - plane.gx * at.x - plane.gy * at.y;
  return plane;
}

/* --- solids --------------------------------------------------------------- */

typedef struct { double s0, s1, d0, d1; } Band; /* part of a row on the plan, before it is shifted */

/* All of a row is broken at the same places, so that the edges of seat, back and ends lie on the same lines. */
static guint
row_pieces (const FpForm *form, guint row)
{
  const double half = form->param[LENGTH] / 2;
  const double angle = row_angle (form, row, half) - row_angle (form, row, -half);

  return CLAMP ((guint) ceil (angle * 180 / G_PI / SEGMENT), 1, SEGMENTS_MAX);
}

/* Where (s, d) lies on the straight pieces of a row. */
static FpPoint
broken_point (const FpForm *form, guint row, guint pieces, double s, double d)
{
  const double half = form->param[LENGTH] / 2, step = form->param[LENGTH] / pieces, shift = row_shift (form, row);
  const double piece = CLAMP (floor ((s + half) / step), 0, pieces - 1.0), t = (s + half) / step - piece;
  const FpPoint a = row_point (form, row, piece * step - half + shift, d);
  const FpPoint b = row_point (form, row, (piece + 1) * step - half + shift, d);

  return (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
}

static guint
band_outline (const FpForm *form, guint row, const Band *band, FpPoint out[2 * (SEGMENTS_MAX + 1)])
{
  const double half = form->param[LENGTH] / 2, hair = 1e-3;
  const guint pieces = row_pieces (form, row);
  double s[SEGMENTS_MAX + 1];
  guint n = 0;

  s[n++] = band->s0;
  for (guint i = 1; i < pieces; i++)
    {
      const double at = form->param[LENGTH] * i / pieces - half;
      if (at > band->s0 + hair && at < band->s1 - hair)
        s[n++] = at;
    }
  s[n++] = band->s1;
  for (guint i = 0; i < n; i++)
    {
      out[i] = broken_point (form, row, pieces, s[i], band->d1);
      out[2 * n - 1 - i] = broken_point (form, row, pieces, s[i], band->d0);
    }
  return 2 * n;
}

/* From @z0 to @z1 above the row's floor; a foot of 0 reaches down to where that floor is lowest. */
static void
add_band (const FpForm *form, guint row, const Plane *floor, FpPart part, Band band, double z0, double z1,
          FpSolids *out)
{
  FpPoint pt[2 * (SEGMENTS_MAX + 1)];
  const guint n = band_outline (form, row, &band, pt);
  double lowest = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    lowest = MIN (lowest, floor->z + floor->gx * pt[i].x + floor->gy * pt[i].y);
  fp_solids_add_sloping (out, part, pt, n, lowest + z0, floor->z + z1, floor->gx, floor->gy);
}

/* A raised row stands on a platform that reaches to the row before it. */
static void
add_platform (const FpForm *form, guint row, const Plane *floor, FpSolids *out)
{
  const double half = form->param[LENGTH] / 2;
  const Band band = { -half, half, -kneeling_room (form), form->param[DEPTH] };

  add_band (form, row, floor, FP_PART_FLOOR, band, -row * form->param[RISE], 0, out);
}

static void
add_row (const FpForm *form, guint row, FpSolids *out)
{
  const double *p = form->param;
  const Plane floor = row_floor (form, row);
  const double half = p[LENGTH] / 2, inner = half - BOARD, back = p[DEPTH] - BOARD;
  const double arm = MIN (p[BACK_HEIGHT], p[SEAT_HEIGHT] + 200);

  add_band (form, row, &floor, FP_PART_BACK, (Band) { -half, half, back, p[DEPTH] }, 0, p[BACK_HEIGHT], out);
  add_band (form, row, &floor, FP_PART_SEAT, (Band) { -inner, inner, 0, back }, p[SEAT_HEIGHT] - BOARD, p[SEAT_HEIGHT],
            out);
  add_band (form, row, &floor, FP_PART_BODY, (Band) { -half, -inner, 0, back }, 0, arm, out);
  add_band (form, row, &floor, FP_PART_BODY, (Band) { inner, half, 0, back }, 0, arm, out);
  if (p[KNEELER] > 0 && kneeling_room (form) > 0)
    {
      double near, far;
      kneeler_range (form, &near, &far);
      add_band (form, row, &floor, FP_PART_BODY, (Band) { -inner, inner, -far, -near }, 0, p[KNEELER], out);
    }
  if (row > 0 && p[RISE] > 0)
    add_platform (form, row, &floor, out);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    add_row (form, row, out);
}

/* --- extent --------------------------------------------------------------- */

static void
extent (const FpForm *form, FpExtent *out)
{
  g_autoptr (FpSolids) made = fp_solids_new ();
  FpBox plan = FP_BOX_EMPTY;
  double height = 0;
  guint n;

  solids (form, made);
  const FpSolid *s = fp_solids_peek (made, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&s[i]);
      fp_box_add_box (&plan, &(FpBox) { box.lo.x, box.lo.y, box.hi.x, box.hi.y });
      height = MAX (height, box.hi.z);
    }
  *out = fp_extent_bare (plan, height);
}

/* --- people --------------------------------------------------------------- */

static void
seats (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = seats_in_row (form);

  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    for (guint i = 0; i < n; i++)
      {
        const double s = (i - (n - 1) / 2.0) * p[SEAT_WIDTH] + row_shift (form, row);
        const FpSeat seat = {
          .at = row_point (form, row, s, p[DEPTH] - BODY),
          .z = row * p[RISE],
          .facing = row_angle (form, row, s) * 180 / G_PI,
          .postures = 1 << FP_POSTURE_SITTING | 1 << FP_POSTURE_KNEELING | 1 << FP_POSTURE_STANDING,
          .seat = p[SEAT_HEIGHT],
          .kneeler = p[KNEELER],
          .row = row + 1,
          .number = i + 1,
        };
        g_array_append_val (out, seat);
      }
}

/* --- dimensions and quantities --------------------------------------------- */

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double half = p[LENGTH] / 2;

  if (!is_curved (form))
    fp_dims_add_x (out, LENGTH, (FpVec3) { -half, 0, p[SEAT_HEIGHT] }, p[LENGTH], FP_IN_PLAN, 3);
  if (fp_form_count (form, ROWS) > 1)
    {
      const double x = is_curved (form) ? 0 : half;
      fp_dims_add_y (out, SPACING, (FpVec3) { x, 0, p[SEAT_HEIGHT] }, -p[SPACING], FP_IN_PLAN, 3);
      fp_dims_add_z (out, RISE, (FpVec3) { 0, -p[SPACING], 0 }, p[RISE], FP_IN_SECTION, 4);
    }
  fp_dims_add_y (out, DEPTH, (FpVec3) { 0, 0, p[SEAT_HEIGHT] }, -p[DEPTH], FP_IN_SECTION, 6);
  fp_dims_add_z (out, SEAT_HEIGHT, (FpVec3) { 0, 0, 0 }, p[SEAT_HEIGHT], FP_IN_SECTION, 5);
  fp_dims_add_z (out, BACK_HEIGHT, (FpVec3) { 0, -p[DEPTH], 0 }, p[BACK_HEIGHT], FP_IN_SECTION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double rows = form->param[ROWS];

  fp_quantities_add (out, "pews", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, rows);
  fp_quantities_add (out, "pews, length in all", FP_MATERIAL_WOOD, FP_AMOUNT_LENGTH, rows * form->param[LENGTH]);
  fp_quantities_add (out, "seats", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, rows * seats_in_row (form));
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;

  if (p[SPACING] < p[DEPTH])
    return g_strdup ("The rows are closer together than a pew is deep.");
  if (p[SEAT_WIDTH] > p[LENGTH])
    return g_strdup ("A row is shorter than one seat.");
  if (p[BACK_HEIGHT] < p[SEAT_HEIGHT])
    return g_strdup ("The backs are lower than the seats.");
  if (is_curved (form) && p[RADIUS] < RADIUS_MIN)
    return g_strdup_printf ("The first row is curved too sharply: its radius should be at least %g mm, or 0 for "
                            "straight rows.", RADIUS_MIN);
  if (is_curved (form) && p[LENGTH] > 2 * ANGLE_MAX * p[RADIUS])
    return g_strdup ("The first row is longer than the circle on which it lies.");
  return NULL;
}

const FpKind fp_kind_pews = {
  .id = "pews",
  .label = "Pews",
  .tells = "A block of benches for the people, row behind row.",
  .role = FP_ROLE_PEWS,
  .flags = FP_KIND_SURVEY | FP_KIND_ON_FLOOR,
  .spot = FP_SPOT_NAVE,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .seats = seats,
  .quantities = quantities,
  .amiss = amiss,
};
