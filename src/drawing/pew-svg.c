/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-svg.c - a view from the pew as SVG (W3C SVG 1.1 Second Edition): polygons, ellipses and lines, no raster */
#include "footpace/pew-view.h"

#include <math.h>

typedef struct
{
  const FpPewView *view;
  GString         *out;
  FpBox            box;
  double           scale, pen;
  FpSurfaceLook    look;
  guint            number;
} Writer;

/* --- numbers ----------------------------------------------------------------- */

/* A thousandth of a millimetre. */
static void
add_number (Writer *w, const char *before, double v)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (text, sizeof text, "%.3f", v);
  g_string_append (w->out, before);
  g_string_append (w->out, g_str_equal (text, "-0.000") ? "0" : text);
}

static void
add_point (Writer *w, const char *before, FpPoint p)
{
  const FpBox picture = fp_pew_view_box (w->view);

  add_number (w, before, w->box.x0 + (p.x - picture.x0) * w->scale);
  add_number (w, " ", w->box.y0 + (picture.y1 - p.y) * w->scale);
}

static void
add_ink (Writer *w, const char *attribute, FpInk ink)
{
  g_string_append_printf (w->out, " %s=\"#%02x%02x%02x\"", attribute, (guint) lround (ink.r * 255),
                          (guint) lround (ink.g * 255), (guint) lround (ink.b * 255));
}

static void
add_box (Writer *w)
{
  add_number (w, " x=\"", w->box.x0);
  add_number (w, "\" y=\"", w->box.y0);
  add_number (w, "\" width=\"", w->box.x1 - w->box.x0);
  add_number (w, "\" height=\"", w->box.y1 - w->box.y0);
  g_string_append_c (w->out, '"');
}

/* --- faces --------------------------------------------------------------------- */

static void
add_polygon (Writer *w, const FpPewFace *face)
{
  const FpPoint *pt = fp_pew_view_points (w->view) + face->first;

  g_string_append (w->out, "<path d=\"");
  for (guint i = 0; i < face->n; i++)
    add_point (w, i == 0 ? "M" : "L", pt[i]);
  g_string_append (w->out, "Z\"");
  add_ink (w, "fill", fp_pew_ink (face->standing, face->tone, w->look));
  g_string_append (w->out, "/>\n");
}

/* Shades of heads are told by their lightest and darkest; heads that look alike share them. */
static guint
shade_of (const FpPewFace *face)
{
  return (guint) lround (CLAMP (face->tone, 0, 1) * 255) * 3 + face->standing;
}

static void
add_stop (Writer *w, const char *offset, FpInk ink)
{
  g_string_append_printf (w->out, "<stop offset=\"%s\"", offset);
  add_ink (w, "stop-color", ink);
  g_string_append (w->out, "/>");
}

static void
add_shade (Writer *w, const FpPewFace *face)
{
  FpInk light, dark;

  fp_pew_round_inks (face, w->look, &light, &dark);
  g_string_append_printf (w->out, "<radialGradient id=\"shade-%u-%u\" ", w->number,
                          shade_of (face));
  /* Of the box about the ellipse, whose sides are 1. */
  add_number (w, " cx=\"", (1 - FP_PEW_SHADE_AT) / 2);
  add_number (w, "\" cy=\"", (1 - FP_PEW_SHADE_AT) / 2);
  add_number (w, "\" r=\"", FP_PEW_SHADE / 2);
  g_string_append (w->out, "\">");
  add_stop (w, "0", light);
  add_stop (w, "1", dark);
  g_string_append (w->out, "</radialGradient>\n");
}

static void
add_shades (Writer *w)
{
  g_autoptr (GHashTable) there = g_hash_table_new (NULL, NULL);
  guint n;
  const FpPewFace *face = fp_pew_view_faces (w->view, &n);

  for (guint i = 0; i < n; i++)
    if (face[i].type == FP_PEW_ELLIPSE && g_hash_table_add (there, GUINT_TO_POINTER (shade_of (&face[i]) + 1)))
      add_shade (w, &face[i]);
}

static void
add_ellipse (Writer *w, const FpPewFace *face)
{
  add_number (w, "<ellipse rx=\"", hypot (face->a.x, face->a.y) * w->scale);
  add_number (w, "\" ry=\"", hypot (face->b.x, face->b.y) * w->scale);
  add_point (w, "\" transform=\"translate(", face->at);
  add_number (w, ") rotate(", -atan2 (face->a.y, face->a.x) * 180 / G_PI);
  g_string_append_printf (w->out, ")\" fill=\"url(#shade-%u-%u)\"", w->number, shade_of (face));
  add_number (w, " stroke-width=\"", w->pen);
  g_string_append_c (w->out, '"');
  add_ink (w, "stroke", fp_pew_ink (face->standing, fp_pew_line_tone (face->tone), w->look));
  g_string_append (w->out, "/>\n");
}

/* Lines of one sort and tone become one path, as they are painted in one stroke. */
static void
add_lines (Writer *w, const FpPewFace *face)
{
  const FpPewLine *line = fp_pew_view_lines (w->view) + face->first_line;

  for (guint i = 0; i < face->n_lines; i++)
    {
      const gboolean begins = i == 0 || line[i - 1].type != line[i].type || line[i - 1].tone != line[i].tone;
      const gboolean ends = i + 1 == face->n_lines || line[i + 1].type != line[i].type || line[i + 1].tone != line[i].tone;
      if (begins)
        g_string_append (w->out, "<path fill=\"none\" d=\"");
      add_point (w, "M", line[i].a);
      add_point (w, "L", line[i].b);
      if (!ends)
        continue;
      add_number (w, "\" stroke-width=\"", w->pen * (line[i].type == FP_PEW_OUTLINE ? FP_PEW_OUTLINE_WIDER : 1));
      g_string_append_c (w->out, '"');
      add_ink (w, "stroke", fp_pew_ink (face->standing, line[i].tone, w->look));
      g_string_append (w->out, "/>\n");
    }
}

static void
begin_owner (Writer *w, guint owner)
{
  g_autofree char *name = fp_pew_view_name (w->view, owner), *title = g_markup_escape_text (name, -1);

  g_string_append_printf (w->out, "<g><title>%s</title>\n", title);
}

static void
add_faces (Writer *w)
{
  guint n;
  const FpPewFace *face = fp_pew_view_faces (w->view, &n);

  for (guint i = 0; i < n; i++)
    {
      if (i == 0 || face[i].owner != face[i - 1].owner)
        begin_owner (w, face[i].owner);
      if (face[i].type == FP_PEW_ELLIPSE)
        add_ellipse (w, &face[i]);
      else
        add_polygon (w, &face[i]);
      add_lines (w, &face[i]);
      if (i + 1 == n || face[i + 1].owner != face[i].owner)
        g_string_append (w->out, "</g>\n");
    }
}

char *
fp_pew_view_to_svg (const FpPewView *self, FpBox box, double pen, FpSurfaceLook look, guint number)
{
  const FpBox picture = fp_pew_view_box (self);
  Writer w = { self, g_string_new (NULL), box, (box.x1 - box.x0) / (picture.x1 - picture.x0), pen, look, number };

  g_string_append_printf (w.out, "<g id=\"picture-%u\" clip-path=\"url(#frame-%u)\" stroke-linecap=\"square\">\n<defs>"
                          "<clipPath id=\"frame-%u\"><rect", number, number, number);
  add_box (&w);
  g_string_append (w.out, "/></clipPath>\n");
  add_shades (&w);
  g_string_append (w.out, "</defs>\n<rect");
  add_box (&w);
  add_ink (&w, "fill", fp_pew_ground_ink (look));
  g_string_append (w.out, "/>\n");
  add_faces (&w);
  g_string_append (w.out, "</g>\n");
  return g_string_free (w.out, FALSE);
}
