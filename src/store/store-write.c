/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store-write.c - a project as XML, the same bytes every time
 *
 * One thing a line.  Every parameter is written, also where it equals the
 * default, so that a later change of defaults changes no file.  Written by
 * hand and not by a serialiser: the bytes must not depend on a version of a library.
 */
#include "store-words.h"

#include <math.h>

typedef struct
{
  GString *out;
  guint    depth;
} Writer;

static void
indent (Writer *w)
{
  for (guint i = 0; i < w->depth; i++)
    g_string_append (w->out, "  ");
}

static void
add_escaped (GString *out, const char *text, gboolean in_attribute)
{
  for (const char *c = text; *c != '\0'; c++)
    switch (*c)
      {
      case '&': g_string_append (out, "&amp;"); break;
      case '<': g_string_append (out, "&lt;"); break;
      case '>': g_string_append (out, "&gt;"); break;
      case '"': g_string_append (out, in_attribute ? "&quot;" : "\""); break;
      default: g_string_append_c (out, *c);
      }
}

static void
add_attribute (Writer *w, const char *name, const char *value)
{
  g_string_append_printf (w->out, " %s=\"", name);
  add_escaped (w->out, value, TRUE);
  g_string_append_c (w->out, '"');
}

static void
add_number (Writer *w, const char *name, double value)
{
  g_autofree char *text = fp_number_format (value);

  add_attribute (w, name, text);
}

static void
begin (Writer *w, const char *element)
{
  indent (w);
  g_string_append_printf (w->out, "<%s", element);
}

/* Ends a start tag; what follows lies within it. */
static void
enter (Writer *w)
{
  g_string_append (w->out, ">\n");
  w->depth++;
}

static void
leave (Writer *w, const char *element)
{
  w->depth--;
  indent (w);
  g_string_append_printf (w->out, "</%s>\n", element);
}

static void
end_empty (Writer *w)
{
  g_string_append (w->out, "/>\n");
}

static void
add_text (Writer *w, const char *element, const char *text)
{
  begin (w, element);
  if (text[0] == '\0')
    {
      end_empty (w);
      return;
    }
  g_string_append_c (w->out, '>');
  add_escaped (w->out, text, FALSE);
  g_string_append_printf (w->out, "</%s>\n", element);
}

static void
add_text_number (Writer *w, const char *element, double value)
{
  g_autofree char *text = fp_number_format (value);

  add_text (w, element, text);
}

/* --- the parts --- */

static char *
celebrations_text (guint celebrations)
{
  g_autoptr (GString) out = g_string_new ("");

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((celebrations & 1u << i) != 0)
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", fp_celebration_id ((FpCelebration) (1u << i)));
  return g_strdup (out->str);
}

/* Only what is not as it would be without: files from before there was any of it stay as they are. */
static void
write_people (Writer *w, const FpBrief *brief)
{
  if (brief->varied)
    add_text (w, "statures", fp_statures_words[1]);
  if (brief->seed > 0)
    add_text_number (w, "seed", brief->seed);
  if (brief->children > 0)
    add_text_number (w, "children", brief->children);
}

static void
write_site (Writer *w, const FpSite *site)
{
  if (!site->known)
    return;
  begin (w, "site");
  add_number (w, "latitude", site->latitude);
  add_number (w, "longitude", site->longitude);
  add_attribute (w, "zone", site->zone);
  end_empty (w);
}

static void
write_mass (Writer *w, const FpMassTime *mass)
{
  g_autofree char *day = mass->weekday > 0 ? g_strdup (fp_weekday_id (mass->weekday))
                                           : g_strdup_printf ("%02u-%02u", mass->month, mass->day);
  g_autofree char *at = g_strdup_printf ("%02u:%02u", mass->minute / 60, mass->minute % 60);

  begin (w, "mass");
  add_attribute (w, "day", day);
  add_attribute (w, "at", at);
  end_empty (w);
}

static void
write_brief (Writer *w, const FpBrief *brief)
{
  g_autofree char *celebrations = celebrations_text (brief->celebrations);

  begin (w, "brief");
  enter (w);
  add_text (w, "title", brief->title);
  add_text (w, "place", brief->place);
  add_text (w, "client", brief->client);
  add_text (w, "author", brief->author);
  add_text (w, "note", brief->note);
  add_text (w, "books", fp_books_words[brief->books]);
  add_text (w, "facing", fp_facing_words[brief->facing]);
  add_text (w, "celebrations", celebrations);
  add_text_number (w, "ministers", brief->ministers);
  add_text_number (w, "seats", brief->seats);
  add_text (w, "units", fp_units_words[brief->units]);
  add_text_number (w, "north", brief->north);
  add_text_number (w, "percentile", brief->percentile);
  write_people (w, brief);
  write_site (w, &brief->site);
  for (guint i = 0; i < brief->n_masses; i++)
    write_mass (w, &brief->mass[i]);
  leave (w, "brief");
}

static void
add_place (Writer *w, FpPlace place)
{
  add_number (w, "x", place.x);
  add_number (w, "y", place.y);
  add_number (w, "turn", place.turn);
}

static void
add_params (Writer *w, const FpItem *item)
{
  const FpParam *params = fp_item_kind (item)->params;
  const double *value = fp_item_params (item);

  for (guint i = 0; params[i].id != NULL; i++)
    if (params[i].type == FP_PARAM_CHOICE)
      add_attribute (w, params[i].id, params[i].choices[(guint) value[i]].id);
    else
      add_number (w, params[i].id, value[i]);
}

static void
write_corners (Writer *w, const FpItem *item)
{
  guint n;
  const FpPoint *corner = fp_item_corners (item, &n);

  enter (w);
  for (guint i = 0; i < n; i++)
    {
      begin (w, "corner");
      add_number (w, "x", corner[i].x);
      add_number (w, "y", corner[i].y);
      end_empty (w);
    }
  leave (w, fp_item_kind (item)->id);
}

static void
write_item (Writer *w, const FpItem *item)
{
  guint n_corners;

  begin (w, fp_item_kind (item)->id);
  add_attribute (w, "id", fp_item_id (item));
  if (fp_item_has_name (item))
    add_attribute (w, "name", fp_item_name (item));
  if (fp_item_on (item) != NULL)
    add_attribute (w, "on", fp_item_on (item));
  add_place (w, fp_item_place (item));
  add_params (w, item);
  fp_item_corners (item, &n_corners);
  if (n_corners > 0)
    write_corners (w, item);
  else
    end_empty (w);
}

static void
write_survey (Writer *w, const FpProject *project)
{
  const guint n = fp_project_n_survey (project);

  begin (w, "survey");
  if (n == 0)
    {
      end_empty (w);
      return;
    }
  enter (w);
  for (guint i = 0; i < n; i++)
    write_item (w, fp_project_survey (project, i));
  leave (w, "survey");
}

/* In the order of the survey, so that the order in which they were decided changes no byte. */
static void
write_fates (Writer *w, const FpProject *project, const FpAlternative *alternative)
{
  for (guint i = 0; i < fp_project_n_survey (project); i++)
    {
      const char *id = fp_item_id (fp_project_survey (project, i)), *on = NULL;
      FpPlace moved = { 0, 0, 0 };
      const FpFate fate = fp_alternative_fate (alternative, id, &moved, &on);

      if (fate == FP_FATE_KEPT)
        continue;
      begin (w, fate == FP_FATE_MOVED ? "moved" : "removed");
      add_attribute (w, "id", id);
      if (on != NULL)
        add_attribute (w, "on", on);
      if (fate == FP_FATE_MOVED)
        add_place (w, moved);
      end_empty (w);
    }
}

/* --- settings --- */

typedef void (*ThingFunc) (Writer *w, const FpAlternative *alternative, const char *id, FpCelebration one);

/* In the order of the survey, and then of the alternative. */
static void
each_thing (Writer *w, const FpProject *project, const FpAlternative *alternative, FpCelebration one, ThingFunc func)
{
  for (guint i = 0; i < fp_project_n_survey (project); i++)
    func (w, alternative, fp_item_id (fp_project_survey (project, i)), one);
  for (guint i = 0; i < fp_alternative_n_items (alternative); i++)
    func (w, alternative, fp_item_id (fp_alternative_item (alternative, i)), one);
}

static void
write_kept (Writer *w, const FpAlternative *alternative, const char *id, FpCelebration one G_GNUC_UNUSED)
{
  const char *where = fp_alternative_kept (alternative, id);

  if (where[0] == '\0')
    return;
  begin (w, "kept");
  add_attribute (w, "thing", id);
  g_string_append_c (w->out, '>');
  add_escaped (w->out, where, FALSE);
  g_string_append (w->out, "</kept>\n");
}

static void
add_said (Writer *w, const char *name, FpSaid said)
{
  if (said != FP_UNSAID)
    add_attribute (w, name, fp_yes_words[said == FP_SAID_YES]);
}

static void
write_set_thing (Writer *w, const FpAlternative *alternative, const char *id, FpCelebration one)
{
  const FpSettingChange said = fp_alternative_setting (alternative, one, id);

  if (fp_setting_change_is_empty (&said))
    return;
  begin (w, "thing");
  add_attribute (w, "id", id);
  add_said (w, "stands", said.stands);
  add_said (w, "veiled", said.veiled);
  if (said.lit != FP_LIT_UNSAID)
    add_number (w, "lit", said.lit);
  end_empty (w);
}

static void
write_setting (Writer *w, const FpProject *project, const FpAlternative *alternative, FpCelebration one)
{
  const FpColour colour = fp_alternative_colour (alternative, one);
  Writer things = { g_string_new (""), w->depth + 1 };

  each_thing (&things, project, alternative, one, write_set_thing);
  if (things.out->len > 0 || colour != FP_COLOUR_UNSAID)
    {
      begin (w, "setting");
      add_attribute (w, "for", fp_celebration_id (one));
      if (colour != FP_COLOUR_UNSAID)
        add_attribute (w, "colour", fp_colour_id (colour));
      if (things.out->len > 0)
        {
          enter (w);
          g_string_append_len (w->out, things.out->str, (gssize) things.out->len);
          leave (w, "setting");
        }
      else
        end_empty (w);
    }
  g_string_free (things.out, TRUE);
}

static void
write_settings (Writer *w, const FpProject *project, const FpAlternative *alternative)
{
  each_thing (w, project, alternative, FP_CELEBRATION_LOW, write_kept);
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    write_setting (w, project, alternative, (FpCelebration) (1u << i));
}

static void
write_alternative (Writer *w, const FpProject *project, const FpAlternative *alternative)
{
  FpFacing facing;

  begin (w, "alternative");
  add_attribute (w, "id", fp_alternative_id (alternative));
  add_attribute (w, "name", fp_alternative_name (alternative));
  if (fp_alternative_own_facing (alternative, &facing))
    add_attribute (w, "facing", fp_facing_words[facing]);
  enter (w);
  add_text (w, "note", fp_alternative_note (alternative));
  write_fates (w, project, alternative);
  for (guint i = 0; i < fp_alternative_n_items (alternative); i++)
    write_item (w, fp_alternative_item (alternative, i));
  write_settings (w, project, alternative);
  leave (w, "alternative");
}

static void
write_page (Writer *w, const FpPageSetup *page)
{
  g_autofree char *without = fp_hidden_text (page->hidden);

  begin (w, "page");
  add_attribute (w, "sheet", fp_sheet_any_id (page->sheet));
  add_attribute (w, "paper", fp_paper_id (page->paper));
  add_attribute (w, "lies", fp_lies_words[!!page->landscape]);
  add_number (w, "scale", page->scale);
  add_attribute (w, "whole", fp_yes_words[!!page->whole]);
  add_attribute (w, "findings", fp_yes_words[!!page->findings]);
  add_attribute (w, "ink", fp_ink_id (page->ink));
  add_attribute (w, "without", without);
  add_attribute (w, "tiles", page->tiled ? fp_paper_id (page->tile) : "none");
  if (page->along.placed)
    add_number (w, "along", page->along.at);
  add_attribute (w, "from", fp_from_words[!!page->along.turned]);
  if (page->across.placed)
    add_number (w, "across", page->across.at);
  add_attribute (w, "facing", fp_towards_words[!!page->across.turned]);
  end_empty (w);
}

static void
write_rate (Writer *w, const FpRate *rate)
{
  begin (w, "rate");
  add_attribute (w, "kind", rate->kind);
  add_attribute (w, "what", rate->what);
  add_attribute (w, "per", fp_amount_unit (rate->per, rate->units));
  add_number (w, "amount", rate->rate);
  end_empty (w);
}

static void
write_works (Writer *w, const FpWorks *works)
{
  begin (w, "works");
  add_attribute (w, "stone", fp_stone (works->stone)->id);
  add_attribute (w, "timber", fp_timber (works->timber)->id);
  add_attribute (w, "metal", fp_metal (works->metal)->id);
  add_number (w, "slab", works->slab);
  add_number (w, "longest", works->longest);
  add_number (w, "nosing", works->nosing);
  add_number (w, "joint", works->joint);
  add_attribute (w, "built", works->solid ? "blocks" : "slabs");
  add_attribute (w, "finish", works->finish);
  add_number (w, "bears", works->bears);
  add_number (w, "burns", works->burns);
  add_number (w, "bolt", works->bolt);
  add_number (w, "warp", works->warp);
  add_number (w, "weft", works->weft);
  add_attribute (w, "wide", works->joined ? "joined" : "told");
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (works->small[i] >= 0)
      add_number (w, fp_small_id ((FpSmall) i), works->small[i]);
  add_attribute (w, "currency", works->currency);
  if (works->n_rates == 0)
    {
      end_empty (w);
      return;
    }
  enter (w);
  for (guint i = 0; i < works->n_rates; i++)
    write_rate (w, &works->rate[i]);
  leave (w, "works");
}

static void
write_change (Writer *w, const FpNormChange *change)
{
  begin (w, change->aside ? "aside" : "limit");
  add_attribute (w, "book", change->book);
  add_attribute (w, "rule", change->rule);
  if (!change->aside && !isnan (change->low))
    add_number (w, "low", change->low);
  if (!change->aside && !isnan (change->high))
    add_number (w, "high", change->high);
  add_attribute (w, "reason", change->reason);
  end_empty (w);
}

/* Line by line, so that two versions of a project can be told apart line by line. */
static void
write_own (Writer *w, const FpNormBook *book)
{
  g_auto (GStrv) lines = g_strsplit (book->xml, "\n", -1);

  begin (w, "own");
  add_attribute (w, "name", book->name);
  enter (w);
  for (guint i = 0; lines[i] != NULL; i++)
    add_text (w, "line", lines[i]);
  leave (w, "own");
}

static void
write_norms (Writer *w, const FpNorms *norms)
{
  begin (w, "norms");
  add_attribute (w, "jurisdiction", fp_jurisdiction_id (norms->jurisdiction));
  if (norms->n_without + norms->n_choices + norms->n_changes + norms->n_own == 0)
    {
      end_empty (w);
      return;
    }
  enter (w);
  for (guint i = 0; i < norms->n_without; i++)
    {
      begin (w, "without");
      add_attribute (w, "book", norms->without[i]);
      end_empty (w);
    }
  for (guint i = 0; i < norms->n_choices; i++)
    {
      begin (w, "choice");
      add_attribute (w, "matter", norms->choice[i].matter);
      add_attribute (w, "book", norms->choice[i].book);
      add_attribute (w, "rule", norms->choice[i].rule);
      end_empty (w);
    }
  for (guint i = 0; i < norms->n_changes; i++)
    write_change (w, &norms->change[i]);
  for (guint i = 0; i < norms->n_own; i++)
    write_own (w, &norms->own[i]);
  leave (w, "norms");
}

/* What is not said is not written. */
static void
write_reckoning (Writer *w, const FpReckoning *reckoning)
{
  begin (w, "capacity");
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    if (!fp_reckoning_unsaid (reckoning, (FpReckoningPart) i))
      add_number (w, fp_reckoning_id ((FpReckoningPart) i), fp_reckoning_get (reckoning, (FpReckoningPart) i));
  if (reckoning->sprinklers)
    add_attribute (w, "sprinklers", "yes");
  end_empty (w);
}

char *
fp_store_write (const FpProject *project, gsize *length)
{
  Writer w = { g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"), 0 };

  begin (&w, "project");
  add_attribute (&w, "xmlns", FP_STORE_NAMESPACE);
  add_attribute (&w, "version", "1");
  enter (&w);
  write_brief (&w, fp_project_brief (project));
  write_survey (&w, project);
  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    write_alternative (&w, project, fp_project_alternative (project, i));
  if (!fp_norms_equal (fp_project_norms (project), &fp_norms_usual))
    write_norms (&w, fp_project_norms (project));
  if (fp_project_has_works (project))
    write_works (&w, fp_project_works (project));
  if (!fp_reckoning_equal (fp_project_reckoning (project), &fp_reckoning_usual))
    write_reckoning (&w, fp_project_reckoning (project));
  if (fp_project_page (project) != NULL)
    write_page (&w, fp_project_page (project));
  leave (&w, "project");
  if (length != NULL)
    *length = w.out->len;
  return g_string_free (w.out, FALSE);
}
