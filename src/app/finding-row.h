/* SPDX-License-Identifier: GPL-3.0-or-later */
/* finding-row.h - a finding in the list, and what would settle it */
#pragma once

#include "findings-list.h"

G_BEGIN_DECLS

/* Borrowed while it is shown. */
typedef struct { const char *head, *note; const char *const *words; } FpFindingOffers;

GtkWidget *fp_finding_row_new  (FpFindingsList *list);
/* @open: it is chosen: where, why, and what is offered */
void       fp_finding_row_show (GtkWidget *row, const FpShown *shown, gboolean open, const FpFindingOffers *offers);

G_END_DECLS
