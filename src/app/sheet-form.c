/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-form.h"

#include "show-list.h"

struct _FpSheetForm
{
  GtkBox      parent_instance;
  FpPageSetup page;     /* as last read                                     */
  FpUnits     units;
  gboolean    setting;

  GtkWidget  *sheet, *cut_label, *cut_at, *from_label, *from, *paper, *orientation, *scale, *other_scale, *ink, *number;
  GtkWidget  *findings, *whole, *tiled, *tile, *show_button, *show_list;
};

G_DEFINE_FINAL_TYPE (FpSheetForm, fp_sheet_form, GTK_TYPE_BOX)

static guint changed_signal;

/* In the order of the choices in sheet-form.ui; scales of ISO 5455, then one by hand. */
static const guint sheet_choices[] = { FP_SHEET_ELEVATION, FP_SHEET_PLAN, FP_SHEET_SECTION, FP_SHEET_CROSS, FP_SHEET_BOARD,
                                       FP_SHEET_COMPARE };
static const double scales[] = { 0.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0 };
#define OTHER_SCALE G_N_ELEMENTS (scales)

static guint
selected (GtkWidget *choices)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (choices));
}

static void
choose (GtkWidget *choices, guint i)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choices), i);
}

static gboolean
checked (GtkWidget *check)
{
  return gtk_check_button_get_active (GTK_CHECK_BUTTON (check));
}

static guint
sheet_of (FpSheetForm *self)
{
  return sheet_choices[MIN (selected (self->sheet), G_N_ELEMENTS (sheet_choices) - 1)];
}

/* Which cut the sheet shows; NULL: none. */
static FpCut *
cut_of (FpSheetForm *self, FpPageSetup *page)
{
  switch (sheet_of (self))
    {
    case FP_SHEET_SECTION:
    case FP_SHEET_BOARD: return &page->along;
    case FP_SHEET_CROSS: return &page->across;
    default: return NULL;
    }
}

static void
mark_wrong (GtkWidget *entry, const char *why)
{
  if (why != NULL)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_widget_set_tooltip_text (entry, why);
}

/* --- reading ------------------------------------------------------------------ */

static void
read_cut (FpSheetForm *self, FpPageSetup *page)
{
  FpCut *cut = cut_of (self, page);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->cut_at));
  g_autoptr (GError) error = NULL;
  FpPageSetup tried = *page;
  double at = 0;

  if (cut == NULL)
    return;
  cut->turned = sheet_of (self) != FP_SHEET_BOARD && selected (self->from) == 1;
  tried.along.at = 0;
  if (*text != '\0' && (!fp_length_parse (text, self->units, &at, &error)
                        || (tried.along.at = at, !fp_page_setup_check (&tried, &error))))
    {
      mark_wrong (self->cut_at, error->message);
      return;
    }
  mark_wrong (self->cut_at, NULL);
  cut->placed = *text != '\0';
  cut->at = at;
}

static void
read_scale (FpSheetForm *self, FpPageSetup *page)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->other_scale));
  guint64 number;

  if (selected (self->scale) < OTHER_SCALE)
    {
      page->scale = scales[selected (self->scale)];
      return;
    }
  if (g_str_has_prefix (text, "1:"))
    text += 2;
  if (g_ascii_string_to_unsigned (text, 10, 1, FP_SHEET_SCALE_MOST, &number, NULL))
    page->scale = (double) number;
  mark_wrong (self->other_scale, page->scale == (double) number ? NULL : "A whole number such as 75, for 1:75");
}

FpPageSetup
fp_sheet_form_get (FpSheetForm *self)
{
  FpPageSetup *page = &self->page;

  page->sheet = sheet_of (self);
  page->paper = (FpPaper) selected (self->paper);
  page->landscape = selected (self->orientation) == 0;
  page->whole = checked (self->whole);
  page->findings = checked (self->findings) && page->sheet != FP_SHEET_COMPARE;
  page->ink = (FpInkChoice) selected (self->ink);
  page->hidden = fp_show_list_get (FP_SHOW_LIST (self->show_list));
  page->tiled = checked (self->tiled);
  page->tile = (FpPaper) selected (self->tile);
  read_scale (self, page);
  read_cut (self, page);
  return *page;
}

const char *
fp_sheet_form_number (FpSheetForm *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->number));
}

/* --- showing ------------------------------------------------------------------- */

static void
set_from_choices (FpSheetForm *self, gboolean across)
{
  const char *const along[] = { "From the Gospel side", "From the Epistle side", NULL };
  const char *const facing[] = { "Facing east", "Facing west", NULL };
  g_autoptr (GtkStringList) list = gtk_string_list_new (across ? facing : along);

  gtk_drop_down_set_model (GTK_DROP_DOWN (self->from), G_LIST_MODEL (list));
}

/* Only what concerns the sheet is asked. */
static void
show_cut (FpSheetForm *self)
{
  const FpCut *cut = cut_of (self, &self->page);
  const gboolean across = sheet_of (self) == FP_SHEET_CROSS, board = sheet_of (self) == FP_SHEET_BOARD;
  g_autofree char *at = cut != NULL && cut->placed ? fp_length_format (cut->at, self->units) : g_strdup ("");

  gtk_widget_set_visible (self->cut_label, cut != NULL);
  gtk_widget_set_visible (self->cut_at, cut != NULL);
  gtk_widget_set_visible (self->from_label, cut != NULL && !board);
  gtk_widget_set_visible (self->from, cut != NULL && !board);
  if (cut == NULL)
    return;
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->cut_at), across ? "through the altar" : "on the axis");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->cut_at), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  across ? "Cut at, from where nave and sanctuary meet to the east"
                                         : "Cut at, from the axis to the Epistle side", -1);
  gtk_editable_set_text (GTK_EDITABLE (self->cut_at), at);
  mark_wrong (self->cut_at, NULL);
  set_from_choices (self, across);
  choose (self->from, cut->turned ? 1 : 0);
}

static void
show_rest (FpSheetForm *self)
{
  const gboolean compare = sheet_of (self) == FP_SHEET_COMPARE;
  const FpHidden hidden = fp_show_list_get (FP_SHOW_LIST (self->show_list));

  gtk_widget_set_sensitive (self->findings, !compare);
  gtk_widget_set_sensitive (self->whole, !compare);
  gtk_widget_set_visible (self->other_scale, selected (self->scale) >= OTHER_SCALE);
  gtk_widget_set_sensitive (self->tile, checked (self->tiled));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->show_button), hidden == 0 ? "Everything" : "Not everything");
}

static void
on_change (FpSheetForm *self)
{
  if (self->setting)
    return;
  show_rest (self);
  g_signal_emit (self, changed_signal, 0);
}

static void
on_sheet (FpSheetForm *self)
{
  if (self->setting)
    return;
  self->setting = TRUE;
  show_cut (self);
  self->setting = FALSE;
  on_change (self);
}

static void
set_scale (FpSheetForm *self, double scale)
{
  g_autofree char *text = g_strdup_printf ("1:%.0f", scale);

  choose (self->scale, OTHER_SCALE);
  for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
    if (scales[i] == scale)
      choose (self->scale, i);
  gtk_editable_set_text (GTK_EDITABLE (self->other_scale), scale > 0 ? text : "");
}

void
fp_sheet_form_set (FpSheetForm *self, const FpPageSetup *page, FpUnits units)
{
  self->setting = TRUE;
  self->page = *page;
  self->units = units;
  for (guint i = 0; i < G_N_ELEMENTS (sheet_choices); i++)
    if (sheet_choices[i] == page->sheet)
      choose (self->sheet, i);
  choose (self->paper, page->paper);
  choose (self->orientation, page->landscape ? 0 : 1);
  choose (self->ink, page->ink);
  choose (self->tile, page->tile);
  set_scale (self, page->scale);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->findings), page->findings);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->whole), page->whole);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->tiled), page->tiled);
  fp_show_list_set (FP_SHOW_LIST (self->show_list), page->hidden);
  show_cut (self);
  show_rest (self);
  self->setting = FALSE;
}

void
fp_sheet_form_tile (FpSheetForm *self)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->tiled), TRUE);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpSheetForm, name)

static void
fp_sheet_form_class_init (FpSheetFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FP_TYPE_SHOW_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sheet-form.ui");
  BIND (sheet);
  BIND (cut_label);
  BIND (cut_at);
  BIND (from_label);
  BIND (from);
  BIND (paper);
  BIND (orientation);
  BIND (scale);
  BIND (other_scale);
  BIND (ink);
  BIND (number);
  BIND (findings);
  BIND (whole);
  BIND (tiled);
  BIND (tile);
  BIND (show_button);
  BIND (show_list);
  gtk_widget_class_bind_template_callback (widget_class, on_change);
  gtk_widget_class_bind_template_callback (widget_class, on_sheet);
  changed_signal = g_signal_new ("changed", FP_TYPE_SHEET_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

#undef BIND

static void
fp_sheet_form_init (FpSheetForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
