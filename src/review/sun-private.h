/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-private.h - what the files of the sun study share */
#pragma once

#include "footpace/review.h"

G_BEGIN_DECLS

struct _FpSunStudy
{
  const FpPeople *people;  /* owned reference                               */
  GDateTime      *time;    /* owned reference                               */
  double          latitude, longitude;
  FpSun           sun;
  FpVec3          towards; /* church coordinates                            */
  FpSunlight     *light;
  int            *dazzled; /* of each place, the opening through which it is in his eyes; -1 */
  guint           n_places;
  gboolean        serves[FP_N_OFFICES];   /* whether there is one of that office */
  int             minister[FP_N_OFFICES]; /* likewise, of the ministers         */
};

/* "2026-06-21, 09:30 at UTC+01:00; 51.5° north, 0.1° west" */
char *fp_sun_study_when   (const FpSunStudy *self);
/* "Height 40.9°, azimuth 107.3° from true north; 17° to the Epistle side of liturgical east" */
char *fp_sun_study_where  (const FpSunStudy *self);
/* How many places have it in their eyes through that opening; -1: through any. */
guint fp_sun_study_counts (const FpSunStudy *self, int opening);
/* "In the eyes of people in 12 of 312 places, and of the celebrant at the altar", or why it is in nobody's. */
char *fp_sun_study_result (const FpSunStudy *self);
/* "the celebrant at the altar, who faces liturgical east" */
char *fp_sun_study_minister_name (const FpSunStudy *self, FpOffice office);
/* "12 places; the celebrant at the altar": who has it in his eyes through that opening; NULL where nobody has. */
char *fp_sun_study_through (const FpSunStudy *self, int opening);
/* "    Front pews, Gospel side: row 4, seats 1, 2\n" …, row by row. */
void  fp_sun_study_add_rows (const FpSunStudy *self, int opening, GString *text);
/* "Not in the eyes of the celebrant at the altar, who faces liturgical east" …, of all in whose eyes it is not; "" also where it is low in nobody's. */
char *fp_sun_study_spared (const FpSunStudy *self);

G_END_DECLS
