/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/evidence-drawing.h"

#include "blank-near.h"
#include "length-over.h"
#include "projection-private.h"

#include "footpace/told-length.h"

#include <math.h>

/* Paper mm. */
#define RING     0.9  /* about what was counted                                  */
#define DOT      0.7  /* where a line begins                                     */
#define ABOUT    1.2  /* a line about a thing keeps so far from it               */
#define ROOM     45.0 /* about what is drawn, in which figures find room         */
#define EDGE     1.0  /* of a drawing that is no larger than its marks           */
#define LEAST    0.3  /* what is shorter on paper is seen end on                 */
#define FEW      12   /* rings in elevation or section: more lie one over the other */
#define TRUE_TO  0.999 /* of a length, as the view shows it                      */
#define CORNERS  8
#define CUT_TO   1.0 /* mm of the church: so near to the cut it lies in it */
#define FLOOR    5000.0 /* mm of the church: what is larger both ways is a floor (design judgement) */
#define LETTERS  2.5
#define PATCH    0.6  /* of paper about words                                    */
#define WORTH    8.0  /* what a view shows smaller has its words in another      */

typedef struct
{
  FpDrawing          *drawing;
  FpViewId            view;
  const FpProjection *of; /* NULL: all of it lies before the viewer */
  const FpViewLayout *layout;
  const FpVec3       *pt;
} Drawn;

static FpPoint
on_paper (const Drawn *self, FpVec3 p)
{
  return fp_view_to_paper (self->layout, fp_layout_point (self->layout, self->view, p));
}

/* By its middle: what is cut through is seen.  A line goes on from behind the viewer to where he looks. */
gboolean
fp_evidence_is_before (const FpEvidencePiece *piece, const FpVec3 *pt, const FpProjection *of)
{
  const double nearest = fp_projection_nearest (of);
  double sum = 0, least = G_MAXDOUBLE;

  for (guint i = 0; i < piece->n; i++)
    {
      const double depth = fp_sight_point (fp_projection_view (of), fp_projection_cut (of).turned, pt[piece->first + i]).z;

      sum += depth / piece->n;
      least = MIN (least, depth);
    }
  return (piece->sort == FP_EVIDENCE_LINE ? least : sum) <= nearest + CUT_TO;
}

/* All of it, so that nothing is cut off. */
static gboolean
is_shown (const Drawn *self, const FpEvidencePiece *piece)
{
  const FpBox *clip = &self->layout->clip;

  if (self->of != NULL && !fp_evidence_is_before (piece, self->pt, self->of))
    return FALSE;
  for (guint i = 0; !fp_box_is_empty (clip) && i < piece->n; i++)
    {
      const FpPoint p = fp_layout_point (self->layout, self->view, self->pt[piece->first + i]);

      if (p.x < clip->x0 || p.x > clip->x1 || p.y < clip->y0 || p.y > clip->y1)
        return FALSE;
    }
  return TRUE;
}

/* --- pieces --------------------------------------------------------------------------- */

static void
draw_run (const Drawn *self, const FpEvidencePiece *piece)
{
  g_autofree FpPoint *pt = g_new (FpPoint, piece->n);
  const gboolean closed = piece->sort == FP_EVIDENCE_OUTLINE;

  for (guint i = 0; i < piece->n; i++)
    pt[i] = on_paper (self, self->pt[piece->first + i]);
  fp_drawing_run (self->drawing, FP_PEN_SIGHT, pt, piece->n, closed);
  if (!closed)
    fp_drawing_circle (self->drawing, FP_PEN_SIGHT, FP_FILL_INK, pt[0], DOT);
}

gboolean
fp_evidence_is_floor (const FpEvidencePiece *piece, const FpVec3 *pt)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < piece->n; i++)
    fp_box_add_point (&box, (FpPoint) { pt[piece->first + i].x, pt[piece->first + i].y });
  return piece->sort == FP_EVIDENCE_OUTLINE && box.x1 - box.x0 > FLOOR && box.y1 - box.y0 > FLOOR;
}

/* Elevation and section would show it as a line beyond what they show of the church. */
static gboolean
is_floor_from_aside (const Drawn *self, const FpEvidencePiece *piece)
{
  return self->view != FP_VIEW_PLAN && fp_evidence_is_floor (piece, self->pt);
}

/* About the silhouette of its corners. */
static void
draw_body (const Drawn *self, const FpEvidencePiece *piece)
{
  g_autofree FpPoint *pt = g_new (FpPoint, piece->n * CORNERS);
  guint n = 0;

  for (guint i = 0; i < piece->n; i++)
    {
      const FpPoint p = on_paper (self, self->pt[piece->first + i]);

      for (guint k = 0; k < CORNERS; k++)
        {
          const double a = 2 * G_PI * (k + 0.5) / CORNERS;
          pt[n++] = (FpPoint) { p.x + ABOUT * cos (a), p.y + ABOUT * sin (a) };
        }
    }
  n = fp_hull (pt, n);
  fp_drawing_run (self->drawing, FP_PEN_SIGHT, pt, n, TRUE);
}

static void
draw_each (const Drawn *self, const FpEvidencePiece *piece)
{
  fp_drawing_circle (self->drawing, FP_PEN_SIGHT, FP_FILL_NONE, on_paper (self, self->pt[piece->first]), RING);
}

static char *
figure_of (double length, double times, FpUnits units)
{
  g_autofree char *figure = fp_length_format (fp_told_length (length), units);

  return fabs (times) > 1 ? g_strdup_printf ("%g × %s", fabs (times), figure) : g_steal_pointer (&figure);
}

/* @own: (nullable): the figure as it is told otherwise. */
static void
draw_length (const Drawn *self, const FpEvidencePiece *piece, const char *own, FpCover *cover, const FpBox *within)
{
  const FpVec3 a = self->pt[piece->first], b = self->pt[piece->first + 1];
  const FpPoint p = on_paper (self, a), q = on_paper (self, b);
  const double length = fp_vec3_length (fp_vec3_sub (b, a)), seen = hypot (q.x - p.x, q.y - p.y);
  g_autofree char *figure = own != NULL ? g_strdup (own) : figure_of (length, piece->times, self->layout->units);

  if (seen * self->layout->scale >= TRUE_TO * length && length > 0)
    fp_length_over (self->drawing, p, q, figure, cover, within);
  else if (seen >= LEAST)
    fp_drawing_line (self->drawing, FP_PEN_SIGHT, p, q);
  else
    fp_drawing_circle (self->drawing, FP_PEN_SIGHT, FP_FILL_NONE, p, RING);
}

static void
draw_on_patch (FpDrawing *drawing, FpPoint at, double width, const char *words)
{
  const FpPoint patch[4] = { { at.x - PATCH, at.y - PATCH }, { at.x + width + PATCH, at.y - PATCH },
                             { at.x + width + PATCH, at.y + LETTERS + PATCH }, { at.x - PATCH, at.y + LETTERS + PATCH } };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, patch, 4);
  fp_drawing_text (drawing, at, LETTERS, 0, FP_ALIGN_LEFT, words);
}

/* Near the middle of the first piece, where nothing is. */
static void
draw_words (const Drawn *self, const FpEvidencePiece *piece, const char *words, const FpLaid *under, guint n, const FpBox *within)
{
  const double width = fp_lettering_width (words, LETTERS);
  g_autofree FpLaid *laid = g_new (FpLaid, n + 1);
  FpBox box = FP_BOX_EMPTY;
  FpPoint middle, at = { NAN, NAN };

  for (guint i = 0; i < piece->n; i++)
    fp_box_add_point (&box, on_paper (self, self->pt[piece->first + i]));
  middle = (FpPoint) { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  for (guint i = 0; i < n; i++)
    laid[i] = under[i];
  laid[n] = (FpLaid) { self->drawing, { 0, 0 }, 1 };
  if (hypot (box.x1 - box.x0, box.y1 - box.y0) < WORTH || !fp_blank_near (laid, n + 1, within, middle, width, LETTERS, &at))
    return;
  fp_drawing_line (self->drawing, FP_PEN_SIGHT, middle,
                   (FpPoint) { CLAMP (middle.x, at.x - PATCH, at.x + width + PATCH), CLAMP (middle.y, at.y - PATCH, at.y + LETTERS + PATCH) });
  draw_on_patch (self->drawing, at, width, words);
}

/* --- all of it --------------------------------------------------------------------------- */

static FpBox
box_about (const Drawn *self, const FpEvidencePiece *piece, guint n)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; piece[i].sort == FP_EVIDENCE_LENGTH && k < piece[i].n; k++)
      {
        const FpPoint p = on_paper (self, self->pt[piece[i].first + k]);
        fp_box_add_point (&box, (FpPoint) { p.x - ROOM, p.y - ROOM });
        fp_box_add_point (&box, (FpPoint) { p.x + ROOM, p.y + ROOM });
      }
  return box;
}

/* The one that is the value; NULL where there is none, or are more, or it counts otherwise than once. */
static const FpEvidencePiece *
only_length (const FpEvidencePiece *piece, guint n)
{
  const FpEvidencePiece *only = NULL;

  for (guint i = 0; i < n; i++)
    {
      if (piece[i].sort != FP_EVIDENCE_LENGTH)
        continue;
      if (only != NULL || fabs (piece[i].times) != 1)
        return NULL;
      only = &piece[i];
    }
  return only;
}

static guint
rings_of (const FpEvidencePiece *piece, guint n)
{
  guint rings = 0;

  for (guint i = 0; i < n; i++)
    rings += piece[i].sort == FP_EVIDENCE_EACH ? 1 : 0;
  return rings;
}

static void
draw_piece (const Drawn *self, const FpEvidencePiece *piece, gboolean rings)
{
  switch (piece->sort)
    {
    case FP_EVIDENCE_LINE:
      draw_run (self, piece);
      break;
    case FP_EVIDENCE_OUTLINE:
      if (!is_floor_from_aside (self, piece))
        draw_run (self, piece);
      break;
    case FP_EVIDENCE_BODY:
      draw_body (self, piece);
      break;
    case FP_EVIDENCE_EACH:
      if (rings)
        draw_each (self, piece);
      break;
    case FP_EVIDENCE_LENGTH: /* over all others */
      break;
    }
}

void
fp_drawing_add_evidence (FpDrawing *self, const FpEvidence *evidence, FpViewId view, const FpProjection *of,
                         const FpViewLayout *layout, const FpLaid *under, guint n, const FpBox *within)
{
  const Drawn drawn = { self, view, of, layout, fp_evidence_points (evidence) };
  guint n_pieces;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n_pieces);
  const FpEvidencePiece *alone = only_length (piece, n_pieces);
  const gboolean rings = view == FP_VIEW_PLAN || rings_of (piece, n_pieces) <= FEW;
  const FpBox about = box_about (&drawn, piece, n_pieces);
  g_autoptr (FpCover) cover = fp_laid_cover (under, n, &about);

  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, (int) view);
  for (guint i = 0; i < n_pieces; i++)
    if (is_shown (&drawn, &piece[i]))
      draw_piece (&drawn, &piece[i], rings);
  for (guint i = 0; i < n_pieces; i++)
    if (piece[i].sort == FP_EVIDENCE_LENGTH && is_shown (&drawn, &piece[i]))
      draw_length (&drawn, &piece[i], &piece[i] == alone ? fp_evidence_figure (evidence) : NULL, cover, within);
  if (fp_evidence_figure (evidence) != NULL && alone == NULL && n_pieces > 0 && is_shown (&drawn, piece))
    draw_words (&drawn, piece, fp_evidence_figure (evidence), under, n, within);
}

/* --- no larger than it is ---------------------------------------------------------------- */

static void
copy_mark (FpDrawing *to, const FpMark *mark, const FpPoint *from, FpPoint by)
{
  g_autofree FpPoint *pt = g_new (FpPoint, mark->n + 1);
  const FpPoint at = { mark->at.x - by.x, mark->at.y - by.y };

  for (guint i = 0; i < mark->n; i++)
    pt[i] = (FpPoint) { from[mark->first + i].x - by.x, from[mark->first + i].y - by.y };
  switch (mark->type)
    {
    case FP_MARK_LINE:
      fp_drawing_run (to, mark->pen, pt, mark->n, mark->closed);
      break;
    case FP_MARK_AREA:
      fp_drawing_area (to, mark->pen, mark->fill, mark->hatch, pt, mark->n);
      break;
    case FP_MARK_CIRCLE:
      fp_drawing_circle (to, mark->pen, mark->fill, at, mark->radius);
      break;
    case FP_MARK_TEXT:
      fp_drawing_text (to, at, mark->height, mark->turn, mark->align, mark->text);
      break;
    case FP_MARK_PICTURE:
      break;
    }
}

/* Figures lie on patches, which tell their room. */
static FpBox
box_of_marks (const FpMark *mark, guint n, const FpPoint *pt)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type == FP_MARK_CIRCLE)
        {
          fp_box_add_point (&box, (FpPoint) { mark[i].at.x - mark[i].radius, mark[i].at.y - mark[i].radius });
          fp_box_add_point (&box, (FpPoint) { mark[i].at.x + mark[i].radius, mark[i].at.y + mark[i].radius });
        }
      for (guint k = 0; mark[i].type != FP_MARK_TEXT && k < mark[i].n; k++)
        fp_box_add_point (&box, pt[mark[i].first + k]);
    }
  return box;
}

FpDrawing *
fp_evidence_draw (const FpEvidence *evidence, FpViewId view, const FpProjection *of, const FpViewLayout *layout,
                  const FpLaid *under, guint n, const FpBox *within, FpPoint *corner)
{
  g_autoptr (FpDrawing) whole = fp_drawing_new (1, 1);
  FpDrawing *drawing;
  guint n_marks;
  const FpMark *mark;
  FpBox box;

  fp_drawing_add_evidence (whole, evidence, view, of, layout, under, n, within);
  mark = fp_drawing_marks (whole, &n_marks);
  box = box_of_marks (mark, n_marks, fp_drawing_points (whole));
  if (fp_box_is_empty (&box))
    return NULL;
  *corner = (FpPoint) { box.x0 - EDGE, box.y0 - EDGE };
  drawing = fp_drawing_new (box.x1 - box.x0 + 2 * EDGE, box.y1 - box.y0 + 2 * EDGE);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
  for (guint i = 0; i < n_marks; i++)
    copy_mark (drawing, &mark[i], fp_drawing_points (whole), *corner);
  return drawing;
}
