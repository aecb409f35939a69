/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "remembered.h"

#include <glib/gstdio.h>

#define GROUP "window"

static char *
path_of (void)
{
  return g_build_filename (g_get_user_config_dir (), "footpace", "window.ini", NULL);
}

/* What is read may have been written by hand, or for a larger screen. */
static int
size_in (GKeyFile *file, const char *key)
{
  return CLAMP (g_key_file_get_integer (file, GROUP, key, NULL), 0, 20000);
}

static double
share_in (GKeyFile *file, const char *key)
{
  double share = g_key_file_get_double (file, GROUP, key, NULL);

  return share > 0.0 && share < 1.0 ? share : 0.0; /* a NaN fails too */
}

/* One of @n. */
static guint
choice_in (GKeyFile *file, const char *key, int n)
{
  const int value = g_key_file_get_integer (file, GROUP, key, NULL);

  return value >= 0 && value < n ? (guint) value : 0;
}

FpRemembered
fp_remembered_load (void)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *path = path_of ();

  g_key_file_load_from_file (file, path, G_KEY_FILE_NONE, NULL);
  return (FpRemembered) {
    .width = size_in (file, "width"), .height = size_in (file, "height"),
    .maximized = g_key_file_get_boolean (file, GROUP, "maximized", NULL),
    .things = share_in (file, "things"), .thing = share_in (file, "thing"),
    .ground = choice_in (file, "ground", 3), .ink = choice_in (file, "ink", 3),
    .findings_full = g_key_file_get_boolean (file, GROUP, "findings-full", NULL),
  };
}

void
fp_remembered_save (const FpRemembered *self)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *path = path_of (), *folder = g_path_get_dirname (path);

  g_key_file_set_integer (file, GROUP, "width", self->width);
  g_key_file_set_integer (file, GROUP, "height", self->height);
  g_key_file_set_boolean (file, GROUP, "maximized", self->maximized);
  g_key_file_set_double (file, GROUP, "things", self->things);
  g_key_file_set_double (file, GROUP, "thing", self->thing);
  g_key_file_set_integer (file, GROUP, "ground", (int) self->ground);
  g_key_file_set_integer (file, GROUP, "ink", (int) self->ink);
  g_key_file_set_boolean (file, GROUP, "findings-full", self->findings_full);
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (file, path, NULL);
}
