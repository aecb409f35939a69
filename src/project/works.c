/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project-private.h"

#include <math.h>
#include <string.h>

#define MM_PER_M 1000.0

/* EN 1991-1-1, tables A.2 to A.5, and ASCE 7, table C3-1.  A range of the table stands as its middle; who builds knows his
 * stone better. */
static const FpMatter stones[FP_N_STONES] = {
  [FP_STONE_MARBLE] = { "marble", "Marble", 27.2, "ASCE 7 Table C3-1: 173 pcf (from memory)" },
  [FP_STONE_GRANITE] = { "granite", "Granite", 28.5, "EN 1991-1-1 Table A.2: 27 to 30 (from memory)" },
  [FP_STONE_LIMESTONE] = { "limestone", "Limestone, dense", 25.9, "ASCE 7 Table C3-1: 165 pcf (from memory)" },
  [FP_STONE_OOLITE] = { "oolite", "Limestone, oolitic", 21.2, "ASCE 7 Table C3-1: 135 pcf (from memory)" },
  [FP_STONE_SANDSTONE] = { "sandstone", "Sandstone", 24.0, "EN 1991-1-1 Table A.2: 21 to 27 (from memory)" },
  [FP_STONE_SLATE] = { "slate", "Slate", 28.0, "EN 1991-1-1 Table A.5" },
};

static const FpMatter timbers[FP_N_TIMBERS] = {
  [FP_TIMBER_OAK] = { "oak", "Oak", 7.0, "EN 1991-1-1 Table A.3, D40 (from memory)" },
  [FP_TIMBER_HARDWOOD] = { "hardwood", "Hardwood", 7.85, "dry hardwood, 800 kg/m3" },
  [FP_TIMBER_SOFTWOOD] = { "softwood", "Softwood", 4.9, "softwood, 500 kg/m3" },
};

static const FpMatter metals[FP_N_METALS] = {
  [FP_METAL_BRASS] = { "brass", "Brass", 84.0, "EN 1991-1-1 Table A.4: 83 to 85" },
  [FP_METAL_BRONZE] = { "bronze", "Bronze", 84.0, "EN 1991-1-1 Table A.4: 83 to 85" },
  [FP_METAL_IRON] = { "iron", "Wrought iron", 76.0, "EN 1991-1-1 Table A.4" },
  [FP_METAL_STEEL] = { "steel", "Steel", 78.0, "EN 1991-1-1 Table A.4: 77 to 78.5" },
};

const FpWorks fp_works_usual = {
  .stone = FP_STONE_LIMESTONE, .timber = FP_TIMBER_OAK, .metal = FP_METAL_BRASS, .slab = 40, .longest = 1500, .joint = 3, .finish = "",
  .small = { FP_SMALL_AS_NEEDED, FP_SMALL_AS_NEEDED, FP_SMALL_AS_NEEDED, FP_SMALL_AS_NEEDED, FP_SMALL_AS_NEEDED,
             FP_SMALL_AS_NEEDED, FP_SMALL_AS_NEEDED },
  .currency = "",
};

const FpMatter *
fp_stone (FpStone one)
{
  return &stones[MIN ((guint) one, FP_N_STONES - 1)];
}

const FpMatter *
fp_timber (FpTimber one)
{
  return &timbers[MIN ((guint) one, FP_N_TIMBERS - 1)];
}

const FpMatter *
fp_metal (FpMetal one)
{
  return &metals[MIN ((guint) one, FP_N_METALS - 1)];
}

/* --- units ---------------------------------------------------------------------- */

static const struct { const char *id, *sign; } unit_names[][2] = {
  [FP_AMOUNT_NUMBER] = { { "one", "nr" }, { "one", "nr" } },
  [FP_AMOUNT_LENGTH] = { { "m", "m" }, { "ft", "ft" } },
  [FP_AMOUNT_AREA] = { { "m2", "m²" }, { "sq-ft", "sq ft" } },
  [FP_AMOUNT_VOLUME] = { { "m3", "m³" }, { "cu-ft", "cu ft" } },
};

static guint
column (FpUnits units)
{
  return units == FP_UNITS_METRIC ? 0 : 1;
}

const char *
fp_amount_unit (FpAmountType type, FpUnits units)
{
  return unit_names[MIN ((guint) type, FP_AMOUNT_VOLUME)][column (units)].id;
}

const char *
fp_amount_unit_sign (FpAmountType type, FpUnits units)
{
  return unit_names[MIN ((guint) type, FP_AMOUNT_VOLUME)][column (units)].sign;
}

gboolean
fp_amount_unit_find (const char *id, FpAmountType *type, FpUnits *units)
{
  static const FpUnits both[] = { FP_UNITS_METRIC, FP_UNITS_IMPERIAL };

  for (guint i = 0; i < G_N_ELEMENTS (unit_names); i++)
    for (guint k = 0; k < G_N_ELEMENTS (both); k++)
      if (strcmp (id, unit_names[i][column (both[k])].id) == 0)
        {
          *type = (FpAmountType) i;
          *units = both[k];
          return TRUE;
        }
  return FALSE;
}

double
fp_amount_in (FpAmountType type, double amount, FpUnits units)
{
  const double unit = units == FP_UNITS_METRIC ? MM_PER_M : FP_MM_PER_FOOT;

  switch (type)
    {
    case FP_AMOUNT_LENGTH: return amount / unit;
    case FP_AMOUNT_AREA: return amount / (unit * unit);
    case FP_AMOUNT_VOLUME: return amount / (unit * unit * unit);
    case FP_AMOUNT_NUMBER: break;
    }
  return amount;
}

/* --- as it must be --------------------------------------------------------------- */

static gboolean
is_within (const char *what, double value, double least, double most, GError **error)
{
  /* Written so that a NaN fails too. */
  if (value >= least && value <= most)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "works: %s is %.10g; it may be %.10g to %.10g", what, value, least, most);
  return FALSE;
}

static const char *
told (const char *text)
{
  return text != NULL ? text : "";
}

static gboolean
numbers_are_fair (const FpWorks *self, GError **error)
{
  if ((guint) self->stone >= FP_N_STONES || (guint) self->timber >= FP_N_TIMBERS || (guint) self->metal >= FP_N_METALS)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "works: a material is none of those that there are");
      return FALSE;
    }
  return is_within ("the thickness of a slab", self->slab, 10, 300, error)
         && is_within ("the longest slab", self->longest, 200, 6000, error)
         && is_within ("the nosing of the treads", self->nosing, 0, 60, error)
         && is_within ("the width of a joint", self->joint, 0, 20, error)
         && is_within ("what the floor bears", self->bears, 0, 1000, error)
         && is_within ("what a candle burns", self->burns, 0, 1000, error)
         && is_within ("the width of the bolt", self->bolt, 0, 10000, error)
         && is_within ("the shrinkage of the warp", self->warp, 0, FP_SHRINKAGE_MAX, error)
         && is_within ("the shrinkage of the weft", self->weft, 0, FP_SHRINKAGE_MAX, error) && fp_smalls_check (self->small, error);
}

static const struct { const char *what; double least, most; } lengths[FP_N_WORKS_LENGTHS] = {
  [FP_WORKS_SLAB] = { "the thickness of a slab", 10, 300 },
  [FP_WORKS_LONGEST] = { "the longest slab", 200, 6000 },
  [FP_WORKS_BURNS] = { "what a candle burns in an hour", 1, 300 },
  [FP_WORKS_BOLT] = { "the width of the bolt", FP_BOLT_LEAST, FP_BOLT_MOST },
  [FP_WORKS_NOSING] = { "the nosing of the treads", 0, 60 },
  [FP_WORKS_JOINT] = { "the width of a joint", 0, 20 },
};

gboolean
fp_works_length_check (FpWorksLength which, double mm, const char *typed, FpUnits units, GError **error)
{
  const double least = lengths[which].least, most = lengths[which].most;
  g_autofree char *value = NULL, *from = NULL, *to = NULL, *reading = NULL;

  /* Written so that a NaN fails too. */
  if (mm >= least && mm <= most)
    return TRUE;
  value = fp_length_format_unit (mm, units);
  from = fp_length_format_unit (least, units);
  to = fp_length_format_unit (most, units);
  reading = fp_length_reading (typed, units);
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s; it may be %s to %s%s%s", lengths[which].what, value, from, to,
               reading != NULL ? ". " : "", reading != NULL ? reading : "");
  return FALSE;
}

static gboolean
rate_is_fair (const FpRate *rate, GError **error)
{
  if (rate->kind == NULL || fp_kind_find (rate->kind) == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "works: a rate is for “%.40s”, which is no kind of thing",
                   rate->kind != NULL ? rate->kind : "");
      return FALSE;
    }
  if (rate->what == NULL || *rate->what == '\0' || strlen (rate->what) > FP_RATE_LETTERS_MAX
      || (guint) rate->per > FP_AMOUNT_VOLUME)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "works: a rate for “%s” does not say what it is for, in at most %d letters",
                   rate->kind, FP_RATE_LETTERS_MAX);
      return FALSE;
    }
  return fp_text_check (rate->what, "works: what a rate is for", FALSE, error)
         && is_within ("a rate", rate->rate, 0, FP_RATE_MOST, error);
}

static gboolean
rates_are_fair (const FpWorks *self, GError **error)
{
  if (self->n_rates > FP_RATES_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "works: there are more than %d rates", FP_RATES_MAX);
      return FALSE;
    }
  for (guint i = 0; i < self->n_rates; i++)
    {
      const FpRate *rate = &self->rate[i];

      if (!rate_is_fair (rate, error))
        return FALSE;
      if (fp_works_rate (self, rate->kind, rate->what, rate->per) != rate)
        {
          g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "works: there are two rates for “%s” of “%s”", rate->what, rate->kind);
          return FALSE;
        }
    }
  return TRUE;
}

gboolean
fp_works_check (const FpWorks *self, GError **error)
{
  const char *currency = told (self->currency), *finish = told (self->finish);

  if (strlen (finish) > FP_FINISH_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "works: the finish of the stone has more than %d letters", FP_FINISH_MAX);
      return FALSE;
    }
  if (strlen (currency) > FP_CURRENCY_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "works: the currency has more than %d letters", FP_CURRENCY_MAX);
      return FALSE;
    }
  return fp_text_check (currency, "works: currency", FALSE, error)
         && fp_text_check (finish, "works: finish of the stone", FALSE, error) && numbers_are_fair (self, error)
         && rates_are_fair (self, error);
}

/* --- rates ----------------------------------------------------------------------- */

const FpRate *
fp_works_rate (const FpWorks *self, const char *kind, const char *what, FpAmountType per)
{
  for (guint i = 0; i < self->n_rates; i++)
    {
      const FpRate *rate = &self->rate[i];

      if (rate->per == per && strcmp (rate->kind, kind) == 0 && strcmp (rate->what, what) == 0)
        return rate;
    }
  return NULL;
}

static gboolean
rates_are_equal (const FpWorks *a, const FpWorks *b)
{
  if (a->n_rates != b->n_rates)
    return FALSE;
  for (guint i = 0; i < a->n_rates; i++)
    {
      const FpRate *p = &a->rate[i], *q = &b->rate[i];

      if (strcmp (p->kind, q->kind) != 0 || strcmp (p->what, q->what) != 0 || p->per != q->per || p->units != q->units
          || p->rate != q->rate)
        return FALSE;
    }
  return TRUE;
}

gboolean
fp_works_equal (const FpWorks *a, const FpWorks *b)
{
  return a->stone == b->stone && a->timber == b->timber && a->metal == b->metal && a->slab == b->slab
         && a->longest == b->longest && a->bears == b->bears && a->burns == b->burns && a->bolt == b->bolt && a->warp == b->warp
         && a->weft == b->weft && a->nosing == b->nosing && a->joint == b->joint && !a->solid == !b->solid
         && !a->joined == !b->joined
         && fp_smalls_equal (a->small, b->small)
         && strcmp (told (a->finish), told (b->finish)) == 0 && strcmp (told (a->currency), told (b->currency)) == 0
         && rates_are_equal (a, b);
}

/* --- a part of a project ----------------------------------------------------------- */

FpWorksPart *
fp_works_part_new (const FpWorks *works)
{
  FpWorksPart *self = g_new (FpWorksPart, 1);
  FpRate *rate = g_new (FpRate, works->n_rates);

  g_atomic_ref_count_init (&self->ref_count);
  self->works = *works;
  self->works.currency = g_strdup (told (works->currency));
  self->works.finish = g_strdup (told (works->finish));
  for (guint i = 0; i < works->n_rates; i++)
    {
      rate[i] = works->rate[i];
      rate[i].kind = fp_kind_find (works->rate[i].kind)->id;
      rate[i].what = g_strdup (works->rate[i].what);
    }
  self->works.rate = rate;
  return self;
}

FpWorksPart *
fp_works_part_ref (FpWorksPart *self)
{
  if (self != NULL)
    g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_works_part_unref (FpWorksPart *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  for (guint i = 0; i < self->works.n_rates; i++)
    g_free ((char *) self->works.rate[i].what);
  g_free ((FpRate *) self->works.rate);
  g_free ((char *) self->works.currency);
  g_free ((char *) self->works.finish);
  g_free (self);
}
