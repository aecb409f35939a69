/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store-words.h - the words of the brief as the file has them, in the order of their enumerations */
#pragma once

#include "footpace/store.h"

G_BEGIN_DECLS

extern const char *const fp_books_words[4]; /* each ended by NULL */
extern const char *const fp_facing_words[3];
extern const char *const fp_units_words[3];
extern const char *const fp_statures_words[3]; /* FALSE first */
/* Of the page set-up: FALSE first. */
extern const char *const fp_yes_words[3];
extern const char *const fp_lies_words[3];
extern const char *const fp_from_words[3];
extern const char *const fp_towards_words[3];

G_END_DECLS
