/* SPDX-License-Identifier: GPL-3.0-or-later */
/* compat-4-8.h - what later versions of the toolkit replace: choosing files, and questions; and what they mend
 *
 * Callers are written for the later way: one call, one answer.  Nothing else
 * in the window uses the classes behind this.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @file: (nullable) (transfer none): NULL when it was given up. */
typedef void (*FpFileAnswer) (GFile *file, gpointer data);

typedef struct
{
  const char *title, *accept;
  gboolean    save;
  const char *name;                 /* proposed, for saving; NULL              */
  GFile      *folder;               /* NULL: where the last one was            */
  const char *filter_name, *filter_suffix; /* "Footpace projects", "footpace" */
} FpFileQuestion;

void fp_ask_file (GtkWindow *parent, const FpFileQuestion *question, FpFileAnswer answer, gpointer data);

/* Whom fp_ask_file() asks instead of the toolkit's chooser, where nobody sits before it; NULL: the chooser again. */
typedef GFile *(*FpFileAsker) (const FpFileQuestion *question, gpointer data); /* (transfer full) (nullable) */
void fp_ask_files_of (FpFileAsker asker, gpointer data);

/* @choice: index of the button, -1 when the question was put away. */
typedef void (*FpChoiceAnswer) (int choice, gpointer data);

/* @buttons: NULL-terminated, the safe one first, the usual one last
 * @destructive: index of one that loses something, -1; the Enter key never takes it: then the first one is the usual */
void fp_ask (GtkWindow *parent, const char *heading, const char *body, const char *const *buttons, int destructive,
             FpChoiceAnswer answer, gpointer data);

/* --- popovers and windows: later versions forget the pointer in one that is closed --- */

/**
 * fp_let_popovers_go:
 *
 * Once for the program.  A popover that is closed by a key while the pointer is over it keeps its surface, which goes on
 * asking for the pointer: the clicks of the window beneath are lost.  And where a menu is closed from a page within it, the
 * focus stays there: every key is lost.  From here on a closed popover has no surface, and the focus is on what it hung
 * from.
 */
void fp_let_popovers_go (void);

/**
 * fp_let_windows_go:
 *
 * Once for the program.  A window that goes while a button is held down in it (Escape amidst a drag) keeps that press, the
 * press keeps the window, and what the window holds, its parent with the whole document perhaps, is kept for ever.  From
 * here on a window that goes lets go of every press.
 */
void fp_let_windows_go (void);

/* --- presses ----------------------------------------------------------------- */

/**
 * fp_was_let_go:
 * @gesture: one of a single button, that is being cancelled
 *
 * After a layout the toolkit asks the display where the pointer is.  Where a short click was let go meanwhile, and that has
 * not been read yet, it sees the pointer move without a button and takes the press back: the click would be lost.
 *
 * Returns: whether the button is up, so that the press has simply ended
 */
gboolean fp_was_let_go (GtkEventController *gesture);

/* --- focus ------------------------------------------------------------------- */

/* @data: as given; outlives the widget */
typedef void (*FpFocusLeft) (gpointer data);

/**
 * fp_when_focus_left:
 * @widget: what is typed into, or holds it
 *
 * Calls @left each time that the focus, or the window, has been left for something else, before anything else is done.
 * The toolkit says so while it still walks from the old widget to the new one, and where an edit takes either away
 * meanwhile it walks for ever.  Not called for a widget that has itself been taken out of its window.
 */
void fp_when_focus_left (GtkWidget *widget, FpFocusLeft left, gpointer data);

/**
 * fp_show_or_hide:
 * @next: what has the focus then, where it was in what is hidden; it can take it and is shown
 *
 * What is hidden twice before a frame with the focus in it, the toolkit keeps for ever, and with it all that it shows.
 */
void fp_show_or_hide (GtkWidget *widget, gboolean shown, GtkWidget *next);

/* --- lists with columns: later versions scroll to a row, and name it, by themselves --- */

/* Brings a row into view. */
void       fp_column_view_scroll_to (GtkWidget *view, guint at);
/* The row in which a widget lies: what has the focus in a list. */
GtkWidget *fp_list_row_of   (GtkWidget *cell);
/* Names the row of a cell for a screen reader, at once or as soon as it is in one. */
void       fp_name_list_row (GtkWidget *cell, const char *name);

/**
 * fp_drop_down_show_all:
 * @drop_down: a GtkDropDown
 *
 * Its list is never higher than 400, and nothing tells that there are choices below: here it is as high as they are, up to
 * what a small screen has room for.
 */
void fp_drop_down_show_all (GtkWidget *drop_down);

/**
 * fp_name_buttons:
 * @top: a window with its title bar
 *
 * A button with a mnemonic is called "_Save Save": by the text that it was given, and by its label.  Leaves it the
 * label.
 */
void fp_name_buttons (GtkWidget *top);

G_END_DECLS
