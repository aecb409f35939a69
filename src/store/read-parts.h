/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-parts.h - the parts of a project, one file each
 *
 * Private to src/store.
 */
#pragma once

#include "read-node.h"

G_BEGIN_DECLS

/* Texts of @brief belong to the reader. */
gboolean fp_read_brief (FpReader *r, const xmlNode *node, FpBrief *brief);

/* What may end the brief: where the church is, and the Masses.  @node: (inout): past them */
gboolean fp_read_masses (FpReader *r, const xmlNode **node, FpBrief *brief);

/**
 * fp_read_item:
 * @in_survey: where it was found: an alternative holds no parts of the building
 *
 * Returns: (transfer full): NULL with the reader's error set
 */
FpItem  *fp_read_item  (FpReader *r, const xmlNode *node, gboolean in_survey);

gboolean fp_read_page  (FpReader *r, const xmlNode *node, FpPageSetup *page);

/* x, y and turn; each is 0 where it is not given. */
gboolean fp_read_place (FpReader *r, const xmlNode *node, FpPlace *place);

G_END_DECLS
