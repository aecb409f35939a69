/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-list-private.h"

#include "compat-4-8.h"

#include <string.h>

enum { PROP_WIDE = 1 };

G_DEFINE_FINAL_TYPE (FpThingsList, fp_things_list, GTK_TYPE_WIDGET)

guint fp_things_list_activated;

/* --- rows ----------------------------------------------------------------- */

static guint
n_rows (FpThingsList *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->selection));
}

GtkTreeListRow *
fp_things_list_row (FpThingsList *self, guint i)
{
  return g_list_model_get_item (G_LIST_MODEL (self->selection), i);
}

/* Borrowed: the tree holds it. */
FpThingNode *
fp_things_list_node (GtkTreeListRow *row)
{
  g_autoptr (FpThingNode) node = row != NULL ? gtk_tree_list_row_get_item (row) : NULL;

  return node;
}

guint
fp_things_list_find (FpThingsList *self, FpThingNode *node)
{
  const guint n = n_rows (self);

  for (guint i = 0; node != NULL && i < n; i++)
    {
      g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, i);

      if (fp_things_list_node (row) == node)
        return i;
    }
  return GTK_INVALID_LIST_POSITION;
}

static guint
find_id (FpThingsList *self, const char *id)
{
  return fp_things_list_find (self, fp_things_tree_find (self->tree, id));
}

/* What is chosen is not left within a fold. */
void
fp_things_list_unfold_to (FpThingsList *self, FpThingNode *node)
{
  FpThingNode *parent = node != NULL ? fp_things_tree_parent (self->tree, node) : NULL;
  guint at;

  if (parent == NULL)
    return;
  fp_things_list_unfold_to (self, parent);
  at = fp_things_list_find (self, parent);
  if (at != GTK_INVALID_LIST_POSITION)
    {
      g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, at);
      gtk_tree_list_row_set_expanded (row, TRUE);
    }
}

static GListModel *
children_of (gpointer item, gpointer data)
{
  GListModel *children = fp_thing_node_children (item);

  (void) data;
  return children != NULL ? g_object_ref (children) : NULL;
}

/* --- what is chosen ------------------------------------------------------- */

static void
show_chosen (FpThingsList *self)
{
  g_autoptr (GtkBitset) selected = NULL, all = NULL;
  guint n;

  if (self->choosing)
    return;
  self->showing = TRUE;
  for (const char *const *id = fp_document_chosen_all (self->document); *id != NULL; id++)
    if (find_id (self, *id) == GTK_INVALID_LIST_POSITION)
      fp_things_list_unfold_to (self, fp_things_tree_find (self->tree, *id));
  n = n_rows (self);
  selected = gtk_bitset_new_empty ();
  all = gtk_bitset_new_range (0, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, i);
      const char *id = fp_thing_node_id (fp_things_list_node (row));

      if (id != NULL && fp_document_is_chosen (self->document, id))
        gtk_bitset_add (selected, i);
    }
  gtk_selection_model_set_selection (self->selection, selected, all);
  self->showing = FALSE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && fp_document_chosen (self->document) != NULL)
    fp_column_view_scroll_to (self->view, find_id (self, fp_document_chosen (self->document)));
}

static void
add_if_new (GPtrArray *ids, const char *id)
{
  if (!g_ptr_array_find_with_equal_func (ids, id, g_str_equal, NULL))
    g_ptr_array_add (ids, (gpointer) id);
}

/* Those that were chosen before keep their order: the last one is the one in mind. */
static void
on_selection (FpThingsList *self)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_autoptr (GtkBitset) selected = NULL;
  g_autoptr (GHashTable) now = g_hash_table_new (g_str_hash, g_str_equal);
  GtkBitsetIter iter;
  guint i;

  if (self->showing || self->document == NULL)
    return;
  selected = gtk_selection_model_get_selection (self->selection);
  for (gboolean more = gtk_bitset_iter_init_first (&iter, selected, &i); more; more = gtk_bitset_iter_next (&iter, &i))
    {
      g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, i);
      const char *id = fp_thing_node_id (fp_things_list_node (row));

      if (id != NULL)
        g_hash_table_add (now, (gpointer) id);
    }
  for (const char *const *id = fp_document_chosen_all (self->document); *id != NULL; id++)
    if (g_hash_table_contains (now, *id))
      g_ptr_array_add (ids, (gpointer) *id);
  if (ids->len < g_hash_table_size (now))
    for (gboolean more = gtk_bitset_iter_init_first (&iter, selected, &i); more; more = gtk_bitset_iter_next (&iter, &i))
      {
        g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, i);

        if (fp_thing_node_id (fp_things_list_node (row)) != NULL)
          add_if_new (ids, fp_thing_node_id (fp_things_list_node (row)));
      }
  g_ptr_array_add (ids, NULL);
  self->choosing = TRUE;
  fp_document_choose_all (self->document, (const char *const *) ids->pdata);
  self->choosing = FALSE;
}

gboolean
fp_things_list_is_choosing (FpThingsList *self)
{
  return self->choosing;
}

static void
on_activate (FpThingsList *self, guint at)
{
  g_autoptr (GtkTreeListRow) row = fp_things_list_row (self, at);
  const char *id = row != NULL ? fp_thing_node_id (fp_things_list_node (row)) : NULL;

  if (id == NULL)
    {
      if (row != NULL)
        gtk_tree_list_row_set_expanded (row, !gtk_tree_list_row_get_expanded (row));
      return;
    }
  if (!fp_document_is_chosen (self->document, id))
    fp_document_choose (self->document, id);
  g_signal_emit (self, fp_things_list_activated, 0);
}

/* --- columns -------------------------------------------------------------- */

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, FpThingsList *self)
{
  const FpColumn column = (FpColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  GtkWidget *cell = fp_thing_cell_new (column, self->wide), *expander;

  g_signal_connect (cell, "leave", G_CALLBACK (fp_things_list_cell_left), self);
  if (column != FP_COLUMN_NAME)
    {
      gtk_list_item_set_child (item, cell);
      return;
    }
  expander = gtk_tree_expander_new ();
  /* The row has the focus, and Left and Right fold it: see on_key(). */
  gtk_widget_set_focusable (expander, FALSE);
  gtk_tree_expander_set_child (GTK_TREE_EXPANDER (expander), cell);
  gtk_list_item_set_child (item, expander);
}

static FpThingCell *
cell_in (GtkListItem *item)
{
  GtkWidget *child = gtk_list_item_get_child (item);

  return FP_THING_CELL (GTK_IS_TREE_EXPANDER (child) ? gtk_tree_expander_get_child (GTK_TREE_EXPANDER (child)) : child);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item, FpThingsList *self)
{
  GtkTreeListRow *row = gtk_list_item_get_item (item);
  GtkWidget *child = gtk_list_item_get_child (item);

  (void) factory;
  if (GTK_IS_TREE_EXPANDER (child))
    gtk_tree_expander_set_list_row (GTK_TREE_EXPANDER (child), row);
  fp_thing_cell_bind (cell_in (item), self->document, fp_things_list_node (row));
}

static void
on_unbind (GtkSignalListItemFactory *factory, GtkListItem *item, FpThingsList *self)
{
  GtkWidget *child = gtk_list_item_get_child (item);

  (void) factory, (void) self;
  fp_thing_cell_bind (cell_in (item), NULL, NULL);
  if (GTK_IS_TREE_EXPANDER (child))
    gtk_tree_expander_set_list_row (GTK_TREE_EXPANDER (child), NULL);
}

static int
compare_nodes (gconstpointer a, gconstpointer b, gpointer column)
{
  return fp_thing_node_compare ((gpointer) a, (gpointer) b, (FpColumn) GPOINTER_TO_INT (column));
}

static void
add_column (FpThingsList *self, FpColumn column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *c;

  g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER (column));
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), self);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (on_unbind), self);
  c = gtk_column_view_column_new (fp_column_title (column), factory);
  gtk_column_view_column_set_expand (c, column == FP_COLUMN_NAME);
  gtk_column_view_column_set_resizable (c, self->wide);
  self->sorter[column] = GTK_SORTER (gtk_custom_sorter_new (compare_nodes, GINT_TO_POINTER (column), NULL));
  gtk_column_view_column_set_sorter (c, self->sorter[column]);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), c);
  self->column[column] = c;
}

void
fp_things_list_sort (FpThingsList *self, const char *order)
{
  GtkColumnView *view = GTK_COLUMN_VIEW (self->view);

  gtk_column_view_sort_by_column (view, NULL, GTK_SORT_ASCENDING);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (self->column[c] != NULL && g_ascii_strcasecmp (fp_column_title ((FpColumn) c), order) == 0)
      gtk_column_view_sort_by_column (view, self->column[c], GTK_SORT_ASCENDING);
}

/* --- showing -------------------------------------------------------------- */

static void
show (FpThingsList *self)
{
  if (fp_document_is_previewing (self->document))
    return;
  self->showing = TRUE; /* what goes was not put away by a person */
  if (fp_things_tree_update (self->tree, self->document))
    for (guint c = 0; c < FP_N_COLUMNS; c++)
      if (self->sorter[c] != NULL)
        gtk_sorter_changed (self->sorter[c], GTK_SORTER_CHANGE_DIFFERENT);
  self->showing = FALSE;
  show_chosen (self);
}

void
fp_things_list_set_document (FpThingsList *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->document != document)
    {
      self->showing = TRUE;
      fp_things_tree_clear (self->tree);
      self->showing = FALSE;
    }
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (show_chosen), self);
  show (self);
}

/* --- the widget ----------------------------------------------------------- */

static void
set_model (FpThingsList *self)
{
  GtkColumnView *view = GTK_COLUMN_VIEW (self->view);
  GtkTreeListRowSorter *sorter = gtk_tree_list_row_sorter_new (g_object_ref (gtk_column_view_get_sorter (view)));
  GtkSortListModel *sorted;

  self->rows = gtk_tree_list_model_new (g_object_ref (fp_things_tree_roots (self->tree)), FALSE, TRUE, children_of, NULL,
                                        NULL);
  sorted = gtk_sort_list_model_new (g_object_ref (G_LIST_MODEL (self->rows)), GTK_SORTER (sorter));
  self->selection = GTK_SELECTION_MODEL (gtk_multi_selection_new (G_LIST_MODEL (sorted)));
  gtk_column_view_set_model (view, self->selection);
  g_signal_connect_swapped (self->selection, "selection-changed", G_CALLBACK (on_selection), self);
}

static void
fp_things_list_constructed (GObject *object)
{
  FpThingsList *self = FP_THINGS_LIST (object);
  static const FpColumn narrow[] = { FP_COLUMN_NAME, FP_COLUMN_STANDING, FP_COLUMN_LEVEL };
  GtkWidget *scroller = gtk_scrolled_window_new ();

  G_OBJECT_CLASS (fp_things_list_parent_class)->constructed (object);
  for (guint c = 0; c < (self->wide ? (guint) FP_N_COLUMNS : G_N_ELEMENTS (narrow)); c++)
    add_column (self, self->wide ? (FpColumn) c : narrow[c]);
  set_model (self);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (on_activate), self);
  fp_things_list_add_keys (self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->view);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), self->wide ? GTK_POLICY_AUTOMATIC : GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}

static void
fp_things_list_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  (void) id, (void) pspec;
  FP_THINGS_LIST (object)->wide = g_value_get_boolean (value);
}

static void
fp_things_list_dispose (GObject *object)
{
  FpThingsList *self = FP_THINGS_LIST (object);
  GtkWidget *child;

  fp_things_list_set_document (self, NULL);
  self->showing = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->view = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    g_clear_object (&self->sorter[c]);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    g_clear_object (&self->column[c]);
  G_OBJECT_CLASS (fp_things_list_parent_class)->dispose (object);
}

static void
fp_things_list_finalize (GObject *object)
{
  FpThingsList *self = FP_THINGS_LIST (object);

  fp_things_tree_free (self->tree);
  g_free (self->wanted);
  G_OBJECT_CLASS (fp_things_list_parent_class)->finalize (object);
}

static void
fp_things_list_class_init (FpThingsListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->constructed = fp_things_list_constructed;
  object_class->set_property = fp_things_list_set_property;
  object_class->dispose = fp_things_list_dispose;
  object_class->finalize = fp_things_list_finalize;
  g_object_class_install_property (object_class, PROP_WIDE,
                                   g_param_spec_boolean ("wide", "Wide", "All columns", FALSE,
                                                         G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY
                                                         | G_PARAM_STATIC_STRINGS));
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "things");
  fp_things_list_activated = g_signal_new ("activated", FP_TYPE_THINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
fp_things_list_init (FpThingsList *self)
{
  self->tree = fp_things_tree_new ();
  self->view = gtk_column_view_new (NULL);
  gtk_widget_add_css_class (self->view, "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, "Things", -1);
}

GtkWidget *
fp_things_list_new (gboolean wide)
{
  return g_object_new (FP_TYPE_THINGS_LIST, "wide", wide, NULL);
}
