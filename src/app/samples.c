/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "samples.h"

char *
fp_sample_path (const char *name)
{
  const char *dirs[] = { g_getenv ("FOOTPACE_SAMPLES"), FP_SAMPLES_INSTALLED, FP_SAMPLES_BUILT };

  for (guint i = 0; i < G_N_ELEMENTS (dirs); i++)
    {
      g_autofree char *path = dirs[i] != NULL ? g_build_filename (dirs[i], name, NULL) : NULL;

      if (path != NULL && g_file_test (path, G_FILE_TEST_IS_REGULAR))
        return g_steal_pointer (&path);
    }
  return g_build_filename (FP_SAMPLES_INSTALLED, name, NULL);
}
