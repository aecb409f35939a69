/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store-words.h"

const char *const fp_books_words[4] = { "older", "newer", "both", NULL };
const char *const fp_facing_words[3] = { "east", "people", NULL };
const char *const fp_units_words[3] = { "metric", "imperial", NULL };
const char *const fp_statures_words[3] = { "alike", "varied", NULL };
const char *const fp_yes_words[3] = { "no", "yes", NULL };
const char *const fp_lies_words[3] = { "portrait", "landscape", NULL };
const char *const fp_from_words[3] = { "gospel", "epistle", NULL };
const char *const fp_towards_words[3] = { "east", "west", NULL };
