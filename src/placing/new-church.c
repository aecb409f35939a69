/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/new-church.h"

#include "footpace/people.h"
#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* mm.  Where nothing else is said: common practice, no source. */
#define RISER       150.0 /* the rise that is aimed at between the floors: design judgement */
#define TREAD       300.0
#define STEPS_WIDTH 3000.0
#define APSE_SIDES  24u   /* of the half circle, even: corners lie 0.2 % beyond the true radius */
#define WEST_DOOR   1800.0
#define SACRISTY_DOOR 900.0
#define DOOR_HEAD   2100.0
#define DOOR_FROM_CORNER 300.0
#define WEST_SIDE_LEAST  1000.0 /* a shorter side is a splay, not where one comes in */
#define HIGH_ALTAR   2700.0 /* 9 Baden feet: what a finding asks of a high altar */
#define BESIDE_ALTAR 1200.0 /* left on either side of it, to walk past: design judgement */
#define BEFORE_STEPS 1500.0 /* of the sanctuary's floor, for a rail and those who go before the steps: design judgement */
#define ROOM_STEP    50.0   /* by which a place is looked for elsewhere, so many times either way */
#define ROOM_STEPS   50u
#define TOUCH        1.0
#define OWN_STEP     300.0  /* of ambo and chair, for who sits far back: design judgement */

static const struct { const char *id, *label; } shapes[FP_N_ROOMS] = {
  { "rectangle", "One rectangle" },
  { "chancel", "Nave with a chancel" },
  { "transepts", "Nave, transepts and chancel" },
  { "walked", "An outline walked side by side" },
};

const char *
fp_room_shape_id (FpRoomShape shape)
{
  return shapes[shape].id;
}

const char *
fp_room_shape_label (FpRoomShape shape)
{
  return shapes[shape].label;
}

void
fp_new_church_defaults (FpNewChurch *spec)
{
  *spec = (FpNewChurch) {
    .brief = {
      .title = "", .place = "", .client = "", .author = "", .note = "",
      .books = FP_BOOKS_BOTH, .facing = FP_FACING_EAST, .celebrations = FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG,
      .ministers = 5, .seats = 0, .units = FP_UNITS_METRIC, .north = 90.0, .percentile = 50
    },
    .shape = FP_ROOM_CHANCEL,
    .nave_width = 12000.0, .nave_length = 20000.0,
    .sanctuary_width = 9000.0, .sanctuary_depth = 9000.0, .sanctuary_level = 450.0,
    .transept_span = 22000.0, .transept_width = 6000.0,
    .wall_height = 8000.0, .wall_thickness = 600.0, .doors = TRUE, .furnish = TRUE
  };
}

/* --- what it may be ------------------------------------------------------- */

typedef struct { const char *what; double value, min, max; } Limit;

static gboolean
limit_check (const Limit *limit, FpUnits units, GError **error)
{
  g_autofree char *value = NULL, *min = NULL, *max = NULL;

  if (limit->value >= limit->min && limit->value <= limit->max)
    return TRUE;
  value = isfinite (limit->value) ? fp_length_format_unit (limit->value, units) : g_strdup ("not a number");
  min = fp_length_format_unit (limit->min, units);
  max = fp_length_format_unit (limit->max, units);
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s; it must be from %s to %s.", limit->what, value, min, max);
  return FALSE;
}

static gboolean
limits_check (const Limit *limits, guint n, FpUnits units, GError **error)
{
  for (guint i = 0; i < n; i++)
    if (!limit_check (&limits[i], units, error))
      return FALSE;
  return TRUE;
}

static gboolean
walls_check (const FpNewChurch *spec, GError **error)
{
  const Limit limits[] = {
    { "The level of the sanctuary floor", spec->sanctuary_level, 0.0, 3000.0 },
    { "The height of the walls", spec->wall_height, 2000.0, 60000.0 },
    { "The thickness of the walls", spec->wall_thickness, 50.0, 5000.0 },
  };

  return limits_check (limits, G_N_ELEMENTS (limits), spec->brief.units, error);
}

static gboolean
room_check (const FpNewChurch *spec, GError **error)
{
  const gboolean narrower = spec->shape != FP_ROOM_RECTANGLE, arms = spec->shape == FP_ROOM_TRANSEPTS;
  const double least_depth = spec->apse && narrower ? spec->sanctuary_width / 2.0 + 500.0 : 3000.0;
  const Limit nave[] = {
    { "The width of the nave", spec->nave_width, 3000.0, 100000.0 },
    { "The length of the nave", spec->nave_length, 3000.0, 200000.0 },
  };
  const Limit chancel[] = { { "The width of the chancel", spec->sanctuary_width, 3000.0, spec->nave_width } };
  const Limit depth[] = { { "The depth of the sanctuary", spec->sanctuary_depth, MAX (3000.0, least_depth), 100000.0 } };
  const Limit transepts[] = {
    { "The span of the transepts", spec->transept_span, spec->nave_width + 1000.0, 200000.0 },
    { "The width of a transept", spec->transept_width, 1000.0, spec->nave_length - 1000.0 },
  };
  const FpUnits units = spec->brief.units;

  return limits_check (nave, 2, units, error) && (!narrower || limits_check (chancel, 1, units, error))
         && limits_check (depth, 1, units, error) && (!arms || limits_check (transepts, 2, units, error));
}

static gboolean
walked_check (const FpNewChurch *spec, GError **error)
{
  const FpBox box = fp_outline_box (spec->corner, spec->n_corners);
  g_autofree char *across = NULL, *along = NULL;
  FpPoint where;

  if (spec->n_corners < 3 || fp_outline_area (spec->corner, spec->n_corners) == 0.0)
    g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "The outline encloses nothing: walk at least three sides.");
  else if (spec->n_corners > FP_CORNERS_MAX)
    g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "The outline has %u corners; at most %u are taken.",
                 spec->n_corners, (guint) FP_CORNERS_MAX);
  else if (fp_outline_crosses_itself (spec->corner, spec->n_corners, &where))
    {
      across = fp_length_format_unit (where.x, spec->brief.units);
      along = fp_length_format_unit (where.y, spec->brief.units);
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "The outline crosses itself at %s across, %s along.", across, along);
    }
  else
    {
      /* The part beyond y = 0 is the sanctuary. */
      const Limit limits[] = {
        { "The length of the outline west of the sanctuary", -box.y0, 1000.0, 200000.0 },
        { "The depth of the outline east of the nave", box.y1, 1000.0, 100000.0 },
        { "The width of the outline", box.x1 - box.x0, 3000.0, 200000.0 },
      };
      return limits_check (limits, G_N_ELEMENTS (limits), spec->brief.units, error);
    }
  return FALSE;
}

static gboolean
spec_check (const FpNewChurch *spec, GError **error)
{
  return walls_check (spec, error)
         && (spec->shape == FP_ROOM_WALKED ? walked_check (spec, error) : room_check (spec, error));
}

/* --- the outline, inside the walls, clockwise seen from above -------------- */

static void
add (GArray *out, double x, double y)
{
  const FpPoint p = { x, y };

  g_array_append_val (out, p);
}

static double
half_of_sanctuary (const FpNewChurch *spec)
{
  return (spec->shape == FP_ROOM_RECTANGLE ? spec->nave_width : spec->sanctuary_width) / 2.0;
}

/* From the Gospel side round to the Epistle side.  The sides of an apse touch its half circle in their middles, one of them
 * where it lies farthest east: depth and width within the walls and over them are to the millimetre those of the circle. */
static void
add_east_end (GArray *out, const FpNewChurch *spec)
{
  const double s = half_of_sanctuary (spec), d = spec->sanctuary_depth;

  if (!spec->apse || spec->shape == FP_ROOM_RECTANGLE)
    {
      add (out, -s, d);
      add (out, s, d);
      return;
    }
  for (guint i = 0; i < APSE_SIDES; i++)
    {
      const double a = G_PI * (i + 0.5) / APSE_SIDES, r = s / cos (G_PI / APSE_SIDES / 2.0);
      add (out, i == 0 ? -s : i == APSE_SIDES - 1 ? s : -r * cos (a), d - s + r * sin (a));
    }
}

/* One side of the church, from the west to the chancel. */
static void
add_north (GArray *out, const FpNewChurch *spec)
{
  const double w = spec->nave_width / 2.0, s = half_of_sanctuary (spec), t = spec->transept_span / 2.0;

  add (out, -w, -spec->nave_length);
  if (spec->shape == FP_ROOM_TRANSEPTS)
    {
      add (out, -w, -spec->transept_width);
      add (out, -t, -spec->transept_width);
      add (out, -t, 0);
      add (out, -s, 0);
    }
  else if (s < w)
    {
      add (out, -w, 0);
      add (out, -s, 0);
    }
}

static GArray *
outline_of_shape (const FpNewChurch *spec)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  guint n;

  add_north (out, spec);
  n = out->len;
  add_east_end (out, spec);
  /* Back along the other side, the same mirrored. */
  for (guint i = n; i > 0; i--)
    {
      const FpPoint p = g_array_index (out, FpPoint, i - 1);
      add (out, -p.x, p.y);
    }
  return out;
}

static GArray *
outline_as_walked (const FpNewChurch *spec)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  const gboolean clockwise = fp_outline_area (spec->corner, spec->n_corners) < 0.0;

  for (guint i = 0; i < spec->n_corners; i++)
    g_array_append_val (out, spec->corner[clockwise ? i : spec->n_corners - 1 - i]);
  return out;
}

GArray *
fp_new_church_outline (const FpNewChurch *spec, GError **error)
{
  if (!spec_check (spec, error))
    return NULL;
  return spec->shape == FP_ROOM_WALKED ? outline_as_walked (spec) : outline_of_shape (spec);
}

/* --- making things -------------------------------------------------------- */

typedef struct { const char *id; double value; } Value;

static FpProject * /* takes @project */
with_survey (FpProject *project, FpItemInit *init, const char *kind, const char *id, const Value *value, GError **error)
{
  g_autoptr (FpProject) before = project;
  g_autoptr (FpItem) item = NULL;
  double values[FP_PARAM_MAX];

  if (project == NULL)
    return NULL;
  init->id = id;
  init->kind = fp_kind_find (kind);
  fp_kind_defaults (init->kind, values);
  for (; value != NULL && value->id != NULL; value++)
    values[fp_kind_param_index (init->kind, value->id)] = value->value;
  init->param = values;
  item = fp_item_new (init, error);
  return item != NULL ? fp_project_with_survey_item (project, item, error) : NULL;
}

static FpProject *
with_walls (FpProject *project, const FpNewChurch *spec, const GArray *outline, GError **error)
{
  FpItemInit init = { .corner = (const FpPoint *) (gpointer) outline->data, .n_corners = outline->len };
  const Value value[] = { { "closed", 1 }, { "height", spec->wall_height }, { "thickness", spec->wall_thickness },
                          { NULL, 0 } };

  return with_survey (project, &init, "wall", "walls", value, error);
}

/* What only runs to and fro on the line that cuts encloses nothing. */
static void
leave_out_spikes (GArray *out)
{
  for (guint i = 0; i < out->len && out->len > 3;)
    {
      const FpPoint *p = (const FpPoint *) (gpointer) out->data;
      const guint n = out->len;

      if (p[(i + n - 1) % n].y == 0 && p[i].y == 0 && p[(i + 1) % n].y == 0)
        {
          g_array_remove_index (out, i);
          i = 0;
        }
      else
        i++;
    }
}

/* Corners of the part of a walked outline on one side of y = 0: Sutherland and Hodgman's clip by one line
 * (Communications of the ACM 17, 1974). */
static GArray *
part_of (const GArray *outline, gboolean east)
{
  const FpPoint *p = (const FpPoint *) (gpointer) outline->data;
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < outline->len; i++)
    {
      const FpPoint a = p[i], b = p[(i + 1) % outline->len];
      const gboolean in_a = east ? a.y >= 0 : a.y <= 0, in_b = east ? b.y >= 0 : b.y <= 0;

      if (in_a)
        add (out, a.x, a.y);
      if (in_a != in_b && a.y != 0 && b.y != 0)
        add (out, a.x + (b.x - a.x) * (0 - a.y) / (b.y - a.y), 0);
    }
  leave_out_spikes (out);
  return out;
}

static FpProject *
with_floor (FpProject *project, const GArray *outline, gboolean east, double level, GError **error)
{
  g_autoptr (GArray) part = part_of (outline, east);
  FpItemInit init = { .name = east ? "Sanctuary floor" : "Nave floor",
                      .corner = (const FpPoint *) (gpointer) part->data, .n_corners = part->len };
  /* Deep enough to reach under the floor that it rises from. */
  const Value value[] = { { "level", level }, { "use", east }, { "thickness", MIN (200.0 + level, 3000.0) }, { NULL, 0 } };

  project = with_survey (project, &init, "floor", east ? "sanctuary-floor" : "nave-floor", value, error);
  if (project == NULL)
    g_prefix_error (error, "The outline must cross the line between nave and sanctuary (y = 0) twice, no more: ");
  return project;
}

static double
width_of_sanctuary (const FpNewChurch *spec, const GArray *outline)
{
  const FpBox box = fp_outline_box ((const FpPoint *) (gpointer) outline->data, outline->len);

  return spec->shape == FP_ROOM_WALKED ? box.x1 - box.x0 : half_of_sanctuary (spec) * 2.0;
}

static FpProject *
with_steps (FpProject *project, const FpNewChurch *spec, const GArray *outline, GError **error)
{
  const double count = MAX (1.0, round (spec->sanctuary_level / RISER));
  const double width = width_of_sanctuary (spec, outline);
  FpItemInit init = { .place = { 0.0, -(count - 1.0) * TREAD, 0.0 } };
  const Value value[] = { { "width", MIN (STEPS_WIDTH, width) }, { "count", count },
                          { "riser", spec->sanctuary_level / count }, { "tread", TREAD }, { NULL, 0 } };

  if (project == NULL || spec->sanctuary_level <= 0.0)
    return project;
  return with_survey (project, &init, "steps", "steps", value, error);
}

/* --- doors ---------------------------------------------------------------- */

static FpProject *
with_door (FpProject *project, const char *id, const char *name, guint side, double along, double width, double sill,
           GError **error)
{
  FpItemInit init = { .name = name, .on = "walls" };
  const Value value[] = { { "side", side + 1.0 }, { "along", along }, { "width", width }, { "sill", sill },
                          { "head", sill + DOOR_HEAD }, { NULL, 0 } };

  return with_survey (project, &init, "opening", id, value, error);
}

/* The farthest side in the west, of those that face there; their number where none does.  Clockwise, it runs to the
 * Gospel side. */
static guint
west_side (const FpPoint *p, guint n)
{
  guint best = n;
  double least = INFINITY;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = p[i], b = p[(i + 1) % n];

      if (a.x - b.x < fabs (b.y - a.y) || a.x - b.x < WEST_SIDE_LEAST || a.y + b.y >= least)
        continue;
      least = a.y + b.y;
      best = i;
    }
  return best;
}

/* The first side of the sanctuary that faces the Epistle side and has room for the door, from the east. */
static guint
sacristy_side (const FpPoint *p, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = p[i], b = p[(i + 1) % n];

      if (a.x + b.x > 0 && fabs (b.x - a.x) <= a.y - b.y && a.y - MAX (b.y, 0) >= SACRISTY_DOOR + 2.0 * DOOR_FROM_CORNER)
        return i;
    }
  return n;
}

static FpProject *
with_doors (FpProject *project, const FpNewChurch *spec, const GArray *outline, GError **error)
{
  const FpPoint *p = (const FpPoint *) (gpointer) outline->data;
  const guint n = outline->len, west = west_side (p, n), sacristy = sacristy_side (p, n);

  if (spec->doors && west < n)
    {
      const double length = hypot (p[(west + 1) % n].x - p[west].x, p[(west + 1) % n].y - p[west].y);

      project = with_door (project, "west-door", "West door", west, length / 2.0, MIN (WEST_DOOR, length / 2.0), 0, error);
    }
  if (!spec->doors || sacristy == n)
    return project;
  return with_door (project, "sacristy-door", "Sacristy door", sacristy, SACRISTY_DOOR / 2.0 + DOOR_FROM_CORNER, SACRISTY_DOOR,
                    spec->sanctuary_level, error);
}

/* --- what is set out in it ------------------------------------------------- */

static FpProject * /* takes @project */
with_new (FpProject *project, const char *kind, GError **error)
{
  g_autoptr (FpProject) before = project;
  g_autoptr (FpScene) scene = project != NULL ? fp_scene_new (project, 0) : NULL;

  return scene != NULL ? fp_set_out_new (scene, fp_kind_find (kind), NULL, error) : NULL;
}

static guint
seats_in (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  return fp_people_seats (people);
}

static FpProject *
with_rows (const FpProject *project, double rows, GError **error)
{
  FpProject *next = fp_project_ref ((FpProject *) project);

  for (guint i = 0; next != NULL && i < fp_project_n_survey (project); i++)
    {
      g_autoptr (FpProject) before = next;
      g_autoptr (FpScene) scene = NULL;
      const FpItem *item = fp_project_survey (project, i);

      if (fp_item_kind (item)->role != FP_ROLE_PEWS)
        {
          next = fp_project_ref (before);
          continue;
        }
      scene = fp_scene_new (before, 0);
      next = fp_set_out_param (scene, fp_item_id (item), "rows", MIN (rows, fp_item_param (item, "rows")), error);
    }
  return next;
}

/* No more rows than the seats that are wanted need: the rest of the nave stays free. */
static FpProject * /* takes @project */
with_pews (FpProject *project, const FpNewChurch *spec, GError **error)
{
  g_autoptr (FpProject) all = NULL;

  if (project == NULL || spec->brief.seats == 0)
    return project;
  all = with_new (project, "pews", error);
  for (double rows = 1; all != NULL && rows < FP_COUNT_MAX; rows++)
    {
      FpProject *some = with_rows (all, rows, error);
      if (some == NULL || seats_in (some) >= spec->brief.seats || fp_project_equal (some, all))
        return some;
      fp_project_unref (some);
    }
  return g_steal_pointer (&all);
}

/* --- altar, lights and furniture --------------------------------------------- */

static FpProject * /* takes @project */
with_value (FpProject *project, const char *id, const char *param, double value)
{
  g_autoptr (FpProject) before = project;
  g_autoptr (FpScene) scene = project != NULL ? fp_scene_new (project, 0) : NULL;
  FpProject *next = scene != NULL ? fp_set_out_param (scene, id, param, value, NULL) : NULL;

  /* What cannot be so is as its kind has it. */
  return next != NULL || project == NULL ? next : fp_project_ref (before);
}

static FpBox
plan_of (const FpProject *project, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return fp_scene_placed (scene, NULL)[fp_scene_find (scene, id)].plan;
}

/* As long as a high altar was made, and a third of the sanctuary's width: F. Schulte's proportion, which a finding asks; in
 * a small one no longer than leaves a way past it. */
static double
length_of_altar (double sanctuary)
{
  const double third = ceil (sanctuary / 3.0 / 50.0) * 50.0;

  return MIN (MAX (third, HIGH_ALTAR), MAX (floor (sanctuary / 50.0) * 50.0 - 2.0 * BESIDE_ALTAR, 900.0));
}

/* Room behind the altar as before it, where the sanctuary is deep enough: it can be used from either side then. */
static FpProject * /* takes @project */
with_room_behind (FpProject *project)
{
  const double front = fp_item_param (fp_project_find (project, 0, "footpace", NULL), "front");
  g_autoptr (FpProject) before = project;
  g_autoptr (FpProject) wide = with_value (fp_project_ref (before), "footpace", "behind", front);
  const FpBox was = plan_of (before, "footpace"), is = plan_of (wide, "footpace");
  const double by = is.y1 - was.y1;
  g_autoptr (FpScene) scene = NULL;

  if (!(by > 0) || is.y0 - by < BEFORE_STEPS)
    return g_steal_pointer (&before);
  scene = fp_scene_new (wide, 0);
  return fp_set_out_move (scene, "footpace", (FpVec3) { 0, -by, 0 }, NULL);
}

static FpProject * /* takes @project */
with_altar (FpProject *project, const FpNewChurch *spec, const GArray *outline, GError **error)
{
  project = with_new (project, "footpace", error);
  project = with_new (project, "altar", error);
  project = with_value (project, "altar", "length", length_of_altar (width_of_sanctuary (spec, outline)));
  return project != NULL ? with_room_behind (project) : NULL;
}

/* Whether what stands on the floor, moved there, is within the walls, on the floor of the sanctuary, and in nobody's way. */
static gboolean
stands_well_at (const FpScene *scene, guint index, const GArray *outline, FpPoint by)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n), *one = &placed[index];
  const FpBox at = { one->plan.x0 + by.x, one->plan.y0 + by.y, one->plan.x1 + by.x, one->plan.y1 + by.y };
  /* What stands against a wall touches its face. */
  const double x0 = at.x0 + TOUCH, y0 = at.y0 + TOUCH, x1 = at.x1 - TOUCH, y1 = at.y1 - TOUCH;
  const FpPoint corner[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  for (guint i = 0; i < G_N_ELEMENTS (corner); i++)
    if (!fp_outline_contains ((const FpPoint *) (gconstpointer) outline->data, outline->len, corner[i]))
      return FALSE;
  for (guint i = 0; i < n; i++)
    if (i != index && !placed[i].in_survey && placed[i].level < one->level + one->extent.height
        && placed[i].level + placed[i].extent.height > one->level && fp_box_overlaps (&placed[i].plan, &at))
      return FALSE;
  return at.y0 >= 0.0;
}

/* The nearest place towards the people and the middle; FALSE where there is none. */
static gboolean
find_room (const FpScene *scene, guint index, const GArray *outline, FpPoint *by)
{
  const FpPlaced *one = &fp_scene_placed (scene, NULL)[index];
  const double inwards = one->plan.x0 + one->plan.x1 > 0.0 ? -ROOM_STEP : ROOM_STEP;
  double least = INFINITY;

  for (guint i = 0; i <= ROOM_STEPS; i++)
    for (guint k = 0; k <= ROOM_STEPS; k++)
      {
        const FpPoint way = { k * inwards, i * -ROOM_STEP };
        const double far = hypot (way.x, way.y);

        if (far < least && stands_well_at (scene, index, outline, way))
          {
            least = far;
            *by = way;
          }
      }
  return isfinite (least);
}

/* Nothing rather than what stands in the way of the rest: a small sanctuary has no room for all of it. */
static FpProject * /* takes @project */
with_what_fits (FpProject *project, const char *kind, double step, const GArray *outline)
{
  g_autoptr (FpProject) before = project;
  FpProject *added = with_new (fp_project_ref (before), kind, NULL);
  g_autoptr (FpProject) next = step > 0.0 ? with_value (added, kind, "step", step) : added;
  g_autoptr (FpScene) scene = next != NULL ? fp_scene_new (next, 0) : NULL;
  const int index = scene != NULL ? fp_scene_find (scene, kind) : -1;
  FpPoint by = { 0, 0 };

  if (index < 0)
    return g_steal_pointer (&before);
  if (fp_scene_placed (scene, NULL)[index].support >= 0)
    return g_steal_pointer (&next);
  if (!find_room (scene, (guint) index, outline, &by))
    return g_steal_pointer (&before);
  return by.x == 0.0 && by.y == 0.0 ? g_steal_pointer (&next) : fp_set_out_move (scene, kind, (FpVec3) { by.x, by.y, 0 }, NULL);
}

/* What the books ask that are followed: sedilia the older, ambo and chair the newer. */
static FpProject * /* takes @project */
with_furniture (FpProject *project, FpBooks books, const GArray *outline)
{
  static const char *const always[] = { "crucifix", "candlesticks", "credence" }, *const newer[] = { "ambo", "chair" };

  for (guint i = 0; i < G_N_ELEMENTS (always); i++)
    project = with_what_fits (project, always[i], 0.0, outline);
  if (books != FP_BOOKS_NEWER)
    project = with_what_fits (project, "sedilia", 0.0, outline);
  for (guint i = 0; books != FP_BOOKS_OLDER && i < G_N_ELEMENTS (newer); i++)
    project = with_what_fits (project, newer[i], OWN_STEP, outline);
  return project;
}

FpProject *
fp_new_church_make (const FpNewChurch *spec, GError **error)
{
  g_autoptr (GArray) outline = fp_new_church_outline (spec, error);
  g_autoptr (FpProject) empty = outline != NULL ? fp_project_new (&(FpBrief) { .title = "", .place = "", .client = "",
                                                   .author = "", .note = "", .ministers = 1, .percentile = 50 }) : NULL;
  FpProject *project;

  if (outline == NULL)
    return NULL;
  /* Proves texts and numbers of the brief, which came from outside. */
  project = fp_project_with_brief (empty, &spec->brief, error);
  project = project != NULL ? with_walls (project, spec, outline, error) : NULL;
  project = project != NULL ? with_floor (project, outline, FALSE, 0.0, error) : NULL;
  project = project != NULL ? with_floor (project, outline, TRUE, spec->sanctuary_level, error) : NULL;
  project = project != NULL ? with_steps (project, spec, outline, error) : NULL;
  project = project != NULL ? with_doors (project, spec, outline, error) : NULL;
  project = with_pews (project, spec, error);
  if (!spec->furnish)
    return project;
  project = with_altar (project, spec, outline, error);
  return project != NULL ? with_furniture (project, spec->brief.books, outline) : NULL;
}
