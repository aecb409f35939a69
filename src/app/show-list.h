/* SPDX-License-Identifier: GPL-3.0-or-later */
/* show-list.h - what is shown: a mark for each sort of thing, each standing, and what is written
 *
 * Signal "changed": by a hand, not by fp_show_list_set().
 */
#pragma once

#include "footpace/page.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SHOW_LIST (fp_show_list_get_type ())
G_DECLARE_FINAL_TYPE (FpShowList, fp_show_list, FP, SHOW_LIST, GtkBox)

void     fp_show_list_set (FpShowList *self, FpHidden hidden);
FpHidden fp_show_list_get (FpShowList *self);

G_END_DECLS
