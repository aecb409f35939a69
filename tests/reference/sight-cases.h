/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-cases.h - samples, ready to be looked about in */
#pragma once

#include "footpace/sight.h"

G_BEGIN_DECLS

typedef struct
{
  FpPeople *people;
  guint     every;  /* how many places to pass on by: large churches are sampled */
} SightCase;

/* The last alternative of a project. */
SightCase *sight_case_new  (const FpProject *project);
/* Of a sample of that name in $FOOTPACE_SAMPLES; NULL where there is no such file. */
SightCase *sight_case_load (const char *name);
void       sight_case_free (SightCase *self);

/* Where a ray from an eye to a point ends: 2 mm before it (sight.h). */
FpVec3     sight_case_end (FpVec3 eye, FpVec3 point);

/* Index of the placed thing whose minister is what is looked at; G_MAXUINT. */
guint      sight_case_minister (const SightCase *self, FpFocus focus);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SightCase, sight_case_free)

G_END_DECLS
