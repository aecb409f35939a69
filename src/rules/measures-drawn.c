/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn of each measure.  What has no line here is drawn by its ends, by its parameter, or as the thing that it is about. */
#include "measure-evidence.h"

#include <string.h>

typedef struct
{
  const char  *id;
  const char  *drawn; /* in words; NULL: as of its type                       */
  const char  *param; /* the parameter of its owner that it is               */
  FpEvidenceOf show;
} Drawn;

static const Drawn drawn[] = {
  /* altar */
  { "mensa-length", NULL, "length", NULL },
  { "mensa-depth", NULL, "depth", NULL },
  { "mensa-height", NULL, "height", NULL },
  { "mensa-overhang", NULL, "overhang", NULL },
  { "side-altar-length", NULL, "length", NULL },
  /* steps */
  { "riser", NULL, "riser", NULL },
  { "tread", NULL, "tread", NULL },
  { "footpace-ends", NULL, "ends", NULL },
  { "floor-riser", NULL, "riser", NULL },
  { "floor-tread", NULL, "tread", NULL },
  { "short-flight-tread", NULL, "tread", NULL },
  { "ramp-width", NULL, "width", NULL },
  { "ramp-handrail", NULL, "handrail", NULL },
  /* rail, ambo, seats */
  { "rail-height", NULL, "height", NULL },
  { "rail-top", NULL, "top", NULL },
  { "kneeling-width", NULL, "kneeling", NULL },
  { "ambo-desk", NULL, "height", NULL },
  { "row-spacing", NULL, "spacing", NULL },
  { "seat-width", NULL, "seat-width", NULL },
  { "wheelchair-width", NULL, "width", NULL },
  { "wheelchair-beside", NULL, "width-beside", NULL },
};

static const Drawn *
find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (drawn); i++)
    if (strcmp (drawn[i].id, id) == 0)
      return &drawn[i];
  return NULL;
}

const char *
fp_measure_drawn (const FpMeasure *measure)
{
  const Drawn *own = find (measure->id);

  if (own != NULL && own->drawn != NULL)
    return own->drawn;
  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return "the length, between its ends";
    case FP_MEASURE_COUNT:
      return "what was counted";
    case FP_MEASURE_AREA:
      return "the outline of the area";
    case FP_MEASURE_SHARE:
    case FP_MEASURE_YES:
      return "the thing";
    }
  return "";
}

FpEvidence *
fp_measured_evidence (const FpMeasure *measure, const FpMeasuring *of, const FpMeasured *one)
{
  const Drawn *own = find (measure->id);
  const char *param = measure->param != NULL ? measure->param : own != NULL ? own->param : NULL;
  FpEvidence *out = fp_evidence_new ();

  if (own != NULL && own->show != NULL)
    own->show (of, one, out);
  else if (one->has_span)
    fp_evidence_add_length (out, one->span[0], one->span[1], one->value < 0 ? -1 : 1);
  else if (param != NULL && one->owner >= 0)
    fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), param, 1);
  if (fp_evidence_is_empty (out) && one->way == NULL)
    fp_evidence_add_thing (out, of, one->owner);
  return out;
}
