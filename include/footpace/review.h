/* SPDX-License-Identifier: GPL-3.0-or-later */
/* review.h - what is laid before the people who decide
 *
 * Findings as text and as data, the alternatives side by side, and the sun at a time.
 */
#pragma once

#include "footpace/drawing.h"
#include "footpace/level-diagram.h"
#include "footpace/remedy.h"
#include "footpace/schedule.h"
#include "footpace/sun.h"

G_BEGIN_DECLS

/* The report of one alternative; owned by the caller.  @every: list each rule, what was measured, or why it was not;
 * otherwise only where nothing is short, since that is said of the rules listed. */
char *fp_report_text (const FpFindings *findings, gboolean every);
/* The same, and of each finding what settles it, or what stands in the way.  @remedies: (nullable): of @findings */
char *fp_report_text_remedied (const FpFindings *findings, gboolean every, const FpRemedies *remedies);
/* JSON, schema in DEVELOPERS.md ("footpace.findings", version 1). */
char *fp_report_json (const FpFindings *findings);
char *fp_report_json_remedied (const FpFindings *findings, const FpRemedies *remedies);
/* One line a rule, RFC 4180. */
char *fp_report_csv  (const FpFindings *findings);
/* The findings that are short, as a sheet takes them (FpSheetSpec.findings): heading, measured and asked, where, source;
 * (array zero-terminated=1), g_strfreev(). */
char **fp_report_lines (const FpFindings *findings);

/* --- what is seen; of->sight is needed --------------------------------------- */

/* Every thing to see that there is: sentence, rows, and who sees least; owned by the caller.  @focus: FP_N_FOCUSES: all,
 * each at the moment that is its own (fp_moment_of_focus()); @moment: FP_N_MOMENTS: that one; @seeds: how often other people
 * are put into the places, to tell what hangs on that; or 0. */
char      *fp_sight_report_text (const FpMeasuring *of, FpMoment moment, FpFocus focus, guint seeds);
/* A line a place and thing: RFC 4180, with a head. */
char      *fp_sight_report_csv  (const FpMeasuring *of, FpMoment moment, FpFocus focus);

/**
 * fp_sight_sheet:
 * @look: what; blind areas only where it has them
 * @spec: its paper, scale, ink and date
 *
 * The plan of the church with what each place sees, a key, a graph by row, and those who see least; with a line of sight
 * also the section on which it lies.
 *
 * Returns: (transfer full): %NULL with %FP_ERROR_RANGE where there is no such thing to see, or it does not fit the paper at
 * spec->scale
 */
FpDrawing *fp_sight_sheet (const FpMeasuring *of, const FpSightLook *look, const FpSheetSpec *spec, double *scale, GError **error);

/* The alternatives in columns. */
typedef struct _FpComparison FpComparison;
/* @findings: one for each alternative of the project, in order. */
FpComparison *fp_comparison_new  (FpFindings *const *findings, guint n);
/* Who sees all of what, moment by moment: a heading each, and below it what is there to be seen then.  Needs the sight of the
 * findings, which are looked at for it: that takes a while. */
FpComparison *fp_comparison_by_moment (const FpComparison *of);
void          fp_comparison_free (FpComparison *self);
guint         fp_comparison_columns (const FpComparison *self);
guint         fp_comparison_rows    (const FpComparison *self);
const char   *fp_comparison_head    (const FpComparison *self, guint column);
const char   *fp_comparison_label   (const FpComparison *self, guint row);
const char   *fp_comparison_cell    (const FpComparison *self, guint row, guint column);
/* Whether the cell is short of a limit: told by a mark as well as by colour. */
gboolean      fp_comparison_short   (const FpComparison *self, guint row, guint column);
/* Of the heaviest finding that the cell is short by; counts only where it is. */
FpWeight      fp_comparison_weight  (const FpComparison *self, guint row, guint column);
/* Whether more see it there than in another alternative, and in none are more: likewise. */
gboolean      fp_comparison_best    (const FpComparison *self, guint row, guint column);
gboolean      fp_comparison_is_heading (const FpComparison *self, guint row); /* its cells are empty */
char         *fp_comparison_text    (const FpComparison *self); /* as a table of text */

/* The sheet: small elevations and plans, all of a page to one scale, and the table.  As few pages as show them as large
 * as they can be; @spec->scale: of all of them, 0: the largest that fits.  (element-type FpDrawing) */
GPtrArray    *fp_comparison_sheets  (const FpComparison *self, const FpSheetSpec *spec, GError **error);

/* The sun in the church of one alternative at one time. */
typedef struct _FpSunStudy FpSunStudy;
/* @latitude, @longitude: as in fp_sun_at(). */
FpSunStudy   *fp_sun_study_new  (const FpPeople *people, GDateTime *time, double latitude, double longitude);
void          fp_sun_study_free (FpSunStudy *self);
/* Of one alternative at some times, at least one: when and where, how the sun stands to the church, and in whose eyes
 * through which window; owned by the caller. */
char         *fp_sun_studies_text (FpSunStudy *const *study, guint n);
/* "Sunday 2026-06-21, 09:30 (UTC+01:00). The sun is …": all of it but the windows; owned by the caller. */
char         *fp_sun_study_sentence (const FpSunStudy *self);
/* "Through East window: 12 places; the celebrant at the altar", each through which somebody has it in his eyes; with @rows on
 * further lines which seats, row by row: (transfer full) (element-type utf8) */
GPtrArray    *fp_sun_study_windows  (const FpSunStudy *self, gboolean rows);
/* The opening through which it is in the eyes of who is in that place; -1. */
int           fp_sun_study_place    (const FpSunStudy *self, guint place);
GArray       *fp_sun_study_patches  (const FpSunStudy *self); /* as fp_sunlight_patches() */
/* Marks on the plan where it is in somebody's eyes. */
void          fp_sun_study_draw_eyes (const FpSunStudy *self, FpDrawing *drawing, const FpViewLayout *plan);
/* "Sunday 08:00: in somebody's eyes on 9 of 52 days of 2026, in most on 2026-10-11 (23)": of a Mass every week, looked at
 * week by week, the ministers among them.  Owned by the caller; %NULL where it is not every week, or the brief does not tell by
 * which clock, and where @cancel (nullable) was cancelled.  @worst: (out) (optional): that day in most eyes, not valid where
 * there is none. */
char         *fp_sun_year_text (const FpPeople *people, guint mass, int year, GCancellable *cancel, GDate *worst);
/* What is told of one time, on plan and section of the whole church, with the light on the floor and the shafts on which it comes; to
 * @spec->scale, 0: the largest that fits.  %FP_ERROR_RANGE where it does not fit the paper. */
FpDrawing    *fp_sun_study_sheet (const FpSunStudy *self, const FpSheetSpec *spec, double *scale, GError **error);

/**
 * fp_levels_sheet:
 * @books: (nullable) (element-type FpRulebook): the built-in ones where NULL
 * @scale: (out) (optional): of lengths, that it was drawn to
 *
 * The people below the altar along the nave (level-diagram.h), and what the rules ask of it.
 *
 * Returns: (transfer full): the page; %FP_ERROR_RANGE when it does not fit the paper at spec->scale, saying which would
 */
FpDrawing    *fp_levels_sheet (const FpScene *scene, GPtrArray *books, const FpSheetSpec *spec, double *scale,
                               GError **error);

/* What the rules that speak of this alternative ask of levels and C-values. */
FpLevelAims   fp_level_aims (const FpFindings *findings);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpComparison, fp_comparison_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSunStudy, fp_sun_study_free)

G_END_DECLS
