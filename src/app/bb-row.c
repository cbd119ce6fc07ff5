/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-row"

#include "bb-row.h"

#include <glib/gi18n-lib.h>

#include "bb-swatch.h"
#include "bb-text-box.h"

struct _BbRow
{
  AdwBin parent_instance;

  /* template */
  BbSwatch *swatch;
  GtkLabel *title_label;
  GtkLabel *subtitle_label;
  GtkLabel *code_label;
  GtkBox *second_line;
  GtkBox *third_line;
  AdwBin *badge_bin;
  BbWordBadge *mark;
};

G_DEFINE_FINAL_TYPE (BbRow, bb_row, ADW_TYPE_BIN)

/* Asked for when it is needed: to set a tooltip asks the display where the pointer is, once a row of a long list. */
static gboolean
bb_row_query_tooltip (GtkWidget  *widget,
                      int         x,
                      int         y,
                      gboolean    keyboard_mode,
                      GtkTooltip *tooltip)
{
  (void) x;
  (void) y;
  (void) keyboard_mode;

  gtk_tooltip_set_text (tooltip, gtk_label_get_label (BB_ROW (widget)->title_label));

  return TRUE;
}

static void
bb_row_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_row_parent_class)->dispose (object);
}

static void
bb_row_class_init (BbRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_row_dispose;
  widget_class->query_tooltip = bb_row_query_tooltip;
  g_type_ensure (BB_TYPE_SWATCH);
  g_type_ensure (BB_TYPE_TEXT_BOX);
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, code_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, second_line);
  gtk_widget_class_bind_template_child (widget_class, BbRow, third_line);
  gtk_widget_class_bind_template_child (widget_class, BbRow, badge_bin);
  gtk_widget_class_bind_template_child (widget_class, BbRow, mark);
}

static void
bb_row_init (BbRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

/**
 * bb_row_new:
 *
 * Returns: (transfer floating): an empty line
 */
GtkWidget *
bb_row_new (void)
{
  return g_object_new (BB_TYPE_ROW, NULL);
}

/**
 * bb_row_set:
 * @self: a line
 * @title: the name
 * @code: the short code
 * @subtitle: what the second line says
 *
 * Begins to show something else; what the mark said before is gone.
 */
void
bb_row_set (BbRow      *self,
            const char *title,
            const char *code,
            const char *subtitle)
{
  g_return_if_fail (BB_IS_ROW (self));

  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->code_label, code);
  gtk_label_set_label (self->subtitle_label, subtitle);
  bb_row_set_mark (self, BB_TONE_PLAIN, "");
}

/**
 * bb_row_get_title:
 * @self: a line
 *
 * Returns: (transfer none): the name
 */
const char *
bb_row_get_title (BbRow *self)
{
  g_return_val_if_fail (BB_IS_ROW (self), NULL);

  return gtk_label_get_label (self->title_label);
}

/**
 * bb_row_set_garment:
 * @self: a line
 * @srgb: (nullable): the one colour that is meant, as `#rrggbb`; %NULL or an empty text where it is several
 * @shade: which colours are meant
 *
 * Shows a patch of colour before the name.
 */
void
bb_row_set_garment (BbRow      *self,
                    const char *srgb,
                    BbShade     shade)
{
  g_return_if_fail (BB_IS_ROW (self));

  bb_swatch_set_garment (self->swatch, srgb, shade);
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), TRUE);
}

/**
 * bb_row_set_badge:
 * @self: a line
 * @badge: (transfer floating): what stands below both lines
 */
void
bb_row_set_badge (BbRow     *self,
                  GtkWidget *badge)
{
  GtkWidget *code = GTK_WIDGET (self->code_label);

  g_return_if_fail (BB_IS_ROW (self));

  adw_bin_set_child (self->badge_bin, badge);
  gtk_widget_set_visible (GTK_WIDGET (self->third_line), TRUE);

  /* The code goes down to the badge's line and leaves the second line to what needs it. */
  if (gtk_widget_get_parent (code) == GTK_WIDGET (self->second_line))
    {
      g_object_ref (code);
      gtk_box_remove (self->second_line, code);
      gtk_box_append (self->third_line, code);
      g_object_unref (code);
    }
}

/**
 * bb_row_get_badge:
 * @self: a line
 *
 * Returns: (transfer none) (nullable): what stands below both lines
 */
GtkWidget *
bb_row_get_badge (BbRow *self)
{
  g_return_val_if_fail (BB_IS_ROW (self), NULL);

  return adw_bin_get_child (self->badge_bin);
}

/**
 * bb_row_set_mark:
 * @self: a line with a badge
 * @tone: how urgent it is
 * @text: a word that nobody must miss, beside the badge; an empty one for none
 */
void
bb_row_set_mark (BbRow      *self,
                 BbTone      tone,
                 const char *text)
{
  g_return_if_fail (BB_IS_ROW (self) && text != NULL);

  /* To look otherwise costs more than to look what is there, and few lines of a long list have a mark. */
  if (*text != '\0' || gtk_widget_get_visible (GTK_WIDGET (self->mark)))
    bb_word_badge_say (self->mark, tone, text);
}

/**
 * bb_row_set_withdrawn:
 * @self: a line, filled anew
 * @withdrawn: whether what it shows is out of use
 *
 * Says so in the place of the badge and the mark.
 */
void
bb_row_set_withdrawn (BbRow    *self,
                      gboolean  withdrawn)
{
  const gboolean has_badge = bb_row_get_badge (self) != NULL;

  g_return_if_fail (BB_IS_ROW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->badge_bin), !withdrawn);
  gtk_widget_set_visible (GTK_WIDGET (self->third_line), has_badge || withdrawn);
  if (withdrawn)
    bb_row_set_mark (self, BB_TONE_GONE, _("Withdrawn"));
}
