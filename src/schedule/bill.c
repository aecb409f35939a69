/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bill-private.h"

#include "footpace/linen.h"
#include "footpace/schedule.h"

#include <math.h>

#define CENTS 100.0

struct _FpBill
{
  gatomicrefcount ref_count;
  FpScene        *scene;
  GArray         *rows; /* of FpBillRow */
};

/* --- making rows ------------------------------------------------------------------ */

typedef struct
{
  const FpWorks  *works;
  FpUnits         units;  /* in which amounts are printed                      */
  const FpPlaced *placed;
  guint           number; /* of slabs that have their mark                     */
  GArray         *rows;
} Making;

/* Of what is printed, so that whoever reckons it again gets the same. */
static void
set_cost (FpBillRow *row, const Making *m)
{
  const FpRate *rate = fp_works_rate (m->works, fp_item_kind (row->placed->item)->id, row->what, row->type);

  row->unpriced = rate == NULL;
  if (rate == NULL)
    return;
  row->rate = rate->rate;
  row->per = rate->units;
  row->cost = rate->rate * fp_amount_in (row->type, fp_amount_billed (row->type, row->amount, m->units), rate->units);
  row->cost = round (row->cost * CENTS) / CENTS;
}

/* Takes over the texts of @made. */
static FpBillRow
row_of (const Making *m, FpMade *made)
{
  return (FpBillRow) {
    .heading = fp_heading_of (m->placed, made->material, made->type), .work = fp_work_of (m->placed), .placed = m->placed,
    .what = made->what, .where = g_steal_pointer (&made->where), .marks = g_steal_pointer (&made->marks),
    .material = made->material, .type = made->type, .amount = made->amount, .pieces = made->pieces, .size = made->size,
    .volume = made->volume, .mass = made->mass, .hours = NAN, .rate = NAN, .cost = NAN,
  };
}

/* What is not new costs nothing but the work on it. */
static void
take_row (const Making *m, FpBillRow *row)
{
  if (row->work == FP_WORK_NEW)
    set_cost (row, m);
  g_array_append_val (m->rows, *row);
}

static void
add_made (Making *m)
{
  g_autoptr (GArray) made = fp_made_of (m->placed, m->works, &m->number);

  for (guint i = 0; i < made->len; i++)
    {
      FpBillRow row = row_of (m, &g_array_index (made, FpMade, i));

      if (row.material == FP_MATERIAL_WAX && row.pieces > 0 && m->works->burns > 0)
        row.hours = row.size.x / m->works->burns;
      take_row (m, &row);
    }
}

/* Setting up, moving and taking down are work too; walls and floors stay where they are. */
static void
add_work (const Making *m)
{
  static const char *const words[FP_N_WORKS] = {
    [FP_WORK_NEW] = "setting up", [FP_WORK_MOVED] = "taking down and setting up again", [FP_WORK_REMOVED] = "taking down",
  };
  FpMade one = { .what = words[fp_work_of (m->placed)], .type = FP_AMOUNT_NUMBER, .amount = 1, .volume = NAN, .mass = NAN };
  FpBillRow row;

  if (one.what == NULL)
    return;
  row = row_of (m, &one);
  set_cost (&row, m);
  g_array_append_val (m->rows, row);
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
        add_made (m);
        add_work (m);
      }
}

static void
add_linen (FpBill *self, Making *m)
{
  g_autoptr (GArray) cloths = fp_linen_cloths (self->scene, fp_project_brief (fp_scene_project (self->scene))->books);

  for (guint i = 0; i < cloths->len; i++)
    {
      const FpCloth *cloth = &g_array_index (cloths, FpCloth, i);
      FpMade made = {
        .what = cloth->label, .material = FP_MATERIAL_LINEN, .type = FP_AMOUNT_NUMBER, .amount = cloth->number,
        .pieces = cloth->number, .size = { cloth->length, cloth->width, 0 }, .volume = NAN, .mass = NAN,
      };
      FpBillRow row;

      m->placed = cloth->placed;
      row = row_of (m, &made);
      row.heading = FP_HEADING_LINEN;
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
  g_free (((FpBillRow *) row)->marks);
}

FpBill *
fp_bill_new (const FpScene *scene)
{
  FpBill *self = g_new (FpBill, 1);
  const FpProject *project = fp_scene_project (scene);
  Making m = { .works = fp_project_works (project), .units = fp_project_brief (project)->units };

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
