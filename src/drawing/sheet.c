/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet.c - a page with frame, title block and drawings to scale
 *
 * Frame: 20 mm from the left edge, 10 mm from the others, 0.7 mm (ISO 5457:1999,
 * from memory).  The strip at its foot has the title block on the right and
 * the notes on the left of it, or above it where the paper is narrow.
 */
#include "annotation.h"
#include "sheet-parts.h"
#include "sheet-views.h"
#include "text-fit.h"

#include <math.h>
#include <string.h>

/* All in paper mm; what is not said above is design judgement. */
#define FRAME_LEFT    20.0
#define FRAME_OTHERS  10.0
#define RULER_CLEAR   3.0  /* from the ruler in the margin to the centring mark */
#define CENTRING      5.0  /* the marks in the middle of each side reach so far into the margin and the frame */
#define NOTES_LEAST   84.0 /* notes narrower than this go above the title block */
#define BLOCK_LEAST   150.0
#define NOTES_HEIGHT  30.0 /* above the title block                             */
#define INSET         4.0
#define FINDINGS_SIDE 76.0 /* width beside the drawing                          */
#define FINDINGS_FOOT 58.0 /* height below it                                   */
#define BAR_MOST      80.0
#define CAUTIONS_MOST 125.0

typedef struct
{
  double width, height; /* of the paper          */
  FpBox  frame, block, notes, content, findings; /* findings: empty when there are none */
  gboolean words_only;  /* there is no drawing on it */
  FpFindingsList list;
} Page;

static const char *
document_type (FpSheetKind kind)
{
  switch (kind)
    {
    case FP_SHEET_PLAN: return "Plan";
    case FP_SHEET_ELEVATION: return "Elevation";
    case FP_SHEET_SECTION: return "Section";
    case FP_SHEET_CROSS: return "Section across";
    case FP_SHEET_SECTIONS: return "Sections";
    case FP_SHEET_BOARD: return "Plan, elevation, section";
    case FP_N_SHEETS: break;
    }
  return "";
}

/* --- the page ---------------------------------------------------------------------- */

static void
set_findings_room (Page *page)
{
  FpBox *c = &page->content;

  page->findings = *c;
  if (page->width > page->height)
    {
      page->findings.x0 = c->x1 - FINDINGS_SIDE;
      c->x1 = page->findings.x0;
    }
  else
    {
      page->findings.y1 = c->y0 + FINDINGS_FOOT;
      c->y0 = page->findings.y1;
    }
}

static FpBox
inset (const FpBox *box)
{
  return (FpBox) { box->x0 + INSET, box->y0 + INSET, box->x1 - INSET, box->y1 - INSET };
}

static FpTold
told_in (const FpBox *box, const FpSheetSpec *spec)
{
  const FpBox in = inset (box);

  return fp_findings_told (&in, spec->findings);
}

static void
lay_page (const FpSheetSpec *spec, Page *page)
{
  FpBox *f = &page->frame;
  double beside, block;

  page->words_only = FALSE;
  fp_paper_size (spec->paper, spec->landscape, &page->width, &page->height);
  if (spec->width > 0 && spec->height > 0)
    {
      page->width = spec->width;
      page->height = spec->height;
    }
  *f = (FpBox) { FRAME_LEFT, FRAME_OTHERS, page->width - FRAME_OTHERS, page->height - FRAME_OTHERS };
  /* Rather a narrower title block than notes above it. */
  block = MIN (FP_TITLE_BLOCK_WIDTH, f->x1 - f->x0);
  if (f->x1 - f->x0 - block < NOTES_LEAST && f->x1 - f->x0 - BLOCK_LEAST >= NOTES_LEAST)
    block = f->x1 - f->x0 - NOTES_LEAST;
  page->block = (FpBox) { f->x1 - block, f->y0, f->x1, f->y0 + FP_TITLE_BLOCK_HEIGHT };
  beside = page->block.x0 - f->x0;
  page->notes = (FpBox) { f->x0, f->y0, page->block.x0, page->block.y1 };
  if (beside < NOTES_LEAST)
    page->notes = (FpBox) { f->x0, page->block.y1, f->x1, page->block.y1 + NOTES_HEIGHT };
  page->content = (FpBox) { f->x0, page->notes.y1, f->x1, f->y1 };
  page->findings = FP_BOX_EMPTY;
  page->list = (FpFindingsList) { .findings = spec->findings };
  if (spec->findings != NULL)
    {
      set_findings_room (page);
      page->list.told = told_in (&page->findings, spec);
    }
}

/* --- frame ----------------------------------------------------------------------------- */

static void
draw_frame (FpDrawing *drawing, const Page *page)
{
  const FpBox *f = &page->frame;
  const FpPoint corner[4] = { { f->x0, f->y0 }, { f->x1, f->y0 }, { f->x1, f->y1 }, { f->x0, f->y1 } };
  /* Centring marks stand in the middle of the trimmed sheet (ISO 5457, from memory). */
  const double x = page->width / 2, y = page->height / 2;

  fp_drawing_run (drawing, FP_PEN_FRAME, corner, 4, TRUE);
  fp_drawing_line (drawing, FP_PEN_FRAME, (FpPoint) { x, f->y0 - CENTRING }, (FpPoint) { x, f->y0 });
  fp_drawing_line (drawing, FP_PEN_FRAME, (FpPoint) { x, f->y1 }, (FpPoint) { x, f->y1 + CENTRING });
  fp_drawing_line (drawing, FP_PEN_FRAME, (FpPoint) { f->x0 - CENTRING, y }, (FpPoint) { f->x0, y });
  fp_drawing_line (drawing, FP_PEN_FRAME, (FpPoint) { f->x1, y }, (FpPoint) { f->x1 + CENTRING, y });
}

/* --- title block ------------------------------------------------------------------------- */

/* The first letters of the title's words, the alternative and the sheet: "SHR-B-EL". */
static char *
number_from_title (const char *title, const char *alternative, const char *code)
{
  g_autoptr (GString) s = g_string_new (NULL);
  gboolean at_word = TRUE;

  for (const char *p = title; *p != '\0' && s->len < 6; p++)
    {
      if (g_ascii_isalpha (*p) && at_word)
        g_string_append_c (s, g_ascii_toupper (*p));
      at_word = !g_ascii_isalnum (*p) && !(*p & 0x80) && *p != '\'';
    }
  g_string_append_printf (s, "%s%.4s-%.2s", s->len > 0 ? "-" : "", alternative, code);
  return g_ascii_strup (s->str, -1);
}

/* The sorts and the standings of things that the drawing leaves out, "Not shown: lights; pews and people", and for which
 * celebration the church is set; NULL: none.
 * Lettering that is left out says itself that it is. */
static char *
left_out (const FpScene *scene, FpHidden hidden)
{
  g_autoptr (GString) words = g_string_new (NULL);
  const FpSetting *setting = fp_scene_setting (scene);

  for (guint show = FP_SHOW_BUILDING; show <= FP_SHOW_REMOVED; show++)
    if (!fp_shows (hidden, (FpShow) show))
      {
        g_autofree char *label = g_ascii_strdown (fp_show_label ((FpShow) show), -1);

        g_string_append_printf (words, "%s%s%s", words->len > 0 ? "; " : "Not shown: ", label,
                                show >= FP_SHOW_EXISTING ? " work" : "");
      }
  if (setting != NULL)
    g_string_append_printf (words, "%sAs set for %s", words->len > 0 ? ". " : "",
                            fp_celebration_label (fp_setting_celebration (setting)));
  return words->len > 0 ? g_strdup (words->str) : NULL;
}

static void
draw_block (FpDrawing *drawing, const Page *page, const FpScene *scene, const FpSheetSpec *spec, const char *type,
            const char *code, const char *supplementary, double scale)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (scene));
  const FpAlternative *alternative = fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene));
  g_autofree char *title = *brief->place != '\0' && strstr (brief->title, brief->place) == NULL
                              ? g_strdup_printf ("%s, %s", brief->title, brief->place)
                              : g_strdup (brief->title);
  g_autofree char *own_number = number_from_title (brief->title, fp_alternative_id (alternative), code);
  g_autofree char *scale_text = scale > 0 ? fp_scale_text (scale) : g_strdup ("");
  g_autofree char *own_paper = fp_sheet_paper_name (spec);
  g_autofree char *paper = spec->joined_from != NULL ? g_strdup_printf ("%s on %s", own_paper, spec->joined_from)
                                                     : g_strdup (own_paper);
  g_autofree char *sheet = g_strdup_printf ("%u of %u", MAX (spec->page, 1u), MAX (spec->pages, 1u));
  g_autofree char *not_shown = page->words_only ? NULL : left_out (scene, spec->hidden);
  const FpTitleBlock fields = {
    .owner = brief->client, .title = title, .supplementary = supplementary, .creator = brief->author,
    .document_type = type, .number = spec->number != NULL ? spec->number : own_number, .date = spec->date,
    .sheet = sheet, .scale = scale_text, .paper = paper, .left_out = not_shown,
  };

  fp_draw_title_block (drawing, (FpPoint) { page->block.x1, page->block.y0 }, page->block.x1 - page->block.x0, &fields);
}

/* --- notes ------------------------------------------------------------------------------------ */

/* What is cut of cloth is neither existing nor removed, and has no steps nor flames. */
static gboolean
is_of_cloth (const char *code)
{
  return g_str_equal (code, fp_sheet_any_id (FP_SHEET_LINEN));
}

/* The bar and the legend; the cautions beside them where it is wide enough, or above. */
static void
draw_notes (FpDrawing *drawing, const Page *page, const FpScene *scene, const FpSheetSpec *spec, const char *code, double scale)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (scene));
  const FpBox in = { page->notes.x0 + INSET, page->notes.y0 + 2, page->notes.x1 - INSET, page->notes.y1 - 3 };
  const gboolean wide = in.x1 - in.x0 >= 150;
  const double bar_most = wide ? BAR_MOST : MIN (BAR_MOST, in.x1 - in.x0);
  FpBox cautions = in;
  double y = in.y0;

  if (scale > 0)
    {
      fp_draw_scale_bar (drawing, (FpPoint) { in.x0 - 1.5, y }, bar_most, scale, brief->units);
      y += FP_SCALE_BAR_HEIGHT + 1.5;
    }
  if (is_of_cloth (code))
    return;
  if (!page->words_only && fp_draw_legend (drawing, (FpPoint) { in.x0, y + 0.5 }, bar_most, scene, spec->hidden))
    y += 5;
  if (wide)
    cautions = (FpBox) { in.x0 + bar_most + 8, in.y0, MIN (in.x1, in.x0 + bar_most + 8 + CAUTIONS_MOST), in.y1 };
  else
    cautions.y0 = y;
  fp_draw_cautions (drawing, &cautions, brief->units);
}

static void
draw_findings (FpDrawing *drawing, const Page *page)
{
  const FpBox *r = &page->findings;
  const FpBox in = inset (r);

  if (fp_box_is_empty (r))
    return;
  if (page->width > page->height)
    fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { r->x0, r->y0 }, (FpPoint) { r->x0, r->y1 });
  else
    fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { r->x0, r->y1 }, (FpPoint) { r->x1, r->y1 });
  fp_draw_findings (drawing, &in, &page->list);
}

static FpDrawing *
draw_page (const FpScene *scene, const FpSheetSpec *spec, const Page *page, const char *type, const char *code,
           const char *supplementary, double scale)
{
  FpDrawing *drawing = fp_drawing_new (page->width, page->height);
  const double top = page->notes.y1;

  fp_drawing_set_ink (drawing, spec->ink);
  draw_block (drawing, page, scene, spec, type, code, supplementary, scale);
  draw_notes (drawing, page, scene, spec, code, scale);
  draw_findings (drawing, page);
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { page->frame.x0, top }, (FpPoint) { page->frame.x1, top });
  draw_frame (drawing, page);
  /* In the margin where the sheet is bound, below the centring mark. */
  fp_drawing_add_ruler_upright (drawing, (FpPoint) { FRAME_LEFT - 1.2, page->frame.y0 },
                                page->height / 2 - page->frame.y0 - RULER_CLEAR,
                                fp_project_brief (fp_scene_project (scene))->units);
  return drawing;
}

FpDrawing *
fp_sheet_blank (const FpScene *scene, const FpSheetSpec *spec, const char *title, double scale, FpBox *content)
{
  Page page;

  lay_page (spec, &page);
  *content = (FpBox) { page.content.x0 + INSET, page.content.y0 + INSET, page.content.x1 - INSET,
                       page.content.y1 - INSET };
  return draw_page (scene, spec, &page, title, title, "", scale);
}

FpDrawing *
fp_sheet_blank_of (const FpScene *scene, const FpSheetSpec *spec, const char *title, const char *code, double scale,
                   FpBox *content)
{
  const FpAlternative *alternative = fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene));
  Page page;

  lay_page (spec, &page);
  *content = inset (&page.content);
  return draw_page (scene, spec, &page, title, code, fp_alternative_name (alternative), scale);
}

/* --- the sheet --------------------------------------------------------------------------------------------- */

static FpDrawing *
make_sheet (const FpScene *scene, const FpSheetSpec *spec, const Page *page, double *scale, GError **error)
{
  const FpBox area = inset (&page->content);
  const FpAlternative *alternative = fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene));
  g_autoptr (FpSheetViews) views = fp_sheet_views_new (scene, spec, &area, error);
  FpDrawing *drawing;

  if (views == NULL)
    return NULL;
  drawing = draw_page (scene, spec, page, document_type (spec->kind), fp_sheet_id (spec->kind),
                       fp_alternative_name (alternative), fp_sheet_views_scale (views));
  fp_sheet_views_draw (views, drawing);
  if (scale != NULL)
    *scale = fp_sheet_views_scale (views);
  return drawing;
}

FpDrawing *
fp_sheet_new (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  Page page;

  lay_page (spec, &page);
  return make_sheet (scene, spec, &page, scale, error);
}

/* --- further sheets of findings ------------------------------------------------------------------------------ */

/* How many findings stand on the first sheet, and how many sheets more the rest takes. */
static guint
count_further (const FpSheetSpec *spec, const Page *first, const Page *further, guint *on_first)
{
  const guint all = g_strv_length ((char **) spec->findings);
  const FpBox beside = inset (&first->findings), whole = inset (&further->content);
  FpFindingsList list = first->list;
  guint sheets = 0, n = all > 0 ? 1 : 0;

  list.next = 2;
  *on_first = fp_box_is_empty (&first->findings) ? 0 : fp_draw_findings (NULL, &beside, &list);
  list = further->list;
  /* One that is longer than a whole page is told there as far as it goes. */
  for (list.first = *on_first; list.first < all && n > 0; list.first += n)
    {
      list.next = sheets + 3;
      n = fp_draw_findings (NULL, &whole, &list);
      n = MAX (n, 1u);
      sheets++;
    }
  return sheets;
}

static FpDrawing *
draw_further (const FpScene *scene, const FpSheetSpec *spec, const Page *page, FpFindingsList *list, gboolean last)
{
  const FpAlternative *alternative = fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene));
  const FpBox in = inset (&page->content);
  FpDrawing *drawing = draw_page (scene, spec, page, "Findings", "findings", fp_alternative_name (alternative), 0);
  guint told;

  list->next = last ? 0 : spec->page + 1;
  told = fp_draw_findings (drawing, &in, list);
  list->first += MAX (told, 1u);
  return drawing;
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

/* Without findings beside anything; on @paper, upright, if it is given. */
static FpSheetSpec
further_spec (const FpSheetSpec *spec, const FpPaper *paper)
{
  FpSheetSpec further = *spec;

  further.findings = NULL;
  if (paper == NULL)
    return further;
  further.paper = *paper;
  further.width = further.height = 0;
  further.paper_name = NULL;
  further.joined_from = NULL;
  further.landscape = FALSE;
  return further;
}

GPtrArray *
fp_sheet_pages_further_on (const FpScene *scene, const FpSheetSpec *spec, const FpPaper *paper, double *scale,
                           GError **error)
{
  /* A finding that is cut where pages are joined cannot be read. */
  const gboolean apart = spec->joined_from != NULL && spec->findings != NULL;
  FpSheetSpec numbered = *spec, bare = further_spec (spec, paper);
  Page first, further;
  guint on_first = 0, sheets = 0;
  FpFindingsList list;
  FpDrawing *drawing;
  GPtrArray *pages;

  numbered.findings = apart ? NULL : spec->findings;
  lay_page (&numbered, &first);
  lay_page (&bare, &further);
  further.words_only = TRUE;
  further.list = (FpFindingsList) { .findings = spec->findings };
  /* Rather shortened beside the drawing than in full on another sheet. */
  if (apart || (spec->findings != NULL && first.list.told == FP_TOLD_IN_BRIEF))
    {
      first.list.told = FP_TOLD_FULLY;
      sheets = count_further (spec, &first, &further, &on_first);
    }
  numbered.page = MAX (spec->page, 1u);
  numbered.pages = bare.pages = MAX (spec->pages, numbered.page) + sheets;
  first.list.next = sheets > 0 ? numbered.page + 1 : 0;
  drawing = make_sheet (scene, &numbered, &first, scale, error);
  if (drawing == NULL)
    return NULL;
  pages = g_ptr_array_new_with_free_func (unref_drawing);
  g_ptr_array_add (pages, drawing);
  list = further.list;
  list.first = on_first;
  for (guint i = 0; i < sheets; i++)
    {
      bare.page = numbered.page + i + 1;
      g_ptr_array_add (pages, draw_further (scene, &bare, &further, &list, i + 1 == sheets));
    }
  return pages;
}

GPtrArray *
fp_sheet_pages (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  return fp_sheet_pages_further_on (scene, spec, NULL, scale, error);
}
