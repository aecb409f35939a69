/* SPDX-License-Identifier: GPL-3.0-or-later */
/* draw-pew.h - the view from the pew, as asked on the command line */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef struct
{
  char *place, *when, *look; /* as typed; owned */
} FpDrawPew;

void     fp_draw_pew_clear (FpDrawPew *self);

/* FALSE after having said what is wrong. */
gboolean fp_draw_pew_check (const FpDrawPew *self);
/* A strip of all alternatives, not one view of one of them. */
gboolean fp_draw_pew_is_strip (const FpDrawPew *self);

/* (transfer full) (element-type FpDrawing); NULL with %FP_ERROR_RANGE where there is no such place. */
GPtrArray *fp_draw_pew_pages (const FpDrawPew *self, const FpScene *scene, const FpSheetSpec *spec, GError **error);

G_END_DECLS
