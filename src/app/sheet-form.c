/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-form.h"

#include "compat-4-8.h"
#include "setting-window.h"
#include "show-list.h"
#include "sun-choice.h"

struct _FpSheetForm
{
  GtkBox      parent_instance;
  FpPageSetup page;     /* as last read                                     */
  FpUnits     units;
  gboolean    setting;

  GtkWidget  *sheet, *paper, *orientation, *scale, *other_scale, *ink, *number;
  GtkWidget  *along_label, *along, *from_label, *from, *across_label, *across, *facing_label, *facing;
  GtkWidget  *focus_label, *focus, *moment_label, *moment, *sun_label, *sun;
  GtkWidget  *size_label, *size, *celebration_label, *celebration, *servers_label, *servers, *first_label, *first;
  int         place;    /* whose line of sight is shown; -1: nobody's       */
  GtkWidget  *findings, *whole, *tiled, *tile, *show_button, *show_list;
};

G_DEFINE_FINAL_TYPE (FpSheetForm, fp_sheet_form, GTK_TYPE_BOX)

static guint changed_signal;

/* In the order of the choices in sheet-form.ui; scales of ISO 5455, then one by hand. */
static const guint sheet_choices[] = { FP_SHEET_ELEVATION, FP_SHEET_PLAN, FP_SHEET_SECTION, FP_SHEET_CROSS, FP_SHEET_SECTIONS,
                                       FP_SHEET_BOARD, FP_SHEET_COMPARE, FP_SHEET_LEVELS, FP_SHEET_SIGHT, FP_SHEET_SUN,
                                       FP_SHEET_CARD, FP_SHEET_SCHEDULE, FP_SHEET_LINEN, FP_SHEET_LAYING, FP_SHEET_CAPACITY };
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

/* Which cuts a sheet shows, or, on the plan, the lines of which. */
static gboolean
shows_along (guint sheet)
{
  return sheet == FP_SHEET_SECTION || sheet == FP_SHEET_SECTIONS || sheet == FP_SHEET_BOARD || sheet == FP_SHEET_PLAN;
}

static gboolean
shows_across (guint sheet)
{
  return sheet == FP_SHEET_CROSS || sheet == FP_SHEET_SECTIONS || sheet == FP_SHEET_PLAN;
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

/* What cannot be read leaves the cut where it was, and says why. */
static void
read_cut (FpSheetForm *self, GtkWidget *entry, GtkWidget *way, FpCut *cut)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  g_autofree char *shown = fp_length_format (cut->at, self->units);
  g_autoptr (GError) error = NULL;
  FpPageSetup tried = { .sheet = FP_SHEET_PLAN };

  cut->turned = selected (way) == 1;
  if (*text != '\0' && (!fp_length_parse (text, self->units, &tried.along.at, &error)
                        || !fp_page_setup_check (&tried, &error)))
    {
      mark_wrong (entry, error->message);
      return;
    }
  mark_wrong (entry, NULL);
  /* A field that shows a rounded length must not round it. */
  if (cut->placed && g_str_equal (text, shown))
    return;
  cut->placed = *text != '\0';
  cut->at = tried.along.at;
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
  page->findings = checked (self->findings) && page->sheet < FP_N_SHEETS;
  page->ink = (FpInkChoice) selected (self->ink);
  page->hidden = fp_show_list_get (FP_SHOW_LIST (self->show_list));
  page->tiled = checked (self->tiled);
  page->tile = (FpPaper) selected (self->tile);
  read_scale (self, page);
  if (shows_along (page->sheet))
    read_cut (self, self->along, self->from, &page->along);
  if (shows_across (page->sheet))
    read_cut (self, self->across, self->facing, &page->across);
  return *page;
}

FpSheetLooks
fp_sheet_form_looks (FpSheetForm *self)
{
  return (FpSheetLooks) {
    .sight = { (FpMoment) selected (self->moment), (FpFocus) selected (self->focus), self->place },
    .sun = fp_sun_choice_look (FP_SUN_CHOICE (self->sun)),
    .card = { fp_celebration_chosen (selected (self->celebration)), 1 + selected (self->servers),
              (FpAltarSide) selected (self->first), selected (self->size) == 0 },
  };
}

const char *
fp_sheet_form_number (FpSheetForm *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->number));
}

void
fp_sheet_form_set_number (FpSheetForm *self, const char *number)
{
  gtk_editable_set_text (GTK_EDITABLE (self->number), number);
}

/* --- showing ------------------------------------------------------------------- */

static void
show_cut (FpSheetForm *self, GtkWidget *entry, GtkWidget *way, const FpCut *cut)
{
  g_autofree char *at = cut->placed ? fp_length_format (cut->at, self->units) : g_strdup ("");

  gtk_editable_set_text (GTK_EDITABLE (entry), at);
  mark_wrong (entry, NULL);
  choose (way, cut->turned ? 1 : 0);
}

/* Only what concerns the sheet is asked.  In first-angle arrangement nothing is turned. */
static void
show_cuts (FpSheetForm *self)
{
  const guint sheet = sheet_of (self);
  const gboolean along = shows_along (sheet), across = shows_across (sheet);

  gtk_widget_set_visible (self->along_label, along);
  gtk_widget_set_visible (self->along, along);
  gtk_widget_set_visible (self->across_label, across);
  gtk_widget_set_visible (self->across, across);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->along), sheet == FP_SHEET_PLAN ? "no cutting line" : "on the axis");
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->across), sheet == FP_SHEET_PLAN ? "no cutting line" : "through the altar");
}

static void
show_cards (FpSheetForm *self)
{
  GtkWidget *const of_cards[] = { self->size_label, self->size, self->celebration_label, self->celebration,
                                  self->servers_label, self->servers, self->first_label, self->first };
  const gboolean card = sheet_of (self) == FP_SHEET_CARD;

  for (guint i = 0; i < G_N_ELEMENTS (of_cards); i++)
    gtk_widget_set_visible (of_cards[i], card);
  gtk_widget_set_sensitive (self->orientation, !card);
  gtk_widget_set_sensitive (self->scale, !card && sheet_of (self) != FP_SHEET_SCHEDULE && sheet_of (self) != FP_SHEET_CAPACITY);
  gtk_widget_set_sensitive (self->paper, !card || selected (self->size) != 0);
}

static void
show_looks (FpSheetForm *self)
{
  const gboolean sight = sheet_of (self) == FP_SHEET_SIGHT, sun = sheet_of (self) == FP_SHEET_SUN;

  gtk_widget_set_visible (self->focus_label, sight);
  gtk_widget_set_visible (self->focus, sight);
  gtk_widget_set_visible (self->moment_label, sight);
  gtk_widget_set_visible (self->moment, sight);
  gtk_widget_set_visible (self->sun_label, sun);
  gtk_widget_set_visible (self->sun, sun);
  show_cards (self);
}

/* On the plan a line that is not there looks nowhere. */
static void
show_ways (FpSheetForm *self)
{
  const guint sheet = sheet_of (self);
  const gboolean plan = sheet == FP_SHEET_PLAN;
  const gboolean from = shows_along (sheet) && sheet != FP_SHEET_BOARD
                        && (!plan || *gtk_editable_get_text (GTK_EDITABLE (self->along)) != '\0');
  const gboolean facing = shows_across (sheet) && (!plan || *gtk_editable_get_text (GTK_EDITABLE (self->across)) != '\0');

  gtk_widget_set_visible (self->from_label, from);
  gtk_widget_set_visible (self->from, from);
  gtk_widget_set_visible (self->facing_label, facing);
  gtk_widget_set_visible (self->facing, facing);
}

static void
show_rest (FpSheetForm *self)
{
  const gboolean view = sheet_of (self) < FP_N_SHEETS, compare = sheet_of (self) == FP_SHEET_COMPARE;
  const FpHidden hidden = fp_show_list_get (FP_SHOW_LIST (self->show_list));

  show_ways (self);
  show_looks (self);
  gtk_widget_set_sensitive (self->findings, view);
  gtk_widget_set_sensitive (self->whole, view);
  gtk_widget_set_sensitive (self->show_button, view || compare || sheet_of (self) == FP_SHEET_SUN);
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
  show_cuts (self);
  on_change (self);
}

/* What is looked at brings the moment at which it matters; that may be chosen otherwise after it. */
static void
on_focus (FpSheetForm *self)
{
  if (self->setting)
    return;
  self->place = -1;
  self->setting = TRUE;
  choose (self->moment, (guint) fp_moment_of_focus ((FpFocus) selected (self->focus)));
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
  show_cut (self, self->along, self->from, &page->along);
  show_cut (self, self->across, self->facing, &page->across);
  show_cuts (self);
  show_rest (self);
  self->setting = FALSE;
}

void
fp_sheet_form_set_looks (FpSheetForm *self, const FpBrief *brief, const FpSheetLooks *looks)
{
  self->setting = TRUE;
  self->place = looks->sight.place;
  choose (self->focus, (guint) looks->sight.focus);
  choose (self->moment, (guint) looks->sight.moment);
  fp_sun_choice_set_brief (FP_SUN_CHOICE (self->sun), brief);
  fp_sun_choice_set_look (FP_SUN_CHOICE (self->sun), &looks->sun);
  choose (self->celebration, fp_celebration_choice (looks->card.celebrations));
  choose (self->servers, looks->card.servers > 1 ? 1 : 0);
  choose (self->first, (guint) looks->card.first);
  choose (self->size, looks->card.small ? 0 : 1);
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
  g_type_ensure (FP_TYPE_SUN_CHOICE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sheet-form.ui");
  BIND (sheet);
  BIND (along_label);
  BIND (along);
  BIND (from_label);
  BIND (from);
  BIND (across_label);
  BIND (across);
  BIND (facing_label);
  BIND (facing);
  BIND (focus_label);
  BIND (focus);
  BIND (moment_label);
  BIND (moment);
  BIND (sun_label);
  BIND (sun);
  BIND (size_label);
  BIND (size);
  BIND (celebration_label);
  BIND (celebration);
  BIND (servers_label);
  BIND (servers);
  BIND (first_label);
  BIND (first);
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
  gtk_widget_class_bind_template_callback (widget_class, on_focus);
  changed_signal = g_signal_new ("changed", FP_TYPE_SHEET_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

#undef BIND

static void
fill_looks (FpSheetForm *self)
{
  g_autoptr (GtkStringList) focuses = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) moments = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) celebrations = fp_celebration_choices ();

  for (int i = 0; i < FP_N_FOCUSES; i++)
    gtk_string_list_append (focuses, fp_focus_label ((FpFocus) i));
  for (int i = 0; i < FP_N_MOMENTS; i++)
    gtk_string_list_append (moments, fp_moment_label ((FpMoment) i));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->focus), G_LIST_MODEL (focuses));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->moment), G_LIST_MODEL (moments));
  gtk_string_list_splice (celebrations, 0, 1, (const char *[]) { "Those of the brief", NULL });
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->celebration), G_LIST_MODEL (celebrations));
}

static void
fp_sheet_form_init (FpSheetForm *self)
{
  self->setting = TRUE;
  self->place = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_looks (self);
  fp_drop_down_show_all (self->sheet);
  self->setting = FALSE;
}
