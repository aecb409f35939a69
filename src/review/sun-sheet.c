/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-sheet.c - the sun at a time on paper: plan and section to one scale, and beside them in whose eyes it is */
#include "sun-private.h"

#include "footpace/sun-marks.h"

#include <math.h>

/* Paper mm. */
#define GAP         6.0
#define LETTERING   2.5
#define SPACING     4.6
#define TEXT_LEAST  42.0 /* height of the column of words                     */
#define WORDS_MOST  150.0 /* width of the words                               */
#define POINT       4.0  /* radius of the north point                         */
#define POINT_ROOM  20.0 /* from its middle to what else there is             */

typedef struct
{
  FpProjection *of;
  FpViewLayout  layout;
  FpMargins     around;
  double        width, height; /* with its margins, paper mm                  */
} View;

typedef struct
{
  const FpSunStudy  *study;
  const FpScene     *scene;
  const FpSheetSpec *spec;
  FpBox              content;
  View               plan, section;
} Making;

/* --- set out ---------------------------------------------------------------------- */

static void
set_view (const Making *m, View *view, double scale)
{
  const FpBox box = fp_projection_box (view->of);

  view->layout = (FpViewLayout) {
    .scale = scale, .clip = FP_BOX_EMPTY, .labels = TRUE, .hidden = fp_projection_hidden (view->of),
    .units = fp_project_brief (fp_scene_project (m->scene))->units,
  };
  view->around = fp_view_margins (view->of, &view->layout);
  view->width = view->around.left + (box.x1 - box.x0) / scale + view->around.right;
  view->height = view->around.below + (box.y1 - box.y0) / scale + view->around.above;
}

/* The plan on the left; on the right the section, the words under it, and the north point. */
static gboolean
fits (Making *m, double scale)
{
  const double width = m->content.x1 - m->content.x0, height = m->content.y1 - m->content.y0;

  set_view (m, &m->plan, scale);
  set_view (m, &m->section, scale);
  return m->plan.width + GAP + m->section.width <= width && m->plan.height <= height
         && m->section.height + GAP + TEXT_LEAST <= height;
}

/* 0: at none. */
static double
largest_that_fits (Making *m)
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  for (guint i = 0; i < n; i++)
    if (fits (m, scale[i]))
      return scale[i];
  return 0;
}

static double
choose_scale (Making *m, GError **error)
{
  double largest;

  if (m->spec->scale > 0 && fits (m, m->spec->scale))
    return m->spec->scale;
  largest = largest_that_fits (m);
  if (largest > 0 && !(m->spec->scale > 0))
    return largest;
  if (largest > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "plan and section do not fit that paper at 1:%g; the largest scale that "
                 "fits is 1:%g", m->spec->scale, largest);
  else
    g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "plan and section fit that paper at no scale; choose larger paper");
  return 0;
}

/* With its lower left corner, margins included, there. */
static void
put_view (View *view, FpPoint corner)
{
  const FpBox box = fp_projection_box (view->of);

  view->layout.origin = (FpPoint) { corner.x + view->around.left - box.x0 / view->layout.scale,
                                    corner.y + view->around.below - box.y0 / view->layout.scale };
}

/* --- drawn ------------------------------------------------------------------------- */

static void
draw_views (Making *m, FpDrawing *drawing, const GArray *patches)
{
  fp_drawing_add_sun_floor (drawing, patches, &m->plan.layout);
  fp_drawing_add_view (drawing, m->plan.of, &m->plan.layout);
  fp_drawing_add_view (drawing, m->section.of, &m->section.layout);
  fp_drawing_add_sun_shafts (drawing, patches, FP_VIEW_PLAN, &m->plan.layout);
  fp_drawing_add_sun_shafts (drawing, patches, FP_VIEW_SECTION, &m->section.layout);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_sun_study_draw_eyes (m->study, drawing, &m->plan.layout);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
}

static void
add_wrapped (GPtrArray *lines, const char *text, double width)
{
  g_ptr_array_extend_and_steal (lines, fp_lettering_wrap (text, LETTERING, width));
}

static void
add_windows (const Making *m, GPtrArray *lines, double width)
{
  g_autoptr (GPtrArray) through = fp_sun_study_windows (m->study, FALSE);

  for (guint i = 0; i < through->len; i++)
    add_wrapped (lines, g_ptr_array_index (through, i), width);
}

/* What is lit and what it does not know is told before the windows: of them there may be more than find room. */
static GPtrArray *
words (const Making *m, double width)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *when = fp_sun_study_when (m->study), *where = fp_sun_study_where (m->study);
  g_autofree char *result = fp_sun_study_result (m->study), *spared = fp_sun_study_spared (m->study);
  g_autofree char *rule = g_strdup_printf (
    "Dots: the sun is in the eyes of who sits there and looks towards the altar, at most %g° aside and %g° high (design "
    "judgement); with a ring: of a minister, who looks before him. Hatched: it shines on the floor, or on the pews over it. Doors are shut; roofs, trees and other buildings are not known.",
    FP_SUN_ASIDE_MOST, FP_SUN_HEIGHT_MOST);

  add_wrapped (lines, when, width);
  add_wrapped (lines, where, width);
  add_wrapped (lines, rule, width);
  g_ptr_array_add (lines, g_strdup (""));
  add_wrapped (lines, result, width);
  if (*spared != '\0')
    add_wrapped (lines, spared, width);
  add_windows (m, lines, width);
  return lines;
}

/* From @top down, as many as there is room for; the last tells that there are more. */
static void
draw_words (const Making *m, FpDrawing *drawing, FpPoint top, double width)
{
  g_autoptr (GPtrArray) lines = words (m, width);
  const guint most = (guint) MAX (1, floor ((top.y - m->content.y0) / SPACING));

  for (guint i = 0; i < lines->len && i < most; i++)
    {
      const char *text = i + 1 == most && lines->len > most ? "…" : g_ptr_array_index (lines, i);
      if (*text != '\0')
        fp_drawing_text (drawing, (FpPoint) { top.x, top.y - LETTERING - i * SPACING }, LETTERING, 0, FP_ALIGN_LEFT, text);
    }
}

static FpDrawing *
draw_sheet (Making *m, double scale)
{
  FpSheetSpec spec = *m->spec;
  FpDrawing *drawing;
  g_autoptr (GArray) patches = fp_sunlight_patches (m->study->light);
  const double x = m->content.x0 + m->plan.width + GAP, foot = m->content.y1 - m->section.height;
  const double north = fp_project_brief (fp_scene_project (m->scene))->north;

  spec.findings = NULL;
  drawing = fp_sheet_blank_of (m->scene, &spec, "Sun", "sun", scale, &m->content);
  put_view (&m->plan, (FpPoint) { m->content.x0, m->content.y1 - m->plan.height });
  put_view (&m->section, (FpPoint) { x, foot });
  draw_views (m, drawing, patches);
  fp_drawing_add_sun_point (drawing, (FpPoint) { x + POINT_ROOM, foot - GAP - POINT_ROOM }, POINT, north, m->study->towards);
  draw_words (m, drawing, (FpPoint) { x + 2 * POINT_ROOM, foot - GAP }, MIN (m->content.x1 - x - 2 * POINT_ROOM, WORDS_MOST));
  return drawing;
}

FpDrawing *
fp_sun_study_sheet (const FpSunStudy *self, const FpSheetSpec *spec, double *scale, GError **error)
{
  const FpScene *scene = fp_people_scene (self->people);
  const FpHidden hidden = spec->hidden | 1u << FP_SHOW_NAMES | 1u << FP_SHOW_DIMENSIONS | 1u << FP_SHOW_LEVELS;
  g_autoptr (FpProjection) plan = fp_projection_new_cut (scene, FP_VIEW_PLAN, NULL, hidden);
  g_autoptr (FpProjection) section = fp_projection_new_cut (scene, FP_VIEW_SECTION, NULL, hidden);
  FpSheetSpec empty = *spec;
  Making m = { .study = self, .scene = scene, .spec = spec, .plan.of = plan, .section.of = section };
  double drawn;

  empty.findings = NULL;
  fp_drawing_unref (fp_sheet_blank_of (scene, &empty, "Sun", "sun", 1, &m.content));
  drawn = choose_scale (&m, error);
  if (scale != NULL)
    *scale = drawn;
  return drawn > 0 ? draw_sheet (&m, drawn) : NULL;
}
