/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-sections.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-lines.h"
#include "bb-codes.h"
#include "bb-json-write.h"

/* A record with what belongs to it, and how it is shown. */
typedef struct {
  BbBook *book;
  const BbTable *table;
  gconstpointer record;
  const char * const *facts;
  const BbCliSection *sections;
  guint n_sections;
} Shown;

/* Its code, its facts, and below them the sections that hold something. */
static char *
show_as_text (const Shown *self)
{
  GString *out = g_string_new (bb_field_get_text (bb_table_find_field (self->table, "code"), self->record));

  g_string_append_c (out, '\n');
  bb_cli_append_facts (out, self->book, self->table, self->record, self->facts);
  for (guint i = 0; i < self->n_sections; i++)
    {
      const BbCliSection *section = &self->sections[i];

      if (section->records->len == 0)
        continue;
      g_string_append_printf (out, "\n%s\n", _(section->title));
      bb_cli_append_lines (out, self->book, section->table, section->records, section->columns);
    }

  return g_string_free (out, FALSE);
}

/* An object with the record under its table's name, and the sections beside it. */
static char *
show_as_json (const Shown  *self,
              GError      **error)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (BbCodes) codes = bb_codes_new (self->book);

  g_string_append_printf (out, "{\"%s\":", self->table->name);
  if (!bb_json_append_exchanged (out, self->table, self->record, bb_codes_name, codes, error))
    return NULL;
  for (guint i = 0; i < self->n_sections; i++)
    {
      const BbCliSection *section = &self->sections[i];

      if (section->member == NULL)
        continue;
      g_string_append_printf (out, ",\"%s\":", section->member);
      if (!bb_cli_append_json (out, self->book, section->table, section->records, error))
        return NULL;
    }
  g_string_append (out, "}\n");

  return g_string_free (g_steal_pointer (&out), FALSE);
}

/**
 * bb_cli_write_record:
 * @common: how the answer is wanted
 * @book: a book
 * @table: the record's table
 * @record: a record of it that has a code
 * @facts: (array zero-terminated=1): names of the fields to show to a person
 * @sections: (array length=n_sections): what belongs to it
 * @n_sections: how many
 *
 * Writes a record with what belongs to it as the answer: as JSON, or for a person to read.
 *
 * Returns: %BB_CLI_OK, or what bb_cli_fail() was told
 */
BbCliStatus
bb_cli_write_record (const BbCliCommon  *common,
                     BbBook             *book,
                     const BbTable      *table,
                     gconstpointer       record,
                     const char * const *facts,
                     const BbCliSection *sections,
                     guint               n_sections)
{
  const Shown shown = { book, table, record, facts, sections, n_sections };
  g_autoptr (GError) error = NULL;
  g_autofree char *answer = common->json ? show_as_json (&shown, &error) : show_as_text (&shown);

  return bb_cli_answer (answer, error);
}
