/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-memory.c - where names and dimensions stood on the board in each state of the project
 *
 * Where they stand follows from the drawing before.  Undo brings back a
 * project, and so does setting a thing back where it was: what its drawing
 * looked like comes back with it.
 */
#include "board-view-private.h"

/* More than anyone takes back at a time. */
#define MOST_KEPT 100

typedef struct
{
  FpProject     *project; /* owned */
  guint          alternative;
  FpBoardMemory *memory;  /* owned */
} Kept;

static void
kept_free (gpointer data)
{
  Kept *kept = data;

  fp_project_unref (kept->project);
  fp_board_memory_free (kept->memory);
  g_free (kept);
}

/* Of the same project, or of one that says the same: what is set back by hand looks as it did before too. */
static int
find (FpBoardView *self, const FpScene *scene)
{
  const gboolean previewed = self->document == NULL || scene != fp_document_base_scene (self->document);

  for (guint i = 0; i < self->kept->len; i++)
    {
      const Kept *kept = g_ptr_array_index (self->kept, i);

      if (kept->alternative == fp_scene_alternative (scene)
          && (kept->project == fp_scene_project (scene)
              || (!previewed && fp_project_equal (kept->project, fp_scene_project (scene)))))
        return (int) i;
    }
  return -1;
}

void
fp_board_view_forget_memory (FpBoardView *self)
{
  g_clear_pointer (&self->memory, fp_board_memory_free);
  g_clear_pointer (&self->kept, g_ptr_array_unref);
  self->memory = fp_board_memory_new ();
  self->kept = g_ptr_array_new_with_free_func (kept_free);
  self->layout.memory = self->memory;
}

void
fp_board_view_drop_memory (FpBoardView *self)
{
  self->layout.memory = NULL;
  g_clear_pointer (&self->memory, fp_board_memory_free);
  g_clear_pointer (&self->kept, g_ptr_array_unref);
}

/* What is only previewed is never come back to. */
void
fp_board_view_keep_memory (FpBoardView *self)
{
  const FpScene *scene = fp_projection_scene (self->projection[0]);
  const int was = find (self, scene);
  Kept *kept;

  if (self->document == NULL || scene != fp_document_base_scene (self->document))
    return;
  if (was >= 0)
    g_ptr_array_remove_index (self->kept, (guint) was);
  else if (self->kept->len == MOST_KEPT)
    g_ptr_array_remove_index (self->kept, 0);
  kept = g_new (Kept, 1);
  *kept = (Kept) { fp_project_ref ((FpProject *) fp_scene_project (scene)), fp_scene_alternative (scene),
                   fp_board_memory_copy (self->memory) };
  g_ptr_array_add (self->kept, kept);
}

void
fp_board_view_recall (FpBoardView *self, const FpScene *scene)
{
  const int i = find (self, scene);

  if (i >= 0)
    fp_board_memory_recall (self->memory, ((const Kept *) g_ptr_array_index (self->kept, (guint) i))->memory);
}
