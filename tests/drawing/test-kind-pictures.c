/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-kind-pictures.c - every kind still looks as it did, in plan, elevation and section and from the pew
 *
 * The pictures in pictures/ were looked at, and found to be what a reader of drawings of churches knows.  Where one is
 * to change, look at the new one that is put beside it, and renew it with FOOTPACE_RENEW_PICTURES=1.
 */
#include "kind-picture.h"

#include <string.h>

static char *
path_of (const FpKind *kind, const char *end)
{
  g_autofree char *name = g_strconcat (kind->id, end, NULL);

  return g_build_filename (g_getenv ("FOOTPACE_PICTURES"), name, NULL);
}

static void
fail_differing (const FpKind *kind, guint differ, const char *beside)
{
  g_autoptr (GString) views = g_string_new (NULL);

  for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
    if (differ & 1u << view)
      g_string_append_printf (views, "%s%s", views->len > 0 ? ", " : "", kind_picture_view (view));
  g_test_message ("%s looks different: %s; see %s", kind->label, views->str, beside);
  g_test_fail ();
}

/* Standing room and a place for a wheelchair are empty floor; a cloth is not told from the mensa that it covers. */
static gboolean
is_seen (const FpKind *kind, guint view)
{
  if (kind->role == FP_ROLE_STANDING_ROOM || kind->role == FP_ROLE_WHEELCHAIR)
    return view != FP_VIEW_ELEVATION && view != FP_VIEW_SECTION;
  return kind->role != FP_ROLE_ALTAR_CLOTHS || view != FP_VIEW_PLAN;
}

/* What has no body and no symbol in a view is not there for its reader. */
static void
check_all_views (const FpKind *kind, const char *picture)
{
  for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
    {
      g_autofree char *group = g_strdup_printf ("<g id=\"%s\"", kind_picture_view (view));

      if ((strstr (picture, group) != NULL) == is_seen (kind, view))
        continue;
      g_test_message ("%s, %s: %s", kind->label, kind_picture_view (view),
                      is_seen (kind, view) ? "nothing of it is drawn" : "drawn where nothing of it is to be seen");
      g_test_fail ();
    }
}

static void
test_picture (gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  const FpKind *kind = data;
  g_autofree char *path = path_of (kind, ".svg"), *beside = path_of (kind, ".new.svg");
  g_autofree char *is = kind_picture_new (kind), *was = NULL;
  guint differ = (1u << KIND_PICTURE_VIEWS) - 1;

  check_all_views (kind, is);
  if (g_getenv ("FOOTPACE_RENEW_PICTURES") != NULL)
    {
      g_file_set_contents (path, is, -1, &error);
      g_assert_no_error (error);
      return;
    }
  if (g_file_get_contents (path, &was, NULL, NULL))
    differ = kind_picture_differences (was, is);
  if (differ == 0)
    return;
  g_file_set_contents (beside, is, -1, &error);
  g_assert_no_error (error);
  fail_differing (kind, differ, beside);
}

/* A line that is moved, lost or drawn by another pen is found, and what was rounded otherwise is not. */
static void
test_differences (void)
{
  static const char was[] = "<g id=\"plan\">\n<path class=\"edge\" d=\"\nM0 0L10 0\nM0 5L10 5\n\"/>\n</g>\n"
                            "<g id=\"pew\">\n<path class=\"light\" d=\"\nM0 0L10 0 10 10Z\n\"/>\n</g>\n";
  static const struct { const char *from, *to; guint views; } cases[] = {
    { "M0 0L10 0\n", "M0 1L10 0\n", 0 },
    { "M0 0L10 0\n", "M0 2L10 0\n", 1u << FP_VIEW_PLAN },
    { "M0 0L10 0\nM0 5L10 5\n", "M0 5L10 5\nM0 0L10 0\n", 0 },
    { "M0 5L10 5\n", "", 1u << FP_VIEW_PLAN },
    { "M0 5L10 5\n", "M0 0L10 0\n", 1u << FP_VIEW_PLAN },
    { "\"edge\"", "\"cut\"", 1u << FP_VIEW_PLAN },
    { "10 10Z", "10 10", 1u << FP_N_VIEWS },
    { "light", "dark", 1u << FP_N_VIEWS },
    { "\"pew\"", "\"section\"", 1u << FP_N_VIEWS | 1u << FP_VIEW_SECTION },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) is = g_string_new (was);

      g_assert_cmpuint (g_string_replace (is, cases[i].from, cases[i].to, 1), ==, 1);
      g_assert_cmphex (kind_picture_differences (was, is->str), ==, cases[i].views);
    }
}

int
main (int argc, char **argv)
{
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kind-pictures/differences", test_differences);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *path = g_strdup_printf ("/kind-pictures/%s", kinds[i]->id);
      g_test_add_data_func (path, kinds[i], test_picture);
    }
  return g_test_run ();
}
