/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/page.h"

#include "text.h"

#include <math.h>

static const struct { const char *id, *label; } shows[FP_N_SHOWS] = {
  [FP_SHOW_BUILDING] = { "building", "Building" },
  [FP_SHOW_ALTAR] = { "altar", "Altar and its steps" },
  [FP_SHOW_LIGHTS] = { "lights", "Lights" },
  [FP_SHOW_FURNITURE] = { "furniture", "Rail, credence, ambo" },
  [FP_SHOW_SEDILIA] = { "sedilia", "Sedilia and chair" },
  [FP_SHOW_SEATS] = { "seats", "Pews and people" },
  [FP_SHOW_EXISTING] = { "existing", "Existing" },
  [FP_SHOW_PROPOSED] = { "proposed", "Proposed" },
  [FP_SHOW_REMOVED] = { "removed", "Removed" },
  [FP_SHOW_DIMENSIONS] = { "dimensions", "Dimensions" },
  [FP_SHOW_LEVELS] = { "levels", "Levels" },
  [FP_SHOW_NAMES] = { "names", "Names" },
};

const char *
fp_show_id (FpShow show)
{
  return shows[MIN ((guint) show, FP_N_SHOWS - 1)].id;
}

const char *
fp_show_label (FpShow show)
{
  return shows[MIN ((guint) show, FP_N_SHOWS - 1)].label;
}

gboolean
fp_show_find (const char *id, FpShow *show)
{
  for (guint i = 0; i < FP_N_SHOWS; i++)
    if (g_ascii_strcasecmp (id, shows[i].id) == 0)
      {
        *show = (FpShow) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
fp_hidden_parse (const char *text, FpHidden *hidden, char **wrong)
{
  g_auto (GStrv) word = g_strsplit_set (text, ", ", -1);
  FpShow show;

  *hidden = 0;
  for (guint i = 0; word[i] != NULL; i++)
    {
      if (*word[i] == '\0')
        continue;
      if (!fp_show_find (word[i], &show))
        {
          if (wrong != NULL)
            *wrong = g_strdup (word[i]);
          return FALSE;
        }
      *hidden |= 1u << show;
    }
  return TRUE;
}

char *
fp_hidden_text (FpHidden hidden)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < FP_N_SHOWS; i++)
    if ((hidden & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", shows[i].id);
  return g_string_free (text, FALSE);
}

gboolean
fp_shows_thing (FpHidden hidden, const FpKind *kind, FpStanding standing)
{
  return fp_shows (hidden, (FpShow) (FP_SHOW_BUILDING + (guint) fp_kind_sort (kind)))
         && fp_shows (hidden, (FpShow) (FP_SHOW_EXISTING + (guint) standing));
}

static const char *const inks[FP_N_INKS] = { [FP_INK_COLOUR] = "colour", [FP_INK_GREY] = "grey", [FP_INK_SAFE] = "safe" };

const char *
fp_ink_id (FpInkChoice ink)
{
  return inks[MIN ((guint) ink, FP_N_INKS - 1)];
}

gboolean
fp_ink_find (const char *id, FpInkChoice *ink)
{
  for (guint i = 0; i < FP_N_INKS; i++)
    if (g_ascii_strcasecmp (id, inks[i]) == 0)
      {
        *ink = (FpInkChoice) i;
        return TRUE;
      }
  return FALSE;
}

char
fp_cut_letter (FpViewId view)
{
  return view == FP_VIEW_SECTION ? 'A' : 'B';
}

const char *
fp_sheet_id (FpSheetKind kind)
{
  switch (kind)
    {
    case FP_SHEET_PLAN: return "plan";
    case FP_SHEET_ELEVATION: return "elevation";
    case FP_SHEET_SECTION: return "section";
    case FP_SHEET_CROSS: return "cross";
    case FP_SHEET_SECTIONS: return "sections";
    case FP_SHEET_BOARD: return "board";
    case FP_N_SHEETS: break;
    }
  return "";
}

const char *
fp_sheet_any_id (guint sheet)
{
  switch (sheet)
    {
    case FP_SHEET_COMPARE: return "compare";
    case FP_SHEET_LEVELS: return "levels";
    case FP_SHEET_SIGHT: return "sight";
    case FP_SHEET_SUN: return "sun";
    case FP_SHEET_CARD: return "card";
    case FP_SHEET_SCHEDULE: return "schedule";
    case FP_SHEET_LINEN: return "linen";
    case FP_SHEET_LAYING: return "laying";
    case FP_SHEET_CAPACITY: return "capacity";
    default: return sheet < FP_N_SHEETS ? fp_sheet_id ((FpSheetKind) sheet) : "";
    }
}

gboolean
fp_sheet_find (const char *id, guint *sheet)
{
  for (*sheet = 0; *sheet < FP_N_ALL_SHEETS; ++*sheet)
    if (g_ascii_strcasecmp (id, fp_sheet_any_id (*sheet)) == 0)
      return TRUE;
  return FALSE;
}

/* --- page set-up ------------------------------------------------------------ */

static gboolean
choices_are_fair (const FpPageSetup *self, GError **error)
{
  if (self->sheet < FP_N_ALL_SHEETS && (guint) self->paper < FP_N_PAPERS && (guint) self->tile < FP_N_PAPERS
      && (guint) self->ink < FP_N_INKS && (self->hidden & ~FP_HIDDEN_ALL) == 0)
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "page: a choice is none of those that there are");
  return FALSE;
}

gboolean
fp_page_setup_check (const FpPageSetup *self, GError **error)
{
  if (!choices_are_fair (self, error) || !fp_coordinate_check (self->along.at, "page", "along", error)
      || !fp_coordinate_check (self->across.at, "page", "across", error))
    return FALSE;
  /* Written so that a NaN fails too. */
  if (self->scale >= 0 && self->scale <= FP_SHEET_SCALE_MOST && self->scale == floor (self->scale))
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "page: scale is %.10g; it may be a whole number from 1 to %d, or 0",
               self->scale, FP_SHEET_SCALE_MOST);
  return FALSE;
}

static gboolean
cuts_are_equal (const FpCut *a, const FpCut *b)
{
  return !a->placed == !b->placed && !a->turned == !b->turned && (!a->placed || a->at == b->at);
}

gboolean
fp_page_setup_equal (const FpPageSetup *a, const FpPageSetup *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return a->sheet == b->sheet && a->paper == b->paper && !a->landscape == !b->landscape && a->scale == b->scale
         && !a->whole == !b->whole && !a->findings == !b->findings && a->ink == b->ink && a->hidden == b->hidden
         && !a->tiled == !b->tiled && (!a->tiled || a->tile == b->tile) && cuts_are_equal (&a->along, &b->along)
         && cuts_are_equal (&a->across, &b->across);
}
