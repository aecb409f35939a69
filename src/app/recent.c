/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recent.h"

#include "two-lines.h"

#define MIME_TYPE  "application/x-footpace+xml"
#define RECENT_MAX 8

void
fp_recent_remember (const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  GtkRecentData data = {
    .mime_type = (char *) MIME_TYPE, .app_name = (char *) "Footpace", .app_exec = (char *) "footpace %f"
  };

  if (uri != NULL)
    gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static gboolean
is_project (GtkRecentInfo *info)
{
  return g_str_has_suffix (gtk_recent_info_get_uri (info), ".footpace") && gtk_recent_info_exists (info);
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *) b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *) a));
}

static GtkWidget *
recent_row (GtkRecentInfo *info)
{
  g_autofree char *path = g_filename_from_uri (gtk_recent_info_get_uri (info), NULL, NULL);
  g_autofree char *base = path != NULL ? g_path_get_basename (path) : NULL;
  g_autofree char *dir = path != NULL ? g_path_get_dirname (path) : NULL;
  GtkLabel *folder;
  GtkWidget *row;

  if (path == NULL)
    return NULL;
  row = fp_two_lines_new (base, dir, &folder);
  gtk_label_set_ellipsize (folder, PANGO_ELLIPSIZE_START);
  gtk_label_set_max_width_chars (folder, 44);
  g_object_set_data_full (G_OBJECT (row), "path", g_strdup (path), g_free);
  return row;
}

guint
fp_recent_fill (GtkWidget *list)
{
  GList *items = g_list_sort (gtk_recent_manager_get_items (gtk_recent_manager_get_default ()), newest_first);
  GtkListBoxRow *old;
  guint n = 0;

  while ((old = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (list), GTK_WIDGET (old));
  for (GList *l = items; l != NULL && n < RECENT_MAX; l = l->next)
    {
      GtkWidget *row = is_project (l->data) ? recent_row (l->data) : NULL;

      if (row == NULL)
        continue;
      gtk_list_box_append (GTK_LIST_BOX (list), row);
      n++;
    }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
  return n;
}

const char *
fp_recent_path (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "path");
}
