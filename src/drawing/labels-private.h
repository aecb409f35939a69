/* SPDX-License-Identifier: GPL-3.0-or-later */
/* labels-private.h - what the files that letter a plan share; paper mm */
#pragma once

#include "annotation.h"
#include "label-words.h"

G_BEGIN_DECLS

/* Kept between a text and any line. */
#define FP_LABEL_CLEAR 0.5

/* From a text to its leader. */
#define FP_LABEL_TO_LEADER 0.8

/* At smaller scales only altar and seats are named. */
#define FP_LABEL_SMALL 320.0

/* In so many ways a name may be written, and at so many places beside its thing stand. */
#define FP_LABEL_WAYS   7
#define FP_LABEL_BESIDE 100

typedef enum { FP_BESIDE_UNKNOWN, FP_BESIDE_ROOM, FP_BESIDE_NONE } FpBeside;

/* A plan that is being lettered, and the name that is looked at. */
typedef struct
{
  const FpScene      *scene;
  const FpViewLayout *layout;
  const FpBox        *content;
  FpCover            *room;
  const FpBox        *outside; /* (nullable): the outline of the view, where names may stand beside it too */
  guint               crosses; /* lines that a leader may cross */
  gboolean            through_walls; /* and areas that are filled */
  double              axis;    /* x of the axis */
  gboolean            over_axis; /* a text may interrupt it */
  const FpPlaced     *placed;  /* the thing that is lettered; NULL */
  guint               over_owner; /* whose lines a text may interrupt; 0: nobody's */
  const FpLabelWords *words, *ways; /* one of the ways in which it may be written */
  FpBeside            beside[FP_LABEL_WAYS][FP_LABEL_BESIDE]; /* whether each has room there, the axis apart */
  FpPoint             thing;   /* the middle of it, paper mm */
  const GArray       *before;  /* FpLabelPlace; NULL */
  const GArray       *drawn;   /* FpProjectedLine: of all things */
  GArray             *own;     /* its lines (FpPoint, pairs), paper mm */
  GArray             *out;
} FpLettering;

/* What a view shows of a box of the church. */
FpBox    fp_lettered_box   (const FpLettering *l, const FpBox *plan);

/* --- label-fit.c: one text at one place --- */
FpBox    fp_box_grown          (const FpBox *box, double x, double y);
gboolean fp_label_text_has_room (const FpLettering *l, FpPoint middle, double turn);
gboolean fp_label_text_keeps_off_axis (const FpLettering *l, FpPoint middle, double turn);
/* Both of them. */
gboolean fp_label_text_is_free (const FpLettering *l, FpPoint middle, double turn);
/* Takes the room where it is free. */
gboolean fp_label_try          (FpLettering *l, FpLabel *label, FpPoint middle, double turn);

/* --- label-beside.c: inside its thing, and beside it --- */
gboolean fp_label_is_inside    (const FpLettering *l, FpPoint middle, double turn);
/* From the middle of the thing outwards; then along its own front, where it is turned. */
gboolean fp_label_try_inside   (FpLettering *l, FpLabel *label, const FpBox *in);
/* Where a leader that comes from there ends: on a line of the thing that is drawn. */
FpPoint  fp_label_end_on_thing (const FpLettering *l, FpPoint from);
/* At a leader on all sides, near and farther away. */
gboolean fp_label_try_around   (FpLettering *l, FpLabel *label, const FpBox *thing);

/* --- label-outside.c: beside the view, at a leader through the wall --- */
gboolean fp_label_try_outside  (FpLettering *l, FpLabel *label, const FpBox *thing);

/* --- label-sides.c: "GOSPEL SIDE", "EPISTLE SIDE" --- */
void     fp_letter_sides       (FpLettering *l);

/* --- label-naming.c --- */
typedef enum
{
  FP_NOT_NAMED,
  FP_NAMED,
  FP_NAMED_BESIDE, /* at a leader alone */
  FP_NAMED_LAST,   /* likewise, where the scale and all others leave it room */
} FpNaming;
FpNaming fp_label_naming (const FpPlaced *placed);

G_END_DECLS
