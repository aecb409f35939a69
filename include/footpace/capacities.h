/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities.h - for how many there is room, as it is read: on screen, in words, as a table, as data, on sheets
 *
 * Sections of lines: places, places for wheelchairs, Communion, ways out.  Each says below it by which rule it is reckoned, where
 * that is printed, and with what caution.  Lengths in the units of the brief; as data in mm and s.
 */
#pragma once

#include "footpace/capacity.h"
#include "footpace/sheet.h"
#include "footpace/sight.h"

G_BEGIN_DECLS

typedef enum
{
  FP_CAPACITY_PLACES, FP_CAPACITY_WHEELCHAIRS, FP_CAPACITY_COMMUNION, FP_CAPACITY_WAYS_OUT, FP_N_CAPACITIES
} FpCapacityOf;

typedef enum { FP_CAPACITY_WHAT, FP_CAPACITY_FOUND, FP_CAPACITY_ASKED, FP_CAPACITY_NOTE, FP_N_CAPACITY_CELLS } FpCapacityCell;

typedef struct
{
  gboolean     sum;       /* of a sort of places, or of all ways: set apart from single things */
  gboolean     lacking;   /* what is found is less than what is asked                          */
  const char  *item;      /* id of the thing that it is about, borrowed from the scene; NULL   */
  char        *cell[FP_N_CAPACITY_CELLS]; /* never NULL                                        */
  double       found, asked; /* as data; NAN where it is none                                  */
  const char  *unit;      /* of both: "places", "people", "ways", "mm", "s"; static            */
} FpCapacityRow;

typedef struct
{
  FpCapacityOf of;
  const char  *id, *title;   /* "places", "Places"; static                                     */
  const char  *head[FP_N_CAPACITY_CELLS]; /* "" where a column is not used; static             */
  GArray      *rows;         /* (element-type FpCapacityRow)                                   */
  char        *closing;      /* sentences: by which rule, its source, and who decides          */
} FpCapacitySection;

typedef struct _FpCapacities FpCapacities;

/**
 * fp_capacities_new:
 * @sight: (nullable): what is seen, of the same people: where it is given, what is seen from places for wheelchairs is told
 *
 * By what the project says (fp_project_reckoning()).
 */
FpCapacities            *fp_capacities_new     (const FpPeople *people, const FpSight *sight);
void                     fp_capacities_free    (FpCapacities *self);
const FpScene           *fp_capacities_scene   (const FpCapacities *self);
const FpCapacitySection *fp_capacities_section (const FpCapacities *self, FpCapacityOf of);
extern const char        fp_capacities_caution[]; /* of all of it */

char *fp_capacities_text (const FpCapacities *self);
char *fp_capacities_csv  (const FpCapacities *self); /* RFC 4180, a line for each row */
/* JSON, format "footpace.capacity", version 1: see src/review/capacities-data.c. */
char *fp_capacities_json (const FpCapacities *self);

/**
 * fp_capacities_sheets:
 *
 * Returns: (transfer full) (element-type FpDrawing): as many pages as they take; NULL with %FP_ERROR_RANGE where the paper is
 *   too small for a line
 */
GPtrArray *fp_capacities_sheets (const FpCapacities *self, const FpSheetSpec *spec, GError **error);

/* With what is seen, looked for here. */
GPtrArray *fp_capacities_sheets_of (const FpScene *scene, const FpSheetSpec *spec, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpCapacities, fp_capacities_free)

G_END_DECLS
