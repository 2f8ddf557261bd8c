/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The QIF document: what stands around characteristics and results.
 *
 * Source: QIF 3.0 schema files of the standards body (ANSI/DMSC QIF 3.0-2018, ISO 23952:2020); the order of
 * children is theirs.
 */

#include <glib/gi18n-lib.h>

#include "exchange-error.h"
#include "exchange-file.h"
#include "exchange-qif-private.h"

#define NAMESPACE "http://qifstandards.org/xsd/qif3"
#define PROGRAM   "Tenthmark"

/* What the XML writer hands its bytes to. */
typedef struct {
  TmQifSink sink;
  gpointer data;
  GError *error; /* the first failure; then nothing more is handed on */
} Outlet;

static int
write_cb (void *context, const char *bytes, int length)
{
  Outlet *outlet = context;

  if (outlet->error != NULL)
    return -1;
  if (!outlet->sink (bytes, (gsize)length, outlet->data, &outlet->error))
    return -1;
  return length;
}

static int
close_cb (void *context)
{
  return 0;
}

/* Small parts. */

void
tm_qif_moment (TmQif *qif, const char *name, const char *at)
{
  if (tm_job_is_moment (at))
    tm_qif_text (qif, name, at);
}

void
tm_qif_employee (TmQif *qif, const char *name, const char *initials)
{
  const TmPerson *person = tm_job_find_person (qif->job, initials);

  tm_qif_open (qif, name);
  tm_qif_text (qif, "Name", person != NULL && *person->name != '\0' ? person->name : initials);
  tm_qif_text (qif, "EmployeeId", initials);
  tm_qif_close (qif);
}

/* Head. */

static void
put_identity (TmQif *qif)
{
  g_autofree char *digest = tm_job_digest (qif->job);
  g_autofree char *name = g_strdup_printf ("document %s %s", qif->facts->created, digest);
  g_autofree char *uuid = tm_qif_uuid (qif->job_id, name);
  g_autofree char *ratio = tm_quantity_format (&qif->job->simple_ratio);
  TmQifNotes notes;

  tm_qif_text (qif, "QPId", uuid);
  tm_qif_notes_init (&notes);
  tm_qif_notes_add (&notes, "JobId", qif->job_id);
  tm_qif_notes_add (&notes, "RecordDigest", digest);
  tm_qif_notes_add (&notes, "Material", qif->job->material);
  tm_qif_notes_add (&notes, "GeneralTolerance", qif->job->general_tolerance);
  tm_qif_notes_add (&notes, "DecisionRule", tm_decision_word (qif->job->decision));
  tm_qif_notes_add (&notes, "DecisionRuleRatio", ratio);
  tm_qif_notes_write (qif, &notes);
}

static void
put_version (TmQif *qif)
{
  const GPtrArray *signatures = qif->job->signatures;

  tm_qif_open (qif, "Version");
  tm_qif_text (qif, "TimeCreated", qif->facts->created);
  if (signatures->len > 0)
    {
      tm_qif_open_list (qif, "SignOffs", signatures->len);
      for (guint i = 0; i < signatures->len; i++)
        tm_qif_employee (qif, "Employee", ((TmSignature *)g_ptr_array_index (signatures, i))->by);
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
}

static void
put_header (TmQif *qif)
{
  const TmJob *job = qif->job;
  g_autofree char *description = g_strdup_printf ("First article inspection of part %s%s%s", job->part_number,
                                                  *job->revision != '\0' ? " revision " : "", job->revision);

  tm_qif_open (qif, "Header");
  tm_qif_open (qif, "Application");
  tm_qif_text (qif, "Name", PROGRAM);
  tm_qif_close (qif);
  tm_qif_text (qif, "Description", description);
  tm_qif_text (qif, "Scope", job->pieces->len > 0 ? "Results" : "Product");
  tm_qif_close (qif);
}

/* The rules that drawings of each kind are read by. */
static void
put_standard (TmQif *qif)
{
  gboolean asme = qif->job->standard == TM_STANDARD_ASME;

  tm_qif_open_list (qif, "StandardsDefinitions", 1);
  tm_qif_open_id (qif, "Standard", qif->standard);
  tm_qif_open (qif, "Organization");
  tm_qif_text (qif, "StandardsOrganizationEnum", asme ? "ASME" : "ISO");
  tm_qif_close (qif);
  tm_qif_text (qif, "Designator", asme ? "Y14.5" : "8015");
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_software (TmQif *qif)
{
  tm_qif_open_list (qif, "SoftwareDefinitions", 1);
  tm_qif_open_id (qif, "Software", qif->software);
  tm_qif_text (qif, "VendorName", PROGRAM);
  tm_qif_text (qif, "ApplicationName", PROGRAM);
  tm_qif_text (qif, "Version", TM_VERSION);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

/* Traceability. */

static void
put_organization (TmQif *qif)
{
  if (qif->facts->organization == NULL || *qif->facts->organization == '\0')
    return;
  tm_qif_open (qif, "InspectingOrganization");
  tm_qif_text (qif, "Name", qif->facts->organization);
  tm_qif_close (qif);
}

/* The schema asks for a number wherever it has a customer; the job knows none. */
static void
put_customer (TmQif *qif)
{
  if (*qif->job->customer == '\0')
    return;
  tm_qif_open (qif, "CustomerOrganization");
  tm_qif_text (qif, "Name", qif->job->customer);
  tm_qif_text (qif, "CustomerNumber", "");
  tm_qif_close (qif);
}

static void
put_mode (TmQif *qif)
{
  const TmJob *job = qif->job;
  gboolean partial = job->first_article == TM_FIRST_ARTICLE_PARTIAL;

  tm_qif_text (qif, "InspectionScope", "DETAIL");
  tm_qif_text (qif, "InspectionMode", partial ? "FAI_Partial" : "FAI_Full");
  if (!partial)
    return;
  tm_qif_open (qif, "PartialInspection");
  tm_qif_text (qif, "BaselineProductNumber", job->first_article_baseline);
  tm_qif_text (qif, "ReasonForPartialInspection", job->first_article_reason);
  tm_qif_close (qif);
}

/* What stands alike before the inspection and in its results. */
static void
put_accountability (TmQif *qif)
{
  put_organization (qif);
  put_customer (qif);
  tm_qif_maybe (qif, "PurchaseOrderNumber", qif->job->order);
  tm_qif_maybe (qif, "ReportNumber", qif->facts->report_number);
  put_mode (qif);
}

static void
put_before (TmQif *qif)
{
  tm_qif_open (qif, "PreInspectionTraceability");
  put_accountability (qif);
  tm_qif_number (qif, "FormalStandardId", qif->standard);
  tm_qif_close (qif);
}

void
tm_qif_traceability (TmQif *qif)
{
  const GPtrArray *signatures = qif->job->signatures;

  tm_qif_open (qif, "InspectionTraceability");
  put_accountability (qif);
  tm_qif_open (qif, "InspectionSoftwareItems");
  tm_qif_open_list (qif, "AnalysisSoftware", 1);
  tm_qif_number (qif, "Id", qif->software);
  tm_qif_close (qif);
  tm_qif_close (qif);
  if (signatures->len > 0)
    {
      const TmSignature *first = g_ptr_array_index (signatures, 0);

      tm_qif_employee (qif, "ReportPreparer", first->by);
      tm_qif_moment (qif, "ReportPreparationDate", first->at);
    }
  tm_qif_text (qif, "ReportType", "First article inspection");
  tm_qif_close (qif);
}

/* Product. */

static void
put_nominal_ids (TmQif *qif)
{
  if (qif->features->len == 0)
    return;
  tm_qif_open_list (qif, "CharacteristicNominalIds", qif->features->len);
  for (guint i = 0; i < qif->features->len; i++)
    tm_qif_number (qif, "Id", g_array_index (qif->features, TmQifFeature, i).nominal);
  tm_qif_close (qif);
}

static void
put_drawing (TmQif *qif)
{
  const TmJob *job = qif->job;

  tm_qif_open_list (qif, "DefinitionExternal", 1);
  {
    g_autofree char *id = g_strdup_printf ("%u", qif->external);

    tm_qif_attribute (qif, "id", id);
  }
  tm_qif_open_id (qif, "PrintedDrawing", qif->drawing);
  tm_qif_text (qif, "Name", *job->part_name != '\0' ? job->part_name : job->part_number);
  tm_qif_maybe (qif, "Version", job->revision);
  tm_qif_maybe (qif, "DrawingNumber", job->drawing);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_part (TmQif *qif)
{
  const TmJob *job = qif->job;

  tm_qif_open_id (qif, "Part", qif->part);
  if (*job->part_name != '\0')
    {
      tm_qif_attribute (qif, "label", job->part_name);
      tm_qif_open (qif, "Header");
      tm_qif_text (qif, "Name", job->part_name);
      tm_qif_close (qif);
    }
  tm_qif_text (qif, "ModelNumber", job->part_number);
  tm_qif_maybe (qif, "Version", job->revision);
  put_nominal_ids (qif);
  put_drawing (qif);
  tm_qif_close (qif);
}

static void
put_product (TmQif *qif)
{
  tm_qif_open (qif, "Product");
  tm_qif_open_list (qif, "PartSet", 1);
  put_part (qif);
  tm_qif_close (qif);
  tm_qif_open (qif, "RootPart");
  tm_qif_number (qif, "Id", qif->part);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

/* The whole. */

static void
put_root (TmQif *qif)
{
  g_autofree char *id_max = g_strdup_printf ("%u", qif->id_max);

  tm_qif_open (qif, "QIFDocument");
  tm_qif_attribute (qif, "xmlns", NAMESPACE);
  tm_qif_attribute (qif, "versionQIF", "3.0.0");
  tm_qif_attribute (qif, "idMax", id_max);
}

/* FALSE when @progress stopped it. */
static gboolean
put_document (TmQif *qif, TmExchangeProgress progress, gpointer data)
{
  gboolean done;

  xmlTextWriterSetIndent (qif->xml, 1);
  xmlTextWriterSetIndentString (qif->xml, (const xmlChar *)" ");
  xmlTextWriterStartDocument (qif->xml, "1.0", "UTF-8", NULL);
  put_root (qif);
  put_identity (qif);
  put_version (qif);
  put_header (qif);
  put_standard (qif);
  put_software (qif);
  put_before (qif);
  tm_qif_units (qif);
  tm_qif_datums (qif);
  tm_qif_gauges (qif);
  tm_qif_threads (qif);
  put_product (qif);
  tm_qif_characteristics (qif);
  done = tm_qif_results (qif, progress, data);
  if (done)
    tm_qif_study (qif);
  tm_qif_close (qif);
  xmlTextWriterEndDocument (qif->xml);
  return done;
}

static gboolean
write_planned (TmQif *qif, Outlet *outlet, TmExchangeProgress progress, gpointer data, GError **error)
{
  xmlOutputBufferPtr buffer = xmlOutputBufferCreateIO (write_cb, close_cb, outlet, NULL);
  gboolean done;

  qif->xml = buffer != NULL ? xmlNewTextWriter (buffer) : NULL;
  if (qif->xml == NULL)
    g_error ("out of memory");
  done = put_document (qif, progress, data);
  xmlFreeTextWriter (qif->xml);
  if (outlet->error != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&outlet->error));
      return FALSE;
    }
  if (!done)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_CANCELLED, qif->place, NULL,
                      _ ("cancelled; nothing was written"));
  return done;
}

/* @place is what errors call the file. */
static gboolean
write_job (const TmJob *job, const TmQifFacts *facts, const char *place, Outlet *outlet,
           TmExchangeProgress progress, gpointer data, GError **error)
{
  TmQif qif = { .job = job, .facts = facts, .place = place, .job_id = job->id };
  gboolean done;

  g_return_val_if_fail (tm_job_is_moment (facts->created), FALSE);

  done = tm_qif_plan (&qif, error) && write_planned (&qif, outlet, progress, data, error);
  tm_qif_plan_clear (&qif);
  return done;
}

gboolean
tm_qif_write (const TmJob *job, const TmQifFacts *facts, TmQifSink sink, gpointer sink_data,
              TmExchangeProgress progress, gpointer progress_data, GError **error)
{
  Outlet outlet = { sink, sink_data, NULL };

  return write_job (job, facts, "QIF", &outlet, progress, progress_data, error);
}

static gboolean
append_cb (const char *bytes, gsize length, gpointer data, GError **error)
{
  g_string_append_len (data, bytes, (gssize)length);
  return TRUE;
}

GString *
tm_qif_write_string (const TmJob *job, const TmQifFacts *facts, GError **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (!tm_qif_write (job, facts, append_cb, out, NULL, NULL, error))
    return NULL;
  return g_steal_pointer (&out);
}

/* What a file is filled from. */
typedef struct {
  const TmJob *job;
  const TmQifFacts *facts;
  TmExchangeProgress progress;
  gpointer progress_data;
  const char *shown; /* the file's name, for errors */
  int fd;
} Filling;

static gboolean
put_cb (const char *bytes, gsize length, gpointer data, GError **error)
{
  const Filling *filling = data;

  if (tm_file_put (filling->fd, bytes, length))
    return TRUE;
  tm_exchange_fail_io (error, filling->shown, errno);
  return FALSE;
}

static gboolean
fill_cb (int fd, gpointer data, GError **error)
{
  Filling *filling = data;
  Outlet outlet = { put_cb, filling, NULL };

  filling->fd = fd;
  return write_job (filling->job, filling->facts, filling->shown, &outlet, filling->progress,
                    filling->progress_data, error);
}

gboolean
tm_qif_write_file (const TmJob *job, const TmQifFacts *facts, const char *path, TmExchangeProgress progress,
                   gpointer progress_data, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  Filling filling = { job, facts, progress, progress_data, shown, -1 };

  return tm_file_replace (path, fill_cb, &filling, error);
}
