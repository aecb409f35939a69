/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "timing.h"

#include <stdlib.h>
#include <time.h>

double
timing_cpu (void)
{
  return (double) clock () * 1e3 / CLOCKS_PER_SEC;
}

double
timing_wall (void)
{
  return (double) g_get_monotonic_time () / 1e3;
}

static int
by_time (const void *a, const void *b)
{
  const double p = *(const double *) a, q = *(const double *) b;
  return (p > q) - (p < q);
}

double
timing_least (double *took, guint n)
{
  qsort (took, n, sizeof *took, by_time);
  return took[0];
}

double
timing_middle (double *took, guint n)
{
  qsort (took, n, sizeof *took, by_time);
  return took[n / 2];
}

void
timing_print (const char *what, double *took, guint n)
{
  const double least = timing_least (took, n);

  g_print ("  %-38s least %9.2f ms, middle %9.2f ms\n", what, least, timing_middle (took, n));
}
