/* SPDX-License-Identifier: GPL-3.0-or-later */
/* first-row-words.c - what is said of the C-value of the first row, wherever that is */
#include "footpace/remedy.h"

#include <math.h>

static FpUnits
units_of (const FpScene *scene)
{
  return fp_project_brief (fp_scene_project (scene))->units;
}

static const char *
name_of (const FpScene *scene, int i)
{
  return fp_item_name (fp_scene_placed (scene, NULL)[i].item);
}

char *
fp_first_row_label (const FpFirstRow *self, const FpScene *scene)
{
  g_autofree char *wanted = fp_length_format_unit (self->wanted, units_of (scene));

  return g_strdup_printf ("C %s for the first row", wanted);
}

/* A higher altar helps those in front; most rows gain little by it, and are not to be forgotten for the first. */
static char *
gain_words (const FpFirstRow *self)
{
  g_autofree char *now = self->had == 0 ? g_strdup ("none now") : g_strdup_printf ("%u now", self->had);
  const guint rest = self->rows - self->reach;
  g_autofree char *others = rest == 0   ? g_strdup ("")
                            : rest == 1 ? g_strdup ("; the other one stays short of it")
                                        : g_strdup_printf ("; the other %u stay short of it", rest);

  return g_strdup_printf ("%u of %u rows (%u of %u places) %s it then, %s%s", self->reach, self->rows, self->reached,
                          self->places, self->reach == 1 ? "has" : "have", now, others);
}

static char *
by_steps_words (const FpFirstRow *self, const FpScene *scene)
{
  const FpUnits units = units_of (scene);
  const int i = fp_scene_find (scene, self->remedy.change[0].item);
  g_autofree char *riser = fp_length_format_unit (self->flight.riser, units), *level = fp_level_format (self->level, units);
  g_autofree char *gain = gain_words (self);

  return g_strdup_printf ("%s, %u step%s of %s, the floor of the altar at %s; %s", i >= 0 ? name_of (scene, i) : self->remedy.change[0].item,
                          self->flight.steps, self->flight.steps == 1 ? "" : "s", riser, level, gain);
}

static char *
why_not_words (const FpFirstRow *self, const FpScene *scene)
{
  const FpUnits units = units_of (scene);
  g_autofree char *c = fp_length_format_unit (round (self->c), units), *level = fp_level_format (self->level, units);

  switch (self->how)
    {
    case FP_FIRST_ROW_HAS_IT:
      return g_strdup_printf ("it has %s as things stand; those behind gain less from a higher altar", c);
    case FP_FIRST_ROW_NO_STEPS:
      return g_strdup ("the altar stands on no steps of its own that could be more");
    case FP_FIRST_ROW_NO_RISER:
      return g_strdup ("the rules leave no riser by which it could be raised");
    case FP_FIRST_ROW_TOO_HIGH:
      return g_strdup_printf ("the floor of the altar would be at %s, which takes %u steps: more than there can be", level,
                              self->flight.steps);
    case FP_FIRST_ROW_NO_ROOM:
      return g_strdup_printf ("the floor of the altar would be at %s, on %u steps, which reach into the walls", level,
                              self->flight.steps);
    case FP_FIRST_ROW_BY_STEPS:
    case FP_FIRST_ROW_NONE:
      break;
    }
  return NULL;
}

char *
fp_first_row_words (const FpFirstRow *self, const FpScene *scene)
{
  g_autofree char *label = fp_first_row_label (self, scene);
  g_autofree char *what = self->how == FP_FIRST_ROW_BY_STEPS ? by_steps_words (self, scene) : why_not_words (self, scene);

  return what != NULL ? g_strdup_printf ("%s: %s", label, what) : NULL;
}

char *
fp_first_row_sentence (const FpFirstRow *self, const FpScene *scene)
{
  g_autofree char *words = fp_first_row_words (self, scene);
  g_autofree char *c = fp_length_format_unit (fabs (round (self->c)), units_of (scene));

  if (words == NULL)
    return NULL;
  return g_strdup_printf ("The first row that looks over another is %s, row %u; its C-value is %s%s. %s.",
                          name_of (scene, (int) self->owner), self->row, round (self->c) < 0 ? "−" : "", c, words);
}
