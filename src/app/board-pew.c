/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-pew.c - the view from the pew in the empty quarter of the board
 *
 * The picture is made and painted on a thread; here it is only laid down where there is room.  While something is under the
 * hand the quarter belongs to the mitre line, and nothing is asked for.
 */
#include "board-view-private.h"

#include "pew-maker.h"
#include "pew-room.h"

#include <math.h>

#define REACH 700.0 /* mm, from a click to the person that is meant */
#define PEN   0.75  /* px                                           */
#define WORDS 0.85  /* of the letters of the window                 */

struct _FpBoardPew
{
  FpPewMaker      *maker;
  const FpScene   *scene;     /* of which `people` are; owned                 */
  FpPeople        *people;
  FpPewSpec        spec;
  int              of_sight;  /* the place that Sight had chosen; -1          */
  FpDrawing       *laid;      /* on which room was looked for; owned          */
  const void      *laid_over; /* what lay over it then: only to be compared   */
  FpBox            room;      /* paper mm of that drawing; empty: there is none */
  const FpScene   *asked;     /* what was asked for last: only to be compared */
  FpPewSpec        asked_spec;
  int              asked_width;
  FpSurfaceLook    asked_look;
  cairo_surface_t *image;     /* NULL: none has come yet                      */
  char            *told;
};

static guint
n_places (const FpBoardPew *pew)
{
  guint n = 0;

  if (pew->people != NULL)
    fp_people_places (pew->people, &n);
  return n;
}

/* --- whose eye -------------------------------------------------------------------- */

/* The same row and seat in the church as it is now; to begin with the middle of what is chosen, or of the church. */
static void
follow_church (FpBoardView *self)
{
  FpBoardPew *pew = self->pew;
  const FpScene *next = fp_document_scene (self->document);
  const char *chosen = fp_document_chosen (self->document);
  FpPeople *people;

  if (pew->scene == next)
    return;
  people = fp_people_new (next);
  if (n_places (pew) > 0)
    pew->spec.place = fp_pew_same_place (pew->people, pew->spec.place, people);
  else if (!fp_pew_first_place (people, chosen != NULL ? fp_scene_find (next, chosen) : -1, &pew->spec.place))
    pew->spec.place = 0;
  g_clear_pointer (&pew->people, fp_people_unref);
  g_clear_pointer (&pew->scene, fp_scene_unref);
  pew->people = people;
  pew->scene = fp_scene_ref (next);
  pew->asked = NULL; /* one that was freed may have lain there */
}

/* What Sight looks at is looked at here, too. */
static void
follow_sight (FpBoardView *self)
{
  FpBoardPew *pew = self->pew;
  const FpSightDraft *draft = fp_board_view_sight (self);

  pew->spec.moment = draft != NULL ? draft->look.moment : FP_MOMENT_OFFERTORY;
  pew->spec.focus = draft != NULL ? draft->look.focus : FP_FOCUS_MENSA;
  if (draft == NULL || draft->look.place == pew->of_sight)
    return;
  pew->of_sight = draft->look.place;
  if (pew->of_sight >= 0 && (guint) pew->of_sight < n_places (pew))
    pew->spec.place = (guint) pew->of_sight;
}

void
fp_board_view_set_pew_at (FpBoardView *self, FpPoint at)
{
  if (self->pew == NULL || n_places (self->pew) == 0
      || !fp_pew_nearest_place (self->pew->people, at, REACH, &self->pew->spec.place))
    return;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* --- where it lies ----------------------------------------------------------------- */

static void
cover_over (FpBoardView *self, const FpOverPart *part, double scale, const FpBox *quarter, GArray *covered)
{
  const FpViewLayout *plan = &self->layout.view[FP_VIEW_PLAN];

  if (part->drawing != NULL)
    fp_pew_room_cover (covered, part->drawing, fp_view_to_paper (plan, part->corner), scale / plan->scale, quarter);
}

static const void *
lies_over (FpBoardView *self)
{
  if (fp_board_view_blind (self) != NULL)
    return fp_board_view_blind (self);
  return self->sight != NULL ? (const void *) fp_board_view_sight (self) : (const void *) fp_board_view_sun (self);
}

static void
find_room (FpBoardView *self)
{
  FpBoardPew *pew = self->pew;
  const FpPoint a = fp_board_view_to_paper (self, 0, gtk_widget_get_height (GTK_WIDGET (self)));
  const FpPoint b = fp_board_view_to_paper (self, gtk_widget_get_width (GTK_WIDGET (self)), 0);
  const FpBox seen = { a.x, a.y, b.x, b.y }, quarter = fp_pew_room_quarter (&self->layout, &seen);
  const FpSightDraft *sight = fp_board_view_sight (self);
  const FpBlindDraft *blind = fp_board_view_blind (self);
  const FpSunDraft *sun = fp_board_view_sun (self);
  g_autoptr (GArray) covered = fp_pew_room_covered ();

  if (pew->laid != self->drawing)
    {
      g_clear_pointer (&pew->laid, fp_drawing_unref);
      pew->laid = fp_drawing_ref (self->drawing);
    }
  pew->laid_over = lies_over (self);
  pew->room = FP_BOX_EMPTY;
  if (fp_box_is_empty (&quarter))
    return;
  fp_pew_room_cover (covered, self->drawing, (FpPoint) { 0, 0 }, 1, &quarter);
  if (sight != NULL)
    cover_over (self, &sight->part[FP_VIEW_PLAN], sight->scale, &quarter, covered);
  if (blind != NULL)
    cover_over (self, &blind->part, blind->scale, &quarter, covered);
  if (sun != NULL)
    cover_over (self, &sun->part[FP_VIEW_PLAN], sun->scale, &quarter, covered);
  pew->room = fp_pew_room_find (&self->layout, &quarter, covered);
}

/* --- the picture -------------------------------------------------------------------- */

static void
received (const FpPewMade *made, gpointer data)
{
  FpBoardView *self = data;
  FpBoardPew *pew = self->pew;

  if (pew == NULL)
    return;
  g_clear_pointer (&pew->image, cairo_surface_destroy);
  pew->image = cairo_surface_reference (made->image);
  g_free (pew->told);
  pew->told = made->seen == NULL || *made->seen == '\0' ? g_strdup (made->eye)
                                                        : g_strdup_printf ("%s. Seen: %s", made->eye, made->seen);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
ask (FpBoardView *self, double width, FpSurfaceLook look)
{
  FpBoardPew *pew = self->pew;
  const int dots = gtk_widget_get_scale_factor (GTK_WIDGET (self)), wide = (int) round (width) * dots;

  if (pew->asked == pew->scene && pew->asked_width == wide && pew->asked_look == look
      && memcmp (&pew->asked_spec, &pew->spec, sizeof pew->spec) == 0)
    return;
  pew->asked = pew->scene;
  pew->asked_width = wide;
  pew->asked_look = look;
  pew->asked_spec = pew->spec;
  fp_pew_maker_ask (pew->maker, pew->scene, &pew->spec, wide, PEN * dots, look);
}

/* In px, over the words that are drawn under it. */
static FpBox
picture_box (FpBoardView *self)
{
  const FpBox *room = &self->pew->room;
  const FpPoint top = fp_board_view_to_widget (self, (FpPoint) { room->x0, room->y1 });
  const FpPoint foot = fp_board_view_to_widget (self, (FpPoint) { room->x1, room->y0 + fp_pew_room_words (room->x1 - room->x0) });

  return (FpBox) { round (top.x), round (top.y), round (foot.x), round (foot.y) };
}

static void
draw_words (FpBoardView *self, cairo_t *cr, const FpBox *box, FpSurfaceLook look)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), self->pew->told);
  g_autoptr (PangoAttrList) small = pango_attr_list_new ();
  const FpInk ink = fp_pen_ink (FP_PEN_LETTER, FP_STANDING_EXISTING, look);

  pango_attr_list_insert (small, pango_attr_scale_new (WORDS));
  pango_layout_set_attributes (layout, small);
  pango_layout_set_width (layout, (int) (box->x1 - box->x0) * PANGO_SCALE);
  pango_layout_set_height (layout, -(int) fp_pew_room_lines (self->pew->room.x1 - self->pew->room.x0));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  cairo_set_source_rgb (cr, ink.r, ink.g, ink.b);
  cairo_move_to (cr, box->x0, box->y1 + 2);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_picture (FpBoardView *self, cairo_t *cr, const FpBox *box, FpSurfaceLook look)
{
  const double scale = (box->x1 - box->x0) / cairo_image_surface_get_width (self->pew->image);
  const FpInk frame = fp_pen_ink (FP_PEN_AXIS, FP_STANDING_EXISTING, look);

  cairo_save (cr);
  cairo_translate (cr, box->x0, box->y0);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, self->pew->image, 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
  cairo_rectangle (cr, box->x0 + 0.5, box->y0 + 0.5, box->x1 - box->x0 - 1, box->y1 - box->y0 - 1);
  cairo_set_source_rgb (cr, frame.r, frame.g, frame.b);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

/* --- shown ---------------------------------------------------------------------------- */

static gboolean
steps_aside (FpBoardView *self)
{
  return self->held || self->tool.state == FP_TOOL_MOVING || self->tool.state == FP_TOOL_FRAMING;
}

gboolean
fp_board_view_pew_room (FpBoardView *self, FpBox *box)
{
  if (self->pew == NULL || self->pew->image == NULL || steps_aside (self) || fp_box_is_empty (&self->pew->room))
    return FALSE;
  *box = picture_box (self);
  return TRUE;
}

void
fp_board_view_snapshot_pew (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardPew *pew = self->pew;
  double words;
  FpBox box;
  cairo_t *cr;

  if (pew == NULL || steps_aside (self))
    return;
  follow_church (self);
  follow_sight (self);
  if (pew->laid != self->drawing || pew->laid_over != lies_over (self))
    find_room (self);
  if (n_places (pew) == 0 || fp_box_is_empty (&pew->room))
    return;
  words = fp_pew_room_words (pew->room.x1 - pew->room.x0);
  box = picture_box (self);
  ask (self, box.x1 - box.x0, look);
  if (pew->image == NULL)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT ((float) box.x0, (float) box.y0, (float) (box.x1 - box.x0),
                                                                 (float) (box.y1 - box.y0 + words * PX_PER_MM)));
  draw_picture (self, cr, &box, look);
  draw_words (self, cr, &box, look);
  cairo_destroy (cr);
}

const FpPewSpec *
fp_board_view_pew (FpBoardView *self, const char **told)
{
  if (told != NULL)
    *told = self->pew != NULL ? self->pew->told : NULL;
  return self->pew != NULL ? &self->pew->spec : NULL;
}

/* --- life --------------------------------------------------------------------------------- */

void
fp_board_view_forget_pew (FpBoardView *self)
{
  FpBoardPew *pew = self->pew;

  if (pew == NULL)
    return;
  g_clear_pointer (&pew->people, fp_people_unref);
  g_clear_pointer (&pew->scene, fp_scene_unref);
  g_clear_pointer (&pew->laid, fp_drawing_unref);
  g_clear_pointer (&pew->image, cairo_surface_destroy);
  g_clear_pointer (&pew->told, g_free);
  pew->asked = NULL;
  pew->of_sight = -1;
}

void
fp_board_view_free_pew (FpBoardView *self)
{
  FpBoardPew *pew = self->pew;

  if (pew == NULL)
    return;
  fp_pew_maker_free (pew->maker); /* nothing is received after that */
  fp_board_view_forget_pew (self);
  self->pew = NULL;
  g_free (pew);
}

void
fp_board_view_set_pew (FpBoardView *self, gboolean shown)
{
  if (shown == (self->pew != NULL))
    return;
  if (shown)
    {
      self->pew = g_new0 (FpBoardPew, 1);
      self->pew->room = FP_BOX_EMPTY;
      self->pew->of_sight = -1;
      self->pew->maker = fp_pew_maker_new (received, self);
    }
  else
    fp_board_view_free_pew (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
