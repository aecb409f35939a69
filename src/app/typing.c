/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "typing.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

char *
fp_typing_show (const FpParam *param, double value, FpUnits units)
{
  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      return fp_length_format (value, units);
    case FP_PARAM_SHARE:
      return fp_number_format (round (value * 1.0e6) / 1.0e4);
    case FP_PARAM_ANGLE:
    case FP_PARAM_COUNT:
      return fp_number_format (round (value * 1.0e4) / 1.0e4);
    case FP_PARAM_CHOICE:
      return g_strdup (param->choices[(guint) value].label);
    }
  return g_strdup ("");
}

const char *
fp_typing_unit (const FpParam *param, FpUnits units)
{
  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      return units == FP_UNITS_METRIC ? "mm" : "";
    case FP_PARAM_SHARE:
      return "%";
    case FP_PARAM_ANGLE:
      return "°";
    case FP_PARAM_COUNT:
    case FP_PARAM_CHOICE:
      break;
    }
  return "";
}

/* "+1.8": as levels are lettered on the paper, which no millimetres are. */
static gboolean
is_as_lettered (const char *text)
{
  const char *digits = text + (*text == '+' || *text == '-');

  return g_ascii_isdigit (*digits) && strspn (digits, "0123456789.,") == strlen (digits)
         && strcspn (digits, ".,") < strlen (digits);
}

gboolean
fp_typing_read_level (const char *text, FpUnits units, double *value, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (!fp_length_parse (*bare == '+' ? bare + 1 : bare, units, value, error))
    return FALSE;
  if (units == FP_UNITS_METRIC && is_as_lettered (bare))
    *value *= 1000.0;
  return TRUE;
}

/* A sign before the first figure works nothing out. */
static gboolean
is_sum (const char *text)
{
  const gsize before = strspn (text, " +-");

  return strpbrk (text + before, "+-*/×÷(") != NULL || strchr (text, '(') != NULL;
}

char *
fp_typing_sum (const char *text, FpUnits units)
{
  g_autofree char *length = NULL;
  double value;

  if (!is_sum (text) || !fp_length_parse (text, units, &value, NULL))
    return NULL;
  length = fp_length_format_unit (value, units);
  return g_strconcat ("= ", length, NULL);
}

static gboolean
read_raw (const FpParam *param, const char *text, FpUnits units, double *value, GError **error)
{
  switch (param->type)
    {
    case FP_PARAM_LENGTH:
      return fp_length_parse (text, units, value, error);
    case FP_PARAM_LEVEL:
      return fp_typing_read_level (text, units, value, error);
    case FP_PARAM_SHARE:
      if (!fp_number_parse (text, value, error))
        return FALSE;
      *value /= 100.0;
      return TRUE;
    case FP_PARAM_ANGLE:
    case FP_PARAM_COUNT:
    case FP_PARAM_CHOICE:
      break;
    }
  return fp_number_parse (text, value, error);
}

/* People type the sign that stands beside the field; it says nothing new. */
static char *
without_sign (const FpParam *param, const char *text)
{
  char *bare = g_strstrip (g_strdup (text));
  const char *sign = param->type == FP_PARAM_SHARE ? "%" : param->type == FP_PARAM_ANGLE ? "°" : NULL;

  if (sign != NULL && g_str_has_suffix (bare, sign))
    bare[strlen (bare) - strlen (sign)] = '\0';
  return bare;
}

gboolean
fp_typing_read (const FpParam *param, const char *text, FpUnits units, double *value, GError **error)
{
  g_autofree char *bare = without_sign (param, text);
  double read;

  if (!read_raw (param, bare, units, &read, error) || !fp_param_check_in (param, read, units, error))
    return FALSE;
  *value = read;
  return TRUE;
}

char *
fp_typing_about (const FpParam *param, FpUnits units)
{
  g_autofree char *min = NULL, *max = NULL;
  const char *unit = fp_typing_unit (param, units);

  if (param->source == NULL)
    return g_strdup (param->label);
  if (param->type == FP_PARAM_CHOICE)
    return g_strdup_printf ("Source of the default: %s", param->source);
  min = fp_typing_show (param, param->min, units);
  max = fp_typing_show (param, param->max, units);
  return g_strdup_printf ("Allowed: %s to %s%s%s\nSource of the default: %s", min, max,
                          *unit != '\0' && param->type != FP_PARAM_ANGLE ? " " : "", unit, param->source);
}

double
fp_typing_step (const FpParam *param, FpUnits units)
{
  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      return units == FP_UNITS_METRIC ? 10.0 : FP_MM_PER_INCH / 2.0;
    case FP_PARAM_SHARE:
      return 0.01;
    case FP_PARAM_ANGLE:
      return 5.0;
    case FP_PARAM_COUNT:
    case FP_PARAM_CHOICE:
      break;
    }
  return 1.0;
}

const FpParam *
fp_typing_param (const FpPlaced *placed, const char *param, double *value)
{
  const FpKind *kind = placed != NULL ? fp_item_kind (placed->item) : NULL;
  int i = kind != NULL ? fp_kind_param_index (kind, param) : -1;

  if (i < 0)
    return NULL;
  if (value != NULL)
    *value = fp_item_params (placed->item)[i];
  return &kind->params[i];
}

gboolean
fp_typing_enter (FpDocument *document, const char *id, const char *param_id, const char *text, GError **error)
{
  FpUnits units = fp_project_brief (fp_document_project (document))->units;
  const FpPlaced *placed = fp_document_placed (document, id);
  double was, value;
  const FpParam *param = fp_typing_param (placed, param_id, &was);
  g_autofree char *shown = NULL, *label = NULL;

  if (param == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "This measure is not there any more.");
      return FALSE;
    }
  shown = fp_typing_show (param, was, units);
  if (strcmp (shown, text) == 0)
    return TRUE;
  if (!fp_typing_read (param, text, units, &value, error))
    return FALSE;
  label = g_strdup_printf ("%s of %s", param->label, fp_item_name (placed->item));
  return fp_document_edit (document,
                           fp_set_out_param (fp_document_base_scene (document), id, param_id, value, error),
                           label, NULL);
}
