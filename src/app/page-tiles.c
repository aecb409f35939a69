/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-tiles.h"

#include <math.h>

/* Device px to which what is painted again is rounded out: cairo paints far faster within a few rectangles than within
 * hundreds (measured: 3 ms against 5 for all that is drawn about an altar). */
#define GRAIN 32
#define TILE  128 /* device px: small enough that little is sent anew, large enough that a page has a hundred or two */

struct _FpPageTiles
{
  FpPagePaint      painted; /* what the picture shows; the drawing is ours, NULL: nothing */
  cairo_surface_t *picture;
  cairo_region_t  *stale;   /* of it, not painted yet; no tile that is made touches it */
  int              across, down; /* tiles */
  GskRenderNode  **tile;    /* NULL: to be made of the picture           */
  guint64          n_painted;
};

FpPageTiles *
fp_page_tiles_new (void)
{
  return g_new0 (FpPageTiles, 1);
}

void
fp_page_tiles_forget (FpPageTiles *self)
{
  for (int i = 0; i < self->across * self->down; i++)
    g_clear_pointer (&self->tile[i], gsk_render_node_unref);
  g_clear_pointer (&self->tile, g_free);
  self->across = self->down = 0;
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_clear_pointer (&self->stale, cairo_region_destroy);
  g_clear_pointer (&self->painted.drawing, fp_drawing_unref);
}

void
fp_page_tiles_free (FpPageTiles *self)
{
  if (self == NULL)
    return;
  fp_page_tiles_forget (self);
  g_free (self);
}

guint64
fp_page_tiles_painted (const FpPageTiles *self)
{
  return self->n_painted;
}

/* --- the picture ------------------------------------------------------------ */

static int
device_px (double mm, const FpPagePaint *paint)
{
  return MAX ((int) ceil (mm * paint->px_per_mm * paint->density - 1e-6), 1);
}

static int
width_of (const FpPageTiles *self)
{
  return cairo_image_surface_get_width (self->picture);
}

static int
height_of (const FpPageTiles *self)
{
  return cairo_image_surface_get_height (self->picture);
}

static void
begin_picture (FpPageTiles *self, const FpPagePaint *paint)
{
  fp_page_tiles_forget (self);
  self->picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, device_px (fp_drawing_width (paint->drawing), paint),
                                              device_px (fp_drawing_height (paint->drawing), paint));
  self->across = (width_of (self) + TILE - 1) / TILE;
  self->down = (height_of (self) + TILE - 1) / TILE;
  self->tile = g_new0 (GskRenderNode *, (gsize) self->across * (gsize) self->down);
  self->stale = cairo_region_create_rectangle (&(cairo_rectangle_int_t) { 0, 0, width_of (self), height_of (self) });
}

static int
down_to_grain (double px)
{
  return (int) floor (px / GRAIN) * GRAIN;
}

static int
up_to_grain (double px)
{
  return (int) ceil (px / GRAIN) * GRAIN;
}

/* The device pixels that a box on the paper touches, with one more round it for edges that are smoothed, in grains. */
static cairo_rectangle_int_t
pixels_of (const FpPagePaint *paint, const FpBox *box)
{
  const double scale = paint->px_per_mm * paint->density, height = fp_drawing_height (paint->drawing);
  const double width = fp_drawing_width (paint->drawing);
  const int x0 = down_to_grain (CLAMP (box->x0, 0.0, width) * scale - 1.0);
  const int y0 = down_to_grain (CLAMP (height - box->y1, 0.0, height) * scale - 1.0);
  const int x1 = up_to_grain (CLAMP (box->x1, 0.0, width) * scale + 1.0);
  const int y1 = up_to_grain (CLAMP (height - box->y0, 0.0, height) * scale + 1.0);

  return (cairo_rectangle_int_t) { x0, y0, x1 - x0, y1 - y0 };
}

static gboolean
is_painted_alike (const FpPagePaint *a, const FpPagePaint *b)
{
  return a->look == b->look && a->px_per_mm == b->px_per_mm && a->density == b->density;
}

/* Where the picture shows another drawing; NULL: all over.  Owned by the caller. */
static cairo_region_t *
changed_by (FpPageTiles *self, const FpPagePaint *paint)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));
  const cairo_rectangle_int_t all = { 0, 0, width_of (self), height_of (self) };
  cairo_region_t *changed;

  if (!fp_drawing_differences (self->painted.drawing, paint->drawing, boxes))
    return NULL;
  changed = cairo_region_create ();
  for (guint i = 0; i < boxes->len; i++)
    {
      const cairo_rectangle_int_t r = pixels_of (paint, &g_array_index (boxes, FpBox, i));
      /* Most lie among others: asked first, which is far faster than to join them. */
      if (cairo_region_contains_rectangle (changed, &r) != CAIRO_REGION_OVERLAP_IN)
        cairo_region_union_rectangle (changed, &r);
    }
  cairo_region_intersect_rectangle (changed, &all);
  return changed;
}

static void
clip_to (cairo_t *cr, const cairo_region_t *region)
{
  for (int i = 0; i < cairo_region_num_rectangles (region); i++)
    {
      cairo_rectangle_int_t r;
      cairo_region_get_rectangle (region, i, &r);
      cairo_rectangle (cr, r.x, r.y, r.width, r.height);
    }
  cairo_clip (cr);
}

static void
paint_picture (FpPageTiles *self, const FpPagePaint *paint, const cairo_region_t *where)
{
  cairo_t *cr = cairo_create (self->picture);

  clip_to (cr, where);
  cairo_scale (cr, paint->px_per_mm * paint->density, paint->px_per_mm * paint->density);
  fp_drawing_paint (paint->drawing, cr, paint->look, TRUE);
  cairo_destroy (cr);
  cairo_surface_flush (self->picture);
}

/* --- the tiles ---------------------------------------------------------------- */

static cairo_rectangle_int_t
area_of (const FpPageTiles *self, int x, int y)
{
  return (cairo_rectangle_int_t) { x * TILE, y * TILE, MIN (TILE, width_of (self) - x * TILE),
                                   MIN (TILE, height_of (self) - y * TILE) };
}

static void
forget_tiles (FpPageTiles *self, const cairo_region_t *where)
{
  for (int i = 0; i < self->across * self->down; i++)
    {
      const cairo_rectangle_int_t area = area_of (self, i % self->across, i / self->across);
      if (cairo_region_contains_rectangle (where, &area) != CAIRO_REGION_OVERLAP_OUT)
        g_clear_pointer (&self->tile[i], gsk_render_node_unref);
    }
}

/* A copy, since the picture goes on changing while frames that are under way still show the tile. */
static cairo_surface_t *
cut_out (const FpPageTiles *self, const cairo_rectangle_int_t *area)
{
  cairo_surface_t *copy = cairo_image_surface_create (CAIRO_FORMAT_RGB24, area->width, area->height);
  cairo_t *cr = cairo_create (copy);

  cairo_set_source_surface (cr, self->picture, -area->x, -area->y);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  return copy;
}

/* Not a texture: toolkit 4.8 turns each into floating-point numbers and back to paint it with cairo. */
static GskRenderNode *
tile_node (const FpPageTiles *self, const cairo_rectangle_int_t *area)
{
  const double d = self->painted.density;
  GskRenderNode *node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT ((float) (area->x / d), (float) (area->y / d),
                                                                 (float) (area->width / d), (float) (area->height / d)));
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  cairo_surface_t *pixels = cut_out (self, area);

  cairo_scale (cr, 1 / d, 1 / d);
  cairo_set_source_surface (cr, pixels, area->x, area->y);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (pixels);
  return node;
}

static guint64
n_pixels (const cairo_region_t *region)
{
  guint64 n = 0;

  for (int i = 0; i < cairo_region_num_rectangles (region); i++)
    {
      cairo_rectangle_int_t r;
      cairo_region_get_rectangle (region, i, &r);
      n += (guint64) r.width * (guint64) r.height;
    }
  return n;
}

/* What of the picture is not painted any more as @paint has it. */
static void
note_stale (FpPageTiles *self, const FpPagePaint *paint)
{
  const gboolean alike = self->painted.drawing != NULL && is_painted_alike (&self->painted, paint);
  cairo_region_t *changed = NULL;

  if (alike && self->painted.drawing == paint->drawing)
    return;
  if (alike)
    changed = changed_by (self, paint);
  if (changed != NULL)
    {
      cairo_region_union (self->stale, changed);
      forget_tiles (self, changed);
      cairo_region_destroy (changed);
    }
  else
    begin_picture (self, paint);
  fp_drawing_ref (paint->drawing);
  g_clear_pointer (&self->painted.drawing, fp_drawing_unref);
  self->painted = *paint;
}

/* --- what is seen --------------------------------------------------------------- */

/* From the first up to, and not with, the last. */
typedef struct { int x0, y0, x1, y1; } Tiles;

static Tiles
tiles_seen (const FpPageTiles *self, const FpPagePaint *paint)
{
  const cairo_rectangle_int_t *seen = &paint->seen;
  const int d = paint->density;

  return (Tiles) { MAX (seen->x * d / TILE, 0), MAX (seen->y * d / TILE, 0),
                   MIN (((seen->x + seen->width) * d + TILE - 1) / TILE, self->across),
                   MIN (((seen->y + seen->height) * d + TILE - 1) / TILE, self->down) };
}

static void
paint_stale (FpPageTiles *self, const FpPagePaint *paint, const Tiles *seen)
{
  const cairo_rectangle_int_t area = { seen->x0 * TILE, seen->y0 * TILE, MAX (seen->x1 - seen->x0, 0) * TILE,
                                       MAX (seen->y1 - seen->y0, 0) * TILE };
  cairo_region_t *due = cairo_region_copy (self->stale);

  cairo_region_intersect_rectangle (due, &area);
  if (!cairo_region_is_empty (due))
    {
      paint_picture (self, paint, due);
      self->n_painted = n_pixels (due);
      cairo_region_subtract (self->stale, due);
    }
  cairo_region_destroy (due);
}

static GskRenderNode **
tile_at (const FpPageTiles *self, int x, int y)
{
  return &self->tile[y * self->across + x];
}

void
fp_page_tiles_paint (FpPageTiles *self, const FpPagePaint *paint)
{
  Tiles seen;

  note_stale (self, paint);
  seen = tiles_seen (self, paint);
  paint_stale (self, paint, &seen);
  for (int y = seen.y0; y < seen.y1; y++)
    for (int x = seen.x0; x < seen.x1; x++)
      if (*tile_at (self, x, y) == NULL)
        {
          const cairo_rectangle_int_t area = area_of (self, x, y);
          *tile_at (self, x, y) = tile_node (self, &area);
        }
}

void
fp_page_tiles_snapshot (FpPageTiles *self, const FpPagePaint *paint, GtkSnapshot *snapshot)
{
  Tiles seen;

  fp_page_tiles_paint (self, paint);
  seen = tiles_seen (self, paint);
  for (int y = seen.y0; y < seen.y1; y++)
    for (int x = seen.x0; x < seen.x1; x++)
      gtk_snapshot_append_node (snapshot, *tile_at (self, x, y));
}
