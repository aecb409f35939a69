/* SPDX-License-Identifier: GPL-3.0-or-later */
/* people.h - where people are, and how tall
 *
 * Body measures: ANSUR II (Gordon et al., NATICK/TR-15/007, 2014), mixed
 * 50:50 percentiles computed per person; kneeling derived from standing eye
 * less tibial height.  United States Army personnel, unshod: not a civilian,
 * elderly or child population.  Children are of seven years.  The tables and
 * their sources are in src/space/body.c.
 *
 * The brief tells whether all are of one percentile, or each has his own.
 * Whose is what follows from the seed of the brief and from the place itself
 * (the id of what has it, row and number): what is done to other things, or to
 * where this one stands, changes nobody.
 */
#pragma once

#include "footpace/moment.h"
#include "footpace/scene.h"

G_BEGIN_DECLS

/* One of the people, as far as his measures go. */
typedef struct
{
  gboolean child;         /* of seven years; otherwise grown                */
  double    percentile;   /* of stature, and of all else with it: 0.1 to 99.9, what is beyond is taken for the nearer of these */
  double    eye;          /* of one whose sitting eye does not follow from his seat (in a wheelchair): above the floor; or 0 */
} FpPerson;

typedef struct
{
  FpPosture posture;
  double    eye;          /* above the floor there                          */
  double    crown;        /* above the floor there                          */
  double    acromion;     /* top of the shoulders, above the floor there    */
  double    head_breadth, head_length, shoulder;
} FpBody;

/**
 * fp_body:
 * @seat: height of the seat when sitting
 * @kneeler: height of the kneeling surface when kneeling
 *
 * The 5th, 50th and 95th percentiles are those of the survey; between and beyond them stature is taken as all but normal.
 * Sitting eyes of the grown are lowered by a slump of 40 mm (from memory; common practice).
 */
FpBody fp_body (const FpPerson *who, FpPosture posture, double seat, double kneeler);

/* One place of one of the people. */
typedef struct
{
  guint    owner;         /* placed thing (pews, rail, standing room)       */
  guint    row, number;
  FpVec3   at;            /* on the floor, church coordinates               */
  double   facing;        /* degrees, 0 = liturgical east                   */
  guint    postures;      /* 1 << FpPosture                                 */
  double   seat, kneeler;
  FpPerson who;
  gboolean gallery;       /* stands on a gallery: reported on its own       */
  gboolean at_rail;       /* a communicant's place, empty while others look */
} FpPersonPlace;

typedef struct _FpPeople FpPeople;
FpPeople            *fp_people_new   (const FpScene *scene);
/* Likewise, each of his own stature by that seed, whatever the brief says of statures. */
FpPeople            *fp_people_new_varied (const FpScene *scene, guint seed);
FpPeople            *fp_people_ref   (const FpPeople *self);
void                 fp_people_unref (const FpPeople *self);
const FpPersonPlace *fp_people_places (const FpPeople *self, guint *n);
/* Seats only: neither standing room nor kneeling places. */
guint                fp_people_seats  (const FpPeople *self);
/* What somebody does at a moment, the people taking the posture of it as far as the place allows: @posture (out).  FALSE
 * where nobody is there: kneeling places at the rail, but when all kneel. */
gboolean             fp_people_looks  (const FpPeople *self, guint place, FpMoment moment, FpPosture *posture);
/* What most of them do then. */
FpPosture            fp_people_posture (const FpPeople *self, FpMoment moment);
FpVec3               fp_people_eye    (const FpPeople *self, guint place, FpPosture posture);
/* The same, as if somebody else were there; a grown person of the brief's percentile: what the place is good for, whoever
 * takes it. */
FpVec3               fp_people_eye_of (const FpPeople *self, guint place, const FpPerson *who, FpPosture posture);
FpVec3               fp_people_plain_eye (const FpPeople *self, guint place, FpPosture posture);
/* "Pews, Gospel side: row 6, seat 3"; owned by the caller. */
char                *fp_people_name   (const FpPeople *self, guint place);
/* After what survey the measures are; static. */
const char          *fp_person_population (const FpPerson *who);
/* The same of all of them, in sentences: "People: ANSUR II (2012), half women, half men, all of the 50th percentile of
 * stature."; owned by the caller. */
char                *fp_people_population (const FpPeople *self);
const FpScene       *fp_people_scene  (const FpPeople *self);

/**
 * fp_people_bodies:
 * @posture: of all (places that do not take it sit, or stand where they cannot)
 *
 * Adds to @out a head (ellipsoid) and a trunk (prism) for each place, the
 * @owner of each solid being the index of the place.  Kneeling places at the
 * rail stay empty.
 */
void                 fp_people_bodies (const FpPeople *self, FpPosture posture, FpSolids *out);

/* Likewise the ministers in the sanctuary at a moment, @owner = index of the placed thing at which they are: altar, ambo or
 * chair.  The celebrant stands at the altar of celebration on the side that the brief tells, or before it where there is
 * no room behind; deacon and subdeacon are with him where the brief has solemn Mass. */
void                 fp_people_ministers (const FpPeople *self, FpMoment moment, FpSolids *out);

/* Who looks from the sanctuary: the celebrant at the altar of celebration (as in fp_people_ministers()) and at the chair, and
 * the reader. */
typedef enum { FP_OFFICE_AT_ALTAR, FP_OFFICE_AT_CHAIR, FP_OFFICE_AT_AMBO, FP_N_OFFICES } FpOffice;
const char          *fp_office_label  (FpOffice self); /* "the celebrant at the altar" … */
/* His eyes, as he stands or sits there, and which way he is turned, degrees; FALSE where there is no place for him. */
gboolean             fp_people_minister_eye (const FpPeople *self, FpOffice office, FpVec3 *eye, double *facing);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPeople, fp_people_unref)

G_END_DECLS
