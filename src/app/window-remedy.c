/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-remedy.c - a finding is chosen: where it is, what it is about, and what would settle it */
#include "window-private.h"

#include "found-remedy.h"

#include <math.h>

#define GRACE_MS 50

/* --- what is shown of it -------------------------------------------------- */

static void
choose_item (FpWindow *self, const char *item)
{
  FpVec3 at;
  gboolean marked = fp_board_view_marked (FP_BOARD_VIEW (self->board), &at);

  fp_document_choose (self->document, item);
  self->pointing = TRUE;
  if (marked)
    fp_board_view_mark (FP_BOARD_VIEW (self->board), &at);
}

/* What can be changed is brought into view; what is only moved has its place among its fields. */
static void
point_out (FpWindow *self)
{
  const FpChange *r = &self->remedy[0].change[0];

  if (g_strcmp0 (fp_document_chosen (self->document), r->item) != 0)
    choose_item (self, r->item);
  if (r->param != NULL)
    fp_inspector_point_out (FP_INSPECTOR (self->inspector), r->param->id);
  else
    fp_inspector_point_out_place (FP_INSPECTOR (self->inspector), r->by.x == 0.0);
}

static void
follow (FpWindow *self)
{
  self->follows = FALSE;
  if (self->n_remedies > 0)
    point_out (self);
  if (fp_document_chosen (self->document) != NULL)
    fp_inspector_focus_pointed_out (FP_INSPECTOR (self->inspector));
}

static void
forget_remedies (FpWindow *self)
{
  for (guint i = 0; i < self->n_remedies; i++)
    g_clear_pointer (&self->remedy_label[i], g_free);
  self->n_remedies = 0;
}

/* Takes @label. */
static void
add_remedy (FpWindow *self, const FpRemedy *remedy, char *label)
{
  self->remedy[self->n_remedies] = *remedy;
  self->remedy_label[self->n_remedies++] = label;
}

/* What gives it goes to the remedies; what does not, to the note, and once where no level would. */
static void
offer_first_row (FpWindow *self, const FpFoundRemedy *found, GStrvBuilder *words, GString *note)
{
  const FpScene *scene = fp_document_scene (self->document);
  FpFirstRowHow last = FP_FIRST_ROW_BY_STEPS;

  for (guint i = 0; i < found->n_first; i++)
    {
      const FpFirstRow *first = &found->first[i];
      g_autofree char *text = fp_first_row_words (first, scene);
      if (first->how == FP_FIRST_ROW_BY_STEPS)
        {
          g_strv_builder_add (words, text);
          add_remedy (self, &first->remedy, fp_first_row_label (first, scene));
        }
      else if (text != NULL && (first->how == FP_FIRST_ROW_TOO_HIGH || first->how == FP_FIRST_ROW_NO_ROOM || first->how != last))
        g_string_append_printf (note, "%s%s.", note->len > 0 ? " " : "", text);
      last = first->how;
    }
}

/* Where little more settles others too, that comes first; where much, the smallest change does. */
static void
offer_changes (FpWindow *self, const FpFoundRemedy *found, GStrvBuilder *words)
{
  const gboolean first = found->goes_further && fp_remedy_is_little_more (&found->further, &found->remedy);

  for (guint i = 0; i < (found->goes_further ? 2u : 1u); i++)
    {
      const gboolean further = found->goes_further && (i == 0) == first;

      g_strv_builder_add (words, further ? found->further_words : found->words);
      add_remedy (self, further ? &found->further : &found->remedy, fp_remedy_label (found->finding));
    }
}

static const char *
head_of (const FpWindow *self, const FpFoundRemedy *found)
{
  if (found->goes_further)
    return "One change would settle it; more of it settles others too";
  if (found->found)
    return found->remedy.n_changes > 1 ? "Two changes together would settle it" : "One change would settle it";
  return self->n_remedies > 0 ? "A higher altar would help" : found->words != NULL ? "What stands in the way" : NULL;
}

static void
offer (FpWindow *self, const FpFoundRemedy *found)
{
  GStrvBuilder *words = g_strv_builder_new ();
  g_autoptr (GString) note = g_string_new (NULL);
  g_auto (GStrv) remedies = NULL;

  forget_remedies (self);
  if (found->found)
    offer_changes (self, found, words);
  else if (found->words != NULL)
    g_string_append (note, found->words);
  offer_first_row (self, found, words, note);
  remedies = g_strv_builder_end (words);
  g_strv_builder_unref (words);
  fp_findings_list_offer (FP_FINDINGS_LIST (self->findings),
                          head_of (self, found), (const char *const *) remedies, note->len > 0 ? note->str : NULL);
  /* Whoever changes something has his hands elsewhere: nothing is chosen or scrolled under them. */
  if (self->changed || self->n_remedies == 0)
    return;
  fp_findings_list_reveal (FP_FINDINGS_LIST (self->findings));
  point_out (self);
}

static void
receive (gpointer result, gpointer data)
{
  FpWindow *self = data;
  const FpFoundRemedy *found = result;

  /* Something was changed or chosen meanwhile: what was found is about what is no more, or about another finding. */
  if (fp_findings_scene (found->of) != fp_document_scene (self->document) || self->looked_for != found->finding)
    return;
  self->looked_for = NULL;
  offer (self, found);
  if (self->follows)
    follow (self);
}

static const FpLatestWork looking = { fp_found_remedy_run, receive, fp_remedy_request_free, fp_found_remedy_free, GRACE_MS, 0 };

static void
look (FpWindow *self, const FpShown *shown)
{
  if (self->remedies == NULL)
    self->remedies = fp_latest_new ("remedy", &looking, self);
  self->looked_for = shown->finding;
  fp_latest_ask (self->remedies, fp_remedy_request_new (shown->of, shown->finding));
}

/* --- marking it --------------------------------------------------------- */

/* Of what is drawn the point that is nearest to where nave and sanctuary meet, which is most likely seen: nobody is taken
 * from where he looks for the far end of a floor. */
static FpVec3
nearest_of (const FpEvidence *evidence)
{
  const FpVec3 *pt = fp_evidence_points (evidence);
  guint n;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n);
  FpVec3 nearest = pt[0];

  for (guint i = 0; i < n; i++)
    for (guint k = piece[i].first; k < piece[i].first + piece[i].n; k++)
      if (hypot (pt[k].x, pt[k].y) < hypot (nearest.x, nearest.y))
        nearest = pt[k];
  return nearest;
}

/* Where it is, and what was measured there. */
static void
mark (FpWindow *self, const FpShown *shown)
{
  FpBoardView *board = FP_BOARD_VIEW (self->board);
  const FpFinding *finding = shown->finding;
  g_autoptr (FpEvidence) evidence = fp_finding_evidence (shown->of, finding);
  const gboolean drawn = evidence != NULL && !fp_evidence_is_empty (evidence);

  const FpVec3 at = finding->has_at || !drawn ? finding->at : nearest_of (evidence);

  fp_board_view_mark (board, finding->has_at || drawn ? &at : NULL);
  fp_board_view_mark_way (board, finding->way);
  fp_board_view_mark_evidence (board, evidence);
}

static gboolean
is_marked (FpWindow *self)
{
  FpVec3 at;

  return fp_board_view_marked (FP_BOARD_VIEW (self->board), &at);
}

/* --- after something was changed ------------------------------------------ */

/* Its mark goes with the finding and comes back with it: undo brings back what was settled. */
static void
mark_again (FpWindow *self, const FpShown *shown)
{
  if (shown == NULL && is_marked (self))
    {
      self->settled = TRUE;
      fp_board_view_mark (FP_BOARD_VIEW (self->board), NULL);
    }
  else if (shown != NULL && (self->settled || is_marked (self)))
    {
      if (self->settled)
        fp_findings_list_reveal (FP_FINDINGS_LIST (self->findings));
      self->settled = FALSE;
      mark (self, shown);
    }
}

void
fp_window_look_again (FpWindow *self)
{
  const FpShown *shown = fp_findings_list_picked (FP_FINDINGS_LIST (self->findings));

  fp_window_update_settle (self);
  if (fp_document_is_checking (self->document) || fp_document_is_previewing (self->document))
    return;
  if (self->pointing)
    mark_again (self, shown);
  if (shown != NULL && self->n_remedies == 0 && self->looked_for == NULL)
    look (self, shown);
}

void
fp_window_stop_pointing (FpWindow *self)
{
  self->pointing = self->settled = FALSE;
}

void
fp_window_forget_remedy (FpWindow *self)
{
  self->looked_for = NULL;
  self->follows = FALSE;
  forget_remedies (self);
  self->changed = TRUE;
  fp_findings_list_offer (FP_FINDINGS_LIST (self->findings), NULL, NULL, NULL);
  fp_inspector_point_out (FP_INSPECTOR (self->inspector), NULL);
}

void
fp_window_drop_remedies (FpWindow *self)
{
  self->looked_for = NULL;
  self->follows = FALSE;
  forget_remedies (self);
  fp_window_stop_pointing (self);
  g_clear_pointer (&self->remedies, fp_latest_free);
  fp_window_drop_settling (self);
}

/* --- choosing ------------------------------------------------------------- */

static const char *
owner_of (const FpShown *shown)
{
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (shown->of), NULL);

  return shown->finding->owner >= 0 ? fp_item_id (placed[shown->finding->owner].item) : NULL;
}

static void
on_finding_picked (FpWindow *self)
{
  const FpShown *shown = fp_findings_list_picked (FP_FINDINGS_LIST (self->findings));

  if (shown == NULL)
    return;
  if (owner_of (shown) != NULL)
    fp_document_choose (self->document, owner_of (shown));
  mark (self, shown);
  fp_board_view_show_marked (FP_BOARD_VIEW (self->board));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.show-board", NULL);
  fp_window_forget_remedy (self);
  self->pointing = TRUE;
  self->settled = self->changed = FALSE;
  if (!shown->stale && fp_findings_scene (shown->of) == fp_document_scene (self->document))
    look (self, shown);
}

/* From the list to what is seen, or to the field that settles it, which may still have to be found. */
static void
on_finding_followed (FpWindow *self)
{
  const FpShown *shown = fp_findings_list_picked (FP_FINDINGS_LIST (self->findings));

  if (shown != NULL && fp_window_show_finding_in_sight (self, shown))
    {
      fp_board_view_mark (FP_BOARD_VIEW (self->board), NULL); /* the line of sight begins there */
      return;
    }
  if (self->looked_for != NULL)
    self->follows = TRUE;
  else
    follow (self);
}

static void
on_remedy_wanted (FpWindow *self, guint which)
{
  g_autofree char *label = which < self->n_remedies ? g_strdup (self->remedy_label[which]) : NULL;
  g_autoptr (GError) error = NULL;

  if (label == NULL || fp_findings_list_picked (FP_FINDINGS_LIST (self->findings)) == NULL)
    return;
  if (!fp_document_edit (self->document,
                         fp_remedy_make (&self->remedy[which], fp_document_base_scene (self->document), &error), label, NULL))
    fp_window_tell_amiss (self, error);
}

/* What it would make of the church is drawn over it while pointer or focus is on it. */
static void
on_remedy_pointed (FpWindow *self, guint which)
{
  g_autoptr (FpProject) then = NULL;
  g_autofree char *words = NULL;
  const FpRemedy *remedy;

  if (self->board == NULL)
    return;
  if (self->document != NULL && which < self->n_remedies)
    {
      remedy = &self->remedy[which];
      then = fp_remedy_make (remedy, fp_document_base_scene (self->document), NULL);
      words = fp_remedy_beside (remedy, fp_project_brief (fp_document_project (self->document))->units);
    }
  fp_board_view_show_change (FP_BOARD_VIEW (self->board), then, then != NULL ? self->remedy[which].change[0].item : NULL, words);
}

void
fp_window_class_bind_remedy (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_finding_picked);
  gtk_widget_class_bind_template_callback (widget_class, on_finding_followed);
  gtk_widget_class_bind_template_callback (widget_class, on_remedy_wanted);
  gtk_widget_class_bind_template_callback (widget_class, on_remedy_pointed);
}
