/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-private.h - what the files of the linen plan share */
#pragma once

#include "footpace/linen-plan.h"

G_BEGIN_DECLS

/* One piece that is cut: of which cloth, and which of those that are alike; of one that is joined, which of its widths. */
typedef struct { guint cloth, copy, width, widths; } FpLinenPart;

/* A cloth for which the bolt is too narrow either way, and how it is joined of widths. */
typedef struct
{
  guint  cloth;
  double along_needs, across_needs; /* which width it needs, laid with its length along the bolt, or across */
  guint  widths;                    /* that are joined, selvedge to selvedge                         */
  FpBoltPiece piece;                /* each of them, with its seams                                  */
  gboolean laid;                    /* they are on the bolt                                          */
} FpLinenWide;

struct _FpLinenPlan
{
  const FpScene *scene;
  FpLinenSpec    spec;
  GArray        *cloths; /* FpCloth                                          */
  GArray        *silks;  /* FpCloth: of silk, cut of no bolt of linen        */
  GArray        *wide;   /* FpLinenWide                                      */
  GArray        *parts;  /* FpLinenPart: what is cut of this bolt            */
  GArray        *pieces; /* FpBoltPiece: of each part                        */
  FpBoltLayout  *layout;
};

#define FP_LINEN_SEAM 13.0 /* mm, allowed in each edge that is joined by a felled seam; design judgement */

static inline const FpLinenPart *
fp_linen_part (const FpLinenPlan *self, guint piece)
{
  return &g_array_index (self->parts, FpLinenPart, piece);
}

static inline const FpCloth *
fp_linen_cloth (const FpLinenPlan *self, guint cloth)
{
  return &g_array_index (self->cloths, FpCloth, cloth);
}

FpUnits  fp_linen_units (const FpLinenPlan *self);
double   fp_linen_squaring (const FpLinenPlan *self); /* mm, for squaring the end of what is bought */

/* --- names: all owned by the caller ---------------------------------------------- */

/* "Top cloth, Altar" */
char *fp_linen_cloth_name  (const FpCloth *cloth);
/* That, and with a number where there are more of it. */
char *fp_linen_piece_name  (const FpLinenPlan *self, guint piece);
/* "A", "AB": of its cloth; and with its number, where there are more of it, and its width: "A2", "A2b". */
char *fp_linen_letter      (guint cloth);
char *fp_linen_piece_letter (const FpLinenPlan *self, guint piece);
/* "4724 × 914" */
char *fp_linen_size_text   (const FpLinenPlan *self, double length, double width);

/* --- sentences: owned by the caller ---------------------------------------------- */

/* What to buy, and what is in it. */
char *fp_linen_buy_text   (const FpLinenPlan *self);
/* "19 at the ends, 19 at the sides, 8 turned in" */
char *fp_linen_hems_text  (const FpLinenPlan *self, const FpCloth *cloth);
/* How it falls, is cut out, folded, waxed; "" where it is like any other. */
char *fp_linen_made_text  (const FpLinenPlan *self, const FpCloth *cloth);
/* Of all that is wider than the bolt; and of one, which width it needs, and how it may be joined. */
char *fp_linen_wide_head  (const FpLinenPlan *self);
char *fp_linen_wide_text  (const FpLinenPlan *self, const FpLinenWide *wide);
/* Where cloths stop before something: of each altar; (element-type utf8) */
GPtrArray *fp_linen_stops_texts (const FpLinenPlan *self);
/* In which order it is done; (element-type utf8). */
GPtrArray *fp_linen_order_texts (const FpLinenPlan *self);
/* A cloth of silk: its number, and how it is finished and cut. */
char *fp_linen_silk_text  (const FpLinenPlan *self, const FpCloth *cloth);
#define FP_LINEN_SILK_HEAD "Of silk or another stuff in the colour of the day, bought by its own width; it is not washed:"

/* --- drawn ------------------------------------------------------------------------- */

#define FP_LINEN_LEGEND \
  "Selvedges above and below; the arrow is the warp. The front edge of a cloth lies below, of one laid across the bolt on the left. " \
  "Dotted: hem. Long dashes: fold. Short dashes: cut out."

/* The bolt, parted where a cut across it meets no piece, in rows one over the other. */
typedef struct
{
  const FpLinenPlan *plan;
  GArray            *row;   /* double: where each row begins along the bolt; and the end of the last */
  double             scale;
} FpBoltRows;

/* The largest scale at which all rows go into that room, or @asked if they do; 0: none. */
double fp_bolt_rows_scale (const FpLinenPlan *plan, double width, double height, double asked);
void   fp_bolt_rows_init  (FpBoltRows *self, const FpLinenPlan *plan, double width, double scale);
void   fp_bolt_rows_clear (FpBoltRows *self);
double fp_bolt_rows_height (const FpBoltRows *self);
void   fp_bolt_rows_draw  (const FpBoltRows *self, FpDrawing *drawing, double left, double top);

G_END_DECLS
