/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bill-line.h"

#include "compat-4-8.h"

struct _FpBillLine
{
  GObject parent_instance;
  FpBill *bill;
  guint   row;
};

G_DEFINE_FINAL_TYPE (FpBillLine, fp_bill_line, G_TYPE_OBJECT)

static void
fp_bill_line_finalize (GObject *object)
{
  fp_bill_unref (FP_BILL_LINE (object)->bill);
  G_OBJECT_CLASS (fp_bill_line_parent_class)->finalize (object);
}

static void
fp_bill_line_class_init (FpBillLineClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fp_bill_line_finalize;
}

static void
fp_bill_line_init (FpBillLine *self)
{
  (void) self;
}

FpBillLine *
fp_bill_line_new (FpBill *bill, guint row)
{
  FpBillLine *self = g_object_new (FP_TYPE_BILL_LINE, NULL);

  self->bill = fp_bill_ref (bill);
  self->row = row;
  return self;
}

FpBill *
fp_bill_line_bill (FpBillLine *self)
{
  return self->bill;
}

const FpBillRow *
fp_bill_line_row (FpBillLine *self)
{
  return &g_array_index (fp_bill_rows (self->bill), FpBillRow, self->row);
}

char *
fp_bill_line_key (FpBillLine *self)
{
  const FpBillRow *row = fp_bill_line_row (self);

  return g_strdup_printf ("%s/%s/%s/%d/%.1f", fp_item_id (row->placed->item), row->what, row->where != NULL ? row->where : "",
                          (int) row->type, row->size.x);
}

/* --- columns -------------------------------------------------------------------- */

/* Before those of a bill. */
enum { OF_WORK = -2, OF_HEADING = -1 };

/* What is priced comes before the columns that a narrow window may leave beyond its edge. */
static const int columns[]
  = { OF_WORK, FP_BILL_THING, FP_BILL_WHAT, FP_BILL_PIECES, FP_BILL_SIZE, FP_BILL_AMOUNT, FP_BILL_RATE, FP_BILL_COST, FP_BILL_MASS,
      FP_BILL_EACH, FP_BILL_VOLUME, FP_BILL_HOURS, FP_BILL_MATERIAL, FP_BILL_MARKS, OF_HEADING };
G_STATIC_ASSERT (G_N_ELEMENTS (columns) == FP_N_BILL_COLUMNS + 2);

static const char *
title_of (int column)
{
  return column == OF_WORK ? "Work" : column == OF_HEADING ? "Heading" : fp_bill_column_head ((FpBillColumn) column);
}

static char *
text_of (FpBillLine *line, int column)
{
  const FpBillRow *row = fp_bill_line_row (line);

  if (column == OF_WORK)
    return g_strdup (fp_work_label (row->work));
  if (column == OF_HEADING)
    return g_strdup (fp_heading_label (row->heading));
  return fp_bill_cell (line->bill, row, (FpBillColumn) column);
}

static gboolean
is_words (int column)
{
  return column <= FP_BILL_MATERIAL;
}

/* Words may be cut, but not so short that they cannot be told apart. */
static int
least_chars (int column)
{
  switch (column)
    {
    case OF_HEADING: return 10;
    case FP_BILL_THING: return 13;
    case FP_BILL_WHAT: return 20;
    default: return 0;
    }
}

static void
on_setup (gpointer column, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), is_words (GPOINTER_TO_INT (column)) ? 0.0f : 1.0f);
  if (least_chars (GPOINTER_TO_INT (column)) > 0)
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), least_chars (GPOINTER_TO_INT (column)));
    }
  gtk_list_item_set_child (item, label);
}

static void
on_bind (gpointer column, GtkListItem *item)
{
  GtkWidget *label = gtk_list_item_get_child (item);
  g_autofree char *text = text_of (gtk_list_item_get_item (item), GPOINTER_TO_INT (column));

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, is_words (GPOINTER_TO_INT (column)) ? text : NULL);
  if (GPOINTER_TO_INT (column) == FP_BILL_WHAT)
    fp_name_list_row (label, text);
}

static void
add_column (GtkColumnView *view, int column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) shown = gtk_column_view_column_new (title_of (column), factory);

  g_signal_connect_data (factory, "setup", G_CALLBACK (on_setup), GINT_TO_POINTER (column), NULL, G_CONNECT_SWAPPED);
  g_signal_connect_data (factory, "bind", G_CALLBACK (on_bind), GINT_TO_POINTER (column), NULL, G_CONNECT_SWAPPED);
  gtk_column_view_column_set_resizable (shown, TRUE);
  gtk_column_view_column_set_expand (shown, column == FP_BILL_WHAT);
  gtk_column_view_append_column (view, shown);
}

void
fp_bill_line_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    add_column (view, columns[i]);
}

static gboolean
has_any (GListModel *lines, int column)
{
  const guint n = g_list_model_get_n_items (lines);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (FpBillLine) line = g_list_model_get_item (lines, i);
      g_autofree char *text = text_of (line, column);

      if (*text != '\0')
        return TRUE;
    }
  return FALSE;
}

void
fp_bill_line_show_columns (GtkColumnView *view, GListModel *lines)
{
  GListModel *shown = gtk_column_view_get_columns (view);

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (shown, i);

      gtk_column_view_column_set_visible (column, is_words (columns[i]) || has_any (lines, columns[i]));
    }
}
