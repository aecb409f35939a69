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
 *
 * Children are of seven years.  Stature: CDC growth charts for the United
 * States (2000), stature for age, boys and girls together, rounded to 10 mm;
 * from memory.  What is not stature: a sitting height of 0.55 of it (common
 * practice, from memory), shoulders at 0.79 and knees at 0.26 of it, and head
 * and breadth, design judgement after what is known of that age from memory.
 *
 * Percentiles between and beyond these three: each measure is that parabola of
 * the normal deviate which goes through them, so that the three are hit and
 * the longer upper end of the survey is kept.  Whoever is tall has all else to
 * match: no one is long-legged or broad for his stature.
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
  double stature;
  double standing_eye;   /* stature - (sitting height - sitting eye), per person */
  double sitting_eye;    /* above the seat, erect                                */
  double kneeling_eye;   /* standing eye - tibial height, per person             */
  double kneeling_crown; /* stature - tibial height, per person                  */
  double acromial;       /* top of the shoulders, standing                       */
  double head_breadth, head_length;
  double shoulder;       /* bideltoid breadth                                    */
} Measures;

/* 5th, 50th and 95th percentile. */
static const Measures GROWN[3] = {
  { 1547, 1442, 708, 1028, 1133, 1261, 141, 180, 415 },
  { 1689, 1578, 775, 1127, 1238, 1385, 151, 195, 478 },
  { 1844, 1727, 847, 1232, 1349, 1521, 161, 209, 553 },
};

/* Eyes 110 below the crown.  They sit up, so that no slump is taken off: design judgement. */
static const Measures CHILD[3] = {
  { 1130, 1020, 511, 726, 836, 893, 132, 171, 270 },
  { 1220, 1110, 560, 793, 903, 964, 139, 179, 300 },
  { 1310, 1200, 610, 859, 969, 1035, 146, 188, 330 },
};

/* --- percentiles ------------------------------------------------------------ */

#define LEAST_PERCENTILE 0.1
#define MOST_PERCENTILE  99.9

static double
polynomial (const double *factor, guint n, double x)
{
  double sum = factor[0];

  for (guint i = 1; i < n; i++)
    sum = sum * x + factor[i];
  return sum;
}

/* P. J. Acklam's rational approximation of the inverse of the normal distribution (2003; from memory), good to nine digits;
 * @p from above 0 to 1/2. */
static double
normal_deviate (double p)
{
  static const double A[] = { -39.69683028665376, 220.9460984245205, -275.9285104469687,
                              138.3577518672690, -30.66479806614716, 2.506628277459239 };
  static const double B[] = { -54.47609879822406, 161.5858368580409, -155.6989798598866,
                              66.80131188771972, -13.28068155288572, 1 };
  static const double C[] = { -0.007784894002430293, -0.3223964580411365, -2.400758277161838,
                              -2.549732539343734, 4.374664141464968, 2.938163982698783 };
  static const double D[] = { 0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1 };

  if (p < 0.02425)
    {
      const double q = sqrt (-2 * log (p));
      return polynomial (C, G_N_ELEMENTS (C), q) / polynomial (D, G_N_ELEMENTS (D), q);
    }
  const double q = p - 0.5, r = q * q;
  return polynomial (A, G_N_ELEMENTS (A), r) * q / polynomial (B, G_N_ELEMENTS (B), r);
}

/* The normal deviate by that of the 95th percentile: -1, 0 and 1 for the three of the tables, to the last bit. */
static double
deviation (double percentile)
{
  const double p = CLAMP (percentile, LEAST_PERCENTILE, MOST_PERCENTILE), below = MIN (p, 100 - p);
  const double side = p > 50 ? -1 : 1;

  if (!(below < 50))
    return 0;
  /* Divided by itself it is 1: no digits are lost where they would show. */
  return side * normal_deviate (below / 100) / -normal_deviate (0.05);
}

static double
between (double low, double middle, double high, double t)
{
  return middle + t * ((high - low) / 2) + t * t * ((high + low) / 2 - middle);
}

static Measures
measures_of (const FpPerson *who)
{
  const Measures *m = who->child ? CHILD : GROWN;
  const double t = deviation (who->percentile);

#define BETWEEN(part) .part = between (m[0].part, m[1].part, m[2].part, t)
  return (Measures) {
    BETWEEN (stature), BETWEEN (standing_eye), BETWEEN (sitting_eye), BETWEEN (kneeling_eye), BETWEEN (kneeling_crown),
    BETWEEN (acromial), BETWEEN (head_breadth), BETWEEN (head_length), BETWEEN (shoulder),
  };
#undef BETWEEN
}

/* --- a body ----------------------------------------------------------------- */

static double
sitting_eye (const FpPerson *who, const Measures *m, double seat)
{
  if (who->eye > 0)
    return who->eye;
  return seat + m->sitting_eye - (who->child ? 0 : SLUMP);
}

FpBody
fp_body (const FpPerson *who, FpPosture posture, double seat, double kneeler)
{
  const Measures m = measures_of (who);
  FpBody body = {
    .posture = posture, .head_breadth = m.head_breadth, .head_length = m.head_length, .shoulder = m.shoulder,
  };

  switch (posture)
    {
    case FP_POSTURE_SITTING:
      /* As far as from the eye of one who stands to his crown: a difference of percentiles, see above. */
      body.eye = sitting_eye (who, &m, seat);
      body.crown = body.eye + (m.stature - m.standing_eye);
      break;
    case FP_POSTURE_KNEELING:
      body.eye = kneeler + m.kneeling_eye;
      body.crown = kneeler + m.kneeling_crown;
      break;
    case FP_POSTURE_STANDING:
    case FP_N_POSTURES:
    default:
      body.eye = m.standing_eye;
      body.crown = m.stature;
      break;
    }
  body.acromion = body.crown - (m.stature - m.acromial);
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
fp_body_solids (const FpBody *body, double seat, double kneeler, FpSolids *out)
{
  /* Eyes lie half-way up a head, so its half height is from eye to crown. */
  fp_solids_add_ellipsoid (out, FP_PART_HEAD, (FpVec3) { 0, 0, body->eye }, body->head_breadth / 2,
                           body->head_length / 2, body->crown - body->eye, 0);
  add_trunk (out, body->shoulder, body->shoulder * TRUNK_DEPTH, foot_of_trunk (body->posture, seat, kneeler),
             body->acromion);
}
