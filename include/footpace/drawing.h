/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drawing.h - a drawing is a list of marks
 *
 * Marks are in millimetres of paper, y upward from the lower edge.  Each has
 * the role of its pen (ISO 128), the standing of what it shows (existing,
 * proposed, removed), the id of that thing, and for a dimension the parameter
 * that it shows.  One list is painted by cairo, written as SVG, and asked
 * what lies under the pointer.
 *
 * A drawing is built, then read; it is not thread-safe while it is built.
 */
#pragma once

#include "footpace/stretch.h"

G_BEGIN_DECLS

typedef enum
{
  FP_PEN_CUT,       /* outlines of cut parts: extra wide                     */
  FP_PEN_OUTLINE,   /* silhouettes, visible edges: wide                      */
  FP_PEN_EDGE,      /* edges within a thing: narrow                          */
  FP_PEN_HIDDEN,    /* dashed narrow: hidden, or above the cut               */
  FP_PEN_AXIS,      /* long dash, dot                                        */
  FP_PEN_HATCH,
  FP_PEN_DIMENSION, /* dimension and extension lines, leaders, levels        */
  FP_PEN_LETTER,
  FP_PEN_FRAME,     /* frame of the sheet: 0.7                               */
  FP_PEN_GUIDE,     /* projector lines, mitre line: fine dots                */
  FP_N_PENS
} FpPen;

typedef enum { FP_MARK_LINE, FP_MARK_AREA, FP_MARK_CIRCLE, FP_MARK_TEXT } FpMarkType;

typedef enum { FP_FILL_NONE, FP_FILL_PAPER, FP_FILL_CUT, FP_FILL_TINT, FP_FILL_INK } FpFill;

typedef enum { FP_ALIGN_LEFT, FP_ALIGN_MIDDLE, FP_ALIGN_RIGHT } FpAlign;

typedef struct
{
  FpMarkType  type;
  FpPen       pen;
  FpStanding  standing;
  const char *item;       /* interned; NULL: belongs to the sheet            */
  const char *param;      /* interned; the parameter that a dimension shows  */
  guint       dimension;  /* marks of one dimension or level share a number from 1; 0: none */
  int         view;       /* FpViewId, -1: the sheet                         */
  /* LINE: open or closed run; AREA: closed outline, filled, with a border when `pen` is not FP_PEN_HATCH */
  guint       first, n;   /* into the drawing's points                       */
  gboolean    closed;
  FpFill      fill;
  double      hatch;      /* degrees; 0: none                                */
  /* CIRCLE, TEXT */
  FpPoint     at;
  double      radius;
  double      height;     /* of capitals, mm                                 */
  double      turn;       /* degrees counter-clockwise                       */
  FpAlign     align;
  const char *text;       /* owned by the drawing                            */
} FpMark;

typedef struct _FpDrawing FpDrawing;

FpDrawing     *fp_drawing_new   (double width, double height); /* of the paper, mm */
FpDrawing     *fp_drawing_ref   (FpDrawing *self);
void           fp_drawing_unref (FpDrawing *self);
double         fp_drawing_width  (const FpDrawing *self);
double         fp_drawing_height (const FpDrawing *self);
const FpMark  *fp_drawing_marks  (const FpDrawing *self, guint *n); /* @n: (out) (optional) */
const FpPoint *fp_drawing_points (const FpDrawing *self);

/* The ink in which it is painted on paper and written; colour if nobody says.  An inset follows what it is set in. */
void        fp_drawing_set_ink (FpDrawing *self, FpInkChoice ink);
FpInkChoice fp_drawing_ink     (const FpDrawing *self);

/* What following marks belong to. */
void fp_drawing_set_item (FpDrawing *self, const char *item, FpStanding standing, int view);
void fp_drawing_set_dimension (FpDrawing *self, guint dimension, const char *param);
/* What the dimension of that number measures. */
void fp_drawing_set_stretch  (FpDrawing *self, guint dimension, const FpStretch *measured);
const FpStretch *fp_drawing_stretch (const FpDrawing *self, guint dimension); /* NULL: not known */

void fp_drawing_line   (FpDrawing *self, FpPen pen, FpPoint a, FpPoint b);
void fp_drawing_run    (FpDrawing *self, FpPen pen, const FpPoint *pt, guint n, gboolean closed);
void fp_drawing_area   (FpDrawing *self, FpPen pen, FpFill fill, double hatch, const FpPoint *pt, guint n);
void fp_drawing_circle (FpDrawing *self, FpPen pen, FpFill fill, FpPoint at, double radius);
/* @at is on the base line at the aligned end; turn in degrees. */
void fp_drawing_text   (FpDrawing *self, FpPoint at, double height, double turn, FpAlign align, const char *text);

/* Width of a text in mm as every surface letters it. */
double fp_lettering_width (const char *text, double height);

/* The text, or as much of it as fits @width mm with an ellipsis; line breaks become spaces.
 * Empty when not even the ellipsis fits. Owned by the caller. */
char      *fp_lettering_shorten (const char *text, double height, double width);

/**
 * fp_lettering_wrap:
 * @width: of the column, mm
 *
 * Broken at spaces; a word wider than the column is broken where it must be.
 *
 * Returns: (transfer full) (element-type utf8): at least one line, none wider than @width
 *   (unless a single letter is)
 */
GPtrArray *fp_lettering_wrap (const char *text, double height, double width);

/* Line width in mm, dash pattern (mm, returns its length 0..6) and colour of a pen. */
double fp_pen_width (FpPen pen);
guint  fp_pen_dashes (FpPen pen, FpStanding standing, double dashes[6]);
/* Line width in mm as drawn: proposed work is twice as heavy (ISO 128), so that it is told without colour.
 * (Removed work is told by short dashes with crosses, which the surfaces add.) */
double fp_pen_stroke (FpPen pen, FpStanding standing);
typedef struct { double r, g, b; } FpInk;

typedef enum
{
  FP_SURFACE_PAPER,     /* in the ink that the drawing was given             */
  FP_SURFACE_DARK,      /* light lines on a dark ground, for the screen      */
  FP_SURFACE_GREY,
  FP_SURFACE_SAFE,
  FP_SURFACE_SAFE_DARK,
  FP_N_SURFACE_LOOKS
} FpSurfaceLook;
FpSurfaceLook fp_surface_look (FpInkChoice ink, gboolean dark); /* grey has no dark ground: colour then */
FpInk  fp_pen_ink (FpPen pen, FpStanding standing, FpSurfaceLook look);
FpInk  fp_fill_ink (FpFill fill, FpStanding standing, FpSurfaceLook look);

/* The uppermost mark of a thing or dimension within @tolerance mm of @at; -1. */
int fp_drawing_pick (const FpDrawing *self, FpPoint at, double tolerance);

/* --- projections: hidden lines taken away -------------------------------- */

/* View coordinates (h to the right, v up, world mm): plan x, y; elevation x, z;
 * section -y, z (seen from the Gospel side, east on the left).  Seen from the other
 * side h is the opposite.  A section across the church is an elevation that is cut where it is told. */
typedef struct _FpProjection FpProjection;

/**
 * fp_projection_new:
 *
 * The plan is cut 1.1 m above the floor on which each FP_KIND_CUT thing
 * stands, and shows what stands lower; what lies above the cut is dashed.  The elevation looks east
 * from just before the rail (or the lowest altar step); the section is cut on the axis, x = 0.
 */
FpProjection *fp_projection_new   (const FpScene *scene, FpViewId view);

/**
 * fp_projection_new_cut:
 * @cut: (nullable): where it is cut and from where it is seen; of a plan nothing counts
 * @hidden: what is left out; it hides nothing
 *
 * Dimensions, levels and names of a drawing made of it follow @hidden too.
 */
FpProjection *fp_projection_new_cut (const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden);
FpCut         fp_projection_cut    (const FpProjection *self);
FpHidden      fp_projection_hidden (const FpProjection *self);

/* Where a section across the church is cut when nobody says: through the middle of the altar. y, mm. */
double        fp_cut_across (const FpScene *scene);
FpProjection *fp_projection_ref   (FpProjection *self);
void          fp_projection_unref (FpProjection *self);
const FpScene *fp_projection_scene (const FpProjection *self);
FpViewId      fp_projection_view  (const FpProjection *self);
FpBox         fp_projection_box   (const FpProjection *self); /* world mm    */

typedef struct { FpPoint a, b; guint owner; FpPen pen; } FpProjectedLine;
typedef struct { FpPoint *outline; guint n; guint owner; } FpProjectedCut;
/* By owner, then pen; each once, however many solids share it. */
const FpProjectedLine *fp_projection_lines (const FpProjection *self, guint *n);
/* Cut faces, to be filled without a border: their borders are among the lines, with FP_PEN_CUT.
 * A face with a hole is one outline with a slit, so fill it by the even-odd rule. */
const FpProjectedCut  *fp_projection_cuts  (const FpProjection *self, guint *n);

/* The placed thing nearest the viewer at a point of the view (world mm), -1 where there is none.
 * What is cut away does not answer; ghosts answer where otherwise only floor or wall does. */
int                    fp_projection_pick  (const FpProjection *self, FpPoint at);

FpPoint fp_view_point (FpViewId view, FpVec3 p); /* not turned */

/* How a view lies on the paper: paper = origin + view / scale. */
typedef struct
{
  FpPoint  origin;      /* where view coordinates (0, 0) lie on the paper    */
  double   scale;       /* 50 for 1:50                                       */
  FpBox    clip;        /* view coordinates: what lies outside is not drawn; empty: all of it */
  gboolean dimensions, levels, labels;
  FpUnits  units;
  /* Where sections are cut: a plan shows the cutting lines of those that are placed. */
  FpCut    section[FP_N_VIEWS];
  FpHidden hidden;
} FpViewLayout;

/* A point of the church as that view shows it, turned or not; view coordinates. */
FpPoint fp_layout_point (const FpViewLayout *layout, FpViewId view, FpVec3 p);

static inline FpPoint
fp_view_to_paper (const FpViewLayout *layout, FpPoint v)
{
  return (FpPoint) { layout->origin.x + v.x / layout->scale, layout->origin.y + v.y / layout->scale };
}

static inline FpPoint
fp_view_from_paper (const FpViewLayout *layout, FpPoint p)
{
  return (FpPoint) { (p.x - layout->origin.x) * layout->scale, (p.y - layout->origin.y) * layout->scale };
}

/**
 * fp_drawing_add_view:
 *
 * The view with its dimensions and lettering, which never cross each other:
 * what finds no room is left out, least rank first.
 *
 * Returns: how many dimensions found no room
 */
guint fp_drawing_add_view (FpDrawing *self, FpProjection *projection, const FpViewLayout *layout);

/* Room in paper mm that dimensions and titles need around a view: left, below, right, above. */
typedef struct { double left, below, right, above; } FpMargins;
FpMargins fp_view_margins (FpProjection *projection, const FpViewLayout *layout);

/* Where the names and dimensions of a board stood. */
typedef struct _FpBoardMemory FpBoardMemory;

/* --- the board ----------------------------------------------------------- */

typedef struct
{
  FpViewLayout view[FP_N_VIEWS]; /* where each lies: for turning the pointer into mm */
  FpBox        frame[FP_N_VIEWS]; /* paper mm: what belongs to which view            */
  FpPoint      mitre_a, mitre_b;  /* the mitre line, paper mm                        */
  gboolean     alone;             /* one view has the whole surface: the frames of the others are empty, */
  FpViewId     only;              /* this one, and there is no mitre line            */
  FpBox        seen;              /* paper mm: titles stand within; empty: on the paper */
  FpBoardMemory *memory;          /* (nullable), borrowed: what stood somewhere when it was last drawn stays there
                                     while it still fits */
} FpBoardLayout;

FpBoardMemory *fp_board_memory_new  (void);
void           fp_board_memory_free (FpBoardMemory *self);

/**
 * fp_board_layout:
 * @across: (nullable): where placed, the section across the church has the place of the elevation, cut there; turned,
 *   it faces west, and x is mirrored in it (fp_layout_point())
 * @scale: 50 for 1:50; any number
 * @pan: paper mm by which the whole sheet is moved
 *
 * Elevation above plan, section to the right of the elevation, in first-angle
 * arrangement (ISO 5456-2): x, y and z are shared at every scale.
 */
void       fp_board_layout (const FpScene *scene, const FpCut *across, double scale, FpPoint pan, FpUnits units,
                            FpBoardLayout *out);
FpDrawing *fp_board_draw   (FpProjection *const projection[FP_N_VIEWS], const FpBoardLayout *layout,
                            double width, double height);
/* Scale and pan at which the sanctuary (or @whole church) fits width × height mm of paper. */
void       fp_board_fit    (const FpScene *scene, const FpCut *across, gboolean whole, double width, double height,
                            double *scale, FpPoint *pan);

/* One view on the whole surface; @pan: paper mm at which its origin lies. */
void       fp_board_layout_alone (const FpScene *scene, const FpCut *across, FpViewId view, double scale, FpPoint pan,
                                  FpUnits units, FpBoardLayout *out);
void       fp_board_fit_alone    (const FpScene *scene, const FpCut *across, FpViewId view, gboolean whole,
                                  double width, double height, double *scale, FpPoint *pan);

/* --- sheets -------------------------------------------------------------- */

typedef struct
{
  FpSheetKind  kind;
  FpPaper      paper;
  double       width, height; /* mm: of a sheet of another size; 0: of `paper` */
  const char  *paper_name;   /* of that other size: "2A0"                    */
  gboolean     landscape;
  double       scale;        /* 0: the largest of ISO 5455 that fits         */
  gboolean     whole;        /* the whole church; otherwise the sanctuary    */
  FpCut        cut[FP_N_VIEWS]; /* where sections are cut, across under FP_VIEW_ELEVATION; plans show those that are placed */
  FpHidden     hidden;       /* what is left out                             */
  FpInkChoice  ink;
  const char  *date;         /* ISO 8601 date of issue; NULL: left empty     */
  const char  *number;       /* identification number; NULL: from the title  */
  /* Findings for the pastor, set beside or below the drawing; NULL-terminated; may be NULL.  The lines of one are parted
   * by '\n', its heading first, the measured value next; the rest is left out where there is no room. */
  const char *const *findings;
  guint        page, pages;  /* sheet number and number of sheets; 0: one of one */
} FpSheetSpec;

/**
 * fp_sheet_new:
 * @scale: (out) (optional): the scale that it was drawn to
 *
 * Returns: (transfer full): the page; %FP_ERROR_RANGE when it does not fit the paper at spec->scale, saying which would
 */
FpDrawing *fp_sheet_new (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

/**
 * fp_sheet_pages:
 *
 * As fp_sheet_new(), and where not all findings find room beside the drawing, as many further sheets of findings as
 * they take.
 *
 * Returns: (transfer full) (element-type FpDrawing): the pages, the drawing first
 */
GPtrArray *fp_sheet_pages (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

/**
 * fp_elevation_plane:
 *
 * Just before the rail, or the lowest step of the altar, or what stands a
 * little in front of them; before the floor steps at its foot.
 *
 * Returns: y of the plane, mm; -G_MAXDOUBLE where there is neither rail nor altar: the elevation shows everything
 */
double fp_elevation_plane (const FpScene *scene);

/* What of a view is drawn where there is little room: the sanctuary without the upper parts of high walls; view coordinates. */
FpBox fp_view_sanctuary (const FpScene *scene, FpViewId view);

/* The scales of ISO 5455 (from memory), the largest first, carried on so that every church fits some paper. */
const double *fp_sheet_scales (guint *n);

/* ISO 5455: 1, 2 or 5 times a power of ten. */
gboolean fp_scale_is_standard (double scale);

/* Frame, title block, scale bar and cautions alone: for sheets composed elsewhere (compare).
 * @content: (out): the room left, paper mm. */
FpDrawing *fp_sheet_blank (const FpScene *scene, const FpSheetSpec *spec, const char *title, double scale, FpBox *content);

/* --- tiles: a large sheet on several small pages --------------------------- */

/**
 * fp_drawing_set_inset:
 * @of: a drawing, of which a reference is held
 * @at: where its lower left corner comes to lie, paper mm
 * @clip: paper mm: what lies outside is not painted
 *
 * Another drawing's marks, true to scale, painted under this one's own.  For
 * surfaces that are painted; SVG is written of the whole sheet instead.
 */
void fp_drawing_set_inset (FpDrawing *self, FpDrawing *of, FpPoint at, const FpBox *clip);

/**
 * fp_drawing_tiles:
 * @sheet: to be printed at its own scale
 * @paper, @landscape: of the pages
 *
 * Neighbouring tiles overlap by 10 mm; the lines in the middle of the overlap
 * are to be cut and joined at crosses that bear the same letters.  Each page
 * says where it belongs, and carries a ruler by which to tell whether it was
 * printed at 100 %.
 *
 * Returns: (transfer full) (element-type FpDrawing): row by row from the upper left; one page where the sheet fits one
 */
GPtrArray *fp_drawing_tiles (FpDrawing *sheet, FpPaper paper, gboolean landscape, FpUnits units);

/**
 * fp_sheet_pages_tiled:
 * @tile: paper of the pages to be joined; each sheet's pages lie the way that takes fewer
 *
 * As fp_sheet_pages(), on several pages to be joined.  What does not fit
 * spec->paper at spec->scale is drawn on a larger sheet, up to 4A0 (ISO 216).
 */
GPtrArray *fp_sheet_pages_tiled (const FpScene *scene, const FpSheetSpec *spec, FpPaper tile, double *scale,
                                 GError **error);

/* Sheets (element-type FpDrawing) on pages of @tile; (transfer full). */
GPtrArray *fp_sheets_tiled (const GPtrArray *sheets, FpPaper tile, FpUnits units);

/* A ruler, its length in words under it: 100 mm, or 4 in; from @at to the right. Returns its length, mm. */
double fp_drawing_add_ruler (FpDrawing *self, FpPoint at, FpUnits units);
/* The same from @at upward, its words on its left; where @room mm are too little for it, half as long, or none. */
double fp_drawing_add_ruler_upright (FpDrawing *self, FpPoint at, double room, FpUnits units);

/* --- surfaces ------------------------------------------------------------ */

typedef struct _cairo FpCairo; /* cairo_t, without asking every caller for cairo.h */

/* Paints onto a cairo context whose user space is millimetres with y DOWN from the upper edge of the paper. */
void     fp_drawing_paint (const FpDrawing *self, FpCairo *cr, FpSurfaceLook look, gboolean with_paper);
gboolean fp_drawing_write_pdf (FpDrawing *const *page, guint n_pages, const char *title, const char *author,
                               const char *path, GError **error);
gboolean fp_drawing_write_png (const FpDrawing *self, double dots_per_inch, const char *path, GError **error);
/* Structured SVG: a group a thing with its id, <title> and <desc>; real text; no raster.
 * @scene: (nullable): for names */
char    *fp_drawing_to_svg    (const FpDrawing *self, const FpScene *scene, const char *title, gsize *length);
gboolean fp_drawing_write_svg (const FpDrawing *self, const FpScene *scene, const char *title,
                               const char *path, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpDrawing, fp_drawing_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpProjection, fp_projection_unref)

G_END_DECLS
