/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-arrange.c - what is chosen, arranged: centred, mirrored, repeated, spaced, levelled, copied */
#include "window-private.h"

#include "arrange-dialog.h"

#include "footpace/arrange.h"

#include <string.h>

/* --- what can be done now ------------------------------------------------- */

/* Of what was removed nothing can be arranged. */
static guint
n_that_stand (FpDocument *d)
{
  guint n = 0;

  for (const char *const *id = d != NULL ? fp_document_chosen_all (d) : NULL; id != NULL && *id != NULL; id++, n++)
    if (fp_document_placed (d, *id)->ghost)
      return 0;
  return n;
}

void
fp_window_update_arrange (FpWindow *self)
{
  static const struct { const char *action; guint least; } table[] = {
    { "win.centre", 1 }, { "win.mirror", 1 }, { "win.mirror-copy", 1 }, { "win.repeat", 1 }, { "win.match-level", 1 },
    { "win.copy-to", 1 }, { "win.space-across", 3 }, { "win.space-along", 3 }
  };
  const guint n = n_that_stand (self->document);
  const guint n_alternatives = self->document != NULL
                               ? fp_project_n_alternatives (fp_document_project (self->document)) : 0;

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), table[i].action, n >= table[i].least
                                   && (strcmp (table[i].action, "win.copy-to") != 0 || n_alternatives > 1));
  gtk_widget_set_sensitive (self->arrange_button, self->document != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.choose-like", fp_document_chosen_like (self->document, NULL));
}

/* --- at once --------------------------------------------------------------- */

/* @made: (nullable): what is chosen then. */
static void
arrange (FpWindow *self, FpProject *next, const char *deed, char **made, const GError *error)
{
  g_autofree char *what = fp_chosen_words (self->document), *label = g_strdup_printf ("%s %s", deed, what);

  if (!fp_document_edit (self->document, next, label, NULL))
    fp_window_tell_amiss (self, error);
  else if (made != NULL)
    fp_document_choose_all (self->document, (const char *const *) made);
}

static void
centre (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  FpProject *next;

  (void) name, (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_arrange_centre (fp_document_base_scene (self->document), fp_document_chosen_all (self->document), &error);
  arrange (self, next, "Centre", NULL, error);
}

static void
mirror (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const gboolean copy = strcmp (name, "win.mirror-copy") == 0;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) made = NULL;
  FpProject *next;

  (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_arrange_mirror (fp_document_base_scene (self->document), fp_document_chosen_all (self->document), copy,
                            &made, &error);
  arrange (self, next, copy ? "Mirror a copy of" : "Mirror", copy ? made : NULL, error);
}

static void
space (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  FpProject *next;

  (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_arrange_space (fp_document_base_scene (self->document), fp_document_chosen_all (self->document),
                           strcmp (name, "win.space-along") == 0, &error);
  arrange (self, next, "Space", NULL, error);
}

/* --- asked first ------------------------------------------------------------ */

static void
ask (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  if (strcmp (name, "win.repeat") == 0)
    fp_repeat_dialog_show (GTK_WINDOW (self), self->document);
  else if (strcmp (name, "win.match-level") == 0)
    fp_level_dialog_show (GTK_WINDOW (self), self->document);
  else
    fp_copy_to_dialog_show (GTK_WINDOW (self), self->document);
}

/* --- choosing ---------------------------------------------------------------- */

static void
choose_like (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpDocument *d = FP_WINDOW (widget)->document;
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();

  (void) name, (void) parameter;
  if (!fp_document_chosen_like (d, ids))
    return;
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (d, (const char *const *) ids->pdata);
}

void
fp_window_class_add_arrange_actions (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.centre", NULL, centre);
  gtk_widget_class_install_action (c, "win.mirror", NULL, mirror);
  gtk_widget_class_install_action (c, "win.mirror-copy", NULL, mirror);
  gtk_widget_class_install_action (c, "win.space-across", NULL, space);
  gtk_widget_class_install_action (c, "win.space-along", NULL, space);
  gtk_widget_class_install_action (c, "win.repeat", NULL, ask);
  gtk_widget_class_install_action (c, "win.match-level", NULL, ask);
  gtk_widget_class_install_action (c, "win.copy-to", NULL, ask);
  gtk_widget_class_install_action (c, "win.choose-like", NULL, choose_like);
}
