/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-list-private.h - what the files of the list of things share */
#pragma once

#include "thing-cell.h"
#include "things-list.h"

G_BEGIN_DECLS

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
  FpColumn          at;        /* the column that was clicked last: F2 types in it */
  gpointer          wanted_from; /* what had the focus when that was asked, to be compared only */
  guint             wanted_frames, wanted_source;
  gboolean          showing;   /* the document's choice: not one of a person */
  gboolean          choosing;
};

extern guint fp_things_list_activated; /* the signal */

/* --- things-list.c --- */
GtkTreeListRow *fp_things_list_row  (FpThingsList *self, guint at); /* owned by the caller; NULL */
FpThingNode    *fp_things_list_node (GtkTreeListRow *row);          /* borrowed: the tree holds it */
guint           fp_things_list_find (FpThingsList *self, FpThingNode *node); /* GTK_INVALID_LIST_POSITION: folded away */
void            fp_things_list_unfold_to (FpThingsList *self, FpThingNode *node);

/* --- things-list-keys.c --- */
void            fp_things_list_add_keys  (FpThingsList *self);
void            fp_things_list_cell_left (FpThingCell *cell, FpThingNode *node, int way, FpThingsList *self);

G_END_DECLS
