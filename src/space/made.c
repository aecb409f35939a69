/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/made.h"

#include "made-pieces.h"

#include <math.h>
#include <string.h>

#define MM3_PER_M3 1e9
#define N_PER_KN   1000.0

typedef struct
{
  const FpPlaced    *placed;
  const FpWorks     *works;
  const FpStonework *stonework;
  guint              marked;   /* slabs of things before it                   */
  GArray            *out;
} Making;

void
fp_made_clear (FpMade *self)
{
  g_free (self->where);
  g_free (self->marks);
}

static void
clear_one (gpointer made)
{
  fp_made_clear (made);
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

static void
set_volume (FpMade *made, double volume, const FpWorks *works)
{
  made->volume = volume;
  made->mass = volume / MM3_PER_M3 * fp_material_weight (made->material, works) * N_PER_KN / FP_GRAVITY;
}

static FpMade
made_new (const char *what, FpMaterial material, FpAmountType type, double amount)
{
  return (FpMade) { .what = what, .material = material, .type = type, .amount = amount, .volume = NAN, .mass = NAN };
}

/* --- slabs on a core ------------------------------------------------------------------ */

static char *
where_of (const FpCourse *course)
{
  if (course->type == FP_COURSE_BLOCK)
    return NULL;
  if (course->step == 0 || course->type == FP_COURSE_FLOOR)
    return g_strdup (course->side);
  return g_strdup_printf ("step %u, %s", course->step, course->side);
}

/* Treads and risers are billed by their length, what is broad by its area, blocks by their volume. */
static FpAmountType
type_of (FpCourseType type)
{
  switch (type)
    {
    case FP_COURSE_RISER:
    case FP_COURSE_TREAD: return FP_AMOUNT_LENGTH;
    case FP_COURSE_FLOOR:
    case FP_COURSE_FACE: return FP_AMOUNT_AREA;
    case FP_COURSE_BLOCK: break;
    }
  return FP_AMOUNT_VOLUME;
}

static double
amount_of (const FpSlab *slab, FpAmountType type)
{
  return slab->length * (type == FP_AMOUNT_LENGTH ? 1.0 : slab->width) * (type == FP_AMOUNT_VOLUME ? slab->thickness : 1.0);
}

static double
volume_of (const FpSlab *slab)
{
  return slab->length * slab->width * slab->thickness;
}

/* The line of this course, from @first on, of which slabs of that size are; begun where there is none. */
static FpMade *
line_of (const Making *m, guint first, const FpCourse *course, FpVec3 size)
{
  g_autofree char *where = where_of (course);
  FpMade made;

  for (guint i = first; i < m->out->len; i++)
    {
      FpMade *other = &g_array_index (m->out, FpMade, i);

      if (g_str_equal (other->what, course->what) && g_strcmp0 (other->where, where) == 0 && fp_sizes_are_alike (other->size, size))
        return other;
    }
  made = made_new (course->what, FP_MATERIAL_STONE, type_of (course->type), 0);
  made.where = g_steal_pointer (&where);
  made.size = size;
  made.volume = 0;
  g_array_append_val (m->out, made);
  return &g_array_index (m->out, FpMade, m->out->len - 1);
}

/* "S1–S3, S7": @made ends with a run that @number may go on. */
static void
add_mark (FpMade *made, guint number)
{
  char *last = made->marks != NULL ? strrchr (made->marks, 'S') : NULL;
  char *old = made->marks;

  if (last == NULL)
    made->marks = g_strdup_printf ("S%u", number);
  else if (g_ascii_strtoull (last + 1, NULL, 10) + 1 != number)
    made->marks = g_strdup_printf ("%s, S%u", old, number);
  else if (last >= old + 3 && g_str_has_prefix (last - 3, "–"))
    made->marks = g_strdup_printf ("%.*sS%u", (int) (last - old), old, number);
  else
    made->marks = g_strdup_printf ("%s–S%u", old, number);
  g_free (old);
}

static double
add_slab (const Making *m, guint first, const FpCourse *course, const FpSlab *slab)
{
  const double volume = volume_of (slab);
  FpMade *made = line_of (m, first, course, (FpVec3) { slab->length, slab->width, slab->thickness });

  made->pieces++;
  made->amount += amount_of (slab, made->type);
  set_volume (made, made->volume + volume, m->works);
  add_mark (made, m->marked + slab->number);
  return volume;
}

static gboolean
has_core (const FpCourse *course)
{
  return course->type != FP_COURSE_BLOCK;
}

/* What is left of @solid is concrete, with the beds and the joints. */
static void
add_courses (const Making *m, const char *of, double solid)
{
  const GArray *courses = m->stonework->courses, *slabs = m->stonework->slabs;
  FpMade core = made_new ("core of concrete", FP_MATERIAL_CONCRETE, FP_AMOUNT_VOLUME, 0);
  const guint first = m->out->len;
  gboolean cored = FALSE;

  for (guint i = 0; i < courses->len; i++)
    if (g_str_equal (g_array_index (courses, FpCourse, i).of, of))
      {
        solid -= fp_stonework_air (&g_array_index (courses, FpCourse, i), m->works);
        cored |= has_core (&g_array_index (courses, FpCourse, i));
      }
  for (guint i = 0; i < slabs->len; i++)
    {
      const FpSlab *slab = &g_array_index (slabs, FpSlab, i);
      const FpCourse *course = &g_array_index (courses, FpCourse, slab->course);

      if (g_str_equal (course->of, of))
        solid -= add_slab (m, first, course, slab);
    }
  if (!cored || !(solid > 0))
    return;
  core.amount = solid;
  set_volume (&core, solid, m->works);
  g_array_append_val (m->out, core);
}

/* --- a thing --------------------------------------------------------------------------- */

static gboolean
has_faces (const FpStonework *stonework, const char *of)
{
  for (guint i = 0; i < stonework->courses->len; i++)
    {
      const FpCourse *course = &g_array_index (stonework->courses, FpCourse, i);

      if (g_str_equal (course->of, of) && course->type == FP_COURSE_FACE)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_laid (const Making *m, const FpQuantity *quantity)
{
  return quantity->laid && fp_placed_is_new (m->placed) && !(m->works->solid && has_faces (m->stonework, quantity->what));
}

static void
add_pieces (const Making *m, const FpQuantity *quantity)
{
  g_autoptr (GArray) pieces = fp_pieces_of (m->placed, quantity);

  for (guint i = 0; i < pieces->len; i++)
    {
      const FpPieces *p = &g_array_index (pieces, FpPieces, i);
      FpMade made = made_new (quantity->what, quantity->material, quantity->type, p->volume);

      made.pieces = p->number;
      made.size = p->size;
      set_volume (&made, p->volume, m->works);
      g_array_append_val (m->out, made);
    }
}

static void
add_quantity (const Making *m, const FpQuantity *quantity)
{
  FpMade made = made_new (quantity->what, quantity->material, quantity->type, quantity->amount);

  if (quantity->type == FP_AMOUNT_VOLUME)
    set_volume (&made, quantity->amount, m->works);
  else if (quantity->volume > 0)
    set_volume (&made, quantity->volume, m->works);
  if (quantity->type == FP_AMOUNT_NUMBER && quantity->size.z > 0)
    {
      made.pieces = (guint) quantity->amount;
      made.size = (FpVec3) { quantity->size.z, MAX (quantity->size.x, quantity->size.y), MIN (quantity->size.x, quantity->size.y) };
    }
  if (quantity->type == FP_AMOUNT_AREA && quantity->size.x > 0)
    {
      made.pieces = (guint) round (quantity->amount / (quantity->size.x * quantity->size.y));
      made.size = quantity->size;
    }
  g_array_append_val (m->out, made);
}

static void
add_any (const Making *m, const FpQuantity *quantity)
{
  /* Cloths are listed as they are cut. */
  if (quantity->material == FP_MATERIAL_LINEN)
    return;
  /* The floor of what is laid is of slabs. */
  if (quantity->type == FP_AMOUNT_AREA && m->stonework->slabs->len > 0 && fp_placed_is_new (m->placed))
    return;
  if (is_laid (m, quantity))
    add_courses (m, quantity->what, quantity->amount);
  /* A wall is built in place. */
  else if (quantity->of_part && quantity->material != FP_MATERIAL_NONE)
    add_pieces (m, quantity);
  else
    add_quantity (m, quantity);
}

GArray *
fp_made_of (const FpPlaced *placed, const FpWorks *works, guint *number)
{
  const FpKind *kind = fp_item_kind (placed->item);
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));
  g_autoptr (FpStonework) stonework = fp_stonework_new (kind, &placed->form, works);
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpMade));
  const Making m = { .placed = placed, .works = works, .stonework = stonework, .marked = *number, .out = out };

  g_array_set_clear_func (out, clear_one);
  if (kind->quantities != NULL)
    kind->quantities (&placed->form, found);
  for (guint i = 0; i < found->len; i++)
    add_any (&m, &g_array_index (found, FpQuantity, i));
  if (fp_placed_is_new (placed))
    *number += stonework->slabs->len;
  return out;
}

double
fp_made_mass (const FpPlaced *placed, const FpWorks *works)
{
  guint number = 0;
  g_autoptr (GArray) made = fp_made_of (placed, works, &number);
  double mass = NAN;

  for (guint i = 0; i < made->len; i++)
    {
      const double one = g_array_index (made, FpMade, i).mass;

      if (!isnan (one))
        mass = (isnan (mass) ? 0 : mass) + one;
    }
  return mass;
}
