/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-node.h - the elements of a tree, their attributes and texts, and what is wrong with them
 *
 * Private to src/store.  Nothing is believed: whatever is not asked for is
 * refused, with the line, what was found and what was expected.  Functions
 * that return a gboolean return FALSE with the reader's error set.
 */
#pragma once

#include "parse-xml.h"

G_BEGIN_DECLS

typedef struct
{
  const char   *name;   /* of the input                                     */
  GError       *error;  /* (nullable) the first one                         */
  GStringChunk *texts;  /* owns what fp_read_attribute and fp_read_text return */
} FpReader;

int         fp_read_line   (const xmlNode *node);
const char *fp_read_name   (const xmlNode *node);
gboolean    fp_read_is     (const xmlNode *node, const char *element); /* FALSE for NULL */

gboolean    fp_read_refuse (FpReader *self, const xmlNode *at, FpError code, const char *format, ...)
                            G_GNUC_PRINTF (4, 5);
/* Takes an error of another module and says where it belongs. */
gboolean    fp_read_refuse_error (FpReader *self, int line, GError *error);

/* Elements of our namespace, comments and white space, nothing else. */
gboolean    fp_read_has_only_elements (FpReader *self, const xmlNode *node);
xmlNode    *fp_read_first  (const xmlNode *node); /* child element, NULL */
xmlNode    *fp_read_next   (const xmlNode *node); /* sibling element, NULL */
guint       fp_read_count  (const xmlNode *node);

/* The text of an element that holds nothing else; "" where it is empty; NULL with an error. */
const char *fp_read_text   (FpReader *self, const xmlNode *node);

/**
 * fp_read_knows_attributes:
 * @known: names, ended by %NULL
 */
gboolean    fp_read_knows_attributes (FpReader *self, const xmlNode *node, const char *const *known);
const char *fp_read_attribute (FpReader *self, const xmlNode *node, const char *name); /* NULL: not given */
const char *fp_read_needed_attribute (FpReader *self, const xmlNode *node, const char *name); /* NULL with an error */

/* A decimal number as the schema has it: no exponent, no NaN.  @value stays as it is where there is none. */
gboolean    fp_read_number (FpReader *self, const xmlNode *node, const char *name, double *value);
gboolean    fp_read_number_text (FpReader *self, const xmlNode *node, const char *what, const char *text,
                                 double *value);

G_END_DECLS
