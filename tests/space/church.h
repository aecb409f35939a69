/* SPDX-License-Identifier: GPL-3.0-or-later */
/* church.h - small invented churches, built thing by thing, for tests */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const char    *kind, *id, *on;   /* on: NULL, the floor                */
  FpPlace        place;
  const FpPoint *corner;           /* NULL, or `n_corners` of them       */
  guint          n_corners;
  /* Parameters that are not the defaults, ended by a NULL name. */
  struct { const char *name; double value; } param[12];
  const char    *name;             /* NULL: that of its kind             */
} ChurchThing;

/* An empty one; people are of the 50th percentile. */
FpProject *church_new (FpFacing facing);

/* These replace *project by the next one; what is wrong fails the test. */
void church_survey (FpProject **project, const ChurchThing *thing);
void church_add    (FpProject **project, const ChurchThing *thing);
void church_fate   (FpProject **project, const char *id, FpFate fate, const FpPlace *moved, const char *on);
void church_param  (FpProject **project, const char *id, const char *param, double value);

/* Each of his own stature by a seed, one in @children of those who sit a child (0: none). */
void church_population (FpProject **project, guint seed, guint children);

/* A level or falling floor over a box. @use: 0 people, 1 ministers. */
void church_floor  (FpProject **project, const char *id, FpBox box, double level, int use, double fall,
                    double direction);

const FpPlaced *church_placed (const FpScene *scene, const char *id);   /* fails where there is none       */
const FpPlaced *church_ghost  (const FpScene *scene, const char *id);   /* NULL where there is none        */

G_END_DECLS
