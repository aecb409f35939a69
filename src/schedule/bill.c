/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/bill.h"

#include "footpace/linen.h"
#include "footpace/schedule.h"

#include "slabs.h"

#include <math.h>

#define MM3_PER_M3 1e9
#define N_PER_KN   1000.0

struct _FpBill
{
  gatomicrefcount ref_count;
  FpScene        *scene;
  GArray         *rows; /* of FpBillRow */
};

/* --- names --------------------------------------------------------------------- */

static const struct { const char *id, *label; } headings[FP_N_HEADINGS] = {
  [FP_HEADING_STEPS] = { "steps", "Steps and stone" },
  [FP_HEADING_ALTAR] = { "altar", "Altar" },
  [FP_HEADING_PAVING] = { "paving", "Paving and floors" },
  [FP_HEADING_RAIL] = { "rail", "Rail" },
  [FP_HEADING_TIMBER] = { "timber", "Timber" },
  [FP_HEADING_METAL] = { "metalwork", "Metalwork" },
  [FP_HEADING_CANDLES] = { "candles", "Candles" },
  [FP_HEADING_LINEN] = { "linen", "Linen and hangings" },
  [FP_HEADING_FURNITURE] = { "furniture", "Furniture" },
  [FP_HEADING_BUILDING] = { "building", "Building" },
};

const char *
fp_heading_id (FpHeading self)
{
  return headings[MIN ((guint) self, FP_N_HEADINGS - 1)].id;
}

const char *
fp_heading_label (FpHeading self)
{
  return headings[MIN ((guint) self, FP_N_HEADINGS - 1)].label;
}

gboolean
fp_heading_find (const char *id, FpHeading *heading)
{
  for (guint i = 0; i < FP_N_HEADINGS; i++)
    if (g_ascii_strcasecmp (id, headings[i].id) == 0)
      {
        *heading = (FpHeading) i;
        return TRUE;
      }
  return FALSE;
}

static const struct { const char *id, *label; } works_names[FP_N_WORKS] = {
  [FP_WORK_NEW] = { "new", "New" },
  [FP_WORK_MOVED] = { "moved", "Moved" },
  [FP_WORK_REMOVED] = { "removed", "Taken out" },
  [FP_WORK_KEPT] = { "kept", "Kept" },
};

const char *
fp_work_id (FpWork self)
{
  return works_names[MIN ((guint) self, FP_N_WORKS - 1)].id;
}

const char *
fp_work_label (FpWork self)
{
  return works_names[MIN ((guint) self, FP_N_WORKS - 1)].label;
}

/* --- what it belongs to --------------------------------------------------------- */

static FpWork
work_of (const FpPlaced *placed)
{
  if (placed->standing == FP_STANDING_REMOVED)
    return FP_WORK_REMOVED;
  if (placed->moved)
    return FP_WORK_MOVED;
  return placed->in_survey ? FP_WORK_KEPT : FP_WORK_NEW;
}

static FpHeading
heading_of_role (FpRole role)
{
  switch (role)
    {
    case FP_ROLE_FOOTPACE:
    case FP_ROLE_STEPS:
      return FP_HEADING_STEPS;
    case FP_ROLE_ALTAR:
    case FP_ROLE_GRADINE:
    case FP_ROLE_REREDOS:
      return FP_HEADING_ALTAR;
    case FP_ROLE_ALTAR_CLOTHS:
    case FP_ROLE_FRONTAL:
    case FP_ROLE_TABERNACLE_VEIL:
      return FP_HEADING_LINEN;
    case FP_ROLE_RAIL:
      return FP_HEADING_RAIL;
    case FP_ROLE_FLOOR:
      return FP_HEADING_PAVING;
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return FP_HEADING_BUILDING;
    default:
      return FP_HEADING_FURNITURE;
    }
}

static FpHeading
heading_of (const FpPlaced *placed, const FpQuantity *quantity)
{
  const FpHeading heading = heading_of_role (fp_item_kind (placed->item)->role);

  if (quantity->material == FP_MATERIAL_WAX)
    return FP_HEADING_CANDLES;
  if (heading != FP_HEADING_FURNITURE)
    return heading;
  if (quantity->type == FP_AMOUNT_AREA)
    return FP_HEADING_PAVING;
  if (quantity->material == FP_MATERIAL_METAL)
    return FP_HEADING_METAL;
  return quantity->material == FP_MATERIAL_WOOD && quantity->type != FP_AMOUNT_NUMBER ? FP_HEADING_TIMBER : heading;
}

double
fp_material_weight (FpMaterial material, const FpWorks *works)
{
  switch (material)
    {
    case FP_MATERIAL_STONE: return fp_stone (works->stone)->weight;
    case FP_MATERIAL_WOOD: return fp_timber (works->timber)->weight;
    case FP_MATERIAL_METAL: return fp_metal (works->metal)->weight;
    case FP_MATERIAL_CONCRETE: return FP_CONCRETE_WEIGHT;
    case FP_MATERIAL_NONE:
    case FP_MATERIAL_LINEN:
    case FP_MATERIAL_SILK:
    case FP_MATERIAL_WAX:
      break;
    }
  return NAN;
}

/* --- making rows ------------------------------------------------------------------ */

typedef struct
{
  const FpWorks  *works;
  const FpPlaced *placed;
  GArray         *rows;
} Making;

static gboolean
may_cost (const FpBillRow *row)
{
  return row->work == FP_WORK_NEW;
}

static void
set_cost (FpBillRow *row, const FpWorks *works)
{
  const FpRate *rate = fp_works_rate (works, fp_item_kind (row->placed->item)->id, row->what, row->type);

  if (rate == NULL)
    return;
  row->rate = rate->rate;
  row->per = rate->units;
  row->cost = rate->rate * fp_amount_in (row->type, row->amount, rate->units);
}

static FpBillRow
row_new (const Making *m, const FpQuantity *quantity)
{
  return (FpBillRow) {
    .heading = heading_of (m->placed, quantity), .work = work_of (m->placed), .placed = m->placed, .what = quantity->what,
    .material = quantity->material, .type = quantity->type, .amount = quantity->amount, .volume = NAN, .mass = NAN,
    .hours = NAN, .rate = NAN, .cost = NAN,
  };
}

static void
set_volume (FpBillRow *row, double volume, const FpWorks *works)
{
  row->volume = volume;
  row->mass = volume / MM3_PER_M3 * fp_material_weight (row->material, works) * N_PER_KN / FP_GRAVITY;
}

static void
take_row (const Making *m, FpBillRow *row)
{
  if (may_cost (row))
    set_cost (row, m->works);
  g_array_append_val (m->rows, *row);
}

/* --- pieces of one part ------------------------------------------------------------- */

typedef struct { FpVec3 size; guint number; double volume; } Alike;

/* Longest first, as stone and timber are ordered. */
static FpVec3
size_of (const FpBox3 *box)
{
  const double x = box->hi.x - box->lo.x, y = box->hi.y - box->lo.y, z = box->hi.z - box->lo.z;
  const double most = MAX (MAX (x, y), z), least = MIN (MIN (x, y), z);

  return (FpVec3) { most, x + y + z - most - least, least };
}

static gboolean
are_alike (FpVec3 a, FpVec3 b)
{
  return fabs (a.x - b.x) < 0.05 && fabs (a.y - b.y) < 0.05 && fabs (a.z - b.z) < 0.05;
}

static void
count_piece (GArray *alike, FpVec3 size, double volume)
{
  const Alike one = { size, 1, volume };

  for (guint i = 0; i < alike->len; i++)
    {
      Alike *a = &g_array_index (alike, Alike, i);

      if (!are_alike (a->size, size))
        continue;
      a->number++;
      a->volume += volume;
      return;
    }
  g_array_append_val (alike, one);
}

/* A column or a baluster is turned of one piece, however many solids it takes to say how. */
static gboolean
goes_on (const FpSolid *a, const FpSolid *b)
{
  return a->shape == FP_SOLID_ROUND && b->shape == FP_SOLID_ROUND && a->part == b->part && fabs (a->cx - b->cx) < 0.05
         && fabs (a->cy - b->cy) < 0.05;
}

static GArray *
pieces_of (const FpPlaced *placed, FpPart part)
{
  GArray *alike = g_array_new (FALSE, FALSE, sizeof (Alike));
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const FpSolid *s;
  guint n;

  fp_item_kind (placed->item)->solids (&placed->form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0, next; i < n; i = next)
    {
      FpBox3 box = fp_solid_box (&s[i]);
      double volume = fp_solid_volume (&s[i]);

      for (next = i + 1; next < n && goes_on (&s[i], &s[next]); next++)
        {
          const FpBox3 more = fp_solid_box (&s[next]);

          fp_box3_add_box (&box, &more);
          volume += fp_solid_volume (&s[next]);
        }
      if (s[i].part == part)
        count_piece (alike, size_of (&box), volume);
    }
  return alike;
}

static void
add_pieces (const Making *m, const FpQuantity *quantity)
{
  g_autoptr (GArray) alike = pieces_of (m->placed, quantity->part);

  for (guint i = 0; i < alike->len; i++)
    {
      const Alike *a = &g_array_index (alike, Alike, i);
      FpBillRow row = row_new (m, quantity);

      row.amount = a->volume;
      row.pieces = a->number;
      row.size = a->size;
      set_volume (&row, a->volume, m->works);
      take_row (m, &row);
    }
}

/* --- slabs on a core ------------------------------------------------------------------ */

static const char *
course_label (FpCourseType type)
{
  return type == FP_COURSE_TREAD ? "treads" : type == FP_COURSE_RISER ? "risers" : "floor of slabs";
}

/* Treads and risers are billed by their length, floors by their area. */
static double
add_slabs (const Making *m, const FpCourse *course)
{
  const gboolean floor = course->type == FP_COURSE_FLOOR;
  const FpQuantity quantity = {
    .what = course_label (course->type), .material = FP_MATERIAL_STONE, .type = floor ? FP_AMOUNT_AREA : FP_AMOUNT_LENGTH,
  };
  const FpSlabs slabs = fp_slabs_of (course, m->works);
  FpBillRow row = row_new (m, &quantity);

  if (slabs.number == 0)
    return 0;
  row.where = floor ? g_strdup ("of the uppermost step") : g_strdup_printf ("step %u, %s", course->step, course->side);
  row.pieces = slabs.number;
  row.size = (FpVec3) { slabs.length, slabs.width, slabs.thickness };
  row.amount = slabs.number * slabs.length * (floor ? slabs.width : 1.0);
  row.heading = FP_HEADING_STEPS;
  set_volume (&row, fp_slabs_volume (&slabs), m->works);
  take_row (m, &row);
  return row.volume;
}

static void
add_courses (const Making *m, double solid)
{
  g_autoptr (GArray) courses = g_array_new (FALSE, FALSE, sizeof (FpCourse));
  const FpQuantity core = { .what = "core of concrete", .material = FP_MATERIAL_CONCRETE, .type = FP_AMOUNT_VOLUME };
  FpBillRow row = row_new (m, &core);

  fp_item_kind (m->placed->item)->courses (&m->placed->form, courses);
  for (guint i = 0; i < courses->len; i++)
    solid -= add_slabs (m, &g_array_index (courses, FpCourse, i));
  if (!(solid > 0))
    return;
  row.amount = solid;
  row.heading = FP_HEADING_STEPS;
  set_volume (&row, solid, m->works);
  take_row (m, &row);
}

/* --- a thing --------------------------------------------------------------------------- */

static gboolean
is_solid_stone (const FpQuantity *quantity)
{
  return quantity->material == FP_MATERIAL_STONE && quantity->type == FP_AMOUNT_VOLUME;
}

static void
add_quantity (const Making *m, const FpQuantity *quantity)
{
  FpBillRow row;

  /* A wall is built in place. */
  /* Cloths are listed as they are cut. */
  if (quantity->material == FP_MATERIAL_LINEN)
    return;
  if (quantity->of_part && quantity->material != FP_MATERIAL_NONE)
    {
      add_pieces (m, quantity);
      return;
    }
  row = row_new (m, quantity);
  if (quantity->type == FP_AMOUNT_VOLUME)
    set_volume (&row, quantity->amount, m->works);
  if (quantity->type == FP_AMOUNT_NUMBER && quantity->size.z > 0)
    {
      row.pieces = (guint) quantity->amount;
      row.size = (FpVec3) { quantity->size.z, MAX (quantity->size.x, quantity->size.y), MIN (quantity->size.x, quantity->size.y) };
    }
  if (quantity->type == FP_AMOUNT_AREA && quantity->size.x > 0)
    {
      row.pieces = (guint) round (quantity->amount / (quantity->size.x * quantity->size.y));
      row.size = quantity->size;
    }
  if (quantity->material == FP_MATERIAL_WAX && quantity->size.z > 0 && m->works->burns > 0)
    row.hours = quantity->size.z / m->works->burns;
  take_row (m, &row);
}

/* Setting up, moving and taking down are work too; walls and floors stay where they are. */
static void
add_work (const Making *m)
{
  static const char *const words[FP_N_WORKS] = {
    [FP_WORK_NEW] = "setting up", [FP_WORK_MOVED] = "taking down and setting up again", [FP_WORK_REMOVED] = "taking down",
  };
  const FpWork work = work_of (m->placed);
  const FpQuantity one = { .what = words[work], .type = FP_AMOUNT_NUMBER, .amount = 1 };
  FpBillRow row;

  if (one.what == NULL)
    return;
  row = row_new (m, &one);
  set_cost (&row, m->works);
  g_array_append_val (m->rows, row);
}

static void
add_thing (const Making *m)
{
  const FpKind *kind = fp_item_kind (m->placed->item);
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));
  double solid = 0;

  if (kind->quantities != NULL)
    kind->quantities (&m->placed->form, found);
  for (guint i = 0; i < found->len; i++)
    {
      const FpQuantity *quantity = &g_array_index (found, FpQuantity, i);

      if (kind->courses != NULL && is_solid_stone (quantity))
        solid += quantity->amount;
      else if (kind->courses == NULL || quantity->type != FP_AMOUNT_AREA) /* whose floor is of slabs */
        add_quantity (m, quantity);
    }
  if (kind->courses != NULL)
    add_courses (m, solid);
  add_work (m);
}

/* Where a moved thing stood there is a ghost of it too: it is one thing, and is listed where it stands now. */
static void
add_things (FpBill *self, Making *m)
{
  const FpPlaced *placed;
  guint n;

  placed = fp_scene_placed (self->scene, &n);
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost || fp_scene_find (self->scene, fp_item_id (placed[i].item)) < 0)
      {
        m->placed = &placed[i];
        add_thing (m);
      }
}

static void
add_linen (FpBill *self, Making *m)
{
  g_autoptr (GArray) cloths = fp_linen_cloths (self->scene, fp_project_brief (fp_scene_project (self->scene))->books);

  for (guint i = 0; i < cloths->len; i++)
    {
      const FpCloth *cloth = &g_array_index (cloths, FpCloth, i);
      const FpQuantity quantity = {
        .what = cloth->label, .material = FP_MATERIAL_LINEN, .type = FP_AMOUNT_NUMBER, .amount = cloth->number,
      };
      FpBillRow row;

      m->placed = cloth->placed;
      row = row_new (m, &quantity);
      row.heading = FP_HEADING_LINEN;
      row.pieces = cloth->number;
      row.size = (FpVec3) { cloth->length, cloth->width, 0 };
      take_row (m, &row);
    }
}

/* --- the bill ---------------------------------------------------------------------------- */

static int
by_heading (gconstpointer a, gconstpointer b)
{
  const FpBillRow *p = a, *q = b;

  if (p->heading != q->heading)
    return p->heading < q->heading ? -1 : 1;
  if (p->placed != q->placed)
    return p->placed < q->placed ? -1 : 1;
  return 0;
}

static void
row_clear (gpointer row)
{
  g_free (((FpBillRow *) row)->where);
}

FpBill *
fp_bill_new (const FpScene *scene)
{
  FpBill *self = g_new (FpBill, 1);
  Making m = { .works = fp_project_works (fp_scene_project (scene)) };

  g_atomic_ref_count_init (&self->ref_count);
  self->scene = fp_scene_ref (scene);
  self->rows = m.rows = g_array_new (FALSE, FALSE, sizeof (FpBillRow));
  g_array_set_clear_func (self->rows, row_clear);
  add_things (self, &m);
  add_linen (self, &m);
  /* Stable in GLib: what a kind lists first stays first. */
  g_array_sort (self->rows, by_heading);
  return self;
}

FpBill *
fp_bill_ref (FpBill *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_bill_unref (FpBill *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_array_unref (self->rows);
  fp_scene_unref (self->scene);
  g_free (self);
}

const FpScene *
fp_bill_scene (const FpBill *self)
{
  return self->scene;
}

const GArray *
fp_bill_rows (const FpBill *self)
{
  return self->rows;
}

double
fp_bill_cost (const FpBill *self, FpWork work)
{
  double cost = NAN;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (self->rows, FpBillRow, i);

      if (!isnan (row->cost) && (work == FP_N_WORKS || row->work == work))
        cost = (isnan (cost) ? 0 : cost) + row->cost;
    }
  return cost;
}

double
fp_bill_stone (const FpBill *self)
{
  double stone = 0;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (self->rows, FpBillRow, i);

      if (row->work == FP_WORK_NEW && row->material == FP_MATERIAL_STONE && !isnan (row->volume))
        stone += row->volume;
    }
  return stone;
}
