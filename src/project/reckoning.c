/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/reckoning.h"

#include <math.h>

const FpReckoning fp_reckoning_usual = {
  .ministers = 1, .each = FP_SECONDS_UNSAID, .change = FP_SECONDS_UNSAID, .step = FP_SECONDS_UNSAID, .back = FP_SECONDS_UNSAID,
};

/* @unsaid is what stands for nothing said; NAN where something always is. */
static const struct
{
  const char *id, *what;
  gsize       at;
  gboolean    whole;
  double      least, most, unsaid;
} parts[FP_N_RECKONINGS] = {
#define COUNT(field, what, most, unsaid) { #field, what, G_STRUCT_OFFSET (FpReckoning, field), TRUE, 1, most, unsaid }
#define SECONDS(field, what, least)                                                                                            \
  { #field, what, G_STRUCT_OFFSET (FpReckoning, field), FALSE, least, FP_COMMUNION_SECONDS_MAX, FP_SECONDS_UNSAID }
  [FP_RECKONING_PEOPLE] = COUNT (people, "how many communicate", FP_COMMUNION_PEOPLE_MAX, 0),
  [FP_RECKONING_MINISTERS] = COUNT (ministers, "how many give Communion", FP_COMMUNION_MINISTERS_MAX, NAN),
  [FP_RECKONING_LINES] = COUNT (lines, "the number of lines", FP_COMMUNION_MINISTERS_MAX, 0),
  [FP_RECKONING_EACH] = SECONDS (each, "what one communicant takes", FP_COMMUNION_EACH_LEAST),
  [FP_RECKONING_CHANGE] = SECONDS (change, "the change at a place of the rail", 0),
  [FP_RECKONING_STEP] = SECONDS (step, "the step to the next in a line", 0),
  [FP_RECKONING_BACK] = SECONDS (back, "the way back along the rail", 0),
#undef COUNT
#undef SECONDS
};

const char *
fp_reckoning_id (FpReckoningPart part)
{
  return parts[part].id;
}

double
fp_reckoning_get (const FpReckoning *self, FpReckoningPart part)
{
  return parts[part].whole ? G_STRUCT_MEMBER (guint, self, parts[part].at) : G_STRUCT_MEMBER (double, self, parts[part].at);
}

gboolean
fp_reckoning_unsaid (const FpReckoning *self, FpReckoningPart part)
{
  return fp_reckoning_get (self, part) == parts[part].unsaid;
}

static gboolean
part_is_fair (FpReckoningPart part, double value, GError **error)
{
  /* Written so that a NaN fails too. */
  if (value >= parts[part].least && value <= parts[part].most && (!parts[part].whole || value == floor (value)))
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "capacity: %s is %.10g; it may be %s%.10g to %.10g%s", parts[part].what,
               value, parts[part].whole ? "a whole number, " : "", parts[part].least, parts[part].most,
               parts[part].whole ? "" : " seconds");
  return FALSE;
}

gboolean
fp_reckoning_set (FpReckoning *self, FpReckoningPart part, double value, GError **error)
{
  const double kept = isnan (value) ? parts[part].unsaid : value;

  if (!(isnan (value) && !isnan (parts[part].unsaid)) && !part_is_fair (part, value, error))
    return FALSE;
  if (parts[part].whole)
    G_STRUCT_MEMBER (guint, self, parts[part].at) = (guint) kept;
  else
    G_STRUCT_MEMBER (double, self, parts[part].at) = kept;
  return TRUE;
}

gboolean
fp_reckoning_check (const FpReckoning *self, GError **error)
{
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    if (!fp_reckoning_unsaid (self, (FpReckoningPart) i)
        && !part_is_fair ((FpReckoningPart) i, fp_reckoning_get (self, (FpReckoningPart) i), error))
      return FALSE;
  return TRUE;
}

gboolean
fp_reckoning_equal (const FpReckoning *a, const FpReckoning *b)
{
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    if (fp_reckoning_get (a, (FpReckoningPart) i) != fp_reckoning_get (b, (FpReckoningPart) i))
      return FALSE;
  return !a->sprinklers == !b->sprinklers;
}
