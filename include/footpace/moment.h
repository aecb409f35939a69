/* SPDX-License-Identifier: GPL-3.0-or-later */
/* moment.h - moments of the celebration
 *
 * What can be seen depends on when: whether the people sit, stand or kneel,
 * and where the ministers stand.  Postures: General Instruction of the Roman
 * Missal (3rd typical edition), no. 43, for the newer form; for the older,
 * custom (A. Fortescue, "The Ceremonies of the Roman Rite Described", 1918;
 * both from memory).
 */
#pragma once

#include "footpace/kind.h"

G_BEGIN_DECLS

typedef enum
{
  FP_MOMENT_BEFORE,    /* before Mass: nobody is in the sanctuary          */
  FP_MOMENT_COLLECT,   /* the celebrant with his back to the people, deacon and subdeacon in line behind him;
                          or standing at the chair                         */
  FP_MOMENT_READINGS,  /* a reader at the ambo, the celebrant at the chair */
  FP_MOMENT_GOSPEL,    /* likewise, all standing                           */
  FP_MOMENT_OFFERTORY, /* the celebrant at the altar                       */
  FP_MOMENT_INCENSING, /* with deacon and subdeacon at his sides           */
  FP_MOMENT_ELEVATION, /* he raises the Host, the others kneel             */
  FP_N_MOMENTS
} FpMoment;

const char *fp_moment_id      (FpMoment self);    /* "elevation" …          */
const char *fp_moment_label   (FpMoment self);    /* "Elevation of the Host" … */
const char *fp_moment_tells   (FpMoment self);    /* a sentence: what people and ministers do */
FpPosture   fp_moment_posture (FpMoment self);    /* of the people          */
gboolean    fp_moment_find    (const char *id, FpMoment *moment); /* FALSE: there is none of that id */

/* The moment at which something is looked at first of all: the Host when it is raised, the reader during the readings. */
FpMoment    fp_moment_of_focus (FpFocus focus);

/* Whether it is there to be seen then: the Host is raised at one moment only, and nobody reads at the offertory. */
gboolean    fp_moment_shows    (FpMoment self, FpFocus focus);

G_END_DECLS
