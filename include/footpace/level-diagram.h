/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram.h - the people below the altar, shown
 *
 * Along the nave, east on the left as in the section, to scale; heights
 * exaggerated by a factor that its title states.  The ground as it is, altar,
 * rail and reredos, the eyes of each row, the levels of footpace and mensa
 * carried across the nave, the margin where it is least, and the rows that
 * are not below the footpace.
 */
#pragma once

#include "footpace/levels.h"
#include "footpace/marks.h"

G_BEGIN_DECLS

/* What is asked for, by whatever rules. */
typedef struct
{
  double   margin;  /* by how much the people are to be below the footpace, mm */
  FpRisers risers;  /* that the altar's steps may have                       */
  const char *first_row; /* (nullable), borrowed as long as the diagram: what is said of the first row's C-value */
} FpLevelAims;

typedef struct _FpLevelDiagram FpLevelDiagram;

FpLevelDiagram *fp_level_diagram_new  (const FpPeople *people, const FpLevelAims *aims);
void            fp_level_diagram_free (FpLevelDiagram *self);

/* Whether it finds room, paper mm, at 1:@scale. */
gboolean        fp_level_diagram_fits (const FpLevelDiagram *self, const FpBox *room, double scale);
/* How many times larger heights are drawn than lengths: 1, 2, 5, 10 or 20, the most that finds room; 0: it does not fit. */
double          fp_level_diagram_heights (const FpLevelDiagram *self, const FpBox *room, double scale);
/* Where it fits. */
void            fp_level_diagram_draw (const FpLevelDiagram *self, FpDrawing *drawing, const FpBox *room, double scale);

/* What it says under the drawing, a sentence each: how far the people are below, the lowest footpace below which all of
 * them would be and the steps to it, and what the aims say of the first row.
 * (array zero-terminated=1), g_strfreev(). */
char          **fp_level_diagram_words (const FpLevelDiagram *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpLevelDiagram, fp_level_diagram_free)

G_END_DECLS
