/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-private.h - what the diagram draws and what it says share */
#pragma once

#include "footpace/level-diagram.h"
#include "footpace/sight.h"

G_BEGIN_DECLS

struct _FpLevelDiagram
{
  const FpPeople *people;   /* a reference                                  */
  const FpScene  *scene;    /* of the people                                */
  FpLevelAims     aims;
  FpLevels        levels;
  FpUnits         units;
  GArray         *rows;     /* of FpRowLevel                                */
  GArray         *ground;   /* of FpGroundPart                                  */
  const FpPlaced *altar;    /* of celebration; NULL                         */
  FpBox           extent;   /* of all that is drawn: y and z, mm            */
};

/* The mensa of the altar of celebration, mm above the datum. */
double   fp_level_diagram_mensa (const FpLevelDiagram *self);
/* The footpace below which all would be; FALSE where there is no altar, or nobody. */
gboolean fp_level_diagram_wanted (const FpLevelDiagram *self, double *level);
/* Its own name, or that of its kind; the caller's. */
char    *fp_level_diagram_name   (const FpLevelDiagram *self, guint owner);

G_END_DECLS
