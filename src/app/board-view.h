/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-view.h - the board as a widget
 *
 * As large as the window gives it, never as large as the drawing.  The page
 * is one cairo node with a margin round what is in view; panning moves it,
 * and it is made anew when the drawing, the zoom or the size changes.  What
 * is chosen, marked or being moved lies over it in nodes of its own.
 *
 * Signal "notice" (text): something could not be done, and why.
 * Signal "plan-clicked" (x, y): with the button down and up in one place of the plan, in mm of the church.
 * Signal "sun-told": the light of the sun is drawn: fp_board_view_sun().
 * Signal "sight-told": what every place sees is drawn: fp_board_view_sight().
 * Property "readout": scale and what is under the pointer, for a label.
 * Property "tape": whether the measuring tape is in hand; can be set.
 */
#pragma once

#include "document.h"
#include "drafter.h"
#include "blind-drafter.h"
#include "sun-drafter.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_BOARD_VIEW (fp_board_view_get_type ())
G_DECLARE_FINAL_TYPE (FpBoardView, fp_board_view, FP, BOARD_VIEW, GtkWidget)

GtkWidget *fp_board_view_new (void);
void       fp_board_view_set_document (FpBoardView *self, FpDocument *document); /* NULL: none */
/* Of which a drawing was begun elsewhere (nullable; taken). */
void       fp_board_view_set_begun    (FpBoardView *self, FpDocument *document, FpDraft *begun);

/* Frames the sanctuary, or the whole church. */
void       fp_board_view_frame (FpBoardView *self, gboolean whole);
/* About the middle of the board; above 1 is nearer. */
void       fp_board_view_zoom  (FpBoardView *self, double factor);
/* One view on the whole surface; -1: all three again, as they lay before. */
void       fp_board_view_show_only (FpBoardView *self, int view);
int        fp_board_view_only  (FpBoardView *self);
double     fp_board_view_scale (FpBoardView *self); /* 50 for 1:50; 0 with nothing drawn */

/* Where a finding is; NULL takes the mark away.  The board stays where it is. */
void       fp_board_view_mark  (FpBoardView *self, const FpVec3 *at);
gboolean   fp_board_view_marked (FpBoardView *self, FpVec3 *at); /* FALSE: no mark */
/* The way of the finding that is marked, drawn over the plan; NULL takes it away.  A mark elsewhere takes it away, too. */
void         fp_board_view_mark_way   (FpBoardView *self, const FpWay *way);
/* Likewise what was measured, drawn over all views; copied. */
void         fp_board_view_mark_evidence (FpBoardView *self, const FpEvidence *evidence);
const FpEvidence *fp_board_view_marked_evidence (FpBoardView *self); /* NULL: none is drawn */
/* Brings the board to what was measured, where that is out of view or too small to be read; where nothing has a size of its
 * own, and the mark is out of view, to the whole church.  What it was moved for a finding before is taken back first. */
void         fp_board_view_show_marked (FpBoardView *self);
const FpWay *fp_board_view_marked_way (FpBoardView *self); /* NULL: none is drawn */

/* Draws over it what a change would make of the church (NULL: no more), and tells what it is beside it.
 * @then: the project in which it is made; @item: id of what is changed first */
void       fp_board_view_show_change (FpBoardView *self, const FpProject *then, const char *item, const char *words);
const char *fp_board_view_change   (FpBoardView *self); /* the words, once it is drawn; NULL */

/* Puts back what is being moved; FALSE when nothing is. */
gboolean   fp_board_view_cancel (FpBoardView *self);
/* Moves what is chosen, as the arrow keys do. */
void       fp_board_view_nudge  (FpBoardView *self, double dx, double dy);
void       fp_board_view_remove_chosen (FpBoardView *self);

/* What is left out, and where sections are cut: kept for every project that this board shows.  The section across the
 * church stands, while it is placed, in the place of the elevation; it alone may be turned. */
void       fp_board_view_set_hidden  (FpBoardView *self, FpHidden hidden);
FpHidden   fp_board_view_hidden      (FpBoardView *self);
void       fp_board_view_set_cut     (FpBoardView *self, FpViewId view, const FpCut *cut);
/* From where to where there is a church to be cut, mm along x (the section) or y (the one across); FALSE where there is
 * nothing yet. */
gboolean   fp_board_view_cut_range   (FpBoardView *self, FpViewId view, double *low, double *high);
FpCut      fp_board_view_cut         (FpBoardView *self, FpViewId view);

/* The ground on which it is drawn, and the ink. */
typedef enum { FP_GROUND_OF_SYSTEM, FP_GROUND_WHITE, FP_GROUND_DARK } FpGround;
void       fp_board_view_set_look    (FpBoardView *self, FpGround ground, FpInkChoice ink);

/* Marks every place on the plan by what it sees (NULL: no more), and draws the line of sight of one.  "sight-told" tells
 * when that was done for the newest findings. */
void       fp_board_view_set_sight   (FpBoardView *self, const FpSightLook *look);
/* The light of the sun at a time, and in whose eyes it is (NULL: no more); likewise, "sun-told". */
void       fp_board_view_set_sun     (FpBoardView *self, const FpSunLook *look);
const FpSunDraft *fp_board_view_sun  (FpBoardView *self); /* what is shown; NULL: nothing yet; borrowed */
const FpSightDraft *fp_board_view_sight (FpBoardView *self); /* what is shown; NULL: nothing yet; borrowed */

/* Floor from which nothing of it is seen, if that is looked for and known for what is shown; borrowed. */
const FpBlindDraft *fp_board_view_blind (FpBoardView *self);

/* The view from the pew in the empty quarter, where there is room for it, and nothing is under the hand. */
void       fp_board_view_set_pew     (FpBoardView *self, gboolean shown);
/* From the place that is nearest to a point of the plan, if one is near. */
void       fp_board_view_set_pew_at  (FpBoardView *self, FpPoint at);
/* Whose view it is, and what is told of it (out, optional; NULL: nothing yet); NULL: it is not shown. */
const FpPewSpec *fp_board_view_pew   (FpBoardView *self, const char **told);
/* Where the picture lies, px; FALSE where none does now. */
gboolean   fp_board_view_pew_room    (FpBoardView *self, FpBox *box);

/* Whether what is drawn is the document's present scene: a large church is drawn in the background. */
gboolean   fp_board_view_is_current (FpBoardView *self);

/* And nothing of it will be set out anew but for a further change. */
gboolean   fp_board_view_lies_still (FpBoardView *self);

/* Where a point of the church lies in a view, in widget coordinates; FALSE before anything is drawn. */
gboolean   fp_board_view_locate (FpBoardView *self, FpViewId view, FpVec3 at, double *x, double *y);

G_END_DECLS
