/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "norm-row.h"

#include "footpace/error.h"
#include "footpace/limit-range.h"
#include "footpace/norms-edit.h"

#include <math.h>
#include <string.h>

struct _FpNormRow
{
  GtkBox        parent_instance;
  FpDocument   *document;
  FpRulebook   *book;
  const FpRule *rule;    /* of the book, as it is printed                    */
  gboolean      filling;
  char         *held;    /* what the fields show, for telling it from what comes */
  GtkWidget    *asked, *otherwise, *go_by, *low, *high, *reason, *error;
};

G_DEFINE_FINAL_TYPE (FpNormRow, fp_norm_row, GTK_TYPE_BOX)

static const FpProject *
project_of (FpNormRow *self)
{
  return fp_document_project (self->document);
}

static const FpNormChange *
change_of (FpNormRow *self)
{
  return fp_norms_change (fp_project_norms (project_of (self)), fp_rulebook_id (self->book), self->rule->id);
}

static gboolean
has_low (const FpRule *rule)
{
  return rule->test == FP_TEST_AT_LEAST || rule->test == FP_TEST_BETWEEN || rule->test == FP_TEST_EQUALS;
}

static gboolean
has_high (const FpRule *rule)
{
  return rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN;
}

/* --- what is done ------------------------------------------------------------------- */

static void
tell (FpNormRow *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->error), text);
  gtk_widget_set_visible (self->error, *text != '\0');
}

static void
take (FpNormRow *self, FpProject *next, const char *label, const GError *error)
{
  tell (self, error != NULL ? error->message : "");
  fp_document_edit (self->document, next, label, NULL);
}

static gboolean
is_yes_or_no (FpNormRow *self)
{
  return fp_measure_find (self->rule->measure)->type == FP_MEASURE_YES;
}

/* What a field says; NAN where it is empty. */
static gboolean
read_limit (FpNormRow *self, GtkWidget *entry, double *value, GError **error)
{
  g_autofree char *text = g_ascii_strdown (gtk_editable_get_text (GTK_EDITABLE (entry)), -1), *amiss = NULL;

  g_strstrip (text);
  *value = NAN;
  if (is_yes_or_no (self) && (strcmp (text, "yes") == 0 || strcmp (text, "no") == 0))
    *value = *text == 'y';
  else if (*text != '\0' && !fp_number_parse (text, value, error))
    return FALSE;
  amiss = fp_limit_amiss (fp_measure_find (self->rule->measure), self->rule->unit, *value);
  if (amiss == NULL)
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, is_yes_or_no (self) ? "Type yes or no." : amiss);
  return FALSE;
}

static void
hold (FpNormRow *self, gboolean aside)
{
  g_autofree char *reason = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->reason))));
  FpNormChange change = { fp_rulebook_id (self->book), self->rule->id, aside, NAN, NAN, reason };
  g_autoptr (GError) error = NULL;
  FpProject *next;

  if (*reason == '\0')
    {
      tell (self, "Say why: the reason is printed in the report.");
      gtk_widget_grab_focus (self->reason);
      return;
    }
  if (!aside && ((has_low (self->rule) && !read_limit (self, self->low, &change.low, &error))
                 || (has_high (self->rule) && !read_limit (self, self->high, &change.high, &error))))
    {
      tell (self, error->message);
      return;
    }
  if (!aside && isnan (change.low) && isnan (change.high))
    {
      tell (self, "Type the limit that the parish holds, or set the rule aside.");
      return;
    }
  next = fp_norms_hold_otherwise (project_of (self), &change, &error);
  take (self, next, aside ? "Set a rule aside" : "Hold a rule otherwise", error);
}

static void
on_hold (FpNormRow *self)
{
  hold (self, FALSE);
}

static void
on_aside (FpNormRow *self)
{
  hold (self, TRUE);
}

static void
on_printed (FpNormRow *self)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_norms_hold_as_printed (project_of (self), fp_rulebook_id (self->book), self->rule->id, &error);

  take (self, next, "Hold a rule as printed", error);
}

static void
on_go_by (FpNormRow *self)
{
  const FpNormChoice choice = { self->rule->matter, fp_rulebook_id (self->book), self->rule->id };
  const gboolean alone = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->go_by));
  g_autoptr (GError) error = NULL;
  FpProject *next;

  if (self->filling)
    return;
  next = alone ? fp_norms_go_by (project_of (self), &choice, &error)
               : fp_norms_go_by_all (project_of (self), self->rule->matter, &error);
  take (self, next, alone ? "Go by one source" : "Go by all sources", error);
}

/* --- what is shown --------------------------------------------------------------------- */

/* "Asked: at most 178 mm (7 in). Recommended. Now 152 mm: within." */
static char *
asked_words (FpNormRow *self, const FpFinding *finding)
{
  const char *weight = fp_weight_label (self->rule->weight);

  if (finding == NULL)
    return g_strdup_printf ("%c%s.", g_ascii_toupper (*weight), weight + 1);
  if (finding->found == FP_FOUND_SHORT || finding->found == FP_FOUND_WITHIN)
    return g_strdup_printf ("Asked: %s. %c%s. Measured: %s, %s.", finding->limit, g_ascii_toupper (*weight), weight + 1,
                            finding->measured, finding->found == FP_FOUND_SHORT ? "which is short" : "which is within");
  return g_strdup_printf ("Asked: %s. %c%s. Not checked: %s.", finding->limit, g_ascii_toupper (*weight), weight + 1,
                          finding->detail != NULL ? finding->detail : "sight is still being computed");
}

static char *
limit_words (FpNormRow *self, double value)
{
  return isnan (value) ? g_strdup ("") : is_yes_or_no (self) ? g_strdup (value > 0 ? "yes" : "no") : fp_number_format (value);
}

static void
fill_limit (FpNormRow *self, GtkWidget *entry, double value)
{
  g_autofree char *text = limit_words (self, value);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

/* Filled only when something else is held than before: what is being typed stays while checks come in. */
static void
show_change (FpNormRow *self)
{
  const FpNormChange *change = change_of (self);
  g_autofree char *held = change == NULL ? g_strdup ("")
                          : g_strdup_printf ("%d %.17g %.17g %s", change->aside, change->low, change->high, change->reason);

  if (g_strcmp0 (held, self->held) == 0)
    return;
  g_free (self->held);
  self->held = g_steal_pointer (&held);

  fill_limit (self, self->low, change != NULL && !change->aside ? change->low : NAN);
  fill_limit (self, self->high, change != NULL && !change->aside ? change->high : NAN);
  gtk_editable_set_text (GTK_EDITABLE (self->reason), change != NULL ? change->reason : "");
}

static gboolean
is_gone_by (FpNormRow *self)
{
  const FpNormChoice *choice
    = self->rule->matter != NULL ? fp_norms_choice (fp_project_norms (project_of (self)), self->rule->matter) : NULL;

  return choice != NULL && strcmp (choice->rule, self->rule->id) == 0 && strcmp (choice->book, fp_rulebook_id (self->book)) == 0;
}

void
fp_norm_row_show (FpNormRow *self, const FpFinding *finding)
{
  g_autofree char *asked = asked_words (self, finding);
  const char *otherwise = finding != NULL ? finding->otherwise : NULL;

  self->filling = TRUE;
  gtk_label_set_text (GTK_LABEL (self->asked), asked);
  gtk_label_set_text (GTK_LABEL (self->otherwise), otherwise != NULL ? otherwise : "");
  gtk_widget_set_visible (self->otherwise, otherwise != NULL);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->go_by), is_gone_by (self));
  show_change (self);
  self->filling = FALSE;
}

const char *
fp_norm_row_rule (FpNormRow *self)
{
  return self->rule->id;
}

/* --- made -------------------------------------------------------------------------------- */

static GtkWidget *
add_label (GtkWidget *box, const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static GtkWidget *
add_field (GtkWidget *grid, int row, const char *name, gboolean shown)
{
  GtkWidget *label = gtk_label_new (name), *entry = gtk_entry_new ();

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (GTK_GRID (grid), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), entry, 1, row, 1, 1);
  gtk_widget_set_visible (label, shown);
  gtk_widget_set_visible (entry, shown);
  return entry;
}

static void
add_button (GtkWidget *box, const char *label, const char *about, GCallback pressed, FpNormRow *self)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, about);
  g_signal_connect_swapped (button, "clicked", pressed, self);
  gtk_box_append (GTK_BOX (box), button);
}

/* With what is printed in it, until something is typed. */
static GtkWidget *
add_limit (FpNormRow *self, GtkWidget *grid, int row, const char *name, gboolean shown, double printed)
{
  GtkWidget *entry = add_field (grid, row, name, shown);
  g_autofree char *words = limit_words (self, printed);

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), words);
  return entry;
}

static char *
limit_name (FpNormRow *self, const char *which)
{
  if (is_yes_or_no (self))
    return g_strdup ("Yes or no");
  return *self->rule->unit != '\0' ? g_strdup_printf ("%s (%s)", which, self->rule->unit) : g_strdup (which);
}

static GtkWidget *
make_form (FpNormRow *self)
{
  GtkWidget *form = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *grid = gtk_grid_new (), *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *low = limit_name (self, self->rule->test == FP_TEST_EQUALS ? "Exactly" : "At least"), *high = limit_name (self, "At most");

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  self->low = add_limit (self, grid, 0, low, has_low (self->rule), self->rule->low);
  self->high = add_limit (self, grid, 1, high, has_high (self->rule), self->rule->high);
  self->reason = add_field (grid, 2, "Reason", TRUE);
  gtk_box_append (GTK_BOX (form), grid);
  if (has_low (self->rule) || has_high (self->rule))
    add_button (buttons, "Hold So", "Hold this limit in the place of the printed one", G_CALLBACK (on_hold), self);
  add_button (buttons, "Set Aside", "Do not hold this rule", G_CALLBACK (on_aside), self);
  add_button (buttons, "As Printed", "Take back what was said of this rule", G_CALLBACK (on_printed), self);
  gtk_box_append (GTK_BOX (form), buttons);
  self->error = add_label (form, "", "error");
  gtk_widget_hide (self->error);
  return form;
}

static void
fp_norm_row_dispose (GObject *object)
{
  FpNormRow *self = FP_NORM_ROW (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->book, fp_rulebook_unref);
  g_clear_pointer (&self->held, g_free);
  G_OBJECT_CLASS (fp_norm_row_parent_class)->dispose (object);
}

static void
fp_norm_row_class_init (FpNormRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fp_norm_row_dispose;
}

static void
fp_norm_row_init (FpNormRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
  gtk_widget_add_css_class (GTK_WIDGET (self), "section");
}

GtkWidget *
fp_norm_row_new (FpDocument *document, FpRulebook *book, const FpRule *rule)
{
  FpNormRow *self = g_object_new (FP_TYPE_NORM_ROW, NULL);
  GtkWidget *expander = gtk_expander_new ("Hold otherwise");

  self->document = g_object_ref (document);
  self->book = fp_rulebook_ref (book);
  self->rule = rule;
  /* What is measured, not the title, which is a fault that there may not be. */
  add_label (GTK_WIDGET (self), fp_measure_find (rule->measure)->label, "section-title");
  self->asked = add_label (GTK_WIDGET (self), "", NULL);
  add_label (GTK_WIDGET (self), rule->source, "caption");
  self->otherwise = add_label (GTK_WIDGET (self), "", "caption-heading");
  self->go_by = gtk_check_button_new_with_label ("Printed sources disagree: go by this one alone");
  gtk_widget_set_visible (self->go_by, rule->matter != NULL);
  g_signal_connect_swapped (self->go_by, "toggled", G_CALLBACK (on_go_by), self);
  gtk_box_append (GTK_BOX (self), self->go_by);
  gtk_expander_set_child (GTK_EXPANDER (expander), make_form (self));
  gtk_box_append (GTK_BOX (self), expander);
  return GTK_WIDGET (self);
}
