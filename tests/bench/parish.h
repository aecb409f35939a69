/* SPDX-License-Identifier: GPL-3.0-or-later */
/* parish.h - invented churches of a given size, furnished in full */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* Two blocks of pews of 12 seats a row, piers beside them, six points of focus: 13 rows make 312 seats. */
FpProject *parish_new (guint rows);

/* Four blocks, two of them behind piers in the aisles: 25 rows make 1200 seats. */
FpProject *cathedral_new (guint rows);

/* Blocks of 12 seats a row side by side, as many rows behind each other as are asked for. */
FpProject *hall_new (guint blocks, guint rows);

/* Replaces *project by one in which a thing stands elsewhere. */
void parish_move (FpProject **project, const char *id, double dx, double dy);

G_END_DECLS
