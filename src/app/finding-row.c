/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finding-row.h"

#include "tip.h"

#define BY_POINTER 1u
#define BY_FOCUS   2u

typedef struct
{
  GtkWidget *icon, *title, *measure, *detail, *sight, *source, *norms, *more, *caution;
  GtkWidget *offer, *head, *note; /* round what is offered                  */
  GtkWidget *each[FP_FINDINGS_OFFERS], *words[FP_FINDINGS_OFFERS], *button[FP_FINDINGS_OFFERS]; /* made when first needed */
  guint      under[FP_FINDINGS_OFFERS]; /* bits: the pointer, the focus is on it */
  FpFindingsList *list;
} Row;

/* --- what is offered ------------------------------------------------------- */

static GtkWidget *
text_line (GtkWidget *box, const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static void
add_offer (Row *row, GtkWidget *text)
{
  row->offer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_widget_add_css_class (row->offer, "offer");
  row->head = text_line (row->offer, "caption-heading");
  row->note = text_line (row->offer, "caption");
  gtk_box_append (GTK_BOX (text), row->offer);
}

static guint
number_of (GtkWidget *each)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (each), "offer"));
}

static void
on_wanted (GtkButton *button, Row *row)
{
  fp_findings_list_want (row->list, number_of (GTK_WIDGET (button)));
}

/* Neither the pointer that comes nor the focus that goes forgets the other. */
static void
point (Row *row, GtkWidget *each, guint by, gboolean on)
{
  const guint i = number_of (each);

  row->under[i] = on ? row->under[i] | by : row->under[i] & ~by;
  for (guint k = 0; k < FP_FINDINGS_OFFERS; k++)
    if (row->under[k] != 0)
      {
        fp_findings_list_point (row->list, k);
        return;
      }
  fp_findings_list_point (row->list, FP_FINDINGS_NO_OFFER);
}

static GtkWidget *
widget_of (gpointer controller)
{
  return gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
}

static void
on_pointer (Row *row, double x, double y, gpointer controller)
{
  (void) x, (void) y;
  point (row, widget_of (controller), BY_POINTER, TRUE);
}

static void
on_pointer_gone (Row *row, gpointer controller)
{
  point (row, widget_of (controller), BY_POINTER, FALSE);
}

static void
on_focus (Row *row, gpointer controller)
{
  point (row, widget_of (controller), BY_FOCUS, TRUE);
}

static void
on_focus_gone (Row *row, gpointer controller)
{
  point (row, widget_of (controller), BY_FOCUS, FALSE);
}

static void
follow_pointer (Row *row, GtkWidget *each)
{
  GtkEventController *motion = gtk_event_controller_motion_new (), *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (on_pointer), row);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_pointer_gone), row);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (on_focus), row);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_focus_gone), row);
  gtk_widget_add_controller (each, motion);
  gtk_widget_add_controller (each, focus);
}

static void
forget_pointer (Row *row)
{
  for (guint i = 0; i < FP_FINDINGS_OFFERS; i++)
    row->under[i] = 0;
}

static void
make_offer (Row *row, guint i)
{
  GtkWidget *each = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *button = gtk_button_new_with_label ("Make This Change");

  row->each[i] = each;
  row->words[i] = text_line (each, NULL);
  row->button[i] = button;
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), "offer", GUINT_TO_POINTER (i));
  g_object_set_data (G_OBJECT (each), "offer", GUINT_TO_POINTER (i));
  g_signal_connect (button, "clicked", G_CALLBACK (on_wanted), row);
  follow_pointer (row, each);
  gtk_box_append (GTK_BOX (each), button);
  gtk_box_append (GTK_BOX (row->offer), each);
  gtk_box_reorder_child_after (GTK_BOX (row->offer), row->note, each);
}

/* Several are told apart by what each says. */
static void
show_offer (Row *row, guint i, const char *words)
{
  g_autofree char *spoken = g_strdup_printf ("Make This Change: %s", words);

  gtk_label_set_text (GTK_LABEL (row->words[i]), words);
  gtk_widget_set_tooltip_text (row->button[i], words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->button[i]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, spoken, -1);
}

static void
show_offers (Row *row, const FpFindingOffers *offers)
{
  const guint n = offers->words != NULL ? MIN (g_strv_length ((char **) offers->words), FP_FINDINGS_OFFERS) : 0;

  gtk_label_set_text (GTK_LABEL (row->head), offers->head != NULL ? offers->head : "");
  gtk_widget_set_visible (row->head, offers->head != NULL);
  gtk_label_set_text (GTK_LABEL (row->note), offers->note != NULL ? offers->note : "");
  gtk_widget_set_visible (row->note, offers->note != NULL);
  for (guint i = 0; i < FP_FINDINGS_OFFERS; i++)
    {
      if (i < n && row->words[i] == NULL)
        make_offer (row, i);
      if (i < n)
        show_offer (row, i, offers->words[i]);
      if (row->words[i] == NULL)
        continue;
      if (i >= n)
        row->under[i] = 0;
      gtk_widget_set_visible (row->each[i], i < n);
    }
}

/* --- all of it -------------------------------------------------------------- */

/* Made when first needed; only what is about something to be seen has one. */
static void
show_sight (Row *row, gboolean shown)
{
  if (shown && row->sight == NULL)
    {
      row->sight = gtk_button_new_with_label ("Show in Sight");
      gtk_widget_add_css_class (row->sight, "small");
      gtk_widget_set_halign (row->sight, GTK_ALIGN_START);
      gtk_widget_set_tooltip_text (row->sight, "What every place sees of it, and the line of sight of the worst (Enter)");
      g_signal_connect_swapped (row->sight, "clicked", G_CALLBACK (fp_findings_list_follow), row->list);
      gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (row->detail)), row->sight, row->detail);
    }
  if (row->sight != NULL)
    gtk_widget_set_visible (row->sight, shown);
}

GtkWidget *
fp_finding_row_new (FpFindingsList *list)
{
  GtkWidget *list_row = gtk_list_box_row_new (), *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  Row *row = g_new0 (Row, 1);

  row->list = list;
  row->icon = gtk_image_new ();
  gtk_widget_set_valign (row->icon, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (line), row->icon);
  gtk_box_append (GTK_BOX (line), text);
  gtk_widget_set_hexpand (text, TRUE);
  row->title = text_line (text, "heading");
  row->measure = text_line (text, NULL);
  row->detail = text_line (text, NULL);
  add_offer (row, text);
  row->source = text_line (text, "caption");
  row->norms = text_line (text, "caption");
  row->more = text_line (text, "remedy");
  row->caution = text_line (text, "caution");
  gtk_widget_add_css_class (row->source, "dim-label");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (list_row), line);
  g_object_set_data_full (G_OBJECT (list_row), "row", row, g_free);
  return list_row;
}

static const char *const icons[FP_N_WEIGHTS] = {
  [FP_WEIGHT_REQUIRED] = "footpace-required-symbolic",
  [FP_WEIGHT_RECOMMENDED] = "footpace-recommended-symbolic",
  [FP_WEIGHT_CUSTOMARY] = "footpace-customary-symbolic",
};
static const char *const weight_css[FP_N_WEIGHTS] = {
  [FP_WEIGHT_REQUIRED] = "required",
  [FP_WEIGHT_RECOMMENDED] = "recommended",
  [FP_WEIGHT_CUSTOMARY] = "customary",
};

/* Where and why only of the one that is chosen: more of them are in view.  One line is no paragraph: the toolkit sets a
 * paragraph a dozen times, at as many widths, before it knows how much room it needs. */
static void
set_lines (GtkWidget *label, gboolean open, int lines)
{
  gtk_label_set_wrap (GTK_LABEL (label), open || lines > 1);
  gtk_label_set_lines (GTK_LABEL (label), open ? -1 : lines);
  gtk_label_set_ellipsize (GTK_LABEL (label), open ? PANGO_ELLIPSIZE_NONE : PANGO_ELLIPSIZE_END);
}

static void
set_line (GtkWidget *label, const char *text, gboolean visible)
{
  gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
  gtk_widget_set_visible (label, visible && text != NULL && *text != '\0');
}

/* Only where it changes: the toolkit measures all of a row anew that is given even the same icon again. */
static void
show_weight (GtkWidget *icon, FpWeight weight)
{
  if (g_strcmp0 (gtk_image_get_icon_name (GTK_IMAGE (icon)), icons[weight]) == 0)
    return;
  gtk_image_set_from_icon_name (GTK_IMAGE (icon), icons[weight]);
  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    if (w == (guint) weight)
      gtk_widget_add_css_class (icon, weight_css[w]);
    else
      gtk_widget_remove_css_class (icon, weight_css[w]);
  fp_tip_set (icon, fp_weight_label (weight));
}

/* That the parish holds it otherwise, and what other sources print. */
static char *
norms_words (const FpFinding *finding)
{
  const gboolean both = finding->otherwise != NULL && finding->disagree != NULL;

  return g_strconcat (finding->otherwise != NULL ? finding->otherwise : "", both ? "\n" : "",
                      finding->disagree != NULL ? finding->disagree : "", NULL);
}

void
fp_finding_row_show (GtkWidget *list_row, const FpShown *shown, gboolean open, const FpFindingOffers *offers)
{
  const gboolean offered = open && (offers->words != NULL || offers->note != NULL);
  Row *row = g_object_get_data (G_OBJECT (list_row), "row");
  const FpFinding *f = shown->finding;
  FpFocus focus;
  g_autofree char *measure = fp_shown_measure (f), *speech = fp_shown_speech (shown), *norms = norms_words (f);

  show_weight (row->icon, f->rule->weight);
  set_line (row->title, f->title, TRUE);
  set_line (row->measure, measure, TRUE);
  set_line (row->detail, f->detail, open);
  show_sight (row, open && fp_measure_focus (f->rule->measure, &focus));
  set_line (row->source, f->rule->source, open);
  set_line (row->norms, norms, open);
  set_lines (row->title, open, 2);
  set_lines (row->measure, open, 1);
  if (offered)
    show_offers (row, offers);
  else
    forget_pointer (row);
  gtk_widget_set_visible (row->offer, offered);
  set_line (row->more, f->rule->advice, open);
  set_line (row->caution, f->rule->caution, open);
  if (shown->stale)
    gtk_widget_add_css_class (list_row, "stale");
  else
    gtk_widget_remove_css_class (list_row, "stale");
  gtk_accessible_update_property (GTK_ACCESSIBLE (list_row), GTK_ACCESSIBLE_PROPERTY_LABEL, speech, -1);
}
