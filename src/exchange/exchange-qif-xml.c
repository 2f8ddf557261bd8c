/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Elements and texts of the QIF writer.  The writer keeps its own first failure, which the end of the
 * document reports, so that no call here has to.
 */

#include "exchange-qif-private.h"

#define XML(text) ((const xmlChar *)(text))

#define CONTROL_PICTURES 0x2400

/* XML 1.0, production 2. */
static gboolean
is_character (gunichar c)
{
  return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c <= 0xd7ff) || (c >= 0xe000 && c <= 0xfffd)
         || (c >= 0x10000 && c <= 0x10ffff);
}

char *
tm_qif_clean (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_new (NULL);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (is_character (c))
        g_string_append_unichar (out, c);
      else
        g_string_append_unichar (out, c < 0x20 ? CONTROL_PICTURES + c : 0xfffd);
    }
  return g_string_free (out, FALSE);
}

void
tm_qif_open (TmQif *qif, const char *name)
{
  xmlTextWriterStartElement (qif->xml, XML (name));
}

void
tm_qif_attribute (TmQif *qif, const char *name, const char *text)
{
  g_autofree char *clean = tm_qif_clean (text);

  xmlTextWriterWriteAttribute (qif->xml, XML (name), XML (clean));
}

static void
put_count (TmQif *qif, const char *name, guint count)
{
  g_autofree char *text = g_strdup_printf ("%u", count);

  tm_qif_attribute (qif, name, text);
}

void
tm_qif_open_list (TmQif *qif, const char *name, guint n)
{
  tm_qif_open (qif, name);
  put_count (qif, "n", n);
}

void
tm_qif_open_id (TmQif *qif, const char *name, guint id)
{
  tm_qif_open (qif, name);
  put_count (qif, "id", id);
}

void
tm_qif_open_typed (TmQif *qif, const TmQifType *type, const char *ending, guint id)
{
  g_autofree char *name = g_strconcat (type->name, ending, NULL);

  tm_qif_open_id (qif, name, id);
}

void
tm_qif_close (TmQif *qif)
{
  xmlTextWriterEndElement (qif->xml);
}

void
tm_qif_text (TmQif *qif, const char *name, const char *text)
{
  g_autofree char *clean = tm_qif_clean (text);

  xmlTextWriterWriteElement (qif->xml, XML (name), XML (clean));
}

void
tm_qif_maybe (TmQif *qif, const char *name, const char *text)
{
  if (text != NULL && *text != '\0')
    tm_qif_text (qif, name, text);
}

void
tm_qif_number (TmQif *qif, const char *name, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);

  tm_qif_text (qif, name, text);
}

void
tm_qif_empty (TmQif *qif, const char *name)
{
  tm_qif_open (qif, name);
  tm_qif_close (qif);
}

void
tm_qif_notes_init (TmQifNotes *notes)
{
  notes->names = g_ptr_array_new ();
  notes->texts = g_ptr_array_new_with_free_func (g_free);
}

void
tm_qif_notes_add (TmQifNotes *notes, const char *name, const char *text)
{
  if (text == NULL || *text == '\0')
    return;
  g_ptr_array_add (notes->names, (gpointer)name);
  g_ptr_array_add (notes->texts, g_strdup (text));
}

void
tm_qif_notes_write (TmQif *qif, TmQifNotes *notes)
{
  if (notes->names->len > 0)
    {
      tm_qif_open_list (qif, "Attributes", notes->names->len);
      for (guint i = 0; i < notes->names->len; i++)
        {
          tm_qif_open (qif, "AttributeStr");
          tm_qif_attribute (qif, "name", g_ptr_array_index (notes->names, i));
          tm_qif_attribute (qif, "value", g_ptr_array_index (notes->texts, i));
          tm_qif_close (qif);
        }
      tm_qif_close (qif);
    }
  g_clear_pointer (&notes->names, g_ptr_array_unref);
  g_clear_pointer (&notes->texts, g_ptr_array_unref);
}
