/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "latest.h"

#include "waiting.h"

/* A request is a number; "working" on it takes as many milliseconds, ended early by being cancelled. */
typedef struct
{
  GThread *owner;
  gint     started, requests_freed, results_freed; /* atomic */
  guint    received;
  int      last;
} Log;

static Log the_log;

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  int ms = GPOINTER_TO_INT (request);

  (void) data;
  g_assert_true (g_thread_self () != the_log.owner);
  g_atomic_int_inc (&the_log.started);
  for (int i = 0; i < ms; i++)
    {
      if (g_cancellable_is_cancelled (fp_latest_job_cancellable (job)))
        return;
      g_usleep (1000);
    }
  fp_latest_job_post (job, GINT_TO_POINTER (ms));
}

static void
receive (gpointer result, gpointer data)
{
  (void) data;
  g_assert_true (g_thread_self () == the_log.owner);
  the_log.received++;
  the_log.last = GPOINTER_TO_INT (result);
}

static void
request_free (gpointer request)
{
  (void) request;
  g_atomic_int_inc (&the_log.requests_freed);
}

static void
result_free (gpointer result)
{
  (void) result;
  g_atomic_int_inc (&the_log.results_freed);
}

static const FpLatestWork work = { run, receive, request_free, result_free, 50, 0 };

static FpLatest *
start (void)
{
  the_log = (Log) { .owner = g_thread_self () };
  return fp_latest_new ("test", &work, NULL);
}

/* On a machine that has much else to do a thread is not awake at once. */
static void
wait_until_it_works (void)
{
  WAIT_FOR (g_atomic_int_get (&the_log.started) > 0);
}

static void
test_one (void)
{
  FpLatest *latest = start ();

  g_assert_false (fp_latest_is_busy (latest));
  g_assert_true (fp_latest_all_at_rest ());
  fp_latest_ask (latest, GINT_TO_POINTER (1));
  g_assert_true (fp_latest_is_busy (latest));
  g_assert_false (fp_latest_all_at_rest ());
  WAIT_FOR (the_log.received == 1);
  g_assert_cmpint (the_log.last, ==, 1);
  WAIT_FOR (!fp_latest_is_busy (latest) && fp_latest_all_at_rest ());
  fp_latest_free (latest);
  g_assert_cmpint (the_log.requests_freed, ==, 1);
  g_assert_cmpint (the_log.results_freed, ==, 1);
}

/* Of many asked at once, those in between are never worked on. */
static void
test_newest_wins (void)
{
  FpLatest *latest = start ();

  for (int i = 1; i <= 100; i++)
    fp_latest_ask (latest, GINT_TO_POINTER (i % 10 + 1));
  fp_latest_ask (latest, GINT_TO_POINTER (7));
  WAIT_FOR (!fp_latest_is_busy (latest));
  g_assert_cmpint (the_log.last, ==, 7);
  g_assert_cmpuint (the_log.received, <=, 100);
  fp_latest_free (latest);
  g_assert_cmpint (the_log.requests_freed, ==, 101);
  g_assert_cmpuint ((guint) the_log.results_freed, ==, the_log.received);
}

/* What waits for a lull is begun when none newer has come for so long, and is at work all the while. */
static void
test_lull (void)
{
  static const FpLatestWork unhurried = { run, receive, request_free, result_free, 50, 100 };
  const gint64 begun = g_get_monotonic_time ();
  FpLatest *latest;

  the_log = (Log) { .owner = g_thread_self () };
  latest = fp_latest_new ("test", &unhurried, NULL);
  for (int i = 1; i <= 5; i++)
    {
      fp_latest_ask (latest, GINT_TO_POINTER (i));
      g_usleep (1000);
    }
  g_assert_true (fp_latest_is_busy (latest));
  g_assert_false (fp_latest_all_at_rest ());
  WAIT_FOR (the_log.last == 5);
  g_assert_cmpint (g_get_monotonic_time () - begun, >=, 100 * 1000);
  WAIT_FOR (!fp_latest_is_busy (latest));
  fp_latest_ask (latest, GINT_TO_POINTER (6));
  fp_latest_free (latest); /* does not wait for the lull to end */
  g_assert_cmpint (the_log.requests_freed, ==, 6);
}

#define LONG_US (60u * 1000u * 1000u)

/* Whoever draws a frame has what will soon be there without a turn of the main loop, and has it once. */
static void
test_caught_up_with (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (5));
  fp_latest_catch_up (latest, LONG_US);
  g_assert_cmpuint (the_log.received, ==, 1);
  g_assert_cmpint (the_log.last, ==, 5);
  WAIT_FOR (!fp_latest_is_busy (latest) && fp_latest_all_at_rest ());
  g_assert_cmpuint (the_log.received, ==, 1);
  fp_latest_catch_up (latest, LONG_US); /* nothing is worked at: returns at once */
  g_assert_cmpuint (the_log.received, ==, 1);
  fp_latest_free (latest);
  g_assert_cmpint (the_log.results_freed, ==, 1);
}

/* What takes longer than a frame may wait comes when it comes. */
static void
test_not_waited_for (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (1000));
  wait_until_it_works ();
  fp_latest_catch_up (latest, 0);
  fp_latest_catch_up (latest, 1000);
  g_assert_cmpuint (the_log.received, ==, 0);
  WAIT_FOR (the_log.received == 1);
  g_assert_cmpint (the_log.last, ==, 1000);
  fp_latest_free (latest);
}

/* One that ends within its grace is handed over although another waits: results follow a drag. */
static void
test_short_one_is_left_to_end (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (20));
  wait_until_it_works ();
  fp_latest_ask (latest, GINT_TO_POINTER (3));
  WAIT_FOR (the_log.received == 2);
  g_assert_cmpint (the_log.last, ==, 3);
  fp_latest_free (latest);
}

/* One that would take ten minutes is cancelled for the newer. */
static void
test_long_one_gives_way (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (600000));
  wait_until_it_works ();
  fp_latest_ask (latest, GINT_TO_POINTER (3));
  WAIT_FOR (the_log.received == 1);
  g_assert_cmpint (the_log.last, ==, 3);
  fp_latest_free (latest);
  g_assert_cmpint (the_log.requests_freed, ==, 2);
}

static void
test_freed_while_it_works (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (600000));
  wait_until_it_works ();
  fp_latest_ask (latest, GINT_TO_POINTER (600000));
  fp_latest_free (latest);
  g_assert_true (fp_latest_all_at_rest ());
  g_assert_cmpint (the_log.requests_freed, ==, 2);
  g_assert_cmpuint (the_log.received, ==, 0);
}

/* A result on its way is dropped, not handed to something that is gone. */
static void
test_freed_before_delivery (void)
{
  FpLatest *latest = start ();

  fp_latest_ask (latest, GINT_TO_POINTER (1));
  while (g_atomic_int_get (&the_log.requests_freed) == 0)
    g_usleep (1000);
  fp_latest_free (latest);
  WAIT_FOR (g_atomic_int_get (&the_log.results_freed) == 1 && fp_latest_all_at_rest ());
  g_assert_cmpuint (the_log.received, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/latest/one", test_one);
  g_test_add_func ("/latest/newest-wins", test_newest_wins);
  g_test_add_func ("/latest/lull", test_lull);
  g_test_add_func ("/latest/caught-up-with", test_caught_up_with);
  g_test_add_func ("/latest/not-waited-for", test_not_waited_for);
  g_test_add_func ("/latest/short-one-ends", test_short_one_is_left_to_end);
  g_test_add_func ("/latest/long-one-gives-way", test_long_one_gives_way);
  g_test_add_func ("/latest/freed/working", test_freed_while_it_works);
  g_test_add_func ("/latest/freed/before-delivery", test_freed_before_delivery);
  return g_test_run ();
}
