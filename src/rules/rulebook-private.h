/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rulebook-private.h - a rulebook as its reader fills it
 *
 * After it was read it never changes, and any thread may hold it.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

#define FP_RULEBOOK_NAMESPACE "urn:footpace:rulebook:1"
#define FP_RULEBOOK_BYTES_MAX (1024u * 1024u)
#define FP_RULEBOOK_RULES_MAX 1000
#define FP_RULEBOOK_TEXT_MAX  2000

struct _FpRulebook
{
  gatomicrefcount ref_count;
  GStringChunk   *text;    /* owns every string of the book and its rules    */
  const char     *id, *title, *edition;
  const char     *sum;     /* of its XML, however its lines end: two that have the same are one edition */
  guint           jurisdictions; /* of those of its rules that name none; as of FpRule */
  GArray         *rules;   /* of FpRule                                      */
};

FpRulebook *fp_rulebook_new_empty (void);

/* A sentence for each of @books that stands where the project keeps another edition of the same id.
 * @own: (element-type FpRulebook): of fp_rulebooks_for(); @to: (element-type utf8) */
void fp_rulebooks_tell_in_place (const GPtrArray *books, const FpProject *project, const GPtrArray *own, GPtrArray *to);

/* A built-in file of this module; owned by the caller. */
GBytes *fp_rulebook_file (const char *path);

G_END_DECLS
