/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The outline of an existing thing typed anew, and the survey added to, edited and taken from in the window. */
#include "amiss.h"
#include "corner-editor.h"
#include "outline-dialog.h"
#include "outline-edit.h"
#include "waiting.h"
#include "walk-editor.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

static const char *
id_of (FpDocument *d, FpRole role)
{
  const int i = fp_scene_role (fp_document_scene (d), role);

  g_assert_cmpint (i, >=, 0);
  return g_intern_string (fp_item_id (fp_scene_placed (fp_document_scene (d), NULL)[i].item));
}

static const FpPoint *
corners_of (FpDocument *d, const char *id, guint *n)
{
  return fp_item_corners (fp_document_placed (d, id)->item, n);
}

/* --- corners and sides ------------------------------------------------------ */

/* Every outline of every sample comes back from being walked. */
static void
test_there_and_back (void)
{
  static const char *const names[] = { "parish.footpace", "fan.footpace", "chapel.footpace" };
  guint tried = 0;

  for (guint s = 0; s < G_N_ELEMENTS (names); s++)
    {
      g_autoptr (FpDocument) d = help_open_sample (names[s]);
      guint n_placed;
      const FpPlaced *placed = fp_scene_placed (fp_document_scene (d), &n_placed);

      for (guint i = 0; i < n_placed; i++)
        {
          const gboolean has = fp_outline_has (placed[i].item);
          const gboolean closed = has && fp_outline_closed (placed[i].item);
          g_autoptr (GArray) legs = NULL, back = g_array_new (FALSE, FALSE, sizeof (FpPoint));
          FpClosure closing;
          double direction;
          guint n;
          const FpPoint *corner = fp_item_corners (placed[i].item, &n);

          if (!has)
            continue;
          legs = fp_outline_legs (corner, n, closed, &direction);
          g_assert_cmpuint (legs->len, ==, closed ? n : n - 1);
          g_assert_true (fp_outline_walk ((FpLeg *) (gpointer) legs->data, legs->len, NULL, closed, corner[0], direction, &closing,
                                          back, NULL));
          g_assert_cmpuint (back->len, ==, n);
          for (guint k = 0; k < n; k++)
            {
              const FpPoint p = g_array_index (back, FpPoint, k);
              g_assert_cmpfloat_with_epsilon (hypot (p.x - corner[k].x, p.y - corner[k].y), 0.0, 1e-6);
            }
          tried++;
        }
    }
  g_assert_cmpuint (tried, >, 6);
}

static void
test_too_few (void)
{
  const FpLeg leg[2] = { { 1000, -90 }, { 1000, -90 } };
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_outline_walk (leg, 2, NULL, TRUE, (FpPoint) { 0, 0 }, 0, NULL, out, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_GEOMETRY);
  g_assert_true (fp_outline_walk (leg, 2, NULL, FALSE, (FpPoint) { 0, 0 }, 0, NULL, out, NULL));
  g_assert_cmpuint (out->len, ==, 3);
}

/* --- the dialog --------------------------------------------------------------- */

static GtkWidget *
entry_named (GtkWidget *top, const char *tip, guint *skip)
{
  if (GTK_IS_ENTRY (top) && gtk_widget_get_mapped (top)
      && g_str_has_prefix (gtk_widget_get_tooltip_text (top) != NULL ? gtk_widget_get_tooltip_text (top) : "", tip))
    return (*skip)-- == 0 ? top : NULL;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      GtkWidget *found = entry_named (w, tip, skip);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
type (GtkWidget *dialog, const char *tip, guint nth, const char *text)
{
  GtkWidget *entry = entry_named (dialog, tip, &nth);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
accept (GtkWidget *dialog)
{
  g_signal_emit_by_name (gtk_window_get_default_widget (GTK_WINDOW (dialog)), "clicked");
}

/* A tip is shown to whoever looks for it, and never hangs over what is being typed. */
static gboolean
shows_tip (GtkWidget *field)
{
  g_autoptr (GtkTooltip) tooltip = g_object_new (GTK_TYPE_TOOLTIP, NULL);
  gboolean shows = FALSE;

  g_signal_emit_by_name (field, "query-tooltip", 1, 1, FALSE, tooltip, &shows);
  return shows;
}

static GtkWidget *
open_dialog (FpDocument *d, FpRole role, GtkWidget **dialog)
{
  GtkWidget *window = fp_window_new (NULL);

  fp_window_set_document (FP_WINDOW (window), d);
  gtk_window_present (GTK_WINDOW (window));
  fp_document_choose (d, id_of (d, role));
  *dialog = fp_outline_dialog_show (GTK_WINDOW (window), d, fp_document_chosen (d));
  WAIT_FOR (gtk_widget_get_mapped (help_find (*dialog, FP_TYPE_CORNER_EDITOR)));
  return window;
}

static void
test_corners_typed (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *dialog, *window = open_dialog (d, FP_ROLE_FLOOR, &dialog);
  const char *id = fp_document_chosen (d);
  guint n;
  const double was = corners_of (d, id, &n)[0].x;
  g_autofree char *typed = g_strdup_printf ("%.1f - 50 mm", was);
  GtkWidget *wrong = help_find_styled (dialog, "error");
  g_autofree char *named = g_strdup_printf ("%s: the outline", fp_item_name (fp_document_placed (d, id)->item));

  type (dialog, "Across", 0, typed);
  WAIT_FOR (fp_document_is_previewing (d));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  type (dialog, "Across", 1, "nowhere");
  WAIT_FOR (gtk_widget_get_visible (help_find_styled (dialog, "error")) && !fp_document_is_previewing (d));
  g_assert_false (gtk_widget_get_sensitive (gtk_window_get_default_widget (GTK_WINDOW (dialog))));
  /* What is wrong with the outline itself is said of the thing by its name. */
  type (dialog, "Across", 1, "0");
  type (dialog, "Across", 0, "90000");
  WAIT_FOR (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (wrong)), named));
  gtk_window_close (GTK_WINDOW (dialog));
  WAIT_FOR (gtk_window_get_modal (GTK_WINDOW (window)) == FALSE);
  g_assert_cmpfloat (corners_of (d, id, &n)[0].x, ==, was);
  dialog = fp_outline_dialog_show (GTK_WINDOW (window), d, id);
  WAIT_FOR (gtk_widget_get_mapped (help_find (dialog, FP_TYPE_CORNER_EDITOR)));
  type (dialog, "Across", 0, typed);
  accept (dialog);
  g_assert_cmpfloat_with_epsilon (corners_of (d, id, &n)[0].x, was - 50.0, 0.051);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  g_assert_true (g_str_has_prefix (fp_document_undo_label (d), "Outline of"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_no_tip_while_typing (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *dialog, *window = open_dialog (d, FP_ROLE_FLOOR, &dialog), *field, *other;
  guint first = 0, second = 1;

  field = entry_named (dialog, "Across", &first);
  other = entry_named (dialog, "Along", &second);
  g_assert_true (gtk_widget_grab_focus (gtk_window_get_default_widget (GTK_WINDOW (dialog))));
  g_assert_true (shows_tip (field));
  gtk_widget_grab_focus (field);
  g_assert_false (shows_tip (field));
  g_assert_false (shows_tip (other));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* An id goes, wherever it stands at the head; a name is said once; anything else stays. */
static void
test_amiss_by_name (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  const FpScene *scene = fp_document_scene (d);
  const char *id = id_of (d, FP_ROLE_FLOOR), *name = fp_item_name (fp_document_placed (d, id)->item);
  static const char *const heads[] = { "%s: ", "%s: %s: ", "%s has ", "no %s: ", "%s, ", "%s: x: " };

  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    {
      g_auto (GStrv) part = g_strsplit (heads[i], "%s", -1);
      const gboolean twice = i == 1, kept = i == 3 || i == 4;
      g_autofree char *head = twice ? g_strconcat (name, ": ", id, ": ", NULL) : g_strjoinv (id, part);
      g_autofree char *message = g_strconcat (head, "it is 5: no more", NULL);
      g_autofree char *first = kept ? NULL : g_strdelimit (g_strdup (twice ? ": " : part[1]), "", ' ');
      g_autofree char *want = kept ? g_strdup (message) : g_strconcat (name, first, "it is 5: no more", NULL);
      g_autofree char *said = fp_amiss_words (scene, message);

      g_assert_cmpstr (said, ==, want);
    }
}

/* Feet and inches where the project has them, whoever says so; names are left as they are. */
static void
test_amiss_in_units (void)
{
  g_autoptr (FpDocument) chapel = help_open_sample ("chapel.footpace"), parish = help_open_sample ("parish.footpace");
  const FpScene *scene = fp_document_scene (chapel);
  const char *id = id_of (chapel, FP_ROLE_FLOOR), *pews = id_of (chapel, FP_ROLE_PEWS);
  const char *name = fp_item_name (fp_document_placed (chapel, id)->item);
  g_autofree char *message = g_strdup_printf ("%s: it reaches from 0 mm to 1219.2 mm, -304.8 mm up", id);
  g_autofree char *said = fp_amiss_words (scene, message), *metric = fp_amiss_words (fp_document_scene (parish), message);
  g_autofree char *want = g_strdup_printf ("%s: it reaches from 0\" to 4' 0\", −1' 0\" up", name), *curved = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (said, ==, want);
  g_assert_nonnull (strstr (metric, ": it reaches from 0 mm to 1219.2 mm, -304.8 mm up"));
  g_assert_null (fp_set_out_param (scene, pews, "radius", 500, &error));
  g_assert_nonnull (strstr (error->message, "1000 mm"));
  curved = fp_amiss_words (scene, error->message);
  g_assert_nonnull (strstr (curved, "at least 3' 3 3/8\""));
  g_assert_null (strstr (curved, " mm"));
}

/* A side that is typed too long does not close, and the dialog says by how much; a little is shared out. */
static void
test_sides_typed (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *dialog, *window = open_dialog (d, FP_ROLE_FLOOR, &dialog), *stack = help_find (dialog, GTK_TYPE_STACK);
  const char *id = fp_document_chosen (d);
  guint n, before;
  double direction;
  const FpPoint *corner = corners_of (d, id, &before);
  g_autoptr (GArray) legs = fp_outline_legs (corner, before, TRUE, &direction);
  const double length = g_array_index (legs, FpLeg, 0).length;
  g_autofree char *much = g_strdup_printf ("%.0f", length + 3000), *little = g_strdup_printf ("%.0f", length + 12);
  g_autofree char *gap = fp_length_format_unit (3000, FP_UNITS_METRIC);
  GtkWidget *error = help_find_styled (dialog, "error");

  gtk_stack_set_visible_child_name (GTK_STACK (stack), "sides");
  WAIT_FOR (gtk_widget_get_mapped (help_find (dialog, FP_TYPE_WALK_EDITOR)));
  type (dialog, "How long", 0, much);
  WAIT_FOR (gtk_widget_get_visible (error));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (error)), "fails to close by"));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (error)), gap));
  type (dialog, "How long", 0, little);
  WAIT_FOR (!gtk_widget_get_visible (error) && fp_document_is_previewing (d));
  accept (dialog);
  corners_of (d, id, &n);
  g_assert_cmpuint (n, ==, before);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

static double
side_of (FpDocument *d, const char *id, guint side)
{
  guint n;
  const FpPoint *corner = corners_of (d, id, &n);
  const FpPoint a = corner[side], b = corner[(side + 1) % n];

  return hypot (b.x - a.x, b.y - a.y);
}

/* A side that was typed comes back as it was typed; the others take what is amiss, and it is said that they do. */
static void
test_typed_side_comes_back (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *dialog, *window = open_dialog (d, FP_ROLE_FLOOR, &dialog), *stack = help_find (dialog, GTK_TYPE_STACK), *row;
  const char *id = fp_document_chosen (d);
  const double length = round (side_of (d, id, 0)) + 15.0;
  g_autofree char *typed = g_strdup_printf ("%.0f", length);
  GtkWidget *says = help_find_styled (dialog, "closing");
  graphene_rect_t before, after;
  guint first = 0;

  gtk_stack_set_visible_child_name (GTK_STACK (stack), "sides");
  WAIT_FOR (gtk_widget_get_mapped (help_find (dialog, FP_TYPE_WALK_EDITOR)));
  row = entry_named (dialog, "How long", &first);
  WAIT_FOR (gtk_widget_compute_bounds (row, dialog, &before) && before.size.width > 100);
  gtk_editable_set_text (GTK_EDITABLE (row), typed);
  WAIT_FOR (fp_document_is_previewing (d) && gtk_widget_get_mapped (says) && gtk_widget_get_height (says) > 40);
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (says)), "shared out over the sides that were not typed"));
  /* Where one types nothing is moved by what is said. */
  g_assert_true (gtk_widget_compute_bounds (row, dialog, &after));
  g_assert_true (graphene_rect_equal (&before, &after));
  accept (dialog);
  g_assert_cmpfloat_with_epsilon (side_of (d, id, 0), length, 1e-6);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What nobody touched is not rounded, and is no step. */
static void
test_untouched (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("fan.footpace");
  GtkWidget *dialog, *window = open_dialog (d, FP_ROLE_WALL, &dialog), *stack = help_find (dialog, GTK_TYPE_STACK);

  gtk_stack_set_visible_child_name (GTK_STACK (stack), "sides");
  accept (dialog);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- the survey ----------------------------------------------------------------- */

static guint
n_survey (FpDocument *d)
{
  return fp_project_n_survey (fp_document_project (d));
}

/* Every kind of the building is added, edited, and taken out again, in the window. */
static void
test_survey_kinds (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = fp_window_new (NULL);
  guint n, tried = 0;
  const FpKind *const *kind = fp_kinds (&n);

  fp_window_set_document (FP_WINDOW (window), d);
  for (guint i = 0; i < n; i++)
    {
      const guint before = n_survey (d);
      const FpPlaced *placed;

      if ((kind[i]->flags & FP_KIND_SURVEY) == 0)
        continue;
      fp_document_choose (d, NULL);
      g_assert_true (gtk_widget_activate_action (window, "win.add", "s", kind[i]->id));
      g_assert_cmpuint (n_survey (d), >, before);
      placed = fp_document_chosen_placed (d);
      g_assert_true (fp_item_kind (placed->item) == kind[i]);
      g_assert_true (placed->in_survey);
      g_assert_true (fp_document_edit (d, fp_set_out_name (fp_document_scene (d), fp_document_chosen (d), "Measured anew",
                                                           NULL), "name", NULL));
      while (n_survey (d) > before && fp_document_chosen (d) != NULL)
        g_assert_true (gtk_widget_activate_action (window, "win.strike", NULL));
      /* Pews come as two blocks. */
      g_assert_cmpuint (n_survey (d), <=, before + 1);
      tried++;
    }
  g_assert_cmpuint (tried, >=, 8);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A wall of no opening yet, which by rule alone would not be the one. */
static void
test_opening_goes_into_the_chosen_wall (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = fp_window_new (NULL);
  g_autofree char *wall = NULL;

  fp_window_set_document (FP_WINDOW (window), d);
  g_assert_true (gtk_widget_activate_action (window, "win.add", "s", "wall"));
  wall = g_strdup (fp_document_chosen (d));
  fp_document_choose (d, NULL);
  gtk_widget_activate_action (window, "win.add", "s", "opening");
  g_assert_cmpstr (fp_item_on (fp_document_chosen_placed (d)->item), !=, wall);
  fp_document_undo (d);
  fp_document_choose (d, wall);
  gtk_widget_activate_action (window, "win.add", "s", "opening");
  g_assert_cmpstr (fp_item_kind (fp_document_chosen_placed (d)->item)->id, ==, "opening");
  g_assert_cmpstr (fp_item_on (fp_document_chosen_placed (d)->item), ==, wall);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/outline/no-tip-while-typing", test_no_tip_while_typing);
  g_test_add_func ("/outline/there-and-back", test_there_and_back);
  g_test_add_func ("/outline/too-few", test_too_few);
  g_test_add_func ("/outline/corners", test_corners_typed);
  g_test_add_func ("/outline/amiss", test_amiss_by_name);
  g_test_add_func ("/outline/amiss/units", test_amiss_in_units);
  g_test_add_func ("/outline/sides", test_sides_typed);
  g_test_add_func ("/outline/typed-side", test_typed_side_comes_back);
  g_test_add_func ("/outline/untouched", test_untouched);
  g_test_add_func ("/survey/kinds", test_survey_kinds);
  g_test_add_func ("/survey/opening", test_opening_goes_into_the_chosen_wall);
  return g_test_run ();
}
