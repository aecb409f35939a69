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
};

/* "2026-06-21, 09:30 at UTC+01:00; 51.5° north, 0.1° west" */
char *fp_sun_study_when   (const FpSunStudy *self);
/* "Height 40.9°, azimuth 107.3° from true north; 17° to the Epistle side of liturgical east" */
char *fp_sun_study_where  (const FpSunStudy *self);
/* How many places have it in their eyes through that opening; -1: through any. */
guint fp_sun_study_counts (const FpSunStudy *self, int opening);
/* "In the eyes of people in 12 of 312 places", or why it is in nobody's. */
char *fp_sun_study_result (const FpSunStudy *self);

G_END_DECLS
