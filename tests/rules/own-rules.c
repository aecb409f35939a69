/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "own-rules.h"

#include <string.h>

GPtrArray *
own_book (const OwnRule *rule, guint n)
{
  GPtrArray *books = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_rulebook_unref);
  g_autoptr (GString) xml = g_string_new ("<rulebook xmlns=\"urn:footpace:rulebook:1\" id=\"own\" title=\"Own\" edition=\"1\">");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n; i++)
    g_string_append_printf (xml, "<rule id=\"%s\" %s weight=\"%s\"><title>Of %s</title><source>Made for this test</source>"
                                 "<advice>Change it.</advice></rule>",
                            rule[i].id, rule[i].held, rule[i].weight, rule[i].id);
  g_string_append (xml, "</rulebook>");
  g_ptr_array_add (books, fp_rulebook_parse (xml->str, xml->len, "own", &error));
  g_assert_no_error (error);
  return books;
}

FpFindings *
own_held (const FpProject *project, const OwnRule *rule, guint n, gboolean sight)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (GPtrArray) books = own_book (rule, n);
  g_autoptr (FpPeople) people = NULL;

  if (sight)
    return fp_findings_of_scene (scene, books, NULL);
  people = fp_people_new (scene);
  return fp_findings_new (&(FpMeasuring) { scene, people, fp_levels (people), NULL }, books);
}
