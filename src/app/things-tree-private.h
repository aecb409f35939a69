/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-tree-private.h - what the tree of things and its nodes share */
#pragma once

#include "things-tree.h"

G_BEGIN_DECLS

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

/* From what a node reads. */
typedef struct
{
  FpDocument     *document;
  const FpScene  *scene;
  const FpPlaced *all;
  FpUnits         units;
} FpThingReading;

/* A group of that name. */
FpThingNode *fp_thing_node_new_group (const char *name);
/* Whether it reads otherwise than before; nobody is told yet. */
gboolean     fp_thing_node_read      (FpThingNode *self, const FpThingReading *r, const FpPlaced *placed);
void         fp_thing_node_changed   (FpThingNode *self); /* tells it */

G_END_DECLS
