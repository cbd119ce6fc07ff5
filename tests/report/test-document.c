/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-document.h"

#include <math.h>
#include <string.h>

#include "paper.h"

static BbDocument *
make_document (void)
{
  return bb_document_new ("The title", "Left above", "Right above", "Below");
}

static guint
count_of (const char *text,
          const char *part)
{
  guint n = 0;

  for (const char *p = strstr (text, part); p != NULL; p = strstr (p + 1, part))
    n++;

  return n;
}

static GBytes *
to_pdf (BbDocument *document,
        BbPaper     paper)
{
  g_autoptr (GError) error = NULL;
  GBytes *pdf = bb_document_to_pdf (document, paper, &error);

  g_assert_no_error (error);

  return pdf;
}

/* 210 × 297 mm and 8.5 × 11 in, in points of 1/72 in. */
static void
test_paper (void)
{
  const struct {
    BbPaper paper;
    const char *size;
  } rows[] = { { BB_PAPER_A4, "595.276 x 841.89 pts (A4)" }, { BB_PAPER_LETTER, "612 x 792 pts (letter)" } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbDocument) document = make_document ();
      g_autoptr (GBytes) pdf = to_pdf (document, rows[i].paper);
      g_autofree char *facts = paper_read_facts (pdf);
      g_autofree char *text = paper_read_text (pdf);

      g_assert_nonnull (strstr (facts, rows[i].size));
      g_assert_nonnull (strstr (facts, "Pages:           1"));
      g_assert_nonnull (strstr (facts, "Title:           The title"));
      g_assert_nonnull (strstr (text, "Left above"));
      g_assert_nonnull (strstr (text, "Right above"));
      g_assert_nonnull (strstr (text, "Below"));
      g_assert_nonnull (strstr (text, "Page 1 of 1"));
    }
}

static BbBlock *
make_table (guint n_rows)
{
  const BbColumn columns[] = { { "Number", 1, TRUE }, { "Word", 3, FALSE } };
  BbBlock *table = bb_table_new (columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *number = g_strdup_printf ("row%u.", i);
      const char *cells[] = { number, "word", NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, i % 7 == 0 ? "with a note" : NULL);
    }

  return table;
}

/* Over several pages: each row once, and the head on each page. */
static void
test_table_goes_on (void)
{
  g_autoptr (BbDocument) document = make_document ();
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;
  g_autofree char *facts = NULL;
  guint n_pages = 0;

  bb_document_take (document, make_table (200));
  pdf = to_pdf (document, BB_PAPER_A4);
  n_pages = bb_document_lay_out (document, 595.276, 841.89);
  text = paper_read_text (pdf);
  facts = paper_read_facts (pdf);
  g_assert_cmpuint (n_pages, >, 3);
  for (guint i = 0; i < 200; i++)
    {
      g_autofree char *row = g_strdup_printf ("row%u.", i);

      g_assert_cmpuint (count_of (text, row), ==, 1);
    }
  g_assert_cmpuint (count_of (text, "Number"), ==, n_pages);
  g_assert_cmpuint (count_of (text, "with a note"), ==, 29);
  for (guint page = 1; page <= n_pages; page++)
    {
      g_autofree char *number = g_strdup_printf ("Page %u of %u", page, n_pages);
      g_autofree char *of_page = paper_read_page (pdf, page);

      g_assert_nonnull (strstr (of_page, number));
      g_assert_nonnull (strstr (of_page, "row"));
    }
}

/* A heading stands on the page of what it is the heading of, wherever that begins. */
static void
test_heading_is_never_alone (void)
{
  for (guint n = 42; n < 54; n++)
    {
      g_autoptr (BbDocument) document = make_document ();
      g_autoptr (GBytes) pdf = NULL;
      guint n_pages = 0;

      bb_document_take (document, make_table (n));
      bb_document_take (document, bb_heading_new ("HEADING", 1));
      bb_document_take (document, bb_heading_new ("SUBHEADING", 2));
      bb_document_take (document, bb_text_new ("FIRSTWORD of what follows.", FALSE));
      pdf = to_pdf (document, BB_PAPER_A4);
      n_pages = bb_document_lay_out (document, 595.276, 841.89);
      for (guint page = 1; page <= n_pages; page++)
        {
          g_autofree char *text = paper_read_page (pdf, page);

          g_assert_cmpint (strstr (text, "FIRSTWORD") != NULL, ==, strstr (text, "HEADING") != NULL);
          g_assert_cmpint (strstr (text, "FIRSTWORD") != NULL, ==, strstr (text, "SUBHEADING") != NULL);
        }
    }
}

/* Facts stay together; a long text goes on on the next page, and loses no line. */
static void
test_breaks (void)
{
  g_autoptr (BbDocument) document = make_document ();
  g_autoptr (GString) words = g_string_new (NULL);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;
  BbBlock *facts = bb_facts_new ();
  guint n_pages = 0;

  for (guint i = 0; i < 3000; i++)
    g_string_append_printf (words, "w%u ", i);
  for (guint i = 0; i < 20; i++)
    bb_facts_add (facts, "fact", "value");
  bb_document_take (document, bb_text_new (words->str, FALSE));
  bb_document_take (document, facts);
  pdf = to_pdf (document, BB_PAPER_LETTER);
  n_pages = bb_document_lay_out (document, 612, 792);
  text = paper_read_text (pdf);
  g_assert_cmpuint (n_pages, >, 1);
  for (guint i = 0; i < 2999; i++)
    {
      g_autofree char *word = g_strdup_printf ("w%u ", i);

      if (strstr (text, word) == NULL)
        {
          g_autofree char *last = g_strdup_printf ("w%u\n", i);

          g_assert_nonnull (strstr (text, last));
        }
    }
  for (guint page = 1; page <= n_pages; page++)
    {
      g_autofree char *of_page = paper_read_page (pdf, page);
      guint n = count_of (of_page, "fact");

      g_assert_true (n == 0 || n == 20);
    }
}

/* What is higher than a page is drawn, and ends. */
static void
test_too_high (void)
{
  g_autoptr (BbDocument) document = make_document ();
  BbChart *chart = bb_chart_new ("High", bb_axis_new_cycles (5), bb_axis_new_grades ("Grade"));

  bb_document_take (document, bb_figure_new (chart, 2000));
  bb_document_take (document, bb_text_new ("After.", FALSE));
  g_assert_cmpuint (bb_document_lay_out (document, 595.276, 841.89), ==, 2);
  g_assert_cmpuint (bb_document_lay_out (document, 200, 200), >=, 2);
}

static void
test_pictures (void)
{
  g_autoptr (BbDocument) document = make_document ();
  g_autoptr (GPtrArray) pages = NULL;
  g_autoptr (GError) error = NULL;

  bb_document_take (document, make_table (80));
  pages = bb_document_to_pngs (document, BB_PAPER_LETTER, 2, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (pages->len, ==, bb_document_lay_out (document, 612, 792));
  for (guint i = 0; i < pages->len; i++)
    {
      Picture *picture = picture_read (pages->pdata[i]);

      g_assert_cmpint (picture_get_width (picture), ==, 1224);
      g_assert_cmpint (picture_get_height (picture), ==, 1584);
      g_assert_cmpuint (picture_get (picture, 3, 3), ==, 0xffffff);
      g_assert_cmpuint (picture_count (picture, 0x000000), >, 200);
      picture_free (picture);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/document/paper", test_paper);
  g_test_add_func ("/document/table-goes-on", test_table_goes_on);
  g_test_add_func ("/document/heading-is-never-alone", test_heading_is_never_alone);
  g_test_add_func ("/document/breaks", test_breaks);
  g_test_add_func ("/document/too-high", test_too_high);
  g_test_add_func ("/document/pictures", test_pictures);

  return g_test_run ();
}
