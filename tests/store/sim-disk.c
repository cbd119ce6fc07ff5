/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "sim-disk.h"

#include <sqlite3.h>
#include <string.h>

/* What a disk writes whole or not at all, if nothing tears it. */
#define SECTOR 512

/* A write that was not synced, or where data is NULL a cut to a length. */
typedef struct {
  gsize offset;
  GBytes *data;
} Change;

/*
 * @now: what a program reads
 * @kept: what is on the platter
 * @changes: what lies between the two
 * @is_there: whether a program finds it
 * @is_kept: whether the folder on the platter has it
 */
typedef struct {
  GByteArray *now;
  GByteArray *kept;
  GPtrArray *changes;
  GPtrArray *shared;
  gboolean is_there;
  gboolean is_kept;
} File;

typedef struct {
  sqlite3_file base;
  File *file;
} Handle;

static struct {
  sqlite3_vfs vfs;
  sqlite3_vfs *system;
  GHashTable *files;
  SimFault fault;
  guint at;
  guint count;
  gboolean for_ever;
} disk;

typedef enum {
  OPERATION_READ = 1,
  OPERATION_WRITE,
  OPERATION_SYNC,
  OPERATION_OTHER,
} Operation;

static void
change_free (gpointer data)
{
  Change *self = data;

  g_clear_pointer (&self->data, g_bytes_unref);
  g_free (self);
}

static void
file_free (gpointer data)
{
  File *self = data;

  g_byte_array_unref (self->now);
  g_byte_array_unref (self->kept);
  g_ptr_array_unref (self->changes);
  g_ptr_array_unref (self->shared);
  g_free (self);
}

static File *
ensure_file (const char *path)
{
  File *self = g_hash_table_lookup (disk.files, path);

  if (self == NULL)
    {
      self = g_new0 (File, 1);
      self->now = g_byte_array_new ();
      self->kept = g_byte_array_new ();
      self->changes = g_ptr_array_new_with_free_func (change_free);
      self->shared = g_ptr_array_new_with_free_func (g_free);
      g_hash_table_insert (disk.files, g_strdup (path), self);
    }

  return self;
}

/* Whether a fault is one of this operation. */
static gboolean
can_meet (SimFault  fault,
          Operation operation)
{
  switch (fault)
    {
    case SIM_FAULT_FULL:
    case SIM_FAULT_SHORT:
      return operation == OPERATION_WRITE;
    case SIM_FAULT_SYNC:
      return operation == OPERATION_SYNC;
    case SIM_FAULT_NONE:
    case SIM_FAULT_IO:
    case SIM_FAULT_POWER:
    default:
      return TRUE;
    }
}

/* Whether this operation is one that fails. */
static gboolean
meets_fault (Operation operation)
{
  if (!can_meet (disk.fault, operation))
    return FALSE;

  disk.count++;

  return disk.at > 0 && (disk.count == disk.at || (disk.for_ever && disk.count > disk.at));
}

static void
set_length (GByteArray *bytes,
            gsize       length)
{
  const gsize before = bytes->len;

  g_byte_array_set_size (bytes, (guint) length);
  if (length > before)
    memset (bytes->data + before, 0, length - before);
}

static void
put (GByteArray   *bytes,
     gsize         offset,
     gconstpointer data,
     gsize         length)
{
  if (length == 0)
    return;
  if (offset + length > bytes->len)
    set_length (bytes, offset + length);
  memcpy (bytes->data + offset, data, length);
}

static void
apply (GByteArray   *bytes,
       const Change *change)
{
  gsize length = 0;
  gconstpointer data = change->data != NULL ? g_bytes_get_data (change->data, &length) : NULL;

  if (data != NULL)
    put (bytes, change->offset, data, length);
  else
    set_length (bytes, change->offset);
}

static void
note_change (File         *file,
             gsize         offset,
             gconstpointer data,
             gsize         length)
{
  Change *change = g_new0 (Change, 1);

  change->offset = offset;
  change->data = data != NULL ? g_bytes_new (data, length) : NULL;
  apply (file->now, change);
  g_ptr_array_add (file->changes, change);
}

static int
disk_close (sqlite3_file *handle)
{
  (void) handle;

  return SQLITE_OK;
}

static int
disk_read (sqlite3_file  *handle,
           void          *data,
           int            length,
           sqlite3_int64  offset)
{
  const GByteArray *now = ((Handle *) handle)->file->now;
  const gsize from = MIN ((gsize) offset, now->len);
  const gsize n = MIN ((gsize) length, now->len - from);

  if (meets_fault (OPERATION_READ))
    return SQLITE_IOERR_READ;

  memset (data, 0, (gsize) length);
  if (n > 0)
    memcpy (data, now->data + from, n);

  return n == (gsize) length ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

static int
disk_write (sqlite3_file  *handle,
            const void    *data,
            int            length,
            sqlite3_int64  offset)
{
  File *file = ((Handle *) handle)->file;

  if (meets_fault (OPERATION_WRITE))
    {
      if (disk.fault == SIM_FAULT_SHORT)
        note_change (file, (gsize) offset, data, (gsize) length / 2);
      return disk.fault == SIM_FAULT_IO || disk.fault == SIM_FAULT_POWER ? SQLITE_IOERR_WRITE : SQLITE_FULL;
    }
  note_change (file, (gsize) offset, data, (gsize) length);

  return SQLITE_OK;
}

static int
disk_truncate (sqlite3_file  *handle,
               sqlite3_int64  length)
{
  if (meets_fault (OPERATION_OTHER))
    return SQLITE_IOERR_TRUNCATE;
  note_change (((Handle *) handle)->file, (gsize) length, NULL, 0);

  return SQLITE_OK;
}

/* The system's own files sync the folder with the first sync of a new file. */
static int
disk_sync (sqlite3_file *handle,
           int           flags)
{
  File *file = ((Handle *) handle)->file;

  (void) flags;
  if (meets_fault (OPERATION_SYNC))
    {
      if (disk.fault == SIM_FAULT_SYNC)
        g_ptr_array_set_size (file->changes, 0);
      return SQLITE_IOERR_FSYNC;
    }

  for (guint i = 0; i < file->changes->len; i++)
    apply (file->kept, file->changes->pdata[i]);
  g_ptr_array_set_size (file->changes, 0);
  file->is_kept = TRUE;

  return SQLITE_OK;
}

static int
disk_file_size (sqlite3_file  *handle,
                sqlite3_int64 *length)
{
  if (meets_fault (OPERATION_READ))
    return SQLITE_IOERR_FSTAT;
  *length = ((Handle *) handle)->file->now->len;

  return SQLITE_OK;
}

static int
disk_lock (sqlite3_file *handle,
           int           level)
{
  (void) handle;
  (void) level;

  return SQLITE_OK;
}

static int
disk_check_reserved_lock (sqlite3_file *handle,
                          int          *is_reserved)
{
  (void) handle;
  *is_reserved = 0;

  return SQLITE_OK;
}

static int
disk_file_control (sqlite3_file *handle,
                   int           operation,
                   void         *argument)
{
  (void) handle;
  if (operation != SQLITE_FCNTL_MMAP_SIZE)
    return SQLITE_NOTFOUND;

  /* Asked or told, there is no mapping into memory. */
  *(sqlite3_int64 *) argument = 0;

  return SQLITE_OK;
}

/* As on Linux. */
static int
disk_sector_size (sqlite3_file *handle)
{
  (void) handle;

  return 4096;
}

static int
disk_device_characteristics (sqlite3_file *handle)
{
  (void) handle;

  return SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

static int
disk_shm_map (sqlite3_file   *handle,
              int             region,
              int             length,
              int             extend,
              void volatile **memory)
{
  GPtrArray *shared = ((Handle *) handle)->file->shared;

  while (extend && (int) shared->len <= region)
    g_ptr_array_add (shared, g_malloc0 ((gsize) length));
  *memory = region < (int) shared->len ? shared->pdata[region] : NULL;

  return SQLITE_OK;
}

static int
disk_shm_lock (sqlite3_file *handle,
               int           offset,
               int           n,
               int           flags)
{
  (void) handle;
  (void) offset;
  (void) n;
  (void) flags;

  return SQLITE_OK;
}

static void
disk_shm_barrier (sqlite3_file *handle)
{
  (void) handle;
}

static int
disk_shm_unmap (sqlite3_file *handle,
                int           delete)
{
  if (delete)
    g_ptr_array_set_size (((Handle *) handle)->file->shared, 0);

  return SQLITE_OK;
}

static const sqlite3_io_methods methods = {
  .iVersion = 2,
  .xClose = disk_close,
  .xRead = disk_read,
  .xWrite = disk_write,
  .xTruncate = disk_truncate,
  .xSync = disk_sync,
  .xFileSize = disk_file_size,
  .xLock = disk_lock,
  .xUnlock = disk_lock,
  .xCheckReservedLock = disk_check_reserved_lock,
  .xFileControl = disk_file_control,
  .xSectorSize = disk_sector_size,
  .xDeviceCharacteristics = disk_device_characteristics,
  .xShmMap = disk_shm_map,
  .xShmLock = disk_shm_lock,
  .xShmBarrier = disk_shm_barrier,
  .xShmUnmap = disk_shm_unmap,
};

static int
disk_open (sqlite3_vfs  *vfs,
           const char   *path,
           sqlite3_file *handle,
           int           flags,
           int          *out_flags)
{
  Handle *self = (Handle *) handle;
  File *file = NULL;

  (void) vfs;
  /* Temporary data is kept in memory. */
  g_assert_nonnull (path);
  self->base.pMethods = NULL;
  if (meets_fault (OPERATION_OTHER))
    return SQLITE_CANTOPEN;

  file = ensure_file (path);
  if (!file->is_there && (flags & SQLITE_OPEN_CREATE) == 0)
    return SQLITE_CANTOPEN;
  if (!file->is_there)
    note_change (file, 0, NULL, 0);
  file->is_there = TRUE;
  self->file = file;
  self->base.pMethods = &methods;
  if (out_flags != NULL)
    *out_flags = flags;

  return SQLITE_OK;
}

static int
disk_delete (sqlite3_vfs *vfs,
             const char  *path,
             int          sync_folder)
{
  File *file = ensure_file (path);

  (void) vfs;
  if (meets_fault (OPERATION_OTHER))
    return SQLITE_IOERR_DELETE;
  if (!file->is_there)
    return SQLITE_IOERR_DELETE_NOENT;

  file->is_there = FALSE;
  if (sync_folder)
    file->is_kept = FALSE;

  return SQLITE_OK;
}

static int
disk_access (sqlite3_vfs *vfs,
             const char  *path,
             int          flags,
             int         *result)
{
  const File *file = g_hash_table_lookup (disk.files, path);

  (void) vfs;
  (void) flags;
  if (meets_fault (OPERATION_OTHER))
    return SQLITE_IOERR_ACCESS;
  *result = file != NULL && file->is_there && (flags != SQLITE_ACCESS_EXISTS || file->now->len > 0);

  return SQLITE_OK;
}

static int
disk_full_pathname (sqlite3_vfs *vfs,
                    const char  *path,
                    int          length,
                    char        *full)
{
  (void) vfs;
  g_strlcpy (full, path, (gsize) length);

  return SQLITE_OK;
}

void
sim_disk_install (void)
{
  g_assert_null (disk.files);
  disk.files = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, file_free);
  disk.system = sqlite3_vfs_find (NULL);
  disk.vfs = *disk.system;
  disk.vfs.pNext = NULL;
  disk.vfs.zName = "sim-disk";
  disk.vfs.szOsFile = sizeof (Handle);
  disk.vfs.xOpen = disk_open;
  disk.vfs.xDelete = disk_delete;
  disk.vfs.xAccess = disk_access;
  disk.vfs.xFullPathname = disk_full_pathname;
  g_assert_cmpint (sqlite3_vfs_register (&disk.vfs, 1), ==, SQLITE_OK);
}

void
sim_disk_remove (void)
{
  g_assert_cmpint (sqlite3_vfs_unregister (&disk.vfs), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_vfs_register (disk.system, 1), ==, SQLITE_OK);
  g_clear_pointer (&disk.files, g_hash_table_unref);
}

GBytes *
sim_disk_read (const char *path)
{
  const File *file = g_hash_table_lookup (disk.files, path);

  g_assert_nonnull (file);

  return g_bytes_new (file->now->data, file->now->len);
}

void
sim_disk_restore (const char *path,
                  GBytes     *contents)
{
  File *file = NULL;
  gsize length = 0;
  gconstpointer data = g_bytes_get_data (contents, &length);

  g_hash_table_remove_all (disk.files);
  file = ensure_file (path);
  put (file->now, 0, data, length);
  put (file->kept, 0, data, length);
  file->is_there = TRUE;
  file->is_kept = TRUE;
}

void
sim_disk_set_fault (SimFault fault,
                    guint    at,
                    gboolean for_ever)
{
  disk.fault = fault;
  disk.at = at;
  disk.for_ever = for_ever || fault == SIM_FAULT_POWER;
  disk.count = 0;
}

guint
sim_disk_get_count (void)
{
  return disk.count;
}

/* Each sector of a write has its own fate. A torn one has the beginning of what was written. */
static void
apply_by_chance (GByteArray   *kept,
                 const Change *change,
                 GRand        *rand)
{
  gsize length = 0;
  const guint8 *data = change->data != NULL ? g_bytes_get_data (change->data, &length) : NULL;

  if (data == NULL)
    {
      if (g_rand_boolean (rand))
        set_length (kept, change->offset);
      return;
    }

  for (gsize from = 0; from < length; from += SECTOR)
    {
      const gsize n = MIN (SECTOR, length - from);

      switch (g_rand_int_range (rand, 0, 3))
        {
        case 0:
          break;
        case 1:
          put (kept, change->offset + from, data + from, n);
          break;
        default:
          put (kept, change->offset + from, data + from, (gsize) g_rand_int_range (rand, 0, (gint32) n + 1));
          break;
        }
    }
}

static void
settle_file (File  *file,
             GRand *rand)
{
  /* A file that was made or deleted without a sync of its folder may be there or not. */
  if (file->is_there != file->is_kept)
    file->is_kept = g_rand_boolean (rand);

  for (guint i = 0; i < file->changes->len; i++)
    apply_by_chance (file->kept, file->changes->pdata[i], rand);
  g_ptr_array_set_size (file->changes, 0);
  g_ptr_array_set_size (file->shared, 0);
  g_byte_array_set_size (file->now, 0);
  if (file->is_kept)
    put (file->now, 0, file->kept->data, file->kept->len);
  else
    g_byte_array_set_size (file->kept, 0);
  file->is_there = file->is_kept;
}

void
sim_disk_cut_power (GRand *rand)
{
  GHashTableIter iter;
  gpointer file = NULL;

  g_hash_table_iter_init (&iter, disk.files);
  while (g_hash_table_iter_next (&iter, NULL, &file))
    settle_file (file, rand);
  sim_disk_set_fault (SIM_FAULT_NONE, 0, FALSE);
}
