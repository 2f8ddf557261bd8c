/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Datums and datum reference frames of the QIF writer, from the letters of a tolerance frame: "A", the
 * common datum "A-B", and either with Ⓜ or Ⓛ behind it.
 */

#include "exchange-qif-private.h"

static const char *const precedences[TM_QIF_MAX_DATUMS]
    = { "PRIMARY", "SECONDARY", "TERTIARY", "QUATERNARY", "QUINARY" };

static guint
get_datum_id (const TmQif *qif, char letter)
{
  for (guint i = 0; i < qif->datums->len; i++)
    if (*(const char *)g_ptr_array_index (qif->datums, i) == letter)
      return qif->datum + i;
  return 0;
}

static const char *
get_modifier (const char *datum)
{
  if (strstr (datum, "Ⓜ") != NULL)
    return "MAXIMUM";
  return strstr (datum, "Ⓛ") != NULL ? "LEAST" : "NONE";
}

static void
put_simple (TmQif *qif, char letter, const char *modifier)
{
  tm_qif_open (qif, "SimpleDatum");
  tm_qif_number (qif, "DatumDefinitionId", get_datum_id (qif, letter));
  tm_qif_text (qif, "MaterialModifier", modifier);
  tm_qif_text (qif, "ReferencedComponent", "ACTUAL");
  tm_qif_close (qif);
}

static void
put_common (TmQif *qif, const char *datum, const char *modifier)
{
  const char letters[] = { datum[0], datum[2] };

  tm_qif_open_list (qif, "CompoundDatum", G_N_ELEMENTS (letters));
  for (guint i = 0; i < G_N_ELEMENTS (letters); i++)
    {
      tm_qif_open (qif, "Datum");
      put_simple (qif, letters[i], modifier);
      tm_qif_number (qif, "SequenceNumber", i + 1);
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
}

static void
put_datum (TmQif *qif, const char *datum, guint precedence)
{
  const char *modifier = get_modifier (datum);

  tm_qif_open (qif, "Datum");
  if (datum[1] == '-')
    put_common (qif, datum, modifier);
  else
    put_simple (qif, datum[0], modifier);
  tm_qif_open (qif, "Precedence");
  tm_qif_text (qif, "PrecedenceEnum", precedences[precedence]);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_frame (TmQif *qif, guint index)
{
  const char *datums = g_ptr_array_index (qif->frames, index);
  g_auto (GStrv) parts = g_strsplit (datums, " ", G_N_ELEMENTS (precedences));

  tm_qif_open_id (qif, "DatumReferenceFrame", qif->frame + index);
  tm_qif_open_list (qif, "Datums", g_strv_length (parts));
  for (guint i = 0; parts[i] != NULL; i++)
    put_datum (qif, parts[i], i);
  tm_qif_close (qif);
  tm_qif_text (qif, "Name", datums);
  tm_qif_close (qif);
}

void
tm_qif_datums (TmQif *qif)
{
  if (qif->frames->len == 0)
    return;
  tm_qif_open_list (qif, "DatumDefinitions", qif->datums->len);
  for (guint i = 0; i < qif->datums->len; i++)
    {
      tm_qif_open_id (qif, "DatumDefinition", qif->datum + i);
      tm_qif_text (qif, "DatumLabel", g_ptr_array_index (qif->datums, i));
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
  tm_qif_open_list (qif, "DatumReferenceFrames", qif->frames->len);
  for (guint i = 0; i < qif->frames->len; i++)
    put_frame (qif, i);
  tm_qif_close (qif);
}
