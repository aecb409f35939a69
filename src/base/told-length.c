/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/told-length.h"

#include <math.h>

#define SMALL 20.0 /* mm; design judgement */

int
fp_told_decimals (double mm)
{
  return fabs (mm) >= SMALL ? 0 : 1;
}

double
fp_told_length (double mm)
{
  return fp_told_decimals (mm) == 0 ? round (mm) : round (mm * 10) / 10;
}
