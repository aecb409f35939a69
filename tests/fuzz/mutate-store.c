/* SPDX-License-Identifier: GPL-3.0-or-later */
/* mutate-store.c - thousands of damaged project files
 *
 * The same ones each time (a seeded generator).  None may crash, hang or be
 * refused without a message; one that is taken must save and read again as the same project.
 */
#include "footpace/store.h"

#include <string.h>

#define SEED 20261125u

/* Small, so that thousands can be tried, but with something for each gate. */
static const char small[] =
  "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
  "<project xmlns=\"urn:footpace:project:1\" version=\"1\">\n"
  "<brief><title>T</title><place>P</place><client/><author/><note>one &amp; two</note><books>both</books>\n"
  "<facing>east</facing><celebrations>low sunday</celebrations><ministers>3</ministers><seats>80</seats>\n"
  "<units>metric</units><north>90</north><percentile>50</percentile>\n"
  "<site latitude=\"52.25\" longitude=\"-0.75\" zone=\"+01:00\"/><mass day=\"sunday\" at=\"09:30\"/></brief>\n"
  "<survey>\n"
  "<wall id=\"wall\" closed=\"yes\">\n"
  "<corner x=\"-4000\" y=\"-9000\"/>\n"
  "<corner x=\"-4000\" y=\"5000\"/>\n"
  "<corner x=\"4000\" y=\"5000\"/>\n"
  "<corner x=\"4000\" y=\"-9000\"/>\n"
  "</wall>\n"
  "<opening id=\"door\" on=\"wall\" side=\"4\" along=\"4000\"/>\n"
  "<pews id=\"pews\" y=\"-2500\" rows=\"3\"/>\n"
  "<credence id=\"table\" name=\"Old table\" x=\"3500\" y=\"2000\" turn=\"-90\"/>\n"
  "</survey>\n"
  "<alternative id=\"a\" name=\"A\"><note/>\n"
  "<moved id=\"table\" x=\"3000\" y=\"2500.5\"/>\n"
  "<footpace id=\"footpace\" count=\"3\"/>\n"
  "<altar id=\"altar\" on=\"footpace\" y=\"3500\"/>\n"
  "<gradine id=\"gradine\" on=\"altar\" height=\"150\"/>\n"
  "<crucifix id=\"cross\" on=\"gradine\"/>\n"
  "<kept thing=\"cross\">press</kept>\n"
  "<setting for=\"requiem\" colour=\"black\"><thing id=\"gradine\" stands=\"no\" veiled=\"yes\" lit=\"2\"/></setting>\n"
  "</alternative>\n"
  "<alternative id=\"b\" name=\"B\">\n"
  "<removed id=\"table\"/>\n"
  "</alternative>\n"
  "<page sheet=\"plan\" paper=\"a3\" lies=\"landscape\" scale=\"50\" whole=\"no\" findings=\"yes\" ink=\"grey\"\n"
  " without=\"names\" tiles=\"a4\" along=\"1200\" from=\"gospel\" across=\"-2.5\" facing=\"west\"/>\n"
  "</project>\n";

/* Pieces that files are made of, and some that they are not. */
static const char *const pieces[] = {
  "<", ">", "/>", "</", "\"", "&", "&amp;", "&#0;", "&#x10FFFF;", "<!--", "-->", "<![CDATA[", "]]>", "<?x?>",
  "<!DOCTYPE a [<!ENTITY b 'c'>]>", "xmlns=\"\"", "version=\"2\"", "id=\"altar\"", " on=\"altar\"", " x=\"1e9\"",
  " y=\"-999999999999\"", " count=\"0\"", "0", "-", ".", "1000000", "999999999999999999999999", "NaN", "\n", "\t", " ",
  "<corner x=\"0\" y=\"0\"/>", "<altar id=\"z\"/>", "<alternative id=\"z\" name=\"\"/>", "<survey/>", "\303\244",
  "\302", "\357\277\277", "</project>",
};

static gsize
anywhere (GRand *rand, const GString *s)
{
  return s->len > 0 ? (gsize) g_rand_int_range (rand, 0, (gint32) s->len) : 0;
}

static void
insert_piece (GRand *rand, GString *s)
{
  g_string_insert (s, (gssize) anywhere (rand, s), pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);
}

static void
copy_part (GRand *rand, GString *s)
{
  const gsize from = anywhere (rand, s), length = (gsize) g_rand_int_range (rand, 1, 400);
  g_autofree char *part = g_strndup (s->str + from, length);

  g_string_insert (s, (gssize) anywhere (rand, s), part);
}

static void
drop_part (GRand *rand, GString *s)
{
  const gsize from = anywhere (rand, s), length = (gsize) g_rand_int_range (rand, 1, 200);

  g_string_erase (s, (gssize) from, (gssize) MIN (length, s->len - from));
}

/* Another digit keeps the file well-formed, so that it reaches the later gates. */
static void
change_digit (GRand *rand, GString *s)
{
  for (int tries = 0; tries < 200; tries++)
    {
      const gsize at = anywhere (rand, s);
      if (g_ascii_isdigit (s->str[at]))
        {
          s->str[at] = (char) ('0' + g_rand_int_range (rand, 0, 10));
          return;
        }
    }
}

static void
drop_line (GRand *rand, GString *s)
{
  const char *at = s->str + anywhere (rand, s);
  const char *begin = g_strrstr_len (s->str, at - s->str, "\n"), *end = strchr (at, '\n');

  if (begin != NULL && end != NULL)
    g_string_erase (s, begin - s->str, end - begin);
}

static void
mutate (GRand *rand, GString *s)
{
  if (s->len == 0)
    return;
  switch (g_rand_int_range (rand, 0, 8))
    {
    case 0: s->str[anywhere (rand, s)] = (char) g_rand_int_range (rand, 1, 256); break;
    case 1: insert_piece (rand, s); break;
    case 2: copy_part (rand, s); break;
    case 3: drop_part (rand, s); break;
    case 4: g_string_truncate (s, anywhere (rand, s)); break;
    case 5: drop_line (rand, s); break;
    default: change_digit (rand, s); break;
    }
}

static void
assert_same_again (const FpProject *project)
{
  gsize length;
  g_autofree char *bytes = fp_store_write (project, &length), *again = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) back = fp_store_parse (bytes, length, "again", &error);

  g_assert_no_error (error);
  g_assert_true (fp_project_check (project, NULL));
  again = fp_store_write (back, NULL);
  g_assert_cmpstr (again, ==, bytes);
}

/* TRUE when it was taken. */
static gboolean
try (const GString *xml)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_parse (xml->str, xml->len, "mutated", &error);

  if (project != NULL)
    {
      g_assert_no_error (error);
      assert_same_again (project);
      return TRUE;
    }
  g_assert_nonnull (error);
  g_assert_cmpuint (error->domain, ==, FP_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "mutated:"));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  return FALSE;
}

/* How many of @n damaged copies of @sample were taken. */
static guint
attack (const char *sample, guint n)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint taken = 0;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GString) xml = g_string_new (sample);
      for (int times = g_rand_int_range (rand, 1, 4); times > 0; times--)
        mutate (rand, xml);
      taken += try (xml) ? 1 : 0;
    }
  g_test_message ("%u of %u were taken", taken, n);
  return taken;
}

static void
test_small (void)
{
  const guint n = 5000, taken = attack (small, n);

  /* Enough of them must get through all gates, or this proves little. */
  g_assert_cmpuint (taken, >, n / 50);
  g_assert_cmpuint (taken, <, n);
}

static void
test_chapel (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), "chapel.footpace", NULL);
  g_autofree char *sample = NULL;

  g_assert_true (g_file_get_contents (path, &sample, NULL, NULL));
  g_assert_cmpuint (attack (sample, 200), >, 4);
}

/* Cut off at every byte. */
static void
test_cut (void)
{
  for (gsize length = 0; length + 1 < strlen (small); length++)
    {
      g_autoptr (GString) xml = g_string_new_len (small, (gssize) length);
      g_assert_false (try (xml));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/store/small", test_small);
  g_test_add_func ("/fuzz/store/chapel", test_chapel);
  g_test_add_func ("/fuzz/store/cut", test_cut);
  return g_test_run ();
}
