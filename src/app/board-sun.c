/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-sun.c - over the board: where the sun shines at a time, and in whose eyes */
#include "board-view-private.h"

typedef struct _FpBoardSun FpBoardSun;

struct _FpBoardSun
{
  FpOverDrafter *drafter;
  FpSunLook      look;
  FpSunDraft    *draft;    /* NULL: none has come yet                         */
  const FpScene *asked;    /* owned reference: what was asked for last; NULL: nothing */
  FpBoardOver    over;
};

static void
keep_asked (FpBoardSun *sun, const FpScene *scene)
{
  if (sun->asked != NULL)
    fp_scene_unref (sun->asked);
  sun->asked = scene != NULL ? fp_scene_ref (scene) : NULL;
}

static void
ask (FpBoardView *self)
{
  FpViewLayout view[FP_N_VIEWS];

  if (self->sun == NULL || self->document == NULL || !fp_board_view_has_projections (self))
    return;
  fp_board_view_shown_views (self, view);
  keep_asked (self->sun, fp_document_scene (self->document));
  fp_over_drafter_ask (self->sun->drafter, fp_sun_request_new (self->sun->asked, &self->sun->look, view));
}

static void
on_draft (gpointer draft, gpointer data)
{
  FpBoardView *self = data;

  fp_sun_draft_free (self->sun->draft);
  self->sun->draft = draft;
  fp_board_over_forget (&self->sun->over);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit_by_name (self, "sun-told");
}

/* Findings come more than once for one scene. */
void
fp_board_view_sun_changed (FpBoardView *self)
{
  if (self->sun != NULL && self->sun->asked != fp_document_scene (self->document))
    ask (self);
}

void
fp_board_view_forget_sun (FpBoardView *self)
{
  if (self->sun == NULL)
    return;
  g_clear_pointer (&self->sun->draft, fp_sun_draft_free);
  keep_asked (self->sun, NULL);
  fp_board_over_forget (&self->sun->over);
}

void
fp_board_view_free_sun (FpBoardView *self)
{
  FpBoardSun *sun = g_steal_pointer (&self->sun);

  if (sun == NULL)
    return;
  fp_over_drafter_free (sun->drafter);
  fp_sun_draft_free (sun->draft);
  keep_asked (sun, NULL);
  fp_board_over_forget (&sun->over);
  g_free (sun);
}

void
fp_board_view_set_sun (FpBoardView *self, const FpSunLook *look)
{
  const gboolean was_shown = self->sun != NULL;

  if (look == NULL)
    fp_board_view_free_sun (self);
  else
    {
      if (self->sun == NULL)
        {
          self->sun = g_new0 (FpBoardSun, 1);
          self->sun->drafter = fp_over_drafter_new (&fp_sun_drafting, on_draft, self);
        }
      self->sun->look = *look;
      ask (self);
    }
  if (was_shown != (self->sun != NULL) && fp_board_view_has_projections (self))
    {
      fp_board_view_lay_out (self);
      fp_board_view_forget_drawing (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const FpSunDraft *
fp_board_view_sun (FpBoardView *self)
{
  return self->sun != NULL ? self->sun->draft : NULL;
}

void
fp_board_view_snapshot_sun (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardSun *sun = self->sun;

  if (sun == NULL || sun->draft == NULL)
    return;
  fp_board_over_snapshot (&sun->over, self, snapshot, look, sun->draft->part, sun->draft->scale);
  if (fp_board_over_is_outgrown (self, sun->draft->scale) && !self->held)
    ask (self);
}
