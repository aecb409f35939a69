/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-help.c - every page of help can be shown, and says what it is */
#include "help-page.h"
#include "help-window.h"

#include "drawing-view.h"

#include "footpace/rules.h"

#include <cmark.h>
#include <string.h>

typedef struct { guint labels, pictures, empty; } Found;

static void
look_through (GtkWidget *widget, Found *found)
{
  if (GTK_IS_LABEL (widget))
    {
      found->labels++;
      found->empty += *gtk_label_get_text (GTK_LABEL (widget)) == 0 ? 1 : 0;
    }
  found->pictures += FP_IS_DRAWING_VIEW (widget) ? 1 : 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    look_through (child, found);
}

static void
on_link (const char *page, gpointer data)
{
  g_free (*(char **) data);
  *(char **) data = g_strdup (page);
}

static void
test_pages (void)
{
  for (const char *const *page = fp_help_pages (); *page != NULL; page++)
    {
      g_autoptr (GBytes) text = fp_help_text (*page);
      g_autofree char *title = NULL, *asked = NULL;
      GtkWidget *widget;
      Found found = { 0, 0, 0 };

      g_assert_nonnull (text);
      title = fp_help_page_title (g_bytes_get_data (text, NULL));
      g_assert_cmpstr (title, !=, "");
      widget = g_object_ref_sink (fp_help_page_new (g_bytes_get_data (text, NULL), on_link, &asked));
      look_through (widget, &found);
      g_assert_cmpuint (found.labels, >, 3);
      g_assert_cmpuint (found.empty, ==, 0);
      g_object_unref (widget);
    }
}

/* Every block and line of every page is of a sort that the page can show, every link leads to a page, every picture to a
 * sample. */
static void
test_nothing_left_out (void)
{
  for (const char *const *page = fp_help_pages (); *page != NULL; page++)
    {
      g_autoptr (GBytes) text = fp_help_text (*page);
      gsize length;
      const char *markdown = g_bytes_get_data (text, &length);
      cmark_node *root = cmark_parse_document (markdown, length, CMARK_OPT_DEFAULT);
      cmark_iter *iter = cmark_iter_new (root);

      while (cmark_iter_next (iter) != CMARK_EVENT_DONE)
        {
          cmark_node *node = cmark_iter_get_node (iter);
          const cmark_node_type type = cmark_node_get_type (node);

          g_assert_true (type != CMARK_NODE_BLOCK_QUOTE && type != CMARK_NODE_HTML_BLOCK
                         && type != CMARK_NODE_HTML_INLINE && type != CMARK_NODE_THEMATIC_BREAK);
          if (type == CMARK_NODE_LINK)
            g_assert_true (g_strv_contains (fp_help_pages (), cmark_node_get_url (node)));
          if (type == CMARK_NODE_IMAGE)
            {
              g_assert_true (g_str_has_prefix (cmark_node_get_url (node), "picture:parish/"));
              g_assert_cmpint (cmark_node_get_type (cmark_node_parent (node)), ==, CMARK_NODE_PARAGRAPH);
            }
        }
      cmark_iter_free (iter);
      cmark_node_free (root);
    }
}

static void
test_markup (void)
{
  g_autofree char *asked = NULL;
  GtkWidget *page = g_object_ref_sink (fp_help_page_new ("# A & B\n\nOne *two* [three](pastor) <tt>.\n\n3. x\n4. y\n"
                                                         "\n![p](picture:parish/plan)\n", on_link, &asked));
  GtkWidget *label = gtk_widget_get_first_child (page);
  gboolean handled = FALSE;
  Found found = { 0, 0, 0 };

  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (label)), ==, "A & B");
  label = gtk_widget_get_next_sibling (label);
  g_signal_emit_by_name (label, "activate-link", "pastor", &handled);
  g_assert_true (handled);
  g_assert_cmpstr (asked, ==, "pastor");
  label = gtk_widget_get_next_sibling (label);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (label)), ==, "3.  x");
  look_through (page, &found);
  g_assert_cmpuint (found.pictures, ==, 1);
  g_object_unref (page);
}

static void
test_window (void)
{
  GtkWidget *beside = gtk_window_new ();
  guint before = g_list_model_get_n_items (gtk_window_get_toplevels ());

  fp_help_show (GTK_WINDOW (beside), "pastor");
  fp_help_show (GTK_WINDOW (beside), "typing");
  g_assert_cmpuint (g_list_model_get_n_items (gtk_window_get_toplevels ()), ==, before + 1);
  gtk_window_destroy (GTK_WINDOW (beside));
}

/* The rulebook that the help shows can be copied out of it, and is one. */
static void
test_rulebook_shown (void)
{
  g_autoptr (GBytes) text = fp_help_text ("rulebooks");
  gsize length;
  const char *markdown = g_bytes_get_data (text, &length);
  cmark_node *root = cmark_parse_document (markdown, length, CMARK_OPT_DEFAULT);
  cmark_node *node = cmark_node_first_child (root);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpRulebook) book = NULL;
  guint n;

  while (node != NULL && cmark_node_get_type (node) != CMARK_NODE_CODE_BLOCK)
    node = cmark_node_next (node);
  g_assert_nonnull (node);
  book = fp_rulebook_parse (cmark_node_get_literal (node), strlen (cmark_node_get_literal (node)), "help", &error);
  g_assert_no_error (error);
  fp_rulebook_rules (book, &n);
  g_assert_cmpuint (n, ==, 2);
  cmark_node_free (root);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/help/pages", test_pages);
  g_test_add_func ("/help/nothing-left-out", test_nothing_left_out);
  g_test_add_func ("/help/markup", test_markup);
  g_test_add_func ("/help/window", test_window);
  g_test_add_func ("/help/rulebook-shown", test_rulebook_shown);
  return g_test_run ();
}
