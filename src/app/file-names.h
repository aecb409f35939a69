/* SPDX-License-Identifier: GPL-3.0-or-later */
/* file-names.h - names of files as people type them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * fp_file_with_suffix:
 * @path: as chosen; @suffix: "footpace", without the dot
 *
 * The path with the suffix where it was left out.  The chooser has asked only
 * about the name that was typed, so a file that the longer name would
 * overwrite is reported, not overwritten.
 *
 * Returns: (transfer full) (nullable): %FP_ERROR_WRITE when a file of that name is there already
 */
char *fp_file_with_suffix (const char *path, const char *suffix, GError **error);

/* A name without what no file name may have; owned by the caller. */
char *fp_file_clean_name (const char *name);

/**
 * fp_file_offered_name:
 * @alternative: (nullable): by its name; %NULL for what tells all of them
 * @what: "schedules"
 *
 * "Holy Rood, High altar restored, schedules.csv": a name to begin from, without what no file name may have, and no longer than
 * file systems allow.
 *
 * Returns: (transfer full)
 */
char *fp_file_offered_name (const char *project, const char *alternative, const char *what, const char *suffix);

G_END_DECLS
