/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-tree.h - all things of a scene as a tree of what stands on what, kept up to date
 *
 * Two groups, furnishings and building, and in each the things in the order
 * of things.h.  A thing keeps its node as long as it is there, and lists
 * change only where they differ: so whoever shows them keeps place, focus
 * and what is folded.  Needs no display.
 */
#pragma once

#include "thing-node.h"

G_BEGIN_DECLS

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

G_END_DECLS
