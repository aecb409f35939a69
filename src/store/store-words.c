/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store-words.h"

const char *const fp_books_words[4] = { "older", "newer", "both", NULL };
const char *const fp_facing_words[3] = { "east", "people", NULL };
const char *const fp_units_words[3] = { "metric", "imperial", NULL };
