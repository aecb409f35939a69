/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/workers.h"

/* Beside the thread that asks. More gain little: what is divided here is bound by memory. */
#define WORKERS_MAX 3

/* Lives on the stack of who asks; guarded by the mutex below. */
typedef struct
{
  FpWorkersPart part;
  gpointer      data;
  guint         n, begun, done;
  GList         link;     /* in the queue while parts are to be begun */
  GCond         all_done;
} Task;

static GMutex mutex;
static GCond  wanted;           /* there is something in the queue          */
static GQueue open_tasks = G_QUEUE_INIT;

/* With the mutex held, which is let go while the part is done. */
static void
do_next_part (Task *task)
{
  const guint i = task->begun++;

  /* To the end of the queue, so that a long task does not keep a short one waiting. */
  g_queue_unlink (&open_tasks, &task->link);
  if (task->begun < task->n)
    g_queue_push_tail_link (&open_tasks, &task->link);
  g_mutex_unlock (&mutex);
  task->part (i, task->data);
  g_mutex_lock (&mutex);
  if (++task->done == task->n)
    g_cond_signal (&task->all_done);
}

static gpointer
work (gpointer data)
{
  (void) data;
  g_mutex_lock (&mutex);
  for (;;)
    if (g_queue_is_empty (&open_tasks))
      g_cond_wait (&wanted, &mutex);
    else
      do_next_part (g_queue_peek_head (&open_tasks));
  return NULL;
}

/* Where no thread can be had, who asks does all. */
static void
begin_workers (void)
{
  static gsize begun;

  if (!g_once_init_enter (&begun))
    return;
  for (guint n = MIN (g_get_num_processors () - 1, WORKERS_MAX); n > 0; n--)
    {
      GThread *thread = g_thread_try_new ("worker", work, NULL, NULL);
      g_clear_pointer (&thread, g_thread_unref);
    }
  g_once_init_leave (&begun, 1);
}

void
fp_workers_do (guint n, FpWorkersPart part, gpointer data)
{
  Task task = { .part = part, .data = data, .n = n };

  if (n == 0)
    return;
  begin_workers ();
  task.link.data = &task;
  g_cond_init (&task.all_done);
  g_mutex_lock (&mutex);
  g_queue_push_tail_link (&open_tasks, &task.link);
  if (n > 1)
    g_cond_broadcast (&wanted);
  while (task.begun < n)
    do_next_part (&task);
  while (task.done < n)
    g_cond_wait (&task.all_done, &mutex);
  g_mutex_unlock (&mutex);
  g_cond_clear (&task.all_done);
}
