/* SPDX-License-Identifier: GPL-3.0-or-later */
/* arrange.c - several things moved, taken away, spaced and levelled */
#include "footpace/arrange.h"

#include "chosen.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* One edit after another, each in the scene that the one before has left. */
typedef FpProject *(*Edit) (const FpScene *scene, const char *id, gconstpointer data, GError **error);

/* The first is edited in the scene as it is. */
static FpProject *
edit_each (const FpScene *scene, const Chosen *chosen, Edit edit, gconstpointer data, GError **error)
{
  FpProject *project = fp_project_ref (fp_scene_project (scene));

  for (guint i = 0; project != NULL && i < chosen->n; i++)
    {
      g_autoptr (FpProject) before = project;
      g_autoptr (FpScene) now = i == 0 ? fp_scene_ref (scene) : fp_scene_new (before, fp_scene_alternative (scene));

      project = edit (now, fp_item_id (chosen->placed[chosen->index[i]].item), data, error);
    }
  return project;
}

/* At every motion of the hand: they are moved in the one scene that is there. */
static FpProject *
move_all (const Chosen *chosen, FpVec3 by, GError **error)
{
  g_autofree const char **ids = g_new (const char *, chosen->n + 1);

  for (guint i = 0; i < chosen->n; i++)
    ids[i] = fp_item_id (chosen->placed[chosen->index[i]].item);
  ids[chosen->n] = NULL;
  return fp_set_out_move_all (chosen->scene, ids, by, error);
}

FpProject *
fp_arrange_move (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error)
{
  g_auto (Chosen) chosen = { 0 };

  return chosen_init (&chosen, scene, ids, 1, error) ? move_all (&chosen, by, error) : NULL;
}

static FpProject *
remove_one (const FpScene *scene, const char *id, gconstpointer data, GError **error)
{
  (void) data;
  return fp_set_out_remove (scene, id, error);
}

FpProject *
fp_arrange_remove (const FpScene *scene, const char *const *ids, GError **error)
{
  g_auto (Chosen) chosen = { 0 };

  return chosen_init (&chosen, scene, ids, 1, error) ? edit_each (scene, &chosen, remove_one, NULL, error) : NULL;
}

/* No level is asked for, so one scene does for all. */
static FpProject *
set_param (const FpScene *scene, const FpProject *project, const FpPlaced *placed, const char *param, double value,
           GError **error)
{
  const FpKind *kind = fp_item_kind (placed->item);
  const int index = fp_kind_param_index (kind, param);
  double changed[FP_PARAM_MAX];
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;

  if (index < 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it has no %s", fp_item_id (placed->item), param);
      return NULL;
    }
  if (!fp_param_check_in (&kind->params[index], value, fp_project_brief (project)->units, error))
    {
      g_prefix_error (error, "%s: ", fp_item_id (placed->item));
      return NULL;
    }
  fp_item_init_from (placed->item, &init);
  memcpy (changed, init.param, fp_kind_n_params (kind) * sizeof *changed);
  changed[index] = value;
  init.param = changed;
  item = fp_item_new (&init, error);
  if (item == NULL)
    return NULL;
  return placed->in_survey ? fp_project_with_survey_item (project, item, error)
         : fp_project_with_item (project, fp_scene_alternative (scene), item, error);
}

FpProject *
fp_arrange_param (const FpScene *scene, const char *const *ids, const char *param, double value, GError **error)
{
  FpProject *project = fp_project_ref (fp_scene_project (scene));

  for (; project != NULL && *ids != NULL; ids++)
    {
      g_autoptr (FpProject) before = project;
      const int i = fp_scene_find (scene, *ids);
      const FpPlaced *placed = i >= 0 ? &fp_scene_placed (scene, NULL)[i] : NULL;

      project = NULL;
      if (placed == NULL)
        g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "“%s” is not there", *ids);
      else
        project = set_param (scene, before, placed, param, value, error);
    }
  return project;
}

FpProject *
fp_arrange_centre (const FpScene *scene, const char *const *ids, GError **error)
{
  g_auto (Chosen) chosen = { 0 };
  FpBox box = FP_BOX_EMPTY;
  FpVec3 by = { 0, 0, 0 };

  if (!chosen_init (&chosen, scene, ids, 1, error))
    return NULL;
  for (guint i = 0; i < chosen.n; i++)
    fp_box_add_box (&box, &chosen.placed[chosen.index[i]].plan);
  by.x = -(box.x0 + box.x1) / 2;
  return move_all (&chosen, by, error);
}

/* --- equal gaps ----------------------------------------------------------- */

typedef struct { int index; double lo, hi; } Span;

static int
from_low_to_high (gconstpointer a, gconstpointer b)
{
  const Span *p = a, *q = b;
  const double d = (p->lo + p->hi) - (q->lo + q->hi);

  return d < 0 ? -1 : d > 0;
}

static Span *
spans_new (const Chosen *chosen, gboolean along_church)
{
  Span *span = g_new (Span, chosen->n);

  for (guint i = 0; i < chosen->n; i++)
    {
      const FpBox *plan = &chosen->placed[chosen->index[i]].plan;
      span[i] = along_church ? (Span) { chosen->index[i], plan->y0, plan->y1 }
                             : (Span) { chosen->index[i], plan->x0, plan->x1 };
    }
  qsort (span, chosen->n, sizeof *span, from_low_to_high);
  return span;
}

FpProject *
fp_arrange_space (const FpScene *scene, const char *const *ids, gboolean along_church, GError **error)
{
  g_auto (Chosen) chosen = { 0 };
  g_autofree Span *span = NULL;
  FpProject *project;
  double gap, at;

  if (!chosen_init (&chosen, scene, ids, 3, error))
    return NULL;
  span = spans_new (&chosen, along_church);
  gap = span[chosen.n - 1].hi - span[0].lo;
  for (guint i = 0; i < chosen.n; i++)
    gap -= span[i].hi - span[i].lo;
  gap /= chosen.n - 1;
  at = span[0].hi + gap;
  project = fp_project_ref (fp_scene_project (scene));
  for (guint i = 1; project != NULL && i + 1 < chosen.n; i++)
    {
      g_autoptr (FpProject) before = project;
      g_autoptr (FpScene) now = fp_scene_new (before, fp_scene_alternative (scene));
      const double by = at - span[i].lo;

      project = fp_set_out_move (now, fp_item_id (chosen.placed[span[i].index].item),
                                 along_church ? (FpVec3) { 0, by, 0 } : (FpVec3) { by, 0, 0 }, error);
      at += span[i].hi - span[i].lo + gap;
    }
  return project;
}

/* --- levels --------------------------------------------------------------- */

/* The parameter that raises its top: its level, else its height. */
static const char *
raising_param (const FpKind *kind)
{
  static const char *const names[] = { "level", "height" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (fp_kind_param_index (kind, names[i]) >= 0)
      return names[i];
  return NULL;
}

static double
top_of (const FpPlaced *placed)
{
  const FpBox *bearing = &placed->extent.bearing;

  return placed->level + (fp_box_is_empty (bearing) ? placed->extent.height : placed->extent.top);
}

static FpProject *
raise_to (const FpScene *scene, const FpPlaced *placed, double top, GError **error)
{
  const char *param = raising_param (fp_item_kind (placed->item));

  if (param == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s has no height of its own: its level follows from other measures",
                   fp_item_name (placed->item));
      return NULL;
    }
  return set_param (scene, fp_scene_project (scene), placed, param,
                    fp_item_param (placed->item, param) + top - top_of (placed), error);
}

static FpProject *
level_one (const FpScene *scene, const char *id, gconstpointer data, GError **error)
{
  return raise_to (scene, &fp_scene_placed (scene, NULL)[fp_scene_find (scene, id)], *(const double *) data, error);
}

gboolean
fp_arrange_can_level (const FpScene *scene, const char *const *ids, const char *like, GError **error)
{
  const int index = fp_scene_find (scene, like);
  g_auto (Chosen) chosen = { 0 };
  gboolean differs = FALSE;

  g_return_val_if_fail (index >= 0, FALSE);
  if (!chosen_init (&chosen, scene, ids, 1, error))
    return FALSE;
  for (guint i = 0; i < chosen.n; i++)
    {
      const FpPlaced *placed = &chosen.placed[chosen.index[i]];
      const double top = top_of (&chosen.placed[index]);
      g_autoptr (FpProject) next = raise_to (scene, placed, top, error);

      if (next == NULL)
        return FALSE;
      differs = differs || fabs (top - top_of (placed)) > 1e-6;
    }
  if (!differs)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "The tops are level with it already.");
  return differs;
}

FpProject *
fp_arrange_level (const FpScene *scene, const char *const *ids, const char *like, GError **error)
{
  const int index = fp_scene_find (scene, like);
  g_auto (Chosen) chosen = { 0 };
  double top;

  if (index < 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "“%s” is not there to take a level from", like);
      return NULL;
    }
  if (!chosen_init (&chosen, scene, ids, 1, error))
    return NULL;
  top = top_of (&fp_scene_placed (scene, NULL)[index]);
  return edit_each (scene, &chosen, level_one, &top, error);
}
