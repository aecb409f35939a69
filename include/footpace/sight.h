/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight.h - who sees what
 *
 * From the eye of each place, at each moment of the celebration, rays go to a
 * fixed pattern of points over each target, past everything that stands in
 * the way: building, furnishings, the ministers where they stand at that
 * moment, and the heads and bodies of all other people.  The share is the
 * number of points seen by the number of points; each point stands for the
 * same area of the target.
 *
 * A target's own thing does not hide it where the ray ends within 2 mm of it,
 * and a person does not hide himself.
 */
#pragma once

#include "footpace/people.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define FP_SIGHT_RAYS 64 /* points on one target: a bit each of a guint64 */
#define FP_SIGHT_ALL G_MAXUINT64

typedef struct _FpSight FpSight;

/* Looking is done when somebody asks, once for each moment and focus, and takes a while then: some milliseconds for a few
 * hundred places.  NULL only when @cancel was cancelled; what is asked after it was cancelled is not looked at, and told as
 * where nobody is.  Any thread, and several may ask one sight. */
FpSight        *fp_sight_new   (const FpPeople *people, GCancellable *cancel);

/**
 * fp_sight_again:
 * @last: (nullable): what was seen before something was changed
 *
 * The same as fp_sight_new(), to the last ray; but places are looked from again only where what was changed reaches
 * between them and what they look at.  It keeps @last until another is made from it.
 */
FpSight        *fp_sight_again (const FpPeople *people, const FpSight *last, GCancellable *cancel);
FpSight        *fp_sight_ref   (const FpSight *self);
void            fp_sight_unref (const FpSight *self);
const FpPeople *fp_sight_people (const FpSight *self);

/* Whether there is such a thing to see in the scene. */
gboolean fp_sight_has (const FpSight *self, FpFocus focus);

/* Visible share 0..1 from one place; -1 where nobody is there at the moment (fp_people_looks()) or there is no target. */
double   fp_sight_share (const FpSight *self, guint place, FpMoment moment, FpFocus focus);

typedef struct
{
  guint  places;     /* looked from                                          */
  double mean;       /* of the shares                                        */
  guint  all;        /* places that see all of it                            */
  guint  half;       /* places that see at least half                        */
  guint  none;       /* places that see nothing of it                        */
  guint  worst;      /* a place of the least share                           */
} FpSightSum;

/* Over the whole church; over one placed thing (a block of pews); over one of its rows.
 * Galleries and kneeling places at the rail are left out of the first. */
FpSightSum fp_sight_church (const FpSight *self, FpMoment moment, FpFocus focus);
/* Of the whole church: "half or more of the mensa is seen from 34 of 312 places, nothing of it from 56"; owned by the caller;
 * NULL where there is nothing to see or nobody who looks. */
char      *fp_sight_church_words (const FpSight *self, FpMoment moment, FpFocus focus);
FpSightSum fp_sight_block  (const FpSight *self, guint owner, FpMoment moment, FpFocus focus);
FpSightSum fp_sight_row    (const FpSight *self, guint owner, guint row, FpMoment moment, FpFocus focus);

/* The thing that hides most of the target from a place: index of a placed thing,
 * -1 for other people, -2 where nothing does.  @place_in_front (out, optional): which place. */
int      fp_sight_blocker (const FpSight *self, guint place, FpMoment moment, FpFocus focus, int *place_in_front);
/* Whether that which hides most of it is not the thing itself, but the minister who stands or sits there. */
gboolean fp_sight_blocker_is_minister (const FpSight *self, guint place, FpMoment moment, FpFocus focus);

/* Of each placed thing, whether it, or the minister who stands or sits there, hides something of the focus from anybody;
 * NULL where nobody looks.  Borrowed; as long as the sight. */
const gboolean *fp_sight_hiders (const FpSight *self, FpMoment moment, FpFocus focus);
/* Index of the placed thing that is looked at; -1. */
int             fp_sight_target_of (const FpSight *self, FpFocus focus);

/* How somebody sees something, in words that are told apart on a drawing. */
typedef enum
{
  FP_SIGHT_WHOLE,          /* all of it, or so nearly that nobody would say otherwise (95 %; design judgement) */
  FP_SIGHT_BETWEEN_HEADS,  /* in part: other people hide most of the rest */
  FP_SIGHT_PAST_THINGS,    /* in part: building, furnishings or ministers do */
  FP_SIGHT_NOTHING,
  FP_SIGHT_NOBODY,         /* nobody is there then, or there is no such thing to see */
  FP_N_SIGHT_HOWS
} FpSightHow;

FpSightHow  fp_sight_how       (const FpSight *self, guint place, FpMoment moment, FpFocus focus);
const char *fp_sight_how_label (FpSightHow how); /* "between heads" … */

/* The line of sight from a place to the middle of what is looked at; where something else hides more of it than what lies
 * in that way, to the nearest point to the middle that this hides, so that it is shown and named. */
typedef struct
{
  FpVec3   eye, goal;
  gboolean stopped;         /* something stands in its way                       */
  FpVec3   stop;            /* where it meets that first; otherwise the goal     */
  int      thing;           /* which: a placed thing, or the one whose minister; -1: a person */
  gboolean is_minister;
  int      place_in_front;  /* of the person; -1                                 */
} FpSightLine;

/* FALSE where nobody looks, or there is no such thing to see. */
gboolean fp_sight_line (const FpSight *self, guint place, FpMoment moment, FpFocus focus, FpSightLine *line);

/* "pier", "the person in row 3, seat 2", "the celebrant": what stands in the way; owned by the caller; NULL: nothing. */
char    *fp_sight_line_words (const FpSight *self, const FpSightLine *line);

/* --- blind areas ------------------------------------------------------------ */

/* What of a floor of the people lies where nothing of a focus is seen, whoever else is there: building and furnishings alone
 * hide it.  Eyes are as high as those of the people with a place there; of who stands beside the seats, as theirs. */
typedef struct
{
  guint    floor;   /* index among fp_scene_floors()                        */
  gboolean gallery; /* it is a gallery's                                    */
  double   area;    /* mm2                                                  */
  GArray  *rings;   /* (element-type FpRing): of each area its outer ring, then those of its holes; church coordinates */
} FpBlindFloor;

/**
 * fp_sight_blind:
 *
 * Looked for when somebody asks, once for what the people do and what they look at; that takes some tenths of a second.  To
 * a millimetre where edges are straight; nothing narrower than 100 mm is looked for.  Any thread.
 *
 * Returns: (transfer none) (nullable) (element-type FpBlindFloor): one for each floor of the people, as long as the sight;
 *   %NULL where there is no such thing to see, or when it was cancelled
 */
const GArray *fp_sight_blind (const FpSight *self, FpMoment moment, FpFocus focus, GCancellable *cancel);

/* Of all galleries, or of all other floors, mm2; 0 of none.  @blind: (nullable) */
double        fp_blind_area  (const GArray *blind, gboolean gallery);

/* --- with other people --------------------------------------------------- */

/* The same church again and again, in each place somebody else, of his own stature: by so many seeds, from that of the brief
 * on.  Looking is done when it is asked; one thread at a time may. */
#define FP_SIGHT_SEEDS      9  /* enough to tell what hangs on who sits where; design judgement */
#define FP_SIGHT_SEEDS_MOST 99
typedef struct _FpSightSpread FpSightSpread;
FpSightSpread *fp_sight_spread_new  (const FpScene *scene, guint seeds);
void           fp_sight_spread_free (FpSightSpread *self);

typedef struct { guint least, middle, most; } FpCountRange;

typedef struct
{
  guint        seeds, first, last; /* how many, and which they were              */
  guint        places;             /* looked from: neither galleries nor the rail */
  FpCountRange whole, half;        /* of them, from which all of it is seen; half or more */
} FpSightRange;
FpSightRange fp_sight_spread_range (const FpSightSpread *self, FpMoment moment, FpFocus focus);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSightSpread, fp_sight_spread_free)

/* --- the pieces, for tests and later for the view from the pew ----------- */

/* The points looked at: FP_SIGHT_RAYS of them; 0 when there is no such target. */
guint    fp_sight_points (const FpScene *scene, FpFocus focus, FpVec3 *points);

/* All that stands in the way at a moment, with the rule of who owns what: solids of the scene keep
 * their owners, ministers likewise, people's owner is FP_SIGHT_PERSON + place. */
#define FP_SIGHT_PERSON 0x40000000u
FpSolids *fp_sight_obstacles (const FpPeople *people, FpMoment moment);

/* A set of solids made ready for rays. @solids must outlive it. */
typedef struct _FpRayIndex FpRayIndex;
FpRayIndex *fp_ray_index_new  (const FpSolids *solids);
void        fp_ray_index_free (FpRayIndex *self);
/* Index of some solid that blocks the segment, -1 if none.  Solids owned by @skip_owner are passed over. */
int         fp_ray_index_blocked (const FpRayIndex *self, FpVec3 from, FpVec3 to, guint skip_owner);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpRayIndex, fp_ray_index_free)

/* --- C-value ------------------------------------------------------------- */

/**
 * fp_c_value:
 * @d: horizontal distance, eye of the person in front to the point of focus
 * @r: height of that eye above the point of focus
 * @n: rise of the row behind
 * @t: distance between the rows
 *
 * C = D (N + R) / (D + T) - R, with D and R of the person in front
 * (P. Shepherd, "Sightlines", University of Bath, 2012).  0 when D + T is 0.
 */
double fp_c_value (double d, double r, double n, double t);
/* The rise that gives a wanted C: N = (R + C)(D + T)/D - R (same worksheet); 0 when D is 0. */
double fp_c_rise  (double d, double r, double c, double t);
/* How much higher the focus must be for a wanted C, all else as it is: C grows with it by T / (D + T), so
 * (wanted - C)(D + T)/T; negative where it may be lower; 0 when T is 0. */
double fp_c_raise (double c, double wanted, double d, double t);

typedef struct
{
  guint  owner, row;
  guint  places;          /* of those who sit in it                          */
  double c;
  double distance;        /* horizontal, from the eye to the focus: D + T    */
  double between;         /* of that, from the eye of the row in front: T    */
  FpVec3 eye, focus;      /* of the row, and what it looks at                */
} FpRowC;

/* C of every row behind another of its block, sitting, all grown and of the brief's percentile, to the front edge of
 * the mensa on the axis of sight of the middle seat; (element-type FpRowC), owned by the caller. */
GArray *fp_row_c_values (const FpPeople *people);

/* Of those, the row nearest to the mensa; NULL where there is none. */
const FpRowC *fp_row_c_first (const GArray *rows);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSight, fp_sight_unref)

G_END_DECLS
