/* SPDX-License-Identifier: GPL-3.0-or-later */
/* recovery.h - what is not saved yet, kept apart from the user's own file
 *
 * Every open project has an entry in one folder of the user's:
 *   ID.about      which file it is of, that file's digest, what is shown
 *   ID.footpace   the project as it was last kept; there only while it holds
 *                 something that the file does not
 *   ID.lock       locked as long as the program that made the entry lives
 * The lock goes with the program, however that ends, so an entry that nobody
 * holds was left by a crash, and no clock or process number can mislead.
 *
 * The functions block on the disk; fp_recovery_keep() may be called on
 * another thread than the rest, one call at a time.
 */
#pragma once

#include "footpace/store.h"

G_BEGIN_DECLS

/* The folder that the program uses: below the user's state folder.  Owned by the caller. */
char *fp_recovery_folder (void);

/* --- an entry of one's own ------------------------------------------------ */

typedef struct _FpRecovery FpRecovery;

/**
 * fp_recovery_new:
 * @path: (nullable): the project's file; %NULL: it has none yet
 * @digest: (nullable): of that file as it was read (fp_store_load_digest())
 *
 * Makes @folder when it is not there. Returns: %NULL with %FP_ERROR_WRITE when the entry cannot be made.
 */
FpRecovery *fp_recovery_new (const char *folder, const char *path, const char *digest, GError **error);

/* The entry goes with what it kept: the project was saved or given up. */
void        fp_recovery_free (FpRecovery *self);

/* The project has another file, or the file was written: what was kept before is dropped. */
gboolean    fp_recovery_saved (FpRecovery *self, const char *path, const char *digest, GError **error);

/* @alternative: id of the one that is shown. The entry's older state is whole until the new one is. */
gboolean    fp_recovery_keep (FpRecovery *self, const FpProject *project, const char *alternative, GError **error);

/* Nothing is unsaved any more (all was undone). */
void        fp_recovery_drop (FpRecovery *self);

/* --- what others left, or hold -------------------------------------------- */

typedef struct
{
  char      *id;
  char      *path;        /* NULL: it never had a file                       */
  char      *digest;      /* of the file at the time; NULL                   */
  char      *alternative; /* id of the one shown; NULL                       */
  char      *kept;        /* path of what was kept                           */
  GDateTime *when;        /* it was kept, local time                         */
} FpLeft;

void       fp_left_free (FpLeft *self);

/* The entries that nobody holds and that kept something, the newest first. Those that kept nothing are swept away. */
GPtrArray *fp_recovery_left (const char *folder); /* of FpLeft, owns them */

/* Takes the entry away for good. */
void       fp_left_discard (const char *folder, const FpLeft *left);

/* Whether an entry other than @own (nullable) that is held by a living program is of the file @path. */
gboolean   fp_recovery_is_open (const char *folder, const char *path, const FpRecovery *own);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpRecovery, fp_recovery_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpLeft, fp_left_free)

G_END_DECLS
