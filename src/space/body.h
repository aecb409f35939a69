/* SPDX-License-Identifier: GPL-3.0-or-later */
/* body.h - a person as an obstacle
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

/* Head and trunk of a person at the origin, facing +y, on a floor at z = 0. */
void fp_body_solids (const FpBody *body, double seat, double kneeler, FpSolids *out);

/* Who is at a place: @owner its thing's id; @seated: children may be there. */
FpPerson fp_population_person (const FpBrief *brief, const char *owner, guint row, guint number, gboolean seated);

/* As fp_people_population() has it; owned by the caller. */
char *fp_population_words (const FpBrief *brief, guint children, guint wheelchairs);

/* How far before the middle of the body the eyes are. */
double fp_body_eye_forward (const FpBody *body);

/* How far before his seat a person stands or kneels in a pew. */
double fp_body_forward (FpPosture posture, double seat);

/* As fp_people_bodies(), owners counted from @first_owner. */
void fp_people_add_bodies (const FpPeople *self, FpPosture posture, guint first_owner, FpSolids *out);

/* What a person at a place does when the others take @posture. */
FpPosture fp_person_posture (const FpPersonPlace *place, FpPosture posture);

G_END_DECLS
