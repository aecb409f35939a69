/* SPDX-License-Identifier: GPL-3.0-or-later */
/* timing.h - what benchmarks time with */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* ms of processor time, of all threads together: other work on the machine counts for little. */
double timing_cpu  (void);
/* ms since some moment. */
double timing_wall (void);

/* Both sort what they are given. */
double timing_least  (double *took, guint n);
double timing_middle (double *took, guint n);

/* "  what    least …, middle …" */
void   timing_print  (const char *what, double *took, guint n);

G_END_DECLS
