/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-tree-private.h"

#include "things.h"

struct _FpThingsTree
{
  GListStore  *roots;
  FpThingNode *group[2];  /* owned: furnishings, building                    */
  GHashTable  *by_id;     /* of FpThingNode (owned)                          */
};

FpThingsTree *
fp_things_tree_new (void)
{
  FpThingsTree *self = g_new0 (FpThingsTree, 1);

  self->roots = g_list_store_new (FP_TYPE_THING_NODE);
  self->by_id = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_object_unref);
  self->group[0] = fp_thing_node_new_group ("Furnishings");
  self->group[1] = fp_thing_node_new_group ("Building");
  return self;
}

void
fp_things_tree_clear (FpThingsTree *self)
{
  g_list_store_remove_all (self->roots);
  for (guint g = 0; g < 2; g++)
    {
      g_list_store_remove_all (self->group[g]->children);
      self->group[g]->was_leaf = TRUE;
    }
  g_hash_table_remove_all (self->by_id);
}

void
fp_things_tree_free (FpThingsTree *self)
{
  fp_things_tree_clear (self);
  g_hash_table_unref (self->by_id);
  g_object_unref (self->group[0]);
  g_object_unref (self->group[1]);
  g_object_unref (self->roots);
  g_free (self);
}

GListModel *
fp_things_tree_roots (FpThingsTree *self)
{
  return G_LIST_MODEL (self->roots);
}

FpThingNode *
fp_things_tree_find (FpThingsTree *self, const char *id)
{
  return id != NULL ? g_hash_table_lookup (self->by_id, id) : NULL;
}

FpThingNode *
fp_things_tree_parent (FpThingsTree *self, FpThingNode *node)
{
  (void) self;
  return node->parent;
}

guint
fp_things_tree_count (FpThingsTree *self)
{
  return g_hash_table_size (self->by_id);
}

/* --- keeping it up to date ------------------------------------------------------ */

static FpThingNode *
node_for (FpThingsTree *self, const char *id)
{
  FpThingNode *node = g_hash_table_lookup (self->by_id, id);

  if (node == NULL)
    {
      node = g_object_new (FP_TYPE_THING_NODE, NULL);
      node->id = g_strdup (id);
      g_hash_table_insert (self->by_id, node->id, node);
    }
  return node;
}

static gboolean
is_leaf (FpThingNode *node)
{
  return g_list_model_get_n_items (G_LIST_MODEL (node->children)) == 0;
}

/* One that begins or ceases to carry others is put in anew: whoever shows it asks only then whether it can be folded. */
static gboolean
stays (GListStore *store, guint at, FpThingNode *node)
{
  g_autoptr (FpThingNode) there = g_list_model_get_item (G_LIST_MODEL (store), at);

  return there == node && node->was_leaf == is_leaf (node);
}

static gboolean
set_list (GListStore *store, GPtrArray *wanted)
{
  const guint old = g_list_model_get_n_items (G_LIST_MODEL (store)), new = wanted->len, least = MIN (old, new);
  guint before = 0, after = 0;

  while (before < least && stays (store, before, g_ptr_array_index (wanted, before)))
    before++;
  while (after < least - before && stays (store, old - 1 - after, g_ptr_array_index (wanted, new - 1 - after)))
    after++;
  for (guint i = 0; i < new; i++)
    {
      FpThingNode *node = g_ptr_array_index (wanted, i);
      node->was_leaf = is_leaf (node);
    }
  if (old == new && before == old)
    return FALSE;
  g_list_store_splice (store, before, old - before - after, wanted->pdata + before, new - before - after);
  return TRUE;
}

typedef struct
{
  FpThingsTree *tree;
  FpThingReading reading;
  GArray       *things;
  guint         at;        /* the next thing                                  */
  gboolean      any;
} Update;

static const FpPlaced *
placed_at (const Update *u, guint i)
{
  return &u->reading.all[g_array_index (u->things, FpThing, i).placed];
}

/* Those of one depth from here on, with all that stands on them; what stands on them is settled first.  What was there
 * before reads as it did until all lists are set: whoever sorts one by what its rows read merges new rows into old ones. */
static void
update_list (Update *u, FpThingNode *parent, guint depth, gboolean building)
{
  g_autoptr (GPtrArray) wanted = g_ptr_array_new ();

  while (u->at < u->things->len && g_array_index (u->things, FpThing, u->at).depth == depth)
    {
      const FpPlaced *placed = placed_at (u, u->at);
      const char *id = fp_item_id (placed->item);
      const gboolean is_new = g_hash_table_lookup (u->tree->by_id, id) == NULL;
      FpThingNode *node;

      if (depth == 0 && ((fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0) != building)
        break;
      node = node_for (u->tree, id);
      node->seen = TRUE;
      node->parent = parent;
      g_ptr_array_add (wanted, node);
      u->at++;
      update_list (u, node, depth + 1, building);
      if (is_new)
        u->any |= fp_thing_node_read (node, &u->reading, placed);
    }
  u->any |= set_list (parent->children, wanted);
}

static void
read_all (Update *u)
{
  for (guint i = 0; i < u->things->len; i++)
    {
      const FpPlaced *placed = placed_at (u, i);
      FpThingNode *node = g_hash_table_lookup (u->tree->by_id, fp_item_id (placed->item));

      if (!fp_thing_node_read (node, &u->reading, placed))
        continue;
      u->any = TRUE;
      fp_thing_node_changed (node);
    }
}

static gboolean
was_not_seen (gpointer id, gpointer value, gpointer data)
{
  FpThingNode *node = value;
  const gboolean gone = !node->seen;

  (void) id, (void) data;
  node->seen = FALSE;
  return gone;
}

gboolean
fp_things_tree_update (FpThingsTree *self, FpDocument *document)
{
  const FpScene *scene = fp_document_scene (document);
  g_autoptr (GPtrArray) groups = g_ptr_array_new ();
  g_autoptr (GArray) things = fp_things_new (scene);
  Update u = { .tree = self, .things = things };

  u.reading = (FpThingReading) { document, scene, fp_scene_placed (scene, NULL),
                                 fp_project_brief (fp_scene_project (scene))->units };
  for (guint g = 0; g < 2; g++)
    {
      update_list (&u, self->group[g], 0, g == 1);
      if (!is_leaf (self->group[g]))
        g_ptr_array_add (groups, self->group[g]);
    }
  u.any |= set_list (self->roots, groups);
  read_all (&u);
  g_hash_table_foreach_remove (self->by_id, was_not_seen, NULL);
  return u.any;
}
