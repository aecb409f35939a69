/* SPDX-License-Identifier: GPL-3.0-or-later */
/* page.h - how a church is put on paper: what is shown, where it is cut, and the page
 *
 * Values without a scene: a project keeps them, drawings are made by them.
 */
#pragma once

#include "footpace/kind.h"

G_BEGIN_DECLS

/* --- what is shown ---------------------------------------------------------- */

typedef enum { FP_STANDING_EXISTING, FP_STANDING_PROPOSED, FP_STANDING_REMOVED } FpStanding;

/* What may be left out of a drawing: things by their sort (the first ones, in the order of FpSort), things by
 * their standing, and what is written about them. */
typedef enum
{
  FP_SHOW_BUILDING, FP_SHOW_ALTAR, FP_SHOW_LIGHTS, FP_SHOW_FURNITURE, FP_SHOW_SEDILIA,
  FP_SHOW_SEATS,
  FP_SHOW_EXISTING, FP_SHOW_PROPOSED, FP_SHOW_REMOVED,
  FP_SHOW_DIMENSIONS, FP_SHOW_LEVELS, FP_SHOW_NAMES,
  FP_N_SHOWS
} FpShow;

/**
 * FpHidden:
 *
 * What is left out: 1 << FpShow; 0: everything is shown.
 *
 * What is left out is not there for the drawing: it hides nothing, so that
 * lines behind it are seen; it is not cut, measured or named, and answers no
 * pointer.  What stands on it keeps its place.
 */
typedef guint FpHidden;
#define FP_HIDDEN_ALL ((1u << FP_N_SHOWS) - 1)

const char *fp_show_id    (FpShow show); /* "building", "dimensions" …: in files and commands */
const char *fp_show_label (FpShow show); /* "Altar and its steps" …                          */
gboolean    fp_show_find  (const char *id, FpShow *show);

/* Ids parted by commas or spaces; FALSE where one is none, which is told in @wrong (out, transfer full). */
gboolean    fp_hidden_parse (const char *text, FpHidden *hidden, char **wrong);
char       *fp_hidden_text  (FpHidden hidden); /* "names seats", always in one order; "" for none; the caller's */

static inline gboolean
fp_shows (FpHidden hidden, FpShow show)
{
  return (hidden & (1u << show)) == 0;
}

/* Whether a thing is shown, by its sort and its standing. */
gboolean    fp_shows_thing (FpHidden hidden, const FpKind *kind, FpStanding standing);

/* --- where a view is cut ----------------------------------------------------- */

/* Zero: where the view is cut when nobody says (see fp_projection_new()), and seen from there as usual. */
typedef struct
{
  gboolean placed;  /* it is cut at `at`                                            */
  double   at;      /* mm: x of a longitudinal section, y of one across the church  */
  gboolean turned;  /* seen from the other side: from the Epistle side; towards the west */
} FpCut;

/* The letter of a section: A of the longitudinal one, B of the one across, whichever else is cut: sheets that are drawn one
 * by one call each by the same. */
char fp_cut_letter (FpViewId view);

/* --- ink ---------------------------------------------------------------------- */

/* All of them tell proposed and removed work by weight and dashes too (see fp_pen_stroke()). */
typedef enum
{
  FP_INK_COLOUR, /* proposed red, removed yellow                            */
  FP_INK_GREY,   /* for a copier                                            */
  FP_INK_SAFE,   /* proposed blue, removed orange: told apart with any deficiency of colour vision */
  FP_N_INKS
} FpInkChoice;
const char *fp_ink_id   (FpInkChoice ink); /* "colour", "grey", "safe" */
gboolean    fp_ink_find (const char *id, FpInkChoice *ink);

/* --- paper -------------------------------------------------------------------- */

typedef enum { FP_PAPER_A4, FP_PAPER_A3, FP_PAPER_A2, FP_PAPER_A1, FP_PAPER_LETTER, FP_PAPER_TABLOID, FP_N_PAPERS } FpPaper;
const char *fp_paper_id (FpPaper paper); /* "a4", "letter" */
gboolean    fp_paper_find (const char *id, FpPaper *paper);
void        fp_paper_size (FpPaper paper, gboolean landscape, double *width, double *height); /* mm */

typedef enum { FP_SHEET_PLAN, FP_SHEET_ELEVATION, FP_SHEET_SECTION, FP_SHEET_CROSS, FP_SHEET_SECTIONS,
               FP_SHEET_BOARD, FP_N_SHEETS } FpSheetKind;
const char *fp_sheet_id (FpSheetKind kind); /* "plan" …; "cross" is the section across the church, "sections" both */

/* Sheets that are no view of the church alone, where a sheet is told by number: all alternatives side by side; the people
 * below the altar along the nave; what every place sees; the sun at a Mass; setting cards;
 * schedules; the linen as it is cut; the stone as it is laid; for how many there is room. */
#define FP_SHEET_COMPARE FP_N_SHEETS
#define FP_SHEET_LEVELS  (FP_N_SHEETS + 1)
#define FP_SHEET_SIGHT   (FP_N_SHEETS + 2)
#define FP_SHEET_SUN     (FP_N_SHEETS + 3)
#define FP_SHEET_CARD    (FP_N_SHEETS + 4)
#define FP_SHEET_SCHEDULE (FP_N_SHEETS + 5)
#define FP_SHEET_LINEN   (FP_N_SHEETS + 6)
#define FP_SHEET_LAYING  (FP_N_SHEETS + 7)
#define FP_SHEET_CAPACITY (FP_N_SHEETS + 8)
#define FP_N_ALL_SHEETS  (FP_N_SHEETS + 9)
const char *fp_sheet_any_id (guint sheet);                /* "plan" …, "compare", "levels", "sight", "sun", "card" … */
gboolean    fp_sheet_find (const char *id, guint *sheet); /* of any of them */

/* --- page set-up ----------------------------------------------------------------- */

#define FP_SHEET_SCALE_MOST 10000

/* How a project is printed, kept with it so that the next person prints alike. */
typedef struct
{
  guint       sheet;       /* FpSheetKind, or another of FP_N_ALL_SHEETS       */
  FpPaper     paper;
  gboolean    landscape;
  double      scale;       /* 50 for 1:50, whole, at most FP_SHEET_SCALE_MOST; 0: the largest that fits */
  gboolean    whole;       /* the whole church; otherwise the sanctuary        */
  gboolean    findings;
  FpInkChoice ink;
  FpHidden    hidden;
  gboolean    tiled;       /* on pages of `tile`, to be joined                 */
  FpPaper     tile;
  FpCut       along, across; /* at: within 1 km of the origin                  */
} FpPageSetup;

/* FALSE with %FP_ERROR_RANGE; its message begins "page:". */
gboolean    fp_page_setup_check (const FpPageSetup *self, GError **error);
gboolean    fp_page_setup_equal (const FpPageSetup *a, const FpPageSetup *b); /* either may be NULL */

G_END_DECLS
