/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-section.c - the cutting lines of the sections, dragged on the plan
 *
 * To the tool they are things like any other, by names that no thing can
 * have.  Nothing of the project changes by them: they are a way of looking.
 */
#include "board-view-private.h"

#include <math.h>

/* As far as a hand is off that means to hit; and what of the arrows counts, mm of paper. */
#define PICK_MM   1.2
#define BEHIND_MM 12.0
#define BESIDE_MM 3.0

static const FpViewId views[] = { FP_VIEW_SECTION, FP_VIEW_ELEVATION };

/* No id has a blank in it. */
static const char *
section_item (FpViewId view)
{
  return g_intern_static_string (view == FP_VIEW_SECTION ? "cutting line" : "cutting line across");
}

gboolean
fp_board_view_is_section (const char *item)
{
  return item != NULL && (item == section_item (FP_VIEW_SECTION) || item == section_item (FP_VIEW_ELEVATION));
}

FpViewId
fp_board_view_section_of (const char *item)
{
  return item == section_item (FP_VIEW_ELEVATION) ? FP_VIEW_ELEVATION : FP_VIEW_SECTION;
}

/* Whether a mark of that pen is the line: upright at its x, or level at its y. */
static gboolean
is_line_at (FpViewId view, FpPoint a, FpPoint b, FpPoint at)
{
  return view == FP_VIEW_SECTION ? fabs (a.x - at.x) < 0.05 && fabs (b.x - at.x) < 0.05
                                 : fabs (a.y - at.y) < 0.05 && fabs (b.y - at.y) < 0.05;
}

/* The line as it is drawn on the plan; FALSE where there is none. */
static gboolean
line_of (FpBoardView *self, FpViewId view, FpPoint *a, FpPoint *b)
{
  const FpCut *cut = &self->how.cut[view];
  const FpPoint at = fp_view_to_paper (&self->layout.view[FP_VIEW_PLAN], (FpPoint) { cut->at, cut->at });
  guint n = 0;
  const FpMark *mark = self->drawing != NULL ? fp_drawing_marks (self->drawing, &n) : NULL;
  const FpPoint *pt = self->drawing != NULL ? fp_drawing_points (self->drawing) : NULL;

  /* The last: on the axis it lies over that of the church. */
  for (guint i = cut->placed ? n : 0; i-- > 0;)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_AXIS && mark[i].view == FP_VIEW_PLAN
        && is_line_at (view, pt[mark[i].first], pt[mark[i].first + 1], at))
      {
        *a = pt[mark[i].first];
        *b = pt[mark[i].first + 1];
        return TRUE;
      }
  return FALSE;
}

/* An end with its arrow and its letter, which lie on the side from which it is seen. */
static gboolean
is_at_end (FpViewId view, gboolean turned, FpPoint end, FpPoint p)
{
  const FpPoint d = { p.x - end.x, p.y - end.y };
  const double ahead = (view == FP_VIEW_SECTION ? d.x : d.y) * (turned ? -1.0 : 1.0);

  return ahead <= PICK_MM && ahead >= -BEHIND_MM && fabs (view == FP_VIEW_SECTION ? d.y : d.x) <= BESIDE_MM;
}

static void
fill (FpBoardView *self, FpViewId view, FpToolHit *hit)
{
  *hit = (FpToolHit) { .item = section_item (view), .view = FP_VIEW_PLAN, .movable = TRUE,
                       .ways = view == FP_VIEW_SECTION ? 1 : 2, .scale = self->layout.view[FP_VIEW_PLAN].scale };
}

gboolean
fp_board_view_hit_section_end (FpBoardView *self, FpPoint paper, FpToolHit *hit)
{
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      const gboolean turned = self->how.cut[views[i]].turned;
      FpPoint a, b;

      if (!line_of (self, views[i], &a, &b)
          || !(is_at_end (views[i], turned, a, paper) || is_at_end (views[i], turned, b, paper)))
        continue;
      fill (self, views[i], hit);
      return TRUE;
    }
  return FALSE;
}

gboolean
fp_board_view_hit_section_line (FpBoardView *self, FpPoint paper, FpToolHit *hit)
{
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      FpPoint a, b;

      if (!line_of (self, views[i], &a, &b) || fp_segment_distance (a, b, paper) > PICK_MM)
        continue;
      fill (self, views[i], hit);
      return TRUE;
    }
  return FALSE;
}

gboolean
fp_board_view_cut_range (FpBoardView *self, FpViewId view, double *low, double *high)
{
  const FpBox3 all = fp_scene_box (fp_document_scene (self->document));

  *low = view == FP_VIEW_SECTION ? all.lo.x : all.lo.y;
  *high = view == FP_VIEW_SECTION ? all.hi.x : all.hi.y;
  return *low <= *high;
}

/* Its line stays on the church: beyond there is nothing to be cut, nor to take hold of again. */
static void
cut_at (FpBoardView *self, FpViewId view, double at)
{
  double low, high;

  if (fp_board_view_cut_range (self, view, &low, &high))
    at = CLAMP (at, low, high);
  self->how.cut[view].at = at;
  fp_board_view_tell_shows (self);
  fp_drafter_draft (self->drafter, fp_document_scene (self->document), &self->how);
}

gboolean
fp_board_view_obey_section (FpBoardView *self, const FpToolAnswer *answer)
{
  const char *item = fp_board_view_is_section (answer->item) ? answer->item : self->tool.hit.item;
  const FpViewId view = fp_board_view_section_of (item);

  if (!fp_board_view_is_section (item))
    return FALSE;
  switch (answer->deed)
    {
    case FP_TOOL_BEGIN:
      self->section_from = self->how.cut[view].at;
      break;
    case FP_TOOL_MOVE:
    case FP_TOOL_KEEP:
      cut_at (self, view, self->section_from + (view == FP_VIEW_SECTION ? answer->by.x : answer->by.y));
      break;
    case FP_TOOL_PUT_BACK:
      cut_at (self, view, self->section_from);
      break;
    case FP_TOOL_PAN: /* the space bar is down */
      return FALSE;
    default:
      break;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

static char *
words_across (const char *length, const FpCut *cut)
{
  const char *way = cut->turned ? ", facing west" : "";

  if (fabs (cut->at) < 0.5)
    return g_strdup_printf ("Section B–B, where nave and sanctuary meet%s", way);
  return g_strdup_printf ("Section B–B, %s into the %s%s", length, cut->at > 0 ? "sanctuary" : "nave", way);
}

/* "Section A–A, 1200 to the Epistle side"; the caller's. */
char *
fp_board_view_section_words (FpBoardView *self, FpViewId view)
{
  const FpCut *cut = &self->how.cut[view];
  g_autofree char *length = fp_length_format_unit (fabs (cut->at), fp_board_view_units (self));

  if (view == FP_VIEW_ELEVATION)
    return words_across (length, cut);
  if (fabs (cut->at) < 0.5)
    return g_strdup ("Section A–A, on the axis");
  return g_strdup_printf ("Section A–A, %s to the %s side", length, cut->at > 0 ? "Epistle" : "Gospel");
}
