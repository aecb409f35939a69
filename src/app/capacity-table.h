/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacity-table.h - one section of the capacity in columns, and below it by which rule it is reckoned */
#pragma once

#include "document.h"

#include "footpace/capacities.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is of one thing is a button that chooses it in @document. */
GtkWidget *fp_capacity_table_new (const FpCapacitySection *section, FpDocument *document);

G_END_DECLS
