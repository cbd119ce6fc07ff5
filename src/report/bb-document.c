/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-document.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "bb-lettering.h"
#include "bb-paper.h"

/* In points, by eye. */
#define SIDE 51.0
#define TOP 66.0
#define BOTTOM 60.0
#define HEAD_AT 34.0
#define FOOT_AT 36.0
#define TEXT_SIZE 9.2
#define SMALL_SIZE 7.6

/* Parts of a block that stand on a page, from @from to before @to, at @y. */
typedef struct {
  BbBlock *block;
  guint page;
  guint from;
  guint to;
  double y;
} Piece;

struct _BbDocument {
  char *title;
  char *left_head;
  char *right_head;
  char *foot;
  GPtrArray *blocks;
  GArray *pieces;
  BbType type;
  double width;
  double height;
  guint n_pages;
};

/**
 * bb_document_new:
 * @title: what it is
 * @left_head: what stands at the left above each page
 * @right_head: what stands at the right
 * @foot: what stands at the left below each page; at the right is its number
 *
 * Returns: (transfer full): a document without pages
 */
BbDocument *
bb_document_new (const char *title,
                 const char *left_head,
                 const char *right_head,
                 const char *foot)
{
  BbDocument *self = g_new0 (BbDocument, 1);

  self->title = g_strdup (title);
  self->left_head = g_strdup (left_head);
  self->right_head = g_strdup (right_head);
  self->foot = g_strdup (foot);
  self->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_block_free);
  self->pieces = g_array_new (FALSE, FALSE, sizeof (Piece));
  self->type = (BbType) { NULL, "Sans", TEXT_SIZE };

  return self;
}

/**
 * bb_document_free:
 * @self: (transfer full): a document
 */
void
bb_document_free (BbDocument *self)
{
  g_free (self->title);
  g_free (self->left_head);
  g_free (self->right_head);
  g_free (self->foot);
  g_array_unref (self->pieces);
  g_ptr_array_unref (self->blocks);
  g_clear_object (&self->type.letters);
  g_free (self);
}

/**
 * bb_document_get_title:
 * @self: a document
 *
 * Returns: (transfer none): what it is
 */
const char *
bb_document_get_title (const BbDocument *self)
{
  return self->title;
}

/**
 * bb_document_take:
 * @self: a document
 * @block: (transfer full): what comes next in it
 */
void
bb_document_take (BbDocument *self,
                  BbBlock    *block)
{
  g_ptr_array_add (self->blocks, block);
}

/* Where the next piece goes. */
typedef struct {
  guint page;
  double y;
} Place;

static double
room_of (const BbDocument *self)
{
  return self->height - TOP - BOTTOM;
}

static double
first_height (const BbBlock *block)
{
  return block->head + (block->heights->len > 0 ? g_array_index (block->heights, double, 0) : 0.0);
}

static double
whole_height (const BbBlock *block)
{
  double height = block->head;

  for (guint i = 0; i < block->heights->len; i++)
    height += g_array_index (block->heights, double, i);

  return height;
}

/* What has to be on one page with the beginning of the block: a heading never stands alone at the foot. */
static double
needed_from (const BbDocument *self,
             guint             index)
{
  double needed = 0.0;

  for (guint i = index; i < self->blocks->len; i++)
    {
      const BbBlock *block = self->blocks->pdata[i];

      if (!block->keep)
        return needed + (block->whole ? MIN (whole_height (block), room_of (self)) : first_height (block));
      needed += whole_height (block) + block->after * self->type.size;
    }

  return needed;
}

static void
turn_page (Place *place)
{
  place->page++;
  place->y = 0.0;
}

static void
place_block (BbDocument *self,
             guint       index,
             Place      *place)
{
  BbBlock *block = self->blocks->pdata[index];
  guint from = 0;

  if (place->y > 0.0 && place->y + needed_from (self, index) > room_of (self))
    turn_page (place);
  while (from < block->heights->len)
    {
      Piece piece = { block, place->page, from, from, place->y };
      double y = place->y + block->head;

      /* One part at least, so that what is higher than a page does not turn pages for ever. */
      for (; piece.to < block->heights->len; piece.to++)
        {
          double height = g_array_index (block->heights, double, piece.to);

          if (piece.to > from && y + height > room_of (self))
            break;
          y += height;
        }
      g_array_append_val (self->pieces, piece);
      from = piece.to;
      place->y = y;
      if (from < block->heights->len)
        turn_page (place);
    }
  place->y += block->after * self->type.size;
}

/**
 * bb_document_lay_out:
 * @self: a document with all its blocks
 * @width: width of the paper, in points
 * @height: height of the paper
 *
 * Breaks the document into pages, anew for each size. It is drawn on the thread that did so: letters belong to one.
 *
 * Returns: how many pages it has, at least one
 */
guint
bb_document_lay_out (BbDocument *self,
                     double      width,
                     double      height)
{
  Place place = { 0, 0.0 };

  self->width = width;
  self->height = height;
  g_clear_object (&self->type.letters);
  self->type.letters = bb_lettering_new_context ();
  g_array_set_size (self->pieces, 0);
  for (guint i = 0; i < self->blocks->len; i++)
    {
      BbBlock *block = self->blocks->pdata[i];

      block->lay_out (block, &self->type, width - 2.0 * SIDE);
    }
  for (guint i = 0; i < self->blocks->len; i++)
    place_block (self, i, &place);
  self->n_pages = place.page + 1;

  return self->n_pages;
}

/* One line, cut where there is no room for it. */
static void
draw_small (const BbDocument *self,
            cairo_t          *cr,
            const char       *text,
            double            share,
            gboolean          to_right,
            double            y)
{
  double room = (self->width - 2.0 * SIDE) * share;
  g_autoptr (PangoLayout) letters = bb_lettering_new (self->type.letters, text, self->type.font, SMALL_SIZE, FALSE,
                                                      room);

  pango_layout_set_ellipsize (letters, PANGO_ELLIPSIZE_END);
  pango_layout_set_height (letters, -1);
  if (to_right)
    pango_layout_set_alignment (letters, PANGO_ALIGN_RIGHT);
  bb_lettering_show (letters, cr, to_right ? self->width - SIDE - room : SIDE, y);
}

static void
draw_frame (const BbDocument *self,
            cairo_t          *cr,
            guint             page)
{
  /* Translators: the number of a page, and how many there are. */
  g_autofree char *number = g_strdup_printf (_("Page %u of %u"), page + 1, self->n_pages);

  cairo_set_source_rgb (cr, 0.25, 0.25, 0.25);
  draw_small (self, cr, self->left_head, 0.5, FALSE, HEAD_AT);
  draw_small (self, cr, self->right_head, 0.48, TRUE, HEAD_AT);
  draw_small (self, cr, self->foot, 0.75, FALSE, self->height - FOOT_AT);
  draw_small (self, cr, number, 0.23, TRUE, self->height - FOOT_AT);
  cairo_set_line_width (cr, 0.4);
  cairo_move_to (cr, SIDE, HEAD_AT + SMALL_SIZE * 1.8);
  cairo_line_to (cr, self->width - SIDE, HEAD_AT + SMALL_SIZE * 1.8);
  cairo_move_to (cr, SIDE, self->height - FOOT_AT - SMALL_SIZE * 0.6);
  cairo_line_to (cr, self->width - SIDE, self->height - FOOT_AT - SMALL_SIZE * 0.6);
  cairo_stroke (cr);
}

/**
 * bb_document_draw_page:
 * @self: a document that was laid out
 * @cr: where to draw, with the paper's corner at its origin, in points
 * @page: which page, counted from 0
 */
void
bb_document_draw_page (BbDocument *self,
                       cairo_t    *cr,
                       guint       page)
{
  cairo_save (cr);
  pango_cairo_update_context (cr, self->type.letters);
  draw_frame (self, cr, page);
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const Piece *piece = &g_array_index (self->pieces, Piece, i);

      if (piece->page != page)
        continue;
      cairo_save (cr);
      cairo_translate (cr, SIDE, TOP + piece->y);
      piece->block->draw (piece->block, cr, piece->from, piece->to);
      cairo_restore (cr);
    }
  cairo_restore (cr);
}

/**
 * bb_document_to_pdf:
 * @self: a document with all its blocks
 * @paper: the size of its pages
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the document as a PDF file; %NULL with an error where there is not enough memory
 */
GBytes *
bb_document_to_pdf (BbDocument  *self,
                    BbPaper      paper,
                    GError     **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = NULL;
  cairo_t *cr = NULL;
  double width = 0.0;
  double height = 0.0;

  bb_paper_get_size (paper, &width, &height);
  bb_document_lay_out (self, width, height);
  surface = bb_paper_new_pdf (bytes, width, height, self->title);
  cr = cairo_create (surface);
  for (guint page = 0; page < self->n_pages; page++)
    {
      bb_document_draw_page (self, cr, page);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);

  return bb_paper_take_pdf (surface, g_steal_pointer (&bytes), error);
}

static GBytes *
page_to_png (BbDocument  *self,
             guint        page,
             double       scale,
             GError     **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (self->width * scale),
                                                         (int) (self->height * scale));
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  bb_document_draw_page (self, cr, page);
  cairo_destroy (cr);

  return bb_paper_take_png (surface, error);
}

/**
 * bb_document_to_pngs:
 * @self: a document with all its blocks
 * @paper: the size of its pages
 * @scale: pixels for each point
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable) (element-type GBytes): each page as a PNG file; %NULL with an error where there
 *   is not enough memory
 */
GPtrArray *
bb_document_to_pngs (BbDocument  *self,
                     BbPaper      paper,
                     double       scale,
                     GError     **error)
{
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func ((GDestroyNotify) g_bytes_unref);
  double width = 0.0;
  double height = 0.0;

  bb_paper_get_size (paper, &width, &height);
  bb_document_lay_out (self, width, height);
  for (guint page = 0; page < self->n_pages; page++)
    {
      GBytes *png = page_to_png (self, page, scale, error);

      if (png == NULL)
        return NULL;
      g_ptr_array_add (pages, png);
    }

  return g_steal_pointer (&pages);
}
