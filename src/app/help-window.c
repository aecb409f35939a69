/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "help-window.h"

#include "help-page.h"
#include "text-dialog.h"

#define RESOURCES "/org/footpace/Footpace/help/"

static const char *const pages[] = { "start", "architect", "pastor", "committee", "sacristan", "parish", "typing", "rulebooks", "safety", NULL };

typedef struct
{
  GtkWidget *window, *list, *stack;
} Help;

const char *const *
fp_help_pages (void)
{
  return pages;
}

GBytes *
fp_help_text (const char *page)
{
  g_autofree char *path = g_strconcat (RESOURCES, page, ".md", NULL);

  return g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
}

/* --- going from page to page ---------------------------------------------- */

static int
index_of (const char *page)
{
  for (int i = 0; pages[i] != NULL; i++)
    if (g_strcmp0 (pages[i], page) == 0)
      return i;
  return -1;
}

static void
on_link (const char *page, gpointer data)
{
  Help *help = data;
  const int index = index_of (page);

  if (index >= 0)
    gtk_list_box_select_row (GTK_LIST_BOX (help->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (help->list), index));
}

/* Made when it is first shown: its pictures take a moment. */
static void
show_page (Help *help, const char *page)
{
  if (gtk_stack_get_child_by_name (GTK_STACK (help->stack), page) == NULL)
    {
      g_autoptr (GBytes) text = fp_help_text (page);
      GtkWidget *scrolled = gtk_scrolled_window_new ();

      gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
      gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled),
                                     fp_help_page_new (g_bytes_get_data (text, NULL), on_link, help));
      gtk_stack_add_named (GTK_STACK (help->stack), scrolled, page);
    }
  gtk_stack_set_visible_child_name (GTK_STACK (help->stack), page);
}

static void
on_row (GtkListBox *list, GtkListBoxRow *row, Help *help)
{
  (void) list;
  if (row != NULL)
    show_page (help, pages[gtk_list_box_row_get_index (row)]);
}

/* --- the window ----------------------------------------------------------- */

static void
fill_list (Help *help)
{
  for (guint i = 0; pages[i] != NULL; i++)
    {
      g_autoptr (GBytes) text = fp_help_text (pages[i]);
      g_autofree char *title = fp_help_page_title (g_bytes_get_data (text, NULL));
      GtkWidget *label = gtk_label_new (title);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_list_box_append (GTK_LIST_BOX (help->list), label);
    }
}

static GtkWidget *
help_window_new (void)
{
  Help *help = g_new (Help, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  help->window = gtk_window_new ();
  help->list = gtk_list_box_new ();
  help->stack = gtk_stack_new ();
  gtk_window_set_title (GTK_WINDOW (help->window), "Help");
  gtk_window_set_default_size (GTK_WINDOW (help->window), 860, 680);
  gtk_widget_add_css_class (help->list, "plain");
  gtk_widget_add_css_class (help->list, "section");
  gtk_widget_set_size_request (help->list, 190, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (help->list), GTK_ACCESSIBLE_PROPERTY_LABEL, "Pages of help", -1);
  gtk_widget_set_hexpand (help->stack, TRUE);
  gtk_box_append (GTK_BOX (box), help->list);
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (box), help->stack);
  gtk_window_set_child (GTK_WINDOW (help->window), box);
  g_object_set_data_full (G_OBJECT (help->window), "help", help, g_free);
  fp_close_on_escape (GTK_WINDOW (help->window));
  fill_list (help);
  g_signal_connect (help->list, "row-selected", G_CALLBACK (on_row), help);
  return help->window;
}

void
fp_help_show (GtkWindow *beside, const char *page)
{
  static GtkWidget *window;
  Help *help;

  if (window == NULL)
    {
      window = help_window_new ();
      g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
      gtk_window_set_transient_for (GTK_WINDOW (window), beside);
      gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
      on_link (page != NULL ? page : pages[0], g_object_get_data (G_OBJECT (window), "help"));
    }
  help = g_object_get_data (G_OBJECT (window), "help");
  if (page != NULL)
    on_link (page, help);
  gtk_window_present (GTK_WINDOW (window));
}
