/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/history.h"

typedef struct
{
  FpProject *project; /* owned */
  char      *label;   /* of the edit that led here; NULL at the start */
} Step;

struct _FpHistory
{
  GArray    *past;   /* of Step; the last one is now      */
  GArray    *future; /* of Step undone, the newest last   */
  FpProject *saved;  /* owned; NULL: never saved          */
  char      *merge;  /* tag of the last edit while it may still grow */
};

static void
clear_step (gpointer data)
{
  Step *step = data;

  fp_project_unref (step->project);
  g_free (step->label);
}

static GArray *
steps_new (void)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (Step));

  g_array_set_clear_func (steps, clear_step);
  return steps;
}

static Step *
newest (GArray *steps)
{
  return steps->len > 0 ? &g_array_index (steps, Step, steps->len - 1) : NULL;
}

FpHistory *
fp_history_new (FpProject *start, gboolean saved)
{
  FpHistory *self = g_new0 (FpHistory, 1);
  const Step first = { fp_project_ref (start), NULL };

  self->past = steps_new ();
  self->future = steps_new ();
  g_array_append_val (self->past, first);
  self->saved = saved ? fp_project_ref (start) : NULL;
  return self;
}

void
fp_history_free (FpHistory *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->past);
  g_array_unref (self->future);
  fp_project_unref (self->saved);
  g_free (self->merge);
  g_free (self);
}

const FpProject *
fp_history_now (const FpHistory *self)
{
  return newest (self->past)->project;
}

static void
set_merge (FpHistory *self, const char *merge)
{
  char *copy = g_strdup (merge); /* first: it may be our own */

  g_free (self->merge);
  self->merge = copy;
}

void
fp_history_push (FpHistory *self, FpProject *next, const char *label, const char *merge)
{
  if (fp_project_equal (next, fp_history_now (self)))
    return;
  g_array_set_size (self->future, 0);
  if (merge != NULL && g_strcmp0 (merge, self->merge) == 0)
    {
      FpProject *before = newest (self->past)->project;
      newest (self->past)->project = fp_project_ref (next);
      fp_project_unref (before);
    }
  else
    {
      const Step step = { fp_project_ref (next), g_strdup (label) };
      g_array_append_val (self->past, step);
    }
  set_merge (self, merge);
}

static void
set_page_of (GArray *steps, const FpPageSetup *page)
{
  for (guint i = 0; i < steps->len; i++)
    {
      Step *step = &g_array_index (steps, Step, i);
      g_autoptr (FpProject) before = step->project;

      step->project = fp_project_with_page (before, page, NULL);
    }
}

gboolean
fp_history_set_page (FpHistory *self, const FpPageSetup *page, GError **error)
{
  if (!fp_page_setup_check (page, error))
    return FALSE;
  set_page_of (self->past, page);
  set_page_of (self->future, page);
  return TRUE;
}

static void
move_newest (GArray *from, GArray *to)
{
  const Step step = { fp_project_ref (newest (from)->project), g_strdup (newest (from)->label) };

  g_array_append_val (to, step);
  g_array_set_size (from, from->len - 1);
}

gboolean
fp_history_undo (FpHistory *self)
{
  if (self->past->len < 2)
    return FALSE;
  move_newest (self->past, self->future);
  set_merge (self, NULL);
  return TRUE;
}

gboolean
fp_history_redo (FpHistory *self)
{
  if (self->future->len == 0)
    return FALSE;
  move_newest (self->future, self->past);
  set_merge (self, NULL);
  return TRUE;
}

const char *
fp_history_undo_label (const FpHistory *self)
{
  return self->past->len > 1 ? newest (self->past)->label : NULL;
}

const char *
fp_history_redo_label (const FpHistory *self)
{
  return self->future->len > 0 ? newest (self->future)->label : NULL;
}

guint
fp_history_depth (const FpHistory *self)
{
  return self->past->len - 1;
}

void
fp_history_mark_saved (FpHistory *self)
{
  FpProject *before = self->saved;

  self->saved = fp_project_ref (fp_history_now (self));
  fp_project_unref (before);
  set_merge (self, NULL); /* what was saved must stay a step of its own */
}

gboolean
fp_history_is_modified (const FpHistory *self)
{
  return self->saved == NULL || !fp_project_equal (self->saved, fp_history_now (self));
}
