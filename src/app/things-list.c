/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-list.h"

#include "compat-4-8.h"
#include "thing-cell.h"
#include "things-tree.h"

#include <string.h>

#define ROW_WAIT 8 /* frames until a row that was scrolled to is there */

struct _FpThingsList
{
  GtkWidget         parent_instance;
  gboolean          wide;
  FpDocument       *document;
  FpThingsTree     *tree;
  GtkWidget        *view;
  GtkColumnViewColumn *column[FP_N_COLUMNS];
  GtkSorter        *sorter[FP_N_COLUMNS];
  GtkTreeListModel *rows;
  GtkSelectionModel *selection;
  char             *wanted;    /* id of the row that is to have the focus when it is there */
  guint             wanted_frames, wanted_source;
  gboolean          showing;   /* the document's choice: not one of a person */
  gboolean          choosing;
};

enum { PROP_WIDE = 1 };

G_DEFINE_FINAL_TYPE (FpThingsList, fp_things_list, GTK_TYPE_WIDGET)

static guint activated_signal;

/* --- rows ----------------------------------------------------------------- */

static guint
n_rows (FpThingsList *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->selection));
}

static GtkTreeListRow *
row_at (FpThingsList *self, guint i)
{
  return g_list_model_get_item (G_LIST_MODEL (self->selection), i);
}

/* Borrowed: the tree holds it. */
static FpThingNode *
node_of (GtkTreeListRow *row)
{
  g_autoptr (FpThingNode) node = row != NULL ? gtk_tree_list_row_get_item (row) : NULL;

  return node;
}

static guint
find_node (FpThingsList *self, FpThingNode *node)
{
  const guint n = n_rows (self);

  for (guint i = 0; node != NULL && i < n; i++)
    {
      g_autoptr (GtkTreeListRow) row = row_at (self, i);

      if (node_of (row) == node)
        return i;
    }
  return GTK_INVALID_LIST_POSITION;
}

static guint
find_id (FpThingsList *self, const char *id)
{
  return find_node (self, fp_things_tree_find (self->tree, id));
}

/* What is chosen is not left within a fold. */
static void
unfold_to (FpThingsList *self, FpThingNode *node)
{
  FpThingNode *parent = node != NULL ? fp_things_tree_parent (self->tree, node) : NULL;
  guint at;

  if (parent == NULL)
    return;
  unfold_to (self, parent);
  at = find_node (self, parent);
  if (at != GTK_INVALID_LIST_POSITION)
    {
      g_autoptr (GtkTreeListRow) row = row_at (self, at);
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
      unfold_to (self, fp_things_tree_find (self->tree, *id));
  n = n_rows (self);
  selected = gtk_bitset_new_empty ();
  all = gtk_bitset_new_range (0, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GtkTreeListRow) row = row_at (self, i);
      const char *id = fp_thing_node_id (node_of (row));

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
      g_autoptr (GtkTreeListRow) row = row_at (self, i);
      const char *id = fp_thing_node_id (node_of (row));

      if (id != NULL)
        g_hash_table_add (now, (gpointer) id);
    }
  for (const char *const *id = fp_document_chosen_all (self->document); *id != NULL; id++)
    if (g_hash_table_contains (now, *id))
      g_ptr_array_add (ids, (gpointer) *id);
  if (ids->len < g_hash_table_size (now))
    for (gboolean more = gtk_bitset_iter_init_first (&iter, selected, &i); more; more = gtk_bitset_iter_next (&iter, &i))
      {
        g_autoptr (GtkTreeListRow) row = row_at (self, i);

        if (fp_thing_node_id (node_of (row)) != NULL)
          add_if_new (ids, fp_thing_node_id (node_of (row)));
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
  g_autoptr (GtkTreeListRow) row = row_at (self, at);
  const char *id = row != NULL ? fp_thing_node_id (node_of (row)) : NULL;

  if (id == NULL)
    {
      if (row != NULL)
        gtk_tree_list_row_set_expanded (row, !gtk_tree_list_row_get_expanded (row));
      return;
    }
  if (!fp_document_is_chosen (self->document, id))
    fp_document_choose (self->document, id);
  g_signal_emit (self, activated_signal, 0);
}

/* --- the row that has the focus ------------------------------------------- */

static FpThingCell *
cell_below (GtkWidget *top, FpThingNode *node, FpColumn column)
{
  if (FP_IS_THING_CELL (top))
    return fp_thing_cell_column (FP_THING_CELL (top)) == column && gtk_widget_get_mapped (top)
           && (node == NULL || fp_thing_cell_node (FP_THING_CELL (top)) == node) ? FP_THING_CELL (top) : NULL;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      FpThingCell *found = cell_below (w, node, column);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static FpThingCell *
cell_of_focus (FpThingsList *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, self->view))
    return NULL;
  focus = fp_list_row_of (focus);
  return GTK_IS_LIST_VIEW (gtk_widget_get_parent (focus)) ? cell_below (focus, NULL, FP_COLUMN_NAME) : NULL;
}

static gboolean
focus_wanted (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  FpThingsList *self = FP_THINGS_LIST (widget);
  FpThingNode *node = fp_things_tree_find (self->tree, self->wanted);
  FpThingCell *cell = node != NULL ? cell_below (self->view, node, FP_COLUMN_NAME) : NULL;

  (void) clock, (void) data;
  if (cell == NULL && node != NULL && self->wanted_frames-- > 0)
    return G_SOURCE_CONTINUE;
  if (cell != NULL)
    gtk_widget_grab_focus (fp_list_row_of (GTK_WIDGET (cell)));
  else
    gtk_widget_grab_focus (self->view);
  self->wanted_source = 0;
  return G_SOURCE_REMOVE;
}

void
fp_things_list_focus (FpThingsList *self, const char *id)
{
  FpThingNode *node = fp_things_tree_find (self->tree, id);

  g_free (self->wanted);
  self->wanted = g_strdup (id);
  self->wanted_frames = ROW_WAIT;
  unfold_to (self, node);
  fp_column_view_scroll_to (self->view, node != NULL ? find_node (self, node) : 0);
  if (self->wanted_source == 0)
    self->wanted_source = gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_wanted, NULL, NULL);
  gtk_widget_grab_focus (self->view);
}

/* --- keys and clicks ------------------------------------------------------ */

/* Right unfolds; Left folds, or goes to what the thing stands on. */
static gboolean
fold (FpThingsList *self, FpThingNode *node, gboolean unfolded)
{
  const guint at = find_node (self, node);
  g_autoptr (GtkTreeListRow) row = at != GTK_INVALID_LIST_POSITION ? row_at (self, at) : NULL;
  FpThingNode *parent = fp_things_tree_parent (self->tree, node);

  if (row == NULL)
    return FALSE;
  if (gtk_tree_list_row_is_expandable (row) && gtk_tree_list_row_get_expanded (row) != unfolded)
    gtk_tree_list_row_set_expanded (row, unfolded);
  else if (!unfolded && parent != NULL)
    {
      FpThingCell *cell = cell_below (self->view, parent, FP_COLUMN_NAME);

      if (cell != NULL)
        gtk_widget_grab_focus (fp_list_row_of (GTK_WIDGET (cell)));
    }
  return TRUE;
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpThingsList *self)
{
  FpThingCell *cell = cell_of_focus (self);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  (void) keys, (void) code;
  if (cell == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0
      || GTK_IS_TEXT (gtk_root_get_focus (root)))
    return FALSE;
  switch (key)
    {
    case GDK_KEY_F2:
      fp_thing_cell_type (cell);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_Right:
      return fold (self, fp_thing_cell_node (cell), key == GDK_KEY_Right);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
      return gtk_widget_activate_action (GTK_WIDGET (self), "win.remove", NULL);
    default:
      return FALSE;
    }
}

/* On to the next cell of the row that can be typed in. */
static void
on_cell_leave (FpThingCell *cell, FpThingNode *node, int way, FpThingsList *self)
{
  int c = (int) fp_thing_cell_column (cell);

  for (c += way; way != 0 && c >= 0 && c < FP_N_COLUMNS; c += way)
    if (self->column[c] != NULL && fp_thing_node_can_type (node, (FpColumn) c))
      {
        FpThingCell *next = cell_below (self->view, node, (FpColumn) c);

        if (next != NULL)
          {
            fp_thing_cell_type (next);
            return;
          }
      }
  fp_things_list_focus (self, fp_thing_node_id (node));
}

static gboolean
activate_later (gpointer data)
{
  FpThingsList *self = data;

  if (self->document != NULL && fp_document_n_chosen (self->document) == 1)
    g_signal_emit (self, activated_signal, 0);
  return G_SOURCE_REMOVE;
}

/* Seen before the rows see it, and left to them: they choose. */
static gboolean
on_event (GtkEventControllerLegacy *controller, GdkEvent *event, FpThingsList *self)
{
  GtkWidget *view = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller)), *under;
  const GdkModifierType more = GDK_CONTROL_MASK | GDK_SHIFT_MASK;
  double x, y, sx, sy;
  GtkNative *native = gtk_widget_get_native (view);

  if (gdk_event_get_event_type (event) != GDK_BUTTON_RELEASE || gdk_button_event_get_button (event) != 1
      || (gdk_event_get_modifier_state (event) & more) != 0 || !gdk_event_get_position (event, &x, &y))
    return FALSE;
  gtk_native_get_surface_transform (native, &sx, &sy);
  if (!gtk_widget_translate_coordinates (GTK_WIDGET (native), view, x - sx, y - sy, &x, &y))
    return FALSE;
  under = gtk_widget_pick (view, x, y, GTK_PICK_DEFAULT);
  if (under != NULL && !FP_IS_THING_CELL (under))
    under = gtk_widget_get_ancestor (under, FP_TYPE_THING_CELL);
  if (under != NULL && fp_thing_node_id (fp_thing_cell_node (FP_THING_CELL (under))) != NULL)
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, activate_later, g_object_ref (self), g_object_unref);
  return FALSE;
}

/* --- columns -------------------------------------------------------------- */

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, FpThingsList *self)
{
  const FpColumn column = (FpColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  GtkWidget *cell = fp_thing_cell_new (column, self->wide), *expander;

  g_signal_connect (cell, "leave", G_CALLBACK (on_cell_leave), self);
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
  fp_thing_cell_bind (cell_in (item), self->document, node_of (row));
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
  GtkEventController *keys = gtk_event_controller_key_new (), *events = gtk_event_controller_legacy_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  G_OBJECT_CLASS (fp_things_list_parent_class)->constructed (object);
  for (guint c = 0; c < (self->wide ? (guint) FP_N_COLUMNS : G_N_ELEMENTS (narrow)); c++)
    add_column (self, self->wide ? (FpColumn) c : narrow[c]);
  set_model (self);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (on_activate), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (self->view, keys);
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  if (!self->wide)
    {
      g_signal_connect (events, "event", G_CALLBACK (on_event), self);
      gtk_widget_add_controller (self->view, g_object_ref (events));
    }
  g_object_unref (events);
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
  activated_signal = g_signal_new ("activated", FP_TYPE_THINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
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
