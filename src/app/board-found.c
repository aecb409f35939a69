/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-found.c - the board is brought to what was measured of the finding that is chosen, and back to where it lay before */
#include "board-view-private.h"

#include "footpace/evidence-drawing.h"

#include <math.h>

/* mm of paper; design judgement. */
#define LEGIBLE 12.0 /* what is drawn shorter is not read        */
#define BROUGHT 24.0 /* to which it is brought then              */
#define ROOM    20.0 /* about it, for figures                    */
#define TRULY   0.999 /* of a length, as a view shows it         */

/* What has to be read, as one view shows it; mm of the church. */
typedef struct
{
  FpViewId view;
  FpPoint  middle;
  double   across, up, size;
} Subject;

/* --- what has to be read ------------------------------------------------------------------ */

static double
length_of (const FpEvidencePiece *piece, const FpVec3 *pt)
{
  return piece->sort == FP_EVIDENCE_LENGTH ? fp_vec3_length (fp_vec3_sub (pt[piece->first + 1], pt[piece->first])) : 0;
}

/* The longest length; without one, a thing or an area, but no floor.  NULL: nothing that has a size of its own. */
static const FpEvidencePiece *
piece_to_read (const FpEvidence *evidence)
{
  const FpVec3 *pt = fp_evidence_points (evidence);
  guint n;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n), *longest = NULL;

  for (guint i = 0; i < n; i++)
    if (length_of (&piece[i], pt) > (longest != NULL ? length_of (longest, pt) : 0))
      longest = &piece[i];
  for (guint i = 0; i < n && longest == NULL; i++)
    if (piece[i].sort == FP_EVIDENCE_BODY || (piece[i].sort == FP_EVIDENCE_OUTLINE && !fp_evidence_is_floor (&piece[i], pt)))
      longest = &piece[i];
  return longest;
}

static gboolean
is_on_board (FpBoardView *self, FpViewId view)
{
  return (self->only < 0 || self->only == (int) view) && !fp_box_is_empty (&self->layout.frame[view]);
}

static Subject
as_shown (FpBoardView *self, FpViewId view, const FpVec3 *pt, guint n)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    fp_box_add_point (&box, fp_layout_point (&self->layout.view[view], view, pt[i]));
  return (Subject) { view, { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }, box.x1 - box.x0, box.y1 - box.y0,
                     hypot (box.x1 - box.x0, box.y1 - box.y0) };
}

/* In each view that shows it truly, the plan first.  Returns: how many */
static guint
subjects (FpBoardView *self, Subject out[FP_N_VIEWS])
{
  const FpEvidence *evidence = fp_board_view_marked_evidence (self);
  const FpEvidencePiece *piece = evidence != NULL ? piece_to_read (evidence) : NULL;
  const FpWay *way = fp_board_view_marked_way (self);
  guint n = 0;

  for (FpViewId v = FP_VIEW_PLAN; piece != NULL && v < FP_N_VIEWS; v++)
    if (is_on_board (self, v) && fp_evidence_is_before (piece, fp_evidence_points (evidence), self->projection[v]))
      {
        out[n] = as_shown (self, v, fp_evidence_points (evidence) + piece->first, piece->n);
        n += out[n].size > 0 && out[n].size >= TRULY * length_of (piece, fp_evidence_points (evidence)) ? 1 : 0;
      }
  if (piece == NULL && way != NULL && way->narrows && is_on_board (self, FP_VIEW_PLAN))
    {
      const FpVec3 narrow[2] = { { way->narrow[0].x, way->narrow[0].y, 0 }, { way->narrow[1].x, way->narrow[1].y, 0 } };

      out[n++] = as_shown (self, FP_VIEW_PLAN, narrow, 2);
    }
  return n;
}

/* --- whether it is ------------------------------------------------------------------------- */

/* All of it, or as much as the board holds. */
static gboolean
is_between (double middle, double size, double screen)
{
  return MIN (middle + size / 2, screen) - MAX (middle - size / 2, 0) >= MIN (size, screen) - 1;
}

static gboolean
is_legible (FpBoardView *self, const Subject *subject)
{
  const FpViewLayout *layout = &self->layout.view[subject->view];
  const FpPoint at = fp_board_view_to_widget (self, fp_view_to_paper (layout, subject->middle));

  return subject->size / layout->scale >= LEGIBLE
         && is_between (at.x, subject->across / layout->scale * PX_PER_MM, gtk_widget_get_width (GTK_WIDGET (self)))
         && is_between (at.y, subject->up / layout->scale * PX_PER_MM, gtk_widget_get_height (GTK_WIDGET (self)));
}

static gboolean
is_any_legible (FpBoardView *self, const Subject *subject, guint n)
{
  for (guint i = 0; i < n; i++)
    if (is_legible (self, &subject[i]))
      return TRUE;
  return FALSE;
}

/* On the plan, which is where people look for a place; or on the one view that there is. */
static gboolean
is_mark_in_view (FpBoardView *self)
{
  double x, y;

  return fp_board_view_locate (self, self->only >= 0 ? (FpViewId) self->only : FP_VIEW_PLAN, self->mark, &x, &y) && x >= 0.0
         && y >= 0.0 && x <= gtk_widget_get_width (GTK_WIDGET (self)) && y <= gtk_widget_get_height (GTK_WIDGET (self));
}

/* --- there and back ------------------------------------------------------------------------ */

/* Only so far as somebody has not zoomed it since. */
static void
go_back (FpBoardView *self)
{
  if (self->before.scale <= 0 || self->before.went != self->scale || self->before.only != self->only)
    {
      self->before.scale = 0;
      return;
    }
  fp_board_view_lie (self, self->before.scale, self->before.pan, self->before.framing);
  self->before.scale = 0;
}

static void
bring (FpBoardView *self, const Subject *subject)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self)) / PX_PER_MM, height = fp_board_view_height_mm (self);
  const double fits = MAX (subject->across / MAX (width - 2 * ROOM, ROOM), subject->up / MAX (height - 2 * ROOM, ROOM));
  const double scale = subject->size / self->scale < LEGIBLE ? subject->size / BROUGHT : self->scale;
  FpPoint at;

  fp_board_view_lie (self, MAX (scale, fits), self->pan, FRAME_BY_HAND);
  at = fp_view_to_paper (&self->layout.view[subject->view], subject->middle);
  fp_board_view_lie (self, self->scale, (FpPoint) { self->pan.x + MARGIN_MM + width / 2 - at.x,
                                                    self->pan.y + MARGIN_MM + height / 2 - at.y }, FRAME_BY_HAND);
}

void
fp_board_view_show_marked (FpBoardView *self)
{
  Subject subject[FP_N_VIEWS];
  guint n;
  double scale;
  FpPoint pan;
  Framing framing;

  if (!self->marked || self->held || !fp_board_view_has_projections (self) || self->scale <= 0.0)
    return;
  n = subjects (self, subject);
  if (n > 0 && !(self->before.scale > 0 && self->before.scale < self->scale) && is_any_legible (self, subject, n))
    return;
  go_back (self);
  n = subjects (self, subject);
  if (n > 0 ? is_any_legible (self, subject, n) : is_mark_in_view (self))
    return;
  scale = self->scale, pan = self->pan, framing = self->framing;
  if (n > 0)
    bring (self, &subject[0]);
  else
    fp_board_view_frame (self, TRUE);
  self->before.scale = scale, self->before.pan = pan, self->before.framing = framing;
  self->before.went = self->scale, self->before.only = self->only;
}
