/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/cause.h"

#include <string.h>

const char *
fp_error_cause (const GError *error)
{
  const char *cause = error->message;

  for (const char *next; (next = strstr (cause, ": ")) != NULL;)
    cause = next + 2;
  return cause;
}
