/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheets.h - the pages to print or export, made on any thread; knows no toolkit */
#pragma once

#include "sight-drafter.h"
#include "sun-look.h"

#include "footpace/card.h"
#include "footpace/review.h"

G_BEGIN_DECLS

/* Which setting cards, and for whom. */
typedef struct
{
  guint       celebrations; /* FpCelebration bits; 0: those of the brief       */
  guint       servers;      /* 1 or 2                                          */
  FpAltarSide first;
  gboolean    small;        /* A5, whatever the paper                          */
} FpCardLook;
#define FP_CARD_LOOK_USUAL ((FpCardLook) { 0, 1, FP_EPISTLE_SIDE, TRUE })

/* What sheets of sight, sun and cards show, which no project keeps. */
typedef struct
{
  FpSightLook sight;
  FpSunLook   sun;
  FpCardLook  card;
} FpSheetLooks;

typedef struct
{
  const FpProject *project;     /* owned */
  guint            alternative;
  guint            celebration; /* that the church is set for; 0: all things   */
  FpPageSetup      page;
  FpSheetLooks     looks;
  char            *number;      /* owned; NULL or "": from the title         */
} FpSheetOrder;

FpSheetOrder *fp_sheet_order_copy (const FpSheetOrder *order);
void          fp_sheet_order_free (FpSheetOrder *order);

typedef struct
{
  GPtrArray     *pages;         /* FpDrawing; NULL when it failed            */
  const FpScene *scene;         /* owned: for names in an SVG                */
  double         scale;         /* that it was drawn to                      */
  GError        *error;
} FpSheets;

FpSheets *fp_sheets_new  (const FpSheetOrder *order, GCancellable *cancel); /* NULL: cancelled */
void      fp_sheets_free (FpSheets *self);

/* Pages to be joined are no SVG: that is written of the whole sheet. */
gboolean  fp_sheets_can_be (const FpSheetOrder *order, const char *format);
/* "pdf", "svg" or "png". Pages after the first of an SVG or PNG go to NAME-2.svg … */
guint     fp_sheets_files (const FpSheets *self, const char *format); /* how many that makes */
gboolean  fp_sheets_write (const FpSheets *self, const char *format, const char *path, GError **error);
/* "Holy Rood, elevation, A3.pdf" without what no file name may have; owned by the caller. */
char     *fp_sheets_file_name (const FpSheetOrder *order, const char *format);
const char *fp_sheets_label (guint sheet);

G_END_DECLS
