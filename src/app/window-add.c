/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-add.c - the list of kinds of things to add, found by typing */
#include "window-private.h"

#include "two-lines.h"

#include <string.h>

static void
on_kind (GtkListBox *list, GtkListBoxRow *row, FpWindow *self)
{
  const char *id = g_object_get_data (G_OBJECT (row), "kind");
  GtkWidget *popover = gtk_widget_get_ancestor (GTK_WIDGET (list), GTK_TYPE_POPOVER);

  if (popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (popover));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.add", "s", id);
  /* At once: the next key moves what was added, or undoes it, and is not for the list that still fades away. */
  gtk_widget_grab_focus (self->board);
}

/* --- groups --------------------------------------------------------------- */

typedef enum { OF_ALTAR, OF_LIGHTS, OF_SANCTUARY, OF_MINISTERS, OF_PEOPLE, OF_WORKS, OF_SURVEY, N_GROUPS } Group;

static const char *const titles[N_GROUPS] = {
  [OF_ALTAR] = "The altar, and what belongs to it",
  [OF_LIGHTS] = "Lights",
  [OF_SANCTUARY] = "About the sanctuary",
  [OF_MINISTERS] = "Seats of the ministers",
  [OF_PEOPLE] = "The people",
  [OF_WORKS] = "Ramps, handrails and screens",
  [OF_SURVEY] = "Building, for all alternatives",
};

static Group
group_of (const FpKind *kind)
{
  if ((kind->flags & FP_KIND_SURVEY) != 0)
    return OF_SURVEY;
  switch (fp_kind_sort (kind))
    {
    case FP_SORT_ALTAR: return OF_ALTAR;
    case FP_SORT_LIGHTS: return OF_LIGHTS;
    case FP_SORT_SEDILIA: return OF_MINISTERS;
    case FP_SORT_SEATS: return OF_PEOPLE;
    case FP_SORT_BUILDING: return OF_WORKS;
    case FP_SORT_FURNITURE: case FP_N_SORTS: break;
    }
  return OF_SANCTUARY;
}

static Group
group_of_row (GtkListBoxRow *row)
{
  return group_of (fp_kind_find (g_object_get_data (G_OBJECT (row), "kind")));
}

/* --- rows ----------------------------------------------------------------- */

static GtkWidget *
kind_row (const FpKind *kind)
{
  GtkLabel *tells;
  GtkWidget *row = fp_two_lines_new (kind->label, kind->tells, &tells);

  gtk_label_set_wrap (tells, TRUE);
  gtk_label_set_max_width_chars (tells, 46);
  g_object_set_data (G_OBJECT (row), "kind", (gpointer) kind->id);
  return row;
}

static void
kind_heading (GtkListBoxRow *row, GtkListBoxRow *before, gpointer data)
{
  GtkWidget *label;

  (void) data;
  if (before != NULL && group_of_row (before) == group_of_row (row))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  label = gtk_label_new (titles[group_of_row (row)]);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "group-title");
  gtk_list_box_row_set_header (row, label);
}

/* --- finding -------------------------------------------------------------- */

/* The name counts from the start of a word, what is told of it anywhere. */
static gboolean
answers (const FpKind *kind, const char *typed)
{
  g_autofree char *wanted = g_utf8_casefold (typed, -1), *tells = g_utf8_casefold (kind->tells, -1);

  g_strstrip (wanted);
  return *wanted == '\0' || g_str_match_string (wanted, kind->label, TRUE) || strstr (tells, wanted) != NULL;
}

static gboolean
is_wanted (GtkListBoxRow *row, gpointer data)
{
  FpWindow *self = data;

  return answers (fp_kind_find (g_object_get_data (G_OBJECT (row), "kind")),
                  gtk_editable_get_text (GTK_EDITABLE (self->add_find)));
}

typedef enum { BY_BEGINNING, BY_WORD, BY_ANYTHING, N_WAYS } Way;

static gboolean
is_meant (const FpKind *kind, const char *typed, Way way)
{
  g_autofree char *wanted = g_utf8_casefold (typed, -1), *label = g_utf8_casefold (kind->label, -1);

  return way == BY_ANYTHING || (way == BY_WORD ? g_str_match_string (typed, kind->label, TRUE)
                                : g_str_has_prefix (label, g_strstrip (wanted)));
}

static GtkListBoxRow *
first_wanted (FpWindow *self, Way way)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->add_list), i)) != NULL; i++)
    {
      const FpKind *kind = fp_kind_find (g_object_get_data (G_OBJECT (row), "kind"));
      const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->add_find));

      if (gtk_widget_get_child_visible (GTK_WIDGET (row)) && is_meant (kind, typed, way))
        return row;
    }
  return NULL;
}

static void
on_find_changed (FpWindow *self)
{
  gtk_list_box_invalidate_filter (GTK_LIST_BOX (self->add_list));
}

/* Enter takes the first whose name was typed, "steps" before "footpace and steps"; with nothing typed, none. */
static void
on_find_activate (FpWindow *self)
{
  GtkListBoxRow *row = NULL;

  if (*gtk_editable_get_text (GTK_EDITABLE (self->add_find)) == '\0')
    return;
  for (Way way = BY_BEGINNING; row == NULL && way < N_WAYS; way++)
    row = first_wanted (self, way);
  if (row != NULL)
    on_kind (GTK_LIST_BOX (self->add_list), row, self);
}

static void
on_find_stop (FpWindow *self)
{
  gtk_popover_popdown (GTK_POPOVER (self->add_popover));
}

static void
on_popover_shown (FpWindow *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->add_find), "");
  gtk_widget_grab_focus (self->add_find);
}

void
fp_window_open_add_list (FpWindow *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->add_button));
}

/* Each time that it opens; the kinds are always the same. */
static void
fill (GtkMenuButton *button, gpointer data)
{
  FpWindow *self = data;
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  (void) button;
  if (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->add_list), 0) != NULL)
    return;
  for (guint group = 0; group < N_GROUPS; group++)
    for (guint i = 0; i < n; i++)
      if (group_of (kind[i]) == (Group) group)
        gtk_list_box_append (GTK_LIST_BOX (self->add_list), kind_row (kind[i]));
}

void
fp_window_add_add_list (FpWindow *self)
{
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->add_button), fill, self, NULL);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->add_list), kind_heading, NULL, NULL);
  gtk_list_box_set_filter_func (GTK_LIST_BOX (self->add_list), is_wanted, self, NULL);
  g_signal_connect (self->add_list, "row-activated", G_CALLBACK (on_kind), self);
  g_signal_connect_swapped (self->add_find, "search-changed", G_CALLBACK (on_find_changed), self);
  g_signal_connect_swapped (self->add_find, "activate", G_CALLBACK (on_find_activate), self);
  g_signal_connect_swapped (self->add_find, "stop-search", G_CALLBACK (on_find_stop), self);
  g_signal_connect_swapped (self->add_popover, "show", G_CALLBACK (on_popover_shown), self);
}
