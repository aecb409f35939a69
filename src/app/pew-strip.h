/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-strip.h - what is seen from the same places in every alternative, to be laid side by side; knows no toolkit */
#pragma once

#include "footpace/drawing.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Of one alternative from one place. */
typedef struct
{
  FpDrawing *picture; /* NULL: there is no such place                        */
  char      *told;    /* whose eye, and what it sees                         */
} FpPewSeenFrom;

typedef struct
{
  guint          n;
  FpPewSeenFrom *from; /* n times FP_N_PEW_TYPICAL                           */
} FpPewStrip;

/* On any thread; NULL: cancelled. */
FpPewStrip          *fp_pew_strip_new  (const FpProject *project, GCancellable *cancel);
void                 fp_pew_strip_free (FpPewStrip *self);
const FpPewSeenFrom *fp_pew_strip_get  (const FpPewStrip *self, guint alternative, FpPewTypical from);
/* Whether any alternative has such a place. */
gboolean             fp_pew_strip_has  (const FpPewStrip *self, FpPewTypical from);

/* All of them on sheets, a strip for each alternative, as a PDF. */
gboolean             fp_pew_strip_write (const FpProject *project, FpInkChoice ink, const char *path, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPewStrip, fp_pew_strip_free)

G_END_DECLS
