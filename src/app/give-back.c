/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "give-back.h"

#include "latest.h"

#ifdef __GLIBC__
#include <malloc.h>
#endif

#define POOLS    2  /* the window's and one of all others         */
#define AFTER_S  3
#define PUT_OFF  20 /* times that it is put off while there is work */

static guint source, put_off;

void
fp_give_back_share (void)
{
#ifdef __GLIBC__
  static gsize done;

  if (!g_once_init_enter (&done))
    return;
  mallopt (M_ARENA_MAX, POOLS);
  g_once_init_leave (&done, 1);
#endif
}

static gboolean
give_back (gpointer data)
{
  (void) data;
  if (!fp_latest_all_at_rest () && put_off++ < PUT_OFF)
    return G_SOURCE_CONTINUE;
#ifdef __GLIBC__
  malloc_trim (0);
#endif
  source = put_off = 0;
  return G_SOURCE_REMOVE;
}

void
fp_give_back_later (void)
{
  if (source == 0)
    source = g_timeout_add_seconds_full (G_PRIORITY_LOW, AFTER_S, give_back, NULL, NULL);
}
