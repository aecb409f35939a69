/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pdf-language.c - the language of a PDF's texts, for screen readers
 *
 * cairo 1.16 cannot say it, so a new catalogue is appended to the finished
 * file as an incremental update (ISO 32000-1, 7.5.6; Lang: 14.9.2).
 */
#include "pdf-language.h"

#include <string.h>

/* The last @word in the bytes; NULL. */
static const char *
find_last (const GByteArray *pdf, const char *word)
{
  return g_strrstr_len ((const char *) pdf->data, (gssize) pdf->len, word);
}

/* The number after the last @word, which stands in the plain text at the end of the file; 0 when there is none. */
static guint64
number_after (const GByteArray *pdf, const char *word)
{
  const char *at = find_last (pdf, word), *end = (const char *) pdf->data + pdf->len;
  char digits[24] = "";
  guint n = 0;

  if (at == NULL)
    return 0;
  for (at += strlen (word); at < end && g_ascii_isspace (*at); at++)
    ;
  for (; at < end && g_ascii_isdigit (*at) && n < sizeof digits - 1; at++)
    digits[n++] = *at;
  return g_ascii_strtoull (digits, NULL, 10);
}

void
fp_pdf_add_language (GByteArray *pdf, const char *language)
{
  const guint64 root = number_after (pdf, "/Root"), pages = number_after (pdf, "/Pages"), info = number_after (pdf, "/Info");
  const guint64 size = number_after (pdf, "/Size"), before = number_after (pdf, "startxref");
  g_autoptr (GString) more = NULL;
  gsize catalogue, table;

  if (root == 0 || pages == 0 || info == 0 || size == 0 || before == 0)
    return; /* another writer: the file is good without */
  more = g_string_new ("\n");
  catalogue = pdf->len + more->len;
  g_string_append_printf (more, "%" G_GUINT64_FORMAT " 0 obj\n<< /Type /Catalog\n   /Pages %" G_GUINT64_FORMAT
                          " 0 R\n   /Lang (%s)\n>>\nendobj\n", root, pages, language);
  table = pdf->len + more->len;
  g_string_append_printf (more, "xref\n%" G_GUINT64_FORMAT " 1\n%010" G_GSIZE_FORMAT " 00000 n \n", root, catalogue);
  g_string_append_printf (more, "trailer\n<< /Size %" G_GUINT64_FORMAT "\n   /Root %" G_GUINT64_FORMAT " 0 R\n   /Info %"
                          G_GUINT64_FORMAT " 0 R\n   /Prev %" G_GUINT64_FORMAT "\n>>\nstartxref\n%" G_GSIZE_FORMAT
                          "\n%%%%EOF\n", size, root, info, before, table);
  g_byte_array_append (pdf, (const guint8 *) more->str, (guint) more->len);
}
