/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "thing-column.h"

#include "typing.h"

static const struct { const char *title, *about; } columns[FP_N_COLUMNS] = {
  [FP_COLUMN_NAME] = { "Name", "Name" },
  [FP_COLUMN_STANDING] = { "Standing", "Existing, proposed, moved or removed in this alternative" },
  [FP_COLUMN_LEVEL] = { "Level", "Level above the datum on which it stands" },
  [FP_COLUMN_HEIGHT] = { "Height", "Height" },
  [FP_COLUMN_ACROSS] = { "Across", "Across, the Epistle side positive; of what stands on something, from its middle" },
  [FP_COLUMN_ALONG] = { "Along", "Along, east positive; of what stands on something, from its edge or middle" },
  [FP_COLUMN_TURN] = { "Turned", "Turned to the left, degrees" },
  [FP_COLUMN_SIZE] = { "Size", "Room that it takes on the plan, across by along" },
};

const char *
fp_column_title (FpColumn column)
{
  return columns[column].title;
}

const char *
fp_column_about (FpColumn column)
{
  return columns[column].about;
}

/* Of the level and the height, where the kind has them; NULL. */
const char *
fp_column_param (const FpKind *kind, FpColumn column)
{
  static const char *const levels[] = { "level", "base" };

  if (column == FP_COLUMN_HEIGHT)
    return fp_kind_param_index (kind, "height") >= 0 ? "height" : NULL;
  for (guint i = 0; column == FP_COLUMN_LEVEL && i < G_N_ELEMENTS (levels); i++)
    if (fp_kind_param_index (kind, levels[i]) >= 0)
      return levels[i];
  return NULL;
}

gboolean
fp_column_is_place (FpColumn column)
{
  return column == FP_COLUMN_ACROSS || column == FP_COLUMN_ALONG || column == FP_COLUMN_TURN;
}

FpPlaceField
fp_column_field (FpColumn column)
{
  return column == FP_COLUMN_ACROSS ? FP_FIELD_ACROSS : column == FP_COLUMN_ALONG ? FP_FIELD_ALONG : FP_FIELD_TURN;
}

/* --- typing into it ------------------------------------------------------------- */

char *
fp_column_typed (FpDocument *document, const char *id, FpColumn column)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  const FpUnits units = fp_project_brief (fp_document_project (document))->units;
  const char *param = placed != NULL ? fp_column_param (fp_item_kind (placed->item), column) : NULL;
  double value;

  if (placed == NULL)
    return g_strdup ("");
  if (param != NULL)
    {
      const FpParam *p = fp_typing_param (placed, param, &value);
      return fp_typing_show (p, value, units);
    }
  if (fp_column_is_place (column))
    {
      const FpPlace place = fp_place_now (document, placed);
      const FpPlaceField field = fp_column_field (column);
      return fp_typing_show (fp_place_field (field), fp_place_field_get (&place, field), units);
    }
  return g_strdup (fp_item_name (placed->item));
}

gboolean
fp_column_enter (FpDocument *document, const char *id, FpColumn column, const char *text, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  const char *param = placed != NULL ? fp_column_param (fp_item_kind (placed->item), column) : NULL;

  if (param != NULL)
    return fp_typing_enter (document, id, param, text, error);
  if (fp_column_is_place (column))
    return fp_place_enter (document, id, fp_column_field (column), text, error);
  return fp_name_enter (document, id, text, error);
}
