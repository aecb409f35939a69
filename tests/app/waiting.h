/* SPDX-License-Identifier: GPL-3.0-or-later */
/* waiting.h - the main loop runs until something is so; fails after half a minute, or as long as is said */
#pragma once

#include <glib.h>

static inline gboolean
waiting_tick (gpointer data)
{
  *(gint64 *) data = g_get_monotonic_time ();
  return G_SOURCE_CONTINUE;
}

#define WAIT_WITHIN(seconds, condition)                                           \
  G_STMT_START {                                                                  \
    gint64 waiting_begun = g_get_monotonic_time (), waiting_now = waiting_begun;  \
    guint waiting_id = g_timeout_add (10, waiting_tick, &waiting_now);            \
    while (!(condition))                                                          \
      {                                                                           \
        g_assert_cmpint (waiting_now - waiting_begun, <, (seconds) * G_USEC_PER_SEC); \
        g_main_context_iteration (NULL, TRUE);                                    \
      }                                                                           \
    g_source_remove (waiting_id);                                                 \
  } G_STMT_END

#define WAIT_FOR(condition) WAIT_WITHIN (30, condition)
