/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wall.c - a run of wall
 *
 * The corners run along the inner face, clockwise seen from above; the
 * thickness lies to the left of the walk.  Corners are mitred.  Each side is
 * made of upright pieces, convex on the plan: between the openings, below
 * their sills, above their heads.  Over an arch they stand on its chords.
 */
#include "kind-private.h"

#include <math.h>

enum { THICKNESS, HEIGHT, BASE, CLOSED };

#define MITRE_MAX 4.0 /* of a very sharp corner, in thicknesses */

/* Chords of a half-round arch: they keep within so many mm of it, a tenth of one on paper at 1:20. */
#define ARCH_SAGITTA    2.0
#define ARCH_CHORDS_MIN 24
#define ARCH_CHORDS_MAX 96

static const FpChoice closed[] = { { "no", "No" }, { "yes", "Yes" }, { NULL, NULL } };

static const FpParam params[] = {
  [THICKNESS] = FP_LENGTH ("thickness", "Thickness", 20, 600, 5000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 100, 8000, 60000, FP_JUDGEMENT),
  [BASE] = FP_LEVEL ("base", "Level of its foot", -20000, 0, 20000, "as measured"),
  [CLOSED] = FP_CHOICE ("closed", "The last corner joins the first", closed, 0, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* One side: what lies `s` along it, `left` of it. */
typedef struct
{
  FpPoint a;
  double  ux, uy;       /* along                                            */
  double  length;
  double  outer0, outer1; /* where the mitres meet the outer face, along it  */
  double  thickness;
  double  z0, z1;
} Side;

static guint
n_sides (const FpForm *form)
{
  if (form->n_corners < 2)
    return 0;
  return fp_form_is (form, CLOSED, 1) && form->n_corners > 2 ? form->n_corners : form->n_corners - 1;
}

static gboolean
side_direction (const FpForm *form, guint i, double *ux, double *uy, double *length)
{
  const FpPoint a = form->corner[i], b = form->corner[(i + 1) % form->n_corners];

  *length = hypot (b.x - a.x, b.y - a.y);
  if (!(*length > 0))
    return FALSE;
  *ux = (b.x - a.x) / *length;
  *uy = (b.y - a.y) / *length;
  return TRUE;
}

/* How much farther the outer face reaches at a corner than the inner one: positive where the wall turns right,
 * round the outside. */
static double
mitre_reach (double ux, double uy, double vx, double vy, double thickness)
{
  const double turn = atan2 (ux * vy - uy * vx, ux * vx + uy * vy);

  return CLAMP (-tan (turn / 2), -MITRE_MAX, MITRE_MAX) * thickness;
}

static double
reach_between (const FpForm *form, guint before, guint after, double thickness)
{
  double ux, uy, vx, vy, length;

  if (!side_direction (form, before, &ux, &uy, &length) || !side_direction (form, after, &vx, &vy, &length))
    return 0;
  return mitre_reach (ux, uy, vx, vy, thickness);
}

static gboolean
side_get (const FpForm *form, guint i, Side *side)
{
  const guint n = n_sides (form);
  const gboolean ring = n == form->n_corners;

  *side = (Side) { .a = form->corner[i], .thickness = form->param[THICKNESS], .z0 = form->param[BASE] };
  side->z1 = side->z0 + form->param[HEIGHT];
  if (!side_direction (form, i, &side->ux, &side->uy, &side->length))
    return FALSE;
  side->outer1 = side->length;
  if (i > 0 || ring)
    side->outer0 = -reach_between (form, (i + n - 1) % n, i, side->thickness);
  if (i + 1 < n || ring)
    side->outer1 += reach_between (form, i, (i + 1) % n, side->thickness);
  if (side->outer1 < side->outer0)
    side->outer0 = side->outer1 = (side->outer0 + side->outer1) / 2;
  return TRUE;
}

static FpPoint
side_point (const Side *side, double s, double left)
{
  return (FpPoint) { side->a.x + s * side->ux - left * side->uy, side->a.y + s * side->uy + left * side->ux };
}

static double
outer_at (const Side *side, double s)
{
  if (s <= 0)
    return side->outer0;
  if (s >= side->length)
    return side->outer1;
  return CLAMP (s, side->outer0, side->outer1);
}

static guint
piece_outline (const Side *side, double s0, double s1, FpPoint out[4])
{
  const double o0 = outer_at (side, s0), o1 = outer_at (side, s1);
  guint n = 0;

  out[n++] = side_point (side, s0, 0);
  out[n++] = side_point (side, s1, 0);
  out[n++] = side_point (side, o1, side->thickness);
  if (o1 - o0 > 1e-6)
    out[n++] = side_point (side, o0, side->thickness);
  return n;
}

static void
add_piece (FpSolids *out, const Side *side, double s0, double s1, double z0, double z1)
{
  FpPoint pt[4];

  if (s1 - s0 < 1e-6)
    return;
  const guint n = piece_outline (side, s0, s1, pt);
  fp_solids_add_prism (out, FP_PART_WALL, pt, n, MAX (z0, side->z0), MIN (z1, side->z1));
}

/* --- openings ------------------------------------------------------------- */

/* An even number, so that the crown is a corner and as high as the arch. */
static guint
chords_of_arch (double radius)
{
  const double half = acos (1 - MIN (ARCH_SAGITTA / MAX (radius, 1), 0.1));

  return 2 * (guint) CLAMP (ceil (G_PI / half / 4), ARCH_CHORDS_MIN / 2, ARCH_CHORDS_MAX / 2);
}

/* Where two chords meet: x along the side, y its level. */
static FpPoint
arch_corner (double middle, double springing, double radius, double turn)
{
  return (FpPoint) { middle - radius * cos (turn), springing + radius * sin (turn) };
}

/* Within a mitre the two faces end apart, and a foot that rises along the side fits but one of them: there it lies
 * level. */
static gboolean
is_square (const Side *side, double s0, double s1)
{
  return fabs (outer_at (side, s0) - s0) < 1e-6 && fabs (outer_at (side, s1) - s1) < 1e-6;
}

/* What stands over the chord from @a to @b, as far as that lies between @s0 and @s1. */
static void
add_over_chord (FpSolids *out, const Side *side, double s0, double s1, FpPoint a, FpPoint b)
{
  const double from = CLAMP (a.x, s0, s1), to = CLAMP (b.x, s0, s1), slope = (b.y - a.y) / (b.x - a.x);
  const double bx = slope * side->ux, by = slope * side->uy;
  FpPoint pt[4];

  if (to - from < 1e-6)
    return;
  if (!is_square (side, from, to))
    {
      add_piece (out, side, from, to, a.y + slope * ((from + to) / 2 - a.x), side->z1);
      return;
    }
  const guint n = piece_outline (side, from, to, pt);
  fp_solids_add_arching (out, FP_PART_WALL, pt, n, a.y - slope * a.x - bx * side->a.x - by * side->a.y, bx, by,
                         side->z1);
}

static void
add_arch (FpSolids *out, const Side *side, double s0, double s1, double springing, double radius, double middle)
{
  const guint n = chords_of_arch (radius);

  for (guint i = 0; i < n; i++)
    add_over_chord (out, side, s0, s1, arch_corner (middle, springing, radius, G_PI * i / n),
                    arch_corner (middle, springing, radius, G_PI * (i + 1) / n));
}

static void
add_opening (FpSolids *out, const Side *side, const FpHole *hole, double s0, double s1)
{
  const double sill = side->z0 + hole->sill, head = side->z0 + MAX (hole->head, hole->sill);

  add_piece (out, side, s0, s1, side->z0, sill);
  if (hole->arched)
    add_arch (out, side, s0, s1, head, hole->width / 2, hole->along);
  else
    add_piece (out, side, s0, s1, head, side->z1);
}

static int
by_start (gconstpointer a, gconstpointer b)
{
  const FpHole *p = a, *q = b;
  const double pa = p->along - p->width / 2, qa = q->along - q->width / 2;

  return (pa > qa) - (pa < qa);
}

static GArray *
holes_of_side (const FpForm *form, guint side)
{
  GArray *holes = g_array_new (FALSE, FALSE, sizeof (FpHole));

  for (guint i = 0; i < form->n_holes; i++)
    if (form->hole[i].side == side)
      g_array_append_val (holes, form->hole[i]);
  g_array_sort (holes, by_start);
  return holes;
}

static void
add_side (const FpForm *form, guint i, FpSolids *out)
{
  g_autoptr (GArray) holes = holes_of_side (form, i);
  Side side;
  double done = 0;

  if (!side_get (form, i, &side))
    return;
  for (guint h = 0; h < holes->len; h++)
    {
      const FpHole *hole = &g_array_index (holes, FpHole, h);
      const double s0 = CLAMP (hole->along - hole->width / 2, done, side.length);
      const double s1 = CLAMP (hole->along + hole->width / 2, s0, side.length);
      add_piece (out, &side, done, s0, side.z0, side.z1);
      add_opening (out, &side, hole, s0, s1);
      done = s1;
    }
  add_piece (out, &side, done, side.length, side.z0, side.z1);
}

/* --- the kind ------------------------------------------------------------- */

static void
extent (const FpForm *form, FpExtent *out)
{
  FpBox box = FP_BOX_EMPTY;
  Side side;

  for (guint i = 0; i < n_sides (form); i++)
    if (side_get (form, i, &side))
      {
        FpPoint pt[4];
        const guint n = piece_outline (&side, 0, side.length, pt);
        const FpBox own = fp_outline_box (pt, n);
        fp_box_add_box (&box, &own);
      }
  *out = fp_extent_bare (box, form->param[BASE] + form->param[HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  for (guint i = 0; i < n_sides (form); i++)
    add_side (form, i, out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double z = form->param[BASE];
  Side side;

  for (guint i = 0; i < n_sides (form); i++)
    if (side_get (form, i, &side))
      {
        const FpPoint a = side_point (&side, 0, 0), b = side_point (&side, side.length, 0);
        fp_dims_add (out, -1, (FpVec3) { a.x, a.y, z }, (FpVec3) { b.x, b.y, z }, FP_IN_PLAN, 1, 6);
      }
  if (n_sides (form) > 0 && side_get (form, 0, &side))
    {
      const FpPoint inner = side_point (&side, side.length / 2, 0);
      const FpPoint outer = side_point (&side, side.length / 2, side.thickness);
      fp_dims_add (out, THICKNESS, (FpVec3) { inner.x, inner.y, z }, (FpVec3) { outer.x, outer.y, z }, FP_IN_PLAN, 1,
                   8);
      fp_dims_add_z (out, HEIGHT, (FpVec3) { inner.x, inner.y, z }, form->param[HEIGHT], FP_IN_SECTION, 7);
    }
}

static void
quantities (const FpForm *form, GArray *out)
{
  Side side;
  double length = 0;

  for (guint i = 0; i < n_sides (form); i++)
    if (side_get (form, i, &side))
      length += side.length;
  fp_quantities_add (out, "wall, along its inner face", FP_MATERIAL_NONE, FP_AMOUNT_LENGTH, length);
  fp_quantities_add_part (out, &fp_kind_wall, form, FP_PART_WALL, "wall, less its openings", FP_MATERIAL_NONE);
}

/* Where an opening runs past its side, or into its neighbour. */
static char *
amiss (const FpForm *form)
{
  for (guint i = 0; i < n_sides (form); i++)
    {
      g_autoptr (GArray) holes = holes_of_side (form, i);
      double done = 0, ux, uy, length;
      if (!side_direction (form, i, &ux, &uy, &length))
        continue;
      for (guint h = 0; h < holes->len; h++)
        {
          const FpHole *hole = &g_array_index (holes, FpHole, h);
          if (hole->along - hole->width / 2 < done - 1e-6 || hole->along + hole->width / 2 > length + 1e-6)
            return g_strdup_printf ("An opening in side %u runs past the end of that side or into another opening.",
                                    i + 1);
          done = hole->along + hole->width / 2;
        }
    }
  for (guint h = 0; h < form->n_holes; h++)
    if (form->hole[h].side >= n_sides (form))
      return g_strdup_printf ("An opening is told to be in side %u, but the wall has no such side.",
                              form->hole[h].side + 1);
  return NULL;
}

const FpKind fp_kind_wall = {
  .id = "wall",
  .label = "Wall",
  .tells = "A run of wall as it was measured, corner by corner along the face towards the church.",
  .role = FP_ROLE_WALL,
  .flags = FP_KIND_SURVEY | FP_KIND_RUN | FP_KIND_FROM_DATUM | FP_KIND_CUT,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
