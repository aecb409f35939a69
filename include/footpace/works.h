/* SPDX-License-Identifier: GPL-3.0-or-later */
/* works.h - of what a parish builds, and at what rates: what its schedules go by
 *
 * Values without a scene: a project keeps them.  Nothing here is a price that
 * the program knows: rates are what the parish typed.
 */
#pragma once

#include "footpace/kind.h"

G_BEGIN_DECLS

#define FP_RATES_MAX        500
#define FP_RATE_LETTERS_MAX 80    /* bytes of what a rate is for              */
#define FP_CURRENCY_MAX     8     /* bytes                                    */
#define FP_FINISH_MAX       80    /* bytes                                    */
#define FP_RATE_MOST        1e9

/* What stone, wood or metal it is.  Weights: kN/m3, from the tables named in works.c. */
typedef enum
{
  FP_STONE_MARBLE, FP_STONE_GRANITE, FP_STONE_LIMESTONE, FP_STONE_OOLITE, FP_STONE_SANDSTONE, FP_STONE_SLATE, FP_N_STONES
} FpStone;
typedef enum { FP_TIMBER_OAK, FP_TIMBER_HARDWOOD, FP_TIMBER_SOFTWOOD, FP_N_TIMBERS } FpTimber;
typedef enum { FP_METAL_BRASS, FP_METAL_BRONZE, FP_METAL_IRON, FP_METAL_STEEL, FP_N_METALS } FpMetal;

typedef struct { const char *id, *label; double weight; const char *source; } FpMatter; /* kN/m3 */

const FpMatter *fp_stone  (FpStone one);
const FpMatter *fp_timber (FpTimber one);
const FpMatter *fp_metal  (FpMetal one);
#define FP_CONCRETE_WEIGHT 24.0 /* kN/m3; normal concrete, EN 1991-1-1 Table A.1 (from memory) */
#define FP_KN_M2_PER_PSF 0.0478803 /* a pound-force on a square foot: NIST Special Publication 811, appendix B */
#define FP_SHRINKAGE_MAX 0.25 /* a share; more is no cloth for an altar */
#define FP_GRAVITY 9.80665      /* m/s2, standard (3rd CGPM 1901): a mass of 1 kg weighs that many newtons */


/* Small linens of the altar and of those who serve at it, and what is of silk beside them. */
typedef enum
{
  FP_SMALL_CORPORAL, FP_SMALL_PALL, FP_SMALL_PURIFICATOR, FP_SMALL_TOWEL, FP_SMALL_AMICE, FP_SMALL_CHALICE_VEIL, FP_SMALL_BURSE,
  FP_N_SMALLS
} FpSmall;
const char *fp_small_id    (FpSmall one); /* "corporals": in files, and as typed */
const char *fp_small_label (FpSmall one); /* "Corporals"                      */
gboolean    fp_small_find  (const char *id, FpSmall *one);
#define FP_SMALL_AS_NEEDED (-1.0) /* as many as one Mass at the altar needs     */
#define FP_SMALLS_MOST     40     /* of each                                    */

/* Between the selvedges of what is sold as linen; narrower is ribbon. Design judgement: 36 to 60 in are common. */
#define FP_BOLT_LEAST 300.0
#define FP_BOLT_MOST  4000.0

/* Of one line of a schedule: what it is of which kind of thing, and in which unit it is reckoned. */
typedef struct
{
  const char  *kind;   /* id of a kind                                     */
  const char  *what;   /* as the schedule has it: "mensa"                  */
  FpAmountType per;    /* one, m, m2, m3; or ft, sq ft, cu ft              */
  FpUnits      units;  /* those in which it was typed                      */
  double       rate;   /* 0 to %FP_RATE_MOST                               */
} FpRate;

typedef struct
{
  FpStone       stone;
  FpTimber      timber;
  FpMetal       metal;
  double        slab;     /* mm: thickness of treads, risers and paving, 10 to 300 */
  double        longest;  /* mm: no slab is longer, 200 to 6000                    */
  double        nosing;   /* mm that a tread projects before the riser below it, 0 to 60; 0: none */
  double        joint;    /* mm between two slabs, and of the bed under each, 0 to 20 */
  gboolean      solid;    /* what is new of stone is of solid blocks where it could be slabs on a core; steps are not */
  const char   *finish;   /* of the stone: "fine rubbed, arrises eased 3 mm"; may be "" */
  double        bears;    /* kN/m2 that the floor is rated for, 0 to 1000; 0: not said */
  double        burns;    /* mm of a candle in an hour, 0 to 1000; 0: not said      */
  double        bolt;     /* mm between the selvedges of the linen, 0 to 10000; 0: not said */
  gboolean      joined;   /* what is wider than the bolt is cut in widths that are joined; otherwise it is told and not cut */
  double        warp, weft; /* shares that the linen shrinks by, 0 to 0.25         */
  double        small[FP_N_SMALLS]; /* that many of each, whole, 0 to %FP_SMALLS_MOST; or %FP_SMALL_AS_NEEDED */
  const char   *currency; /* as written after a sum; may be ""                     */
  const FpRate *rate;     /* each line at most once                                */
  guint         n_rates;
} FpWorks;

/* What a project has in which nobody said anything: design judgement. */
extern const FpWorks fp_works_usual;

typedef enum { FP_WORKS_SLAB, FP_WORKS_LONGEST, FP_WORKS_BURNS, FP_WORKS_BOLT, FP_WORKS_NOSING, FP_WORKS_JOINT,
               FP_N_WORKS_LENGTHS } FpWorksLength;

/**
 * fp_works_length_check:
 * @typed: as somebody typed it
 *
 * Narrower than fp_works_check() where a file may have more than anybody means.
 *
 * Returns: FALSE with %FP_ERROR_RANGE, which says in @units what may be, in which unit @typed was read where it names
 *   none, and how to write another
 */
gboolean      fp_works_length_check (FpWorksLength which, double mm, const char *typed, FpUnits units, GError **error);

/* FALSE with %FP_ERROR_RANGE or %FP_ERROR_INVALID where something is not as above. */
gboolean      fp_works_check (const FpWorks *self, GError **error);
gboolean      fp_works_equal (const FpWorks *a, const FpWorks *b);
/* NULL where there is none. */
const FpRate *fp_works_rate  (const FpWorks *self, const char *kind, const char *what, FpAmountType per);

const char   *fp_amount_unit      (FpAmountType type, FpUnits units); /* "m3", "cu-ft", "one": in files */
const char   *fp_amount_unit_sign (FpAmountType type, FpUnits units); /* "m³", "cu ft", "nr": as read  */
gboolean      fp_amount_unit_find (const char *id, FpAmountType *type, FpUnits *units);
/* mm, mm2, mm3 in that unit: m or ft, and so on; a number is one. */
double        fp_amount_in        (FpAmountType type, double amount, FpUnits units);

G_END_DECLS
