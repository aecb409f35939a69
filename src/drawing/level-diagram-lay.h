/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-lay.h - how the diagram of levels lies on paper, for the files that draw it */
#pragma once

#include "cover.h"
#include "level-diagram-private.h"

G_BEGIN_DECLS

/* All in paper mm. */
#define FP_LEVEL_TITLE    3.5
#define FP_LEVEL_LETTERS  2.5
#define FP_LEVEL_MARK_GAP 0.6 /* from a full triangle to its cross               */

#define FP_LEVEL_OBJECT   1u  /* owner of the lines that cover paper: see cover.h */

typedef struct
{
  const FpLevelDiagram *of;
  FpDrawing            *drawing;
  FpBox                 room;
  double                scale, heights;
  FpBox                 content;  /* of the diagram alone                       */
  FpPoint               origin;   /* where y = 0 and z = 0 lie                  */
  GPtrArray            *words;    /* lines                                      */
  GArray               *bands;    /* names of blocks                            */
  FpCover              *cover;
  guint                 number;   /* of the last level                          */
} FpLevelLay;

/* --- level-diagram-draw.c --- */
FpPoint  fp_level_point          (const FpLevelLay *l, double y, double z); /* of the church, mm */
void     fp_level_line           (const FpLevelLay *l, FpPen pen, FpPoint a, FpPoint b);
/* A row that stands lower than what is seen beside it has a floor line of its own. */
gboolean fp_level_has_floor_line (const FpLevelLay *l, const FpRowLevel *row);

/* --- level-diagram-key.c --- */
double   fp_level_key_height     (const FpLevelLay *l);
void     fp_level_key_draw       (const FpLevelLay *l);
/* A full triangle that points at the floor, and a cross under it. */
void     fp_level_not_below      (FpDrawing *drawing, FpPoint at, double half);

/* --- level-diagram-things.c --- */
void     fp_level_altar_draw     (const FpLevelLay *l); /* there is one */
void     fp_level_things_draw    (const FpLevelLay *l); /* rail and reredos */
/* After all that is measured: a name is read off the plan, too. */
void     fp_level_names_draw     (const FpLevelLay *l);

G_END_DECLS
