/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What has to stand on the credence, and the room that it leaves. */
#include "measure-evidence.h"

#include <math.h>

/* At a low Mass of the older form the celebrant carries the chalice to the altar himself (A. Fortescue, "The Ceremonies
 * of the Roman Rite Described", 1918, from memory). */
static FpBox
common_vessels (const FpMeasuring *of)
{
  const FpKind *kind = fp_kind_find ("credence-vessels");
  const guint asked = fp_project_brief (fp_scene_project (of->scene))->celebrations;
  FpExtent extent = { .plan = FP_BOX_EMPTY, .bearing = FP_BOX_EMPTY };
  double param[FP_PARAM_MAX];

  fp_kind_defaults (kind, param);
  param[fp_kind_param_index (kind, "chalice")] = (asked & ~(guint) FP_CELEBRATION_LOW) != 0;
  kind->extent (&(FpForm) { .param = param }, &extent);
  return extent.plan;
}

/* What has to stand there: what is drawn, and the common vessels in the middle where none are. */
static GArray *
boxes_on (const FpMeasuring *of, int credence)
{
  const FpPlaced *table = fp_measuring_placed (of, credence);
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));
  gboolean vessels = FALSE;
  guint n;

  fp_scene_placed (of->scene, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *thing = fp_measuring_placed (of, (int) i);
      const FpBox box = fp_placed_box_in (thing, table);

      if (thing->ghost || thing->support != credence)
        continue;
      vessels = vessels || fp_placed_role (thing) == FP_ROLE_VESSELS;
      g_array_append_val (boxes, box);
    }
  if (!vessels)
    {
      const FpBox box = common_vessels (of);
      g_array_append_val (boxes, box);
    }
  return boxes;
}

static void
needed_on (const FpMeasuring *of, int credence, double *length, double *depth)
{
  g_autoptr (GArray) boxes = boxes_on (of, credence);

  *length = *depth = 0;
  for (guint i = 0; i < boxes->len; i++)
    {
      const FpBox *box = &g_array_index (boxes, FpBox, i);

      *length += box->x1 - box->x0;
      *depth = MAX (*depth, box->y1 - box->y0);
    }
}

/* The one on which the vessels stand, or the first. */
static int
credence_of_vessels (const FpMeasuring *of)
{
  for (int i = fp_measuring_next (of, FP_ROLE_VESSELS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_VESSELS, i))
    {
      const int on = fp_measuring_placed (of, i)->support;

      if (on >= 0 && fp_placed_role (fp_measuring_placed (of, on)) == FP_ROLE_CREDENCE)
        return on;
    }
  return fp_measuring_next (of, FP_ROLE_CREDENCE, -1);
}

/* "135 mm too little of 600 mm". */
static char *
left_told (const FpMeasuring *of, double left, double has)
{
  const FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
  g_autofree char *by = fp_length_format_unit (fabs (left), units), *all = fp_length_format_unit (has, units);

  return g_strdup_printf (left < 0 ? "%s too little; it has %s" : "%s to spare; it has %s", by, all);
}

static void
take_left (const FpMeasuring *of, GArray *out, gboolean deep)
{
  const int index = credence_of_vessels (of);
  const FpPlaced *table = fp_measuring_placed (of, index);
  double length, depth, has;

  if (table == NULL)
    return;
  needed_on (of, index, &length, &depth);
  has = deep ? table->extent.bearing.y1 - table->extent.bearing.y0 : table->extent.bearing.x1 - table->extent.bearing.x0;
  fp_measured_add_at (out, has - (deep ? depth : length), index, fp_placed_middle (table, table->extent.top))->text =
    left_told (of, has - (deep ? depth : length), has);
}

void
fp_take_credence_length_left (const FpMeasuring *of, GArray *out)
{
  take_left (of, out, FALSE);
}

void
fp_take_credence_depth_left (const FpMeasuring *of, GArray *out)
{
  take_left (of, out, TRUE);
}

/* --- the credence, drawn -------------------------------------------------------- */

/* Along the table, or across it. */
static void
add_across (FpEvidence *out, const FpPlaced *table, const FpBox *box, gboolean deep, double times)
{
  const double z = table->extent.top;

  fp_evidence_add_length_in (out, table, (FpVec3) { box->x0, box->y0, z },
                             deep ? (FpVec3) { box->x0, box->y1, z } : (FpVec3) { box->x1, box->y0, z }, times);
}

/* The whole, less the deepest, or less all side by side. */
static void
show_left (const FpMeasuring *of, const FpMeasured *one, gboolean deep, FpEvidence *out)
{
  const FpPlaced *table = fp_measuring_placed (of, one->owner);
  g_autoptr (GArray) boxes = boxes_on (of, one->owner);
  const FpBox *deepest = NULL;

  add_across (out, table, &table->extent.bearing, deep, 1);
  for (guint i = 0; i < boxes->len; i++)
    {
      const FpBox *box = &g_array_index (boxes, FpBox, i);

      if (!deep)
        add_across (out, table, box, FALSE, -1);
      if (deepest == NULL || box->y1 - box->y0 > deepest->y1 - deepest->y0)
        deepest = box;
    }
  if (deep && deepest != NULL)
    add_across (out, table, deepest, TRUE, -1);
}

void
fp_show_credence_length_left (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show_left (of, one, FALSE, out);
}

void
fp_show_credence_depth_left (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show_left (of, one, TRUE, out);
}
