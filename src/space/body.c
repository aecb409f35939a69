/* SPDX-License-Identifier: GPL-3.0-or-later */
/* body.c - measures of the body
 *
 * ANSUR II: C. C. Gordon et al., "2012 Anthropometric Survey of U.S. Army
 * Personnel", NATICK/TR-15/007 (2014).  Percentiles of a population half
 * women, half men, computed from the public data person by person, and never
 * added up from percentiles of parts; but what lies between eye and crown, and
 * between shoulder and crown, is taken as the difference of two of them: eye to
 * crown 105, 111, 117 mm, where the survey has 97, 111, 126 person by person.
 * Unshod, nude; soldiers of 17 to 58 years, not a civilian, elderly or child
 * population.
 */
#include "body.h"

#include <math.h>

/* Loss of sitting height of those who do not sit erect: common practice, from memory. */
#define SLUMP 40.0
/* Eyes lie about 20 mm behind the foremost point of the brow: S. Pheasant's notes to the British tables, as reported by
 * the City University of Hong Kong (web page, undated). */
#define EYE_BEHIND_BROW 20.0
/* Depth of a trunk by its breadth at the shoulders: design judgement. */
#define TRUNK_DEPTH 0.6
/* How far before the seated body the same person stands, and kneels upright: design judgement. */
#define STANDS_BEFORE_SEAT 450.0
#define KNEELS_BEFORE_SEAT 500.0

typedef struct
{
  guint  percentile;
  double stature;
  double standing_eye;   /* stature - (sitting height - sitting eye), per person */
  double sitting_eye;    /* above the seat, erect                                */
  double kneeling_eye;   /* standing eye - tibial height, per person             */
  double kneeling_crown; /* stature - tibial height, per person                  */
  double acromial;       /* top of the shoulders, standing                       */
  double head_breadth, head_length;
  double shoulder;       /* bideltoid breadth                                    */
} Measures;

static const Measures MEASURES[] = {
  { 5, 1547, 1442, 708, 1028, 1133, 1261, 141, 180, 415 },
  { 50, 1689, 1578, 775, 1127, 1238, 1385, 151, 195, 478 },
  { 95, 1844, 1727, 847, 1232, 1349, 1521, 161, 209, 553 },
};

static const Measures *
measures_of (guint percentile)
{
  const Measures *nearest = &MEASURES[0];
  for (guint i = 1; i < G_N_ELEMENTS (MEASURES); i++)
    if (ABS ((gint64) MEASURES[i].percentile - percentile) < ABS ((gint64) nearest->percentile - percentile))
      nearest = &MEASURES[i];
  return nearest;
}

FpBody
fp_body (FpPosture posture, guint percentile, double seat, double kneeler)
{
  const Measures *m = measures_of (percentile);
  FpBody body = {
    .posture = posture, .head_breadth = m->head_breadth, .head_length = m->head_length, .shoulder = m->shoulder,
  };

  switch (posture)
    {
    case FP_POSTURE_SITTING:
      /* As far as from the eye of one who stands to his crown: a difference of percentiles, see above. */
      body.eye = seat + m->sitting_eye - SLUMP;
      body.crown = body.eye + (m->stature - m->standing_eye);
      break;
    case FP_POSTURE_KNEELING:
      body.eye = kneeler + m->kneeling_eye;
      body.crown = kneeler + m->kneeling_crown;
      break;
    case FP_POSTURE_STANDING:
    case FP_N_POSTURES:
    default:
      body.eye = m->standing_eye;
      body.crown = m->stature;
      break;
    }
  return body;
}

double
fp_body_eye_forward (const FpBody *body)
{
  return body->head_length / 2 - EYE_BEHIND_BROW;
}

double
fp_body_forward (FpPosture posture, double seat)
{
  if (seat <= 0 || posture == FP_POSTURE_SITTING)
    return 0;
  return posture == FP_POSTURE_KNEELING ? KNEELS_BEFORE_SEAT : STANDS_BEFORE_SEAT;
}

static double
foot_of_trunk (FpPosture posture, double seat, double kneeler)
{
  switch (posture)
    {
    case FP_POSTURE_SITTING:
      return seat;
    case FP_POSTURE_KNEELING:
      return kneeler;
    case FP_POSTURE_STANDING:
    case FP_N_POSTURES:
    default:
      return 0;
    }
}

/* Eight sides about an oval, as broad and as deep as it. */
static void
add_trunk (FpSolids *out, double breadth, double depth, double z0, double z1)
{
  FpPoint corner[8];
  const double x = breadth / 2, y = depth / 2, cut = tan (G_PI / 8);
  const FpPoint quarter[2] = { { x, y * cut }, { x * cut, y } };

  for (guint i = 0; i < 2; i++)
    {
      corner[i] = quarter[i];
      corner[3 - i] = (FpPoint) { -quarter[i].x, quarter[i].y };
      corner[4 + i] = (FpPoint) { -quarter[i].x, -quarter[i].y };
      corner[7 - i] = (FpPoint) { quarter[i].x, -quarter[i].y };
    }
  fp_solids_add_prism (out, FP_PART_TRUNK, corner, 8, z0, z1);
}

void
fp_body_solids (const FpBody *body, guint percentile, double seat, double kneeler, FpSolids *out)
{
  const Measures *m = measures_of (percentile);
  const double shoulders = body->crown - (m->stature - m->acromial);

  /* Eyes lie half-way up a head, so its half height is from eye to crown. */
  fp_solids_add_ellipsoid (out, FP_PART_HEAD, (FpVec3) { 0, 0, body->eye }, body->head_breadth / 2,
                           body->head_length / 2, body->crown - body->eye, 0);
  add_trunk (out, body->shoulder, body->shoulder * TRUNK_DEPTH, foot_of_trunk (body->posture, seat, kneeler),
             shoulders);
}
