/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-draw.c - the diagram of levels on paper */
#include "level-diagram-lay.h"

#include "annotation.h"
#include "dimension-line.h"
#include "level-marks.h"

#include <math.h>

/* All in paper mm. */
#define TITLE_GAP     4.0  /* from the title to its scale                       */
#define LINE          4.2  /* from line to line of the words                    */
#define HEAD          16.0 /* title, and names over the diagram; the key comes between */
#define SIDE          46.0 /* for level marks, on either side                   */
#define APART         6.0  /* from the diagram, or its bands, to the words      */
#define BAND          6.6  /* the name of a block, the line over it, and between that and the next */
#define BANDS_MOST    6u
#define UNDER         6.0  /* from the lowest ground to the bands: marks stand there */
#define TICK          1.4  /* at the ends of the line over a name                */
#define STROKE        1.1  /* half an oblique stroke, along each axis           */
#define ASIDE         5.0  /* from a row that is marked to its margin           */
#define KEPT          0.3  /* about such a mark, where nothing is lettered      */

#define LEVEL_SAME    5.0  /* mm of the church: levels nearer than this are drawn as one */

#define MARGIN_OWNER  2u

/* Heights are drawn at no more than 1:20: steps are told well by then, and altars not yet towers (design judgement). */
#define LARGEST       20.0

static const double HEIGHTS[] = { 20, 10, 5, 2, 1 };

/* Where the name of a block of seats stands, under its rows; for blocks beside each other once. */
typedef struct
{
  guint    owner, first, last;    /* its rows                                   */
  guint    more;                  /* blocks that lie beside it                  */
  guint    other;                 /* the first of them                          */
  double   west, east;            /* mm of the church                           */
  guint    band;
} Band;

/* --- how much room there is -------------------------------------------------------- */

static void
wrap_words (FpLevelLay *l)
{
  g_auto (GStrv) words = fp_level_diagram_words (l->of);

  l->words = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autoptr (GPtrArray) lines = fp_lettering_wrap (words[i], FP_LEVEL_LETTERS, l->room.x1 - l->room.x0);

      for (guint k = 0; k < lines->len; k++)
        g_ptr_array_add (l->words, g_strdup (g_ptr_array_index (lines, k)));
    }
}

static Band *
find_band (GArray *bands, guint owner)
{
  for (guint i = 0; i < bands->len; i++)
    if (g_array_index (bands, Band, i).owner == owner)
      return &g_array_index (bands, Band, i);
  return NULL;
}

/* "Front pews, Gospel side and Epistle side": what both begin with is said once. */
static char *
name_of_two (const char *own, const char *other)
{
  gsize same = 0, word = 0;

  for (; own[same] != '\0' && own[same] == other[same]; same++)
    if (own[same] == ' ')
      word = same + 1;
  return g_strdup_printf ("%s and %s", own, other[word] != '\0' ? other + word : other);
}

static char *
name_of_band (const FpLevelLay *l, const Band *band)
{
  g_autofree char *own = fp_level_diagram_name (l->of, band->owner);
  g_autofree char *other = fp_level_diagram_name (l->of, band->other);

  if (band->more == 0)
    return g_steal_pointer (&own);
  return band->more == 1 ? name_of_two (own, other) : g_strdup_printf ("%s and %u blocks beside it", own, band->more);
}

static char *
words_of_band (const FpLevelLay *l, const Band *band)
{
  g_autofree char *name = name_of_band (l, band);

  if (band->first == band->last)
    return g_strdup_printf ("%s, row %u", name, band->first);
  return g_strdup_printf ("%s, rows %u to %u", name, band->first, band->last);
}

/* Of the church, as wide as its line or its name, whichever is wider. */
static void
reach_of_band (const FpLevelLay *l, const Band *band, double *west, double *east)
{
  g_autofree char *text = words_of_band (l, band);
  const double half = MAX (band->east - band->west, (fp_lettering_width (text, FP_LEVEL_LETTERS) + 3) * l->scale) / 2;
  const double middle = (band->west + band->east) / 2;

  *west = middle - half;
  *east = middle + half;
}

static gboolean
is_free (const FpLevelLay *l, const Band *band, guint until, guint number)
{
  double west, east;

  reach_of_band (l, band, &west, &east);
  for (guint i = 0; i < until; i++)
    {
      const Band *other = &g_array_index (l->bands, Band, i);
      double w, e;

      reach_of_band (l, other, &w, &e);
      if (other->band == number && w < east && west < e)
        return FALSE;
    }
  return TRUE;
}

static GArray *
bands_of_blocks (const FpLevelLay *l)
{
  GArray *bands = g_array_new (FALSE, FALSE, sizeof (Band));

  for (guint i = 0; i < l->of->rows->len; i++)
    {
      const FpRowLevel *row = &g_array_index (l->of->rows, FpRowLevel, i);
      Band *old = find_band (bands, row->owner);

      if (old == NULL)
        {
          const Band band = { row->owner, row->row, row->row, 0, row->owner, row->west, row->east, 0 };
          g_array_append_val (bands, band);
          continue;
        }
      old->first = MIN (old->first, row->row);
      old->last = MAX (old->last, row->row);
      old->west = MIN (old->west, row->west);
      old->east = MAX (old->east, row->east);
    }
  return bands;
}

/* Of as many rows, in the same places along the nave. */
static Band *
find_beside (GArray *bands, const Band *one)
{
  for (guint i = 0; i < bands->len; i++)
    {
      Band *other = &g_array_index (bands, Band, i);
      if (other->first == one->first && other->last == one->last && fabs (other->west - one->west) < 1
          && fabs (other->east - one->east) < 1)
        return other;
    }
  return NULL;
}

/* Those that overlap along the nave stand one under another. */
static void
gather_bands (FpLevelLay *l)
{
  g_autoptr (GArray) blocks = bands_of_blocks (l);

  l->bands = g_array_new (FALSE, FALSE, sizeof (Band));
  for (guint i = 0; i < blocks->len; i++)
    {
      const Band *one = &g_array_index (blocks, Band, i);
      Band *beside = find_beside (l->bands, one);

      if (beside != NULL)
        {
          beside->other = beside->more == 0 ? one->owner : beside->other;
          beside->more++;
        }
      else
        g_array_append_val (l->bands, *one);
    }
  for (guint i = 0; i < l->bands->len; i++)
    {
      Band *band = &g_array_index (l->bands, Band, i);
      while (band->band < BANDS_MOST && !is_free (l, band, i, band->band))
        band->band++;
    }
}

static guint
count_bands (const FpLevelLay *l)
{
  guint n = 0;

  for (guint i = 0; i < l->bands->len; i++)
    if (g_array_index (l->bands, Band, i).band < BANDS_MOST)
      n = MAX (n, g_array_index (l->bands, Band, i).band + 1);
  return n;
}

/* The ground as it is drawn there; -G_MAXDOUBLE where there is none. */
static double
ground_at (const FpLevelLay *l, double y)
{
  double level = -G_MAXDOUBLE;

  for (guint i = 0; i < l->of->ground->len; i++)
    {
      const FpGroundPart *one = &g_array_index (l->of->ground, FpGroundPart, i);

      if (y >= one->y0 && y <= one->y1)
        level = MAX (level, one->z0 + (one->z1 - one->z0) * (y - one->y0) / (one->y1 - one->y0));
    }
  return level;
}

/* A row that stands lower than what is seen beside it has a floor line of its own. */
gboolean
fp_level_has_floor_line (const FpLevelLay *l, const FpRowLevel *row)
{
  return fabs (ground_at (l, row->at.y) - row->at.z) > LEVEL_SAME;
}

/* --- laid out ------------------------------------------------------------------------- */

/* FALSE where it does not fit. */
static gboolean
lay_out (FpLevelLay *l)
{
  const FpBox *extent = &l->of->extent;
  const double wide = fp_box_is_empty (extent) ? 0 : (extent->x1 - extent->x0) / l->scale;
  const double high = fp_box_is_empty (extent) ? 0 : (extent->y1 - extent->y0) / l->scale;
  double foot, top, left;

  wrap_words (l);
  gather_bands (l);
  foot = l->room.y0 + l->words->len * LINE + APART + count_bands (l) * BAND + UNDER;
  top = l->room.y1 - HEAD - fp_level_key_height (l);
  if (wide > l->room.x1 - l->room.x0 - 2 * SIDE || high > top - foot)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (HEIGHTS) && l->heights == 0; i++)
    if (high * HEIGHTS[i] <= top - foot && (HEIGHTS[i] <= 1 || l->scale / HEIGHTS[i] >= LARGEST))
      l->heights = HEIGHTS[i];
  left = (l->room.x0 + l->room.x1 - wide) / 2;
  foot += MAX (0, top - foot - high * l->heights) / 2;
  l->content = (FpBox) { left, foot, left + wide, foot + high * l->heights };
  if (!fp_box_is_empty (extent))
    l->origin = (FpPoint) { left + extent->x1 / l->scale, foot - extent->y0 / l->scale * l->heights };
  return TRUE;
}

static void
layout_clear (FpLevelLay *l)
{
  g_clear_pointer (&l->words, g_ptr_array_unref);
  g_clear_pointer (&l->bands, g_array_unref);
  g_clear_pointer (&l->cover, fp_cover_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FpLevelLay, layout_clear)

double
fp_level_diagram_heights (const FpLevelDiagram *self, const FpBox *room, double scale)
{
  g_auto (FpLevelLay) l = { .of = self, .room = *room, .scale = scale };

  return scale > 0 && lay_out (&l) ? l.heights : 0;
}

gboolean
fp_level_diagram_fits (const FpLevelDiagram *self, const FpBox *room, double scale)
{
  return fp_level_diagram_heights (self, room, scale) > 0;
}

/* --- lines --------------------------------------------------------------------------- */

FpPoint
fp_level_point (const FpLevelLay *l, double y, double z)
{
  return (FpPoint) { l->origin.x - y / l->scale, l->origin.y + z / l->scale * l->heights };
}

void
fp_level_line (const FpLevelLay *l, FpPen pen, FpPoint a, FpPoint b)
{
  fp_drawing_line (l->drawing, pen, a, b);
  fp_cover_add_object (l->cover, a, b, FP_LEVEL_OBJECT);
}

/* In the ink of what it is of; a riser is of what lies above it. */
static void
draw_ground_line (const FpLevelLay *l, FpStanding standing, FpPoint a, FpPoint b)
{
  fp_drawing_set_item (l->drawing, NULL, standing, -1);
  fp_level_line (l, FP_PEN_CUT, a, b);
  fp_drawing_set_item (l->drawing, NULL, FP_STANDING_EXISTING, -1);
}

static void
draw_ground (const FpLevelLay *l)
{
  FpStanding before = FP_STANDING_EXISTING;
  FpPoint last = { 0, 0 };

  for (guint i = 0; i < l->of->ground->len; i++)
    {
      const FpGroundPart *one = &g_array_index (l->of->ground, FpGroundPart, i);
      const FpPoint a = fp_level_point (l, one->y0, one->z0), b = fp_level_point (l, one->y1, one->z1);

      if (i > 0 && fabs (last.x - a.x) < 0.01 && fabs (last.y - a.y) > 0.001)
        draw_ground_line (l, a.y > last.y ? one->standing : before, last, a);
      draw_ground_line (l, one->standing, a, b);
      before = one->standing;
      last = b;
    }
}

/* Carried from the west end to the altar. */
static void
draw_level (const FpLevelLay *l, FpPen pen, double level)
{
  const double end = l->of->altar->plan.y0;

  fp_level_line (l, pen, (FpPoint) { l->content.x1, fp_level_point (l, 0, level).y }, fp_level_point (l, end, level));
}

/* --- rows ------------------------------------------------------------------------------ */

/* Half of what a row may take along the nave without reaching into the next. */
static double
half_row (const FpLevelLay *l)
{
  double half = 1.5;

  for (guint i = 1; i < l->of->rows->len; i++)
    {
      const FpRowLevel *a = &g_array_index (l->of->rows, FpRowLevel, i - 1);
      const FpRowLevel *b = &g_array_index (l->of->rows, FpRowLevel, i);
      const double gap = fabs (a->at.y - b->at.y) / l->scale;

      if (a->owner == b->owner && gap > 0)
        half = MIN (half, 0.3 * gap);
    }
  return MAX (half, 0.25);
}

static void
draw_floor (const FpLevelLay *l, const FpRowLevel *row, double half)
{
  const FpPoint at = fp_level_point (l, row->at.y, row->at.z);

  if (fp_level_has_floor_line (l, row))
    fp_level_line (l, FP_PEN_EDGE, (FpPoint) { at.x - half, at.y }, (FpPoint) { at.x + half, at.y });
}

static void
draw_eyes (const FpLevelLay *l, const FpRowLevel *row, double half)
{
  const FpPoint a = fp_level_point (l, row->west, row->eye), b = fp_level_point (l, row->east, row->eye);

  fp_level_line (l, FP_PEN_OUTLINE, (FpPoint) { a.x + half, a.y }, (FpPoint) { b.x - half, b.y });
}

/* In the middle of them, where the people differ; that a row stands on floor that falls is no spread of theirs. */
static void
draw_spread (const FpLevelLay *l, const FpRowLevel *row)
{
  const FpPoint low = fp_level_point (l, (row->west + row->east) / 2, row->low);
  const FpPoint high = fp_level_point (l, (row->west + row->east) / 2, row->high);

  if (fp_project_brief (fp_scene_project (l->of->scene))->varied && high.y - low.y > 0.1)
    fp_level_line (l, FP_PEN_EDGE, low, high);
}

static void
mark_not_below (const FpLevelLay *l, const FpRowLevel *row, double half)
{
  const FpPoint floor = fp_level_point (l, row->at.y, row->at.z);
  const FpPoint at = { floor.x, floor.y - 0.7 };
  const double aside = half + KEPT, foot = at.y - FP_LEVEL_MARK_GAP - 3.8 * half - KEPT;
  const FpBox box = { at.x - aside, foot, at.x + aside, at.y };

  fp_level_not_below (l->drawing, at, half);
  fp_cover_take_text (l->cover, &box, FP_LEVEL_OBJECT);
}

static void
draw_rows (const FpLevelLay *l)
{
  const double half = half_row (l);

  for (guint i = 0; i < l->of->rows->len; i++)
    {
      const FpRowLevel *row = &g_array_index (l->of->rows, FpRowLevel, i);

      draw_eyes (l, row, half);
      draw_spread (l, row);
      draw_floor (l, row, half);
      if (row->not_below > 0)
        mark_not_below (l, row, MIN (half, 1.1));
    }
}

static void
draw_bands (const FpLevelLay *l)
{
  const double top = l->content.y0 - UNDER;

  for (guint i = 0; i < l->bands->len; i++)
    {
      const Band *band = &g_array_index (l->bands, Band, i);
      g_autofree char *text = words_of_band (l, band);
      const double y = top - band->band * BAND, west = fp_level_point (l, band->west, 0).x + 1;
      const double east = fp_level_point (l, band->east, 0).x - 1;

      if (band->band >= BANDS_MOST)
        continue;
      fp_drawing_line (l->drawing, FP_PEN_DIMENSION, (FpPoint) { west, y }, (FpPoint) { east, y });
      /* Towards the rows: the name under it, which may be longer, is not touched. */
      fp_drawing_line (l->drawing, FP_PEN_DIMENSION, (FpPoint) { west, y }, (FpPoint) { west, y + TICK });
      fp_drawing_line (l->drawing, FP_PEN_DIMENSION, (FpPoint) { east, y }, (FpPoint) { east, y + TICK });
      fp_drawing_text (l->drawing, (FpPoint) { (west + east) / 2, y - 1.5 - FP_LEVEL_LETTERS }, FP_LEVEL_LETTERS, 0, FP_ALIGN_MIDDLE, text);
    }
}

/* --- the margin -------------------------------------------------------------------------- */

typedef struct { FpPoint at; double turn; FpAlign align; } Spot;

static void
draw_stroke (const FpLevelLay *l, FpPoint at)
{
  fp_drawing_line (l->drawing, FP_PEN_DIMENSION, (FpPoint) { at.x - STROKE, at.y - STROKE },
                   (FpPoint) { at.x + STROKE, at.y + STROKE });
}

/* Beside the line where it is long enough, else over or under both levels, where the line is carried on. */
static gboolean
find_spot (const FpLevelLay *l, FpPoint low, FpPoint high, double width, Spot *out)
{
  const double middle = (low.y + high.y) / 2, over = high.y + 2, under = low.y - 2 - FP_LEVEL_LETTERS;
  const Spot spots[] = {
    { { low.x - 1.2, middle }, 90, FP_ALIGN_MIDDLE },
    { { low.x + 1.5, middle - FP_LEVEL_LETTERS / 2 }, 0, FP_ALIGN_LEFT },
    { { low.x - 1.5, middle - FP_LEVEL_LETTERS / 2 }, 0, FP_ALIGN_RIGHT },
    { { low.x + 1.5, over }, 0, FP_ALIGN_LEFT },
    { { low.x - 1.5, over }, 0, FP_ALIGN_RIGHT },
    { { low.x + 1.5, under }, 0, FP_ALIGN_LEFT },
    { { low.x - 1.5, under }, 0, FP_ALIGN_RIGHT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (spots); i++)
    {
      const FpBox box = fp_lettering_box (spots[i].at, width, FP_LEVEL_LETTERS, spots[i].turn, spots[i].align);

      if (!fp_cover_is_blank (l->cover, &box, 0) || !fp_cover_text_is_free (l->cover, &box, 0) || box.x1 > l->content.x1)
        continue;
      *out = spots[i];
      return TRUE;
    }
  return FALSE;
}

static void
take_figure (const FpLevelLay *l, const Spot *spot, double width)
{
  const FpBox box = fp_lettering_box (spot->at, width, FP_LEVEL_LETTERS, spot->turn, spot->align);

  fp_cover_take_text (l->cover, &box, MARGIN_OWNER);
}

/* Where there are marks under the floor the line stands beside them, to the west unless the drawing ends there; and it does
 * not pass through the eyes of people over whom the footpace rises. */
static double
aside_of (const FpLevelLay *l, double y, double z, double eye)
{
  if (z < l->of->levels.footpace)
    return eye > l->of->levels.footpace ? 0 : -ASIDE;
  return fp_level_point (l, y, z).x + ASIDE + 2 * FP_LEVEL_LETTERS > l->content.x1 ? -ASIDE : ASIDE;
}

/* At y, from the floor at z to the footpace. @eye: level of the eyes there; G_MAXDOUBLE: there are none */
static void
draw_margin (const FpLevelLay *l, double y, double z, double eye)
{
  const double footpace = l->of->levels.footpace, aside = aside_of (l, y, z, eye);
  const FpPoint floor = fp_level_point (l, y, z);
  const FpPoint a = { floor.x + aside, fp_level_point (l, y, MIN (z, footpace)).y };
  const FpPoint b = { floor.x + aside, fp_level_point (l, y, MAX (z, footpace)).y };
  g_autofree char *length = fp_length_format (fabs (footpace - z), l->of->units);
  g_autofree char *text = g_strconcat (z > footpace ? "−" : "", length, NULL);
  const double width = fp_lettering_width (text, FP_LEVEL_LETTERS);
  double low = a.y, high = b.y;
  Spot spot;

  if (b.y - a.y < 0.1 || !find_spot (l, a, b, width, &spot))
    return;
  if (spot.turn == 0)
    {
      low = MIN (low, spot.at.y);
      high = MAX (high, spot.at.y + FP_LEVEL_LETTERS);
    }
  /* Not through the figure of the other margin; the words tell both. */
  if (!fp_cover_line_is_free (l->cover, (FpPoint) { a.x, low }, (FpPoint) { b.x, high }, FP_LEVEL_OBJECT))
    return;
  take_figure (l, &spot, width);
  fp_level_line (l, FP_PEN_DIMENSION, (FpPoint) { a.x, low }, (FpPoint) { b.x, high });
  if (aside != 0)
    fp_drawing_line (l->drawing, FP_PEN_DIMENSION, floor, (FpPoint) { b.x + (aside < 0 ? -1.5 : 1.5), floor.y });
  draw_stroke (l, a);
  draw_stroke (l, b);
  fp_drawing_text (l->drawing, spot.at, FP_LEVEL_LETTERS, spot.turn, spot.align, text);
}

/* Where it is least under places, and under any floor where that is higher. */
static void
draw_margins (const FpLevelLay *l)
{
  const FpRowLevel *row = fp_row_levels_tightest (l->of->rows);
  const FpLevels *levels = &l->of->levels;

  if (!levels->has_altar || !levels->has_people)
    return;
  if (row != NULL)
    draw_margin (l, row->at.y, row->at.z, row->eye);
  if (row == NULL || levels->highest > row->at.z + 1)
    draw_margin (l, levels->highest_at.y, levels->highest, G_MAXDOUBLE);
}

/* --- levels ------------------------------------------------------------------------------- */

static void
add_mark (const FpLevelLay *l, GArray *marks, double level, const char *name)
{
  g_autofree char *text = fp_level_format (level, l->of->units);
  FpLevelMark mark = { .level = level, .v = fp_level_point (l, 0, level).y, .near = l->content.x0, .far = l->content.x1 };

  for (guint i = 0; i < marks->len; i++)
    if (fabs (g_array_index (marks, FpLevelMark, i).level - level) < 0.5)
      return;
  mark.measured.sort = FP_STRETCH_LEVEL;
  g_snprintf (mark.text, sizeof mark.text, "%s%s%s", text, *name != '\0' ? " " : "", name);
  mark.width = fp_lettering_width (mark.text, FP_FIGURE_HEIGHT);
  g_array_append_val (marks, mark);
}

/* The first that are added find room first. */
static void
draw_marks (FpLevelLay *l)
{
  const FpLevels *levels = &l->of->levels;
  g_autoptr (GArray) marks = g_array_new (FALSE, TRUE, sizeof (FpLevelMark));
  double wanted;

  if (levels->has_altar)
    {
      add_mark (l, marks, levels->footpace, "altar's floor");
      add_mark (l, marks, fp_level_diagram_mensa (l->of), "mensa");
    }
  if (levels->has_people)
    add_mark (l, marks, levels->highest, "people, highest");
  if (fp_level_diagram_wanted (l->of, &wanted) && wanted > levels->footpace)
    add_mark (l, marks, wanted, "wanted");
  if (levels->has_altar)
    add_mark (l, marks, levels->sanctuary, "sanctuary");
  if (l->of->extent.y0 <= 0)
    add_mark (l, marks, 0, "");
  fp_levels_place (marks, &l->content, FP_SIDE_RIGHT, FALSE, l->cover);
  fp_levels_draw (l->drawing, marks, &l->content, FP_VIEW_SECTION, &l->number);
  fp_drawing_set_item (l->drawing, NULL, FP_STANDING_EXISTING, -1);
}

static void
draw_levels (const FpLevelLay *l)
{
  double wanted;

  if (l->of->altar == NULL)
    return;
  draw_level (l, FP_PEN_AXIS, l->of->levels.footpace);
  draw_level (l, FP_PEN_HIDDEN, fp_level_diagram_mensa (l->of));
  if (fp_level_diagram_wanted (l->of, &wanted) && wanted > l->of->levels.footpace)
    draw_level (l, FP_PEN_GUIDE, wanted);
}

/* --- words --------------------------------------------------------------------------------- */

static void
draw_title (const FpLevelLay *l)
{
  static const char title[] = "LEVELS ALONG THE NAVE";
  g_autofree char *scale = fp_scale_text (l->scale);
  g_autofree char *heights = l->heights > 1 ? g_strdup_printf ("%s, heights %.0f times", scale, l->heights)
                                            : g_strdup (scale);
  const FpPoint at = { l->room.x0, l->room.y1 - FP_LEVEL_TITLE };

  fp_drawing_text (l->drawing, at, FP_LEVEL_TITLE, 0, FP_ALIGN_LEFT, title);
  fp_drawing_text (l->drawing, (FpPoint) { at.x + fp_lettering_width (title, FP_LEVEL_TITLE) + TITLE_GAP, at.y }, FP_LEVEL_LETTERS, 0,
                   FP_ALIGN_LEFT, heights);
}

static void
draw_words (const FpLevelLay *l)
{
  for (guint i = 0; i < l->words->len; i++)
    fp_drawing_text (l->drawing, (FpPoint) { l->room.x0, l->room.y0 + (l->words->len - 1 - i) * LINE + 0.7 }, FP_LEVEL_LETTERS, 0,
                     FP_ALIGN_LEFT, g_ptr_array_index (l->words, i));
}

void
fp_level_diagram_draw (const FpLevelDiagram *self, FpDrawing *drawing, const FpBox *room, double scale)
{
  g_auto (FpLevelLay) l = { .of = self, .drawing = drawing, .room = *room, .scale = scale, .cover = fp_cover_new () };

  if (!lay_out (&l))
    return;
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  draw_title (&l);
  fp_level_key_draw (&l);
  draw_words (&l);
  draw_levels (&l);
  draw_ground (&l);
  if (self->altar != NULL)
    fp_level_altar_draw (&l);
  fp_level_things_draw (&l);
  draw_rows (&l);
  draw_bands (&l);
  draw_margins (&l);
  draw_marks (&l);
  fp_level_names_draw (&l);
}
