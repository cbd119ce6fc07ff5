/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-catalogue-page"

#include "bb-catalogue-page.h"

typedef struct {
  /* template */
  BbCatalogue *catalogue;

  gboolean is_built;
} BbCataloguePagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BbCataloguePage, bb_catalogue_page, BB_TYPE_PAGE)

static void
chosen_cb (BbCataloguePage *self)
{
  BbCataloguePagePrivate *priv = bb_catalogue_page_get_instance_private (self);
  BbCataloguePageClass *klass = BB_CATALOGUE_PAGE_GET_CLASS (self);
  gconstpointer record = bb_catalogue_get_chosen (priv->catalogue);

  if (priv->is_built && record != NULL && klass->chosen != NULL)
    klass->chosen (self, record);
}

static void
bb_catalogue_page_start (BbPage *page)
{
  BbCataloguePagePrivate *priv = bb_catalogue_page_get_instance_private (BB_CATALOGUE_PAGE (page));
  BbCataloguePageClass *klass = BB_CATALOGUE_PAGE_GET_CLASS (page);

  if (klass->build != NULL)
    klass->build (BB_CATALOGUE_PAGE (page), priv->catalogue);
  priv->is_built = TRUE;
  bb_catalogue_start (priv->catalogue, bb_page_get_session (page), klass->info);
}

static void
bb_catalogue_page_refresh (BbPage *page)
{
  bb_catalogue_refresh (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (page)));
}

static void
bb_catalogue_page_show_record (BbPage *page,
                               gint64  id)
{
  bb_catalogue_show (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (page)), id);
}

static void
bb_catalogue_page_focus (BbPage *page)
{
  bb_catalogue_focus (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (page)));
}

static void
bb_catalogue_page_add (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (page))),
                              "catalogue.add", NULL);
}

static void
bb_catalogue_page_edit (BbPage *page)
{
  bb_catalogue_edit_found (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (page)));
}

static void
bb_catalogue_page_dispose (GObject *object)
{
  BbCataloguePagePrivate *priv = bb_catalogue_page_get_instance_private (BB_CATALOGUE_PAGE (object));

  priv->is_built = FALSE;
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_catalogue_page_parent_class)->dispose (object);
}

static void
bb_catalogue_page_class_init (BbCataloguePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_catalogue_page_dispose;
  page_class->start = bb_catalogue_page_start;
  page_class->refresh = bb_catalogue_page_refresh;
  page_class->show_record = bb_catalogue_page_show_record;
  page_class->focus = bb_catalogue_page_focus;
  page_class->find = bb_catalogue_page_focus;
  page_class->add = bb_catalogue_page_add;
  page_class->edit = bb_catalogue_page_edit;

  g_type_ensure (BB_TYPE_CATALOGUE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-catalogue-page.ui");
  gtk_widget_class_bind_template_child_private (widget_class, BbCataloguePage, catalogue);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
bb_catalogue_page_init (BbCataloguePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_catalogue_page_get_catalogue:
 * @self: a page
 *
 * Returns: (transfer none): its catalogue
 */
BbCatalogue *
bb_catalogue_page_get_catalogue (BbCataloguePage *self)
{
  BbCataloguePagePrivate *priv = bb_catalogue_page_get_instance_private (self);

  return priv->catalogue;
}

/**
 * bb_catalogue_page_edit_part:
 * @self: a page
 * @table: the table of the part
 * @part: something that belongs to the record that is shown; a new one has no key
 * @owner: the name of the field that says what it belongs to, which is decided
 *
 * Edits what belongs to a record in the record's place.
 */
void
bb_catalogue_page_edit_part (BbCataloguePage *self,
                             const BbTable   *table,
                             gconstpointer    part,
                             const char      *owner)
{
  g_return_if_fail (BB_IS_CATALOGUE_PAGE (self) && table != NULL && part != NULL);

  bb_catalogue_edit (bb_catalogue_page_get_catalogue (self), table, bb_record_copy (table, part),
                     bb_table_find_field (table, owner));
}
