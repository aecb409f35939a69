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

/* What an alternative says of its settings; ids and texts belong to the reader. */
typedef struct { FpCelebration one; const char *id; FpSettingChange change; } FpReadSetting;
typedef struct { const char *id, *where; } FpReadKept;
typedef struct
{
  FpColour    colour[FP_N_CELEBRATIONS];
  int         line[FP_N_CELEBRATIONS]; /* 0: there is none                     */
  GArray     *changes;                 /* of FpReadSetting                     */
  GArray     *kept;                    /* of FpReadKept                        */
  GHashTable *kept_lines;
} FpReadSettings;
/* Of what may be spoken: sets of ids. */
typedef struct { GHashTable *own, *survey; } FpReadThings;

void     fp_read_settings_init  (FpReadSettings *self);
void     fp_read_settings_clear (FpReadSettings *self);
gboolean fp_read_kept    (FpReader *r, const xmlNode *node, const FpReadThings *things, FpReadSettings *settings);
gboolean fp_read_setting (FpReader *r, const xmlNode *node, const FpReadThings *things, FpReadSettings *settings);
/* Told to the alternative that was added last. */
gboolean fp_read_settings_build (const FpReadSettings *self, FpProjectBuilder *builder, GError **error);

/**
 * fp_read_works:
 * @rates: (element-type FpRate): filled; @works borrows from it, and texts from the reader
 */
gboolean fp_read_works (FpReader *r, const xmlNode *node, FpWorks *works, GArray *rates);

/* What was read of the norms; texts are the reader's. */
typedef struct
{
  FpNorms norms;                                /* borrows from the lists   */
  GArray *without, *changes, *choices, *own;
} FpReadNorms;

void     fp_read_norms_init  (FpReadNorms *self);
void     fp_read_norms_clear (FpReadNorms *self);
gboolean fp_read_norms (FpReader *r, const xmlNode *node, FpReadNorms *norms);

gboolean fp_read_reckoning (FpReader *r, const xmlNode *node, FpReckoning *reckoning);

gboolean fp_read_page  (FpReader *r, const xmlNode *node, FpPageSetup *page);

/* x, y and turn; each is 0 where it is not given. */
gboolean fp_read_place (FpReader *r, const xmlNode *node, FpPlace *place);

G_END_DECLS
