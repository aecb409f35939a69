/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "several.h"

#include "typing.h"

#include "footpace/arrange.h"
#include "footpace/setting-out.h"

#include <string.h>

#define NAMES_TOLD 3

static const FpPlaced *
nth (FpDocument *document, guint i)
{
  return fp_document_placed (document, fp_document_chosen_all (document)[i]);
}

void
fp_several_look (FpDocument *document, FpSeveral *out)
{
  const FpScene *scene = fp_document_scene (document);

  *out = (FpSeveral) { .n = fp_document_n_chosen (document), .all_stand = TRUE, .have_places = TRUE };
  for (guint i = 0; i < out->n; i++)
    {
      const FpPlaced *placed = nth (document, i);

      if (i == 0)
        out->kind = fp_item_kind (placed->item);
      else if (out->kind != fp_item_kind (placed->item))
        out->kind = NULL;
      out->all_stand &= !placed->ghost;
      out->any_surveyed |= placed->in_survey;
      out->have_places &= fp_place_is_own (scene, placed) && placed->support == nth (document, 0)->support;
    }
  out->have_places &= out->n > 0;
}

char *
fp_several_names (FpDocument *document)
{
  GString *names = g_string_new (NULL);
  const guint n = fp_document_n_chosen (document), told = n <= NAMES_TOLD + 1 ? n : NAMES_TOLD;

  for (guint i = 0; i < told; i++)
    g_string_append_printf (names, "%s%s", i == 0 ? "" : i + 1 == n ? " and " : ", ",
                            fp_item_name (nth (document, i)->item));
  if (told < n)
    g_string_append_printf (names, " and %u more", n - told);
  return g_string_free (names, FALSE);
}

gboolean
fp_several_param_same (FpDocument *document, const char *param, double *value)
{
  const guint n = fp_document_n_chosen (document);

  *value = fp_item_param (nth (document, n - 1)->item, param);
  for (guint i = 0; i + 1 < n; i++)
    if (fp_item_param (nth (document, i)->item, param) != *value)
      return FALSE;
  return TRUE;
}

static double
place_value (FpDocument *document, guint i, FpPlaceField field)
{
  const FpPlace place = fp_place_now (document, nth (document, i));

  return fp_place_field_get (&place, field);
}

gboolean
fp_several_place_same (FpDocument *document, FpPlaceField field, double *value)
{
  const guint n = fp_document_n_chosen (document);

  *value = place_value (document, n - 1, field);
  for (guint i = 0; i + 1 < n; i++)
    if (place_value (document, i, field) != *value)
      return FALSE;
  return TRUE;
}

/* --- typing --------------------------------------------------------------- */

/* What is shown may be rounded: the same text means the same value. */
static gboolean
is_as_shown (const FpParam *param, gboolean same, double value, const char *text, FpUnits units)
{
  g_autofree char *shown = fp_typing_show (param, value, units);

  return same && strcmp (shown, text) == 0;
}

gboolean
fp_several_enter (FpDocument *document, const char *param_id, const char *text, GError **error)
{
  const FpUnits units = fp_project_brief (fp_document_project (document))->units;
  const FpParam *param = fp_typing_param (fp_document_chosen_placed (document), param_id, NULL);
  g_autofree char *label = NULL;
  gboolean same;
  double value;

  if (param == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "This measure is not there any more.");
      return FALSE;
    }
  same = fp_several_param_same (document, param_id, &value);
  if (is_as_shown (param, same, value, text, units))
    return TRUE;
  if (!fp_typing_read (param, text, units, &value, error))
    return FALSE;
  label = g_strdup_printf ("%s of %u things", param->label, fp_document_n_chosen (document));
  return fp_document_edit (document,
                           fp_arrange_param (fp_document_base_scene (document), fp_document_chosen_all (document),
                                             param_id, value, error),
                           label, NULL);
}

/* Each in the scene that the one before has left: what stands on it goes with it. */
static FpProject *
with_places (FpDocument *document, FpPlaceField field, double value, GError **error)
{
  FpProject *project = fp_project_ref (fp_scene_project (fp_document_base_scene (document)));

  for (guint i = 0; project != NULL && i < fp_document_n_chosen (document); i++)
    {
      g_autoptr (FpProject) before = project;
      g_autoptr (FpScene) now = (FpScene *) fp_scene_new (before, fp_document_alternative (document));
      FpPlace place = fp_place_now (document, nth (document, i));

      fp_place_field_set (&place, field, value);
      project = fp_set_out_place (now, fp_document_chosen_all (document)[i], &place, error);
    }
  return project;
}

gboolean
fp_several_place_enter (FpDocument *document, FpPlaceField field, const char *text, GError **error)
{
  const FpUnits units = fp_project_brief (fp_document_project (document))->units;
  g_autofree char *label = g_strdup_printf ("Move %u things", fp_document_n_chosen (document));
  double value;
  const gboolean same = fp_several_place_same (document, field, &value);

  if (is_as_shown (fp_place_field (field), same, value, text, units))
    return TRUE;
  if (!fp_typing_read (fp_place_field (field), text, units, &value, error))
    return FALSE;
  return fp_document_edit (document, with_places (document, field, value, error), label, NULL);
}
