/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare-page.h"

#include "drawing-view.h"
#include "latest.h"
#include "pew-strip.h"
#include "small-drawing.h"

#define GRACE_MS 2000

struct _FpComparePage
{
  GtkWidget        parent_instance;
  FpDocument      *document;
  FpLatest        *latest;
  const FpProject *compared; /* owned */
  gboolean         shown;

  GtkWidget       *stack, *grid;
};

G_DEFINE_FINAL_TYPE (FpComparePage, fp_compare_page, GTK_TYPE_WIDGET)

/* --- computing ------------------------------------------------------------ */

typedef struct
{
  FpComparison *comparison, *moments;
  FpOverview   *overview;
  FpPewStrip   *pews;
} Compared;

static void
compared_free (gpointer data)
{
  Compared *self = data;

  g_clear_pointer (&self->comparison, fp_comparison_free);
  g_clear_pointer (&self->moments, fp_comparison_free);
  g_clear_pointer (&self->overview, fp_overview_free);
  g_clear_pointer (&self->pews, fp_pew_strip_free);
  g_free (self);
}

static FpComparison *
compare (const FpProject *project, GCancellable *cancel)
{
  guint n = fp_project_n_alternatives (project), found = 0;
  g_autofree FpFindings **findings = g_new0 (FpFindings *, n);
  FpComparison *comparison = NULL;

  while (found < n && (findings[found] = fp_findings_of (project, found, NULL, cancel)) != NULL)
    found++;
  if (found == n)
    comparison = fp_comparison_new (findings, n);
  for (guint i = 0; i < found; i++)
    fp_findings_unref (findings[i]);
  return comparison;
}

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  GCancellable *cancel = fp_latest_job_cancellable (job);
  Compared *result = g_new0 (Compared, 1);

  (void) data;
  result->overview = fp_overview_new (request, TRUE, NULL, cancel);
  if (result->overview != NULL)
    result->comparison = compare (request, cancel);
  if (result->comparison != NULL)
    result->moments = fp_comparison_by_moment (result->comparison);
  if (result->moments != NULL)
    result->pews = fp_pew_strip_new (request, cancel);
  if (result->pews != NULL)
    fp_latest_job_post (job, result);
  else
    compared_free (result);
}

/* --- showing -------------------------------------------------------------- */

static GtkWidget *
attach_label (FpComparePage *self, const char *text, int column, int row, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), column == 0 ? 22 : 18);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 26);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_grid_attach (GTK_GRID (self->grid), label, column, row, 1, 1);
  return label;
}

static GtkWidget *
attach_picture (FpComparePage *self, FpDrawing *drawing, const char *what, const char *head, int column, int row)
{
  g_autofree char *name = g_strdup_printf ("%s: %s", what, head);
  GtkWidget *picture = fp_drawing_view_new (name);
  double w = fp_drawing_width (drawing), h = fp_drawing_height (drawing);

  fp_drawing_view_set (FP_DRAWING_VIEW (picture), drawing, FALSE);
  fp_drawing_view_set_size (FP_DRAWING_VIEW (picture), 230, (int) (230.0 * h / w));
  gtk_widget_add_css_class (picture, "framed");
  gtk_grid_attach (GTK_GRID (self->grid), picture, column, row, 1, 1);
  return picture;
}

/* The signs and colours of the list of findings; the legend names them. */
static const struct { const char *sign, *css; } weights[FP_N_WEIGHTS] = {
  [FP_WEIGHT_REQUIRED] = { "◆ ", "required" },
  [FP_WEIGHT_RECOMMENDED] = { "○ ", "recommended" },
  [FP_WEIGHT_CUSTOMARY] = { "▬ ", "customary" },
};

/* What a mark says, under the pointer and read out. */
static void
tell_mark (GtkWidget *label, const char *cell, const char *what)
{
  g_autofree char *spoken = g_strdup_printf ("%s, %s", cell, what), *told = g_strdup (what);

  told[0] = g_ascii_toupper (told[0]);
  gtk_widget_set_tooltip_text (label, told);
  gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static void
attach_cell (FpComparePage *self, const FpComparison *comparison, guint row, guint column, int at)
{
  const gboolean is_short = fp_comparison_short (comparison, row, column);
  const gboolean is_best = fp_comparison_best (comparison, row, column);
  const char *cell = fp_comparison_cell (comparison, row, column);
  const FpWeight weight = fp_comparison_weight (comparison, row, column);
  g_autofree char *text = g_strconcat (is_short ? weights[weight].sign : "", cell, is_best ? " ▲" : "", NULL);
  g_autofree char *what = g_strdup_printf ("short of a limit of a rulebook: %s", fp_weight_label (weight));
  GtkWidget *label = attach_label (self, text, (int) column + 1, at, is_short ? "short" : "cell");

  if (is_short)
    {
      gtk_widget_add_css_class (label, weights[weight].css);
      tell_mark (label, cell, what);
    }
  else if (is_best)
    tell_mark (label, cell, "from most places of all alternatives");
  if (is_best)
    gtk_widget_add_css_class (label, "best");
}

/* Returns: the row after it */
static int
attach_table (FpComparePage *self, const FpComparison *comparison, int at)
{
  for (guint r = 0; r < fp_comparison_rows (comparison); r++, at++)
    {
      const gboolean heading = fp_comparison_is_heading (comparison, r);
      attach_label (self, fp_comparison_label (comparison, r), 0, at, heading ? "group-title" : "row-label");
      for (guint i = 0; i < fp_comparison_columns (comparison) && !heading; i++)
        attach_cell (self, comparison, r, i, at);
    }
  return at;
}

/* From the same place in every alternative, in a row; what is told of it is read out, and shown under the pointer. */
static void
attach_pews (FpComparePage *self, const FpPewStrip *pews, FpPewTypical from, guint columns, int row)
{
  attach_label (self, fp_pew_typical_label (from), 0, row, "group-title");
  for (guint i = 0; i < columns && i < pews->n; i++)
    {
      const FpPewSeenFrom *seen = fp_pew_strip_get (pews, i, from);
      if (seen->picture == NULL)
        attach_label (self, "no such place", (int) i + 1, row, "cell");
      else
        gtk_widget_set_tooltip_text (attach_picture (self, seen->picture, fp_pew_typical_label (from), seen->told,
                                                     (int) i + 1, row),
                                     seen->told);
    }
}

/* Under the table, which is what is decided by. */
static void
attach_strip (FpComparePage *self, const FpPewStrip *pews, guint columns, int row)
{
  attach_label (self, "View from the pew", 0, row++, "section-title");
  for (guint k = 0; k < FP_N_PEW_TYPICAL; k++)
    if (fp_pew_strip_has (pews, (FpPewTypical) k))
      attach_pews (self, pews, (FpPewTypical) k, columns, row++);
}

static void
fill (FpComparePage *self, const Compared *c)
{
  GtkWidget *child;
  const guint columns = fp_comparison_columns (c->comparison);
  int row;

  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  attach_label (self, "Elevation", 0, 1, "group-title");
  attach_label (self, "Plan", 0, 2, "group-title");
  for (guint i = 0; i < columns && i < c->overview->n; i++)
    {
      const char *head = fp_comparison_head (c->comparison, i);

      attach_label (self, head, (int) i + 1, 0, "section-title");
      attach_picture (self, c->overview->elevation[i], "Elevation", head, (int) i + 1, 1);
      attach_picture (self, c->overview->plan[i], "Plan", head, (int) i + 1, 2);
    }
  row = attach_table (self, c->comparison, 3);
  attach_label (self, "From how many places all of it is seen", 0, row++, "section-title");
  row = attach_table (self, c->moments, row);
  attach_strip (self, c->pews, columns, row);
}

static void
receive (gpointer result, gpointer data)
{
  FpComparePage *self = data;

  fill (self, result);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "table");
}

static const FpLatestWork comparing = {
  run, receive, (GDestroyNotify) fp_project_unref, compared_free, GRACE_MS, 0
};

static void
update (FpComparePage *self)
{
  const FpProject *project = self->document != NULL ? fp_document_project (self->document) : NULL;

  if (!self->shown || project == NULL || project == self->compared || fp_document_is_previewing (self->document))
    return;
  g_clear_pointer (&self->compared, fp_project_unref);
  self->compared = fp_project_ref (project);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "busy");
  fp_latest_ask (self->latest, (gpointer) fp_project_ref (project));
}

void
fp_compare_page_set_shown (FpComparePage *self, gboolean shown)
{
  self->shown = shown;
  update (self);
}

void
fp_compare_page_set_document (FpComparePage *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_clear_pointer (&self->latest, fp_latest_free);
  g_clear_pointer (&self->compared, fp_project_unref);
  if (document == NULL)
    return;
  self->latest = fp_latest_new ("compare", &comparing, self);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (update), self);
  update (self);
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_compare_page_dispose (GObject *object)
{
  FpComparePage *self = FP_COMPARE_PAGE (object);
  GtkWidget *child;

  fp_compare_page_set_document (self, NULL);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_compare_page_parent_class)->dispose (object);
}

static void
fp_compare_page_class_init (FpComparePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_compare_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "compare");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/compare-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FpComparePage, stack);
  gtk_widget_class_bind_template_child (widget_class, FpComparePage, grid);
}

static void
fp_compare_page_init (FpComparePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fp_compare_page_new (void)
{
  return g_object_new (FP_TYPE_COMPARE_PAGE, NULL);
}
