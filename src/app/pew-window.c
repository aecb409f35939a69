/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pew-window.h"

#include "compat-4-8.h"
#include "file-names.h"
#include "pew-maker.h"

#include <math.h>

#define REACH 700.0 /* mm, from a click to the person that is meant: less than from row to row */
#define PEN   0.75  /* px */
#define DPI   200.0

struct _FpPewWindow
{
  GtkWindow   parent_instance;
  FpDocument *document;
  FpPewMaker *maker;
  const FpScene *scene;     /* of which `people` are; owned                   */
  FpPeople   *people;
  FpPewSpec   spec;
  FpInkChoice ink;
  cairo_surface_t *image;   /* NULL at first                                  */
  GArray     *blocks;       /* (element-type guint) owners, as the list has them */
  gboolean    own_moment;   /* a hand has chosen one here                     */
  gboolean    filling;      /* what is shown is set, not asked for by a hand  */

  GtkWidget  *block, *row, *seat, *moment, *picture, *told;
};

G_DEFINE_FINAL_TYPE (FpPewWindow, fp_pew_window, GTK_TYPE_WINDOW)

static const FpPersonPlace *
place_of (FpPewWindow *self)
{
  return &fp_people_places (self->people, NULL)[self->spec.place];
}

static gboolean
has_places (FpPewWindow *self)
{
  guint n = 0;

  if (self->people != NULL)
    fp_people_places (self->people, &n);
  return n > 0;
}

/* --- the picture -------------------------------------------------------------- */

static void
paint (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  FpPewWindow *self = data;

  (void) area;
  if (self->image == NULL || width <= 0 || height <= 0)
    return;
  /* Between a change of size and the next picture the last one is shown, in the middle. */
  const double w = cairo_image_surface_get_width (self->image), h = cairo_image_surface_get_height (self->image);
  const double scale = MIN (width / w, height / h);
  cairo_translate (cr, (width - w * scale) / 2, (height - h * scale) / 2);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, self->image, 0, 0);
  cairo_paint (cr);
}

static void
ask (FpPewWindow *self)
{
  const int width = gtk_widget_get_width (self->picture), height = gtk_widget_get_height (self->picture);
  const int dots = gtk_widget_get_scale_factor (self->picture);

  if (!has_places (self) || width <= 0 || height <= 0) /* it is asked again as soon as it has a size */
    return;
  self->spec.aspect = CLAMP ((double) width / height, 0.5, 3);
  fp_pew_maker_ask (self->maker, self->scene, &self->spec, MIN (width, (int) (height * self->spec.aspect)) * dots,
                    PEN * dots, fp_surface_look (self->ink, FALSE));
}

static void
received (const FpPewMade *made, gpointer data)
{
  FpPewWindow *self = data;
  g_autofree char *told = made->seen == NULL || *made->seen == '\0'
                            ? g_strdup_printf ("%s", made->eye) : g_strdup_printf ("%s\nSeen: %s", made->eye, made->seen);

  g_clear_pointer (&self->image, cairo_surface_destroy);
  self->image = cairo_surface_reference (made->image);
  gtk_widget_queue_draw (self->picture);
  if (made->seen == NULL)
    return; /* what was told last stays till then, so that nothing flickers */
  gtk_label_set_text (GTK_LABEL (self->told), told);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
}

/* --- which place ---------------------------------------------------------------- */

static void
set_upper (GtkWidget *spin, guint upper, guint value)
{
  gtk_adjustment_set_upper (gtk_spin_button_get_adjustment (GTK_SPIN_BUTTON (spin)), MAX (upper, 1u));
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), value);
}

/* Block, row and seat as the place has them. */
static void
show_place (FpPewWindow *self)
{
  const FpPersonPlace *at = place_of (self), *place;
  guint n, rows = 0, seats = 0;

  place = fp_people_places (self->people, &n);
  for (guint i = 0; i < n; i++)
    if (place[i].owner == at->owner)
      {
        rows = MAX (rows, place[i].row);
        seats = place[i].row == at->row ? MAX (seats, place[i].number) : seats;
      }
  self->filling = TRUE;
  for (guint i = 0; i < self->blocks->len; i++)
    if (g_array_index (self->blocks, guint, i) == at->owner)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->block), i);
  set_upper (self->row, rows, at->row);
  set_upper (self->seat, seats, at->number);
  self->filling = FALSE;
}

static void
choose (FpPewWindow *self, guint place)
{
  self->spec.place = place;
  show_place (self);
  ask (self);
}

static void
on_block (FpPewWindow *self)
{
  const guint i = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->block));
  guint place;

  if (self->filling || i >= self->blocks->len)
    return;
  fp_pew_first_place (self->people, (int) g_array_index (self->blocks, guint, i), &place);
  choose (self, place);
}

static void
on_seat (FpPewWindow *self)
{
  const guint row = (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->row));
  const guint seat = (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->seat));
  const guint owner = place_of (self)->owner;
  guint n, best = self->spec.place;
  const FpPersonPlace *place = fp_people_places (self->people, &n);

  if (self->filling)
    return;
  /* Rows may have fewer seats than others: the last one then. */
  for (guint i = 0; i < n; i++)
    if (place[i].owner == owner && place[i].row == row && place[i].number <= seat)
      best = i;
  choose (self, best);
}

static void
on_look (FpPewWindow *self)
{
  self->spec.moment = (FpMoment) MIN (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->moment)), FP_N_MOMENTS - 1u);
  if (self->filling)
    return;
  self->own_moment = TRUE;
  ask (self);
}

void
fp_pew_window_look_at (FpPewWindow *self, FpMoment moment, FpFocus focus)
{
  self->spec.focus = focus;
  if (!self->own_moment)
    {
      self->filling = TRUE;
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->moment), (guint) moment);
      self->filling = FALSE;
      self->spec.moment = moment;
    }
  ask (self);
}

void
fp_pew_window_choose_as (FpPewWindow *self, const FpPeople *people, guint place)
{
  if (has_places (self))
    choose (self, fp_pew_same_place (people, place, self->people));
}

void
fp_pew_window_choose_at (FpPewWindow *self, FpPoint at)
{
  guint place;

  if (has_places (self) && fp_pew_nearest_place (self->people, at, REACH, &place))
    choose (self, place);
}

FpMoment
fp_pew_window_moment (FpPewWindow *self)
{
  return self->spec.moment;
}

guint
fp_pew_window_place (FpPewWindow *self)
{
  return self->spec.place;
}

const char *
fp_pew_window_told (FpPewWindow *self)
{
  return gtk_label_get_text (GTK_LABEL (self->told));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpPewWindow *self)
{
  static const struct { guint key; int seats, rows; } moves[] = {
    { GDK_KEY_Left, -1, 0 }, { GDK_KEY_Right, 1, 0 }, { GDK_KEY_Up, 0, -1 }, { GDK_KEY_Down, 0, 1 },
  };

  (void) keys, (void) code;
  for (guint i = 0; i < G_N_ELEMENTS (moves) && has_places (self); i++)
    if (moves[i].key == key && (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) == 0)
      {
        choose (self, fp_pew_next_place (self->people, self->spec.place, moves[i].seats, moves[i].rows));
        return TRUE;
      }
  return FALSE;
}

/* --- the church ------------------------------------------------------------------ */

/* The blocks by name; those of the last scene are of no use to the next. */
static void
fill_blocks (FpPewWindow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  const FpPlaced *placed = fp_scene_placed (self->scene, NULL);
  guint n;
  const FpPersonPlace *place = fp_people_places (self->people, &n);

  g_array_set_size (self->blocks, 0);
  for (guint i = 0; i < n; i++)
    if (self->blocks->len == 0 || g_array_index (self->blocks, guint, self->blocks->len - 1) != place[i].owner)
      {
        gtk_string_list_append (names, fp_item_name (placed[place[i].owner].item));
        g_array_append_val (self->blocks, place[i].owner);
      }
  self->filling = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->block), G_LIST_MODEL (names));
  self->filling = FALSE;
}

static void
tell_nobody (FpPewWindow *self)
{
  g_clear_pointer (&self->image, cairo_surface_destroy);
  gtk_label_set_text (GTK_LABEL (self->told), "There are no pews or other places for the people.");
  gtk_widget_queue_draw (self->picture);
}

/* What changes while something is dragged are places, seldom blocks: the list is left alone then. */
static gboolean
has_same_blocks (FpPewWindow *self)
{
  guint n, k = 0;
  const FpPersonPlace *place = fp_people_places (self->people, &n);

  for (guint i = 0; i < n; i++)
    if (k == 0 || g_array_index (self->blocks, guint, k - 1) != place[i].owner)
      {
        if (k >= self->blocks->len || g_array_index (self->blocks, guint, k) != place[i].owner)
          return FALSE;
        k++;
      }
  return k == self->blocks->len;
}

static void
follow (FpPewWindow *self)
{
  const FpScene *next = fp_document_scene (self->document), *was = self->scene;
  FpPeople *people = fp_people_new (next), *were = self->people;

  if (were != NULL && has_places (self))
    self->spec.place = fp_pew_same_place (were, self->spec.place, people);
  self->people = people;
  self->scene = fp_scene_ref (next);
  g_clear_pointer (&were, fp_people_unref);
  g_clear_pointer (&was, fp_scene_unref);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "pew.save", has_places (self));
  if (!has_places (self))
    {
      tell_nobody (self);
      return;
    }
  if (!has_same_blocks (self) || !fp_document_is_previewing (self->document))
    fill_blocks (self);
  show_place (self);
  ask (self);
}

/* --- saving ------------------------------------------------------------------------ */

typedef struct
{
  FpPewWindow *window;
  char        *form; /* "png" … */
} Saving;

static gboolean
write_picture (FpPewWindow *self, const char *form, const char *path, GError **error)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  const FpBrief *brief = fp_project_brief (fp_scene_project (self->scene));
  const FpSheetSpec spec = {
    .paper = brief->units == FP_UNITS_IMPERIAL ? FP_PAPER_LETTER : FP_PAPER_A4, .landscape = TRUE,
    .ink = self->ink, .date = date,
  };
  FpPewSpec view = self->spec;
  g_autoptr (FpSight) sight = fp_sight_new (self->people, NULL);

  view.aspect = 0;
  g_autoptr (FpDrawing) page = fp_pew_sheet_new (sight, &view, &spec);
  if (g_str_equal (form, "png"))
    return fp_drawing_write_png (page, DPI, path, error);
  if (g_str_equal (form, "svg"))
    return fp_drawing_write_svg (page, self->scene, brief->title, path, error);
  return fp_drawing_write_pdf (&page, 1, brief->title, brief->author, path, error);
}

static void
on_file (GFile *file, gpointer data)
{
  Saving *saving = data;
  g_autoptr (FpPewWindow) self = saving->window;
  g_autofree char *form = saving->form, *chosen = file != NULL ? g_file_get_path (file) : NULL, *path = NULL, *said = NULL;
  g_autoptr (GError) error = NULL;

  g_free (saving);
  if (file == NULL || !has_places (self))
    return;
  if (chosen == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->told), "Pictures can only be written to files on this computer.");
      return;
    }
  path = fp_file_with_suffix (chosen, form, &error);
  if (path != NULL && write_picture (self, form, path, &error))
    said = g_strdup_printf ("Written: %s", path);
  gtk_label_set_text (GTK_LABEL (self->told), said != NULL ? said : error->message);
}

static void
save (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpPewWindow *self = FP_PEW_WINDOW (widget);
  const char *path = fp_document_path (self->document), *form = g_variant_get_string (parameter, NULL);
  const char *alternative = fp_alternative_name (fp_project_alternative (fp_document_project (self->document),
                                                                         fp_document_alternative (self->document)));
  g_autofree char *eye = fp_pew_eye_text (self->people, &self->spec), *project = fp_document_name (self->document);
  g_autofree char *name = fp_file_offered_name (project, alternative, eye, form), *form_name = g_ascii_strup (form, -1);
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  const FpFileQuestion question = {
    .title = "Save Picture", .accept = "_Save", .save = TRUE, .name = name, .folder = folder, .filter_name = form_name,
    .filter_suffix = form,
  };
  Saving *saving = g_new (Saving, 1);

  (void) action;
  *saving = (Saving) { g_object_ref (self), g_strdup (form) };
  fp_ask_file (GTK_WINDOW (self), &question, on_file, saving);
}

/* --- the window --------------------------------------------------------------------- */

static void
fp_pew_window_dispose (GObject *object)
{
  FpPewWindow *self = FP_PEW_WINDOW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->maker, fp_pew_maker_free);
  g_clear_object (&self->document);
  g_clear_pointer (&self->people, fp_people_unref);
  g_clear_pointer (&self->scene, fp_scene_unref);
  g_clear_pointer (&self->image, cairo_surface_destroy);
  g_clear_pointer (&self->blocks, g_array_unref);
  G_OBJECT_CLASS (fp_pew_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (c, FpPewWindow, name)

static void
fp_pew_window_class_init (FpPewWindowClass *klass)
{
  GtkWidgetClass *c = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_pew_window_dispose;
  gtk_widget_class_set_template_from_resource (c, "/org/footpace/Footpace/pew-window.ui");
  BIND (block);
  BIND (row);
  BIND (seat);
  BIND (moment);
  BIND (picture);
  BIND (told);
  gtk_widget_class_bind_template_callback (c, on_block);
  gtk_widget_class_bind_template_callback (c, on_seat);
  gtk_widget_class_bind_template_callback (c, on_look);
  gtk_widget_class_install_action (c, "pew.save", "s", save);
  gtk_widget_class_add_binding_action (c, GDK_KEY_s, GDK_CONTROL_MASK, "pew.save", "s", "png");
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "window.close", NULL);
}

#undef BIND

static void
fill_moments (FpPewWindow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < FP_N_MOMENTS; i++)
    gtk_string_list_append (names, fp_moment_label ((FpMoment) i));
  self->filling = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->moment), G_LIST_MODEL (names));
  self->spec.moment = FP_MOMENT_OFFERTORY;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->moment), FP_MOMENT_OFFERTORY);
  self->filling = FALSE;
}

static void
fp_pew_window_init (FpPewWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->blocks = g_array_new (FALSE, FALSE, sizeof (guint));
  self->filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->filling = FALSE;
  fp_name_buttons (GTK_WIDGET (self));
  self->maker = fp_pew_maker_new (received, self);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), paint, self, NULL);
  g_signal_connect_swapped (self->picture, "resize", G_CALLBACK (ask), self);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (on_key), self, 0);
  gtk_widget_add_controller (self->picture, keys);
  fill_moments (self);
}

GtkWidget *
fp_pew_window_new (GtkWindow *parent, FpDocument *document, FpInkChoice ink)
{
  FpPewWindow *self = g_object_new (FP_TYPE_PEW_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);
  const char *chosen = fp_document_chosen (document);

  self->document = g_object_ref (document);
  self->ink = ink;
  g_signal_connect_swapped (document, "scene", G_CALLBACK (follow), self);
  follow (self);
  if (has_places (self))
    {
      guint place;
      fp_pew_first_place (self->people, chosen != NULL ? fp_scene_find (self->scene, chosen) : -1, &place);
      choose (self, place);
    }
  gtk_widget_grab_focus (self->picture);
  return GTK_WIDGET (self);
}
