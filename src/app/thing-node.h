/* SPDX-License-Identifier: GPL-3.0-or-later */
/* thing-node.h - one row of the list of things: a thing, or a group without an id; needs no display */
#pragma once

#include "thing-column.h"

#include <gio/gio.h>

G_BEGIN_DECLS

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

G_END_DECLS
