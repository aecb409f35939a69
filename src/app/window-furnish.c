/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-furnish.c - a whole sanctuary in one step, for the celebration that is asked for */
#include "window-private.h"

#include "footpace/furnish.h"

static FpCelebration
celebration_of (const char *id)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if (g_strcmp0 (fp_celebration_id ((FpCelebration) (1u << i)), id) == 0)
      return (FpCelebration) (1u << i);
  return 0;
}

/* What had no room is told as what was added is: neither is an error. */
static void
furnish (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const FpCelebration one = celebration_of (g_variant_get_string (parameter, NULL));
  g_autoptr (GArray) told = fp_furnished_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *label = NULL, *text = NULL;
  FpProject *next;

  (void) name;
  if (one == 0)
    return;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_furnish (fp_document_base_scene (self->document), one, told, &error);
  if (next == NULL)
    {
      fp_window_tell_amiss (self, error);
      return;
    }
  text = fp_furnished_text (told);
  label = g_strdup_printf ("Furnish for %s", fp_celebration_label (one));
  if (fp_project_equal (next, fp_document_project (self->document)))
    fp_project_unref (next);
  else
    fp_document_edit (self->document, next, label, NULL);
  fp_window_notice (self, text, FALSE);
}

void
fp_window_class_add_furnish_actions (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.furnish", "s", furnish);
}
