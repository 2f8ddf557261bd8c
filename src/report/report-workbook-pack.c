/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-workbook-pack.h"

#include <glib/gstdio.h>
#include <locale.h>

#define ASK_EVERY (25 * G_TIME_SPAN_MILLISECOND)

/* Shared by the caller and the thread; whoever goes last frees it. */
typedef struct {
  GMutex lock;
  GCond ended;
  lxw_workbook *book;
  lxw_error status;
  gboolean done;
  gboolean left;
} Packing;

static void
free_packing (Packing *packing)
{
  g_mutex_clear (&packing->lock);
  g_cond_clear (&packing->ended);
  g_free (packing);
}

/* The library prints numbers by the locale of the thread, and a sheet's numbers have a point. */
static lxw_error
close_book (lxw_workbook *book)
{
  const locale_t own = newlocale (LC_NUMERIC_MASK, "C", duplocale (LC_GLOBAL_LOCALE));
  const locale_t before = own != (locale_t)0 ? uselocale (own) : (locale_t)0;
  const lxw_error status = workbook_close (book);

  if (own == (locale_t)0)
    return status;
  uselocale (before);
  freelocale (own);
  return status;
}

static gpointer
pack_thread (gpointer data)
{
  Packing *packing = data;
  const lxw_error status = close_book (packing->book);
  gboolean left;

  g_mutex_lock (&packing->lock);
  packing->status = status;
  packing->done = TRUE;
  left = packing->left;
  g_cond_signal (&packing->ended);
  g_mutex_unlock (&packing->lock);
  if (left)
    free_packing (packing);
  return NULL;
}

static gsize
get_size (const char *path)
{
  GStatBuf info;

  return g_stat (path, &info) == 0 ? (gsize)info.st_size : 0;
}

/* FALSE: the caller leaves, and the thread goes last. */
static gboolean
wait_for_end (Packing *packing, const char *path, TmPackWatch watch, gpointer data)
{
  gboolean goes_on = TRUE;

  g_mutex_lock (&packing->lock);
  while (!packing->done && goes_on)
    if (!g_cond_wait_until (&packing->ended, &packing->lock, g_get_monotonic_time () + ASK_EVERY))
      {
        g_mutex_unlock (&packing->lock);
        goes_on = watch (get_size (path), data);
        g_mutex_lock (&packing->lock);
      }
  packing->left = !packing->done;
  g_mutex_unlock (&packing->lock);
  return !packing->left;
}

/* Without its folder the library cannot make the file again. */
static void
remove_with_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  (void)g_unlink (path);
  (void)g_rmdir (folder);
}

TmPackEnd
tm_workbook_pack (lxw_workbook *book, const char *path, TmPackWatch watch, gpointer data, lxw_error *status)
{
  Packing *packing = g_new0 (Packing, 1);
  GThread *thread;

  packing->book = book;
  g_mutex_init (&packing->lock);
  g_cond_init (&packing->ended);
  thread = g_thread_try_new ("pack", pack_thread, packing, NULL);
  if (thread == NULL)
    pack_thread (packing);
  else if (!wait_for_end (packing, path, watch, data))
    {
      remove_with_folder (path);
      g_thread_unref (thread);
      return TM_PACK_LEFT;
    }
  else
    g_thread_join (thread);
  *status = packing->status;
  free_packing (packing);
  return *status == LXW_NO_ERROR ? TM_PACKED : TM_PACK_FAILED;
}

static gpointer
drop_thread (gpointer book)
{
  lxw_workbook_free (book);
  return NULL;
}

void
tm_workbook_drop (lxw_workbook *book)
{
  GThread *thread = g_thread_try_new ("drop", drop_thread, book, NULL);

  if (thread == NULL)
    lxw_workbook_free (book);
  else
    g_thread_unref (thread);
}
