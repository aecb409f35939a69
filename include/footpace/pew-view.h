/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-view.h - what a person sees from his place
 *
 * A true perspective from the eye of one place, with everybody else in his.
 * The picture plane is upright, so that uprights stay upright, and stands at
 * the distance 1 before the eye: a point that lies X to the right of it, Y
 * ahead and Z above is drawn at (X / Y, Z / Y).  The point (0, 0) is straight
 * ahead, on the horizon; u grows to the right, v upward.
 *
 * It is a list of faces, to be painted one over the other: so it is as sharp
 * on paper as on the screen.  What is hidden altogether is left out.
 */
#pragma once

#include "footpace/pens.h"
#include "footpace/sight.h"

G_BEGIN_DECLS

#define FP_PEW_FIELD    60.0      /* degrees, from the left edge to the right: what is seen without turning the head */
#define FP_PEW_ASPECT   (4.0 / 3) /* width by height                                                                   */

typedef struct
{
  guint     place;   /* index among fp_people_places()                      */
  FpMoment  moment;  /* at which he looks: what all do, and where the ministers are */
  FpFocus   focus;   /* towards which he looks                              */
  double    field;   /* degrees, 10 to 120; 0: FP_PEW_FIELD                 */
  double    aspect;  /* width by height; 0: FP_PEW_ASPECT                   */
  gboolean  child;   /* a child of seven years is there (people.h), of the 50th percentile; otherwise who is there anyhow */
} FpPewSpec;

typedef enum { FP_PEW_POLYGON, FP_PEW_ELLIPSE } FpPewFaceType;

typedef struct
{
  FpPewFaceType type;
  guint         owner;           /* as fp_sight_obstacles() has it          */
  FpPart        part;
  FpStanding    standing;
  double        tone;            /* 0 dark, 1 light                         */
  guint         first, n;        /* polygon: into the points; runs counter-clockwise */
  FpPoint       at, a, b;        /* ellipse: at + a cos t + b sin t; a and b are its half-axes */
  guint         first_line, n_lines; /* edges that are drawn once this face is painted */
} FpPewFace;

typedef enum
{
  FP_PEW_JOINT,   /* the surface goes on; in the tone of the face, so that no gap of a hair's breadth stays between faces
                   * that are painted side by side */
  FP_PEW_EDGE,
  FP_PEW_OUTLINE, /* beyond it lies something else: drawn heavier           */
} FpPewLineType;

typedef struct
{
  FpPoint       a, b;
  FpPewLineType type;
  double        tone;
} FpPewLine;

typedef struct _FpPewView FpPewView;

/* Never NULL for a place that there is.  Any thread. */
FpPewView       *fp_pew_view_new   (const FpPeople *people, const FpPewSpec *spec);
FpPewView       *fp_pew_view_ref   (const FpPewView *self);
void             fp_pew_view_unref (const FpPewView *self);

/* Of the picture plane, what the picture shows. */
FpBox            fp_pew_view_box    (const FpPewView *self);
const FpPewFace *fp_pew_view_faces  (const FpPewView *self, guint *n); /* the farthest first */
const FpPoint   *fp_pew_view_points (const FpPewView *self);
const FpPewLine *fp_pew_view_lines  (const FpPewView *self);

/* Where a point of the church is drawn; FALSE where it lies behind the picture plane's eye. */
gboolean         fp_pew_view_point  (const FpPewView *self, FpVec3 church, FpPoint *at);
/* A point of the church that is drawn there, @distance ahead of the eye. */
FpVec3           fp_pew_view_unpoint (const FpPewView *self, FpPoint at, double distance);
FpVec3           fp_pew_view_eye    (const FpPewView *self);
const FpPeople  *fp_pew_view_people (const FpPewView *self);
const FpPewSpec *fp_pew_view_spec   (const FpPewView *self);
/* "Altar"; "Pews, Gospel side: row 6, seat 3"; the caller's. */
char            *fp_pew_view_name   (const FpPewView *self, guint owner);

/* The face that is painted uppermost there; NULL where the ground of the picture shows. */
const FpPewFace *fp_pew_view_face_at (const FpPewView *self, FpPoint at);

typedef struct _cairo FpCairo; /* as in surface.h */

/* The colour of a tone on what stands so, and of the ground of the picture. */
FpInk            fp_pew_ink        (FpStanding standing, double tone, FpSurfaceLook look);
FpInk            fp_pew_ground_ink (FpSurfaceLook look);
/* Of the line about an ellipse. */
double           fp_pew_line_tone  (double tone);
#define FP_PEW_OUTLINE_WIDER 1.6 /* than an edge */
/* Lightest and darkest of a head, which is drawn as round: from where the light falls, a third of its radius up and to the
 * left, outward to FP_PEW_SHADE of it. */
#define FP_PEW_SHADE_AT 0.35
#define FP_PEW_SHADE    1.4
void             fp_pew_round_inks (const FpPewFace *face, FpSurfaceLook look, FpInk *light, FpInk *dark);

#define FP_PEW_PEN 0.13 /* mm of paper: the narrowest of ISO 128 */

/**
 * fp_pew_view_paint:
 * @cr: y grows downward; the picture fills @box of its user space
 * @pen: width of the lines, of its user space
 */
void             fp_pew_view_paint (const FpPewView *self, FpCairo *cr, FpBox box, double pen, FpSurfaceLook look);

/**
 * fp_pew_view_to_svg:
 * @box: as fp_pew_view_paint() has it
 * @number: of the pictures of one document from 1: names of its parts are told apart by it
 *
 * Returns: (transfer full): a group; a group within it each time that the owner changes, with his name as its title
 */
char            *fp_pew_view_to_svg (const FpPewView *self, FpBox box, double pen, FpSurfaceLook look, guint number);

/* --- places and words ----------------------------------------------------------- */

typedef enum
{
  FP_PEW_FRONT, FP_PEW_MIDDLE, FP_PEW_BACK, FP_PEW_SIDE, FP_PEW_GALLERY, FP_PEW_STANDING, FP_PEW_WHEELCHAIR, FP_PEW_CHILD,
  FP_N_PEW_TYPICAL
} FpPewTypical;
const char *fp_pew_typical_id    (FpPewTypical one); /* "front"                 */
const char *fp_pew_typical_label (FpPewTypical one); /* "In front"              */
/* Sets place and child; FALSE where there is no such place. */
gboolean    fp_pew_typical_spec  (const FpPeople *people, FpPewTypical one, FpPewSpec *spec);
/* @block: id or name of what has the place; NULL: the first that has such a row and place. */
gboolean    fp_pew_place_find    (const FpPeople *people, const char *block, guint row, guint number, guint *found);

/* Whose eye: "Pews, Gospel side: row 6, seat 3, sitting; Offertory"; and what it sees of what is there then: "mensa 75 %, tabernacle
 * all"; the caller's. */
char       *fp_pew_eye_text  (const FpPeople *people, const FpPewSpec *spec);
char       *fp_pew_seen_text (const FpSight *sight, const FpPewSpec *spec);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPewView, fp_pew_view_unref)

G_END_DECLS
