/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-tree.h - all things of a scene as a tree of what stands on what, kept up to date
 *
 * Two groups, furnishings and building, and in each the things in the order
 * of things.h.  A thing keeps its node as long as it is there, and lists
 * change only where they differ: so whoever shows them keeps place, focus
 * and what is folded.  Needs no display.
 */
#pragma once

#include "document.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum
{
  FP_COLUMN_NAME, FP_COLUMN_STANDING, FP_COLUMN_LEVEL, FP_COLUMN_HEIGHT, FP_COLUMN_ACROSS, FP_COLUMN_ALONG,
  FP_COLUMN_TURN, FP_COLUMN_SIZE, FP_N_COLUMNS
} FpColumn;

const char *fp_column_title (FpColumn column); /* "Name", "Level" …         */
/* For a screen reader and a tooltip. */
const char *fp_column_about (FpColumn column);

/* --- a node: a thing, or a group without an id ---------------------------- */

#define FP_TYPE_THING_NODE (fp_thing_node_get_type ())
G_DECLARE_FINAL_TYPE (FpThingNode, fp_thing_node, FP, THING_NODE, GObject) /* signal "changed": it reads otherwise */

const char *fp_thing_node_id       (FpThingNode *self);  /* NULL: a group    */
const char *fp_thing_node_text     (FpThingNode *self, FpColumn column); /* never NULL */
gboolean    fp_thing_node_can_type (FpThingNode *self, FpColumn column);
gboolean    fp_thing_node_is_gone  (FpThingNode *self);  /* removed in this alternative */
const char *fp_thing_node_speech   (FpThingNode *self);  /* the whole row in words */
GListModel *fp_thing_node_children (FpThingNode *self);  /* of FpThingNode; NULL: nothing stands on it */
/* As a column sorts them: numbers by size, what has none last. */
int         fp_thing_node_compare  (FpThingNode *a, FpThingNode *b, FpColumn column);

/* --- the tree ------------------------------------------------------------- */

typedef struct _FpThingsTree FpThingsTree;
FpThingsTree *fp_things_tree_new   (void);
void          fp_things_tree_free  (FpThingsTree *self);
GListModel   *fp_things_tree_roots (FpThingsTree *self);  /* of FpThingNode; borrowed */
FpThingNode  *fp_things_tree_find  (FpThingsTree *self, const char *id); /* borrowed; NULL */
FpThingNode  *fp_things_tree_parent (FpThingsTree *self, FpThingNode *node); /* borrowed; NULL: a group */
guint         fp_things_tree_count (FpThingsTree *self);  /* of things       */

/* Whether any row reads otherwise, or was added, moved or taken away. */
gboolean      fp_things_tree_update (FpThingsTree *self, FpDocument *document);
void          fp_things_tree_clear (FpThingsTree *self);

/* --- typing into it ------------------------------------------------------- */

/* What stands in the field to begin with; owned by the caller. */
char    *fp_column_typed (FpDocument *document, const char *id, FpColumn column);
/* As in the fields beside the board: one step of the history, the same words for what is wrong. */
gboolean fp_column_enter (FpDocument *document, const char *id, FpColumn column, const char *text, GError **error);

G_END_DECLS
