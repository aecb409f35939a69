/* SPDX-License-Identifier: GPL-3.0-or-later */
/* mutate-store.c - thousands of damaged project files
 *
 * The same ones each time (a seeded generator).  None may crash, hang or be
 * refused without a message; one that is taken must save and read again as the same project.
 */
#include "footpace/store.h"

#include <string.h>

#define MUTATIONS 3000
#define SEED      20261125u

static char *sample;

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

static void
test_mutations (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint taken = 0;

  for (guint i = 0; i < MUTATIONS; i++)
    {
      g_autoptr (GString) xml = g_string_new (sample);
      for (int n = g_rand_int_range (rand, 1, 4); n > 0; n--)
        mutate (rand, xml);
      taken += try (xml) ? 1 : 0;
    }
  g_test_message ("%u of %d were taken", taken, MUTATIONS);
  /* Enough of them must get through all gates, or this proves little. */
  g_assert_cmpuint (taken, >, MUTATIONS / 50);
  g_assert_cmpuint (taken, <, MUTATIONS);
}

/* Cut off at every byte of its beginning. */
static void
test_cut (void)
{
  for (gsize length = 0; length < 1500; length++)
    {
      g_autoptr (GString) xml = g_string_new_len (sample, (gssize) length);
      g_assert_false (try (xml));
    }
}

int
main (int argc, char **argv)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), "chapel.footpace", NULL);
  int result;

  g_test_init (&argc, &argv, NULL);
  g_assert_true (g_file_get_contents (path, &sample, NULL, NULL));
  g_test_add_func ("/fuzz/store/mutations", test_mutations);
  g_test_add_func ("/fuzz/store/cut", test_cut);
  result = g_test_run ();
  g_free (sample);
  return result;
}
