/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include "bb-lines-select.h"
#include "bb-record-sql.h"
#include "bb-searches.h"

/* How many records one statement reads. */
#define CHUNK 64

static char *
make_parameters (void)
{
  GString *sql = g_string_new (NULL);

  for (guint i = 1; i <= CHUNK; i++)
    g_string_append_printf (sql, "%s?%u", i > 1 ? ", " : "", i);

  return g_string_free (sql, FALSE);
}

/* A statement on up to CHUNK records of a table whose @column is among the parameters. */
static char *
make_records_sql (const BbTable *table,
                  const char    *column)
{
  g_autofree char *parameters = make_parameters ();
  g_autofree char *rest = g_strdup_printf ("WHERE %s IN (%s) ORDER BY id", column, parameters);

  return bb_sql_select (table, rest);
}

/* Names each column as the field table of the lines does, from which the outer statement takes them. */
static char *
make_lines_sql (const BbTable *table)
{
  const BbTable *line_table = bb_book_get_line_table (table);
  g_autofree char *columns = bb_sql_columns (line_table);
  g_autofree char *parameters = make_parameters ();

  return g_strdup_printf ("WITH line AS (%s IN (%s)) SELECT %s FROM line", bb_lines_select (table), parameters,
                          columns);
}

/* Adds a record for each row of the statement that @sql is. */
static gboolean
read_rows (BbBook         *self,
           const BbTable  *table,
           const char     *sql,
           const gint64   *ids,
           guint           n_ids,
           GPtrArray      *records,
           GError        **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ROW;

  if (statement == NULL)
    return FALSE;

  for (guint i = 0; i < n_ids; i++)
    bb_statement_bind_integer (statement, (int) i + 1, ids[i]);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      gpointer record = bb_record_new (table);

      g_ptr_array_add (records, record);
      if (!bb_record_read (table, record, statement, error))
        return FALSE;
    }

  return step == BB_STEP_DONE;
}

/* The records of a table whose @column is among @ids. */
static GPtrArray *
read_records (BbBook         *self,
              const BbTable  *table,
              const char     *column,
              const gint64   *ids,
              guint           n_ids,
              GError        **error)
{
  g_autofree char *sql = make_records_sql (table, column);
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (table->free_record);

  if (!read_rows (self, table, sql, ids, n_ids, records, error))
    return NULL;
  for (guint i = 0; i < records->len; i++)
    if (!bb_record_read_lists (table, records->pdata[i], self->db, error))
      return NULL;

  return g_steal_pointer (&records);
}

static GPtrArray *
read_selected_lines (BbBook         *self,
                     const BbTable  *table,
                     const gint64   *ids,
                     guint           n_ids,
                     GError        **error)
{
  const BbTable *line_table = bb_book_get_line_table (table);
  g_autofree char *sql = make_lines_sql (table);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (line_table->free_record);

  return read_rows (self, line_table, sql, ids, n_ids, lines, error) ? g_steal_pointer (&lines) : NULL;
}

static gpointer
find_record (const BbTable   *table,
             const GPtrArray *records,
             gint64           id)
{
  const BbField *key = bb_table_find_field (table, "id");

  for (guint i = 0; i < records->len; i++)
    if (bb_field_get_integer (key, records->pdata[i]) == id)
      return records->pdata[i];

  return NULL;
}

/* The records that up to CHUNK records of a table refer to by a field. */
static GPtrArray *
read_targets (BbBook           *self,
              const BbTable    *table,
              const GPtrArray  *records,
              const char       *name,
              GError          **error)
{
  const BbField *field = bb_table_find_field (table, name);
  gint64 ids[CHUNK];

  for (guint i = 0; i < records->len; i++)
    ids[i] = bb_field_get_integer (field, records->pdata[i]);

  return read_records (self, field->target, "id", ids, records->len, error);
}

/* The specimen itself goes into its line. */
static BbWashLine *
make_wash_line (gpointer        *test,
                const GPtrArray *revisions,
                const GPtrArray *recipes,
                const GPtrArray *colourways,
                const GPtrArray *plans)
{
  BbWashLine *line = bb_wash_line_new ();
  const BbWashTest *known = *test;
  const BbWashPlan *plan = known->plan != 0 ? find_record (&bb_wash_plan_table, plans, known->plan) : NULL;
  const BbRevision *revision = find_record (&bb_revision_table, revisions, known->revision);
  const BbRecipe *recipe = revision != NULL ? find_record (&bb_recipe_table, recipes, revision->recipe) : NULL;
  const BbColourway *colourway = find_record (&bb_colourway_table, colourways, known->colourway);

  line->id = known->id;
  line->withdrawn_at = g_strdup (known->withdrawn_at);
  line->test = g_steal_pointer (test);
  if (revision != NULL && _bb_record_check_seal (&bb_revision_table, revision, NULL))
    line->revision = bb_record_copy (&bb_revision_table, revision);
  if (recipe != NULL)
    line->recipe = g_strdup (recipe->name);
  if (colourway != NULL)
    {
      line->colourway = g_strdup (colourway->name);
      line->srgb = g_strdup (colourway->srgb);
    }
  if (plan != NULL)
    line->plan = bb_record_copy (&bb_wash_plan_table, plan);

  return line;
}

static gboolean
add_readings (BbBook           *self,
              const GPtrArray  *lines,
              const gint64     *ids,
              guint             n_ids,
              GError          **error)
{
  const BbField *field = bb_table_find_field (&bb_wash_line_table, "readings");
  g_autoptr (GPtrArray) readings = read_records (self, &bb_reading_table, "wash_test", ids, n_ids, error);

  if (readings == NULL)
    return FALSE;

  bb_records_sort (&bb_reading_table, "cycles", readings);
  for (guint i = 0; i < readings->len; i++)
    {
      BbReading *reading = readings->pdata[i];
      BbWashLine *line = find_record (&bb_wash_line_table, lines, reading->wash_test);

      if (line != NULL)
        {
          /* What the reading holds moves into the line. */
          *(BbReading *) bb_field_append_item (field, line) = *reading;
          bb_record_init (&bb_reading_table, reading);
        }
    }
  for (guint i = 0; i < lines->len; i++)
    bb_field_ensure_array (field, lines->pdata[i]);

  return TRUE;
}

static GPtrArray *
read_wash_lines (BbBook        *self,
                 const gint64  *ids,
                 guint          n_ids,
                 GError       **error)
{
  g_autoptr (GPtrArray) tests = read_records (self, &bb_wash_test_table, "id", ids, n_ids, error);
  g_autoptr (GPtrArray) revisions = NULL;
  g_autoptr (GPtrArray) recipes = NULL;
  g_autoptr (GPtrArray) colourways = NULL;
  g_autoptr (GPtrArray) plans = NULL;
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (bb_wash_line_table.free_record);

  if (tests != NULL)
    revisions = read_targets (self, &bb_wash_test_table, tests, "revision", error);
  if (revisions != NULL)
    recipes = read_targets (self, &bb_revision_table, revisions, "recipe", error);
  if (recipes != NULL)
    colourways = read_targets (self, &bb_wash_test_table, tests, "colourway", error);
  if (colourways != NULL)
    plans = read_targets (self, &bb_wash_test_table, tests, "plan", error);
  if (plans == NULL)
    return NULL;
  for (guint i = 0; i < tests->len; i++)
    g_ptr_array_add (lines, make_wash_line (&tests->pdata[i], revisions, recipes, colourways, plans));

  return add_readings (self, lines, ids, n_ids, error) ? g_steal_pointer (&lines) : NULL;
}

static GPtrArray *
read_lines (BbBook         *self,
            const BbTable  *table,
            const gint64   *ids,
            guint           n_ids,
            GError        **error)
{
  if (bb_lines_select (table) != NULL)
    return read_selected_lines (self, table, ids, n_ids, error);
  if (table == &bb_wash_test_table)
    return read_wash_lines (self, ids, n_ids, error);

  return read_records (self, table, "id", ids, n_ids, error);
}

/* Adds the lines of up to CHUNK records in the order of their keys. */
static gboolean
load_chunk (BbBook         *self,
            const BbTable  *table,
            const gint64   *ids,
            guint           n_ids,
            GPtrArray      *result,
            GError        **error)
{
  const BbTable *line_table = bb_book_get_line_table (table);
  const BbField *key = bb_table_find_field (line_table, "id");
  g_autoptr (GPtrArray) lines = read_lines (self, table, ids, n_ids, error);
  g_autoptr (GHashTable) places = g_hash_table_new (g_int64_hash, g_int64_equal);

  if (lines == NULL)
    return FALSE;

  for (guint i = 0; i < lines->len; i++)
    g_hash_table_insert (places, &BB_FIELD_AT (key, gint64, lines->pdata[i]), &lines->pdata[i]);
  for (guint i = 0; i < n_ids; i++)
    {
      gpointer *place = g_hash_table_lookup (places, &ids[i]);

      if (place != NULL && *place != NULL)
        g_ptr_array_add (result, g_steal_pointer (place));
    }

  return TRUE;
}

/**
 * bb_book_load_lines:
 * @self: a book
 * @table: the records' table
 * @ids: (array length=n_ids): keys of records, each once
 * @n_ids: how many
 * @error: return location for a #GError
 *
 * Loads what a list shows of some records, a page of a list at a time and in few statements.
 *
 * Returns: (transfer full) (nullable) (element-type gpointer): the lines in the order of @ids, of the table
 *   bb_book_get_line_table(); the array frees them. A key that is not in the book has no line. %NULL with an error
 */
GPtrArray *
bb_book_load_lines (BbBook         *self,
                    const BbTable  *table,
                    const gint64   *ids,
                    guint           n_ids,
                    GError        **error)
{
  g_autoptr (GPtrArray) result = NULL;
  gboolean done = TRUE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && table != NULL && (ids != NULL || n_ids == 0), NULL);

  /* All lines are of one moment. */
  if (!bb_db_begin (self->db, BB_ACCESS_READ, error))
    return NULL;
  result = g_ptr_array_new_with_free_func (bb_book_get_line_table (table)->free_record);
  for (guint i = 0; done && i < n_ids; i += CHUNK)
    done = load_chunk (self, table, ids + i, MIN (CHUNK, n_ids - i), result, error);
  if (!bb_db_commit (self->db, done ? error : NULL) || !done)
    return NULL;

  return g_steal_pointer (&result);
}

/**
 * _bb_statement_collect_keys:
 * @statement: a statement whose first column is a key
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of all its rows; %NULL with an error
 */
GArray *
_bb_statement_collect_keys (BbStatement  *statement,
                            GError      **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  BbStep step = BB_STEP_ROW;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      gint64 id = bb_statement_get_integer (statement, 0);

      g_array_append_val (ids, id);
    }

  return step == BB_STEP_DONE ? g_steal_pointer (&ids) : NULL;
}

/* A colour alone says nothing without its blank. */
static const char *
get_name_sql (const BbTable *table)
{
  if (table == &bb_colourway_table)
    return "(SELECT b.name FROM blank b WHERE b.id = colourway.blank) || ', ' || name";

  return bb_table_find_field (table, "name") != NULL ? "name" : "NULL";
}

static char *
make_names_sql (const BbField *field)
{
  const BbTable *table = field->target;
  const BbField *kind = bb_table_find_field (table, "kind");
  GString *sql = g_string_new (NULL);

  g_string_append_printf (sql, "SELECT id, code, %s FROM %s WHERE TRUE", get_name_sql (table), table->name);
  if (bb_table_find_field (table, "withdrawn_at") != NULL)
    g_string_append (sql, " AND withdrawn_at IS NULL");
  if (field->among.set)
    g_string_append_printf (sql, " AND kind = '%s'", bb_choices_get_key (kind->choices, (int) field->among.value));
  g_string_append (sql, " ORDER BY id");

  return g_string_free (sql, FALSE);
}

/**
 * bb_book_load_names:
 * @self: a book
 * @field: a field that refers to another record, one that has a code
 * @error: return location for a #GError
 *
 * Loads what a person can choose from for a field: every record that it may refer to, and that is in use.
 *
 * Returns: (transfer full) (nullable) (element-type BbNameLine): the records' names in the order in which they were
 *   added; the array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_names (BbBook         *self,
                    const BbField  *field,
                    GError        **error)
{
  g_autofree char *sql = NULL;
  g_autoptr (GPtrArray) names = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && field->kind == BB_KIND_REFERENCE, NULL);
  g_return_val_if_fail (bb_table_find_field (field->target, "code") != NULL, NULL);

  sql = make_names_sql (field);
  names = g_ptr_array_new_with_free_func (bb_name_line_table.free_record);

  return read_rows (self, &bb_name_line_table, sql, NULL, 0, names, error) ? g_steal_pointer (&names) : NULL;
}
