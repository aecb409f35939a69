/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "outline-edit.h"

#include <math.h>

gboolean
fp_outline_has (const FpItem *item)
{
  return (fp_item_kind (item)->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0;
}

gboolean
fp_outline_closed (const FpItem *item)
{
  return (fp_item_kind (item)->flags & FP_KIND_RUN) == 0 || fp_item_param (item, "closed") != 0.0;
}

guint
fp_outline_least (gboolean closed)
{
  return closed ? 3 : 2;
}

/* The sides of an open run are those of the closed one but the last. */
GArray *
fp_outline_legs (const FpPoint *corner, guint n, gboolean closed, double *direction)
{
  GArray *legs = g_array_sized_new (FALSE, TRUE, sizeof (FpLeg), n);

  *direction = 0.0;
  g_array_set_size (legs, n);
  if (n >= 2)
    fp_traverse_from_outline (corner, n, (FpLeg *) (gpointer) legs->data, direction);
  if (!closed && n > 0)
    {
      g_array_set_size (legs, n - 1);
      if (n > 1)
        g_array_index (legs, FpLeg, n - 2).turn = 0.0;
    }
  return legs;
}

gboolean
fp_outline_walk (const FpLeg *leg, guint n, const gboolean *kept, gboolean closed, FpPoint start, double direction,
                 FpClosure *closing, GArray *corners, GError **error)
{
  FpClosure gap;

  if (n < (closed ? 3u : 1u))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, closed ? "Walk at least three sides." : "Walk at least one side.");
      return FALSE;
    }
  g_array_set_size (corners, n + 1);
  fp_traverse_corners (leg, n, start, direction, (FpPoint *) (gpointer) corners->data);
  if (!closed)
    return TRUE;
  gap = fp_traverse_closure (leg, n, direction);
  if (closing != NULL)
    *closing = gap;
  if (kept != NULL && !fp_traverse_can_keep (leg, n, kept, &gap))
    kept = NULL;
  fp_traverse_adjust ((FpPoint *) (gpointer) corners->data, n, kept);
  g_array_set_size (corners, n);
  return TRUE;
}

/* Where, in the words of the list of corners. */
static gboolean
crosses_nowhere (const char *id, const FpPoint *corner, guint n, gboolean closed, FpUnits units, GError **error)
{
  g_autofree char *across = NULL, *along = NULL;
  FpPoint at;

  if (closed ? !fp_outline_crosses_itself (corner, n, &at) : !fp_run_crosses_itself (corner, n, &at))
    return TRUE;
  across = fp_length_format_unit (at.x, units);
  along = fp_length_format_unit (at.y, units);
  g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "%s: the outline crosses or touches itself at %s across, %s along",
               id, across, along);
  return FALSE;
}

FpProject *
fp_outline_make (FpDocument *document, const char *id, const FpPoint *corner, guint n, GError **error)
{
  const FpScene *scene = fp_document_base_scene (document);
  const FpProject *project = fp_scene_project (scene);
  gboolean in_survey;
  const FpItem *was = fp_project_find (project, fp_scene_alternative (scene), id, &in_survey);
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;

  if (was == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "This thing is not there any more.");
      return NULL;
    }
  fp_item_init_from (was, &init);
  if (!crosses_nowhere (id, corner, n, fp_outline_closed (was), fp_project_brief (project)->units, error))
    return NULL;
  init.corner = corner;
  init.n_corners = n;
  item = fp_item_new (&init, error);
  if (item == NULL)
    return NULL;
  return in_survey ? fp_project_with_survey_item (project, item, error)
         : fp_project_with_item (project, fp_scene_alternative (scene), item, error);
}
