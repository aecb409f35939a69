/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/moment.h"

#include <string.h>

static const struct
{
  const char *id, *label, *tells;
  FpPosture   posture;
} MOMENTS[FP_N_MOMENTS] = {
  [FP_MOMENT_BEFORE] = { "before", "Before Mass", "The people sit; nobody is in the sanctuary.", FP_POSTURE_SITTING },
  [FP_MOMENT_COLLECT] = { "collect", "Collect",
                          "All stand: the celebrant at the altar facing east, the deacon and the subdeacon of a "
                          "solemn Mass in line behind him; or the celebrant at the chair.",
                          FP_POSTURE_STANDING },
  [FP_MOMENT_READINGS] = { "readings", "Readings",
                           "The people sit; the reader stands at the ambo and the celebrant sits at the chair.",
                           FP_POSTURE_SITTING },
  [FP_MOMENT_GOSPEL] = { "gospel", "Gospel", "All stand: the deacon at the ambo, the celebrant at the chair.",
                         FP_POSTURE_STANDING },
  [FP_MOMENT_OFFERTORY] = { "offertory", "Offertory", "The people sit; the celebrant stands at the altar.",
                            FP_POSTURE_SITTING },
  [FP_MOMENT_INCENSING] = { "incensing", "Incensing of the altar",
                            "The people sit; the celebrant stands at the altar, the deacon and the subdeacon of a "
                            "solemn Mass at his sides.",
                            FP_POSTURE_SITTING },
  [FP_MOMENT_ELEVATION] = { "elevation", "Elevation of the Host",
                            "The people kneel; the celebrant stands at the altar, the deacon and the subdeacon of a "
                            "solemn Mass kneel behind him.",
                            FP_POSTURE_KNEELING },
};

const char *
fp_moment_id (FpMoment self)
{
  return MOMENTS[self].id;
}

const char *
fp_moment_label (FpMoment self)
{
  return MOMENTS[self].label;
}

const char *
fp_moment_tells (FpMoment self)
{
  return MOMENTS[self].tells;
}

FpPosture
fp_moment_posture (FpMoment self)
{
  return MOMENTS[self].posture;
}

gboolean
fp_moment_find (const char *id, FpMoment *moment)
{
  for (int i = 0; i < FP_N_MOMENTS; i++)
    if (strcmp (MOMENTS[i].id, id) == 0)
      {
        *moment = (FpMoment) i;
        return TRUE;
      }
  return FALSE;
}

FpMoment
fp_moment_of_focus (FpFocus focus)
{
  switch (focus)
    {
    case FP_FOCUS_HOST:
    case FP_FOCUS_CHALICE:
      return FP_MOMENT_ELEVATION;
    case FP_FOCUS_AMBO:
    case FP_FOCUS_CHAIR:
      return FP_MOMENT_READINGS;
    case FP_FOCUS_MENSA:
      return FP_MOMENT_OFFERTORY;
    case FP_FOCUS_TABERNACLE:
    case FP_FOCUS_CRUCIFIX:
    case FP_FOCUS_REREDOS:
    case FP_N_FOCUSES:
    default:
      return FP_MOMENT_BEFORE;
    }
}

gboolean
fp_moment_shows (FpMoment self, FpFocus focus)
{
  switch (focus)
    {
    case FP_FOCUS_HOST:
    case FP_FOCUS_CHALICE:
    case FP_FOCUS_CHAIR:
      return self == fp_moment_of_focus (focus);
    case FP_FOCUS_AMBO:
      return self == FP_MOMENT_READINGS || self == FP_MOMENT_GOSPEL;
    case FP_FOCUS_MENSA:
    case FP_FOCUS_TABERNACLE:
    case FP_FOCUS_CRUCIFIX:
    case FP_FOCUS_REREDOS:
    case FP_N_FOCUSES:
    default:
      return TRUE;
    }
}
