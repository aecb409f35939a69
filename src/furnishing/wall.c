/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wall.c - a run of wall
 *
 * The corners run along the inner face, clockwise seen from above; the
 * thickness lies to the left of the walk.  Corners are mitred.  Each side is
 * made of upright pieces, convex on the plan: between the openings, below
 * their sills, above their heads, and between one that lies over another.
 * Over an arch they stand on its chords.
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
  [BASE] = FP_LEVEL ("base", "Level of its foot", -20000, 0, 20000, FP_SURVEYED),
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

/* What stands over the chord from @a to @b up to @top, as far as that lies between @s0 and @s1. */
static void
add_over_chord (FpSolids *out, const Side *side, double s0, double s1, FpPoint a, FpPoint b, double top)
{
  const double from = CLAMP (a.x, s0, s1), to = CLAMP (b.x, s0, s1), slope = (b.y - a.y) / (b.x - a.x);
  const double bx = slope * side->ux, by = slope * side->uy;
  FpPoint pt[4];

  if (to - from < 1e-6)
    return;
  if (!is_square (side, from, to))
    {
      add_piece (out, side, from, to, a.y + slope * ((from + to) / 2 - a.x), top);
      return;
    }
  const guint n = piece_outline (side, from, to, pt);
  fp_solids_add_arching (out, FP_PART_WALL, pt, n, a.y - slope * a.x - bx * side->a.x - by * side->a.y, bx, by, top);
}

static void
add_over_arch (FpSolids *out, const Side *side, double s0, double s1, double springing, const FpHole *hole, double top)
{
  const double radius = hole->width / 2;
  const guint n = chords_of_arch (radius);

  for (guint i = 0; i < n; i++)
    add_over_chord (out, side, s0, s1, arch_corner (hole->along, springing, radius, G_PI * i / n),
                    arch_corner (hole->along, springing, radius, G_PI * (i + 1) / n), top);
}

static double
foot_of (const Side *side, const FpHole *hole)
{
  return side->z0 + hole->sill;
}

/* Of an arch: its springing. */
static double
head_of (const Side *side, const FpHole *hole)
{
  return side->z0 + MAX (hole->head, hole->sill);
}

static double
crown_of (const Side *side, const FpHole *hole)
{
  return head_of (side, hole) + (hole->arched ? hole->width / 2 : 0);
}

static double
start_of (const FpHole *hole)
{
  return hole->along - hole->width / 2;
}

static double
end_of (const FpHole *hole)
{
  return hole->along + hole->width / 2;
}

static int
by_sill (gconstpointer a, gconstpointer b)
{
  const FpHole *p = a, *q = b;

  return (p->sill > q->sill) - (p->sill < q->sill);
}

/* The lowest first. */
static GArray *
holes_of_side (const FpForm *form, guint side)
{
  GArray *holes = g_array_new (FALSE, FALSE, sizeof (FpHole));

  for (guint i = 0; i < form->n_holes; i++)
    if (form->hole[i].side == side)
      g_array_append_val (holes, form->hole[i]);
  g_array_sort (holes, by_sill);
  return holes;
}

/* --- what is left of a side ------------------------------------------------ */

/* Upright, and as wide as nothing changes above and below it. */
typedef struct
{
  double        s0, s1, z0, z1;
  const FpHole *arch; /* on which it stands; NULL: its foot is level          */
} Piece;

static void
finish_piece (FpSolids *out, const Side *side, const Piece *piece)
{
  if (piece->arch != NULL)
    add_over_arch (out, side, piece->s0, piece->s1, piece->z0, piece->arch, piece->z1);
  else
    add_piece (out, side, piece->s0, piece->s1, piece->z0, piece->z1);
}

/* What stands between two neighbouring edges of openings, from the foot up. */
static GArray *
pieces_of_strip (const Side *side, const GArray *holes, double s0, double s1)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (Piece));
  Piece piece = { s0, s1, side->z0, side->z1, NULL };
  double done = side->z0;

  for (guint i = 0; i < holes->len; i++)
    {
      const FpHole *hole = &g_array_index (holes, FpHole, i);
      if (!(start_of (hole) < (s0 + s1) / 2 && end_of (hole) > (s0 + s1) / 2) || !(crown_of (side, hole) > done))
        continue;
      piece.z1 = MIN (foot_of (side, hole), side->z1);
      if (piece.z1 > piece.z0)
        g_array_append_val (pieces, piece);
      done = crown_of (side, hole);
      piece.z0 = head_of (side, hole);
      piece.arch = hole->arched ? hole : NULL;
    }
  piece.z1 = side->z1;
  if (piece.z1 > piece.z0)
    g_array_append_val (pieces, piece);
  return pieces;
}

/* A piece that goes on as it was in the strip before is one with that. */
static void
join_piece (Piece *piece, GArray *before)
{
  for (guint i = 0; i < before->len; i++)
    {
      const Piece *old = &g_array_index (before, Piece, i);
      if (old->z0 != piece->z0 || old->z1 != piece->z1 || old->arch != piece->arch)
        continue;
      piece->s0 = old->s0;
      g_array_remove_index_fast (before, i);
      return;
    }
}

static int
by_value (gconstpointer a, gconstpointer b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return (p > q) - (p < q);
}

/* Where something changes along a side, its ends included. */
static GArray *
edges_of_side (const Side *side, const GArray *holes)
{
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (double));

  g_array_append_vals (edges, (double[]) { 0, side->length }, 2);
  for (guint i = 0; i < holes->len; i++)
    {
      const FpHole *hole = &g_array_index (holes, FpHole, i);
      const double edge[] = { CLAMP (start_of (hole), 0, side->length), CLAMP (end_of (hole), 0, side->length) };
      g_array_append_vals (edges, edge, G_N_ELEMENTS (edge));
    }
  g_array_sort (edges, by_value);
  return edges;
}

static void
finish_pieces (FpSolids *out, const Side *side, const GArray *pieces)
{
  for (guint i = 0; i < pieces->len; i++)
    finish_piece (out, side, &g_array_index (pieces, Piece, i));
}

static void
add_side (const FpForm *form, guint i, FpSolids *out)
{
  g_autoptr (GArray) holes = holes_of_side (form, i), edges = NULL, before = NULL;
  double from = 0;
  Side side;

  if (!side_get (form, i, &side))
    return;
  edges = edges_of_side (&side, holes);
  before = g_array_new (FALSE, FALSE, sizeof (Piece));
  for (guint e = 0; e < edges->len; e++)
    {
      const double to = g_array_index (edges, double, e);
      g_autoptr (GArray) pieces = NULL;
      if (to - from < 1e-6)
        continue;
      pieces = pieces_of_strip (&side, holes, from, to);
      for (guint k = 0; k < pieces->len; k++)
        join_piece (&g_array_index (pieces, Piece, k), before);
      finish_pieces (out, &side, before);
      g_array_unref (before);
      before = g_steal_pointer (&pieces);
      from = to;
    }
  finish_pieces (out, &side, before);
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

static gboolean
overlap (double a0, double a1, double b0, double b1)
{
  return MIN (a1, b1) - MAX (a0, b0) > 1e-6;
}

/* One may lie over another. */
static gboolean
holes_overlap (const Side *side, const FpHole *a, const FpHole *b)
{
  return overlap (start_of (a), end_of (a), start_of (b), end_of (b))
         && overlap (foot_of (side, a), crown_of (side, a), foot_of (side, b), crown_of (side, b));
}

/* Whether every opening keeps within its side and clear of the others. */
static gboolean
holes_fit (const Side *side, const GArray *holes)
{
  for (guint h = 0; h < holes->len; h++)
    {
      const FpHole *hole = &g_array_index (holes, FpHole, h);
      if (start_of (hole) < -1e-6 || end_of (hole) > side->length + 1e-6)
        return FALSE;
      for (guint k = 0; k < h; k++)
        if (holes_overlap (side, hole, &g_array_index (holes, FpHole, k)))
          return FALSE;
    }
  return TRUE;
}

static char *
amiss (const FpForm *form)
{
  for (guint i = 0; i < n_sides (form); i++)
    {
      g_autoptr (GArray) holes = holes_of_side (form, i);
      Side side;
      if (side_get (form, i, &side) && !holes_fit (&side, holes))
        return g_strdup_printf ("An opening in side %u runs past the end of that side or into another opening.", i + 1);
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
