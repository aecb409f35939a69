/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "inspector-private.h"

#include "amiss.h"
#include "outline-edit.h"
#include "param-row.h"
#include "scroll-to.h"
#include "things.h"
#include "typing.h"

#include "footpace/setting-out.h"

/* An outline with more corners is surveyed by file, not typed. */
#define CORNER_ROWS_MAX 60

G_DEFINE_FINAL_TYPE (FpInspector, fp_inspector, GTK_TYPE_WIDGET)

static FpUnits
units_of (FpInspector *self)
{
  return fp_project_brief (fp_document_project (self->document))->units;
}

static const char *
chosen (FpInspector *self)
{
  return fp_document_chosen (self->document);
}

void
fp_inspector_answer (GtkWidget *row, gboolean taken, GError **error)
{
  FpInspector *self = FP_INSPECTOR (gtk_widget_get_ancestor (row, FP_TYPE_INSPECTOR));
  g_autofree char *said = NULL;

  if (taken)
    {
      fp_param_row_settle (FP_PARAM_ROW (row));
      return;
    }
  if (self == NULL)
    return; /* it was taken out of the inspector meanwhile: there is no place to say so */
  said = fp_amiss_words (fp_document_scene (self->document), (*error)->message);
  fp_param_row_fail (FP_PARAM_ROW (row), said);
}

static void
tell_wrong (FpInspector *self, const GError *error)
{
  g_autofree char *said = fp_amiss_words (fp_document_scene (self->document), error->message);

  gtk_label_set_text (GTK_LABEL (self->where), said);
}

/* --- what is typed -------------------------------------------------------- */

static void
on_measure (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));
  gboolean taken = fp_typing_enter (self->document, id, fp_param_row_param (row)->id, text, &error);

  fp_inspector_answer (alive, taken, &error);
}

static void
on_place (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));
  FpPlaceField field = FP_FIELD_ACROSS;

  while (fp_place_field (field) != fp_param_row_param (row))
    field++;
  fp_inspector_answer (alive, fp_place_enter (self->document, id, field, text, &error), &error);
}

static void
on_corner (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));
  guint i = 0;

  if (!g_ptr_array_find (self->corner, row, &i))
    return;
  fp_inspector_answer (alive, fp_corner_enter (self->document, id, i / 2, i % 2 == 1, text, &error), &error);
}

static void
on_name (FpParamRow *row, const char *text, FpInspector *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (row));

  fp_inspector_answer (alive, fp_name_enter (self->document, id, text, &error), &error);
}

static void
on_support (GtkDropDown *choices, GParamSpec *pspec, FpInspector *self)
{
  guint i = gtk_drop_down_get_selected (choices);
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GError) error = NULL;

  (void) pspec;
  if (self->filling || i >= self->supports->len)
    return;
  if (!fp_support_enter (self->document, id, g_ptr_array_index (self->supports, i), &error))
    {
      tell_wrong (self, error);
      gtk_widget_add_css_class (self->where, "error");
    }
}

static void
on_keep (GtkButton *button, FpInspector *self)
{
  g_autofree char *id = g_strdup (chosen (self));
  g_autoptr (GError) error = NULL;

  (void) button;
  /* Pressed by a key, a button is let go a moment later: meanwhile something else may be chosen, or nothing. */
  if (id == NULL)
    return;
  if (!fp_document_edit (self->document, fp_set_out_restore (fp_document_base_scene (self->document), id, &error),
                         "Keep it again", NULL))
    tell_wrong (self, error);
}

/* --- rows ----------------------------------------------------------------- */

void
fp_inspector_empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

GtkWidget *
fp_inspector_add_row (FpInspector *self, GtkWidget *box, const FpParam *param, GCallback entered)
{
  GtkWidget *row = fp_param_row_new (param);

  gtk_widget_set_name (row, param->id);
  g_signal_connect (row, "entered", entered, self);
  gtk_box_append (GTK_BOX (box), row);
  return row;
}

static void
build_measures (FpInspector *self, const FpPlaced *placed)
{
  const FpKind *kind = fp_item_kind (placed->item);

  g_ptr_array_set_size (self->rows, 0);
  fp_inspector_empty (self->measures);
  for (const FpParam *p = kind->params; p != NULL && p->id != NULL; p++)
    g_ptr_array_add (self->rows, fp_inspector_add_row (self, self->measures, p, G_CALLBACK (on_measure)));
  gtk_widget_set_visible (self->measures, self->rows->len > 0);
  gtk_widget_set_sensitive (self->measures, !placed->ghost);
}

static const char *
support_name (FpInspector *self, const char *id)
{
  const FpPlaced *placed = fp_document_placed (self->document, id);

  return *id == '\0' ? "the floor" : placed != NULL ? fp_item_name (placed->item) : id;
}

static void
build_support (FpInspector *self)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  GtkWidget *line, *label;

  if (self->supports->len < 2)
    return;
  for (guint i = 0; i < self->supports->len; i++)
    g_ptr_array_add (names, (gpointer) support_name (self, g_ptr_array_index (self->supports, i)));
  g_ptr_array_add (names, NULL);
  line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_name (line, "support");
  gtk_widget_add_css_class (line, "paramrow");
  label = gtk_label_new ("Stands on");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  self->support = gtk_drop_down_new_from_strings ((const char *const *) names->pdata);
  gtk_widget_add_css_class (self->support, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->support), GTK_ACCESSIBLE_PROPERTY_LABEL, "Stands on", -1);
  gtk_box_append (GTK_BOX (line), label);
  gtk_box_append (GTK_BOX (line), self->support);
  gtk_box_append (GTK_BOX (self->place), line);
  g_signal_connect (self->support, "notify::selected", G_CALLBACK (on_support), self);
}

static void
build_place (FpInspector *self, const FpPlaced *placed)
{
  gboolean own = fp_place_is_own (fp_document_scene (self->document), placed);

  fp_inspector_empty (self->place);
  self->support = NULL;
  self->name = fp_param_row_new_text ("Name");
  gtk_widget_set_name (self->name, "name");
  g_signal_connect (self->name, "entered", G_CALLBACK (on_name), self);
  gtk_box_append (GTK_BOX (self->place), self->name);
  build_support (self);
  for (guint i = 0; i < FP_N_FIELDS; i++)
    self->field[i] = own ? fp_inspector_add_row (self, self->place, fp_place_field ((FpPlaceField) i), G_CALLBACK (on_place)) : NULL;
  gtk_widget_show (self->place);
  gtk_label_set_text (GTK_LABEL (self->place_title), "Name and place");
  gtk_widget_show (self->place_title);
  gtk_widget_set_sensitive (self->place, !placed->ghost);
}

static void
add_corner (FpInspector *self, guint i, gboolean along)
{
  GtkWidget *row = fp_inspector_add_row (self, self->corner_rows, fp_corner_field (along), G_CALLBACK (on_corner));
  g_autofree char *name = g_strdup_printf ("%s %u", along ? "along" : "across", i);

  gtk_widget_set_name (row, name);
  g_ptr_array_add (self->corner, row);
}

static void
build_corners (FpInspector *self, const FpPlaced *placed)
{
  guint n;

  fp_item_corners (placed->item, &n);
  g_ptr_array_set_size (self->corner, 0);
  fp_inspector_empty (self->corner_rows);
  for (guint i = 0; i < MIN (n, CORNER_ROWS_MAX); i++)
    {
      g_autofree char *text = g_strdup_printf ("Corner %u", i + 1);
      GtkWidget *label = gtk_label_new (text);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_widget_add_css_class (label, "corner");
      gtk_box_append (GTK_BOX (self->corner_rows), label);
      add_corner (self, i, FALSE);
      add_corner (self, i, TRUE);
    }
  gtk_widget_set_visible (self->corners, n > 0);
  gtk_widget_set_sensitive (self->corners, !placed->ghost);
}

static char *
built_key (FpInspector *self, const FpPlaced *placed)
{
  GString *key = g_string_new (fp_item_id (placed->item));
  guint n;

  fp_item_corners (placed->item, &n);
  g_string_append_printf (key, " %s %d %u %d", fp_item_kind (placed->item)->id, placed->ghost, n,
                          fp_place_is_own (fp_document_scene (self->document), placed));
  for (guint i = 0; i < self->supports->len; i++)
    {
      const char *id = g_ptr_array_index (self->supports, i);

      g_string_append_printf (key, " %s=%s", id, support_name (self, id));
    }
  return g_string_free (key, FALSE);
}

static void
build (FpInspector *self, const FpPlaced *placed)
{
  g_autofree char *key = NULL;

  g_clear_pointer (&self->supports, g_ptr_array_unref);
  self->supports = fp_supports_new (fp_document_scene (self->document), placed);
  key = built_key (self, placed);
  if (g_strcmp0 (key, self->built_for) == 0)
    return;
  g_free (self->built_for);
  self->built_for = g_steal_pointer (&key);
  build_measures (self, placed);
  build_place (self, placed);
  build_corners (self, placed);
}

/* --- showing -------------------------------------------------------------- */

/* What it stands on in this alternative: a thing of the survey may have been moved. */
static const char *
support_now (FpInspector *self, const FpPlaced *placed)
{
  const FpAlternative *alternative = fp_project_alternative (fp_document_project (self->document),
                                                             fp_document_alternative (self->document));
  const char *on = fp_item_on (placed->item), *moved_on;

  if (placed->in_survey && !placed->ghost
      && fp_alternative_fate (alternative, fp_item_id (placed->item), NULL, &moved_on) == FP_FATE_MOVED)
    on = moved_on;
  return on != NULL ? on : "";
}

static void
show_place (FpInspector *self, const FpPlaced *placed)
{
  const FpPlace place = fp_place_now (self->document, placed);
  const char *on = support_now (self, placed);

  for (guint i = 0; i < FP_N_FIELDS; i++)
    if (self->field[i] != NULL)
      fp_param_row_show (FP_PARAM_ROW (self->field[i]), fp_place_field_get (&place, (FpPlaceField) i), units_of (self));
  fp_param_row_show_text (FP_PARAM_ROW (self->name), fp_item_name (placed->item));
  if (self->support == NULL)
    return;
  self->filling = TRUE;
  for (guint i = 0; i < self->supports->len; i++)
    if (g_strcmp0 (g_ptr_array_index (self->supports, i), on) == 0)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->support), i);
  self->filling = FALSE;
}

/* Who changes a measure of what was surveyed changes it in proposals that are not on the board. */
static void
show_survey (FpInspector *self, const FpPlaced *placed)
{
  gboolean building = (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0;

  gtk_widget_set_visible (self->survey, placed->in_survey && !placed->ghost);
  gtk_widget_set_visible (self->outline, !placed->ghost && fp_outline_has (placed->item));
  gtk_widget_set_visible (self->existing, !placed->in_survey);
  gtk_widget_set_visible (self->strike, placed->in_survey);
  gtk_widget_show (self->survey_tools);
  gtk_label_set_text (GTK_LABEL (self->survey), building
                      ? "Part of the survey: measured once, changed in every alternative."
                      : "Part of the survey: its measures and its name change in every alternative; "
                        "it is moved or removed in this one only.");
}

static void
show_heading (FpInspector *self, const FpPlaced *placed)
{
  const FpScene *scene = fp_document_scene (self->document);
  const FpKind *kind = fp_item_kind (placed->item);
  const char *standing = fp_thing_standing (scene, placed);
  g_autofree char *where = fp_thing_where (scene, placed, units_of (self));
  g_autofree char *text = fp_item_has_name (placed->item)
                          ? g_strdup_printf ("%s, %s; %s", kind->label, standing, where)
                          : g_strdup_printf ("%s; %s", standing, where);

  gtk_label_set_text (GTK_LABEL (self->title), fp_item_name (placed->item));
  gtk_label_set_text (GTK_LABEL (self->where), text);
  gtk_widget_remove_css_class (self->where, "error");
  gtk_label_set_text (GTK_LABEL (self->tells), kind->tells);
  gtk_widget_set_visible (self->keep, placed->in_survey && (placed->ghost || placed->moved));
  gtk_widget_set_visible (self->remove, !placed->ghost);
}

static void
show_values (FpInspector *self, const FpPlaced *placed)
{
  guint n;
  const FpPoint *corner = fp_item_corners (placed->item, &n);

  for (guint i = 0; i < self->rows->len; i++)
    fp_param_row_show (g_ptr_array_index (self->rows, i), fp_item_params (placed->item)[i], units_of (self));
  for (guint i = 0; i < self->corner->len; i++)
    fp_param_row_show (g_ptr_array_index (self->corner, i), i % 2 == 1 ? corner[i / 2].y : corner[i / 2].x,
                       units_of (self));
}

static void
show_one (FpInspector *self, const FpPlaced *placed)
{
  build (self, placed);
  show_heading (self, placed);
  show_survey (self, placed);
  show_values (self, placed);
  show_place (self, placed);
}

static void
show (FpInspector *self)
{
  const FpPlaced *placed = fp_document_chosen_placed (self->document);
  FpInspectorSpot spot;

  if (placed == NULL)
    return;
  spot = fp_inspector_spot (self);
  if (fp_document_n_chosen (self->document) > 1)
    fp_inspector_show_several (self);
  else
    show_one (self, placed);
  fp_inspector_return_to (self, spot);
}

/* Another thing is read from its name on, however far down the last one was. */
static void
on_chosen (FpInspector *self)
{
  show (self);
  fp_scroll_to (self->title);
}

void
fp_inspector_set_document (FpInspector *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_clear_pointer (&self->built_for, g_free);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (on_chosen), self);
  show (self);
}

void
fp_inspector_focus (FpInspector *self)
{
  GtkWidget *first = self->rows->len > 0 ? g_ptr_array_index (self->rows, 0)
                     : self->name != NULL ? self->name : self->field[0];

  /* Several of different kinds may have nothing to type: the way back to the list then. */
  if (first != NULL)
    fp_param_row_focus (FP_PARAM_ROW (first));
  else
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

/* --- a field that is pointed out ------------------------------------------ */

static void
mark_field (FpInspector *self, GtkWidget *row)
{
  if (self->pointed != NULL)
    gtk_widget_remove_css_class (self->pointed, "pointed-out");
  g_set_weak_pointer (&self->pointed, row);
  if (row == NULL)
    return;
  gtk_widget_add_css_class (row, "pointed-out");
  fp_scroll_to (row);
}

void
fp_inspector_point_out (FpInspector *self, const char *param)
{
  GtkWidget *row = NULL;

  for (guint i = 0; param != NULL && i < self->rows->len; i++)
    if (g_strcmp0 (fp_param_row_param (g_ptr_array_index (self->rows, i))->id, param) == 0)
      row = g_ptr_array_index (self->rows, i);
  mark_field (self, row);
}

void
fp_inspector_point_out_place (FpInspector *self, gboolean along)
{
  mark_field (self, self->field[along ? FP_FIELD_ALONG : FP_FIELD_ACROSS]);
}

void
fp_inspector_focus_pointed_out (FpInspector *self)
{
  if (self->pointed != NULL)
    fp_param_row_focus (FP_PARAM_ROW (self->pointed));
  else
    fp_inspector_focus (self);
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_inspector_dispose (GObject *object)
{
  FpInspector *self = FP_INSPECTOR (object);
  GtkWidget *child;

  fp_inspector_set_document (self, NULL);
  g_clear_weak_pointer (&self->pointed);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->corner, g_ptr_array_unref);
  g_clear_pointer (&self->supports, g_ptr_array_unref);
  G_OBJECT_CLASS (fp_inspector_parent_class)->dispose (object);
}

static void
fp_inspector_class_init (FpInspectorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_inspector_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "inspector");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/inspector.ui");
  gtk_widget_class_bind_template_child (widget_class, FpInspector, title);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, where);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, survey);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, survey_tools);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, outline);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, strike);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, existing);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, tells);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, measures);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, place_title);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, place);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, corners);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, corner_rows);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, keep);
  gtk_widget_class_bind_template_child (widget_class, FpInspector, remove);
  gtk_widget_class_bind_template_callback (widget_class, on_keep);
}

static void
fp_inspector_init (FpInspector *self)
{
  self->rows = g_ptr_array_new ();
  self->corner = g_ptr_array_new ();
  self->supports = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fp_inspector_new (void)
{
  return g_object_new (FP_TYPE_INSPECTOR, NULL);
}
