/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "embree-scene.h"

#include <embree3/rtcore.h>
#include <math.h>
#include <string.h>

#define ROUND_SIDES 256 /* of a frustum: within 0.04 mm of a round one a metre across */

struct _EmbreeScene
{
  RTCDevice      device;
  RTCScene       scene;
  RTCScene       ball;    /* one unit sphere, stretched for each head */
  const FpSolid *solid;   /* borrowed                                 */
};

/* --- triangles ------------------------------------------------------------ */

typedef struct { float x, y, z; } Vertex;
typedef struct { guint a, b, c; } Triangle;

typedef struct { GArray *vertex, *triangle; } Mesh;

static void
mesh_init (Mesh *self)
{
  self->vertex = g_array_new (FALSE, FALSE, sizeof (Vertex));
  self->triangle = g_array_new (FALSE, FALSE, sizeof (Triangle));
}

static void
mesh_clear (Mesh *self)
{
  g_array_unref (self->vertex);
  g_array_unref (self->triangle);
}

static guint
add_vertex (Mesh *self, double x, double y, double z)
{
  Vertex v = { (float) x, (float) y, (float) z };
  g_array_append_val (self->vertex, v);
  return self->vertex->len - 1;
}

static void
add_triangle (Mesh *self, guint a, guint b, guint c)
{
  Triangle t = { a, b, c };
  g_array_append_val (self->triangle, t);
}

static double
turn_of (FpPoint a, FpPoint b, FpPoint c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static gboolean
is_ear (const FpPoint *pt, const guint *left, guint n, guint i)
{
  FpPoint a = pt[left[(i + n - 1) % n]], b = pt[left[i]], c = pt[left[(i + 1) % n]];
  if (turn_of (a, b, c) <= 0)
    return FALSE;
  for (guint k = 0; k < n; k++)
    {
      FpPoint p = pt[left[k]];
      if (k == i || k == (i + 1) % n || k == (i + n - 1) % n)
        continue;
      if (turn_of (a, b, p) >= 0 && turn_of (b, c, p) >= 0 && turn_of (c, a, p) >= 0)
        return FALSE;
    }
  return TRUE;
}

/* Foot and top of a prism, by cutting off ears; vertices 2 i and 2 i + 1 are foot and top of corner i. */
static void
add_lids (Mesh *self, const FpPoint *pt, guint n_corners, guint first)
{
  g_autofree guint *left = g_new (guint, n_corners);
  guint n = n_corners;
  for (guint i = 0; i < n; i++)
    left[i] = i;
  while (n >= 3)
    {
      guint ear = 0;
      while (ear < n && !is_ear (pt, left, n, ear))
        ear++;
      if (ear == n)
        ear = 0; /* only corners on a line are left */
      guint a = left[(ear + n - 1) % n], b = left[ear], c = left[(ear + 1) % n];
      add_triangle (self, first + 2 * a, first + 2 * b, first + 2 * c);
      add_triangle (self, first + 2 * a + 1, first + 2 * b + 1, first + 2 * c + 1);
      for (guint k = ear; k + 1 < n; k++)
        left[k] = left[k + 1];
      n--;
    }
}

static void
add_sides (Mesh *self, guint n, guint first)
{
  for (guint i = 0; i < n; i++)
    {
      guint k = (i + 1) % n;
      add_triangle (self, first + 2 * i, first + 2 * k, first + 2 * k + 1);
      add_triangle (self, first + 2 * i, first + 2 * k + 1, first + 2 * i + 1);
    }
}

static void
add_prism (Mesh *self, const FpSolid *s)
{
  guint first = self->vertex->len;
  for (guint i = 0; i < s->n_outline; i++)
    {
      FpPoint p = s->outline[i];
      add_vertex (self, p.x, p.y, fp_solid_foot_at (s, p.x, p.y));
      add_vertex (self, p.x, p.y, fp_solid_top_at (s, p.x, p.y));
    }
  add_sides (self, s->n_outline, first);
  add_lids (self, s->outline, s->n_outline, first);
}

static void
add_frustum (Mesh *self, const FpSolid *s)
{
  guint first = self->vertex->len;
  for (guint i = 0; i < ROUND_SIDES; i++)
    {
      double a = 2 * G_PI * i / ROUND_SIDES;
      add_vertex (self, s->cx + s->r0 * cos (a), s->cy + s->r0 * sin (a), s->z0);
      add_vertex (self, s->cx + s->r1 * cos (a), s->cy + s->r1 * sin (a), s->z1);
    }
  add_sides (self, ROUND_SIDES, first);
  for (guint i = 1; i + 1 < ROUND_SIDES; i++)
    {
      add_triangle (self, first, first + 2 * i, first + 2 * i + 2);
      add_triangle (self, first + 1, first + 2 * i + 1, first + 2 * i + 3);
    }
}

/* --- geometries: one a solid, of the same number -------------------------- */

static RTCGeometry
triangles (RTCDevice device, const Mesh *mesh)
{
  RTCGeometry geometry = rtcNewGeometry (device, RTC_GEOMETRY_TYPE_TRIANGLE);
  void *v = rtcSetNewGeometryBuffer (geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, sizeof (Vertex),
                                     mesh->vertex->len);
  void *t = rtcSetNewGeometryBuffer (geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, sizeof (Triangle),
                                     mesh->triangle->len);
  memcpy (v, mesh->vertex->data, mesh->vertex->len * sizeof (Vertex));
  memcpy (t, mesh->triangle->data, mesh->triangle->len * sizeof (Triangle));
  return geometry;
}

static RTCScene
unit_ball (RTCDevice device)
{
  RTCScene scene = rtcNewScene (device);
  RTCGeometry ball = rtcNewGeometry (device, RTC_GEOMETRY_TYPE_SPHERE_POINT);
  float *v = rtcSetNewGeometryBuffer (ball, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT4, 4 * sizeof (float), 1);
  v[0] = v[1] = v[2] = 0;
  v[3] = 1;
  rtcCommitGeometry (ball);
  rtcAttachGeometry (scene, ball);
  rtcReleaseGeometry (ball);
  rtcSetSceneFlags (scene, RTC_SCENE_FLAG_ROBUST | RTC_SCENE_FLAG_CONTEXT_FILTER_FUNCTION);
  rtcCommitScene (scene);
  return scene;
}

static RTCGeometry
stretched_ball (RTCDevice device, RTCScene ball, const FpSolid *s)
{
  double a = s->turn * G_PI / 180;
  const float transform[12] = {
    (float) (s->rx * cos (a)), (float) (s->rx * sin (a)), 0,
    (float) (-s->ry * sin (a)), (float) (s->ry * cos (a)), 0,
    0, 0, (float) s->rz,
    (float) s->cx, (float) s->cy, (float) s->cz,
  };
  RTCGeometry geometry = rtcNewGeometry (device, RTC_GEOMETRY_TYPE_INSTANCE);
  rtcSetGeometryInstancedScene (geometry, ball);
  rtcSetGeometryTransform (geometry, 0, RTC_FORMAT_FLOAT3X4_COLUMN_MAJOR, transform);
  return geometry;
}

static RTCGeometry
geometry_of (EmbreeScene *self, const FpSolid *s)
{
  if (s->shape == FP_SOLID_ELLIPSOID)
    return stretched_ball (self->device, self->ball, s);
  Mesh mesh;
  mesh_init (&mesh);
  if (s->shape == FP_SOLID_PRISM)
    add_prism (&mesh, s);
  else
    add_frustum (&mesh, s);
  RTCGeometry geometry = triangles (self->device, &mesh);
  mesh_clear (&mesh);
  return geometry;
}

static void
report (void *data, enum RTCError code, const char *message)
{
  (void) data;
  g_error ("embree: %d: %s", (int) code, message);
}

EmbreeScene *
embree_scene_new (const FpSolids *solids)
{
  EmbreeScene *self = g_new0 (EmbreeScene, 1);
  guint n;

  self->device = rtcNewDevice ("threads=1");
  g_assert_nonnull (self->device);
  rtcSetDeviceErrorFunction (self->device, report, NULL);
  self->solid = fp_solids_peek (solids, &n);
  self->ball = unit_ball (self->device);
  self->scene = rtcNewScene (self->device);
  for (guint i = 0; i < n; i++)
    {
      RTCGeometry geometry = geometry_of (self, &self->solid[i]);
      rtcCommitGeometry (geometry);
      rtcAttachGeometryByID (self->scene, geometry, i);
      rtcReleaseGeometry (geometry);
    }
  rtcSetSceneBuildQuality (self->scene, RTC_BUILD_QUALITY_HIGH);
  rtcSetSceneFlags (self->scene, RTC_SCENE_FLAG_ROBUST | RTC_SCENE_FLAG_CONTEXT_FILTER_FUNCTION);
  rtcCommitScene (self->scene);
  return self;
}

void
embree_scene_free (EmbreeScene *self)
{
  rtcReleaseScene (self->scene);
  rtcReleaseScene (self->ball);
  rtcReleaseDevice (self->device);
  g_free (self);
}

/* --- rays ----------------------------------------------------------------- */

typedef struct
{
  struct RTCIntersectContext context; /* first: Embree hands back its address */
  const FpSolid             *solid;
  guint                      skip_owner, skip_minister;
} Look;

static void
pass_over (const struct RTCFilterFunctionNArguments *args)
{
  const Look *look = (const Look *) (const void *) args->context;
  /* Of each ray: three of the normal, u and v, then the numbers of primitive, geometry and instance. */
  const guint *hit = (const guint *) (const void *) args->hit;

  for (guint i = 0; i < args->N; i++)
    {
      const guint instance = hit[7 * args->N + i];
      const FpSolid *s;
      if (args->valid[i] == 0)
        continue;
      s = &look->solid[instance != RTC_INVALID_GEOMETRY_ID ? instance : hit[6 * args->N + i]];
      if (s->owner == look->skip_owner
          || ((s->part == FP_PART_HEAD || s->part == FP_PART_TRUNK) && s->owner == look->skip_minister))
        args->valid[i] = 0;
    }
}

guint
embree_scene_blocked_of (EmbreeScene *self, FpVec3 from, const FpVec3 *to, guint n, guint skip_owner, guint skip_minister)
{
  Look look = { .solid = self->solid, .skip_owner = skip_owner, .skip_minister = skip_minister };
  struct RTCRay8 ray;
  int valid[EMBREE_PACKET] __attribute__ ((aligned (32)));
  guint blocked = 0;

  for (guint i = 0; i < EMBREE_PACKET; i++)
    {
      const FpVec3 end = to[MIN (i, n - 1)];
      valid[i] = i < n ? -1 : 0;
      ray.org_x[i] = (float) from.x;
      ray.org_y[i] = (float) from.y;
      ray.org_z[i] = (float) from.z;
      ray.dir_x[i] = (float) (end.x - from.x);
      ray.dir_y[i] = (float) (end.y - from.y);
      ray.dir_z[i] = (float) (end.z - from.z);
      ray.tnear[i] = 0;
      ray.tfar[i] = 1;
      ray.time[i] = 0;
      ray.mask[i] = G_MAXUINT;
      ray.id[i] = ray.flags[i] = 0;
    }
  rtcInitIntersectContext (&look.context);
  look.context.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
  look.context.filter = pass_over;
  rtcOccluded8 (valid, self->scene, &look.context, &ray);
  for (guint i = 0; i < n; i++)
    blocked += ray.tfar[i] < 0 ? 1 : 0;
  return blocked;
}

gboolean
embree_scene_blocked (EmbreeScene *self, FpVec3 from, FpVec3 to, guint skip_owner, guint skip_minister)
{
  Look look = { .solid = self->solid, .skip_owner = skip_owner, .skip_minister = skip_minister };
  struct RTCRay ray = {
    .org_x = (float) from.x, .org_y = (float) from.y, .org_z = (float) from.z,
    .dir_x = (float) (to.x - from.x), .dir_y = (float) (to.y - from.y), .dir_z = (float) (to.z - from.z),
    .tnear = 0, .tfar = 1, .mask = G_MAXUINT,
  };

  rtcInitIntersectContext (&look.context);
  look.context.filter = pass_over;
  rtcOccluded1 (self->scene, &look.context, &ray);
  return ray.tfar < 0;
}
