/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store-cases.h - projects that the tests of the store write and read */
#pragma once

#include "footpace/store.h"

G_BEGIN_DECLS

FpProject *store_case_small (void); /* an empty survey and one alternative   */

/* One of every kind, standing where it may, with the defaults (NULL) or with other values that are allowed. */
FpProject *store_case_every_kind (GRand *rand);

/* What fp_store_write gives; owned by the caller. */
char      *store_case_bytes (const FpProject *project);
FpProject *store_case_parse (const char *xml); /* a failure ends the test    */

/* Runs xmllint (of libxml2) with our schema over @path; FALSE where it is not installed. */
gboolean   store_case_xmllint (const char *path, int *status, char **says);

G_END_DECLS
