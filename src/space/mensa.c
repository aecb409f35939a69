/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/mensa.h"

static gboolean
has_area (const FpBox *box)
{
  return box->x1 > box->x0 && box->y1 > box->y0;
}

static FpBox
common (const FpBox *a, const FpBox *b)
{
  return (FpBox) { MAX (a->x0, b->x0), MAX (a->y0, b->y0), MIN (a->x1, b->x1), MIN (a->y1, b->y1) };
}

/* All of it that lies over @on. */
static FpBox
all_of (const FpBox *box, guint n, const FpBox *on)
{
  FpBox all = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    {
      const FpBox over = common (&box[i], on);
      if (has_area (&over))
        fp_box_add_box (&all, &over);
    }
  return all;
}

/* The deeper of what is left before and behind. */
static void
stop_before (FpMensaFree *self, const FpBox *what)
{
  const double before = what->y0 - self->free.y0, behind = self->free.y1 - what->y1;

  if (MAX (before, behind) <= FP_MENSA_LEAST)
    return;
  if (before >= behind)
    self->free.y1 = what->y0;
  else
    self->free.y0 = what->y1;
  self->stops = TRUE;
  self->beside = MAX (MAX (what->x0 - self->free.x0, self->free.x1 - what->x1), 0);
}

/* To the nearer of its back and its front. */
static void
cut_out (FpMensaFree *self, const FpBox *what)
{
  const FpBox wide = { what->x0 - FP_MENSA_EASE, what->y0 - FP_MENSA_EASE, what->x1 + FP_MENSA_EASE, what->y1 + FP_MENSA_EASE };
  const gboolean back = self->free.y1 - what->y1 <= what->y0 - self->free.y0;

  self->notch = common (&wide, &self->free);
  if (back)
    self->notch.y1 = self->free.y1;
  else
    self->notch.y0 = self->free.y0;
}

static gboolean
leaves_only_ends (const FpMensaFree *self, const FpBox *what)
{
  return what->x0 - self->free.x0 < FP_MENSA_ENDS && self->free.x1 - what->x1 < FP_MENSA_ENDS;
}

static void
keep_off (FpMensaFree *self, const FpBox *thing, guint n)
{
  FpBox what = all_of (thing, n, &self->free);

  if (fp_box_is_empty (&what))
    return;
  if (leaves_only_ends (self, &what))
    {
      stop_before (self, &what);
      return;
    }
  fp_box_add_box (&what, &self->notch);
  cut_out (self, &what);
}

gboolean
fp_mensa_holds_fast (FpRole role)
{
  return role == FP_ROLE_GRADINE || role == FP_ROLE_TABERNACLE;
}

void
fp_mensa_fast_add (FpMensaFast *self, FpRole role, const FpBox *plan)
{
  if (role == FP_ROLE_GRADINE && self->n_gradines < FP_MENSA_FAST_MOST)
    self->gradine[self->n_gradines++] = *plan;
  else if (role != FP_ROLE_GRADINE && self->n_others < FP_MENSA_FAST_MOST)
    self->other[self->n_others++] = *plan;
}

void
fp_mensa_free_of (const FpBox *mensa, const FpMensaFast *fast, FpMensaFree *out)
{
  *out = (FpMensaFree) { .free = *mensa, .notch = FP_BOX_EMPTY };
  keep_off (out, fast->gradine, fast->n_gradines);
  keep_off (out, fast->other, fast->n_others);
}

/* --- of a scene ------------------------------------------------------------------ */

/* Of @thing on @altar, in the altar's coordinates. */
static FpBox
plan_on (const FpPlaced *altar, const FpPlaced *thing)
{
  const FpBox *plan = &thing->extent.plan;
  const FpPoint corner[4] = { { plan->x0, plan->y0 }, { plan->x1, plan->y0 }, { plan->x1, plan->y1 }, { plan->x0, plan->y1 } };
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < 4; i++)
    fp_box_add_point (&box, fp_place_unpoint (&altar->place, fp_place_point (&thing->place, corner[i])));
  return box;
}

void
fp_mensa_free (const FpScene *scene, guint altar, FpMensaFree *out)
{
  FpMensaFast fast = { 0 };
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n), *on = &placed[altar];
  const FpBox *mensa = fp_box_is_empty (&on->extent.bearing) ? &on->extent.plan : &on->extent.bearing;

  for (guint i = 0; i < n; i++)
    {
      const FpRole role = fp_item_kind (placed[i].item)->role;
      FpBox plan;

      if (placed[i].ghost || placed[i].support != (int) altar || !fp_mensa_holds_fast (role))
        continue;
      plan = plan_on (on, &placed[i]);
      fp_mensa_fast_add (&fast, role, &plan);
    }
  fp_mensa_free_of (mensa, &fast, out);
}
