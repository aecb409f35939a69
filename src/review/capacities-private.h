/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-private.h - how the sections are filled; private to src/review */
#pragma once

#include "footpace/capacities.h"

G_BEGIN_DECLS

typedef struct
{
  const FpPeople    *people;
  const FpScene     *scene;
  const FpProject   *project;
  const FpReckoning *reckoning;
  const FpSight     *sight;    /* (nullable) */
  FpUnits            units;
  GArray            *lines;    /* fp_capacity() */
} FpCapacityAsked;

/* What was just added, to be filled in further; its cells take over what is given them. */
FpCapacityRow *fp_capacity_add (FpCapacitySection *to, char *what, char *found, char *asked, char *note);
/* Both as data. */
void           fp_capacity_data (FpCapacityRow *row, const char *unit, double found, double asked);
const FpItem  *fp_capacity_item (const FpCapacityAsked *of, guint placed);

/* What is told of several things at once, a line each, and the caution: for the report. */
void fp_capacities_put_sums (GString *out, const FpCapacities *self);

void fp_capacity_fill_places      (const FpCapacityAsked *of, FpCapacitySection *to);
void fp_capacity_fill_wheelchairs (const FpCapacityAsked *of, FpCapacitySection *to);
void fp_capacity_fill_communion   (const FpCapacityAsked *of, FpCapacitySection *to);
void fp_capacity_fill_ways_out    (const FpCapacityAsked *of, FpCapacitySection *to);

G_END_DECLS
