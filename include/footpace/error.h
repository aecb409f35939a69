/* SPDX-License-Identifier: GPL-3.0-or-later */
/* error.h - what can go wrong at the edges of the program
 *
 * Every function that meets the outside world (files, XML, numbers typed by
 * a person) reports through GError in this domain.  Messages are written for
 * the person at the window: they say where, what was found, what was
 * expected.  Geometry never fails: a degenerate input has a defined answer.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  FP_ERROR_SYNTAX,    /* not well-formed XML, or text that is not a length    */
  FP_ERROR_INVALID,   /* well-formed, but not what the schema allows          */
  FP_ERROR_KIND,      /* a kind of thing that the program does not know       */
  FP_ERROR_REFERENCE, /* names something that is not there, or twice, or in a circle */
  FP_ERROR_RANGE,     /* a number outside its range, or not a number          */
  FP_ERROR_GEOMETRY,  /* an outline that crosses itself or encloses nothing   */
  FP_ERROR_LIMIT,     /* too large, too deep or too many                      */
  FP_ERROR_VERSION,   /* written by a later version of the program            */
  FP_ERROR_READ,      /* the file could not be read                           */
  FP_ERROR_WRITE,     /* the file could not be written; the old one is whole  */
  FP_ERROR_CHANGED,   /* someone else has written the file meanwhile          */
} FpError;

#define FP_ERROR (fp_error_quark ())
GQuark fp_error_quark (void);

G_END_DECLS
