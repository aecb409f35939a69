/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "norms-window.h"

#include "compat-4-8.h"
#include "norm-book.h"
#include "norm-row.h"
#include "undo-keys.h"

#include "footpace/norms-edit.h"

#include <string.h>

#define BOOK "fp-book" /* of a row in the list of books: its FpRulebook, owned  */

struct _FpNormsWindow
{
  GtkWindow   parent_instance;
  FpDocument *document;
  GPtrArray  *books;    /* of FpRulebook: as they are listed                 */
  gboolean    filling;
  GtkWidget  *law, *list, *heading, *edition, *rules, *amiss, *remove, *state;
};

G_DEFINE_FINAL_TYPE (FpNormsWindow, fp_norms_window, GTK_TYPE_WINDOW)

static const FpProject *
project_of (FpNormsWindow *self)
{
  return fp_document_project (self->document);
}

static void
tell (FpNormsWindow *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->state), text);
  gtk_widget_set_visible (self->state, *text != '\0');
}

static gboolean
take (FpNormsWindow *self, FpProject *next, const char *label, const GError *error)
{
  tell (self, error != NULL ? error->message : "");
  return fp_document_edit (self->document, next, label, NULL);
}

/* --- the rules of the chosen book ------------------------------------------------------- */

static FpRulebook *
book_chosen (FpNormsWindow *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  return row != NULL ? g_object_get_data (G_OBJECT (row), BOOK) : NULL;
}

static const FpFinding *
finding_of (FpNormsWindow *self, const FpRulebook *book, const char *rule)
{
  const FpFindings *findings = fp_document_findings (self->document);
  guint n = 0;
  const FpFinding *finding = findings != NULL ? fp_findings_get (findings, &n) : NULL;

  for (guint i = 0; i < n; i++)
    if (strcmp (finding[i].rule->id, rule) == 0 && strcmp (fp_rulebook_id (finding[i].book), fp_rulebook_id (book)) == 0)
      return &finding[i];
  return NULL;
}

static void
show_rules (FpNormsWindow *self)
{
  const FpRulebook *book = book_chosen (self);

  for (GtkWidget *row = gtk_widget_get_first_child (self->rules); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (book != NULL && FP_IS_NORM_ROW (row))
      fp_norm_row_show (FP_NORM_ROW (row), finding_of (self, book, fp_norm_row_rule (FP_NORM_ROW (row))));
}

/* NULL: it is built in. */
static const char *
own_name (FpNormsWindow *self, const FpRulebook *book)
{
  return book != NULL ? fp_rulebook_own_name (project_of (self), book) : NULL;
}

static void
on_book (FpNormsWindow *self)
{
  FpRulebook *book = book_chosen (self);
  guint n = 0;
  const FpRule *rule = book != NULL ? fp_rulebook_rules (book, &n) : NULL;
  GtkWidget *child;

  if (self->filling || self->document == NULL) /* as the window goes, its rows go one by one */
    return;
  while ((child = gtk_widget_get_first_child (self->rules)) != NULL)
    gtk_box_remove (GTK_BOX (self->rules), child);
  gtk_label_set_text (GTK_LABEL (self->heading), book != NULL ? fp_rulebook_title (book) : "");
  gtk_label_set_text (GTK_LABEL (self->edition), book != NULL ? fp_rulebook_edition (book) : "");
  gtk_widget_set_sensitive (self->remove, own_name (self, book) != NULL);
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        gtk_box_append (GTK_BOX (self->rules), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
      gtk_box_append (GTK_BOX (self->rules), fp_norm_row_new (self->document, book, &rule[i]));
    }
  show_rules (self);
}

/* --- the books ---------------------------------------------------------------------------- */

static void
on_followed (GtkCheckButton *check, gpointer data)
{
  FpNormsWindow *self = data;
  const FpRulebook *book = g_object_get_data (G_OBJECT (check), BOOK);
  const gboolean followed = gtk_check_button_get_active (check);
  g_autoptr (GError) error = NULL;

  if (!self->filling)
    take (self, fp_norms_set_followed (project_of (self), fp_rulebook_id (book), followed, &error),
          followed ? "Follow a rulebook" : "Do not follow a rulebook", error);
}

static GtkWidget *
make_book_row (FpNormsWindow *self, FpRulebook *book)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *check = gtk_check_button_new (), *label = gtk_label_new (NULL);
  g_autofree char *name = g_strdup_printf ("Follow “%s”", fp_rulebook_title (book)), *text = NULL;
  guint n;

  fp_rulebook_rules (book, &n);
  text = g_strdup_printf ("%s\n%u rule%s", fp_rulebook_title (book), n, n == 1 ? "" : "s");
  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), fp_norms_follow (fp_project_norms (project_of (self)), fp_rulebook_id (book)));
  gtk_widget_set_tooltip_text (check, name);
  gtk_widget_set_valign (check, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data_full (G_OBJECT (check), BOOK, fp_rulebook_ref (book), (GDestroyNotify) fp_rulebook_unref);
  g_signal_connect (check, "toggled", G_CALLBACK (on_followed), self);
  gtk_box_append (GTK_BOX (box), check);
  gtk_box_append (GTK_BOX (box), label);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), BOOK, fp_rulebook_ref (book), (GDestroyNotify) fp_rulebook_unref);
  return row;
}

static void
choose_book (FpNormsWindow *self, const char *id)
{
  for (int i = 0; TRUE; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i);

      if (row == NULL)
        break;
      if (g_strcmp0 (fp_rulebook_id (g_object_get_data (G_OBJECT (row), BOOK)), id) == 0)
        {
          gtk_list_box_select_row (GTK_LIST_BOX (self->list), row);
          return;
        }
    }
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0));
}

static gboolean
are_the_same (const GPtrArray *a, const GPtrArray *b)
{
  if (a == NULL || a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (a->pdata[i] != b->pdata[i])
      return FALSE;
  return TRUE;
}

/* Made anew only where there are other books, so that place and focus stay. */
static void
fill_books (FpNormsWindow *self)
{
  GPtrArray *books = fp_rulebooks_for (project_of (self), NULL);
  FpRulebook *before = book_chosen (self);
  g_autofree char *chosen = before != NULL ? g_strdup (fp_rulebook_id (before)) : NULL;

  if (are_the_same (self->books, books))
    {
      g_ptr_array_unref (books);
      return;
    }
  self->filling = TRUE;
  for (GtkListBoxRow *row; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0)) != NULL;)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row));
  for (guint i = 0; i < books->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list), make_book_row (self, books->pdata[i]));
  g_clear_pointer (&self->books, g_ptr_array_unref);
  self->books = books;
  self->filling = FALSE;
  choose_book (self, chosen);
  on_book (self);
}

static void
show_followed (FpNormsWindow *self)
{
  for (int i = 0; TRUE; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i);
      GtkWidget *check = row != NULL ? gtk_widget_get_first_child (gtk_list_box_row_get_child (row)) : NULL;

      if (row == NULL)
        return;
      gtk_check_button_set_active (GTK_CHECK_BUTTON (check),
                                   fp_norms_follow (fp_project_norms (project_of (self)),
                                                    fp_rulebook_id (g_object_get_data (G_OBJECT (row), BOOK))));
    }
}

static void
show_amiss (FpNormsWindow *self)
{
  const FpFindings *findings = fp_document_findings (self->document);
  const GPtrArray *amiss = findings != NULL ? fp_findings_amiss (findings) : NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; amiss != NULL && i < amiss->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *) amiss->pdata[i]);
  gtk_label_set_text (GTK_LABEL (self->amiss), text->str);
  gtk_widget_set_visible (self->amiss, text->len > 0);
}

static void
show (FpNormsWindow *self)
{
  fill_books (self);
  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->law), fp_project_norms (project_of (self))->jurisdiction);
  show_followed (self);
  self->filling = FALSE;
  show_amiss (self);
  show_rules (self);
}

static void
on_law (FpNormsWindow *self)
{
  const FpJurisdiction one = (FpJurisdiction) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->law));
  g_autoptr (GError) error = NULL;

  if (!self->filling && self->document != NULL && one != fp_project_norms (project_of (self))->jurisdiction)
    take (self, fp_norms_set_jurisdiction (project_of (self), one, &error), "Whose law", error);
}

/* --- books of the project's own ------------------------------------------------------------- */

static void
on_file (GFile *file, gpointer data)
{
  g_autoptr (FpNormsWindow) self = data;
  g_autofree char *xml = NULL, *path = file != NULL ? g_file_get_path (file) : NULL, *name = NULL, *said = NULL;
  g_autoptr (GError) error = NULL;
  FpProject *next;

  if (path == NULL || self->document == NULL)
    return;
  name = g_filename_display_basename (path);
  if (!g_file_get_contents (path, &xml, NULL, &error))
    {
      tell (self, error->message);
      return;
    }
  next = fp_norm_book_add (project_of (self), name, xml, &said, &error);
  if (!take (self, next, said != NULL ? "Replace a rulebook" : "Add a rulebook", error))
    return;
  show (self);
  if (said != NULL)
    tell (self, said);
}

static void
add_book (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpNormsWindow *self = FP_NORMS_WINDOW (widget);
  const FpFileQuestion question = { .title = "Add a Rulebook", .accept = "_Add", .filter_name = "Rulebooks", .filter_suffix = "xml" };

  (void) action, (void) parameter;
  fp_ask_file (GTK_WINDOW (self), &question, on_file, g_object_ref (self));
}

static void
remove_book (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpNormsWindow *self = FP_NORMS_WINDOW (widget);
  const char *name = own_name (self, book_chosen (self));
  g_autoptr (GError) error = NULL;

  (void) action, (void) parameter;
  if (name != NULL && take (self, fp_norms_remove_book (project_of (self), name, &error), "Remove a rulebook", error))
    show (self);
}

static void
step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpNormsWindow *self = FP_NORMS_WINDOW (widget);

  (void) parameter;
  if (strcmp (action, "norms.undo") == 0)
    fp_document_undo (self->document);
  else
    fp_document_redo (self->document);
}

/* --- made -------------------------------------------------------------------------------------- */

static void
fp_norms_window_dispose (GObject *object)
{
  FpNormsWindow *self = FP_NORMS_WINDOW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->books, g_ptr_array_unref);
  G_OBJECT_CLASS (fp_norms_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (c, FpNormsWindow, name)

static void
fp_norms_window_class_init (FpNormsWindowClass *klass)
{
  GtkWidgetClass *c = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_norms_window_dispose;
  gtk_widget_class_set_template_from_resource (c, "/org/footpace/Footpace/norms-window.ui");
  BIND (law);
  BIND (list);
  BIND (heading);
  BIND (edition);
  BIND (rules);
  BIND (amiss);
  BIND (remove);
  BIND (state);
  gtk_widget_class_bind_template_callback (c, on_law);
  gtk_widget_class_bind_template_callback (c, on_book);
  gtk_widget_class_install_action (c, "norms.add", NULL, add_book);
  gtk_widget_class_install_action (c, "norms.remove", NULL, remove_book);
  gtk_widget_class_install_action (c, "norms.undo", NULL, step);
  gtk_widget_class_install_action (c, "norms.redo", NULL, step);
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "window.close", NULL);
}

#undef BIND

static void
fp_norms_window_init (FpNormsWindow *self)
{
  g_autoptr (GtkStringList) laws = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  fp_add_undo_keys (GTK_WIDGET (self), "norms.undo", "norms.redo");
  fp_name_buttons (GTK_WIDGET (self));
  for (guint i = 0; i < FP_N_JURISDICTIONS; i++)
    gtk_string_list_append (laws, fp_jurisdiction_label ((FpJurisdiction) i));
  self->filling = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->law), G_LIST_MODEL (laws));
  self->filling = FALSE;
}

GtkWidget *
fp_norms_window_new (GtkWindow *parent, FpDocument *document)
{
  FpNormsWindow *self = g_object_new (FP_TYPE_NORMS_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
