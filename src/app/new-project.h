/* SPDX-License-Identifier: GPL-3.0-or-later */
/* new-project.h - a plain church to begin with
 *
 * A nave and a narrower sanctuary east of it, walled round; the people's
 * floor at the datum, the sanctuary floor raised, steps up to it; and an
 * altar on its footpace.  All of it is then measured and set out anew.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

typedef struct
{
  const char *title, *place;
  FpUnits     units;
  FpBooks     books;
  double      nave_width, nave_length;           /* clear, mm                 */
  double      sanctuary_width, sanctuary_depth;  /* clear, mm; the width at most the nave's */
  double      sanctuary_level;                   /* mm above the nave floor; 0 or more */
} FpNewProject;

void       fp_new_project_defaults (FpNewProject *spec);
FpProject *fp_new_project_make     (const FpNewProject *spec, GError **error);

G_END_DECLS
