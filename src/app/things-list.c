/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-list.h"

#include "things.h"

struct _FpThingsList
{
  GtkWidget   parent_instance;
  FpDocument *document;
  char       *shown;   /* all that the rows show: they are made anew only when it changes */
  GtkWidget  *list;
};

G_DEFINE_FINAL_TYPE (FpThingsList, fp_things_list, GTK_TYPE_WIDGET)

static guint activated_signal;

static const char *
row_id (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "id");
}

static gboolean
is_building (GtkListBoxRow *row)
{
  return GPOINTER_TO_INT (g_object_get_data (G_OBJECT (row), "building"));
}

static GtkWidget *
row_new (const FpScene *scene, const FpPlaced *placed, guint depth, FpUnits units)
{
  GtkWidget *row = gtk_list_box_row_new (), *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = gtk_label_new (fp_item_name (placed->item)), *standing;
  const char *stands = fp_thing_standing (scene, placed);
  g_autofree char *where = fp_thing_where (scene, placed, units);
  g_autofree char *speech = g_strdup_printf ("%s, %s, %s", fp_item_name (placed->item), stands, where);

  standing = gtk_label_new (stands);
  gtk_label_set_xalign (GTK_LABEL (name), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_set_margin_start (name, (int) (depth * 18));
  gtk_widget_add_css_class (standing, "caption");
  gtk_widget_add_css_class (standing, placed->ghost ? "removed" : "dim-label");
  if (placed->ghost)
    gtk_widget_add_css_class (name, "removed");
  gtk_box_append (GTK_BOX (line), name);
  gtk_box_append (GTK_BOX (line), standing);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line);
  gtk_widget_set_tooltip_text (row, where);
  g_object_set_data_full (G_OBJECT (row), "id", g_strdup (fp_item_id (placed->item)), g_free);
  g_object_set_data (G_OBJECT (row), "building",
                     GINT_TO_POINTER ((fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, speech, -1);
  return row;
}

static void
show_heading (GtkListBoxRow *row, GtkListBoxRow *before, gpointer data)
{
  GtkWidget *label;

  (void) data;
  if (before != NULL && is_building (before) == is_building (row))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  label = gtk_label_new (is_building (row) ? "Building" : "Furnishings");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "group-title");
  gtk_list_box_row_set_header (row, label);
}

static char *
all_that_is_shown (const FpScene *scene, const GArray *things)
{
  GString *text = g_string_new (NULL);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  for (guint i = 0; i < things->len; i++)
    {
      const FpThing *t = &g_array_index (things, FpThing, i);
      const FpPlaced *p = &placed[t->placed];

      g_string_append_printf (text, "%s|%s|%u|%s|%.1f\n", fp_item_id (p->item), fp_item_name (p->item), t->depth,
                              fp_thing_standing (scene, p), p->level);
    }
  return g_string_free (text, FALSE);
}

static GtkListBoxRow *
find_row (FpThingsList *self, const char *id)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i)) != NULL; i++)
    if (g_strcmp0 (row_id (row), id) == 0)
      return row;
  return NULL;
}

static void
show_chosen (FpThingsList *self)
{
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), find_row (self, fp_document_chosen (self->document)));
}

static void
show (FpThingsList *self)
{
  const FpScene *scene = fp_document_scene (self->document);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  g_autoptr (GArray) things = NULL;
  g_autofree char *shown = NULL;
  GtkListBoxRow *row;

  if (fp_document_is_previewing (self->document))
    return;
  things = fp_things_new (scene);
  shown = all_that_is_shown (scene, things);
  if (g_strcmp0 (shown, self->shown) == 0)
    return;
  g_free (self->shown);
  self->shown = g_steal_pointer (&shown);
  while ((row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row));
  for (guint i = 0; i < things->len; i++)
    {
      const FpThing *t = &g_array_index (things, FpThing, i);

      gtk_list_box_append (GTK_LIST_BOX (self->list), row_new (scene, &placed[t->placed], t->depth, units));
    }
  show_chosen (self);
}

static void
on_row_activated (GtkListBox *list, GtkListBoxRow *row, FpThingsList *self)
{
  (void) list;
  fp_document_choose (self->document, row_id (row));
  g_signal_emit (self, activated_signal, 0);
}

void
fp_things_list_focus (FpThingsList *self, const char *id)
{
  GtkListBoxRow *row = find_row (self, id);

  if (row == NULL)
    row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0);
  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

void
fp_things_list_set_document (FpThingsList *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_clear_pointer (&self->shown, g_free);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (show_chosen), self);
  show (self);
}

static void
fp_things_list_dispose (GObject *object)
{
  FpThingsList *self = FP_THINGS_LIST (object);
  GtkWidget *child;

  fp_things_list_set_document (self, NULL);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_things_list_parent_class)->dispose (object);
}

static void
fp_things_list_class_init (FpThingsListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_things_list_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "things");
  activated_signal = g_signal_new ("activated", FP_TYPE_THINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
fp_things_list_init (FpThingsList *self)
{
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_SINGLE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), show_heading, NULL, NULL);
  gtk_widget_add_css_class (self->list, "plain");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, "Things", -1);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (on_row_activated), self);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
}

GtkWidget *
fp_things_list_new (void)
{
  return g_object_new (FP_TYPE_THINGS_LIST, NULL);
}
