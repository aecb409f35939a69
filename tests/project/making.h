/* SPDX-License-Identifier: GPL-3.0-or-later */
/* making.h - small projects for tests, invented */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

FpBrief    test_brief (void);
/* With the kind's default parameters and no corners; aborts the test when it is refused. */
FpItem    *test_item     (const char *id, const char *kind, const char *on, double x, double y);
/* A square of that side about the place. */
FpItem    *test_square   (const char *id, const char *kind, double side);
/* A run of one wall along x, so many mm long. */
FpItem    *test_wall     (const char *id, double length);
/* @self with one parameter changed; takes @self. */
FpItem    *test_with_param (FpItem *self, const char *param, double value);

/* These take the project and the item, and abort the test on an error. */
FpProject *test_add        (FpProject *project, guint alternative, FpItem *item);
FpProject *test_add_survey (FpProject *project, FpItem *item);

/* A survey (nave, sanctuary, wall, old altar with two candlesticks and a
 * crucifix on it) and two alternatives: "a" with a new altar on a footpace and a
 * gradine with a crucifix on it, "b" as it is. */
FpProject *test_parish (void);

G_END_DECLS
