/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-give-back.c - what background work took for a moment goes back to the system */
#include "latest.h"
#include "resident.h"
#include "waiting.h"

#ifdef __GLIBC__
#include <malloc.h>
#endif
#include <string.h>

#define BLOCKS 400000 /* of 256 bytes: a hundred megabytes                                             */
#define SIZE   256
#define KEPT   1000   /* each so many-th lives on, so that the pool cannot shrink from its end by itself */

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  GPtrArray *blocks = g_ptr_array_new ();

  (void) request, (void) data;
  for (guint i = 0; i < BLOCKS; i++)
    {
      char *block = g_malloc (SIZE);

      memset (block, 1, SIZE);
      g_ptr_array_add (blocks, block);
    }
  fp_latest_job_post (job, blocks);
}

typedef struct { GPtrArray *kept; gsize most; } Seen;

static void
receive (gpointer result, gpointer data)
{
  const GPtrArray *blocks = result;
  Seen *seen = data;

  seen->most = resident_mb ();
  for (guint i = 0; i < blocks->len; i += KEPT)
    g_ptr_array_add (seen->kept, g_ptr_array_index (blocks, i));
}

static void
result_free (gpointer result)
{
  GPtrArray *blocks = result;

  for (guint i = 0; i < blocks->len; i++)
    if (i % KEPT != 0)
      g_free (g_ptr_array_index (blocks, i));
  g_ptr_array_unref (blocks);
}

static void
no_request (gpointer request)
{
  (void) request;
}

static const FpLatestWork work = { run, receive, no_request, result_free, 50 };

static gboolean
gives_back_at_all (void)
{
#ifdef __GLIBC__
  return resident_mb () > 0 && mallinfo2 ().arena > 0; /* not with a sanitizer, which has pools of its own */
#else
  return FALSE;
#endif
}

static void
test_gives_back (void)
{
  Seen seen = { NULL, 0 };
  const gsize before = resident_mb ();
  FpLatest *latest;

  if (!gives_back_at_all ())
    {
      g_test_skip ("not this C library's pools");
      return;
    }
  seen.kept = g_ptr_array_new_with_free_func (g_free);
  latest = fp_latest_new ("much", &work, &seen);
  fp_latest_ask (latest, GINT_TO_POINTER (1));
  WAIT_FOR (seen.most > 0 && fp_latest_all_at_rest ());
  g_assert_cmpuint (seen.most, >, before + 90);
  WAIT_FOR (resident_mb () < before + 30);
  g_assert_cmpuint (seen.kept->len, ==, BLOCKS / KEPT);
  fp_latest_free (latest);
  g_ptr_array_unref (seen.kept);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/give-back/after-work", test_gives_back);
  return g_test_run ();
}
