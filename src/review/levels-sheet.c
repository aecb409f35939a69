/* SPDX-License-Identifier: GPL-3.0-or-later */
/* levels-sheet.c - the people below the altar, on paper */
#include "footpace/review.h"

#include "footpace/error.h"
#include "footpace/remedy.h"

#include <math.h>

#define TITLE "Levels along the nave"
#define CODE  "levels"

FpLevelAims
fp_level_aims (const FpFindings *findings)
{
  const FpLimits margin = fp_findings_limits (findings, "margin-below", FP_WEIGHT_CUSTOMARY);

  /* Where no rule says by how much, to be level is enough. */
  return (FpLevelAims) { isinf (margin.low) ? 0 : margin.low, fp_findings_risers (findings), NULL };
}

/* Sight has no part in it, and takes long. */
static FpFindings *
findings_without_sight (const FpScene *scene, const FpPeople *people, GPtrArray *books)
{
  const FpMeasuring of = { scene, people, fp_levels (people), NULL };

  return fp_findings_new (&of, books);
}

/* The same as is offered beside the finding; NULL where no rule asks for it, or no row looks over another. */
static char *
first_row_of (const FpFindings *findings, const FpScene *scene)
{
  const FpLimits c = fp_findings_limits (findings, "row-c", FP_WEIGHT_CUSTOMARY);
  FpFirstRow first;

  if (isinf (c.low))
    return NULL;
  fp_first_row_find (findings, c.low, &first);
  return fp_first_row_sentence (&first, scene);
}

/* What the sheet leaves for the diagram. */
static FpBox
room_on (const FpScene *scene, const FpSheetSpec *spec)
{
  FpBox room;

  fp_drawing_unref (fp_sheet_blank_of (scene, spec, TITLE, CODE, 1, &room));
  return room;
}

/* 0 where none does. */
static double
largest_that_fits (const FpLevelDiagram *diagram, const FpBox *room)
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  for (guint i = 0; i < n; i++)
    if (fp_level_diagram_fits (diagram, room, scale[i]))
      return scale[i];
  return 0;
}

/* 0 with an error. */
static double
choose_scale (const FpLevelDiagram *diagram, const FpBox *room, double asked, GError **error)
{
  const double largest = largest_that_fits (diagram, room);

  if (asked > 0 && fp_level_diagram_fits (diagram, room, asked))
    return asked;
  if (largest > 0 && !(asked > 0))
    return largest;
  if (largest > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE,
                 "the levels do not fit this paper at 1:%g; the largest scale that fits is 1:%g", asked, largest);
  else
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the levels fit this paper at no scale; choose larger paper");
  return 0;
}

FpDrawing *
fp_levels_sheet (const FpScene *scene, GPtrArray *books, const FpSheetSpec *spec, double *scale, GError **error)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpFindings) findings = findings_without_sight (scene, people, books);
  g_autofree char *first_row = first_row_of (findings, scene);
  FpLevelAims aims = fp_level_aims (findings);
  aims.first_row = first_row;
  g_autoptr (FpLevelDiagram) diagram = fp_level_diagram_new (people, &aims);
  FpSheetSpec bare = *spec;
  FpBox room;
  double used;
  FpDrawing *drawing;

  bare.findings = NULL;
  room = room_on (scene, &bare);
  used = choose_scale (diagram, &room, spec->scale, error);
  if (!(used > 0))
    return NULL;
  drawing = fp_sheet_blank_of (scene, &bare, TITLE, CODE, used, &room);
  fp_level_diagram_draw (diagram, drawing, &room, used);
  if (scale != NULL)
    *scale = used;
  return drawing;
}
