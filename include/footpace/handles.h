/* SPDX-License-Identifier: GPL-3.0-or-later */
/* handles.h - what of a thing can be pulled: the corners of its outline, or its sides
 *
 * On the plan, church coordinates, mm.  Each edit returns the next project,
 * or NULL with an error that can be shown; none changes its arguments.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef enum
{
  FP_HANDLE_CORNER, /* of an outline or a run of wall                         */
  FP_HANDLE_SIDE    /* of a furnishing, as long or as deep as a parameter says */
} FpHandleSort;

typedef struct
{
  FpHandleSort sort;
  FpPoint      at;
  guint        corner;  /* FP_HANDLE_CORNER: its number, from 0               */
  const char  *param;   /* FP_HANDLE_SIDE: id of the parameter, of the kind   */
  FpPoint      way;     /* FP_HANDLE_SIDE: outwards, of length 1              */
  double       reach;   /* FP_HANDLE_SIDE: from the opposite side             */
} FpHandle;

/* (element-type FpHandle), owned by the caller; empty where nothing can be pulled. */
GArray    *fp_handles_new   (const FpScene *scene, const char *id);

/* Which coordinates it moves in: 1: x, 2: y; 0: neither alone, as a side of a thing that is turned. */
guint      fp_handle_ways   (const FpHandle *self);

/* "Corner 3 of Chancel floor", "Length of the mensa of High altar"; owned by the caller. */
char      *fp_handle_tells  (const FpHandle *self, const FpScene *scene, const char *id);

/**
 * fp_handle_move:
 *
 * A corner is moved; openings in a wall stay where they are, as far as its sides
 * allow.  A side is pulled: the opposite one stays, unless the thing stands on the
 * axis of the church: then it stays there, and both are pulled alike.
 */
FpProject *fp_handle_move   (const FpScene *scene, const char *id, const FpHandle *handle, FpVec3 by, GError **error);

/* --- corners ---------------------------------------------------------------- */

/* The side of the outline within @reach of the point, from 0: it follows the corner of that number; -1. */
int        fp_corner_side   (const FpScene *scene, const char *id, FpPoint at, double reach);

/* The point of that side that is nearest to @at, whole millimetres from the corner where the side begins. */
FpPoint    fp_corner_on_side (const FpScene *scene, const char *id, guint side, FpPoint at);

/* A further corner in that side. */
FpProject *fp_corner_add    (const FpScene *scene, const char *id, guint side, FpPoint at, GError **error);
FpProject *fp_corner_remove (const FpScene *scene, const char *id, guint corner, GError **error);

/* All of them anew, church coordinates. */
FpProject *fp_corners_set   (const FpScene *scene, const char *id, const FpPoint *corner, guint n, GError **error);

G_END_DECLS
