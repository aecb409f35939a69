/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measure-evidence.h"

#include <math.h>

static gboolean
is_floor (const FpPlaced *placed)
{
  const FpRole role = fp_placed_role (placed);

  return role == FP_ROLE_FLOOR || role == FP_ROLE_GALLERY || role == FP_ROLE_STANDING_ROOM;
}

void
fp_evidence_add_floor (FpEvidence *self, const FpFloor *floor)
{
  g_autofree FpVec3 *pt = g_new (FpVec3, floor->n_outline);

  for (guint i = 0; i < floor->n_outline; i++)
    {
      const FpPoint p = floor->outline[i];
      pt[i] = (FpVec3) { p.x, p.y, floor->z + floor->gx * p.x + floor->gy * p.y };
    }
  fp_evidence_add_outline (self, pt, floor->n_outline);
}

void
fp_evidence_add_floors (FpEvidence *self, const FpMeasuring *of, FpFloorUse use)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == use)
      fp_evidence_add_floor (self, &floor[i]);
}

void
fp_evidence_add_box (FpEvidence *self, const FpPlaced *placed, const FpBox *box, double z)
{
  const FpVec3 corner[4] = { { box->x0, box->y0, z }, { box->x1, box->y0, z }, { box->x1, box->y1, z }, { box->x0, box->y1, z } };
  FpVec3 pt[4];

  for (guint i = 0; i < 4; i++)
    pt[i] = fp_placed_point (placed, corner[i]);
  fp_evidence_add_outline (self, pt, 4);
}

void
fp_evidence_add_solid (FpEvidence *self, const FpSolid *solid)
{
  g_autofree FpVec3 *pt = NULL;

  if (solid->shape != FP_SOLID_PRISM)
    return;
  pt = g_new (FpVec3, solid->n_outline);
  for (guint i = 0; i < solid->n_outline; i++)
    {
      const FpPoint p = solid->outline[i];
      pt[i] = (FpVec3) { p.x, p.y, fp_solid_top_at (solid, p.x, p.y) };
    }
  fp_evidence_add_outline (self, pt, solid->n_outline);
}

/* Of a run of wall each part, for its corners may lie all round the church. */
static void
add_solids (FpEvidence *self, const FpMeasuring *of, const FpPlaced *placed)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);

  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids && i < n; i++)
    fp_evidence_add_solid (self, &solid[i]);
}

void
fp_evidence_add_thing (FpEvidence *self, const FpMeasuring *of, int index)
{
  const FpPlaced *placed = fp_measuring_placed (of, index);
  guint n;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);
  FpVec3 pt[8];

  if (placed == NULL)
    return;
  for (guint i = 0; i < n && is_floor (placed); i++)
    if ((int) floor[i].owner == index)
      {
        fp_evidence_add_floor (self, &floor[i]);
        return;
      }
  if ((fp_item_kind (placed->item)->flags & FP_KIND_RUN) != 0)
    {
      add_solids (self, of, placed);
      return;
    }
  for (guint i = 0; i < 8; i++)
    {
      const FpBox *box = &placed->extent.plan;
      pt[i] = fp_placed_point (placed, (FpVec3) { i & 1 ? box->x1 : box->x0, i & 2 ? box->y1 : box->y0, i & 4 ? placed->extent.height : 0 });
    }
  fp_evidence_add_body (self, pt, 8);
}

void
fp_evidence_add_role (FpEvidence *self, const FpMeasuring *of, FpRole role)
{
  for (int i = fp_measuring_next (of, role, -1); i >= 0; i = fp_measuring_next (of, role, i))
    fp_evidence_add_thing (self, of, i);
}

void
fp_evidence_add_length_in (FpEvidence *self, const FpPlaced *placed, FpVec3 a, FpVec3 b, double times)
{
  fp_evidence_add_length (self, fp_placed_point (placed, a), fp_placed_point (placed, b), times);
}

void
fp_evidence_add_param (FpEvidence *self, const FpPlaced *placed, const char *param, double times)
{
  FpVec3 a, b;

  if (placed != NULL && fp_param_span (placed, param, &a, &b))
    fp_evidence_add_length_in (self, placed, a, b, times);
}

void
fp_evidence_add_places (FpEvidence *self, const FpMeasuring *of, FpPlaceTest test, gpointer data)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    if (test (of, i, data))
      fp_evidence_add_each (self, place[i].at);
}

void
fp_evidence_add_axis (FpEvidence *self, const FpPlaced *altar, FpVec3 through)
{
  const FpPoint local = fp_placed_local (altar, (FpPoint) { through.x, through.y });
  const double top = through.z - altar->level, beyond = 300; /* mm, so that it is seen to be a line (design judgement) */
  const double y0 = MIN (altar->extent.plan.y0, local.y) - beyond, y1 = MAX (altar->extent.plan.y1, local.y) + beyond;

  fp_evidence_add_line (self, fp_placed_point (altar, (FpVec3) { 0, y0, top }), fp_placed_point (altar, (FpVec3) { 0, y1, top }));
  fp_evidence_add_line (self, fp_placed_point (altar, (FpVec3) { 0, local.y, MIN (top, 0) }),
                        fp_placed_point (altar, (FpVec3) { 0, local.y, MAX (top, altar->extent.top) + beyond }));
}
