/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-paint.c - a view from the pew on a cairo surface, and its inks */
#include "footpace/pew-view.h"

#include <cairo.h>
#include <math.h>

/* How strongly the ink of proposed work colours its shades: told from the rest, and still a shade. */
#define PROPOSED 0.45
/* What is proposed is also darker, so that it is told in grey. */
#define PROPOSED_DARKER 0.93
#define DIMMED 0.8
#define LEAST_DOTS 2.5
#define LINE_TONE 0.45 /* of the face on which a line is drawn */

/* --- inks ------------------------------------------------------------------------ */

static FpInk
mix (FpInk a, FpInk b, double share)
{
  return (FpInk) { a.r + share * (b.r - a.r), a.g + share * (b.g - a.g), a.b + share * (b.b - a.b) };
}

/* On a dark ground it is still a picture with the light from above; only less bright. */
FpInk
fp_pew_ink (FpStanding standing, double tone, FpSurfaceLook look)
{
  const gboolean dark = look == FP_SURFACE_DARK || look == FP_SURFACE_SAFE_DARK;
  const FpSurfaceLook ink_look = look == FP_SURFACE_DARK ? FP_SURFACE_PAPER
                                 : look == FP_SURFACE_SAFE_DARK ? FP_SURFACE_SAFE : look;
  const FpInk existing = fp_pen_ink (FP_PEN_EDGE, FP_STANDING_EXISTING, ink_look);
  const FpInk own = mix (existing, fp_pen_ink (FP_PEN_EDGE, standing, ink_look), PROPOSED);
  const double light = tone * (standing == FP_STANDING_PROPOSED ? PROPOSED_DARKER : 1) * (dark ? DIMMED : 1);

  return mix (own, (FpInk) { 1, 1, 1 }, CLAMP (light, 0, 1));
}

FpInk
fp_pew_ground_ink (FpSurfaceLook look)
{
  return fp_pew_ink (FP_STANDING_EXISTING, 0.97, look);
}

double
fp_pew_line_tone (double tone)
{
  return tone * LINE_TONE;
}

void
fp_pew_round_inks (const FpPewFace *face, FpSurfaceLook look, FpInk *light, FpInk *dark)
{
  *light = fp_pew_ink (face->standing, MIN (face->tone + 0.06, 1), look);
  *dark = fp_pew_ink (face->standing, face->tone - 0.12, look);
}

/* --- painting -------------------------------------------------------------------- */

typedef struct
{
  const FpPewView *view;
  cairo_t         *cr;
  cairo_matrix_t   to_box; /* from the picture plane */
  double           pen, least; /* lines that are shorter are left out */
  FpSurfaceLook    look;
} Painter;

static void
set_ink (Painter *p, FpInk ink)
{
  cairo_set_source_rgb (p->cr, ink.r, ink.g, ink.b);
}

static FpPoint
in_box (const Painter *p, FpPoint at)
{
  return (FpPoint) { p->to_box.xx * at.x + p->to_box.x0, p->to_box.yy * at.y + p->to_box.y0 };
}

static void
paint_polygon (Painter *p, const FpPewFace *face)
{
  const FpPoint *pt = fp_pew_view_points (p->view) + face->first;

  for (guint i = 0; i < face->n; i++)
    {
      const FpPoint at = in_box (p, pt[i]);
      cairo_line_to (p->cr, at.x, at.y);
    }
  cairo_close_path (p->cr);
  set_ink (p, fp_pew_ink (face->standing, face->tone, p->look));
  cairo_fill (p->cr);
}

static void
set_round_ink (Painter *p, const FpPewFace *face)
{
  cairo_pattern_t *shades = cairo_pattern_create_radial (-FP_PEW_SHADE_AT, FP_PEW_SHADE_AT, 0, -FP_PEW_SHADE_AT,
                                                         FP_PEW_SHADE_AT, FP_PEW_SHADE);
  FpInk light, dark;

  fp_pew_round_inks (face, p->look, &light, &dark);
  cairo_pattern_add_color_stop_rgb (shades, 0, light.r, light.g, light.b);
  cairo_pattern_add_color_stop_rgb (shades, 1, dark.r, dark.g, dark.b);
  cairo_set_source (p->cr, shades);
  cairo_pattern_destroy (shades);
}

static void
paint_ellipse (Painter *p, const FpPewFace *face)
{
  const cairo_matrix_t unit = { face->a.x, face->a.y, face->b.x, face->b.y, face->at.x, face->at.y };
  cairo_matrix_t was;

  cairo_get_matrix (p->cr, &was);
  cairo_transform (p->cr, &p->to_box);
  cairo_transform (p->cr, &unit);
  cairo_arc (p->cr, 0, 0, 1, 0, 2 * G_PI);
  set_round_ink (p, face);
  cairo_set_matrix (p->cr, &was);
  cairo_fill_preserve (p->cr);
  set_ink (p, fp_pew_ink (face->standing, fp_pew_line_tone (face->tone), p->look));
  cairo_set_line_width (p->cr, p->pen);
  cairo_stroke (p->cr);
}

/* Lines of one sort and tone lie side by side, and do not cross many others: one stroke serves for them. */
static void
stroke_lines (Painter *p, const FpPewFace *face)
{
  const FpPewLine *line = fp_pew_view_lines (p->view) + face->first_line;
  /* The lines of walls are of many short ones, as over an arch. */
  const double least = face->part == FP_PART_WALL ? 0 : p->least;
  gboolean any = FALSE;

  for (guint i = 0; i < face->n_lines; i++)
    {
      const FpPoint a = in_box (p, line[i].a), b = in_box (p, line[i].b);
      if (fabs (b.x - a.x) >= least || fabs (b.y - a.y) >= least)
        {
          cairo_move_to (p->cr, a.x, a.y);
          cairo_line_to (p->cr, b.x, b.y);
          any = TRUE;
        }
      if (i + 1 < face->n_lines && line[i + 1].type == line[i].type && line[i + 1].tone == line[i].tone)
        continue;
      if (!any)
        continue;
      any = FALSE;
      set_ink (p, fp_pew_ink (face->standing, line[i].tone, p->look));
      cairo_set_line_width (p->cr, p->pen * (line[i].type == FP_PEW_OUTLINE ? FP_PEW_OUTLINE_WIDER : 1));
      cairo_stroke (p->cr);
    }
}

/* On a screen a line of hardly any dots is a stain, of which there would be thousands; paper may be looked at closely. */
static double
least_line (cairo_t *cr)
{
  double x = LEAST_DOTS, y = 0;

  if (cairo_surface_get_type (cairo_get_group_target (cr)) != CAIRO_SURFACE_TYPE_IMAGE)
    return 0;
  cairo_device_to_user_distance (cr, &x, &y);
  return hypot (x, y);
}

void
fp_pew_view_paint (const FpPewView *self, cairo_t *cr, FpBox box, double pen, FpSurfaceLook look)
{
  const FpBox picture = fp_pew_view_box (self);
  const double scale = (box.x1 - box.x0) / (picture.x1 - picture.x0);
  Painter p = { self, cr, { scale, 0, 0, -scale, box.x0 - scale * picture.x0, box.y0 + scale * picture.y1 }, pen,
                least_line (cr), look };
  guint n;
  const FpPewFace *face = fp_pew_view_faces (self, &n);

  cairo_save (cr);
  cairo_rectangle (cr, box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0);
  cairo_clip (cr);
  set_ink (&p, fp_pew_ground_ink (look));
  cairo_paint (cr);
  /* Square, not round: those take four times as long. */
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_SQUARE);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_new_path (cr);
  for (guint i = 0; i < n; i++)
    {
      if (face[i].type == FP_PEW_ELLIPSE)
        paint_ellipse (&p, &face[i]);
      else
        paint_polygon (&p, &face[i]);
      stroke_lines (&p, &face[i]);
    }
  cairo_restore (cr);
}
