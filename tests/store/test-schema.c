/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-schema.c - the schema against the table of kinds: neither has what the other has not */
#include "footpace/store.h"

#include <libxml/parser.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>
#include <string.h>

typedef struct
{
  xmlDoc          *doc;
  xmlXPathContext *xpath;
} Schema;

static void
schema_open (Schema *s)
{
  gsize length;
  const char *text = fp_store_schema (&length);

  g_assert_cmpuint (length, >, 1000);
  s->doc = xmlReadMemory (text, (int) length, "project.rng", NULL, XML_PARSE_NONET);
  g_assert_nonnull (s->doc);
  s->xpath = xmlXPathNewContext (s->doc);
  xmlXPathRegisterNs (s->xpath, BAD_CAST "r", BAD_CAST "http://relaxng.org/ns/structure/1.0");
}

static void
schema_close (Schema *s)
{
  xmlXPathFreeContext (s->xpath);
  xmlFreeDoc (s->doc);
}

static double
count (const Schema *s, const char *format, ...) G_GNUC_PRINTF (2, 3);

static double
count (const Schema *s, const char *format, ...)
{
  g_autofree char *path = NULL, *counted = NULL;
  xmlXPathObject *found;
  va_list args;
  double n;

  va_start (args, format);
  path = g_strdup_vprintf (format, args);
  va_end (args);
  counted = g_strdup_printf ("count(%s)", path);
  found = xmlXPathEvalExpression (BAD_CAST counted, s->xpath);
  g_assert_nonnull (found);
  n = found->floatval;
  xmlXPathFreeObject (found);
  return n;
}

#define ELEMENT "/r:grammar/r:define[@name='%s']/r:element[@name='%s']"

#define NUMBERS ELEMENT "/r:zeroOrMore/r:attribute[r:ref/@name='number']/r:choice/r:name"

/* Numbers are one group of names, choices are attributes of their own. */
static void
check_param (const Schema *s, const FpKind *kind, const FpParam *param)
{
  guint n = 0;

  g_test_message ("%s: %s", kind->id, param->id);
  if (param->type != FP_PARAM_CHOICE)
    {
      g_assert_cmpfloat (count (s, NUMBERS "[text()='%s']", kind->id, kind->id, param->id), ==, 1);
      return;
    }
  for (; param->choices[n].id != NULL; n++)
    g_assert_cmpfloat (count (s, ELEMENT "/r:optional/r:attribute[@name='%s']/r:choice/r:value[text()='%s']", kind->id,
                              kind->id, param->id, param->choices[n].id), ==, 1);
  g_assert_cmpfloat (count (s, ELEMENT "//r:attribute[@name='%s']/r:choice/r:value", kind->id, kind->id, param->id), ==,
                     n);
}

/* The schema has no parameter more than the kind, and x, y and turn. */
static void
check_number_of_params (const Schema *s, const FpKind *kind)
{
  guint n_numbers = 0, n_choices = 0;

  for (guint i = 0; kind->params[i].id != NULL; i++)
    if (kind->params[i].type == FP_PARAM_CHOICE)
      n_choices++;
    else
      n_numbers++;
  g_assert_cmpfloat (count (s, NUMBERS, kind->id, kind->id), ==, n_numbers + 3);
  g_assert_cmpfloat (count (s, ELEMENT "//r:attribute[@name]", kind->id, kind->id), ==, n_choices);
}

static void
check_kind (const Schema *s, const FpKind *kind)
{
  const gboolean drawn = (kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0;
  const char *group = (kind->flags & FP_KIND_SURVEY) != 0 ? "building" : "furnishing";

  g_test_message ("%s", kind->id);
  g_assert_cmpfloat (count (s, ELEMENT, kind->id, kind->id), ==, 1);
  g_assert_cmpfloat (count (s, "/r:grammar/r:define[@name='%s']//r:ref[@name='%s']", group, kind->id), ==, 1);
  g_assert_cmpfloat (count (s, ELEMENT "/r:ref[@name='common']", kind->id, kind->id), ==, 1);
  g_assert_cmpfloat (count (s, ELEMENT "/r:ref[@name='corners']", kind->id, kind->id), ==, drawn ? 1 : 0);
  for (guint i = 0; kind->params[i].id != NULL; i++)
    check_param (s, kind, &kind->params[i]);
  check_number_of_params (s, kind);
}

static void
test_kinds (void)
{
  Schema s;
  guint n, n_building = 0;
  const FpKind *const *kinds = fp_kinds (&n);

  schema_open (&s);
  g_assert_cmpuint (n, >=, 20);
  for (guint i = 0; i < n; i++)
    {
      check_kind (&s, kinds[i]);
      n_building += (kinds[i]->flags & FP_KIND_SURVEY) != 0;
    }
  g_assert_cmpfloat (count (&s, "/r:grammar/r:define[@name='building']//r:ref"), ==, n_building);
  g_assert_cmpfloat (count (&s, "/r:grammar/r:define[@name='furnishing']//r:ref"), ==, n - n_building);
  schema_close (&s);
}

/* A parameter must not hide what every thing has. */
static void
test_names (void)
{
  static const char *const common[] = { "id", "name", "on", "x", "y", "turn", NULL };
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  for (guint i = 0; i < n; i++)
    for (guint p = 0; kinds[i]->params[p].id != NULL; p++)
      g_assert_false (g_strv_contains (common, kinds[i]->params[p].id));
}

static void
test_celebrations (void)
{
  Schema s;

  schema_open (&s);
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    g_assert_cmpfloat (count (&s, "/r:grammar/r:define[@name='celebration']//r:value[text()='%s']",
                              fp_celebration_id ((FpCelebration) (1u << i))), ==, 1);
  g_assert_cmpfloat (count (&s, "/r:grammar/r:define[@name='celebration']//r:value"), ==, FP_N_CELEBRATIONS);
  schema_close (&s);
}

/* What is built in is what is shipped. */
static void
test_shipped (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SCHEMAS"), "store", "project.rng", NULL);
  g_autofree char *shipped = NULL;
  gsize length, built_in;
  const char *schema = fp_store_schema (&built_in);

  g_assert_true (g_file_get_contents (path, &shipped, &length, NULL));
  g_assert_cmpuint (length, ==, built_in);
  g_assert_cmpint (memcmp (schema, shipped, length), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schema/kinds", test_kinds);
  g_test_add_func ("/schema/names", test_names);
  g_test_add_func ("/schema/celebrations", test_celebrations);
  g_test_add_func ("/schema/shipped", test_shipped);
  return g_test_run ();
}
