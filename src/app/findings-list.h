/* SPDX-License-Identifier: GPL-3.0-or-later */
/* findings-list.h - what was found, worst first
 *
 * Follows the newest findings.  What needs sight is shown as it was last
 * computed, marked so, until it has been computed anew.
 *
 * Signal "picked": a finding was chosen; see fp_findings_list_picked().
 * Signal "full": the findings are wanted at the full height, or no longer.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_FINDINGS_LIST (fp_findings_list_get_type ())
G_DECLARE_FINAL_TYPE (FpFindingsList, fp_findings_list, FP, FINDINGS_LIST, GtkWidget)

GtkWidget *fp_findings_list_new (void);
void       fp_findings_list_set_document (FpFindingsList *self, FpDocument *document);

/* Whether they are wanted at the full height of the side. */
gboolean   fp_findings_list_is_full  (FpFindingsList *self);
void       fp_findings_list_set_full (FpFindingsList *self, gboolean full);

/* @id: (out): interned id of the thing that it is about, NULL when it is about the whole;
 * FALSE when no finding is chosen. */
gboolean   fp_findings_list_picked (FpFindingsList *self, const char **id, FpVec3 *at, gboolean *has_at);

G_END_DECLS
