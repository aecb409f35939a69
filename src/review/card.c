/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card.c - what a setting card tells */
#include "card-private.h"

#include <string.h>

/* In the order in which an altar is set: what covers it, what stands on the gradine, what lies on the table (common practice,
 * no source). */
static const FpRole setting_order[] = {
  FP_ROLE_ALTAR_CLOTHS, FP_ROLE_FRONTAL, FP_ROLE_TABERNACLE_VEIL, FP_ROLE_RELIQUARIES, FP_ROLE_CRUCIFIX, FP_ROLE_CANDLES,
  FP_ROLE_SEVENTH_CANDLE, FP_ROLE_BRANCHED_LIGHTS, FP_ROLE_FLOWERS, FP_ROLE_ALTAR_CARDS, FP_ROLE_MISSAL_STAND,
  FP_ROLE_SANCTUS_CANDLE, FP_ROLE_SANCTUARY_LAMP, FP_ROLE_PASCHAL_CANDLE,
};

/* What is not set on the altar or before it, but covered or filled where it stands. */
static const FpRole ready_order[] = {
  FP_ROLE_PROCESSIONAL_CANDLES, FP_ROLE_CREDENCE, FP_ROLE_VESSELS, FP_ROLE_HAND_BELL, FP_ROLE_SEDILIA,
};

gboolean
fp_card_paper_find (const char *id, double *width, double *height)
{
  static const struct { const char *id; double width, height; } papers[] = {
    { "a5", 148, 210 }, { "a4", 210, 297 }, { "letter", 215.9, 279.4 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_ascii_strcasecmp (papers[i].id, id) == 0)
      {
        *width = papers[i].width;
        *height = papers[i].height;
        return TRUE;
      }
  return FALSE;
}

/* --- the list ------------------------------------------------------------------ */

static void
clear_row (gpointer data)
{
  g_free (((FpCardRow *) data)->text);
}

static gboolean
is_among (const FpRole *roles, guint n, FpRole role)
{
  for (guint i = 0; i < n; i++)
    if (roles[i] == role)
      return TRUE;
  return FALSE;
}

gboolean
fp_card_is_of_altar (FpRole role)
{
  return is_among (setting_order, G_N_ELEMENTS (setting_order), role);
}

gboolean
fp_card_sets (FpRole role)
{
  return fp_card_is_of_altar (role) || is_among (ready_order, G_N_ELEMENTS (ready_order), role);
}

/* A table that carries something of the altar is not set for Mass: the stand of a tabernacle. */
static gboolean
carries (const FpCard *self, int placed)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (self->set, &n);

  for (guint i = 0; i < n; i++)
    if (!all[i].ghost && all[i].support == placed && fp_item_kind (all[i].item)->role == FP_ROLE_TABERNACLE)
      return TRUE;
  return FALSE;
}

/* What stands at another altar is of no matter here. */
static gboolean
stands_at_another_altar (const FpCard *self, int placed)
{
  const FpPlaced *all = fp_scene_placed (self->set, NULL);

  for (int at = placed; at >= 0; at = all[at].support)
    if (fp_item_kind (all[at].item)->role == FP_ROLE_ALTAR)
      return at != fp_scene_celebrated_altar (self->set);
  return FALSE;
}

const char *
fp_card_heading (const FpCard *self, guint row)
{
  static const char *const headings[] = { FP_CARD_SET, FP_CARD_READY, FP_CARD_AWAY };
  const FpCardSection section = g_array_index (self->rows, FpCardRow, row).section;

  return row > 0 && g_array_index (self->rows, FpCardRow, row - 1).section == section ? NULL : headings[section];
}

void
fp_card_take_row (FpCard *self, FpCardSection section, char *text)
{
  const FpCardRow row = { section, NULL, -1, 0, text };

  g_array_append_val (self->rows, row);
}

static void
add_row (FpCard *self, FpCardSection section, const FpSetThing *thing)
{
  FpCardRow row = { section, thing, fp_scene_find (self->set, fp_item_id (thing->item)), 0, NULL };

  row.text = fp_card_row_text (self, thing, row.placed);
  g_array_append_val (self->rows, row);
}

static gboolean
is_listed (const FpCard *self, const FpSetThing *thing, FpRole role)
{
  const FpProject *project = fp_scene_project (self->set);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (self->set));
  const gboolean said = thing->veiled || fp_alternative_kept (alternative, fp_item_id (thing->item))[0] != '\0';

  if (!thing->stands || fp_item_kind (thing->item)->role != role)
    return FALSE;
  /* The celebrant of a low Mass does not sit (from memory). */
  if (role == FP_ROLE_SEDILIA && !said && fp_setting_celebration (fp_scene_setting (self->set)) == FP_CELEBRATION_LOW)
    return FALSE;
  if (stands_at_another_altar (self, fp_scene_find (self->set, fp_item_id (thing->item))))
    return thing->veiled;
  return said || (fp_card_sets (role) && !carries (self, fp_scene_find (self->set, fp_item_id (thing->item))));
}

static void
list_role (FpCard *self, FpCardSection section, FpRole role)
{
  guint n;
  const FpSetThing *thing = fp_setting_things (fp_scene_setting (self->set), &n);

  for (guint i = 0; i < n; i++)
    if (is_listed (self, &thing[i], role))
      add_row (self, section, &thing[i]);
}

static void
list_things (FpCard *self)
{
  guint n;
  const FpSetThing *thing = fp_setting_things (fp_scene_setting (self->set), &n);

  for (guint k = 0; k < G_N_ELEMENTS (setting_order); k++)
    {
      list_role (self, FP_CARD_SECTION_SET, setting_order[k]);
      fp_card_list_needs_of (self, setting_order[k]);
    }
  for (guint k = 0; k < G_N_ELEMENTS (ready_order); k++)
    list_role (self, FP_CARD_SECTION_READY, ready_order[k]);
  for (guint i = 0; i < n; i++)
    if (!fp_card_sets (fp_item_kind (thing[i].item)->role) && is_listed (self, &thing[i], fp_item_kind (thing[i].item)->role))
      add_row (self, FP_CARD_SECTION_READY, &thing[i]);
  fp_card_list_needs (self);
  for (guint i = 0; i < n; i++)
    if (!thing[i].stands)
      add_row (self, FP_CARD_SECTION_AWAY, &thing[i]);
}

/* --- lighting ------------------------------------------------------------------ */

static void
add_step (FpCard *self, const FpOrderStep *step, gboolean two)
{
  g_autofree char *text = fp_order_step_text (self->order, step, FALSE);

  if (two && step->act == FP_ACT_LIGHT)
    g_ptr_array_add (self->steps, g_strdup_printf ("%s server. %s", step->server == 0 ? "First" : "Second", text));
  else
    g_ptr_array_add (self->steps, g_steal_pointer (&text));
}

/* What two servers do together is told once: they come, each lights, they leave. */
static void
list_steps (FpCard *self)
{
  g_autoptr (GArray) steps = fp_order_steps (self->order, FALSE);
  const gboolean two = fp_order_spec (self->order)->servers > 1;
  const FpOrderStep *leave = NULL;

  for (guint i = 0; i < steps->len; i++)
    {
      const FpOrderStep *step = &g_array_index (steps, FpOrderStep, i);

      if (step->act == FP_ACT_LEAVE)
        leave = step;
      else if (step->act == FP_ACT_LIGHT || step->server == 0)
        add_step (self, step, two);
    }
  if (leave != NULL)
    add_step (self, leave, two);
}

static char *
putting_out (const FpCard *self)
{
  g_autoptr (GArray) steps = fp_order_steps (self->order, TRUE);
  g_autoptr (GString) out = g_string_new ("");

  for (guint i = 0; i < steps->len; i++)
    {
      const FpOrderStep *step = &g_array_index (steps, FpOrderStep, i);
      g_autofree char *numbers = NULL;

      if (step->act != FP_ACT_LIGHT || step->server > 0)
        continue;
      numbers = fp_order_step_numbers (step, TRUE);
      g_string_append_printf (out, "%s%s", out->len > 0 ? "; then " : "", numbers);
    }
  if (out->len == 0)
    return NULL;
  return g_strdup_printf ("Put out in reverse, with the same reverences: %s%s.", out->str,
                          fp_order_spec (self->order)->servers > 1 ? ", both servers at once" : "");
}

/* --- why -------------------------------------------------------------------------- */

/* Each once. */
void
fp_card_add_reason (FpCard *self, const FpReason *reason)
{
  g_autofree char *text = NULL;

  if (reason->why == NULL || strcmp (reason->why, FP_SETTING_DECIDED) == 0 || reason->source[0] == '\0')
    return;
  text = g_strdup_printf ("%c%s (%s).", g_ascii_toupper (reason->why[0]), reason->why + 1, reason->source);
  if (!g_ptr_array_find_with_equal_func (self->reasons, text, g_str_equal, NULL))
    g_ptr_array_add (self->reasons, g_steal_pointer (&text));
}

/* Authors differ, and no book of the newer form speaks of it. */
static void
add_order_reason (FpCard *self)
{
  static const FpReason epistle = { "the Epistle side is lit first after servers' manuals; others begin on the Gospel side",
                                    "S.R.C. 4198, 1907, from memory" };
  static const FpReason gospel = { "the Gospel side is lit first after S.R.C. 4198 (1907); servers' manuals begin on the "
                                   "Epistle side", "the decree from memory" };
  static const FpReason newer = { "no book of this form prescribes an order of lighting", "from memory" };
  const gboolean is_newer = (fp_setting_celebration (fp_scene_setting (self->set)) & FP_CELEBRATIONS_NEWER) != 0;

  if (self->steps->len > 0)
    fp_card_add_reason (self, is_newer ? &newer
                              : fp_order_spec (self->order)->first == FP_EPISTLE_SIDE ? &epistle : &gospel);
}

static void
list_reasons (FpCard *self)
{
  const FpSetting *setting = fp_scene_setting (self->set);
  FpReason reason;

  fp_setting_lit (setting, NULL, NULL, &reason);
  fp_card_add_reason (self, &reason);
  fp_setting_colour (setting, &reason);
  fp_card_add_reason (self, &reason);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const FpSetThing *thing = g_array_index (self->rows, FpCardRow, i).thing;

      if (thing == NULL)
        continue;
      if (!thing->stands)
        fp_card_add_reason (self, &thing->standing);
      if (thing->veiled)
        fp_card_add_reason (self, &thing->veiling);
    }
  add_order_reason (self);
}

/* More or fewer than the books have is told, never decided. */
static void
add_count_caution (FpCard *self)
{
  guint least, most;
  FpReason reason;
  const guint lit = fp_setting_lit (fp_scene_setting (self->set), &least, &most, &reason);

  if (lit >= least && (most == 0 || lit <= most))
    return;
  if (lit == 0)
    g_ptr_array_add (self->cautions, g_strdup_printf ("No candle is lit on this card; the source named below has %s.", reason.why));
  else
    g_ptr_array_add (self->cautions, g_strdup_printf ("%u %s lit on this card; the source named below has %s.", lit,
                                                      lit == 1 ? "candle is" : "candles are", reason.why));
}

/* mm, 1/4 in and 2 in: the safety rules of a makers' association (candles.org) and of a church insurer
 * (ecclesiastical.ca, Risk Control: candle safety). */
#define WICK_TRIMMED 6.0
#define SHORTEST_CANDLE 51.0

static void
add_usual_cautions (FpCard *self)
{
  g_autofree char *beside = fp_length_format_unit (FP_FLAME_BESIDE, self->units);
  g_autofree char *wick = fp_length_format_unit (WICK_TRIMMED, self->units);
  g_autofree char *stub = fp_length_format_unit (SHORTEST_CANDLE, self->units);

  g_ptr_array_add (self->cautions,
                   g_strdup_printf ("Keep flames %s from all that can burn, farther below what hangs over them. Trim wicks "
                                    "to %s; light no stub under %s. Never leave a flame alone; know where the extinguisher is. "
                                    "The fire authority goes before this card.", beside, wick, stub));
}

/* --- life ------------------------------------------------------------------------- */

static char *
first_upper (const char *text)
{
  return g_strdup_printf ("%c%s", g_ascii_toupper (text[0]), text + 1);
}

static char *
colour_words (const FpCard *self)
{
  const FpColour colour = fp_setting_colour (fp_scene_setting (self->set), NULL);

  return colour == FP_COLOUR_UNSAID ? g_strdup ("Colour: of the day") : g_strdup_printf ("Colour: %s", fp_colour_id (colour));
}

FpCard *
fp_card_new (const FpScene *whole, FpCelebration one, const FpOrderSpec *order)
{
  FpCard *self = g_new0 (FpCard, 1);
  const FpProject *project = fp_scene_project (whole);
  const FpBrief *brief = fp_project_brief (project);

  self->set = fp_scene_new_set (whole, one);
  self->order = fp_order_new (self->set, order);
  self->units = brief->units;
  self->title = first_upper (fp_celebration_label (one));
  self->of = g_strdup_printf ("%s. %s", brief->title,
                              fp_alternative_name (fp_project_alternative (project, fp_scene_alternative (whole))));
  self->colour = colour_words (self);
  self->rows = g_array_new (FALSE, FALSE, sizeof (FpCardRow));
  g_array_set_clear_func (self->rows, clear_row);
  self->steps = g_ptr_array_new_with_free_func (g_free);
  self->reasons = g_ptr_array_new_with_free_func (g_free);
  self->cautions = fp_order_cautions (self->order, self->units);
  list_things (self);
  list_steps (self);
  self->putting_out = putting_out (self);
  list_reasons (self);
  fp_card_add_needs_reasons (self);
  g_ptr_array_add (self->reasons, g_strdup (FP_CARD_MEMORY));
  add_count_caution (self);
  add_usual_cautions (self);
  return self;
}

void
fp_card_free (FpCard *self)
{
  if (self == NULL)
    return;
  fp_order_free (self->order);
  fp_scene_unref (self->set);
  g_free (self->title);
  g_free (self->of);
  g_free (self->colour);
  g_array_unref (self->rows);
  g_ptr_array_unref (self->steps);
  g_ptr_array_unref (self->cautions);
  g_ptr_array_unref (self->reasons);
  g_free (self->putting_out);
  g_free (self);
}

const FpOrder *
fp_card_order (const FpCard *self)
{
  return self->order;
}

/* --- as text ------------------------------------------------------------------------ */

static void
add_lines (GString *out, const char *heading, const GPtrArray *lines, gboolean numbered)
{
  if (lines->len > 0)
    g_string_append_printf (out, "\n%s\n", heading);
  for (guint i = 0; i < lines->len; i++)
    if (numbered)
      g_string_append_printf (out, "  %u. %s\n", i + 1, (const char *) lines->pdata[i]);
    else
      g_string_append_printf (out, "  %s\n", (const char *) lines->pdata[i]);
}

char *
fp_card_text (const FpCard *self)
{
  GString *out = g_string_new (self->title);

  g_string_append_printf (out, "\n%s\n%s\n", self->of, self->colour);
  for (guint i = 0; i < self->rows->len; i++)
    {
      if (fp_card_heading (self, i) != NULL)
        g_string_append_printf (out, "\n%s\n", fp_card_heading (self, i));
      g_string_append_printf (out, "  [ ] %s\n", g_array_index (self->rows, FpCardRow, i).text);
    }
  add_lines (out, FP_CARD_LIGHT, self->steps, TRUE);
  if (self->putting_out != NULL)
    g_string_append_printf (out, "  %s\n", self->putting_out);
  add_lines (out, FP_CARD_CARE, self->cautions, FALSE);
  add_lines (out, FP_CARD_WHY, self->reasons, FALSE);
  return g_string_free (out, FALSE);
}
