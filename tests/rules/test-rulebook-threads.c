/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first rulebook of a process, read by many threads at once: libxml2 makes its tables then.  Nothing else may be
 * tested here, or it would no longer be the first. */
#include "footpace/rules.h"

#include <string.h>

#define N_THREADS 8

static int waiting = N_THREADS;

static gpointer
read_own (gpointer data)
{
  static const char xml[]
    = "<rulebook xmlns='urn:footpace:rulebook:1' id='own' title='Own' edition='1'>"
      "<rule id='r' measure='mensa-length' test='at-least' low='3' unit='m' weight='required'>"
      "<title>Short</title><source>Own</source></rule></rulebook>";
  GError **error = data;

  g_atomic_int_add (&waiting, -1);
  while (g_atomic_int_get (&waiting) > 0)
    ;
  return fp_rulebook_parse (xml, strlen (xml), "own", error);
}

static void
test_first (void)
{
  GThread *thread[N_THREADS];
  GError *error[N_THREADS] = { NULL };

  for (guint i = 0; i < N_THREADS; i++)
    thread[i] = g_thread_new ("rulebook", read_own, &error[i]);
  for (guint i = 0; i < N_THREADS; i++)
    {
      g_autoptr (FpRulebook) book = g_thread_join (thread[i]);

      g_assert_no_error (error[i]);
      g_assert_nonnull (book);
      g_assert_cmpstr (fp_rulebook_id (book), ==, "own");
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rulebook/first-in-threads", test_first);
  return g_test_run ();
}
