/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheets.h"

#include "file-names.h"

#include "footpace/capacities.h"
#include "footpace/laying.h"
#include "footpace/linen-plan.h"
#include "footpace/schedules.h"

#include <string.h>

#define PNG_DOTS_PER_INCH 200.0

FpSheetOrder *
fp_sheet_order_copy (const FpSheetOrder *order)
{
  FpSheetOrder *copy = g_memdup2 (order, sizeof *order);

  copy->project = fp_project_ref (order->project);
  copy->number = g_strdup (order->number);
  return copy;
}

void
fp_sheet_order_free (FpSheetOrder *order)
{
  if (order == NULL)
    return;
  fp_project_unref (order->project);
  g_free (order->number);
  g_free (order);
}

static FpSheetSpec
spec_of (const FpSheetOrder *order, const char *date)
{
  const FpPageSetup *page = &order->page;
  FpSheetSpec spec = {
    .kind = page->sheet < FP_N_SHEETS ? (FpSheetKind) page->sheet : FP_SHEET_ELEVATION,
    .paper = page->paper, .landscape = page->landscape, .scale = page->scale, .whole = page->whole,
    .hidden = page->hidden, .ink = page->ink, .date = date,
    .number = order->number != NULL && *order->number != '\0' ? order->number : NULL,
  };

  spec.cut[FP_VIEW_SECTION] = page->along;
  spec.cut[FP_VIEW_ELEVATION] = page->across;
  return spec;
}

static void
draw_sheet (FpSheets *self, const FpSheetOrder *order, FpSheetSpec *spec, GCancellable *cancel)
{
  g_auto (GStrv) lines = NULL;
  g_autoptr (FpFindings) findings = NULL;
  g_autofree const FpWay **ways = NULL;
  g_autoptr (FpEvidence) spans = NULL;

  if (order->page.findings)
    {
      findings = fp_findings_of_scene (self->scene, NULL, cancel);
      if (findings == NULL)
        return;
      lines = fp_report_lines (findings);
      ways = fp_findings_ways (findings);
      spec->findings = (const char *const *) lines;
      spec->ways = ways;
      spec->measured = spans = fp_findings_spans (findings);
    }
  self->pages = order->page.tiled
                  ? fp_sheet_pages_tiled (self->scene, spec, order->page.tile, &self->scale, &self->error)
                  : fp_sheet_pages (self->scene, spec, &self->scale, &self->error);
}

static void
tile (FpSheets *self, const FpSheetOrder *order)
{
  GPtrArray *tiles = fp_sheets_tiled (self->pages, order->page.tile, fp_project_brief (order->project)->units);

  g_ptr_array_unref (self->pages);
  self->pages = tiles;
}

/* --- sheets that are no view of the church alone ----------------------------- */

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

/* One page, taken (NULL: it failed, and the error is there); or that in pieces. */
static void
put_page (FpSheets *self, const FpSheetOrder *order, FpDrawing *page)
{
  if (page == NULL)
    return;
  self->pages = g_ptr_array_new_with_free_func (unref_drawing);
  g_ptr_array_add (self->pages, page);
  if (order->page.tiled)
    tile (self, order);
}

static void
draw_sight (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec, GCancellable *cancel)
{
  FpSightLook look = order->looks.sight;
  g_autoptr (FpPeople) people = fp_people_new (self->scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, cancel);
  const FpMeasuring of = { self->scene, people, fp_levels (people), sight };
  guint n;

  fp_people_places (people, &n);
  if (look.place >= (int) n)
    look.place = -1;
  if (sight != NULL)
    put_page (self, order, fp_sight_sheet (&of, &look, spec, &self->scale, &self->error));
}

static void
draw_sun (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  const FpBrief *brief = fp_project_brief (order->project);
  g_autoptr (GDateTime) time = fp_sun_look_time (&order->looks.sun, brief, &self->error);
  g_autoptr (FpPeople) people = NULL;
  g_autoptr (FpSunStudy) study = NULL;

  if (time == NULL)
    return;
  people = fp_people_new (self->scene);
  study = fp_sun_study_new (people, time, brief->site.latitude, brief->site.longitude);
  put_page (self, order, fp_sun_study_sheet (study, spec, &self->scale, &self->error));
}

static void
draw_cards (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  const FpCardLook *look = &order->looks.card;
  FpCardSpec card = { .order = FP_ORDER_USUAL, .ink = spec->ink, .date = spec->date };

  card.order.servers = look->servers;
  card.order.first = look->first;
  if (look->small)
    fp_card_paper_find ("a5", &card.width, &card.height);
  else
    fp_paper_size (spec->paper, FALSE, &card.width, &card.height);
  self->pages = fp_cards_draw (self->scene, look->celebrations, &card, &self->error);
  if (self->pages != NULL && order->page.tiled)
    tile (self, order);
}

static void
draw_schedules (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  self->pages = fp_schedules_sheets_of (self->scene, spec, &self->error);
  if (self->pages != NULL && order->page.tiled)
    tile (self, order);
}

static void
draw_capacity (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  self->pages = fp_capacities_sheets_of (self->scene, spec, &self->error);
  if (self->pages != NULL && order->page.tiled)
    tile (self, order);
}

static void
draw_laying (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  self->pages = fp_laying_sheets_of (self->scene, spec, &self->scale, &self->error);
  if (self->pages != NULL && order->page.tiled)
    tile (self, order);
}

static void
draw_linen (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec)
{
  self->pages = fp_linen_sheets_of (self->scene, spec, &self->scale, &self->error);
  if (self->pages != NULL && order->page.tiled)
    tile (self, order);
}

static void
draw_comparison (FpSheets *self, const FpSheetOrder *order, const FpSheetSpec *spec, GCancellable *cancel)
{
  guint n = fp_project_n_alternatives (order->project), found = 0;
  g_autofree FpFindings **findings = g_new0 (FpFindings *, n);

  while (found < n && (findings[found] = fp_findings_of (order->project, found, NULL, cancel)) != NULL)
    found++;
  if (found == n)
    {
      g_autoptr (FpComparison) comparison = fp_comparison_new (findings, n);

      self->pages = fp_comparison_sheets (comparison, spec, &self->error);
      if (self->pages != NULL && order->page.tiled)
        tile (self, order);
    }
  for (guint i = 0; i < found; i++)
    fp_findings_unref (findings[i]);
}

static void
draw (FpSheets *self, const FpSheetOrder *order, FpSheetSpec *spec, GCancellable *cancel)
{
  switch (order->page.sheet)
    {
    case FP_SHEET_COMPARE: draw_comparison (self, order, spec, cancel); break;
    case FP_SHEET_LEVELS: put_page (self, order, fp_levels_sheet (self->scene, NULL, spec, &self->scale, &self->error)); break;
    case FP_SHEET_SIGHT: draw_sight (self, order, spec, cancel); break;
    case FP_SHEET_SUN: draw_sun (self, order, spec); break;
    case FP_SHEET_CARD: draw_cards (self, order, spec); break;
    case FP_SHEET_SCHEDULE: draw_schedules (self, order, spec); break;
    case FP_SHEET_LINEN: draw_linen (self, order, spec); break;
    case FP_SHEET_LAYING: draw_laying (self, order, spec); break;
    case FP_SHEET_CAPACITY: draw_capacity (self, order, spec); break;
    default: draw_sheet (self, order, spec, cancel); break;
    }
}

/* A card tells itself what it is set for. */
static const FpScene *
scene_of (const FpSheetOrder *order)
{
  g_autoptr (FpScene) whole = fp_scene_new (order->project, order->alternative);

  if (order->celebration == 0 || order->page.sheet == FP_SHEET_CARD)
    return g_steal_pointer (&whole);
  return fp_scene_new_set (whole, (FpCelebration) order->celebration);
}

FpSheets *
fp_sheets_new (const FpSheetOrder *order, GCancellable *cancel)
{
  FpSheets *self = g_new0 (FpSheets, 1);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  FpSheetSpec spec = spec_of (order, date);

  self->scene = scene_of (order);
  draw (self, order, &spec, cancel);
  if (g_cancellable_is_cancelled (cancel) || (self->pages == NULL && self->error == NULL))
    g_clear_pointer (&self, fp_sheets_free);
  return self;
}

void
fp_sheets_free (FpSheets *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_clear_pointer (&self->scene, fp_scene_unref);
  g_clear_error (&self->error);
  g_free (self);
}

/* --- files ---------------------------------------------------------------- */

static char *
numbered (const char *path, guint page)
{
  const char *dot = strrchr (path, '.');

  if (page == 0 || dot == NULL)
    return g_strdup (path);
  return g_strdup_printf ("%.*s-%u%s", (int) (dot - path), path, page + 1, dot);
}

static gboolean
write_page (const FpSheets *self, guint i, const char *format, const char *path, GError **error)
{
  FpDrawing *page = g_ptr_array_index (self->pages, i);
  g_autofree char *name = numbered (path, i);

  if (strcmp (format, "png") == 0)
    return fp_drawing_write_png (page, PNG_DOTS_PER_INCH, name, error);
  return fp_drawing_write_svg (page, self->scene, fp_project_brief (fp_scene_project (self->scene))->title, name,
                               error);
}

gboolean
fp_sheets_can_be (const FpSheetOrder *order, const char *format)
{
  return !order->page.tiled || strcmp (format, "svg") != 0;
}

guint
fp_sheets_files (const FpSheets *self, const char *format)
{
  return strcmp (format, "pdf") == 0 ? 1 : self->pages->len;
}

gboolean
fp_sheets_write (const FpSheets *self, const char *format, const char *path, GError **error)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (self->scene));

  if (strcmp (format, "pdf") == 0)
    return fp_drawing_write_pdf ((FpDrawing *const *) self->pages->pdata, self->pages->len, brief->title,
                                 brief->author, path, error);
  for (guint i = 0; i < self->pages->len; i++)
    if (!write_page (self, i, format, path, error))
      return FALSE;
  return TRUE;
}

const char *
fp_sheets_label (guint sheet)
{
  static const char *const labels[] = { "plan", "elevation", "section", "section across", "sections", "board", "comparison",
                                        "levels", "sight", "sun", "setting cards", "schedules", "linen", "laying of the stone",
                                        "capacity" };

  return sheet < G_N_ELEMENTS (labels) ? labels[sheet] : "sheet";
}

char *
fp_sheets_file_name (const FpSheetOrder *order, const char *format)
{
  const char *title = fp_project_brief (order->project)->title;
  const char *alternative = fp_alternative_name (fp_project_alternative (order->project, order->alternative));

  return fp_file_offered_name (*title != '\0' ? title : "Untitled", order->page.sheet == FP_SHEET_COMPARE ? NULL : alternative,
                               fp_sheets_label (order->page.sheet), format);
}
