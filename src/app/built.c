/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "built.h"

#include "footpace/error.h"

GtkWidget *
fp_built (GtkBuilder *builder, const char *id)
{
  return GTK_WIDGET (gtk_builder_get_object (builder, id));
}

const char *
fp_built_text (GtkBuilder *builder, const char *id)
{
  return gtk_editable_get_text (GTK_EDITABLE (fp_built (builder, id)));
}

void
fp_built_set_text (GtkBuilder *builder, const char *id, const char *value)
{
  gtk_editable_set_text (GTK_EDITABLE (fp_built (builder, id)), value);
}

guint
fp_built_selected (GtkBuilder *builder, const char *id)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (fp_built (builder, id)));
}

void
fp_built_select (GtkBuilder *builder, const char *id, guint value)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (fp_built (builder, id)), value);
}

gboolean
fp_built_is_active (GtkBuilder *builder, const char *id)
{
  return gtk_check_button_get_active (GTK_CHECK_BUTTON (fp_built (builder, id)));
}

gboolean
fp_built_length (GtkBuilder *builder, const char *id, const char *label, FpUnits units, double *mm, GError **error)
{
  if (fp_length_parse (fp_built_text (builder, id), units, mm, error))
    return TRUE;
  g_prefix_error (error, "%s: ", label);
  return FALSE;
}

gboolean
fp_built_count (GtkBuilder *builder, const char *id, const char *label, guint min, guint max, guint *value,
                GError **error)
{
  double number;

  if (!fp_number_parse (fp_built_text (builder, id), &number, error))
    {
      g_prefix_error (error, "%s: ", label);
      return FALSE;
    }
  if (!(number >= min && number <= max))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: from %u to %u.", label, min, max);
      return FALSE;
    }
  *value = (guint) number;
  return TRUE;
}

void
fp_built_change_units (GtkEditable *editable, FpUnits was, FpUnits now)
{
  g_autofree char *shown = NULL;
  double mm;

  if (!fp_length_parse (gtk_editable_get_text (editable), was, &mm, NULL))
    return;
  shown = fp_length_format (mm, now);
  gtk_editable_set_text (editable, shown);
}
