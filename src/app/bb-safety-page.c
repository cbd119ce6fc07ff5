/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-safety-page"

#include "bb-safety-page.h"

#include <glib/gi18n-lib.h>

#include "bb-hazard-view.h"
#include "bb-safety.h"

struct _BbSafetyPage
{
  BbPage parent_instance;

  /* template */
  GtkScrolledWindow *scrolled;
  GtkBox *column;
  GtkLabel *disclaimer_label;
  GtkBox *notes;
  GtkLabel *empty_label;
  GtkBox *supplies;
};

G_DEFINE_FINAL_TYPE (BbSafetyPage, bb_safety_page, BB_TYPE_PAGE)

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
make_note (const BbSafetyNote *note)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  g_autofree char *step = g_strdup_printf ("%s · %s", bb_station_get_title (note->station), _(note->title));

  gtk_box_append (GTK_BOX (box), make_label (step, "heading"));
  gtk_box_append (GTK_BOX (box), make_label (_(note->brief), "caution"));
  gtk_box_append (GTK_BOX (box), make_label (_(note->text), NULL));

  return box;
}

static GtkWidget *
make_supply (const BbSupply *supply)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *hazards = bb_hazard_view_new ();
  g_autofree char *name = g_strdup_printf ("%s · %s", supply->name, supply->code);

  gtk_box_append (GTK_BOX (box), make_label (name, "heading"));
  bb_hazard_view_show (BB_HAZARD_VIEW (hazards), supply->hazards);
  gtk_box_append (GTK_BOX (box), hazards);

  return box;
}

static void
bb_safety_page_start (BbPage *page)
{
  BbSafetyPage *self = BB_SAFETY_PAGE (page);
  guint n = 0;
  const BbSafetyNote *notes = bb_safety_notes (&n);

  gtk_label_set_label (self->disclaimer_label, bb_safety_disclaimer ());
  for (guint i = 0; i < n; i++)
    gtk_box_append (self->notes, make_note (&notes[i]));
}

static void
bb_safety_page_refresh (BbPage *page)
{
  BbSafetyPage *self = BB_SAFETY_PAGE (page);
  BbSession *session = bb_page_get_session (page);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) supplies = NULL;
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->supplies))) != NULL)
    gtk_box_remove (self->supplies, child);

  supplies = bb_book_load_all (bb_session_get_book (session), &bb_supply_table, FALSE, &error);
  if (supplies == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  for (guint i = 0; i < supplies->len; i++)
    if (((const BbSupply *) supplies->pdata[i])->hazards != NULL)
      gtk_box_append (self->supplies, make_supply (supplies->pdata[i]));

  gtk_widget_set_visible (GTK_WIDGET (self->empty_label),
                          gtk_widget_get_first_child (GTK_WIDGET (self->supplies)) == NULL);
}

static void
bb_safety_page_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_safety_page_parent_class)->dispose (object);
}

static void
bb_safety_page_class_init (BbSafetyPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_safety_page_dispose;
  page_class->start = bb_safety_page_start;
  page_class->refresh = bb_safety_page_refresh;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-safety-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, scrolled);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, column);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, disclaimer_label);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, notes);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, supplies);
}

static void
bb_safety_page_init (BbSafetyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
