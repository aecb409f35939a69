/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-view-private.h - what the files of the board share */
#pragma once

#include "board-tool.h"
#include "board-view.h"
#include "drafter.h"
#include "page-tiles.h"
#include "tape.h"

#include "footpace/catches.h"
#include "footpace/handles.h"

G_BEGIN_DECLS

/* Widget pixels to a millimetre of paper: 96 dots an inch, which the toolkit scales for dense screens. */
#define PX_PER_MM (96.0 / 25.4)
/* Drawn round what is in view, so that a pan draws anew only now and then; mm of paper, whole pixels. */
#define MARGIN_MM (227.0 / PX_PER_MM)

typedef enum { FRAME_BY_HAND, FRAME_SANCTUARY, FRAME_WHOLE } Framing;

struct _FpBoardView
{
  GtkWidget      parent_instance;
  FpDocument    *document;
  FpDrafter     *drafter;

  FpProjection  *projection[FP_N_VIEWS];
  FpBoardMemory *memory;       /* where names and dimensions stood, so that they do not jump */
  GPtrArray     *kept;         /* and where they stood in other states of the project */
  FpBoardLayout  layout;       /* in paper mm of the drawing: margin included  */
  double         scale;        /* 0: nothing framed yet                        */
  FpPoint        pan;          /* paper mm                                     */
  FpPoint        laid_pan;     /* the pan for which the layout was made        */
  Framing        framing;
  int            only;         /* FpViewId: that one has the whole surface; -1: all three */
  struct { double scale; FpPoint pan; Framing framing; } all_three; /* as they lay before one had it */
  double         height;       /* mm, at the last allocation: the upper edge stays put */
  int            width;        /* px, at the last allocation                   */
  gboolean       preparing;    /* it is drawn in the next frame                */
  guint          settling;     /* source: the paper comes to rest              */
  gboolean       at_rest;      /* the next drawing may take its time           */
  FpDrawing     *drawing;      /* NULL: to be drawn                            */
  FpPageTiles   *page;
  GskRenderNode *chosen_node[FP_N_VIEWS], *left_node[FP_N_VIEWS], *figures_node;
  gboolean       dark, system_dark;
  FpGround       ground;
  FpInkChoice    ink;
  FpDraftHow     how;          /* what is drawn                                */
  double         section_from; /* where the section was cut before its line was dragged */

  FpBoardTool    tool;
  FpViewId       anchor;       /* the view that stays put when the layout is made anew */
  gboolean       held;         /* the layout stays as it is                    */
  GHashTable    *moving;       /* interned ids of all that moves with the hand */
  FpCatches     *catches;      /* while something is moved: where it may come to rest */
  guint          catch_ways;   /* 1: x, 2: y: which of them may be caught      */
  FpCatch        catch_x, catch_y; /* what holds it now; ids live as long as `catches` */
  GArray        *handles;      /* FpHandle: of the chosen thing; NULL: to be made */
  guint          handle;       /* the one that keys are about: number from 1; 0: none */
  FpHandle       pulled;       /* as it was before it was pulled               */
  GArray        *pulled_from;  /* all of them as they were; NULL: none is pulled */
  char          *amiss;        /* why what is pulled cannot come there; NULL: it can */
  FpTape         tape;
  gboolean       taping;       /* the button that is held stretches it         */
  FpCatches     *still;        /* of what is drawn, with nothing moving; NULL: to be made */
  FpBox          frame;        /* paper mm: drawn to choose what lies in it    */
  gboolean       own_change;   /* the scene changes by our own doing           */
  gboolean       space;        /* the space bar is down                        */
  FpStretch      pressed;      /* what the dimension that is pressed measures; no item: none is */
  FpPoint        pointer;      /* widget px; x < 0: not over the board         */
  double         pinch_scale;
  char          *hover;        /* id under the pointer                         */
  GskRenderNode *hover_node;

  gboolean       marked;
  FpVec3         mark;
  /* How it lay before it was brought to what was measured, and the scale to which it was; scale 0: it was not. */
  struct { double scale, went; FpPoint pan; Framing framing; int only; } before;
  struct _FpBoardWay *way;     /* of the finding that is marked; NULL: it has none */
  struct _FpBoardEvidence *evidence; /* likewise what was measured                 */

  struct _FpBoardSight *sight; /* NULL: it is not shown                         */
  struct _FpBoardPew *pew;     /* likewise the view from the pew               */
  struct _FpBoardSun   *sun;   /* likewise                                      */
  struct _FpBoardChange *change; /* likewise what a change would make of it      */

  guint          figure;       /* of the chosen thing, which was typed over last by keys: number from 1; 0: none */
  GtkWidget     *typing;       /* the field that is open on the board; NULL: none */
  char          *readout;
};

/* --- board-view.c --- */
void    fp_board_view_notice   (FpBoardView *self, const char *text);
void    fp_board_view_tell_click (FpBoardView *self, double x, double y); /* widget px; "plan-clicked" if there */
void    fp_board_view_prepare  (FpBoardView *self); /* draws in the next frame, before that is laid out */

/* --- board-over.c --- */
/* What is drawn in the background over the views, as it is painted. */
typedef struct
{
  FpSurfaceLook  painted; /* in which look the nodes are                      */
  GskRenderNode *node[FP_N_VIEWS];
} FpBoardOver;
void     fp_board_over_forget (FpBoardOver *over); /* something else is drawn */
/* @scale: to which it was drawn; it grows with the paper since. */
void     fp_board_over_snapshot (FpBoardOver *over, FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look,
                                 const FpOverPart part[FP_N_VIEWS], double scale);
gboolean fp_board_over_is_outgrown (FpBoardView *self, double scale);
/* How the views lie; those that are not on the board have no scale. */
void     fp_board_view_shown_views (FpBoardView *self, FpViewLayout view[FP_N_VIEWS]);

/* --- board-sun.c --- */
void     fp_board_view_sun_changed  (FpBoardView *self); /* there may be another scene */
void     fp_board_view_forget_sun   (FpBoardView *self); /* it is of another document */
void     fp_board_view_free_sun     (FpBoardView *self);
void     fp_board_view_snapshot_sun (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);

/* --- board-change.c --- */
typedef struct _FpBoardChange FpBoardChange;
void     fp_board_view_free_change     (FpBoardView *self);
void     fp_board_view_snapshot_change (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);

/* --- board-sight.c --- */
typedef struct _FpBoardSight FpBoardSight;
void    fp_board_view_sight_changed (FpBoardView *self); /* new findings have come */
void    fp_board_view_forget_sight  (FpBoardView *self); /* it is of another document */
void    fp_board_view_free_sight    (FpBoardView *self);
void    fp_board_view_snapshot_sight (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);
/* What stands in the line of sight, as it is named in a view; without a drawing: it is not; NULL: not looked for yet. */
const FpOverPart *fp_board_view_stop (FpBoardView *self, FpViewId view, double *scale);

/* --- board-way.c --- */
typedef struct _FpBoardWay FpBoardWay;
void    fp_board_view_snapshot_way (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);

/* --- board-evidence.c --- */
typedef struct _FpBoardEvidence FpBoardEvidence;
void     fp_board_view_snapshot_evidence (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);
gboolean fp_board_view_has_evidence      (FpBoardView *self, FpViewId view); /* something of it was drawn there */

/* --- board-stop.c --- */
/* What stands in the line of sight of the place that Sight has chosen, named in the views where they have room. */
typedef struct _FpBoardStop FpBoardStop;
FpBoardStop *fp_board_stop_new  (void);
void    fp_board_stop_free      (FpBoardStop *self);
void    fp_board_stop_forget    (FpBoardStop *self); /* something else lies over the board */
/* Where a draft of what is seen lies over the board; room is looked for again when the board's drawing is another. */
void    fp_board_stop_snapshot  (FpBoardStop *self, FpBoardView *board, GtkSnapshot *snapshot, FpSurfaceLook look);
const FpOverPart *fp_board_stop_part (const FpBoardStop *self, FpBoardView *board, FpViewId view, double *scale); /* NULL: not yet */

/* --- board-pew.c --- */
typedef struct _FpBoardPew FpBoardPew;
void    fp_board_view_forget_pew   (FpBoardView *self); /* it is of another document */
void    fp_board_view_free_pew     (FpBoardView *self);
void    fp_board_view_snapshot_pew (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look);

/* --- board-layout.c --- */
void    fp_board_view_ensure   (FpBoardView *self); /* the drawing is there, if there is anything to draw */
FpPoint fp_board_view_to_paper (FpBoardView *self, double x, double y);
FpPoint fp_board_view_to_widget (FpBoardView *self, FpPoint paper);
FpPoint fp_board_view_on_widget (FpBoardView *self, FpViewId view, FpVec3 at); /* as that view shows it */
gboolean fp_board_view_is_turned (FpBoardView *self, FpViewId view);           /* its left is our right */
void    fp_board_view_pan_by   (FpBoardView *self, FpPoint by);
void    fp_board_view_reveal   (FpBoardView *self, const FpPlaced *placed); /* pans to it where no view has it on the screen */
void    fp_board_view_zoom_at  (FpBoardView *self, double factor, double x, double y);
void    fp_board_view_relayout (FpBoardView *self);
void    fp_board_view_lay_out  (FpBoardView *self);
void    fp_board_view_fit      (FpBoardView *self); /* frames what is to be framed */
/* Scale and pan count where it is framed by hand. */
void    fp_board_view_lie      (FpBoardView *self, double scale, FpPoint pan, Framing framing);
void    fp_board_view_forget_drawing (FpBoardView *self);
gboolean fp_board_view_has_projections (FpBoardView *self);
double  fp_board_view_height_mm (FpBoardView *self);
FpUnits fp_board_view_units    (FpBoardView *self);

/* --- board-memory.c --- */
void    fp_board_view_tell_shows    (FpBoardView *self); /* something else is left out, or cut elsewhere */
void    fp_board_view_forget_memory (FpBoardView *self); /* begins anew with none */
void    fp_board_view_drop_memory   (FpBoardView *self);
void    fp_board_view_keep_memory   (FpBoardView *self); /* of what has just been drawn */
void    fp_board_view_recall        (FpBoardView *self, const FpScene *scene); /* which is drawn next */

/* --- board-input.c --- */
void    fp_board_view_add_controllers (FpBoardView *self);
FpToolHit fp_board_view_hit (FpBoardView *self, double x, double y); /* what lies there: an edge, or a face */

void    fp_board_view_hover (FpBoardView *self); /* what lies under the pointer is looked up anew */

/* --- board-section.c --- */
gboolean fp_board_view_is_section (const char *item);
FpViewId fp_board_view_section_of (const char *item); /* the view that it cuts */
/* The ends of its cutting line before all else, the line itself where nothing that moves lies under it. */
gboolean fp_board_view_hit_section_end  (FpBoardView *self, FpPoint paper, FpToolHit *hit);
gboolean fp_board_view_hit_section_line (FpBoardView *self, FpPoint paper, FpToolHit *hit);
/* FALSE: the answer is about something else. */
gboolean fp_board_view_obey_section (FpBoardView *self, const FpToolAnswer *answer);
char    *fp_board_view_section_words (FpBoardView *self, FpViewId view);

/* --- board-move.c --- */
void    fp_board_view_obey (FpBoardView *self, const FpToolAnswer *answer);
void    fp_board_view_let_go (FpBoardView *self); /* nothing is under the hand any more */

/* --- board-catch.c --- */
void    fp_board_view_begin_catching (FpBoardView *self, const char *const *moving);
void    fp_board_view_end_catching (FpBoardView *self);

/* --- board-chosen.c --- */
/* Ids of all that are chosen and can be moved or taken away, ended by NULL; owned by the caller (g_strfreev). */
char  **fp_board_view_standing (FpBoardView *self);
char   *fp_board_view_names (FpBoardView *self, const char *const *ids); /* "Altar", "3 things"; owned by the caller */
/* In the order of the list of things, and only what is shown; FALSE: past either end. */
gboolean fp_board_view_choose_next (FpBoardView *self, gboolean backward);
/* All furnishings that are shown and stand in the alternative; the building stays as it is. */
void    fp_board_view_choose_all (FpBoardView *self);
void    fp_board_view_choose_within (FpBoardView *self, FpBox steady, gboolean also);
FpBox   fp_board_view_from_steady (FpBoardView *self, FpBox steady);

/* --- board-handles.c --- */
void    fp_board_view_forget_handles (FpBoardView *self);
gboolean fp_board_view_has_handles (FpBoardView *self);
guint   fp_board_view_handle_at (FpBoardView *self, double x, double y); /* number from 1; 0: none there */
char   *fp_board_view_handle_tells (FpBoardView *self, guint number);    /* NULL: there is none */
void    fp_board_view_begin_pulling (FpBoardView *self, guint number);
void    fp_board_view_end_pulling (FpBoardView *self);
gboolean fp_board_view_is_pulling (FpBoardView *self);
FpProject *fp_board_view_pulled (FpBoardView *self, FpVec3 by, GError **error);
void    fp_board_view_choose_handle (FpBoardView *self, guint number);
gboolean fp_board_view_next_handle (FpBoardView *self, gboolean backward); /* FALSE: there are none */
void    fp_board_view_nudge_handle (FpBoardView *self, double dx, double dy);
gboolean fp_board_view_remove_corner (FpBoardView *self);
gboolean fp_board_view_insert_corner (FpBoardView *self);
gboolean fp_board_view_insert_corner_at (FpBoardView *self, double x, double y); /* widget px */
void    fp_board_view_draw_handles (FpBoardView *self, cairo_t *cr);

/* --- board-sides.c --- */
gboolean fp_board_view_has_sides (FpBoardView *self); /* the numbers of the sides of a wall are shown */
void    fp_board_view_draw_sides (FpBoardView *self, cairo_t *cr);

/* --- board-tape.c --- */
gboolean fp_board_view_has_tape (FpBoardView *self);
void    fp_board_view_set_tape (FpBoardView *self, gboolean taken);
void    fp_board_view_tape_follow (FpBoardView *self, const FpScene *was); /* another drawing is there */
void    fp_board_view_tape_carry (FpBoardView *self); /* its end, to the next view */
void    fp_board_view_tape_press (FpBoardView *self, double x, double y, FpToolManner manner);
void    fp_board_view_tape_motion (FpBoardView *self, double x, double y, FpToolManner manner);
void    fp_board_view_tape_release (FpBoardView *self, gboolean clicked);
gboolean fp_board_view_tape_escape (FpBoardView *self); /* FALSE: there was none */
void    fp_board_view_tape_shift (FpBoardView *self, double right, double up); /* mm */
void    fp_board_view_tape_enter (FpBoardView *self);
char   *fp_board_view_tape_words (FpBoardView *self); /* NULL: nothing to be said */
void    fp_board_view_draw_tape (FpBoardView *self, cairo_t *cr);
void    fp_board_view_forget_still (FpBoardView *self);

/* --- board-guides.c --- */
gboolean fp_board_view_has_guides (FpBoardView *self);
void    fp_board_view_draw_guides (FpBoardView *self, cairo_t *cr); /* in widget px */
void    fp_board_view_draw_words (FpBoardView *self, cairo_t *cr, const char *text, double x, double y);
char   *fp_board_view_travel_words (FpBoardView *self); /* how far, and what holds it; owned by the caller */

/* --- board-keys.c --- */
void    fp_board_view_add_keys (FpBoardView *self);

/* --- board-pick.c --- */
/* The thing (of the scene that is drawn) whose face is there; NULL.  @view: -1 where there is none. */
const FpPlaced *fp_board_view_face_at (FpBoardView *self, FpPoint paper, int *view);
int     fp_board_view_view_at (FpBoardView *self, FpPoint paper); /* FpViewId, -1: none */
/* Whether the view shows anything of it: the elevation leaves out the pews before it. */
gboolean fp_board_view_is_drawn (FpBoardView *self, const char *id, FpViewId view);

/* --- board-overlay.c --- */
FpInk   fp_board_view_accent (FpBoardView *self);
void    fp_board_view_snapshot_overlays (FpBoardView *self, GtkSnapshot *snapshot, double width, double height);
void    fp_board_view_forget_nodes (FpBoardView *self);
void    fp_board_view_forget_chosen (FpBoardView *self);

/* --- board-field.c --- */
typedef struct
{
  const char *title, *label, *text, *unit; /* borrowed while it opens; label: for a screen reader */
  const char *hint;   /* (nullable): under it                                 */
  gboolean    typed;  /* text has just been typed: more follows; otherwise it is chosen, to be typed over */
  gboolean  (*enter)   (gpointer data, const char *text, GError **error); /* FALSE: it stays open and says why */
  void      (*change)  (gpointer data, const char *text); /* (nullable): with every letter */
  void      (*give_up) (gpointer data);                    /* (nullable): Escape */
  void      (*other)   (gpointer data);                    /* (nullable): Tab */
  gboolean    is_length; /* sums of lengths are worked out while they are typed */
  gpointer    data;   /* owned by the field                                   */
  GDestroyNotify destroy;
} FpBoardField;

void    fp_board_view_open_field (FpBoardView *self, const FpBoardField *field, const GdkRectangle *where); /* widget px */
/* The one that is open is about something else now. */
void    fp_board_view_renew_field (FpBoardView *self, const char *title, const char *label, const char *text);
void    fp_board_view_end_typing (FpBoardView *self); /* enters what was typed, as going elsewhere does */
void    fp_board_view_drop_typing (FpBoardView *self);

/* --- board-dimension.c --- */
/* @dimension: of which the figure is meant; 0: the one nearest the pointer */
void    fp_board_view_type_over (FpBoardView *self, const char *item, const char *param, guint dimension);
/* What the dimension of the drawing that is pressed measures, until the button is let go: it may be drawn anew before
 * that, and number its dimensions otherwise. */
void    fp_board_view_hold_measure (FpBoardView *self, guint dimension); /* 0: none is pressed */
void    fp_board_view_type_measure (FpBoardView *self);                  /* the one that was pressed, if it is still there */

/* --- board-figures.c --- */
/* Opens the field of the next figure of what is chosen; FALSE: nothing is. */
gboolean fp_board_view_next_figure (FpBoardView *self);
void    fp_board_view_figure_on (FpBoardView *self); /* from one that is open */

/* --- board-typed.c --- */
/* Opens a field for how far what is dragged goes; FALSE: the letter begins no length, or nothing is dragged. */
gboolean fp_board_view_type_travel (FpBoardView *self, gunichar letter);

/* --- board-access.c --- */
void    fp_board_view_tell (FpBoardView *self); /* description for a screen reader */
void    fp_board_view_update_readout (FpBoardView *self);

G_END_DECLS
