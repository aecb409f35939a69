/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying.c - the sheets of the laying: its panels set one beside the other, at one scale */
#include "laying-private.h"

#include "footpace/error.h"
#include "footpace/schedules.h"

#define TITLE "Laying of the stone"
#define CODE  "laying"
#define MANY  3u    /* sheets; where a scale needs more, a smaller one is tried */
#define LEGIBLE 50.0 /* a scale                                             */
#define GAP   4.0   /* paper mm between panels                              */

static const char notes[] =
  "Plans are seen from above, the people below; dashed is what lies beneath. Write its mark on the back of each slab before it leaves "
  "the yard. Edges that are seen are finished as faces are; steps are not polished, lest people slip. How what stands upright is "
  "fixed is for the mason and an engineer. Measure on the spot before anything is cut.";

typedef struct
{
  const FpScene     *scene;
  const FpSheetSpec *spec;
  FpSheetSpec        page;
  const GArray      *panels;
  double             scale;
  GPtrArray         *pages;  /* NULL: they are only counted                 */
  FpDrawing         *drawing;
  FpBox              room;
  guint              n;      /* of pages begun                              */
  FpPoint            at;     /* where the next panel comes                  */
  double             row;    /* how high the row of panels is               */
} Setting;

/* --- what is laid ------------------------------------------------------------------ */

static void
laid_clear (gpointer laid)
{
  fp_stonework_free (((FpLaid *) laid)->stonework);
}

static void
panel_clear (gpointer panel)
{
  g_free (((FpPanel *) panel)->title);
}

/* In the order of the schedules, so that marks are the same. */
static GArray *
laid_of (const FpScene *scene)
{
  const FpWorks *works = fp_project_works (fp_scene_project (scene));
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpLaid));
  guint n, marked = 0;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  g_array_set_clear_func (out, laid_clear);
  for (guint i = 0; i < n; i++)
    if (fp_placed_is_new (&placed[i]))
      {
        const FpLaid laid = { &placed[i], fp_stonework_new (fp_item_kind (placed[i].item), &placed[i].form, works), marked };

        marked += laid.stonework->slabs->len;
        g_array_append_val (out, laid);
      }
  return out;
}

static GArray *
panels_of (const FpScene *scene, const GArray *laid, FpUnits units)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPanel));

  g_array_set_clear_func (out, panel_clear);
  for (guint i = 0; i < laid->len; i++)
    fp_laying_add_panels (scene, &g_array_index (laid, FpLaid, i), units, out);
  return out;
}

/* --- on pages ---------------------------------------------------------------------- */

static FpUnits
units_of (const Setting *s)
{
  return fp_project_brief (fp_scene_project (s->scene))->units;
}

static GPtrArray *
foot_lines (const Setting *s)
{
  g_autofree char *stone = fp_stone_text (fp_project_works (fp_scene_project (s->scene)), units_of (s));
  g_autofree char *all = g_strconcat (stone, notes, NULL);

  return fp_lettering_wrap (all, FP_LAYING_LETTERS, s->room.x1 - s->room.x0);
}

/* The notes stand at the foot of each, for each may be alone in the yard. */
static void
begin_page (Setting *s)
{
  g_autoptr (GPtrArray) lines = foot_lines (s);

  s->n++;
  s->at = (FpPoint) { s->room.x0, s->room.y1 };
  s->row = 0;
  if (s->pages == NULL)
    return;
  s->page.page = s->n;
  s->drawing = fp_sheet_blank_of (s->scene, &s->page, TITLE, CODE, s->scale, &s->room);
  g_ptr_array_add (s->pages, s->drawing);
  fp_drawing_set_item (s->drawing, NULL, FP_STANDING_EXISTING, -1);
  for (guint i = 0; i < lines->len; i++)
    fp_drawing_text (s->drawing, (FpPoint) { s->room.x0, s->room.y0 + (lines->len - 1 - i) * FP_LAYING_LINE }, FP_LAYING_LETTERS, 0,
                     FP_ALIGN_LEFT, g_ptr_array_index (lines, i));
}

/* FALSE where it is larger than a page. */
static gboolean
set_panel (Setting *s, const FpPanel *panel)
{
  g_autoptr (GPtrArray) lines = foot_lines (s);
  const double foot = s->room.y0 + (lines->len + 1) * FP_LAYING_LINE;
  double width, height;

  fp_panel_size (panel, s->scale, &width, &height);
  if (width > s->room.x1 - s->room.x0 || height > s->room.y1 - foot)
    return FALSE;
  if (s->n > 0 && s->at.x > s->room.x0 && s->at.x + width > s->room.x1)
    s->at = (FpPoint) { s->room.x0, s->at.y - s->row - GAP }, s->row = 0;
  if (s->n == 0 || s->at.y - height < foot)
    begin_page (s);
  if (s->pages != NULL)
    fp_panel_draw (panel, s->drawing, s->at, s->scale, fp_project_works (fp_scene_project (s->scene)), units_of (s));
  s->at.x += width + GAP;
  s->row = MAX (s->row, height);
  return TRUE;
}

/* How many pages they take; 0 where one of them fits none. */
static guint
set_all (Setting *s)
{
  s->n = 0;
  for (guint i = 0; i < s->panels->len; i++)
    if (!set_panel (s, &g_array_index (s->panels, FpPanel, i)))
      return 0;
  return s->n;
}

static guint
count_at (const Setting *s, double scale)
{
  Setting tried = *s;

  tried.scale = scale;
  tried.pages = NULL;
  return set_all (&tried);
}

/* The largest at which they take few pages, but none at which marks run together where a larger one fits at all. */
static double
choose_scale (const Setting *s, GError **error)
{
  guint n;
  const double *scales = fp_sheet_scales (&n);
  double fits = 0;

  if (s->spec->scale > 0 && count_at (s, s->spec->scale) > 0)
    return s->spec->scale;
  for (guint i = 0; i < n; i++)
    {
      const guint pages = scales[i] < 10 ? 0 : count_at (s, scales[i]);

      if (pages > 0 && fits == 0)
        fits = scales[i];
      if (pages > 0 && (pages <= MANY || scales[i] >= LEGIBLE) && !(s->spec->scale > 0))
        return scales[i];
    }
  if (s->spec->scale > 0 && fits > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the laying does not fit this paper at 1:%g; the largest scale that fits is 1:%g",
                 s->spec->scale, fits);
  else if (!(fits > 0))
    g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "the laying fits this paper at no scale; choose larger paper");
  return s->spec->scale > 0 ? 0 : fits;
}

GPtrArray *
fp_laying_sheets_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  g_autoptr (GArray) laid = laid_of (scene);
  g_autoptr (GArray) panels = panels_of (scene, laid, fp_project_brief (fp_scene_project (scene))->units);
  Setting s = { .scene = scene, .spec = spec, .page = *spec, .panels = panels };

  if (panels->len == 0)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "nothing new in this alternative is laid of stone");
      return NULL;
    }
  s.page.findings = NULL;
  fp_drawing_unref (fp_sheet_blank_of (scene, &s.page, TITLE, CODE, 1, &s.room));
  s.scale = choose_scale (&s, error);
  if (!(s.scale > 0))
    return NULL;
  s.page.pages = count_at (&s, s.scale);
  s.pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  set_all (&s);
  if (scale != NULL)
    *scale = s.scale;
  return s.pages;
}
