/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-maker.h - views from the pew, made on a thread of their own, on which only the newest counts; knows no toolkit */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef struct _FpPewMaker FpPewMaker;

/* What is known of the view that was asked for last: the picture first, and what is seen from there after it. */
typedef struct
{
  const FpPewView *view;
  struct _cairo_surface *image; /* the picture, as many dots as were asked for */
  char            *eye;  /* whose                                            */
  char            *seen; /* NULL: not known yet                              */
} FpPewMade;

/* @received: on the thread that made the object; @made is borrowed. */
FpPewMaker *fp_pew_maker_new  (void (*received) (const FpPewMade *made, gpointer data), gpointer data);
void        fp_pew_maker_free (FpPewMaker *self);
/* @width: dots across; the picture is as high as spec->aspect tells.  @pen: dots. */
void        fp_pew_maker_ask  (FpPewMaker *self, const FpScene *scene, const FpPewSpec *spec, int width, double pen,
                               FpSurfaceLook look);
gboolean    fp_pew_maker_is_busy (FpPewMaker *self);

/* Its first place when nobody has named one: of the thing of that index (-1: none), else in the middle.
 * FALSE where the church has no places. */
gboolean    fp_pew_first_place (const FpPeople *people, int owner, guint *place);
/* The place whose person stands or sits nearest to a point of the plan, no farther than @reach mm; FALSE where none is. */
gboolean    fp_pew_nearest_place (const FpPeople *people, FpPoint at, double reach, guint *place);
/* Where the same row and seat of the same thing is in a church that was changed; else the place nearest to where that was.
 * @people: any at all, or 0 */
guint       fp_pew_same_place (const FpPeople *were, guint place, const FpPeople *people);
/* Along the row, or into the next one (@rows: +1 is towards the back): the same place where there is no other. */
guint       fp_pew_next_place (const FpPeople *people, guint place, int seats, int rows);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPewMaker, fp_pew_maker_free)

G_END_DECLS
