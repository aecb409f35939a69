/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace card: what is set and lit for a celebration, for sacristan and servers */
#include "command.h"

#include "asked-sheet.h"

#include "footpace/card.h"

#include <string.h>

typedef struct
{
  char       *file, *alternative, *celebrations, *first, *pole, *out, *as, *paper, *ink;
  int         servers;
  guint       wanted;
  FpPagesForm form;
  FpCardSpec  spec;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->alternative);
  g_free (o->celebrations);
  g_free (o->first);
  g_free (o->pole);
  g_free (o->out);
  g_free (o->as);
  g_free (o->paper);
  g_free (o->ink);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* --- as typed --------------------------------------------------------------- */

/* Ids parted by commas; those of the brief where nothing was typed. */
static gboolean
fill_celebrations (Options *o, const FpProject *project)
{
  g_auto (GStrv) words = g_strsplit_set (o->celebrations != NULL ? o->celebrations : "", ", ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      FpCelebration one;

      if (words[i][0] == '\0')
        continue;
      if (!fp_celebration_find (words[i], &one))
        {
          g_autofree char *ids = fp_command_celebrations ();

          fp_command_fail_value ("--for", words[i], ids);
          return FALSE;
        }
      o->wanted |= (guint) one;
    }
  if (o->wanted == 0)
    o->wanted = fp_project_brief (project)->celebrations;
  if (o->wanted == 0)
    fp_command_fail ("the brief names no celebration; say one with --for");
  return o->wanted != 0;
}

static gboolean
fill_servers (Options *o)
{
  if (o->servers == 1 || o->servers == 2)
    {
      o->spec.order.servers = (guint) o->servers;
      return TRUE;
    }
  fp_command_fail_value ("--servers", NULL, "1 or 2");
  return FALSE;
}

static gboolean
fill_first (Options *o)
{
  if (o->first == NULL)
    return TRUE;
  for (guint side = FP_EPISTLE_SIDE; side <= FP_GOSPEL_SIDE; side++)
    if (g_ascii_strcasecmp (o->first, fp_altar_side_id ((FpAltarSide) side)) == 0)
      {
        o->spec.order.first = (FpAltarSide) side;
        return TRUE;
      }
  fp_command_fail_value ("--first", o->first, "epistle or gospel");
  return FALSE;
}

static gboolean
fill_paper (Options *o)
{
  if (fp_card_paper_find (o->paper != NULL ? o->paper : "a5", &o->spec.width, &o->spec.height))
    return TRUE;
  fp_command_fail_value ("--paper", o->paper, FP_CARD_PAPERS);
  return FALSE;
}

static gboolean
fill_ink (Options *o)
{
  if (o->ink == NULL || fp_ink_find (o->ink, &o->spec.ink))
    return TRUE;
  fp_command_fail_value ("--ink", o->ink, FP_ASKED_INKS);
  return FALSE;
}

/* In the units of the project, unless it names others. */
static gboolean
fill_pole (Options *o, FpUnits units)
{
  if (o->pole == NULL || (fp_length_parse (o->pole, units, &o->spec.order.pole, NULL) && o->spec.order.pole >= 0))
    return TRUE;
  fp_command_fail_value ("--pole", o->pole, "the length of the lighting pole, such as 1000 or 4 ft");
  return FALSE;
}

static gboolean
fill (Options *o)
{
  o->spec.order = FP_ORDER_USUAL;
  return fill_servers (o) && fill_first (o) && fill_paper (o) && fill_ink (o)
         && (o->out == NULL || fp_asked_pages (o->as, o->out, &o->form));
}

/* --- told --------------------------------------------------------------------- */

static int
draw (const FpScene *scene, Options *o)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (GPtrArray) pages = NULL;

  o->spec.date = date;
  pages = fp_cards_draw (scene, o->wanted, &o->spec, &error);
  return pages != NULL && fp_pages_write (pages, scene, o->form, o->file, o->out, &error) ? FP_EXIT_CLEAR : fp_command_fail (error->message);
}

static int
print (const FpScene *scene, const Options *o)
{
  g_autoptr (GString) all = g_string_new ("");

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((o->wanted & 1u << i) != 0)
      {
        g_autoptr (FpCard) card = fp_card_new (scene, (FpCelebration) (1u << i), &o->spec.order);
        g_autofree char *text = fp_card_text (card);

        g_string_append_printf (all, "%s%s", all->len > 0 ? "\n\n" : "", text);
      }
  return fp_command_print (all->str, all->len);
}

static int
tell (const FpProject *project, Options *o)
{
  const int alternative = fp_command_alternative (project, o->alternative);
  g_autoptr (FpScene) scene = NULL;

  if (alternative < 0 || !fill_celebrations (o, project) || !fill_pole (o, fp_project_brief (project)->units))
    return FP_EXIT_ERROR;
  scene = fp_scene_new (project, (guint) alternative);
  if (fp_scene_celebrated_altar (scene) < 0)
    return fp_command_fail ("there is no altar in this alternative");
  return o->out != NULL ? draw (scene, o) : print (scene, o);
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { .servers = 1 };
  g_autoptr (FpProject) project = NULL;
  int exit_code;
  const GOptionEntry entries[] = {
    { "for", 'f', 0, FP_OPTION_TEXT, &o.celebrations, "For which celebrations, parted by commas; otherwise those of the brief",
      "CELEBRATIONS" },
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { "servers", 's', 0, G_OPTION_ARG_INT, &o.servers, "How many light the candles: 1 or 2; otherwise 1", "NUMBER" },
    { "first", 0, 0, FP_OPTION_TEXT, &o.first, "The side lit first: epistle (otherwise this) or gospel", "SIDE" },
    { "pole", 0, 0, FP_OPTION_TEXT, &o.pole, "Length of the lighting pole; otherwise 1 m", "LENGTH" },
    { "out", 'o', 0, FP_OPTION_TEXT, &o.out, "Draw the cards into this file; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, FP_ASKED_FORMS "; otherwise by the ending of FILE", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_CARD_PAPERS "; otherwise a5", "PAPER" },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_card, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  if (!fill (&o))
    return FP_EXIT_ERROR;
  project = fp_command_load (o.file);
  return project == NULL ? FP_EXIT_ERROR : tell (project, &o);
}

const FpCommand fp_command_card = {
  "card", "FILE", "tells how the altar is set and lit for a celebration",
  "Tells sacristan and servers what is set, veiled and lit for a celebration in one alternative\n"
  "of the project FILE, in which order the candles are lit and put out, and where things are\n"
  "kept. With --out it draws setting cards, a page each: the altar with letters at what is set\n"
  "and numbers at what is lit, and a list to tick. What nobody decided follows from printed\n"
  "books, named on the card, or from memory where it says so. On which side lighting begins\n"
  "authors differ: say it with --first.",
  "  footpace card parish.footpace --for sung\n"
  "  footpace card parish.footpace -a b --for sung --servers 2 -o sung.pdf\n"
  "  footpace card parish.footpace --first gospel --paper a4 -o all-cards.pdf\n",
  run
};
