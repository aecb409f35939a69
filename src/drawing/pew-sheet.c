/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-sheet.c - views from the pew on paper: one large, or a strip for each alternative */
#include "drawing-private.h"

#include "sheet-parts.h"
#include "text-fit.h"

#define TITLE "View from the pew"
#define LETTERING 2.5
#define SMALL     1.8
#define SPACING   1.7  /* from one line to the next, by the height of lettering */
#define LINES     5    /* under a picture, at most                             */
#define APART     5.0  /* between pictures                                     */
#define HEAD      8.0  /* over a strip: the name of its alternative            */
#define NOTE      7.0  /* at the foot of strips: what the pictures are of      */
#define WIDTH_LEAST 50.0 /* mm, of a picture of a strip                        */
#define WIDE_MOST  1.8 /* width by height of one picture alone on a sheet      */
#define WIDE_LEAST 1.2

/* --- words ------------------------------------------------------------------------ */

static double
room_for_words (double lettering)
{
  return LINES * lettering * SPACING + 2.5;
}

/* Whose eye, and what it sees; on lines of their own under a picture. */
static void
write_caption (FpDrawing *drawing, const FpBox *frame, const char *what, const FpSight *sight, const FpPewSpec *spec,
               double lettering)
{
  g_autofree char *eye = fp_pew_eye_text (fp_sight_people (sight), spec), *seen = fp_pew_seen_text (sight, spec);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const double width = frame->x1 - frame->x0;

  if (what != NULL)
    g_ptr_array_add (lines, g_strdup (what));
  g_ptr_array_extend_and_steal (lines, fp_lettering_wrap_most (eye, lettering, width, 2));
  if (*seen != '\0')
    {
      g_auto (GStrv) parts = g_strsplit (seen, " %", -1);
      g_autofree char *together = g_strjoinv ("\u00a0%", parts), *sees = g_strdup_printf ("Seen: %s", together);
      g_ptr_array_extend_and_steal (lines, fp_lettering_wrap_most (sees, lettering, width, LINES - lines->len));
    }
  fp_draw_lines (drawing, (FpPoint) { frame->x0, frame->y0 - 1.5 }, lettering, lettering * SPACING, lines, LINES);
}

/* --- a picture alone --------------------------------------------------------------- */

FpDrawing *
fp_pew_drawing_new (const FpPeople *people, const FpPewSpec *spec, double width)
{
  g_autoptr (FpPewView) view = fp_pew_view_new (people, spec);
  const double height = width / (spec->aspect > 0 ? spec->aspect : FP_PEW_ASPECT);
  FpDrawing *drawing = fp_drawing_new (width, height);

  fp_drawing_picture (drawing, view, &(FpBox) { 0, 0, width, height });
  return drawing;
}

/* --- one view ------------------------------------------------------------------------ */

FpDrawing *
fp_pew_sheet_new (const FpSight *sight, const FpPewSpec *asked, const FpSheetSpec *sheet)
{
  const FpPeople *people = fp_sight_people (sight);
  FpPewSpec spec = *asked;
  FpBox content, frame;
  FpDrawing *drawing = fp_sheet_blank (fp_people_scene (people), sheet, TITLE, 0, &content);
  g_autoptr (FpPewView) view = NULL;

  content.y0 += room_for_words (LETTERING);
  if (!(spec.aspect > 0))
    spec.aspect = CLAMP ((content.x1 - content.x0) / (content.y1 - content.y0), WIDE_LEAST, WIDE_MOST);
  const double width = MIN (content.x1 - content.x0, (content.y1 - content.y0) * spec.aspect);
  const double height = width / spec.aspect, middle = (content.x0 + content.x1) / 2;
  frame = (FpBox) { middle - width / 2, content.y1 - height, middle + width / 2, content.y1 };
  view = fp_pew_view_new (people, &spec);
  fp_drawing_picture (drawing, view, &frame);
  write_caption (drawing, &frame, NULL, sight, &spec, LETTERING);
  return drawing;
}

/* --- strips ---------------------------------------------------------------------------- */

typedef struct { FpPewTypical one; FpPewSpec spec; } Shown;

/* (element-type Shown) of one alternative. */
static GArray *
find_shown (const FpSight *sight)
{
  GArray *shown = g_array_new (FALSE, FALSE, sizeof (Shown));

  for (guint i = 0; i < FP_N_PEW_TYPICAL; i++)
    {
      Shown one = { (FpPewTypical) i, { .moment = FP_MOMENT_OFFERTORY } };
      if (fp_pew_typical_spec (fp_sight_people (sight), one.one, &one.spec))
        g_array_append_val (shown, one);
    }
  return shown;
}

/* Which alternative it is, and what nobody reads off five pictures: from how many places there is something to see. */
static char *
head_words (const FpSight *sight, const char *name)
{
  g_autofree char *seen = fp_sight_church_words (sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);

  return seen != NULL ? g_strdup_printf ("%s: %s", name, seen) : g_strdup (name);
}

static void
draw_strip (FpDrawing *drawing, const FpSight *sight, FpPoint top, double width)
{
  g_autoptr (GArray) shown = find_shown (sight);
  const FpScene *scene = fp_people_scene (fp_sight_people (sight));
  const FpAlternative *alternative = fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene));
  g_autofree char *head = head_words (sight, fp_alternative_name (alternative));

  fp_drawing_text (drawing, (FpPoint) { top.x, top.y - 5 }, LETTERING, 0, FP_ALIGN_LEFT, head);
  for (guint i = 0; i < shown->len; i++)
    {
      const Shown *one = &g_array_index (shown, Shown, i);
      const double x = top.x + i * (width + APART), y = top.y - HEAD;
      const FpBox frame = { x, y - width / FP_PEW_ASPECT, x + width, y };
      g_autoptr (FpPewView) view = fp_pew_view_new (fp_sight_people (sight), &one->spec);
      fp_drawing_picture (drawing, view, &frame);
      write_caption (drawing, &frame, fp_pew_typical_label (one->one), sight, &one->spec, SMALL);
    }
}

/* For who has seen no such picture yet. */
static void
write_note (FpDrawing *drawing, const FpBox *content)
{
  g_autoptr (GPtrArray) lines
    = fp_lettering_wrap_most ("Pale heads and shoulders: the people. Dark: the ministers. Tinted: what is proposed. The mensa is the table of "
                              "the altar, the Gospel side the left as the people see it.",
                              SMALL, content->x1 - content->x0, 2);

  fp_draw_lines (drawing, (FpPoint) { content->x0, content->y0 + lines->len * SMALL * SPACING }, SMALL,
                 SMALL * SPACING, lines, 2);
}

/* How many strips stand on a page, and how wide their pictures are: as many as there are, if the pictures do not become
 * too small by that. */
static guint
rows_of_page (FpSight *const *sight, guint n, const FpBox *content, double *width)
{
  guint most = 1, rows = n + 1;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GArray) shown = find_shown (sight[i]);
      most = MAX (most, shown->len);
    }
  const double across = (content->x1 - content->x0 - (most - 1) * APART) / most;
  do
    {
      const double height = (content->y1 - content->y0) / --rows - HEAD - room_for_words (SMALL);
      *width = MIN (across, height * FP_PEW_ASPECT);
    }
  while (rows > 1 && *width < MIN (WIDTH_LEAST, across));
  return rows;
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

GPtrArray *
fp_pew_strip_sheets (FpSight *const *sight, guint n, const FpSheetSpec *spec)
{
  GPtrArray *out = g_ptr_array_new_with_free_func (unref_drawing);
  FpSheetSpec page = *spec;
  FpBox content;
  double width;

  if (n == 0)
    return out;
  fp_drawing_unref (fp_sheet_blank (fp_people_scene (fp_sight_people (sight[0])), spec, TITLE, 0, &content));
  content.y0 += NOTE;
  const guint rows = rows_of_page (sight, n, &content, &width);
  const double step = HEAD + width / FP_PEW_ASPECT + room_for_words (SMALL);
  page.pages = (n + rows - 1) / rows;
  for (guint i = 0; i < n; i++)
    {
      if (i % rows == 0)
        {
          page.page = i / rows + 1;
          g_ptr_array_add (out, fp_sheet_blank (fp_people_scene (fp_sight_people (sight[i])), &page, TITLE, 0, &content));
          write_note (g_ptr_array_index (out, out->len - 1), &content);
        }
      draw_strip (g_ptr_array_index (out, out->len - 1), sight[i],
                  (FpPoint) { content.x0, content.y1 - i % rows * step }, width);
    }
  return out;
}
