/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind.h - kinds of things, and the table of them
 *
 * A kind is one file under src/furnishing/ and one line in
 * src/furnishing/kinds.list.h; nothing else in the tree names it, except rules and
 * drawings that ask for a role (see FpRole) or a focus.  Things of the survey
 * (walls, floors, pews) are kinds like any other.
 *
 * A kind works in its own coordinates: its level is z = 0, its front (the
 * side towards the people) is towards -y, +x is the Epistle side when it is
 * not turned.  Things that come from the datum (FP_KIND_FROM_DATUM) have
 * z = 0 at the datum.
 *
 * Everything that a kind returns is computed from an FpForm alone: a kind
 * keeps no state, so any thread may use it.
 */
#pragma once

#include "footpace/solid.h"
#include "footpace/units.h"

G_BEGIN_DECLS

#define FP_PARAM_MAX  24   /* parameters of one kind   */
#define FP_COUNT_MAX  400  /* of rows, seats, candles … in one thing */

typedef enum
{
  FP_PARAM_LENGTH, /* mm                                                   */
  FP_PARAM_LEVEL,  /* mm above the datum                                   */
  FP_PARAM_ANGLE,  /* degrees                                              */
  FP_PARAM_COUNT,  /* a whole number                                       */
  FP_PARAM_SHARE,  /* a slope or a share; shown in per cent                */
  FP_PARAM_CHOICE, /* index into choices                                   */
} FpParamType;

typedef struct { const char *id, *label; } FpChoice;

typedef struct
{
  const char     *id;       /* as in the file: lower case, words joined by '-' */
  const char     *label;    /* as in the window                                */
  FpParamType     type;
  double          min, def, max;
  const FpChoice *choices;  /* ended by { NULL }; only for FP_PARAM_CHOICE     */
  const char     *source;   /* of the default: printed, "common practice, no source", "design judgement" */
} FpParam;

/* What stands where, seen from the kind's own origin. */
typedef struct
{
  FpBox  plan;     /* the room it takes on the plan                        */
  FpBox  bearing;  /* where other things may stand on it; empty when nothing may */
  double top;      /* level of that bearing                                */
  double height;   /* overall                                              */
} FpExtent;

/* An opening as the wall needs it. */
typedef struct
{
  guint  side;          /* the wall's run between corner `side` and the next, from 0 */
  double along;         /* from that corner to the middle of the opening   */
  double width, sill, head; /* sill and head above the foot of the wall    */
  gboolean arched;      /* head is the springing of a half-round arch      */
} FpHole;

typedef enum { FP_FACING_EAST, FP_FACING_PEOPLE } FpFacing; /* of the celebrant at the altar */

/* One thing, as its kind sees it. */
typedef struct
{
  const double  *param;      /* in the order of the kind's parameters      */
  const FpPoint *corner;     /* for kinds that are drawn corner by corner  */
  guint          n_corners;
  FpBox          core;       /* of what it is laid round or hung over, in its own coordinates (FP_KIND_LAID_ROUND, _HUNG) */
  double         foot, head; /* of what it is hung over, from its own level; both 0: not known (FP_KIND_HUNG) */
  FpBox          notch;      /* of `core`, what a cloth is cut out for, a tabernacle on the mensa; without area: nothing */
  const FpHole  *hole;
  guint          n_holes;
  FpFacing       facing;     /* of the celebrant here; east, too, where an altar has no room behind it */
  /* Height of the floor at a point, relative to the level of the thing; NULL: level throughout. */
  double       (*ground) (gconstpointer data, FpPoint local);
  gconstpointer  ground_data;
} FpForm;

/* What has to be seen (EN 13200-1: point of focus). */
typedef enum
{
  FP_FOCUS_MENSA,      /* its front edge, and what is held or stands over it */
  FP_FOCUS_HOST,       /* as it is raised                                  */
  FP_FOCUS_CHALICE,    /* likewise                                         */
  FP_FOCUS_TABERNACLE,
  FP_FOCUS_CRUCIFIX,
  FP_FOCUS_AMBO,       /* the reader's head and shoulders                  */
  FP_FOCUS_CHAIR,      /* the celebrant seated                             */
  FP_FOCUS_REREDOS,
  FP_N_FOCUSES
} FpFocus;

/* Within the parallelogram of origin and two sides, from one corner. */
typedef enum
{
  FP_TARGET_PANEL,     /* all of it                                        */
  FP_TARGET_ROUND,     /* the ellipse that touches its sides               */
  FP_TARGET_GABLE,     /* the triangle on u, its tip half-way along the side opposite */
} FpTargetShape;

/* A flat piece to look at. */
typedef struct
{
  FpFocus       focus;
  FpTargetShape shape;
  FpVec3        origin, u, v;
} FpTarget;

/* Where a minister stands or sits in his office: an obstacle, and a target for others. */
typedef struct
{
  FpPoint at;
  double  z;          /* of the surface under him, from the thing's level  */
  double  facing;     /* degrees, 0 = towards +y                           */
  gboolean seated;
  double  seat;       /* height of the seat when seated                    */
} FpMinister;

typedef enum
{
  FP_POSTURE_SITTING,
  FP_POSTURE_KNEELING,
  FP_POSTURE_STANDING,
  FP_N_POSTURES
} FpPosture;

/* Where one of the people sits, kneels or stands. */
typedef struct
{
  FpPoint at;         /* of the middle of the body when seated             */
  double  z;          /* of the floor there, above what `ground` answers (a raised row) */
  double  facing;     /* degrees, 0 = towards +y                           */
  guint   postures;   /* 1 << FpPosture, the ones taken here               */
  double  seat;       /* height of the seat, 0 where there is none         */
  double  kneeler;    /* height of the kneeling surface                    */
  double  eye;        /* of one who brings his seat with him, above the floor; 0: it follows from the seat */
  guint   row, number; /* from 1; row 1 is nearest the altar; number from the Gospel side */
} FpSeat;

typedef enum
{
  FP_VIEW_PLAN,
  FP_VIEW_ELEVATION, /* facing liturgical east                              */
  FP_VIEW_SECTION,   /* longitudinal, seen from the Gospel side             */
  FP_N_VIEWS
} FpViewId;

/* A measure that belongs on the drawing. */
typedef struct
{
  int    param;   /* index of the parameter that it shows; -1: it follows from others */
  FpVec3 a, b;    /* what it measures between                              */
  guint  views;   /* 1 << FpViewId where it reads true                     */
  guint  times;   /* above 1: the distance is this many times the parameter ("2 × 305") */
  guint  rank;    /* 0 first: what is left out last when there is no room  */
} FpDimSpec;

/* A line of a symbol that solids do not give (crosses on a mensa, the swing
 * of a gate, an arrow up a flight). */
typedef struct
{
  FpPoint  a, b;      /* plan coordinates of the kind                      */
  gboolean dashed;
} FpStroke;

typedef enum
{
  FP_MATERIAL_NONE, FP_MATERIAL_STONE, FP_MATERIAL_WOOD, FP_MATERIAL_METAL, FP_MATERIAL_LINEN, FP_MATERIAL_WAX,
  FP_MATERIAL_CONCRETE, FP_MATERIAL_SILK,
} FpMaterial;

typedef enum { FP_AMOUNT_NUMBER, FP_AMOUNT_LENGTH, FP_AMOUNT_AREA, FP_AMOUNT_VOLUME } FpAmountType;

/* A line of a schedule: number, mm, mm2, mm3, net as fixed, no waste. */
typedef struct
{
  const char  *what;    /* "treads", "mensa", …: static                    */
  FpMaterial   material;
  FpAmountType type;
  double       amount;
  gboolean     of_part; /* it is all solids of that part: each is a piece  */
  FpPart       part;
  const char  *called;  /* only those that are called so; NULL: all of that part */
  gboolean     laid;    /* new, it is laid in those courses that are `of` its `what` */
  FpVec3       size;    /* of each one of a number; of an area, of each of its pieces: length, width; 0 where it is not said */
  double       volume;  /* mm3 of its material, of what is told by number or length; 0: not said */
} FpQuantity;

/* One run of stone, before it is divided into slabs. */
typedef enum
{
  FP_COURSE_RISER,  /* stands, and a tread or a floor lies on it           */
  FP_COURSE_TREAD,  /* lies; reaches under the riser that stands on it     */
  FP_COURSE_FLOOR,  /* lies in rows, its first row in front                */
  FP_COURSE_FACE,   /* stands before a core                                */
  FP_COURSE_BLOCK,  /* all that is there, with no core                     */
} FpCourseType;

/* mm: how thick the metal of a candlestick, a tabernacle or a lamp is reckoned, which are cast or raised hollow: design
 * judgement. */
#define FP_METAL_WALL 3.0

/* How a run ends where another face of the same body begins. */
typedef enum
{
  FP_END_FREE,      /* at a wall, or nothing goes on round the corner      */
  FP_END_PASSES,    /* its end is seen: the other run stops behind it      */
  FP_END_BUTTS,     /* it stops behind the other run                       */
} FpCourseEnd;

typedef struct
{
  FpCourseType type;
  const char  *of;       /* the quantity that it belongs to, by its `what`: static */
  const char  *what;     /* "risers", "treads": static; a rate goes by it   */
  guint        step;     /* from 1, the lowest; 0: of no step               */
  const char  *side;     /* "in front", "at the ends", "behind": static; "" */
  FpPoint      from;     /* on the plan: where its edge begins, as it is drawn */
  FpPoint      along;    /* the way it goes from there, of length 1; the body is on its left */
  double       length;
  double       width;    /* on the plan, of what lies: the tread, the depth of a floor or block; 0 */
  double       foot, top; /* levels: of what lies its top alone is known beforehand, and both are that */
  FpCourseEnd  begins, ends;
  gboolean     whole;    /* is of one piece, however long                   */
} FpCourse;

/* Walkable surfaces. */
typedef enum
{
  FP_FLOOR_NONE,
  FP_FLOOR_PEOPLE,
  FP_FLOOR_MINISTERS,
  FP_FLOOR_GALLERY,    /* of the people, but reported on its own           */
  FP_FLOOR_WAY,        /* a ramp, a stair, the step of a font: walked on, and nobody's place; nothing is set out on it */
} FpFloorUse;

typedef struct
{
  FpFloorUse     use;
  FpPoint       *outline;  /* kind's coordinates; owned by the GArray's clear function */
  guint          n_outline;
  double         z, gx, gy; /* level at the kind's origin and its slope    */
} FpSurface;

/* Which office a thing holds; at most one each. What a rule asks for by name. */
typedef enum
{
  FP_ROLE_NONE,
  FP_ROLE_ALTAR, FP_ROLE_FOOTPACE, FP_ROLE_GRADINE, FP_ROLE_TABERNACLE, FP_ROLE_CRUCIFIX,
  FP_ROLE_CANDLES, FP_ROLE_REREDOS, FP_ROLE_CREDENCE, FP_ROLE_SEDILIA, FP_ROLE_AMBO,
  FP_ROLE_CHAIR, FP_ROLE_RAIL,
  FP_ROLE_WALL, FP_ROLE_OPENING, FP_ROLE_PIER, FP_ROLE_FLOOR, FP_ROLE_STEPS,
  FP_ROLE_PEWS, FP_ROLE_GALLERY, FP_ROLE_STANDING_ROOM, FP_ROLE_WHEELCHAIR,
  /* on the altar, and hung over it */
  FP_ROLE_ALTAR_CLOTHS, FP_ROLE_FRONTAL, FP_ROLE_TABERNACLE_VEIL, FP_ROLE_ALTAR_CARDS, FP_ROLE_MISSAL_STAND,
  FP_ROLE_HAND_BELL, FP_ROLE_FLOWERS, FP_ROLE_RELIQUARIES,
  /* lights that are not counted among the candles of the altar, but for the seventh */
  FP_ROLE_SANCTUS_CANDLE, FP_ROLE_BRANCHED_LIGHTS, FP_ROLE_SEVENTH_CANDLE, FP_ROLE_SANCTUARY_LAMP,
  FP_ROLE_PASCHAL_CANDLE, FP_ROLE_PROCESSIONAL_CANDLES,
  /* about the altar */
  FP_ROLE_CANOPY, FP_ROLE_STATUE, FP_ROLE_VESSELS, FP_ROLE_AMBRY, FP_ROLE_PISCINA, FP_ROLE_FONT,
  /* of the ministers */
  FP_ROLE_FALDSTOOL, FP_ROLE_THRONE, FP_ROLE_STOOLS, FP_ROLE_CHOIR_STALLS, FP_ROLE_LECTERN, FP_ROLE_PULPIT,
  /* of the people, and of the building */
  FP_ROLE_KNEELERS, FP_ROLE_CHAIRS, FP_ROLE_RAMP, FP_ROLE_HANDRAIL, FP_ROLE_SCREEN,
  FP_N_ROLES
} FpRole;

typedef enum
{
  FP_KIND_SURVEY     = 1 << 0, /* belongs to the survey, not to an alternative         */
  FP_KIND_OUTLINE    = 1 << 1, /* given by its corners, a closed outline               */
  FP_KIND_RUN        = 1 << 2, /* given by its corners, an open run (walls)            */
  FP_KIND_FROM_DATUM = 1 << 3, /* z = 0 is the datum, not the floor beneath            */
  FP_KIND_LAID_ROUND = 1 << 4, /* follows on the plan the first thing that stands on it */
  FP_KIND_IN_WALL    = 1 << 5, /* must stand "on" a wall, and cuts it                  */
  FP_KIND_CUT        = 1 << 6, /* the plan cuts it at 1.1 m instead of showing its top */
  FP_KIND_ON_FLOOR   = 1 << 7, /* placed by church coordinates even on a footpace      */
  FP_KIND_HUNG       = 1 << 8, /* hung over what it stands on, whose size it takes; nothing else is in its way */
} FpKindFlags;

/* How a thing is aligned, front to back, on the bearing that it stands on. */
typedef enum { FP_ANCHOR_CENTRE, FP_ANCHOR_BACK, FP_ANCHOR_FRONT } FpAnchor;

/* Where a new one is put (see fp_set_out_new in setting-out.h). */
typedef enum
{
  FP_SPOT_AXIS_ALTAR,    /* on the axis, where the altar goes              */
  FP_SPOT_ON_SUPPORT,    /* on the axis of its support                     */
  FP_SPOT_BEHIND_ALTAR,  /* on the axis, behind the altar                  */
  FP_SPOT_EPISTLE_WALL,  /* on the Epistle side, its back to the wall      */
  FP_SPOT_GOSPEL_WALL,   /* likewise on the Gospel side                    */
  FP_SPOT_GOSPEL_FRONT,  /* Gospel side, near the people                   */
  FP_SPOT_OPENING,       /* across the opening to the sanctuary            */
  FP_SPOT_NAVE,          /* the middle of the people's floor               */
  FP_SPOT_ABOVE_ALTAR,   /* over the altar and its steps                   */
  FP_SPOT_BEFORE_ALTAR,  /* on the axis, before the altar's steps          */
} FpSpot;

typedef struct _FpKind FpKind;
struct _FpKind
{
  const char    *id;           /* as the element in the file                */
  const char    *label;        /* "Altar"                                   */
  const char    *tells;        /* one sentence for someone who does not know the thing */
  FpRole         role;
  guint          flags;        /* FpKindFlags                               */
  FpAnchor       anchor;
  FpSpot         spot;
  double         clearance;    /* mm, kept from wall or altar by the spot   */
  const FpRole  *stands_on;    /* best first, ended by FP_ROLE_NONE; NULL: the floor only */
  const FpParam *params;       /* ended by { NULL }                         */

  /* All but extent and solids may be NULL.  Arrays are appended to. */
  void (*extent)     (const FpForm *form, FpExtent *extent);
  void (*solids)     (const FpForm *form, FpSolids *out);
  void (*strokes)    (const FpForm *form, GArray *out);   /* FpStroke    */
  void (*dims)       (const FpForm *form, GArray *out);   /* FpDimSpec   */
  void (*targets)    (const FpForm *form, GArray *out);   /* FpTarget    */
  void (*ministers)  (const FpForm *form, GArray *out);   /* FpMinister  */
  void (*seats)      (const FpForm *form, GArray *out);   /* FpSeat      */
  void (*surfaces)   (const FpForm *form, GArray *out);   /* FpSurface   */
  void (*quantities) (const FpForm *form, GArray *out);   /* FpQuantity  */
  /* FpCourse, from the lowest upwards: what is laid of stone, of which its volume of stone consists otherwise. */
  void (*courses)    (const FpForm *form, GArray *out);
  /* A relation between parameters that a range cannot say (a gate wider than
   * its rail); NULL or a sentence, owned by the caller. */
  char *(*amiss)     (const FpForm *form);
};

/* Sorts of things, by which drawings are thinned out, and lists of kinds are grouped. */
typedef enum
{
  FP_SORT_BUILDING,  /* walls, openings, piers, floors, galleries           */
  FP_SORT_ALTAR,     /* the altar, its steps, and what stands on and behind it but lights */
  FP_SORT_LIGHTS,
  FP_SORT_FURNITURE, /* rail, credence, ambo                                */
  FP_SORT_SEDILIA,   /* the seats of the ministers                          */
  FP_SORT_SEATS,     /* of the people, and where they stand                 */
  FP_N_SORTS
} FpSort;
FpSort        fp_kind_sort (const FpKind *kind);

const FpKind *fp_kind_find (const char *id);     /* NULL when there is none  */
const FpKind *const *fp_kinds (guint *n);        /* all, in the order in which people list them */
guint         fp_kind_n_params (const FpKind *kind);
int           fp_kind_param_index (const FpKind *kind, const char *id); /* -1 when there is none */
void          fp_kind_defaults (const FpKind *kind, double *param); /* fills fp_kind_n_params() values */

/**
 * fp_param_check:
 *
 * Returns: FALSE with %FP_ERROR_RANGE when @value is not a number, outside the
 *   range, or not whole where it must be
 */
gboolean fp_param_check (const FpParam *param, double value, GError **error);
/* The same, said with lengths as people write them in @units; fp_param_check() gives them in mm, as files have them. */
gboolean fp_param_check_in (const FpParam *param, double value, FpUnits units, GError **error);

const char *fp_focus_label   (FpFocus focus);     /* "raised Host"           */
const char *fp_focus_id      (FpFocus focus);     /* "host"                  */
const char *fp_posture_label (FpPosture posture); /* "kneeling"              */

GArray *fp_surfaces_new (void); /* (element-type FpSurface); frees the outlines */
void    fp_surfaces_add (GArray *surfaces, FpFloorUse use, const FpPoint *outline, guint n,
                         double z, double gx, double gy);

G_END_DECLS
