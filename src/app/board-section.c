/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-section.c - the cutting line of the section, dragged on the plan
 *
 * To the tool it is a thing like any other, by a name that no thing can have.
 * Nothing of the project changes by it: it is a way of looking.
 */
#include "board-view-private.h"

#include <math.h>

/* As far as a hand is off that means to hit; and what of the arrows counts, mm of paper. */
#define PICK_MM   1.2
#define BEHIND_MM 12.0
#define BESIDE_MM 3.0

/* No id has a blank in it. */
static const char *
section_item (void)
{
  return g_intern_static_string ("cutting line");
}

gboolean
fp_board_view_is_section (const char *item)
{
  return item == section_item ();
}

/* The line as it is drawn on the plan; FALSE where there is none. */
static gboolean
line_of (FpBoardView *self, FpPoint *a, FpPoint *b)
{
  const double x = fp_view_to_paper (&self->layout.view[FP_VIEW_PLAN], (FpPoint) { self->how.section.at, 0 }).x;
  guint n = 0;
  const FpMark *mark = self->drawing != NULL ? fp_drawing_marks (self->drawing, &n) : NULL;
  const FpPoint *pt = self->drawing != NULL ? fp_drawing_points (self->drawing) : NULL;

  /* The last: on the axis it lies over that of the church. */
  for (guint i = self->how.section.placed ? n : 0; i-- > 0;)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_AXIS && mark[i].view == FP_VIEW_PLAN
        && fabs (pt[mark[i].first].x - x) < 0.05)
      {
        *a = pt[mark[i].first];
        *b = pt[mark[i].first + 1];
        return TRUE;
      }
  return FALSE;
}

/* An end with its arrow and its letter, which lie on the Gospel side. */
static gboolean
is_at_end (FpPoint end, FpPoint p)
{
  return p.x <= end.x + PICK_MM && p.x >= end.x - BEHIND_MM && fabs (p.y - end.y) <= BESIDE_MM;
}

static void
fill (FpBoardView *self, FpToolHit *hit)
{
  *hit = (FpToolHit) { .item = section_item (), .view = FP_VIEW_PLAN, .movable = TRUE,
                       .scale = self->layout.view[FP_VIEW_PLAN].scale };
}

gboolean
fp_board_view_hit_section_end (FpBoardView *self, FpPoint paper, FpToolHit *hit)
{
  FpPoint a, b;

  if (!line_of (self, &a, &b) || !(is_at_end (a, paper) || is_at_end (b, paper)))
    return FALSE;
  fill (self, hit);
  return TRUE;
}

gboolean
fp_board_view_hit_section_line (FpBoardView *self, FpPoint paper, FpToolHit *hit)
{
  FpPoint a, b;

  if (!line_of (self, &a, &b) || fp_segment_distance (a, b, paper) > PICK_MM)
    return FALSE;
  fill (self, hit);
  return TRUE;
}

static void
cut_at (FpBoardView *self, double at)
{
  self->how.section.at = at;
  fp_drafter_draft (self->drafter, fp_document_scene (self->document), &self->how);
}

gboolean
fp_board_view_obey_section (FpBoardView *self, const FpToolAnswer *answer)
{
  if (!fp_board_view_is_section (self->tool.hit.item) && !fp_board_view_is_section (answer->item))
    return FALSE;
  switch (answer->deed)
    {
    case FP_TOOL_BEGIN:
      self->section_from = self->how.section.at;
      break;
    case FP_TOOL_MOVE:
    case FP_TOOL_KEEP:
      cut_at (self, self->section_from + answer->by.x);
      break;
    case FP_TOOL_PUT_BACK:
      cut_at (self, self->section_from);
      break;
    case FP_TOOL_PAN: /* the space bar is down */
      return FALSE;
    default:
      break;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

/* "Section A–A, 1200 to the Epistle side"; the caller's. */
char *
fp_board_view_section_words (FpBoardView *self)
{
  const double at = self->how.section.at;
  g_autofree char *length = fp_length_format_unit (fabs (at), fp_board_view_units (self));

  if (fabs (at) < 0.5)
    return g_strdup ("Section A–A, on the axis");
  return g_strdup_printf ("Section A–A, %s to the %s side", length, at > 0 ? "Epistle" : "Gospel");
}
