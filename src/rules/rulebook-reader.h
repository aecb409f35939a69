/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rulebook-reader.h - what all readers of a part of a rulebook share
 *
 * Private to src/rules.  A fault is noted and reading goes on: who wrote the book is told of all of them at once.  What
 * returns FALSE has noted one.
 */
#pragma once

#include "rulebook-private.h"

#include "footpace/error.h"

#include <libxml/tree.h>

G_BEGIN_DECLS

typedef struct
{
  const char *name;   /* of the input, for messages                          */
  FpRulebook *book;   /* keeps what is read                                  */
  GPtrArray  *faults; /* (element-type GError), owned by it                  */
} FpBookReader;

/* Always FALSE. */
gboolean    fp_book_fault (const FpBookReader *reader, const xmlNode *node, FpError code, const char *format, ...)
  G_GNUC_PRINTF (4, 5);

/* Kept in the book; NULL for NULL. */
const char *fp_book_keep            (const FpBookReader *reader, const char *text);
gboolean    fp_book_names           (const xmlNode *node, const char *name); /* in the namespace of rulebooks */
/* Runs of white space are one space; NULL where it is missing or says nothing; owned by the caller. */
char       *fp_book_attribute       (const xmlNode *node, const char *name);
gboolean    fp_book_only_attributes (const FpBookReader *reader, const xmlNode *node, const char *const *allowed);
/* An attribute that must be there and say something; an id is one of small letters, digits and hyphens. */
gboolean    fp_book_needed          (const FpBookReader *reader, const xmlNode *node, const char *name, const char **out);
gboolean    fp_book_needed_id       (const FpBookReader *reader, const xmlNode *node, const char *name, const char **out);
/* One of a list of words; @found is left alone where the attribute is missing and may be. */
gboolean    fp_book_word            (const FpBookReader *reader, const xmlNode *node, const char *name, const char *const *words,
                                     gboolean must, int *found);
/* What an element says; it is a fault where @into says something already. */
gboolean    fp_book_text            (const FpBookReader *reader, const xmlNode *child, const char **into);
/* FALSE at anything but white space and comments between elements. */
gboolean    fp_book_nothing_said    (const FpBookReader *reader, const xmlNode *node);
gboolean    fp_book_jurisdictions   (const FpBookReader *reader, const xmlNode *node, guint *bits); /* a list in an attribute */

/* --- a rule's parts: rulebook-limit.c, rulebook-rule.c ------------------------------------- */

gboolean    fp_book_limit           (const FpBookReader *reader, const xmlNode *node, FpRule *rule); /* test and figures */
gboolean    fp_book_measure         (const FpBookReader *reader, const xmlNode *node, FpRule *rule); /* and its unit */
gboolean    fp_book_limit_fits      (const FpBookReader *reader, const xmlNode *node, const FpRule *rule); /* after both */
gboolean    fp_book_rule            (const FpBookReader *reader, const xmlNode *node); /* into the book */

G_END_DECLS
