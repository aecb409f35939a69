/* SPDX-License-Identifier: GPL-3.0-or-later */
/* inspector-several.c - several things beside the board: what they have in common */
#include "inspector-private.h"

#include "param-row.h"
#include "several.h"

static void
on_measure (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));
  g_autoptr (GError) error = NULL;

  fp_inspector_answer (alive, fp_several_enter (self->document, fp_param_row_param (row)->id, text, &error), &error);
}

static void
on_place (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));
  g_autoptr (GError) error = NULL;
  FpPlaceField field = FP_FIELD_ACROSS;

  while (fp_place_field (field) != fp_param_row_param (row))
    field++;
  fp_inspector_answer (alive, fp_several_place_enter (self->document, field, text, &error), &error);
}

/* --- rows ----------------------------------------------------------------- */

static void
build (FpInspector *self, const FpSeveral *s)
{
  g_autofree char *key = g_strdup_printf ("several %s %d %d", s->kind != NULL ? s->kind->id : "", s->all_stand,
                                          s->have_places);

  if (g_strcmp0 (key, self->built_for) == 0)
    return;
  g_free (self->built_for);
  self->built_for = g_steal_pointer (&key);
  g_ptr_array_set_size (self->rows, 0);
  g_ptr_array_set_size (self->corner, 0);
  fp_inspector_empty (self->measures);
  fp_inspector_empty (self->place);
  fp_inspector_empty (self->corner_rows);
  self->support = self->name = NULL;
  for (const FpParam *p = s->kind != NULL ? s->kind->params : NULL; p != NULL && p->id != NULL; p++)
    g_ptr_array_add (self->rows, fp_inspector_add_row (self, self->measures, p, G_CALLBACK (on_measure)));
  for (guint i = 0; i < FP_N_FIELDS; i++)
    self->field[i] = s->have_places ? fp_inspector_add_row (self, self->place, fp_place_field ((FpPlaceField) i),
                                                            G_CALLBACK (on_place)) : NULL;
  gtk_widget_set_visible (self->measures, self->rows->len > 0);
  gtk_widget_set_visible (self->place, s->have_places);
  gtk_label_set_text (GTK_LABEL (self->place_title), "Place");
  gtk_widget_set_visible (self->place_title, s->have_places);
  gtk_widget_hide (self->corners);
  gtk_widget_set_sensitive (self->measures, s->all_stand);
  gtk_widget_set_sensitive (self->place, s->all_stand);
}

static void
show_row (GtkWidget *row, gboolean same, double value, FpUnits units)
{
  if (same)
    fp_param_row_show (FP_PARAM_ROW (row), value, units);
  else
    fp_param_row_show_mixed (FP_PARAM_ROW (row), units);
}

static void
show_values (FpInspector *self)
{
  const FpUnits units = fp_project_brief (fp_document_project (self->document))->units;

  for (guint i = 0; i < self->rows->len; i++)
    {
      GtkWidget *row = g_ptr_array_index (self->rows, i);
      double value;
      const gboolean same = fp_several_param_same (self->document, fp_param_row_param (FP_PARAM_ROW (row))->id, &value);

      show_row (row, same, value, units);
    }
  for (guint i = 0; i < FP_N_FIELDS; i++)
    if (self->field[i] != NULL)
      {
        double value;
        const gboolean same = fp_several_place_same (self->document, (FpPlaceField) i, &value);

        show_row (self->field[i], same, value, units);
      }
}

static void
show_heading (FpInspector *self, const FpSeveral *s)
{
  g_autofree char *names = fp_several_names (self->document);
  g_autofree char *title = s->kind != NULL ? g_strdup_printf ("%u chosen: %s", s->n, s->kind->label)
                           : g_strdup_printf ("%u things chosen", s->n);

  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_label_set_text (GTK_LABEL (self->where), names);
  gtk_widget_remove_css_class (self->where, "error");
  gtk_label_set_text (GTK_LABEL (self->tells), s->kind != NULL
                      ? "What is typed here is given to all of them."
                      : "They are of several kinds: Arrange moves, spaces and levels them together.");
  gtk_label_set_text (GTK_LABEL (self->survey),
                      "Some are part of the survey: their measures change in every alternative.");
  gtk_widget_set_visible (self->survey, s->any_surveyed && s->all_stand);
  gtk_widget_hide (self->survey_tools);
  gtk_widget_hide (self->keep);
  gtk_widget_set_visible (self->remove, s->all_stand);
}

void
fp_inspector_show_several (FpInspector *self)
{
  FpSeveral s;

  fp_several_look (self->document, &s);
  build (self, &s);
  show_heading (self, &s);
  show_values (self);
}
