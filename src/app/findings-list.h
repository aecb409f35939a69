/* SPDX-License-Identifier: GPL-3.0-or-later */
/* findings-list.h - what was found, worst first
 *
 * Follows the newest findings.  What needs sight is shown as it was last
 * computed, marked so, until it has been computed anew.
 *
 * Signal "picked": a finding was chosen; see fp_findings_list_picked().
 * Signal "followed": from the chosen one on to what settles it, or to what is seen (Enter).
 * Signal "remedy" (guint): of the changes that were offered this one is wanted.
 * Signal "pointed" (guint): pointer or focus is on that one; FP_FINDINGS_NO_OFFER: on none any more.
 * Signal "full": the findings are wanted at the full height, or no longer.
 */
#pragma once

#include "document.h"
#include "shown-findings.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_FINDINGS_LIST (fp_findings_list_get_type ())
G_DECLARE_FINAL_TYPE (FpFindingsList, fp_findings_list, FP, FINDINGS_LIST, GtkWidget)

GtkWidget *fp_findings_list_new (void);
void       fp_findings_list_set_document (FpFindingsList *self, FpDocument *document);

/* Whether they are wanted at the full height of the side. */
gboolean   fp_findings_list_is_full  (FpFindingsList *self);
void       fp_findings_list_set_full (FpFindingsList *self, gboolean full);

/* The finding that is chosen, until the list changes; NULL: none. */
const FpShown *fp_findings_list_picked (FpFindingsList *self);
/* Changes that would settle it, or help, in words; none: NULL or empty.  @head: what they are good for; @note: (nullable): what
 * else is to be said of them, even without any.  Forgotten when another is chosen. */
#define FP_FINDINGS_OFFERS 5
#define FP_FINDINGS_NO_OFFER G_MAXUINT
void           fp_findings_list_offer  (FpFindingsList *self, const char *head, const char *const *remedies, const char *note);
/* Scrolls to the chosen one; nothing where there is none. */
void           fp_findings_list_reveal (FpFindingsList *self);

/* All are being settled: the button says so. */
void           fp_findings_list_set_settling (FpFindingsList *self, gboolean settling);

/* The finding that is chosen, or the first: FALSE when there is none. */
gboolean       fp_findings_list_focus (FpFindingsList *self);

/* --- for its rows --- */
void           fp_findings_list_want   (FpFindingsList *self, guint which);  /* "remedy"   */
void           fp_findings_list_point  (FpFindingsList *self, guint which);  /* "pointed"  */
void           fp_findings_list_follow (FpFindingsList *self);               /* "followed" */

G_END_DECLS
