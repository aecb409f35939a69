/* SPDX-License-Identifier: GPL-3.0-or-later */
/* inspector-private.h - what the files of the inspector share */
#pragma once

#include "inspector.h"
#include "place-edit.h"

G_BEGIN_DECLS

struct _FpInspector
{
  GtkWidget   parent_instance;
  FpDocument *document;
  char       *built_for;   /* what the rows were built for: they are kept as long as they fit, so that typing and
                              focus survive every edit */

  GtkWidget  *title, *where, *survey, *survey_tools, *outline, *existing, *strike, *tells;
  GtkWidget  *measures, *place_title, *place, *corners, *corner_rows, *support;
  GtkWidget  *keep, *remove;
  GtkWidget  *name;        /* NULL: several are chosen                       */
  GPtrArray  *rows;        /* FpParamRow of the measures, in their order     */
  GtkWidget  *field[FP_N_FIELDS];
  GPtrArray  *corner;      /* FpParamRow: across, along, across, …           */
  GPtrArray  *supports;    /* ids in the order of the choices                */
  GtkWidget  *pointed;     /* (weak): the row that is pointed out; NULL      */
  gboolean    filling;
};

/* --- inspector.c --- */
void       fp_inspector_empty   (GtkWidget *box);
GtkWidget *fp_inspector_add_row (FpInspector *self, GtkWidget *box, const FpParam *param, GCallback entered);
void       fp_inspector_answer  (GtkWidget *row, gboolean taken, GError **error);

/* --- inspector-focus.c --- */
/* Rows are told apart by the names of their widgets, each in its box. */
typedef struct { GtkWidget *box; char *row; } FpInspectorSpot;
FpInspectorSpot fp_inspector_spot (FpInspector *self);       /* where the keyboard is; no box: in no row */
void            fp_inspector_return_to (FpInspector *self, FpInspectorSpot spot); /* takes what @spot owns */

/* --- inspector-several.c --- */
void       fp_inspector_show_several (FpInspector *self);

G_END_DECLS
