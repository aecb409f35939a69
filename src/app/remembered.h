/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remembered.h - how a person left the window: sizes and where its parts meet
 *
 * Kept in window.ini in the user's configuration folder.  Losing it loses
 * nothing but comfort, so no error is told.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  int      width, height;   /* of the window, when it is not maximized; 0: never left */
  gboolean maximized;
  /* What the list of things, and what a chosen thing, take of the side; 0: never left. */
  double   things, thing;
  guint    ground;          /* of the board: 0 as the system has it, 1 white, 2 dark  */
  guint    ink;             /* of the board: FpInkChoice                              */
  gboolean findings_full;   /* no list of things over them                            */
} FpRemembered;

FpRemembered fp_remembered_load (void);
void         fp_remembered_save (const FpRemembered *self);

G_END_DECLS
