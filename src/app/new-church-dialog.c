/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "new-church-dialog.h"

#include "built.h"
#include "compat-4-8.h"
#include "drawing-view.h"
#include "small-drawing.h"
#include "text-dialog.h"
#include "walk-editor.h"

#include "footpace/new-church.h"
#include "footpace/people.h"

#include <math.h>
#include <string.h>

#define PREVIEW_DELAY 120 /* ms after the last key                            */
#define PREVIEW_MM    120.0

typedef struct
{
  GtkBuilder       *builder;
  GtkWidget        *window, *error, *preview, *tells, *walk, *closing;
  FpUnits           units;
  FpNewChurchAnswer answer;
  gpointer          data;
  guint             preview_source;
} Dialog;

typedef struct
{
  const char *id, *label;
  gsize       offset;  /* of the double in FpNewChurch                        */
  guint       shapes;  /* 1 << FpRoomShape for which it is asked              */
} Field;

#define ALL      ((1u << FP_N_ROOMS) - 1u)
#define DRAWN    (ALL & ~(1u << FP_ROOM_WALKED))
#define NARROWER (1u << FP_ROOM_CHANCEL | 1u << FP_ROOM_TRANSEPTS)

/* The dialog that was left without making a project: nothing typed in it is lost while the program runs. */
static Dialog *left;

static const Field fields[] = {
  { "nave-width", "Width of the nave", G_STRUCT_OFFSET (FpNewChurch, nave_width), DRAWN },
  { "nave-length", "Length of the nave", G_STRUCT_OFFSET (FpNewChurch, nave_length), ALL },
  { "transept-span", "Span of the transepts", G_STRUCT_OFFSET (FpNewChurch, transept_span), 1u << FP_ROOM_TRANSEPTS },
  { "transept-width", "Width of a transept", G_STRUCT_OFFSET (FpNewChurch, transept_width), 1u << FP_ROOM_TRANSEPTS },
  { "sanctuary-width", "Width of the chancel", G_STRUCT_OFFSET (FpNewChurch, sanctuary_width), NARROWER },
  { "sanctuary-depth", "Depth of the sanctuary", G_STRUCT_OFFSET (FpNewChurch, sanctuary_depth), DRAWN },
  { "sanctuary-level", "Sanctuary above the nave", G_STRUCT_OFFSET (FpNewChurch, sanctuary_level), ALL },
  { "wall-height", "Height of the walls", G_STRUCT_OFFSET (FpNewChurch, wall_height), ALL },
  { "wall-thickness", "Thickness of the walls", G_STRUCT_OFFSET (FpNewChurch, wall_thickness), ALL },
};

static double *
field_of (FpNewChurch *spec, const Field *field)
{
  return (double *) G_STRUCT_MEMBER_P (spec, field->offset);
}

static void
dialog_free (gpointer data)
{
  Dialog *d = data;

  if (left == d)
    left = NULL;
  g_clear_handle_id (&d->preview_source, g_source_remove);
  g_object_unref (d->builder);
  g_free (d);
}

/* --- reading -------------------------------------------------------------- */

static FpRoomShape
shape_of (Dialog *d)
{
  return (FpRoomShape) MIN (fp_built_selected (d->builder, "shape"), FP_N_ROOMS - 1u);
}

static gboolean
read_fields (Dialog *d, FpNewChurch *spec, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if ((fields[i].shapes & 1u << spec->shape) != 0
        && !fp_built_length (d->builder, fields[i].id, fields[i].label, d->units, field_of (spec, &fields[i]), error))
      return FALSE;
  return TRUE;
}

static guint
usual_celebrations (FpBooks books)
{
  const guint older = FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG, newer = FP_CELEBRATION_WEEKDAY | FP_CELEBRATION_SUNDAY;

  return books == FP_BOOKS_OLDER ? older : books == FP_BOOKS_NEWER ? newer : older | newer;
}

static gboolean
read_brief (Dialog *d, FpBrief *brief, GError **error)
{
  brief->title = fp_built_text (d->builder, "title");
  brief->place = fp_built_text (d->builder, "place");
  brief->books = (FpBooks) fp_built_selected (d->builder, "books");
  brief->facing = (FpFacing) fp_built_selected (d->builder, "facing");
  brief->units = d->units;
  brief->celebrations = usual_celebrations (brief->books);
  return fp_built_count (d->builder, "seats", "Seats wanted", 0, 20000, &brief->seats, error);
}

/* Its west end lies at the length of the nave, its middle on the axis. */
static void
lay_out (FpPoint *corner, guint n, double nave_length)
{
  const FpBox box = fp_outline_box (corner, n);

  for (guint i = 0; i < n; i++)
    corner[i] = (FpPoint) { corner[i].x - (box.x0 + box.x1) / 2.0, corner[i].y - box.y0 - nave_length };
}

/* @corners: (out): of FpPoint; must outlive @spec. */
static gboolean
read_walk (Dialog *d, FpNewChurch *spec, GArray *corners, GError **error)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (FpLeg));
  g_autoptr (GArray) typed = g_array_new (FALSE, FALSE, sizeof (gboolean));
  const FpLeg *leg;
  const gboolean *kept;
  FpClosure closure;
  g_autofree char *closing = NULL;

  if (!fp_walk_editor_read (FP_WALK_EDITOR (d->walk), legs, typed, error))
    return FALSE;
  leg = (const FpLeg *) (gpointer) legs->data;
  kept = (const gboolean *) (gpointer) typed->data;
  closure = fp_traverse_closure (leg, legs->len, 0.0);
  if (!fp_traverse_can_keep (leg, legs->len, kept, &closure))
    kept = NULL;
  closing = fp_closure_tells (&closure, kept != NULL, d->units);
  gtk_label_set_text (GTK_LABEL (d->closing), closing);
  if (legs->len < 3 || !fp_closure_is_small (&closure))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "%s", legs->len < 3 ? "Walk at least three sides." : closing);
      return FALSE;
    }
  g_array_set_size (corners, legs->len + 1);
  fp_traverse_corners (leg, legs->len, (FpPoint) { 0, 0 }, 0.0, (FpPoint *) (gpointer) corners->data);
  fp_traverse_adjust ((FpPoint *) (gpointer) corners->data, legs->len, kept);
  lay_out ((FpPoint *) (gpointer) corners->data, legs->len, spec->nave_length);
  spec->corner = (const FpPoint *) (gpointer) corners->data;
  spec->n_corners = legs->len;
  return TRUE;
}

static FpProject *
make (Dialog *d, GError **error)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  FpNewChurch spec;

  fp_new_church_defaults (&spec);
  spec.shape = shape_of (d);
  spec.apse = fp_built_is_active (d->builder, "apse");
  spec.doors = fp_built_is_active (d->builder, "doors");
  spec.furnish = fp_built_is_active (d->builder, "furnish");
  if (!read_brief (d, &spec.brief, error) || !read_fields (d, &spec, error)
      || (spec.shape == FP_ROOM_WALKED && !read_walk (d, &spec, corners, error)))
    return NULL;
  return fp_new_church_make (&spec, error);
}

/* --- what follows from it -------------------------------------------------- */

/* Whoever has measured the church knows how long it is, and how much of it is the sanctuary. */
static void
tell_length (Dialog *d)
{
  g_autofree char *text = NULL;
  double nave, sanctuary;

  if (fp_built_length (d->builder, "nave-length", "", d->units, &nave, NULL)
      && fp_built_length (d->builder, "sanctuary-depth", "", d->units, &sanctuary, NULL))
    text = fp_length_format_unit (nave + sanctuary, d->units);
  gtk_label_set_text (GTK_LABEL (fp_built (d->builder, "whole-length")), text != NULL ? text : "");
}

/* --- the preview ---------------------------------------------------------- */

static char *
tell_of (const FpScene *scene, guint wanted)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const guint seats = fp_people_seats (people);

  if (wanted == 0 && seats == 0)
    return g_strdup ("No pews yet: say how many seats are wanted, or add them later.");
  return g_strdup_printf (seats < wanted ? "%u seats: the nave holds no more of the %u wanted." : "%u seats of %u wanted.",
                          seats, wanted);
}

static void
show_church (Dialog *d, const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  g_autoptr (FpDrawing) drawing = NULL;
  g_autofree char *tells = tell_of (scene, fp_project_brief (project)->seats);
  const FpBox3 box = fp_scene_box (scene);
  const FpBox frame = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };

  drawing = fp_small_drawing (plan, &frame, PREVIEW_MM, PREVIEW_MM * 1.3);
  fp_drawing_view_set (FP_DRAWING_VIEW (d->preview), drawing, FALSE);
  fp_drawing_view_set_label (FP_DRAWING_VIEW (d->preview), tells);
  gtk_label_set_text (GTK_LABEL (d->tells), tells);
}

static void
tell_error (Dialog *d, const GError *error)
{
  gtk_label_set_text (GTK_LABEL (d->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (d->error, error != NULL);
}

static gboolean
preview (gpointer data)
{
  Dialog *d = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = NULL;

  d->preview_source = 0;
  tell_length (d);
  project = make (d, &error);
  if (project != NULL)
    show_church (d, project);
  tell_error (d, error);
  gtk_widget_set_sensitive (fp_built (d->builder, "accept"), project != NULL);
  return G_SOURCE_REMOVE;
}

static void
preview_soon (Dialog *d)
{
  g_clear_handle_id (&d->preview_source, g_source_remove);
  d->preview_source = g_timeout_add (PREVIEW_DELAY, preview, d);
}

/* --- what is asked -------------------------------------------------------- */

static void
show_row (Dialog *d, const char *id, gboolean shown)
{
  g_autofree char *label = g_strconcat (id, "-label", NULL);

  gtk_widget_set_visible (fp_built (d->builder, id), shown);
  gtk_widget_set_visible (fp_built (d->builder, label), shown);
}

static void
on_shape (Dialog *d)
{
  const FpRoomShape shape = shape_of (d);

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    show_row (d, fields[i].id, (fields[i].shapes & 1u << shape) != 0);
  show_row (d, "whole-length", shape != FP_ROOM_WALKED);
  gtk_widget_set_visible (fp_built (d->builder, "apse"), (NARROWER & 1u << shape) != 0);
  gtk_widget_set_visible (fp_built (d->builder, "walking"), shape == FP_ROOM_WALKED);
  preview_soon (d);
}

static void
on_units (Dialog *d)
{
  const FpUnits was = d->units;

  d->units = (FpUnits) fp_built_selected (d->builder, "units");
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    fp_built_change_units (GTK_EDITABLE (fp_built (d->builder, fields[i].id)), was, d->units);
  fp_walk_editor_set_units (FP_WALK_EDITOR (d->walk), d->units);
  preview_soon (d);
}

static void
on_accept (Dialog *d)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = make (d, &error);

  tell_error (d, error);
  if (project == NULL)
    return;
  gtk_widget_hide (d->window);
  d->answer (project, d->data);
  gtk_window_destroy (GTK_WINDOW (d->window));
}

/* However it is closed. */
static gboolean
on_leave (Dialog *d)
{
  g_clear_handle_id (&d->preview_source, g_source_remove);
  gtk_widget_hide (d->window);
  gtk_window_set_transient_for (GTK_WINDOW (d->window), NULL);
  left = d;
  return GDK_EVENT_STOP;
}

/* --- opening -------------------------------------------------------------- */

static void
fill (Dialog *d)
{
  /* A nave with a narrower chancel, to begin from. */
  static const FpLeg walk[] = { { 20000, -90 }, { 1500, 90 }, { 8000, -90 }, { 9000, -90 }, { 8000, 90 },
                                { 1500, -90 }, { 20000, -90 }, { 12000, -90 } };
  GtkStringList *shapes = gtk_string_list_new (NULL);
  FpNewChurch spec;

  fp_new_church_defaults (&spec);
  for (guint i = 0; i < FP_N_ROOMS; i++)
    gtk_string_list_append (shapes, fp_room_shape_label ((FpRoomShape) i));
  gtk_drop_down_set_model (GTK_DROP_DOWN (fp_built (d->builder, "shape")), G_LIST_MODEL (shapes));
  g_object_unref (shapes);
  fp_built_select (d->builder, "shape", spec.shape);
  fp_built_select (d->builder, "books", spec.brief.books);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_autofree char *shown = fp_length_format (*field_of (&spec, &fields[i]), d->units);
      fp_built_set_text (d->builder, fields[i].id, shown);
    }
  d->walk = fp_walk_editor_new (d->units);
  /* What is said of the gap comes and goes below the sides, which stay where they are. */
  gtk_box_append (GTK_BOX (fp_built (d->builder, "walking")), d->walk);
  gtk_box_reorder_child_after (GTK_BOX (fp_built (d->builder, "walking")), d->closing, d->walk);
  fp_walk_editor_set (FP_WALK_EDITOR (d->walk), walk, G_N_ELEMENTS (walk));
}

static void
watch (Dialog *d)
{
  static const char *const texts[] = { "title", "place", "seats" }, *const checks[] = { "apse", "doors", "furnish" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_signal_connect_swapped (fp_built (d->builder, texts[i]), "changed", G_CALLBACK (preview_soon), d);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    g_signal_connect_swapped (fp_built (d->builder, fields[i].id), "changed", G_CALLBACK (preview_soon), d);
  for (guint i = 0; i < G_N_ELEMENTS (checks); i++)
    g_signal_connect_swapped (fp_built (d->builder, checks[i]), "toggled", G_CALLBACK (preview_soon), d);
  g_signal_connect_swapped (d->walk, "changed", G_CALLBACK (preview_soon), d);
  g_signal_connect_swapped (fp_built (d->builder, "shape"), "notify::selected", G_CALLBACK (on_shape), d);
  g_signal_connect_swapped (fp_built (d->builder, "units"), "notify::selected", G_CALLBACK (on_units), d);
  g_signal_connect_swapped (fp_built (d->builder, "accept"), "clicked", G_CALLBACK (on_accept), d);
  g_signal_connect_swapped (fp_built (d->builder, "cancel"), "clicked", G_CALLBACK (gtk_window_close), d->window);
  g_signal_connect_swapped (d->window, "close-request", G_CALLBACK (on_leave), d);
}

static Dialog *
dialog_new (void)
{
  Dialog *d = g_new0 (Dialog, 1);

  d->builder = gtk_builder_new_from_resource ("/org/footpace/Footpace/new-church-dialog.ui");
  d->window = fp_built (d->builder, "window");
  d->error = fp_built (d->builder, "error");
  d->tells = fp_built (d->builder, "tells");
  d->closing = fp_built (d->builder, "closing");
  d->preview = fp_drawing_view_new ("The church in plan");
  gtk_widget_set_vexpand (d->preview, TRUE);
  gtk_box_prepend (GTK_BOX (fp_built (d->builder, "picture")), d->preview);
  g_object_set_data_full (G_OBJECT (d->window), "dialog", d, dialog_free);
  fp_close_on_escape (GTK_WINDOW (d->window));
  fill (d);
  watch (d);
  fp_name_buttons (d->window);
  return d;
}

void
fp_new_church_dialog_show (GtkWindow *parent, FpNewChurchAnswer answer, gpointer data)
{
  Dialog *d = left != NULL ? left : dialog_new ();

  left = NULL;
  d->answer = answer;
  d->data = data;
  gtk_window_set_transient_for (GTK_WINDOW (d->window), parent);
  on_shape (d);
  gtk_window_present (GTK_WINDOW (d->window));
  gtk_widget_grab_focus (fp_built (d->builder, "title"));
}
