/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-workers.c - parts of one task done side by side */
#include "footpace/workers.h"

#define PARTS   1000
#define ASKING  6
#define TASKS   200
#define WAIT_US (10 * G_USEC_PER_SEC)

static void
add_one (guint part, gpointer data)
{
  gint *count = data;

  g_atomic_int_inc (&count[part]);
}

/* Each once and no other, and all before it returns. */
static void
test_every_part_once (void)
{
  for (guint n = 0; n < 40; n++)
    {
      gint count[41] = { 0 };
      fp_workers_do (n, add_one, count);
      for (guint i = 0; i <= n; i++)
        g_assert_cmpint (count[i], ==, i < n);
    }
}

typedef struct { GMutex mutex; GCond met; guint here; } Meeting;

static void
meet (guint part, gpointer data)
{
  Meeting *self = data;
  const gint64 until = g_get_monotonic_time () + WAIT_US;

  (void) part;
  g_mutex_lock (&self->mutex);
  self->here++;
  g_cond_broadcast (&self->met);
  while (self->here < 2)
    g_assert_true (g_cond_wait_until (&self->met, &self->mutex, until));
  g_mutex_unlock (&self->mutex);
}

/* Neither part ends before the other has begun. */
static void
test_side_by_side (void)
{
  Meeting meeting = { 0 };

  if (g_get_num_processors () < 2)
    {
      g_test_skip ("one processor");
      return;
    }
  g_mutex_init (&meeting.mutex);
  g_cond_init (&meeting.met);
  fp_workers_do (2, meet, &meeting);
  g_assert_cmpuint (meeting.here, ==, 2);
  g_cond_clear (&meeting.met);
  g_mutex_clear (&meeting.mutex);
}

static void
divide_again (guint part, gpointer data)
{
  gint *count = data;

  fp_workers_do (10, add_one, count + 10 * part);
}

static gpointer
ask (gpointer data)
{
  (void) data;
  for (guint t = 0; t < TASKS; t++)
    {
      gint count[100] = { 0 };
      fp_workers_do (10, divide_again, count);
      for (guint i = 0; i < 100; i++)
        g_assert_cmpint (count[i], ==, 1);
    }
  return NULL;
}

/* Tasks in tasks, from more threads than there are workers: none waits for ever, none gets the other's parts. */
static void
test_many_ask (void)
{
  GThread *thread[ASKING];

  for (guint i = 0; i < ASKING; i++)
    thread[i] = g_thread_new ("asking", ask, NULL);
  for (guint i = 0; i < ASKING; i++)
    g_thread_join (thread[i]);
}

typedef struct { GMutex mutex; GHashTable *threads; } Seen;

static void
see_thread (guint part, gpointer data)
{
  Seen *self = data;

  (void) part;
  g_mutex_lock (&self->mutex);
  g_hash_table_add (self->threads, g_thread_self ());
  g_mutex_unlock (&self->mutex);
}

static void
count_ended (gpointer data)
{
  g_atomic_int_inc ((gint *) data);
}

static GPrivate of_thread = G_PRIVATE_INIT (count_ended);
static gint ended;

static void
mark_thread (guint part, gpointer data)
{
  (void) part;
  g_private_set (&of_thread, &ended);
  see_thread (part, data);
}

/* However much is asked, the same few do it, and none has ended meanwhile. */
static void
test_workers_stay (void)
{
  Seen seen = { .threads = g_hash_table_new (NULL, NULL) };

  g_mutex_init (&seen.mutex);
  for (guint t = 0; t < TASKS; t++)
    fp_workers_do (PARTS / 10, mark_thread, &seen);
  g_assert_cmpuint (g_hash_table_size (seen.threads), <=, g_get_num_processors ());
  g_assert_cmpint (g_atomic_int_get (&ended), ==, 0);
  g_hash_table_unref (seen.threads);
  g_mutex_clear (&seen.mutex);
}

typedef struct { gint begun; } Long;

static void
sleep_a_little (guint part, gpointer data)
{
  Long *self = data;

  (void) part;
  g_atomic_int_inc (&self->begun);
  g_usleep (2000);
}

static gpointer
ask_much (gpointer data)
{
  fp_workers_do (PARTS, sleep_a_little, data);
  return NULL;
}

/* Who asks for little while much is being done does not wait until that is done. */
static void
test_short_beside_long (void)
{
  Long much = { 0 };
  GThread *thread = g_thread_new ("much", ask_much, &much);
  gint count[8] = { 0 };

  while (g_atomic_int_get (&much.begun) == 0)
    g_thread_yield ();
  fp_workers_do (8, add_one, count);
  g_assert_cmpint (g_atomic_int_get (&much.begun), <, PARTS);
  g_thread_join (thread);
  g_assert_cmpint (much.begun, ==, PARTS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/workers/every-part-once", test_every_part_once);
  g_test_add_func ("/workers/side-by-side", test_side_by_side);
  g_test_add_func ("/workers/many-ask", test_many_ask);
  g_test_add_func ("/workers/stay", test_workers_stay);
  g_test_add_func ("/workers/short-beside-long", test_short_beside_long);
  return g_test_run ();
}
