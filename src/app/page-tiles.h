/* SPDX-License-Identifier: GPL-3.0-or-later */
/* page-tiles.h - a drawing as pixels, which are painted again only where it has changed
 *
 * The page is kept as a picture, and shown in tiles.  Where the next drawing
 * differs from the last one it is painted anew, and only the tiles that this
 * touches are new to the renderer: so a thing that is dragged costs what is
 * drawn about it, not the whole church.  What nobody sees is painted when it
 * comes into view.
 */
#pragma once

#include "footpace/drawing.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _FpPageTiles FpPageTiles;

FpPageTiles *fp_page_tiles_new  (void);
void         fp_page_tiles_free (FpPageTiles *self);

/* What a page is painted of, and how. */
typedef struct
{
  FpDrawing    *drawing;
  FpSurfaceLook look;
  double        px_per_mm; /* widget pixels to a millimetre of paper    */
  int           density;   /* device pixels to a widget pixel, 1 or more */
  cairo_rectangle_int_t seen; /* of the page, widget pixels from its upper left corner */
} FpPagePaint;

/* Paints what is seen and not painted yet. */
void         fp_page_tiles_paint (FpPageTiles *self, const FpPagePaint *paint);

/**
 * fp_page_tiles_snapshot:
 *
 * Paints likewise, and adds what is seen of the page, whose upper left
 * corner is at the origin, in widget pixels.  The origin must lie on a whole
 * device pixel, or else the page is blurred.
 */
void         fp_page_tiles_snapshot (FpPageTiles *self, const FpPagePaint *paint, GtkSnapshot *snapshot);

/* The picture is let go of; the next snapshot paints all that is seen. */
void         fp_page_tiles_forget (FpPageTiles *self);

/* Device pixels painted by the last snapshot that painted at all. */
guint64      fp_page_tiles_painted (const FpPageTiles *self);

G_END_DECLS
