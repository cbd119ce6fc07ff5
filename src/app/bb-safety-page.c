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
  GtkLabel *disclaimer_label;
  GtkBox *notes;
  GtkGrid *first_aid;
  GtkLabel *empty_label;
  BbHazardView *hazards;
};

G_DEFINE_FINAL_TYPE (BbSafetyPage, bb_safety_page, BB_TYPE_PAGE)

/* Lines of this many characters read well, and let two columns stand beside each other where there is room. */
#define LINE_LENGTH 54
#define FIRST_AID_LENGTH 40

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LINE_LENGTH);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
make_note (const BbSafetyNote *note)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  /* Translators: a step of the chain, what is done there, and what a note warns of. */
  g_autofree char *step = g_strdup_printf (_("%s · %s · %s"), bb_station_get_title (note->station), _(note->title),
                                           bb_safety_kind_title (note->kind));

  gtk_box_append (GTK_BOX (box), make_label (step, "dim-label"));
  gtk_box_append (GTK_BOX (box), make_label (_(note->brief), "caution"));
  gtk_box_append (GTK_BOX (box), make_label (_(note->text), NULL));

  return box;
}

static void
fill_first_aid (BbSafetyPage *self)
{
  guint n = 0;
  const BbFirstAid *items = bb_safety_first_aid (&n);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *title = make_label (_(items[i].title), "caution");
      GtkWidget *text = make_label (_(items[i].text), NULL);

      /* Only one column wraps: a grid measures two that do as lower than it needs. */
      gtk_label_set_wrap (GTK_LABEL (title), FALSE);
      gtk_grid_attach (self->first_aid, title, 0, (int) i, 1, 1);
      gtk_label_set_max_width_chars (GTK_LABEL (text), FIRST_AID_LENGTH);
      gtk_widget_set_hexpand (text, TRUE);
      gtk_grid_attach (self->first_aid, text, 1, (int) i, 1, 1);
    }
}

static void
bb_safety_page_start (BbPage *page)
{
  BbSafetyPage *self = BB_SAFETY_PAGE (page);
  guint n = 0;
  const BbSafetyNote *notes = bb_safety_notes (&n);

  gtk_label_set_label (self->disclaimer_label, bb_safety_disclaimer ());
  gtk_box_remove (self->notes, gtk_widget_get_first_child (GTK_WIDGET (self->notes)));
  gtk_grid_remove (self->first_aid, gtk_widget_get_first_child (GTK_WIDGET (self->first_aid)));
  for (guint i = 0; i < n; i++)
    gtk_box_append (self->notes, make_note (&notes[i]));
  fill_first_aid (self);
}

static void
bb_safety_page_refresh (BbPage *page)
{
  BbSafetyPage *self = BB_SAFETY_PAGE (page);
  BbSession *session = bb_page_get_session (page);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) supplies = NULL;

  bb_hazard_view_clear (self->hazards);
  supplies = bb_book_load_all (bb_session_get_book (session), &bb_supply_table, FALSE, &error);
  if (supplies == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  for (guint i = 0; i < supplies->len; i++)
    {
      const BbSupply *supply = supplies->pdata[i];

      bb_hazard_view_add (self->hazards, supply->name, supply->code, supply->hazards);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), bb_hazard_view_is_empty (self->hazards));
}

/* From here the page scrolls by the keyboard. */
static void
bb_safety_page_focus (BbPage *page)
{
  gtk_widget_grab_focus (GTK_WIDGET (BB_SAFETY_PAGE (page)->scrolled));
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
  page_class->focus = bb_safety_page_focus;

  g_type_ensure (BB_TYPE_HAZARD_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-safety-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, scrolled);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, disclaimer_label);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, notes);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, first_aid);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbSafetyPage, hazards);
}

static void
bb_safety_page_init (BbSafetyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
