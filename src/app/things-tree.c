/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-tree.h"

#include "place-edit.h"
#include "things.h"
#include "typing.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* --- columns -------------------------------------------------------------- */

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
static const char *
param_of (const FpKind *kind, FpColumn column)
{
  static const char *const levels[] = { "level", "base" };

  if (column == FP_COLUMN_HEIGHT)
    return fp_kind_param_index (kind, "height") >= 0 ? "height" : NULL;
  for (guint i = 0; column == FP_COLUMN_LEVEL && i < G_N_ELEMENTS (levels); i++)
    if (fp_kind_param_index (kind, levels[i]) >= 0)
      return levels[i];
  return NULL;
}

static gboolean
is_place (FpColumn column)
{
  return column == FP_COLUMN_ACROSS || column == FP_COLUMN_ALONG || column == FP_COLUMN_TURN;
}

static FpPlaceField
field_of (FpColumn column)
{
  return column == FP_COLUMN_ACROSS ? FP_FIELD_ACROSS : column == FP_COLUMN_ALONG ? FP_FIELD_ALONG : FP_FIELD_TURN;
}

/* --- a node --------------------------------------------------------------- */

struct _FpThingNode
{
  GObject      parent_instance;
  char        *id, *speech;
  char        *text[FP_N_COLUMNS];
  double       value[FP_N_COLUMNS]; /* to sort by; NAN: none                  */
  guint        can_type;            /* 1 << FpColumn                          */
  gboolean     is_gone;
  GListStore  *children;
  FpThingNode *parent;              /* borrowed: it holds this one            */
  gboolean     was_leaf, seen;
};

G_DEFINE_FINAL_TYPE (FpThingNode, fp_thing_node, G_TYPE_OBJECT)

static guint changed_signal;

static void
fp_thing_node_finalize (GObject *object)
{
  FpThingNode *self = FP_THING_NODE (object);

  g_free (self->id);
  g_free (self->speech);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    g_free (self->text[c]);
  g_object_unref (self->children);
  G_OBJECT_CLASS (fp_thing_node_parent_class)->finalize (object);
}

static void
fp_thing_node_class_init (FpThingNodeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fp_thing_node_finalize;
  changed_signal = g_signal_new ("changed", FP_TYPE_THING_NODE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_thing_node_init (FpThingNode *self)
{
  self->children = g_list_store_new (FP_TYPE_THING_NODE);
  self->was_leaf = TRUE;
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    self->value[c] = NAN;
}

const char *
fp_thing_node_id (FpThingNode *self)
{
  return self->id;
}

const char *
fp_thing_node_text (FpThingNode *self, FpColumn column)
{
  return self->text[column] != NULL ? self->text[column] : "";
}

gboolean
fp_thing_node_can_type (FpThingNode *self, FpColumn column)
{
  return (self->can_type & 1u << column) != 0;
}

gboolean
fp_thing_node_is_gone (FpThingNode *self)
{
  return self->is_gone;
}

const char *
fp_thing_node_speech (FpThingNode *self)
{
  return self->speech;
}

GListModel *
fp_thing_node_children (FpThingNode *self)
{
  GListModel *children = G_LIST_MODEL (self->children);

  return g_list_model_get_n_items (children) > 0 ? children : NULL;
}

int
fp_thing_node_compare (FpThingNode *a, FpThingNode *b, FpColumn column)
{
  const double p = a->value[column], q = b->value[column];

  if (a->id == NULL || b->id == NULL)
    return 0;
  if (isnan (p) && isnan (q))
    return g_utf8_collate (fp_thing_node_text (a, column), fp_thing_node_text (b, column));
  if (isnan (p) || isnan (q))
    return isnan (p) ? 1 : -1;
  return p < q ? -1 : p > q;
}

/* --- what it reads -------------------------------------------------------- */

static void
take_text (FpThingNode *self, FpColumn column, char *text, gboolean *any)
{
  if (g_strcmp0 (self->text[column], text) == 0)
    {
      g_free (text);
      return;
    }
  g_free (self->text[column]);
  self->text[column] = text;
  *any = TRUE;
}

typedef struct
{
  FpDocument     *document;
  const FpScene  *scene;
  const FpPlaced *all;
  FpUnits         units;
} Reading;

static double
height_of (const FpPlaced *placed)
{
  const char *param = param_of (fp_item_kind (placed->item), FP_COLUMN_HEIGHT);

  return param != NULL ? fp_item_param (placed->item, param) : placed->extent.height;
}

static double
level_of (const FpPlaced *placed)
{
  const char *param = param_of (fp_item_kind (placed->item), FP_COLUMN_LEVEL);

  return param != NULL ? fp_item_param (placed->item, param) : placed->level;
}

static void
read_values (FpThingNode *self, const Reading *r, const FpPlaced *placed, gboolean own)
{
  const FpPlace place = own ? fp_place_now (r->document, placed) : placed->place;

  self->value[FP_COLUMN_LEVEL] = level_of (placed);
  self->value[FP_COLUMN_HEIGHT] = height_of (placed);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (is_place ((FpColumn) c))
      self->value[c] = fp_place_field_get (&place, field_of ((FpColumn) c));
  self->value[FP_COLUMN_SIZE] = fp_box_is_empty (&placed->plan) ? NAN
                                : (placed->plan.x1 - placed->plan.x0) * (placed->plan.y1 - placed->plan.y0);
}

static char *
size_text (const FpPlaced *placed, FpUnits units)
{
  g_autofree char *across = NULL, *along = NULL;

  if (fp_box_is_empty (&placed->plan))
    return g_strdup ("");
  across = fp_length_format (round (placed->plan.x1 - placed->plan.x0), units);
  along = fp_length_format (round (placed->plan.y1 - placed->plan.y0), units);
  return g_strdup_printf ("%s × %s", across, along);
}

static guint
what_can_be_typed (const FpPlaced *placed, gboolean own)
{
  const FpKind *kind = fp_item_kind (placed->item);
  guint mask = 1u << FP_COLUMN_NAME;

  if (placed->ghost)
    return 0;
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (param_of (kind, (FpColumn) c) != NULL || (own && is_place ((FpColumn) c)))
      mask |= 1u << c;
  return mask;
}

static void
read_speech (FpThingNode *self, const Reading *r, const FpPlaced *placed)
{
  g_autofree char *where = fp_thing_where (r->scene, placed, r->units);

  g_free (self->speech);
  self->speech = g_strdup_printf ("%s, %s, %s; across %s, along %s", fp_thing_node_text (self, FP_COLUMN_NAME),
                                  fp_thing_node_text (self, FP_COLUMN_STANDING), where,
                                  fp_thing_node_text (self, FP_COLUMN_ACROSS),
                                  fp_thing_node_text (self, FP_COLUMN_ALONG));
}

static gboolean
read_thing (FpThingNode *self, const Reading *r, const FpPlaced *placed)
{
  const gboolean own = fp_place_is_own (r->scene, placed);
  const guint can_type = what_can_be_typed (placed, own);
  gboolean any = can_type != self->can_type || self->is_gone != placed->ghost;

  read_values (self, r, placed, own);
  self->can_type = can_type;
  self->is_gone = placed->ghost;
  take_text (self, FP_COLUMN_NAME, g_strdup (fp_item_name (placed->item)), &any);
  take_text (self, FP_COLUMN_STANDING, g_strdup (fp_thing_standing (r->scene, placed)), &any);
  take_text (self, FP_COLUMN_LEVEL, fp_level_format (self->value[FP_COLUMN_LEVEL], r->units), &any);
  take_text (self, FP_COLUMN_HEIGHT, fp_length_format (self->value[FP_COLUMN_HEIGHT], r->units), &any);
  take_text (self, FP_COLUMN_SIZE, size_text (placed, r->units), &any);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (is_place ((FpColumn) c))
      take_text (self, (FpColumn) c, fp_typing_show (fp_place_field (field_of ((FpColumn) c)), self->value[c], r->units),
                 &any);
  if (any)
    read_speech (self, r, placed);
  return any;
}

/* --- the tree ------------------------------------------------------------- */

struct _FpThingsTree
{
  GListStore  *roots;
  FpThingNode *group[2];  /* owned: furnishings, building                    */
  GHashTable  *by_id;     /* of FpThingNode (owned)                          */
};

static FpThingNode *
group_new (const char *name)
{
  FpThingNode *node = g_object_new (FP_TYPE_THING_NODE, NULL);

  node->text[FP_COLUMN_NAME] = g_strdup (name);
  node->speech = g_strdup (name);
  return node;
}

FpThingsTree *
fp_things_tree_new (void)
{
  FpThingsTree *self = g_new0 (FpThingsTree, 1);

  self->roots = g_list_store_new (FP_TYPE_THING_NODE);
  self->by_id = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_object_unref);
  self->group[0] = group_new ("Furnishings");
  self->group[1] = group_new ("Building");
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

/* --- keeping it up to date ------------------------------------------------ */

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
  Reading       reading;
  GArray       *things;
  guint         at;        /* the next thing                                  */
  gboolean      any;
} Update;

/* Those of one depth from here on, with all that stands on them; what stands on them is settled first. */
static void
update_list (Update *u, FpThingNode *parent, guint depth, gboolean building)
{
  g_autoptr (GPtrArray) wanted = g_ptr_array_new ();

  while (u->at < u->things->len && g_array_index (u->things, FpThing, u->at).depth == depth)
    {
      const FpPlaced *placed = &u->reading.all[g_array_index (u->things, FpThing, u->at).placed];
      FpThingNode *node;

      if (depth == 0 && ((fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0) != building)
        break;
      node = node_for (u->tree, fp_item_id (placed->item));
      node->seen = TRUE;
      node->parent = parent;
      g_ptr_array_add (wanted, node);
      u->at++;
      update_list (u, node, depth + 1, building);
      if (read_thing (node, &u->reading, placed))
        {
          u->any = TRUE;
          g_signal_emit (node, changed_signal, 0);
        }
    }
  u->any |= set_list (parent->children, wanted);
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

  u.reading = (Reading) { document, scene, fp_scene_placed (scene, NULL), fp_project_brief (fp_scene_project (scene))->units };
  for (guint g = 0; g < 2; g++)
    {
      update_list (&u, self->group[g], 0, g == 1);
      if (!is_leaf (self->group[g]))
        g_ptr_array_add (groups, self->group[g]);
    }
  u.any |= set_list (self->roots, groups);
  g_hash_table_foreach_remove (self->by_id, was_not_seen, NULL);
  return u.any;
}

/* --- typing into it ------------------------------------------------------- */

char *
fp_column_typed (FpDocument *document, const char *id, FpColumn column)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  const FpUnits units = fp_project_brief (fp_document_project (document))->units;
  const char *param = placed != NULL ? param_of (fp_item_kind (placed->item), column) : NULL;
  double value;

  if (placed == NULL)
    return g_strdup ("");
  if (param != NULL)
    {
      const FpParam *p = fp_typing_param (placed, param, &value);
      return fp_typing_show (p, value, units);
    }
  if (is_place (column))
    {
      const FpPlace place = fp_place_now (document, placed);
      return fp_typing_show (fp_place_field (field_of (column)), fp_place_field_get (&place, field_of (column)), units);
    }
  return g_strdup (fp_item_name (placed->item));
}

gboolean
fp_column_enter (FpDocument *document, const char *id, FpColumn column, const char *text, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  const char *param = placed != NULL ? param_of (fp_item_kind (placed->item), column) : NULL;

  if (param != NULL)
    return fp_typing_enter (document, id, param, text, error);
  if (is_place (column))
    return fp_place_enter (document, id, field_of (column), text, error);
  return fp_name_enter (document, id, text, error);
}
