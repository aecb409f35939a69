/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-view-private.h"

#include "amiss.h"

#include <math.h>

G_DEFINE_FINAL_TYPE (FpBoardView, fp_board_view, GTK_TYPE_WIDGET)

enum { NOTICE, SHOWS, PLAN_CLICKED, N_SIGNALS };
static guint signals[N_SIGNALS];
enum { PROP_0, PROP_READOUT, PROP_TAPE, N_PROPS };
static GParamSpec *props[N_PROPS];

/* --- drawings from the background ---------------------------------------------- */

/* Another view stands in the place of the elevation: what stood where in it is of no use. */
static void
forget_elevation (FpBoardView *self, const FpProjection *next)
{
  const FpProjection *last = self->projection[FP_VIEW_ELEVATION];
  const FpCut was = last != NULL ? fp_projection_cut (last) : (FpCut) { FALSE, 0.0, FALSE }, is = fp_projection_cut (next);

  if (was.placed == is.placed && was.turned == is.turned)
    return;
  fp_board_view_forget_memory (self);
  fp_tape_turn (&self->tape, is.turned);
}

static void
on_projections (FpProjection *const *projection, gpointer data)
{
  FpBoardView *self = data;
  const FpScene *was = self->projection[0] != NULL ? fp_scene_ref (fp_projection_scene (self->projection[0])) : NULL;

  forget_elevation (self, projection[FP_VIEW_ELEVATION]);
  if (was != NULL && was != fp_projection_scene (projection[0]))
    fp_board_view_recall (self, fp_projection_scene (projection[0]));
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      g_clear_pointer (&self->projection[v], fp_projection_unref);
      self->projection[v] = fp_projection_ref (projection[v]);
    }
  fp_board_view_forget_still (self);
  if (was != NULL)
    {
      fp_board_view_tape_follow (self, was);
      fp_scene_unref (was);
    }
  if (self->document == NULL)
    return;
  if (self->scale <= 0.0)
    fp_board_view_fit (self);
  else if (self->held)
    fp_board_view_forget_drawing (self);
  else
    fp_board_view_relayout (self);
}

/* --- the document --------------------------------------------------------- */

static void
on_scene (FpDocument *document, FpBoardView *self)
{
  /* An edit from elsewhere (undo, a typed value) ends a move that is still under the hand. */
  if (self->held && !self->own_change)
    {
      if (self->tool.state == FP_TOOL_TYPING)
        fp_board_view_drop_typing (self);
      fp_board_tool_cancel (&self->tool);
      fp_board_view_let_go (self);
    }
  fp_board_view_forget_handles (self);
  fp_board_view_free_change (self);
  fp_drafter_draft (self->drafter, fp_document_scene (document), &self->how);
  if (!fp_document_is_previewing (document))
    fp_board_view_tell (self);
}

static void
on_chosen (FpDocument *document, FpBoardView *self)
{
  (void) document;
  /* From where the chosen thing is set out is drawn for it alone. */
  fp_board_view_forget_drawing (self);
  fp_board_view_forget_handles (self);
  self->handle = 0;
  self->figure = 0;
  self->marked = FALSE;
  fp_board_view_tell (self);
}

static void
forget_document (FpBoardView *self)
{
  fp_board_view_drop_typing (self);
  fp_board_view_set_tape (self, FALSE);
  fp_board_view_forget_still (self);
  fp_board_view_forget_handles (self);
  if (self->document == NULL)
    return;
  fp_board_view_mark_way (self, NULL);
  fp_board_view_mark_evidence (self, NULL);
  g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->drafter, fp_drafter_free);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&self->projection[v], fp_projection_unref);
  fp_board_view_forget_drawing (self);
  fp_board_view_forget_sight (self);
  fp_board_view_forget_sun (self);
  fp_board_view_free_change (self);
  fp_board_view_forget_pew (self);
}

void
fp_board_view_set_document (FpBoardView *self, FpDocument *document)
{
  fp_board_view_set_begun (self, document, NULL);
}

void
fp_board_view_set_begun (FpBoardView *self, FpDocument *document, FpDraft *begun)
{
  g_autoptr (FpDraft) taken = begun;

  forget_document (self);
  fp_board_view_forget_memory (self);
  self->scale = 0.0;
  self->framing = FRAME_SANCTUARY;
  self->only = -1;
  self->marked = FALSE;
  fp_board_view_let_go (self);
  fp_board_tool_cancel (&self->tool);
  fp_board_tool_release (&self->tool, self->tool.last);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  self->drafter = fp_drafter_new (on_projections, self);
  fp_drafter_take_begun (self->drafter, g_steal_pointer (&taken));
  g_signal_connect (document, "scene", G_CALLBACK (on_scene), self);
  g_signal_connect (document, "chosen", G_CALLBACK (on_chosen), self);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (fp_board_view_sight_changed), self);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (fp_board_view_sun_changed), self);
  on_scene (document, self);
}

void
fp_board_view_notice (FpBoardView *self, const char *text)
{
  g_autofree char *said = fp_amiss_words (fp_document_scene (self->document), text);

  g_signal_emit (self, signals[NOTICE], 0, said);
}

void
fp_board_view_tell_click (FpBoardView *self, double x, double y)
{
  const FpPoint paper = fp_board_view_to_paper (self, x, y);
  FpPoint at;

  if (fp_board_view_view_at (self, paper) != FP_VIEW_PLAN)
    return;
  at = fp_view_from_paper (&self->layout.view[FP_VIEW_PLAN], paper);
  g_signal_emit (self, signals[PLAN_CLICKED], 0, at.x, at.y);
}

/* --- what is shown, and how ------------------------------------------------ */

void
fp_board_view_tell_shows (FpBoardView *self)
{
  g_signal_emit (self, signals[SHOWS], 0);
}

static void
draw_anew (FpBoardView *self)
{
  fp_board_view_tell_shows (self);
  if (self->document == NULL)
    return;
  fp_board_view_cancel (self);
  fp_drafter_draft (self->drafter, fp_document_scene (self->document), &self->how);
}

void
fp_board_view_set_hidden (FpBoardView *self, FpHidden hidden)
{
  if (self->how.hidden == hidden)
    return;
  fp_board_view_cancel (self);
  self->how.hidden = hidden;
  fp_board_view_forget_handles (self);
  self->handle = 0;
  draw_anew (self);
}

FpHidden
fp_board_view_hidden (FpBoardView *self)
{
  return self->how.hidden;
}

/* In first-angle arrangement the section along the church is never turned: east is beside the elevation. */
void
fp_board_view_set_cut (FpBoardView *self, FpViewId view, const FpCut *cut)
{
  const gboolean turned = cut->placed && cut->turned && view == FP_VIEW_ELEVATION;

  self->how.cut[view] = (FpCut) { cut->placed, cut->placed ? cut->at : 0.0, turned };
  draw_anew (self);
}

FpCut
fp_board_view_cut (FpBoardView *self, FpViewId view)
{
  return self->how.cut[view];
}

static FpSurfaceLook
look_of (FpBoardView *self)
{
  return fp_surface_look (self->ink, self->dark);
}

static void
set_dark (FpBoardView *self)
{
  self->dark = self->ground == FP_GROUND_OF_SYSTEM ? self->system_dark : self->ground == FP_GROUND_DARK;
  fp_board_view_forget_nodes (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_set_look (FpBoardView *self, FpGround ground, FpInkChoice ink)
{
  self->ground = ground;
  self->ink = ink;
  set_dark (self);
}

/* --- the widget ----------------------------------------------------------- */

/* Where the page lies: on whole pixels. */
static FpPoint
corner_of_page (FpBoardView *self)
{
  const FpPoint corner = fp_board_view_to_widget (self, (FpPoint) { 0.0, fp_drawing_height (self->drawing) });

  return (FpPoint) { round (corner.x), round (corner.y) };
}

static FpPagePaint
paint_of (FpBoardView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const FpPoint corner = corner_of_page (self);

  return (FpPagePaint) {
    self->drawing, look_of (self), PX_PER_MM, gtk_widget_get_scale_factor (widget),
    { -(int) corner.x, -(int) corner.y, gtk_widget_get_width (widget), gtk_widget_get_height (widget) },
  };
}

static gboolean
prepare (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);

  (void) clock, (void) data;
  self->preparing = FALSE;
  if (self->document == NULL || !gtk_widget_get_mapped (widget))
    return G_SOURCE_REMOVE;
  fp_board_view_ensure (self);
  if (self->drawing != NULL)
    {
      const FpPagePaint paint = paint_of (self);
      fp_page_tiles_paint (self->page, &paint);
    }
  fp_document_catch_up (self->document);
  return G_SOURCE_REMOVE;
}

/* Drawn early in the frame, before the lists are laid out: what is found of the same scene meanwhile, beside it, is told
 * in this frame and not in the next. */
void
fp_board_view_prepare (FpBoardView *self)
{
  if (self->preparing || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  self->preparing = TRUE;
  gtk_widget_add_tick_callback (GTK_WIDGET (self), prepare, NULL, NULL);
}

static void
snapshot_page (FpBoardView *self, GtkSnapshot *snapshot)
{
  const FpPagePaint paint = paint_of (self);
  const FpPoint corner = corner_of_page (self);

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) corner.x, (float) corner.y));
  fp_page_tiles_snapshot (self->page, &paint, snapshot);
  gtk_snapshot_restore (snapshot);
}

static void
fp_board_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  float w = (float) gtk_widget_get_width (widget), h = (float) gtk_widget_get_height (widget);
  FpInk ink = fp_fill_ink (FP_FILL_PAPER, FP_STANDING_EXISTING, look_of (self));
  GdkRGBA paper = { (float) ink.r, (float) ink.g, (float) ink.b, 1.0f };

  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (0, 0, w, h));
  gtk_snapshot_append_color (snapshot, &paper, &GRAPHENE_RECT_INIT (0, 0, w, h));
  fp_board_view_ensure (self);
  if (self->drawing != NULL)
    {
      snapshot_page (self, snapshot);
      fp_board_view_snapshot_sight (self, snapshot, look_of (self));
      fp_board_view_snapshot_sun (self, snapshot, look_of (self));
      fp_board_view_snapshot_way (self, snapshot, look_of (self));
      fp_board_view_snapshot_evidence (self, snapshot, look_of (self));
      fp_board_view_snapshot_pew (self, snapshot, look_of (self));
      fp_board_view_snapshot_overlays (self, snapshot, w, h);
      fp_board_view_snapshot_change (self, snapshot, look_of (self));
    }
  gtk_snapshot_pop (snapshot);
}

static void
fp_board_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  const double now = fp_board_view_height_mm (self);
  const gboolean resized = width != self->width || now != self->height;

  (void) height, (void) baseline;
  if (self->height > 0.0)
    self->pan.y += now - self->height;
  self->height = now;
  self->width = width;
  /* A field that opens over the board has it allocated too: what is looked at stays as it is then. */
  if (self->framing != FRAME_BY_HAND && (resized || self->scale <= 0.0))
    fp_board_view_fit (self);
  else if (resized && fp_board_view_has_projections (self) && !self->held)
    {
      fp_board_view_lay_out (self);
      fp_board_view_forget_drawing (self);
    }
  if (self->typing != NULL)
    gtk_popover_present (GTK_POPOVER (self->typing));
}

static void
fp_board_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                       int *minimum_baseline, int *natural_baseline)
{
  (void) widget, (void) for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 240;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 640;
  *minimum_baseline = *natural_baseline = -1;
}

/* The style is dark where its letters are light. */
static void
fp_board_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  GdkRGBA letters;
  gboolean dark;

  GTK_WIDGET_CLASS (fp_board_view_parent_class)->css_changed (widget, change);
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &letters);
  dark = letters.red + letters.green + letters.blue > 1.5f;
  if (dark == self->system_dark)
    return;
  self->system_dark = dark;
  set_dark (self);
}

static void
fp_board_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_READOUT)
    g_value_set_string (value, FP_BOARD_VIEW (object)->readout);
  else if (id == PROP_TAPE)
    g_value_set_boolean (value, fp_board_view_has_tape (FP_BOARD_VIEW (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fp_board_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_TAPE)
    fp_board_view_set_tape (FP_BOARD_VIEW (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fp_board_view_dispose (GObject *object)
{
  FpBoardView *self = FP_BOARD_VIEW (object);

  forget_document (self);
  fp_board_view_free_sight (self);
  fp_board_view_free_change (self);
  fp_board_view_free_sun (self);
  fp_board_view_free_pew (self);
  fp_board_view_forget_nodes (self);
  fp_board_view_let_go (self);
  g_clear_pointer (&self->hover, g_free);
  g_clear_pointer (&self->readout, g_free);
  g_clear_handle_id (&self->settling, g_source_remove);
  g_clear_pointer (&self->page, fp_page_tiles_free);
  fp_board_view_drop_memory (self);
  G_OBJECT_CLASS (fp_board_view_parent_class)->dispose (object);
}

static void
fp_board_view_class_init (FpBoardViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fp_board_view_dispose;
  object_class->get_property = fp_board_view_get_property;
  object_class->set_property = fp_board_view_set_property;
  widget_class->snapshot = fp_board_view_snapshot;
  widget_class->size_allocate = fp_board_view_size_allocate;
  widget_class->measure = fp_board_view_measure;
  widget_class->css_changed = fp_board_view_css_changed;
  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  props[PROP_READOUT] = g_param_spec_string ("readout", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_TAPE] = g_param_spec_boolean ("tape", NULL, NULL, FALSE,
                                           G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SHOWS] = g_signal_new ("shows", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_signal_new ("sight-told", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_signal_new ("sun-told", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[NOTICE] = g_signal_new ("notice", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_STRING);
  signals[PLAN_CLICKED] = g_signal_new ("plan-clicked", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
}

static void
fp_board_view_init (FpBoardView *self)
{
  self->pointer = (FpPoint) { -1.0, -1.0 };
  self->anchor = FP_VIEW_PLAN;
  self->only = -1;
  self->page = fp_page_tiles_new ();
  fp_board_view_forget_memory (self);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, "Board", -1);
  fp_board_view_add_controllers (self);
}

GtkWidget *
fp_board_view_new (void)
{
  return g_object_new (FP_TYPE_BOARD_VIEW, NULL);
}
