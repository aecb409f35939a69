/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A view from the pew made and painted at 640 x 480, against cairo alone filling the same polygons in one colour.
 *
 * In processor time of this thread, so that other work on the machine counts for little.  The aim of one frame is told
 * beside the ratio, which alone says anything on another machine.
 */
#include "footpace/pew-view.h"
#include "parish.h"

#include <cairo.h>
#include <stdlib.h>
#include <time.h>

#define RUNS 15
#define WIDE 640
#define HIGH 480
#define FRAME_MS (1000.0 / 60)
#define RATIO_MOST 10.0

static double
now (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static int
by_time (const void *a, const void *b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return (p > q) - (p < q);
}

static double
middle_of (double *took)
{
  qsort (took, RUNS, sizeof *took, by_time);
  return took[RUNS / 2];
}

/* Ellipses by their boxes: a little less than they are. */
static void
fill_alone (const FpPewView *view, cairo_t *cr)
{
  const FpBox box = fp_pew_view_box (view);
  const double scale = WIDE / (box.x1 - box.x0);
  guint n;
  const FpPewFace *face = fp_pew_view_faces (view, &n);

  cairo_set_source_rgb (cr, 0.8, 0.8, 0.8);
  for (guint i = 0; i < n; i++)
    {
      const FpPoint *pt = fp_pew_view_points (view) + face[i].first;
      for (guint k = 0; k < face[i].n; k++)
        cairo_line_to (cr, (pt[k].x - box.x0) * scale, (box.y1 - pt[k].y) * scale);
      if (face[i].n == 0)
        cairo_rectangle (cr, (face[i].at.x - face[i].a.x - box.x0) * scale, (box.y1 - face[i].at.y - face[i].b.y) * scale,
                         2 * face[i].a.x * scale, 2 * face[i].b.y * scale);
      cairo_fill (cr);
    }
}

/* TRUE where the aims are met. */
static gboolean
measure (const char *church, FpProject *project, FpPewTypical where)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDE, HIGH);
  double made[RUNS], painted[RUNS], filled[RUNS];
  FpPewSpec spec = { 0 };
  guint faces = 0;

  if (!fp_pew_typical_spec (people, where, &spec))
    return FALSE;
  for (guint i = 0; i < RUNS; i++)
    {
      cairo_t *cr = cairo_create (image);
      cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST); /* as in its window */
      const double begun = now ();
      g_autoptr (FpPewView) view = fp_pew_view_new (people, &spec);
      const double had = now ();
      fp_pew_view_paint (view, cr, (FpBox) { 0, 0, WIDE, HIGH }, 0.75, FP_SURFACE_PAPER);
      const double done = now ();
      fill_alone (view, cr);
      made[i] = had - begun;
      painted[i] = done - had;
      filled[i] = now () - done;
      fp_pew_view_faces (view, &faces);
      cairo_destroy (cr);
    }
  cairo_surface_destroy (image);
  const double make = middle_of (made), paint = middle_of (painted), fill = middle_of (filled);
  const double ratio = (make + paint) / fill;
  g_print ("%s, %s: %u faces, made %.2f ms, painted %.2f ms, cairo alone %.2f ms: %.1f times; aim: at most %.1f%s; "
           "%.2f of a frame\n", church, fp_pew_typical_id (where), faces, make, paint, fill, ratio, RATIO_MOST,
           ratio <= RATIO_MOST ? "" : " MISSED", (make + paint) / FRAME_MS);
  return ratio <= RATIO_MOST;
}

int
main (void)
{
  static const FpPewTypical from[] = { FP_PEW_MIDDLE, FP_PEW_BACK };
  g_autoptr (FpProject) parish = parish_new (13), great = cathedral_new (25);
  gboolean met = TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (from); i++)
    {
      met &= measure ("312 seats", parish, from[i]);
      met &= measure ("1200 seats", great, from[i]);
    }
  return met ? 0 : 1;
}
