/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "json.h"

#include "footpace/units.h"

#include <math.h>

static void
put_escaped (GString *out, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  g_string_append_c (out, '"');
  for (const char *p = valid; *p; p++)
    switch (*p)
      {
      case '"':
        g_string_append (out, "\\\"");
        break;
      case '\\':
        g_string_append (out, "\\\\");
        break;
      case '\n':
        g_string_append (out, "\\n");
        break;
      case '\t':
        g_string_append (out, "\\t");
        break;
      default:
        if ((guchar) *p < 0x20 || *p == 0x7f)
          g_string_append_printf (out, "\\u%04x", (guint) (guchar) *p);
        else
          g_string_append_c (out, *p);
      }
  g_string_append_c (out, '"');
}

/* Comma, new line and indent before the next value, and its name where it has one. */
static void
put_lead (FpJson *json, const char *name)
{
  g_string_append (json->out, json->begun ? ",\n" : json->depth ? "\n" : "");
  g_string_append_printf (json->out, "%*s", (int) json->depth * 2, "");
  if (name)
    {
      put_escaped (json->out, name);
      g_string_append (json->out, ": ");
    }
  json->begun = TRUE;
}

void
fp_json_open (FpJson *json, const char *name, char bracket)
{
  put_lead (json, name);
  g_string_append_c (json->out, bracket);
  json->depth++;
  json->begun = FALSE;
}

void
fp_json_close (FpJson *json, char bracket)
{
  json->depth--;
  if (json->begun)
    g_string_append_printf (json->out, "\n%*s", (int) json->depth * 2, "");
  g_string_append_c (json->out, bracket);
  json->begun = TRUE;
}

void
fp_json_text (FpJson *json, const char *name, const char *text)
{
  put_lead (json, name);
  if (text)
    put_escaped (json->out, text);
  else
    g_string_append (json->out, "null");
}

void
fp_json_number (FpJson *json, const char *name, double value)
{
  put_lead (json, name);
  if (isfinite (value))
    {
      g_autofree char *text = fp_number_format (value);

      g_string_append (json->out, text);
    }
  else
    g_string_append (json->out, "null");
}

void
fp_json_yes (FpJson *json, const char *name, gboolean yes)
{
  put_lead (json, name);
  g_string_append (json->out, yes ? "true" : "false");
}
