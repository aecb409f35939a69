/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-reckoning.c - <capacity>: by what a parish reckons its capacity */
#include "read-parts.h"

#include <math.h>
#include <string.h>

static gboolean
read_part (FpReader *r, const xmlNode *node, FpReckoning *reckoning, FpReckoningPart part)
{
  const char *id = fp_reckoning_id (part);
  GError *error = NULL;
  double value = NAN;

  if (fp_read_attribute (r, node, id) == NULL)
    return TRUE;
  if (!fp_read_number (r, node, id, &value))
    return FALSE;
  return fp_reckoning_set (reckoning, part, value, &error) || fp_read_refuse_error (r, fp_read_line (node), error);
}

gboolean
fp_read_reckoning (FpReader *r, const xmlNode *node, FpReckoning *reckoning)
{
  static const char *const known[] = { "people", "ministers", "lines", "each", "change", "step", "back", "sprinklers", NULL };
  const char *sprinklers;

  *reckoning = fp_reckoning_usual;
  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node))
    return FALSE;
  if (fp_read_first (node) != NULL)
    return fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <capacity>, where nothing is expected",
                           fp_read_name (fp_read_first (node)));
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    if (!read_part (r, node, reckoning, (FpReckoningPart) i))
      return FALSE;
  sprinklers = fp_read_attribute (r, node, "sprinklers");
  if (sprinklers != NULL && strcmp (sprinklers, "yes") != 0 && strcmp (sprinklers, "no") != 0)
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "sprinklers is “%.40s”; yes or no is expected", sprinklers);
  reckoning->sprinklers = sprinklers != NULL && strcmp (sprinklers, "yes") == 0;
  return TRUE;
}
