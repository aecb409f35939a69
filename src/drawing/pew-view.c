/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-view.c - what a person sees, from the church to the list of faces */
#include "pew-private.h"

#include <math.h>

/* How much of the picture lies under the horizon, and how near to its lower edge the middle of what is looked at may come
 * before the picture is let down, as from a gallery: design judgement. */
#define UNDER_HORIZON 0.42
#define LOWEST        0.3
#define FIELD_LEAST   10.0
#define FIELD_MOST    120.0
/* What is narrower in the picture, and no piece of a wall, has no lines of its own: it would be nothing but lines. */
#define TOO_SMALL 0.004

struct _FpPewView
{
  gatomicrefcount ref_count;
  const FpPeople *people; /* owned reference */
  FpPewSpec       spec;
  FpPewCamera     camera;
  GArray         *faces, *points, *lines;
};

/* --- light ------------------------------------------------------------------------ */

/* One soft light from above, from the left and from behind; what is farther is paler, as in air: design judgement. */
#define LIGHT ((FpVec3) { -0.60, -0.34, 0.725 })
#define HAZE_FAR 60000.0 /* mm at which two thirds of the contrast are gone */
#define HAZE_TONE 0.93

/* Ministers are told from what stands beside them, proposed or not. */
#define MINISTERS 0.62

static double
lightness_of (FpPart part)
{
  switch ((guint) part)
    {
    case FP_PART_WALL: return 1.0;
    case FP_PART_FLOOR: return 0.97;
    case FP_PART_HEAD:
    case FP_PART_TRUNK: return MINISTERS;
    case FP_PART_SEAT:
    case FP_PART_BACK: return 0.86;
    default: return 0.92;
    }
}

/* People are told quietly: paler, and with less of light and shade. */
static double
tone_of (const FpConvex *piece, FpVec3 normal, double distance)
{
  const double lit = 0.5 + 0.5 * fp_vec3_dot (normal, LIGHT), haze = 1 - exp (-distance / HAZE_FAR);
  const double tone = piece->owner >= FP_SIGHT_PERSON ? 0.80 + 0.15 * lit
                                                      : (0.50 + 0.48 * lit) * lightness_of (piece->part);

  return tone + (HAZE_TONE - tone) * haze;
}

/* The building's surfaces are of many pieces: all that lie in one plane have one tone. */
static double
distance_of (const FpConvex *piece, const FpFacet *facet)
{
  if (piece->part == FP_PART_WALL || piece->part == FP_PART_FLOOR)
    return -facet->d;
  return (piece->box.lo.y + piece->box.hi.y) / 2;
}

/* --- the camera ------------------------------------------------------------------- */

/* The middle of what is looked at: of the altar where there is no such thing; FALSE where there is none of either. */
static gboolean
find_focus (const FpScene *scene, FpFocus focus, FpVec3 *at)
{
  FpVec3 point[FP_SIGHT_RAYS];
  guint n = fp_sight_points (scene, focus, point);

  if (n == 0)
    n = fp_sight_points (scene, FP_FOCUS_MENSA, point);
  *at = (FpVec3) { 0, 0, 0 };
  for (guint i = 0; i < n; i++)
    *at = fp_vec3_add (*at, fp_vec3_scale (point[i], 1.0 / n));
  return n > 0;
}

/* Straight ahead of the body where what is looked at is right above or under the eye, or nowhere. */
static FpPoint
direction (const FpPersonPlace *place, FpVec3 eye, gboolean found, FpVec3 focus)
{
  const double x = focus.x - eye.x, y = focus.y - eye.y, length = hypot (x, y);

  if (found && length > 1)
    return (FpPoint) { x / length, y / length };
  return (FpPoint) { -sin (place->facing * G_PI / 180), cos (place->facing * G_PI / 180) };
}

static FpVec3
find_eye (const FpPeople *people, const FpPewSpec *spec)
{
  const FpPerson child = { .child = TRUE, .percentile = 50 };
  const FpPosture posture = fp_moment_posture (spec->moment);

  return spec->child ? fp_people_eye_of (people, spec->place, &child, posture)
                     : fp_people_eye (people, spec->place, posture);
}

static FpPewCamera
make_camera (const FpPeople *people, const FpPewSpec *spec)
{
  const double field = spec->field > 0 ? CLAMP (spec->field, FIELD_LEAST, FIELD_MOST) : FP_PEW_FIELD;
  const double half = tan (field * G_PI / 360), aspect = spec->aspect > 0 ? spec->aspect : FP_PEW_ASPECT;
  const double height = 2 * half / aspect;
  FpPewCamera camera = { .eye = find_eye (people, spec) };
  const FpPersonPlace *place = &fp_people_places (people, NULL)[spec->place];
  FpVec3 focus;
  const gboolean found = find_focus (fp_people_scene (people), spec->focus, &focus);
  double foot = -UNDER_HORIZON * height;

  camera.ahead = direction (place, camera.eye, found, focus);
  if (found)
    {
      const FpVec3 p = fp_pew_from_church (&camera, focus);
      if (p.y > 0)
        foot = MIN (foot, p.z / p.y - LOWEST * height);
    }
  camera.picture = (FpBox) { -half, foot, half, foot + height };
  return camera;
}

/* --- faces ------------------------------------------------------------------------- */

typedef struct
{
  FpPewView      *view;
  const FpPlaced *placed;
  const GArray   *seen, *facets, *edges;
} Listing;

/* Nobody is proposed. */
static FpStanding
standing_of (const Listing *l, const FpConvex *piece)
{
  const gboolean person = piece->owner >= FP_SIGHT_PERSON || piece->part == FP_PART_HEAD || piece->part == FP_PART_TRUNK;

  return person ? FP_STANDING_EXISTING : l->placed[piece->owner].standing;
}

static FpPewFace
face_of (const Listing *l, const FpConvex *piece, double tone)
{
  return (FpPewFace) {
    .owner = piece->owner, .part = piece->part,
    .standing = standing_of (l, piece),
    .tone = tone, .first = l->view->points->len, .first_line = l->view->lines->len,
  };
}

static double
facet_tone (const FpConvex *piece, guint facet)
{
  return tone_of (piece, piece->facet[facet].n, distance_of (piece, &piece->facet[facet]));
}

static void
add_facet (Listing *l, const FpConvex *piece, guint i)
{
  const FpFacet *facet = &piece->facet[i];
  FpPewFace face = face_of (l, piece, facet_tone (piece, i));

  for (guint k = 0; k < facet->count; k++)
    {
      const FpPoint p = fp_pew_project (piece->vertex[piece->loop[facet->first + k]]);
      g_array_append_val (l->view->points, p);
    }
  face.n = facet->count;
  g_array_append_val (l->view->faces, face);
}

static void
add_ellipse (Listing *l, const FpConvex *piece)
{
  /* As light as its middle, which faces the eye. */
  FpPewFace face = face_of (l, piece, tone_of (piece, (FpVec3) { 0, -1, 0 }, piece->centre.y));

  face.type = FP_PEW_ELLIPSE;
  fp_convex_ellipse (piece, &face.at, &face.a, &face.b);
  g_array_append_val (l->view->faces, face);
}

/* The edges of the piece @index, which end before @to, are drawn after its last face.  Returns where they begin. */
static guint
add_lines (Listing *l, guint index, guint to)
{
  FpPewFace *last = &g_array_index (l->view->faces, FpPewFace, l->view->faces->len - 1);
  const FpConvex *piece = g_array_index (l->seen, FpPewSeen, index).piece;
  const FpBox seen = piece->seen;
  const gboolean small = piece->part != FP_PART_WALL
                         && (seen.x1 - seen.x0 < TOO_SMALL || seen.y1 - seen.y0 < TOO_SMALL);
  guint from = to;

  while (from > 0 && g_array_index (l->edges, FpPewEdge, from - 1).seen == index)
    from--;
  for (guint i = from; i < to; i++)
    {
      const FpPewEdge *edge = &g_array_index (l->edges, FpPewEdge, i);
      const double tone = edge->type == FP_PEW_JOINT ? facet_tone (piece, edge->facet) : fp_pew_line_tone (last->tone);
      const FpPewLine line = { fp_pew_project (edge->a), fp_pew_project (edge->b), edge->type, tone };
      if (!small || edge->type == FP_PEW_JOINT)
        g_array_append_val (l->view->lines, line);
    }
  last->n_lines = l->view->lines->len - last->first_line;
  return from;
}

/* The farthest first. */
static void
list_faces (Listing *l)
{
  guint edge = l->edges->len;

  for (guint i = l->seen->len; i-- > 0;)
    {
      const FpPewSeen *seen = &g_array_index (l->seen, FpPewSeen, i);
      if (seen->piece->round)
        add_ellipse (l, seen->piece);
      for (guint k = 0; k < seen->n; k++)
        add_facet (l, seen->piece, g_array_index (l->facets, guint, seen->first + k));
      edge = add_lines (l, i, edge);
    }
}

/* --- the view ---------------------------------------------------------------------- */

FpPewView *
fp_pew_view_new (const FpPeople *people, const FpPewSpec *spec)
{
  FpPewView *self = g_new0 (FpPewView, 1);
  g_autoptr (FpSolids) solids = fp_sight_obstacles (people, spec->moment);
  g_autoptr (FpPewPool) pool = fp_pew_pool_new ();
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  g_autoptr (GArray) seen = g_array_new (FALSE, FALSE, sizeof (FpPewSeen));
  g_autoptr (GArray) facets = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (FpPewEdge));

  g_atomic_ref_count_init (&self->ref_count);
  self->people = fp_people_ref (people);
  self->spec = *spec;
  self->camera = make_camera (people, spec);
  self->faces = g_array_new (FALSE, FALSE, sizeof (FpPewFace));
  self->points = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  self->lines = g_array_new (FALSE, FALSE, sizeof (FpPewLine));
  fp_pew_pieces (pool, &self->camera, solids, FP_SIGHT_PERSON + spec->place, pieces);
  fp_pew_find_joints (pieces);
  fp_pew_order (pool, self->camera.picture, pieces, seen, facets);
  fp_pew_edges (pool, seen, facets, edges);
  list_faces (&(Listing) { self, fp_scene_placed (fp_people_scene (people), NULL), seen, facets, edges });
  return self;
}

FpPewView *
fp_pew_view_ref (const FpPewView *self)
{
  FpPewView *mine = (FpPewView *) self;
  g_atomic_ref_count_inc (&mine->ref_count);
  return mine;
}

void
fp_pew_view_unref (const FpPewView *self)
{
  FpPewView *mine = (FpPewView *) self;
  if (!g_atomic_ref_count_dec (&mine->ref_count))
    return;
  fp_people_unref (mine->people);
  g_array_unref (mine->faces);
  g_array_unref (mine->points);
  g_array_unref (mine->lines);
  g_free (mine);
}

FpBox
fp_pew_view_box (const FpPewView *self)
{
  return self->camera.picture;
}

const FpPewFace *
fp_pew_view_faces (const FpPewView *self, guint *n)
{
  if (n != NULL)
    *n = self->faces->len;
  return (const FpPewFace *) (gpointer) self->faces->data;
}

const FpPoint *
fp_pew_view_points (const FpPewView *self)
{
  return (const FpPoint *) (gpointer) self->points->data;
}

const FpPewLine *
fp_pew_view_lines (const FpPewView *self)
{
  return (const FpPewLine *) (gpointer) self->lines->data;
}

const FpPeople *
fp_pew_view_people (const FpPewView *self)
{
  return self->people;
}

const FpPewSpec *
fp_pew_view_spec (const FpPewView *self)
{
  return &self->spec;
}

char *
fp_pew_view_name (const FpPewView *self, guint owner)
{
  if (owner >= FP_SIGHT_PERSON)
    return fp_people_name (self->people, owner - FP_SIGHT_PERSON);
  return g_strdup (fp_item_name (fp_scene_placed (fp_people_scene (self->people), NULL)[owner].item));
}

/* --- from the church to the picture and back ------------------------------------------ */

gboolean
fp_pew_view_point (const FpPewView *self, FpVec3 church, FpPoint *at)
{
  const FpVec3 p = fp_pew_from_church (&self->camera, church);

  if (!(p.y > 0))
    return FALSE;
  *at = fp_pew_project (p);
  return TRUE;
}

FpVec3
fp_pew_view_unpoint (const FpPewView *self, FpPoint at, double distance)
{
  const FpPoint ahead = self->camera.ahead;
  const double x = at.x * distance;

  return (FpVec3) { self->camera.eye.x + x * ahead.y + distance * ahead.x,
                    self->camera.eye.y - x * ahead.x + distance * ahead.y, self->camera.eye.z + at.y * distance };
}

FpVec3
fp_pew_view_eye (const FpPewView *self)
{
  return self->camera.eye;
}

static gboolean
face_has (const FpPewView *self, const FpPewFace *face, FpPoint p)
{
  const double det = face->a.x * face->b.y - face->a.y * face->b.x, x = p.x - face->at.x, y = p.y - face->at.y;
  double c, s;

  if (face->type == FP_PEW_POLYGON)
    return fp_outline_contains (fp_pew_view_points (self) + face->first, face->n, p);
  if (det == 0)
    return FALSE;
  c = (x * face->b.y - y * face->b.x) / det;
  s = (face->a.x * y - face->a.y * x) / det;
  return c * c + s * s < 1;
}

const FpPewFace *
fp_pew_view_face_at (const FpPewView *self, FpPoint at)
{
  for (guint i = self->faces->len; i-- > 0;)
    {
      const FpPewFace *face = &g_array_index (self->faces, FpPewFace, i);
      if (face_has (self, face, at))
        return face;
    }
  return NULL;
}
